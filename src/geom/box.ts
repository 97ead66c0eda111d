import type { Axis } from './axis.js';

export type Vec3 = readonly [number, number, number];
/** Low and high end, low <= high. Nanometres wherever a definition's sizes are meant. */
export type Span = readonly [number, number];
export type Box3 = readonly [Span, Span, Span];

export const width = (s: Span): number => s[1] - s[0];
export const middle = (s: Span): number => (s[0] + s[1]) / 2;
export const meet = (a: Span, b: Span): Span | undefined => {
  const lo = Math.max(a[0], b[0]);
  const hi = Math.min(a[1], b[1]);
  return hi > lo ? [lo, hi] : undefined;
};
export const span = (a: number, b: number): Span => (a <= b ? [a, b] : [b, a]);
/** A box with one of its spans replaced. */
export const withSpan = (box: Box3, axis: Axis, s: Span): Box3 => {
  const out: [Span, Span, Span] = [box[0], box[1], box[2]];
  out[axis] = s;
  return out;
};
/** A vector or triple built by axis. */
export const byAxis = <T>(f: (axis: Axis) => T): [T, T, T] => [f(0), f(1), f(2)];
