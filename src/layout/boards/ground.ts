import { inches } from '../../lengths/length.js';
import type { Blank, Board } from './board.js';
import { clearOfAll, clearRectangles, obstaclesFor, type Rect } from './clear.js';

/** A rectangle that a kind of blank may lie in, and which face of the board then shows. */
export interface Spot {
  readonly at: Rect;
  readonly back: boolean;
}
/** One rectangle to be cut: of a single blank, or of a run of them. */
export interface Link {
  readonly l: number;
  readonly w: number;
  /** Any blank of the kind: all are alike. */
  readonly blank: Blank;
}
/** Blanks that are alike (one link), or a run that stays together: its blanks in rows, each along the board in order. */
export interface Kind {
  readonly l: number;
  readonly w: number;
  readonly links: readonly Link[];
  /** Ways to fold a run: how many links each row takes. A single blank has one row of one. */
  readonly folds: readonly (readonly number[])[];
  /** The run that it is a part of, when its parts come from several boards: no two of them from one. */
  readonly run?: string;
}
/** A board made ready: what each kind may lie in (`spots[kind][link]`). */
export interface Ground {
  readonly board: Board;
  /** Between the trimmed ends. */
  readonly x0: number;
  readonly x1: number;
  readonly height: number;
  readonly value: number;
  readonly spots: readonly (readonly (readonly Spot[])[])[];
  /** What is clear on both faces, for remnants. */
  readonly clear: readonly Rect[];
}

/** Off the surface of a board that lies flat, both faces together: our default. */
const FLATTEN = inches(1 / 16);
/**
 * What flattening a piece of the board takes off its thickness: cup over its width and bow over its length, each by the
 * square of its share (parabolas, our default), and a sixteenth.
 */
export function flattening(
  board: Pick<Board, 'cup' | 'bow' | 'length' | 'width'>,
  length: number,
  width: number,
): number {
  const wide = Math.max(...board.width);
  return (board.cup ?? 0) * (width / wide) ** 2 + (board.bow ?? 0) * (length / board.length) ** 2 + FLATTEN;
}
/** What straightening an edge of a stretch of the board takes off its width: the same rule for crook. */
export const straightening = (board: Pick<Board, 'crook' | 'length'>, length: number): number =>
  (board.crook ?? 0) * (length / board.length) ** 2;

/** Is the board of the wood and the cut wanted, and thick enough once a blank of that length and width is flat? */
export function suits(board: Board, blank: Blank): boolean {
  if (board.wood !== blank.wood || board.quarter !== blank.quarter) return false;
  if (blank.cut !== undefined && board.cut !== undefined && blank.cut !== board.cut) return false;
  return board.thickness - flattening(board, blank.length, blank.width) >= blank.finished;
}

/** The board with the places of every kind. Ground of a kind that does not suit it is empty. */
export function groundOf(board: Board, kinds: readonly Kind[], endTrim: number, value: number): Ground {
  const height = Math.max(...board.width);
  const known = new Map<string, readonly Rect[]>();
  const rects = (asked: Pick<Blank, 'shows' | 'allows'>, face: 'front' | 'back'): readonly Rect[] => {
    const obstacles = obstaclesFor(board, asked, face);
    const key = obstacles.map((o) => o.join()).join(';');
    const found = known.get(key) ?? clearRectangles(board.length, height, obstacles, [1, 1]);
    known.set(key, found);
    return found;
  };
  const spotsOf = ({ blank, l, w }: Link, alone: boolean): Spot[] => {
    if (!suits(board, blank)) return [];
    const large = (r: Rect): boolean => r[2] - r[0] >= l && r[3] - r[1] >= w;
    const front = rects(blank, 'front').filter(large);
    const back = blank.shows === 'one' ? rects(blank, 'back').filter(large) : [];
    const same = (r: Rect): boolean => front.some((f) => f.every((v, i) => v === r[i]));
    return [
      ...front.map((at) => ({ at, back: false })),
      ...back.filter((r) => !alone || !same(r)).map((at) => ({ at, back: true })),
    ].sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1] || Number(a.back) - Number(b.back));
  };
  const spots = kinds.map((k) => k.links.map((link) => spotsOf(link, k.links.length === 1)));
  const clear = rects(clearOfAll, 'front');
  return { board, x0: endTrim, x1: board.length - endTrim, height, value, spots, clear };
}
