import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Definition } from '../../../src/definition/definition.js';
import { readDefinition } from '../../../src/definition/read.js';
import { blanksOf, boardsIn } from '../../../src/layout/boards/blanks.js';
import { layoutPiece } from '../../../src/layout/layout-piece.js';
import { inches, toIn } from '../../../src/lengths/length.js';
import type { Piece } from '../../../src/piece/piece.js';
import { resolvePiece } from '../../../src/piece/resolve.js';
import type { Board } from '../../../src/layout/boards/board.js';

const TEXT = readFileSync(new URL('../../../templates/pieces/tall-chest.jsonc', import.meta.url), 'utf8');
const chest = (change: (d: Definition) => Definition = (d) => d): Piece => {
  const made = resolvePiece(change(readDefinition(TEXT, 'tall-chest.jsonc').value as Definition));
  expect(made.findings.filter((f) => f.severity === 'error')).toEqual([]);
  return made.value as Piece;
};
const piece = chest();
const blanks = blanksOf(piece);

test('every part of lumber has its blanks, and each blank a name and a mark of its own', () => {
  const lumber = piece.parts.filter((p) => piece.stocks[p.stock]?.kind === 'lumber').map((p) => p.id);
  const told = blanks.flatMap((b) => b.gang ?? [b.part]);
  expect([...new Set(told)].sort()).toEqual([...lumber].sort());
  expect(new Set(blanks.map((b) => b.id)).size).toBe(blanks.length);
});

test('a top of staves: alike, each with its mark, wide enough together', () => {
  const top = piece.parts.find((p) => p.id === 'top');
  const staves = blanks.filter((b) => b.part === 'top');
  expect(staves.length).toBe(top?.staves);
  expect(new Set(staves.map((b) => `${b.width} ${b.length}`)).size).toBe(1);
  expect(staves.map((b) => b.mark)).toEqual(staves.map((_, i) => `${top?.mark} ${'abcdef'[i]}`));
  // 20 in deep with its overhangs: the rough staves make it and their jointing, a length of 37 1/2 an inch over.
  const wide = toIn(staves.reduce((s, b) => s + b.width, 0));
  const [w, l] = [top?.width ?? 1, top?.length ?? 0].map((a) => toIn(top?.size[a as 0].value ?? 0)) as [number, number];
  expect(wide).toBeGreaterThanOrEqual(w + 0.5 + 0.25 * staves.length - 1e-9);
  expect(toIn(staves[0]?.length ?? 0)).toBeGreaterThanOrEqual(l + 1);
  expect(toIn(staves[0]?.length ?? 0)).toBeLessThan(l + 1.125 + 1e-9);
});

test('a stave is no wider than the jointer', () => {
  const narrow = (width: string) =>
    chest((d) => ({ ...d, shop: { ...d.shop, machines: { ...d.shop?.machines, jointer: { width } } } }));
  for (const b of blanksOf(narrow('4')).filter((x) => x.part === 'top')) expect(toIn(b.width)).toBeLessThanOrEqual(4);
});

test('the fronts are a run in their order', () => {
  const [run] = piece.runs ?? [];
  const fronts = blanks.filter((b) => b.run?.id === run?.id).sort((a, b) => (a.run?.at ?? 0) - (b.run?.at ?? 0));
  expect(fronts.map((b) => b.part)).toEqual(run?.parts);
  expect(fronts.every((b) => b.run?.most === 1 && b.shows === 'one')).toBe(true);
});

test.each([
  ['one board', 1],
  ['at most two boards', 2],
  ['3 boards of one log', 3],
  ['the darkest', 1],
  [undefined, 1],
] as const)('%s', (from, n) => expect(boardsIn(from)).toBe(n));

test('short parts are milled together, never shorter than the planer feeds', () => {
  // The divider is 5 11/16 long, of four staves: three in one length make 3 x 5 11/16 + 2 x 1/8 + 1 in, rounded up to 18 3/8;
  // the fourth is milled alone in the 14 in that a planer feeds (from memory).
  const short = blanks.filter((b) => b.part === 'divider');
  expect(short.map((b) => [b.mark, toIn(b.length)])).toEqual([
    ['A5 a + b + c', 18.375],
    ['A5 d', 14],
  ]);
});

test('spares and trial lengths that a stock asks for, and what it allows', () => {
  const more = blanksOf(
    chest((d) => {
      const [id, oak] = Object.entries(d.stock).find(([, s]) => 'lumber' in s) as [string, object];
      return {
        ...d,
        stock: { ...d.stock, [id]: { ...oak, spares: { divider: 2 }, trials: 1, allow: ['sapwood'] } } as never,
      };
    }),
  );
  expect(more.filter((b) => b.spare && b.part === 'divider' && b.id.includes('.spare')).length).toBe(2);
  const trials = more.filter((b) => b.id.includes('.trial'));
  expect(trials.length).toBeGreaterThan(0);
  expect(trials.every((b) => toIn(b.length) === 16 && toIn(b.width) <= 4 && b.shows === 'none')).toBe(true);
  expect(more.find((b) => b.part === 'top')?.allows).toEqual(['sapwood']);
});

test('what no board gives is a warning with the reason, at its run or its part', () => {
  const board: Board = {
    id: 'a',
    wood: 'oak-white',
    quarter: '5/4',
    thickness: inches(1.25),
    length: inches(100),
    width: [inches(9), inches(9)],
    defects: [],
  };
  const laid = layoutPiece(piece, 0.1, [board]);
  const told = laid.findings.filter((f) => f.code === 'boards-missing');
  expect(told.every((f) => f.severity === 'warning' && f.hint !== undefined && (f.touches?.length ?? 0) > 0)).toBe(
    true,
  );
  expect(told.some((f) => f.path.join('.') === 'runs.fronts')).toBe(true);
  expect(laid.value?.boards?.boards.length).toBe(1);
  expect(layoutPiece(piece, 0.1).value?.boards).toBeUndefined();
});
