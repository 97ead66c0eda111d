import { panelById } from '../data/panels.js';
import { speciesById } from '../data/species.js';

/**
 * Mass of 1 m3 of a stock, kg. Lumber at 12 %: 1000 G (1 + 12/100), Wood Handbook, FPL-GTR-282, equation 4-14.
 * Undefined when the material is in neither table.
 */
export function density(kind: 'lumber' | 'sheet', material: string): number | undefined {
  if (kind === 'lumber') {
    const species = speciesById(material);
    return species && 1000 * species.gravity.value * 1.12;
  }
  const panel = panelById(material);
  return panel && 1000 * panel.gravity.value;
}
/** Kilograms of a volume in mm3. */
export const kilograms = (volume: number, perCubicMetre: number): number => volume * 1e-9 * perCubicMetre;
export const pounds = (kg: number): number => kg / 0.45359237;
