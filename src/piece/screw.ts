import type { Axis } from '../geom/axis.js';
import type { Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import type { Recipe } from '../geom/recipe.js';
import type { SiteBody } from '../joints/joint.js';

/** Length of a flat head of 90 degrees: half the difference of head and shank (ISO 2009 and 7046 heads are 90 degrees). */
const headLength = (b: SiteBody): number => Math.max(0, (b.head - b.diameter) / 2);

/** Radii along the screw from the top of its head, nm. */
function profile(b: SiteBody, length: number): (readonly [number, number])[] {
  const r = b.diameter / 2;
  const h = Math.min(headLength(b), length);
  const out: (readonly [number, number])[] = [[0, 0]];
  if (b.head > b.diameter) out.push([b.head / 2, 0]);
  out.push([r, h], [r, length], [0, length]);
  return out;
}

/** A screw of a site as a turned body in the piece's axes, from its head's top to its point (piece axes, nm). */
export function screwBody(b: SiteBody, from: Vec3, to: Vec3): Recipe {
  const way = byAxis((a) => to[a] - from[a]) as Vec3;
  const length = Math.sqrt(way[0] ** 2 + way[1] ** 2 + way[2] ** 2);
  const straight = ([0, 1, 2] as const).filter((a) => way[a] !== 0);
  const axis = straight[0];
  if (straight.length === 1 && axis !== undefined) {
    const sign = way[axis] < 0 ? -1 : 1;
    const along = profile(b, length).map(([r, d]) => [r, from[axis] + sign * d] as const);
    return { op: 'turned', axis, centre: from, profile: sign < 0 ? along.reverse() : along };
  }
  const upright: Recipe = { op: 'turned', axis: 2, centre: [0, 0, 0], profile: profile(b, length) };
  return { op: 'placed', by: pointing(way, length, from), of: upright };
}

/** The placement that turns the up axis to point along `way` and puts its origin at `at`. */
function pointing(way: Vec3, length: number, at: Vec3): Placement {
  const w = byAxis((a) => way[a] / length) as Vec3;
  const least = ([0, 1, 2] as Axis[]).sort((a, b) => Math.abs(w[a]) - Math.abs(w[b]) || a - b)[0] as Axis;
  const e = byAxis((a) => (a === least ? 1 : 0)) as Vec3;
  const u0 = byAxis((a) => e[a] - w[least] * w[a]) as Vec3;
  const size = Math.sqrt(u0[0] ** 2 + u0[1] ** 2 + u0[2] ** 2);
  const u = byAxis((a) => u0[a] / size) as Vec3;
  const v: Vec3 = [w[1] * u[2] - w[2] * u[1], w[2] * u[0] - w[0] * u[2], w[0] * u[1] - w[1] * u[0]];
  return { rotation: byAxis((a) => [u[a], v[a], w[a]] as Vec3), origin: at };
}
