import { AXES } from './axis.js';
import { byAxis, type Box3, type Span } from './box.js';
import { unplace } from './placement.js';
import { boxWithin, cornersOf, meetBoxes, reachOf } from './reach.js';
import type { Recipe } from './recipe.js';

/** Unplaced boxes grow by this, nm: more than the rounding of a turn over ten metres. */
const SPARE = 10;

/**
 * A simpler recipe of the same solid as far as the box goes: what cannot reach the box is left out, what reaches past it is
 * shortened where that is a matter of figures. Outside the box it may differ. Undefined when surely nothing is in the box.
 * nm; square placements should have been carried out (`squared`).
 */
export function nearby(recipe: Recipe, box: Box3): Recipe | undefined {
  const reach = reachOf(recipe);
  const room = reach && meetBoxes(reach, box);
  if (!room) return undefined;
  switch (recipe.op) {
    case 'box':
      return boxWithin(recipe.at, box) ? recipe : { op: 'box', at: room };
    case 'prism': {
      const [from, to] = room[recipe.axis];
      return from === recipe.from && to === recipe.to ? recipe : { ...recipe, from, to };
    }
    case 'turned':
      return turnedNear(recipe, room);
    case 'cut': {
      const from = nearby(recipe.from, room);
      if (!from) return undefined;
      const tools = recipe.tools.map((t) => nearby(t, room)).filter((t) => t !== undefined);
      return tools.length === 0 ? from : { op: 'cut', from, tools };
    }
    case 'joined': {
      const of = recipe.of.map((r) => nearby(r, room)).filter((r) => r !== undefined);
      return of.length === 1 ? of[0] : { op: 'joined', of };
    }
    case 'met': {
      const of = recipe.of.map((r) => nearby(r, room));
      return of.includes(undefined) ? undefined : { op: 'met', of: of.filter((r) => r !== undefined) };
    }
    case 'placed': {
      const of = nearby(recipe.of, unplacedBox(recipe, box));
      return of && { op: 'placed', by: recipe.by, of };
    }
    case 'hull':
      return recipe;
  }
}
/** A plain cylinder is shortened; a stepped one stays. */
function turnedNear(recipe: Extract<Recipe, { op: 'turned' }>, room: Box3): Recipe {
  const [first, last, ...more] = recipe.profile;
  if (!first || !last || more.length > 0 || first[0] !== last[0]) return recipe;
  const [lo, hi] = room[recipe.axis];
  return {
    ...recipe,
    profile: [
      [first[0], lo],
      [first[0], hi],
    ],
  };
}
function unplacedBox(recipe: Extract<Recipe, { op: 'placed' }>, box: Box3): Box3 {
  const corners = cornersOf(box).map((p) => unplace(recipe.by, p));
  return byAxis((a): Span => {
    const along = corners.map((c) => c[a]);
    return [Math.floor(Math.min(...along)) - SPARE, Math.ceil(Math.max(...along)) + SPARE];
  });
}
/** A box less another: up to six boxes that do not overlap. */
export function boxLess(box: Box3, gone: Box3): Box3[] {
  const room = meetBoxes(box, gone);
  if (!room) return [box];
  const out: Box3[] = [];
  let rest: Box3 = box;
  for (const a of AXES) {
    const piece = (s: Span): Box3 => byAxis((i) => (i === a ? s : rest[i]));
    const [lo, hi] = rest[a];
    if (room[a][0] > lo) out.push(piece([lo, room[a][0]]));
    if (room[a][1] < hi) out.push(piece([room[a][1], hi]));
    rest = piece(room[a]);
  }
  return out;
}
