/** The pens, tones and type sizes that sheets are drawn with; the figures are in type/pens.ts, which the writers share. */
import { PENS as styles, type PenStyle } from '../type/pens.js';
import type { Pen } from './picture.js';

export const PENS: Readonly<Record<Pen, PenStyle>> = styles;
export { SIZE, TONES } from '../type/pens.js';
