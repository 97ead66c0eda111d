import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { CASE } from './whole.js';

/** What an input of one kind of excess is told, and in how long. The bar is generous: none may take seconds. */
const SLOWEST = 5_000;
function codes(text: string, shipped: Readonly<Record<string, string>> = {}): readonly string[] {
  const begun = performance.now();
  const read = readDefinition(text, 'case.json', { shipped: (name) => shipped[name] });
  const found = [...read.findings, ...(read.value ? resolvePiece(read.value).findings : [])];
  expect(performance.now() - begun).toBeLessThan(SLOWEST);
  return [...new Set(found.filter((f) => f.severity === 'error').map((f) => f.code))];
}
const inCase = (find: string, put: string): string => {
  expect(CASE).toContain(find);
  return CASE.replace(find, () => put);
};
const entries = (n: number, one: (i: number) => string): string =>
  Array.from({ length: n }, (_, i) => one(i)).join(',\n');

test('brackets nested without end', () => {
  expect(codes('['.repeat(100_000))).toEqual(['nested-too-deep']);
  expect(codes('{"a":'.repeat(100_000))).toEqual(['nested-too-deep']);
});
test('brackets in an expression nested without end', () => {
  expect(codes(inCase('"gap": "8"', `"gap": "${'('.repeat(240)}8${')'.repeat(240)}"`))).toEqual([
    'expression-too-deep',
  ]);
  expect(codes(inCase('"gap": "8"', `"gap": "${'1 + '.repeat(5_000)}8"`))).toEqual(['expression-too-long']);
});
test('a measure that waits for a thousand others; the other way round each is known when it is asked for', () => {
  const chain = entries(1_000, (i) => `"m${i}": "${i === 999 ? '8' : `m${i + 1}`}"`);
  expect(codes(inCase('"gap": "8"', `"gap": "m0",\n${chain}`))).toEqual(['chain-too-long']);
  const steps = entries(1_000, (i) => `"m${i}": "${i === 0 ? '8' : `m${i - 1}`}"`);
  expect(codes(inCase('"gap": "8"', `${steps},\n"gap": "m999"`))).toEqual([]);
});
test('parts each like the next, three hundred of them', () => {
  const chain = entries(
    300,
    (i) => `"like_${i}": { "like": "${i === 299 ? 'rail' : `like_${i + 1}`}", "mark": "X${i}" }`,
  );
  expect(codes(inCase('"rail": { "mark"', `${chain},\n"rail": { "mark"`))).toEqual([]);
});
test('parts that stand on one another, three hundred of them', () => {
  const chain = entries(
    300,
    (i) =>
      `"pile_${i}": { "stock": "oak", "across": ["40", "44"], "deep": ["0", "3"], "grain": "across", "up": { "from": ${i === 0 ? '"0"' : `"pile_${i - 1}.top"`}, "size": "t" } }`,
  );
  expect(codes(inCase('"rail": { "mark"', `${chain},\n"rail": { "mark"`))).toEqual([]);
});
test('parts without end', () => {
  expect(codes(inCase('"i = 1..3"', '"i = 1..9999"'))).toEqual(['each-range']);
  const many = entries(3_000, (i) => `"p${i}": { "like": "rail" }`);
  expect(codes(inCase('"rail": { "mark"', `${many},\n"rail": { "mark"`))).toEqual(['entries-too-many']);
  const row = entries(4, (i) => `"row_${i}_{k}": { "each": "k = 1..200", "like": "rail" }`);
  expect(codes(inCase('"rail": { "mark"', `${row},\n"rail": { "mark"`))).toEqual(['parts-too-many']);
});
test('sizes without end', () => {
  expect(codes(inCase('"W": "30"', '"W": "10000000mm"'))).toEqual(['length-out-of-range']);
  expect(codes(inCase('"W": "30"', '"W": "3000 * 3000"'))).toEqual(['length-out-of-range']);
  expect(codes(inCase('"W": "30"', '"W": 1e300'))).not.toEqual([]);
});
test('screws without end, in one joint and in many', () => {
  expect(codes(inCase('"face": "back", "count": 1', '"face": "back", "count": 1000000'))).toEqual(['joint-count']);
  const many = entries(
    60,
    (i) =>
      `"s${i}": { "kind": "screw", "part": "stop", "into": ["side_left", "side_right"], "hole": "pocket", "face": "back", "count": 10 }`,
  );
  expect(codes(inCase('"stops": {', `${many},\n"stops": {`))).toContain('too-many-screws');
});
test('a joint that sweeps up everything', () => {
  const shelves = inCase('"i = 1..3"', '"i = 1..200"').replace('{i} * gap', '{i} * 1');
  const all = shelves.replace('"part": "shelf_*", "into": ["side_left", "side_right"]', '"part": "*", "into": "*"');
  expect(codes(all)).not.toEqual([]);
});
test('definitions that start from each other, or from a long row', () => {
  const from = (name: string): string => `{ "from": "${name}" }`;
  expect(codes(from('a'), { a: from('b'), b: from('a') })).toEqual(['from-circle']);
  const row: Record<string, string> = { d500: CASE };
  for (let i = 0; i < 500; i++) row[`d${i}`] = from(`d${i + 1}`);
  expect(codes(from('d0'), row).filter((c) => c !== 'from-too-long')).toEqual([]);
});
