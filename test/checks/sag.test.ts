import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CheckInput, Judgement, SagSpan } from '../../src/checks/check.js';
import { partBodies } from '../../src/checks/bodies.js';
import { drawerRooms } from '../../src/checks/drawerRoom.js';
import { sag } from '../../src/checks/sag.js';
import { flow } from '../../src/checks/sag/flow.js';
import { frameOf, onFloor } from '../../src/checks/sag/frame.js';
import { drawerLoads, uprightWeights, useLoads, type Load } from '../../src/checks/sag/loads.js';
import { stretchesOf } from '../../src/checks/sag/spans.js';
import { speciesById } from '../../src/data/species.js';
import type { Use } from '../../src/piece/piece.js';
import { chestDef } from './chest.js';
import { inputOf, ran, shippedInput, type Ran } from './run.js';

const IN = 25.4e6;
const PSI = 6894.757293168;
const LBF = 4.4482216152605;

const stock = {
  oak: { lumber: 'oak-red', quarter: '4/4' },
  heavy: { lumber: 'oak-red', quarter: '8/4' },
  pine: { lumber: 'pine-eastern-white', quarter: '4/4' },
  ply: { sheet: 'plywood-birch', nominal: '3/4', thickness: '0.72', size: ['96', '48'], grain: 'length' },
  mdf: { sheet: 'mdf', nominal: '3/4', thickness: '0.75', size: ['96', '48'] },
};
const ends = {
  l: { mark: 'A1', stock: 'oak', grain: 'up', across: ['0', '3/4'], deep: ['0', '10'], up: ['0', '30'] },
  r: { mark: 'A2', mirror: 'l', about: 'W / 2' },
};
interface Shelf {
  readonly free?: string;
  readonly wood?: string;
  readonly thick?: string;
  readonly kind?: Use['kind'];
  readonly parts?: object;
  readonly joints?: object;
  readonly use?: object;
}
/** A shelf 10 in deep, housed between two ends. */
const shelf = ({
  free = '36',
  wood = 'oak',
  thick = '3/4',
  kind = 'books',
  parts,
  joints,
  use,
}: Shelf = {}): object => ({
  measures: { W: `${free} + 1 1/2` },
  stock,
  parts: {
    ...ends,
    s: {
      mark: 'S1',
      stock: wood,
      grain: 'across',
      across: ['l', 'r'],
      deep: ['0', '10'],
      up: wood === 'ply' || wood === 'mdf' ? { from: '12' } : { from: '12', size: thick },
    },
    ...parts,
  },
  joints: { housed: { kind: 'dado', part: 's', into: ['l', 'r'] }, ...joints },
  use: { kind, ...use },
});
const judged = (r: Ran): readonly Judgement[] => r.checked.checks[0]?.judged ?? [];
const find = (r: Ran, code: string, subject: string): Judgement => {
  const j = judged(r).find((x) => x.code === code && x.subject === subject);
  if (!j)
    throw new Error(
      `${code} of ${subject} not judged: ${judged(r)
        .map((x) => `${x.code} ${x.subject}`)
        .join(', ')}`,
    );
  return j;
};
const spans = (r: Ran): readonly SagSpan[] => {
  const d = r.checked.checks[0]?.diagrams[0];
  return d?.kind === 'sag' ? d.spans : [];
};
const sagOf = async (def: object, subject = 'S1'): Promise<{ now: number; later: number; r: Ran }> => {
  const r = ran(sag, await inputOf(def));
  return {
    now: find(r, 'sag-now', subject).figure.value / IN,
    later: find(r, 'sag-later', subject).figure.value / IN,
    r,
  };
};

describe('a housed shelf', () => {
  it('of red oak, 36 x 10 x 3/4, books: by hand', async () => {
    const { now, later, r } = await sagOf(shelf());
    const oak = speciesById('oak-red');
    if (!oak) throw new Error('no oak');
    const e = oak.stiffness.value / PSI;
    // 50 lb/ft2 on 2.5 ft2, and its own 270 in3 at 62.43 x .63 x 1.12 lb/ft3; 5/384 W L3 / (E I), I = 10 x .75^3 / 12.
    const w = 125 + (270 / 1728) * 62.43 * 0.63 * 1.12;
    const hand = (5 * w * 36 ** 3) / (384 * e * ((10 * 0.75 ** 3) / 12));
    expect(now).toBeCloseTo(hand, 3);
    expect(later / now).toBeCloseTo(1.5, 2);
    expect(spans(r)[0]).toMatchObject({ subject: 'S1', span: 36 * IN, supports: 'rests' });
  });
  it('carries 200 lb at most, however large', async () => {
    const e = (speciesById('oak-red')?.stiffness.value ?? 0) / PSI;
    const own = (60 * 7.5 * 62.43 * 0.63 * 1.12) / 1728;
    const hand = (load: number): number => (5 * (load + own) * 60 ** 3) / (384 * e * ((10 * 0.75 ** 3) / 12));
    // 60 x 10 in are 4.17 ft2: 40 lb/ft2 make 167 lb, 50 lb/ft2 would make 208.
    expect((await sagOf(shelf({ free: '60', kind: 'other' }))).now).toBeCloseTo(hand((40 * 600) / 144), 2);
    expect((await sagOf(shelf({ free: '60' }))).now).toBeCloseTo(hand(200), 2);
  });
  it('carries what is said, over all or in the middle', async () => {
    const e = (speciesById('oak-red')?.stiffness.value ?? 0) / PSI;
    const i = (10 * 0.75 ** 3) / 12;
    const own = (270 / 1728) * 62.43 * 0.63 * 1.12;
    const { now } = await sagOf(shelf({ use: { loads: { s: { middle: 50 } } } }));
    expect(now).toBeCloseTo((50 * 36 ** 3) / (48 * e * i) + (5 * own * 36 ** 3) / (384 * e * i), 3);
    const even = await sagOf(shelf({ use: { loads: { s: { perArea: 20 } } } }));
    expect(even.now).toBeCloseTo((5 * (50 + own) * 36 ** 3) / (384 * e * i), 3);
  });
  it('thinner sags more, by about the cube', async () => {
    const [thin, thick] = [await sagOf(shelf({ thick: '5/8' })), await sagOf(shelf({ thick: '3/4' }))];
    expect(thin.now / thick.now).toBeGreaterThan(0.97 * (0.75 / 0.625) ** 3);
    expect(thin.now / thick.now).toBeLessThan((0.75 / 0.625) ** 3);
  });
  it('of sheet goods creeps more', async () => {
    const [ply, mdf] = [await sagOf(shelf({ wood: 'ply' })), await sagOf(shelf({ wood: 'mdf' }))];
    expect(ply.later / ply.now).toBeCloseTo(2, 2);
    expect(mdf.later / mdf.now).toBeCloseTo(3.25, 2);
    expect(mdf.now).toBeGreaterThan(ply.now);
  });
});

describe('each finding, and its silent twin', () => {
  it('sag-now fails and sag-later warns on 60 in of pine; 20 in is silent', async () => {
    const long = ran(sag, await inputOf(shelf({ free: '60', wood: 'pine' })));
    expect(find(long, 'sag-now', 'S1').verdict).toBe('fail');
    expect(find(long, 'sag-later', 'S1').verdict).toBe('warning');
    expect(long.findings.map((f) => f.severity).sort()).toEqual(['fail', 'warning']);
    expect(long.findings[0]?.path).toEqual(['parts', 's']);
    expect(ran(sag, await inputOf(shelf({ free: '20', wood: 'pine' }))).findings).toEqual([]);
  });
  it('one limit chosen for a part stands over the usual', async () => {
    const at = async (n: number) =>
      find(ran(sag, await inputOf(shelf({ free: '30', use: { sag: { s: n } } }))), 'sag-later', 'S1');
    const strict = await at(1000);
    expect(strict.verdict).toBe('warning');
    expect(strict.limit?.value).toBeCloseTo((30 * IN) / 1000, -4);
    expect((await at(150)).verdict).toBe('pass');
  });
  it('its remedies hold: thicker, another wood, borne in the middle', async () => {
    const r = ran(sag, await inputOf(shelf()));
    const { remedy } = find(r, 'sag-later', 'S1');
    expect(remedy).toMatch(/^Make it 13\/16 thick/);
    expect(ran(sag, await inputOf(shelf({ thick: '13/16' }))).findings).toEqual([]);
    expect(remedy).toMatch(/bear it in the middle/);
    const middle = {
      mark: 'A3',
      stock: 'oak',
      grain: 'up',
      across: { mid: 'W / 2', size: '3/4' },
      deep: ['0', '10'],
      up: ['0', 's.bottom'],
    };
    const borne = ran(sag, await inputOf(shelf({ parts: { m: middle } })));
    expect(borne.findings).toEqual([]);
    expect(spans(borne)[0]?.span).toBe((36 - 0.75) * (IN / 2));
    const soft = find(ran(sag, await inputOf(shelf({ free: '35', wood: 'pine' }))), 'sag-later', 'S1').remedy ?? '';
    const named = /take ([a-z -]+)/.exec(soft)?.[1];
    expect(named).toBeDefined();
  });
});

describe('what holds and what helps', () => {
  it('a front edge glued on bends with it, about one neutral line: half the sag', async () => {
    const edge = {
      n: {
        mark: 'N1',
        stock: 'oak',
        grain: 'across',
        across: ['l', 'r'],
        deep: { to: '0', size: '3/4' },
        up: { to: 's.top', size: '1 1/2' },
      },
    };
    const plain = await sagOf(shelf());
    const { now } = await sagOf(shelf({ parts: edge, joints: { nose: { kind: 'butt', part: 'n', into: 's' } } }));
    // I by hand .7001 in4 against .3516; a pound more of wood.
    expect(now / plain.now).toBeCloseTo((0.3516 / 0.7001) * (133 / 132), 2);
  });
  it('rabbets that lie over one another at its corners take the wood there once', async () => {
    // 1 in thick, rabbeted 1/2 x 1/2 underneath on all four edges, or on the front and back alone: the ends, where nothing
    // is borne, add little; taken twice at the corners they would leave nothing.
    const rabbet = (edge: string): object => ({ cut: 'rabbet', face: 'bottom', edge, on: '1/2', into: '1/2' });
    const s = (edges: string[]): object => ({
      mark: 'S1',
      stock: 'heavy',
      grain: 'across',
      across: ['l', 'r'],
      deep: ['0', '10'],
      up: { from: '12', size: '1' },
      shape: edges.map(rabbet),
    });
    const two = await sagOf(shelf({ parts: { s: s(['front', 'back']) } }));
    const four = await sagOf(shelf({ parts: { s: s(['front', 'back', 'left', 'right']) } }));
    // By hand: a T of 10 x 1/2 over 9 x 1/2 against 10 x 1: I .7899 of .8333 in4.
    const whole = await sagOf(shelf({ parts: { s: s([]) } }));
    expect(two.now / whole.now).toBeCloseTo(0.8333 / 0.7899, 1);
    expect(four.now / two.now).toBeGreaterThanOrEqual(1);
    expect(four.now / two.now).toBeLessThan(1.05);
  });
  it('a notch across it weakens it', async () => {
    const cut = {
      s: {
        mark: 'S1',
        stock: 'heavy',
        grain: 'across',
        across: ['l', 'r'],
        deep: ['0', '10'],
        up: { from: '12', size: '1' },
      },
    };
    const lap = {
      c: {
        mark: 'C1',
        stock: 'oak',
        grain: 'up',
        across: { mid: 'W / 2', size: '3/4' },
        deep: ['0', '10'],
        up: ['s.top', '30'],
      },
    };
    const housed = { over: { kind: 'dado', part: 'c', into: 's', depth: '1/2' } };
    const plain = await sagOf(shelf({ parts: cut }));
    const { now } = await sagOf(shelf({ parts: { ...cut, ...lap }, joints: housed }));
    expect(now).toBeGreaterThan(plain.now * 1.05);
  });
  it('a seat on splayed legs spans between their heads, not their feet', async () => {
    const text = readFileSync(new URL('../specimens/small/splayed-stool.jsonc', import.meta.url), 'utf8');
    const r = ran(sag, await inputOf(text));
    const span = (spans(r).find((s) => s.subject === 'S1')?.span ?? 0) / IN;
    // Heads 3 in from either end of 16 in, about an inch and a half wide.
    expect(span).toBeGreaterThan(16 - 6 - 2);
    expect(span).toBeLessThan(16 - 6);
  });
  it('what juts out is held at one end', async () => {
    const def = {
      measures: { W: '40' },
      stock,
      parts: {
        a: { mark: 'A1', stock: 'oak', grain: 'up', across: ['12', '12 3/4'], deep: ['0', '10'], up: ['0', '20'] },
        b: { mark: 'A2', stock: 'oak', grain: 'up', across: ['26', '26 3/4'], deep: ['0', '10'], up: ['0', '20'] },
        s: {
          mark: 'S1',
          stock: 'oak',
          grain: 'across',
          across: ['0', 'W'],
          deep: ['0', '10'],
          up: { from: '20', size: '3/4' },
        },
      },
      joints: {},
      use: { kind: 'other' },
    };
    const r = ran(sag, await inputOf(def));
    expect(spans(r)).toEqual([expect.objectContaining({ supports: 'one end', span: 13.25 * IN })]);
    const e = (speciesById('oak-red')?.stiffness.value ?? 0) / PSI;
    const w = 40 / 144 + 0.75 * ((62.43 * 0.63 * 1.12) / 1728);
    const hand = (w * 10 * 13.25 ** 4) / (8 * e * ((10 * 0.75 ** 3) / 12));
    expect(find(r, 'sag-now', 'S1').figure.value / IN).toBeCloseTo(hand, 3);
  });
  it('a lower shelf that a divider stands on bends with the upper one; with a foot under it, it does not', async () => {
    const two = (foot: boolean): Shelf => ({
      free: '36',
      parts: {
        s2: {
          mark: 'S2',
          stock: 'oak',
          grain: 'across',
          across: ['l', 'r'],
          deep: ['0', '10'],
          up: { from: '26', size: '3/4' },
        },
        d: {
          mark: 'D1',
          stock: 'oak',
          grain: 'up',
          across: { mid: 'W / 2', size: '3/4' },
          deep: ['0', '10'],
          up: ['s', 's2'],
        },
        ...(foot
          ? {
              f: {
                mark: 'D2',
                stock: 'oak',
                grain: 'up',
                across: { mid: 'W / 2', size: '3/4' },
                deep: ['0', '10'],
                up: ['0', 's.bottom'],
              },
            }
          : {}),
      },
      joints: { housed_2: { kind: 'dado', part: 's2', into: ['l', 'r'] } },
    });
    const hung = ran(sag, await inputOf(shelf(two(false))));
    // Two alike bear two loads and a divider of 12 x 10 x 3/4: as one bears one and half of a pound and a half in its middle.
    const one = await sagOf(shelf());
    expect(spans(hung)).toHaveLength(1);
    expect(spans(hung)[0]?.span).toBe(36 * IN);
    expect((spans(hung)[0]?.sag ?? 0) / IN / one.now).toBeGreaterThan(1);
    expect((spans(hung)[0]?.sag ?? 0) / IN / one.now).toBeLessThan(1.03);
    const stood = spans(ran(sag, await inputOf(shelf(two(true)))));
    expect(stood.every((s) => s.span < 18 * IN)).toBe(true);
  });
});

describe('a shelf on pins, which no joint bears', () => {
  it('is taken to rest at its two ends', async () => {
    const pins = {
      s: {
        mark: 'S1',
        stock: 'oak',
        grain: 'across',
        across: ['l.right + 1/16', 'r.left - 1/16'],
        deep: ['0', '10'],
        up: { from: '12', size: '3/4' },
      },
    };
    const def = shelf({ parts: pins }) as { joints: object };
    const r = ran(sag, await inputOf({ ...def, joints: {} }));
    expect(spans(r)[0]?.span).toBe((36 - 1 / 8) * IN);
  });
});

describe('loads go down', () => {
  it.each(['letter-cabinet', 'nightstand', 'tall-chest'])(
    '%s: what comes to rest is what was put on and weighs',
    async (name) => {
      const input = await shippedInput(name);
      const f = frameOf(input.piece, partBodies(input));
      const bodies = partBodies(input);
      const rooms = drawerRooms(input.piece, bodies);
      const { bends, rest } = flow(f, bodies, rooms);
      const sum = (loads: readonly Load[]): number => loads.reduce((t, l) => t + l.newtons, 0);
      const put = f.members.flatMap((m) => useLoads(f, m, rooms));
      const hung = [...drawerLoads(f, rooms), ...uprightWeights(f, bodies)].map(([, l]) => l);
      const whole = sum(put) + sum(hung) + sum(bends.map((b) => b.own));
      expect(rest / whole).toBeCloseTo(1, 9);
    },
  );
  it('a stool of four legs spans once, between them', async () => {
    const leg = (x: string, y: string) => ({
      stock: 'heavy',
      grain: 'up',
      across: { from: x, size: '1 1/2' },
      deep: { from: y, size: '1 1/2' },
      up: ['0', '17'],
    });
    const input = await inputOf({
      measures: { W: '18' },
      stock,
      parts: {
        a: leg('0', '0'),
        b: leg('16 1/2', '0'),
        c: leg('0', '12'),
        d: leg('16 1/2', '12'),
        s: {
          mark: 'S1',
          stock: 'oak',
          grain: 'across',
          across: ['0', 'W'],
          deep: ['0', '13 1/2'],
          up: ['17', '17 3/4'],
        },
      },
      joints: {},
      use: { kind: 'seat' },
    });
    const r = ran(sag, input);
    expect(find(r, 'sag-now', 'S1').worked.inputs.map((i) => i.name)).toContain('somebody sits down');
    const f = frameOf(input.piece, partBodies(input));
    const seat = f.members.find((m) => m.part.id === 's');
    expect(seat && stretchesOf(f, seat).filter((s) => s.supports === 'rests').length).toBe(1);
    expect(f.members.filter((m) => onFloor(f, m))).toHaveLength(4);
  });
  it('a drawer on slides hangs on the divider, and so on the rail under it', async () => {
    const chest = await shippedInput('tall-chest');
    const f = frameOf(chest.piece, partBodies(chest));
    const bodies = partBodies(chest);
    const rooms = drawerRooms(chest.piece, bodies);
    const rail = flow(f, bodies, rooms).bends.find((b) => b.member.part.id === 'rail_1');
    const names = rail?.loads.map((l) => l.input.name) ?? [];
    expect(names).toContain('of D1, full');
    expect(names).toContain('of D2, full');
    // A divider on a front and a back rail: each bears a half of a half.
    const of = rail?.loads.find((l) => l.input.name === 'of D1, full')?.newtons ?? 0;
    const d1 = rooms.find((x) => x.drawer.mark === 'D1');
    expect(of / LBF).toBeCloseTo(
      ((d1?.kg ?? 0) + 8.5 * 0.45359237 * ((d1?.volume ?? 0) / 0.3048 ** 3)) / 0.45359237 / 4,
      6,
    );
  });
});

describe('drawer bottoms', () => {
  it('bear 15 lb/ft2; a thin one over a wide drawer warns, a thick one is silent', async () => {
    const wide = (thickness: string): object => {
      const def = chestDef({ W: '46', D: '24', rows: ['12'], H: '16' }) as { stock: Record<string, object> };
      return {
        ...def,
        stock: {
          ...def.stock,
          ply: { sheet: 'plywood-birch', nominal: '1/4', thickness, size: ['96', '48'], grain: 'length' },
        },
      };
    };
    const thin = ran(sag, await inputOf(wide('0.205')));
    const bottom = judged(thin).filter((j) => j.subject.startsWith('D1.'));
    expect(bottom.map((j) => [j.code, j.verdict])).toEqual([['sag-later', 'warning']]);
    expect(bottom[0]?.about).toMatch(/under 15\.0 lb\/ft²$/);
    expect(bottom[0]?.remedy).toMatch(/^Make it (3\/8|1\/2) thick/);
    const thick = ran(sag, await inputOf(wide('0.47')));
    expect(judged(thick).filter((j) => j.subject.startsWith('D1.') && j.verdict !== 'pass')).toEqual([]);
  });
});

describe('a rail over a drawer front', () => {
  const chest = (top: string): string =>
    readFileSync(new URL('../../templates/pieces/tall-chest.jsonc', import.meta.url), 'utf8')
      .replace('"W": "36"', '"W": "48"')
      .replace('"quarter": "5/4"', '"quarter": "8/4"')
      .replace('"up": { "to": "H", "size": "7/8" }', `"up": { "to": "H", "size": "${top}" }`);
  it('may sag by the gap that the front leaves, and is told with what would help: a thicker top', async () => {
    const r = ran(sag, await inputOf(chest('7/8')));
    const rail = find(r, 'sag-later', 'R1');
    expect(rail.verdict).toBe('warning');
    expect(rail.limit?.value).toBeLessThan(0.1 * IN);
    expect(rail.worked.sources[0]).toMatch(/gap over D3/);
    const thick = /^Make A3 ([\d /]+) thick/.exec(rail.remedy ?? '')?.[1];
    if (thick === undefined) throw new Error(rail.remedy);
    expect(find(ran(sag, await inputOf(chest(thick))), 'sag-later', 'R1').verdict).toBe('pass');
    // The rail behind it has only the box under it, well below.
    expect(r.findings.some((f) => f.message.startsWith('B1'))).toBe(false);
  });
});

describe('shipped pieces', () => {
  it.each(['letter-cabinet', 'nightstand', 'tall-chest'])('%s holds', async (name) => {
    const r = ran(sag, await shippedInput(name));
    expect(r.findings).toEqual([]);
    expect(judged(r).length).toBeGreaterThan(0);
  });
  it('the same twice, and plain data', async () => {
    const input: CheckInput = await shippedInput('tall-chest');
    const a = ran(sag, input).checked;
    expect(ran(sag, input).checked).toEqual(a);
    expect(JSON.parse(JSON.stringify(a))).toEqual(a);
  });
});
