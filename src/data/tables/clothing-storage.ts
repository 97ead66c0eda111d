import { printed } from '../printed.js';

/** What brings a piece for clothes under the federal rule: all of them at once, and free-standing. */
// prettier-ignore
export const CLOTHES_SCOPE = printed({
  key: 'cfr-1261', table: 'scope of ASTM F2057-23',
  columns: [['least', 'in, lb, ft3']],
  rows: [
    ['height', [27, 'R2']],
    ['mass', [30, 'R2']],
    ['volume', [3.2, 'R2']],
  ],
});
/** Figures of its tests 9.2.1 to 9.2.3; some were not read in the standard itself. */
// prettier-ignore
export const CLOTHES_TESTS = printed({
  key: 'cfr-1261', table: 'ASTM F2057-23, 9.2',
  columns: [['value', 'lb/ft3, lb, in']],
  rows: [
    ['fill', [8.5, 'RM']],
    ['pull', [10, 'M']],
    ['pull-height', [56, 'M']],
    ['child', [60, 'R']],
    ['block', [0.43, 'M']],
  ],
});
