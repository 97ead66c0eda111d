import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SheetLayout } from '../../src/layout/layout.js';
import { nestSheets, type NestJob, type NestStock } from '../../src/layout/nest.js';
import { inches } from '../../src/lengths/length.js';
import { faults } from './check.js';
import { sequence } from './random.js';

const item = (part: string, length: number, width: number, mayTurn = false) => ({
  part,
  length: inches(length),
  width: inches(width),
  mayTurn,
});
const sheet = (length: number, width: number, more: Partial<NestStock['sheets'][number]> = {}) => ({
  length: inches(length),
  width: inches(width),
  ...more,
});
const job = (sheets: NestStock['sheets'], items: NestStock['items'], more: Partial<NestJob> = {}): NestJob => ({
  stocks: [{ id: 'ply', grain: 'length', sheets, items }],
  kerf: inches(1 / 8),
  trim: 0,
  ...more,
});
const taken = (asked: NestJob) => {
  const layout = nestSheets(asked);
  for (const s of layout.sheets) expect(faults(s, asked)).toEqual([]);
  const [count] = layout.counts;
  return { names: layout.sheets.map((s) => s.rack ?? `${s.length / inches(1)} x ${s.width / inches(1)}`), count };
};

describe('which sheets are taken (sums by hand)', () => {
  const four = ['a', 'b', 'c', 'd'].map((p) => item(p, 29, 29));
  it('the cheaper of two sizes, and the other when it costs less', () => {
    // Four of 29 x 29 fill 60 x 60 by two and two; 96 x 48 holds three in a row.
    const small = taken(job([sheet(96, 48, { price: 60 }), sheet(60, 60, { price: 42 })], four));
    expect(small).toMatchObject({ names: ['60 x 60'], count: { cost: 42, proved: true, choice: true } });
    const large = taken(job([sheet(96, 48, { price: 20 }), sheet(60, 60, { price: 42 })], four));
    expect(large).toMatchObject({ names: ['96 x 48', '96 x 48'], count: { cost: 40, proved: true } });
  });
  it('an offcut first, where it saves a sheet or a dearer one; not where a sheet is bought anyway', () => {
    const rack = [sheet(30, 30, { name: 'K1' }), sheet(29, 31, { name: 'K2' })];
    expect(taken(job([sheet(96, 48), ...rack], four.slice(0, 1))).names).toEqual(['K2']);
    expect(taken(job([sheet(96, 48), ...rack], four)).names.sort()).toEqual(['96 x 48', 'K2']);
    expect(taken(job([sheet(96, 48), ...rack], four.slice(0, 3))).names).toEqual(['96 x 48']);
  });
  it('no more of a size than there are', () => {
    const few = job(
      [sheet(96, 48, { price: 60 }), sheet(60, 60, { price: 42, count: 1 })],
      [...four, ...four.map((f) => ({ ...f, part: `${f.part}2` }))],
    );
    const { names, count } = taken(few);
    expect(names.filter((n) => n === '60 x 60')).toHaveLength(1);
    expect(count?.cost).toBe(42 + 2 * 60);
  });
});

/** Depth of every cut by sawing alone: how often the direction has changed on the way to it. */
function stageFaults(s: SheetLayout, stages: number, first: 'rip' | 'cross' | 'either'): string[] {
  const out: string[] = [];
  interface Lump {
    readonly x: number;
    readonly y: number;
    readonly w: number;
    readonly h: number;
    readonly way: string;
    readonly depth: number;
  }
  const start = { x: 0, y: 0, w: s.length - s.trim, h: s.width - s.trim };
  const way = first === 'either' ? '' : first === 'rip' ? 'cross' : 'rip';
  let lumps: Lump[] = [{ ...start, way, depth: first === 'either' ? 0 : 0 }];
  const named = (b: { x: number; y: number; w: number; h: number }): string => `${b.x} ${b.y} ${b.w} ${b.h}`;
  const pieces = new Set(s.pieces.map(named));
  for (const cut of s.cuts.filter((c) => c.kind !== 'trim')) {
    const upright = cut.kind === 'cross';
    const at = upright ? cut.from[0] : cut.from[1];
    const other = upright ? cut.from[1] : cut.from[0];
    const lump = lumps.find((l) =>
      upright
        ? at > l.x && at - s.kerf / 2 < l.x + l.w && other === l.y && cut.to[1] === l.y + l.h
        : at > l.y && at - s.kerf / 2 < l.y + l.h && other === l.x && cut.to[0] === l.x + l.w,
    );
    if (!lump) return [`cut ${cut.number} goes through nothing`];
    // Against the first direction from the start: that one was passed over.
    const passed = lump.depth === 0 && first !== 'either' && cut.kind !== first ? 1 : 0;
    const depth = (cut.kind === lump.way && lump.depth > 0 ? lump.depth : lump.depth + 1) + passed;
    const half = s.kerf / 2;
    const halves = upright
      ? [
          { ...lump, w: at - half - lump.x },
          { ...lump, x: at + half, w: lump.x + lump.w - at - half },
        ]
      : [
          { ...lump, h: at - half - lump.y },
          { ...lump, y: at + half, h: lump.y + lump.h - at - half },
        ];
    const toSize = halves.some((b) => pieces.has(named(b)));
    if (depth > stages && !(toSize && depth === stages + 1)) out.push(`cut ${cut.number} is of stage ${depth}`);
    lumps = [...lumps.filter((l) => l !== lump), ...halves.map((b) => ({ ...b, way: cut.kind as string, depth }))];
  }
  return out;
}

describe('random jobs with several sizes, offcuts, spares and rules of sawing', () => {
  const part = fc.record({
    l: fc.integer({ min: 32, max: 700 }),
    w: fc.integer({ min: 32, max: 500 }),
    turn: fc.boolean(),
    n: fc.integer({ min: 1, max: 3 }),
  });
  const offcut = fc.record({ l: fc.integer({ min: 150, max: 900 }), w: fc.integer({ min: 150, max: 700 }) });
  it('every sheet passes the checker, stages too; nothing is lost; no offcut is cut up twice', () => {
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 6 }),
        fc.array(offcut, { maxLength: 3 }),
        fc.constantFrom(2, 3, Infinity),
        fc.constantFrom('rip' as const, 'cross' as const, 'either' as const),
        fc.constantFrom('length' as const, 'width' as const, 'none' as const),
        (parts, offcuts, stages, first, grain) => {
          const items = parts.flatMap((p, i) =>
            Array.from({ length: p.n }, (_, k) => item(`p${i}.${k}`, p.l / 16, p.w / 16, p.turn)),
          );
          const sheets = [
            sheet(96, 48, { price: 60 }),
            sheet(60, 60, { price: 42 }),
            ...offcuts.map((o, i) => sheet(o.l / 16, o.w / 16, { name: `K${i}` })),
          ];
          const base = job(sheets, items, { stages, first, budget: 60, trim: inches(1 / 4) });
          const asked: NestJob = { ...base, stocks: base.stocks.map((s) => ({ ...s, grain })) };
          const layout = nestSheets(asked);
          for (const s of layout.sheets) {
            expect(faults(s, asked)).toEqual([]);
            expect(stageFaults(s, stages, first)).toEqual([]);
          }
          const laid = [
            ...layout.sheets.flatMap((s) => s.pieces.map((p) => p.part)),
            ...layout.unplaced.map((u) => u.part),
          ];
          expect(laid.sort()).toEqual(items.map((i) => i.part).sort());
          const racks = layout.sheets.flatMap((s) => s.rack ?? []);
          expect(new Set(racks).size).toBe(racks.length);
        },
      ),
      { seed: 20261125, numRuns: 80 },
    );
  });
});

describe('a sheet cut up at random', () => {
  it('is put together again, and says so', () => {
    const next = sequence(17);
    for (let n = 0; n < 25; n++) {
      const kerf = n % 3;
      let lumps = [{ w: 960, h: 480 }];
      const wanted = 4 + next(5);
      for (let tries = 0; lumps.length < wanted && tries < 100; tries++) {
        const at = next(lumps.length) - 1;
        const lump = lumps[at] as { w: number; h: number };
        const upright = next(2) === 1;
        const size = upright ? lump.w : lump.h;
        if (size < 120) continue;
        const cut = 40 + next(size - 90);
        const halves = upright
          ? [
              { ...lump, w: cut },
              { ...lump, w: size - cut - kerf },
            ]
          : [
              { ...lump, h: cut },
              { ...lump, h: size - cut - kerf },
            ];
        lumps = [...lumps.filter((_, i) => i !== at), ...halves];
      }
      const asked: NestJob = {
        kerf,
        trim: 0,
        stages: Infinity,
        budget: 2000,
        stocks: [
          {
            id: 's',
            grain: 'length',
            sheets: [{ length: 960, width: 480 }],
            items: lumps.map((l, i) => ({ part: `p${i}`, length: l.w, width: l.h, mayTurn: false })),
          },
        ],
      };
      const layout = nestSheets(asked);
      expect(layout.counts[0]).toMatchObject({ used: 1, proved: true });
      for (const s of layout.sheets) expect(faults(s, asked)).toEqual([]);
    }
  });
});

describe('what one person steers', () => {
  const asked = (alone?: readonly [number, number]): NestJob =>
    job([sheet(96, 48)], [item('a', 40, 20), item('b', 40, 20), item('c', 30, 44)], {
      trim: inches(1 / 4),
      ...(alone ? { alone: [inches(alone[0]), inches(alone[1])] } : {}),
    });
  it('cuts of a larger piece are marked, and no others', () => {
    const [s] = nestSheets(asked([60, 50])).sheets;
    // The raw sheet is 96 long; what is left after the first crosscut of 40 or so is under 60.
    const marked = s?.cuts.filter((c) => c.helper).map((c) => c.kind) ?? [];
    expect(marked).toEqual(['trim', 'trim', 'cross']);
    expect(nestSheets(asked()).sheets[0]?.cuts.some((c) => c.helper)).toBe(false);
  });
});
