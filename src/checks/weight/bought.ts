import { width } from '../../geom/box.js';
import { toMm } from '../../lengths/length.js';
import type { Hardware, Piece } from '../../piece/piece.js';
import { quantity } from '../../value/quantity.js';
import type { Input } from '../check.js';

/**
 * What bought things weigh until the maker's sheet says: our defaults. One slide of a pair 1.65 kg a metre (a pair of 18 in
 * about 3.3 lb, from memory), a pull 0.1 kg, screws as steel rods, a quarter of them turned away for thread and point.
 */
const SLIDE_PER_M = 1.65;
const PULL = 0.1;
const STEEL = 7850;
const SCREW_SHARE = 0.75;
/** Of a slide, what comes out with the drawer when it is lifted off: our default. */
const ON_DRAWER = 1 / 3;
export const BOUGHT_SOURCE = 'slides, pulls and screws: our default, from memory, the maker’s sheet rules';

/** Mass of a bought thing, kg. */
export function boughtMass(h: Hardware): number {
  if (h.screw) {
    const [d, l] = [toMm(h.screw.diameter) / 1000, toMm(h.screw.length) / 1000];
    return SCREW_SHARE * STEEL * (Math.PI / 4) * d * d * l;
  }
  if (h.kind === 'pull') return PULL;
  return h.kind === 'slide' && h.body.op === 'box' ? (SLIDE_PER_M * toMm(width(h.body.at[1]))) / 1000 : 0;
}
/** All that is bought, kg. */
export const boughtInAll = (piece: Piece): number => piece.hardware.reduce((sum, h) => sum + boughtMass(h), 0);

/** What of it comes out with a drawer, kg: its pulls, the screws in it, and a third of its slides. */
export const boughtOn = (piece: Piece, drawer: string, parts: readonly string[]): number =>
  piece.hardware.reduce((sum, h) => {
    if (h.screw) return parts.includes(h.screw.holds) ? sum + boughtMass(h) : sum;
    if (h.drawer !== drawer) return sum;
    return sum + (h.kind === 'slide' ? ON_DRAWER : 1) * boughtMass(h);
  }, 0);

export const boughtInput = (kg: number): Input[] =>
  kg > 0 ? [{ name: 'bought things', quantity: quantity('mass', kg), source: BOUGHT_SOURCE, memory: true }] : [];
