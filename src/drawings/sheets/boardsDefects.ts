import type { Defect } from '../../layout/boards/board.js';
import { circle, line, polyline, rect } from '../draw.js';
import type { Point } from '../draw.js';
import type { Rect } from '../dimensions.js';
import type { Item } from '../picture.js';

type Stroke = 'up' | 'down' | 'lying' | 'standing' | 'cross' | 'zigzag' | 'ring';
/** How each kind is drawn: void and hole are no wood, decay and knots dense, what only colours the wood light. Our default. */
const LOOKS: Readonly<Record<Defect['kind'], readonly Stroke[]>> = {
  knot: ['up', 'down'],
  'sound knot': ['up'],
  check: ['zigzag'],
  split: ['zigzag', 'lying'],
  sapwood: ['lying'],
  wane: ['down'],
  void: ['cross'],
  pith: ['lying', 'standing'],
  hole: ['ring'],
  bark: ['standing'],
  decay: ['up', 'down', 'lying'],
  stain: ['standing', 'up'],
};
/** Apart, mm; twice as far on the face that lies down. */
const PITCH = 1.2;

/** A defect in its rectangle on paper: outline and hatch by its kind; dashed with a wide hatch where it is on the back only. */
export function drawDefect({ kind, face }: Pick<Defect, 'kind' | 'face'>, box: Rect): Item[] {
  const back = face === 'back';
  const pitch = back ? 2 * PITCH : PITCH;
  return [
    ...LOOKS[kind].flatMap((stroke) => hatch(stroke, box, pitch)),
    ...rect(back ? 'hidden' : 'N', box.x, box.y, box.w, box.h),
  ];
}
function hatch(stroke: Stroke, { x, y, w, h }: Rect, pitch: number): Item[] {
  const steps = (over: number): number[] =>
    Array.from({ length: Math.max(0, Math.ceil(over / pitch) - 1) }, (_, i) => (i + 1) * pitch);
  switch (stroke) {
    case 'lying':
      return steps(h).flatMap((k) => line('H', x, y + k, x + w, y + k));
    case 'standing':
      return steps(w).flatMap((k) => line('H', x + k, y, x + k, y + h));
    case 'cross':
      return [...line('H', x, y, x + w, y + h), ...line('H', x, y + h, x + w, y)];
    case 'ring':
      return circle('H', x + w / 2, y + h / 2, Math.min(w, h) / 2, 'white');
    case 'zigzag': {
      const n = Math.max(2, Math.floor(w / pitch));
      const points = Array.from({ length: n + 1 }, (_, i): Point => [
        x + (i * w) / n,
        y + (i % 2 === 0 ? 0.2 : 0.8) * h,
      ]);
      return polyline('H', points);
    }
    case 'up':
    case 'down':
      // Lines at 45 degrees: u runs along the foot, from where they enter the rectangle to where they leave it.
      return steps(w + h).flatMap((k) => {
        const [a, b] = [Math.max(0, k - h), Math.min(k, w)];
        return stroke === 'up' ? line('H', x + a, y + k - a, x + b, y + k - b) : line('H', x + w - a, y + k - a, x + w - b, y + k - b); // prettier-ignore
      });
  }
}
