import type { Species } from '../data/species.js';
import type { Season } from './moisture.js';

export type GrainCut = 'flat' | 'rift' | 'quartered';

/** Change coefficient across the grain per 1 %: tangential, radial or their mean. A cut that is not known counts as flat. */
export function coefficient(species: Species, cut: GrainCut | undefined): number {
  const { radial, tangential } = species;
  if (cut === 'quartered') return radial.value;
  return cut === 'rift' ? (radial.value + tangential.value) / 2 : tangential.value;
}

/** Shrinkage (%) green to oven-dry for a cut. */
const shrinkage = (species: Species, cut: GrainCut | undefined): number => {
  const { radial, tangential } = species.shrinkage;
  if (cut === 'quartered') return radial.value;
  return cut === 'rift' ? (radial.value + tangential.value) / 2 : tangential.value;
};

/**
 * Change of `size` (any unit) across the grain when its moisture goes `from` -> `to` (%); positive is swelling.
 * Wood Handbook, FPL-GTR-190: equation 13-2 inside 6..14 %, equation 13-3 outside it (up to 30 %, beyond which wood does not move).
 */
export function change(size: number, species: Species, cut: GrainCut | undefined, from: number, to: number): number {
  const inside = (m: number): boolean => m >= 6 && m <= 14;
  if (inside(from) && inside(to)) return size * coefficient(species, cut) * (to - from);
  const a = Math.min(from, 30);
  const b = Math.min(to, 30);
  return (size * (b - a)) / (3000 / shrinkage(species, cut) - 30 + a);
}

/** Swelling from making to the wettest, never less than nothing; same unit as `size`. */
export const swell = (size: number, species: Species, cut: GrainCut | undefined, s: Season): number =>
  Math.max(0, change(size, species, cut, s.made, s.wettest));

/** Shrinking from making to the driest, as a positive figure; same unit as `size`. */
export const shrink = (size: number, species: Species, cut: GrainCut | undefined, s: Season): number =>
  Math.max(0, 0 - change(size, species, cut, s.made, s.driest));
