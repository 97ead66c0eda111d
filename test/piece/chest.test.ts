import { expect, it } from 'vitest';
import { toIn } from '../../src/lengths/length.js';
import { boxOf, definition, partOf, solved } from './sample.js';

/** The tall chest's case, sums after a worked construction: 8 1/8 + 3/4 + 9 + 3/4 + 8 + 3/4 + 7 + 3/4 + 5 1/4 + 3/4 = 41 1/8; + 7/8 = 42. */
const chest = definition({
  measures: { W: '36', D: '19', H: '42', side: '7/8', rail: '2 1/2', rt: '3/4', row: ['5 1/4', '7', '8', '9'] },
  parts: {
    side_left: {
      stock: 'oak',
      across: ['0', 'side'],
      deep: ['0', 'D'],
      up: ['0', 'top.bottom'],
      grain: 'up',
      show: ['left', 'front'],
    },
    side_right: { mirror: 'side_left', about: 'W / 2' },
    top: {
      stock: 'oak',
      across: ['-3/4', 'W + 3/4'],
      deep: ['-3/4', 'D + 1/4'],
      up: { to: 'H', size: '7/8' },
      grain: 'across',
    },
    rail_1: {
      stock: 'oak',
      across: ['side_left', 'side_right'],
      deep: { from: '0', size: 'rail' },
      up: { to: 'top.bottom', size: 'rt' },
      grain: 'across',
    },
    'rail_{i}': { each: 'i = 2..5', like: 'rail_1', up: { to: 'rail_{i-1}.bottom - row_{i-1}', size: 'rt' } },
  },
  joints: {
    rails: {
      kind: 'sliding-dovetail',
      part: 'rail_{2..5}',
      into: ['side_left', 'side_right'],
      from: 'back',
      stop: '3/8',
    },
    tops: { kind: 'half-blind-dovetail', part: 'rail_1', into: ['side_left', 'side_right'] },
  },
});

it('stacks the rails of a chest to its published sums', () => {
  const piece = solved(chest);
  expect(boxOf(piece, 'side_right')).toEqual([
    [35.125, 36],
    [0, 19],
    [0, 41.125],
  ]);
  expect([1, 2, 3, 4, 5].map((i) => boxOf(piece, `rail_${i}`)[2]?.[0])).toEqual([
    40.375, 34.375, 26.625, 17.875, 8.125,
  ]);
  expect(boxOf(piece, 'rail_3')[0]).toEqual([0.875, 35.125]);
});

it('gives the left side four sockets at the heights of its card, and the right side their mirror images', () => {
  const piece = solved(chest);
  const left = partOf(piece, 'side_left').cuts.flatMap((c) => (c.shape === 'dovetail' && c.as === 'socket' ? [c] : []));
  const centres = left.map((c) => toIn((c.atFloor[0] + c.atFloor[1]) / 2));
  expect(centres.sort((a, b) => a - b)).toEqual([8.5, 18.25, 27, 34.75]);
  expect(new Set(left.map((c) => c.face))).toEqual(new Set(['right']));
  const right = partOf(piece, 'side_right').cuts.flatMap((c) =>
    c.shape === 'dovetail' && c.as === 'socket' ? [c] : [],
  );
  expect(right.length).toBe(4);
  expect(new Set(right.map((c) => c.face))).toEqual(new Set(['left']));
  expect(partOf(piece, 'side_right').mirrorOf).toBe('side_left');
  expect(partOf(piece, 'side_left').hand).toBe('left');
  expect(partOf(piece, 'rail_4').turnOf).toBe('rail_2');
});

it('lengthens the rails by their tails: 35 over tails 3/8 long, 35 1/2 over tails 5/8 long', () => {
  const piece = solved(chest);
  const long = (id: string) =>
    toIn(partOf(piece, id).size[0].value + partOf(piece, id).growth[0][0] + partOf(piece, id).growth[0][1]);
  expect(long('rail_2')).toBe(35);
  expect(long('rail_1')).toBe(35.5);
});
