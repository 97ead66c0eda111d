import { arcTangent, cosine, sine } from '../geom/angle.js';

/** Standard gravity, m/s2 (by definition). */
export const GRAVITY = 9.80665;

/** A mass in the side view: mm behind the pivot (negative in front of it) and over the floor. */
export interface Weight2 {
  readonly name: string;
  readonly behind: number;
  readonly up: number;
  readonly kg: number;
}
export interface Balance {
  /** N m about the pivot: of what stands behind it, and of what stands in front and pulls. */
  readonly holding: number;
  readonly tipping: number;
}

/**
 * Moments about the front pivot when the floor leans forwards by `tilt` degrees; a level pull of `newtons` at the height
 * `up` (mm) tips. Each mass counts on the side on which it stands, so that holding less tipping is the moment of the whole.
 */
export function balance(
  weights: readonly Weight2[],
  tilt = 0,
  pull: { readonly up: number; readonly newtons: number } = { up: 0, newtons: 0 },
): Balance {
  let holding = 0;
  let tipping = (pull.newtons * pull.up) / 1000;
  for (const w of weights) {
    const arm = (w.behind * cosine(tilt) - w.up * sine(tilt)) / 1000;
    if (arm >= 0) holding += w.kg * GRAVITY * arm;
    else tipping -= w.kg * GRAVITY * arm;
  }
  return { holding, tipping };
}

/** Degrees that a piece leans forwards when its rear stands on blocks: their height over the depth between its supports. */
export const leanOn = (block: number, depth: number): number => (depth > 0 ? arcTangent(block / depth) : 0);
