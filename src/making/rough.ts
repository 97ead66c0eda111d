import { plural } from '../lengths/counted.js';
import type { Part, Piece, Stock } from '../piece/piece.js';
import { roughWithin, type Rough, type Sizes } from '../shop/rough.js';
import { compareMarks } from '../words/markOrder.js';
import { overAll } from '../geom/growth.js';

/** A part of lumber with its finished sizes over all and its rough blank. */
export interface Blank {
  readonly part: Part;
  readonly stock: Stock;
  readonly finished: Sizes;
  readonly rough: Rough;
}
/** Blanks that are alike in some way, by mark. */
export interface BlankRow {
  /** In its number. */
  readonly name: string;
  readonly blanks: readonly Blank[];
}

/** Every part of lumber with its blank, in the order of the parts. */
export function blanksOf(piece: Piece): Blank[] {
  return piece.parts.flatMap((part): Blank[] => {
    const stock = piece.stocks[part.stock];
    if (stock?.kind !== 'lumber') return [];
    const finished: Sizes = [overAll(part, part.thickness), overAll(part, part.width), overAll(part, part.length)];
    const jointer = piece.profile?.machines.jointer?.width;
    const rough = roughWithin(finished, piece.shop.allowance, piece.units, part.staves ?? 1, jointer);
    return [{ part, stock, finished, rough }];
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
/** `rails`, `rails and cleat`, `drawer box fronts and backs`: each name in its number, what begins alike said once. */
export function namesOf(blanks: readonly Blank[]): string {
  const counts = new Map<string, number>();
  for (const b of blanks) counts.set(plainName(b.part.name), (counts.get(plainName(b.part.name)) ?? 0) + 1);
  const all = [...counts].map(([name, n]) => (n > 1 ? plural(name) : name));
  const begin = (all[0] ?? '').replace(/[^ ]*$/, '');
  const shared = begin !== '' && all.every((n) => n.startsWith(begin));
  const short = all.map((n, i) => (shared && i > 0 ? n.slice(begin.length) : n));
  if (short.length > 3) return `${short.slice(0, 2).join(', ')} and others`;
  return short.join(', ').replace(/, ([^,]*)$/, ' and $1');
}
/** Finished sizes, staves and stock: what is sawn alike; and with the name, what is one set. */
export const sameSizes = (b: Blank): string => [b.stock.id, ...b.finished, b.rough.staves].join('|');
export const sameBlank = (b: Blank): string => `${sameSizes(b)}|${plainName(b.part.name)}`;
