import { SATURATION, type Species } from '../data/species.js';
import { panelOf, woodOf, type Made } from './material.js';
import { POUND_KG } from '../lengths/units.js';

/** Moisture at which specific gravity is tabled, %. */
const TABLED = 12;

/** Shrinkage of volume from green to a moisture, %: equation 4-9, in a straight line from saturation to oven-dry. */
const shrunkAt = (volumetric: number, moisture: number): number =>
  volumetric * (1 - Math.min(moisture, SATURATION.value) / SATURATION.value);

/**
 * Mass of 1 m3 of a wood at a moisture (%), kg: 1000 G (1 + x / 100) with G brought from 12 % to x by its shrinkage. Wood
 * Handbook, FPL-GTR-282, equations 4-9, 4-10, 4-14; without a figure for volume its shrinkage is 26.5 G (equation 4-12).
 */
export function woodDensity(species: Species, moisture = TABLED): number {
  const volumetric = species.shrinkage.volumetric?.value ?? 26.5 * species.gravity.value;
  const to = (100 - shrunkAt(volumetric, TABLED)) / (100 - shrunkAt(volumetric, moisture));
  return 1000 * species.gravity.value * to * (1 + moisture / 100);
}
/** Mass of 1 m3 of a stock, kg; lumber at a moisture (%), sheet goods as used. Undefined when it is in neither table. */
export function densityOf(stock: Made, moisture = TABLED): number | undefined {
  const wood = woodOf(stock);
  if (wood) return woodDensity(wood, moisture);
  const panel = panelOf(stock);
  return panel && 1000 * panel.gravity.value;
}
/** The same for what the tables call by that name, lumber at 12 %. */
export const density = (kind: 'lumber' | 'sheet', material: string): number | undefined =>
  densityOf({ kind, material });
/** Kilograms of a volume in mm3. */
export const kilograms = (volume: number, perCubicMetre: number): number => volume * 1e-9 * perCubicMetre;
export const pounds = (kg: number): number => kg / POUND_KG;
