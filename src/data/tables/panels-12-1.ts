import { printed } from '../printed.js';

/** Panels and glued products in bending: lowest and highest specific gravity and modulus of elasticity, metric columns. */
// prettier-ignore
export const PANELS_12_1 = printed({
  key: 'handbook-2010', table: '12-1', page: '12-2',
  columns: [['gravityLow', 'ratio'], ['gravityHigh', 'ratio'], ['stiffnessLow', 'GPa'], ['stiffnessHigh', 'GPa']],
  rows: [
    ['hardboard', [0.9, 'R'], [1, 'R'], [3.1, 'R'], [5.52, 'R']],
    ['mdf', [0.7, 'R'], [0.9, 'R'], [3.59, 'R'], [3.59, 'R']],
    ['particleboard', [0.6, 'R'], [0.8, 'R'], [2.76, 'R'], [4.14, 'R']],
    ['osb', [0.5, 'R'], [0.8, 'R'], [4.41, 'R'], [6.28, 'R']],
    ['plywood', [0.4, 'R'], [0.6, 'R'], [6.96, 'R'], [8.55, 'R']],
    ['glulam', [0.4, 'R'], [0.6, 'R'], [9, 'R'], [14.5, 'R']],
    ['lvl', [0.4, 'R'], [0.7, 'R'], [8.96, 'R'], [19.24, 'R']],
  ],
});
