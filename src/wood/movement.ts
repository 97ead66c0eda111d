import type { Species } from '../data/species.js';
import { alongRings } from './rings.js';
import type { Season } from './moisture.js';

export type GrainCut = 'flat' | 'rift' | 'quartered';

/** Change coefficient across the grain per 1 %: tangential, radial or their mean. A cut that is not known counts as flat. */
export function coefficient(species: Species, cut: GrainCut | undefined): number {
  const { radial, tangential } = species;
  if (cut === 'quartered') return radial.value;
  return cut === 'rift' ? (radial.value + tangential.value) / 2 : tangential.value;
}

/** Between these moistures (%) equation 13-2 holds; its coefficients are of the size at `TABLED` %. */
const STRAIGHT = [6, 14] as const;
const TABLED = 10;

/**
 * Change of `size` (any unit) when its moisture goes `from` -> `to` (%) by a coefficient of change; positive is swelling.
 * Wood Handbook, FPL-GTR-190: equation 13-2 inside 6 to 14 %; outside it equation 13-3, with the shrinkage that the
 * coefficient stands for, S = 100 s / (1 / C + s - 10), put in, which leaves M / (1 / C - 10 + from): so both agree for every
 * wood, also where table 13-5 rests on other shrinkages than tables 4-3 and 4-4. Wet of `start` (%) wood does not move.
 */
export function changeBy(c: number, size: number, from: number, to: number, start: number): number {
  const straight = (m: number): boolean => m >= STRAIGHT[0] && m <= STRAIGHT[1];
  if (straight(from) && straight(to)) return size * c * (to - from);
  const [a, b] = [Math.min(from, start), Math.min(to, start)];
  return (size * (b - a)) / (1 / c - TABLED + a);
}
/** Equation 13-3 as it is printed: by shrinkage (%), green to oven-dry, from `start` (%). */
export function changeByShrinkage(shrinkage: number, size: number, from: number, to: number, start = 30): number {
  const [a, b] = [Math.min(from, start), Math.min(to, start)];
  return (size * (b - a)) / ((100 * start) / shrinkage - start + a);
}

/** Change of `size` (any unit) across the grain when its moisture goes `from` -> `to` (%); positive is swelling. */
export const change = (size: number, species: Species, cut: GrainCut | undefined, from: number, to: number): number =>
  changeBy(coefficient(species, cut), size, from, to, species.start.value);

/** Swelling from making to the wettest, never less than nothing; same unit as `size`. */
export const swell = (size: number, species: Species, cut: GrainCut | undefined, s: Season): number =>
  Math.max(0, change(size, species, cut, s.made, s.wettest));

/** Shrinking from making to the driest, as a positive figure; same unit as `size`. */
export const shrink = (size: number, species: Species, cut: GrainCut | undefined, s: Season): number =>
  Math.max(0, 0 - change(size, species, cut, s.made, s.driest));

/** A way through a board: across its width, through its thickness, or along its grain. */
export type Way = 'width' | 'thickness' | 'length';

/** Rings to the wide face, degrees, of each way of sawing (the trade's bands; from memory). A cut that is not known is any. */
const BANDS: Readonly<Record<GrainCut | 'any', readonly [number, number]>> = {
  flat: [0, 30],
  rift: [30, 60],
  quartered: [60, 90],
  any: [0, 90],
};
/**
 * The largest coefficient that a board so sawn can have that way: width at the low end of its band of ring angles, thickness
 * at the high end. Nothing along the grain (0.1 to 0.2 % green to oven-dry, left out).
 */
export function worstCoefficient(species: Species, cut: GrainCut | undefined, way: Way): number {
  if (way === 'length') return 0;
  const band = BANDS[cut ?? 'any'];
  const of = (degrees: number): number =>
    alongRings(species.tangential.value, species.radial.value, way === 'width' ? degrees : 90 - degrees);
  return Math.max(of(band[0]), of(band[1]));
}

/** Change of `size` (any unit) that way, moisture `from` -> `to` (%), at the worst angle of its rings. */
export const changeAtWorst = (
  size: number,
  species: Species,
  cut: GrainCut | undefined,
  way: Way,
  from: number,
  to: number,
): number => changeBy(worstCoefficient(species, cut, way), size, from, to, species.start.value);
