import type { Board, BoardLayout, Defect } from './board.js';
import { edgeAt } from './clear.js';

/**
 * The stock of boards after cutting: those that were not touched as they were, and of the others the remnants worth keeping,
 * named after their board (`B1-R1`), their defects with them, their price by their share of the board.
 */
export function boardsAfter(layout: BoardLayout, boards: readonly Board[]): Board[] {
  const cut = new Map(layout.boards.map((b) => [b.board, b]));
  return boards.flatMap((board): Board[] => {
    const was = cut.get(board.id);
    return was ? was.remnants.map(({ name, at }) => remnant(board, name, at)) : [board];
  });
}

function remnant(board: Board, name: string, [x0, y0, x1, y1]: readonly [number, number, number, number]): Board {
  const wide = (x: number): number => Math.max(1, Math.floor(Math.min(y1, edgeAt(board, x))) - y0);
  const width: [number, number] = [wide(x0), wide(x1)];
  const length = x1 - x0;
  const share = (length * (width[0] + width[1])) / (board.length * (board.width[0] + board.width[1]));
  const high = Math.max(...width);
  const defects = board.defects.flatMap((d): Defect[] => {
    const at = [
      Math.max(d.at[0] - x0, 0),
      Math.max(d.at[1] - y0, 0),
      Math.min(d.at[2] - x0, length),
      Math.min(d.at[3] - y0, high),
    ] as const;
    return at[2] > at[0] && at[3] > at[1] ? [{ ...d, at }] : [];
  });
  const less = (v: number | undefined, by: number): number | undefined =>
    v === undefined ? undefined : Math.round(v * by);
  const crook = less(board.crook, (length / board.length) ** 2);
  const bow = less(board.bow, (length / board.length) ** 2);
  const cup = less(board.cup, (high / Math.max(...board.width)) ** 2);
  const { crook: _c, bow: _b, cup: _u, ...rest } = board;
  return {
    ...rest,
    id: `${board.id}-${name}`,
    length,
    width,
    defects,
    ...(board.price === undefined ? {} : { price: Math.round(board.price * share * 100) / 100 }),
    ...(crook === undefined ? {} : { crook }),
    ...(bow === undefined ? {} : { bow }),
    ...(cup === undefined ? {} : { cup }),
  };
}
