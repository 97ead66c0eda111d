import type { Axis } from './axis.js';
import type { Box3, Vec3 } from './box.js';
import type { Placement } from './placement.js';

/** One stretch of an outline, to a point: a straight line, or an arc by its bulge = tan(sweep / 4), positive anticlockwise. */
export interface Stretch {
  readonly to: readonly [number, number];
  readonly bulge?: number;
}
/** A closed outline: the last stretch ends where the first begins. Anticlockwise outside, clockwise holes. nm. */
export type Outline = readonly Stretch[];

/** A solid as data. Lengths nm. Only geom/kernel.ts turns it into something with a handle. */
export type Recipe =
  | { readonly op: 'box'; readonly at: Box3 }
  /** Outlines in the plane of the two other axes in rising order, pushed along `axis` over `from`..`to`. */
  | {
      readonly op: 'prism';
      readonly axis: Axis;
      readonly outlines: readonly Outline[];
      readonly from: number;
      readonly to: number;
    }
  | { readonly op: 'hull'; readonly points: readonly Vec3[] }
  /** Profile of (radius, distance along axis) turned about the line through `centre` along `axis`. */
  | {
      readonly op: 'turned';
      readonly axis: Axis;
      readonly centre: Vec3;
      readonly profile: readonly (readonly [number, number])[];
    }
  | { readonly op: 'placed'; readonly by: Placement; readonly of: Recipe }
  | { readonly op: 'cut'; readonly from: Recipe; readonly tools: readonly Recipe[] }
  | { readonly op: 'joined'; readonly of: readonly Recipe[] }
  | { readonly op: 'met'; readonly of: readonly Recipe[] };
