import { inches } from '../lengths/length.js';
import { cutUp, type Named, type SheetSize } from './cuts.js';
import { chooseFleet, type Fleet, type SheetChoice } from './fleet.js';
import { itemsOf, type Pattern, type Way } from './guillotine.js';
import type { Layout, NestItem, SheetLayout } from './layout.js';
import type { Kind, Rules } from './pack/filler.js';
import { Packer } from './pack/goal.js';
import { refine, usable } from './refine.js';
import { sheetBound } from './bound.js';

/** One stock of sheet goods: the sizes in which it can be had, and what is to be cut from it. Lengths nm. */
export interface NestStock {
  readonly id: string;
  readonly grain: 'length' | 'width' | 'none';
  readonly sheets: readonly NestSheet[];
  readonly items: readonly (NestItem & { readonly mark?: string })[];
}
export interface NestSheet {
  /** What an offcut is called on the rack; a bought sheet has none. */
  readonly name?: string;
  readonly length: number;
  readonly width: number;
  /** Any money; without a price a sheet costs its area, an offcut from the rack two fifths of it (our default). */
  readonly price?: number;
  /** How many there are; as many as wanted without it. */
  readonly count?: number;
}
export interface NestJob {
  readonly stocks: readonly NestStock[];
  readonly kerf: number;
  /** Off one long edge and one end, kerf in it; 0: edges are used as they come. */
  readonly trim: number;
  /** Least sides of an offcut worth keeping; our default 12 x 4 in. */
  readonly keep?: readonly [number, number];
  /** How often the direction of cutting may change on a sheet, a last cut to size not counted; our default 3. */
  readonly stages?: number;
  /** Which way a whole sheet is cut first; our default either. */
  readonly first?: Way | 'either';
  /** The largest piece that one person steers at the saw: long side, short side. */
  readonly alone?: readonly [number, number];
  /** Pieces looked at a stock, in thousands, before the best so far is taken: counted, never timed. Our default 15,000. */
  readonly budget?: number;
}

const KEEP = [inches(12), inches(4)] as const;
export const BUDGET = 15_000;
/** Layouts judged for their cuts (in all, a piece), and the share of the budget that goes into the offcut: our defaults. */
const LOOKS = 600;
const LOOKS_EACH = 25;
const OFFCUT_SHARE = 0.15;

/**
 * Lays out every item: guillotine cuts only, grain kept, a kerf between parts. In order: least cost of sheets, the largest
 * useful offcut kept whole, the fewest cuts and fence settings. Same job, same layout. An item that fits no sheet is listed
 * in `unplaced`.
 */
export function nestSheets(job: NestJob): Layout {
  const sheets: SheetLayout[] = [];
  const counts: Layout['counts'][number][] = [];
  const unplaced: Layout['unplaced'][number][] = [];
  let offcut = 1;
  for (const stock of [...job.stocks].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const items = [...stock.items].sort((a, b) =>
      a.part < b.part ? -1 : a.part > b.part ? 1 : Number(a.spare ?? 0) - Number(b.spare ?? 0),
    );
    const sizes = stock.sheets.map((s) => sizeOf(s, job));
    const rects = items.map((item) => asKind(item, stock.grain));
    const whys = rects.map((r) => tooLarge(r, sizes));
    items.forEach(({ part }, i) => whys[i] !== undefined && unplaced.push({ part, why: whys[i] }));
    const placed = items.filter((_, i) => whys[i] === undefined);
    if (placed.length === 0) continue;
    const laid = layStock(
      stock,
      placed,
      rects.filter((_, i) => whys[i] === undefined),
      sizes,
      job,
      offcut,
    );
    sheets.push(...laid.sheets);
    counts.push(laid.count);
    offcut = laid.offcut;
  }
  return { sheets, counts, unplaced };
}

const sizeOf = (s: NestSheet, job: NestJob): SheetSize => ({
  length: s.length,
  width: s.width,
  trim: s.name === undefined ? job.trim : 0,
  kerf: job.kerf,
  keep: job.keep ?? KEEP,
  ...(job.alone ? { alone: job.alone } : {}),
});

interface Laid {
  readonly sheets: readonly SheetLayout[];
  readonly count: Layout['counts'][number];
  readonly offcut: number;
}

function layStock(
  stock: NestStock,
  items: NestStock['items'],
  rects: readonly Kind[],
  sizes: readonly SheetSize[],
  job: NestJob,
  firstOffcut: number,
): Laid {
  const rules: Rules = { stages: job.stages ?? 3, first: job.first ?? 'either', kerf: job.kerf };
  const { kinds, members } = sorts(rects);
  const packer = new Packer(
    kinds,
    members.map((m) => m.length),
    rules,
  );
  const limit = (job.budget ?? BUDGET) * 1000;
  const choices = stock.sheets.map((s, i) => choice(s, sizes[i] as SheetSize, stock));
  const fleet = chooseFleet(packer, choices, job.kerf, limit) as Fleet;
  const of = fleet.sheets.map((s) => sizes[s] as SheetSize);
  const names = kinds.map((k, i): Named => ({ ...named(items[members[i]?.[0] ?? 0], k) }));
  const steps = limit * OFFCUT_SHARE;
  const patterns = refine(fleet.filled, {
    packer,
    rules,
    sizes: of,
    names,
    steps,
    looks: Math.min(LOOKS, 20 + LOOKS_EACH * items.length, limit / 5000),
  });
  const own = ownItems(patterns, members);
  const all = items.map((item, i) => named(item, rects[i] as Kind));
  let offcut = firstOffcut;
  const sheets = own.map((pattern, i): SheetLayout => {
    const cutting = cutUp(pattern, of[i] as SheetSize, all, offcut);
    offcut += cutting.offcuts.filter((o) => o.keep).length;
    const { length, width, kerf, trim } = of[i] as SheetSize;
    const name = stock.sheets[fleet.sheets[i] as number]?.name;
    const head = { stock: stock.id, index: i + 1, of: own.length, length, width, kerf, trim, grain: stock.grain };
    return { ...head, ...(name === undefined ? {} : { rack: name }), ...cutting };
  });
  const largest = usable({ ...(sizes[0] as SheetSize), ...largestOf(sizes) });
  const bound = fleet.proved ? sheets.length : sheetBound(largest.w, largest.h, job.kerf, rects);
  const count = {
    stock: stock.id,
    used: sheets.length,
    bound,
    proved: fleet.proved,
    ...costOf(stock, fleet),
    ...(stock.sheets.length > 1 ? ({ choice: true } as const) : {}),
  };
  return { sheets, count, offcut };
}

const largestOf = (
  sizes: readonly SheetSize[],
): { readonly length: number; readonly width: number; readonly trim: 0 } => ({
  length: Math.max(...sizes.map((s) => s.length - s.trim)),
  width: Math.max(...sizes.map((s) => s.width - s.trim)),
  trim: 0,
});
/** What is paid, where all bought sheets have a price. */
function costOf(stock: NestStock, fleet: Fleet): { readonly cost?: number } {
  const bought = fleet.sheets.map((s) => stock.sheets[s] as NestSheet).filter((s) => s.name === undefined);
  if (bought.length === 0 || bought.some((s) => s.price === undefined)) return {};
  return { cost: bought.reduce((sum, s) => sum + (s.price as number), 0) };
}
const RACK = 0.4;
function choice(s: NestSheet, size: SheetSize, stock: NestStock): SheetChoice {
  const { w, h } = usable(size);
  const priced = stock.sheets.every((x) => x.price !== undefined || x.name !== undefined);
  const perArea = priced ? pricePerArea(stock.sheets) : 1;
  const cost = s.price ?? s.length * s.width * perArea * (s.name === undefined ? 1 : RACK);
  return { w, h, cost, count: s.count ?? (s.name === undefined ? Infinity : 1) };
}
/** What wood on the rack would cost: as the cheapest bought sheet. */
function pricePerArea(sheets: readonly NestSheet[]): number {
  const all = sheets.flatMap((s) => (s.price === undefined ? [] : [s.price / (s.length * s.width)]));
  return all.length > 0 ? Math.min(...all) : 1;
}
const named = (item: NestStock['items'][number] | undefined, rect: Kind): Named => ({
  part: item?.part ?? '',
  mark: item?.mark ?? item?.part ?? '',
  w: rect.w,
  h: rect.h,
  ...(item?.spare ? { spare: true } : {}),
});

/** Grain along the sheet's length: the item's length lies along x; along its width: along y. */
const asKind = (item: NestItem, grain: NestStock['grain']): Kind =>
  grain === 'width'
    ? { w: item.width, h: item.length, turn: item.mayTurn }
    : { w: item.length, h: item.width, turn: item.mayTurn || grain === 'none' };

/** Why a piece fits no sheet; undefined when it fits one. */
function tooLarge(rect: Kind, sizes: readonly SheetSize[]): string | undefined {
  const inside = (w: number, h: number): boolean => sizes.some((s) => w <= s.length - s.trim && h <= s.width - s.trim);
  if (inside(rect.w, rect.h) || (rect.turn && inside(rect.h, rect.w))) return undefined;
  return !rect.turn && inside(rect.h, rect.w)
    ? 'it fits the sheet only with its grain across'
    : 'it is larger than the sheet less its trim';
}

/** Equal rectangles are one kind; members by place in the list. */
function sorts(rects: readonly Kind[]): { readonly kinds: readonly Kind[]; readonly members: readonly number[][] } {
  const kinds: Kind[] = [];
  const members: number[][] = [];
  rects.forEach((r, i) => {
    const k = kinds.findIndex((x) => x.w === r.w && x.h === r.h && x.turn === r.turn);
    if (k >= 0) members[k]?.push(i);
    else {
      kinds.push(r);
      members.push([i]);
    }
  });
  return { kinds, members };
}

/** Kinds in the patterns become items: each the next of its kind. */
function ownItems(patterns: readonly Pattern[], members: readonly (readonly number[])[]): Pattern[] {
  const next = members.map(() => 0);
  const own = (p: Pattern): Pattern => {
    if (p.kind === 'empty') return p;
    if (p.kind === 'strips') return { ...p, strips: p.strips.map((s) => ({ ...s, pattern: own(s.pattern) })) };
    const at = next[p.item] as number;
    next[p.item] = at + 1;
    return { ...p, item: members[p.item]?.[at] as number };
  };
  const out = patterns.map(own);
  return out.filter((p) => itemsOf(p).length > 0);
}
