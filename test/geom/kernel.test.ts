import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { IDENTITY, type Placement } from '../../src/geom/placement.js';
import { flatten } from '../../src/geom/outline.js';
import type { Recipe } from '../../src/geom/recipe.js';

const mm = (x: number): number => Math.round(x * 1e6);
const box = (x0: number, x1: number, y0: number, y1: number, z0: number, z1: number): Recipe => ({
  op: 'box',
  at: [
    [mm(x0), mm(x1)],
    [mm(y0), mm(y1)],
    [mm(z0), mm(z1)],
  ],
});
const MIRROR: Placement = {
  rotation: [
    [-1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  origin: [0, 0, 0],
};
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => {
  kernel.dispose();
  const { made, freed } = kernel.handles();
  expect(made).toBeGreaterThan(100);
  expect(freed).toBe(made);
});

describe('primitives', () => {
  it('measures a box exactly', () => {
    const b = box(-100.1234567, 20.000001, 3, 4, 0.5, 1.25);
    expect(kernel.bounds(b)).toEqual([
      [-100.123457, 20.000001],
      [3, 4],
      [0.5, 1.25],
    ]);
    expect(kernel.volume(b)).toBeCloseTo(120.123458 * 0.75, 9);
    expect(kernel.mesh(b).triangles.length).toBe(36);
    expect([...kernel.mesh(b).positions].slice(0, 3)).toEqual([-100.123457, 3, 0.5]);
  });
  it('an empty box is empty', () => {
    expect(kernel.bounds(box(0, 0, 0, 1, 0, 1))).toBeUndefined();
    expect(kernel.volume(box(0, 0, 0, 1, 0, 1))).toBe(0);
  });
  it.each([0, 1, 2] as const)('pushes an L with a hole along axis %i', (axis) => {
    const l: Recipe = {
      op: 'prism',
      axis,
      from: mm(5),
      to: mm(7.5),
      outlines: [
        (
          [
            [0, 0],
            [30, 0],
            [30, 10],
            [10, 10],
            [10, 20],
            [0, 20],
          ] as const
        ).map(([x, y]) => ({ to: [mm(x), mm(y)] as const })),
        (
          [
            [2, 2],
            [2, 4],
            [5, 4],
            [5, 2],
          ] as const
        ).map(([x, y]) => ({ to: [mm(x), mm(y)] as const })),
      ],
    };
    expect(kernel.volume(l)).toBeCloseTo((300 + 100 - 6) * 2.5, 8);
    const want = [
      [0, 30],
      [0, 20],
    ] as [number, number][];
    want.splice(axis, 0, [5, 7.5]);
    expect(kernel.bounds(l)).toEqual(want);
  });
  it('flattens a round outline within 0.01 mm: area between those of the inner polygon and the circle', () => {
    const r = 40;
    const disc: Recipe = {
      op: 'prism',
      axis: 2,
      from: 0,
      to: mm(1),
      outlines: [
        [
          { to: [mm(r), 0], bulge: 1 },
          { to: [mm(-r), 0], bulge: 1 },
        ],
      ],
    };
    const v = kernel.volume(disc);
    expect(v).toBeLessThan(Math.PI * r * r);
    expect(v).toBeGreaterThan(Math.PI * (r - 0.01) ** 2);
  });
  it.each([0, 1, 2] as const)('turns a stepped peg about axis %i', (axis) => {
    const peg: Recipe = {
      op: 'turned',
      axis,
      centre: [mm(1), mm(2), mm(3)],
      profile: [
        [mm(10), 0],
        [mm(10), mm(5)],
        [mm(4), mm(5)],
        [mm(4), mm(25)],
      ],
    };
    const exact = Math.PI * (100 * 5 + 16 * 20);
    expect(kernel.volume(peg)).toBeLessThan(exact);
    expect(kernel.volume(peg)).toBeGreaterThan(exact * 0.99);
    const b = kernel.bounds(peg)!;
    expect(b[axis]).toEqual([0, 25]);
    for (const other of [0, 1, 2].filter((a) => a !== axis))
      expect(b[other as 0]).toEqual([other + 1 - 10, other + 1 + 10]);
  });
  it('hulls a wedge', () => {
    const wedge: Recipe = {
      op: 'hull',
      points: [
        [0, 0, 0],
        [mm(10), 0, 0],
        [0, mm(6), 0],
        [0, 0, mm(3)],
        [mm(10), 0, mm(3)],
        [0, mm(6), mm(3)],
      ],
    };
    expect(kernel.volume(wedge)).toBeCloseTo(90, 9);
  });
});

describe('operations', () => {
  const board = box(0, 100, 0, 20, 0, 500);
  it('touching is no overlap, a hundredth of a millimetre is', () => {
    expect(kernel.overlap(board, box(100, 120, 0, 20, 0, 500)).volume).toBe(0);
    const hit = kernel.overlap(board, box(99.99, 120, 0, 20, 0, 500));
    expect(hit.volume).toBeCloseTo(0.01 * 20 * 500, 7);
    expect(hit.at).toEqual([
      [99.99, 100],
      [0, 20],
      [0, 500],
    ]);
  });
  it('cuts severed in two are two lumps; a hollow is one', () => {
    expect(kernel.lumps(board)).toBe(1);
    expect(kernel.lumps({ op: 'cut', from: board, tools: [box(-1, 101, -1, 21, 100, 110)] })).toBe(2);
    expect(kernel.lumps({ op: 'cut', from: board, tools: [box(10, 20, 5, 10, 100, 110)] })).toBe(1);
  });
  it('slices: outer ring anticlockwise, hole clockwise, no stray points', () => {
    const bored: Recipe = { op: 'cut', from: board, tools: [box(10, 20, 5, 10, 100, 400)] };
    expect(kernel.slice(bored, [0, 0, 250], [1, 0, 0], [0, 1, 0])).toEqual([
      [
        [0, 0],
        [100, 0],
        [100, 20],
        [0, 20],
      ],
      [
        [10, 5],
        [10, 10],
        [20, 10],
        [20, 5],
      ],
    ]);
    expect(kernel.slice(bored, [0, 7, 0], [1, 0, 0], [0, 0, 1]).map((r) => r.length)).toEqual([4, 4]);
  });
  it('a section along a face shows one side of it and no more', () => {
    const stacked = [board, box(0, 100, 0, 20, 500, 600)].map(
      (b) => kernel.slice(b, [0, 0, 500], [1, 0, 0], [0, 1, 0]).length,
    );
    expect(stacked.reduce((a, b) => a + b, 0)).toBe(1);
  });
  it('shapes without room are empty, not errors', () => {
    const none: Recipe[] = [
      { op: 'prism', axis: 1, from: 0, to: 0, outlines: [[{ to: [0, 0] }, { to: [mm(1), 0] }, { to: [0, mm(1)] }]] },
      { op: 'prism', axis: 1, from: 0, to: mm(1), outlines: [[{ to: [0, 0] }, { to: [mm(1), 0] }]] },
      {
        op: 'turned',
        axis: 0,
        centre: [0, 0, 0],
        profile: [
          [mm(4), mm(2)],
          [mm(4), mm(2)],
        ],
      },
      {
        op: 'hull',
        points: [
          [0, 0, 0],
          [mm(1), 0, 0],
          [0, mm(1), 0],
          [mm(1), mm(1), 0],
        ],
      },
      { op: 'hull', points: [] },
      { op: 'joined', of: [] },
    ];
    for (const recipe of none)
      expect([recipe, kernel.volume(recipe), kernel.bounds(recipe)]).toEqual([recipe, 0, undefined]);
    expect(kernel.volume({ op: 'cut', from: board, tools: none })).toBe(kernel.volume(board));
  });
  it('a mirrored part has the same volume and the mirrored box', () => {
    const notched: Recipe = { op: 'cut', from: board, tools: [box(0, 30, 0, 10, 0, 50)] };
    const other: Recipe = { op: 'placed', by: MIRROR, of: notched };
    expect(kernel.volume(other)).toBeCloseTo(kernel.volume(notched), 8);
    expect(kernel.bounds(other)![0]).toEqual([-100, 0]);
    expect(kernel.overlap(other, notched).volume).toBe(0);
  });
  it('meshes keep the nanometre, mirrored too', () => {
    const b = box(900.000001, 1000.000003, 0, 1, 700.000009, 701);
    for (const recipe of [b, { op: 'placed', by: MIRROR, of: b } as Recipe]) {
      const mesh = kernel.mesh(recipe);
      expect(mesh.positions.length).toBe(24);
      const xs = [...new Set([...mesh.positions].filter((_, i) => i % 3 === 0).map(Math.abs))].sort();
      expect(xs).toEqual([1000.000003, 900.000001]);
    }
  });
  it.each([0, 1, 2] as const)('a rounded prism along axis %i has two corners for each point of its outline', (axis) => {
    const quarter = 0.41421356237309503;
    const at = (x: number, y: number, bulge?: number) => ({ to: [mm(x), mm(y)] as const, ...(bulge ? { bulge } : {}) });
    const outline = [at(90, 0), at(100, 10, quarter), at(100, 50), at(0, 50)];
    const count = flatten([...outline, at(0, 0)]).length;
    const mesh = kernel.mesh({ op: 'prism', axis, from: 0, to: mm(20), outlines: [[...outline, at(0, 0)]] });
    expect(mesh.positions.length / 3).toBe(2 * count);
    expect(mesh.triangles.length / 3).toBe(2 * (2 * count - 2)); // Euler: closed surface, T = 2V - 4
  });
  it('equal content has an equal key, other content another', () => {
    expect(kernel.key(box(0, 1, 0, 1, 0, 1))).toBe(kernel.key(box(-0, 1, 0, 1, 0, 1)));
    expect(kernel.key(box(0, 1, 0, 1, 0, 1))).not.toBe(kernel.key(box(0, 1, 0, 1, 0, 2)));
    expect(kernel.key({ op: 'placed', by: IDENTITY, of: board })).not.toBe(kernel.key(board));
  });
});

const arbBox = fc
  .tuple(...[0, 1, 2].flatMap(() => [fc.integer({ min: -40, max: 40 }), fc.integer({ min: 1, max: 60 })]))
  .map(([x, a, y, b, z, c]) => box(x!, x! + a!, y!, y! + b!, z!, z! + c!));
const arbSolid: fc.Arbitrary<Recipe> = fc.oneof(
  arbBox,
  fc.tuple(arbBox, arbBox).map(([a, b]): Recipe => ({ op: 'cut', from: a, tools: [b] })),
  fc.tuple(arbBox, arbBox).map(([a, b]): Recipe => ({ op: 'joined', of: [a, b] })),
  fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 3, max: 20 })).map(([axis, r]): Recipe => ({
    op: 'turned',
    axis: axis as 0,
    centre: [mm(3), mm(-2), 0],
    profile: [
      [mm(r), mm(-20)],
      [mm(r), mm(31)],
    ],
  })),
);
describe('laws', () => {
  it('a = (a - b) + (a met b), and joined = a + b - met', () => {
    fc.assert(
      fc.property(arbSolid, arbSolid, (a, b) => {
        const met = kernel.volume({ op: 'met', of: [a, b] });
        expect(kernel.volume({ op: 'cut', from: a, tools: [b] }) + met).toBeCloseTo(kernel.volume(a), 5);
        expect(kernel.volume({ op: 'joined', of: [a, b] }) + met).toBeCloseTo(kernel.volume(a) + kernel.volume(b), 5);
        expect(kernel.overlap(a, b).volume).toBeCloseTo(met, 7);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
  it('mirrored solids have equal volume', () => {
    fc.assert(
      fc.property(arbSolid, (a) => {
        expect(kernel.volume({ op: 'placed', by: MIRROR, of: a })).toBeCloseTo(kernel.volume(a), 6);
      }),
      { numRuns: 40, seed: 8 },
    );
  });
  it('gives the same bytes whatever was built before', async () => {
    const piece: Recipe = {
      op: 'cut',
      from: box(0, 200, 0, 20, 0, 90),
      tools: Array.from({ length: 7 }, (_, i) => box(i * 25, i * 25 + 12, 0, 20, 70, 90)),
    };
    const first = await createKernel();
    const alone = first.mesh(piece);
    first.dispose();
    for (let i = 6; i >= 0; i--) kernel.mesh(box(i * 25, i * 25 + 12, 0, 20, 70, 90));
    kernel.volume({ op: 'joined', of: [box(75, 87, 0, 20, 70, 90), piece] });
    expect(kernel.mesh(piece)).toEqual(alone);
  });
});
