import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import { makeSolids } from '../../src/solids/make.js';
import { overAll, pieceOf } from './pieces.js';

/**
 * Three plans in the public domain, held against the bills that their books print, piece by piece (finished sizes):
 * H. H. Windsor, *Mission Furniture: How to Make It*, Part 3 (1912), pp. 105-108 (tabouret) and 33-35 (umbrella stand);
 * E. W. Foster, *Carpentry and Woodwork* (1911), chapter XXXV (toilet box; top and bottom as squared after glueing).
 */
const BILLS: Readonly<Record<string, readonly string[]>> = {
  tabouret: ['4 leg 1 1/2 x 1 1/2 x 22', '1 top 3/4 x 14 x 14', '4 top rail 3/4 x 4 x 12', '4 lower rail 3/4 x 3 x 12'],
  'toilet-box': ['2 side 1/2 x 3 x 11', '2 end 1/2 x 3 x 7', '1 top 1/2 x 6 1/2 x 10 1/2', '1 bottom 1/2 x 6 1/2 x 10 1/2'],
  'umbrella-stand': [
    '4 post 1 1/2 x 1 1/2 x 28',
    '4 top rail 7/8 x 2 x 10',
    '4 lower rail 7/8 x 3 x 10',
    '4 slat 3/8 x 3 x 20',
    '1 bottom 7/8 x 10 x 10',
  ],
};
const plan = (name: string) => pieceOf(readFileSync(new URL(`plans/${name}.jsonc`, import.meta.url), 'utf8'), `${name}.jsonc`);
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

describe.each(Object.keys(BILLS))('%s', (name) => {
  it('computed sizes equal the bill of the book, piece by piece', () => {
    const piece = plan(name);
    const counts = new Map<string, number>();
    for (const p of piece.parts) counts.set(`${p.name} ${overAll(p, piece)}`, (counts.get(`${p.name} ${overAll(p, piece)}`) ?? 0) + 1);
    expect([...counts].map(([row, n]) => `${n} ${row}`).sort()).toEqual([...(BILLS[name] ?? [])].sort());
  });
});
describe('what the books leave open', () => {
  it.each(['tabouret', 'toilet-box'])('%s closes: no part stands in another', (name) => {
    expect(makeSolids(plan(name), kernel).findings.filter((f) => f.severity === 'error')).toEqual([]);
  });
  it('the bottom of the umbrella stand does not pass between its rails: 9 5/8 clear for 10, found with part, place and volume', () => {
    const found = makeSolids(plan('umbrella-stand'), kernel).findings.filter((f) => f.severity === 'error');
    expect(found.every((f) => f.code === 'parts-overlap' && f.touches?.includes('bottom'))).toBe(true);
    const rails = ['low_f', 'low_b', 'low_l', 'low_r'].filter((id) => found.some((f) => f.touches?.includes(id)));
    expect(rails).toHaveLength(4);
    // (10 - 9 5/8) / 2 = 3/16 of each lower rail, over 9 between the posts and 7/8 thick: 1.477 cubic inches.
    expect(found.find((f) => f.touches?.includes('low_f'))?.message).toMatch(/1\.5 cubic inches.*deep 1 to 1\.188 in/);
  });
});
