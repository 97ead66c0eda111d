import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACES, faceAxis, faceSign, third, type Axis, type Face } from '../../src/geom/axis.js';
import type { Box3, Span } from '../../src/geom/box.js';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import type { Recipe } from '../../src/geom/recipe.js';
import { cutRecipe } from '../../src/solids/cutRecipe.js';
import type { Cut } from '../../src/words/cut.js';

/** Volumes are hand sums on a blank of 100 x 60 x 40 mm. */
const mm = (x: number): number => Math.round(x * 1e6);
const s = (a: number, b: number): Span => [mm(a), mm(b)];
const BLANK: Box3 = [s(0, 100), s(0, 60), s(0, 40)];
const SIZE = [100, 60, 40] as const;
const base = { id: 'a.1', from: 'a', mates: [], rank: 2 } as const;
const blank: Recipe = { op: 'box', at: BLANK };

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => {
  kernel.dispose();
  expect(kernel.handles().freed).toBe(kernel.handles().made);
});
const taken = (cut: Cut): number => {
  const tool = cutRecipe(cut, BLANK);
  return tool ? kernel.overlap(blank, tool).volume : 0;
};
const where = (cut: Cut): Box3 | undefined => kernel.overlap(blank, cutRecipe(cut, BLANK)!).at;

describe('each shape takes what a hand sum says', () => {
  it('box', () => {
    const cut: Cut = { ...base, shape: 'box', as: 'groove', face: 'top', at: [s(0, 100), s(10, 16), s(34, 40)] };
    expect(taken(cut)).toBeCloseTo(100 * 6 * 6, 6);
  });
  it.each(FACES)('dovetail socket from the %s', (face) => {
    const deep = faceAxis(face);
    const taper = ((deep + 1) % 3) as Axis;
    const cut: Cut = {
      ...base,
      shape: 'dovetail',
      as: 'socket',
      face,
      run: third(deep, taper),
      taper,
      runSpan: s(0, 20),
      atFace: s(10, 18),
      atFloor: s(8, 20),
      depth: mm(6),
    };
    expect(taken(cut)).toBeCloseTo(((8 + 12) / 2) * 6 * 20, 6);
    expect(where(cut)![deep]).toEqual(faceSign(face) < 0 ? [0, 6] : [SIZE[deep] - 6, SIZE[deep]]);
  });
  it.each(FACES)('tails at the %s end', (end) => {
    const along = faceAxis(end);
    const taper = ((along + 2) % 3) as Axis;
    const across = third(along, taper);
    const at = faceSign(end) < 0 ? 9 : SIZE[along] - 9;
    const cut: Cut = {
      ...base,
      shape: 'tails',
      as: 'tails',
      end,
      base: mm(at),
      taper,
      keep: [0, mm(SIZE[across])],
      tails: [
        { atBase: s(4, 10), atEnd: s(2, 12) },
        { atBase: s(20, 26), atEnd: s(18, 28) },
      ],
    };
    expect(taken(cut)).toBeCloseTo(SIZE[across] * 9 * (SIZE[taper] - 2 * 8), 6);
  });
  it('tenon with a haunch, and mitred', () => {
    const tenon = (mitre?: { long: Face }): Cut => ({
      ...base,
      shape: 'tenon',
      as: 'tenon',
      end: 'right',
      shoulder: mm(70),
      ...(mitre ? { mitre } : {}),
      tongues: [
        { a: s(20, 30), b: s(10, 40), length: mm(30) },
        { a: s(20, 30), b: s(0, 10), length: mm(5), haunch: true },
      ],
    });
    expect(taken(tenon())).toBeCloseTo(30 * 60 * 40 - 10 * 30 * 30 - 10 * 10 * 5, 6);
    // The mitre takes a prism of 10 x 10 / 2, 30 long, off the tongue; the haunch stays as it was.
    expect(taken(tenon({ long: 'front' }))).toBeCloseTo(30 * 60 * 40 - 10 * 30 * 30 - 500 + 50 * 30, 6);
    expect(taken(tenon({ long: 'back' }))).toBeCloseTo(taken(tenon({ long: 'front' })), 6);
  });
  it.each(FACES)('taper toward the %s end', (end) => {
    const along = faceAxis(end);
    const face = FACES[((along + 1) % 3) * 2 + 1]!;
    const cut: Cut = {
      ...base,
      shape: 'taper',
      as: 'taper',
      face,
      end,
      begin: mm(faceSign(end) > 0 ? SIZE[along] - 30 : 30),
      off: mm(8),
    };
    expect(taken(cut)).toBeCloseTo((30 * 8 * SIZE[third(along, faceAxis(face))]) / 2, 6);
    const want = faceSign(end) > 0 ? [SIZE[along] - 30, SIZE[along]] : [0, 30];
    expect(where(cut)![along]).toEqual(want);
  });
  it.each(FACES)('arc in the %s edge: area of a circular segment', (face) => {
    const along = ((faceAxis(face) + 1) % 3) as Axis;
    const cut: Cut = { ...base, shape: 'arc', as: 'arc', face, along, over: s(4, 36), rise: mm(6) };
    const r = (16 * 16 + 6 * 6) / 12; // r = (c^2 + h^2) / 2h with half chord c
    const half = Math.asin(16 / r);
    const segment = r * r * (half - Math.sin(half) * Math.cos(half));
    const thick = SIZE[third(faceAxis(face), along)];
    expect(taken(cut)).toBeLessThan(segment * thick);
    expect(taken(cut)).toBeGreaterThan((segment - 0.01 * 35) * thick);
    const at = where(cut)![faceAxis(face)];
    expect(at[1] - at[0]).toBeGreaterThan(5.98);
    expect(at[1] - at[0]).toBeLessThanOrEqual(6);
  });
  it('bores: plain, through, slotted, seated', () => {
    const bore = (more: Partial<Extract<Cut, { shape: 'bore' }>>): number =>
      taken({
        ...base,
        shape: 'bore',
        as: 'hole',
        face: 'top',
        at: [mm(50), mm(30)],
        diameter: mm(10),
        depth: mm(12),
        ...more,
      });
    const disc = Math.PI * 25;
    const near = (got: number, want: number): void => {
      expect(got).toBeLessThan(want);
      expect(got).toBeGreaterThan(want * 0.985);
    };
    near(bore({}), disc * 12);
    near(bore({ depth: 'through' }), disc * 40);
    near(bore({ slot: { axis: 0, length: mm(30) } }), (disc + 20 * 10) * 12);
    near(bore({ slot: { axis: 1, length: mm(30) } }), (disc + 20 * 10) * 12);
    near(bore({ seat: { diameter: mm(20), depth: mm(3) } }), disc * 9 + Math.PI * 100 * 3);
    // A leaning hole that comes out at the other side: its section along the face is 1 / cos larger.
    near(bore({ depth: 'through', tilt: { toward: 'right', degrees: 15 } }), (disc * 40) / Math.cos(Math.PI / 12));
  });
  it.each(['left', 'right', 'front', 'back'] as const)('a leaning hole goes toward the %s', (toward) => {
    for (const face of ['top', 'bottom'] as const) {
      const cut: Cut = {
        ...base,
        shape: 'bore',
        as: 'pocket',
        face,
        at: [mm(50), mm(30)],
        diameter: mm(2),
        depth: mm(20),
        tilt: { toward, degrees: 30 },
      };
      const at = where(cut)![faceAxis(toward)];
      const mid = faceAxis(toward) === 0 ? 50 : 30;
      const reach = faceSign(toward) > 0 ? at[1] - mid : mid - at[0];
      expect(reach).toBeCloseTo(20 * 0.5 + Math.cos(Math.PI / 6), 1);
    }
  });
  it('chamfers, round-overs and coves on all twelve arrises', () => {
    for (const f of FACES) {
      for (const g of FACES) {
        if (faceAxis(f) === faceAxis(g)) continue;
        const arris = (as: 'chamfer' | 'round-over' | 'cove'): number =>
          taken({ ...base, shape: 'arris', as, faces: [f, g], size: mm(8), over: s(0, 20) });
        expect(arris('chamfer')).toBeCloseTo(32 * 20, 6);
        expect(arris('round-over') / 20).toBeGreaterThan(64 * (1 - Math.PI / 4));
        expect(arris('round-over') / 20).toBeLessThan(64 * (1 - Math.PI / 4) + 0.13);
        expect(arris('cove') / 20).toBeLessThan(16 * Math.PI);
        expect(arris('cove') / 20).toBeGreaterThan(16 * Math.PI - 0.13);
      }
    }
  });
  it.each(FACES)('outline kept on the %s', (face) => {
    const points = [
      [5, 5],
      [35, 5],
      [20, 35],
    ] as const;
    const cut: Cut = {
      ...base,
      shape: 'outline',
      as: 'outline',
      face,
      keep: points.map(([x, y]) => ({ to: [mm(x), mm(y)] as const })),
    };
    expect(taken(cut)).toBeCloseTo(100 * 60 * 40 - 450 * SIZE[faceAxis(face)], 5);
  });
  it('plane: a bevel at 45 degrees, whole and within a box', () => {
    const bevel: Cut = {
      ...base,
      shape: 'plane',
      as: 'bevel',
      point: [mm(90), 0, mm(40)],
      normal: [Math.SQRT1_2, 0, Math.SQRT1_2],
    };
    expect(taken(bevel)).toBeCloseTo(50 * 60, 5);
    expect(taken({ ...bevel, within: [s(0, 100), s(0, 20), s(0, 40)] })).toBeCloseTo(50 * 20, 5);
    expect(cutRecipe({ ...bevel, point: [mm(300), 0, mm(300)] }, BLANK)).toBeUndefined();
  });
  it('a pencil line takes nothing', () => {
    expect(
      cutRecipe({ ...base, shape: 'mark', as: 'line', face: 'top', axis: 0, over: s(0, 9), at: mm(3) }, BLANK),
    ).toBeUndefined();
  });
});
