import type { Diagnostic } from '../diag/diagnostic.js';
import { AXES, type Axis } from '../geom/axis.js';
import { byAxis, span, width, withSpan, type Box3 } from '../geom/box.js';
import { coveredBy } from '../geom/covered.js';
import { nearby } from '../geom/nearby.js';
import { IDENTITY, unturn, type Placement } from '../geom/placement.js';
import { placedBox, reachOf } from '../geom/reach.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel } from '../geom/solid.js';
import { squared } from '../geom/squared.js';
import { NM_PER_MM } from '../lengths/length.js';
import type { Hardware, Part, Piece } from '../piece/piece.js';
import { partRecipe } from './cutRecipe.js';
import { measure, tolerance } from './interference.js';
import { named } from './named.js';

/** A screw upright in its own axes, and how it stands in the piece. */
interface Upright {
  readonly body: Recipe;
  readonly axis: Axis;
  /** +1 where its tip is at the high end of its axis. */
  readonly toward: 1 | -1;
  readonly place: Placement;
}
/** A turned body, widest at its head; a plain pin (a screw in a pocket) has its head at the low end of its own axis. */
function upright(body: Recipe): Upright | undefined {
  const [place, turned] = body.op === 'placed' ? [body.by, body.of] : [IDENTITY, body];
  if (turned.op !== 'turned') return undefined;
  const along = turned.profile.map(([, d]) => d);
  const widest = Math.max(...turned.profile.map(([r]) => r));
  const head = turned.profile.filter(([r]) => r === widest).map(([, d]) => d);
  const [low, high] = [Math.min(...head) - Math.min(...along), Math.max(...along) - Math.max(...head)];
  return { body: turned, axis: turned.axis, toward: low <= high ? 1 : -1, place };
}

const inverse = (p: Placement): Placement => {
  const columns = byAxis((c) => byAxis((r) => p.rotation[r][c]));
  return { rotation: columns, origin: unturn(p, byAxis((a) => 0 - p.origin[a])) }; // prettier-ignore
};
/** A part as wood with its drilled holes filled again: what a screw is held by. */
const solidWood = (part: Part): Recipe => ({
  op: 'placed',
  by: part.place,
  of: partRecipe({ ...part, cuts: part.cuts.filter((c) => c.shape !== 'bore') }),
});
const nmBox = (b: Box3): Box3 => byAxis((a) => [Math.floor(b[a][0] * NM_PER_MM), Math.ceil(b[a][1] * NM_PER_MM)]);

/** True when all of a screw's box beyond the first that wood reaches is surely filled with wood. Own axes, nm. */
function inWood(s: Upright, reach: Box3, own: readonly Recipe[]): boolean {
  const ends = own.map((w) => reachOf(w)?.[s.axis][s.toward > 0 ? 0 : 1]).filter((x) => x !== undefined);
  const first = s.toward > 0 ? Math.min(...ends) : Math.max(...ends);
  const over = span(first, reach[s.axis][s.toward > 0 ? 1 : 0]);
  return coveredBy(withSpan(reach, s.axis, over), own);
}
/** What of a screw stands in air beyond the place where it first enters wood; its own axes, mm. Undefined: nothing. */
function bare(s: Upright, wood: readonly Recipe[], kernel: Kernel): { volume: number; at: Box3 } | undefined {
  const reach = reachOf(s.body);
  if (!reach) return undefined;
  const placed = placedBox(s.place, reach);
  const own = wood
    .map((of) => nearby(of, placed))
    .filter((w) => w !== undefined)
    .map((of) => nearby(squared({ op: 'placed', by: inverse(s.place), of }), reach))
    .filter((w) => w !== undefined);
  if (own.length > 0 && inWood(s, reach, own)) return undefined;
  const whole = kernel.bounds(s.body);
  const first = own
    .map((w) => kernel.overlap(s.body, w).at?.[s.axis])
    .filter((x) => x !== undefined)
    .map((x) => (s.toward > 0 ? x[0] : x[1]));
  if (!whole) return undefined;
  const box = nmBox(whole);
  const enters = s.toward > 0 ? Math.min(...first) : Math.max(...first);
  const from = first.length === 0 ? box[s.axis][s.toward > 0 ? 0 : 1] : Math.round(enters * NM_PER_MM);
  const rest = withSpan(box, s.axis, s.toward > 0 ? [from, box[s.axis][1]] : [box[s.axis][0], from]);
  const left: Recipe = { op: 'cut', from: { op: 'met', of: [s.body, { op: 'box', at: rest }] }, tools: own };
  const at = kernel.bounds(left);
  const volume = at ? kernel.volume(left) : 0;
  return at && volume > tolerance(at) ? { volume, at } : undefined;
}

/** Where the bare stretch of a screw stands: at its tip by how much, or at its side. */
function shows(h: Hardware, s: Upright, at: Box3, parts: readonly Part[], piece: Piece, kernel: Kernel): Diagnostic {
  const whole = (kernel.bounds(s.body) as Box3)[s.axis];
  const tip = s.toward > 0 ? whole[1] - at[s.axis][1] : at[s.axis][0] - whole[0];
  const by = measure(width(at[s.axis]), piece.units);
  const what = tip < 1e-3 ? `its tip stands ${by} out of` : `${by} of its length lies bare in`;
  const last = parts.at(-1);
  const placed = kernel.bounds(h.body) as Box3;
  const mid = byAxis((a) => measure((placed[a][0] + placed[a][1]) / 2, piece.units));
  const joint = piece.joints.find((j) => h.id.startsWith(`${j.id}.`));
  const path = last?.size.find((x) => x.path)?.path?.slice(0, 2) ?? ['parts', last?.id ?? h.id];
  const wood = parts.map((p) => `${p.mark} (${p.name})`).join(' and ');
  return {
    code: 'screw-shows',
    severity: 'error',
    path: joint ? ['joints', joint.joint] : path,
    message: `Screw ${h.name} ${h.id}: ${what} ${wood}, at across ${mid[0]}, deep ${mid[1]}, up ${mid[2]}.`,
    hint: 'Take a shorter screw, or move it to where there is wood all round it.',
    touches: [h.id, ...parts.map((p) => p.id)],
  };
}

/** Screws that come out of the wood they go into: at the far face, at a side, or never in it. Each an error. */
export function bareScrews(piece: Piece, world: ReadonlyMap<string, Recipe>, kernel: Kernel): Diagnostic[] {
  const whole = new Map<string, Recipe>();
  const woodOf = (part: Part): Recipe => {
    const known = whole.get(part.id) ?? solidWood(part);
    whole.set(part.id, known);
    return known;
  };
  const boxes = new Map([...world].map(([id, recipe]) => [id, reachOf(squared(recipe))]));
  return piece.hardware.flatMap((h): Diagnostic[] => {
    const s = h.kind === 'screw' ? upright(h.body) : undefined;
    const parts = piece.parts.filter((p) => h.into.includes(p.id));
    const box = s && reachOf(squared(h.body));
    if (!s || !box || parts.length === 0) return [];
    // Wood of other parts in its way is told as filling the same room, and is no air.
    const near = piece.parts.filter((p) => {
      const other = boxes.get(p.id);
      return !parts.includes(p) && other && AXES.every((a) => other[a][0] < box[a][1] && box[a][0] < other[a][1]);
    });
    const wood = [...parts.map(woodOf), ...near.map((p) => world.get(p.id) as Recipe)].map(squared);
    const found = named(
      () => `screw ${h.id}`,
      () => bare(s, wood, kernel),
    );
    return found ? [shows(h, s, found.at, parts, piece, kernel)] : [];
  });
}
