import type { Vec3 } from './box.js';

/** p' = rotation * p + origin. Rotation rows are orthonormal; determinant +1, or -1 where a mirror is meant. Lengths nm. */
export interface Placement {
  readonly rotation: readonly [Vec3, Vec3, Vec3];
  readonly origin: Vec3;
}
export const IDENTITY: Placement = {
  rotation: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  origin: [0, 0, 0],
};
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const shifted = (origin: Vec3): Placement => ({ rotation: IDENTITY.rotation, origin });
/** Turns a direction; no shift. */
export const turn = (p: Placement, v: Vec3): Vec3 => [
  dot(p.rotation[0], v),
  dot(p.rotation[1], v),
  dot(p.rotation[2], v),
];
/** Places a point. */
export const place = (p: Placement, v: Vec3): Vec3 => {
  const t = turn(p, v);
  return [t[0] + p.origin[0], t[1] + p.origin[1], t[2] + p.origin[2]];
};
const column = (p: Placement, i: 0 | 1 | 2): Vec3 => [p.rotation[0][i], p.rotation[1][i], p.rotation[2][i]];
/** Turns a direction back. */
export const unturn = (p: Placement, v: Vec3): Vec3 => [
  dot(column(p, 0), v),
  dot(column(p, 1), v),
  dot(column(p, 2), v),
];
/** Takes a placed point back into its own axes. */
export const unplace = (p: Placement, v: Vec3): Vec3 =>
  unturn(p, [v[0] - p.origin[0], v[1] - p.origin[1], v[2] - p.origin[2]]);
/** a after b. */
export const compose = (a: Placement, b: Placement): Placement => ({
  rotation: [0, 1, 2].map((i) => {
    const row = a.rotation[i as 0 | 1 | 2];
    return [dot(row, column(b, 0)), dot(row, column(b, 1)), dot(row, column(b, 2))] as Vec3;
  }) as unknown as [Vec3, Vec3, Vec3],
  origin: place(a, b.origin),
});
/** True when the rotation only permutes and flips axes (nothing leans). */
export const isSquare = (p: Placement): boolean =>
  p.rotation.every((r) => r.every((x) => x === 0 || x === 1 || x === -1));
