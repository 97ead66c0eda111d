import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { AXES } from '../geom/axis.js';
import { width, type Box3, type Span } from '../geom/box.js';
import { reachOf } from '../geom/reach.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel } from '../geom/solid.js';
import { squared } from '../geom/squared.js';
import type { Units } from '../lengths/length.js';
import type { Piece } from '../piece/piece.js';
import { named } from './named.js';

/** One thing that fills space in the piece. */
interface Body {
  readonly id: string;
  /** `A1 (left side)`. */
  readonly called: string;
  readonly recipe: Recipe;
  /** Holds it, piece axes, nm. */
  readonly box: Box3;
  readonly path: JsonPath;
  /** Hardware only: parts that it may enter. */
  readonly into?: readonly string[];
}
/** Smallest volume that counts, mm3. Ours, from trials: joints without clearance measure 0 to 1e-9. */
const LEAST = 1e-3;
/** Coordinates are whole nanometres, so two faces may differ by one each: not a clash over however big a face (mm). */
const ROUNDING = 2e-6;

/** Volume below which a common space with this box is rounding and not wood in wood, mm3. */
export function tolerance(at: Box3): number {
  const [a, b, c] = [width(at[0]), width(at[1]), width(at[2])];
  return LEAST + ROUNDING * 2 * (a * b + b * c + c * a);
}
/** A figure for messages, from mm: inches to a thousandth or mm to a hundredth. */
export const measure = (mm: number, units: Units): string =>
  units === 'in' ? `${+(mm / 25.4).toFixed(3) + 0} in` : `${+mm.toFixed(2) + 0} mm`;

const where = (at: Box3, units: Units): string => {
  const run = (s: Span): string => `${measure(s[0], units).replace(/ .*/, '')} to ${measure(s[1], units)}`;
  return `across ${run(at[0])}, deep ${run(at[1])}, up ${run(at[2])}`;
};
const bulk = (mm3: number, units: Units): string =>
  units === 'in' ? `${+(mm3 / 25.4 ** 3).toPrecision(2)} cubic inches` : `${+mm3.toPrecision(2)} mm³`;

function bodiesOf(piece: Piece, world: ReadonlyMap<string, Recipe>): Body[] {
  const parts = piece.parts.flatMap((part): Body[] => {
    const recipe = world.get(part.id);
    const box = recipe && reachOf(squared(recipe));
    const path = part.size.find((s) => s.path)?.path?.slice(0, 2) ?? ['parts', part.id];
    return box ? [{ id: part.id, called: `${part.mark} (${part.name})`, recipe, box, path }] : [];
  });
  const hardware = piece.hardware.flatMap((h): Body[] => {
    const box = reachOf(squared(h.body));
    const owner = piece.parts.find((p) => h.into.includes(p.id));
    const joint = piece.joints.find((j) => h.id.startsWith(`${j.id}.`));
    const drawer = h.drawer?.replace(/(_\d+)+$/, '');
    const path =
      drawer !== undefined
        ? ['drawers', drawer]
        : joint
          ? ['joints', joint.joint]
          : (owner?.size.find((s) => s.path)?.path?.slice(0, 2) ?? ['parts', owner?.id ?? h.id]);
    return box ? [{ id: h.id, called: `${h.name} ${h.id}`, recipe: h.body, box, path, into: h.into }] : [];
  });
  return [...parts, ...hardware];
}
const allowed = (a: Body, b: Body): boolean => (a.into?.includes(b.id) ?? false) || (b.into?.includes(a.id) ?? false);

/** Pairs whose boxes share room, found by sweeping along the piece's width. In order of the list. */
function nearPairs(bodies: readonly Body[]): [Body, Body][] {
  const order = bodies.map((_, i) => i).sort((i, j) => low(bodies, i) - low(bodies, j) || i - j);
  const pairs: [number, number][] = [];
  order.forEach((i, at) => {
    const a = bodies[i] as Body;
    for (let k = at + 1; k < order.length; k++) {
      const j = order[k] as number;
      const b = bodies[j] as Body;
      if (b.box[0][0] >= a.box[0][1]) break;
      if (AXES.every((x) => a.box[x][0] < b.box[x][1] && b.box[x][0] < a.box[x][1]))
        pairs.push([Math.min(i, j), Math.max(i, j)]);
    }
  });
  pairs.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  return pairs.map(([i, j]) => [bodies[i] as Body, bodies[j] as Body]);
}
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const low = (bodies: readonly Body[], i: number): number => (bodies[i] as Body).box[0][0];

/** Every pair of parts and bought things that would fill the same room, each an error with its volume and place. */
export function interference(piece: Piece, world: ReadonlyMap<string, Recipe>, kernel: Kernel): Diagnostic[] {
  return nearPairs(bodiesOf(piece, world)).flatMap(([a, b]): Diagnostic[] => {
    if (allowed(a, b)) return [];
    const { volume, at } = named(
      () => `${a.called} with ${b.called}`,
      () => kernel.overlap(a.recipe, b.recipe),
    );
    if (!at || volume <= tolerance(at)) return [];
    const wood = a.into === undefined && b.into === undefined;
    return [
      {
        code: wood ? 'parts-overlap' : 'hardware-overlap',
        severity: 'error',
        path: (b.into !== undefined || a.into === undefined ? b : a).path,
        message: `${capital(a.called)} and ${b.called} fill the same room: ${bulk(volume, piece.units)}, ${where(at, piece.units)}.`,
        hint: wood
          ? 'Give them a joint, or move a face of one to a face of the other.'
          : 'Move it, or choose a size that clears.',
        touches: [a.id, b.id],
      },
    ];
  });
}
