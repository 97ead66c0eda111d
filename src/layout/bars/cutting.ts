import { complete } from './complete.js';
import { knapsack } from './knapsack.js';
import { Master, type Bar, type BarPattern } from './master.js';

export interface Cutting {
  /** One entry a bar. */
  readonly bars: readonly BarPattern[];
  readonly cost: number;
  /** Nothing costs less. */
  readonly bound: number;
}

/** Exchanges of the linear program, dives into it, and steps of the exact search: our defaults. */
const EXCHANGES = 4000;
/** Each exchange takes as many sums as the square of the pieces told apart: many of those are not solved to the end. */
const SUMS = 3e7;
const exchanges = (lengths: readonly number[]): number => Math.min(EXCHANGES, SUMS / lengths.length ** 2);
const DIVES = 6;
const STEPS = 2e6;

/**
 * Which bars are cut how, at least cost: greedy, then the linear relaxation for a bound and rounded by diving, then exact
 * completion. `demand` of each length; all are whole numbers, the kerf added to pieces and bars.
 * Undefined when the pieces cannot be had from the bars.
 */
export function cutBars(
  lengths: readonly number[],
  demand: readonly number[],
  bars: readonly Bar[],
  effort = 1,
): Cutting | undefined {
  const unit = bars.reduce((g, b) => gcd(g, b.cost), 0);
  const up = (bound: number): number => Math.ceil(bound / unit - 1e-6) * unit;
  const start = greedy(lengths, demand, bars) ?? anyhow(lengths, demand, bars, STEPS * effort);
  if (!start) return undefined;
  let best = start;
  const root = new Master(lengths, demand, bars, best);
  const relaxed = root.solve(exchanges(lengths), (cost, bound) => up(bound) >= up(cost));
  let bound = up(relaxed.bound);
  const better = (found: readonly BarPattern[] | undefined): void => {
    if (found && costOf(found, bars) < costOf(best, bars)) best = [...found];
  };
  const reached = (): boolean => costOf(best, bars) <= bound;
  const finish = (steps: number): void => {
    while (!reached()) {
      const cost = costOf(best, bars);
      const cheaper = complete(lengths, demand, bars, cost - unit, steps);
      if (cheaper.kind === 'none') bound = cost;
      if (cheaper.kind !== 'fits') return;
      best = [...cheaper.bars];
    }
  };
  finish((STEPS * effort) / 20);
  // Where the relaxation was not solved in time, neither would its rests be.
  const dives = relaxed.solved ? DIVES * effort : 0;
  for (let manner = 0; manner < dives && !reached(); manner++)
    better(dive(lengths, demand, bars, root.known, manner, costOf(best, bars)));
  if (!reached()) finish(STEPS * effort);
  return { bars: best, cost: costOf(best, bars), bound };
}

/** Where bars are few, greed may leave a piece over that has room: everything somehow, whatever it costs. */
function anyhow(
  lengths: readonly number[],
  demand: readonly number[],
  bars: readonly Bar[],
  steps: number,
): BarPattern[] | undefined {
  const pieces = demand.reduce((a, b) => a + b, 0);
  const all = bars.reduce((sum, b) => sum + b.cost * Math.min(b.count, pieces), 0);
  const found = complete(lengths, demand, bars, all, steps);
  return found.kind === 'fits' ? [...found.bars] : undefined;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
const costOf = (patterns: readonly BarPattern[], bars: readonly Bar[]): number =>
  patterns.reduce((sum, p) => sum + (bars[p.bar] as Bar).cost, 0);

/** The longest piece that is left, and with it what fills its bar best; the bar that costs least for what it holds. */
function greedy(lengths: readonly number[], demand: readonly number[], bars: readonly Bar[]): BarPattern[] | undefined {
  const left = [...demand];
  const there = bars.map((b) => b.count);
  const out: BarPattern[] = [];
  const order = lengths.map((_, i) => i).sort((a, b) => (lengths[b] as number) - (lengths[a] as number) || a - b);
  for (;;) {
    const first = order.find((i) => (left[i] as number) > 0);
    if (first === undefined) return out;
    const length = lengths[first] as number;
    left[first] = (left[first] as number) - 1;
    let [chosen, rate] = [undefined as BarPattern | undefined, Infinity];
    bars.forEach((b, bar) => {
      if (b.room < length || (there[bar] as number) <= 0) return;
      const fill = knapsack(lengths, left, lengths, b.room - length, true);
      const now = b.cost / (fill.value + length);
      if (now >= rate) return;
      [chosen, rate] = [{ bar, take: fill.take.map((n, i) => (i === first ? n + 1 : n)) }, now];
    });
    if (!chosen) return undefined;
    chosen.take.forEach((n, i) => (left[i] = (left[i] as number) - (i === first ? n - 1 : n)));
    there[chosen.bar] = (there[chosen.bar] as number) - 1;
    out.push(chosen);
  }
}

/**
 * The relaxation rounded: patterns that are taken at least once are fixed, else one of the fractions by the manner; the rest
 * is solved anew (diving). Each rest is also finished greedily. Given up when it cannot get under `most`.
 */
function dive(
  lengths: readonly number[],
  demand: readonly number[],
  bars: readonly Bar[],
  known: readonly BarPattern[],
  manner: number,
  most: number,
): BarPattern[] | undefined {
  const left = [...demand];
  const there = bars.map((b) => ({ ...b }));
  const fixed: BarPattern[] = [];
  let found: BarPattern[] | undefined;
  let cost = most;
  const keep = [...known];
  const fix = (pattern: BarPattern): boolean => {
    const take = pattern.take.map((n, i) => Math.min(n, left[i] as number));
    const bar = there[pattern.bar] as { count: number };
    if (take.every((n) => n === 0) || bar.count <= 0) return false;
    take.forEach((n, i) => (left[i] = (left[i] as number) - n));
    bar.count -= 1;
    fixed.push({ bar: pattern.bar, take });
    return true;
  };
  while (left.some((n) => n > 0)) {
    const used = lengths.map((_, i) => i).filter((i) => (left[i] as number) > 0);
    const small = (p: BarPattern): BarPattern => ({ bar: p.bar, take: used.map((i) => p.take[i] as number) });
    const whole = (p: BarPattern): BarPattern => {
      const take = lengths.map(() => 0);
      used.forEach((i, k) => (take[i] = p.take[k] as number));
      return { bar: p.bar, take };
    };
    const fits = keep.filter((p) => p.take.every((n, i) => n <= (left[i] as number)));
    const open = there.map((b) => (b.count > 0 ? b : { ...b, room: 0 }));
    const master = new Master(
      used.map((i) => lengths[i] as number),
      used.map((i) => left[i] as number),
      open,
      fits.map(small),
    );
    const { patterns, bound } = master.solve(exchanges(used), (c, b) => Math.ceil(b - 1e-6) >= Math.ceil(c - 1e-6));
    if (costOf(fixed, bars) + bound >= cost - 1e-6) return found;
    keep.push(...master.known.slice(fits.length).map(whole));
    const sorted = patterns.map(({ pattern, times }) => ({ pattern: whole(pattern), times }));
    let any = false;
    for (const { pattern, times } of sorted) for (let n = 1; n <= times + 1e-6; n++) any = fix(pattern) || any;
    if (!any) {
      const pick = chosen(sorted, lengths, manner, fixed.length);
      if (!pick || !fix(pick)) return found;
    }
    const rest = greedy(lengths, left, there);
    if (rest && costOf([...fixed, ...rest], bars) < cost) {
      found = [...fixed, ...rest];
      cost = costOf(found, bars);
    }
  }
  return found;
}

/** The fraction that is rounded up: the largest, the fullest, or that with the longest piece; by turns in later manners. */
function chosen(
  patterns: readonly { readonly pattern: BarPattern; readonly times: number }[],
  lengths: readonly number[],
  manner: number,
  turn: number,
): BarPattern | undefined {
  const filled = (p: BarPattern): number => p.take.reduce((sum, n, i) => sum + n * (lengths[i] as number), 0);
  const longest = (p: BarPattern): number => Math.max(...p.take.map((n, i) => (n > 0 ? (lengths[i] as number) : 0)));
  const keys: readonly ((x: { pattern: BarPattern; times: number }) => number)[] = [
    (x) => x.times,
    (x) => longest(x.pattern) + x.times,
    (x) => filled(x.pattern) + x.times,
  ];
  const key = keys[(manner < 3 ? manner : manner + turn) % 3] as (typeof keys)[number];
  let best: { readonly pattern: BarPattern; readonly times: number } | undefined;
  for (const p of patterns) if (!best || key(p) > key(best)) best = p;
  return best?.pattern;
}
