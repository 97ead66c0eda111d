import { inches, nm, snap, type Length } from '../lengths/length.js';

/** Jaws and cauls beyond the work, the ends of a panel that want no clamp, the furthest that clamps stand apart: common practice. */
export const CLAMP_MORE = inches(4);
const ENDS = inches(4);
const APART = inches(10);
/** A panel wider than this wants cauls across it, so far apart: common practice. */
const CAUL_FROM = inches(12);
const CAUL_APART = inches(16);
export const RULE_CLAMPS = 'n = ⌈(L − 4 in) / spacing⌉ + 1, spacing at most twice the outer stave and 10 in';

/** Clamps along the joints of a panel of `long`, outer staves `stave` wide (nm): the rule of spread pressure, common practice. */
export function clampsFor(long: number, stave: number): number {
  const spacing = Math.min(2 * stave, APART);
  return Math.max(2, Math.ceil(Math.max(0, long - ENDS) / spacing) + 1);
}

/** `n` places along `long`, the first and the last `end` from the ends (a quarter of the length where that is less), on `step`. */
export function spacedOver(long: number, n: number, step: number, end: number = ENDS / 2): Length[] {
  const first = Math.min(end, long / 4);
  if (n <= 1) return [nm(long / 2)];
  return Array.from({ length: n }, (_, i) => snap(first + (i * (long - 2 * first)) / (n - 1), step));
}

/** Pairs of cauls across a panel, nm: none on a narrow one. */
export const caulsFor = (long: number, wide: number): number =>
  wide <= CAUL_FROM ? 0 : Math.max(2, Math.ceil(Math.max(0, long - ENDS) / CAUL_APART) + 1);

/** What clamps across a panel must open, nm. */
export const openingFor = (wide: number): number => wide + CLAMP_MORE;

/** How many clamps of a shop open that far. */
export const withOpening = (
  clamps: readonly { readonly opening: number; readonly count: number }[],
  opening: number,
): number => clamps.reduce((n, c) => n + (c.opening >= opening ? c.count : 0), 0);
