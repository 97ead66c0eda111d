import type { Part, Piece } from '../../piece/piece.js';
import { byAxis } from '../../geom/box.js';
import type { Box3, Span } from '../../geom/box.js';
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
const [ELEVATION, SIDE, ABOVE] = [
  { direction: FRONT, axis: 1, near: (b: Box3): number => -b[1][0] },
  { direction: RIGHT_SIDE, axis: 0, near: (b: Box3): number => b[0][1] },
  { direction: PLAN, axis: 2, near: (b: Box3): number => b[2][1] },
] as const;

/**
 * Where the parts of a card are in the piece: a small front elevation, plan or side, the parts
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
  const view = sightOf(
    black.map((k) => k.box),
    boxes.filter((k) => !own.has(k.part.id) && k.part.drawer === undefined).map((k) => k.box),
    parts.some((p) => p.drawer !== undefined),
  );
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
  const front = Math.max(...black.map((b) => view.near(b.box)));
  // What stands before the part is only outlined, or it would hide the way to it.
  const drawn = others.flatMap(({ box }) => rect('H', ...place(box, 0), view.near(box) > front ? undefined : 'white'));
  return [...drawn, ...black.flatMap(({ box }) => rect(undefined, ...place(box, 1.5), 'black'))];
}
type Sight = typeof ELEVATION | typeof SIDE | typeof ABOVE;
/** The front elevation where the part is seen there (in a drawer: stands apart there), else the plan, else the side. */
function sightOf(own: readonly Box3[], others: readonly Box3[], drawer: boolean): Sight {
  if (own.some((b) => isSeen(b, others))) return ELEVATION;
  const clear = (v: Sight): boolean => !ambiguous(v.direction, own, others);
  if (drawer && clear(ELEVATION)) return ELEVATION;
  return clear(ABOVE) ? ABOVE : clear(SIDE) ? SIDE : ELEVATION;
}
/** True when a sixteenth or more of a box can be seen from the front, by a grid of 12 by 12 points. */
function isSeen(b: Box3, others: readonly Box3[]): boolean {
  const before = others.filter((o) => o[1][0] < b[1][0]);
  const at = ([lo, hi]: Span, i: number): number => lo + ((hi - lo) * (i + 0.5)) / 12;
  let seen = 0;
  for (let i = 0; i < 12; i += 1)
    for (let k = 0; k < 12; k += 1) {
      const [x, z] = [at(b[0], i), at(b[2], k)];
      if (!before.some((o) => x > o[0][0] && x < o[0][1] && z > o[2][0] && z < o[2][1])) seen += 1;
    }
  return seen >= 9;
}
/** True when another part covers the same place as seen from there. */
const ambiguous = (d: Direction, own: readonly Box3[], others: readonly Box3[]): boolean =>
  own.some((a) => {
    const e = extentOf(a, d);
    return others.some((b) => {
      const o = extentOf(b, d);
      return (['left', 'right', 'low', 'high'] as const).every((k) => Math.abs(e[k] - o[k]) < 1.5);
    });
  });
