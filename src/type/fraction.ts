/** Figures found in text and the measures of a stacked fraction (horizontal bar, reduced size: after ASME Y14.2; metrics our default). */

/** A figure in a string: `33 1/2`, `7/32`. Offsets count UTF-16 units. */
export interface Figure {
  readonly from: number;
  readonly to: number;
  /** Empty where there is no whole number. */
  readonly whole: string;
  readonly numerator: string;
  readonly denominator: string;
}
const FIGURE = /(?<![\d./:])(?:(\d+)[ \u00a0])?(\d{1,3})\/(\d{1,4})(?![\d/]|\.\d)/g;

/**
 * The figures of a string, first to last. Only proper fractions are stacked, so that the names of stock (5/4, 4/4) and dates keep the solidus;
 * the whole number is joined to its fraction by one space or no-break space.
 */
export function figuresIn(string: string): readonly Figure[] {
  const found: Figure[] = [];
  for (const match of string.matchAll(FIGURE)) {
    const [all, whole = '', numerator = '', denominator = ''] = match;
    if (Number(numerator) === 0 || Number(numerator) >= Number(denominator)) continue;
    found.push({ from: match.index, to: match.index + all.length, whole, numerator, denominator });
  }
  return found;
}
/** The figure as plain text, for the hidden run. */
export const figureText = (f: Pick<Figure, 'whole' | 'numerator' | 'denominator'>): string =>
  `${f.whole === '' ? '' : `${f.whole} `}${f.numerator}/${f.denominator}`;

/** Measures of a stacked fraction in a line of `size` mm em; all mm. */
export interface Stack {
  /** Em of the small digits: 0.66 of the figure, never under 2.76 (digits 1.92 high). */
  readonly digits: number;
  readonly bar: number;
  /** The bar is longer than the wider number by this much. */
  readonly overhang: number;
  /** Height of the bar's middle above the baseline. */
  readonly middle: number;
  /** Clear space between the bar and each number. */
  readonly gap: number;
  /** After the whole number; before text that follows without a space. */
  readonly afterWhole: number;
  readonly beforeText: number;
}
export function stackOf(size: number): Stack {
  return {
    digits: Math.max(0.66 * size, 2.76),
    bar: size >= 6.3 ? 0.35 : 0.25,
    overhang: 0.3,
    middle: 0.349 * size,
    gap: Math.max(0.36, 0.055 * size),
    afterWhole: 0.07 * size,
    beforeText: 0.05 * size,
  };
}
/** Height of Plex figures above the baseline, em. Source: the outline of its figure one (698 of 1000 units). */
export const FIGURE_HEIGHT = 0.698;
/** Whole height of a stacked fraction, mm. */
export function stackHeight(size: number): number {
  const s = stackOf(size);
  return 2 * (FIGURE_HEIGHT * s.digits + s.gap) + s.bar;
}
/**
 * Distance between baselines, mm: 1.32 em, but taller where one of the two lines has a fraction, and a little more where both have, so that the
 * numbers of one do not touch those of the other.
 */
export function linePitch(size: number, fractions: 0 | 1 | 2): number {
  const stacked = fractions === 0 ? 0 : stackHeight(size) + (fractions === 1 ? 0.08 : 0.35);
  return Math.max(1.32 * size, stacked);
}
