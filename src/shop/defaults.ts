import type { Length, Units } from '../lengths/length.js';
import { inches, mm } from '../lengths/length.js';

/** What a shop has settled once. Lengths nm; angles degrees. Every entry can be overridden in the definition's `shop`. */
export interface ShopDefaults {
  /** Free sizes are snapped to it. */
  readonly step: Length;
  /** Width of a saw cut, and what is trimmed off the edges of a sheet before it is laid out. */
  readonly kerf: Length;
  readonly trim: Length;
  /** Pitch of the dovetail jig, and the cutter that goes with it. */
  readonly pitch: Length;
  readonly dovetail: { readonly width: Length; readonly angle: number };
  /** Widths of straight cutters and mortise chisels, rising. */
  readonly straight: readonly Length[];
  /** Over finished size for rough blanks: thickness, width, length. */
  readonly allowance: readonly [Length, Length, Length];
}

/**
 * Our defaults: step 1/64 in or 0.1 mm; kerf 1/8 in (3.2 mm), a full-kerf table-saw blade; trim 1/4 in (6 mm); pitch 7/8 in
 * (22 mm) with a 1/2 in cutter of 14 degrees. Straight cutters: the usual sizes (common practice). Allowances: 1/8, 1/4
 * and 1 in over finished size (common practice).
 */
const INCH: ShopDefaults = {
  step: inches(1 / 64),
  kerf: inches(1 / 8),
  trim: inches(1 / 4),
  pitch: inches(7 / 8),
  dovetail: { width: inches(1 / 2), angle: 14 },
  straight: [1 / 4, 5 / 16, 3 / 8, 1 / 2].map(inches),
  allowance: [inches(1 / 8), inches(1 / 4), inches(1)],
};
const METRIC: ShopDefaults = {
  step: mm(0.1),
  kerf: mm(3.2),
  trim: mm(6),
  pitch: mm(22),
  dovetail: { width: mm(12.7), angle: 14 },
  straight: [6, 8, 10, 12].map(mm),
  allowance: [mm(3), mm(6), mm(25)],
};

/** The shop as long as its file says nothing else. */
export const shopDefaults = (units: Units): ShopDefaults => (units === 'in' ? INCH : METRIC);
