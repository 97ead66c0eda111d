import { direction } from './angle.js';

export type Point = readonly [number, number];
/** A straight piece of a drawing, with what it belongs to. */
export interface Piece2 {
  readonly a: Point;
  readonly b: Point;
  readonly ids: readonly string[];
}
/** Pieces on one straight line, as stretches along it. */
export interface LineGroup {
  readonly origin: Point;
  readonly along: Point;
  readonly visible: Stretch[];
  readonly hidden: Stretch[];
}
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly ids: readonly string[];
}
/** Lines closer than this (mm), at angles closer than that (degrees), are one. */
const OFFSET = 2e-3;
const ANGLE = 2e-4;
/** Gaps and stubs shorter than this are closed or dropped, mm. */
export const GAP = 0.01;

interface Ranked {
  readonly piece: Piece2;
  readonly visible: boolean;
  readonly angle: number;
}
const ranked = (piece: Piece2, visible: boolean): Ranked => {
  const angle = direction(piece.b[0] - piece.a[0], piece.b[1] - piece.a[1]);
  const half = angle < 0 ? angle + 180 : angle;
  return { piece, visible, angle: half > 180 - ANGLE ? half - 180 : half };
};
/** Cuts a sorted list wherever neighbours differ by more than `step`. */
function clusters<T>(sorted: readonly T[], value: (t: T) => number, step: number): T[][] {
  const out: T[][] = [];
  let last = -Infinity;
  for (const t of sorted) {
    if (value(t) - last > step) out.push([]);
    out[out.length - 1]?.push(t);
    last = value(t);
  }
  return out;
}
/** Puts pieces that lie on the same straight line together. Groups are in order of angle, then offset. */
export function groupCollinear(visible: readonly Piece2[], hidden: readonly Piece2[]): LineGroup[] {
  const all = [...visible.map((p) => ranked(p, true)), ...hidden.map((p) => ranked(p, false))];
  all.sort((p, q) => p.angle - q.angle);
  return clusters(all, (r) => r.angle, ANGLE).flatMap((parallel) => {
    const long = parallel.reduce((m, r) => (lengthOf(r.piece) > lengthOf(m.piece) ? r : m)).piece;
    const size = lengthOf(long);
    const sign = (long.b[0] - long.a[0] || long.b[1] - long.a[1]) < 0 ? -1 : 1;
    const along: Point = [(sign * (long.b[0] - long.a[0])) / size, (sign * (long.b[1] - long.a[1])) / size];
    const offset = ({ piece: { a, b } }: Ranked): number =>
      ((a[1] + b[1]) / 2) * along[0] - ((a[0] + b[0]) / 2) * along[1];
    const sorted = parallel.map((r) => ({ r, offset: offset(r) })).sort((p, q) => p.offset - q.offset);
    return clusters(sorted, (s) => s.offset, OFFSET).map((line): LineGroup => {
      const off = (line[0] as { offset: number }).offset;
      const stretch = ({ r }: { r: Ranked }): Stretch => {
        const [s, t] = [r.piece.a, r.piece.b].map((p) => p[0] * along[0] + p[1] * along[1]) as [number, number];
        return { from: Math.min(s, t), to: Math.max(s, t), ids: r.piece.ids };
      };
      return {
        origin: [-along[1] * off, along[0] * off],
        along,
        visible: united(line.filter((s) => s.r.visible).map(stretch)),
        hidden: united(line.filter((s) => !s.r.visible).map(stretch)),
      };
    });
  });
}
export const lengthOf = ({ a, b }: { readonly a: Point; readonly b: Point }): number =>
  Math.hypot(b[0] - a[0], b[1] - a[1]);
/** Both lists as one, sorted. */
function idsOf(a: readonly string[], b: readonly string[]): readonly string[] {
  if (a === b || b.every((id) => a.includes(id))) return a;
  return [...new Set([...a, ...b])].sort((x, y) => (x < y ? -1 : x > y ? 1 : 0));
}

/** Overlapping and nearly touching stretches made one. */
export function united(stretches: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const s of [...stretches].sort((p, q) => p.from - q.from || p.to - q.to)) {
    const last = out[out.length - 1];
    if (last && s.from <= last.to + GAP)
      out[out.length - 1] = { from: last.from, to: Math.max(last.to, s.to), ids: idsOf(last.ids, s.ids) };
    else out.push(s);
  }
  return out;
}
/** What of `stretches` is not under `cover` (both united); rests shorter than GAP are dropped. */
export function without(stretches: readonly Stretch[], cover: readonly Stretch[]): Stretch[] {
  return stretches.flatMap((s) => {
    const out: Stretch[] = [];
    let at = s.from;
    for (const c of cover) {
      if (c.to <= at || c.from >= s.to) continue;
      if (c.from > at) out.push({ ...s, from: at, to: c.from });
      at = Math.max(at, c.to);
    }
    if (at < s.to) out.push({ ...s, from: at });
    return out.filter((r) => r.to - r.from > GAP);
  });
}
export const pointOn = (g: LineGroup, s: number): Point => [g.origin[0] + g.along[0] * s, g.origin[1] + g.along[1] * s];
