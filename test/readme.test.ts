import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { overAll, pieceOf } from './specimens/pieces.js';

/** The definition that README shows is sound, and its dado lengthens the shelf by two thirds of a side. */
it('the definition in README makes what it says', () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  const block = /```jsonc\n([^]*?)```/.exec(readme)?.[1] ?? '';
  const shelf = pieceOf(block);
  expect(shelf.parts.map((p) => `${p.id} ${overAll(p, shelf)}`)).toEqual([
    'end_left 3/4 x 8 x 12',
    'end_right 3/4 x 8 x 12',
    'shelf 3/4 x 8 x 23',
  ]);
});

it('what README adds to it is read too', () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  const [first, more] = [...readme.matchAll(/```jsonc\n([^]*?)```/g)].map((m) => m[1] ?? '');
  const whole = `${(first ?? '').trimEnd().slice(0, -1)}, ${(more ?? '').trim().slice(1)}`;
  const piece = pieceOf(whole);
  expect(piece.use?.loads['shelf']?.pascals).toBeCloseTo(1915.2, 1);
  expect(piece.delivery?.doors.length).toBe(1);
  expect(piece.accepted?.[0]?.by).toBe('sample');
});
