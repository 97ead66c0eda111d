import type { Box3 } from '../geom/box.js';
import type { Recipe } from '../geom/recipe.js';
import type { Mesh } from '../geom/solid.js';

/** Every part and body as a solid. Meshes are in mm, in own axes (parts) or piece axes (hardware). */
export interface Solids {
  readonly parts: readonly PartSolid[];
  readonly hardware: readonly { readonly id: string; readonly recipe: Recipe; readonly mesh: Mesh }[];
}
export interface PartSolid {
  readonly id: string;
  /** Own axes, nm. */
  readonly recipe: Recipe;
  readonly key: string;
  readonly mesh: Mesh;
  /** mm3. */
  readonly volume: number;
  /** mm, own axes. */
  readonly bounds: Box3;
}
