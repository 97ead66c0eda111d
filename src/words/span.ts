import { faceAxis } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { exact, figure } from './figure.js';
import { called, clip, coordinate, datumOf, distance, isFull, reaches, spanAt, spanFrom } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { b, count, marks, readCount, t } from './say.js';
import type { Piece, SayContext } from './say.js';

/** A clause about one axis, read back. Several items: the same cut at several places. */
export interface Clause {
  readonly axis: Axis;
  readonly items: readonly { readonly span: Span; readonly mates: readonly string[] }[];
}
export interface Place {
  readonly span: Span;
  readonly mates: readonly string[];
}

const FULL = { thickness: 'full thickness', width: 'full width', length: 'full length' } as const;

/** Where a cut runs along an axis: full, from one side with a stop, or from a to b. */
export function saySpan(f: Frame, axis: Axis, whole: Span): string {
  const s = clip(f, axis, whole);
  const d = datumOf(f, axis);
  const touched = reaches(f, axis, s);
  if (isFull(f, axis, s)) {
    return axis === f.thickness ? FULL.thickness : axis === f.width ? FULL.width : FULL.length;
  }
  const [lo, hi] = spanFrom(f, d, s);
  const from = touched[0];
  if (from === undefined) return `${fig(f, lo)} to ${fig(f, hi)} from ${called(f, d)}`;
  return from === d
    ? `from ${called(f, d)}, stop ${fig(f, hi)} from it`
    : `from ${called(f, from)}, stop ${fig(f, lo)} from ${called(f, d)}`;
}
/** `0 to 3/4 from TOP edge`: as `saySpan`, with both figures even where the span begins at a side. */
export function sayRange(f: Frame, axis: Axis, whole: Span): string {
  const s = clip(f, axis, whole);
  if (isFull(f, axis, s)) return saySpan(f, axis, s);
  const d = datumOf(f, axis);
  const [lo, hi] = spanFrom(f, d, s);
  return `${fig(f, lo)} to ${fig(f, hi)} from ${called(f, d)}`;
}

/** `on 1/4 from BACK edge`: a cut that begins at a side of the blank, measured from that side. */
export function saySunk(f: Frame, face: Face, whole: Span, word: string): string {
  const s = clip(f, faceAxis(face), whole);
  return `${word} ${fig(f, spanFrom(f, face, s)[1])} from ${called(f, face)}`;
}

/** `5/16 from BOTTOM edge, 7/32 wide`. */
export function sayWide(f: Frame, axis: Axis, s: Span): string {
  const d = datumOf(f, axis);
  const [lo, hi] = spanFrom(f, d, s);
  return `${fig(f, lo)} from ${called(f, d)}, ${fig(f, hi - lo)} wide`;
}

/** The step between three or more places that stand at one pitch, none with mates of its own: the first then says them all. */
function pitchOf(f: Frame, starts: readonly number[], places: readonly Place[]): number | undefined {
  const [first, second] = starts;
  if (first === undefined || second === undefined || starts.length < 3) return undefined;
  const pitch = second - first;
  const even = starts.every((x, i) => x === first + i * pitch) && places.every((p) => p.mates.length === 0);
  return even && pitch > 0 && exact(pitch, f.units) ? pitch : undefined;
}
const sayPitch = (f: Frame, pitch: number, n: number): Piece => t(`, pitch ${fig(f, pitch)}, ${count(n)} in all`);
/** Reads `, pitch 7/8, five in all`, or `, pitch 7/8` of a known number: how far each place stands from the first; the first alone where no pitch is said. */
function readPitch(r: Reader, known?: number): readonly number[] {
  const series = r.attempt(() => {
    const pitch = r.take(', pitch') ? r.figure() : undefined;
    if (pitch !== undefined && known !== undefined && known < 200) return { pitch, n: known };
    const n = pitch !== undefined && r.take(',') ? readCount(r) : undefined;
    return n !== undefined && n < 200 && r.take('in all') ? { pitch: pitch as number, n } : undefined;
  });
  return series ? Array.from({ length: series.n }, (_, i) => i * series.pitch) : [0];
}

/** The same cut at several places: `from TOP end 3/4 to 2 5/8 A3 · 15 1/8 to 17 A4`, or the first of them and their pitch. */
export function sayPlaces(f: Frame, axis: Axis, places: readonly Place[], ctx: SayContext): Piece[] {
  const d = datumOf(f, axis);
  const items = places.map((p) => ({ at: spanFrom(f, d, p.span), mates: p.mates }));
  items.sort((p, q) => p.at[0] - q.at[0] || p.at[1] - q.at[1]);
  const wide = (p: (typeof items)[number]): number => p.at[1] - p.at[0];
  const alike = items.every((p) => wide(p) === wide(items[0] as (typeof items)[number]));
  const pitch = alike ? pitchOf(f, items.map((p) => p.at[0]), places) : undefined; // prettier-ignore
  const said = (pitch === undefined ? items : items.slice(0, 1)).map((p) => ({
    figure: `${fig(f, p.at[0])} to ${fig(f, p.at[1])}`,
    mates: p.mates,
  }));
  const end = pitch === undefined ? [] : [sayPitch(f, pitch, items.length)];
  return [...list(`from ${called(f, d)} `, said, ctx), ...end];
}
/**
 * Centres of equal cuts: `centres from BOTTOM end 8 1/2 R4 B4 · 18 1/4 R3 B3`; at one pitch, the first and the pitch.
 * `series`: `known` where the words before it say how many they are, `none` to list them all.
 */
export function sayCentres(
  f: Frame,
  axis: Axis,
  places: readonly Place[],
  ctx: SayContext,
  series: 'counted' | 'known' | 'none' = 'counted',
): Piece[] {
  const d = datumOf(f, axis);
  const items = places.map((p) => ({ at: distance(f, d, (p.span[0] + p.span[1]) / 2), mates: p.mates }));
  items.sort((p, q) => p.at - q.at);
  const pitch = series !== 'none' ? pitchOf(f, items.map((p) => p.at), places) : undefined; // prettier-ignore
  const said = (pitch === undefined ? items : items.slice(0, 1)).map((p) => ({ figure: fig(f, p.at), mates: p.mates }));
  const end =
    pitch === undefined ? [] : [series === 'known' ? t(`, pitch ${fig(f, pitch)}`) : sayPitch(f, pitch, items.length)];
  return [...list(`${places.length === 1 ? 'centre' : 'centres'} from ${called(f, d)} `, said, ctx), ...end];
}
const list = (
  lead: string,
  items: readonly { readonly figure: string; readonly mates: readonly string[] }[],
  ctx: SayContext,
): Piece[] => [
  t(lead),
  ...items.flatMap((p, i) => [
    t(i > 0 ? ' · ' : ''),
    p.mates.length > 0 ? b(p.figure) : t(p.figure),
    t(p.mates.length > 0 ? ` ${marks(p.mates, ctx)}` : ''),
  ]),
];
/** Centres and widths are the better figures unless only the sides print without loss. */
export const centresBest = (f: Frame, axis: Axis, spans: readonly Span[]): boolean => {
  const d = datumOf(f, axis);
  const whole = (x: number): boolean => exact(x, f.units);
  return (
    spans.every((s) => whole(distance(f, d, (s[0] + s[1]) / 2))) ||
    !spans.every((s) => s.every((x) => whole(distance(f, d, x))))
  );
};
export const fig = (f: Frame, nm: number): string => figure(nm, f.units);

/** Reads whichever of the clauses above stands here. */
export const readSpan = (r: Reader): Clause | undefined =>
  r.attempt(() => readFull(r)) ??
  r.attempt(() => readSunk(r)) ??
  r.attempt(() => readStop(r)) ??
  r.attempt(() => readPlaces(r)) ??
  r.attempt(() => readFromTo(r)) ??
  r.attempt(() => readWide(r));

const one = (axis: Axis, span: Span): Clause => ({ axis, items: [{ span, mates: [] }] });
function readFull(r: Reader): Clause | undefined {
  const f = r.frame;
  const word = r.oneOf(Object.values(FULL));
  if (word === undefined) return undefined;
  const axis = word === FULL.thickness ? f.thickness : word === FULL.width ? f.width : f.length;
  return one(axis, f.blank[axis]);
}
function readSunk(r: Reader): Clause | undefined {
  if (r.oneOf(['on', 'in', 'up', 'down']) === undefined) return undefined;
  const depth = r.figure();
  const face = depth !== undefined && r.take('from') ? r.face() : undefined;
  return face && one(faceAxis(face), spanAt(r.frame, face, [0, depth as number]));
}
function readStop(r: Reader): Clause | undefined {
  const from = r.take('from') ? r.face() : undefined;
  if (from === undefined || !r.take(', stop')) return undefined;
  const stop = r.figure();
  const d = stop !== undefined && r.take('from') ? (r.take('it') ? from : r.datum()) : undefined;
  if (d === undefined || faceAxis(d) !== faceAxis(from) || d !== datumOf(r.frame, faceAxis(d))) return undefined;
  if (d === from) return one(faceAxis(d), spanAt(r.frame, d, [0, stop as number]));
  const a = coordinate(r.frame, d, stop as number);
  const z = coordinate(r.frame, from, 0);
  return one(faceAxis(d), a <= z ? [a, z] : [z, a]);
}
function readPlaces(r: Reader): Clause | undefined {
  const face = r.take('from') ? r.datum() : undefined;
  if (face === undefined) return undefined;
  const items: { span: Span; mates: string[] }[] = [];
  do {
    const lo = r.figure();
    const hi = lo !== undefined && r.take('to') ? r.figure() : undefined;
    if (hi === undefined) return undefined;
    const steps = readPitch(r);
    const at = (x: number): Span => spanAt(r.frame, face, [(lo as number) + x, hi + x]);
    const mates = r.mates();
    items.push(...steps.map((x) => ({ span: at(x), mates })));
  } while (r.take('·'));
  return { axis: faceAxis(face), items };
}
function readFromTo(r: Reader): Clause | undefined {
  const lo = r.figure();
  const hi = lo !== undefined && r.take('to') ? r.figure() : undefined;
  const face = hi !== undefined && r.take('from') ? r.datum() : undefined;
  return face && one(faceAxis(face), spanAt(r.frame, face, [lo as number, hi as number]));
}
function readWide(r: Reader): Clause | undefined {
  const lo = r.figure();
  const face = lo !== undefined && r.take('from') ? r.datum() : undefined;
  const wide = face !== undefined && r.take(',') ? r.figure() : undefined;
  if (wide === undefined || !r.take('wide')) return undefined;
  return one(faceAxis(face as Face), spanAt(r.frame, face as Face, [lo as number, (lo as number) + wide]));
}
/** Reads what `sayCentres` printed: distances from a face and the mates beside them. */
export function readCentres(
  r: Reader,
  known?: number,
): { face: Face; items: { at: number; mates: string[] }[]; pitch?: number } | undefined {
  return r.attempt(() => {
    if (r.oneOf(['centres from', 'centre from']) === undefined) return undefined;
    const face = r.datum();
    if (face === undefined) return undefined;
    const items: { at: number; mates: string[] }[] = [];
    let pitch: number | undefined;
    do {
      const at = r.figure();
      if (at === undefined) return undefined;
      const steps = readPitch(r, known);
      pitch ??= steps[1];
      const mates = r.mates();
      items.push(...steps.map((x) => ({ at: coordinate(r.frame, face, at + x), mates })));
    } while (r.take('·'));
    return { face, items, ...(pitch === undefined ? {} : { pitch }) };
  });
}
