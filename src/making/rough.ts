import type { Part, Piece, Stock } from '../piece/piece.js';
import { roughOf, type Rough, type Sizes } from '../shop/rough.js';
import { compareMarks } from '../words/markOrder.js';
import { overAll } from './parts.js';

/** A part of lumber with its finished sizes over all and its rough blank. */
export interface Blank {
  readonly part: Part;
  readonly stock: Stock;
  readonly finished: Sizes;
  readonly rough: Rough;
}
/** Parts of one stock with one blank and one name, but for left and right. */
export interface BlankRow {
  readonly name: string;
  readonly blanks: readonly Blank[];
}

/** Every part of lumber with its blank, in the order of the parts. */
export function blanksOf(piece: Piece): Blank[] {
  return piece.parts.flatMap((part): Blank[] => {
    const stock = piece.stocks[part.stock];
    if (stock?.kind !== 'lumber') return [];
    const finished: Sizes = [overAll(part, part.thickness), overAll(part, part.width), overAll(part, part.length)];
    return [{ part, stock, finished, rough: roughOf(finished, piece.shop.allowance, piece.units, part.staves) }];
  });
}

/** The name of a part without its hand and place, so that alike parts share it. */
export const plainName = (name: string): string =>
  name
    .replace(/^((front|back) )?(left|right) /, '')
    .replace(/ (left|right)\b/, '')
    .replace(/, .*$/, '');

/** Rows of blanks that are alike by `key`; rows in the order of their first mark, marks in order within. */
export function rowsBy(blanks: readonly Blank[], key: (b: Blank) => string): BlankRow[] {
  const rows = new Map<string, Blank[]>();
  for (const b of blanks) rows.set(key(b), [...(rows.get(key(b)) ?? []), b]);
  return [...rows.values()]
    .map((mine) => [...mine].sort((a, b) => compareMarks(a.part.mark, b.part.mark)))
    .map((sorted) => ({ name: namesOf(sorted), blanks: sorted }))
    .sort((a, b) => compareMarks(markOf(a), markOf(b)));
}
const markOf = (row: BlankRow): string => row.blanks[0]?.part.mark ?? '';
/** `rail`, `rail and cleat`, `rail, cleat and others`. */
function namesOf(blanks: readonly Blank[]): string {
  const names = [...new Set(blanks.map((b) => plainName(b.part.name)))];
  return names.length > 2 ? `${names.slice(0, 2).join(', ')} and others` : names.join(' and ');
}
/** Finished sizes, staves and stock: what makes two blanks one row. */
export const sameBlank = (b: Blank): string =>
  [b.stock.id, ...b.finished, b.rough.staves, plainName(b.part.name)].join('|');
