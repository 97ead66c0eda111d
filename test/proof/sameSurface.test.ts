import { describe, expect, it } from 'vitest';
import { createKernel } from '../../src/geom/kernel.js';
import type { Recipe } from '../../src/geom/recipe.js';
import { sameSurface } from '../../src/proof/sameSurface.js';

const MM = 1_000_000;
const box = (x: number, y: number, z: number, w: number, d: number, h: number): Recipe => ({
  op: 'box',
  at: [
    [Math.round(x * MM), Math.round((x + w) * MM)],
    [Math.round(y * MM), Math.round((y + d) * MM)],
    [Math.round(z * MM), Math.round((z + h) * MM)],
  ],
});
const hole = (x: number, z: number, diameter = 8): Recipe => ({
  op: 'turned',
  axis: 1,
  centre: [x * MM, 0, z * MM],
  profile: [
    [(diameter / 2) * MM, -MM],
    [(diameter / 2) * MM, 30 * MM],
  ],
});
const cut = (...tools: Recipe[]): Recipe => ({ op: 'cut', from: box(0, 0, 0, 400, 20, 100), tools });

describe('the same surface', async () => {
  const kernel = await createKernel();
  const same = (a: Recipe, b: Recipe): boolean => sameSurface(kernel.mesh(a), kernel.mesh(b));
  const [groove, rabbet] = [box(-1, 0, 40, 402, 5, 10), box(-2, 15, -3, 500, 10, 13)];

  it('is seen however the surface is cut into triangles: tools in another order, a tool in two, longer tools', () => {
    const a = cut(groove, rabbet, hole(50, 45), hole(200, 70));
    const b = cut(hole(200, 70), box(100, -9, 40, 310, 14, 10), hole(50, 45), rabbet, box(-9, -9, 40, 109, 14, 10));
    expect(kernel.mesh(a).triangles).not.toEqual(kernel.mesh(b).triangles);
    expect(same(a, b)).toBe(true);
    expect(kernel.volume({ op: 'cut', from: a, tools: [b] })).toBeLessThan(1e-6);
  });
  it.each([
    ['a groove a hundredth deeper', cut(box(-1, 0, 40, 402, 5.01, 10), rabbet)],
    ['a groove two millionths of a mm deeper', cut(box(-1, 0, 40, 402, 5.000002, 10), rabbet)],
    ['a groove moved', cut(box(-1, 0, 40.1, 402, 5, 10), rabbet)],
    ['no rabbet', cut(groove)],
    ['a hole more', cut(groove, rabbet, hole(50, 70))],
    ['the mirror image', { op: 'placed', by: { rotation: [[1, 0, 0], [0, 1, 0], [0, 0, -1]], origin: [0, 0, 100 * MM] }, of: cut(groove, rabbet) }], // prettier-ignore
  ] as const)('is not seen with %s', (_, other) => {
    expect(same(cut(groove, rabbet), other as Recipe)).toBe(false);
    expect(same(other as Recipe, cut(groove, rabbet))).toBe(false);
  });
  it('is not seen between a solid and its inside-out, nor where a hole stands elsewhere', () => {
    const { positions, triangles } = kernel.mesh(cut(groove));
    expect(sameSurface({ positions, triangles }, { positions, triangles: triangles.slice().reverse() })).toBe(false);
    expect(same(cut(hole(50, 45), hole(300, 45)), cut(hole(50, 45), hole(301, 45)))).toBe(false);
    expect(same(cut(hole(50, 45, 8)), cut(hole(50, 45, 8.1)))).toBe(false);
  });
});
