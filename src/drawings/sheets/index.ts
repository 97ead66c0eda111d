import type { SheetKind } from '../input.js';
import { nesting } from './nesting.js';
import { elevations } from './elevations.js';

/** Every kind of sheet, in the order of the packet. */
export const SHEETS: readonly SheetKind[] = [elevations, nesting];
