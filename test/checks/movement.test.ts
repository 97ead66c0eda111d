import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CheckInput, Judgement } from '../../src/checks/check.js';
import { movement } from '../../src/checks/movement.js';
import { fieldOf, inOrder, type Bar } from '../../src/checks/movement/skeleton.js';
import { toIn } from '../../src/lengths/length.js';
import { batten, board, drawerOnWood, frame, lid, onFrame, pegged, slotsOf } from './pieces.js';
import { inputOf, ran, shippedInput } from './run.js';

/** A piece as if made, dried and wetted at these moistures, %. */
const at = (input: CheckInput, made: number, driest: number, wettest: number): CheckInput => ({
  ...input,
  season: { made, driest, wettest },
});
const judgements = (input: CheckInput): readonly Judgement[] => movement.run(input).judgements;
const of = (input: CheckInput, code: string, subject?: string): Judgement => {
  const found = judgements(input).find((j) => j.code === code && (subject === undefined || j.subject === subject));
  if (!found)
    throw new Error(
      `no ${code}: ${judgements(input)
        .map((j) => `${j.code} ${j.subject}`)
        .join(', ')}`,
    );
  return found;
};
const bad = (input: CheckInput): string[] =>
  judgements(input).flatMap((j) => (j.verdict === 'pass' ? [] : [`${j.verdict} ${j.code} ${j.subject}`]));
const figure = (j: Judgement, name: string): number => {
  const found = j.worked.inputs.find((i) => i.name === name);
  if (!found) throw new Error(`no ${name}: ${j.worked.inputs.map((i) => i.name).join(', ')}`);
  return toIn(found.quantity.value);
};
const table = (input: CheckInput, id: string): readonly (readonly string[])[] =>
  movement.run(input).tables?.find((t) => t.id === id)?.rows ?? [];

/** One board across, `deep` wide. */
const one = (wood: object, deep: string): Promise<CheckInput> =>
  inputOf({
    stock: { wood },
    parts: {
      top: { mark: 'T1', stock: 'wood', grain: 'across', across: ['0', '48'], deep: ['0', deep], up: ['0', '3/4'] },
    },
  });

describe('what one part does, against published figures', () => {
  it.each([
    // Computed examples of movement per 12 in, flat-sawn, 6 to 11 %, from table 13-5.
    ['cherry', 'flat', '12', 6, 11, '12.149'],
    ['walnut', 'flat', '12', 6, 11, '12.164'],
    ['hard-maple', 'flat', '12', 6, 11, '12.212'],
    ['white-oak', 'flat', '12', 6, 11, '12.219'],
    // Hardwood Floors Magazine, red oak flat-sawn, 5 in, 6 to 9 %: .055.
    ['red-oak', 'flat', '5', 6, 9, '5.055'],
    // 9 x .00180 x 3 = .0486.
    ['white-oak', 'quartered', '9', 8, 11, '9.049'],
  ])('%s %s, %s in, %d to %d %%', async (lumber, cut, deep, made, wet, width) => {
    const input = await one(board(lumber, cut), deep);
    expect(table(at(input, made, made, wet), 'movement')[0]?.slice(2, 5)).toEqual([deep, deep, width]);
  });
  it('thickness goes the other way about: quartered oak swells across its thickness by the tangential coefficient', async () => {
    const row = table(at(await one(board('white-oak', 'quartered'), '9'), 8, 6, 12), 'movement')[0];
    // .75 x .00365 x 4 = .01095 and x -2 = -.0055.
    expect(row?.slice(5)).toEqual(['3/4', '.745', '.761']);
  });
  it('a wood that is in no table is told, and not made up', async () => {
    const input = await one(board('white-oak', 'flat'), '9');
    const { wood: _own, ...stock } = input.piece.stocks['wood'] as never as Record<string, unknown>;
    const stocks = { wood: { ...stock, material: 'own-wood' } as never };
    expect(bad({ ...input, piece: { ...input.piece, stocks } })).toEqual(['note movement-unjudged T1']);
    expect(bad(input)).toEqual([]);
  });
});

describe('gaps of a front', () => {
  it('cherry, 7 in, made at 8 %: .069 at 12 %, .035 at 6 %, all upwards on wood', async () => {
    const j = of(at(await drawerOnWood(board('cherry', 'flat')), 8, 6, 12), 'front-binds', 'D1');
    expect(figure(j, 'front')).toBe(7);
    expect(figure(j, 'gap as made') - figure(j, 'gap at the wettest')).toBeCloseTo(0.069, 3);
    expect(figure(j, 'gap at the driest') - figure(j, 'gap as made')).toBeCloseTo(0.035, 3);
    // 3/32 - .0694 = .0243, under 1/32.
    expect([j.verdict, Number(toIn(j.figure.value).toFixed(3))]).toEqual(['warning', 0.024]);
  });
  it('a front that binds fails, and is silent in the room it was made for', async () => {
    const input = await drawerOnWood(board('cherry', 'flat'));
    // 7 x .00248 x 6 = .104 on a gap of .094.
    expect(bad(at(input, 8, 6, 14))).toEqual(['fail front-binds D1', 'warning front-moves-much D1']);
    expect(bad(at(input, 8, 6, 11))).toEqual([]);
  });
  it.each([
    // 1/32 + 9 x .00365 x 3 = .130; quartered 1/32 + 9 x .0018 x 3 = .080: up to the next 1/64.
    ['flat', '9/64'],
    ['quartered', '3/32'],
  ])('white oak, %s, scaled to 9 in: leave %s at 8 %% for 11 %%', async (cut, leave) => {
    const input = await drawerOnWood(board('white-oak', cut), `9 + ${leave}`);
    const [row] = table(at(input, 8, 6, 11), 'gap-today');
    expect(row?.[4]).toBe(leave);
    const j = of(at(input, 8, 6, 11), 'front-binds');
    expect([figure(j, 'front'), j.verdict]).toEqual([9, 'pass']);
  });
  it('the gap to leave falls as the wood is wetter, and is never under 1/32', async () => {
    const input = at(await drawerOnWood(board('cherry', 'flat')), 8, 6, 11);
    const [row] = table(input, 'gap-today');
    // 7 x .00248 = .01736 a per cent: 1/32 + 5, 4, 3, 2, 1, 0, 0 of them, to the next 1/64.
    expect(row?.slice(2)).toEqual(['1/8', '7/64', '3/32', '5/64', '1/16', '1/32', '1/32']);
  });
  it('a drawer on wood keeps its play: 1/64 at each side less what half of each side swells by', async () => {
    const input = at(await drawerOnWood(board('cherry', 'flat')), 8, 6, 12);
    const j = of(input, 'drawer-sticks', 'D1');
    // Two sides of 1/2, held to the front in the middle of their thickness: 2 x .25 x .00126 x 4; the case is of plywood.
    expect(toIn(j.figure.value)).toBeCloseTo(1 / 32 - 0.00252, 4);
    expect(j.verdict).toBe('pass');
    const tight = at(await drawerOnWood(board('cherry', 'flat'), '7 3/32', { reveal: '0.003' }), 8, 6, 11);
    expect(bad(tight)).toEqual(['warning drawer-sticks D1']);
  });
  it('drawers that are alike stand in one row, all gaps above before those below', async () => {
    const rows = table(at(await shippedInput('tall-chest'), 8, 6, 11), 'gap-today');
    expect(rows.map((r) => r[1])).toEqual([...rows.map((r) => r[1])].sort());
    expect(rows[0]?.[0]).toBe('D1 D2');
    for (const r of rows) expect(r).toHaveLength(9);
  });
  it('on slides it goes both ways from their line', async () => {
    const input = at(await shippedInput('tall-chest'), 8, 6, 11);
    const [above, below] = ['above', 'below'].map((w) =>
      judgements(input).find((j) => j.code === 'front-binds' && j.subject === 'D5' && j.about.includes(w)),
    );
    const closes = (j: Judgement | undefined): number =>
      j ? figure(j, 'gap as made') - figure(j, 'gap at the wettest') : NaN;
    // All of it upwards would be 8 55/64 x .0018 x 3 = .0478.
    expect(closes(above)).toBeGreaterThan(0.02);
    expect(closes(below)).toBeGreaterThan(0.005);
  });
});

describe('panels in their grooves', () => {
  it('walnut 14 in, groove 3/8, .108 free: .229 at 6 %, 1/32 at 12 % (made at 8 %)', async () => {
    // 14 = opening + 2 (.375 - .108).
    const input = at(await frame('13.466', { depth: '3/8', slack: '0.108' }), 8, 6, 12);
    const stays = of(input, 'panel-leaves-groove', 'P1 on S1 S2');
    expect(figure(stays, 'panel')).toBeCloseTo(14, 3);
    expect(toIn(stays.figure.value)).toBeCloseTo(0.229, 3);
    // .108 - .0767 and what the stiles' grooves deepen by, .375 x .00274 x 4.
    expect(toIn(of(input, 'panel-presses', 'P1 on S1 S2').figure.value)).toBeCloseTo(0.0313 + 0.0041, 3);
    expect(bad(input)).toEqual([]);
  });
  it('a wide panel in a shallow groove leaves it when it dries', async () => {
    // 30 x .00274 x 4 / 2 = .164 of the 3/16 less .05 that it enters.
    const shallow = await frame('29.75', { depth: '3/16', slack: '0.05' });
    expect(bad(at(shallow, 10, 6, 10))).toContain('fail panel-leaves-groove P1 on S1 S2');
    expect(bad(at(await frame('29.75', { depth: '7/16' }), 8, 7, 9))).toEqual([]);
  });
  it('a panel without room presses on its frame when it swells', async () => {
    expect(bad(at(await frame('14', { depth: '3/8', slack: '1/64' }), 7, 6, 13))).toContain(
      'fail panel-presses P1 on S1 S2',
    );
  });
});

describe('what joints hold back', () => {
  const GLUED = { on: { kind: 'butt', part: 'batten', into: 'top', glue: true } };
  it('a batten glued across a top: over all its length, by what the top moves', async () => {
    const j = of(at(await batten(GLUED, '12'), 8, 6, 11), 'tied-across');
    expect([j.subject, toIn(j.figure.value), j.verdict]).toEqual(['B1 on T1', 12, 'fail']);
    // 12 x .00365 x 3 and x -2.
    expect(figure(j, 'held back at the wettest')).toBeCloseTo(-0.1314, 4);
    expect(figure(j, 'held back at the driest')).toBeCloseTo(0.0876, 4);
  });
  it('4 in of it pass, 5 are a note, 7 a warning', async () => {
    for (const [deep, said] of [
      ['4', []],
      ['5', ['note tied-across B1 on T1']],
      ['7', ['warning tied-across B1 on T1']],
    ] as const)
      expect(bad(at(await batten(GLUED, deep), 8, 6, 11))).toEqual(said);
  });
  it('a shelf in rails whose grain runs under it: 11 1/2 in glued are told, glued over the front 2 in they pass', async () => {
    const shelf = (glued: object): Promise<CheckInput> =>
      inputOf({
        stock: { wood: board('walnut', 'flat') },
        parts: {
          left: {
            mark: 'E1',
            stock: 'wood',
            grain: 'deep',
            across: ['0', '3/4'],
            deep: ['0', '11 1/2'],
            up: ['0', '3'],
          },
          right: { mark: 'E2', mirror: 'left', about: '8' },
          shelf: {
            mark: 'S1',
            stock: 'wood',
            grain: 'across',
            across: ['left', 'right'],
            deep: ['0', '11 1/2'],
            up: { from: '1', size: '3/4' },
          },
        },
        joints: { held: { kind: 'dado', part: 'shelf', into: ['left', 'right'], ...glued } },
      });
    const all = at(await shelf({}), 8, 6, 11);
    expect(bad(all)).toEqual(['warning tied-across S1 on E1 E2']);
    expect(toIn(of(all, 'tied-across').figure.value)).toBe(11.5);
    const front = at(await shelf({ glued: '2' }), 8, 6, 11);
    expect([bad(front), toIn(of(front, 'tied-across').figure.value)]).toEqual([[], 2]);
  });
  it('flat on quartered of one grain: only the difference, 14 x (.00353 - .00165) x 3 = .079', async () => {
    const j = of(at(await lid('quartered'), 8, 6, 11), 'tied-unlike');
    expect([Number(toIn(j.figure.value).toFixed(3)), j.verdict]).toEqual([0.079, 'warning']);
    expect(bad(at(await lid('flat'), 8, 6, 11))).toEqual([]);
  });
  it('a top screwed down in front and behind on a frame that does not move', async () => {
    const j = of(at(await onFrame({}), 8, 6, 11), 'held-apart');
    // 21.25 in between the screws: x .00365 x 3 = .2327.
    expect([j.verdict, Number(toIn(j.figure.value).toFixed(3))]).toEqual(['fail', 0.233]);
    expect(bad(at(await onFrame({ hole: 'slotted' }), 8, 6, 11))).toEqual([]);
  });
  it('the same screws in slab sides of one grain hold nothing back, and slots there are only as long as the screw', async () => {
    const j = of(at(await shippedInput('tall-chest'), 8, 6, 11), 'slot-short');
    expect(Math.abs(figure(j, 'travel to the wettest'))).toBeLessThan(0.005);
  });
});

describe('slots', () => {
  it('white oak, 38 in, fixed at the centre, a screw at 15 in, made at 8 %: .22 out at 12 %, .11 in at 6 %', async () => {
    const j = of(at(await pegged({}), 8, 6, 12), 'slot-short');
    expect(Math.abs(figure(j, 'from the fixed line'))).toBe(15);
    const travel = ['travel to the wettest', 'travel to the driest'].map((n) => figure(j, n));
    expect(Math.abs(travel[0]!)).toBeCloseTo(0.219, 3);
    expect(Math.abs(travel[1]!)).toBeCloseTo(0.1095, 3);
    expect(travel[0]! * travel[1]!).toBeLessThan(0);
    // Off the middle by half of what the one way is longer: (.219 - .1095) / 2.
    expect(Math.abs(figure(j, 'screw off the middle for the shortest slot'))).toBeCloseTo(0.0548, 3);
    // 11/64 + .219 + .1095 = .5004, up to 33/64.
    expect(figure(j, 'shortest slot')).toBe(33 / 64);
  });
  it('short by the season fails; set off the middle it is a warning; long enough is silent', async () => {
    const input = await pegged({});
    // 38 in swell by .416 to 11 %: the joint gives 11/64 + .832, more than 13 in of travel wants.
    expect(bad(at(input, 8, 6, 11))).toEqual([]);
    expect(bad(at(slotsOf(input, 9 / 16), 8, 6, 12))).toEqual(['warning slot-short B1 on T1']);
    expect(bad(at(slotsOf(input, 1 / 2), 8, 6, 12))).toEqual(['fail slot-short B1 on T1']);
    const fail = of(at(slotsOf(input, 1 / 2), 8, 6, 12), 'slot-short');
    // 11/64 + 2 x .219 = .6099, up to 40/64.
    expect(fail.remedy).toBe('Cut the slot 5/8 long, the screw in the middle of it.');
  });
  it('with nothing but slots it goes about their middle, and that is told', async () => {
    const free = batten({
      slide: { kind: 'screw', part: 'batten', into: 'top', screw: '#8 x 1 1/4', hole: 'slotted', count: 2, inset: '4' },
    });
    const j = of(at(await free, 8, 6, 12), 'slot-short');
    expect([j.verdict, Math.abs(figure(j, 'from the fixed line'))]).toEqual(['note', 15]);
  });
});

describe('the skeleton', () => {
  const bar = (id: string, size: number, band: number): [string, Bar] => [id, { id, size, band }];
  it('what moves least is set first; the last tie shows all that is held back', () => {
    const bars = new Map([bar('top', 1000, 0.01), bar('end', 1000, 0), bar('rail', 20, 0.01), bar('back', 20, 0.01)]);
    const ties = [
      { id: 'a', a: 'rail', b: 'top', at: 10 },
      { id: 'b', a: 'back', b: 'top', at: 990 },
      { id: 'c', a: 'rail', b: 'end', at: 10 },
      { id: 'd', a: 'back', b: 'end', at: 990 },
    ];
    const order = inOrder(bars, ties);
    expect(order.map((t) => t.id)).toEqual(['c', 'd', 'a', 'b']);
    const field = fieldOf(1, order, (id) => (id === 'end' ? 0 : 0.01));
    expect(field.rings.map((r) => [r.tie.id, Number(r.apart.toFixed(9))])).toEqual([['b', 9.8]]);
    expect(field.shift('top', 500) - field.shift('end', 500)).toBeCloseTo(4.9, 9);
  });
  it('agrees with itself: every tie that is no ring gives both sides one shift, in whatever order', () => {
    const tie = fc.record({
      a: fc.integer({ min: 0, max: 6 }),
      b: fc.integer({ min: 0, max: 6 }),
      at: fc.integer({ min: 0, max: 1e6 }),
    });
    fc.assert(
      fc.property(
        fc.array(tie, { maxLength: 12 }),
        fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), { minLength: 7, maxLength: 7 }),
        (raw, strains) => {
          const ties = raw
            .filter((t) => t.a !== t.b)
            .map((t, i) => ({ id: `t${i}`, a: `p${t.a}`, b: `p${t.b}`, at: t.at }));
          const strain = (id: string): number => strains[Number(id.slice(1))] ?? 0;
          const field = fieldOf(0, ties, strain);
          const rings = new Map(field.rings.map((r) => [r.tie.id, r.apart]));
          for (const t of ties) {
            expect(field.tied(t.a, t.b)).toBe(true);
            const apart = field.shift(t.b, t.at) - field.shift(t.a, t.at);
            expect(apart).toBeCloseTo(rings.get(t.id) ?? 0, 6);
          }
        },
      ),
    );
  });
});

describe('over the year', () => {
  it('gaps as made stand between dry and wet, and more humidity never makes a part smaller or a panel freer', async () => {
    const pieces = await Promise.all(['tall-chest', 'nightstand', 'letter-cabinet'].map(shippedInput));
    const season = fc.record({
      made: fc.integer({ min: 7, max: 11 }),
      dry: fc.integer({ min: 1, max: 3 }),
      wet: fc.integer({ min: 1, max: 3 }),
      more: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(fc.constantFrom(...pieces), season, (input, s) => {
        const run = (wettest: number): CheckInput => at(input, s.made, s.made - s.dry, wettest);
        const [less, more] = [movement.run(run(s.made + s.wet)), movement.run(run(s.made + s.wet + s.more))];
        for (const d of less.diagrams ?? [])
          if (d.kind === 'reveals')
            for (const r of d.rows) {
              const [low, high] = [Math.min(r.driest, r.wettest), Math.max(r.driest, r.wettest)];
              expect(low <= r.made && r.made <= high).toBe(true);
            }
        for (const j of less.judgements.filter((x) => x.code === 'panel-presses')) {
          const other = more.judgements.find(
            (x) => x.code === j.code && x.subject === j.subject && x.about === j.about,
          );
          if (other && other.touches.length === j.touches.length)
            expect(other.figure.value).toBeLessThanOrEqual(j.figure.value + 1);
        }
        const widths = (r: typeof less): number[] =>
          (r.tables?.find((t) => t.id === 'movement')?.rows ?? []).map((row) => Number(row[4]) || 0);
        const [a, b] = [widths(less), widths(more)];
        a.forEach((w, i) => {
          if (w > 0 && (b[i] ?? 0) > 0 && a.length === b.length) expect(b[i]!).toBeGreaterThanOrEqual(w);
        });
      }),
      { numRuns: 25 },
    );
  });
  it('is the same twice, and plain data', async () => {
    const input = await shippedInput('nightstand');
    const once = movement.run(input);
    expect(JSON.parse(JSON.stringify(once))).toEqual(once);
    expect(movement.run(input)).toEqual(once);
    expect(ran(movement, input).findings.every((f) => f.path.length > 0)).toBe(true);
  });
  it('every judgement says how it came about, and every one that is wanting says what to do', async () => {
    for (const j of judgements(at(await shippedInput('tall-chest'), 8, 4, 16))) {
      expect(j.worked.rule.length > 0 && j.worked.sources.length > 0 && j.worked.inputs.length > 0).toBe(true);
      if (j.verdict === 'warning' || j.verdict === 'fail') expect(j.remedy).toMatch(/\.$/);
      if (j.margin !== undefined && j.verdict === 'pass') expect(j.margin).toBeGreaterThanOrEqual(0.999);
    }
  });
});

describe('panels and slots through the year, in tables', () => {
  it('a panel of walnut, 14 in, .267 in its grooves and .108 free: as made, at the driest, at the wettest', async () => {
    const input = at(await frame('13.466', { depth: '3/8', slack: '0.108' }), 8, 6, 12);
    const across = table(input, 'panels-through-the-year').find((r) => r[0] === 'P1' && r[1] === 'across');
    // 14 x .00274 x -2 / 2 = -.0384 and x 4 / 2 = .0767; the stiles grow between them by nothing but their grooves' depth.
    expect(across?.slice(2, 4)).toEqual(['.267', '.229']);
    expect(Number(across?.[4])).toBeCloseTo(0.267 + 0.0767, 2);
    expect(Number(across?.[5])).toBeCloseTo(0.108, 3);
    expect(Number(across?.[7])).toBeCloseTo(0.108 - 0.0767 + 0.0041, 2);
  });
  it('slots of a batten: 15 in from the fixed line, .11 to the driest and .219 to the wettest, both in one row', async () => {
    const rows = table(at(await pegged({}), 8, 6, 12), 'slots-through-the-year');
    // 15 x .00365 x 2 = .1095 and x 4.
    expect(rows.map((r) => [...r.slice(0, 3), ...r.slice(4)])).toEqual([['B1', 'T1', 'deep', '.11', '.219']]);
  });
});
