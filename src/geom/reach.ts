import { AXES, others, type Axis } from './axis.js';
import { byAxis, span, type Box3, type Span, type Vec3 } from './box.js';
import { flatten } from './outline.js';
import { isSquare, place, type Placement } from './placement.js';
import type { Recipe } from './recipe.js';

const KNOWN = new WeakMap<Recipe, Box3 | 'nothing'>();

/** A box that surely holds a recipe's solid, nm; undefined when there is surely none. Worked out from its figures, without the kernel. */
export function reachOf(recipe: Recipe): Box3 | undefined {
  let known = KNOWN.get(recipe);
  if (known === undefined) KNOWN.set(recipe, (known = reach(recipe) ?? 'nothing'));
  return known === 'nothing' ? undefined : known;
}
function reach(recipe: Recipe): Box3 | undefined {
  switch (recipe.op) {
    case 'box':
      return solid(recipe.at);
    case 'prism': {
      const [u, v] = others(recipe.axis);
      const points = recipe.outlines.flatMap((o) => flatten(o));
      const sides: [Span, Span, Span] = [
        [recipe.from, recipe.to],
        [recipe.from, recipe.to],
        [recipe.from, recipe.to],
      ];
      sides[u] = over(points.map((p) => p[0]));
      sides[v] = over(points.map((p) => p[1]));
      return solid(sides);
    }
    case 'hull':
      return solid(around(recipe.points));
    case 'turned': {
      const radius = Math.max(0, ...recipe.profile.map(([r]) => r));
      return solid(
        byAxis((a) =>
          a === recipe.axis
            ? over(recipe.profile.map(([, h]) => h))
            : [recipe.centre[a] - radius, recipe.centre[a] + radius],
        ),
      );
    }
    case 'placed': {
      const inner = reachOf(recipe.of);
      return inner && placedBox(recipe.by, inner);
    }
    case 'cut':
      return reachOf(recipe.from);
    case 'joined':
      return recipe.of
        .map(reachOf)
        .reduce(
          (a, b) => (a && b ? byAxis((i): Span => [Math.min(a[i][0], b[i][0]), Math.max(a[i][1], b[i][1])]) : (a ?? b)),
          undefined,
        );
    case 'met': {
      const [first, ...rest] = recipe.of.map(reachOf);
      return rest.reduce((a, b) => a && b && meetBoxes(a, b), first);
    }
  }
}
const over = (values: readonly number[]): Span => {
  let [lo, hi] = [Infinity, -Infinity];
  for (const v of values) {
    if (v < lo) lo = v;
    if (v > hi) hi = v;
  }
  return [lo, hi];
};
const around = (points: readonly Vec3[]): Box3 => byAxis((a) => over(points.map((p) => p[a])));
const solid = (box: Box3): Box3 | undefined => (AXES.every((a) => box[a][1] > box[a][0]) ? box : undefined);

/** The room that two boxes share; undefined when they only touch or stand apart. */
export function meetBoxes(a: Box3, b: Box3): Box3 | undefined {
  return solid(byAxis((i): Span => [Math.max(a[i][0], b[i][0]), Math.min(a[i][1], b[i][1])]));
}
/** True when no point of `inner` is outside `outer`. */
export const boxWithin = (inner: Box3, outer: Box3): boolean =>
  inner[0][0] >= outer[0][0] &&
  inner[0][1] <= outer[0][1] &&
  inner[1][0] >= outer[1][0] &&
  inner[1][1] <= outer[1][1] &&
  inner[2][0] >= outer[2][0] &&
  inner[2][1] <= outer[2][1];
export const cornersOf = (box: Box3): Vec3[] =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((i) => byAxis((a) => box[a][((i >> a) & 1) as 0 | 1]));
/** The box around a placed box: exact when nothing leans, else a nanometre to spare. */
export function placedBox(by: Placement, box: Box3): Box3 {
  if (isSquare(by)) {
    return byAxis((i) => {
      const [j, s] = source(by, i);
      return span(s * box[j][0] + by.origin[i], s * box[j][1] + by.origin[i]);
    });
  }
  const loose = around(cornersOf(box).map((p) => place(by, p)));
  return byAxis((a) => [Math.floor(loose[a][0]) - 1, Math.ceil(loose[a][1]) + 1]);
}
/** Where a square placement takes axis `i` from, and which way round. */
export function source(by: Placement, i: Axis): [Axis, 1 | -1] {
  const row = by.rotation[i];
  const j = row[0] !== 0 ? 0 : row[1] !== 0 ? 1 : 2;
  return [j, row[j] > 0 ? 1 : -1];
}
