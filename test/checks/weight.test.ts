import { beforeAll, describe, expect, it } from 'vitest';
import type { CheckInput } from '../../src/checks/check.js';
import { partBodies } from '../../src/checks/bodies.js';
import { drawerRooms, FILL } from '../../src/checks/drawerRoom.js';
import { weight } from '../../src/checks/weight.js';
import { createKernel } from '../../src/geom/kernel.js';
import { momentsOf } from '../../src/geom/moments.js';
import { inches } from '../../src/lengths/length.js';
import { density, kilograms, pounds } from '../../src/wood/mass.js';
import { multipliers, peopleFor, recommendedWeight } from '../../src/wood/lifting.js';
import { chestDef } from './chest.js';
import { inputOf, ran, shippedInput } from './run.js';

const IN = 25.4;
const LB = 0.45359237;

describe('lifting', () => {
  // NIOSH, revised equation; worked by hand: 51 x 10/20 x (1 - .0075 x 30) x (.82 + 1.8/30) = 17.39 lb.
  it('hands 20 in out, from the floor, up 30 in: 17.39 lb', () => {
    const lift = { reach: 20 * IN, height: 0, travel: 30 * IN };
    const m = multipliers(lift);
    expect([m.reach, m.height, m.travel]).toEqual([0.5, expect.closeTo(0.775, 12), expect.closeTo(0.88, 12)]);
    expect(recommendedWeight(lift) / LB).toBeCloseTo(17.39, 2);
  });
  it('at its best: 51 lb', () => {
    expect(recommendedWeight({ reach: 10 * IN, height: 30 * IN, travel: 10 * IN }) / LB).toBeCloseTo(51, 9);
    expect(recommendedWeight({ reach: 5 * IN, height: 30 * IN, travel: 0 }) / LB).toBeCloseTo(51, 9);
  });
  it('out of reach nothing is lifted', () => {
    expect(recommendedWeight({ reach: 25.1 * IN, height: 30 * IN, travel: 10 * IN })).toBe(0);
    expect(recommendedWeight({ reach: 10 * IN, height: 71 * IN, travel: 10 * IN })).toBe(0);
  });
  it('counts people by 51 lb each, or what the shop says', () => {
    expect([50, 51, 52, 102, 103].map((lb) => peopleFor(lb * LB))).toEqual([1, 1, 2, 2, 3]);
    expect(peopleFor(60, 30)).toBe(2);
  });
});

describe('density', () => {
  // Wood Handbook table 4-6a: specific gravity 0.60 at 12 % is 672 kg/m3 (white ash has 0.60).
  it('of white ash is 672 kg/m3', () => expect(density('lumber', 'ash-white')).toBeCloseTo(672, 6));
  // By equation 4-14: 62.43 x 0.63 x 1.12 = 44.05 lb/ft3; 1.5 ft3 weigh 66.1 lb.
  it('a hard maple top 72 x 36 x 1 in weighs 66.1 lb', () => {
    const volume = 72 * 36 * 1 * IN ** 3;
    expect(pounds(kilograms(volume, density('lumber', 'maple-sugar') ?? 0))).toBeCloseTo(66.1, 1);
  });
  it('a board foot of cherry weighs 2.91 lb', () => {
    const volume = 144 * IN ** 3;
    expect(pounds(kilograms(volume, density('lumber', 'cherry-black') ?? 0))).toBeCloseTo(2.91, 2);
  });
});

describe('integrals over a mesh', () => {
  it('a box, a hull and an L: closed forms', async () => {
    const kernel = await createKernel();
    const box = kernel.mesh({
      op: 'box',
      at: [
        [inches(100), inches(102)],
        [0, inches(3)],
        [0, inches(4)],
      ],
    });
    const b = momentsOf(box);
    expect(b.volume).toBeCloseTo(24 * IN ** 3, 3);
    expect(b.centre.map((v) => v / IN)).toEqual([101, 1.5, 2].map((v) => expect.closeTo(v, 9)));
    // A tetrahedron's middle is the mean of its corners, its volume a sixth of the box on its edges.
    const t = momentsOf(
      kernel.mesh({
        op: 'hull',
        points: [
          [0, 0, 0],
          [inches(6), 0, 0],
          [0, inches(4), 0],
          [0, 0, inches(8)],
        ],
      }),
    );
    expect(t.volume).toBeCloseTo(32 * IN ** 3, 2);
    expect(t.centre.map((v) => v / IN)).toEqual([1.5, 1, 2].map((v) => expect.closeTo(v, 6)));
    // 4 x 4 x 1 less its quarter: 12 units of area; moments 4*4*2 - 4*3 = 20 over 12.
    const l = momentsOf(
      kernel.mesh({
        op: 'cut',
        from: {
          op: 'box',
          at: [
            [0, inches(4)],
            [0, inches(4)],
            [0, inches(1)],
          ],
        },
        tools: [
          {
            op: 'box',
            at: [
              [inches(2), inches(5)],
              [inches(2), inches(5)],
              [inches(-1), inches(2)],
            ],
          },
        ],
      }),
    );
    expect(l.centre.map((v) => v / IN)).toEqual([20 / 12, 20 / 12, 0.5].map((v) => expect.closeTo(v, 9)));
    kernel.dispose();
  });
});

const board = (thick: string, long: string, wide: string) => ({
  stock: { oak: { lumber: 'oak-white', quarter: '8/4' } },
  parts: {
    top: {
      mark: 'T1',
      stock: 'oak',
      grain: 'across',
      across: ['0', long],
      deep: ['0', wide],
      up: ['30', `30 + ${thick}`],
    },
  },
});

describe('the check', () => {
  it('a trestle top of white oak, 84 x 38 x 1 1/4, weighs about 110 lb: three carry it', async () => {
    const input = await inputOf(board('1 1/4', '84', '38'));
    const { checked, findings } = ran(weight, input);
    const j = checked.checks[0]?.judged.find((x) => x.code === 'part-heavy');
    // 84 x 38 x 1.25 in = 2.309 ft3 of 47.5 lb.
    expect((j?.figure.value ?? 0) / LB).toBeCloseTo(2.309 * 62.43 * 0.68 * 1.12, 0);
    expect(findings.map((f) => f.code)).toContain('part-heavy');
    expect(findings.find((f) => f.code === 'part-heavy')?.severity).toBe('warning');
    expect(findings.find((f) => f.code === 'part-heavy')?.hint).toMatch(/^Have 3 people/);
    expect(findings.map((f) => f.code)).toContain('carry-heavy');
  });
  it('a small one is silent, and the heaviest part is tabled', async () => {
    const { checked, findings } = ran(weight, await inputOf(board('1', '30', '12')));
    expect(findings).toEqual([]);
    expect(checked.checks[0]?.judged.filter((j) => j.code === 'part-heavy')).toHaveLength(1);
  });
  it('the shop says what one lifts', async () => {
    const input = await inputOf(board('1', '30', '12'));
    const weak = { ...input, piece: { ...input.piece, profile: { machines: {}, clamps: [], lift: 2 } } };
    const found = ran(weight, weak).findings.find((f) => f.code === 'part-heavy');
    expect(found?.severity).toBe('warning');
  });
  it('parts that come off for the carry are carried on their own', async () => {
    const input = await inputOf({
      stock: { oak: { lumber: 'oak-white', quarter: '8/4' } },
      parts: {
        top: { mark: 'T1', stock: 'oak', grain: 'across', across: ['0', '84'], deep: ['0', '38'], up: ['29', '30'] },
        foot: { mark: 'F1', stock: 'oak', grain: 'across', across: ['0', '84'], deep: ['0', '38'], up: ['0', '1'] },
      },
    });
    const delivery = { doors: [], corners: [], stairs: [], wrap: inches(0), apart: ['top'] };
    const units = (i: CheckInput): (string | undefined)[] =>
      (ran(weight, i).checked.checks[0]?.judged ?? []).filter((j) => j.code === 'carry-heavy').map((j) => j.subject);
    expect(units(input)).toEqual(['The piece']);
    expect(units({ ...input, piece: { ...input.piece, delivery } })).toEqual(['The piece without T1', 'T1']);
  });
});

describe('drawers', () => {
  let chest: CheckInput;
  beforeAll(async () => {
    chest = await shippedInput('tall-chest');
  });
  it('have the room between their walls', () => {
    const rooms = drawerRooms(chest.piece, partBodies(chest));
    const r = rooms.find((x) => x.drawer.mark === 'D5');
    const part = (id: string) => chest.piece.parts.find((p) => p.id === `${r?.drawer.id}.${id}`);
    const size = (id: string, axis: 0 | 1 | 2): number => (part(id)?.size[axis].value ?? 0) / 25.4e6;
    // Inside: the box front's length less both sides; what stands over the bottom.
    expect(r?.volume).toBeGreaterThan(0);
    const wide = (r?.room[0][1] ?? 0) - (r?.room[0][0] ?? 0);
    const front = r?.bodies.find((b) => b.part.id.endsWith('box_front'));
    expect(wide / IN).toBeCloseTo(
      ((front?.bounds[0][1] ?? 0) - (front?.bounds[0][0] ?? 0)) / IN - 2 * size('side_left', 0),
      6,
    );
    expect((FILL * 0.3048 ** 3) / LB).toBeCloseTo(8.5, 9);
    // 1.5 ft3 hold 12.75 lb.
    expect((FILL * 1.5 * 0.3048 ** 3) / LB).toBeCloseTo(12.75, 9);
  });
  it('the heaviest is told; one of oak as large as a door takes two', async () => {
    const judged = (i: CheckInput) => ran(weight, i).checked.checks[0]?.judged.filter((j) => j.code === 'drawer-heavy');
    expect(judged(chest)?.map((j) => [j.subject, j.verdict])).toEqual([['D5', 'pass']]);
    const huge = await inputOf(
      chestDef({ W: '60', D: '26', H: '30', rows: ['24'], drawerWood: 'oak-white', front: '2' }),
    );
    expect(judged(huge)?.[0]?.verdict).not.toBe('pass');
  });
});
