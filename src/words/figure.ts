import { formatLength, parseFigure } from '../lengths/format.js';
import { NM_PER_IN } from '../lengths/length.js';
import type { Units } from '../lengths/length.js';

/** True when the figure prints without loss: whole 64ths of an inch, or whole thousandths of a millimetre. */
export const exact = (value: number, units: Units): boolean => value % (units === 'in' ? NM_PER_IN / 64 : 1000) === 0;

/** A figure as cards print it: `8 1/2`, `19`; off the 64ths its nearest fraction and its decimal, `8 31/64 (8.490)`. */
export function figure(value: number, units: Units): string {
  const text = formatLength(Math.abs(value), units, { fractionAndDecimal: units === 'in' && !exact(value, units) });
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
