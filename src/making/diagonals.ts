import type { Vec3 } from '../geom/box.js';
import { isSquare, place } from '../geom/placement.js';
import { snap } from '../lengths/length.js';
import type { Part, Piece } from '../piece/piece.js';

/** A rectangle that is square when both diagonals measure the same. nm. */
export interface Diagonal {
  readonly id: string;
  readonly what: string;
  readonly wide: number;
  readonly high: number;
  /** To 1/32 in or 0.5 mm: as near as a tape tells. */
  readonly diagonal: number;
}

/** What is checked for square with a tape: the case by each mirrored pair of standing sides, drawer openings, drawer boxes. */
export function diagonals(piece: Piece): Diagonal[] {
  const nearest = piece.units === 'in' ? 793_750 : 500_000;
  const diagonal = (id: string, what: string, wide: number, high: number): Diagonal => ({
    id,
    what,
    wide,
    high,
    diagonal: snap(Math.sqrt(wide * wide + high * high), nearest),
  });
  const cases = pairs(piece).map(([a, b]) => {
    const [p, q] = [bounds(a), bounds(b)];
    const wide = Math.max(p.high[0], q.high[0]) - Math.min(p.low[0], q.low[0]);
    return diagonal(`case.${a.id}`, `case, outside ${a.mark} to outside ${b.mark}`, wide, p.high[2] - p.low[2]);
  });
  const openings = piece.drawers.map((d) =>
    diagonal(`${d.id}.opening`, `opening of ${d.mark}`, d.opening.across.value, d.opening.up.value),
  );
  const boxes = piece.drawers.flatMap((d) => {
    const parts = piece.parts.filter((p) => d.parts.includes(p.id) && p.id !== d.front).map(bounds);
    if (parts.length === 0) return [];
    const size = (axis: 0 | 1): number =>
      Math.max(...parts.map((b) => b.high[axis])) - Math.min(...parts.map((b) => b.low[axis]));
    return [diagonal(`${d.id}.box`, `box of ${d.mark}`, size(0), size(1))];
  });
  return [...cases, ...openings, ...boxes];
}

/** Mirrored pairs, left and right, that stand (grain up) and are tied by at least one part that enters both. */
function pairs(piece: Piece): (readonly [Part, Part])[] {
  const mates = (id: string): Set<string> =>
    new Set(piece.joints.filter((j) => j.receiving === id).map((j) => j.entering));
  return piece.parts.flatMap((b) => {
    const a = piece.parts.find((p) => p.id === b.mirrorOf || p.mirrorOf === b.id);
    if (
      !a ||
      a.place.origin[0] >= b.place.origin[0] ||
      b.drawer !== undefined ||
      b.length !== 2 ||
      !isSquare(a.place) ||
      !isSquare(b.place)
    )
      return [];
    const tied = mates(a.id);
    return [...mates(b.id)].some((m) => tied.has(m)) ? [[a, b] as const] : [];
  });
}

/** Shoulder box of an unleaning part in piece axes. */
function bounds(p: Part): { readonly low: Vec3; readonly high: Vec3 } {
  const a = place(p.place, [0, 0, 0]);
  const b = place(p.place, [p.size[0].value, p.size[1].value, p.size[2].value]);
  const by = (f: (x: number, y: number) => number): Vec3 => [f(a[0], b[0]), f(a[1], b[1]), f(a[2], b[2])];
  return { low: by(Math.min), high: by(Math.max) };
}
