import { afterAll, beforeAll, expect, it } from 'vitest';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { IDENTITY, type Placement } from '../../src/geom/placement.js';
import type { Recipe } from '../../src/geom/recipe.js';
import { stlBytes } from '../../src/report/stl.js';

/** A reader of its own, from the published layout of binary STL (80 bytes, count, 50 bytes a triangle, little-endian). */
function read(bytes: Uint8Array): { volume: number; sides: Map<string, number>; count: number; off: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  const sides = new Map<string, number>();
  let [volume, off] = [0, 0];
  for (let t = 0; t < count; t++) {
    const at = 84 + 50 * t;
    const v = [0, 1, 2, 3].map((k) => [0, 1, 2].map((x) => view.getFloat32(at + k * 12 + x * 4, true)));
    const [n, a, b, c] = v as [number[], number[], number[], number[]];
    const cross = [b[1]! * c[2]! - b[2]! * c[1]!, b[2]! * c[0]! - b[0]! * c[2]!, b[0]! * c[1]! - b[1]! * c[0]!];
    volume += (a[0]! * cross[0]! + a[1]! * cross[1]! + a[2]! * cross[2]!) / 6;
    const u = a.map((x, i) => b[i]! - x);
    const w = a.map((x, i) => c[i]! - x);
    const area = [u[1]! * w[2]! - u[2]! * w[1]!, u[2]! * w[0]! - u[0]! * w[2]!, u[0]! * w[1]! - u[1]! * w[0]!];
    const long = Math.hypot(...area);
    if (long > 1e-3) off = Math.max(off, ...area.map((x, i) => Math.abs(x / long - n[i]!)));
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ])
      sides.set(`${p!.join()} ${q!.join()}`, (sides.get(`${p!.join()} ${q!.join()}`) ?? 0) + 1);
  }
  return { volume, sides, count, off };
}
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

const mm = (x: number): number => Math.round(x * 1e6);
const part: Recipe = {
  op: 'cut',
  from: {
    op: 'box',
    at: [
      [0, mm(480)],
      [0, mm(19.05)],
      [0, mm(120)],
    ],
  },
  tools: [
    {
      op: 'turned',
      axis: 1,
      centre: [mm(60), 0, mm(60)],
      profile: [
        [mm(9), 0],
        [mm(9), mm(30)],
      ],
    },
    { op: 'prism', axis: 1, from: 0, to: mm(20), outlines: [[{ to: [mm(400), 0] }, { to: [mm(150), 0], bulge: 0.2 }]] },
    {
      op: 'box',
      at: [
        [mm(470), mm(480)],
        [mm(6), mm(13)],
        [0, mm(120)],
      ],
    },
  ],
};
const leaning: Placement = {
  rotation: [
    [0.8, 0, 0.6],
    [0, 1, 0],
    [-0.6, 0, 0.8],
  ],
  origin: [mm(700), mm(-3), mm(41)],
};
const mirrored: Placement = {
  rotation: [
    [-1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  origin: [mm(1000), 0, 0],
};

it.each([
  ['as it lies', IDENTITY],
  ['leaning', leaning],
  ['mirrored', mirrored],
] as const)('is closed and holds its volume: %s', (_n, by) => {
  const { volume, sides, count, off } = read(stlBytes(kernel.mesh(part), by));
  expect(count).toBeGreaterThan(100);
  for (const [side, n] of sides) {
    const [p, q] = side.split(' ');
    expect([side, sides.get(`${q} ${p}`)]).toEqual([side, n]);
  }
  // Single precision keeps 24 bits: 6e-5 mm at 1 m.
  expect(Math.abs(volume / kernel.volume(part) - 1)).toBeLessThan(1e-5);
  expect(off).toBeLessThan(1e-2);
});
it('same mesh, same bytes, and no title that reads as the text form of the format', () => {
  const [a, b] = [stlBytes(kernel.mesh(part), leaning), stlBytes(kernel.mesh(part), leaning)];
  expect(a).toEqual(b);
  expect(new TextDecoder().decode(a.slice(0, 5))).not.toBe('solid');
});
