import { feetOf, feetOfBoard } from '../../shop/board-feet.js';
import type { Blank, Board, CutBoard, LaidBoards } from '../../layout/boards/board.js';
import type { Prepared } from '../input.js';

/** Name of a wood of boards as the piece calls it: `White oak 5/4`. */
export function woodOf(input: Prepared, wood: string, quarter: string): string {
  const stock = Object.values(input.piece.stocks).find((s) => s.kind === 'lumber' && s.material === wood);
  return [stock?.name ?? wood, quarter].filter(Boolean).join(' ');
}
/** The boards that are cut, each with its layout, in the order of the layout. */
export const usedBoards = (laid: LaidBoards): { readonly board: Board; readonly cut: CutBoard }[] =>
  laid.boards.flatMap((cut) => {
    const board = laid.stock.find((b) => b.id === cut.board);
    return board && cut.pieces.length > 0 ? [{ board, cut }] : [];
  });
export const blankOf = (laid: LaidBoards, id: string): Blank | undefined => laid.blanks.find((b) => b.id === id);

/** One wood and quarter: what is cut, and how good that is. */
export interface WoodSum {
  readonly wood: string;
  readonly quarter: string;
  readonly boards: readonly string[];
  /** Board feet of the boards cut, and of the rough pieces that come out of them. */
  readonly feet: number;
  readonly net: number;
  /** Value that no cheaper choice is ruled out for; 0 where it is proved. */
  readonly open: number;
  readonly proved: boolean;
}
export function woodSums(laid: LaidBoards): WoodSum[] {
  const used = usedBoards(laid);
  return laid.counts
    .map((c): WoodSum => {
      const mine = used.filter(({ board }) => board.wood === c.wood && board.quarter === c.quarter);
      const pieces = mine.flatMap(({ board, cut }) => cut.pieces.map((p) => ({ board, p })));
      return {
        wood: c.wood,
        quarter: c.quarter,
        boards: mine.map(({ board }) => board.id),
        feet: mine.reduce((sum, { board }) => sum + feetOfBoard(board), 0),
        net: pieces.reduce((sum, { board, p }) => sum + feetOf(c.quarter, board.thickness, p.width, p.length), 0),
        open: c.proved ? 0 : Math.max(0, c.used - c.bound),
        proved: c.proved,
      };
    })
    .filter((s) => s.boards.length > 0);
}
/** Board feet to a tenth. */
export const feetSaid = (feet: number): string => (Math.round(feet * 10) / 10).toFixed(1);
/** What is not ruled out: money to the whole, board feet to a tenth, never rounded to nothing. */
export const openSaid = (laid: LaidBoards, open: number): string =>
  laid.unit === 'money' ? String(Math.ceil(open)) : `${(Math.ceil(open * 10 - 1e-9) / 10).toFixed(1)} board feet`;
