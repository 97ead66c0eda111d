import { expect, test } from 'vitest';
import { evaluateExpr, evaluateQuantity, namesIn } from '../../src/lengths/evaluate.js';
import type { Found } from '../../src/lengths/evaluate.js';
import { inches, mm, toIn } from '../../src/lengths/length.js';
import type { Units } from '../../src/lengths/length.js';
import { parseExpression } from '../../src/lengths/parse.js';

const NAMES: Readonly<Record<string, number>> = { W: 36, D: 19, 'rail_2.top': 30, rail_1: 5, row_1: 5.25 };
const lookup = (r: { kind: string; name?: string; part?: string; face?: string }): Found => {
  const value = NAMES[r.kind === 'name' ? (r.name as string) : `${r.part}.${r.face}`];
  if (r.name === 'n') return { number: 3 };
  return value === undefined ? undefined : { value: inches(value) };
};
function outcome(text: string, units: Units = 'in'): number | string {
  const parsed = parseExpression(text);
  if ('fault' in parsed) return parsed.fault.code;
  const e = evaluateExpr(parsed.tree, units, lookup);
  return 'fault' in e ? e.fault.code : e.value;
}

test.each([
  ['7/8', 0.875],
  ['30 1/2', 30.5],
  ["2' 6", 30],
  ["2' 6 1/2", 30.5],
  ['2\' 6 1/2"', 30.5],
  ["2'", 24],
  ["2'6", 30],
  ['.205', 0.205],
  ['0.205', 0.205],
  ['25.4mm', 1],
  ['25.4 mm', 1],
  ['1in', 1],
  ['1 1/2 in', 1.5],
  ['3ft', 36],
  ['-3/4', -0.75],
  ['-3 1/2', -3.5],
  ['8 - 1/4', 7.75],
  ['8 + 1/4', 8.25],
  ['8+1/4', 8.25],
  ['8 1/4', 8.25],
  ['8 - -1/4', 8.25],
  ['W / 2', 18],
  ['W/2', 18],
  ['W * 2/3', 24],
  ['2 * 3', 6],
  ['W - 2 * 7/8', 34.25],
  ['(W - 2 * 7/8) / 2', 17.125],
  ['W / (1/2)', 72],
  ['W / D * 19in', 36],
  ['2 - 3 - 4', -5],
  ['64 / 4 / 2', 8],
  ['2 + 3 * 4', 14],
  ['-2 + 3', 1],
  ['min(W, D, 20)', 19],
  ['max(W, 3/4)', 36],
  ['round(W / 7, 1/16)', 5.125], // 36/7 = 5.142857; 82.28 sixteenths
  ['round(1/32, 1/16)', 0.0625], // halves upwards
  ['rail_2.top - 1/2', 29.5],
  ['n * 2', 6],
  ['W / n', 12],
])('%s is %f in', (text, want) => {
  const got = outcome(text);
  expect(typeof got === 'number' ? toIn(got) : got).toBe(want);
});

test('millimetre files', () => {
  expect(outcome('19', 'mm')).toBe(mm(19));
  expect(outcome('7/8in', 'mm')).toBe(inches(0.875));
  expect(outcome('W * 1/2', 'mm')).toBe(inches(18));
  expect(outcome('7/8', 'mm')).toBe('fraction-in-millimetres');
  expect(outcome('W + 7/8', 'mm')).toBe('fraction-in-millimetres');
});

test.each([
  ['', 'expression-empty', 0, 0],
  ['   ', 'expression-empty', 0, 3],
  ['8-1/4', 'minus-without-spaces', 0, 5],
  ['8 -1/4', 'minus-without-spaces', 0, 6],
  ['8- 1/4', 'minus-without-spaces', 0, 6],
  ['W-1', 'minus-without-spaces', 0, 3],
  ["2'-6", 'feet-minus-inches', 0, 4],
  ["2' -6", 'feet-minus-inches', 0, 5],
  ["2' 14", 'inches-beside-feet', 0, 5],
  ["2' 6mm", 'inches-beside-feet', 0, 6],
  ['1/2 1/4', 'missing-operator', 0, 7],
  ['8  1/4', 'missing-operator', 0, 6],
  ['8 4', 'missing-operator', 0, 3],
  ['W H', 'missing-operator', 0, 3],
  ['2W', 'missing-operator', 0, 2],
  ['2(W)', 'missing-operator', 0, 2],
  ['(W) (D)', 'missing-operator', 2, 5],
  ['W 1/2', 'missing-operator', 0, 5],
  ['W / 1 1/2', 'fraction-after-over', 0, 9],
  ['W / 1/2', 'fraction-after-over', 0, 7],
  ['W/2/3', 'fraction-after-over', 0, 5],
  ['1/2/4', 'fraction-run-on', 0, 5],
  ['1 5/4', 'fraction-not-proper', 0, 5],
  ['1 4/4', 'fraction-not-proper', 0, 5],
  ['3/0', 'fraction-over-nothing', 0, 3],
  ['1 3/0', 'fraction-over-nothing', 0, 5],
  ['8½', 'fraction-character', 1, 2],
  ['½', 'fraction-character', 0, 1],
  ['8 – 1', 'dash-character', 2, 3],
  ['8 − 1', 'dash-character', 2, 3],
  ['2′ 6', 'quote-character', 1, 2],
  ['6”', 'quote-character', 1, 2],
  ['2 × W', 'sign-character', 2, 3],
  ['1⁄2', 'sign-character', 1, 2],
  ['8\u00a01/4', 'space-character', 1, 2],
  ['8\t1', 'space-character', 1, 2],
  ['3,5', 'decimal-comma', 0, 3],
  ['(3,5)', 'decimal-comma', 1, 4],
  ['1.', 'number-form', 0, 2],
  ['1.2.3', 'number-form', 0, 5],
  ['1e3', 'number-form', 0, 3],
  ['2cm', 'unit-not-known', 1, 3],
  ['3 --2', 'minus-without-spaces', 2, 3],
  ['2 inches', 'unit-not-known', 1, 8],
  ['+3', 'plus-not-needed', 0, 1],
  ['3 + + 4', 'plus-not-needed', 4, 5],
  ['(3', 'bracket-open', 0, 1],
  ['3)', 'bracket-extra', 1, 2],
  ['()', 'bracket-empty', 0, 2],
  ['W +', 'missing-value', 2, 3],
  ['* 3', 'missing-value', 0, 1],
  ['W ** 2', 'missing-value', 3, 4],
  ['sqrt(2)', 'function-not-known', 0, 4],
  ['min(3)', 'function-arguments', 0, 6],
  ['round(1, 2, 3)', 'function-arguments', 0, 14],
  ['min + 1', 'function-name-alone', 0, 3],
  ['rail_{2..5}', 'braces-form', 5, 11],
  ['rail_{i', 'braces-form', 5, 6],
  ['rail__2', 'name-form', 0, 7],
  ['_rail', 'name-form', 0, 1],
  ['W ^ 2', 'character-not-known', 2, 3],
  ['50%', 'character-not-known', 2, 3],
  ['W & D', 'character-not-known', 2, 3],
  ['('.repeat(60), 'expression-too-deep', 40, 41],
  ['1 + '.repeat(130), 'expression-too-long', 0, 520],
] as const)('%j is refused: %s', (text, code, from, to) => {
  const p = parseExpression(text);
  expect('fault' in p ? [p.fault.code, ...p.fault.at] : p).toEqual([code, from, to]);
});

test.each([
  ['8-1/4', ['8 1/4', '8 - 1/4']],
  ["2'-6", ["2' 6", "2' - 6"]],
  ['W / 1/2', ['/ (1/2)', '/ 1 / 2']],
  ['1 5/4', ['2 1/4', '1 + 5/4']],
  ['8½', ['8 1/2']],
  ['3,5', ['3.5']],
  ['2.5cm', ['25mm']],
  ['1/2 1/4', ['1/2 + 1/4']],
] as const)('the hint for %j names what can be meant', (text, readings) => {
  const p = parseExpression(text);
  for (const r of readings) expect('fault' in p && p.fault.hint).toContain(r);
});

test.each([
  ['W * D', 'length-times-length'],
  ['2 / W', 'number-over-length'],
  ['W / D', 'ratio-not-length'],
  ['W / D + 1in', 'ratio-not-length'],
  ['W / 0', 'division-by-nothing'],
  ['W / (D - D)', 'division-by-nothing'],
  ['round(W)', 'round-needs-step'],
  ['round(W, 0)', 'division-by-nothing'],
  ['W + X', 'name-not-known'],
  ['rail_9.top', 'name-not-known'],
  ['9999999', 'length-out-of-range'],
] as const)('%s cannot be worked out: %s', (text, code) => {
  expect(outcome(text)).toBe(code);
});

test('numbers stay numbers where a quantity is asked for', () => {
  const p = parseExpression('W / D');
  const q = 'tree' in p ? evaluateQuantity(p.tree, 'in', lookup) : undefined;
  expect(q).toMatchObject({ number: 36 / 19 });
});

test('inputs are listed with their values, once each, and names can be asked for first', () => {
  const p = parseExpression('W - rail_2.top + W');
  if ('fault' in p) throw new Error(p.fault.message);
  expect(namesIn(p.tree)).toEqual(['W', 'rail_2.top']);
  expect(evaluateExpr(p.tree, 'in', lookup)).toMatchObject({
    inputs: [
      { name: 'W', value: inches(36) },
      { name: 'rail_2.top', value: inches(30) },
    ],
  });
});

test('letters of an each are filled in', () => {
  const p = parseExpression('rail_{i-1} + {i} * row_{ i - 1 }', { letters: { i: 2 } });
  if ('fault' in p) throw new Error(p.fault.message);
  expect(evaluateExpr(p.tree, 'in', lookup)).toMatchObject({ value: inches(15.5) });
  const q = parseExpression('rail_{j}', { letters: { i: 2 } });
  expect('fault' in q && q.fault.code).toBe('braces-form');
  const r = parseExpression('rail_{i-1}.bottom');
  expect('tree' in r && namesIn(r.tree)).toEqual(['rail_{i-1}.bottom']);
});
