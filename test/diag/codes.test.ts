import { join } from 'node:path';
import { expect, test } from 'vitest';
import { CODES } from '../../src/diag/codes.js';
import { MESSAGES } from '../../src/diag/messages.js';
import { EXPRESSION_CODES } from '../../src/lengths/faults.js';
import { codesIn } from './codes.js';

const uses = codesIn(join(import.meta.dirname, '../../src'));
const later: readonly string[] = Object.keys(CODES);
const earlier: readonly string[] = [...Object.keys(MESSAGES), ...EXPRESSION_CODES];

test('every code in the source stands in a catalogue', () => {
  const known = new Set([...later, ...earlier]);
  expect(uses.length).toBeGreaterThan(200);
  expect(uses.filter((u) => !known.has(u.code))).toEqual([]);
});
test('every code of the catalogue is given somewhere', () => {
  const given = new Set(uses.map((u) => u.code));
  expect(later.filter((c) => !given.has(c))).toEqual([]);
});
test('no code stands in two catalogues; all are kebab-case, in order, each with a meaning of its own', () => {
  expect(later.filter((c) => earlier.includes(c))).toEqual([]);
  expect(later.filter((c) => !/^[a-z]+(-[a-z0-9]+)*$/.test(c))).toEqual([]);
  expect(later).toEqual([...later].sort());
  expect(new Set(Object.values(CODES)).size).toBe(later.length);
});
test('a code is given by one room, save where two say the same', () => {
  const rooms = new Map<string, Set<string>>();
  for (const u of uses) rooms.set(u.code, (rooms.get(u.code) ?? new Set()).add(u.room));
  const shared = [...rooms].filter(([, r]) => r.size > 1).map(([code, r]) => `${code}: ${[...r].sort().join(', ')}`);
  expect(shared.sort()).toEqual([
    // A row that an `each` counts, and one in a pattern.
    'each-range: definition, lengths',
    // A form that the reader finds in a file, and the piece in what a row or a copy makes.
    'extent-form: definition, piece',
    // The same limit on a file that is opened and on text that is handed over.
    'file-too-large: definition, io',
    'id-reserved: definition, piece',
    'id-twice: definition, piece',
    'joint-leans: joints, piece',
  ]);
});
