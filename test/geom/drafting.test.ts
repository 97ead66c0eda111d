import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { arcThrough, chordsFor, direction, sidesFor, sine, cosine, tangent } from '../../src/geom/angle.js';
import { chains, fitArcs } from '../../src/geom/arcs.js';
import { hatch } from '../../src/geom/hatch.js';
import { hiddenLines } from '../../src/geom/hiddenLines.js';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { areaOf, flatten, outer, reversed } from '../../src/geom/outline.js';
import { IDENTITY } from '../../src/geom/placement.js';
import type { Outline, Recipe } from '../../src/geom/recipe.js';

const mm = (x: number): number => Math.round(x * 1e6);

describe('angles', () => {
  it('are exact where a table is exact', () => {
    expect([0, 30, 90, 150, 180, 210, 270, 360, -90].map(sine)).toEqual([0, 0.5, 1, 0.5, 0, -0.5, -1, 0, -1]);
    expect([0, 60, 90, 180, 270].map(cosine)).toEqual([1, 0.5, 0, -1, 0]);
    expect([45, 135, -45, 0].map(tangent)).toEqual([1, -1, -1, 0]);
    expect([direction(1, 1), direction(-1, 0), direction(-1, -0), direction(0, -2)]).toEqual([45, 180, 180, -90]);
    expect(() => tangent(90)).toThrow(RangeError);
  });
  it('a half circle by its bulge', () => {
    const arc = arcThrough([10, 0], [-10, 0], 1);
    expect(arc.centre.map((x) => Math.abs(x) < 1e-12)).toEqual([true, true]);
    expect([arc.radius, arc.from, arc.sweep]).toEqual([10, 0, 180]);
  });
  it('chords stay within the tolerance: sagitta r (1 - cos(step / 2))', () => {
    for (const r of [0.5, 3, 60, 900]) {
      const n = chordsFor(r, 360, 0.01);
      expect(r * (1 - Math.cos(Math.PI / n))).toBeLessThanOrEqual(0.01 + 1e-9);
      expect(sidesFor(r, 0.01) % 4).toBe(0);
    }
  });
});
describe('outlines', () => {
  const half: Outline = [{ to: [mm(10), 0] }, { to: [mm(-10), 0], bulge: 1 }];
  it('turned round keeps its shape and changes its sense', () => {
    const [a, b] = [areaOf(flatten(half)), areaOf(flatten(reversed(half)))];
    expect(a / 1e12).toBeCloseTo((Math.PI * 100) / 2, -0.5);
    expect(b).toBeCloseTo(-a, 0);
    expect(areaOf(flatten(outer(reversed(half))))).toBeGreaterThan(0);
  });
});

describe('hatch', () => {
  const square = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ] as [number, number][];
  const hole = [
    [4, 4],
    [4, 6],
    [6, 6],
    [6, 4],
  ] as [number, number][];
  it('at 0 degrees leaves the hole out', () => {
    expect(hatch([square, hole], 0, 5)).toEqual([
      [
        [0, 0],
        [10, 0],
      ],
      [
        [0, 5],
        [4, 5],
      ],
      [
        [6, 5],
        [10, 5],
      ],
    ]);
  });
  it('covers area = length x pitch, at any angle', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 179 }),
        fc.double({ min: 0.02, max: 0.06, noNaN: true }),
        (degrees, pitch) => {
          const lines = hatch([square, hole], degrees, pitch);
          const length = lines.reduce((s, [p, q]) => s + Math.hypot(q[0] - p[0], q[1] - p[1]), 0);
          expect(Math.abs(length * pitch - 96)).toBeLessThan(96 * 0.02);
          for (const [p, q] of lines) {
            const [x, y] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
            expect(
              x > -1e-9 &&
                x < 10 + 1e-9 &&
                y > -1e-9 &&
                y < 10 + 1e-9 &&
                !(x > 4.001 && x < 5.999 && y > 4.001 && y < 5.999),
            ).toBe(true);
          }
        },
      ),
      { numRuns: 40, seed: 3 },
    );
  });
  it('neighbours of one pattern join up', () => {
    const right = square.map(([x, y]) => [x + 10, y] as [number, number]);
    const ends = hatch([square], 45, 1)
      .map(([, q]) => q)
      .filter((q) => Math.abs(q[0] - 10) < 1e-9 && q[1] < 9.99);
    const starts = hatch([right], 45, 1)
      .map(([p]) => p)
      .filter((p) => Math.abs(p[0] - 10) < 1e-9);
    expect(ends.length).toBeGreaterThan(4);
    expect(ends.every((e) => starts.some((s) => Math.abs(s[1] - e[1]) < 1e-9))).toBe(true);
  });
});

describe('arcs out of drawings', () => {
  let kernel: CountedKernel;
  beforeAll(async () => {
    kernel = await createKernel();
  });
  afterAll(() => kernel.dispose());
  const FRONT = { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] } as const;
  const lines = (recipe: Recipe) =>
    hiddenLines([{ id: 'a', mesh: kernel.mesh(recipe), placement: IDENTITY }], FRONT).visible;
  const arcs = (recipe: Recipe) => chains(lines(recipe)).flatMap(fitArcs);

  it('an apron: one arc of the radius that rise and chord give, and the lines', () => {
    const board: Recipe = {
      op: 'box',
      at: [
        [0, mm(800)],
        [0, mm(20)],
        [0, mm(90)],
      ],
    };
    const rise = 45,
      half = 300;
    const tool: Recipe = {
      op: 'prism',
      axis: 1,
      from: 0,
      to: mm(20),
      outlines: [[{ to: [mm(700), 0] }, { to: [mm(100), 0], bulge: rise / half }]],
    };
    const paths = arcs({ op: 'cut', from: board, tools: [tool] });
    const found = paths.filter((p) => p.op === 'arc');
    expect(found.length).toBe(1);
    expect(found[0]!.r).toBeCloseTo((half * half + rise * rise) / (2 * rise), 1);
    expect(found[0]!.centre[0]).toBeCloseTo(400, 2);
    expect(paths.filter((p) => p.op === 'line').length).toBe(5);
  });
  it('a hole is one full circle; rounded corners are four quarters', () => {
    const hole = arcs({
      op: 'cut',
      from: {
        op: 'box',
        at: [
          [0, mm(100)],
          [0, mm(20)],
          [0, mm(100)],
        ],
      },
      tools: [
        {
          op: 'turned',
          axis: 1,
          centre: [mm(50), 0, mm(40)],
          profile: [
            [mm(6), 0],
            [mm(6), mm(20)],
          ],
        },
      ],
    }).filter((p) => p.op === 'arc');
    expect(hole.map((p) => [+p.r.toFixed(2), Math.abs(p.sweep)])).toEqual([[6, 360]]);
    const q = 0.41421356237309503;
    const o: Outline = [
      { to: [mm(90), 0] },
      { to: [mm(100), mm(10)], bulge: q },
      { to: [mm(100), mm(40)] },
      { to: [mm(90), mm(50)], bulge: q },
      { to: [mm(10), mm(50)] },
      { to: [0, mm(40)], bulge: q },
      { to: [0, mm(10)] },
      { to: [mm(10), 0], bulge: q },
    ];
    const round = arcs({ op: 'prism', axis: 1, from: 0, to: mm(20), outlines: [o] });
    const corners = round.filter((p) => p.op === 'arc');
    expect(corners.map((p) => [+p.r.toFixed(2), +Math.abs(p.sweep).toFixed(1)])).toEqual([
      [10, 90],
      [10, 90],
      [10, 90],
      [10, 90],
    ]);
    expect(round.filter((p) => p.op === 'line').length).toBe(4);
  });
  it('chains do not depend on the order of the lines, and use each once', () => {
    const some = lines({
      op: 'cut',
      from: {
        op: 'box',
        at: [
          [0, mm(100)],
          [0, mm(20)],
          [0, mm(100)],
        ],
      },
      tools: [
        {
          op: 'box',
          at: [
            [mm(20), mm(40)],
            [0, mm(9)],
            [0, mm(30)],
          ],
        },
      ],
    });
    const plain = chains(some);
    expect(chains([...some].reverse())).toEqual(plain);
    expect(plain.reduce((n, c) => n + c.length - 1, 0)).toBe(some.length);
  });
});
