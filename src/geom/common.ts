import { others } from './axis.js';
import { byAxis, type Box3, type Vec3 } from './box.js';
import { coveredBy } from './covered.js';
import { keyOf } from './key.js';
import { FACET, whereIs } from './membership.js';
import { nearby } from './nearby.js';
import { boxWithin, meetBoxes, reachOf } from './reach.js';
import type { Recipe } from './recipe.js';
import type { Kernel } from './solid.js';
import { shiftedBy, squared } from './squared.js';

/** The room common to two solids: a box, met with solids, less tools. nm. */
interface Common {
  readonly box: Box3;
  readonly solids: readonly Recipe[];
  readonly tools: readonly Recipe[];
}
/** What of two solids bears on the room that they share; undefined when they surely share none. */
function sharedBy(a: Recipe, b: Recipe): Common | undefined {
  const both = [squared(a), squared(b)];
  const reaches = both.map(reachOf);
  let box = reaches[0] && reaches[1] && meetBoxes(reaches[0], reaches[1]);
  if (!box) return undefined;
  const [solids, tools]: [Recipe[], Recipe[]] = [[], []];
  for (const recipe of both) {
    const near: Recipe | undefined = nearby(recipe, box);
    if (!near) return undefined;
    const from = near.op === 'cut' ? near.from : near;
    if (near.op === 'cut') tools.push(...near.tools);
    if (from.op === 'box') box = meetBoxes(box, from.at);
    else solids.push(from);
    if (!box) return undefined;
  }
  const room = box;
  const bearing = tools.map((t) => nearby(t, room)).filter((t) => t !== undefined);
  if (coveredBy(room, bearing) || bearing.some((t) => solids.some((s) => fillsHole(s, t)))) return undefined;
  return { box: room, solids, tools: bearing };
}

/** True when a solid lies wholly in what a tool takes: the same shape, or a pin in a round hole on the same line. nm. */
function fillsHole(solid: Recipe, tool: Recipe): boolean {
  if (keyOf(solid) === keyOf(tool)) return true;
  if (solid.op !== 'turned' || tool.op !== 'turned' || solid.axis !== tool.axis) return false;
  const [u, v] = others(solid.axis);
  if (solid.centre[u] !== tool.centre[u] || solid.centre[v] !== tool.centre[v]) return false;
  const [pin, hole] = [solid, tool].map(({ profile }) => {
    const [radii, along] = [profile.map(([r]) => r), profile.map(([, h]) => h)];
    return { least: Math.min(...radii), most: Math.max(...radii), from: Math.min(...along), to: Math.max(...along) };
  });
  if (!pin || !hole) return false;
  return pin.most <= hole.least * FACET && pin.from >= hole.from && pin.to <= hole.to;
}

/**
 * The room common to two solids as a recipe of its own, near the origin, so that pairs that meet in the same way share a
 * key; `shift` (nm) takes it back. What cannot bear on the shared room is left out. Undefined when there is surely none.
 */
export function commonRoom(a: Recipe, b: Recipe): { readonly recipe: Recipe; readonly shift: Vec3 } | undefined {
  const common = sharedBy(a, b);
  if (!common) return undefined;
  const { box, solids, tools } = common;
  const shift = byAxis((i) => box[i][0]);
  const home = byAxis((i) => 0 - shift[i]);
  const loose = !solids.some((s) => boxWithin(reachOf(s) ?? box, box));
  const of = [...(loose ? [{ op: 'box', at: box } as const] : []), ...solids].map((s) => shiftedBy(s, home));
  const from: Recipe = of.length === 1 ? (of[0] as Recipe) : { op: 'met', of };
  const sorted = tools
    .map((t) => shiftedBy(t, home))
    .map((tool) => ({ tool, key: keyOf(tool) }))
    .sort((p, q) => (p.key < q.key ? -1 : p.key > q.key ? 1 : 0));
  return { recipe: sorted.length === 0 ? from : { op: 'cut', from, tools: sorted.map((s) => s.tool) }, shift };
}

/** Quarters of a box's sides at which to look for wood, the middle first. */
const QUARTERS = [2, 1, 3] as const;

/** True when two solids share room, however little. The kernel is asked only where no point shows it. */
export function shareRoom(a: Recipe, b: Recipe, kernel: Kernel): boolean {
  const common = sharedBy(a, b);
  if (!common) return false;
  const { box, solids, tools } = common;
  for (const i of QUARTERS) {
    for (const j of QUARTERS) {
      for (const k of QUARTERS) {
        const at = [i, j, k] as const;
        const p = byAxis((x) => box[x][0] + ((box[x][1] - box[x][0]) * at[x]) / 4);
        if (solids.every((s) => whereIs(p, s) === 'in') && tools.every((t) => whereIs(p, t) === 'out')) return true;
      }
    }
  }
  return kernel.overlap(a, b).volume > 0;
}
