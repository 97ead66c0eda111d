import { printed } from '../printed.js';

/**
 * Moisture of wood when it is put up inside: average of a lot, and the range of single pieces. The averages and the range of
 * most of the United States were read second hand; the ranges of the other regions are remembered.
 */
// prettier-ignore
export const MOISTURE_13_2 = printed({
  key: 'handbook-2010', table: '13-2',
  columns: [['average', '%'], ['driest', '%'], ['wettest', '%']],
  rows: [
    ['most of the US', [8, 'RM'], [6, 'RM'], [10, 'RM']],
    ['dry southwest', [6, 'RM'], [4, 'M'], [9, 'M']],
    ['damp coast', [11, 'RM'], [8, 'M'], [13, 'M']],
  ],
});
