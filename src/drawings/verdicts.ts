import { area, circle, polyline, rect } from './draw.js';
import type { Item } from './picture.js';

/** How a check came out, as sheets show it: what somebody answers for has a mark of its own. */
export type Shown = 'pass' | 'note' | 'warning' | 'fail' | 'accepted';
export const SHOWN: readonly Shown[] = ['fail', 'warning', 'accepted', 'note', 'pass'];
/** What each mark says, for the legend. */
export const SAID: Readonly<Record<Shown, string>> = {
  fail: 'fails',
  warning: 'warns',
  accepted: 'wanting, accepted',
  note: 'to note',
  pass: 'passes',
};

/** The mark of a verdict, at most 4 square round the middle: told apart by its form, not by a colour. */
export function verdictMark(verdict: Shown, x: number, y: number): Item[] {
  switch (verdict) {
    case 'pass':
      return tick(x, y, 1);
    case 'note':
      return [...circle('N', x, y, 1.7, 'white'), ...circle(undefined, x, y, 0.5, 'black')];
    case 'warning':
      return [
        ...area('white', [[x, y - 1.9], [x + 2, y + 1.6], [x - 2, y + 1.6]], 'D'), // prettier-ignore
        ...polyline('D', [[x, y - 0.7], [x, y + 0.45]]), // prettier-ignore
        ...circle(undefined, x, y + 1, 0.25, 'black'),
      ];
    case 'fail':
      return [
        ...polyline('shaft', [[x - 1.5, y - 1.5], [x + 1.5, y + 1.5]]), // prettier-ignore
        ...polyline('shaft', [[x - 1.5, y + 1.5], [x + 1.5, y - 1.5]]), // prettier-ignore
      ];
    case 'accepted':
      return [...rect('N', x - 1.85, y - 1.85, 3.7, 3.7, 'white'), ...tick(x, y, 0.75)];
  }
}
const tick = (x: number, y: number, k: number): Item[] =>
  polyline('W', [[x - 1.6 * k, y + 0.1 * k], [x - 0.5 * k, y + 1.4 * k], [x + 1.7 * k, y - 1.5 * k]]); // prettier-ignore
