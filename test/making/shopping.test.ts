import { describe, expect, it } from 'vitest';
import { inches, toIn } from '../../src/lengths/length.js';
import { milling } from '../../src/making/milling.js';
import { blanksOf } from '../../src/making/rough.js';
import { shopping, type ShoppingGroup } from '../../src/making/shopping.js';
import { sparesOf } from '../../src/making/spares.js';
import type { Piece } from '../../src/piece/piece.js';
import { shippedPiece } from '../specimens/pieces.js';

const bought = (piece: Piece): ShoppingGroup[] => {
  const blanks = blanksOf(piece);
  return shopping(piece, blanks, sparesOf(piece, blanks));
};
const group = (piece: Piece, wood: string, quarter: string): ShoppingGroup => {
  const g = bought(piece).find((x) => x.stock.material === wood && x.stock.quarter === quarter);
  if (!g) throw new Error(`no ${wood} ${quarter}`);
  return g;
};
const chest = shippedPiece('tall-chest');
const nightstand = shippedPiece('nightstand');

describe('what to buy for the chest', () => {
  const oak = group(chest, 'oak-white', '5/4');
  /** Count, width and length of every rough blank of oak, typed by hand from the finished sizes: 1/4 and 1 over, to the eighth. */
  const OAK: readonly (readonly [number, number, number])[] = [
    [8, 5.125, 42.125], // A1 A2, four staves each
    [4, 5.375, 38.5], // A3
    [4, 5.125, 6.75], // A5
    [1, 2.75, 36.5], // A4
    [1, 3.75, 35.25], // A6
    [4, 2.75, 36], // R1-R4
    [2, 5.375, 17.625], // D1.5 D2.5
    [1, 7.125, 35.125], // D3.5
    [1, 8.125, 35.125], // D4.5
    [1, 9.125, 35.125], // D5.5
  ];
  it('rough board feet of oak: the sum of its blanks at 5/4', () => {
    const sum = OAK.reduce((s, [n, w, l]) => s + (n * w * l * 1.25) / 144, 0);
    expect(oak.buying.rough).toBeCloseTo(sum, 6);
    expect(oak.net).toBeLessThan(sum);
  });
  // Ends: two of 17 5/8 and three of 35 1/8 with four kerfs of 1/8 are 141 1/8; the widest, 8 55/64, and 1 is 9 55/64.
  it('puts the run first: one board of 10 by 142, 9.86 surface feet, tallied as 10 at 5/4', () => {
    const [first] = oak.rows;
    expect(first?.hard).toContain('run');
    expect(first?.board.map(toIn)).toEqual([10, 142]);
    expect(first?.tally).toBe(12.5);
    const ranks = oak.rows.map((r) => r.hard.length > 0);
    expect(ranks.lastIndexOf(true)).toBeLessThan(ranks.indexOf(false));
  });
  it('a board is 1 in more than the part each way: A6, 3 1/2 by 34 1/4, is found in 4 1/2 by 36', () => {
    const apron = oak.rows.find((r) => r.blanks[0]?.part.mark === 'A6');
    expect(apron?.board.map(toIn)).toEqual([4.5, 36]);
  });
  it('short blanks are found in the length in which they are milled: A5 in 14 5/8, on the inch 15', () => {
    const divider = oak.rows.find((r) => r.blanks[0]?.part.mark === 'A5');
    expect(divider?.board.map(toIn)).toEqual([6, 15]);
  });
  it('quarters: 7/8 and 3/4 fronts over 8 in wide want 5/4; poplar of 1/2 agrees in 4/4', () => {
    expect(oak.quarters.map((q) => [toIn(q.thickness), q.need?.comfortable, q.verdict])).toEqual([
      [0.875, '5/4', 'agrees'],
      [0.75, '5/4', 'agrees'],
    ]);
    const thin = { ...chest, stocks: { ...chest.stocks, oak: { ...chest.stocks['oak']!, quarter: '4/4' } } };
    expect(group(thin, 'oak-white', '4/4').quarters.map((q) => q.verdict)).toEqual([
      'flat boards only',
      'flat boards only',
    ]);
    const thick = { ...chest, stocks: { ...chest.stocks, oak: { ...chest.stocks['oak']!, quarter: '8/4' } } };
    expect(group(thick, 'oak-white', '8/4').quarters[0]?.verdict).toBe('thicker than it needs');
  });
  it('keeps one spare of every four alike, and a trial of each thickness that is joined', () => {
    expect(oak.spares.map((s) => [s.kind, toIn(s.thickness), ...s.rough.map(toIn)])).toEqual([
      ['spare', 0.75, 0.875, 2.75, 36],
      ['trial', 0.875, 1, 4, 16],
      ['trial', 0.75, 0.875, 2.75, 16],
    ]);
  });
  it('keeps as many spares and trials as are asked for instead', () => {
    const { oak: stock } = chest.stocks;
    const asked: Piece = {
      ...chest,
      spares: { rail_2: 2, side_left: 1 },
      stocks: { ...chest.stocks, ...(stock ? { oak: { ...stock, trials: 2 } } : {}) },
    };
    const { spares } = group(asked, 'oak-white', '5/4');
    expect(spares.map((s) => [s.kind, s.count, toIn(s.rough[1])])).toEqual([
      ['spare', 1, 5.125],
      ['spare', 2, 2.75],
      ['trial', 2, 4],
      ['trial', 2, 2.75],
    ]);
  });
  it('low, likely and high follow one another for every wood of every piece', () => {
    for (const piece of [chest, nightstand, shippedPiece('letter-cabinet')])
      for (const { buying } of bought(piece)) {
        expect(buying.low).toBeGreaterThan(buying.rough);
        expect(buying.likely).toBeGreaterThan(buying.low * 0.98);
        expect(buying.high).toBeGreaterThan(buying.likely);
      }
  });
});

describe('what to buy for the nightstand', () => {
  it('legs from one plank, rift', () => {
    const legs = group(nightstand, 'walnut-black', '8/4');
    expect(legs.stock.cut).toBe('rift');
    expect(legs.rows[0]?.hard).toEqual(['legs']);
  });
  // 4/4 gives leaves of .35 for panels of 1/4: ten staves from five boards.
  it('panels of 1/4 are sawn two from a board of 4/4, .1 to spare', () => {
    const { resaw } = group(nightstand, 'walnut-black', '4/4');
    expect(resaw.map((r) => [r.leaves, r.boards, Number(toIn(r.plan.spare).toFixed(3)), r.plan.tight])).toEqual([
      [6, 3, 0.1, false],
      [4, 2, 0.1, false],
    ]);
    const low = { ...nightstand, profile: { machines: { bandsaw: { height: inches(4) } }, clamps: [] } };
    expect(group(low, 'walnut-black', '4/4').resaw.every((r) => r.tooHigh)).toBe(true);
  });
  it('cuts the sapwood away from walnut that shows, not from maple', () => {
    const heart = (g: ShoppingGroup): boolean => g.buying.steps.some((s) => s.what === 'heart');
    expect(heart(group(nightstand, 'walnut-black', '4/4'))).toBe(true);
    expect(heart(group(nightstand, 'maple-sugar', '4/4'))).toBe(false);
  });
});

describe('milling of the chest', () => {
  const blanks = blanksOf(chest);
  const m = milling(chest, blanks, sparesOf(chest, blanks));
  it('has a group a finished thickness, thickest first, with every blank once', () => {
    expect(m.groups.map((g) => toIn(g.thickness))).toEqual([0.875, 0.75, 0.5]);
    const marks = m.groups.flatMap((g) => g.rows.flatMap((r) => r.blanks.map((b) => b.part.mark)));
    expect([...marks].sort()).toEqual(blanks.map((b) => b.part.mark).sort());
  });
  it('finishes what is cut now, leaves the apron long and drawer fronts wide and long', () => {
    const row = (mark: string) =>
      m.groups.flatMap((g) => g.rows).find((r) => r.blanks.some((b) => b.part.mark === mark));
    expect(row('R1')?.final.map(toIn)).toEqual([0.75, 2.5, 35]);
    expect([row('A6')?.final.map(toIn), row('A6')?.waits]).toEqual([[0.75, 3.5, 35.25], ['length']]);
    expect([row('D3.5')?.final.map(toIn), row('D3.5')?.waits]).toEqual([
      [0.75, 7.125, 35.125],
      ['width', 'length'],
    ]);
    expect(row('A1')).toMatchObject({ staves: 4, jointed: inches(4.875) });
  });
  it('widths at one fence: ten rails of 2 1/2, drawer sides by rows', () => {
    expect(m.widths.map((w) => [toIn(w.width), w.marks.length])).toEqual([
      [7.875, 2],
      [7, 2],
      [6.125, 2],
      [4.375, 4],
      [2.5, 10],
    ]);
  });
  it('staves of the divider, 6 3/4 long, are milled two in one length', () => {
    expect(m.gangs.map((g) => [g.marks, g.of, g.lengths, toIn(g.long)])).toEqual([[['A5'], 2, 2, 14.625]]);
  });
});
