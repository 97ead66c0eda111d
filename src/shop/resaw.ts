import { inches, nm, type Length } from '../lengths/length.js';

/** What is lost when two leaves are sawn from one board, nm: flattening first, the band saw's kerf, planing each leaf after. */
export interface Resaw {
  readonly rough: Length;
  readonly first: Length;
  readonly kerf: Length;
  readonly second: Length;
  /** Of each leaf: (rough − first − kerf) / 2 − second. */
  readonly leaf: Length;
}
/** Common practice: 1/8 off to flatten, 1/16 where the board is flat and short; kerf .05; 1/16 off each leaf. */
const FIRST = inches(1 / 8);
const FIRST_FLAT = inches(1 / 16);
const KERF = inches(0.05);
const SECOND = inches(1 / 16);
/** A board is short to this length; leaves are sawn so much thicker than they are planed, since they cup (common practice). */
const SHORT = inches(30);
export const RESAW_SPARE = inches(1 / 16);

const sum = (rough: number, first: Length): Resaw => ({
  rough: nm(rough),
  first,
  kerf: KERF,
  second: SECOND,
  leaf: nm((rough - first - KERF) / 2 - SECOND),
});

/** `tight`: a leaf keeps less than 1/16 in over its thickness, or is to be had from flat boards of 30 in and less only. */
export interface ResawPlan extends Resaw {
  readonly spare: Length;
  readonly tight: boolean;
  /** Only if the board is flat: it is short enough for that. */
  readonly flatOnly: boolean;
}
/** Two leaves `thickness` thick and `long` from one board `rough` thick (nm); undefined when it cannot give them. */
export function resawPlan(rough: number, thickness: number, long: number): ResawPlan | undefined {
  const usual = sum(rough, FIRST);
  const flat = sum(rough, FIRST_FLAT);
  const flatOnly = usual.leaf < thickness;
  if (flatOnly && (flat.leaf < thickness || long > SHORT)) return undefined;
  const taken = flatOnly ? flat : usual;
  const spare = nm(taken.leaf - thickness);
  return { ...taken, spare, flatOnly, tight: flatOnly || spare < RESAW_SPARE };
}
