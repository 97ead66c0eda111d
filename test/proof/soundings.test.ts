import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/geom/box.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { whereIs } from '../../src/geom/membership.js';
import type { Recipe } from '../../src/geom/recipe.js';
import { inMesh, soundsAs } from '../../src/proof/soundings.js';
import { partRecipe } from '../../src/solids/cutRecipe.js';
import { shippedPiece } from '../specimens/pieces.js';
import { chestSide, drawerSide, leg } from './parts.js';

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

describe('soundings', () => {
  for (const part of [chestSide(), drawerSide(), leg()]) {
    const whole = partRecipe(part) as Extract<Recipe, { op: 'cut' }>;
    it(`${part.mark}: a surface without one of its ${whole.tools.length} tools sounds otherwise, with all it sounds alike`, () => {
      expect(soundsAs(kernel.mesh(whole), whole)).toBe(true);
      const missed = whole.tools.filter((left) => {
        const short: Recipe = { op: 'cut', from: whole.from, tools: whole.tools.filter((t) => t !== left) };
        return soundsAs(kernel.mesh(short), whole);
      });
      expect(missed.length).toBe(0);
    });
  }
  it('every part of a shipped chest sounds alike', () => {
    for (const part of shippedPiece('tall-chest').parts) {
      const recipe = partRecipe(part);
      expect([part.id, soundsAs(kernel.mesh(recipe), recipe)]).toEqual([part.id, true]);
    }
  });
  it('in and out of a mesh are as the figures have it, on lines through corners and along edges too', () => {
    const recipe = partRecipe(leg());
    const mesh = kernel.mesh(recipe);
    const coordinate = (a: number) => fc.nat(mesh.positions.length / 3 - 1).map((i) => mesh.positions[i * 3 + a]!);
    let told = 0;
    fc.assert(
      fc.property(fc.tuple(fc.integer({ min: -5, max: 60 }), coordinate(1), coordinate(2)), ([x, y, z]) => {
        const p = [x + 0.37, y, z] as const;
        const said = whereIs(p.map((v) => v * 1e6) as unknown as Vec3, recipe);
        if (said === 'unsure') return;
        told++;
        expect([p, inMesh(mesh, p)]).toEqual([p, said === 'in']);
      }),
      { numRuns: 2000, seed: 11 },
    );
    expect(told).toBeGreaterThan(300);
  });
});
