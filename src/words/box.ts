import { faceAxis, others } from '../geom/axis.js';
import type { Axis } from '../geom/axis.js';
import { byAxis, width } from '../geom/box.js';
import type { Box3, Span } from '../geom/box.js';
import type { BoxCut, Slant } from './cut.js';
import { called, clip, coordinate, faceAt, isFull, reaches, spanFrom } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { b, heading, readHeading, t } from './say.js';
import type { Bare, Piece, ShapeWords } from './say.js';
import { readSlant, saySlant } from './slant.js';
import { fig, readSpan, sayPlaces, saySpan, saySunk, sayWide } from './span.js';

const NAMES: Readonly<Record<BoxCut['as'], string>> = {
  mortise: 'Mortise',
  dado: 'Dado',
  groove: 'Groove',
  rabbet: 'Rabbet',
  slot: 'Slot',
  notch: 'Notch',
  relief: 'Relief',
};

const clipped = (f: Frame, at: Box3): Box3 => byAxis((a) => clip(f, a, at[a]));

/** The axis along which equal cuts may stand at several places: the length, unless the cut is sunk or runs along it. */
function placeAxis(f: Frame, cut: BoxCut): Axis {
  const [p, q] = others(faceAxis(cut.face));
  const first = p === f.length || (q !== f.length && p === f.width) ? p : q;
  const second = first === p ? q : p;
  return isFull(f, first, cut.at[first]) ? second : first;
}

export const boxWords: ShapeWords<BoxCut> = {
  key(cut, f) {
    const p = placeAxis(f, cut);
    const at = clipped(f, cut.at);
    const rest = [0, 1, 2].filter((a) => a !== p).map((a) => at[a as Axis].join(','));
    const ends = reaches(f, p, at[p]).length > 0 ? at[p].join(',') : '';
    const slants = (cut.slants ?? []).map((s) => `${s.of},${s.toward},${s.by}`);
    return ['box', cut.as, cut.face, p, ...rest, ends, ...slants].join('|');
  },
  print(group, f, ctx) {
    const cut = group[0] as BoxCut;
    const p = placeAxis(f, cut);
    const name = heading(NAMES[cut.as], group.length);
    const at = clipped(f, cut.at);
    const clauses: Piece[][] = [[t(sayDepth(f, cut, at))]];
    for (const a of order(f, cut, at)) {
      const places = group.map((c) => ({ span: clip(f, a, c.at[a]), mates: c.mates }));
      clauses.push(group.length > 1 && a === p ? sayPlaces(f, a, places, ctx) : [t(sayAxis(f, cut, at, a))]);
    }
    for (const s of cut.slants ?? []) clauses.push([t(saySlant(f, cut, s))]);
    const body = clauses.flatMap((c, i) => [t(i > 0 ? '; ' : ''), ...c]);
    return { name, runs: [b(name), t(` ${called(f, cut.face)}: `), ...body, t('.')] };
  },
  parse: parseBox,
};

/** Across the cut first, along it last. */
function order(f: Frame, cut: BoxCut, at: Box3): Axis[] {
  const two = [...others(faceAxis(cut.face))];
  return two.sort(
    (a, c) => Number(isFull(f, a, at[a])) - Number(isFull(f, c, at[c])) || width(at[a]) - width(at[c]) || a - c,
  );
}
function sayDepth(f: Frame, cut: BoxCut, at: Box3): string {
  const axis = faceAxis(cut.face);
  if (isFull(f, axis, at[axis])) return 'through';
  if (!reaches(f, axis, at[axis]).includes(cut.face)) return saySpan(f, axis, at[axis]);
  return `into the ${called(f, cut.face).split(' ').pop()} ${fig(f, spanFrom(f, cut.face, at[axis])[1])}`;
}
function sayAxis(f: Frame, cut: BoxCut, at: Box3, a: Axis): string {
  const touched = reaches(f, a, at[a]);
  const narrow = order(f, cut, at)[0] === a;
  const side = touched[0];
  if (touched.length === 1 && side && narrow && cut.as !== 'groove') return saySunk(f, side, at[a], 'on');
  if (touched.length === 0 && narrow && (cut.as === 'groove' || cut.as === 'dado')) return sayWide(f, a, at[a]);
  return a === f.thickness && isFull(f, a, at[a]) ? 'through' : saySpan(f, a, at[a]);
}

function parseBox(r: Reader): readonly Bare<BoxCut>[] | undefined {
  const as = readHeading(r, NAMES);
  if (as === undefined) return undefined;
  const face = r.face();
  if (face === undefined || !r.take(':')) return undefined;
  const f = r.frame;
  const base: [Span, Span, Span] = [f.blank[0], f.blank[1], f.blank[2]];
  let many: { axis: Axis; items: readonly { span: Span; mates: readonly string[] }[] } | undefined;
  const slants: Slant[] = [];
  do {
    if (r.take('through')) continue;
    const slant = readSlant(r, face);
    if (slant) {
      slants.push(slant);
      continue;
    }
    const depth = r.attempt(() => (r.match(/into the (?:face|edge|end)/y) ? r.figure() : undefined));
    if (depth !== undefined) {
      base[faceAxis(face)] = sorted(faceAt(f, face), coordinate(f, face, depth));
      continue;
    }
    const clause = readSpan(r);
    if (!clause) return undefined;
    base[clause.axis] = (clause.items[0] as { span: Span }).span;
    if (clause.items.length > 1) many = clause;
  } while (r.take(';'));
  if (!r.take('.')) return undefined;
  const make = (at: Box3, mates: readonly string[]): Bare<BoxCut> => ({
    shape: 'box',
    as,
    face,
    at,
    ...(slants.length > 0 ? { slants } : {}),
    mates,
  });
  if (!many) return [make(base, [])];
  const { axis, items } = many;
  return items.map((i) =>
    make(
      byAxis((a) => (a === axis ? i.span : base[a])),
      i.mates,
    ),
  );
}
const sorted = (a: number, c: number): Span => (a <= c ? [a, c] : [c, a]);
