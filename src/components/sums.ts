import { nm, snapDown, snapUp, toIn, toMm, type Length, type Units } from '../lengths/length.js';
import { byRule, derived, type Sized } from '../value/sized.js';
import type { SizedSpan } from './component.js';

/** A coordinate moved by some nm, with the reason. */
export const moved = (from: Sized, by: number, rule: string): Sized =>
  derived(nm(from.value + by), rule, [{ name: 'from', value: from.value }]);

/** From `low`, so far. */
export const run = (low: Sized, size: Sized, rule: string): SizedSpan => [
  low,
  derived(nm(low.value + size.value), rule, [
    { name: 'from', value: low.value },
    { name: 'size', value: size.value },
  ]),
];

/** The distance between the ends of a span. */
export const across = (span: SizedSpan, rule: string): Sized =>
  derived(nm(span[1].value - span[0].value), rule, [
    { name: 'from', value: span[0].value },
    { name: 'to', value: span[1].value },
  ]);

/** Rounded up to the step; an excess under a tenth of a step is let go (1/640 in), since it is finer than one can set. */
export const upToStep = (value: number, step: number): Length => snapUp(value - step / 10, step);

/** A starting value that is plain in either unit. */
export const plain = (units: Units, inch: Length, metric: Length): Length => (units === 'in' ? inch : metric);

/** Figures in a sentence: inches to four places or millimetres to two, no trailing noughts. */
export const said = (value: number, units: Units): string =>
  units === 'in' ? `${Number(toIn(value).toFixed(4))} in` : `${Number(toMm(value).toFixed(2))} mm`;

export { byRule, derived, snapDown };
