import { edgeAt, type Rect } from './clear.js';
import type { Ground } from './ground.js';

/** The longest clear rectangle in what is left, as wide as is worth keeping; of equal ones the widest. */
export function longest(
  rest: Rect,
  ground: Pick<Ground, 'clear' | 'board'>,
  keep: readonly [number, number],
): { readonly at: Rect; readonly long: number } | undefined {
  if (rest[2] - rest[0] < keep[0] || rest[3] - rest[1] < keep[1]) return undefined;
  let best: Rect | undefined;
  let long = 0;
  for (const c of ground.clear) {
    const x0 = Math.max(rest[0], c[0]);
    const x1 = Math.min(rest[2], c[2]);
    const y0 = Math.max(rest[1], c[1]);
    const edge = Math.floor(Math.min(edgeAt(ground.board, x0), edgeAt(ground.board, x1)));
    const y1 = Math.min(rest[3], c[3], edge);
    if (x1 - x0 < keep[0] || y1 - y0 < keep[1] || x1 - x0 < long) continue;
    if (x1 - x0 === long && best && y1 - y0 <= best[3] - best[1]) continue;
    best = [x0, y0, x1, y1];
    long = x1 - x0;
  }
  return best && { at: best, long };
}
