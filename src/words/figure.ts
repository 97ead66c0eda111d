import { formatLength, parseFigure } from '../lengths/format.js';
import { NM_PER_IN } from '../lengths/length.js';
import type { Units } from '../lengths/length.js';

/** True when the figure prints without loss: whole 64ths of an inch, or whole thousandths of a millimetre. */
export const exact = (value: number, units: Units): boolean => value % (units === 'in' ? NM_PER_IN / 64 : 1000) === 0;

/** Half of the last place of decimal inches, nm. */
const HALF_PLACE = NM_PER_IN / 2000;

/**
 * A figure as cards print it: `8 1/2`, `19`; off the 64ths its nearest fraction and its decimal, `8 31/64 (8.490)`. Where the
 * decimal would be that of the fraction too the decimal stands alone, or it would be read as the fraction.
 */
export function figure(value: number, units: Units): string {
  const size = Math.abs(value);
  const off = units === 'in' && !exact(value, units);
  const both = formatLength(size, units, { fractionAndDecimal: off });
  const lost = off && Math.abs((parseFigure(both, units) ?? 0) - size) > HALF_PLACE;
  const text = lost ? formatLength(size, units) : both;
  return value < 0 ? `${text} beyond` : text;
}

/** Matches one figure at a reader's place. */
export const FIGURE = /(?:\d+ \d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)(?: \(\d*\.\d+\))?(?: beyond\b)?/y;

/** A printed figure back to nm; undefined when it is none. */
export function readFigure(text: string, units: Units): number | undefined {
  const beyond = text.endsWith(' beyond');
  const value = parseFigure(text.replace(/ beyond$/, ''), units);
  return value === undefined ? undefined : (beyond ? -value : value) + 0;
}
