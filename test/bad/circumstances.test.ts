import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { WHOLE } from './circumstances.js';
import { CASE } from './whole.js';

const told = (text: string) => {
  const read = readDefinition(text, 'case.json');
  const piece = read.value && resolvePiece(read.value);
  return {
    piece: piece?.value,
    found: [...read.findings, ...(piece?.findings ?? [])]
      .filter((f) => f.severity === 'error')
      .map((finding) => {
        const at = read.locate(finding.path, finding.key, finding.span);
        return { finding, at, under: at.lineText.slice(at.column - 1, at.endColumn - 1) };
      }),
  };
};

test('what it is for, the way and the shop come to the piece in SI units', () => {
  const { piece, found } = told(WHOLE);
  expect(found).toEqual([]);
  // 40 lb/ft2 = 1915.2 Pa (NIST SP 811, B.8: 1 lbf/ft2 = 47.88026 Pa); 50 lb = 22.67962 kg.
  expect(piece?.use?.loads['shelf_1']?.pascals).toBeCloseTo(40 * 47.88026, 2);
  expect(piece?.use?.loads['shelf_2']?.kilograms).toBeCloseTo(22.67962, 5);
  expect(piece?.use?.loads['shelf_2']?.pascals).toBeUndefined();
  expect(piece?.use?.sag).toEqual({ shelf_1: 384, shelf_2: 384 });
  expect(piece?.use?.kind).toBe('clothes');
  expect(piece?.delivery?.doors).toEqual([{ name: 'front door', width: 32 * 25.4e6, height: 78 * 25.4e6 }]);
  expect(piece?.delivery?.stairs[0]?.pitch).toBe(38);
  expect(piece?.delivery?.vehicle).toEqual([96, 50, 52].map((v) => v * 25.4e6));
  expect(piece?.delivery?.wrap).toBe(25.4e6);
  expect(piece?.delivery?.apart).toEqual(['top']);
  expect(piece?.accepted?.[0]).toMatchObject({ finding: 'front-moves-much', ids: ['drawer_1.front'], by: 'sample' });
  expect(piece?.profile?.machines).toEqual({
    jointer: { width: 8 * 25.4e6 },
    planer: { width: 15 * 25.4e6, shortest: 9 * 25.4e6 },
  });
  expect(piece?.profile?.clamps.map((c) => [c.opening / 25.4e6, c.count])).toEqual([
    [50, 8],
    [24, 12],
  ]);
  expect(piece?.profile?.lift).toBeCloseTo(22.67962, 5);
  expect(piece?.profile?.alone).toEqual([60 * 25.4e6, 30 * 25.4e6]);
  expect(piece?.profile?.moisture).toBe(8);
  expect(piece?.profile?.read).toBe('2027-01-25');
});

test('what is not said is not known', () => {
  const { piece } = told(CASE);
  expect([piece?.use, piece?.delivery, piece?.accepted]).toEqual([undefined, undefined, undefined]);
  expect(piece?.profile).toEqual({ machines: {}, clamps: [], moisture: 8, read: '2027-01-25' });
});

test('a joint is accepted with all that it makes', () => {
  const { piece } = told(WHOLE.replace('"of": "drawer_1.front"', '"of": "rails"'));
  expect(piece?.accepted?.[0]?.ids).toContain('rails');
  const made = piece?.joints.filter((j) => j.joint === 'rails').map((j) => j.id) ?? [];
  expect(made.length).toBe(2);
  for (const id of made) expect(piece?.accepted?.[0]?.ids).toContain(id);
});

test('a wood of the shop is weighed by its own figure, the rest by the one that it is like', () => {
  const { piece } = told(WHOLE.replace('"lumber": "oak-white"', '"lumber": "my-oak"'));
  const wood = piece?.stocks['oak']?.wood;
  expect(wood?.gravity).toMatchObject({ value: 0.7, source: 'own weighing' });
  expect(wood?.tangential.value).toBe(0.00365);
});

type Case = readonly [
  name: string,
  find: string,
  put: string,
  code: string,
  line: number,
  column: number,
  under: string,
  says: string,
];
const CASES: readonly Case[] = [
  ['part misspelt in a load', '"shelf_*": {', '"shlef_1": {', 'part-unknown', 15, 16, '"shlef_1"', 'shelf_1'],
  ['part misspelt in a sag', '"shelf_{1..2}"', '"shelf_{4..9}"', 'part-unknown', 16, 14, '"shelf_{4..9}"', 'shelf'],
  ['load that says nothing', '{ "perArea": 40 }', '{}', 'load-empty', 15, 27, '{}', 'perArea'],
  ['load less than nothing', '"perArea": 40', '"perArea": -40', 'number-given', 15, 40, '-40', 'above nothing'],
  [
    'pattern that cannot be',
    '"shelf_*": {',
    '"shelf_{2..1}": {',
    'each-backwards',
    15,
    16,
    '"shelf_{2..1}"',
    'smaller',
  ],
  ['key of a load with a typo', '"perArea"', '"perarea"', 'key-not-known', 15, 29, '"perarea"', 'perArea'],
  ['use that is none', '"clothes"', '"cloths"', 'word-not-known', 14, 13, '"cloths"', 'clothes'],
  ['sag of nothing', '384', '0', 'number-given', 16, 30, '0', 'above nothing'],
  ['sag with a fraction', '384', '38.4', 'wrong-type', 16, 30, '38.4', 'whole number'],
  ['door without height', `, "height": "6' 6"`, '', 'key-missing', 19, 15, '{', 'height'],
  ['door of no width', '"width": "32"', '"width": "0"', 'size-given', 19, 48, '"0"', 'Measure'],
  ['door by a measure that is not there', '"width": "32"', '"width": "WW"', 'name-unknown', 19, 49, 'WW', 'W'],
  ['corner of one width', '["36", "40"]', '["36"]', 'list-length', 20, 45, '["36"]', '2'],
  ['stair that is a ladder', '"pitch": 38', '"pitch": 75', 'number-given', 21, 77, '75', '30 to 42'],
  ['part misspelt in what comes off', '["top"]', '["tpo"]', 'part-unknown', 22, 107, '"tpo"', 'top'],
  [
    'code that no finding has',
    '"front-moves-much"',
    '"front-move-much"',
    'finding-unknown',
    24,
    29,
    '"front-move-much"',
    'front-moves-much',
  ],
  [
    'part misspelt in what is accepted',
    '"of": "drawer_1.front"',
    '"of": "drawer_1.frnt"',
    'part-unknown',
    24,
    55,
    '"drawer_1.frnt"',
    'drawer_1.front',
  ],
  ['accepted by nobody', ', "by": "sample"', '', 'key-missing', 24, 16, '{', 'by'],
  [
    'accepted on no day',
    '"on": "2027-02-01"',
    '"on": "2027-02-30"',
    'date-form',
    24,
    118,
    '"2027-02-30"',
    'year-month-day',
  ],
  ['machine that is none', '"jointer"', '"joiner"', 'key-not-known', 6, 27, '"joiner"', 'jointer'],
  ['planer of no width', '"width": "15"', '"width": "-1"', 'size-given', 6, 77, '"-1"', 'Measure'],
  [
    'wood that is like none',
    '"like": "oak-white"',
    '"like": "oak-whit"',
    'like-unknown',
    6,
    316,
    '"oak-whit"',
    'oak-white',
  ],
  ['wood without a source', ', "source": "own weighing"', '', 'key-missing', 6, 296, '"my-oak"', 'source'],
  ['wood that says not what it is like', '"like": "oak-white", ', '', 'like-missing', 6, 296, '"my-oak"', 'like'],
  ['wood heavier than any', '"gravity": 0.7', '"gravity": 7', 'number-given', 6, 340, '7', 'between'],
  ['accepted without a reason', '"kept at 45 %"', '" "', 'accepted-unsaid', 24, 80, '" "', 'reason'],
  ['accepted by a blank', '"by": "sample"', '"by": ""', 'accepted-unsaid', 24, 102, '""', 'answers for'],
  ['load beyond all bounds', '"perArea": 40', '"perArea": 1e300', 'number-given', 15, 40, '1e300', 'more than'],
  ['nobody lifts that', '"lift": 50', '"lift": 5000', 'number-given', 6, 191, '5000', 'lb'],
];
test.each(CASES)('%s', (_, find, put, code, line, column, under, says) => {
  expect(WHOLE).toContain(find);
  const { found } = told(WHOLE.replace(find, () => put));
  expect([...new Set(found.map((f) => f.finding.code))]).toEqual([code]);
  const first = found[0];
  expect([first?.at.line, first?.at.column, first?.under.slice(0, under.length)]).toEqual([line, column, under]);
  expect(`${first?.finding.message} ${first?.finding.hint ?? ''}`).toContain(says);
});
