/**
 * All trigonometry of the program. Angles are degrees, anticlockwise positive. Results are rounded to 1e-14 so that
 * libraries whose last bit differs give the same bytes; multiples of 90 degrees are exact.
 */
const RAD = Math.PI / 180;
const rounded = (x: number): number => Math.round(x * 1e14) / 1e14 + 0;
/** Angle brought into [0, 360). */
export const turnOf = (degrees: number): number => {
  const t = degrees % 360;
  return t < 0 ? t + 360 : t + 0;
};
export function sine(degrees: number): number {
  const t = turnOf(degrees);
  if (t === 0 || t === 180) return 0;
  if (t === 90) return 1;
  if (t === 270) return -1;
  return rounded(Math.sin(t * RAD));
}
export const cosine = (degrees: number): number => sine(degrees + 90);
/** Throws RangeError at odd multiples of 90 degrees. */
export function tangent(degrees: number): number {
  const c = cosine(degrees);
  if (c === 0) throw new RangeError(`no tangent at ${degrees} degrees`);
  return turnOf(degrees) % 180 === 45 ? 1 : turnOf(degrees) % 180 === 135 ? -1 : rounded(Math.tan(degrees * RAD));
}
/** Direction of the vector (x, y), in (-180, 180]; 0 for the null vector. */
export const direction = (x: number, y: number): number => {
  const a = rounded(Math.atan2(y, x) / RAD);
  return a === -180 ? 180 : a;
};
export const arcCosine = (x: number): number => rounded(Math.acos(Math.max(-1, Math.min(1, x))) / RAD);
export const arcTangent = (x: number): number => rounded(Math.atan(x) / RAD);

/** Bulge = tan(sweep / 4) of an arc's sweep in degrees. */
export const bulgeOf = (sweep: number): number => Math.tan((sweep * RAD) / 4);
/** Sweep in degrees of an arc given by its bulge. */
export const sweepOf = (bulge: number): number => (4 * Math.atan(bulge)) / RAD;

export interface Arc2 {
  readonly centre: readonly [number, number];
  readonly radius: number;
  /** Angle at the start, degrees; the arc runs on by `sweep` (negative is clockwise). */
  readonly from: number;
  readonly sweep: number;
}
/** The circle through `a` and `b` on which an arc of the given bulge runs from `a` to `b`. Bulge must not be 0. */
export function arcThrough(a: readonly [number, number], b: readonly [number, number], bulge: number): Arc2 {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const k = (1 - bulge * bulge) / (4 * bulge); // distance of the centre from the chord over the chord's length
  const centre: [number, number] = [(a[0] + b[0]) / 2 - dy * k, (a[1] + b[1]) / 2 + dx * k];
  const radius = Math.hypot(a[0] - centre[0], a[1] - centre[1]);
  return { centre, radius, from: direction(a[0] - centre[0], a[1] - centre[1]), sweep: sweepOf(bulge) };
}
/**
 * Number of equal chords for `sweep` degrees of a circle so that none lies further than `tolerance` from it.
 * Sagitta s = r (1 - cos(step / 2)).
 */
export function chordsFor(radius: number, sweep: number, tolerance: number): number {
  const step = 2 * arcCosine(1 - tolerance / radius);
  return Math.max(1, Math.ceil(Math.abs(sweep) / Math.max(step, 0.05) - 1e-9));
}
/** Sides of a full circle: a multiple of four (so that mirrored and square placements share corners), at least 16. */
export const sidesFor = (radius: number, tolerance: number): number =>
  Math.max(16, 4 * Math.ceil(chordsFor(radius, 360, tolerance) / 4));
/** Inner points of an arc's chords, without both ends. */
export function arcPoints(
  a: readonly [number, number],
  b: readonly [number, number],
  bulge: number,
  tolerance: number,
): [number, number][] {
  const arc = arcThrough(a, b, bulge);
  const n = chordsFor(arc.radius, arc.sweep, tolerance);
  return Array.from({ length: n - 1 }, (_, i) => {
    const t = arc.from + (arc.sweep * (i + 1)) / n;
    return [arc.centre[0] + arc.radius * cosine(t), arc.centre[1] + arc.radius * sine(t)];
  });
}
