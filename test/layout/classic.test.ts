import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { nestSheets, type NestJob } from '../../src/layout/nest.js';
import { faults } from './check.js';

interface Instance {
  readonly bin: readonly [number, number];
  readonly items: readonly (readonly number[])[];
  readonly best: { readonly og: number; readonly rg: number };
  readonly free: { readonly o: number; readonly r: number };
}
const classic = JSON.parse(readFileSync(new URL('./classic.json', import.meta.url), 'utf8')) as {
  instances: Record<string, Instance>;
};
const job = (x: Instance, mayTurn: boolean): NestJob => ({
  kerf: 0,
  trim: 0,
  budget: 200,
  stocks: [
    {
      id: 's',
      sheets: [{ length: x.bin[0], width: x.bin[1] }],
      grain: 'length',
      items: x.items.flatMap(([w, h, n], i) =>
        Array.from({ length: n ?? 1 }, (_, k) => ({
          part: `p${String(i).padStart(3, '0')}.${k}`,
          length: w as number,
          width: h as number,
          mayTurn,
        })),
      ),
    },
  ],
});

describe('published instances (sources in classic.json)', () => {
  it.each(Object.keys(classic.instances))('%s: within one of the fewest known, never proved wrongly', (key) => {
    const x = classic.instances[key] as Instance;
    for (const turn of [false, true]) {
      const asked = job(x, turn);
      const layout = nestSheets(asked);
      const { used, bound } = layout.counts[0] as { used: number; bound: number };
      expect(used).toBeLessThanOrEqual((turn ? x.best.rg : x.best.og) + 1);
      // A lower bound over the best known number would be a false proof.
      expect(bound).toBeLessThanOrEqual(turn ? x.free.r : x.free.o);
      expect(bound).toBeGreaterThanOrEqual((turn ? x.free.r : x.free.o) - 1);
      for (const sheet of layout.sheets) expect(faults(sheet, asked)).toEqual([]);
    }
  });
});
