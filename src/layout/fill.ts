import type { Tree, Way } from './guillotine.js';

/** A rectangle to be placed: `w` along the sheet's length. `turn`: it may be turned a quarter. nm. */
export interface Rect {
  readonly w: number;
  readonly h: number;
  readonly turn: boolean;
}
/**
 * How a region is split round a piece: `cross` and `rip` make strips (that way first, then the other, in turn); `large`
 * leaves the largest single remainder, `even` the most equal ones.
 */
export type Split = Way | 'large' | 'even';
export interface Manner {
  /** Items in the order in which they are tried. */
  readonly order: readonly number[];
  readonly split: Split;
  /** Items that have a way of their own, whatever `split` says. */
  readonly ways?: readonly (Way | undefined)[];
  /** The first that fits, or the one that fits most snugly. */
  readonly pick: 'first' | 'snug';
}

const EMPTY = { kind: 'empty' } as const;
interface Choice {
  readonly item: number;
  readonly w: number;
  readonly h: number;
  readonly turned: boolean;
  readonly slack: number;
}

/** Fills one sheet of `w` x `h` from what is not yet `used` (which it marks). Constructive, recursive, no second thoughts. */
export function fillSheet(
  w: number,
  h: number,
  kerf: number,
  rects: readonly Rect[],
  manner: Manner,
  used: boolean[],
): Tree {
  const fill = (rw: number, rh: number, depth: number): Tree => {
    const choice = rw > 0 && rh > 0 ? choose(rw, rh, rects, manner, used) : undefined;
    if (!choice) return EMPTY;
    used[choice.item] = true;
    const piece: Tree = { kind: 'piece', item: choice.item, turned: choice.turned };
    const own = manner.ways?.[choice.item];
    const crossFirst =
      (own ?? firstWay(manner.split, rw - choice.w - kerf, rh - choice.h - kerf, choice, depth)) === 'cross';
    const [along, beside] = crossFirst ? (['cross', 'rip'] as const) : (['rip', 'cross'] as const);
    const outer = crossFirst ? { at: choice.w, of: rw } : { at: choice.h, of: rh };
    const inner = crossFirst ? { at: choice.h, of: rh } : { at: choice.w, of: rw };
    const over = inner.of - inner.at - kerf;
    const strip: Tree =
      inner.at === inner.of
        ? piece
        : {
            kind: 'split',
            way: beside,
            at: inner.at,
            first: piece,
            rest: over,
            second: crossFirst ? fill(choice.w, over, depth + 1) : fill(over, choice.h, depth + 1),
          };
    if (outer.at === outer.of) return strip;
    const rest = outer.of - outer.at - kerf;
    const second = crossFirst ? fill(rest, rh, depth) : fill(rw, rest, depth);
    return { kind: 'split', way: along, at: outer.at, first: strip, rest, second };
  };
  return fill(w, h, 0);
}

function firstWay(split: Split, right: number, above: number, piece: Choice, depth: number): Way {
  if (split === 'cross' || split === 'rip') return (split === 'cross') === (depth % 2 === 0) ? 'cross' : 'rip';
  // Cross first leaves right x whole height; rip first leaves whole width x above.
  const cross = Math.max(right * (above + piece.h), above * piece.w);
  const rip = Math.max(above * (right + piece.w), right * piece.h);
  return (split === 'large') === cross >= rip ? 'cross' : 'rip';
}

function choose(
  rw: number,
  rh: number,
  rects: readonly Rect[],
  manner: Manner,
  used: readonly boolean[],
): Choice | undefined {
  let best: Choice | undefined;
  for (const item of manner.order) {
    if (used[item]) continue;
    for (const choice of stands(item, rects[item] as Rect, rw, rh)) {
      if (!best || choice.slack < best.slack) best = choice;
    }
    if (best && manner.pick === 'first') return best;
  }
  return best;
}

/** The ways in which an item can lie in a region, with the smaller of its two slacks. */
function stands(item: number, r: Rect, rw: number, rh: number): Choice[] {
  const out: Choice[] = [];
  const add = (w: number, h: number, turned: boolean): void => {
    if (w <= rw && h <= rh) out.push({ item, w, h, turned, slack: Math.min(rw - w, rh - h) });
  };
  add(r.w, r.h, false);
  if (r.turn && r.w !== r.h) add(r.h, r.w, true);
  return out;
}
