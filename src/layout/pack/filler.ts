import type { Tree, Way } from '../guillotine.js';

/** A kind of piece: `w` along the sheet's length. `turn`: it may be turned a quarter. */
export interface Kind {
  readonly w: number;
  readonly h: number;
  readonly turn: boolean;
}
/** How sheets may be cut: how often the direction may change (a last cut to size is not counted), and which way is first. */
export interface Rules {
  /** 2, 3 or Infinity. */
  readonly stages: number;
  readonly first: Way | 'either';
  readonly kerf: number;
}
/** How the next piece of a region is chosen: the first of the pool that fits, the snuggest, or the one that fills it across. */
export type Pick = 'first' | 'snug' | 'across';

const EMPTY = { kind: 'empty' } as const;
const other = (way: Way): Way => (way === 'cross' ? 'rip' : 'cross');

/**
 * Fills sheets from a pool of pieces: constructive, recursive, no second thoughts. A piece goes into the corner of a region
 * and opens a slice in the region's direction; what is left of the slice is cut the other way, one stage deeper. Every size
 * is taken with one kerf added, and so is the sheet's: two pieces side by side then leave exactly the saw's way.
 * One object a search; `steps` counts pieces looked at, the budget of all searches.
 */
export class Filler {
  /** Kinds in the order in which they are tried, and how many of each are left. */
  readonly pool: number[] = [];
  readonly left: Int32Array;
  steps = 0;
  pick: Pick = 'first';
  /** Share of fitting pieces passed over, and of slices made wider than their first piece. */
  blink = 0;
  widen = 0;
  private item = -1;
  private w = 0;
  private h = 0;
  private turned = false;

  constructor(
    readonly kinds: readonly Kind[],
    readonly rules: Rules,
    readonly random: () => number,
  ) {
    this.left = new Int32Array(kinds.length);
  }

  /** One sheet of `w` x `h` (without the kerf), filled from the pool. */
  sheet(w: number, h: number, first: Way | 'either' = this.rules.first): Tree {
    const way = first === 'either' ? (this.random() < 0.5 ? 'cross' : 'rip') : first;
    return this.fill(w + this.rules.kerf, h + this.rules.kerf, way, this.rules.stages);
  }

  /** Fills a region that is cut in direction `way` and may still be cut in `stages` directions, this one among them. */
  private fill(w: number, h: number, way: Way, stages: number): Tree {
    if (stages === 0 || w <= 0 || h <= 0 || !this.choose(w, h, way)) return EMPTY;
    const { item, w: pw, h: ph, turned } = this;
    this.left[item] = (this.left[item] as number) - 1;
    const d = stages === Infinity ? this.freeWay(w, h, pw, ph) : way;
    const cross = d === 'cross';
    const [length, breadth] = cross ? [w, h] : [h, w];
    const [along, across] = cross ? [pw, ph] : [ph, pw];
    const piece: Tree = { kind: 'piece', item, turned };
    let thick =
      stages >= 3 && this.widen > 0 && this.random() < this.widen ? this.wider(length, along, across, d) : along;
    let slice: Tree = piece;
    if (thick > along) {
      const beside = this.region(thick - along, across, d, d, stages - 2);
      if (beside.kind === 'empty') thick = along;
      else slice = this.split(d, along, thick, piece, beside);
    }
    if (across < breadth)
      slice = this.split(
        other(d),
        across,
        breadth,
        slice,
        this.region(thick, breadth - across, d, other(d), stages - 1),
      );
    if (thick >= length) return slice;
    return this.split(d, thick, length, slice, this.region(length - thick, breadth, d, d, stages));
  }
  /** A region told along and across direction `d`, to be cut in direction `way`. */
  private region(along: number, across: number, d: Way, way: Way, stages: number): Tree {
    return d === 'cross' ? this.fill(along, across, way, stages) : this.fill(across, along, way, stages);
  }
  /** Sizes with their kerfs become sizes as they are cut. */
  private split(way: Way, at: number, of: number, first: Tree, second: Tree): Tree {
    const { kerf } = this.rules;
    return { kind: 'split', way, at: at - kerf, first, rest: of - at - kerf, second };
  }

  /** The next piece for a region of `w` x `h`, left in `item`, `w`, `h`, `turned`; false when none fits. */
  private choose(w: number, h: number, way: Way): boolean {
    const { pool, left, kinds, pick, blink } = this;
    const { kerf } = this.rules;
    this.item = -1;
    let least = Infinity;
    for (const i of pool) {
      if (left[i] === 0) continue;
      this.steps++;
      const kind = kinds[i] as Kind;
      const kw = kind.w + kerf;
      const kh = kind.h + kerf;
      const straight = kw <= w && kh <= h;
      const turned = kind.turn && kw !== kh && kh <= w && kw <= h;
      if ((!straight && !turned) || (blink > 0 && this.random() < blink)) continue;
      if (straight) least = this.consider(i, kw, kh, false, this.slack(w, h, kw, kh, way), least);
      if (turned) least = this.consider(i, kh, kw, true, this.slack(w, h, kh, kw, way), least);
      if (least === 0 || pick === 'first') return true;
    }
    return this.item >= 0;
  }
  private slack(w: number, h: number, kw: number, kh: number, way: Way): number {
    return this.pick === 'snug' ? Math.min(w - kw, h - kh) : way === 'cross' ? h - kh : w - kw;
  }
  private consider(item: number, w: number, h: number, turned: boolean, slack: number, least: number): number {
    if (slack >= least) return least;
    this.item = item;
    this.w = w;
    this.h = h;
    this.turned = turned;
    return slack;
  }

  /** Without a limit of stages each piece may be cut round either way: mostly the one that leaves the largest remainder. */
  private freeWay(w: number, h: number, pw: number, ph: number): Way {
    const r = this.random();
    if (r < 0.3) return r < 0.15 ? 'cross' : 'rip';
    const cross = Math.max((w - pw) * h, (h - ph) * pw) >= Math.max((h - ph) * w, (w - pw) * ph);
    return cross === r < 0.9 ? 'cross' : 'rip';
  }
  /** A slice wide enough for its first piece and another beside it, or for all that is there. */
  private wider(length: number, along: number, across: number, way: Way): number {
    const { pool, left, kinds } = this;
    const { kerf } = this.rules;
    if (this.random() < 0.25) return length;
    let thick = along;
    for (const i of pool) {
      if (left[i] === 0) continue;
      const kind = kinds[i] as Kind;
      const [a, b] = way === 'cross' ? [kind.w + kerf, kind.h + kerf] : [kind.h + kerf, kind.w + kerf];
      const fits = b <= across && along + a <= length;
      if (!fits && !(kind.turn && a <= across && along + b <= length)) continue;
      thick = along + (fits ? a : b);
      if (this.random() < 0.5) return thick;
    }
    return thick;
  }
}
