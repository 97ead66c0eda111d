import { printed } from '../printed.js';

/**
 * Shrinkage of woods brought in, from green to oven-dry, as shares of the green size.
 */
// prettier-ignore
export const SHRINKAGE_4_4 = printed({
  key: 'handbook-2010', table: '4-4', page: '4-8',
  columns: [['radial', '%'], ['tangential', '%'], ['volumetric', '%']],
  rows: [
    ['mahogany-true', [3, 'R2'], [4.1, 'R2'], [7.8, 'R2']],
    ['mahogany-african', [2.5, 'R'], [4.5, 'R'], [8.8, 'R']],
    ['sapele', [4.6, 'R'], [7.4, 'R'], [14, 'R']],
    ['teak', [2.5, 'RM'], [5.8, 'RM'], [7, 'RM']],
    ['spanish-cedar', [4.2, 'M'], [6.3, 'M'], [10.3, 'M']],
    ['iroko', [2.8, 'M'], [3.8, 'M'], [8.8, 'M']],
    ['jatoba', [4.5, 'M'], [8.5, 'M'], [12.7, 'M']],
    ['purpleheart', [3.2, 'M'], [6.1, 'M'], [9.9, 'M']],
  ],
});
