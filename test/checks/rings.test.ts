import { describe, expect, it } from 'vitest';
import type { CheckInput, Judgement } from '../../src/checks/check.js';
import { movement } from '../../src/checks/movement.js';
import { toIn } from '../../src/lengths/length.js';
import { inputOf } from './run.js';

const at = (input: CheckInput, made: number, driest: number, wettest: number): CheckInput => ({
  ...input,
  season: { made, driest, wettest },
});
const of = (input: CheckInput, code: string): readonly Judgement[] =>
  movement.run(input).judgements.filter((j) => j.code === code);

const PLY = { sheet: 'plywood-birch', nominal: '3/4', thickness: '3/4', size: ['96', '48'], grain: 'length' };
const THIN = { sheet: 'plywood-birch', nominal: '1/4', thickness: '0.205', size: ['96', '48'], grain: 'length' };
/** A drawer on wood between plywood, its front 9 in high of white oak so sawn, with the gap above. */
const front = (cut: string, gap: string): Promise<CheckInput> =>
  inputOf({
    stock: { wood: { lumber: 'oak-white', quarter: '4/4', cut }, ply: PLY, thin: THIN },
    parts: {
      left: { mark: 'A1', stock: 'ply', grain: 'up', across: ['0', '3/4'], deep: ['0', '12'], up: ['0', '20'] },
      right: { mark: 'A2', mirror: 'left', about: '8' },
      low: {
        mark: 'R1',
        stock: 'ply',
        grain: 'across',
        across: ['left', 'right'],
        deep: ['0', '12'],
        up: { from: '4', size: '3/4' },
      },
      high: {
        mark: 'R2',
        stock: 'ply',
        grain: 'across',
        across: ['left', 'right'],
        deep: ['0', '12'],
        up: { from: `low.top + 9 + ${gap}`, size: '3/4' },
      },
    },
    joints: { held: { kind: 'dado', part: ['low', 'high'], into: ['left', 'right'] } },
    drawers: {
      d: {
        mark: 'D{n}',
        across: ['left', 'right'],
        up: ['low', 'high'],
        front: { fit: 'inset', kind: 'integral', stock: 'wood', pulls: 'none' },
        box: { stock: 'wood', bottom: 'thin', runner: 'none' },
      },
    },
  });

describe('rings at the worst of their band', () => {
  // White oak .00365 and .00180. Quartered, worst at 60 degrees: (.00365 + 3 x .00180) / 4 = .0022625; rift at 30: .0031875.
  it.each([
    ['quartered', 0.0018, 0.0022625],
    ['rift', 0.002725, 0.0031875],
  ])('%s: the gap closes by %f of the front for each per cent, at worst by %f', async (cut, named, worst) => {
    const j = of(at(await front(cut, '5/32'), 8, 8, 11), 'front-binds')[0];
    const size = (name: string): number => toIn(j?.worked.inputs.find((i) => i.name === name)?.quantity.value ?? NaN);
    const closes = (c: number): number => size('gap as made') - size('front') * c * 3;
    expect(toIn(j?.figure.value ?? 0)).toBeCloseTo(closes(named), 4);
    expect(size('the same at the worst rings of its sawing')).toBeCloseTo(closes(worst), 4);
  });
  it('what only boards at the edge of their sawing do is told, one step milder; its twin in a drier room is silent', async () => {
    const told = async (wettest: number): Promise<unknown> =>
      of(at(await front('quartered', '3/32'), 8, 8, wettest), 'front-binds').map((j) => [
        j.verdict,
        j.about.startsWith('at the worst rings'),
      ]);
    // A front of 9 in under 3/32. To 11: .0938 - 27 x .0022625 = .0327 is over 1/32 even at worst.
    expect(await told(11)).toEqual([['pass', false]]);
    // To 11 1/2: .0938 - 31.5 x .0018 = .0371; at worst .0938 - 31.5 x .0022625 = .0225, under nine tenths of 1/32.
    expect(await told(11.5)).toEqual([
      ['pass', false],
      ['note', true],
    ]);
  });
  it('flat wood is at its worst as it is named: nothing stands beside it', async () => {
    const [j] = of(at(await front('flat', '5/32'), 8, 8, 11), 'front-binds');
    expect(j?.worked.inputs.some((i) => i.name.includes('worst rings'))).toBe(false);
  });
});

/** One loose board of hard maple, so wide and so sawn. */
const loose = (deep: string, cut?: string, more: object = {}): Promise<CheckInput> =>
  inputOf({
    stock: { wood: { lumber: 'hard-maple', quarter: '4/4', ...(cut ? { cut } : {}) } },
    parts: {
      top: { mark: 'T1', stock: 'wood', grain: 'across', across: ['0', '40'], deep: ['0', deep], up: ['10', '10 3/4'] },
    },
    ...more,
  });

describe('wide flat boards go hollow', () => {
  // Hard maple .00353 and .00165: (.00188 x 4 / 4) x 8^2 / 8 = .01504 in for 8 in and 4 %.
  it('8 in of hard maple, 4 %, 4 in from the pith: .015', async () => {
    const [j] = of(at(await loose('8', 'flat'), 8, 4.0001, 12), 'board-cups');
    expect(j?.verdict).toBe('pass');
    expect(toIn(j?.figure.value ?? 0)).toBeCloseTo(0.015, 3);
  });
  it('24 in go hollow by .135 and are told with what would do; quartered, narrow or held ones are silent', async () => {
    const [j] = of(at(await loose('24', 'flat'), 8, 6, 12), 'board-cups');
    // .00188 x 24^2 / 8 = .1354, over twice 1/16: sqrt(.1354 / .0625) = 1.47, so two staves.
    expect(toIn(j?.figure.value ?? 0)).toBeCloseTo(0.1354, 3);
    expect([j?.verdict, j?.remedy?.includes('2 staves')]).toEqual(['warning', true]);
    expect(of(at(await loose('24', 'quartered'), 8, 6, 12), 'board-cups')).toEqual([]);
    expect(of(at(await loose('5', 'flat'), 8, 6, 12), 'board-cups')).toEqual([]);
    const battens = {
      parts: {
        top: {
          mark: 'T1',
          stock: 'wood',
          grain: 'across',
          across: ['0', '40'],
          deep: ['0', '24'],
          up: ['10', '10 3/4'],
        },
        batten: {
          mark: 'B1',
          stock: 'wood',
          grain: 'deep',
          across: ['4', '6'],
          deep: ['1', '23'],
          up: ['9 1/4', '10'],
        },
      },
      joints: { on: { kind: 'screw', part: 'batten', into: 'top', screw: '#8 x 1 1/4', hole: 'slotted', count: 3 } },
    };
    expect(of(at(await loose('24', 'flat', battens), 8, 6, 12), 'board-cups').map((x) => x.subject)).toEqual([]);
  });
  it('in staves with their rings turned in turn each is a board of its own: a sixteenth in four', async () => {
    const staves = { joints: { staves: { kind: 'edge', part: 'top', staves: 4 } } };
    const [j] = of(at(await loose('24', 'flat', staves), 8, 6, 12), 'board-cups');
    expect(toIn(j?.figure.value ?? 0)).toBeCloseTo(0.1354 / 16, 3);
  });
});
