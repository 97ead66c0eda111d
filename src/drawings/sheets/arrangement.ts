import type { Prepared } from '../input.js';
import { fieldOf, LETTER } from '../frame.js';
import { largestScale } from '../marks.js';
import type { View } from '../views.js';
import { extentOf, FRONT, PLAN, RIGHT_SIDE, viewAt } from '../views.js';

/** Room round the three aligned views, mm: our default after the examples of trade drawings. */
const LEFT = 40;
const BETWEEN = 31;
const RIGHT = 24;
const PLAN_GAP = 9.6;
const ABOVE = 4.6;
const BELOW = 12.3;
export interface Arrangement {
  readonly oneTo: number;
  readonly front: View;
  readonly side: View;
  readonly plan: View;
  /** Where the key stands: upper right. */
  readonly key: { readonly x: number; readonly y: number; readonly w: number };
}
/** Front, right side and plan in third-angle arrangement at the largest scale at which all fits. */
export function arrange(input: Prepared, keyHeight: number, lanesBelow: number): Arrangement | undefined {
  const paper = input.paper ?? LETTER;
  const [fx, fy, fw] = paper.frame;
  const field = fieldOf(paper);
  const box = input.model.overall;
  const e = extentOf(box, FRONT);
  const [W, H] = [e.right - e.left, e.high - e.low];
  const s = extentOf(box, RIGHT_SIDE);
  const D = s.right - s.left;
  const below = BELOW + (lanesBelow > 1 ? 8 * (lanesBelow - 1) : 0);
  const keyWidth = 76.7;
  const wideOf = (n: number): number => LEFT + W / n + BETWEEN + Math.max(D / n + RIGHT - 7, D / n + 12) + 7;
  const topOf = (n: number): number => Math.max(ABOVE + D / n + PLAN_GAP, 7 + keyHeight + 5);
  const oneTo = largestScale((n) => {
    const planRight = fx + LEFT + W / n + 22;
    return wideOf(n) <= fw && topOf(n) + H / n + below <= field.bottom - fy && planRight <= field.right - keyWidth;
  });
  if (oneTo === undefined) return undefined;
  const spareX = fw - wideOf(oneTo);
  const spareY = field.bottom - fy - topOf(oneTo) - H / oneTo - below;
  const x = fx + LEFT + Math.min(spareX / 3, 24);
  const top = fy + topOf(oneTo) + spareY * 0.6;
  const sideX = x + W / oneTo + BETWEEN + Math.min(spareX / 3, 14);
  const keyX = Math.min(Math.max(sideX, x + W / oneTo + 22), field.right - keyWidth);
  return {
    oneTo,
    front: viewAt(box, FRONT, oneTo, x, top),
    side: viewAt(box, RIGHT_SIDE, oneTo, sideX, top),
    plan: viewAt(box, PLAN, oneTo, x, top - PLAN_GAP - D / oneTo),
    key: { x: keyX, y: fy + 7.8, w: field.right - keyX },
  };
}
