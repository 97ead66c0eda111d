import type { Length } from '../lengths/length.js';

/**
 * The machines, clamps and limits of a shop, evaluated, in nm and kg. An entry that is missing is not known: nothing is
 * judged against it, and the sheet says so. The limits of a machine are those of its manual.
 */
export interface ShopProfile {
  readonly machines: Machines;
  /** Longest opening of each kind of clamp, and how many there are; longest first. */
  readonly clamps: readonly { readonly opening: Length; readonly count: number }[];
  /** What one person lifts in this shop, kg. */
  readonly lift?: number;
  /** The largest piece that one person steers at the saw: length, width. */
  readonly alone?: readonly [Length, Length];
  /** Clear width and height of the shop's own door. */
  readonly door?: readonly [Length, Length];
  /** Moisture of the wood in the shop, %, and the day it was read. */
  readonly moisture?: number;
  readonly read?: string;
}
export interface Machines {
  readonly jointer?: { readonly width: Length; readonly length?: Length };
  readonly planer?: {
    readonly width: Length;
    readonly shortest?: Length;
    readonly thinnest?: Length;
    readonly thickest?: Length;
  };
  readonly tableSaw?: { readonly rip?: Length; readonly crosscut?: Length; readonly height?: Length };
  readonly bandsaw?: { readonly height: Length; readonly throat?: Length };
  readonly routerTable?: { readonly tallest: Length };
  readonly drillPress?: { readonly stroke: Length; readonly throat?: Length };
  readonly bench?: { readonly length: Length; readonly width?: Length };
}
