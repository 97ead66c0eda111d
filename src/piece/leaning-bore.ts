import { cosine, sine } from '../geom/angle.js';
import { AXES, faceAxis, faceSign, inFace } from '../geom/axis.js';
import type { Box3, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import { dot } from '../geom/placement.js';
import type { BoreCut, Cut } from '../words/cut.js';

/** A round hole as its middle line and radius, nm, a part's own axes. */
interface Round {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}
export const leans = (cut: Cut): cut is BoreCut & { tilt: NonNullable<BoreCut['tilt']> } =>
  cut.shape === 'bore' && cut.tilt !== undefined;

/** The hole of a bore that leans, and its wider seat. `size`: the part's, whose faces the mouth stands in. */
function rounds(cut: BoreCut, size: Vec3): readonly Round[] {
  const [axis, sign] = [faceAxis(cut.face), faceSign(cut.face)];
  const [u, v] = inFace(cut.face);
  const degrees = cut.tilt?.degrees ?? 0;
  const from = byAxis((a) => (a === u ? cut.at[0] : a === v ? cut.at[1] : sign > 0 ? size[axis] : 0));
  const side = cut.tilt && faceAxis(cut.tilt.toward);
  const way = byAxis((a) =>
    a === axis ? 0 - sign * cosine(degrees) : a === side && cut.tilt ? faceSign(cut.tilt.toward) * sine(degrees) : 0,
  );
  const round = (depth: number, diameter: number): Round => {
    const to = byAxis((a) => from[a] + depth * way[a]);
    return { from, to, radius: diameter / 2 };
  };
  const shaft = round(cut.depth === 'through' ? size[axis] / cosine(degrees) : cut.depth, cut.diameter);
  return cut.seat ? [shaft, round(cut.seat.depth, cut.seat.diameter)] : [shaft];
}
const distance = (p: Vec3, q: Vec3): number => Math.sqrt(byAxis((a) => (p[a] - q[a]) ** 2).reduce((x, y) => x + y, 0));
const toBox = (p: Vec3, box: Box3): number => distance(p, byAxis((a) => Math.min(Math.max(p[a], box[a][0]), box[a][1]))); // prettier-ignore
const along = (r: Round, t: number): Vec3 => byAxis((a) => r.from[a] + t * (r.to[a] - r.from[a]));

/** Least of a function along a line that falls and then rises: the distance to anything convex does. By thirds. */
function least(r: Round, of: (p: Vec3) => number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i += 1) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (of(along(r, a)) <= of(along(r, b))) high = b;
    else low = a;
  }
  return of(along(r, (low + high) / 2));
}
/** Touching is no clash: nearer than this is, nm. */
const TOUCH = 1000;

const clamped = (t: number): number => Math.min(Math.max(t, 0), 1);
/** Where along `s` it is nearest to a point, 0 to 1. */
function nearest(s: Round, p: Vec3): number {
  const way = byAxis((a) => s.to[a] - s.from[a]);
  const square = dot(way, way);
  return square === 0
    ? 0
    : clamped(
        dot(
          way,
          byAxis((a) => p[a] - s.from[a]),
        ) / square,
      );
}
/** Least distance of two middle lines: at their crossing seen square to both, or at an end of one. */
function between(r: Round, s: Round): number {
  const [u, v] = [byAxis((a) => r.to[a] - r.from[a]), byAxis((a) => s.to[a] - s.from[a])];
  const w = byAxis((a) => r.from[a] - s.from[a]);
  const [uu, uv, vv] = [dot(u, u), dot(u, v), dot(v, v)];
  const under = uu * vv - uv * uv;
  const across = under > 1e-9 * uu * vv ? clamped((uv * dot(v, w) - vv * dot(u, w)) / under) : 0;
  // Each candidate on one line against the nearest point of the other; the least of them is the distance.
  const on = along(r, across);
  const back = along(s, nearest(s, on));
  return Math.min(
    distance(along(r, nearest(r, back)), back),
    ...[r.from, r.to].map((p) => distance(p, along(s, nearest(s, p)))),
    ...[s.from, s.to].map((p) => distance(p, along(r, nearest(r, p)))),
  );
}

/** Boxes about two holes share no room, so they cannot meet: looked at first, for it is quick. */
const apart = (r: Round, s: Round): boolean =>
  AXES.some((a) => {
    const reach = r.radius + s.radius;
    const [low, high] = [Math.min(s.from[a], s.to[a]) - reach, Math.max(s.from[a], s.to[a]) + reach];
    return Math.max(r.from[a], r.to[a]) < low || high < Math.min(r.from[a], r.to[a]);
  });

/** Does a bore that leans run into a box? */
export const intoBox = (cut: BoreCut, size: Vec3, box: Box3): boolean =>
  rounds(cut, size).some((r) => least(r, (p) => toBox(p, box)) < r.radius - TOUCH);

/** Do two bores run into one another? */
export const intoBore = (cut: BoreCut, other: BoreCut, size: Vec3): boolean =>
  rounds(cut, size).some((r) =>
    rounds(other, size).some((s) => !apart(r, s) && between(r, s) < r.radius + s.radius - TOUCH),
  );
