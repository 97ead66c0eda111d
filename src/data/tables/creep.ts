import { printed } from '../printed.js';

/**
 * Sag after years over the sag at first, under a load that stays: factors that the whole sag of that load is multiplied by
 * (never 1 + factor). Eurocode's are 1 + kdef, service class 1, inside.
 */
// prettier-ignore
export const CREEP_NDS = printed({
  key: 'nds', table: 'section 3.5.2',
  columns: [['factor', 'ratio']],
  rows: [
    ['lumber', [1.5, 'R']],
    ['plywood', [2, 'M']],
  ],
});
// prettier-ignore
export const CREEP_EN = printed({
  key: 'en-1995', table: '3.2',
  columns: [['factor', 'ratio']],
  rows: [
    ['lumber', [1.6, 'R2']],
    ['plywood', [1.8, 'R']],
    ['particleboard', [3.25, 'R']],
    ['mdf', [3.25, 'R']],
    ['hardboard', [3.25, 'R']],
    // OSB/3 and OSB/4 1 + 1.50, OSB/2 1 + 2.25: a board of unknown sort takes the larger.
    ['osb', [3.25, 'R']],
  ],
});
/** Wood Handbook, chapter 5: after several years about as much again as at first. */
// prettier-ignore
export const CREEP_HANDBOOK = printed({
  key: 'handbook-2010', table: 'chapter 5',
  columns: [['factor', 'ratio']],
  rows: [['lumber', [2, 'R']]],
});
