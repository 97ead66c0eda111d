import type { Axis } from '../../src/geom/axis.js';
import type { Box3 } from '../../src/geom/box.js';
import { shifted } from '../../src/geom/placement.js';
import { inches } from '../../src/lengths/length.js';
import type { Joint, Part, Piece } from '../../src/piece/piece.js';
import { given } from '../../src/value/sized.js';

const WORDS = { left: 'LEFT', right: 'RIGHT', front: 'FRONT', back: 'BACK', bottom: 'BOTTOM', top: 'TOP' };
type Three = readonly [number, number, number];

/** A part by its sizes in inches; `grow` along its length, at both ends. */
export function part(
  mark: string,
  at: Three,
  size: Three,
  axes: readonly [Axis, Axis, Axis],
  more: Partial<Part> & { grow?: number } = {},
): Part {
  const { grow = 0, ...rest } = more;
  const growth = [0, 1, 2].map((a) => (a === axes[2] ? [inches(grow), inches(grow)] : [0, 0])) as unknown as Box3;
  return {
    id: mark.toLowerCase(),
    mark,
    name: `part ${mark}`,
    stock: 'oak',
    place: shifted([inches(at[0]), inches(at[1]), inches(at[2])]),
    size: [given(inches(size[0]), ''), given(inches(size[1]), ''), given(inches(size[2]), '')],
    growth,
    thickness: axes[0],
    width: axes[1],
    length: axes[2],
    grain: axes[2],
    show: ['front'],
    faceWords: WORDS,
    reference: { face: 'front', edge: 'bottom', end: 'left' },
    cuts: [],
    status: 'cut now',
    statusWhy: '',
    notes: [],
    ...rest,
  };
}
export const joint = (joint: string, entering: string, receiving: string): Joint => ({
  id: `${joint}.${entering}.${receiving}`,
  joint,
  kind: 'sliding-dovetail',
  words: 'sliding dovetail',
  entering,
  receiving,
  sizes: { depth: given(inches(3 / 8), '3/8') },
  way: ['front'],
  traits: {
    insertion: ['front'],
    holds: 'holds',
    glue: 'end-long',
    resists: { tension: 3, shear: 2, racking: 1, twist: 1 },
    freedom: 'fixed',
    shows: false,
  },
});

/** A case 36 wide and 41 1/8 high with four rails over tails, a plain apron and a back. */
export function chest(): Piece {
  const rail = (n: number, up: number): Part =>
    part(`R${n}`, [0.875, 0, up], [34.25, 2.5, 0.75], [2, 1, 0], { grow: 3 / 8, ...(n > 1 ? { turnOf: 'r1' } : {}) });
  const rails = [rail(1, 34), rail(2, 27), rail(3, 18), rail(4, 8)];
  const side = (mark: string, x: number, more: Partial<Part>): Part =>
    part(mark, [x, 0, 0], [0.875, 19, 41.125], [0, 1, 2], more);
  return {
    header: {
      title: 'Case',
      number: 'T-1',
      revision: 'A',
      date: '2027-02-01',
      client: 'sample',
      maker: 'sample',
      woods: 'White oak',
    },
    units: 'in',
    step: inches(1 / 64),
    measures: {},
    stocks: {
      oak: { id: 'oak', kind: 'lumber', material: 'oak-white', name: 'White oak', quarter: '5/4', cut: 'quartered' },
      ply: {
        id: 'ply',
        kind: 'sheet',
        material: 'plywood-birch',
        name: 'Birch plywood',
        thickness: inches(0.205),
        size: [inches(96), inches(48)],
        grain: 'length',
      },
    },
    parts: [
      side('A1', 0, { hand: 'left', staves: 4 }),
      side('A2', 35.125, { hand: 'right', mirrorOf: 'a1', staves: 4 }),
      part('A6', [0.875, 0.0625, 4.5], [34.25, 0.75, 3.5], [1, 2, 0]),
      part('A7', [0.5, 18.75, 8.125], [34.9375, 0.205, 33], [1, 0, 2], { stock: 'ply' }),
      ...rails,
    ],
    joints: rails.flatMap((r) => [joint('rails', r.id, 'a1'), joint('rails', r.id, 'a2')]),
    hardware: [
      {
        id: 'd1.slide_left',
        kind: 'slide',
        name: 'side slide, full extension, 16 in',
        body: {
          op: 'box',
          at: [
            [0, 1],
            [0, 1],
            [0, 1],
          ],
        },
        into: [],
        drawer: 'short_1',
      },
      {
        id: 'd1.slide_right',
        kind: 'slide',
        name: 'side slide, full extension, 16 in',
        body: {
          op: 'box',
          at: [
            [0, 1],
            [0, 1],
            [0, 1],
          ],
        },
        into: [],
        drawer: 'short_1',
      },
      {
        id: 's1',
        kind: 'screw',
        name: '#8 × 1 1/4',
        body: {
          op: 'box',
          at: [
            [0, 1],
            [0, 1],
            [0, 1],
          ],
        },
        into: ['r1', 'a7'],
      },
    ],
    drawers: [
      {
        id: 'short_1',
        mark: 'D1',
        opening: { across: given(inches(16.75), ''), up: given(inches(5.25), ''), deep: given(inches(18.75), '') },
        gaps: {
          left: given(inches(1 / 16), ''),
          right: given(inches(1 / 16), ''),
          top: given(inches(1 / 16), ''),
          bottom: given(inches(1 / 16), ''),
        },
        parts: [],
        front: 'short_1.front',
      },
    ],
    shop: { kerf: inches(1 / 8), trim: inches(1 / 4), allowance: [inches(1 / 8), inches(1 / 4), inches(1)] },
  };
}
