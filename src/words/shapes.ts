import { arcWords } from './arc.js';
import { arrisWords } from './arris.js';
import { boreWords } from './bore.js';
import { boxWords } from './box.js';
import type { Cut, Shape } from './cut.js';
import { dovetailWords } from './dovetail.js';
import { markWords } from './mark.js';
import { outlineWords } from './outline.js';
import { planeWords } from './plane.js';
import type { ShapeWords } from './say.js';
import { tailsWords } from './tails.js';
import { taperWords } from './taper.js';
import { tenonWords } from './tenon.js';

/** One entry a shape; nothing else lists them. */
export const SHAPES: { readonly [S in Shape]: ShapeWords<Extract<Cut, { shape: S }>> } = {
  box: boxWords,
  dovetail: dovetailWords,
  tails: tailsWords,
  tenon: tenonWords,
  taper: taperWords,
  arc: arcWords,
  bore: boreWords,
  arris: arrisWords,
  outline: outlineWords,
  plane: planeWords,
  mark: markWords,
};
/** The words of a cut's shape, typed for any cut. */
export const wordsOf = (cut: Cut): ShapeWords<Cut> => SHAPES[cut.shape] as unknown as ShapeWords<Cut>;
