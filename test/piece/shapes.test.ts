import { describe, expect, it } from 'vitest';
import type { ShapeSpec } from '../../src/definition/definition.js';
import { inches } from '../../src/lengths/length.js';
import { definition, errorsOf, part, partOf, solved } from './sample.js';

const i = inches;
/** One shape in an oak part 1 x 2 x 20 in, grain up. */
const cutsOf = (shape: unknown) =>
  partOf(solved(definition({ parts: { a: part({ up: ['0', '20'], shape: [shape as ShapeSpec] }) } })), 'a').cuts.map(
    ({ id: _id, from: _from, mates: _mates, rank: _rank, ...c }) => c,
  );
const faults = (shape: unknown) =>
  errorsOf(definition({ parts: { a: part({ up: ['0', '20'], shape: [shape as ShapeSpec] }) } })).map((f) => f.code);

describe('shapes as cuts in the part’s own axes', () => {
  it('chamfer of one arris, stopped short of both ends', () => {
    expect(cutsOf({ cut: 'chamfer', edges: ['front left'], size: '1/8', stop: '1' })).toEqual([
      { shape: 'arris', as: 'chamfer', faces: ['front', 'left'], size: i(1 / 8), over: [i(1), i(19)] },
    ]);
  });
  it('round-over all round an end', () => {
    expect(
      cutsOf({ cut: 'round-over', edges: ['bottom'], size: '1/16' }).map((c) =>
        c.shape === 'arris' ? [...c.faces, ...c.over] : [],
      ),
    ).toEqual([
      ['bottom', 'left', 0, i(2)],
      ['bottom', 'right', 0, i(2)],
      ['bottom', 'front', 0, i(1)],
      ['bottom', 'back', 0, i(1)],
    ]);
  });
  it('rabbet: on from the edge, into the face', () => {
    expect(cutsOf({ cut: 'rabbet', face: 'right', edge: 'back', on: '1/4', into: '3/8', from: '8 1/8' })).toEqual([
      {
        shape: 'box',
        as: 'rabbet',
        face: 'right',
        at: [
          [i(5 / 8), i(1)],
          [i(1.75), i(2)],
          [i(8.125), i(20)],
        ],
      },
    ]);
  });
  it('taper of two faces, begun so far from the other end, to so much at the end', () => {
    expect(cutsOf({ cut: 'taper', faces: ['right', 'back'], end: 'bottom', begin: '12', to: '3/4' })).toEqual([
      { shape: 'taper', as: 'taper', face: 'right', end: 'bottom', begin: i(8), off: i(1 / 4) },
      { shape: 'taper', as: 'taper', face: 'back', end: 'bottom', begin: i(8), off: i(1.25) },
    ]);
  });
  it('arc along the length, relief across an end, flat on an arris', () => {
    expect(cutsOf({ cut: 'arc', edge: 'front', rise: '1/2' })).toEqual([
      { shape: 'arc', as: 'arc', face: 'front', along: 2, over: [0, i(20)], rise: i(1 / 2) },
    ]);
    expect(cutsOf({ cut: 'relief', end: 'bottom', up: '1/4', from: '1/2', to: '1 1/2', along: 'deep' })).toEqual([
      {
        shape: 'box',
        as: 'relief',
        face: 'bottom',
        at: [
          [0, i(1)],
          [i(1 / 2), i(1.5)],
          [0, i(1 / 4)],
        ],
      },
    ]);
    expect(cutsOf({ cut: 'flat', edge: 'front right', size: '1/2' })).toEqual([
      {
        shape: 'plane',
        as: 'flat',
        point: [i(1), Math.round(i(1 / 2) * Math.SQRT1_2), 0],
        normal: [Math.SQRT1_2, -Math.SQRT1_2, 0],
      },
    ]);
  });
  it('outline, turned to run anticlockwise where it was drawn the other way round', () => {
    const square = [
      ['0', '0'],
      ['0', '20'],
      ['1', '20'],
      ['1', '0'],
    ];
    expect(cutsOf({ cut: 'outline', face: 'front', points: square })).toEqual([
      {
        shape: 'outline',
        as: 'outline',
        face: 'front',
        keep: [{ to: [i(1), i(20)] }, { to: [0, i(20)] }, { to: [0, 0] }, { to: [i(1), 0] }],
      },
    ]);
  });
  it.each([
    [{ cut: 'chamfer', edges: ['front back'], size: '1/8' }, 'arris-unknown'],
    [{ cut: 'chamfer', edges: ['frnt left'], size: '1/8' }, 'face-unknown'],
    [{ cut: 'chamfer', edges: ['front left'], size: '1' }, 'shape-size'],
    [{ cut: 'chamfer', edges: ['front left'], size: '1/8', stop: '10' }, 'shape-run'],
    [{ cut: 'rabbet', face: 'right', edge: 'left', on: '1/4', into: '1/4' }, 'arris-unknown'],
    [{ cut: 'rabbet', face: 'right', edge: 'back', on: '2', into: '1/4' }, 'shape-size'],
    [{ cut: 'taper', faces: ['right'], end: 'bottom', begin: '20', to: '1/2' }, 'shape-run'],
    [{ cut: 'taper', faces: ['right'], end: 'bottom', begin: '10', to: '1' }, 'shape-size'],
    [{ cut: 'arc', edge: 'front', rise: '2' }, 'shape-size'],
    [{ cut: 'relief', end: 'bottom', up: '1/4', from: '1', to: '3', along: 'deep' }, 'shape-run'],
    [
      {
        cut: 'outline',
        face: 'front',
        points: [
          ['0', '0'],
          ['1', '1'],
        ],
      },
      'outline-open',
    ],
  ])('refuses %j', (shape, code) => {
    expect(faults(shape)).toEqual([code]);
  });
});

it('holes: through unless a depth is given, on the wood', () => {
  const at = (hole: object) =>
    definition({ parts: { a: part({ holes: [{ face: 'front', at: ['1/2', '1'], diameter: '1/4', ...hole }] }) } });
  expect(partOf(solved(at({})), 'a').cuts).toMatchObject([
    { id: 'hole.0', shape: 'bore', as: 'hole', face: 'front', at: [i(0.5), i(1)], diameter: i(0.25), depth: 'through' },
  ]);
  expect(partOf(solved(at({ depth: '1' })), 'a').cuts).toMatchObject([{ depth: i(1) }]);
  expect(errorsOf(at({ at: ['1 1/8', '1'] })).map((f) => f.code)).toEqual(['hole-outside']);
  expect(errorsOf(at({ depth: '2' })).map((f) => f.code)).toEqual(['shape-size']);
});
