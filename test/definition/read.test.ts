import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eachValues, howMany, readEach } from '../../src/lengths/each.js';
import { readDefinition } from '../../src/definition/read.js';
import { runWatched } from '../../src/io/watched.js';
import type { Answer, Job } from '../../src/run.js';
import { SOUND } from '../bad/snippets.js';

const small = (more: string): string =>
  `{ "format": 1, "from": "sound", "piece": { "title": "Other", "number": "T-2", "revision": "A", "date": "2027-03-01" }${more} }`;
const shipped = (name: string): string | undefined =>
  name === 'sound'
    ? SOUND
    : name === 'a'
      ? '{ "from": "b" }'
      : name === 'b'
        ? '{ "from": "a" }'
        : name === 'broken'
          ? '{'
          : undefined;
const started = (more: string) => readDefinition(small(more), 'x.json', { shipped });

test('a definition is laid over the one that it starts from', () => {
  const { value, findings } = started(
    `, "measures": { "W": "40" }, "parts": { "side_left": { "deep": { "from": "0", "size": "D" } }, "foot": null },
       "shop": { "step": "1/32" }, "drawers": null`,
  );
  expect(findings).toEqual([]);
  expect(value?.piece.title).toBe('Other');
  expect(value?.measures).toMatchObject({ W: '40', D: '19' });
  expect(value?.parts['side_left']).toMatchObject({
    stock: 'oak',
    across: ['0', '7/8'],
    deep: { from: '0', size: 'D' },
  });
  expect(Object.keys(value?.parts ?? {})).toEqual(['side_left', 'side_right', 'rail_{i}']);
  expect(value?.shop).toMatchObject({ kerf: '1/8', step: '1/32' });
  expect(value?.drawers).toBeUndefined();
});

test('what says one thing together is replaced whole: extents, lists, a stock of another sort, a joint of another kind', () => {
  const { value } = started(
    `, "parts": { "rail_{i}": { "deep": { "to": "D", "size": "1" } }, "side_left": { "show": ["front"] } },
       "stock": { "oak": { "sheet": "plywood-birch", "thickness": "3/4", "size": ["96", "48"] } },
       "joints": { "rails": { "kind": "groove", "part": "rail_1", "into": "side_left" } }`,
  );
  expect(value?.parts['rail_{i}']?.deep).toEqual({ to: 'D', size: '1' });
  expect(value?.parts['side_left']?.show).toEqual(['front']);
  expect(value?.stock['oak']).toEqual({ sheet: 'plywood-birch', thickness: '3/4', size: ['96', '48'] });
  expect(value?.joints?.['rails']).toEqual({ kind: 'groove', part: 'rail_1', into: 'side_left' });
});

test.each([
  [', "parts": { "foott": null }', 'deletes-nothing', '"foott"'],
  [', "parts": { "side_left": { "deep": { "size": "D" } } }', 'extent-form', '{ "size": "D" }'],
  [', "parts": { "side_left": { "grian": "up" } }', 'key-not-known', '"grian"'],
] as const)('a fault in what is laid over is shown there: %s', (more, code, under) => {
  const { findings, locate } = started(more);
  expect(findings.map((f) => f.code)).toEqual([code]);
  const f = findings[0];
  const at = f && locate(f.path, f.key, f.span);
  expect(at?.lineText.slice(at.column - 1, at.endColumn - 1)).toBe(under);
});

test('a path that is only in what it starts from is shown at "from"', () => {
  const { locate } = started('');
  const at = locate(['parts', 'foot', 'shape', 0]);
  expect(at.lineText.slice(at.column - 1, at.endColumn - 1)).toBe('"sound"');
});

test.each([
  ['a', 'from-circle'],
  ['broken', 'from-faulty'],
  ['nothing', 'from-not-known'],
])('starting from %s: %s', (name, code) => {
  const { findings } = readDefinition(small('').replace('"sound"', `"${name}"`), 'x.json', { shipped });
  expect(findings.map((f) => f.code)).toEqual([code]);
});

test('comments and trailing commas are read in .jsonc only', () => {
  const text = SOUND.replace('"format": 1,', '"format": 1, // the form\n /* more */').replace(
    '"angle": 14 } }',
    '"angle": 14 }, },',
  );
  expect(readDefinition(text, 'x.jsonc').findings).toEqual([]);
  expect(readDefinition(text, 'x.json').findings.map((f) => f.code)).toEqual(['json-comment']);
});

test.each([
  ['\n', 'unix'],
  ['\r\n', 'dos'],
  ['\r', 'old'],
])('places are right whatever ends a line (%j)', (end) => {
  const text = SOUND.replace('"grain": "up"', '"grian": "up"').replaceAll('\n', end);
  const { findings, locate } = readDefinition(text, 'x.json');
  const f = findings[0];
  expect(f && locate(f.path, f.key)).toMatchObject({ line: 12, column: 99, endColumn: 106 });
});

test('a mark at the beginning of the file shifts nothing', () => {
  const { findings, locate } = readDefinition(`\ufeff${SOUND.replace('"in"', '"cm"')}`, 'x.json');
  const f = findings[0];
  expect(f && locate(f.path)).toMatchObject({ line: 4, column: 12 });
});

test('files too large are refused', () => {
  const { findings } = readDefinition(SOUND + ' '.repeat(1_000_001), 'x.json');
  expect(findings.map((f) => f.code)).toEqual(['file-too-large']);
});
test.each(['', '  \n', '[]', '3', '"x"', '{', '{"a"', '{"a":', '[[', '}', '\u0000', '//', '/*'])(
  '%j is refused',
  (text) => {
    const { findings, value, locate } = readDefinition(text, 'x.json');
    expect(value).toBeUndefined();
    expect(findings.length).toBeGreaterThan(0);
    for (const f of findings) expect(locate(f.path, f.key, f.span).line).toBeGreaterThan(0);
  },
);
test('deep nesting is refused before the parser calls itself too often', () => {
  const { findings } = readDefinition('['.repeat(400_000), 'x.json');
  expect(findings.map((f) => f.code)).toEqual(['nested-too-deep']);
});

test('whatever is done to a file: no throw, and each finding stands in the file', () => {
  const piece = fc.constantFrom(
    '"',
    '{',
    '}',
    ',',
    '[',
    ']',
    ':',
    'null',
    '1',
    '"x"',
    '-',
    ' ',
    '\\',
    '\n',
    '½',
    '__proto__',
    '/*',
  );
  fc.assert(
    fc.property(fc.nat(SOUND.length), fc.nat(12), piece, (from, much, put) => {
      const text = SOUND.slice(0, from) + put + SOUND.slice(from + much);
      const lines = text.split('\n');
      const { findings, locate, value } = readDefinition(text, 'x.json');
      expect(value === undefined).toBe(findings.some((f) => f.severity === 'error'));
      for (const f of findings) {
        const at = locate(f.path, f.key, f.span);
        expect(at.lineText).toBe(lines[at.line - 1]);
        expect(at.column).toBeLessThanOrEqual(at.lineText.length + 1);
        expect(at.endColumn).toBeGreaterThan(at.column);
      }
    }),
    { numRuns: 400 },
  );
});

test('a fault is told once, at its cause', () => {
  const text = SOUND.replace('"i = 1..3"', '"i - 1..3"');
  expect(readDefinition(text, 'x.json').findings.map((f) => f.code)).toEqual(['each-form']);
});

test('each', () => {
  const { counts } = readEach('i = 1..3, j=1..2');
  expect(howMany(counts)).toBe(6);
  expect(eachValues(counts)).toEqual([
    { i: 1, j: 1 },
    { i: 1, j: 2 },
    { i: 2, j: 1 },
    { i: 2, j: 2 },
    { i: 3, j: 1 },
    { i: 3, j: 2 },
  ]);
  expect(eachValues([])).toEqual([{}]);
});

/** The limit that the commands set the worker, ms. */
const LIMIT = 120_000;
test('no file that is let in keeps the worker to its limit, however it is made', async () => {
  const many = (n: number, one: (i: number) => string): string =>
    Array.from({ length: n }, (_, i) => one(i)).join(', ');
  const inParts = (parts: string): string => SOUND.replace('"foot": {', () => `${parts}, "foot": {`);
  const cases = [
    inParts(`"${'-'.repeat(500_000)}": {}`),
    inParts(`"${'a_'.repeat(200_000)}": {}`),
    inParts(many(20_000, (i) => `"p_${i}": { "stok": "oak" }`)),
    inParts(many(1_900, (i) => `"p_${i}": { "stock": "oak", "up": ["1-2", "8 1/4-1/2"], "across": { "size": "1" } }`)),
    SOUND.replace('"W / 2"', () => `"${'('.repeat(300_000)}"`),
    SOUND.replace('rail_{1..3}', () => '{'.repeat(300_000)),
    SOUND.replace('"i = 1..3"', () => `"${'i = 1..3,'.repeat(50_000)}"`),
  ];
  const worker = new URL('../../dist/io/packetWorker.js', import.meta.url);
  for (const text of cases) {
    const job: Job = { what: 'check', fileName: 'x.json', text, shipped: {} };
    const answer = await runWatched<Answer>(worker, job, LIMIT, () => undefined);
    expect(answer.stopped).toBe(true);
  }
}, 600_000);
test('a message does not repeat a word of any length', () => {
  const { findings } = readDefinition(
    SOUND.replace('"foot": {', () => `"${'x-'.repeat(5000)}": {`),
    'x.json',
  );
  expect(findings.map((f) => f.code)).toEqual(['id-form']);
  expect(findings[0]?.message.length).toBeLessThan(200);
});
