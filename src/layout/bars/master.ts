import { knapsack } from './knapsack.js';

/** A length in which bars can be had: whole numbers, the kerf added; `count` Infinity where they are bought. */
export interface Bar {
  readonly room: number;
  readonly cost: number;
  readonly count: number;
}
/** A way to cut one bar: how many of each piece. */
export interface BarPattern {
  readonly bar: number;
  readonly take: readonly number[];
}
export interface Relaxed {
  /** Patterns with how often each is taken, fractions allowed. */
  readonly patterns: readonly { readonly pattern: BarPattern; readonly times: number }[];
  readonly cost: number;
  /** Nothing costs less than this, whatever the numbers of the solver are worth: checked in whole numbers. */
  readonly bound: number;
  /** Nothing was left to gain, or the bound will do. */
  readonly solved: boolean;
}

const EPS = 1e-9;
/** A cost that no piece may be left at. */
const NEVER = 1e6;
/** Dual values are rounded down to whole parts of this before they bound anything. */
const SCALE = 1e7;

/**
 * The linear relaxation of cutting bars: least cost of patterns, fractions allowed, so that every piece is covered; patterns
 * are made as they are wanted, each by a knapsack (Gilmore and Gomory 1961). The bound is Farley's (1990), from duals
 * rounded to whole numbers, and so a proof. Lengths are whole numbers.
 */
export class Master {
  private readonly rows: number;
  private readonly limited: readonly number[];
  private readonly inverse: Float64Array[];
  private readonly basis: { readonly pattern?: BarPattern; readonly cost: number }[] = [];
  private readonly amount: Float64Array;
  readonly known: BarPattern[] = [];
  private bound = 0;

  constructor(
    private readonly lengths: readonly number[],
    private readonly demand: readonly number[],
    private readonly bars: readonly Bar[],
    known: readonly BarPattern[] = [],
  ) {
    this.limited = bars.flatMap((b, i) => (b.count === Infinity ? [] : [i]));
    this.rows = lengths.length + this.limited.length;
    this.inverse = Array.from({ length: this.rows }, () => new Float64Array(this.rows));
    this.amount = new Float64Array(this.rows);
    this.begin();
    this.known = known.filter((p) => p.take.every((n, i) => n <= (demand[i] as number)));
  }

  /** Rows start with one kind of piece on bars that there are enough of; else with a cost that is never paid. */
  private begin(): void {
    const { lengths, demand, bars, limited, rows } = this;
    for (let row = 0; row < rows; row++) {
      const turned = this.inverse[row] as Float64Array;
      const piece = row < lengths.length;
      const l = lengths[row] as number;
      const fit = piece ? bars.findIndex((b) => b.count === Infinity && b.room >= l) : -1;
      const n = fit < 0 ? 1 : Math.max(1, Math.min(demand[row] as number, Math.floor((bars[fit] as Bar).room / l)));
      turned[row] = piece ? 1 / n : -1;
      this.amount[row] = piece
        ? (demand[row] as number) / n
        : (bars[limited[row - lengths.length] as number] as Bar).count;
      this.basis.push(
        fit >= 0
          ? { pattern: { bar: fit, take: lengths.map((_, i) => (i === row ? n : 0)) }, cost: (bars[fit] as Bar).cost }
          : { cost: piece ? NEVER : 0 },
      );
    }
  }

  /** Solves until nothing is gained, or `enough` says that the bound will do. `steps` limits the exchanges. */
  solve(steps: number, enough: (cost: number, bound: number) => boolean = () => false): Relaxed {
    let step = 0;
    for (; step < steps; step++) {
      const duals = this.duals();
      const entering =
        this.surplus(duals) ?? this.remembered(duals) ?? this.priced(duals, true) ?? this.priced(duals, false);
      if (!entering || enough(this.cost(), this.bound)) break;
      if (!this.exchange(entering)) break;
    }
    const patterns = this.basis.flatMap(({ pattern }, row) => {
      const times = this.amount[row] as number;
      return pattern && times > EPS ? [{ pattern, times }] : [];
    });
    return { patterns, cost: this.cost(), bound: this.bound, solved: step < steps };
  }

  private cost(): number {
    return this.basis.reduce((sum, b, row) => sum + b.cost * (this.amount[row] as number), 0);
  }
  private duals(): Float64Array {
    const u = new Float64Array(this.rows);
    this.basis.forEach(({ cost }, k) => {
      if (cost === 0) return;
      const row = this.inverse[k] as Float64Array;
      for (let j = 0; j < this.rows; j++) u[j] = (u[j] as number) + cost * (row[j] as number);
    });
    return u;
  }

  /** A row that is worth less than nothing: more than is wanted may be cut, fewer bars taken. */
  private surplus(duals: Float64Array): Entering | undefined {
    const row = duals.findIndex((u) => u < -EPS);
    if (row < 0) return undefined;
    const column = new Float64Array(this.rows);
    column[row] = -1;
    return { column, cost: 0 };
  }
  private columnOf(pattern: BarPattern): Float64Array {
    const column = new Float64Array(this.rows);
    column.set(pattern.take);
    const limit = this.limited.indexOf(pattern.bar);
    if (limit >= 0) column[this.lengths.length + limit] = -1;
    return column;
  }
  private remembered(duals: Float64Array): Entering | undefined {
    let [best, least] = [undefined as BarPattern | undefined, -1e-7];
    for (const p of this.known) {
      const limit = this.limited.indexOf(p.bar);
      let reduced = (this.bars[p.bar] as Bar).cost + (limit >= 0 ? (duals[this.lengths.length + limit] as number) : 0);
      for (let i = 0; i < p.take.length; i++)
        if (p.take[i] !== 0) reduced -= (p.take[i] as number) * (duals[i] as number);
      if (reduced < least) [best, least] = [p, reduced];
    }
    return best && { column: this.columnOf(best), cost: (this.bars[best.bar] as Bar).cost, pattern: best };
  }

  /** The pattern that is worth most more than its bar costs; on the way the bound, in whole numbers. */
  private priced(duals: Float64Array, quick: boolean): Entering | undefined {
    const { lengths, demand, bars } = this;
    const values = lengths.map((_, i) => Math.max(0, Math.floor((duals[i] as number) * SCALE)));
    let [best, least] = [undefined as BarPattern | undefined, -1e-6];
    let [over, sure] = [0, true];
    let total = values.reduce((sum, u, i) => sum + u * (demand[i] as number), 0);
    bars.forEach((b, bar) => {
      const limit = this.limited.indexOf(bar);
      const dear = limit < 0 ? 0 : Math.max(0, Math.ceil((duals[lengths.length + limit] as number) * SCALE));
      if (limit >= 0) total -= dear * b.count;
      const found = knapsack(lengths, demand, values, b.room, quick);
      sure &&= found.sure;
      over = Math.max(over, (found.value - dear) / b.cost);
      const reduced = b.cost - (found.value - dear) / SCALE;
      if (reduced < least) [best, least] = [{ bar, take: found.take }, reduced];
    });
    // Duals divided by what the dearest pattern goes over its cost are feasible.
    if (sure && over > 0 && total > 0) this.bound = Math.max(this.bound, total / Math.max(over, SCALE * 1e-3));
    if (!best) return undefined;
    this.known.push(best);
    return { column: this.columnOf(best), cost: (bars[best.bar] as Bar).cost, pattern: best };
  }

  /** Takes a column into the basis; false when it leaves nothing else. */
  private exchange({ column, cost, pattern }: Entering): boolean {
    const { rows, inverse, amount } = this;
    const along = new Float64Array(rows);
    for (let k = 0; k < rows; k++) {
      const row = inverse[k] as Float64Array;
      let sum = 0;
      for (let j = 0; j < rows; j++) if (column[j] !== 0) sum += (row[j] as number) * (column[j] as number);
      along[k] = sum;
    }
    let [out, least] = [-1, Infinity];
    for (let k = 0; k < rows; k++) {
      if ((along[k] as number) <= 1e-9) continue;
      const ratio = (amount[k] as number) / (along[k] as number);
      // Of equal ones the largest step, which is the safest.
      if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && (along[k] as number) > (along[out] as number)))
        [out, least] = [k, ratio];
    }
    if (out < 0) return false;
    const pivot = along[out] as number;
    const row = inverse[out] as Float64Array;
    for (let j = 0; j < rows; j++) row[j] = (row[j] as number) / pivot;
    amount[out] = least;
    for (let k = 0; k < rows; k++) {
      const f = along[k] as number;
      if (k === out || f === 0) continue;
      const other = inverse[k] as Float64Array;
      for (let j = 0; j < rows; j++) other[j] = (other[j] as number) - f * (row[j] as number);
      amount[k] = Math.max(0, (amount[k] as number) - f * least);
    }
    this.basis[out] = pattern ? { pattern, cost } : { cost };
    return true;
  }
}
interface Entering {
  readonly column: Float64Array;
  readonly cost: number;
  readonly pattern?: BarPattern;
}
