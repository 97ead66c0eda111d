import type { Box3, Vec3 } from './box.js';
import type { Recipe } from './recipe.js';

/** Triangles of a solid in canonical order. Millimetres, in the recipe's own axes. */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}
/** Closed rings in the slicing plane's own 2-D axes, mm; outer rings anticlockwise, holes clockwise. */
export type Rings = readonly (readonly (readonly [number, number])[])[];

/** Answers pure questions about recipes; every answer is plain data. Memoised by content key; `dispose` frees all handles. */
export interface Kernel {
  /** Content key of a recipe: equal recipes share it. */
  key(recipe: Recipe): string;
  mesh(recipe: Recipe): Mesh;
  /** Cubic millimetres. */
  volume(recipe: Recipe): number;
  /** Millimetres; undefined when the solid is empty. */
  bounds(recipe: Recipe): Box3 | undefined;
  /** Volume (mm3) common to both and where, in mm; volume 0 when they only touch. */
  overlap(a: Recipe, b: Recipe): { readonly volume: number; readonly at?: Box3 };
  /** Cut by the plane through `point` (mm) whose in-plane axes are u and v (unit, orthogonal). A ring's coordinates are u·p and v·p, so sections and views lie over one another. */
  slice(recipe: Recipe, point: Vec3, u: Vec3, v: Vec3): Rings;
  /** How many separate lumps the solid falls into. */
  lumps(recipe: Recipe): number;
  dispose(): void;
}
