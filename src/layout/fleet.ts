import { sheetBound } from './bound.js';
import { Exact, type Verdict } from './pack/exact.js';
import type { Kind } from './pack/filler.js';
import type { Blank, Filled, Packer } from './pack/goal.js';

/** A size of sheet that can be had: usable sides (trim taken off), what one costs, and how many there are. */
export interface SheetChoice {
  readonly w: number;
  readonly h: number;
  readonly cost: number;
  /** Infinity for sheets that are bought. */
  readonly count: number;
}
export interface Fleet {
  /** Index into the choices, one entry a sheet, and what is on each. */
  readonly sheets: readonly number[];
  readonly filled: readonly Filled[];
  readonly cost: number;
  /** Nothing that costs less can hold the pieces: shown by a bound. */
  readonly proved: boolean;
}

/** Mixtures that are tried, at most: our default. */
const MOST = 200;
/** Mixtures that are listed at all; past it nothing is called proved. */
const FLEETS = 10_000;

/**
 * Which sheets to take, least cost first: as many of each size alone, then mixtures that cost less than the best so far.
 * `limit`: steps of the packer in all. Undefined when no size takes every piece and mixtures fail too.
 */
export function chooseFleet(
  packer: Packer,
  choices: readonly SheetChoice[],
  kerf: number,
  limit: number,
): Fleet | undefined {
  const pieces = packer.kinds.flatMap((k, i) => Array<Kind>(packer.counts[i] ?? 0).fill(k));
  let best: Omit<Fleet, 'proved'> | undefined;
  const ruledOut: (readonly number[])[] = [];
  const exact = new Exact(packer.kinds, packer.counts, choices, packer.filler.rules, limit * EXACT_SHARE);
  choices.forEach((c, i) => {
    if (!pieces.every((p) => fits(p, c))) return;
    const bound = sheetBound(c.w, c.h, kerf, pieces);
    if (best && bound * c.cost >= best.cost) return;
    const share = packer.steps + (limit - packer.steps) / (choices.length > 1 ? 3 : 1);
    const { filled, least } = alone(packer, c, bound, share, exact);
    if (least === filled.length) ruledOut.push(filled.slice(1).map(() => i));
    if (filled.length > c.count || (best && filled.length * c.cost >= best.cost)) return;
    best = { sheets: filled.map(() => i), filled, cost: filled.length * c.cost };
  });
  const { list, all } = cheaper(packer, choices, pieces, kerf, best?.cost ?? Infinity);
  for (const sheets of list.slice(0, MOST)) {
    const cost = costOf(sheets, choices);
    if ((best && cost >= best.cost) || ruledOut.some((r) => within(sheets, r))) continue;
    if (packer.steps >= limit) break;
    const share = Math.max(2e5, (limit - packer.steps) / 8);
    const blanks = sheets.map((s) => choices[s] as SheetChoice);
    const tried = fill(packer, blanks, [], Math.min(limit, packer.steps + share), exact);
    if (tried.kind === 'none') ruledOut.push(sheets);
    if (tried.kind === 'fits' && tried.filled.every((f) => f.kinds.length > 0))
      best = { sheets, filled: tried.filled, cost };
  }
  const cost = best?.cost ?? Infinity;
  const standing = (s: readonly number[]): boolean =>
    costOf(s, choices) < cost - 1e-9 && !ruledOut.some((r) => within(s, r));
  const open = !all || list.some(standing);
  return best ? { ...best, proved: !open } : undefined;
}

const fits = (p: Kind, c: { readonly w: number; readonly h: number }): boolean =>
  (p.w <= c.w && p.h <= c.h) || (p.turn && p.h <= c.w && p.w <= c.h);
const costOf = (sheets: readonly number[], choices: readonly SheetChoice[]): number =>
  sheets.reduce((sum, s) => sum + (choices[s] as SheetChoice).cost, 0);

/** Are all of these sheets among those? Both sorted. */
function within(few: readonly number[], many: readonly number[]): boolean {
  let at = 0;
  for (const x of many) if (at < few.length && few[at] === x) at++;
  return at === few.length;
}

/** Share of the steps that the exact search may take, and again for its answers: our default. */
const EXACT_SHARE = 0.25;
/** Everything into these sheets: by exact search where the job is small enough, else by the packer, which proves nothing. */
function fill(packer: Packer, blanks: readonly Blank[], from: readonly Filled[], limit: number, exact: Exact): Verdict {
  const answer = exact.fit(blanks);
  if (answer.kind !== 'open') return answer;
  const filled = packer.into(blanks, from, limit);
  return filled ? { kind: 'fits', filled } : answer;
}

/** Sheets of one size: started constructively, then one fewer as long as that goes. `least`: no fewer can do. */
function alone(
  packer: Packer,
  c: SheetChoice,
  bound: number,
  limit: number,
  exact: Exact,
): { readonly filled: readonly Filled[]; readonly least: number } {
  let best: readonly Filled[] = packer.start(c);
  while (best.length > bound && packer.steps < limit) {
    const kept = [...best].sort((a, b) => b.worth - a.worth || a.blank - b.blank).slice(0, -1);
    const from = kept.map((f, blank) => ({ ...f, blank }));
    const fewer = fill(
      packer,
      from.map(() => c),
      from,
      limit,
      exact,
    );
    if (fewer.kind === 'none') return { filled: best, least: best.length };
    if (fewer.kind === 'open') break;
    best = fewer.filled;
  }
  return { filled: best, least: bound };
}

/**
 * Mixtures that cost less than `cost` and that no bound rules out, dearest first (each success rules out what is dearer).
 * `all`: none was left out. A mixture with twice the room is not added to: it stands in the list itself.
 */
function cheaper(
  packer: Packer,
  choices: readonly SheetChoice[],
  pieces: readonly Kind[],
  kerf: number,
  cost: number,
): { readonly list: readonly (readonly number[])[]; readonly all: boolean } {
  const grown = (w: number, h: number): number => (w + kerf) * (h + kerf);
  const area = pieces.reduce((sum, p) => sum + grown(p.w, p.h), 0);
  const w = Math.max(...choices.map((c) => c.w));
  const h = Math.max(...choices.map((c) => c.h));
  // What fits no small sheet counts as if all were as large as the largest in both directions: a bound for any mixture.
  const least = sheetBound(w, h, kerf, pieces);
  const out: number[][] = [];
  const most = Number.isFinite(cost) ? cost : 4 * packer.counts.length * Math.max(...choices.map((c) => c.cost));
  const visit = (from: number, sheets: number[], spent: number, room: number): void => {
    if (out.length >= FLEETS) return;
    if (room >= area && sheets.length >= least) out.push([...sheets]);
    if (room >= 2 * area && sheets.length > least) return;
    for (let i = from; i < choices.length; i++) {
      const c = choices[i] as SheetChoice;
      const next = spent + c.cost;
      if (next >= most - 1e-9 || sheets.filter((s) => s === i).length >= c.count) continue;
      visit(i, [...sheets, i], next, room + grown(c.w, c.h));
    }
  };
  visit(0, [], 0, 0);
  const held = out.filter((sheets) => pieces.every((p) => sheets.some((s) => fits(p, choices[s] as SheetChoice))));
  held.sort((a, b) => costOf(b, choices) - costOf(a, choices) || a.length - b.length);
  return { list: held, all: out.length < FLEETS };
}
