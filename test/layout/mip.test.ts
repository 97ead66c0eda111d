import highs from 'highs';
import { describe, expect, it } from 'vitest';
import { nestSheets, type NestJob } from '../../src/layout/nest.js';
import { sequence } from './random.js';
import { faults } from './check.js';

/** The package's types say a module where it gives a function. */
const load = highs as unknown as () => Promise<{
  solve(problem: string): { readonly Status: string; readonly ObjectiveValue: number };
}>;
interface Rect {
  readonly w: number;
  readonly h: number;
}
/**
 * Two-stage level packing as a mixed integer program: Lodi, Martello and Vigo, Models and bounds for two-dimensional level
 * packing problems, J. Comb. Optim. 8 (2004). y_j: piece j begins a level; x_i_j: piece j lies in the level begun by i;
 * q_k: level k begins a sheet; z_k_i: level i lies on the sheet begun by k. Pieces by falling height.
 */
function levelModel(W: number, H: number, rects: readonly Rect[]): string {
  const r = [...rects].sort((a, b) => b.h - a.h);
  const n = r.length;
  const later = (i: number): number[] => Array.from({ length: n - i - 1 }, (_, k) => i + 1 + k);
  const all = r.map((_, i) => i);
  const lines = ['Minimize', ` obj: ${all.map((k) => `q${k}`).join(' + ')}`, 'Subject To'];
  for (const j of all)
    lines.push(` once${j}: ${[...all.filter((i) => i < j).map((i) => `x${i}_${j}`), `y${j}`].join(' + ')} = 1`);
  for (const i of all) {
    const inside = later(i).map((j) => `${r[j]?.w} x${i}_${j}`);
    lines.push(` wide${i}: ${[...inside, `${(r[i]?.w ?? 0) - W} y${i}`].join(' + ').replace(/\+ -/g, '- ')} <= 0`);
    const on = all.filter((k) => k < i).map((k) => `z${k}_${i}`);
    lines.push(` level${i}: ${[...on, `q${i}`].join(' + ')} - y${i} = 0`);
    const high = later(i).map((k) => `${r[k]?.h} z${i}_${k}`);
    lines.push(` high${i}: ${[...high, `${(r[i]?.h ?? 0) - H} q${i}`].join(' + ').replace(/\+ -/g, '- ')} <= 0`);
  }
  const names = all.flatMap((i) => [`y${i}`, `q${i}`, ...later(i).flatMap((j) => [`x${i}_${j}`, `z${i}_${j}`])]);
  return [...lines, 'Binary', ` ${names.join(' ')}`, 'End', ''].join('\n');
}

describe('against the mixed integer program of two-stage level packing, solved by HiGHS', () => {
  it('takes as many sheets, and says that they are proved', async () => {
    const solver = await load();
    const next = sequence(11);
    let several = 0;
    for (let n = 0; n < 24; n++) {
      const rects = Array.from({ length: 5 + next(4) }, () => ({ w: 3 + next(14), h: 2 + next(10) }));
      // The saw's way goes into every piece and once into the sheet.
      const kerf = n % 2;
      const grown = rects.map((r) => ({ w: r.w + kerf, h: r.h + kerf }));
      const solved = solver.solve(levelModel(24 + kerf, 16 + kerf, grown));
      expect(solved.Status).toBe('Optimal');
      const job: NestJob = {
        kerf,
        trim: 0,
        stages: 2,
        first: 'rip',
        budget: 400,
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
      const count = layout.counts[0];
      expect([count?.used, count?.proved]).toEqual([Math.round(solved.ObjectiveValue), true]);
      for (const sheet of layout.sheets) expect(faults(sheet, job)).toEqual([]);
      if ((count?.used ?? 0) > 1) several++;
    }
    expect(several).toBeGreaterThan(10);
  });
});
