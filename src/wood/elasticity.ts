import type { Figure } from '../data/printed.js';
import { panelOf, woodOf, type Made } from './material.js';

/**
 * Modulus of elasticity of a stock in bending, Pa, with its source: lumber along its grain, sheet goods with the span along
 * the face grain or across it. Apparent: to be used in a formula that leaves shear out. Undefined where nothing is known,
 * and for lumber across its grain, which no shelf should span.
 */
export function stiffnessOf(stock: Made | undefined, span: 'along' | 'across' = 'along'): Figure | undefined {
  const wood = woodOf(stock);
  if (wood) return span === 'along' ? wood.stiffness : undefined;
  return panelOf(stock)?.stiffness[span];
}
/** Moisture at which strength begins to rise in drying, %, of woods that the handbook lists; of the others 25. */
const INTERSECTION: Readonly<Record<string, number>> = {
  'ash-white': 24,
  'birch-yellow': 27,
  'chestnut-american': 24,
  'douglas-fir-coast': 24,
  'hemlock-western': 28,
  'pine-longleaf': 21,
  'redwood-old': 21,
  'redwood-young': 21,
  'spruce-sitka': 27,
};
export const intersectionOf = (species: string): number => INTERSECTION[species] ?? 25;

/**
 * A strength at a moisture (%) from those at 12 % and green: P12 (P12 / Pg) ^ ((12 - M) / (Mp - 12)). Wood Handbook,
 * FPL-GTR-282, equation 5-3. RangeError outside 8 to `intersection` %.
 */
export function strengthAt(at12: number, green: number, moisture: number, intersection = 25): number {
  if (!(moisture >= 8 && moisture <= intersection))
    throw new RangeError(`moisture outside equation 5-3: ${moisture} %`);
  return at12 * (at12 / green) ** ((12 - moisture) / (intersection - 12));
}
