import { describe, expect, it } from 'vitest';
import { thickness } from '../../src/checks/thickness.js';
import { panelById } from '../../src/data/panels.js';
import { inches, mm, toIn, toMm } from '../../src/lengths/length.js';
import { drawnAllowed } from '../../src/wood/screws.js';
import { thicknessRange } from '../../src/wood/thickness.js';
import { inputOf, ran } from './run.js';

const panel = (id: string): NonNullable<ReturnType<typeof panelById>> => {
  const found = panelById(id);
  if (!found) throw new Error(id);
  return found;
};

describe('how thick sheets are that are sold by a name', () => {
  it.each([
    // A mill's sheet for birch plywood; EN 315 for 18 mm sanded: +0.74 -0.94; ANSI A208.2: 0.005 in either way.
    ['plywood-birch', '18 mm', 17.1, 18.1],
    ['plywood-birch', '6.5 mm', 6.1, 6.9],
    ['plywood', '18 mm', 17.06, 18.74],
    ['mdf', '3/4', 18.923, 19.177],
  ] as const)('%s %s: %f to %f mm', (id, sold, from, to) => {
    const range = thicknessRange(panel(id), sold, 'in');
    expect([toMm(range?.from ?? mm(0)), toMm(range?.to ?? mm(0))]).toEqual([
      expect.closeTo(from, 6),
      expect.closeTo(to, 6),
    ]);
  });
  it('3/4 plywood: from 45/64 (HP-1, from memory) to 49/64 (PS 1)', () => {
    const range = thicknessRange(panel('plywood-oak'), '3/4', 'in');
    expect([toIn(range?.from ?? inches(0)), toIn(range?.to ?? inches(0))]).toEqual([45 / 64, 49 / 64]);
    expect(range?.memory).toBe(true);
  });
  it('a name that is no size, or a panel of which nothing was read, has none', () => {
    expect(thicknessRange(panel('plywood-oak'), 'cabinet grade', 'in')).toBeUndefined();
    expect(thicknessRange(panel('osb'), '1/2', 'in')).toBeUndefined();
  });
});

describe('panel-thickness-odd', () => {
  const found = async (sheet: string, nominal: string | undefined, measured: string): Promise<string[]> => {
    const ply = { sheet, ...(nominal ? { nominal } : {}), thickness: measured, size: ['96', '48'] };
    const def = {
      stock: { ply },
      parts: {
        shelf: { mark: 'S1', stock: 'ply', grain: 'across', across: ['0', '20'], deep: ['0', '10'], up: { from: '0' } },
      },
    };
    return ran(thickness, await inputOf(def)).findings.map((f) => `${f.code}: ${f.hint?.split(':')[0] ?? ''}`);
  };
  it('1/4 plywood put down as .25 was not measured; as .205 it is silent; as .3 it is another sheet', async () => {
    expect(await found('plywood-birch', '1/4', '1/4')).toEqual([
      'panel-thickness-odd: Measure the sheet with a caliper',
    ]);
    expect(await found('plywood-birch', '1/4', '0.205')).toEqual([]);
    expect(await found('plywood-birch', '1/4', '0.3')).toHaveLength(1);
  });
  it('MDF may be just as thick as its name; without a name nothing is judged', async () => {
    expect(await found('mdf', '3/4', '3/4')).toEqual([]);
    expect(await found('mdf', '3/4', '0.74')).toHaveLength(1);
    expect(await found('plywood-birch', undefined, '1/4')).toEqual([]);
  });
});

describe('screws drawn out of panels', () => {
  const made = (material: string): { kind: 'sheet'; material: string } => ({ kind: 'sheet', material });
  const LBF = 4.4482216152605;
  it('MDF, number 8, .63 in through the face: a fifth of 2655 √.164 (.63 − .0547)^1.25 .8² = 344 lbf', () => {
    const held = drawnAllowed(made('mdf'), 'face', 0.164 * 25.4, 0.63 * 25.4);
    expect((held?.newtons ?? 0) / LBF).toBeCloseTo((2655 * Math.sqrt(0.164) * 0.57533 ** 1.25 * 0.8 ** 2) / 5, 0);
    expect(held?.source).toContain('from memory');
    // Through the edge 2055 in place of 2655.
    const edge = drawnAllowed(made('mdf'), 'edge', 0.164 * 25.4, 0.63 * 25.4);
    expect((edge?.newtons ?? 0) / (held?.newtons ?? 1)).toBeCloseTo(2055 / 2655, 2);
  });
  it('plywood holds through its face as wood of its gravity, and is not counted on through its edge', () => {
    const held = drawnAllowed(made('plywood-birch'), 'face', 4, 10);
    const oak = drawnAllowed({ kind: 'lumber', material: 'oak-white' }, 'face', 4, 10);
    // .65 against .68, squared.
    expect((held?.newtons ?? 0) / (oak?.newtons ?? 1)).toBeCloseTo((0.65 / 0.68) ** 2, 6);
    expect(drawnAllowed(made('plywood-birch'), 'edge', 4, 10)).toBeUndefined();
  });
});
