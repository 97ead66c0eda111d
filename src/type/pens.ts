/**
 * The pens of a sheet, one table for both writers and for placement. Widths and patterns in mm.
 * Series of widths and line types laid out after ISO 128-2 (2:1, wide 0.5 on small sheets); where no standard is named: our default.
 */
export type PenName = 'W' | 'N' | 'D' | 'H' | 'hidden' | 'centre' | 'plane' | 'open' | 'dots' | 'cutline' | 'shaft';
export interface PenStyle {
  readonly width: number;
  /** Drawn and left out, in turn; none for a solid line. */
  readonly dash?: readonly number[];
  readonly cap: 'butt' | 'round';
}
export const PENS: Readonly<Record<PenName, PenStyle>> = {
  W: { width: 0.5, cap: 'round' },
  N: { width: 0.25, cap: 'round' },
  D: { width: 0.35, cap: 'round' },
  H: { width: 0.18, cap: 'round' },
  hidden: { width: 0.25, dash: [3, 0.75], cap: 'butt' },
  centre: { width: 0.18, dash: [2.4, 0.5, 0.2, 0.5], cap: 'butt' },
  plane: { width: 0.25, dash: [6, 0.75, 0.25, 0.75], cap: 'butt' },
  open: { width: 0.25, dash: [6, 0.75, 0.25, 0.75, 0.25, 0.75], cap: 'butt' },
  // A round dot is a dash of almost no length with round ends (our default: 0.5 across, pitch 1.4).
  dots: { width: 0.5, dash: [0.001, 1.399], cap: 'round' },
  cutline: { width: 0.25, dash: [3, 1.5], cap: 'butt' },
  shaft: { width: 1, cap: 'butt' },
};
/** The grey of wood that goes (our default; light enough to be lost on a copier without harm). */
export const TONES = { black: 0, white: 1, grey: 0xe4 / 0xff } as const;
/** Type sizes in mm em (1 pt = 25.4 / 72 mm). Uses: our default, smallest 9.5 pt so that a capital is 2.34 high. */
export const SIZE = {
  text: (9.5 * 25.4) / 72,
  figure: (10 * 25.4) / 72,
  name: (12 * 25.4) / 72,
  mark: (14 * 25.4) / 72,
  hand: (16 * 25.4) / 72,
  headline: (18 * 25.4) / 72,
  finished: (22 * 25.4) / 72,
  tag: (28 * 25.4) / 72,
  title: (40 * 25.4) / 72,
} as const;
