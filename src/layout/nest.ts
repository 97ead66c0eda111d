import { inches } from '../lengths/length.js';
import { sheetBound } from './bound.js';
import { cutUp, fenceSettings, type Named, type SheetSize } from './cuts.js';
import { fillSheet, type Manner, type Rect, type Split } from './fill.js';
import { asPattern, itemsOf, type Pattern, type Tree, type Way } from './guillotine.js';
import type { Layout, NestItem, SheetLayout } from './layout.js';

/** One stock of sheet goods and what is to be cut from it. Lengths nm. */
export interface NestStock {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly grain: 'length' | 'width' | 'none';
  readonly items: readonly (NestItem & { readonly mark?: string })[];
}
export interface NestJob {
  readonly stocks: readonly NestStock[];
  readonly kerf: number;
  /** Off one long edge and one end, kerf in it; 0: edges are used as they come. */
  readonly trim: number;
  /** Least sides of an offcut worth keeping; our default 12 x 4 in. */
  readonly keep?: readonly [number, number];
  /** Patterns tried a stock before the best so far is taken: counted, never timed. Our default 1200. */
  readonly budget?: number;
}

const KEEP = [inches(12), inches(4)] as const;

/**
 * Lays out every item on as few sheets as the search finds: guillotine cuts only, grain kept, a kerf between parts. Among
 * layouts with equally few sheets the one with the best offcuts (large ones count most), then with fewer cuts and settings.
 * Same job, same layout. An item that fits no sheet is listed in `unplaced`.
 */
export function nestSheets(job: NestJob): Layout {
  const sheets: SheetLayout[] = [];
  const counts: Layout['counts'][number][] = [];
  const unplaced: Layout['unplaced'][number][] = [];
  let offcut = 1;
  for (const stock of [...job.stocks].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const size: SheetSize = {
      length: stock.length,
      width: stock.width,
      trim: job.trim,
      kerf: job.kerf,
      keep: job.keep ?? KEEP,
    };
    const usable = { w: size.length - size.trim, h: size.width - size.trim };
    const rects: Rect[] = [];
    const named: Named[] = [];
    for (const item of [...stock.items].sort((a, b) => (a.part < b.part ? -1 : 1))) {
      const rect = asRect(item, stock.grain);
      const fits =
        (rect.w <= usable.w && rect.h <= usable.h) || (rect.turn && rect.h <= usable.w && rect.w <= usable.h);
      if (!fits) unplaced.push({ part: item.part, why: tooLarge(rect, usable) });
      else {
        rects.push(rect);
        named.push({ part: item.part, mark: item.mark ?? item.part, w: rect.w, h: rect.h });
      }
    }
    if (rects.length === 0) continue;
    const bound = sheetBound(usable.w, usable.h, size.kerf, rects);
    const patterns = search(rects, named, size, bound, job.budget ?? 1200);
    patterns.forEach((pattern, i) => {
      const cutting = cutUp(pattern, size, named, offcut);
      offcut += cutting.offcuts.filter((o) => o.keep).length;
      const { length, width, kerf, trim } = size;
      sheets.push({
        stock: stock.id,
        index: i + 1,
        of: patterns.length,
        length,
        width,
        kerf,
        trim,
        grain: stock.grain,
        ...cutting,
      });
    });
    counts.push({ stock: stock.id, used: patterns.length, bound });
  }
  return { sheets, counts, unplaced };
}

/** Grain along the sheet's length: the item's length lies along x; along its width: along y. */
const asRect = (item: NestItem, grain: NestStock['grain']): Rect =>
  grain === 'width'
    ? { w: item.width, h: item.length, turn: item.mayTurn }
    : { w: item.length, h: item.width, turn: item.mayTurn || grain === 'none' };

const tooLarge = (rect: Rect, usable: { readonly w: number; readonly h: number }): string =>
  !rect.turn && rect.h <= usable.w && rect.w <= usable.h
    ? 'it fits the sheet only with its grain across'
    : 'it is larger than the sheet less its trim';

interface Score {
  readonly sheets: number;
  readonly offcuts: number;
  readonly work: number;
}

const SPLITS: readonly Split[] = ['cross', 'rip', 'large', 'even'];
interface Try {
  readonly patterns: Pattern[];
  readonly manner: Manner;
  /** Sheets, then the sum of squares of how full each is: one nearly empty sheet is on its way out. */
  readonly closeness: number;
}

/**
 * Tries every manner; then, while more sheets are used than the bound, changes the most promising one little by little and
 * goes on from what is no worse. Keeps the best by `judge`.
 */
function search(
  rects: readonly Rect[],
  named: readonly Named[],
  size: SheetSize,
  bound: number,
  budget: number,
): Pattern[] {
  let best: { patterns: Pattern[]; score: Score } | undefined;
  let near: Try | undefined;
  let left = budget;
  const attempt = (manner: Manner): void => {
    left--;
    const patterns = allSheets(rects, size, manner);
    const closeness = fullness(patterns, rects, size) - patterns.length * 1000;
    if (!near || closeness >= near.closeness) near = { patterns, manner, closeness };
    if (best && patterns.length > best.score.sheets) return;
    const score = judge(patterns, named, size);
    if (!best || better(score, best.score)) best = { patterns, score };
  };
  const orders = sortedOrders(rects);
  for (const split of SPLITS)
    for (const pick of ['first', 'snug'] as const) for (const order of orders) attempt({ order, split, pick });
  const random = sequence(20_260_101);
  while (left > 0 && best && near && best.score.sheets > bound) {
    const fresh = orders[left % orders.length] as readonly number[];
    attempt(left % 4 === 0 ? startAfresh(fresh, rects, random) : changed(near.manner, rects, random));
  }
  return best?.patterns ?? [];
}

const anyWay = (random: () => number): Way => (random() < 0.5 ? 'cross' : 'rip');
const startAfresh = (order: readonly number[], rects: readonly Rect[], random: () => number): Manner => ({
  order: shuffled(order, random, 0.35),
  split: SPLITS[Math.floor(random() * SPLITS.length)] as Split,
  ways: rects.map(() => (random() < 0.3 ? anyWay(random) : undefined)),
  pick: random() < 0.7 ? 'first' : 'snug',
});
/** A few items moved in the order, a few split another way. */
function changed(manner: Manner, rects: readonly Rect[], random: () => number): Manner {
  const few = 2.5 / rects.length;
  const ways = rects.map((_, i) => (random() < few ? (random() < 0.3 ? undefined : anyWay(random)) : manner.ways?.[i]));
  return { ...manner, order: shuffled(manner.order, random, few), ways };
}

function fullness(patterns: readonly Pattern[], rects: readonly Rect[], size: SheetSize): number {
  const sheet = (size.length - size.trim) * (size.width - size.trim);
  const area = (i: number): number => (rects[i] as Rect).w * (rects[i] as Rect).h;
  return patterns.reduce((sum, p) => sum + (itemsOf(p).reduce((a, i) => a + area(i), 0) / sheet) ** 2, 0);
}

/** Sheet after sheet until nothing is left. Every rect fits an empty sheet, so each sheet takes at least one. */
function allSheets(rects: readonly Rect[], size: SheetSize, manner: Manner): Pattern[] {
  const used = rects.map(() => false);
  const out: Pattern[] = [];
  const w = size.length - size.trim;
  const h = size.width - size.trim;
  while (used.includes(false)) {
    const tree: Tree = fillSheet(w, h, size.kerf, rects, manner, used);
    out.push(asPattern(tree, w, h));
  }
  return out;
}

/** Offcuts by the sum of area^1.2 of those worth keeping (Gardeyn and Wauters 2022), in fiftieths of a sheet; then the work. */
function judge(patterns: readonly Pattern[], named: readonly Named[], size: SheetSize): Score {
  const unit = ((size.length - size.trim) * (size.width - size.trim)) ** 1.2 / 50;
  let value = 0;
  let work = 0;
  for (const pattern of patterns) {
    const { offcuts, cuts } = cutUp(pattern, size, named, 1);
    for (const o of offcuts) if (o.keep) value += (o.w * o.h) ** 1.2;
    work += cuts.length + fenceSettings(cuts) + 2 * Math.max(0, ...cuts.map((c) => c.stage));
  }
  return { sheets: patterns.length, offcuts: Math.floor(value / unit), work };
}

const better = (a: Score, b: Score): boolean =>
  a.sheets !== b.sheets ? a.sheets < b.sheets : a.offcuts !== b.offcuts ? a.offcuts > b.offcuts : a.work < b.work;

/** Largest first, by several meanings of large; ties by place in the list, which is sorted by id. */
function sortedOrders(rects: readonly Rect[]): number[][] {
  const sizes: ((r: Rect) => readonly [number, number])[] = [
    (r) => [r.w * r.h, r.w],
    (r) => [r.h, r.w],
    (r) => [r.w, r.h],
    (r) => [Math.max(r.w, r.h), Math.min(r.w, r.h)],
    (r) => [Math.min(r.w, r.h), Math.max(r.w, r.h)],
  ];
  return sizes.map((size) =>
    rects
      .map((r, i) => ({ i, s: size(r) }))
      .sort((a, b) => b.s[0] - a.s[0] || b.s[1] - a.s[1] || a.i - b.i)
      .map((e) => e.i),
  );
}

/** A fixed sequence of numbers in [0, 1): linear congruential, constants of Numerical Recipes. */
function sequence(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}

/** An order with that share of its entries moved a few places. */
function shuffled(order: readonly number[], random: () => number, share: number): number[] {
  const out = [...order];
  for (let i = 0; i < out.length; i++) {
    if (random() > share) continue;
    const j = Math.min(out.length - 1, i + 1 + Math.floor(random() * Math.max(3, out.length / 4)));
    [out[i], out[j]] = [out[j] as number, out[i] as number];
  }
  return out;
}
