import type { Check, CheckInput, CheckResult } from './check.js';
import { grouped, type Single } from './grouped.js';
import { movingOf, type Moving } from './movement/context.js';
import { cups } from './movement/cups.js';
import { fronts, gapsOf, gapToday, revealRows, reveals } from './movement/fronts.js';
import { panels, panelSeasons } from './movement/panels.js';
import { sidePlay } from './movement/sides.js';
import { slots, slotSeasons } from './movement/slots.js';
import { speciesOf } from './movement/strain.js';
import { partsTable } from './movement/table.js';
import { besideWorst } from './movement/worst.js';
import { crossGrain, heldApart } from './movement/ties.js';
import { quantity } from '../value/quantity.js';

/**
 * What wood does over the year: each part by itself, and, always between the parts that are tied, what joints hold back,
 * what slots must give, what stays of a panel in its grooves and what is left of the gaps of drawer fronts.
 */
export const movement: Check = {
  key: 'movement',
  title: 'Movement across the grain',
  run(input: CheckInput): CheckResult {
    const moving = movingOf(input);
    const gaps = gapsOf(moving);
    const singles = [
      ...besideWorst(moves(moving, gaps), () => {
        const worst = movingOf(input, 'worst');
        return moves(worst, gapsOf(worst));
      }),
      ...cups(moving),
      ...unjudged(moving),
    ];
    const table = partsTable(moving);
    return {
      judgements: grouped(singles),
      tables: [
        ...[table, panelSeasons(moving), slotSeasons(moving)].filter((t) => t.rows.length > 0),
        ...(gaps.length > 0 ? [reveals(gaps, moving), gapToday(gaps, moving)] : []),
      ],
      ...(gaps.length > 0 ? { diagrams: [{ kind: 'reveals', rows: revealRows(gaps, moving) }] } : {}),
    };
  },
};

const moves = (moving: Moving, gaps: ReturnType<typeof gapsOf>): Single[] => [
  ...crossGrain(moving),
  ...heldApart(moving),
  ...slots(moving),
  ...panels(moving),
  ...fronts(gaps, moving),
  ...sidePlay(moving),
];

/** Parts that lean stand in no axis of the piece, and woods that are in no table move by nobody knows what: both are told. */
function unjudged({ piece, stands }: Moving): Single[] {
  return piece.parts.flatMap((part): Single[] => {
    const stock = piece.stocks[part.stock];
    const unknown = stock?.kind === 'lumber' && !speciesOf(piece, part);
    const leans = !stands.has(part.id) && stock?.kind === 'lumber';
    if (!unknown && !leans) return [];
    const why = unknown ? `${stock.name} is in no table` : 'it leans';
    return [
      {
        code: 'movement-unjudged',
        verdict: 'note',
        marks: [part.mark],
        about: `is not judged for movement, ${why}; across its grain it is`,
        figure: quantity('length', part.size[part.width].value),
        worked: { rule: 'width across the grain', sources: [], inputs: [] },
        touches: [part.id],
        path: ['parts', part.id],
      },
    ];
  });
}
