import { FACES, faceAxis, faceOf, opposite } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import { byAxis } from '../../geom/box.js';
import type { Span } from '../../geom/box.js';
import { formatLength } from '../../lengths/format.js';
import type { Units } from '../../lengths/length.js';
import type { Part, Piece, Stock } from '../../piece/piece.js';
import { sayCuts } from '../../words/callout.js';
import type { Callout } from '../../words/callout.js';
import { saySize } from '../../words/card.js';
import type { Cut } from '../../words/cut.js';
import { called, distance, frameOf } from '../../words/frame.js';
import type { Frame } from '../../words/frame.js';
import type { Run } from '../text.js';
import { byMark } from '../marks.js';
import type { CardInput } from './input.js';
import { fnv } from './input.js';

/** A row under the cuts: label and text, with a box where it is done and ticked. */
export interface Row {
  readonly label: string;
  readonly text: readonly Run[];
  readonly tick?: boolean;
}
/** Everything one card says, before it is laid out. */
export interface Card {
  readonly part: Part;
  readonly frame: Frame;
  /** Parts that share the card, this one first. */
  readonly all: readonly Part[];
  readonly mirror?: Part;
  readonly hand: string;
  readonly size: string;
  readonly stock: string;
  readonly callouts: readonly Callout[];
  readonly rows: readonly Row[];
  readonly prove: { readonly what: string; readonly figure: string };
  readonly revision: string;
}
const plainRuns = (text: string): Run[] => [{ string: text }];

/** One card for all parts that are only turned copies of one; a mirror image has its own. In the order of their marks. */
export function cardsOf(input: CardInput): Card[] {
  const { parts } = input.piece;
  const heads = parts.filter((p) => p.turnOf === undefined || !parts.some((o) => o.id === p.turnOf));
  return [...heads].sort((a, b) => byMark(a.mark, b.mark)).map((p) => cardOf(input, p, parts));
}
function cardOf(input: CardInput, part: Part, parts: readonly Part[]): Card {
  const { units } = input.piece;
  const marks = marksOf(input.piece, part);
  const markOf = (id: string): string => marks.get(id) ?? id;
  // Bought things have no mark; the notes of a cut name them.
  const cuts = part.cuts.map((c) => ({ ...c, mates: c.mates.filter((id) => marks.has(id)) }));
  const callouts = sayCuts(part, cuts, { units, markOf });
  const all = [part, ...parts.filter((p) => p.turnOf === part.id)];
  const mirror = parts.find((p) => p.mirrorOf === part.id || part.mirrorOf === p.id);
  const frame = frameOf(part, units);
  const size = [part.thickness, part.width, part.length]
    .map((a) => formatLength(frame.blank[a][1] - frame.blank[a][0], units))
    .join(' × ');
  const draft = { part, frame, all, ...(mirror ? { mirror } : {}), callouts };
  const rows = rowsOf(input, draft);
  const words = [
    size,
    ...callouts.map((c) => c.text),
    ...rows.map((r) => r.label + r.text.map((t) => t.string).join('')),
  ];
  return {
    ...draft,
    hand: handOf(part),
    size: units === 'mm' ? `${size} mm` : size,
    stock: stockOf(part, input.piece),
    rows,
    prove: proveOf(part, frame, units),
    revision: (input.revisionOf ?? fnv)(words.join('\n')),
  };
}
/** Marks by id; in the case a slide is named by its drawer (a drawer's own slide needs no name). */
function marksOf(piece: Piece, part: Part): ReadonlyMap<string, string> {
  const drawers = new Map(piece.drawers.map((d) => [d.id, d.mark]));
  const slides = part.drawer === undefined ? piece.hardware.filter((h) => h.kind === 'slide') : [];
  const named = slides.flatMap((h): [string, string][] => {
    const mark = drawers.get(h.drawer ?? '');
    return mark === undefined ? [] : [[h.id, `slide of ${mark}`]];
  });
  return new Map([...named, ...piece.parts.map((p): [string, string] => [p.id, p.mark])]);
}
/** `LEFT side`, `Rail`. */
function handOf(part: Part): string {
  if (!part.hand) return part.name.slice(0, 1).toUpperCase() + part.name.slice(1);
  return `${part.hand.toUpperCase()} ${part.name.replace(/,? ?\b(left|right)\b,? ?/i, ' ').trim()}`;
}
function stockOf(part: Part, piece: Piece): string {
  const stock: Stock | undefined = piece.stocks[part.stock];
  const f = frameOf(part, piece.units);
  const grain = part.grain === undefined ? 'No grain' : `Grain ${grainWords(f, part.grain)}`;
  const quarter = stock?.quarter ? ` ${stock.quarter}` : '';
  const staves = part.staves === undefined ? '' : `, ${part.staves} staves`;
  const name = stock?.name ?? part.stock;
  return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}${quarter}${staves}. ${grain}.`;
}
const grainWords = (f: Frame, axis: Axis): string => {
  const [lo, hi] = [f.words[faceOf(axis, -1)], f.words[faceOf(axis, 1)]];
  return hi === 'TOP' ? 'UP' : `${lo} to ${hi}`;
};

/** The sides of the part that a cut takes wood from or marks, as far as its kind tells. */
export function facesOf(cut: Cut, f: Frame): Face[] {
  const reach = (axis: Axis, s: Span): Face[] => [
    ...(s[0] <= f.blank[axis][0] ? [faceOf(axis, -1)] : []),
    ...(s[1] >= f.blank[axis][1] ? [faceOf(axis, 1)] : []),
  ];
  switch (cut.shape) {
    case 'box':
      return byAxis((a) => reach(a, cut.at[a])).flat();
    case 'dovetail':
      return [cut.face, ...reach(cut.run, cut.runSpan)];
    case 'tails':
    case 'tenon':
      return [cut.end];
    case 'taper':
      return [cut.face, cut.end];
    case 'arris':
      return [...cut.faces];
    case 'bore':
      return cut.depth === 'through' ? [cut.face, opposite(cut.face)] : [cut.face];
    case 'outline':
      return FACES.filter((x) => faceAxis(x) !== faceAxis(cut.face));
    case 'plane':
      return FACES.filter((x) => (FACES.indexOf(x) % 2 === 0 ? -1 : 1) * cut.normal[faceAxis(x)] > 0.5);
    default:
      return [cut.face];
  }
}
/** Sides with no work at all. */
export const quietFaces = (part: Part, f: Frame): Face[] => {
  const busy = new Set(part.cuts.flatMap((c) => facesOf(c, f)));
  return FACES.filter((x) => !busy.has(x));
};

function rowsOf(input: CardInput, card: Pick<Card, 'part' | 'frame' | 'all' | 'mirror' | 'callouts'>): Row[] {
  const { part, frame, all, mirror } = card;
  const rows: Row[] = [
    {
      label: 'Size',
      text: saySize(part, input.piece.units).map((p): Run => ({
        string: p.text,
        ...(p.bold ? { face: 'semibold' } : {}),
      })),
    },
  ];
  const quiet = quietFaces(part, frame);
  if (quiet.length > 0)
    rows.push({ label: 'No work', text: plainRuns(`${quiet.map((x) => called(frame, x)).join(', ')}.`) });
  const alike = alikeWords(frame, part, all, mirror);
  if (alike) rows.push({ label: 'Alike', text: plainRuns(alike) });
  const arris = input.piece.units === 'mm' ? '0.8' : '1/32';
  // Common practice: a sharp arris dents and cuts, a joint's arris must stay sharp to close.
  const glued = part.cuts.some((c) => c.glue && c.glue.where !== '');
  const prepare: Run[] = glued
    ? [{ string: ' Prepare', face: 'semibold' }, { string: ` ${called(frame, part.reference.face)}.` }]
    : [];
  rows.push({
    label: 'Break',
    text: [{ string: `long arrises ${arris}; joints stay sharp.` }, ...prepare],
    tick: true,
  });
  for (const note of part.notes) rows.push({ label: 'Note', text: plainRuns(note) });
  for (const f of input.findings ?? []) {
    if (f.severity === 'warning' && f.touches?.includes(part.id))
      rows.push({ label: 'Warning', text: plainRuns(f.message) });
  }
  return rows;
}
function alikeWords(f: Frame, part: Part, all: readonly Part[], mirror: Part | undefined): string | undefined {
  const { face, end } = part.reference;
  const level = `${f.words[end]} ends level`;
  const two = mirror ? `with ${mirror.mark}: same settings, ${f.words[face]} to ${f.words[face]}, ${level}.` : '';
  const many = all.length > 1 ? `all ${all.length}: one stop, one fence (${all.map((p) => p.mark).join(', ')}).` : '';
  const words = [two, many].filter((w) => w !== '').join(' ');
  return words === '' ? undefined : words.slice(0, 1) + words.slice(1);
}

/** One measurement that proves the part: between base lines or shoulders, to the last cut across it, or over all. */
function proveOf(part: Part, f: Frame, units: Units): Card['prove'] {
  const say = (nm: number): string => formatLength(nm, units);
  const ends = part.cuts.filter((c) => c.shape === 'tails' || c.shape === 'tenon');
  const [a, b] = ends;
  if (a && b && a.end === opposite(b.end)) {
    const at = (c: typeof a): number => (c.shape === 'tails' ? c.base : c.shoulder);
    const word = a.shape === 'tails' ? 'base line to base line' : 'shoulder to shoulder';
    return { what: word, figure: say(Math.abs(at(a) - at(b))) };
  }
  const far = opposite(part.reference.end);
  const sockets = part.cuts.flatMap((c) =>
    c.shape === 'dovetail' && c.taper === part.length ? [distance(f, far, (c.atFace[0] + c.atFace[1]) / 2)] : [],
  );
  if (sockets.length > 1) {
    return { what: `${called(f, far)} to centre of the nearest socket`, figure: say(Math.min(...sockets)) };
  }
  return { what: 'over all, end to end', figure: say(f.blank[part.length][1] - f.blank[part.length][0]) };
}
