import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { printDiagnostics } from '../../src/diag/print.js';
import { BAD, SOUND } from './snippets.js';

test('what the bad files depart from is sound', () => {
  const { findings, locate } = readDefinition(SOUND, 'sound.json');
  expect(printDiagnostics(findings, locate, 'sound.json')).toBe('');
});

test.each(BAD)('$name: $code', (bad) => {
  expect(SOUND).toContain(bad.find);
  const text = SOUND.replace(bad.find, () => bad.put);
  const { findings, locate, value } = readDefinition(text, 'bad.json');
  const first = findings[0];
  expect(findings.map((f) => f.code)).toEqual([bad.code]);
  if (first === undefined) return;
  expect(value).toBeUndefined();
  const at = locate(first.path, first.key, first.span);
  const under = text.split('\n')[at.line - 1]?.slice(at.column - 1, at.endColumn - 1);
  expect({ line: at.line, column: at.column, under }).toEqual({ line: bad.line, column: bad.column, under: bad.under });
  if (bad.says !== undefined) {
    expect(`${first.message} ${first.hint ?? ''}`.toLowerCase()).toContain(bad.says.toLowerCase());
  }
});

test('all structural faults are found in one run, in the order of the file', () => {
  const text = SOUND.replace('"units": "in"', '"units": "cm"')
    .replace('"grain": "up"', '"grian": "up"')
    .replace('"about": "W / 2"', '"about": "8-1/4"')
    .replace('"coats": 3', '"coats": "3"');
  const { findings } = readDefinition(text, 'bad.json');
  expect(findings.map((f) => f.code)).toEqual([
    'word-not-known',
    'key-not-known',
    'minus-without-spaces',
    'wrong-type',
  ]);
});
