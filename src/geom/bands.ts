import type { Rings } from './solid.js';

/** A trapezium: x of its lower left and right, of its upper right and left; y of its foot and its head. */
export type Band = readonly [number, number, number, number, number, number];

/** The inside of rings (even-odd rule) as trapeziums with level feet and heads, one row between every two heights of corners. */
export function bandsOf(rings: Rings): Band[] {
  const heights = [...new Set(rings.flatMap((r) => r.map((p) => p[1])))].sort((a, b) => a - b);
  return heights.slice(1).flatMap((top, i) => {
    const foot = heights[i] as number;
    const mid = (foot + top) / 2;
    const sides: { readonly mid: number; readonly low: number; readonly high: number }[] = [];
    for (const ring of rings)
      ring.forEach((p, k) => {
        const q = ring[(k + 1) % ring.length] as readonly [number, number];
        if (p[1] <= mid === q[1] <= mid) return;
        const at = (y: number): number => p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]);
        sides.push({ mid: at(mid), low: at(foot), high: at(top) });
      });
    sides.sort((a, b) => a.mid - b.mid);
    const out: Band[] = [];
    for (let k = 0; k + 1 < sides.length; k += 2) {
      const [l, r] = [sides[k] as (typeof sides)[number], sides[k + 1] as (typeof sides)[number]];
      out.push([l.low, r.low, r.high, l.high, foot, top]);
    }
    return out;
  });
}
