import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { explain } from '../../src/piece/explain.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { CASE } from '../bad/whole.js';

const pieceOf = (text: string) => {
  const { value } = readDefinition(text, 'case.json');
  const piece = value && resolvePiece(value).value;
  if (!piece) throw new Error('not sound');
  return piece;
};

test('the figures of a wood are told with their sources', () => {
  const lines = explain(pieceOf(CASE), 'oak');
  expect(lines[0]).toBe('oak: White oak, 4/4 quartered');
  // Wood Handbook, tables 5-3 and 13-5: 0.68; .00365.
  expect(lines).toContain('  specific gravity = 0.68 (Wood Handbook, FPL-GTR-190, table 5-3a)');
  expect(lines.join('\n')).toMatch(/flat-sawn width, per 1 % = 0?\.00365 .*table 13-5\)/);
  expect(lines.join('\n')).not.toContain('*');
});
test('what was not read in its source is marked', () => {
  const lines = explain(pieceOf(CASE.replace('"lumber": "oak-white"', '"lumber": "teak"')), 'oak');
  expect(lines.filter((l) => l.endsWith(' *')).length).toBeGreaterThan(1);
  expect(lines.at(-1)).toBe('  * not read in its source');
});
test('a panel has its stiffness both ways', () => {
  const lines = explain(pieceOf(CASE), 'ply');
  // Table 12-1: 6.96 GPa is 1.01 million psi.
  expect(lines.join('\n')).toMatch(/along its face grain = 1.01 million psi/);
  expect(lines.join('\n')).toContain('half of along, from memory');
});
