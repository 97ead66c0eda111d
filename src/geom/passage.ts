import { arcCosine, cosine, direction, sine } from './angle.js';

/** Whether a rigid rectangle or box gets through, and how it must be held. Any one unit of length; angles degrees. */

/** Whether a rectangle `p` x `q` lies inside one `a` x `b`, and how far it must be turned for it; sides in any order. */
export interface Inside {
  readonly fits: boolean;
  readonly turn: number;
  /** What side `b` would have to be at the least for the same `a`. */
  readonly needs: number;
}
/**
 * Rectangle in rectangle: straight when p <= a and q <= b; turned when q <= b and
 * b >= (2pqa + (p² − q²)√(p² + q² − a²)) / (p² + q²) (Carver 1957; Wetzel 2000).
 */
export function rectangleInside(p: number, q: number, a: number, b: number): Inside {
  const [long, short] = p >= q ? [p, q] : [q, p];
  const [wide, high] = a >= b ? [a, b] : [b, a];
  if (long <= wide) return { fits: short <= high, turn: 0, needs: short };
  const square = long * long + short * short;
  const needs = (2 * long * short * wide + (long * long - short * short) * Math.sqrt(square - wide * wide)) / square;
  // Turned by t it is long cos t + short sin t = √square cos(t − φ) wide, which is to be `wide`.
  const turn = direction(long, short) + arcCosine(wide / Math.sqrt(square));
  return { fits: short <= high && needs <= high, turn, needs: Math.max(needs, short) };
}

/**
 * The widest thing of length `length` that goes round a square corner between passages `a` and `b` wide, level and turned
 * as it goes: the least over all angles of a cos t + b sin t − length sin t cos t. Not more than a or b.
 */
export function widestRoundCorner(
  length: number,
  a: number,
  b: number,
): { readonly width: number; readonly turn: number } {
  const room = (t: number): number => a * cosine(t) + b * sine(t) - length * sine(t) * cosine(t);
  let best = { width: Math.min(a, b), turn: a <= b ? 0 : 90 };
  const at = Array.from({ length: 91 }, (_, t) => room(t));
  for (let t = 0; t < 90; t++) {
    // Only about a whole degree that is no more than those beside it lies a least.
    const here = at[t] as number;
    if (here > (at[t - 1] ?? Infinity) || here > (at[t + 1] ?? Infinity)) continue;
    const [turn, width] = least(room, Math.max(0, t - 1), Math.min(90, t + 1));
    if (width < best.width) best = { width, turn };
  }
  return best;
}
/** The least of a smooth function on a short span, by thirds. */
function least(f: (t: number) => number, from: number, to: number): readonly [number, number] {
  let [low, high] = [from, to];
  for (let n = 0; n < 40; n++) {
    const third = (high - low) / 3;
    if (f(low + third) <= f(high - third)) high -= third;
    else low += third;
  }
  const t = Math.round(((low + high) / 2) * 1e6) / 1e6;
  return [t, f(t)];
}

/** What height a box `deep` x `high` needs while it is tipped up on its edge. */
export const tippedHeight = (deep: number, high: number): number => Math.sqrt(deep * deep + high * high);

/** Height square to the slope of a stair that a headroom measured plumb leaves. */
export const squareHeadroom = (headroom: number, pitch: number): number => headroom * cosine(pitch);
