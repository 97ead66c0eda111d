import type { Species } from '../../data/species.js';
import type { Axis } from '../../geom/axis.js';
import type { Part, Piece, Stock } from '../../piece/piece.js';
import { quantity } from '../../value/quantity.js';
import type { Season } from '../../wood/moisture.js';
import { woodOf } from '../../wood/material.js';
import { change, changeAtWorst, coefficient, type GrainCut } from '../../wood/movement.js';
import type { Input } from '../check.js';

/** Solid wood with its figures; undefined for sheet goods and for woods that are in no table. */
export const speciesOf = (piece: Piece, part: Part): Species | undefined => woodOf(piece.stocks[part.stock]);
const along = (part: Part): Axis => part.grain ?? part.length;

/**
 * How the rings meet an own axis that lies across the grain: the width as the stock is cut, the thickness the other way
 * about. A cut that is not known counts as flat both ways, which moves the most.
 */
export function ringsAlong(stock: Stock | undefined, thickness: boolean): GrainCut | undefined {
  const cut = stock?.cut;
  if (!thickness || cut === undefined || cut === 'rift') return cut;
  return cut === 'flat' ? 'quartered' : 'flat';
}

/** As the sawing is named (flat, rift, quartered), or at the angle of that sawing's band that moves the most. */
export type Rings = 'as named' | 'worst';

/**
 * Change of a part along an own axis as a share of its size, moisture `from` -> `to` (%): nothing along the grain (0.1 to
 * 0.2 % green to oven-dry, left out) and nothing for sheet goods. Wood Handbook, FPL-GTR-190, equations 13-2 and 13-3.
 */
export function strain(
  piece: Piece,
  part: Part,
  own: Axis,
  from: number,
  to: number,
  rings: Rings = 'as named',
): number {
  const species = speciesOf(piece, part);
  if (!species || own === along(part)) return 0;
  const stock = piece.stocks[part.stock];
  const thickness = own === part.thickness;
  if (rings === 'as named') return change(1, species, ringsAlong(stock, thickness), from, to) + 0;
  return changeAtWorst(1, species, stock?.cut, thickness ? 'thickness' : 'width', from, to) + 0;
}

/** The coefficient that a part moves by along an own axis, as an input of a worked figure. */
export function coefficientInput(piece: Piece, part: Part, own: Axis): Input[] {
  const species = speciesOf(piece, part);
  if (!species || own === along(part)) return [];
  const cut = ringsAlong(piece.stocks[part.stock], own === part.thickness);
  const figure = cut === 'quartered' ? species.radial : species.tangential;
  return [
    {
      name: `change of ${part.mark} per 1 %, ${cut ?? 'cut not known, as flat'}`,
      quantity: quantity('coefficient', coefficient(species, cut)),
      source: cut === 'rift' ? `mean of radial and tangential: ${figure.source}` : figure.source,
      ...(figure.memory ? { memory: true } : {}),
    },
  ];
}
/** Moisture as made and at both ends of the season, each with how it was had. */
export function seasonInputs({ made, driest, wettest, basis }: Season): Input[] {
  const room = basis ? `${basis.room}: ${basis.source}` : 'room';
  const ends = { source: room, ...(basis?.memory ? { memory: true } : {}) };
  return [
    { name: 'moisture as made', quantity: quantity('moisture', made), ...(basis ? { source: basis.made } : {}) },
    { name: 'at the driest', quantity: quantity('moisture', driest), ...ends },
    { name: 'at the wettest', quantity: quantity('moisture', wettest), ...ends },
  ];
}
/** Averages of a wood: coefficient of variation about 15 %, from memory, so that two in twenty boards are outside of this. */
export const VARIES = 25;
export const MOVEMENT_SOURCE = `Wood Handbook, FPL-GTR-190, equations 13-2 and 13-3; an average, single boards move up to ${VARIES} % more or less (from memory)`;
