import { describe, expect, it } from 'vitest';
import type { Axis } from '../../src/geom/axis.js';
import type { Cut } from '../../src/words/cut.js';
import type { Frame } from '../../src/words/mapCut.js';
import { follow, handOf, invert, mapCut, mapPoint } from '../../src/words/mapCut.js';

const C = { id: 'c', from: 'c', mates: [], rank: 1 } as const;
const cuts: readonly Cut[] = [
  {
    ...C,
    shape: 'box',
    as: 'mortise',
    face: 'left',
    at: [
      [0, 3],
      [1, 4],
      [2, 9],
    ],
  },
  {
    ...C,
    shape: 'dovetail',
    as: 'socket',
    face: 'top',
    run: 1,
    taper: 0,
    runSpan: [2, 10],
    atFace: [3, 5],
    atFloor: [2, 6],
    depth: 3,
  },
  {
    ...C,
    shape: 'tails',
    as: 'tails',
    end: 'right',
    base: 20,
    taper: 2,
    tails: [
      { atBase: [1, 2], atEnd: [0, 3] },
      { atBase: [5, 7], atEnd: [4, 8] },
    ],
    keep: [0, 6],
  },
  {
    ...C,
    shape: 'tenon',
    as: 'tenon',
    end: 'back',
    shoulder: 7,
    tongues: [{ a: [1, 2], b: [3, 5], length: 4 }],
    mitre: { long: 'left' },
  },
  { ...C, shape: 'taper', as: 'taper', face: 'front', end: 'bottom', begin: 12, off: 2 },
  { ...C, shape: 'arc', as: 'arc', face: 'bottom', along: 0, over: [0, 30], rise: 2 },
  {
    ...C,
    shape: 'bore',
    as: 'hole',
    face: 'front',
    at: [3, 11],
    diameter: 2,
    depth: 5,
    slot: { axis: 0, length: 4 },
    tilt: { toward: 'top', degrees: 15 },
  },
  { ...C, shape: 'arris', as: 'chamfer', faces: ['left', 'top'], size: 1, over: [2, 8] },
  {
    ...C,
    shape: 'outline',
    as: 'outline',
    face: 'front',
    keep: [{ to: [0, 0] }, { to: [9, 0] }, { to: [9, 5], bulge: 0.5 }, { to: [0, 4] }],
  },
  {
    ...C,
    shape: 'plane',
    as: 'bevel',
    point: [1, 2, 3],
    normal: [1, 0, 0],
    within: [
      [0, 1],
      [0, 2],
      [0, 3],
    ],
  },
  { ...C, shape: 'mark', as: 'slide-line', face: 'right', axis: 1, over: [0, 9], at: 4 },
];
const orders: readonly (readonly [Axis, Axis, Axis])[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];
const frames: readonly Frame[] = orders.flatMap((to) =>
  ([1, -1] as const).flatMap((x) =>
    ([1, -1] as const).flatMap((y) =>
      ([1, -1] as const).map((z): Frame => ({ to, sign: [x, y, z], shift: [100, -30, 7] })),
    ),
  ),
);
const area = (o: readonly { readonly to: readonly [number, number] }[]): number =>
  o.reduce((sum, s, i) => {
    const p = o[(i - 1 + o.length) % o.length]?.to ?? s.to;
    return sum + p[0] * s.to[1] - s.to[0] * p[1];
  }, 0);

describe('signed exchanges of axes', () => {
  it('are 48: 24 turns and 24 mirror images (the symmetries of a cube)', () => {
    expect(frames.filter((f) => handOf(f) === 1).length).toBe(24);
    expect(frames.filter((f) => handOf(f) === -1).length).toBe(24);
  });
  it('are undone by their inverse and chain as one', () => {
    for (const f of frames)
      for (const g of [frames[5], frames[23], frames[40]] as Frame[]) {
        expect(mapPoint(follow(invert(f), f), [3, 5, 11])).toEqual([3, 5, 11]);
        expect(mapPoint(follow(g, f), [3, 5, 11])).toEqual(mapPoint(g, mapPoint(f, [3, 5, 11])));
      }
  });
  it.each(cuts.map((c) => [c.shape, c] as const))(
    '%s: there and back is the same cut; one map of two is two maps',
    (_shape, cut) => {
      for (const f of frames) {
        const back = mapCut(mapCut(cut, f), invert(f));
        // An outline may begin at another corner.
        if (cut.shape === 'outline' && back.shape === 'outline') {
          const k = back.keep.findIndex((s) => s.to[0] === cut.keep[0]?.to[0] && s.to[1] === cut.keep[0].to[1]);
          expect([...back.keep.slice(k), ...back.keep.slice(0, k)]).toEqual(cut.keep);
        } else expect(back).toEqual(cut);
      }
    },
  );
});

describe('mirrored across, in a part 40 wide', () => {
  const mirror: Frame = { to: [0, 1, 2], sign: [-1, 1, 1], shift: [40, 0, 0] };
  const mapped = cuts.map((c) => mapCut(c, mirror));
  it('a mortise in the left face lies in the right face', () => {
    expect(mapped[0]).toMatchObject({
      face: 'right',
      at: [
        [37, 40],
        [1, 4],
        [2, 9],
      ],
    });
  });
  it('tails at the right end stand at the left end, the same from the bottom', () => {
    expect(mapped[2]).toMatchObject({ end: 'left', base: 20, tails: [{ atBase: [1, 2] }, { atBase: [5, 7] }] });
  });
  it('a tenon keeps its length; its mitre turns over', () => {
    expect(mapped[3]).toMatchObject({
      end: 'back',
      shoulder: 7,
      tongues: [{ a: [38, 39], b: [3, 5], length: 4 }],
      mitre: { long: 'right' },
    });
  });
  it('an outline still runs anticlockwise, and its bulge stays on the same stretch', () => {
    const cut = mapped[8];
    if (cut?.shape !== 'outline') throw new Error('no outline');
    expect(area(cut.keep)).toBeGreaterThan(0);
    const k = cut.keep.findIndex((s) => s.bulge !== undefined);
    expect([cut.keep[(k + 3) % 4]?.to, cut.keep[k]]).toEqual([[31, 5], { to: [31, 0], bulge: 0.5 }]);
  });
  it('a hole is as far from the other edge', () => {
    expect(mapped[6]).toMatchObject({ face: 'front', at: [37, 11], tilt: { toward: 'top' } });
  });
});
