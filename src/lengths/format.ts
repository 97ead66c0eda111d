import type { Length, Units } from './length.js';
import { inches, mm, NM_PER_IN, NM_PER_MM, nm } from './length.js';
import { mixed, mixedText, SIXTY_FOURTH } from './fractions.js';

export interface FigureOptions {
  /** The shop's step, nm. A multiple of 1/64 in that is off a coarser step prints its fraction and its decimal. */
  readonly step?: Length;
  /** Inches only: print the fraction and the decimal, `7/32 (.219)`. Off 1/64 in the fraction is the nearest one. */
  readonly fractionAndDecimal?: boolean;
}

/** The decimal digits of `value`, rounded to `places` (halves away from zero), zeros trimmed, never `-0`. */
function decimal(value: number, places: number): string {
  const scale = 10 ** places;
  const whole = Math.round(Math.abs(value) * scale * (1 + Number.EPSILON));
  if (whole === 0) return '0';
  const digits = String(whole).padStart(places + 1, '0');
  const head = digits.slice(0, digits.length - places);
  const tail = digits.slice(digits.length - places).replace(/0+$/, '');
  return (value < 0 ? '-' : '') + head + (tail === '' ? '' : `.${tail}`);
}

/** Decimal inches as the shop writes them: three places, no zero before the point (common practice). */
const decimalInches = (value: number): string => decimal(value / NM_PER_IN, 3).replace(/^(-?)0\./, '$1.');

function inchFigure(value: number, options: FigureOptions): string {
  const onRule = value % SIXTY_FOURTH === 0;
  const offStep = options.step !== undefined && value % options.step !== 0;
  const whole = value % NM_PER_IN === 0;
  if (!onRule && options.fractionAndDecimal !== true) return decimalInches(value);
  const fraction = mixedText(mixed(Math.round(value / SIXTY_FOURTH), 64));
  const both = !whole && (options.fractionAndDecimal === true || offStep);
  return both ? `${fraction} (${decimalInches(value)})` : fraction;
}

/**
 * A length as plain text, without a unit. `in`: a multiple of 1/64 in is a reduced fraction (`33 1/2`), any other
 * length decimal inches to three places (`.205`). `mm`: decimals as needed, at most three (0.001 mm).
 * `nanometres` must be a finite number; it is rounded to a whole nanometre first.
 */
export function formatLength(nanometres: number, units: Units, options: FigureOptions = {}): string {
  const value = nm(nanometres);
  return units === 'in' ? inchFigure(value, options) : decimal(value / NM_PER_MM, 3);
}

const FIGURE = /^(-?)(?:(\d+) (\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d+)?|\.\d+))$/;

/** One plain figure, `33 1/2` or `.205`, as a number; undefined when the text is none. */
function plainFigure(text: string): number | undefined {
  const m = FIGURE.exec(text);
  if (m === null) return undefined;
  const [, sign, whole, top, bottom, n, d, dec] = m;
  const size =
    whole !== undefined
      ? Number(whole) + Number(top) / Number(bottom)
      : n !== undefined
        ? Number(n) / Number(d)
        : Number(dec);
  return Number.isFinite(size) ? (sign === '-' ? -size : size) : undefined;
}

/**
 * Reads back a figure that `formatLength` printed. Exact for every figure on the step; a decimal is as near as it was
 * printed. Of a fraction with its decimal the fraction holds, unless the decimal says that it was only the nearest one.
 * Undefined when the text is no such figure.
 */
export function parseFigure(text: string, units: Units): Length | undefined {
  const both = /^(\S+(?: \S+)?) \((-?\d*\.?\d+)\)$/.exec(text);
  const first = plainFigure(both?.[1] ?? text);
  const second = both?.[2] === undefined ? undefined : plainFigure(both[2]);
  if (first === undefined || (both !== null && second === undefined)) return undefined;
  if (units === 'mm') return /[/(]/.test(text) ? undefined : mm(first);
  return second !== undefined && Math.abs(first - second) > 0.0005 + 1e-9 ? inches(second) : inches(first);
}

/** An angle in degrees as plain text, `14°`, `7.1°`; `places` decimals at most. */
export const formatAngle = (degrees: number, places = 1): string => `${decimal(degrees, places)}\u00b0`;

/** Reads back what `formatAngle` printed, degrees; undefined when the text is none. */
export function parseAngle(text: string): number | undefined {
  const m = /^(-?\d+(?:\.\d+)?)\u00b0$/.exec(text);
  return m?.[1] === undefined ? undefined : Number(m[1]) + 0;
}
