import { itemsInTree, type Tree, type Way } from '../guillotine.js';
import { Filler, type Kind, type Pick, type Rules } from './filler.js';
import { sequence } from './sequence.js';

/** A sheet to be filled. `first`: which way it must be cut first, when not as the rules say. */
export interface Blank {
  readonly w: number;
  readonly h: number;
  readonly first?: Way;
}
/** A filled sheet: which of the blanks, its pattern, the kinds on it (one entry a piece), and their worth. */
export interface Filled {
  readonly blank: number;
  readonly tree: Tree;
  readonly kinds: readonly number[];
  readonly worth: number;
}

/** Orders in which kinds are tried: largest first, by several meanings of large. */
const LARGE: readonly ((k: Kind) => readonly [number, number])[] = [
  (k) => [k.w * k.h, k.w],
  (k) => [k.h, k.w],
  (k) => [k.w, k.h],
  (k) => [Math.max(k.w, k.h), Math.min(k.w, k.h)],
  (k) => [k.w + k.h, k.w],
];
const PICKS: readonly Pick[] = ['first', 'snug', 'across'];
/** How many former values are looked back at: late acceptance (Burke and Bykov 2017). */
const LOOK_BACK = 40;

/**
 * Packs counted kinds of pieces into sheets. The goal is given (a list of sheets that must hold everything) and approached
 * by ruin and recreate on whole sheets: one to three are emptied and filled anew together with what found no place, and the
 * worth of what is then left over decides (after Gardeyn and Wauters 2022, who ruin parts of sheets; late acceptance).
 */
export class Packer {
  readonly filler: Filler;
  private readonly random: () => number;
  private readonly ranks: readonly Float64Array[];
  private readonly worths: readonly number[];
  private readonly noise: Float64Array;

  constructor(
    readonly kinds: readonly Kind[],
    readonly counts: readonly number[],
    rules: Rules,
    seed = 1,
  ) {
    this.random = sequence(seed);
    this.filler = new Filler(kinds, rules, this.random);
    this.noise = new Float64Array(kinds.length);
    const unit = Math.max(1, ...kinds.map((k) => k.w * k.h));
    this.worths = kinds.map((k) => ((k.w * k.h) / unit) ** 1.2);
    this.ranks = LARGE.map((large) => {
      const keys = kinds.map(large);
      const by = kinds
        .map((_, i) => i)
        .sort((a, b) => {
          const [p, q] = [keys[a] as readonly [number, number], keys[b] as readonly [number, number]];
          return q[0] - p[0] || q[1] - p[1] || a - b;
        });
      const rank = new Float64Array(kinds.length);
      by.forEach((kind, at) => (rank[kind] = at / kinds.length));
      return rank;
    });
  }

  get steps(): number {
    return this.filler.steps;
  }

  /** As many sheets of one size as it takes: every order and manner once. Every kind must fit the sheet. */
  start(blank: Blank): Filled[] {
    const { filler } = this;
    const all = this.counts.reduce((a, b) => a + b, 0);
    let best: Filled[] | undefined;
    for (let large = 0; large < LARGE.length; large++)
      for (const pick of PICKS)
        for (const widen of [0, 0.4]) {
          Object.assign(filler, { pick, widen, blink: 0 });
          filler.left.set(this.counts);
          this.order(large, 0);
          const made: Filled[] = [];
          for (let left = all; left > 0; left -= made.at(-1)?.kinds.length ?? left)
            made.push(this.take(blank, made.length));
          if (!best || made.length < best.length) best = made;
        }
    return best ?? [];
  }

  /**
   * Everything into these sheets; undefined when `steps` are spent first. `from`: sheets that are filled already (the others
   * start empty). `limit` counts the filler's steps from the start of the search.
   */
  into(blanks: readonly Blank[], from: readonly Filled[], limit: number): Filled[] | undefined {
    const { filler } = this;
    const left = Int32Array.from(this.counts);
    for (const f of from) for (const k of f.kinds) left[k] = (left[k] as number) - 1;
    const sheets: Filled[] = blanks.map(
      (_, blank) => from.find((f) => f.blank === blank) ?? { blank, tree: { kind: 'empty' }, kinds: [], worth: 0 },
    );
    let over = this.worthOf(left);
    const past = new Float64Array(LOOK_BACK).fill(over);
    for (let turn = 0; over > 0 && filler.steps < limit; turn++) {
      const chosen = this.some(sheets.length);
      const now = this.refill(chosen, sheets, blanks, left);
      const slot = turn % LOOK_BACK;
      if (now.over <= over || now.over <= (past[slot] as number)) {
        now.made.forEach((m) => (sheets[m.blank] = m));
        left.set(filler.left);
        over = now.over;
      }
      past[slot] = over;
      if (chosen.length === 0) break;
    }
    return over === 0 ? sheets : undefined;
  }

  /** Empties the chosen sheets and fills them anew from what was on them and what is left over, in a manner drawn by lot. */
  refill(
    chosen: readonly number[],
    sheets: readonly Filled[],
    blanks: readonly Blank[],
    left: Int32Array,
  ): { readonly made: readonly Filled[]; readonly over: number } {
    const { filler, random } = this;
    filler.left.set(left);
    for (const s of chosen)
      for (const k of (sheets[s] as Filled).kinds) filler.left[k] = (filler.left[k] as number) + 1;
    filler.pick = PICKS[random() < 0.4 ? 0 : random() < 0.5 ? 1 : 2] as Pick;
    filler.blink = random() < 0.5 ? 0.05 : 0;
    filler.widen = random() < 0.5 ? 0.3 : 0;
    this.order(Math.floor(random() * LARGE.length), random() < 0.2 ? 0 : random() * 0.4);
    const made = chosen.map((s) => this.take(blanks[s] as Blank, s));
    return { made, over: this.worthOf(filler.left) };
  }
  /** One to three sheets by lot. */
  private some(of: number): number[] {
    const r = this.random();
    const want = Math.min(of, r < 0.25 ? 1 : r < 0.75 ? 2 : 3);
    const out: number[] = [];
    while (out.length < want) {
      const s = Math.floor(this.random() * of);
      if (!out.includes(s)) out.push(s);
    }
    return out;
  }
  private take(blank: Blank, index: number): Filled {
    const tree = this.filler.sheet(blank.w, blank.h, blank.first);
    const kinds = itemsInTree(tree);
    let worth = 0;
    for (const k of kinds) worth += this.worths[k] as number;
    return { blank: index, tree, kinds, worth };
  }
  private worthOf(left: Int32Array): number {
    let sum = 0;
    for (let k = 0; k < left.length; k++) if (left[k] !== 0) sum += (left[k] as number) * (this.worths[k] as number);
    return sum;
  }
  /** Puts the kinds that are left into the pool, largest first, moved about by `amount` (0 to 1) of the list. */
  private order(large: number, amount: number): void {
    const { filler, noise } = this;
    const rank = this.ranks[large] as Float64Array;
    const { pool } = filler;
    pool.length = 0;
    for (let k = 0; k < rank.length; k++) {
      if (filler.left[k] === 0) continue;
      pool.push(k);
      noise[k] = (rank[k] as number) + (amount > 0 ? (this.random() - 0.5) * amount : 0);
    }
    pool.sort((a, b) => (noise[a] as number) - (noise[b] as number) || a - b);
  }
}
