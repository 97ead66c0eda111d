import { printed } from '../printed.js';

/** How far sanded plywood may be from its nominal thickness t, mm: over it by a + b t, under it by c + b t. */
// prettier-ignore
export const EN_315 = printed({
  key: 'en-315', table: '',
  columns: [['over', 'mm'], ['under', 'mm'], ['each', 'ratio']],
  rows: [
    ['sanded', [0.2, 'R2'], [0.4, 'R2'], [0.03, 'R2']],
    ['unsanded', [0.8, 'R'], [0.4, 'R'], [0.03, 'R']],
  ],
});
/** Sanded birch plywood as a mill gives it: nominal mm, plies, thinnest and thickest. Grooves are cut to what was measured. */
// prettier-ignore
export const BIRCH = printed({
  key: 'birch-sheet', table: '',
  columns: [['plies', 'count'], ['thinnest', 'mm'], ['thickest', 'mm']],
  rows: [
    ['4', [3, 'R'], [3.5, 'R'], [4.1, 'R']],
    ['6.5', [5, 'R'], [6.1, 'R'], [6.9, 'R']],
    ['9', [7, 'R'], [8.8, 'R'], [9.5, 'R']],
    ['12', [9, 'R'], [11.5, 'R'], [12.5, 'R']],
    ['15', [11, 'R'], [14.3, 'R'], [15.3, 'R']],
    ['18', [13, 'R'], [17.1, 'R'], [18.1, 'R']],
    ['21', [15, 'R'], [20, 'R'], [20.9, 'R']],
    ['24', [17, 'R'], [22.9, 'R'], [23.7, 'R']],
    ['27', [19, 'R'], [25.8, 'R'], [26.8, 'R']],
    ['30', [21, 'R'], [28.7, 'R'], [29.9, 'R']],
  ],
});
/** How far plywood sold by inches may be from its name, in: over it (to 3/4 in sanded), and under it. */
// prettier-ignore
export const INCH_PLY = printed({
  key: 'ps-1', table: '',
  columns: [['off', 'in']],
  rows: [['over', [0.015625, 'R']], ['under', [0.046875, 'M']]],
});
/** How far MDF may be from its thickness either way, in. */
// prettier-ignore
export const MDF_THICKNESS = printed({
  key: 'ansi-a208', table: '',
  columns: [['off', 'in']],
  rows: [['panel average', [0.005, 'R']], ['within a panel', [0.005, 'R']]],
});
