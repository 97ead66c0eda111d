import { AXES, faceAxis, faceOf, opposite } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Units } from '../lengths/length.js';
import { parseCallouts } from './callout.js';
import type { Callout, ParsedCallout } from './callout.js';
import type { Cut } from './cut.js';
import { readFigure } from './figure.js';
import { blankSize, called, frameOf } from './frame.js';
import type { Frame, PartLike } from './frame.js';
import { normalise } from './reader.js';
import type { BareCut, Piece } from './say.js';
import { b, t } from './say.js';
import { fig } from './span.js';

/** What the words of a card say, read back with nothing else known. Lengths nm; the blank's low corner is the origin. */
export interface ParsedCard {
  readonly mark: string;
  readonly hand?: 'left' | 'right';
  readonly frame: Frame;
  readonly reference: { readonly face: Face; readonly edge: Face; readonly end: Face };
  readonly callouts: readonly ParsedCallout[];
  /** The callouts as they were printed, without their numbers. */
  readonly texts: readonly string[];
  readonly cuts: readonly BareCut[];
  /** What could not be read: callouts by number, or a field by name. */
  readonly unread: readonly string[];
}
export interface CardPart extends PartLike {
  readonly cuts?: readonly Cut[];
  readonly mark: string;
  readonly hand?: 'left' | 'right';
}

export const MEASURE_FROM = 'Measure from';
export const CUTS_HEADING = 'Cuts, in this order';
/** The names with which a callout may begin. */
const NAMES =
  'Trial first|Mortise|Dado|Groove|Rabbet|Slot|Notch|Relief|Sliding dovetail socket|Dovetail socket|Ease the socket|' +
  'Tails|Tail|Tenon|Tongue|Taper|Arc|Chamfer|Round over|Cove|Hole|Pilot hole|Slotted hole|Counterbored hole|Pocket hole|' +
  'Outline|Bevel|Flat|Slide line|Line';

/** `INSIDE face · FRONT edge · BOTTOM end`: what every figure on the card is measured from. */
export function sayReference(part: PartLike, units: Units): string {
  const f = frameOf(part, units);
  const { face, edge, end } = part.reference;
  return [face, edge, end].map((x) => called(f, x)).join(' · ');
}
/**
 * The row that says which way each of the three sizes runs, thick × wide × long: `7/8 OUTSIDE–INSIDE × 19 FRONT–BACK × 41 1/8
 * BOTTOM–TOP`. `shoulder`: says the size between shoulders too.
 */
export function saySize(part: CardPart, units: Units, shoulder = true): Piece[] {
  const f = frameOf(part, units);
  const unit = units === 'mm' ? ', mm' : '';
  const hand = part.hand === undefined ? '' : ` ${part.hand.toUpperCase()}`;
  const one = (a: Axis): string => `${fig(f, blankSize(f, a))} ${f.words[faceOf(a, -1)]}–${f.words[faceOf(a, 1)]}`;
  const all = [f.thickness, f.width, f.length].map(one).join(' × ');
  const grown = AXES.filter((a) => part.growth[a][0] !== 0 || part.growth[a][1] !== 0);
  const between = grown.map((a) => fig(f, part.size[a].value)).join(' and ');
  const last = grown.length === 0 || !shoulder ? '' : `; ${sayBetween(part)} ${between}`;
  return [b(part.mark), t(`${hand}${unit}: ${all}${last}.`)];
}
/** Between shoulders or base lines where the part has any, else what is seen of it between its mates. */
export const sayBetween = (part: { readonly cuts?: readonly Cut[] }): string =>
  part.cuts?.some((c) => c.shape === 'tenon' || c.shape === 'tails') ? 'shoulder to shoulder' : 'in the clear';
/** All of a card's words that a rebuild needs, as plain text in reading order. */
export function cardText(part: CardPart, callouts: readonly Callout[], units: Units): string {
  const hand = part.hand === undefined ? '' : ` ${part.hand.toUpperCase()}`;
  return [
    `${part.mark}${hand}`,
    `${MEASURE_FROM} ${sayReference(part, units)}`,
    CUTS_HEADING,
    ...callouts.map((c) => `${c.number} ${c.text}`),
    `Size ${saySize(part, units)
      .map((r) => r.text)
      .join('')}`,
  ].join('\n');
}

/**
 * Reads a card's text, whatever its line breaks. `words`: the six face words where they are not the plain ones, so that
 * each pair finds its own axis. Undefined when the text holds no card.
 */
export function parseCard(text: string, words?: Readonly<Record<Face, string>>): ParsedCard | undefined {
  const all = normalise(text);
  const row = [...all.matchAll(/(?:^| )Size (\S+?)(?: (LEFT|RIGHT))?(, mm)?: (.*?)\.(?= |$)/g)].pop();
  const cutsAt = all.indexOf(CUTS_HEADING);
  if (!row || cutsAt < 0) return undefined;
  const units: Units = row[3] === undefined ? 'in' : 'mm';
  const sized = readSizes(row[4] as string, units, words);
  if (!sized) return undefined;
  const reference = readReference(all.slice(0, cutsAt), sized);
  if (!reference) return undefined;
  const refs = [reference.face, reference.edge, reference.end];
  const frame: Frame = { ...sized, datum: byAxis((a) => refs.find((x) => faceAxis(x) === a) ?? faceOf(a, -1)) };
  const texts = split(all.slice(cutsAt + CUTS_HEADING.length, row.index));
  const callouts = parseCallouts(texts, frame);
  const unread = callouts.flatMap((c, i) => (c ? [] : [`${i + 1} ${texts[i]}`]));
  const read = callouts.filter((c) => c !== undefined);
  const hand = row[2] === undefined ? undefined : row[2] === 'LEFT' ? 'left' : 'right';
  return {
    mark: row[1] as string,
    ...(hand ? { hand } : {}),
    frame,
    reference,
    callouts: read,
    texts,
    cuts: read.flatMap((c) => c.cuts),
    unread,
  };
}
/** Splits at the running numbers 1, 2, 3 ..., each before the name of a cut. */
function split(text: string): string[] {
  const starts: { at: number; from: number }[] = [];
  let from = 0;
  for (let n = 1; ; n += 1) {
    const pattern = new RegExp(`(?:^| )${n} (?=(?:${NAMES})s?,)`, 'g');
    pattern.lastIndex = from;
    const found = pattern.exec(text);
    if (!found) break;
    starts.push({ at: found.index, from: found.index + found[0].length });
    from = found.index + found[0].length;
  }
  return starts.map((s, i) => text.slice(s.from, starts[i + 1]?.at ?? text.length).trim());
}

const PLAIN: Readonly<Record<string, Face>> = {
  LEFT: 'left',
  RIGHT: 'right',
  FRONT: 'front',
  BACK: 'back',
  BOTTOM: 'bottom',
  TOP: 'top',
};
type Sized = Omit<Frame, 'datum'>;
function readSizes(text: string, units: Units, hint?: Readonly<Record<Face, string>>): Sized | undefined {
  const found = [...text.matchAll(/(?:^|×) ?([\d/. ()]+?) ([^\d×]+?) ?– ?([^×;]+?)(?= ?(?:×|;|$))/g)];
  const rows = found.map((m) => ({ size: readFigure((m[1] as string).trim(), units), lo: m[2], hi: m[3] }));
  if (rows.length !== 3 || rows.some((r) => r.size === undefined)) return undefined;
  const axes = rows.map((r) => axisOf(r.lo as string, r.hi as string, hint));
  const free = AXES.filter((a) => !axes.includes(a));
  const settled = axes.map((a) => a ?? (free.shift() as Axis));
  if (new Set(settled).size !== 3) return undefined;
  const of = (a: Axis): (typeof rows)[number] => rows[settled.indexOf(a)] as (typeof rows)[number];
  const [thickness, width, length] = settled as [Axis, Axis, Axis];
  const words = Object.fromEntries(
    AXES.flatMap((a) => [
      [faceOf(a, -1), of(a).lo as string],
      [faceOf(a, 1), of(a).hi as string],
    ]),
  ) as Record<Face, string>;
  const blank = byAxis((a) => [0, of(a).size as number] as const);
  return { words, blank, thickness, width, length, units };
}
function axisOf(lo: string, hi: string, hint?: Readonly<Record<Face, string>>): Axis | undefined {
  if (hint) return AXES.find((a) => hint[faceOf(a, -1)] === lo && hint[faceOf(a, 1)] === hi);
  const face = PLAIN[lo];
  return face !== undefined && PLAIN[hi] === opposite(face) ? faceAxis(face) : undefined;
}
function readReference(header: string, f: Sized): ParsedCard['reference'] | undefined {
  const at = header.lastIndexOf(MEASURE_FROM);
  if (at < 0) return undefined;
  const [a, c, d] = header
    .slice(at + MEASURE_FROM.length)
    .split(' · ')
    .map((piece) => named(piece.trim(), f));
  return a && c && d ? { face: a, edge: c, end: d } : undefined;
}
const named = (text: string, f: Sized): Face | undefined =>
  AXES.flatMap((a) => [faceOf(a, -1), faceOf(a, 1)]).find((x) =>
    new RegExp(`^${f.words[x].replace(/[.*+?^${}()|[\]\\]/g, '\\$&')} (face|edge|end)`).test(text),
  );
