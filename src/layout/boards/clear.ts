import { HIDDEN, type Blank, type Board, type Defect } from './board.js';

/** x0, y0, x1, y1. */
export type Rect = readonly [number, number, number, number];

/**
 * All rectangles in [0, length] x [0, height] that meet none of the obstacles and cannot grow any way, no smaller than
 * `least`. By bands: every pair of a lower and an upper line that some obstacle (or the outline) gives, and the free
 * stretches between what stands in the band.
 */
export function clearRectangles(
  length: number,
  height: number,
  obstacles: readonly Rect[],
  least: readonly [number, number],
): Rect[] {
  const lows = [...new Set([0, ...obstacles.map((o) => o[3])])].filter((y) => y < height).sort((a, b) => a - b);
  const highs = [...new Set([height, ...obstacles.map((o) => o[1])])].filter((y) => y > 0).sort((a, b) => a - b);
  const byX = [...obstacles].sort((a, b) => a[0] - b[0] || a[2] - b[2]);
  const out: Rect[] = [];
  for (const y0 of lows)
    for (const y1 of highs) {
      if (y1 - y0 < least[1] || y1 <= y0) continue;
      let from = 0;
      const stretch = (to: number): void => {
        if (to - from < least[0] || to <= from) return;
        const borne = y0 === 0 || obstacles.some((o) => o[3] === y0 && o[0] < to && o[2] > from);
        const capped = y1 === height || obstacles.some((o) => o[1] === y1 && o[0] < to && o[2] > from);
        if (borne && capped) out.push([from, y0, to, y1]);
      };
      for (const o of byX) {
        if (o[3] <= y0 || o[1] >= y1) continue;
        stretch(o[0]);
        from = Math.max(from, o[2]);
      }
      stretch(length);
    }
  return out.sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || a[3] - b[3]);
}

/** May the defect be in a blank whose showing face is up (`front`) or down? Voids never. */
function stands(d: Defect, blank: Pick<Blank, 'shows' | 'allows'>, face: 'front' | 'back'): boolean {
  if (d.kind === 'void') return true;
  if (blank.allows.includes(d.kind)) return false;
  const showing = blank.shows === 'both' || (blank.shows === 'one' && (d.face === face || d.face === 'through'));
  return showing || !HIDDEN.includes(d.kind);
}
/** What a blank must keep clear of when the board's `face` is the one that shows. */
export const obstaclesFor = (
  board: Pick<Board, 'defects'>,
  blank: Pick<Blank, 'shows' | 'allows'>,
  face: 'front' | 'back',
): Rect[] => board.defects.filter((d) => stands(d, blank, face)).map((d) => d.at);
/** What is in the way of a blank that may have nothing on either face. */
export const clearOfAll: Pick<Blank, 'shows' | 'allows'> = { shows: 'both', allows: [] };

/** Height of the board's upper edge at x. */
export const edgeAt = (board: Pick<Board, 'length' | 'width'>, x: number): number =>
  board.width[0] + ((board.width[1] - board.width[0]) * x) / board.length;

/** Area of the union of rectangles. */
export function unionArea(rects: readonly Rect[]): number {
  const xs = [...new Set(rects.flatMap((r) => [r[0], r[2]]))].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    const [a, b] = [xs[i] as number, xs[i + 1] as number];
    const spans = rects.filter((r) => r[0] <= a && r[2] >= b).map((r) => [r[1], r[3]] as const);
    spans.sort((p, q) => p[0] - q[0]);
    let top = -Infinity;
    for (const [lo, hi] of spans) {
      sum += (b - a) * Math.max(0, hi - Math.max(lo, top));
      top = Math.max(top, hi);
    }
  }
  return sum;
}
