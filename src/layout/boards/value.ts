import { toIn } from '../../lengths/length.js';
import type { Board } from './board.js';

/** Board feet at the rough thickness by name; under an inch counts as an inch (common practice). Mean width. */
export function boardFeetOf(board: Pick<Board, 'length' | 'width' | 'quarter' | 'thickness'>): number {
  const [, n, d] = /^(\d+)\/(\d+)$/.exec(board.quarter) ?? [];
  const thick = Math.max(1, n === undefined ? toIn(board.thickness) : Number(n) / Number(d));
  return (thick * toIn((board.width[0] + board.width[1]) / 2) * toIn(board.length)) / 144;
}
/** What boards are worth: their prices where all have one, else board feet. */
export function boardValues(boards: readonly Board[]): {
  readonly values: ReadonlyMap<string, number>;
  readonly unit: 'money' | 'board feet';
} {
  const priced = boards.length > 0 && boards.every((b) => b.price !== undefined);
  return {
    values: new Map(boards.map((b) => [b.id, priced ? (b.price ?? 0) : boardFeetOf(b)])),
    unit: priced ? 'money' : 'board feet',
  };
}
