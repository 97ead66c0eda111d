import { meet, middle } from '../../geom/box.js';
import { inches, mm } from '../../lengths/length.js';
import type { Drawer } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { drawerPath } from '../bodies.js';
import { atLeast, ratio, type Single } from '../grouped.js';
import type { Standing } from '../standing.js';
import { between, type Moving } from './context.js';
import { coefficientInput, MOVEMENT_SOURCE, seasonInputs } from './strain.js';

const ACROSS = 0;
/** Least play of a drawer between wooden sides, both together: 0.008 in (0.2 mm), our default. */
const leastPlay = (m: Moving): number => (m.piece.units === 'in' ? inches(0.008) : mm(0.2));

/** A drawer's outermost side on one hand, and the nearest face of the case beside it. */
interface Flank {
  readonly side: Standing;
  readonly hand: 1 | -1;
  readonly outer: number;
  readonly case: string;
  readonly face: number;
}
function flankOf(drawer: Drawer, hand: 1 | -1, moving: Moving): Flank | undefined {
  const end = hand > 0 ? 1 : 0;
  const sides = drawer.parts
    .flatMap((id) => moving.stands.get(id) ?? [])
    .filter((s) => s.own[ACROSS] === s.part.thickness);
  const side = sides.sort((p, q) => hand * (q.box[ACROSS][end] - p.box[ACROSS][end]))[0];
  if (!side) return undefined;
  const outer = side.box[ACROSS][end];
  const beside = [...moving.stands.values()].flatMap((s) => {
    const face = s.box[ACROSS][1 - end] ?? 0;
    const apart = hand * (face - outer);
    const level = meet(s.box[1], side.box[1]) && meet(s.box[2], side.box[2]);
    return s.part.drawer === undefined && level && apart >= 0 ? [{ id: s.part.id, face, apart }] : [];
  });
  const next = beside.sort((p, q) => p.apart - q.apart || (p.id < q.id ? -1 : 1))[0];
  return next && { side, hand, outer, case: next.id, face: next.face };
}

/** Does a drawer that runs on wood keep its play between the sides of the case when both swell in thickness? */
export function sidePlay(moving: Moving): Single[] {
  const { piece, season } = moving;
  const slides = new Set(piece.hardware.flatMap((h) => (h.kind === 'slide' && h.drawer ? [h.drawer] : [])));
  return piece.drawers.flatMap((drawer): Single[] => {
    const flanks = ([-1, 1] as const).flatMap((hand) => flankOf(drawer, hand, moving) ?? []);
    const front = moving.stands.get(drawer.front);
    const [left, right] = flanks;
    if (slides.has(drawer.id) || !left || !right || !front) return [];
    // Both sides against the front, which keeps its length; the case's faces against one another.
    const opens = (to: number): number => {
      const band = [season.made, to] as const;
      const own = (f: Flank): number =>
        f.hand * between(moving, ACROSS, band, [f.side.part.id, f.outer], [front.part.id, middle(front.box[ACROSS])]);
      const apart = between(moving, ACROSS, band, [right.case, right.face], [left.case, left.face]);
      return apart - own(left) - own(right);
    };
    const made = right.face - right.outer + (left.outer - left.face);
    const [dry, wet] = [opens(season.driest), opens(season.wettest)];
    const figure = made + Math.min(dry, wet);
    const limit = leastPlay(moving);
    const verdict = atLeast(figure, limit);
    return [
      {
        code: 'drawer-sticks',
        verdict,
        marks: [drawer.mark],
        about: 'plays between the sides of the case by',
        figure: quantity('fine', figure),
        limit: quantity('fine', limit),
        margin: ratio(figure, limit),
        ...(verdict === 'pass'
          ? {}
          : { remedy: `Give it ${sayQuantity(quantity('fine', limit - figure), piece.units)} more play.` }),
        worked: {
          rule: 'play as made at both sides − what the sides swell outwards + what the case opens',
          sources: [MOVEMENT_SOURCE, 'limit: our default, 0.008 in (0.2 mm) in all'],
          inputs: [
            { name: 'play as made', quantity: quantity('fine', made) },
            ...coefficientInput(piece, left.side.part, left.side.own[ACROSS]),
            ...seasonInputs(season),
            { name: 'change to the driest', quantity: quantity('fine', dry) },
            { name: 'change to the wettest', quantity: quantity('fine', wet) },
          ],
        },
        touches: [drawer.id, left.side.part.id, right.side.part.id],
        path: drawerPath(drawer),
      },
    ];
  });
}
