import { printed } from '../printed.js';

/**
 * Lateral load of wood screws at the proportional limit, p = K D2 (equation 8-13), metric columns: K in N/mm2 for woods whose
 * specific gravity lies from `low` to `high`. It takes 7 shank diameters of thread; less holds less in proportion.
 */
// prettier-ignore
export const SCREWS_8_4 = printed({
  key: 'handbook-2021', table: '8-4',
  columns: [['low', 'ratio'], ['high', 'ratio'], ['k', 'N/mm2']],
  rows: [
    ['hardwood-light', [0.33, 'R'], [0.47, 'R'], [23.17, 'R']],
    ['hardwood-middle', [0.48, 'R'], [0.56, 'R'], [31.99, 'R']],
    ['hardwood-heavy', [0.57, 'R'], [0.74, 'R'], [44.13, 'R']],
    ['softwood-light', [0.29, 'R'], [0.42, 'R'], [23.17, 'R']],
    ['softwood-middle', [0.43, 'R'], [0.47, 'R'], [29.79, 'R']],
    ['softwood-heavy', [0.48, 'R'], [0.52, 'R'], [36.4, 'R']],
  ],
});
