import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { inShop, readShopFile } from '../../src/definition/shopFile.js';
import { layoutPiece, nestJob } from '../../src/layout/layout-piece.js';
import { inches, mm, toIn } from '../../src/lengths/length.js';
import type { Piece } from '../../src/piece/piece.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { CASE } from '../bad/whole.js';

/** The sound case (its back is 35 19/32 high and 29 3/16 wide, tongues and all; a drawer bottom is 11 7/16 x 26 29/32) with `old` for `now`, in a shop of its own where one is given. */
function pieceOf(old: string, now: string, shop?: string): Piece {
  const read = readDefinition(
    CASE.replace(old, () => now),
    'case.jsonc',
    { shipped: () => undefined, shippedNames: [] },
  );
  if (!read.value) throw new Error(JSON.stringify(read.findings));
  const file = shop === undefined ? undefined : readShopFile(shop, 'shop.jsonc', 'in');
  if (file && !file.value) throw new Error(JSON.stringify(file.findings));
  const { value, findings } = resolvePiece(file?.value ? inShop(read.value, file.value, read.shop) : read.value);
  if (!value) throw new Error(JSON.stringify(findings));
  return value;
}
const SIZE = '"size": ["96", "48"]';
const shop = (more: string): string => `{ "format": 1, "units": "mm", ${more} }`;
const offcut = (id: string, thickness: string, size: string, more = ''): string =>
  `{ "id": "${id}", "sheet": "plywood-birch", "thickness": "${thickness}", ${size}${more} }`;

describe('what the definition and the shop say of sheet goods comes to the layout', () => {
  it('further sizes with prices, spares', () => {
    const piece = pieceOf(
      SIZE,
      `${SIZE}, "price": 60, "sizes": [{ "size": ["60", "60"], "price": 42, "count": 2 }], "spares": { "ba*": 2 }`,
    );
    const stock = nestJob(piece).stocks[0];
    expect(stock?.sheets).toEqual([
      { length: inches(96), width: inches(48), price: 60 },
      { length: inches(60), width: inches(60), price: 42, count: 2 },
    ]);
    expect(stock?.items.map((i) => [i.part, i.mark, i.spare ?? false])).toEqual([
      ['back', 'A4', false],
      ['back', 'A4(spare)', true],
      ['back', 'A4(spare)', true],
      ['drawer_1.bottom', 'D1.6', false],
    ]);
    const { sheets, counts } = layoutPiece(piece).value ?? { sheets: [], counts: [] };
    expect(sheets.flatMap((s) => s.pieces.map((p) => p.spare ?? false)).sort()).toEqual([false, false, true, true]);
    // Backs of 35 19/32 x 29 3/16: one row of two in 96 x 48; 60 x 60 holds two as well, one over the other, for 42.
    expect(counts).toEqual([{ stock: 'ply', used: 2, bound: 2, proved: true, cost: 84, choice: true }]);
  });
  it('offcuts of the same panel as thick as the sheet is, turned so that the grain lies as its', () => {
    const size = '"length": "1450", "width": "1000"';
    const piece = pieceOf(
      SIZE,
      SIZE,
      shop(
        `"offcuts": [${offcut('K1', '5.25', size, ', "grain": "width"')}, ${offcut('K2', '6', size)}, ${offcut('K3', '5.2', size, ', "grain": "none"')}]`,
      ),
    );
    // 0.205 in are 5.207 mm: K1 is 0.043 thicker, K2 0.8; K3 has no grain where the sheet has one.
    expect(nestJob(piece).stocks[0]?.sheets.slice(1)).toEqual([{ name: 'K1', length: mm(1000), width: mm(1450) }]);
    const sheets = layoutPiece(piece).value?.sheets ?? [];
    // 29 3/16 + kerf + 26 29/32 are 56.2 in, 1450 mm are 57.1: both lie on it.
    expect(sheets.map((s) => [s.rack, s.pieces.map((p) => toIn(p.h))])).toEqual([['K1', [29.1875, 26.90625]]]);
  });
  it('the way of sawing, the least offcut, what one person steers, effort', () => {
    const saw = '"saw": { "stages": "any", "first": "rip", "keep": { "length": "100", "width": "300" } }';
    const piece = pieceOf(SIZE, SIZE, shop(`${saw}, "alone": { "length": "800", "width": "1500" }`));
    expect(nestJob(piece, 3)).toMatchObject({
      stages: Infinity,
      first: 'rip',
      keep: [mm(300), mm(100)],
      alone: [mm(1500), mm(800)],
      budget: 3 * (nestJob(piece).budget ?? 0),
    });
  });
});
