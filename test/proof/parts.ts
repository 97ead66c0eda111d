import type { Axis, Face } from '../../src/geom/axis.js';
import type { Box3, Span } from '../../src/geom/box.js';
import { IDENTITY } from '../../src/geom/placement.js';
import { inches } from '../../src/lengths/length.js';
import type { Part } from '../../src/piece/piece.js';
import { given } from '../../src/value/sized.js';
import type { Cut } from '../../src/words/cut.js';

/** Inches in (whole 64ths), nm out. */
const s = (a: number, b: number): Span => [inches(a), inches(b)];
const box = (x: Span, y: Span, z: Span): Box3 => [x, y, z];
const common = (id: string, rank: 1 | 2 | 3 | 4 | 5, mates: string[] = []) => ({
  id,
  from: id.split('.')[0] as string,
  rank,
  mates,
});
const words = (w: readonly string[]): Record<Face, string> => ({
  left: w[0] as string,
  right: w[1] as string,
  front: w[2] as string,
  back: w[3] as string,
  bottom: w[4] as string,
  top: w[5] as string,
});
interface Shape {
  readonly id: string;
  readonly mark: string;
  readonly name: string;
  readonly size: readonly [number, number, number];
  readonly growth?: Box3;
  readonly order: readonly [Axis, Axis, Axis];
  readonly words: readonly string[];
  readonly reference: Part['reference'];
  readonly hand?: 'left' | 'right';
  readonly mirrorOf?: string;
  readonly cuts: readonly Cut[];
  readonly at?: readonly [number, number, number];
}
export function sample(p: Shape): Part {
  const none: Span = [0, 0];
  const [thickness, width, length] = p.order;
  return {
    id: p.id,
    mark: p.mark,
    name: p.name,
    stock: 'oak',
    place: {
      rotation: IDENTITY.rotation,
      origin: (p.at ?? [0, 0, 0]).map((v) => inches(v)) as unknown as [number, number, number],
    },
    size: [given(inches(p.size[0]), 'typed'), given(inches(p.size[1]), 'typed'), given(inches(p.size[2]), 'typed')],
    growth: p.growth ?? [none, none, none],
    thickness,
    width,
    length,
    grain: length,
    show: [],
    faceWords: words(p.words),
    reference: p.reference,
    cuts: p.cuts,
    status: 'cut now',
    statusWhy: '',
    notes: [],
    ...(p.hand ? { hand: p.hand } : {}),
    ...(p.mirrorOf ? { mirrorOf: p.mirrorOf } : {}),
  };
}

/** Left side of a tall chest: 7/8 x 19 x 41 1/8, sockets at 8 1/2, 18 1/4, 27 and 34 3/4 from the floor (invented piece). */
export function chestSide(): Part {
  const bit = { width: inches(0.5), angle: 14 };
  const run = s(0.375, 19);
  const mates = [['r4', 'b4'], ['r3', 'b3'], ['r2', 'b2'], ['r1', 'b1']]; // prettier-ignore
  const sockets = [8.5, 18.25, 27, 34.75].map((z, i): Cut => ({
    ...common(`rails.${i}`, 2, mates[i]),
    shape: 'dovetail',
    as: 'socket',
    face: 'right',
    run: 1,
    taper: 2,
    runSpan: run,
    atFace: s(z - 5 / 32, z + 5 / 32),
    atFloor: s(z - 0.25, z + 0.25),
    depth: inches(3 / 8),
    bit,
    trial: 'one socket, with the trial tail; the tail slides by hand dry and shows no gap at the shoulder',
    glue: { where: 'first 2 behind the stop and last 2 before the rabbet', not: 'between' },
  }));
  const end = (id: string, mate: string, face: Span, floor: Span): Cut => ({
    ...common(id, 2, [mate]),
    shape: 'dovetail',
    as: 'end-socket',
    face: 'right',
    run: 2,
    taper: 1,
    runSpan: s(41.125 - 0.75, 41.125),
    atFace: face,
    atFloor: floor,
    depth: inches(5 / 8),
    scribe: true,
  });
  return sample({
    id: 'side_left',
    mark: 'A1',
    name: 'side',
    size: [0.875, 19, 41.125],
    order: [0, 1, 2],
    words: ['OUTSIDE', 'INSIDE', 'FRONT', 'BACK', 'BOTTOM', 'TOP'],
    reference: { face: 'right', edge: 'front', end: 'bottom' },
    hand: 'left',
    cuts: [
      ...sockets,
      end('tops.0', 'a4', s(11 / 32, 2 + 5 / 32), s(0.25, 2.25)),
      end('tops.1', 'a8', s(16 + 19 / 32, 18 + 13 / 32), s(16.5, 18.5)),
      {
        ...common('back.0', 2, ['a7']),
        shape: 'box',
        as: 'rabbet',
        face: 'right',
        at: box(s(0.5, 0.875), s(18.75, 19), s(8.125, 41.125)),
        glue: { where: '' },
        notes: ['After the sockets, so that it takes off their torn ends'],
      },
      {
        ...common('shape.0', 4),
        shape: 'box',
        as: 'relief',
        face: 'bottom',
        at: box(s(0, 0.875), s(2.5, 16.5), s(0, 0.25)),
      },
      ...[11.375, 21.125, 29.875, 37.625].map((z, i): Cut => ({
        ...common(`slides.${i}`, 5),
        shape: 'mark',
        as: 'slide-line',
        face: 'right',
        axis: 1,
        over: s(13 / 16, 16 + 13 / 16),
        at: inches(z),
        notes: ['Measure first: have the slides'],
      })),
    ],
  });
}
/** Left side of a drawer: 1/2 x 4 3/8 x 15 3/4 over tails of 3/8 at both ends (invented piece). */
export function drawerSide(): Part {
  const tail = (z: number): { atEnd: Span; atBase: Span } => ({
    atEnd: s(z - 9 / 32, z + 9 / 32),
    atBase: s(z - 3 / 16, z + 3 / 16),
  });
  const tails = [0, 1, 2, 3, 4].map((i) => tail(7 / 16 + (i * 7) / 8));
  const row = (end: Face, mate: string): Cut => ({
    ...common(`corner.${end}`, 2, [mate]),
    shape: 'tails',
    as: 'tails',
    end,
    base: end === 'front' ? 0 : inches(15),
    taper: 2,
    tails,
    keep: s(0, 0.5),
    bit: { width: inches(0.5), angle: 14 },
    pitch: inches(7 / 8),
    glue: { where: 'the sides of the tails', not: 'in the groove' },
  });
  return sample({
    id: 'd_1.side_left',
    mark: 'D1.2',
    name: 'side',
    size: [0.5, 15, 4.375],
    growth: [[0, 0], s(0.375, 0.375), [0, 0]],
    order: [0, 2, 1],
    words: ['OUTSIDE', 'INSIDE', 'FRONT', 'BACK', 'BOTTOM', 'TOP'],
    reference: { face: 'right', edge: 'bottom', end: 'front' },
    hand: 'left',
    cuts: [
      {
        ...common('bottom.0', 1, ['d_1.bottom']),
        shape: 'box',
        as: 'groove',
        face: 'right',
        at: box(s(0.25, 0.5), s(-0.375, 15.375), s(5 / 16, 17 / 32)),
      },
      row('front', 'd_1.front'),
      row('back', 'd_1.back'),
      {
        ...common('slide.0', 5),
        shape: 'mark',
        as: 'slide-line',
        face: 'left',
        axis: 1,
        over: s(-0.5, 15.25),
        at: inches(2),
      },
    ],
  });
}
/** Front left leg of a nightstand: 1 1/2 square, 25 1/4 long, mortises, groove, end socket, tapers (invented piece). */
export function leg(): Part {
  const H = 25.25;
  const mortise = (id: string, face: Face, mate: string, x: Span, y: Span, z: Span): Cut => ({
    ...common(id, 2, [mate]),
    shape: 'box',
    as: 'mortise',
    face,
    at: box(x, y, z),
  });
  const up = (a: number, b: number): Span => s(H - b, H - a);
  return sample({
    id: 'leg_1',
    mark: 'L1',
    name: 'front leg',
    size: [1.5, 1.5, H],
    order: [0, 1, 2],
    words: ['LEFT', 'RIGHT', 'FRONT', 'BACK', 'BOTTOM', 'TOP'],
    reference: { face: 'front', edge: 'left', end: 'top' },
    hand: 'left',
    cuts: [
      mortise('a', 'back', 'r1', s(0.375, 0.625), s(0.375, 1.5), up(0.75, 2.625)),
      mortise('b', 'back', 'r2', s(0.375, 0.625), s(0.375, 1.5), up(15.125, 17)),
      mortise('c', 'right', 'r3', s(0.375, 1.5), s(0.375, 0.625), up(15.75, 17)),
      mortise('d', 'right', 'r4', s(0.75, 1.5), s(0.375, 1.125), up(5.375, 5.875)),
      {
        ...common('panel', 1, ['p1']),
        shape: 'box',
        as: 'groove',
        face: 'back',
        at: box(s(0.375, 0.625), s(1.125, 1.5), up(0, 16)),
        glue: { where: '', not: 'on the panel' },
      },
      {
        ...common('top', 2, ['r5']),
        shape: 'dovetail',
        as: 'end-socket',
        face: 'right',
        run: 2,
        taper: 1,
        runSpan: up(0, 0.75),
        atFace: s(7 / 16, 1 + 3 / 16),
        atFloor: s(0.375, 1.25),
        depth: inches(0.5),
        scribe: true,
      },
      {
        ...common('t.0', 4),
        shape: 'taper',
        as: 'taper',
        face: 'right',
        end: 'bottom',
        begin: inches(H - 17.75),
        off: inches(0.625),
      },
      {
        ...common('t.1', 4),
        shape: 'taper',
        as: 'taper',
        face: 'back',
        end: 'bottom',
        begin: inches(H - 17.75),
        off: inches(0.625),
      },
      {
        ...common('t.2', 4),
        shape: 'arris',
        as: 'chamfer',
        faces: ['front', 'left'],
        size: inches(1 / 16),
        over: s(0, H),
      },
    ],
  });
}
export const markOf = (id: string): string =>
  ({ 'd_1.front': 'D1.1', 'd_1.back': 'D1.4', 'd_1.bottom': 'D1.5' })[id] ?? id.toUpperCase();
