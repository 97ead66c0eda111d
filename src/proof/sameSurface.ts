import type { Mesh } from '../geom/solid.js';

/** Corners nearer than this are one; a corner this near a plane or line lies on it. mm: a nanometre, the model's own step. */
const NEAR = 1e-6;
/** A triangle lower than this has no plane of its own, mm. */
const SLIVER = 1e-4;
/** More triangles than this, cut otherwise in the two, are left to the solid library. */
const MOST = 4000;

type Place = readonly [number, number, number];
interface Triangle {
  readonly corners: readonly [number, number, number];
  /** +1 of the first surface, -1 of the second. */
  readonly count: number;
  readonly normal: Place;
  readonly area: number;
}
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/**
 * True when two closed surfaces bound the same solid, however each is cut into triangles. The triangles of the one less those
 * of the other must leave nothing: in each plane what is left must have no border, and a border on one line is none when as
 * many of its stretches end as begin at each of its points. Never true for different solids; false may also mean "not seen".
 */
export function sameSurface(a: Mesh, b: Mesh): boolean {
  const places: Place[] = [];
  const rest = remaining(a, b, places);
  if (rest.length === 0) return true;
  if (rest.length > MOST) return false;
  const planes = inPlanes(rest, places);
  return planes?.every((plane) => bordersNothing(plane, places)) ?? false;
}

/** What is left when triangles with the same corners have been struck out; corners get numbers common to both. */
function remaining(a: Mesh, b: Mesh, places: Place[]): Triangle[] {
  const known = new Map<string, number>();
  const left = new Map<string, { corners: [number, number, number]; count: number }>();
  for (const [mesh, sign] of [
    [a, 1],
    [b, -1],
  ] as const) {
    const numbers = numbered(mesh, known, places);
    for (let t = 0; t < mesh.triangles.length; t += 3) {
      const corners = begunLowest([0, 1, 2].map((k) => numbers[mesh.triangles[t + k] as number] as number));
      if (!corners) continue;
      const key = corners.join();
      const same = left.get(key) ?? { corners, count: 0 };
      same.count += sign;
      if (same.count === 0) left.delete(key);
      else left.set(key, same);
    }
  }
  return [...left.values()].map(({ corners, count }) => ({ corners, count, ...square(corners, places) }));
}
/** The common number of each corner of a mesh. A quarter off the middle of a step, so that whole steps never fall between. */
function numbered(mesh: Mesh, known: Map<string, number>, places: Place[]): number[] {
  const out: number[] = [];
  const step = (x: number): number => Math.round(x / NEAR + 0.25);
  for (let i = 0; i < mesh.positions.length; i += 3) {
    const [x, y, z] = mesh.positions.subarray(i, i + 3) as unknown as Place;
    const key = `${step(x)} ${step(y)} ${step(z)}`;
    const number = known.get(key) ?? places.push([x, y, z]) - 1;
    known.set(key, number);
    out.push(number);
  }
  return out;
}
function begunLowest([a, b, c]: readonly number[]): [number, number, number] | undefined {
  if (a === undefined || b === undefined || c === undefined || a === b || b === c || c === a) return undefined;
  return a < b && a < c ? [a, b, c] : b < c ? [b, c, a] : [c, a, b];
}
const minus = (p: Place, q: Place): Place => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const cross = (u: Place, v: Place): Place => [
  u[1] * v[2] - u[2] * v[1],
  u[2] * v[0] - u[0] * v[2],
  u[0] * v[1] - u[1] * v[0],
];
const length = (v: Place): number => Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
const dot = (u: Place, v: Place): number => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
const placeOf = (places: readonly Place[], i: number): Place => places[i] as Place;

/** Unit normal and area; normal 0 where the triangle is too low to have one. */
function square(corners: readonly [number, number, number], places: readonly Place[]): { normal: Place; area: number } {
  const [p, q, r] = corners.map((i) => placeOf(places, i)) as [Place, Place, Place];
  const n = cross(minus(q, p), minus(r, p));
  const twice = length(n);
  const longest = Math.max(length(minus(q, p)), length(minus(r, q)), length(minus(p, r)));
  if (twice < SLIVER * longest) return { normal: [0, 0, 0], area: twice / 2 };
  return { normal: [n[0] / twice, n[1] / twice, n[2] / twice], area: twice / 2 };
}
/** The border of what lies in each plane, big triangles choosing the planes; undefined when a low one lies in none. */
function inPlanes(rest: readonly Triangle[], places: readonly Place[]): Edge[][] | undefined {
  const planes: { normal: Place; height: number; edges: Edge[] }[] = [];
  for (const { corners, count, normal } of [...rest].sort((s, t) => t.area - s.area)) {
    const points = corners.map((i) => placeOf(places, i));
    let plane = planes.find((p) => points.every((v) => Math.abs(dot(p.normal, v) - p.height) <= 2 * NEAR));
    if (!plane) {
      if (length(normal) === 0) return undefined;
      planes.push((plane = { normal, height: dot(normal, points[0] as Place), edges: [] }));
    }
    const [a, b, c] = corners;
    plane.edges.push({ from: a, to: b, count }, { from: b, to: c, count }, { from: c, to: a, count });
  }
  return planes.map((p) => p.edges);
}
/** True when edges, each counted in its direction, cancel on every line. */
function bordersNothing(edges: readonly Edge[], places: readonly Place[]): boolean {
  const counts = new Map<string, { from: number; to: number; count: number }>();
  for (const { from, to, count } of edges) {
    const [low, high, signed] = from < to ? [from, to, count] : [to, from, -count];
    const same = counts.get(`${low} ${high}`) ?? { from: low, to: high, count: 0 };
    same.count += signed;
    counts.set(`${low} ${high}`, same);
  }
  const left = [...counts.values()].filter((e) => e.count !== 0);
  const size = ({ from, to }: Edge): number => length(minus(placeOf(places, to), placeOf(places, from)));
  const lines: { at: Place; along: Place; ends: Map<number, number> }[] = [];
  for (const edge of left.map((e) => ({ ...e, size: size(e) })).sort((e, f) => f.size - e.size)) {
    const [p, q] = [placeOf(places, edge.from), placeOf(places, edge.to)];
    const on = (v: Place, line: { at: Place; along: Place }): boolean =>
      length(cross(line.along, minus(v, line.at))) <= 2 * NEAR;
    let line = lines.find((l) => on(p, l) && on(q, l));
    if (!line) {
      const [x, y, z] = minus(q, p);
      lines.push((line = { at: p, along: [x / edge.size, y / edge.size, z / edge.size], ends: new Map() }));
    }
    line.ends.set(edge.from, (line.ends.get(edge.from) ?? 0) - edge.count);
    line.ends.set(edge.to, (line.ends.get(edge.to) ?? 0) + edge.count);
  }
  return lines.every(({ ends }) => [...ends.values()].every((n) => n === 0));
}
