import { describe, expect, it } from 'vitest';
import { arcTangent, tangent } from '../../src/geom/angle.js';
import { place, turn, unplace } from '../../src/geom/placement.js';
import type { Vec3 } from '../../src/geom/box.js';
import { createKernel } from '../../src/geom/kernel.js';
import { makeSolids } from '../../src/solids/make.js';
import { inches, toIn } from '../../src/lengths/length.js';
import { definition, errorsOf, part, partOf, solved } from './sample.js';

/** A stool's legs: 1 1/4 in square, 17 in high, 8 degrees seen from the front and 6 from the side. */
const stool = definition({
  parts: {
    leg_fl: {
      stock: 'thick',
      stand: { at: ['3', '3', '17'], reach: 'floor', front: -8, side: -6, section: ['1 1/4', '1 1/4'] },
    },
    leg_fr: { mirror: 'leg_fl', about: '8' },
  },
});

describe('a splayed leg', () => {
  const piece = solved(stool);
  const leg = partOf(piece, 'leg_fl');
  const axis: Vec3 = turn(leg.place, [0, 0, 1]);

  it('leans as both elevations show, and by their resultant', () => {
    expect(arcTangent(axis[0] / axis[2])).toBeCloseTo(8, 9);
    expect(arcTangent(axis[1] / axis[2])).toBeCloseTo(6, 9);
    // resultant: tan r = sqrt(tan2 front + tan2 side); for 8 and 6 degrees .0197517 + .0110469, its root .1754953, 9.954 degrees, by hand
    const r = arcTangent(Math.sqrt(tangent(8) ** 2 + tangent(6) ** 2));
    expect(r).toBeCloseTo(9.954, 3);
    expect(arcTangent(Math.sqrt(axis[0] ** 2 + axis[1] ** 2) / axis[2])).toBeCloseTo(r, 9);
  });
  it('is as long as Pythagoras says between its level ends, and its foot stands where the slopes bring it', () => {
    const middle = (z: number): Vec3 => place(leg.place, [inches(0.625), inches(0.625), z]);
    const ends = leg.cuts.flatMap((c) => (c.shape === 'plane' ? [place(leg.place, c.point)] : []));
    expect(ends.map((p) => p.map((x) => Math.round(toIn(x) * 1e4) / 1e4))).toEqual([
      [3 - Math.round(17 * tangent(8) * 1e4) / 1e4, Math.round((3 - 17 * tangent(6)) * 1e4) / 1e4, 0].map(
        (x) => Math.round(x * 1e4) / 1e4,
      ),
      [3, 3, 17],
    ]);
    const [foot, head] = ends as [Vec3, Vec3];
    const long = Math.sqrt((head[0] - foot[0]) ** 2 + (head[1] - foot[1]) ** 2 + (head[2] - foot[2]) ** 2);
    expect(toIn(long)).toBeCloseTo(17 * Math.sqrt(1 + tangent(8) ** 2 + tangent(6) ** 2), 5);
    expect(middle(0)[2]).toBeLessThan(0);
  });
  it('stays right-handed when mirrored, and its mirror image is where it should be', () => {
    const other = partOf(piece, 'leg_fr');
    const [u, v, w] = (
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as Vec3[]
    ).map((e) => turn(other.place, e)) as [Vec3, Vec3, Vec3];
    const det =
      u[0] * (v[1] * w[2] - v[2] * w[1]) - u[1] * (v[0] * w[2] - v[2] * w[0]) + u[2] * (v[0] * w[1] - v[1] * w[0]);
    expect(det).toBeCloseTo(1, 9);
    const p: Vec3 = place(leg.place, [1e6, 2e6, 3e6]);
    const q = unplace(other.place, [2 * inches(8) - p[0], p[1], p[2]]);
    [other.size[0].value - 1e6, 2e6, 3e6].forEach((x, k) => expect(q[k]).toBeCloseTo(x, 3));
    // Both ends are level, so that until a joint is cut it is the same leg, turned end for end.
    expect(other.turnOf).toBe('leg_fl');
    const bored = solved({
      ...stool,
      parts: {
        ...stool.parts,
        leg_fl: {
          ...stool.parts['leg_fl'],
          holes: [{ face: 'right', at: ['5/8', '12'], diameter: '3/4', depth: '3/4' }],
        },
      },
    });
    const pair = ['leg_fl', 'leg_fr'].map((id) => partOf(bored, id));
    expect(pair.map((p) => p.hand)).toEqual(['left', 'right']);
    expect(pair[1]?.mirrorOf).toBe('leg_fl');
  });
  it('is a solid that stands on the floor and reaches its point', async () => {
    const kernel = await createKernel();
    const solid = makeSolids(piece, kernel).value?.parts.find((s) => s.id === 'leg_fl');
    if (!solid) throw new Error('no solid');
    const bounds = kernel.bounds({ op: 'placed', by: leg.place, of: solid.recipe });
    expect(bounds?.[2][0]).toBeCloseTo(0, 3);
    expect(bounds?.[2][1]).toBeCloseTo(17 * 25.4, 3);
    kernel.dispose();
  });
});

it('turns a part about its own middle', () => {
  const piece = solved(
    definition({
      parts: { a: part({ across: ['10', '11'], deep: ['0', '3'], up: ['0', '9'], turn: { about: 'up', by: 90 } }) },
    }),
  );
  const a = partOf(piece, 'a');
  // 1 across and 3 deep about (10 1/2, 1 1/2): 3 across and 1 deep after a quarter turn
  const corners = [place(a.place, [0, 0, 0]), place(a.place, [a.size[0].value, a.size[1].value, 0])].map((p) =>
    p.map(toIn),
  );
  expect(corners).toEqual([
    [12, 1, 0],
    [9, 2, 0],
  ]);
});

it.each([
  [{ stand: { at: ['0', '0', '9'], reach: 'flor', section: ['1', '1'] } }, 'plane-unknown'],
  [{ stand: { at: ['0', '0', '9'], reach: 'floor' } }, 'section-missing'],
  [{ stand: { at: ['0', '0', '0'], reach: 'floor', section: ['1', '1'] } }, 'size-not-positive'],
  [{ stand: { at: ['0', '0', '9'], reach: 'floor', front: 80, section: ['1', '1'] } }, 'slope-too-flat'],
  [{ span: { from: 'a.right', to: 'b.left', at: '3', section: ['1', '1'] } }, 'face-unknown'],
] as const)('refuses %j', (more, code) => {
  expect(new Set(errorsOf(definition({ parts: { leg: { stock: 'oak', ...more } } })).map((f) => f.code))).toEqual(
    new Set([code]),
  );
});
it('refuses a joint of it and a face of it, each in its own words', () => {
  const found = errorsOf({ ...stool, parts: { ...stool.parts, rail: part({ across: ['leg_fl.right', '9'] }) } });
  expect(found.map((f) => f.code)).toEqual(['face-leans']);
  const joined = errorsOf({
    ...stool,
    parts: { ...stool.parts, rail: part() },
    joints: { j: { kind: 'dado', part: 'rail', into: 'leg_fl' } },
  });
  expect(joined.map((f) => [f.code, f.path])).toEqual([['joint-leans', ['joints', 'j']]]);
});

it('its level ends can be measured from: a seat on its top, a shelf over its bottom', () => {
  const seat = part({ across: ['0', '16'], deep: ['0', '12'], up: { from: 'leg_fl.top', size: '1' } });
  const lift = part({ across: ['0', '1'], deep: ['0', '12'], up: ['leg_fr.bottom', 'leg_fr.top'] });
  const made = solved({ ...stool, parts: { ...stool.parts, seat, lift } });
  expect(toIn(partOf(made, 'seat').place.origin[2])).toBe(17);
  expect([toIn(partOf(made, 'lift').place.origin[2]), toIn(partOf(made, 'lift').size[2].value)]).toEqual([0, 17]);
  const [f] = errorsOf({ ...stool, parts: { ...stool.parts, rail: part({ across: ['leg_fl.right', '9'] }) } });
  expect(f?.hint).toContain('leg_fl.top or leg_fl.bottom');
});

describe('a stretcher', () => {
  const span = (from: string, to: string, at = '6') => ({
    stock: 'oak',
    span: { from, to, at, section: ['3/4', '1 1/4'] as const },
  });
  it('between square legs is a plain square part', () => {
    const leg = (at: string) =>
      part({ stock: 'thick', across: { from: at, size: '1 1/2' }, deep: ['0', '1 1/2'], up: ['0', '17'] });
    const piece = solved(definition({ parts: { a: leg('0'), b: leg('12'), rail: span('a.right', 'b.left') } }));
    const rail = partOf(piece, 'rail');
    expect(rail.size.map((s) => toIn(s.value))).toEqual([10.5, 0.75, 1.25]);
    expect(rail.place.origin.map(toIn)).toEqual([1.5, 0.375, 5.375]);
    expect(rail.cuts).toEqual([]);
  });
  it('between splayed legs is as long as they stand apart there, its ends bevelled flat against them', async () => {
    const piece = solved({ ...stool, parts: { ...stool.parts, rail: span('leg_fl.right', 'leg_fr.left') } });
    const rail = partOf(piece, 'rail');
    const kernel = await createKernel();
    const made = makeSolids(piece, kernel);
    expect(made.findings).toEqual([]);
    const solidOf = (id: string) => {
      const s = made.value?.parts.find((x) => x.id === id);
      if (!s) throw new Error('no solid');
      return { op: 'placed', by: partOf(piece, id).place, of: s.recipe } as const;
    };
    // it touches and does not enter: less than one part in a million of its own volume
    expect(kernel.overlap(solidOf('rail'), solidOf('leg_fl')).volume).toBeLessThan(0.02);
    const grown = {
      op: 'placed',
      by: {
        rotation: [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
        origin: [-20_000, 0, 0],
      },
      of: solidOf('rail'),
    } as const;
    // pushed 0.02 mm to the left it bears on the whole end: 3/4 x 1 1/4 in
    expect(kernel.overlap(grown, solidOf('leg_fl')).volume).toBeGreaterThan(0.9 * 0.02 * 0.75 * 1.25 * 25.4 * 25.4);
    const bounds = kernel.bounds(solidOf('rail'));
    expect(((bounds?.[2][0] ?? 0) + (bounds?.[2][1] ?? 0)) / 2 / 25.4).toBeCloseTo(6, 3);
    expect(rail.cuts.map((c) => c.shape)).toEqual(['plane', 'plane']);
    kernel.dispose();
  });
  it.each([
    [span('leg_fl.left', 'leg_fr.left'), 'span-faces'],
    [span('leg_fl.right', 'leg_fr.front'), 'span-faces'],
    [span('leg_fl.right', 'leg_fr.lft'), 'face-unknown'],
    [span('leg_fl.right', 'leg_fr.left', '30'), 'span-height'],
    [span('rail.right', 'leg_fr.left'), 'cycle'],
  ])('refuses %j', (rail, code) => {
    expect(new Set(errorsOf({ ...stool, parts: { ...stool.parts, rail } }).map((f) => f.code))).toEqual(
      new Set([code]),
    );
  });
});
