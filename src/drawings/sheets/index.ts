import type { SheetKind } from '../input.js';
import { boards } from './boards.js';
import { partCards } from './cards.js';
import { checks } from './checks.js';
import { cover } from './cover.js';
import { delivery } from './delivery.js';
import { elevations } from './elevations.js';
import { figures } from './figures.js';
import { lists } from './lists.js';
import { milling } from './milling.js';
import { nesting } from './nesting.js';
import { nestingLabels } from './nestingLabels.js';
import { panels } from './panels.js';
import { details, sections } from './sections.js';
import { shopping } from './shopping.js';

/** Every kind of sheet, in the order of the packet. */
export const SHEETS: readonly SheetKind[] = [
  cover,
  elevations,
  sections,
  details,
  lists,
  shopping,
  nesting,
  nestingLabels,
  boards,
  milling,
  panels,
  checks,
  figures,
  delivery,
  partCards,
];
