import type { Diagnostic } from '../diag/diagnostic.js';
import { faceAxis, third } from '../geom/axis.js';
import { width } from '../geom/box.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel } from '../geom/solid.js';
import { toMm } from '../lengths/length.js';
import type { Part, Piece } from '../piece/piece.js';
import type { BoreCut, Cut } from '../words/cut.js';
import { blankOf, cutRecipe } from './cutRecipe.js';
import { measure, tolerance } from './interference.js';
import { named } from './named.js';

/** Does a shape take wood from beside a pocket, and not from the face that it opens in or the end that its screw leaves by? */
function beside(cut: Cut, pocket: BoreCut): boolean {
  const ways = [pocket.face, pocket.tilt?.toward];
  switch (cut.shape) {
    case 'arc':
    case 'plane':
      return true;
    case 'outline':
      return faceAxis(cut.face) === faceAxis(pocket.face);
    case 'taper':
      return !ways.includes(cut.face);
    case 'arris':
      return !cut.faces.some((f) => ways.includes(f));
    default:
      return false;
  }
}

/** Each pocket that breaks out of its part's shaped edge: an error that names the shape, the place and by how much. */
export function brokenPockets(piece: Piece, kernel: Kernel): Diagnostic[] {
  return piece.parts.flatMap((part) => {
    const pockets = part.cuts.filter((c): c is BoreCut => c.shape === 'bore' && c.as === 'pocket');
    return pockets.flatMap((pocket) => {
      const found = part.cuts.filter((c) => beside(c, pocket)).flatMap((c) => broken(part, pocket, c, piece, kernel));
      return found.slice(0, 1);
    });
  });
}

function broken(part: Part, pocket: BoreCut, shape: Cut, piece: Piece, kernel: Kernel): Diagnostic[] {
  const blank = blankOf(part);
  const [hole, taken] = [cutRecipe(pocket, blank), cutRecipe(shape, blank)];
  if (!hole || !taken) return [];
  const gone: Recipe = { op: 'met', of: [taken, { op: 'box', at: blank }] };
  const { volume, at } = named(
    () => `pocket ${pocket.id} of ${part.id}`,
    () => kernel.overlap(hole, gone),
  );
  if (!at || volume <= tolerance(at)) return [];
  const side = faceAxis(pocket.face);
  const lean = pocket.tilt ? faceAxis(pocket.tilt.toward) : third(side, side === 0 ? 1 : 0);
  const across = third(side, lean);
  const [length, place] = [part.length, (at[across][0] + at[across][1]) / 2];
  const from = measure(place - toMm(blank[across][0]), piece.units);
  const which = across === length ? 'along it' : 'across it';
  return [
    {
      code: 'pocket-breaks-out',
      severity: 'error',
      path: piece.joints.some((j) => j.joint === pocket.from)
        ? ['joints', pocket.from]
        : (part.size.find((s) => s.path)?.path?.slice(0, 2) ?? ['parts', part.id]),
      message: `A pocket of ${part.mark} (${part.name}), ${from} ${which}, breaks out of its shaped edge (${shape.shape}) by ${measure(width(at[lean]), piece.units)}.`,
      hint: 'Put fewer screws, or place them where the part is wide enough; a round hole from the other part is a way too.',
      touches: [part.id, pocket.id],
    },
  ];
}
