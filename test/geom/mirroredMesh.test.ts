import { afterAll, beforeAll, expect, it } from 'vitest';
import { topology } from '../../src/geom/edges.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { Recipe } from '../../src/geom/recipe.js';

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

it.each([0, 1, 2] as const)('a turned solid along axis %i has a closed mesh by its vertices', (axis) => {
  const knob: Recipe = {
    op: 'turned',
    axis,
    centre: [240_506_250, 1_587_500, 784_225_000],
    profile: [
      [0, -28_575_000],
      [15_875_000, -23_018_750],
      [6_350_000, -9_525_000],
      [0, 31_750_000],
    ],
  };
  const mesh = kernel.mesh(knob);
  const [vertices, faces] = [mesh.positions.length / 3, mesh.triangles.length / 3];
  // Euler: V - E + F = 2 for a solid without holes, and each triangle has half of three edges.
  expect(vertices - (faces * 3) / 2 + faces).toBe(2);
  expect(topology(mesh).from.length).toBe((faces * 3) / 2);
});
