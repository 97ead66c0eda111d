import { expect, test } from 'vitest';
import type { Diagnostic } from '../../src/diag/diagnostic.js';
import { didYouMean, suggestion, wordDistance } from '../../src/diag/didYouMean.js';
import { MESSAGES, diagnose } from '../../src/diag/messages.js';
import type { Location } from '../../src/diag/print.js';
import { sentence } from '../../src/diag/sentence.js';
import { diagnosticJson, printDiagnostic, printDiagnostics, sourceLines } from '../../src/diag/print.js';
import { EXPRESSION_CODES } from '../../src/lengths/faults.js';

const finding: Diagnostic = {
  code: 'minus-without-spaces',
  severity: 'error',
  path: ['measures', 'W'],
  message: '8-1/4 can be read two ways',
  hint: 'write 8 1/4 for the mixed number, or 8 - 1/4 to take away',
};
const at = (lineText: string, column: number, endColumn: number, line = 7): Location => ({
  line,
  column,
  endColumn,
  lineText,
});

test('a finding is printed with its place, its line, carets and the hint', () => {
  const locate = (): Location => at('  "W": "8-1/4",', 9, 14);
  expect(printDiagnostic(finding, locate, 'chest.json')).toBe(
    [
      'chest.json:7:9: error[minus-without-spaces]: 8-1/4 can be read two ways',
      '7 |   "W": "8-1/4",',
      '            ^^^^^',
      '  hint: write 8 1/4 for the mixed number, or 8 - 1/4 to take away',
    ].join('\n'),
  );
});

test('what was wanted stands on a line of its own', () => {
  const d = diagnose('wrong-type', { path: [] }, { found: 'null', wanted: 'a number', example: '3' });
  expect(printDiagnostic(d, () => at('null', 1, 5, 1), 'x.json')).toBe(
    'x.json:1:1: error[wrong-type]: Found null.\n1 | null\n    ^^^^\n  wanted: a number\n  hint: Write such as 3',
  );
});

test('the carets stand under the columns where tabs are', () => {
  // a tab runs on to the next multiple of four: "\t\tab" shows "ab" at column 9
  expect(sourceLines(at('\t\tab', 3, 5))).toEqual(['        ab', '        ^^']);
  expect(sourceLines(at('a\tb', 3, 4))).toEqual(['a   b', '    ^']);
  expect(sourceLines(at('a\tb', 2, 3))).toEqual(['a   b', ' ^^^']);
});

test('a long line is shown around the fault, the carets still under it', () => {
  const line = `${'x'.repeat(300)}FAULT${'y'.repeat(300)}`;
  const [source, carets] = sourceLines(at(line, 301, 306), 60);
  expect(source.length).toBeLessThanOrEqual(66);
  expect(source.startsWith('...') && source.endsWith('...')).toBe(true);
  expect(source.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1)).toBe('FAULT');
  const early = sourceLines(at(line, 1, 4), 60);
  expect(early[0].startsWith('xxx')).toBe(true);
  expect(early[1]).toBe('^^^');
});

test('a stretch longer than the window keeps its carets inside it', () => {
  const [source, carets] = sourceLines(at('z'.repeat(500), 1, 501), 60);
  expect(carets.length).toBeLessThanOrEqual(source.length);
});

test('an end of line has one caret', () => {
  expect(sourceLines(at('ab', 3, 3))).toEqual(['ab', '  ^']);
  expect(sourceLines(at('', 1, 2))).toEqual(['', '^']);
});

test('colour is put around and takes nothing away', () => {
  const locate = (): Location => at('  "W": "8-1/4",', 9, 14);
  const painted = printDiagnostic(finding, locate, 'chest.json', { color: true });
  expect(painted).toContain('\u001b[31m');
  // eslint-disable-next-line no-control-regex
  expect(painted.replace(/\u001b\[\d+m/g, '')).toBe(printDiagnostic(finding, locate, 'chest.json'));
});

test('findings are counted', () => {
  const locate = (): Location => at('x', 1, 2);
  const warning: Diagnostic = { ...finding, severity: 'warning' };
  expect(printDiagnostics([finding, finding, warning], locate, 'f').endsWith('\n\n2 errors, 1 warning')).toBe(true);
  expect(printDiagnostics([], locate, 'f')).toBe('');
});

test('as data for other programs', () => {
  const json = diagnosticJson(finding, () => at('x', 3, 8), 'f.json');
  expect(json).toMatchObject({ file: 'f.json', line: 7, column: 3, endColumn: 8, code: 'minus-without-spaces' });
  expect(JSON.parse(JSON.stringify(json))).toEqual(json);
});

test.each([
  // the classic worked example: kitten, sitting = 3 (two letters changed, one added)
  ['kitten', 'sitting', 3],
  ['', 'abc', 3],
  ['ab', 'ba', 1],
  ['same', 'same', 0],
  ['ca', 'abc', 3], // optimal string alignment: 3, where the unrestricted distance is 2
] as const)('from %s to %s is %i', (a, b, d) => {
  expect(wordDistance(a, b)).toBe(d);
  expect(wordDistance(b, a)).toBe(d);
});

test('the word that was meant', () => {
  expect(didYouMean('grian', ['grain', 'group', 'up'])).toBe('grain');
  expect(didYouMean('Rail-2', ['rail_2', 'rail_3'])).toBe('rail_2');
  expect(didYouMean('cm', ['in', 'mm'])).toBeUndefined();
  expect(didYouMean('zebra', ['grain', 'group'])).toBeUndefined();
  expect(didYouMean('railx', ['raila', 'railb'])).toBe('raila');
  expect(suggestion('cm', ['mm', 'in'])).toBe('known here: in, mm');
  expect(suggestion('q', [])).toBeUndefined();
});

test('codes are kebab-case, and no code has two meanings', () => {
  const codes: readonly string[] = [...Object.keys(MESSAGES), ...EXPRESSION_CODES];
  expect(codes.filter((c) => !/^[a-z]+(-[a-z]+)*$/.test(c))).toEqual([]);
  expect(new Set(codes).size).toBe(codes.length);
});

test.each([
  ['a comma is missing', 'A comma is missing.'],
  ['did you mean room?', 'Did you mean room?'],
  ['rail_1 does not reach', 'rail_1 does not reach.'],
  ['8-1/4 can be read two ways', '8-1/4 can be read two ways.'],
  ['"x" is given twice', '"x" is given twice.'],
])('%j as a sentence', (text, whole) => expect(sentence(text)).toBe(whole));
