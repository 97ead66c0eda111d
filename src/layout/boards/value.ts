import { feetOfBoard } from '../../shop/board-feet.js';
import type { Board } from './board.js';

/** What boards are worth: their prices where all have one, else board feet. */
export function boardValues(boards: readonly Board[]): {
  readonly values: ReadonlyMap<string, number>;
  readonly unit: 'money' | 'board feet';
} {
  const priced = boards.length > 0 && boards.every((b) => b.price !== undefined);
  return {
    values: new Map(boards.map((b) => [b.id, priced ? (b.price ?? 0) : feetOfBoard(b)])),
    unit: priced ? 'money' : 'board feet',
  };
}
