import { figure, type Figure } from '../printed.js';

/**
 * What the dust of a wood is known to do. ACGIH: A1 confirmed, A2 suspected cause of cancer in people; western redcedar is a
 * sensitizer with a limit of its own. Limits in mg/m3, averaged over a shift: NIOSH recommends 1 for all wood dust, and takes
 * all of it for a potential carcinogen.
 */
export type DustClass = 'A1' | 'A2' | 'sensitizer';
export interface Dust {
  readonly sort: DustClass;
  /** mg/m3, inhalable. */
  readonly limit: Figure;
  readonly source: string;
}
export const DUST_LIMIT = figure(1, 'R', 'niosh-guide');
const REDCEDAR_LIMIT = figure(0.5, 'R', 'niosh-guide');

/** By the first word or words of a wood's id. */
const ROWS: readonly (readonly [woods: readonly string[], sort: DustClass, limit: Figure])[] = [
  [['oak', 'beech'], 'A1', DUST_LIMIT],
  [['birch', 'mahogany', 'teak', 'walnut'], 'A2', DUST_LIMIT],
  [['cedar-western-red'], 'sensitizer', REDCEDAR_LIMIT],
];
/** The dust class of a wood by its id; undefined where the list names none: it is still wood dust. */
export function dustOf(id: string): Dust | undefined {
  const row = ROWS.find(([woods]) => woods.some((w) => id === w || id.startsWith(`${w}-`)));
  return row && { sort: row[1], limit: row[2], source: row[2].source };
}
