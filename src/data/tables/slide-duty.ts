import { printed } from '../printed.js';

/** Classes of drawer slides: what a drawer may hold at rest, and what it was opened with how often. */
// prettier-ignore
export const SLIDE_DUTY = printed({
  key: 'aws-2009', table: 'appendix B',
  columns: [['still', 'lb'], ['moved', 'lb'], ['times', 'count']],
  rows: [
    ['residential', [50, 'R'], [30, 'R'], [35_000, 'R']],
    ['commercial', [75, 'R'], [50, 'R'], [50_000, 'R']],
    ['heavy', [100, 'R'], [75, 'R'], [100_000, 'R']],
  ],
});
