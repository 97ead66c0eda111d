import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import highs from 'highs';
import { describe, expect, it } from 'vitest';
import { layBars, type BarJob, type BarLayout } from '../../src/layout/bars/bars.js';
import { complete } from '../../src/layout/bars/complete.js';
import { cutBars } from '../../src/layout/bars/cutting.js';
import { knapsack } from '../../src/layout/bars/knapsack.js';
import { inches, toIn } from '../../src/lengths/length.js';
import { sequence } from './random.js';

/** The package's types say a module where it gives a function. */
const load = highs as unknown as () => Promise<{
  solve(problem: string): { readonly Status: string; readonly ObjectiveValue: number };
}>;

/** Judges a layout with no code of its own: everything that is wrong with it, in words. */
function faults(layout: BarLayout, job: BarJob): string[] {
  const out: string[] = [];
  for (const stock of job.stocks) {
    const bars = layout.bars.filter((b) => b.stock === stock.id);
    for (const bar of bars) {
      let end = -job.kerf;
      for (const p of bar.pieces) {
        if (p.at < end + job.kerf) out.push(`${p.part} is closer than a kerf`);
        if (stock.items.find((i) => i.part === p.part)?.length !== p.length) out.push(`${p.part} has another length`);
        end = p.at + p.length;
      }
      if (bar.pieces.length === 0) out.push('a bar for nothing');
      if (end + bar.trim > bar.length) out.push('a piece runs off its bar');
      if (bar.rest !== Math.max(0, bar.length - bar.trim - end - job.kerf)) out.push('the rest is not what is left');
    }
    for (const b of stock.bars.filter((x) => x.name !== undefined))
      if (bars.filter((x) => x.rack === b.name).length > (b.count ?? 1)) out.push(`${b.name} is cut up twice`);
    const laid = [...bars.flatMap((b) => b.pieces.map((p) => p.part)), ...layout.unplaced.map((u) => u.part)].sort();
    if (
      laid.join() !==
      stock.items
        .map((i) => i.part)
        .sort()
        .join()
    )
      out.push('pieces are lost or made');
  }
  return out;
}

describe('a moulding, bars of 96, kerf 1/8, 1/4 trimmed (worked by hand)', () => {
  const pieces = (...lengths: number[]) => lengths.map((l, i) => ({ part: `m${i}`, length: inches(l) }));
  const job = (lengths: number[], ...more: BarJob['stocks'][number]['bars']): BarJob => ({
    stocks: [{ id: 'cove', bars: [{ length: inches(96) }, ...more], items: pieces(...lengths) }],
    kerf: inches(1 / 8),
    trim: inches(1 / 4),
    keep: inches(12),
  });
  it('two pieces of 40 and one of 15 3/8 leave nothing: 40 + 40 + 15 3/8 + two kerfs + 1/4 are 95 7/8, the last kerf runs off', () => {
    const layout = layBars(job([40, 40, 15.375]));
    expect(layout.bars.map((b) => [b.pieces.map((p) => toIn(p.at)), toIn(b.rest), b.keep])).toEqual([
      [[0, 40.125, 80.25], 0, false],
    ]);
    // 96 less 95 7/8 is one kerf.
    expect(layout.counts).toEqual([{ stock: 'cove', used: 1, proved: true }]);
    expect(layBars(job([40, 40, 15.5625])).counts[0]).toMatchObject({ used: 2, proved: true });
  });
  it('takes the rack where it does, and says what is too long', () => {
    const layout = layBars(job([40, 40, 30, 97], { name: 'M2', length: inches(31) }));
    expect(layout.bars.map((b) => [b.rack, b.pieces.map((p) => p.part)])).toEqual([
      [undefined, ['m0', 'm1']],
      ['M2', ['m2']],
    ]);
    expect(layout.unplaced).toEqual([{ part: 'm3', why: 'it is longer than a bar less its trim' }]);
  });
});

interface Instance {
  readonly c: number;
  readonly items: readonly (readonly [number, number])[];
  readonly opt?: number;
  readonly lb?: number;
  readonly ub?: number;
}
const published = JSON.parse(readFileSync(new URL('./published/bars-67.json', import.meta.url), 'utf8')) as Record<
  string,
  Instance
>;
describe('published instances (sources in published/bars-67.json)', () => {
  // Those called HARD want a better linear program than ours; the bench has all.
  const some = Object.keys(published).filter((k, i) => !k.startsWith('_') && !k.startsWith('HARD') && i % 4 === 1);
  it.each(some)('%s: as few bars as are known to do, proved where it is', (key) => {
    const { c, items, opt, lb, ub } = published[key] as Instance;
    const found = cutBars(
      items.map(([l]) => l),
      items.map(([, n]) => n),
      [{ room: c, cost: 1, count: Infinity }],
    );
    expect(found?.cost).toBe(opt ?? ub);
    expect(found?.bound).toBe(opt ?? lb);
    const took = items.map((_, i) => found?.bars.reduce((sum, b) => sum + (b.take[i] ?? 0), 0));
    expect(took).toEqual(items.map(([, n]) => n));
    for (const b of found?.bars ?? [])
      expect(b.take.reduce((sum, n, i) => sum + n * (items[i]?.[0] ?? 0), 0)).toBeLessThanOrEqual(c);
  });
});

describe('against an integer program solved by HiGHS: each piece on one bar (Kantorovich 1960)', () => {
  it('costs as little, with bars of two lengths and one from the rack', async () => {
    const solver = await load();
    const next = sequence(3);
    for (let n = 0; n < 20; n++) {
      const lengths = Array.from({ length: 4 + next(3) }, () => 8 + next(40));
      const kinds = [
        { room: 60, cost: 10, count: Infinity },
        { room: 42, cost: 8, count: Infinity },
        { room: 30, cost: 2, count: 1 },
      ];
      const bars = kinds.flatMap((k) => Array.from({ length: Math.min(k.count, lengths.length) }, () => k));
      const model = ['Minimize', ` obj: ${bars.map((b, k) => `${b.cost} y${k}`).join(' + ')}`, 'Subject To'];
      lengths.forEach((_, i) => model.push(` p${i}: ${bars.map((_b, k) => `x${i}_${k}`).join(' + ')} = 1`));
      bars.forEach((b, k) =>
        model.push(` b${k}: ${lengths.map((l, i) => `${l} x${i}_${k}`).join(' + ')} - ${b.room} y${k} <= 0`),
      );
      const names = bars.flatMap((_, k) => [`y${k}`, ...lengths.map((_l, i) => `x${i}_${k}`)]);
      const solved = solver.solve([...model, 'Binary', ` ${names.join(' ')}`, 'End', ''].join('\n'));
      expect(solved.Status).toBe('Optimal');
      const found = cutBars(
        lengths,
        lengths.map(() => 1),
        kinds,
      );
      expect(found?.cost).toBe(Math.round(solved.ObjectiveValue));
      expect(found?.bound).toBe(found?.cost);
    }
  });
});

describe('properties', () => {
  it('nothing is lost, all lie inside and a kerf apart, the rack is cut up once', () => {
    const items = fc.array(fc.integer({ min: 16, max: 1600 }), { minLength: 1, maxLength: 25 });
    const rack = fc.array(fc.integer({ min: 100, max: 1000 }), { maxLength: 3 });
    const length = (sixteenths: number): number => inches(sixteenths / 16);
    fc.assert(
      fc.property(items, rack, fc.constantFrom(0, 1, 2), fc.constantFrom(0, 4), (lengths, offcuts, kerf, trim) => {
        const job: BarJob = {
          stocks: [
            {
              id: 's',
              bars: [{ length: length(1536) }, ...offcuts.map((l, i) => ({ name: `K${i}`, length: length(l) }))],
              items: lengths.map((l, i) => ({ part: `p${i}`, length: length(l) })),
            },
          ],
          kerf: length(kerf),
          trim: length(trim),
          keep: inches(12),
          effort: 0.2,
        };
        expect(faults(layBars(job), job)).toEqual([]);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });
  it('a bar cut up at random is put together again, and one bar fewer is ruled out', () => {
    const next = sequence(21);
    for (let n = 0; n < 30; n++) {
      const lengths: number[] = [];
      const bars = 2 + next(3);
      for (let b = 0; b < bars; b++)
        for (let left = 500; left > 0;) {
          const l = Math.min(left, 60 + next(200));
          lengths.push(l);
          left -= l;
        }
      const found = cutBars(
        lengths,
        lengths.map(() => 1),
        [{ room: 500, cost: 1, count: Infinity }],
      );
      expect([found?.cost, found?.bound]).toEqual([bars, bars]);
      expect(
        complete(
          lengths,
          lengths.map(() => 1),
          [{ room: 500, cost: 1, count: Infinity }],
          bars - 1,
          1e6,
        ).kind,
      ).toBe('none');
    }
  });
  it('a knapsack by branches is worth as much as one by table', () => {
    const next = sequence(8);
    for (let n = 0; n < 40; n++) {
      const lengths = Array.from({ length: 8 }, () => 20 + next(60));
      const [counts, values] = [lengths.map(() => next(4)), lengths.map((l) => l + next(20))];
      const table = knapsack(lengths, counts, values, 200);
      // A thousand times as long: too large for the quick table, so that branches are used.
      const branches = knapsack(
        lengths.map((l) => l * 1000),
        counts,
        values,
        200_000,
        true,
      );
      expect([branches.value, branches.sure]).toEqual([table.value, true]);
    }
  });
});
