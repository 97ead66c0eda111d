import type { Part, Piece } from '../../piece/piece.js';
import { byAxis, width } from '../../geom/box.js';
import type { Box3, Span } from '../../geom/box.js';
import { toMm } from '../../lengths/length.js';
import { rect } from '../draw.js';
import { placedBox, round } from '../model.js';
import type { Item } from '../picture.js';
import type { Direction } from '../views.js';
import { FRONT, PLAN, RIGHT_SIDE } from '../views.js';
import { extentOf } from '../views.js';

/** The blank that shows, in piece axes (nm). */
const boxOf = (p: Part): Box3 =>
  placedBox(
    byAxis((a): Span => [0, p.size[a].value]),
    p.place,
  );
const SIGHT = [
  { direction: FRONT, axis: 1, near: (b: Box3): number => -b[1][0] },
  { direction: RIGHT_SIDE, axis: 0, near: (b: Box3): number => b[0][1] },
  { direction: PLAN, axis: 2, near: (b: Box3): number => b[2][1] },
] as const;

/**
 * Where the parts of a card are in the piece: a small elevation, side or plan, whichever shows them best, the parts
 * black and never under 1.5 wide. Fits into `w` x `h` mm with its upper corner at (x, y); `right`: pushed to the right.
 */
export function whereUsed(
  piece: Piece,
  parts: readonly Part[],
  x: number,
  y: number,
  w: number,
  h: number,
  right: boolean,
): Item[] {
  const boxes = piece.parts.map((part) => ({ part, box: boxOf(part) }));
  const own = new Set(parts.map((p) => p.id));
  const black = boxes.filter((b) => own.has(b.part.id));
  const whole = round(boxes.map((b) => b.box));
  const view = [...SIGHT].sort((a, b) => best(black.map((k) => k.box), whole, b.axis) - best(black.map((k) => k.box), whole, a.axis))[0] as (typeof SIGHT)[number]; // prettier-ignore
  const e = extentOf(whole, view.direction);
  const oneTo = Math.max((e.right - e.left) / w, (e.high - e.low) / h, 1);
  const left = right ? x + w - (e.right - e.left) / oneTo : x;
  const place = (box: Box3, least: number): readonly [number, number, number, number] => {
    const r = extentOf(box, view.direction as Direction);
    const [bw, bh] = [Math.max(least, (r.right - r.left) / oneTo), Math.max(least, (r.high - r.low) / oneTo)];
    const cx = left + ((r.left + r.right) / 2 - e.left) / oneTo;
    const cy = y + (e.high - (r.low + r.high) / 2) / oneTo;
    const clampX = Math.min(Math.max(cx - bw / 2, left), left + (e.right - e.left) / oneTo - bw);
    const clampY = Math.min(Math.max(cy - bh / 2, y), y + (e.high - e.low) / oneTo - bh);
    return [clampX, clampY, bw, bh];
  };
  const inDrawer = parts.some((p) => p.drawer !== undefined);
  const others = boxes
    .filter(
      (b) =>
        !own.has(b.part.id) &&
        (b.part.drawer === undefined ||
          (inDrawer && piece.drawers.some((d) => d.front === b.part.id && view.axis === 1))),
    )
    .sort((a, b) => view.near(a.box) - view.near(b.box) || (a.part.id < b.part.id ? -1 : 1));
  const drawn = others.flatMap(({ box }) => rect('H', ...place(box, 0), 'white'));
  return [...drawn, ...black.flatMap(({ box }) => rect(undefined, ...place(box, 1.5), 'black'))];
}
/** How well a direction shows boxes: how square and large they are across it, against the piece. */
function best(boxes: readonly Box3[], whole: Box3, axis: 0 | 1 | 2): number {
  const box = boxes[0];
  if (!box) return 0;
  const [p, q] = axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
  const size = (toMm(width(whole[p])) * toMm(width(whole[q]))) ** 0.5;
  const seen = Math.min(width(box[p]), width(box[q])) / Math.max(width(whole[p]), width(whole[q]));
  // The front is what one stands before: it is preferred unless another side shows the part three times as wide.
  return seen * (axis === 1 ? 3 : 1) + size * 1e-9;
}
