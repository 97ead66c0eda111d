import { printed } from '../printed.js';

/** Shank of wood screws by number, mm: 0.060 + 0.013 n in. */
// prettier-ignore
export const SCREWS_8_9 = printed({
  key: 'handbook-2021', table: '8-9',
  columns: [['shank', 'mm']],
  rows: [
    ['4', [2.84, 'R']], ['5', [3.18, 'R']], ['6', [3.51, 'R']], ['7', [3.84, 'R']], ['8', [4.17, 'R']], ['9', [4.5, 'R']],
    ['10', [4.83, 'R']], ['11', [5.16, 'R']], ['12', [5.49, 'R']], ['14', [6.15, 'R']], ['16', [6.81, 'R']],
    ['18', [7.47, 'R']], ['20', [8.13, 'R']], ['24', [9.45, 'R']],
  ],
});
