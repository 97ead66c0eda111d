import { AXES, others } from '../geom/axis.js';
import type { Axis } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Box3, Vec3 } from '../geom/box.js';
import { keyOf } from '../geom/key.js';
import { nearby } from '../geom/nearby.js';
import { areaOf, flatten } from '../geom/outline.js';
import type { Point2 } from '../geom/outline.js';
import { place } from '../geom/placement.js';
import type { Placement } from '../geom/placement.js';
import { meetBoxes, reachOf } from '../geom/reach.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel, Mesh } from '../geom/solid.js';
import { shiftedBy, squared } from '../geom/squared.js';
import { sameSurface } from './sameSurface.js';

/**
 * True when two parts are surely one solid: blanks alike, and what is taken of the one is, tool by tool, what is taken of the
 * other. Tools are compared by their figures as far as the blank goes, whatever shape each was given as; those whose figures
 * differ, as surfaces. False may also mean "not seen": then the parts themselves must be compared.
 */
export function samePart(a: Recipe, b: Recipe, kernel: Kernel): boolean {
  const [p, q] = [taken(squared(a)), taken(squared(b))];
  if (!p || !q || AXES.some((i) => p.blank[i][0] !== q.blank[i][0] || p.blank[i][1] !== q.blank[i][1])) return false;
  const only = (own: Tools, other: Tools): Recipe[] => [...own].filter(([key]) => !other.has(key)).map(([, tool]) => tool); // prettier-ignore
  const [left, right] = [only(p.tools, q.tools), only(q.tools, p.tools)];
  const pairs = left.map((tool) => right.find((other) => sameTool(tool, other, p.blank, kernel)));
  return !pairs.includes(undefined) && right.every((tool) => pairs.includes(tool));
}
/** Tools by the figures of what they take. */
type Tools = ReadonlyMap<string, Recipe>;

function taken(part: Recipe): { blank: Box3; tools: Tools } | undefined {
  const from = part.op === 'cut' ? part.from : part;
  if (from.op !== 'box') return undefined;
  const tools = part.op === 'cut' ? part.tools.flatMap((t) => plain(t, from.at)) : [];
  return { blank: from.at, tools: new Map(tools.map((t) => [keyOf(t), t])) };
}
/** What a tool takes of a box, as solids that are written in one way only; joined ones each for itself. */
function plain(tool: Recipe, box: Box3): Recipe[] {
  const near = nearby(tool.op === 'hull' ? asPrism(tool) : tool, box);
  if (!near) return [];
  switch (near.op) {
    case 'joined':
      return near.of.flatMap((r) => plain(r, box));
    case 'cut': {
      const from = plain(near.from, box);
      const room = reachOf(near.from);
      const tools = room ? near.tools.flatMap((t) => plain(t, room)) : [];
      if (tools.length === 0 || from.length !== 1) return from;
      const sorted = tools
        .map((t) => ({ t, key: keyOf(t) }))
        .sort((p, q) => (p.key < q.key ? -1 : p.key > q.key ? 1 : 0))
        .map((s) => s.t);
      return [{ op: 'cut', from: from[0] as Recipe, tools: sorted }];
    }
    case 'prism':
      return [plainPrism(near)];
    case 'placed':
      return (near.of.op === 'joined' ? near.of.of : [near.of]).map((of) => ({ op: 'placed', by: near.by, of: shortened(of, near.by, box) })); // prettier-ignore
    default:
      return [near];
  }
}
/** A leaning hole as far along its axis as any of it can be in the box. */
function shortened(hole: Recipe, by: Placement, box: Box3): Recipe {
  if (hole.op !== 'turned') return hole;
  const [first, last, ...more] = hole.profile;
  if (!first || !last || more.length > 0 || first[0] !== last[0]) return hole;
  const middle = place(by, byAxis((a) => (a === hole.axis ? 0 : hole.centre[a]))); // prettier-ignore
  const along = byAxis((i) => by.rotation[i][hole.axis]);
  let [lo, hi] = [Math.min(first[1], last[1]), Math.max(first[1], last[1])];
  for (const i of AXES) {
    if (Math.abs(along[i]) < 1e-9) continue;
    const aside = first[0] * Math.sqrt(Math.max(0, 1 - along[i] * along[i]));
    const ends = [box[i][0] - aside, box[i][1] + aside].map((x) => (x - middle[i]) / along[i]);
    lo = Math.max(lo, Math.floor(Math.min(...ends)));
    hi = Math.min(hi, Math.ceil(Math.max(...ends)));
  }
  return lo < hi ? { ...hole, profile: [[first[0], lo], [first[0], hi]] } : hole; // prettier-ignore
}
type Prism = Extract<Recipe, { op: 'prism' }>;

/** A prism's outline by its corners, anticlockwise from the lowest; one with four square sides is a box. */
function plainPrism(prism: Prism): Recipe {
  const [first, ...more] = prism.outlines.map((o) => flatten(o));
  if (!first || more.length > 0) return prism;
  const ring = fromLowest(areaOf(first) < 0 ? [...first].reverse() : first);
  const [u, v] = others(prism.axis);
  const [low, , high] = ring;
  if (
    ring.length === 4 &&
    low &&
    high &&
    ring.every(([x, y]) => (x === low[0] || x === high[0]) && (y === low[1] || y === high[1]))
  ) {
    // prettier-ignore
    const at = byAxis((a) => (a === u ? [low[0], high[0]] : a === v ? [low[1], high[1]] : [prism.from, prism.to]) as [number, number]); // prettier-ignore
    return { op: 'box', at };
  }
  return { ...prism, outlines: [ring.map((to) => ({ to }))] };
}
function fromLowest(ring: readonly Point2[]): Point2[] {
  let least = 0;
  ring.forEach((p, i) => {
    const m = ring[least] as Point2;
    if (p[0] < m[0] || (p[0] === m[0] && p[1] < m[1])) least = i;
  });
  return [...ring.slice(least), ...ring.slice(0, least)];
}
/** A hull whose points are one section given at both ends of a run, as that section pushed along. */
function asPrism(hull: Extract<Recipe, { op: 'hull' }>): Recipe {
  for (const axis of AXES) {
    const [from, to] = [Math.min, Math.max].map((f) => f(...hull.points.map((p) => p[axis]))) as [number, number];
    const [low, high] = [from, to].map((end) => hull.points.filter((p) => p[axis] === end));
    if (!low || !high || from >= to || low.length !== high.length || low.length * 2 !== hull.points.length) continue;
    const [bottom, top] = [low, high].map((points) => around(points, axis));
    if (!bottom || !top || bottom.length < 3 || JSON.stringify(bottom) !== JSON.stringify(top)) continue;
    return { op: 'prism', axis, from, to, outlines: [bottom.map((p) => ({ to: p }))] };
  }
  return hull;
}
/** The convex ring around points square to an axis (Andrew's monotone chain, 1979), anticlockwise. */
function around(points: readonly Vec3[], axis: Axis): Point2[] {
  const [u, v] = others(axis);
  const sorted = points.map((p): Point2 => [p[u], p[v]]).sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const chain = (list: readonly Point2[]): Point2[] => {
    const out: Point2[] = [];
    for (const p of list) {
      for (let n = out.length; n > 1; n = out.length) {
        const [a, b] = [out[n - 2] as Point2, out[n - 1] as Point2];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        out.pop();
      }
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}
/** Boxes of what two tools take must agree this well before their surfaces are compared: 1 mm, nm. */
const ABOUT = 1_000_000;

/** What two tools take of the blank, as surfaces; worked out near the origin, so that like pairs are worked out once. */
function sameTool(a: Recipe, b: Recipe, blank: Box3, kernel: Kernel): boolean {
  const [p, q] = [a, b].map((tool) => {
    const reach = reachOf(tool);
    return reach && meetBoxes(reach, blank);
  });
  if (!p || !q || AXES.some((i) => [0, 1].some((k) => Math.abs(p[i][k as 0] - q[i][k as 0]) > ABOUT))) return false;
  const room = byAxis((i) => [Math.min(p[i][0], q[i][0]), Math.max(p[i][1], q[i][1])] as const);
  const home = byAxis((i) => 0 - room[i][0]);
  const surface = (tool: Recipe): Mesh => {
    const box: Recipe = { op: 'box', at: room };
    return kernel.mesh({ op: 'met', of: [shiftedBy(box, home), shiftedBy(tool, home)] });
  };
  return sameSurface(surface(a), surface(b));
}
