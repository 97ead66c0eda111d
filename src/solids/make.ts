import { AXES, AXIS_NAMES } from '../geom/axis.js';
import { width, type Box3 } from '../geom/box.js';
import { keyOf } from '../geom/key.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel } from '../geom/solid.js';
import type { Diagnostic, JsonPath, Outcome } from '../diag/diagnostic.js';
import { toMm } from '../lengths/length.js';
import type { Part, Piece } from '../piece/piece.js';
import { blankOf, partRecipe } from './cutRecipe.js';
import { interference } from './interference.js';
import { halvesMeet } from './meeting.js';
import { named } from './named.js';
import { brokenPockets } from './pockets.js';
import { bareScrews } from './screws.js';
import type { PartSolid, Solids } from './solids.js';

/** Where a part stands in the definition, as near as its sizes tell. */
export const partPath = (part: Part): JsonPath =>
  part.size.find((s) => s.path)?.path?.slice(0, 2) ?? ['parts', part.id];

/** Agreement of a measured box with the worked-out one: 0.0001 mm; both come from whole nanometres. */
const BOX_TOLERANCE = 1e-4;
function sizeFinding(part: Part, bounds: Box3): Diagnostic | undefined {
  const blank = blankOf(part);
  const off = AXES.filter((a) => {
    const [lo, hi] = [toMm(blank[a][0]), toMm(blank[a][1])];
    const outside = bounds[a][0] < lo - BOX_TOLERANCE || bounds[a][1] > hi + BOX_TOLERANCE;
    const short = bounds[a][0] > lo + BOX_TOLERANCE || bounds[a][1] < hi - BOX_TOLERANCE;
    return outside || (short && !reducesBox(part));
  });
  const axis = off[0];
  if (axis === undefined) return undefined;
  return {
    code: 'part-size-off',
    severity: 'error',
    path: partPath(part),
    message: `Part ${part.mark} (${part.name}) should measure ${toMm(width(blank[axis]))} mm ${AXIS_NAMES[axis]} with its joints, but its cuts leave ${width(bounds[axis])} mm.`,
    hint: 'A joint at this end takes away more than it lengthened the part by: look at its cuts.',
    touches: [part.id],
  };
}
/** Shaping (rank 4) may take a part's box in; so may a relief or rabbet that runs over a whole side. */
const reducesBox = (part: Part): boolean => part.cuts.some((c) => c.rank === 4 || SHAPING.has(c.shape));
const SHAPING: ReadonlySet<string> = new Set(['outline', 'plane', 'taper', 'arc', 'arris']);

/** The part and its cuts, for the message of a fault that is ours and not the piece's. */
const madeOf = (part: Part): string =>
  `part ${part.mark} (${part.id}) with cuts ${part.cuts.map((c) => c.id).join(', ')}`;

function partSolid(part: Part, kernel: Kernel): { solid?: PartSolid; findings: Diagnostic[] } {
  const recipe = partRecipe(part);
  const bounds = kernel.bounds(recipe);
  const fault = (code: string, message: string, hint: string): Diagnostic => ({
    code,
    severity: 'error',
    path: partPath(part),
    message,
    hint,
    touches: [part.id],
  });
  if (!bounds) {
    const hint = 'Make its sizes larger or the cuts of its joints smaller.';
    return {
      findings: [fault('part-empty', `Nothing is left of part ${part.mark} (${part.name}) after its cuts.`, hint)],
    };
  }
  const findings: Diagnostic[] = [];
  const lumps = kernel.lumps(recipe);
  if (lumps !== 1) {
    const message = `Part ${part.mark} (${part.name}) falls into ${lumps} separate pieces after its cuts.`;
    findings.push(
      fault('part-falls-apart', message, 'Two cuts meet right through it: move one of them, or make the part bigger.'),
    );
  }
  const size = sizeFinding(part, bounds);
  if (size) findings.push(size);
  const solid = {
    id: part.id,
    recipe,
    key: keyOf(recipe),
    mesh: kernel.mesh(recipe),
    volume: kernel.volume(recipe),
    bounds,
  };
  return { solid, findings };
}

/**
 * Piece -> Solids: every part cut from its blank, every bought thing as its body. Findings: a part that is empty, that
 * falls apart or that has the wrong size; wood in wood, hardware in wood; a joint whose halves do not reach one another; screws and
 * pockets that come out of the wood.
 */
export function makeSolids(piece: Piece, kernel: Kernel): Outcome<Solids> {
  const made = piece.parts.map((part) =>
    named(
      () => madeOf(part),
      () => partSolid(part, kernel),
    ),
  );
  const parts = made.map((m) => m.solid).filter((s) => s !== undefined);
  const hardware = piece.hardware.map(({ id, body }) =>
    named(
      () => `hardware ${id}`,
      () => ({ id, recipe: body, mesh: kernel.mesh(body) }),
    ),
  );
  const placed = (solid: PartSolid): Recipe => {
    const part = piece.parts.find((p) => p.id === solid.id) as Part;
    return { op: 'placed', by: part.place, of: solid.recipe };
  };
  const world = new Map(parts.map((solid) => [solid.id, placed(solid)]));
  const findings = [
    ...made.flatMap((m) => m.findings),
    ...interference(piece, world, kernel),
    ...halvesMeet(piece, world, kernel),
    ...bareScrews(piece, world, kernel),
    ...brokenPockets(piece, kernel),
  ];
  return { value: { parts, hardware }, findings };
}
