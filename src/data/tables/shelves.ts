import { printed } from '../printed.js';

/** Loads that shelves and drawers are laid out for, and how much in all a shelf carries. */
// prettier-ignore
export const SHELF_LOADS = printed({
  key: 'aws-2009', table: 'pp. 253, 279',
  columns: [['load', 'lb/ft2']],
  rows: [
    ['books', [50, 'R']],
    ['other', [40, 'R']],
  ],
});
// prettier-ignore
export const SHELF_MOST = printed({
  key: 'aws-2009', table: 'p. 253',
  columns: [['load', 'lb']],
  rows: [['shelf', [200, 'R']]],
});
/** Cabinets at home: shelves for seven days, drawers for 25 000 openings. */
// prettier-ignore
export const CABINET_LOADS = printed({
  key: 'kcma', table: '',
  columns: [['load', 'lb/ft2']],
  rows: [
    ['shelf', [15, 'R2']],
    ['drawer', [15, 'R2']],
  ],
});
/** Limits of sag, the n of span / n. */
// prettier-ignore
export const SAG_AWS = printed({
  key: 'aws-2009', table: 'p. 279',
  columns: [['limit', 'span over sag']],
  rows: [['shelf', [144, 'R']]],
});
/** 1/16 in a foot, and 1/4 in in all. */
// prettier-ignore
export const SAG_CABINET = printed({
  key: 'kcma', table: '',
  columns: [['limit', 'span over sag']],
  rows: [['shelf', [192, 'R2']]],
});
/** 3/16 in on 36 in; and where sag begins to be seen. */
// prettier-ignore
export const SAG_PANELS = printed({
  key: 'panel-notes', table: '',
  columns: [['limit', 'span over sag']],
  rows: [
    ['plywood', [192, 'R']],
    ['seen', [240, 'R']],
  ],
});
/** 1/32 in a foot. */
// prettier-ignore
export const SAG_FINE = printed({
  key: 'trade', table: '',
  columns: [['limit', 'span over sag']],
  rows: [['fine', [384, 'M']]],
});
