import { toIn, type Length } from '../lengths/length.js';
import type { Part, Piece } from '../piece/piece.js';
import { overAll } from './parts.js';

/**
 * Board feet of `count` boards, sizes in inches. A board under 1 in thick counts as 1
 * (Noyes, Handwork in Wood, 1910, p. 48; Griffith; Danforth).
 */
export const boardFeet = (thick: number, wide: number, long: number, count = 1): number =>
  (count * Math.max(1, thick) * wide * long) / 144;

/** Rough thickness (in) of lumber sold by quarters: `5/4` is 1 1/4. Undefined when it is no such name. */
export function quarterInches(quarter: string): number | undefined {
  const [, n, d] = /^(\d+)\/(\d+)$/.exec(quarter) ?? [];
  return n === undefined || Number(d) === 0 ? undefined : Number(n) / Number(d);
}

export interface BoardFootage {
  readonly stock: string;
  readonly name: string;
  readonly quarter: string;
  /** Finished thickness, nm. */
  readonly thickness: Length;
  readonly parts: readonly string[];
  /** Finished sizes over all at the rough thickness, nothing added. */
  readonly net: number;
  /** The same with the shop's allowances of width and length. */
  readonly rough: number;
}

/** Lumber in the piece by stock and finished thickness, board feet; a list to check a bill by, not one to buy by. */
export function footage(piece: Piece): BoardFootage[] {
  const groups = new Map<string, Part[]>();
  for (const p of piece.parts) {
    if (piece.stocks[p.stock]?.kind !== 'lumber') continue;
    const key = `${p.stock}|${p.size[p.thickness].value}`;
    groups.set(key, [...(groups.get(key) ?? []), p]);
  }
  return [...groups.values()]
    .map((parts) => total(piece, parts))
    .sort((a, b) => (a.stock === b.stock ? b.thickness - a.thickness : a.stock < b.stock ? -1 : 1));
}

function total(piece: Piece, parts: readonly Part[]): BoardFootage {
  const first = parts[0] as Part;
  const stock = piece.stocks[first.stock];
  const thickness = first.size[first.thickness].value;
  const thick = Math.max(quarterInches(stock?.quarter ?? '') ?? 0, toIn(thickness));
  const [, w, l] = piece.shop.allowance;
  const sum = (wide: number, long: number): number =>
    parts.reduce(
      (s, p) => s + boardFeet(thick, toIn(overAll(p, p.width) + wide), toIn(overAll(p, p.length) + long)),
      0,
    );
  return {
    stock: first.stock,
    name: stock?.name ?? first.stock,
    quarter: stock?.quarter ?? '',
    thickness,
    parts: parts.map((p) => p.id),
    net: sum(0, 0),
    rough: sum(w, l),
  };
}
