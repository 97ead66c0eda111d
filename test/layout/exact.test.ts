import { describe, expect, it } from 'vitest';
import { nestSheets, type NestJob } from '../../src/layout/nest.js';
import { faults } from './check.js';
import { sequence } from './random.js';

interface Rect {
  readonly w: number;
  readonly h: number;
}
/**
 * Whether all of `set` can be cut from w x h edge to edge: every way of parting the set in two, every first cut at a sum of
 * sizes. Exhaustive, so only for a handful; no kerf.
 */
function fits(w: number, h: number, set: readonly Rect[]): boolean {
  if (set.some((r) => r.w > w || r.h > h) || set.reduce((a, r) => a + r.w * r.h, 0) > w * h) return false;
  if (set.length <= 1) return true;
  for (let mask = 1; mask < 2 ** set.length - 1; mask++) {
    const a = set.filter((_, i) => (mask >> i) & 1);
    const b = set.filter((_, i) => !((mask >> i) & 1));
    for (const x of sums(
      a.map((r) => r.w),
      w,
    ))
      if (fits(x, h, a) && fits(w - x, h, b)) return true;
    for (const y of sums(
      a.map((r) => r.h),
      h,
    ))
      if (fits(w, y, a) && fits(w, h - y, b)) return true;
  }
  return false;
}
function sums(sizes: readonly number[], most: number): number[] {
  let all = new Set([0]);
  for (const s of sizes) all = new Set([...all, ...[...all].map((x) => x + s).filter((x) => x < most)]);
  return [...all].filter((x) => x > 0);
}
describe('against exhaustive search, four to six parts on a sheet of 24 x 16', () => {
  it('finds one sheet whenever there is one, never when there is none, and says that it is proved', () => {
    const next = sequence(5);
    let possible = 0;
    for (let n = 0; n < 120; n++) {
      const rects = Array.from({ length: 3 + next(3) }, () => ({ w: 2 + next(13), h: 2 + next(9) }));
      const job: NestJob = {
        kerf: 0,
        trim: 0,
        budget: 100,
        stages: Infinity,
        stocks: [
          {
            id: 's',
            sheets: [{ length: 24, width: 16 }],
            grain: 'length',
            items: rects.map((r, i) => ({ part: `p${i}`, length: r.w, width: r.h, mayTurn: false })),
          },
        ],
      };
      const layout = nestSheets(job);
      const can = fits(24, 16, rects);
      if (can) possible++;
      const count = layout.counts[0];
      expect([count?.used === 1, count?.proved]).toEqual([can, true]);
      for (const sheet of layout.sheets) expect(faults(sheet, job)).toEqual([]);
    }
    expect(possible).toBeGreaterThan(30);
  });
});
