import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Axis } from '../../src/geom/axis.js';
import type { Box3, Vec3 } from '../../src/geom/box.js';
import { commonRoom, shareRoom } from '../../src/geom/common.js';
import { coveredBy } from '../../src/geom/covered.js';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { whereIs } from '../../src/geom/membership.js';
import { nearby } from '../../src/geom/nearby.js';
import type { Placement } from '../../src/geom/placement.js';
import { boxWithin, reachOf } from '../../src/geom/reach.js';
import type { Recipe } from '../../src/geom/recipe.js';
import { squared } from '../../src/geom/squared.js';

/** What is told from figures alone, held against the kernel. Lengths here are mm; small whole numbers, so that faces often touch. */
const mm = (x: number): number => Math.round(x * 1e6);
const boxAt = (sides: readonly number[]): Box3 =>
  [0, 1, 2].map((i) => [mm(sides[i * 2]!), mm(sides[i * 2]! + sides[i * 2 + 1]!)]) as unknown as Box3;
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

const where = fc.integer({ min: -7, max: 5 });
const long = fc.integer({ min: 2, max: 18 });
const sides = fc.tuple(where, long, where, long, where, long);
const axes = fc.constantFrom<Axis>(0, 1, 2);
const box: fc.Arbitrary<Recipe> = sides.map((s) => ({ op: 'box', at: boxAt(s) }));
const prism: fc.Arbitrary<Recipe> = fc
  .tuple(axes, where, long, where, where, long, fc.integer({ min: -3, max: 3 }), fc.constantFrom(0, 0, 0.3, -0.2))
  .map(([axis, from, height, x, y, size, slope, bulge]) => ({
    op: 'prism',
    axis,
    from: mm(from),
    to: mm(from + height),
    outlines: [
      [
        { to: [mm(x), mm(y)] },
        { to: [mm(x + size + 4), mm(y)] },
        bulge
          ? { to: [mm(x + size + 4 - slope), mm(y + size)], bulge }
          : { to: [mm(x + size + 4 - slope), mm(y + size)] },
        { to: [mm(x + slope), mm(y + size)] },
      ],
    ],
  }));
const pin: fc.Arbitrary<Recipe> = fc
  .tuple(axes, where, where, where, fc.integer({ min: 2, max: 7 }), long)
  .map(([axis, x, y, z, r, h]) => ({
    op: 'turned',
    axis,
    centre: [mm(x), mm(y), mm(z)],
    profile: [
      [mm(r), mm(x)],
      [mm(r), mm(x + h)],
    ],
  }));
const shape = fc.oneof(box, prism, pin);
const square: fc.Arbitrary<Placement> = fc
  .tuple(
    fc.constantFrom([0, 1, 2], [1, 2, 0], [2, 0, 1], [1, 0, 2], [0, 2, 1], [2, 1, 0]),
    fc.integer({ min: 0, max: 7 }),
    where,
    where,
    where,
  ) // prettier-ignore
  .map(([order, signs, x, y, z]) => ({
    rotation: order.map((to, i) => [0, 1, 2].map((k) => (k === to ? ((signs >> i) & 1 ? -1 : 1) : 0))) as unknown as [Vec3, Vec3, Vec3], // prettier-ignore
    origin: [mm(x), mm(y), mm(z)],
  }));
const leaning: fc.Arbitrary<Placement> = fc.tuple(where, where).map(([x, y]) => ({
  rotation: [[0.8, 0, 0.6], [0, 1, 0], [-0.6, 0, 0.8]], // prettier-ignore
  origin: [mm(x), mm(y), 0],
}));
const waste = fc.tuple(box, fc.array(shape, { maxLength: 2 })).map(([from, tools]): Recipe => ({ op: 'cut', from, tools })); // prettier-ignore
const board = fc
  .tuple(box, fc.array(fc.oneof(shape, waste), { maxLength: 4 }))
  .map(([from, tools]): Recipe => ({ op: 'cut', from, tools }));
const solid: fc.Arbitrary<Recipe> = fc.oneof(
  board,
  shape,
  fc.tuple(square, board).map(([by, of]): Recipe => ({ op: 'placed', by, of })),
  fc.tuple(leaning, board).map(([by, of]): Recipe => ({ op: 'placed', by, of })),
  fc.tuple(square, leaning, board).map(([b, a, of]): Recipe => ({ op: 'placed', by: b, of: { op: 'placed', by: a, of } })), // prettier-ignore
  fc.tuple(shape, shape).map((of): Recipe => ({ op: 'joined', of })),
);
/** A nanometre over the faces of these small solids, and the rounding of arcs to whole nanometres, mm3. */
const BAR = 1e-2;
const volume = (of: Recipe): number => kernel.volume(of);
const differ = (a: Recipe, b: Recipe): number =>
  volume({ op: 'cut', from: a, tools: [b] }) + volume({ op: 'cut', from: b, tools: [a] });

describe('told from the figures alone, as the kernel has it', () => {
  it('quarter turns, mirrors and shifts carried out on the figures', () => {
    fc.assert(
      fc.property(fc.tuple(square, solid), ([by, of]) => {
        const placed: Recipe = { op: 'placed', by, of };
        expect(differ(placed, squared(placed))).toBeLessThan(BAR);
        expect(JSON.stringify(squared(placed)).match(/"op":"placed"/g)?.length ?? 0).toBeLessThan(2);
      }),
      { numRuns: 150, seed: 3 },
    );
  });
  it('what a solid is near a box, and the box that holds it', () => {
    fc.assert(
      fc.property(fc.tuple(solid, sides), ([s, at]) => {
        const of = squared(s);
        const room: Recipe = { op: 'box', at: boxAt(at) };
        const near = nearby(of, room.at);
        const whole: Recipe = { op: 'met', of: [of, room] };
        expect(near ? differ(whole, { op: 'met', of: [near, room] }) : volume(whole)).toBeLessThan(BAR);
        const bounds = kernel.bounds(of);
        const reach = reachOf(of);
        if (!bounds) return;
        const nm = bounds.map((x) => [mm(x[0]), mm(x[1])]) as unknown as Box3;
        expect(reach !== undefined && boxWithin(nm, reach)).toBe(true);
      }),
      { numRuns: 200, seed: 4 },
    );
  });
  it('a box said to be covered has nothing left', () => {
    let said = 0;
    fc.assert(
      fc.property(fc.tuple(sides, fc.array(fc.oneof(box, box, prism, waste), { maxLength: 6 })), ([at, tools]) => {
        if (!coveredBy(boxAt(at), tools)) return;
        said++;
        expect(volume({ op: 'cut', from: { op: 'box', at: boxAt(at) }, tools })).toBeLessThan(BAR);
      }),
      { numRuns: 3000, seed: 5 },
    );
    expect(said).toBeGreaterThan(50);
  });
  it('a point said to be in is in, one said to be out is out', () => {
    const told = { in: 0, out: 0, unsure: 0 };
    fc.assert(
      fc.property(fc.tuple(solid, where, where, where), ([of, x, y, z]) => {
        const p = [x, y, z].map((v) => mm(v + 0.3)) as unknown as Vec3;
        const said = whereIs(p, of);
        told[said]++;
        const spot: Recipe = { op: 'box', at: p.map((v) => [v - 1, v + 1]) as unknown as Box3 };
        const share = volume({ op: 'met', of: [spot, of] }) / volume(spot);
        if (said === 'in') expect(share).toBeGreaterThan(0.9);
        if (said === 'out') expect(share).toBeLessThan(0.1);
      }),
      { numRuns: 600, seed: 6 },
    );
    expect(told.in).toBeGreaterThan(30);
    expect(told.out).toBeGreaterThan(100);
    expect(told.unsure).toBeLessThan(60);
  });
  it('the room common to two solids: as much, in the same place, and told whether there is any', () => {
    let [empty, shared] = [0, 0];
    fc.assert(
      fc.property(fc.tuple(solid, solid), ([a, b]) => {
        const met: Recipe = { op: 'met', of: [a, b] };
        const { volume: v, at } = kernel.overlap(a, b);
        expect(Math.abs(v - volume(met))).toBeLessThan(BAR);
        if (v > 1) {
          shared++;
          const want = kernel.bounds(met)!;
          at!.forEach((side, i) => side.forEach((x, k) => expect(Math.abs(x - want[i]![k]!)).toBeLessThan(1e-5)));
        }
        if (!commonRoom(a, b)) empty++;
        if (v > BAR || v === 0) expect(shareRoom(a, b, kernel)).toBe(v > 0);
      }),
      { numRuns: 400, seed: 7 },
    );
    expect([empty > 50, shared > 50]).toEqual([true, true]);
  });
});

describe('joints that fit are told without the kernel', () => {
  const board: Box3 = boxAt([0, 100, 0, 20, 0, 30]);
  const tail: Recipe = {
    op: 'prism',
    axis: 1,
    from: mm(0),
    to: mm(20),
    outlines: [[[90, 12], [100, 10], [100, 20], [90, 18]].map((p) => ({ to: [mm(p[0]!), mm(p[1]!)] as const }))], // prettier-ignore
  };
  const rail: Recipe = {
    op: 'cut',
    from: { op: 'box', at: board },
    tools: [{ op: 'cut', from: { op: 'box', at: boxAt([90, 11, -1, 22, -1, 32]) }, tools: [tail] }],
  };
  const post = (socket: Recipe): Recipe => ({ op: 'cut', from: { op: 'box', at: boxAt([90, 30, 0, 20, -50, 200]) }, tools: [socket] }); // prettier-ignore
  it('a tail in its socket shares no room, a tail in a smaller socket does', () => {
    const before = kernel.handles().made;
    expect(kernel.overlap(rail, post(tail)).volume).toBe(0);
    expect(kernel.handles().made).toBe(before);
    const small: Recipe = { op: 'box', at: boxAt([90, 10, 0, 20, 11, 8]) };
    // Two slivers beyond a socket of 8: sides go from 6 to 10 over 10, so half the area of (1 + 1) high by 5 long each side.
    expect(kernel.overlap(rail, post(small)).volume).toBeCloseTo((2 * 1 * 5 * 20) / 2, 6);
  });
  it('a pair that stands elsewhere in the same way is worked out once', () => {
    const small: Recipe = { op: 'box', at: boxAt([90, 10, 0, 20, 11, 8]) };
    const moved = (of: Recipe): Recipe => ({
      op: 'placed',
      by: { rotation: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], origin: [mm(7), 0, mm(300)] }, // prettier-ignore
      of,
    });
    const first = kernel.overlap(rail, post(small));
    const before = kernel.handles().made;
    const again = kernel.overlap(moved(rail), moved(post(small)));
    expect(kernel.handles().made).toBe(before);
    expect(again.volume).toBe(first.volume);
    expect(again.at![2]).toEqual(first.at![2].map((z) => z + 300));
  });
});
