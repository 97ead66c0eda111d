import type { Judged } from '../../src/checks/fold.js';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CheckInput, Judgement } from '../../src/checks/check.js';
import { FILL } from '../../src/checks/drawerRoom.js';
import { casesOf, scopeOf, stability, stanceOf, travelThatPasses } from '../../src/checks/stability.js';
import { balance, leanOn } from '../../src/checks/tipping.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import { mm } from '../../src/lengths/length.js';
import type { Use } from '../../src/piece/piece.js';
import { density } from '../../src/wood/mass.js';
import { chestDef } from './chest.js';
import { inputOf, ran, shippedInput, type Ran } from './run.js';

const IN = 25.4;
const LB = 0.45359237;
const G = 9.80665;

describe('moments by hand', () => {
  it('a chest of 80 lb whose middle is 9 in back, drawers of 40 lb open to 6 in in front', () => {
    const b = balance([
      { name: 'case', behind: 9 * IN, up: 500, kg: 80 * LB },
      { name: 'drawers', behind: -6 * IN, up: 500, kg: 40 * LB },
    ]);
    // 80 x 9 = 720 and 40 x 6 = 240 inch-pounds.
    expect(b.holding / (LB * G * 0.0254)).toBeCloseTo(720, 9);
    expect(b.tipping / (LB * G * 0.0254)).toBeCloseTo(240, 9);
  });
  it('ten pounds at 42 in are 420 inch-pounds', () => {
    const b = balance([{ name: 'case', behind: 9 * IN, up: 0, kg: 80 * LB }], 0, { up: 42 * IN, newtons: 10 * LB * G });
    expect(b.tipping / (LB * G * 0.0254)).toBeCloseTo(420, 9);
  });
  it('blocks of 0.43 in under a depth of 16 in lean it 1.539 degrees', () => {
    expect(leanOn(0.43 * IN, 16 * IN)).toBeCloseTo(1.539, 3);
  });
  it('leaning, a mass stands over the pivot when its height over its depth is that of the slope', () => {
    const tilt = leanOn(1, 10);
    const b = balance([{ name: 'm', behind: 100, up: 1000, kg: 1 }], tilt);
    expect(Math.abs(b.holding - b.tipping)).toBeLessThan(1e-9);
  });
  it('holding less tipping is the moment of the whole, wherever it stands (turned by hand)', () => {
    const weight = fc.record({
      name: fc.constant('m'),
      behind: fc.double({ min: -2000, max: 2000, noNaN: true }),
      up: fc.double({ min: 0, max: 2500, noNaN: true }),
      kg: fc.double({ min: 0, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(weight, { maxLength: 8 }), fc.double({ min: 0, max: 10, noNaN: true }), (ws, tilt) => {
        const { holding, tipping } = balance(ws, tilt);
        const a = (tilt * Math.PI) / 180;
        const whole = ws.reduce((s, w) => s + (w.kg * G * (w.behind * Math.cos(a) - w.up * Math.sin(a))) / 1000, 0);
        expect(holding - tipping).toBeCloseTo(whole, 6);
        expect(holding).toBeGreaterThanOrEqual(0);
        expect(tipping).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('scope of 16 CFR 1261: all conditions at once', () => {
  const use = (kind: Use['kind'], fixed?: boolean): Use => ({
    loads: {},
    sag: {},
    ...(kind ? { kind } : {}),
    ...(fixed === undefined ? {} : { fixed }),
  });
  const FT3 = 0.3048 ** 3;
  it.each([
    [27, 30, 3.2, use('clothes'), true],
    [26.9, 30, 3.2, use('clothes'), false],
    [27, 29.9, 3.2, use('clothes'), false],
    [27, 30, 3.19, use('clothes'), false],
    [60, 90, 9, use('books'), false],
    [60, 90, 9, use('office'), false],
    [60, 90, 9, use('clothes', true), false],
    [60, 90, 9, use('clothes', false), true],
  ])('%d in, %d lb, %d ft3', async (inch, lb, ft3, as, inside) => {
    const { piece } = await shippedInput('letter-cabinet');
    const s = { piece: { ...piece, use: as }, floor: 0, top: inch * IN, kg: lb * LB, volume: ft3 * FT3 };
    expect(scopeOf(s).inside).toBe(inside);
    expect(scopeOf(s).wanting.length === 0).toBe(inside);
  });
});

const all = (r: Ran): readonly Judgement[] => r.checked.checks[0]?.judged ?? [];
const of = (r: Ran, code: string): Judgement | undefined => all(r).find((j) => j.code === code);
const withUse = (input: CheckInput, use: Partial<Use>): CheckInput => ({
  ...input,
  piece: { ...input.piece, use: { loads: {}, sag: {}, ...use } },
});
/** The same piece with slides of another length, mm. */
const withSlides = (input: CheckInput, length: number): CheckInput => ({
  ...input,
  piece: {
    ...input.piece,
    hardware: input.piece.hardware.map((h) =>
      h.kind === 'slide' && h.body.op === 'box'
        ? {
            ...h,
            body: { ...h.body, at: [h.body.at[0], [h.body.at[1][0], h.body.at[1][0] + mm(length)], h.body.at[2]] },
          }
        : h,
    ),
  },
});

describe('a chest', () => {
  let kernel: CountedKernel;
  let chest: CheckInput;
  beforeAll(async () => {
    kernel = await createKernel();
    chest = await inputOf(chestDef());
  });
  afterAll(() => kernel.dispose());

  /** Mass and middle front to back of every part by slices of its solid: code of its own, mm and kg. */
  const sliced = (input: CheckInput): { id: string; kg: number; deep: number }[] =>
    input.solids.parts.map((solid) => {
      const part = input.piece.parts.find((p) => p.id === solid.id);
      if (!part) throw new Error(solid.id);
      const recipe = { op: 'placed', by: part.place, of: solid.recipe } as const;
      const [low, high] = kernel.bounds(recipe)?.[1] ?? [0, 0];
      const n = 200;
      let [volume, moment] = [0, 0];
      for (let i = 0; i < n; i++) {
        const y = low + ((high - low) * (i + 0.5)) / n;
        for (const ring of kernel.slice(recipe, [0, y, 0], [1, 0, 0], [0, 0, 1])) {
          let twice = 0;
          ring.forEach(([x0, z0], k) => {
            const [x1, z1] = ring[(k + 1) % ring.length] ?? [0, 0];
            twice += x0 * z1 - x1 * z0;
          });
          volume += ((twice / 2) * (high - low)) / n;
          moment += (((twice / 2) * (high - low)) / n) * y;
        }
      }
      const stock = input.piece.stocks[part.stock];
      const rho = (stock && density(stock.kind, stock.material)) ?? 0;
      return { id: part.id, kg: Math.abs(volume) * 1e-9 * rho, deep: moment / volume };
    });

  it('open and empty: the sum over the solids, taken again by slices, within 1 %', () => {
    const s = stanceOf(chest);
    const j = of(ran(stability, chest), 'tip-open');
    if (!s || !j?.limit) throw new Error('nothing judged');
    expect([s.front, s.floor]).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
    expect(s.back).toBeCloseTo(18 * IN, 6);
    let [holding, tipping] = [0, 0];
    const parts = sliced(chest);
    const drawn = chest.piece.drawers.map((d) => ({ d, own: parts.filter((p) => d.parts.includes(p.id)) }));
    const loose = new Set(drawn.flatMap(({ own }) => own.map((p) => p.id)));
    for (const p of parts.filter((x) => !loose.has(x.id))) holding += (p.kg * G * p.deep) / 1000;
    for (const { own } of drawn) {
      const kg = own.reduce((a, p) => a + p.kg, 0);
      // Slides of 16 in: the longest that an 18 in case takes.
      const deep = own.reduce((a, p) => a + p.kg * p.deep, 0) / kg - 16 * IN;
      tipping -= (kg * G * deep) / 1000;
    }
    expect(j.limit.value / holding).toBeGreaterThan(0.99);
    expect(j.limit.value / holding).toBeLessThan(1.01);
    expect(j.figure.value / tipping).toBeGreaterThan(0.99);
    expect(j.figure.value / tipping).toBeLessThan(1.01);
  });
  it('full adds 8.5 lb/ft3 of each drawer, in the middle of its room', () => {
    const s = stanceOf(chest);
    const r = ran(stability, chest);
    const [open, full] = [of(r, 'tip-open'), of(r, 'tip-full')];
    if (!s || !open || !full) throw new Error('nothing judged');
    const more = s.drawers.reduce(
      (a, d) => a + (FILL * d.volume * G * ((d.room[1][0] + d.room[1][1]) / 2 - 16 * IN)) / 1000,
      0,
    );
    expect(full.figure.value - open.figure.value).toBeCloseTo(-more, 6);
  });
  it('pulled at the top: 10 lbf times its height', () => {
    expect(of(ran(stability, chest), 'tip-push')?.figure.value).toBeCloseTo(10 * LB * G * 40 * 0.0254, 6);
  });
  it('a child hangs at the drawer where it tips most, on carpet; a hard floor is kinder', () => {
    const child = of(ran(stability, chest), 'tip-child');
    const hard = of(ran(stability, withUse(chest, { floor: 'hard' })), 'tip-child');
    expect(child?.about).toMatch(/60\.0 lb at the front of D1.*on carpet.*an estimate, not a test/);
    expect(hard?.about).not.toMatch(/carpet/);
    expect(hard?.margin ?? 0).toBeGreaterThan(child?.margin ?? 9);
  });
  it('fails where the rule applies, warns elsewhere, is silent when it is fixed to the building', () => {
    const verdict = (use: Partial<Use>) => of(ran(stability, withUse(chest, use)), 'tip-child')?.verdict;
    expect(verdict({ kind: 'clothes' })).toBe('fail');
    expect(verdict({ kind: 'office' })).toBe('warning');
    expect(verdict({ kind: 'clothes', fixed: true })).toBeUndefined();
    expect(of(ran(stability, withUse(chest, { kind: 'clothes' })), 'tip-scope')?.verdict).toBe('note');
    expect(of(ran(stability, withUse(chest, { kind: 'office' })), 'tip-scope')?.verdict).toBe('pass');
    expect(of(ran(stability, chest), 'tip-scope')?.remedy).toMatch(/^Say what it is for/);
  });
  it('the remedy holds: with drawers that come out so far and no further it passes', () => {
    const s = stanceOf(chest);
    const c = s && casesOf(s, scopeOf(s)).find((x) => x.code === 'tip-child');
    const most = s && c && travelThatPasses(s, c);
    if (most === undefined) throw new Error('no travel passes');
    expect(of(ran(stability, withSlides(chest, most - 1)), 'tip-child')?.verdict).toBe('pass');
    expect(of(ran(stability, withSlides(chest, most + 1)), 'tip-child')?.verdict).toBe('warning');
  });
  it('draws each case from the pivot: what is open stands in front of it', () => {
    const { diagrams } = ran(stability, chest).checked.checks[0] ?? { diagrams: [] };
    const d = diagrams[0];
    if (d?.kind !== 'tip-over') throw new Error('no diagram');
    expect(d.cases.map((c) => c.name)).toEqual(['All open, empty', 'All open, full', 'Pulled at', 'Child at D1']);
    for (const c of d.cases.slice(0, 2)) {
      expect(c.boxes.filter((b) => b.open).every((b) => b.box[2] > 0)).toBe(true);
      // Level: loads times arms give the balance.
      const net = c.loads.reduce((a, l) => a - (l.newtons * l.x) / 1e9, 0);
      expect(net).toBeCloseTo(c.holding - c.tipping, 6);
    }
  });
});

describe('each finding, and its silent twin', () => {
  it('tip-open: heavy fronts on a light case', async () => {
    const heavy = await inputOf(chestDef({ caseWood: 'yellow-poplar', drawerWood: 'oak-white', front: '2' }));
    expect(ran(stability, heavy).findings.map((f) => f.code)).toContain('tip-open');
    expect(ran(stability, await inputOf(chestDef())).findings.map((f) => f.code)).not.toContain('tip-open');
  });
  it('tip-full, tip-push: shallow; deep with short drawers is silent', async () => {
    const shallow = ran(stability, await inputOf(chestDef({ D: '12', H: '60', rows: ['8', '8', '8', '8', '8'] })));
    const codes = shallow.findings.map((f) => f.code);
    expect(codes).toContain('tip-full');
    expect(codes).toContain('tip-push');
    const short = withSlides(await inputOf(chestDef({ D: '24' })), 100);
    const silent = ran(stability, short).findings.map((f) => f.code);
    for (const code of ['tip-open', 'tip-full', 'tip-push', 'tip-child']) expect(silent).not.toContain(code);
  });
  it('without drawers, and too low or light to fall on anybody: nothing is judged', async () => {
    const stool = {
      stock: { oak: { lumber: 'oak-white', quarter: '8/4' } },
      parts: { block: { stock: 'oak', grain: 'up', across: ['0', '10'], deep: ['0', '1 1/2'], up: ['0', '17'] } },
    };
    expect(all(ran(stability, await inputOf(stool)))).toEqual([]);
  });
});

describe('shipped pieces', () => {
  it.each(['letter-cabinet', 'nightstand'])('%s does not tip by its own drawers', async (name) => {
    const r = ran(stability, await shippedInput(name));
    expect(of(r, 'tip-open')?.verdict).toBe('pass');
    expect(of(r, 'tip-full')?.verdict).toBe('pass');
    expect(r.findings).toEqual([]);
  });
});

describe('what is accepted is not made to pass', () => {
  it('the shipped chest fails two tests of the rule for clothing storage: answered for, and the sheet says what that is worth', async () => {
    const input = await shippedInput('tall-chest');
    const r = ran(stability, input);
    for (const code of ['tip-full', 'tip-child']) {
      const found = r.findings.find((f) => f.code === code);
      expect([found?.severity, of(r, code)?.verdict]).toEqual(['note', 'fail']);
      expect(found?.message).toMatch(/Accepted by sample on .*An acceptance does not make it pass 16 CFR 1261/);
      expect((of(r, code) as Judged | undefined)?.accepted?.why).toContain('not to be sold so');
    }
    expect(r.checked.cautions.map((c) => c.key)).toContain('clothing-rule');
    expect(r.checked.stamp).toBeUndefined();
    const unanswered = ran(stability, { ...input, piece: { ...input.piece, accepted: [] } });
    expect(unanswered.checked.stamp).toMatch(/^NOT FOR WORKSHOP/);
  });
  it('an interlock is among the remedies where one drawer at a time would pass, by hand', async () => {
    const input = await shippedInput('tall-chest');
    const s = stanceOf(input);
    const full = of(ran(stability, input), 'tip-full');
    if (!s) throw new Error('no stance');
    // Shut drawers hold with the case; the one that is out pulls, empty: the worst of five.
    const held = s.still.reduce((a, b) => a + b.kg * (b.centre[1] - s.front), 0);
    const shut = (except: string): number =>
      s.drawers.reduce((a, d) => a + (d.drawer.id === except ? 0 : d.kg * (d.centre[1] - s.front)), 0);
    const ratios = s.drawers.map((d) => (held + shut(d.drawer.id)) / (d.kg * (d.travel - d.centre[1] + s.front)));
    expect(Math.min(...ratios) >= 1.1).toBe(full?.remedy?.includes('one drawer out at a time'));
    expect(Math.min(...ratios)).toBeGreaterThan(1.1);
  });
});
