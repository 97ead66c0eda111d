import { drawer } from './drawer.js';

/** Every kind of component: one file and one entry each. */
export const COMPONENTS = { drawer } as const;

export type * from './component.js';
export type { DrawerFields } from './drawer-spec.js';
export { expandDrawer } from './drawer.js';
export { gridCells, type Cell } from './grid.js';
export { shiftCut } from './shift.js';
export { bite, screwPlaces, slideScrewBodies } from './slide-screws.js';
