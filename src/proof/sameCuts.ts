import { byAxis } from '../geom/box.js';
import type { Box3, Span } from '../geom/box.js';
import { AXES, faceAxis, others, third } from '../geom/axis.js';
import type { Axis } from '../geom/axis.js';
import type { Cut, CutCommon } from '../words/cut.js';
import type { BareCut } from '../words/say.js';

/** Lengths count as one when they differ by no more than half the last printed place (.001 in) and a little. nm. */
const NEAR = 13_000;
const COMMON: readonly (keyof CutCommon)[] = ['id', 'from', 'mates', 'glue', 'rank', 'scribe', 'trial', 'notes'];

/** Cuts of the model that no callout gives, by id, and how many callouts' cuts are in excess. Both lists in own axes, nm. */
export function unmatched(
  model: readonly Cut[],
  card: readonly BareCut[],
  blank: Box3,
): { missing: string[]; extra: number } {
  const left = card.map((cut) => ({ cut, own: trimmed(cut, blank) }));
  const missing: string[] = [];
  for (const cut of model) {
    const wanted = trimmed(cut, blank);
    const i = left.findIndex((c) =>
      cut.shape === 'plane' && c.cut.shape === 'plane' ? samePlane(cut, c.cut, blank) : same(wanted, c.own),
    );
    if (i < 0) missing.push(cut.id);
    else left.splice(i, 1);
  }
  return { missing, extra: left.length };
}
/** The fields that are wood: nothing that lies outside the blank, no history. */
function trimmed(cut: Cut | BareCut, blank: Box3): Record<string, unknown> {
  const own = Object.fromEntries(Object.entries(cut).filter(([k]) => !(COMMON as readonly string[]).includes(k)));
  const within = (a: Axis, s: Span): Span => [Math.max(s[0], blank[a][0]), Math.min(s[1], blank[a][1])];
  if (cut.shape === 'box') own['at'] = byAxis((a) => within(a, cut.at[a]));
  if (cut.shape === 'dovetail') own['runSpan'] = within(cut.run, cut.runSpan);
  if (cut.shape === 'tails') {
    own['keep'] = within(third(faceAxis(cut.end), cut.taper), cut.keep);
    own['tails'] = [...cut.tails].sort((p, q) => p.atBase[0] - q.atBase[0]);
  }
  if (cut.shape === 'tenon') {
    // As of a plane: whether its shoulder slopes; how much, the volume tells.
    own['slope'] = cut.slope !== undefined;
    const [p, q] = others(faceAxis(cut.end));
    own['tongues'] = cut.tongues.map((x) => ({ ...x, a: within(p, x.a), b: within(q, x.b) }));
  }
  if (cut.shape === 'arris') {
    own['over'] = within(third(faceAxis(cut.faces[0]), faceAxis(cut.faces[1])), cut.over);
  }
  return own;
}
type Plane = Extract<Cut | BareCut, { shape: 'plane' }>;
/** A plane is the same through any of its points: where it crosses three arrises of the blank tells, and which side goes. */
function samePlane(cut: Plane, other: Plane, blank: Box3): boolean {
  const axis = AXES.reduce((m: Axis, a) => (Math.abs(cut.normal[a]) > Math.abs(cut.normal[m]) + 1e-9 ? a : m), 0);
  const [p, q] = others(axis);
  const [[left, right], [front, back]] = [blank[p], blank[q]];
  const marks = ({ normal, point }: Plane): number[] =>
    [[left, front], [right, front], [left, back]].map(([u = 0, v = 0]) => point[axis] - (normal[p] * (u - point[p]) + normal[q] * (v - point[q])) / normal[axis]); // prettier-ignore
  const within = (c: Plane): Span[] =>
    AXES.map((a) => [Math.max((c.within ?? blank)[a][0], blank[a][0]), Math.min((c.within ?? blank)[a][1], blank[a][1])]); // prettier-ignore
  const off = (m: readonly number[], n: readonly number[]): number => Math.max(...m.map((x, i) => Math.abs(x - (n[i] ?? Infinity)))); // prettier-ignore
  return (
    cut.as === other.as &&
    Math.sign(cut.normal[axis]) === Math.sign(other.normal[axis]) &&
    off(marks(cut), marks(other)) <= NEAR &&
    off(within(cut).flat(), within(other).flat()) <= NEAR
  );
}
function same(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') {
    return Math.abs(a - b) <= (Math.abs(a) > 10 * NEAR || Math.abs(b) > 10 * NEAR || Math.abs(a - b) > 1 ? NEAR : 1e-3);
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = Object.keys(a).filter((k) => (a as Record<string, unknown>)[k] !== undefined);
  const other = Object.keys(b).filter((k) => (b as Record<string, unknown>)[k] !== undefined);
  return (
    keys.length === other.length &&
    keys.every((k) => same((a as Record<string, unknown>)[k], (b as Record<string, unknown>)[k]))
  );
}
