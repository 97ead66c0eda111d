import { sine } from '../geom/angle.js';
import type { Rings } from '../geom/solid.js';
import type { Point, Rect } from './dimensions.js';
import { polyline, through } from './draw.js';
import type { Item, Path } from './picture.js';

/** A freehand line strays so far from the straight one: two waves that do not repeat together (our default). */
const stray = (s: number): number => 0.42 * sine((s / 8.7) * 360) + 0.2 * sine((s / 3.7) * 360 + 70);
const STEP = 0.6;

/** Points of one side of a window from `a` to `b` (mm along it), strayed off the straight line. */
function side(at: (along: number, off: number) => Point, a: number, b: number): Point[] {
  const n = Math.max(1, Math.ceil((b - a) / STEP));
  return Array.from({ length: n + 1 }, (_, i) => {
    const s = a + ((b - a) * i) / n;
    return at(s, stray(s));
  });
}
/** The four sides of a window, clockwise from the upper left; `along` runs from 0 to the side's length. */
const sides = (r: Rect): readonly { readonly length: number; readonly at: (s: number, off: number) => Point }[] => [
  { length: r.w, at: (s, off) => [r.x + s, r.y + off] },
  { length: r.h, at: (s, off) => [r.x + r.w + off, r.y + s] },
  { length: r.w, at: (s, off) => [r.x + r.w - s, r.y + r.h + off] },
  { length: r.h, at: (s, off) => [r.x + off, r.y + r.h - s] },
];
/** A window broken off freehand all round, to clip by (ISO 128: narrow freehand line). */
export const brokenWindow = (r: Rect): Path =>
  through(
    sides(r).flatMap((s) => side(s.at, 0, s.length)),
    true,
  );
/** The freehand line itself, only where wood is broken off there. */
export const brokenEdges = (r: Rect, cut: readonly Rings[]): Item[] =>
  sides(r).flatMap((s) => {
    const [from, to] = [s.at(0, 0), s.at(s.length, 0)];
    return cut.flatMap((rings) =>
      spansOn(rings, from, to).flatMap(([a, b]) =>
        (b - a) * s.length < 0.2 ? [] : polyline('N', side(s.at, a * s.length, b * s.length)),
      ),
    );
  });
/** Where the line from `a` to `b` (square to the paper) lies in the rings: shares of its length, by the even-odd rule. */
function spansOn(rings: Rings, a: Point, b: Point): [number, number][] {
  const k = Math.abs(b[0] - a[0]) > Math.abs(b[1] - a[1]) ? 0 : 1;
  const level = a[1 - k] as number;
  const at: number[] = [];
  for (const ring of rings)
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      const [pl, ql] = [p[1 - k] as number, q[1 - k] as number];
      if (pl <= level === ql <= level) return;
      const along = p[k] + ((q[k] - p[k]) * (level - pl)) / (ql - pl);
      at.push((along - a[k]) / (b[k] - a[k]));
    });
  at.sort((x, y) => x - y);
  const out: [number, number][] = [];
  for (let i = 0; i + 1 < at.length; i += 2) {
    const [from, to] = [Math.max(0, at[i] as number), Math.min(1, at[i + 1] as number)];
    if (to > from) out.push([from, to]);
  }
  return out;
}
