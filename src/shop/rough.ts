import { nm, NM_PER_IN, NM_PER_MM, snapUp, type Length, type Units } from '../lengths/length.js';

/** What is cut from the board for one part, nm. The one rule of rough sizes: lists, cards, checks and layouts all take it. */
export interface Rough {
  /** Thickness after the first milling, and width and length of the blank; of the glued blank where it is of staves. */
  readonly thickness: Length;
  readonly width: Length;
  readonly length: Length;
  readonly staves: number;
  /** Width of one stave when its edges are jointed, and as it is sawn from the board; the blank's where it is in one. */
  readonly jointed: Length;
  readonly stave: Length;
}
export type Sizes = readonly [thickness: number, width: number, length: number];

/** Rough widths and lengths are rounded up to it: our default. */
export const roughStep = (units: Units): Length => nm(units === 'in' ? NM_PER_IN / 8 : NM_PER_MM);

/**
 * Rough sizes of a part that is `finished` over all (nm), with the shop's `allowance` of each: usually 1/8, 1/4 and 1 in. A
 * panel's glued blank has twice the allowance of width (1/2 in, the least of common practice); its staves are alike, and each
 * is sawn wider than it is jointed by the allowance of width. Widths and lengths are rounded up.
 */
export function roughOf(finished: Sizes, allowance: Sizes, units: Units, staves = 1): Rough {
  const step = roughStep(units);
  const glued = staves > 1;
  const [t, w, l] = finished;
  // Staves are alike and on the rule: the blank is as wide as they come to.
  const jointed = glued
    ? snapUp((w + allowance[1] * 2) / staves, units === 'in' ? step / 2 : step)
    : snapUp(w + allowance[1], step);
  const width = nm(jointed * (glued ? staves : 1));
  return {
    thickness: nm(t + allowance[0]),
    width,
    length: snapUp(l + allowance[2], step),
    staves: glued ? staves : 1,
    jointed,
    stave: glued ? snapUp(jointed + allowance[1], step) : width,
  };
}

/** Rough sizes of a part glued up from `staves`, or of as many more as bring a stave within the jointer (nm, by its manual). */
export function roughWithin(
  finished: Sizes,
  allowance: Sizes,
  units: Units,
  staves: number,
  jointer: number | undefined,
): Rough {
  const rough = (n: number): Rough => roughOf(finished, allowance, units, n);
  let n = staves;
  while (n > 1 && n < 40 && rough(n).stave > (jointer ?? Infinity)) n++;
  return rough(n);
}

/** Shorter than this, finished (12 in), blanks are milled several in one length; that length is at least 14 in. From memory. */
const SHORT: Readonly<Record<Units, Length>> = { in: nm(12 * NM_PER_IN), mm: nm(300 * NM_PER_MM) };
const FEED: Readonly<Record<Units, Length>> = { in: nm(14 * NM_PER_IN), mm: nm(350 * NM_PER_MM) };

/** Is a part, `long` finished, too short to be milled by itself? */
export const tooShort = (long: number, units: Units, shortest?: number): boolean => long < (shortest ?? SHORT[units]);

/**
 * Parts of one section and `long` each, milled in one length and cut apart after: how many in one, and how long it is, nm. As
 * few as reach the least that the planer feeds (`shortest`, by its manual) with the allowance over; all where even those are short.
 */
export function gangOf(
  long: number,
  count: number,
  facts: { readonly allowance: number; readonly kerf: number; readonly units: Units; readonly shortest?: number },
): { readonly of: number; readonly length: Length; readonly reaches: boolean } {
  const least = Math.max(FEED[facts.units], facts.shortest ?? 0);
  const over = (n: number): number => n * long + (n - 1) * facts.kerf + facts.allowance;
  let of = 1;
  while (of < count && over(of) < least) of++;
  const length = snapUp(Math.max(over(of), least), roughStep(facts.units));
  return { of, length, reaches: over(of) >= least };
}
