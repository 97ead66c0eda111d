import { toMm } from '../../lengths/length.js';
import { formatLength } from '../../lengths/format.js';
import type { Faces } from '../../type/type.js';
import type { DovetailCut } from '../../words/cut.js';
import { area, label, line, MIDDLE, obliqueTick, polyline } from '../draw.js';
import type { Point } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText } from '../text.js';
import type { Card } from './words.js';

/** The sliding socket whose section is worth drawing: the first across a face. */
export const socketOf = (card: Card): DovetailCut | undefined =>
  card.part.cuts.find((c): c is DovetailCut => c.shape === 'dovetail' && c.as === 'socket');

/** Wood kept above and below the socket, mm on paper (our default). */
const BESIDE = 7;
const scaleOf = (s: DovetailCut): number => (toMm(s.depth) <= 11 && toMm(s.atFloor[1] - s.atFloor[0]) <= 26 ? 1 : 2);

/** Height of the section with its heading and figures, mm. */
export const profileHeight = (s: DovetailCut): number =>
  toMm(s.atFloor[1] - s.atFloor[0]) / scaleOf(s) + 2 * BESIDE + 19;

/**
 * Section of a socket, 25 wide, at full size (half where it is large): its face at the left; width at the face and at the
 * floor, depth, and the angle of the cutter.
 */
export function profile(faces: Faces, card: Card, s: DovetailCut, x: number, y: number): Item[] {
  const n = scaleOf(s);
  const [mouth, floor, depth] = [s.atFace[1] - s.atFace[0], s.atFloor[1] - s.atFloor[0], s.depth];
  const [m, f, d] = [toMm(mouth) / n, toMm(floor) / n, toMm(depth) / n];
  const say = (nm: number): string => formatLength(nm, card.frame.units);
  const [left, top] = [d >= 8.5 ? x + 3 : x + 9, y + 6.5];
  const middle = top + BESIDE + f / 2;
  const end = top + 2 * BESIDE + f;
  const socket: Point[] = [[left, middle - m / 2], [left + d, middle - f / 2], [left + d, middle + f / 2], [left, middle + m / 2]]; // prettier-ignore
  const figure = (text: string, px: number, py: number, anchor: 'start' | 'end'): Item[] => [
    ...setText(faces, text, { x: px, y: py + MIDDLE * SIZE.figure, size: SIZE.figure, face: 'semibold', anchor }).items,
  ];
  const up = (px: number, size: number): Item[] => [
    ...line('N', px, middle - size / 2, px, middle + size / 2),
    ...obliqueTick(px, middle - size / 2),
    ...obliqueTick(px, middle + size / 2),
  ];
  const wave = (py: number): Item => ({
    kind: 'stroke',
    pen: 'N',
    d: [
      ['M', left, py],
      ['C', left + 4, py - 1.6, left + 4, py - 1.6, left + 8, py],
      ['C', left + 12, py + 1.6, left + 12, py + 1.6, left + 16, py],
    ],
  });
  const inside = d >= 8.5;
  const below = end + 4;
  const witness = (px: number, from: number): Item[] => line('N', px, from, px, below + 1);
  return [
    ...label(faces, 'Socket', x, y, { size: SIZE.figure, face: 'semibold' }),
    ...label(faces, `1:${n}`, x + 25, y, { anchor: 'end' }),
    ...line('N', x, y + 2, x + 25, y + 2),
    ...area('grey', socket),
    ...polyline('W', [[left, top], ...socket, [left, end]]),
    wave(top),
    wave(end),
    ...up(inside ? left + 2.2 : left - 2.4, inside ? m + (f - m) * (2.2 / d) : m),
    ...figure(say(mouth), inside ? left + 3.6 : left - 3.8, middle, inside ? 'start' : 'end'),
    ...up(left + d + 3, f),
    ...figure(say(floor), left + d + 4.6, middle, 'start'),
    ...witness(left, end + 0.8),
    ...witness(left + d, middle + f / 2 + 1),
    ...line('N', left, below, left + d, below),
    ...obliqueTick(left, below),
    ...obliqueTick(left + d, below),
    ...figure(say(depth), left + d + 2, below + 0.5, 'start'),
    ...(s.bit ? label(faces, `${s.bit.angle}°`, x + 25, below + 1.7, { anchor: 'end' }) : []),
  ];
}
