import { describe, expect, it } from 'vitest';
import { inches, toIn } from '../../src/lengths/length.js';
import { series } from '../../src/piece/measures.js';
import { definition, errorsOf, part, solved } from './sample.js';

/** Four drawers in 28 in with rails of 3/4 between: 28 - 3 x 3/4 = 25 3/4 of openings. */
const OPEN = 28 - 3 * 0.75;
const rows = (by: string, snap?: string): number[] => {
  const piece = solved(
    definition({
      measures: { row: { graduate: 4, in: '28 - 3 * 3/4', by, ...(snap ? { snap } : {}) } },
      parts: { a: part() },
    }),
  );
  return [1, 2, 3, 4].map((i) => toIn(piece.measures[`row_${i}`]?.value ?? 0));
};

describe('graduation', () => {
  it('equal: total over number', () => {
    expect(series(4, OPEN, 'equal')).toEqual([6.4375, 6.4375, 6.4375, 6.4375]);
  });
  it('step 3/4: 5.31, 6.06, 6.81, 7.56 (a worked example of the trade)', () => {
    expect(series(4, OPEN, { step: 0.75 }).map((x) => x.toFixed(2))).toEqual(['5.31', '6.06', '6.81', '7.56']);
  });
  it('ratio 1.15: 5.16, 5.93, 6.82, 7.84 (the same example)', () => {
    expect(series(4, OPEN, { ratio: 1.15 }).map((x) => x.toFixed(2))).toEqual(['5.16', '5.93', '6.82', '7.84']);
  });
  it('snaps all but the last, which takes what is left and says so', () => {
    const got = rows('step 3/4', '1/16');
    expect(got.slice(0, 3)).toEqual([5.3125, 6.0625, 6.8125]);
    expect(got.reduce((a, b) => a + b, 0)).toBe(OPEN);
    const uneven = rows('ratio 1.15', '1/16');
    expect(uneven.slice(0, 3)).toEqual([5.1875, 5.9375, 6.8125]);
    expect(uneven[3]).toBe(OPEN - 5.1875 - 5.9375 - 6.8125);
    const piece = solved(
      definition({ measures: { row: { graduate: 4, in: '28', by: 'equal' } }, parts: { a: part() } }),
    );
    expect(piece.measures['row_4']?.rule).toContain('the last takes what is left');
  });
  it.each([
    [{ graduate: 4, in: '28', by: 'golden' }, 'graduation-unreadable'],
    [{ graduate: 1, in: '28', by: 'equal' }, 'graduation-count'],
    [{ graduate: 4, in: '28', by: 'step 9' }, 'graduation-too-steep'],
    [{ graduate: 4, in: '28', by: 'equal', snap: '0' }, 'graduation-snap'],
  ])('refuses %j', (row, code) => {
    expect(errorsOf(definition({ measures: { row }, parts: { a: part() } })).map((f) => f.code)).toEqual([code]);
  });
});

it('numbers a list from 1 and keeps how each came about', () => {
  const piece = solved(definition({ measures: { W: '36', row: ['5 1/4', 'W / 4'] }, parts: { a: part() } }));
  expect(piece.measures['row_1']).toEqual({
    value: inches(5.25),
    how: 'given',
    rule: '5 1/4',
    path: ['measures', 'row', 0],
  });
  expect(piece.measures['row_2']).toEqual({
    value: inches(9),
    how: 'derived',
    rule: 'W / 4',
    inputs: [{ name: 'W', value: inches(36) }],
    path: ['measures', 'row', 1],
  });
  expect(Object.keys(piece.measures)).toEqual(['W', 'row_1', 'row_2']);
});
it('reads a bare number in the units of the file', () => {
  const mm = solved({ ...definition({ measures: { W: 394 }, parts: {} }), units: 'mm', stock: {} });
  expect(mm.measures['W']?.value).toBe(394_000_000);
});
