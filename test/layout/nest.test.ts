import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetBound } from '../../src/layout/bound.js';
import { fenceSettings } from '../../src/layout/cuts.js';
import { nestSheets, type NestJob } from '../../src/layout/nest.js';
import { inches, mm, toIn } from '../../src/lengths/length.js';
import { faults } from './check.js';

const item = (part: string, length: number, width: number, mayTurn = false) => ({
  part,
  mark: part,
  length: inches(length),
  width: inches(width),
  mayTurn,
});
const job = (items: ReturnType<typeof item>[], more: Partial<NestJob> = {}): NestJob => ({
  stocks: [{ id: 'ply', sheets: [{ length: inches(96), width: inches(48) }], grain: 'length', items }],
  kerf: inches(1 / 8),
  trim: inches(1 / 4),
  ...more,
});

describe('the back and two short bottoms of a chest, 96 x 48, kerf 1/8, trim 1/4 (worked by hand)', () => {
  const chest = job([item('A7', 33, 34.9375), item('D1.6', 15.4375, 15.15625), item('D2.6', 15.4375, 15.15625)]);
  const layout = nestSheets(chest);
  const sheet = layout.sheets[0];
  if (!sheet) throw new Error('no sheet');

  it('takes one sheet, seven cuts, five settings of the fence', () => {
    expect(layout.counts).toEqual([{ stock: 'ply', used: 1, bound: 1, proved: true }]);
    expect(sheet.cuts.map((c) => [c.number, c.kind, toIn(c.fence), c.against, c.leaves])).toEqual([
      [1, 'trim', 0.25, 'a long edge', 'edge 1'],
      [2, 'trim', 0.25, 'an end, square to edge 1', 'end 2'],
      [3, 'cross', 33, 'end 2', 'strip of A7'],
      [4, 'cross', 15.4375, 'end 3', 'strip of D1.6 D2.6, leaves O3'],
      [5, 'rip', 34.9375, 'edge 1', 'A7, leaves O1'],
      [6, 'rip', 15.15625, 'edge 1', 'D1.6'],
      [7, 'rip', 15.15625, 'edge 6', 'D2.6, leaves O2'],
    ]);
    expect(fenceSettings(sheet.cuts)).toBe(5);
  });
  it('keeps three offcuts of the sizes that the sums give', () => {
    expect(sheet.offcuts.map((o) => [o.name, toIn(o.w), toIn(o.h), o.keep])).toEqual([
      ['O1', 33, 12.6875, true],
      ['O2', 15.4375, 17.1875, true],
      ['O3', 47.0625, 47.75, true],
    ]);
  });
  it('passes the checker, which finds what is wrong when something is', () => {
    expect(faults(sheet, chest)).toEqual([]);
    const [first, ...rest] = sheet.pieces;
    if (!first) throw new Error('no piece');
    expect(faults({ ...sheet, pieces: [{ ...first, x: first.x + 1 }, ...rest] }, chest)).not.toEqual([]);
    expect(faults({ ...sheet, pieces: [{ ...first, turned: true }, ...rest] }, chest)).not.toEqual([]);
    expect(faults({ ...sheet, cuts: [...sheet.cuts].reverse() }, chest)).not.toEqual([]);
    expect(faults({ ...sheet, cuts: sheet.cuts.slice(0, 6) }, chest)).not.toEqual([]);
  });
});

describe('edge cases', () => {
  it('says what does not fit, and why', () => {
    const layout = nestSheets(job([item('long', 97, 10), item('wide', 40, 50), item('ok', 10, 10)]));
    expect(layout.unplaced).toEqual([
      { part: 'long', why: 'it is larger than the sheet less its trim' },
      { part: 'wide', why: 'it fits the sheet only with its grain across' },
    ]);
    expect(layout.sheets.flatMap((s) => s.pieces.map((p) => p.part))).toEqual(['ok']);
  });
  it('makes no cut where a part fills the sheet, and none of an offcut thinner than the kerf', () => {
    const whole = nestSheets(job([item('a', 95.75, 47.75)]));
    expect(whole.sheets[0]?.cuts.map((c) => c.kind)).toEqual(['trim', 'trim']);
    expect(whole.sheets[0]?.offcuts).toEqual([]);
    const thin = job([item('a', 95.75 - 1 / 16, 47.75)]);
    const cut = nestSheets(thin);
    expect(cut.sheets[0]?.cuts.map((c) => c.kind)).toEqual(['trim', 'trim', 'cross']);
    expect(cut.sheets[0]?.offcuts).toEqual([]);
    expect(faults(cut.sheets[0] ?? (undefined as never), thin)).toEqual([]);
  });
  it('two halves with the kerf between them fill a sheet exactly; a hair more takes two sheets', () => {
    const half = (95.75 - 1 / 8) / 2;
    expect(nestSheets(job([item('a', half, 47.75), item('b', half, 47.75)])).counts).toEqual([
      { stock: 'ply', used: 1, bound: 1, proved: true },
    ]);
    expect(nestSheets(job([item('a', half, 47.75), item('b', half + 1 / 64, 47.75)])).counts).toEqual([
      { stock: 'ply', used: 2, bound: 2, proved: true },
    ]);
  });
  it('turns what may be turned, and nothing else', () => {
    expect(nestSheets(job([item('a', 47, 60, true)])).sheets[0]?.pieces[0]?.turned).toBe(true);
    expect(nestSheets(job([item('a', 47, 60, false)])).unplaced).toHaveLength(1);
  });
  it('lays the grain across when the sheet has it so', () => {
    const across: NestJob = {
      kerf: mm(3.2),
      trim: 0,
      stocks: [
        {
          id: 's',
          sheets: [{ length: mm(2440), width: mm(1220) }],
          grain: 'width',
          items: [{ part: 'a', length: mm(1200), width: mm(2400), mayTurn: false }],
        },
      ],
    };
    const layout = nestSheets(across);
    expect(layout.sheets[0]?.pieces[0]).toMatchObject({ w: mm(2400), h: mm(1200), turned: false });
    expect(faults(layout.sheets[0] ?? (undefined as never), across)).toEqual([]);
  });
  it('is the same whatever order the items come in', () => {
    const items = [item('a', 20, 30), item('b', 30, 20), item('c', 11, 12), item('d', 40, 7), item('e', 7, 40)];
    expect(nestSheets(job([...items].reverse()))).toEqual(nestSheets(job(items)));
  });
});

describe('random jobs', () => {
  const sixteenth = (n: number): number => n / 16;
  const part = fc.record({
    l: fc.integer({ min: 32, max: 1300 }),
    w: fc.integer({ min: 32, max: 740 }),
    turn: fc.boolean(),
    n: fc.integer({ min: 1, max: 4 }),
  });
  it('every sheet can be sawn as listed, nothing is lost, no count is under its bound', () => {
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 9 }),
        fc.constantFrom(0, 1 / 8, 3 / 32),
        fc.constantFrom(0, 1 / 4),
        fc.constantFrom('length', 'width', 'none'),
        (parts, kerf, trim, grain) => {
          const items = parts.flatMap((p, i) =>
            Array.from({ length: p.n }, (_, k) => item(`p${i}.${k}`, sixteenth(p.l), sixteenth(p.w), p.turn)),
          );
          const base = job(items, { kerf: inches(kerf), trim: inches(trim), budget: 60 });
          const asked: NestJob = { ...base, stocks: base.stocks.map((s) => ({ ...s, grain })) };
          const layout = nestSheets(asked);
          for (const sheet of layout.sheets) expect(faults(sheet, asked)).toEqual([]);
          const placed = [
            ...layout.sheets.flatMap((s) => s.pieces.map((p) => p.part)),
            ...layout.unplaced.map((u) => u.part),
          ];
          expect(placed.sort()).toEqual(items.map((i) => i.part).sort());
          for (const c of layout.counts) expect(c.used).toBeGreaterThanOrEqual(c.bound);
          const names = layout.sheets.flatMap((s) => s.offcuts.filter((o) => o.keep).map((o) => o.name));
          expect(names).toEqual(names.map((_, i) => `O${i + 1}`));
        },
      ),
      { seed: 20261125, numRuns: 150 },
    );
  });
});

describe('the lower bound', () => {
  const rect = (w: number, h: number, turn = false) => ({ w, h, turn });
  it('is what can be seen: halves and a bit stand alone, area counts, a turn is allowed for', () => {
    expect(sheetBound(100, 100, 0, [])).toBe(0);
    expect(sheetBound(100, 100, 0, Array(4).fill(rect(51, 51)))).toBe(4);
    expect(sheetBound(100, 100, 0, Array(4).fill(rect(50, 50)))).toBe(1);
    expect(sheetBound(100, 100, 0, Array(5).fill(rect(50, 50)))).toBe(2);
    // Nine of 34 x 34: only four to a sheet, though the area would take eight.
    expect(sheetBound(100, 100, 0, Array(9).fill(rect(34, 34)))).toBe(3);
    expect(sheetBound(100, 60, 0, [rect(55, 10), rect(55, 10)])).toBe(1);
    // Kerf: two of 50 and one kerf do not fit into 100, but into 101.
    expect(sheetBound(100, 10, 1, [rect(50, 10), rect(50, 10)])).toBe(2);
    expect(sheetBound(101, 10, 1, [rect(50, 10), rect(50, 10)])).toBe(1);
  });
});
