import { describe, expect, it } from 'vitest';
import { inches, toIn, type Length } from '../../src/lengths/length.js';
import { boardFeet, quarterInches, surfaceMeasure, yardTally } from '../../src/shop/board-feet.js';
import { cutList } from '../../src/making/cut-list.js';
import { diagonals } from '../../src/making/diagonals.js';
import { equalLengths } from '../../src/making/equal-lengths.js';
import { hardwareList } from '../../src/making/hardware-list.js';
import { jointSchedule } from '../../src/making/joint-schedule.js';
import { makeLists } from '../../src/making/making.js';
import { compareMarks, markRanges } from '../../src/words/markOrder.js';
import type { Table } from '../../src/making/table.js';
import { layoutPiece } from '../../src/layout/layout-piece.js';
import type { Piece } from '../../src/piece/piece.js';
import { given } from '../../src/value/sized.js';
import { chest } from './sample.js';

const records = (t: Table): Record<string, string>[] =>
  t.rows.map((r) => {
    expect(r).toHaveLength(t.columns.length);
    return Object.fromEntries(t.columns.map((c, i) => [c.id, r[i] ?? '']));
  });

describe('marks', () => {
  it('are put in order by number and drawn together', () => {
    expect(['R10', 'R2', 'A1', 'D1.2', 'D1.10', 'D1'].sort(compareMarks)).toEqual([
      'A1',
      'D1',
      'D1.2',
      'D1.10',
      'R2',
      'R10',
    ]);
    expect(markRanges(['R4', 'R2', 'R1', 'R3', 'A6', 'A4'])).toBe('A4 A6 R1–R4');
    expect(markRanges(['A1', 'A2'])).toBe('A1 A2');
    expect(markRanges(['D1.1', 'D2.1', 'D1.2', 'D1.3', 'D1.1'])).toBe('D1.1–D1.3 D2.1');
    expect(markRanges(['top'])).toBe('top');
    expect(markRanges([])).toBe('');
  });
});

describe('board feet', () => {
  // Worked examples with printed answers. Thickness and width in inches, length in feet.
  it.each([
    ['Noyes, Handwork in Wood, p. 48', 1, 1, 6, 12, 6],
    ['Noyes p. 48, 7/8 dressed counts as 1', 1, 7 / 8, 6, 12, 6],
    ['Noyes p. 48', 1, 1, 6, 15, 7.5],
    ['Noyes p. 110, 12 ft 10 in', 1, 1, 11, 14, 12 + 10 / 12],
    ['Noyes p. 110, 3 ft 9 in', 1, 1, 9, 5, 3.75],
    ['Noyes p. 110, 24 ft 11 in', 1, 1, 13, 23, 24 + 11 / 12],
    ['Foster 1911, ch. LI', 1, 1, 12, 10, 10],
    ['Foster 1911, joist', 1, 6, 12, 16, 96],
    ['Foster 1911, beam', 1, 9, 6, 14, 63],
    ['Foster 1911, timber', 1, 8, 4, 18, 48],
    ['Danforth, art. 46, 1/2 counts as 1', 12, 1 / 2, 8, 12, 96],
    ['Danforth, art. 46', 80, 1.5, 6, 16, 960],
    ['an old arithmetic, 5/4', 1, 1.25, 12, 16, 20],
    ['a school quiz, 3/4 counts as 1', 1, 3 / 4, 10, 6, 5],
    ['a school quiz, 5/4', 1, 1.25, 6, 8, 5],
  ])('%s: %d of %d x %d in x %d ft', (_source, count, thick, wide, feet, answer) => {
    expect(boardFeet(thick, wide, feet * 12, count)).toBeCloseTo(answer, 9);
  });
  it('a packing case 4 ft 8 x 3 ft 2 x 2 ft 8 of 1-in stock takes 67 8/9 (Foster 1911)', () => {
    expect(boardFeet(1, 38, 56, 2) + boardFeet(1, 30, 56, 2) + boardFeet(1, 30, 36, 2)).toBeCloseTo(67 + 8 / 9, 9);
  });
  it('are counted at the rough thickness of a quarter', () => {
    expect([quarterInches('5/4'), quarterInches('8/4'), quarterInches('thick')]).toEqual([1.25, 2, undefined]);
  });
  // Boards of the 1998 red oak data bank with the surface measure stated there: width, length in inches.
  it.each([
    [437, 9, 96.5, 6],
    [279, 7.25, 145, 7],
    [468, 9.25, 96.5, 6],
    [591, 11.25, 142.75, 11],
    [261, 7, 168.5, 8],
    [636, 13, 144.75, 13],
  ])('surface measure of red oak board %d, %d x %d, is %d', (_id, wide, long, stated) => {
    expect(surfaceMeasure(wide, long)).toBe(stated);
    expect(yardTally(1.25, wide, long)).toBe(1.25 * stated);
    expect(yardTally(0.75, wide, long)).toBe(stated);
  });
});

describe('the cut list', () => {
  const rows = records(cutList(chest()));
  it('has one row a card, over-all and shoulder lengths, rough sizes for lumber only', () => {
    expect(
      rows.map((r) => [r['mark'], r['quantity'], r['thickness'], r['width'], r['length'], r['shoulder'], r['rough']]),
    ).toEqual([
      ['A1', '1', '7/8', '19', '41 1/8', '=', '1 × 19 1/2 × 42 1/8'],
      ['A2', '1', '7/8', '19', '41 1/8', '=', '1 × 19 1/2 × 42 1/8'],
      ['A6', '1', '3/4', '3 1/2', '34 1/4', '=', '7/8 × 3 3/4 × 35 1/4'],
      ['A7', '1', '.205', '34 15/16', '33', '=', ''],
      ['R1–R4', '4', '3/4', '2 1/2', '35', '34 1/4', '7/8 × 2 3/4 × 36'],
    ]);
    expect(rows[0]).toMatchObject({
      grain: 'UP',
      hand: 'left',
      stock: 'White oak, 5/4, quartered, staves',
      joints: 'rails',
    });
    expect(rows[4]).toMatchObject({ grain: 'LEFT to RIGHT', hand: '', joints: 'rails' });
  });
  it('counts every part once', () => {
    expect(rows.reduce((s, r) => s + Number(r['quantity']), 0)).toBe(chest().parts.length);
  });
});

describe('one stop, square, joints, bought things', () => {
  it('names the parts that share a length', () => {
    expect(equalLengths(chest()).map((e) => e.text)).toEqual([
      '41 1/8 over all: A1 A2',
      '35 over all: R1–R4',
      '34 1/4 between shoulders: A6 R1–R4',
    ]);
  });
  it('gives the diagonal of the case: 36 x 41 1/8 is 54 21/32', () => {
    const all = diagonals(chest());
    expect(all.map((d) => d.what)).toEqual(['case, outside A1 to outside A2', 'opening of D1']);
    expect(toIn(all[0]?.diagonal ?? 0)).toBe(54 + 21 / 32);
    // Named once, from the left, when each side names the other as its mirror image.
    const both = chest();
    const parts = both.parts.map((p) => (p.id === 'a1' ? { ...p, mirrorOf: 'a2' } : p));
    expect(diagonals({ ...both, parts }).map((d) => d.what)).toEqual(all.map((d) => d.what));
    // 16 3/4 x 5 1/4: 17.5535.
    expect(toIn(all[1]?.diagonal ?? 0)).toBe(17 + 18 / 32);
  });
  it('tells equal joints in one row', () => {
    expect(jointSchedule(chest()).rows).toEqual([
      ['rails', 'sliding dovetail', '8', 'R1–R4', 'A1 A2', 'depth 3/8', 'to FRONT', 'holds', 'end-long'],
    ]);
  });
  it('takes drawers together, left and right alike', () => {
    const base = chest();
    const corner = (n: number, hand: string): Piece['joints'][number] => {
      const first = base.joints[0];
      if (!first) throw new Error('no joint');
      const id = `long_${n}.corner_front_${hand}`;
      return { ...first, id, joint: id, way: [hand === 'left' ? 'right' : 'left'] };
    };
    const more = [corner(1, 'left'), corner(1, 'right'), corner(2, 'left'), corner(2, 'right')];
    const rows = records(jointSchedule({ ...base, joints: more }));
    expect(rows.map((r) => [r['joint'], r['count'], r['way']])).toEqual([
      ['drawers: corner front', '4', 'to LEFT or RIGHT'],
    ]);
  });
  it('prints a number of staves as a number', () => {
    const base = chest();
    const first = base.joints[0];
    if (!first) throw new Error('no joint');
    const sizes = { staves: given(4 as Length, 'typed'), 'widest stave': given(inches(4.75), 'typed') };
    const [row] = records(jointSchedule({ ...base, joints: [{ ...first, kind: 'edge', sizes }] }));
    expect(row?.['sizes']).toBe('staves 4, widest stave 4 3/4');
  });
  it('counts slides, their screws and the others', () => {
    const screw = (into: string, name: string, n: number) =>
      Array.from({ length: n }, (_, i): Piece['hardware'][number] => ({
        id: `d1.${into}_${i}`,
        kind: 'screw',
        name: `${name}, for slides, into the ${into}`,
        body: { op: 'joined', of: [] },
        into: ['a1', 'd1.slide_left'],
        drawer: 'short_1',
      }));
    const base = chest();
    const more = [...screw('case', '#6 × 5/8 pan head', 6), ...screw('drawer', '#6 × 3/8 pan head', 6)];
    expect(hardwareList({ ...base, hardware: [...base.hardware, ...more] }).rows).toEqual([
      ['side slide, full extension, 16 in', '2', 'D1'],
      ['#6 × 3/8 pan head, for slides, into the drawer', '6', 'D1'],
      ['#6 × 5/8 pan head, for slides, into the case', '6', 'D1'],
      ['#8 × 1 1/4', '1', 'A7 R1'],
    ]);
  });
});

describe('the stage', () => {
  it('weighs the wood: a cubic foot of white oak is 47.5 lb', () => {
    const cubicFoot = 304.8 ** 3;
    const { value } = makeLists(chest(), [
      { id: 'a1', volume: cubicFoot },
      { id: 'a2', volume: cubicFoot },
    ]);
    expect(value?.weights.lb).toBeCloseTo(95.1, 0);
    expect(value?.weights.carriers).toBe(2);
    expect(value?.weights.unknown).toContain('a7');
  });
  it('is plain data, and the same twice', () => {
    const made = makeLists(chest(), []);
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
    expect(makeLists(chest(), [])).toEqual(made);
  });
  it('lays its back on a sheet, grain along it', () => {
    const { value, findings } = layoutPiece(chest());
    expect(findings).toEqual([]);
    expect(value?.sheets[0]?.pieces.map((p) => [p.part, toIn(p.w), toIn(p.h)])).toEqual([['a7', 33, 34.9375]]);
    const big = chest();
    const small: Piece = {
      ...big,
      stocks: { ...big.stocks, ply: { ...(big.stocks['ply'] as never as object), size: [1e9, 5e8] } as never },
    };
    expect(layoutPiece(small).findings.map((f) => f.code)).toEqual(['part-larger-than-sheet']);
  });
});
