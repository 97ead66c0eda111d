import { toIn } from '../lengths/length.js';

/**
 * Board feet of `count` boards, sizes in inches. A board under 1 in thick counts as 1
 * (Noyes, Handwork in Wood, 1910, p. 48; Griffith; Danforth).
 */
export const boardFeet = (thick: number, wide: number, long: number, count = 1): number =>
  (count * Math.max(1, thick) * wide * long) / 144;

/** Rough thickness (in) of lumber sold by quarters: `5/4` is 1 1/4. Undefined when it is no such name. */
export function quarterInches(quarter: string): number | undefined {
  const [, n, d] = /^(\d+)\/(\d+)$/.exec(quarter) ?? [];
  return n === undefined || Number(d) === 0 ? undefined : Number(n) / Number(d);
}

/** Board feet of a size (nm) sold by its quarter: at the rough thickness by name, as it measures where it has none. */
export const feetOf = (quarter: string, thickness: number, width: number, length: number): number =>
  boardFeet(quarterInches(quarter) ?? toIn(thickness), toIn(width), toIn(length));
/** Board feet of a board (nm) of two widths, by their mean. */
export const feetOfBoard = (b: {
  readonly quarter: string;
  readonly thickness: number;
  readonly width: readonly [number, number];
  readonly length: number;
}): number => feetOf(b.quarter, b.thickness, (b.width[0] + b.width[1]) / 2, b.length);

/**
 * Surface measure of a board as it is tallied at the yard: width (in) times length (ft) over 12, to the nearest whole foot
 * (hardwood rule of the NHLA, from memory; it gives the measures stated of boards of the 1998 red oak data bank).
 */
export const surfaceMeasure = (wide: number, long: number): number => Math.round((wide * long) / 144 + 1e-9);
/** Board feet as the yard tallies a board: surface measure times its rough thickness, under 1 in as 1. */
export const yardTally = (thick: number, wide: number, long: number): number =>
  surfaceMeasure(wide, long) * Math.max(1, thick);
