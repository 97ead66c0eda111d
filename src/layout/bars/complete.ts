import type { Bar, BarPattern } from './master.js';

export type Completed =
  | { readonly kind: 'fits'; readonly bars: readonly BarPattern[] }
  | { readonly kind: 'none' }
  | { readonly kind: 'open' };

/**
 * Bars filled one after another, exactly, for `most` or less in all: the longest piece that is left begins a bar, of each
 * length that there is, and every way to fill it up is tried, the fullest first, as long as what is left could be had for
 * the rest of the money without any waste (bin completion: Martello and Toth 1990; Korf 2002). A way to which a piece could
 * be added is not tried: the piece may as well lie there. `none` is a proof, `open` when `limit` steps were spent.
 */
export function complete(
  lengths: readonly number[],
  demand: readonly number[],
  bars: readonly Bar[],
  most: number,
  limit: number,
): Completed {
  const search = new Completion(lengths, demand, bars, most, limit);
  return search.run();
}

interface Filling {
  readonly bar: number;
  readonly take: readonly number[];
  readonly filled: number;
}

class Completion {
  private readonly order: readonly number[];
  /** Longest first, as `order` has them. */
  private readonly l: readonly number[];
  private readonly left: number[];
  private readonly there: number[];
  private readonly rate: number;
  private readonly found: Filling[] = [];
  /** Rests that could not be had, and for how much was spent before. */
  private readonly dead = new Map<string, number>();
  private steps = 0;
  private cut = false;

  constructor(
    private readonly lengths: readonly number[],
    demand: readonly number[],
    private readonly bars: readonly Bar[],
    private readonly most: number,
    private readonly limit: number,
  ) {
    this.order = lengths.map((_, i) => i).sort((a, b) => (lengths[b] as number) - (lengths[a] as number) || a - b);
    this.l = this.order.map((i) => lengths[i] as number);
    this.left = this.order.map((i) => demand[i] as number);
    this.there = bars.map((b) => b.count);
    this.rate = Math.min(...bars.map((b) => b.cost / b.room));
  }

  run(): Completed {
    const total = this.l.reduce((sum, x, i) => sum + x * (this.left[i] as number), 0);
    if (!this.visit(0, total)) return { kind: this.cut ? 'open' : 'none' };
    const bars = this.found.map(({ bar, take }) => {
      const own = this.lengths.map(() => 0);
      this.order.forEach((i, k) => (own[i] = take[k] as number));
      return { bar, take: own };
    });
    return { kind: 'fits', bars };
  }

  private visit(spent: number, rest: number): boolean {
    const { left, there, dead } = this;
    const first = left.findIndex((n) => n > 0);
    if (first < 0) return true;
    if (this.steps > this.limit) {
      this.cut = true;
      return false;
    }
    const key = `${left.join(' ')}/${there.join(' ')}`;
    if ((dead.get(key) ?? Infinity) <= spent) return false;
    const all = this.bars.flatMap((b, bar) =>
      this.fillings(first, bar, rest - (this.most - spent - b.cost) / this.rate),
    );
    const waste = (f: Filling): number => (this.bars[f.bar] as Bar).cost - f.filled * this.rate;
    all.sort((a, b) => waste(a) - waste(b));
    for (const f of all) {
      this.put(f, -1);
      this.found.push(f);
      if (this.visit(spent + (this.bars[f.bar] as Bar).cost, rest - f.filled)) return true;
      this.found.pop();
      this.put(f, 1);
      if (this.cut) return false;
    }
    if (dead.size < MEMORY || dead.has(key)) dead.set(key, spent);
    return false;
  }
  private put({ bar, take }: Filling, sign: 1 | -1): void {
    take.forEach((n, i) => (this.left[i] = (this.left[i] as number) + sign * n));
    this.there[bar] = (this.there[bar] as number) + sign;
  }

  /** Ways to fill a bar that hold at least `least`, piece `first` among them, and to which nothing can be added. */
  private fillings(first: number, bar: number, least: number): Filling[] {
    const { l, left } = this;
    const { room } = this.bars[bar] as Bar;
    const out: Filling[] = [];
    if ((this.there[bar] as number) <= 0 || (l[first] as number) > room) return out;
    const now = l.map(() => 0);
    const last = l.findLastIndex((_, i) => (left[i] as number) > 0);
    const slack = room - least + 1e-6;
    // What all smaller pieces together can still fill.
    const smaller: number[] = [];
    for (let i = last + 1, sum = 0; i >= first; i--) {
      smaller[i] = sum;
      sum += (l[i - 1] ?? 0) * (left[i - 1] ?? 0);
    }
    const full = (rest: number): boolean => {
      for (let i = last; i >= first && (l[i] as number) <= rest; i--)
        if ((now[i] as number) < (left[i] as number)) return false;
      return true;
    };
    const add = (at: number, rest: number): void => {
      if (++this.steps > this.limit) return;
      if (at > last) {
        if (rest <= slack && full(rest)) out.push({ bar, take: [...now], filled: room - rest });
        return;
      }
      const size = l[at] as number;
      const most = Math.min(left[at] as number, Math.floor(rest / size));
      for (let n = most; n >= (at === first ? 1 : 0); n--) {
        now[at] = n;
        const after = rest - n * size;
        if (after - (smaller[at + 1] as number) <= slack) add(at + 1, after);
      }
      now[at] = 0;
    };
    add(first, room);
    if (this.steps > this.limit) this.cut = true;
    return out;
  }
}

/** Rests that are remembered, at most. */
const MEMORY = 200_000;
