import { inches, type Length } from '../lengths/length.js';

/** A gauge of wood screw with its holes. Lengths nm. */
export interface ScrewGauge {
  readonly gauge: number;
  /** Of the shank: 0.060 + 0.013 in a number (ASME B18.6.1; Wood Handbook, FPL-GTR-282, table 8-9). */
  readonly diameter: Length;
  /** The clearance hole: the shank, to the next drill. */
  readonly shank: Length;
  readonly pilotHard: Length;
  readonly pilotSoft: Length;
  /** Head of a flat-head screw. */
  readonly head: Length;
  readonly source: string;
}
const row = (gauge: number, shank: number, hard: number, soft: number): ScrewGauge => ({
  gauge,
  diameter: inches(0.06 + 0.013 * gauge),
  shank: inches(shank),
  pilotHard: inches(hard),
  pilotSoft: inches(soft),
  // A flat head is about twice its shank's diameter: from memory.
  head: inches(2 * (0.06 + 0.013 * gauge)),
  source: 'common practice',
});
/** Shank and pilot holes: common practice; the larger pilot belongs to the harder wood. */
export const SCREWS: readonly ScrewGauge[] = [
  row(4, 1 / 8, 5 / 64, 1 / 16),
  row(6, 9 / 64, 3 / 32, 5 / 64),
  row(8, 11 / 64, 7 / 64, 3 / 32),
  row(10, 3 / 16, 1 / 8, 7 / 64),
  row(12, 7 / 32, 5 / 32, 1 / 8),
];
export const screwGauge = (gauge: number): ScrewGauge | undefined => SCREWS.find((s) => s.gauge === gauge);
