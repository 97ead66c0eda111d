import type { Kind as Rect } from './pack/filler.js';

type Measure = (x: number) => number;

/**
 * Lower bound on the sheets needed, whatever the cutting: dual-feasible functions f with f(x1) + .. + f(xm) <= 1 wherever
 * x1 + .. + xm <= C, applied to widths and heights (Fekete and Schepers 2004; Carlier, Clautiaux and Moukrim 2007;
 * Clautiaux, Alves and Valerio de Carvalho 2010). Kerf: each rectangle and the sheet grow by one kerf, which is exact.
 */
export function sheetBound(w: number, h: number, kerf: number, rects: readonly Rect[]): number {
  if (rects.length === 0) return 0;
  const W = w + kerf;
  const H = h + kerf;
  const items = rects.map((r) => ({ w: r.w + kerf, h: r.h + kerf, turn: r.turn && r.h <= w && r.w <= h }));
  const sizes = items.flatMap((i) => [i.w, i.h]);
  const across = measures(W, sizes);
  const up = measures(H, sizes);
  let best = 1;
  // What each function makes of each item is worked out once.
  const table = (fs: readonly Measure[], side: 'w' | 'h'): number[][] => fs.map((f) => items.map((i) => f(i[side])));
  const wa = table(across, 'w');
  const ha = table(up, 'h');
  const hw = table(across, 'h');
  const wh = table(up, 'w');
  for (let a = 0; a < across.length; a++)
    for (let b = 0; b < up.length; b++) {
      let sum = 0;
      for (let i = 0; i < items.length; i++) {
        const straight = at(wa, a, i) * at(ha, b, i);
        const fits = (rects[i] as Rect).w <= w && (rects[i] as Rect).h <= h;
        const turned = at(hw, a, i) * at(wh, b, i);
        sum += !items[i]?.turn ? (fits ? straight : turned) : fits ? Math.min(straight, turned) : turned;
      }
      best = Math.max(best, Math.ceil(sum - 1e-7));
    }
  return best;
}

const at = (t: readonly (readonly number[])[], a: number, i: number): number =>
  (t[a] as readonly number[])[i] as number;

/** Identity, f0, u and c of the papers, with thresholds taken from the sizes that occur. At most some eighty of each. */
function measures(C: number, sizes: readonly number[]): Measure[] {
  const marks = [...new Set(sizes.flatMap((s) => [s, C - s]).filter((p) => p > 0 && p <= C / 2))].sort((a, b) => a - b);
  const step = Math.max(1, Math.ceil(marks.length / 80));
  const out: Measure[] = [(x) => x / C];
  marks.forEach((p, i) => {
    if (i % step !== 0) return;
    out.push((x) => (x > C - p ? 1 : x >= p ? x / C : 0));
    const c = Math.floor(C / p);
    out.push((x) => (2 * x > C ? 1 - Math.floor((C - x) / p) / c : 2 * x === C ? 1 / 2 : Math.floor(x / p) / c));
  });
  for (let k = 1; k <= 12; k++) out.push((x) => (((k + 1) * x) % C === 0 ? x / C : Math.floor(((k + 1) * x) / C) / k));
  return out;
}
