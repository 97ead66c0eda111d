import type { Axis } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Vec3 } from '../geom/box.js';
import { IDENTITY, isSquare, place } from '../geom/placement.js';
import type { Placement } from '../geom/placement.js';
import type { Recipe } from '../geom/recipe.js';
import { NM_PER_MM } from '../lengths/length.js';
import type { CutPiece } from './section.js';

/**
 * Where the corners of cut parts lie, exactly. A section comes from a mesh, whose coordinates are near; a printed size comes
 * from the recipe, whose coordinates are whole nanometres: each corner takes the recipe's coordinate that it lies on, and a
 * corner that lies on none (of an arc, of a leaning face) has no size.
 */
export interface Corner {
  readonly part: string;
  /** Along the paper's right and up, nm. */
  readonly at: readonly [number, number];
}
export type Planes = readonly [Set<number>, Set<number>, Set<number>];

/** Coordinates of all flat faces and edges of a recipe along the three axes, nm; nothing of what leans. */
export function planesOf(recipe: Recipe, by: Placement = IDENTITY): Planes {
  const out: Planes = [new Set(), new Set(), new Set()];
  collect(recipe, [by], out);
  return out;
}
function collect(recipe: Recipe, chain: readonly Placement[], out: Planes): void {
  const add = (p: Vec3): void => {
    const at = chain.reduceRight((q, by) => place(by, q), p);
    for (const a of [0, 1, 2] as const) out[a].add(Math.round(at[a]) + 0);
  };
  switch (recipe.op) {
    case 'box':
      add(byAxis((a) => recipe.at[a][0]));
      add(byAxis((a) => recipe.at[a][1]));
      return;
    case 'prism': {
      const [u, v] = ([0, 1, 2] as Axis[]).filter((a) => a !== recipe.axis) as [Axis, Axis];
      for (const { to } of recipe.outlines.flat())
        for (const along of [recipe.from, recipe.to]) add(byAxis((a) => (a === u ? to[0] : a === v ? to[1] : along)));
      return;
    }
    case 'placed':
      if (isSquare(recipe.by)) collect(recipe.of, [...chain, recipe.by], out);
      return;
    case 'cut':
      for (const r of [recipe.from, ...recipe.tools]) collect(r, chain, out);
      return;
    case 'joined':
    case 'met':
      for (const r of recipe.of) collect(r, chain, out);
      return;
    default:
      return;
  }
}

/** A mesh lies so near to its recipe (kernel tolerance is finer), nm. */
const NEAR = 20_000;
/** The coordinate that lies nearest, if it is near enough. */
function nearest(planes: ReadonlySet<number>, value: number): number | undefined {
  let best: number | undefined;
  for (const p of planes)
    if (Math.abs(p - value) <= NEAR && (best === undefined || Math.abs(p - value) < Math.abs(best - value))) best = p;
  return best;
}

/** Corners of the cut parts `of` on exact coordinates, with the recipe of each part by id. */
export function cornersOf(
  piece: CutPiece,
  recipes: ReadonlyMap<string, Recipe>,
  of: (id: string) => boolean,
): Corner[] {
  const { right, up } = piece.plane.direction;
  const axisOf = (v: Vec3): Axis => (Math.abs(v[0]) > 0.5 ? 0 : Math.abs(v[1]) > 0.5 ? 1 : 2);
  const [x, y] = [axisOf(right), axisOf(up)];
  return piece.parts.flatMap(({ standing, rings }): Corner[] => {
    const recipe = recipes.get(standing.part.id);
    if (!recipe || !of(standing.part.id) || !standing.square) return [];
    const planes = planesOf(recipe, standing.part.place);
    return rings.flat().flatMap(([u, v]): Corner[] => {
      const [at, high] = [nearest(planes[x], u * NM_PER_MM * right[x]), nearest(planes[y], v * NM_PER_MM * up[y])];
      return at === undefined || high === undefined
        ? []
        : [{ part: standing.part.id, at: [at * right[x] + 0, high * up[y] + 0] }];
    });
  });
}
