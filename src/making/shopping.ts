import { quarterFor, type QuarterNeed } from '../data/quarters.js';
import { inches, mm, nm, snapUp, toIn, type Length, type Units } from '../lengths/length.js';
import type { Piece, Run, Stock } from '../piece/piece.js';
import { buying, type Buying, type Want } from '../shop/buying.js';
import { resawPlan, type ResawPlan } from '../shop/resaw.js';
import { gangOf, tooShort } from '../shop/rough.js';
import { boardFeet, quarterInches, yardTally } from '../shop/board-feet.js';
import { rowsBy, sameBlank, sameSizes, type Blank, type BlankRow } from './rough.js';
import type { Spare } from './spares.js';

/** What makes a part hard to find a board for. */
export type Hard = 'run' | 'legs' | 'one board' | 'longest' | 'widest' | 'long' | 'wide';
export interface ShoppingRow extends BlankRow {
  readonly hard: readonly Hard[];
  readonly shows: boolean;
  readonly run?: Run;
  /** The least board: width and length, nm. A run's is all its parts end to end; of staves that of one. */
  readonly board: readonly [width: Length, length: Length];
  /** Finished, by volume; and rough at the quarter's thickness (a board under 1 in counts as 1). Board feet. */
  readonly net: number;
  readonly feet: number;
  /** Board feet at which the yard tallies the least board. */
  readonly tally: number;
}
export interface QuarterJudgement {
  readonly thickness: number;
  readonly row: BlankRow;
  readonly need?: QuarterNeed;
  readonly verdict: 'agrees' | 'flat boards only' | 'too thin' | 'thicker than it needs' | 'glue up';
}
export interface ResawRow {
  readonly row: BlankRow;
  readonly plan: ResawPlan;
  /** Leaves, and the boards that give them: rough width and length, nm. */
  readonly leaves: number;
  readonly boards: number;
  readonly size: readonly [width: number, length: number];
  /** Board feet less than cut one by one. */
  readonly saves: number;
  /** Higher than the band saw takes, where that is known. */
  readonly tooHigh: boolean;
}
/** All that is bought of one wood in one thickness and cut. */
export interface ShoppingGroup {
  readonly stock: Stock;
  /** Hard ones first. */
  readonly rows: readonly ShoppingRow[];
  readonly net: number;
  readonly buying: Buying;
  readonly quarters: readonly QuarterJudgement[];
  readonly resaw: readonly ResawRow[];
  readonly spares: readonly Spare[];
}

/** Over the finished size of the part that a board must give at the least: 1 in (25 mm), common practice. */
const over = (units: Units): Length => (units === 'in' ? inches(1) : mm(25));
const LONG = inches(72);
const WIDE = inches(8);
/** So many square sticks alike are a set of legs. */
const LEGS = 3;

/** What is to be bought, by wood and quarter, thickest first within a wood. */
export function shopping(piece: Piece, blanks: readonly Blank[], spares: readonly Spare[]): ShoppingGroup[] {
  return rowsBy(blanks, groupKey)
    .map((g) => groupOf(piece, g.blanks, spares))
    .sort((a, b) => nameOf(a, b) || quarterOf(b.stock) - quarterOf(a.stock) || (a.stock.id < b.stock.id ? -1 : 1));
}
const groupKey = ({ stock: s }: Blank): string => [s.material, s.quarter, s.cut ?? ''].join('|');
const nameOf = (a: ShoppingGroup, b: ShoppingGroup): number =>
  a.stock.name < b.stock.name ? -1 : a.stock.name > b.stock.name ? 1 : 0;
const quarterOf = (s: Stock): number => quarterInches(s.quarter ?? '') ?? 1;

function groupOf(piece: Piece, blanks: readonly Blank[], spares: readonly Spare[]): ShoppingGroup {
  const stock = (blanks[0] as Blank).stock;
  const ids = new Set(blanks.map((b) => b.stock.id));
  const mine = spares.filter((s) => ids.has(s.stock));
  const rows = shoppingRows(piece, blanks);
  const wants = rows.map((r) => wantOf(piece, r));
  return {
    stock,
    rows,
    net: rows.reduce((s, r) => s + r.net, 0),
    buying: buying(
      wants,
      mine.reduce((s, x) => s + x.feet, 0),
      oneBoard(rows, quarterOf(stock)),
    ),
    quarters: quarters(blanks),
    resaw: resaws(piece, blanks),
    spares: mine,
  };
}

function shoppingRows(piece: Piece, blanks: readonly Blank[]): ShoppingRow[] {
  const runOf = (b: Blank): Run | undefined => piece.runs?.find((r) => r.parts.includes(b.part.id));
  const rows = rowsBy(blanks, (b) => runOf(b)?.id ?? sameSizes(b)).map((row) => {
    const run = runOf(row.blanks[0] as Blank);
    const board = boardOf(piece, row, run);
    const thick = quarterOf((row.blanks[0] as Blank).stock);
    const tally = yardTally(thick, toIn(board[0]), toIn(board[1]));
    return { ...row, ...(run ? { run } : {}), board, tally, ...feetOf(row) };
  });
  const most = (side: 0 | 1): unknown =>
    rows.length < 2 ? undefined : [...rows].sort((a, b) => b.board[side] - a.board[side] || b.feet - a.feet)[0];
  const [widest, longest] = [most(0), most(1)];
  return rows
    .map((r): ShoppingRow => ({ ...r, shows: showing(piece, r), hard: hardness(r, r === widest, r === longest) }))
    .sort((a, b) => rank(b) - rank(a) || b.board[1] - a.board[1] || b.board[0] - a.board[0]);
}
const RANKS: Readonly<Record<Hard, number>> = {
  run: 64,
  legs: 32,
  'one board': 16,
  widest: 8,
  longest: 8,
  wide: 2,
  long: 2,
};
const rank = (r: ShoppingRow): number => r.hard.reduce((s, h) => s + RANKS[h], 0);

/** Does a part of the row show? All are taken to, where the piece says of none that it does. */
const showing = (piece: Piece, row: BlankRow): boolean =>
  row.blanks.some((b) => b.part.show.length > 0) || piece.parts.every((p) => p.show.length === 0);

function hardness(r: Omit<ShoppingRow, 'hard' | 'shows'>, widest: boolean, longest: boolean): Hard[] {
  const [first] = r.blanks;
  if (!first) return [];
  const square = first.finished[0] === first.finished[1];
  const staves = first.rough.staves > 1;
  return [
    ...(r.run ? (['run'] as const) : []),
    ...(square && r.blanks.length >= LEGS ? (['legs'] as const) : []),
    ...(staves && first.part.show.length > 0 ? (['one board'] as const) : []),
    ...(widest ? (['widest'] as const) : r.board[0] > WIDE ? (['wide'] as const) : []),
    ...(longest ? (['longest'] as const) : r.board[1] > LONG ? (['long'] as const) : []),
  ];
}

/** The least board: the part, or one stave, and 1 in each way; a run is cut from one board end to end. Rounded up to 1/4 in and 1 in. */
function boardOf(piece: Piece, row: BlankRow, run: Run | undefined): [Length, Length] {
  const more = over(piece.units);
  const [coarse, whole] = piece.units === 'in' ? [inches(1 / 4), inches(1)] : [mm(5), mm(10)];
  const wide = Math.max(...row.blanks.map((b) => (b.rough.staves > 1 ? b.rough.jointed : b.finished[1])));
  const long = row.blanks.map((b) => b.finished[2] + more);
  const end = run
    ? long.reduce((s, l) => s + l, 0) + (long.length - 1) * piece.shop.kerf
    : Math.max(...long, ...row.blanks.map((b) => milledIn(piece, row, b)));
  return [snapUp(wide + more, coarse), snapUp(end, whole)];
}
/** Length in which a short blank is milled with others of its row; none for one that is long enough, nm. */
function milledIn(piece: Piece, row: BlankRow, { finished, rough }: Blank): number {
  const { units, shop, profile } = piece;
  const shortest = profile?.machines.planer?.shortest;
  if (!tooShort(finished[2], units, shortest)) return 0;
  const facts = {
    allowance: shop.allowance[2],
    kerf: shop.kerf,
    units,
    ...(shortest === undefined ? {} : { shortest }),
  };
  const each = rough.staves > 1 ? rough.length : finished[2];
  return gangOf(each, row.blanks.length * rough.staves, facts).length;
}
function feetOf(row: BlankRow): { net: number; feet: number } {
  let [net, feet] = [0, 0];
  for (const { finished, rough, stock } of row.blanks) {
    const [t, w, l] = finished.map(toIn) as [number, number, number];
    const thick = Math.max(quarterOf(stock), toIn(rough.thickness));
    net += (t * w * l) / 144;
    feet += boardFeet(thick, toIn(rough.stave) * rough.staves, toIn(rough.length));
  }
  return { net, feet };
}
/** Walnut is the wood whose sapwood is cut away where it shows (common practice). */
const HEARTWOOD = /walnut/;
function wantOf(piece: Piece, r: ShoppingRow): Want {
  const painted = /paint/i.test(piece.finish ?? '');
  const look = r.hard.includes('run') ? 'one board' : r.shows && !painted ? 'shows' : 'hidden';
  return {
    feet: r.feet,
    long: Math.max(...r.blanks.map((b) => toIn(b.rough.length))),
    wide: Math.max(...r.blanks.map((b) => toIn(b.rough.stave))),
    look,
    ...(look !== 'hidden' && HEARTWOOD.test(r.blanks[0]?.stock.material ?? '') ? { heart: true } : {}),
  };
}
/** One board more: as wide as the widest asks, at least 6 in, and the longest to whole feet, at least 8 ft: our default. */
function oneBoard(rows: readonly ShoppingRow[], thick: number): number {
  const plain = rows.filter((r) => !r.run);
  const wide = Math.max(6, ...plain.map((r) => toIn(r.board[0])));
  const long = Math.max(8, ...plain.map((r) => Math.ceil(toIn(r.board[1]) / 12)));
  return boardFeet(thick, wide, long * 12);
}

/** Each finished thickness against the quarter that the definition buys. */
function quarters(blanks: readonly Blank[]): QuarterJudgement[] {
  return rowsBy(blanks, (b) => `${b.finished[0]}`)
    .map((row): QuarterJudgement => {
      const thickness = row.blanks[0]?.finished[0] ?? 0;
      const long = Math.max(...row.blanks.map((b) => b.finished[2]));
      const wide = Math.max(...row.blanks.map((b) => b.rough.stave));
      const need = quarterFor(thickness, long, wide);
      const has = quarterOf((row.blanks[0] as Blank).stock);
      return { thickness, row, ...(need ? { need } : {}), verdict: verdictOf(has, need) };
    })
    .sort((a, b) => b.thickness - a.thickness);
}
function verdictOf(has: number, need: QuarterNeed | undefined): QuarterJudgement['verdict'] {
  if (!need) return 'glue up';
  const [least, good] = [quarterInches(need.least) ?? 0, quarterInches(need.comfortable) ?? 0];
  if (has < least) return 'too thin';
  return has < good ? 'flat boards only' : has > good ? 'thicker than it needs' : 'agrees';
}

/** Where two leaves come from one board of the quarter: alike blanks in pairs, on edge through the band saw. */
function resaws(piece: Piece, blanks: readonly Blank[]): ResawRow[] {
  const high = piece.profile?.machines.bandsaw?.height;
  return rowsBy(blanks, sameBlank).flatMap((row): ResawRow[] => {
    const { finished, rough, stock } = row.blanks[0] as Blank;
    const leaves = row.blanks.length * rough.staves;
    const plan = resawPlan(inches(quarterOf(stock)), finished[0], rough.length);
    if (!plan || leaves < 2) return [];
    const boards = Math.ceil(leaves / 2);
    const each = boardFeet(quarterOf(stock), toIn(rough.stave), toIn(rough.length));
    return [
      {
        row,
        plan,
        leaves,
        boards,
        size: [nm(rough.stave), nm(rough.length)],
        saves: (leaves - boards) * each,
        tooHigh: high !== undefined && rough.stave > high,
      },
    ];
  });
}
