import { describe, expect, it } from 'vitest';
import { inches } from '../../src/lengths/length.js';
import { clash } from '../../src/piece/merge.js';
import type { BoreCut, BoxCut, Cut } from '../../src/words/cut.js';
import { definition, findingsOf, part } from './sample.js';

const SIZE = [inches(12), inches(0.75), inches(6)] as const;
const common = { from: 'j', mates: [], rank: 3 } as const;
/** A hole of 1/4 in the front, `deep` deep, its mouth at (4, 3), leaning to the right by 75 degrees or as told. */
const bore = (more: Partial<BoreCut> = {}): BoreCut => ({
  ...{ ...common, id: 'a', shape: 'bore', as: 'hole', face: 'front' },
  ...{ at: [inches(4), inches(3)], diameter: inches(0.25), depth: inches(2) },
  ...{ tilt: { toward: 'right', degrees: 75 } },
  ...more,
});
const box = (x: [number, number], y: [number, number], z: [number, number]): BoxCut => ({
  ...{ ...common, id: 'b', shape: 'box', as: 'mortise', face: 'front' },
  at: [x, y, z].map((s) => s.map((v) => inches(v))) as unknown as BoxCut['at'],
});
const both = (a: Cut, b: Cut): string[] => [clash(a, b, SIZE), clash(b, a, SIZE)];

describe('a bore that leans', () => {
  // 2 along at 75 degrees from square: 2 sin 75 = 1.932 to the right, 2 cos 75 = 0.518 deep.
  it('runs into what stands in its way, and passes under what stands over its middle line by more than its radius', () => {
    // At 5.5 its middle is 1.5 / tan 75 = 0.402 deep, its rim 0.125 / sin 75 = 0.129 nearer the face: 0.273.
    expect(both(bore(), box([5.49, 5.5], [0, 0.28], [2, 4]))).toEqual(['yes', 'yes']);
    expect(both(bore(), box([5.49, 5.5], [0, 0.26], [2, 4]))).toEqual(['no', 'no']);
  });
  it('passes beside it', () => {
    expect(both(bore(), box([5, 6], [0, 0.75], [3.13, 4]))).toEqual(['no', 'no']);
    expect(both(bore(), box([5, 6], [0, 0.75], [3.12, 4]))).toEqual(['yes', 'yes']);
  });
  it('with its wide seat it needs more room, as far as the seat goes', () => {
    const seated = bore({ seat: { diameter: inches(0.5), depth: inches(1) } });
    expect(both(seated, box([4, 4.5], [0, 0.75], [3.2, 4]))).toEqual(['yes', 'yes']);
    expect(both(seated, box([5.6, 6], [0, 0.75], [3.2, 4]))).toEqual(['no', 'no']);
  });
  it('meets another that leans toward it, and one that stands square; not one beside it', () => {
    const toward = (up: number): BoreCut =>
      bore({ id: 'b', at: [inches(7), inches(up)], tilt: { toward: 'left', degrees: 75 } });
    expect(both(bore(), toward(3))).toEqual(['yes', 'yes']);
    expect(both(bore(), toward(3.24))).toEqual(['yes', 'yes']);
    expect(both(bore(), toward(3.26))).toEqual(['no', 'no']);
    const { tilt: _none, ...square } = bore({ id: 'b', at: [inches(5.5), inches(3.2)], depth: 'through' });
    expect(both(bore(), square)).toEqual(['yes', 'yes']);
    expect(both(bore(), { ...square, at: [inches(5.5), inches(3.3)] })).toEqual(['no', 'no']);
  });
});

it('two pocket screws that want the same wood are an error that names both joints', () => {
  const pockets = { kind: 'screw', part: 'rail', into: 'post', hole: 'pocket', face: 'back', count: 1 } as const;
  const findings = findingsOf(
    definition({
      parts: {
        post: part({ across: ['0', '2'], deep: ['0', '3/4'], up: ['0', '9'], grain: 'up' }),
        rail: part({ across: ['post', '14'], deep: ['0', '3/4'], up: ['2', '4'], grain: 'across' }),
      },
      joints: { one: pockets, two: pockets },
    }),
  );
  expect(findings.filter((f) => f.code === 'joints-clash').map((f) => f.touches)).toEqual([['rail', 'one.1', 'two.1']]);
});
