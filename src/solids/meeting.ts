import type { Diagnostic } from '../diag/diagnostic.js';
import { FACES, faceAxis, faceSign, type Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import { shareRoom } from '../geom/common.js';
import { nearby } from '../geom/nearby.js';
import { reachOf } from '../geom/reach.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel } from '../geom/solid.js';
import { shiftedBy, squared } from '../geom/squared.js';
import type { Joint, Part, Piece } from '../piece/piece.js';
import { blankOf, cutRecipe } from './cutRecipe.js';

/** How far a part is pushed on to see whether it bears on its mate: 0.02 mm, nm. Under a gap that anyone could see. */
const NUDGE = 20_000;

/** What the joint takes from its receiving part, in piece axes. */
function takenFor(joint: Joint, receiving: Part): Recipe[] {
  const blank = blankOf(receiving);
  return receiving.cuts
    .filter((c) => (c.from === joint.joint || c.from === joint.id) && c.mates.includes(joint.entering))
    .flatMap((c): Recipe[] => {
      const of = cutRecipe(c, blank);
      return of ? [{ op: 'placed', by: receiving.place, of }] : [];
    });
}
const nudged = (of: Recipe, way: Face): Recipe =>
  shiftedBy(of, byAxis((a) => (a === faceAxis(way) ? faceSign(way) * NUDGE : 0))); // prettier-ignore
/** What of a solid may bear on another. */
function toward(solid: Recipe, mate: Recipe): Recipe | undefined {
  const reach = reachOf(mate);
  return reach && nearby(solid, byAxis((a) => [reach[a][0] - NUDGE, reach[a][1] + NUDGE])); // prettier-ignore
}

/**
 * A joint holds only where wood reaches wood: the entering part stands in what was taken out for it, or bears against
 * the receiving part. Each joint whose halves do neither is an error.
 */
export function halvesMeet(piece: Piece, world: ReadonlyMap<string, Recipe>, kernel: Kernel): Diagnostic[] {
  const parts = new Map(piece.parts.map((p) => [p.id, p]));
  return piece.joints.flatMap((joint): Diagnostic[] => {
    if (joint.entering === joint.receiving) return []; // staves of one part
    const [a, b] = [parts.get(joint.entering), parts.get(joint.receiving)];
    const [solid, mate] = [joint.entering, joint.receiving].map((id) => {
      const whole = world.get(id);
      return whole && squared(whole);
    });
    if (!a || !b || !solid || !mate) return []; // said already: nothing was left of it
    if (takenFor(joint, b).some((taken) => shareRoom(solid, taken, kernel))) return [];
    const ways = [...joint.way, ...FACES.filter((f) => !joint.way.includes(f))];
    const [own, other] = [toward(solid, mate), toward(mate, solid)];
    if (own && other && ways.some((way) => shareRoom(nudged(own, way), other, kernel))) return [];
    return [
      {
        code: 'joint-apart',
        severity: 'error',
        path: ['joints', joint.joint],
        message: `Joint ${joint.id} (${joint.words}): ${a.mark} (${a.name}) does not reach ${b.mark} (${b.name}).`,
        hint: 'The two parts must touch where they are joined: look at their faces, or take the joint out.',
        touches: [joint.id, a.id, b.id],
      },
    ];
  });
}
