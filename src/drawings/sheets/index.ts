import type { SheetKind } from '../input.js';
import { partCards } from './cards.js';
import { cover } from './cover.js';
import { elevations } from './elevations.js';
import { cutList, hardware, joints, lengths } from './lists.js';
import { nesting } from './nesting.js';
import { sections } from './sections.js';

/** Every kind of sheet, in the order of the packet. */
export const SHEETS: readonly SheetKind[] = [
  cover,
  elevations,
  sections,
  cutList,
  lengths,
  nesting,
  joints,
  partCards,
  hardware,
];
