import { expect, test } from 'vitest';
import { counted, plural } from '../../src/lengths/counted.js';

/** English spelling: sibilants take es, a consonant and y become ies, lf and rf become ves. */
test('numbers and their nouns', () => {
  expect(counted(1, 'place')).toBe('1 place');
  expect(counted(34, 'place')).toBe('34 places');
  expect(counted(0, 'row')).toBe('0 rows');
  expect(['box', 'shelf', 'stretcher', 'bench', 'tray', 'baluster', 'dowel', 'gallery'].map(plural)).toEqual(
    ['boxes', 'shelves', 'stretchers', 'benches', 'trays', 'balusters', 'dowels', 'galleries'], // prettier-ignore
  );
  expect(plural('top rail, front')).toBe('top rails, front');
});
