import type { Axis } from './axis.js';
import type { Box3 } from './box.js';

/** Something with a shoulder box in its own axes (nm) and what its joints make it longer by at each end. */
export interface Grown {
  readonly size: readonly [{ readonly value: number }, { readonly value: number }, { readonly value: number }];
  readonly growth: Box3;
}
/** Over-all size along an own axis: shoulder size and what joints add. nm. */
export const overAll = ({ size, growth }: Grown, axis: Axis): number =>
  size[axis].value + growth[axis][0] + growth[axis][1];
