import type { Figure } from '../data/printed.js';
import { quantity, sayQuantity, type Quantity } from '../value/quantity.js';
import { panelOf, woodOf } from '../wood/material.js';
import type { Piece, Stock } from './piece.js';

/** Printed after a figure that was not read in its source. */
const FROM_MEMORY = ' *';

/** The figures of a stock that the checks reckon with, each with its source, in lines. */
export function stockLines(piece: Piece, stock: Stock): string[] {
  const { units } = piece;
  const line = (name: string, of: Quantity['of'], f: Figure | undefined): string[] =>
    f ? [`  ${name} = ${sayQuantity(quantity(of, f.value), units)} (${f.source})${f.memory ? FROM_MEMORY : ''}`] : [];
  const wood = woodOf(stock);
  const panel = panelOf(stock);
  const out = wood
    ? [
        `${stock.id}: ${stock.name}, ${stock.quarter ?? ''} ${stock.cut ?? 'any cut'}`,
        ...line('specific gravity', 'ratio', wood.gravity),
        ...line('change across flat-sawn width, per 1 %', 'coefficient', wood.tangential),
        ...line('change across quartered width, per 1 %', 'coefficient', wood.radial),
        ...line('begins to shrink at', 'moisture', wood.start),
        ...line('modulus of elasticity', 'stress', wood.stiffness),
        ...line('modulus of rupture', 'stress', wood.rupture),
        ...line('side hardness', 'force', wood.hardness),
      ]
    : panel
      ? [
          `${stock.id}: ${stock.name}`,
          ...line('specific gravity', 'ratio', panel.gravity),
          ...line('modulus of elasticity along its face grain', 'stress', panel.stiffness.along),
          ...line('modulus of elasticity across it', 'stress', panel.stiffness.across),
        ]
      : [`${stock.id}: ${stock.name}`];
  return out.some((l) => l.endsWith(FROM_MEMORY)) ? [...out, '  * not read in its source'] : out;
}
