import type { Mesh, Rings } from './solid.js';

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
export function canonicalMesh(points: readonly (readonly number[])[], corners: ArrayLike<number>): Mesh {
  const order = points.map((_, i) => i).sort((a, b) => byNumbers(points[a] as number[], points[b] as number[]));
  const place = new Uint32Array(points.length);
  const positions: number[] = [];
  let last: readonly number[] | undefined;
  for (const i of order) {
    const p = points[i] as readonly number[];
    if (last === undefined || byNumbers(p, last) !== 0) positions.push(...p);
    last = p;
    place[i] = positions.length / 3 - 1;
  }
  const triangles: [number, number, number][] = [];
  for (let t = 0; t + 2 < corners.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => place[corners[t + k] as number] as number) as [number, number, number];
    if (a === b || b === c || c === a) continue;
    triangles.push(a < b && a < c ? [a, b, c] : b < c ? [b, c, a] : [c, a, b]);
  }
  triangles.sort(byNumbers);
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles.flat()) };
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
