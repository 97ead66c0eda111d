import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/geom/box.js';
import { hiddenLines, type Line2, type SceneItem } from '../../src/geom/hiddenLines.js';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { IDENTITY, dot, place, shifted, type Placement } from '../../src/geom/placement.js';
import type { Recipe } from '../../src/geom/recipe.js';

const mm = (x: number): number => Math.round(x * 1e6);
const box = (...v: [number, number, number, number, number, number]): Recipe => ({
  op: 'box',
  at: [
    [mm(v[0]), mm(v[1])],
    [mm(v[2]), mm(v[3])],
    [mm(v[4]), mm(v[5])],
  ],
});
const FRONT = { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] } as const;
const RIGHT = { right: [0, 1, 0], up: [0, 0, 1], toward: [1, 0, 0] } as const;
const TOP = { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] } as const;
const unit = (v: Vec3): Vec3 => v.map((x) => x / Math.hypot(...v)) as unknown as Vec3;
const ISO = { right: unit([1, 1, 0]), up: unit([-1, 1, 2]), toward: unit([1, -1, 1]) } as const;
type Axes = { right: Vec3; up: Vec3; toward: Vec3 };

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());
const item = (id: string, recipe: Recipe, placement: Placement = IDENTITY): SceneItem => ({
  id,
  mesh: kernel.mesh(recipe),
  placement,
});
const total = (lines: readonly Line2[], kind?: Line2['kind']): number =>
  lines.filter((l) => !kind || l.kind === kind).reduce((s, l) => s + Math.hypot(l.b[0] - l.a[0], l.b[1] - l.a[1]), 0);

describe('by eye', () => {
  it('a box from the front is four outlines, once each', () => {
    const { visible, hidden } = hiddenLines([item('a', box(0, 100, 0, 20, 0, 50))], FRONT);
    expect(hidden).toEqual([]);
    expect(visible.map((l) => [l.a, l.b, l.kind])).toEqual([
      [[0, 0], [0, 50], 'silhouette'],
      [[0, 0], [100, 0], 'silhouette'],
      [[0, 50], [100, 50], 'silhouette'],
      [[100, 0], [100, 50], 'silhouette'],
    ]);
  });
  it('a box in an isometric: six outlines and three arrises; three hidden', () => {
    const { visible, hidden } = hiddenLines([item('a', box(0, 10, 0, 10, 0, 10))], ISO);
    const side = 10 * Math.sqrt(2 / 3);
    expect(visible.length).toBe(9);
    expect(total(visible, 'silhouette')).toBeCloseTo(6 * side, 4);
    expect(total(visible, 'edge')).toBeCloseTo(3 * side, 4);
    expect(total(hidden)).toBeCloseTo(3 * side, 4);
  });
  it('two flush boards: a narrow line between; set back 2 mm: a wide one', () => {
    const a = item('a', box(0, 100, 0, 20, 0, 50));
    const flush = hiddenLines([a, item('b', box(0, 100, 0, 30, 50, 90))], FRONT).visible;
    const seam = flush.filter((l) => l.a[1] === 50 && l.b[1] === 50);
    expect(seam).toEqual([{ ids: ['a', 'b'], a: [0, 50], b: [100, 50], kind: 'flush' }]);
    expect(flush.find((l) => l.a[0] === 0 && l.b[0] === 0)).toEqual({
      ids: ['a', 'b'],
      a: [0, 0],
      b: [0, 90],
      kind: 'silhouette',
    });
    const back = hiddenLines([a, item('b', box(0, 100, 2, 30, 50, 90))], FRONT).visible;
    expect(back.filter((l) => l.a[1] === 50 && l.b[1] === 50).map((l) => l.kind)).toEqual(['silhouette']);
  });
  it('one line, part of it flush and part of it outline, is two', () => {
    const lines = hiddenLines(
      [item('a', box(0, 100, 0, 20, 0, 50)), item('b', box(30, 60, 0, 20, 50, 80))],
      FRONT,
    ).visible;
    expect(lines.filter((l) => l.a[1] === 50 && l.b[1] === 50).map((l) => [l.a[0], l.b[0], l.kind])).toEqual([
      [0, 30, 'silhouette'],
      [30, 60, 'flush'],
      [60, 100, 'silhouette'],
    ]);
  });
  it('nothing shows through the seams of a flat face', () => {
    // The front board's face falls into triangles; behind it stands a board whose edges run along every possible seam.
    const cuts = [10, 30, 50, 70, 90].map((x) => box(x, x + 4, 0, 9, 20, 40));
    const front = item('front', { op: 'cut', from: box(0, 100, 0, 9, 0, 60), tools: cuts });
    const behind = [10, 14, 30, 34, 50, 54, 70].map((x, i) => item(`b${i}`, box(x, x + 20, 30, 40, 0, 60)));
    const { visible } = hiddenLines([front, ...behind], FRONT);
    const solid = visible.filter(
      (l) => l.a[0] === l.b[0] && (Math.min(l.a[1], l.b[1]) < 19.9 || Math.max(l.a[1], l.b[1]) > 40.1),
    );
    expect(solid.map((l) => l.a[0])).toEqual([0, 100]);
  });
  it('a mortise is dashed in the side that it does not open to', () => {
    const post = item('post', { op: 'cut', from: box(0, 40, 0, 40, 0, 400), tools: [box(14, 40, 15, 25, 310, 350)] });
    const { hidden } = hiddenLines([post], FRONT);
    expect(hidden.map((l) => [l.a, l.b])).toEqual([
      [
        [14, 310],
        [14, 350],
      ],
      [
        [14, 310],
        [40, 310],
      ],
      [
        [14, 350],
        [40, 350],
      ],
    ]);
    expect(hiddenLines([post], RIGHT).visible.length).toBe(8);
  });
  it('shallow arrises are drawn, facets of a curve are not', () => {
    const taper: Recipe = {
      op: 'prism',
      axis: 1,
      from: 0,
      to: mm(30),
      outlines: [
        [
          { to: [0, 0] },
          { to: [mm(40), 0] },
          { to: [mm(40), mm(400)] },
          { to: [mm(32), mm(700)] },
          { to: [0, mm(700)] },
        ],
      ],
    };
    const seen = hiddenLines([item('leg', taper)], RIGHT).visible;
    expect(seen.filter((l) => l.a[1] === 400 && l.b[1] === 400)).toEqual([
      { ids: ['leg'], a: [0, 400], b: [30, 400], kind: 'edge' },
    ]);
    for (const r of [1.5, 20, 300, 4000]) {
      const sweep = 0.08 / Math.sqrt(r / 20);
      const bent: Recipe = {
        op: 'prism',
        axis: 1,
        from: 0,
        to: mm(30),
        outlines: [[{ to: [0, 0] }, { to: [mm(r * 0.5), 0] }, { to: [0, 0], bulge: Math.min(0.9, 3 * sweep) }]],
      };
      expect(hiddenLines([item('bent', bent)], RIGHT).visible.length).toBe(4);
      expect(hiddenLines([item('bent', bent)], TOP).visible.length).toBe(4);
    }
  });
  it('a mirrored part gives mirrored lines', () => {
    const r: Recipe = { op: 'cut', from: box(0, 40, 0, 20, 0, 90), tools: [box(0, 10, 0, 5, 0, 30)] };
    const mirror: Placement = {
      rotation: [
        [-1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      origin: [0, 0, 0],
    };
    const plain = hiddenLines([item('a', r)], FRONT).visible;
    const turned = hiddenLines([item('a', r, mirror)], FRONT).visible;
    expect(total(turned)).toBeCloseTo(total(plain), 6);
    expect(turned.map((l) => l.kind).sort()).toEqual(plain.map((l) => l.kind).sort());
    expect(Math.min(...turned.map((l) => l.a[0]))).toBe(-40);
  });
});

/** All triangles as seen, corner by corner. */
function turnedAll(items: readonly SceneItem[], view: Axes): (readonly [Vec3, Vec3, Vec3])[] {
  return items.flatMap(({ mesh, placement }) => {
    const p = (i: number): Vec3 => {
      const [x, y, z] = [0, 1, 2].map((k) => mesh.positions[mesh.triangles[i]! * 3 + k]! * 1e6) as [
        number,
        number,
        number,
      ];
      const w = place(placement, [x, y, z]);
      return [dot(view.right, w) / 1e6, dot(view.up, w) / 1e6, dot(view.toward, w) / 1e6];
    };
    return Array.from({ length: mesh.triangles.length / 3 }, (_, i) => [p(i * 3), p(i * 3 + 1), p(i * 3 + 2)] as const);
  });
}
/** Every triangle asked one by one, with no index, no intervals and no shared code: is the point covered? */
function covered(
  triangles: readonly (readonly [Vec3, Vec3, Vec3])[],
  x: number,
  y: number,
  z: number,
  aside: number,
): boolean {
  for (const [a, b, c] of triangles) {
    const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    if (Math.abs(area) < 1e-7) continue;
    const u = ((b[0] - x) * (c[1] - y) - (c[0] - x) * (b[1] - y)) / area;
    const v = ((c[0] - x) * (a[1] - y) - (a[0] - x) * (c[1] - y)) / area;
    const w = 1 - u - v;
    if (Math.min(u, v, w) < -1e-9) continue;
    if (u * a[2] + v * b[2] + w * c[2] > z + aside) return true;
  }
  return false;
}
const SCENES: [string, Axes][] = [
  ['front', FRONT],
  ['right', RIGHT],
  ['top', TOP],
  ['isometric', ISO],
];
describe.each(SCENES)('against a brute-force ray test, %s', (_name, view) => {
  it('every visible line shows and every hidden line does not', () => {
    const rail: Recipe = {
      op: 'cut',
      from: box(0, 300, 0, 20, 0, 60),
      tools: [
        box(0, 25, 0, 5, 0, 60),
        {
          op: 'prism',
          axis: 1,
          from: 0,
          to: mm(20),
          outlines: [[{ to: [mm(60), 0] }, { to: [mm(240), 0] }, { to: [mm(60), 0], bulge: 0.35 }]],
        },
      ],
    };
    const peg: Recipe = {
      op: 'turned',
      axis: 0,
      centre: [0, mm(70), mm(80)],
      profile: [
        [mm(14), mm(-40)],
        [mm(9), mm(120)],
        [mm(20), mm(160)],
      ],
    };
    const c = Math.cos(0.2),
      s = Math.sin(0.2);
    const leaning: Placement = {
      rotation: [
        [c, 0, s],
        [0, 1, 0],
        [-s, 0, c],
      ],
      origin: [mm(120), mm(35), mm(-20)],
    };
    const items = [
      item('post', box(-40, 0, 0, 40, -200, 120)),
      item('rail', rail, shifted([0, mm(10), mm(30)])),
      item('peg', peg),
      item('leg', { op: 'cut', from: box(0, 30, 0, 30, -150, 90), tools: [box(10, 20, -1, 31, 0, 50)] }, leaning),
    ];
    const { visible, hidden } = hiddenLines(items, view);
    const triangles = turnedAll(items, view);
    const heights = edgeHeights(items, view);
    let checked = 0;
    for (const [lines, shows] of [
      [visible, true],
      [hidden, false],
    ] as const) {
      for (const l of lines) {
        const long = Math.hypot(l.b[0] - l.a[0], l.b[1] - l.a[1]);
        if (long < 0.1) continue; // ends are true to 0.01 mm only
        for (const t of [0.13, 0.37, 0.61, 0.89]) {
          const [x, y] = [l.a[0] + (l.b[0] - l.a[0]) * t, l.a[1] + (l.b[1] - l.a[1]) * t];
          const over = heights(x, y, [(l.b[0] - l.a[0]) / long, (l.b[1] - l.a[1]) / long]);
          if (over.length === 0) throw new Error(`no edge at ${x} ${y}`);
          const [dx, dy] = [(-(l.b[1] - l.a[1]) / long) * 0.0012, ((l.b[0] - l.a[0]) / long) * 0.0012];
          // An edge shows when, a little to one side at least, nothing lies before it; it is hidden when its own place is.
          const bare = (z: number, side: number): boolean =>
            !covered(triangles, x + side * dx, y + side * dy, z, side === 0 ? 0.001 : 0.003);
          const seen = over.some((z) => (shows ? bare(z, 1) || bare(z, -1) : bare(z, 0)));
          expect([shows, l, t, seen]).toEqual([shows, l, t, shows]);
          checked++;
        }
      }
    }
    expect(checked).toBeGreaterThan(80);
  });
});
/** Heights of all edges of more than 10 degrees and of outlines that pass through a point of the view. */
function edgeHeights(
  items: readonly SceneItem[],
  view: Axes,
): (x: number, y: number, along: readonly [number, number]) => number[] {
  const edges: [Vec3, Vec3][] = [];
  for (const { mesh, placement } of items) {
    const p = (i: number): Vec3 => {
      const w = place(placement, [
        mesh.positions[i * 3]! * 1e6,
        mesh.positions[i * 3 + 1]! * 1e6,
        mesh.positions[i * 3 + 2]! * 1e6,
      ]);
      return [dot(view.right, w) / 1e6, dot(view.up, w) / 1e6, dot(view.toward, w) / 1e6];
    };
    const normals = new Map<string, Vec3[]>();
    for (let i = 0; i < mesh.triangles.length; i += 3) {
      const v = [0, 1, 2].map((k) => mesh.triangles[i + k]!);
      const [a, b, c] = v.map(p) as [Vec3, Vec3, Vec3];
      const n = unit([
        (b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1]),
        (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2]),
        (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]),
      ]);
      for (const k of [0, 1, 2]) {
        const key = [v[k]!, v[(k + 1) % 3]!].sort((x, y) => x - y).join(' ');
        normals.set(key, [...(normals.get(key) ?? []), n]);
      }
    }
    for (const [key, [n, m]] of normals) {
      const [i, j] = key.split(' ').map(Number) as [number, number];
      if (dot(n!, m!) < 0.985 || n![2] > 1e-4 !== m![2] > 1e-4) edges.push([p(i), p(j)]);
    }
  }
  return (x, y, along) =>
    edges.flatMap(([a, b]) => {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const long = Math.hypot(dx, dy);
      if (long < 1e-6 || Math.abs(dx * along[1] - dy * along[0]) > 0.01 * long) return []; // only edges that run the same way
      const t = ((x - a[0]) * dx + (y - a[1]) * dy) / long ** 2;
      if (t < -1e-3 || t > 1.001 || Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / long > 3e-3) return [];
      return [a[2] + (b[2] - a[2]) * t];
    });
}
