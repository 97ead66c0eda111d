import type { Mesh, Rings } from './solid.js';

type Point3 = readonly [number, number, number];
const byPlace = (a: Point3, b: Point3): number => a[0] - b[0] || a[1] - b[1] || a[2] - b[2];

const byNumbers = (a: readonly number[], b: readonly number[]): number => {
  for (let i = 0; i < a.length; i++) {
    const d = (a[i] as number) - (b[i] as number);
    if (d !== 0) return d;
  }
  return 0;
};

/**
 * A mesh whose bytes depend on nothing but its triangles: corners at the same place made one and sorted by place,
 * triangles begun at their lowest corner and sorted; triangles that have lost their area to rounding go.
 */
export function canonicalMesh(points: readonly Point3[], corners: ArrayLike<number>): Mesh {
  const order = points.map((_, i) => i).sort((a, b) => byPlace(points[a] as Point3, points[b] as Point3));
  const place = new Uint32Array(points.length);
  const positions: number[] = [];
  let last: Point3 | undefined;
  for (const i of order) {
    const p = points[i] as Point3;
    if (last === undefined || byPlace(p, last) !== 0) positions.push(p[0], p[1], p[2]);
    last = p;
    place[i] = positions.length / 3 - 1;
  }
  return { positions: Float64Array.from(positions), triangles: sortedTriangles(corners, place, positions.length / 3) };
}

/** Each triangle as one number in the base of the corners' count, which a double holds for 200 000 corners; sorted. */
function sortedTriangles(corners: ArrayLike<number>, place: Uint32Array, base: number): Uint32Array {
  if (base > 2e5) throw new RangeError(`a mesh of ${base} corners`);
  const keys = new Float64Array(Math.floor(corners.length / 3));
  let count = 0;
  for (let t = 0; t + 2 < corners.length; t += 3) {
    const a = place[corners[t] as number] as number;
    const b = place[corners[t + 1] as number] as number;
    const c = place[corners[t + 2] as number] as number;
    if (a === b || b === c || c === a) continue;
    if (a < b && a < c) keys[count++] = (a * base + b) * base + c;
    else if (b < c) keys[count++] = (b * base + c) * base + a;
    else keys[count++] = (c * base + a) * base + b;
  }
  const out = new Uint32Array(count * 3);
  keys
    .subarray(0, count)
    .sort()
    .forEach((key, i) => {
      out[i * 3] = Math.floor(key / (base * base));
      out[i * 3 + 1] = Math.floor(key / base) % base;
      out[i * 3 + 2] = key % base;
    });
  return out;
}

type Ring = readonly (readonly [number, number])[];
/** Takes out points that lie on the straight line between their neighbours (mm). */
function straightened(ring: Ring, tolerance: number): Ring {
  const out = [...ring];
  const at = (i: number): Ring[number] => out[(i + out.length) % out.length] as Ring[number];
  const idle = (i: number): boolean => {
    const [a, b, c] = [at(i - 1), at(i), at(i + 1)];
    const [ux, uy, vx, vy] = [c[0] - a[0], c[1] - a[1], b[0] - a[0], b[1] - a[1]];
    const [long, ahead] = [Math.hypot(ux, uy), ux * vx + uy * vy];
    return long <= tolerance || (Math.abs(ux * vy - uy * vx) <= tolerance * long && ahead >= 0 && ahead <= long * long);
  };
  for (let i = 0; i < out.length && out.length > 2;) {
    if (!idle(i)) i++;
    else {
      out.splice(i, 1);
      i = Math.max(0, i - 1);
    }
  }
  return out.length < 3 ? [] : out;
}
/** Rings with straight runs made one line, each begun at its lowest point, sorted. */
export function canonicalRings(rings: Rings, tolerance = 1e-6): Rings {
  return rings
    .map((ring) => straightened(ring, tolerance))
    .filter((ring) => ring.length > 0)
    .map((ring) => {
      const first = ring.map((_, i) => i).reduce((m, i) => (byNumbers(ring[i] ?? [], ring[m] ?? []) < 0 ? i : m), 0);
      return [...ring.slice(first), ...ring.slice(0, first)];
    })
    .sort((a, b) => byNumbers(a[0] ?? [], b[0] ?? []) || byNumbers(a[1] ?? [], b[1] ?? []) || a.length - b.length);
}
