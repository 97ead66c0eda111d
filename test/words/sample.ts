import type { Face } from '../../src/geom/axis.js';
import type { Cut } from '../../src/words/cut.js';
import type { BareCut } from '../../src/words/say.js';

const words = (...w: readonly [string, string, string, string, string, string]): Readonly<Record<Face, string>> => ({
  left: w[0],
  right: w[1],
  front: w[2],
  back: w[3],
  bottom: w[4],
  top: w[5],
});
/** Face words as parts of a case, of a leg and of a drawer back have them. */
export const FACE_WORDS = [
  words('OUTSIDE', 'INSIDE', 'FRONT', 'BACK', 'BOTTOM', 'TOP'),
  words('LEFT', 'RIGHT', 'FRONT', 'BACK', 'BOTTOM', 'TOP'),
  words('LEFT', 'RIGHT', 'INSIDE', 'OUTSIDE', 'BOTTOM', 'TOP'),
];
/** Marks of made-up mates: m1 is M1. */
export const markOf = (id: string): string => id.toUpperCase();

/** A cut as its words can give it back. */
export function bare(cut: Cut): BareCut {
  const { id, from, mates, rank, glue, scribe, trial, notes, ...rest } = cut;
  void [id, from, rank, glue, scribe, trial, notes];
  return { ...rest, mates: mates.map(markOf) } as BareCut;
}
