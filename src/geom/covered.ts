import { others, type Axis } from './axis.js';
import type { Box3, Span } from './box.js';
import { boxLess } from './nearby.js';
import { flatten, type Point2 } from './outline.js';
import { boxWithin, meetBoxes, reachOf } from './reach.js';
import type { Recipe } from './recipe.js';

/** Points this near a side of an outline count as on it, nm: a step, the rounding of its figures. */
const STEP = 1;
/** Boxes that a question may be split into before it is left to the kernel. */
const MOST = 400;

/** A convex outline (nm) pushed along an axis. */
interface Bar {
  readonly axis: Axis;
  readonly span: Span;
  readonly ring: readonly Point2[];
}

/**
 * True when solids surely leave nothing of a box, worked out from their figures alone: boxes, boxes less something, prisms.
 * Bars that lie in a prism may stand out of it by a nanometre. False may also mean "not seen". nm.
 */
export function coveredBy(box: Box3, solids: readonly Recipe[]): boolean {
  return covered(box, solids, { left: MOST });
}
function covered(box: Box3, all: readonly Recipe[], budget: { left: number }): boolean {
  if (budget.left-- <= 0) return false;
  const near = all.filter((s) => {
    const reach = reachOf(s);
    return reach !== undefined && meetBoxes(reach, box) !== undefined;
  });
  if (near.some((s) => s.op === 'box' && boxWithin(box, s.at))) return true;
  if (near.some((s) => s.op === 'prism' && barWithin(barOf(box, s.axis), s))) return true;
  const whole = near.find((s) => s.op === 'cut' && s.from.op === 'box' && boxWithin(box, s.from.at));
  if (whole?.op === 'cut') {
    const rest = near.filter((s) => s !== whole);
    return whole.tools.every((t) => leftCovered(t, box, rest, budget));
  }
  const part = near.find((s) => blockOf(s));
  const block = part && blockOf(part);
  const inside = block && meetBoxes(box, block);
  if (!inside) return false;
  const rest = near.filter((s) => s !== part);
  return boxLess(box, block).every((b) => covered(b, rest, budget)) && covered(inside, near, budget);
}
/** The box that a solid is, or is cut from. */
const blockOf = (s: Recipe): Box3 | undefined =>
  s.op === 'box' ? s.at : s.op === 'cut' && s.from.op === 'box' ? s.from.at : undefined;

/** What a tool leaves in a box of the solid that it is taken from must be covered by the others. */
function leftCovered(tool: Recipe, box: Box3, rest: readonly Recipe[], budget: { left: number }): boolean {
  const reach = reachOf(tool);
  const room = reach && meetBoxes(reach, box);
  if (!room) return true;
  if (covered(room, rest, budget)) return true;
  if (tool.op !== 'prism' || tool.outlines.length !== 1) return false;
  const ring = clipped(flatten(tool.outlines[0] ?? []), tool.axis, room);
  const bar: Bar = { axis: tool.axis, span: room[tool.axis], ring };
  return ring.length < 3 || rest.some((s) => s.op === 'prism' && barWithin(bar, s));
}
function barOf(box: Box3, axis: Axis): Bar {
  const [u, v] = others(axis);
  const [[x0, x1], [y0, y1]] = [box[u], box[v]];
  return { axis, span: box[axis], ring: [[x0, y0], [x1, y0], [x1, y1], [x0, y1]] }; // prettier-ignore
}
/** A bar in a convex prism of the same axis. */
function barWithin(bar: Bar, prism: Extract<Recipe, { op: 'prism' }>): boolean {
  if (bar.axis !== prism.axis || prism.outlines.length !== 1) return false;
  if (bar.span[0] < prism.from || bar.span[1] > prism.to) return false;
  const ring = flatten(prism.outlines[0] ?? []);
  const sides = ring.map((p, i) => [p, ring[(i + 1) % ring.length] as Point2] as const);
  const above = (q: Point2, [a, b]: readonly [Point2, Point2]): number =>
    ((b[0] - a[0]) * (q[1] - a[1]) - (b[1] - a[1]) * (q[0] - a[0])) / Math.hypot(b[0] - a[0], b[1] - a[1]);
  const convex = sides.every((side) => ring.every((q) => above(q, side) >= -STEP));
  return convex && sides.every((side) => bar.ring.every((q) => above(q, side) >= -STEP));
}
/** A ring clipped to a box's two sides in its plane (Sutherland and Hodgman, 1974). */
function clipped(ring: readonly Point2[], axis: Axis, box: Box3): Point2[] {
  const [u, v] = others(axis);
  const bounds = [
    [0, box[u][0], 1],
    [0, box[u][1], -1],
    [1, box[v][0], 1],
    [1, box[v][1], -1],
  ] as const;
  let points: Point2[] = [...ring];
  for (const [i, at, sign] of bounds) {
    points = points.flatMap((p, k) => {
      const q = points[(k + 1) % points.length] as Point2;
      const [h, j] = [(p[i] - at) * sign, (q[i] - at) * sign];
      const out: Point2[] = h >= 0 ? [p] : [];
      if (h * j < 0) out.push([p[0] + ((q[0] - p[0]) * h) / (h - j), p[1] + ((q[1] - p[1]) * h) / (h - j)]);
      return out;
    });
  }
  return points;
}
