import { others, type Axis } from './axis.js';
import { byAxis, type Vec3 } from './box.js';
import { reversed } from './outline.js';
import { compose, isSquare, place, shifted, type Placement } from './placement.js';
import { placedBox, source } from './reach.js';
import type { Outline, Recipe } from './recipe.js';

const KNOWN = new WeakMap<Recipe, Recipe>();

/**
 * The same solid with square placements (turns by quarters, mirrors, shifts) carried out on the figures, so that what is
 * left are shapes in one set of axes; leaning ones stay, made one. Figures that are whole nanometres stay so.
 */
export function squared(recipe: Recipe): Recipe {
  const known = KNOWN.get(recipe);
  if (known) return known;
  const made = unplaced(recipe);
  KNOWN.set(recipe, made);
  return made;
}
function unplaced(recipe: Recipe): Recipe {
  switch (recipe.op) {
    case 'placed':
      return moved(squared(recipe.of), recipe.by);
    case 'cut':
      return { op: 'cut', from: squared(recipe.from), tools: recipe.tools.map(squared) };
    case 'joined':
    case 'met':
      return { op: recipe.op, of: recipe.of.map(squared) };
    default:
      return recipe;
  }
}
/** A recipe shifted, its shapes' own figures changed. */
export const shiftedBy = (recipe: Recipe, by: Vec3): Recipe => moved(recipe, shifted(by));

function moved(recipe: Recipe, by: Placement): Recipe {
  if (recipe.op === 'placed') return moved(recipe.of, compose(by, recipe.by));
  if (!isSquare(by)) return { op: 'placed', by, of: recipe };
  switch (recipe.op) {
    case 'box':
      return { op: 'box', at: placedBox(by, recipe.at) };
    case 'hull':
      return { op: 'hull', points: recipe.points.map((p) => place(by, p)) };
    case 'prism':
      return movedPrism(recipe, by);
    case 'turned': {
      const [axis, sign] = target(by, recipe.axis);
      const centre = place(by, recipe.centre);
      const shift = by.origin[axis];
      const profile = recipe.profile.map(([r, h]) => [r, sign * h + shift] as const);
      return {
        op: 'turned',
        axis,
        centre: byAxis((a) => (a === axis ? 0 : centre[a])),
        profile: sign > 0 ? profile : profile.reverse(),
      };
    }
    case 'cut':
      return { op: 'cut', from: moved(recipe.from, by), tools: recipe.tools.map((t) => moved(t, by)) };
    case 'joined':
    case 'met':
      return { op: recipe.op, of: recipe.of.map((r) => moved(r, by)) };
  }
}
/** Where a square placement takes axis `j` to, and which way round. */
function target(by: Placement, j: Axis): [Axis, 1 | -1] {
  const i = ([0, 1, 2] as const).find((k) => source(by, k)[0] === j) ?? j;
  return [i, source(by, i)[1]];
}
function movedPrism(recipe: Extract<Recipe, { op: 'prism' }>, by: Placement): Recipe {
  const [axis, sign] = target(by, recipe.axis);
  const v = others(recipe.axis)[1];
  const [p, q] = others(axis);
  const [[fromP, signP], [, signQ]] = [source(by, p), source(by, q)];
  const crossed = fromP === v;
  const flips = (crossed ? -1 : 1) * signP * signQ < 0;
  const point = ([x, y]: readonly [number, number]): readonly [number, number] => {
    const [a, b] = crossed ? [y, x] : [x, y];
    return [signP * a + by.origin[p] + 0, signQ * b + by.origin[q] + 0];
  };
  const outline = (o: Outline): Outline => {
    const turned = o.map(({ to, bulge }) =>
      bulge === undefined ? { to: point(to) } : { to: point(to), bulge: flips ? -bulge : bulge },
    );
    return flips ? reversed(turned) : turned;
  };
  const [a, b] = [sign * recipe.from + by.origin[axis], sign * recipe.to + by.origin[axis]];
  const outlines = recipe.outlines.map(outline);
  return { op: 'prism', axis, outlines, from: Math.min(a, b), to: Math.max(a, b) };
}
