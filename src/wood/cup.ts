import type { Species } from '../data/species.js';

/**
 * Hollow (same unit as the sizes) of a flat-sawn board `width` wide that changes by `moisture` (%) throughout, `pith` from the
 * pith: the rings want to straighten by (T - R) / pith, and hollow = curvature x width2 / 8. First order; positive where it
 * dries. Drying hollows the side away from the pith; quartered boards turn wedge-shaped instead.
 */
export function cupOfRings(species: Species, width: number, pith: number, moisture: number): number {
  const curvature = ((species.tangential.value - species.radial.value) * moisture) / pith;
  return (curvature * width * width) / 8;
}
/**
 * Hollow of a board whose faces differ by `moisture` (%): C x difference x width2 / (8 thickness), with the coefficient of its
 * width. Why both faces are finished alike.
 */
export const cupOfFaces = (coefficient: number, width: number, thickness: number, moisture: number): number =>
  (coefficient * moisture * width * width) / (8 * thickness);
