import { cutBars, type Cutting } from './cutting.js';
import type { Bar } from './master.js';

/** Long stock of one section: mouldings, edging, bars. Lengths nm. */
export interface BarStock {
  readonly id: string;
  readonly bars: readonly BarLength[];
  readonly items: readonly { readonly part: string; readonly mark?: string; readonly length: number }[];
}
export interface BarLength {
  /** What an offcut is called on the rack; a bought bar has none. */
  readonly name?: string;
  readonly length: number;
  /** Any money; without a price a bar costs its length, one from the rack two fifths of it (our default). */
  readonly price?: number;
  /** How many there are; as many as wanted without it, of a named one there is one. */
  readonly count?: number;
}
export interface BarJob {
  readonly stocks: readonly BarStock[];
  readonly kerf: number;
  /** Off one end of a bought bar before the first piece, kerf in it; what lies on the rack has a sawn end. */
  readonly trim: number;
  /** Least length worth keeping. */
  readonly keep: number;
  /** How many times the usual number of steps may be spent. */
  readonly effort?: number;
}
export interface BarLayout {
  readonly bars: readonly OneBar[];
  readonly counts: readonly {
    readonly stock: string;
    readonly used: number;
    /** No fewer bars (where there is a choice: nothing that costs less) will do. */
    readonly proved: boolean;
    readonly choice?: true;
  }[];
  readonly unplaced: readonly { readonly part: string; readonly why: string }[];
}
export interface OneBar {
  readonly stock: string;
  readonly rack?: string;
  readonly length: number;
  readonly trim: number;
  /** In the order in which they are cut off, longest first; `at` from the trimmed end. */
  readonly pieces: readonly { readonly part: string; readonly at: number; readonly length: number }[];
  /** What is left beyond the last kerf, and whether it is kept. */
  readonly rest: number;
  readonly keep: boolean;
}

const RACK = 0.4;
/** Costs are whole numbers up to this, so that bounds can be rounded up. */
const COSTS = 1000;

/**
 * Lays out every piece of long stock: least cost of bars, a kerf between pieces. Same job, same layout. What fits no bar, or
 * finds none left, is listed in `unplaced`.
 */
export function layBars(job: BarJob): BarLayout {
  const out = { bars: [] as OneBar[], counts: [] as BarLayout['counts'][number][], unplaced: [] as Unplaced[] };
  for (const stock of [...job.stocks].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const usable = stock.bars.map((b) => b.length - trimOf(b, job));
    const items = [...stock.items].sort((a, b) => b.length - a.length || (a.part < b.part ? -1 : 1));
    const placed = items.filter((i) => usable.some((u) => i.length <= u));
    const why = 'it is longer than a bar less its trim';
    out.unplaced.push(...items.filter((i) => !placed.includes(i)).map(({ part }) => ({ part, why })));
    if (placed.length === 0) continue;
    const lengths = [...new Set(placed.map((i) => i.length))];
    const found = solve(stock, lengths, placed, usable, job);
    if (!found) {
      out.unplaced.push(...placed.map(({ part }) => ({ part, why: 'there are not enough bars' })));
      continue;
    }
    out.bars.push(...cutUp(found, stock, lengths, placed, job));
    const choice = stock.bars.length > 1 ? ({ choice: true } as const) : {};
    out.counts.push({ stock: stock.id, used: found.bars.length, proved: found.cost <= found.bound, ...choice });
  }
  return out;
}
type Unplaced = BarLayout['unplaced'][number];
const trimOf = (b: BarLength, job: BarJob): number => (b.name === undefined ? job.trim : 0);

/** In the smallest whole numbers that all lengths are multiples of; every piece and every bar with one kerf added. */
function solve(
  stock: BarStock,
  lengths: readonly number[],
  items: BarStock['items'],
  usable: readonly number[],
  { kerf, effort }: BarJob,
): Cutting | undefined {
  const unit = [...lengths, ...usable, kerf].reduce((g, x) => gcd(g, x), 0);
  const demand = lengths.map((l) => items.filter((i) => i.length === l).length);
  const bars = stock.bars.map((b, i): Bar => ({
    room: ((usable[i] as number) + kerf) / unit,
    cost: costOf(b, stock.bars),
    count: b.count ?? (b.name === undefined ? Infinity : 1),
  }));
  return cutBars(
    lengths.map((l) => (l + kerf) / unit),
    demand,
    bars,
    effort,
  );
}
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** A bar of one length alone costs 1. Else in whole thousandths of the dearest. */
function costOf(b: BarLength, all: readonly BarLength[]): number {
  if (all.length === 1) return 1;
  const priced = all.every((x) => x.price !== undefined || x.name !== undefined);
  const prices = all.flatMap((x) => (x.price === undefined ? [] : [x.price / x.length]));
  const perLength = priced && prices.length > 0 ? Math.min(...prices) : 1;
  const cost = (x: BarLength): number =>
    (priced ? x.price : undefined) ?? x.length * perLength * (x.name === undefined ? 1 : RACK);
  return Math.max(1, Math.round((COSTS * cost(b)) / Math.max(...all.map(cost))));
}

/** Patterns become pieces: of each length the first that is left. Bars with the same pieces stand together. */
function cutUp(
  found: Cutting,
  stock: BarStock,
  lengths: readonly number[],
  items: BarStock['items'],
  job: BarJob,
): OneBar[] {
  const left = lengths.map((l) => items.filter((i) => i.length === l));
  const sorted = [...found.bars].sort((a, b) => a.bar - b.bar || firstDifference(b.take, a.take));
  return sorted.map(({ bar, take }): OneBar => {
    const b = stock.bars[bar] as BarLength;
    const trim = trimOf(b, job);
    let at = 0;
    const pieces = take.flatMap((n, k) =>
      (left[k] as BarStock['items'][number][]).splice(0, n).map(({ part, length }) => {
        const piece = { part, at, length };
        at += length + job.kerf;
        return piece;
      }),
    );
    const rest = Math.max(0, b.length - trim - at);
    const name = b.name === undefined ? {} : { rack: b.name };
    return { stock: stock.id, ...name, length: b.length, trim, pieces, rest, keep: rest >= job.keep };
  });
}
function firstDifference(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((n, i) => n !== b[i]);
  return k < 0 ? 0 : (a[k] as number) - (b[k] as number);
}
