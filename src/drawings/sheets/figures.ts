import type { Prepared } from '../input.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

/** Tables of the checks that are worked from rather than judged by, each where it has rows. */
const TABLES: readonly Omit<ListBlock, 'table'>[] = [
  {
    id: 'movement',
    title: 'Wood through the year',
    remark: 'as made, at the driest, at the wettest; single boards a quarter more or less',
    look: { strong: ['part'] },
  },
  {
    id: 'panels-through-the-year',
    title: 'Panels in their grooves',
    remark: 'how far they enter, what is free behind them',
    look: { strong: ['panel'] },
  },
  {
    id: 'screws',
    title: 'Holes for screws',
    remark: 'where a screw’s maker says otherwise, that stands',
    look: { strong: ['clearance', 'pilot'] },
  },
  {
    id: 'weights',
    title: 'Weights',
    remark: 'estimates; * our default, the maker’s sheet rules',
    look: { strong: ['mass'] },
  },
  {
    id: 'slots-through-the-year',
    title: 'Slots',
    remark: 'what their screws travel',
    look: { strong: ['slot'] },
    half: true,
  },
];

/** What the checks worked out and the bench works from: movement of every part, holes for screws, weights. */
export const figures = listSheet({
  id: 'figures',
  title: 'Figures',
  head: () => ['Figures to work from', 'estimates, from averages of the wood'],
  blocks: ({ checks }: Prepared) =>
    TABLES.flatMap((block): ListBlock[] => {
      const table = checks?.checks.flatMap((c) => c.tables).find((t) => t.id === block.id);
      return table ? [{ ...block, table }] : [];
    }),
});
