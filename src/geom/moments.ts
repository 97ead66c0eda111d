import type { Vec3 } from './box.js';
import type { Mesh } from './solid.js';

/** Volume (the cube of the mesh's unit) and the middle of it, in the mesh's axes. */
export interface Moments {
  readonly volume: number;
  readonly centre: Vec3;
}

/**
 * Exact integrals over a closed mesh: each triangle spans a tetrahedron with a corner of reference, signed by the way that
 * it winds. The corner is the mesh's first, so that solids far from the origin lose no figures.
 */
export function momentsOf({ positions, triangles }: Mesh): Moments {
  const at = (i: number): Vec3 => [positions[3 * i] ?? 0, positions[3 * i + 1] ?? 0, positions[3 * i + 2] ?? 0];
  const origin = triangles.length > 0 ? at(triangles[0] ?? 0) : ([0, 0, 0] as const);
  let six = 0;
  const sum: [number, number, number] = [0, 0, 0];
  for (let t = 0; t + 2 < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => less(at(triangles[t + k] ?? 0), origin)) as [Vec3, Vec3, Vec3];
    const d = determinant(a, b, c);
    six += d;
    for (const k of [0, 1, 2] as const) sum[k] += d * (a[k] + b[k] + c[k]);
  }
  if (six === 0) return { volume: 0, centre: origin };
  const centre = sum.map((s, k) => (origin[k] ?? 0) + s / (4 * six)) as unknown as Vec3;
  return { volume: six / 6, centre };
}
const less = (p: Vec3, q: Vec3): Vec3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const determinant = (a: Vec3, b: Vec3, c: Vec3): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
