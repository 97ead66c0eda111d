import { others } from './axis.js';
import type { Span, Vec3 } from './box.js';
import { flatten, type Point2 } from './outline.js';
import { unplace } from './placement.js';
import { reachOf } from './reach.js';
import type { Recipe } from './recipe.js';

/** A point is told to be in or out only when it is so with all points this near, nm. */
const CLEAR = 3;
/** Facets of a turned solid lie no further inside than this share of its radius: cosine of 180/16 degrees is 0.981. */
export const FACET = 0.98;

export type Where = 'in' | 'out' | 'unsure';
const flip = (w: Where): Where => (w === 'in' ? 'out' : w === 'out' ? 'in' : 'unsure');
const all = (list: readonly Where[]): Where =>
  list.includes('out') ? 'out' : list.includes('unsure') ? 'unsure' : 'in';

/** Does a point (nm) lie well inside a solid, well outside, or too near its surface to tell? Worked out from figures. */
export function whereIs(p: Vec3, recipe: Recipe): Where {
  const reach = reachOf(recipe);
  if (!reach) return 'out';
  let low = Infinity;
  for (let a = 0; a < 3; a++) {
    const [side, x] = [reach[a] as Span, p[a] as number];
    low = Math.min(low, x - side[0], side[1] - x);
  }
  if (low < -CLEAR) return 'out';
  switch (recipe.op) {
    case 'box':
      return low > CLEAR ? 'in' : 'unsure';
    case 'prism': {
      const [u, v] = others(recipe.axis);
      return low > CLEAR ? inRings([p[u], p[v]], recipe.outlines.map((o) => flatten(o))) : 'unsure'; // prettier-ignore
    }
    case 'turned': {
      const [u, v] = others(recipe.axis);
      const from = Math.hypot(p[u] - recipe.centre[u], p[v] - recipe.centre[v]);
      const [least, most] = [Math.min, Math.max].map((f) => f(...recipe.profile.map(([r]) => r))) as [number, number];
      return from > most + CLEAR ? 'out' : from < least * FACET - CLEAR && low > CLEAR ? 'in' : 'unsure';
    }
    case 'placed':
      return whereIs(unplace(recipe.by, p), recipe.of);
    case 'cut':
      return inCut(p, recipe);
    case 'met':
      return all(recipe.of.map((r) => whereIs(p, r)));
    case 'joined':
      return flip(all(recipe.of.map((r) => flip(whereIs(p, r)))));
    case 'hull':
      return 'unsure';
  }
}
function inCut(p: Vec3, recipe: Extract<Recipe, { op: 'cut' }>): Where {
  let where = whereIs(p, recipe.from);
  if (where === 'out') return 'out';
  for (const tool of recipe.tools) {
    const taken = whereIs(p, tool);
    if (taken === 'in') return 'out';
    if (taken === 'unsure') where = 'unsure';
  }
  return where;
}
/** Even-odd rule over all rings. */
function inRings(p: Point2, rings: readonly (readonly Point2[])[]): Where {
  let odd = false;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [a, b] = [ring[i] as Point2, ring[(i + 1) % ring.length] as Point2];
      const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], p[0] - a[0], p[1] - a[1]];
      const t = Math.max(0, Math.min(1, (ux * vx + uy * vy) / (ux * ux + uy * uy || 1)));
      if (Math.hypot(vx - t * ux, vy - t * uy) <= CLEAR) return 'unsure';
      if (a[1] > p[1] !== b[1] > p[1] && vx < (ux * vy) / uy) odd = !odd;
    }
  }
  return odd ? 'in' : 'out';
}
