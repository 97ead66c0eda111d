import { panelById, type Panel } from '../data/panels.js';
import { speciesById, type Species } from '../data/species.js';

/** What a stock says of what it is made of: its settled figures, else the name of a row in the tables. */
export interface Made {
  readonly kind: 'lumber' | 'sheet';
  readonly material: string;
  readonly wood?: Species;
  readonly panel?: Panel;
}
/** The wood of a stock with its figures, the shop's own over those of the table; undefined for sheet goods. */
export const woodOf = (stock: Made | undefined): Species | undefined =>
  stock?.kind === 'lumber' ? (stock.wood ?? speciesById(stock.material)) : undefined;
/** The panel of a stock with its figures; undefined for lumber. */
export const panelOf = (stock: Made | undefined): Panel | undefined =>
  stock?.kind === 'sheet' ? (stock.panel ?? panelById(stock.material)) : undefined;
