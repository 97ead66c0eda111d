/** Scales of ISO 5455 and of US architects' and furniture practice, largest first, as 1:n. */
export const SCALES: readonly number[] = [
  1, 2, 4, 5, 8, 10, 12, 16, 20, 24, 32, 48, 50, 64, 96, 100, 200, 500, 1000, 2000, 5000, 10000,
];
/** The smallest of them: what is still too large is told before anything is drawn. */
export const SMALLEST = 10000;
/** The largest scale at which `fits` says yes; undefined when none does. */
export const largestScale = (fits: (oneTo: number) => boolean): number | undefined => SCALES.find(fits);

/** Splits rows over pages: the first page holds `first`, the others `next`. Never an empty last page. */
export function pages<T>(rows: readonly T[], first: number, next = first): T[][] {
  const out: T[][] = [rows.slice(0, first)];
  for (let i = first; i < rows.length; i += next) out.push(rows.slice(i, i + next));
  return out;
}
