import { printed } from '../printed.js';

/**
 * Strength of woods brought in, in inch-pound units: basic specific gravity (oven-dry weight, green volume), and at 12 % the
 * modulus of elasticity and of rupture in bending, shear along the grain, side hardness. Test methods differ. Sapele's modulus
 * of elasticity: the table as it is remembered gives 1.82; the sheet that was read gives 1.70, which is used elsewhere.
 */
// prettier-ignore
export const STRENGTH_5_5B = printed({
  key: 'handbook-2010', table: '5-5b',
  columns: [['gravityGreen', 'ratio'], ['stiffness', 'million psi'], ['rupture', 'psi'], ['shear', 'psi'], ['hardness', 'lbf']],
  rows: [
    ['mahogany-true', [0.45, 'M'], [1.5, 'R'], [11500, 'RM'], [1230, 'M'], [800, 'R']],
    ['mahogany-african', [0.42, 'M'], [1.4, 'M'], [10700, 'M'], [1500, 'M'], [830, 'M']],
    ['sapele', [0.55, 'RM'], [1.82, 'M'], [15300, 'M'], [2260, 'M'], [1510, 'RM']],
    ['teak', [0.55, 'RM'], [1.55, 'M'], [14600, 'M'], [1890, 'M'], [1000, 'M']],
    ['spanish-cedar', [0.41, 'M'], [1.44, 'M'], [11500, 'M'], [1100, 'M'], [600, 'M']],
    ['iroko', [0.54, 'M'], [1.46, 'M'], [12400, 'M'], [1800, 'M'], [1260, 'M']],
    ['jatoba', [0.71, 'M'], [2.16, 'M'], [19400, 'M'], [2470, 'M'], [2350, 'M']],
    ['purpleheart', [0.67, 'M'], [2.27, 'M'], [19200, 'M'], [2220, 'M'], [1860, 'M']],
  ],
});
