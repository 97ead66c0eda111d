import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { cuttingPlanes, modelOf } from '../../src/drawings/model.js';
import { cutPiece } from '../../src/drawings/section.js';
import { pullBoxes } from '../../src/drawings/sheets/elevations.js';
import { FRONT, ISOMETRIC, PLAN, project, RIGHT_SIDE, viewsOf } from '../../src/drawings/views.js';
import type { Direction, ViewItem } from '../../src/drawings/views.js';
import { createKernel } from '../../src/geom/kernel.js';
import { dot, place, turn } from '../../src/geom/placement.js';
import type { Kernel } from '../../src/geom/solid.js';
import { sliceMesh } from '../../src/geom/sliceMesh.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { makeSolids } from '../../src/solids/make.js';

/**
 * Whole pieces against a picture made in another way: a z-buffer (E. Catmull, 1974) of all triangles, of which each pixel
 * knows its part, its plane and its depth. Where two neighbouring pixels show different surfaces a line must be drawn
 * between their centres, and where exactly one line is drawn between them their surfaces must differ.
 *
 * Tolerances: a step in depth under 0.05 mm is none; planes within 0.05 degrees are one; from there to 26 degrees a line may
 * be drawn or not (facets of a curve; arrises are drawn from 25 degrees on); lines that pass within 0.05 mm of a pixel's
 * centre, or of the end of the stretch between two centres, are not judged. Knobs, all facets, are left out.
 */
const STEP = 0.05;
const NEAR = 0.05;
const SAME = Math.cos((0.05 * Math.PI) / 180);
const SHARP = Math.cos((26 * Math.PI) / 180);

interface Pixels {
  readonly w: number;
  readonly h: number;
  readonly item: Int32Array;
  /** Depth toward the eye, mm. */
  readonly z: Float64Array;
  /** Normal of the plane that shows, and the smooth surface that it belongs to. */
  readonly n: Float64Array;
  readonly surface: Int32Array;
}
interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly size: number;
  readonly w: number;
  readonly h: number;
}
type Line = readonly [number, number, number, number];

function triangleOf(item: ViewItem, view: Direction, t: number): number[][] {
  const { positions, triangles } = item.mesh;
  return [0, 1, 2].map((k) => {
    const c = triangles[t * 3 + k]! * 3;
    const p = place(item.placement, [positions[c]! * 1e6, positions[c + 1]! * 1e6, positions[c + 2]! * 1e6]);
    return [view.right, view.up, view.toward].map((v) => dot(v, p) / 1e6);
  });
}
/** The smooth surface that each triangle belongs to: neighbours that turn by less than 26 degrees are one. */
function surfacesOf(item: ViewItem): Int32Array {
  const { positions: p, triangles } = item.mesh;
  const count = triangles.length / 3;
  const normals = Array.from({ length: count }, (_, t) => {
    const [a, b, c] = [0, 1, 2].map((k) => triangles[t * 3 + k]! * 3) as [number, number, number];
    const u = [0, 1, 2].map((k) => p[b + k]! - p[a + k]!);
    const v = [0, 1, 2].map((k) => p[c + k]! - p[a + k]!);
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    return n.map((x) => x / (Math.hypot(...n) || 1));
  });
  const group = Int32Array.from({ length: count }, (_, t) => t);
  const root = (t: number): number => {
    let r = t;
    while (group[r] !== r) r = group[r] = group[group[r]!]!;
    return r;
  };
  const sides = new Map<string, number>();
  for (let t = 0; t < count; t++)
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[t * 3 + k]!, triangles[t * 3 + ((k + 1) % 3)]!];
      const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
      const other = sides.get(key);
      sides.set(key, t);
      if (other !== undefined && normals[t]!.reduce((sum, x, i) => sum + x * normals[other]![i]!, 0) > SHARP)
        group[root(t)] = root(other);
    }
  return group.map((_, t) => root(t));
}
/** All items; with `high`, what lies before that depth is taken away and solids are closed there (by counting crossings). */
function render(items: readonly ViewItem[], view: Direction, grid: Grid, high = Infinity): Pixels {
  const { w, h, x0, y0, size } = grid;
  const out = { w, h, item: new Int32Array(w * h).fill(-1), z: new Float64Array(w * h).fill(-Infinity), n: new Float64Array(w * h * 3), surface: new Int32Array(w * h) }; // prettier-ignore
  items.forEach((item, number) => {
    const before = new Map<number, number>();
    const surfaces = surfacesOf(item);
    for (let t = 0; t < item.mesh.triangles.length / 3; t++) {
      const [a, b, c] = triangleOf(item, view, t) as [number[], number[], number[]];
      const area = (b[0]! - a[0]!) * (c[1]! - a[1]!) - (c[0]! - a[0]!) * (b[1]! - a[1]!);
      if (Math.abs(area) < 1e-9) continue;
      const u = [0, 1, 2].map((k) => b[k]! - a[k]!);
      const v = [0, 1, 2].map((k) => c[k]! - a[k]!);
      const normal = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
      const long = Math.hypot(...normal);
      const first = (k: number, from: number): number => Math.max(0, Math.ceil((Math.min(a[k]!, b[k]!, c[k]!) - from) / size)); // prettier-ignore
      const last = (k: number, from: number, n: number): number => Math.min(n - 1, Math.floor((Math.max(a[k]!, b[k]!, c[k]!) - from) / size)); // prettier-ignore
      for (let j = first(1, y0); j <= last(1, y0, h); j++)
        for (let i = first(0, x0); i <= last(0, x0, w); i++) {
          const [x, y] = [x0 + i * size - a[0]!, y0 + j * size - a[1]!];
          const f = (x * v[1]! - y * v[0]!) / area;
          const g = (y * u[0]! - x * u[1]!) / area;
          if (f < 0 || g < 0 || f + g > 1) continue;
          const z = a[2]! + f * u[2]! + g * v[2]!;
          const at = j * w + i;
          if (z > high) before.set(at, (before.get(at) ?? 0) + Math.sign(area));
          else if (z > out.z[at]!) {
            out.z[at] = z;
            out.item[at] = number;
            out.surface[at] = surfaces[t]!;
            normal.forEach((q, k) => (out.n[at * 3 + k] = (q / long) * Math.sign(area)));
          }
        }
    }
    for (const [at, entered] of before)
      if (entered > 0) {
        out.z[at] = high;
        out.item[at] = number;
        out.surface[at] = -1;
        out.n.set([0, 0, 1], at * 3);
      }
  });
  return out;
}
/** `different`: a line must be drawn between; `same`: none may be; else either. */
function compare(p: Pixels, a: number, b: number, dx: number, dy: number): 'same' | 'different' | 'either' {
  const [ia, ib] = [p.item[a]!, p.item[b]!];
  if (ia < 0 && ib < 0) return 'same';
  if (ia !== ib) return 'different';
  const [na, nb] = [p.n.subarray(a * 3, a * 3 + 3), p.n.subarray(b * 3, b * 3 + 3)];
  const cos = na[0]! * nb[0]! + na[1]! * nb[1]! + na[2]! * nb[2]!;
  // Seen almost edge-on a facet tells nothing of depth.
  if (Math.min(na[2]!, nb[2]!) < 0.05) return 'either';
  const ahead = p.z[a]! - (na[0]! * dx + na[1]! * dy) / na[2]!;
  const step = Math.abs(ahead - p.z[b]!);
  if (cos > SAME) return step > STEP + 0.02 * Math.hypot(dx, dy) ? 'different' : step < STEP / 5 ? 'same' : 'either';
  return cos < SHARP && p.surface[a] !== p.surface[b] ? 'different' : 'either';
}
interface Faults {
  missing: string[];
  false: string[];
  judged: number;
}
/** Compares along rows (`axis` 0) or columns (1). */
function compareAlong(p: Pixels, grid: Grid, lines: readonly Line[], axis: 0 | 1, out: Faults): void {
  const { size } = grid;
  const [n, m] = axis === 0 ? [p.w, p.h] : [p.h, p.w];
  const [from, across] = axis === 0 ? [grid.x0, grid.y0] : [grid.y0, grid.x0];
  const crossings = Array.from({ length: m }, (): number[] => []);
  const doubtful = Array.from({ length: m }, (): number[] => []);
  for (const l of lines) {
    const [s, t, s2, t2] = axis === 0 ? l : [l[1], l[0], l[3], l[2]];
    const [lo, hi] = [Math.min(t, t2), Math.max(t, t2)];
    for (
      let j = Math.max(0, Math.ceil((lo - NEAR - across) / size));
      j <= Math.min(m - 1, Math.floor((hi + NEAR - across) / size));
      j++
    ) {
      // prettier-ignore
      const y = across + j * size;
      const near = y < lo + NEAR || y > hi - NEAR;
      if (near || hi - lo < 1e-6) {
        // A line that ends here, or runs along the row: every gap that it passes is in doubt.
        for (let x = Math.min(s, s2) - NEAR; x < Math.max(s, s2) + NEAR + size; x += size) doubtful[j]!.push(Math.min(x, Math.max(s, s2) + NEAR)); // prettier-ignore
      } else crossings[j]!.push(s + ((s2 - s) * (y - t)) / (t2 - t));
    }
  }
  for (let j = 0; j < m; j++) {
    const count = new Int32Array(n);
    const doubt = new Uint8Array(n + 1);
    for (const x of crossings[j]!) {
      const k = Math.floor((x - from) / size);
      if (k < 0 || k >= n) continue;
      count[k]!++;
      if (x - from - k * size < NEAR) doubt[k] = doubt[Math.max(0, k - 1)] = 1;
      if ((k + 1) * size - (x - from) < NEAR) doubt[k] = doubt[k + 1] = 1;
    }
    for (const x of doubtful[j]!) {
      const k = Math.floor((x - from) / size);
      for (const q of [k - 1, k, k + 1]) if (q >= 0 && q < n) doubt[q] = 1;
    }
    for (let i = 0; i + 1 < n; i++) {
      if (doubt[i]) continue;
      const [a, b] = axis === 0 ? [j * p.w + i, j * p.w + i + 1] : [i * p.w + j, (i + 1) * p.w + j];
      const found = compare(p, a, b, axis === 0 ? size : 0, axis === 0 ? 0 : size);
      const where = `${(from + (i + 0.5) * size).toFixed(2)} ${(across + j * size).toFixed(2)} (${axis === 0 ? 'x y' : 'y x'}) ${p.item[a]} ${p.item[b]}`; // prettier-ignore
      if (found !== 'either' || count[i]! > 0) out.judged++;
      if (found === 'different' && count[i] === 0) out.missing.push(where);
      if (found === 'same' && count[i] === 1) out.false.push(where);
    }
  }
}
function faultsOf(items: readonly ViewItem[], view: Direction, lines: readonly Line[], high?: number): Faults {
  const xs = lines.flatMap((l) => [l[0], l[2]]);
  const ys = lines.flatMap((l) => [l[1], l[3]]);
  const [x0, y0] = [Math.min(...xs) - 5.137, Math.min(...ys) - 5.291];
  const [wide, high2] = [Math.max(...xs) + 5 - x0, Math.max(...ys) + 5 - y0];
  // About 500 pixels on the longer side, in a size that no part has.
  const size = Math.max(wide, high2) / 500.37;
  const grid = { x0, y0, size, w: Math.ceil(wide / size), h: Math.ceil(high2 / size) };
  const pixels = render(items, view, grid, high);
  const out: Faults = { missing: [], false: [], judged: 0 };
  compareAlong(pixels, grid, lines, 0, out);
  compareAlong(pixels, grid, lines, 1, out);
  return out;
}

let kernel: Kernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());
function pieceOf(path: string) {
  const file = new URL(`../../${path}.jsonc`, import.meta.url);
  const reading = readDefinition(readFileSync(file, 'utf8'), `${path}.jsonc`);
  const piece = reading.value && resolvePiece(reading.value).value;
  const solids = piece && makeSolids(piece, kernel).value;
  if (!piece || !solids) throw new Error(path);
  return { piece, solids, kernel, model: modelOf(piece, solids), views: viewsOf(piece, solids) };
}
const PIECES = [
  'templates/pieces/tall-chest',
  'templates/pieces/nightstand',
  'templates/pieces/letter-cabinet',
  'test/specimens/small/splayed-stool',
];
describe.each(PIECES)('lines of %s against a z-buffer', (path) => {
  it.each([
    ['front', FRONT],
    ['right side', RIGHT_SIDE],
    ['plan', PLAN],
    ['isometric', ISOMETRIC],
  ] as const)('%s: none missing, none that does not show', (_, view) => {
    const { views, piece } = pieceOf(path);
    const items = views.items.filter((i) => piece.parts.some((p) => p.id === i.id));
    const lines = project(items, view).visible.map((l): Line => [...l.a, ...l.b]);
    const { missing, false: extra, judged } = faultsOf(items, view, lines);
    expect({ missing, extra }).toEqual({ missing: [], extra: [] });
    expect(judged).toBeGreaterThan(20_000);
  });
  it.each(['across', 'up'] as const)('section square to %s: none missing, none that does not show', (name) => {
    const input = pieceOf(path) as unknown as Parameters<typeof cutPiece>[0];
    const { piece, solids, model } = input;
    const axis = name === 'across' ? 0 : 2;
    const direction = name === 'across' ? RIGHT_SIDE : PLAN;
    const at = cuttingPlanes(model, pullBoxes(input))[name];
    const cut = cutPiece(input, { axis, at, direction }, { parts: new Set(piece.parts.map((p) => p.id)) });
    const high = (direction.toward[axis] * at) / 1e6;
    const items = solids.parts.map((s): ViewItem => ({ id: s.id, mesh: s.mesh, placement: piece.parts.find((p) => p.id === s.id)!.place })); // prettier-ignore
    const outlines = cut.parts.flatMap((c) => c.rings.flatMap((r) => r.map((p, i): Line => [...p, ...r[(i + 1) % r.length]!]))); // prettier-ignore
    const lines = [...cut.lines.map((l): Line => [...l.a, ...l.b]), ...outlines];
    const { missing, false: extra, judged } = faultsOf(items, direction, lines, high);
    expect({ missing, extra }).toEqual({ missing: [], extra: [] });
    expect(judged).toBeGreaterThan(20_000);
    // The rings themselves, against those of the solid kernel.
    for (const { standing, rings } of cut.parts) {
      const recipe = solids.parts.find((s) => s.id === standing.part.id)!.recipe;
      const point = [0, 1, 2].map((k) => (k === axis ? at / 1e6 : 0)) as unknown as typeof direction.right;
      const theirs = kernel.slice({ op: 'placed', by: standing.part.place, of: recipe }, point, direction.right, direction.up); // prettier-ignore
      expect(rings.map((r) => r.length)).toEqual(theirs.map((r) => r.length));
      rings.forEach((r, k) =>
        r.forEach((p, i) => [0, 1].forEach((q) => expect(p[q]).toBeCloseTo(theirs[k]![i]![q]!, 6))),
      );
    }
  });
});
describe('a mesh cut by a plane', () => {
  it('has its rings anticlockwise, holes clockwise, mirrored or not', () => {
    const tube = kernel.mesh({
      op: 'cut',
      from: { op: 'box', at: [[0, 40e6], [0, 30e6], [0, 90e6]] }, // prettier-ignore
      tools: [{ op: 'box', at: [[10e6, 20e6], [5e6, 9e6], [-1e6, 91e6]] }], // prettier-ignore
    });
    for (const sign of [1, -1]) {
      const placement = { rotation: [[sign, 0, 0], [0, 1, 0], [0, 0, 1]], origin: [0, 0, 0] } as const; // prettier-ignore
      const rings = sliceMesh({ mesh: tube, placement }, PLAN, 45);
      const area = (r: (typeof rings)[number]): number =>
        r.reduce((s, p, i) => s + (p[0] * r[(i + 1) % r.length]![1] - p[1] * r[(i + 1) % r.length]![0]) / 2, 0);
      expect(rings.map(area).sort((a, b) => a - b)).toEqual([-40, 1200]);
      expect(turn(placement, [1, 0, 0])[0]).toBe(sign);
    }
  });
});
