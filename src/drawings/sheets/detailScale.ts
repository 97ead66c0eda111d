import type { Span } from '../../geom/box.js';
import { NM_PER_MM } from '../../lengths/length.js';

/** Windows of details on paper, mm, from roomy to tight: what is larger is drawn at the next smaller scale (our default). */
export const ROOMY: readonly (readonly [number, number])[] = [
  [112, 100],
  [76, 64],
];
const SCALES = [1, 2, 5, 10];
/** The largest scale of ISO 5455 at which a window (nm) is no larger than `most` on paper. */
export function scaleOf(window: readonly [Span, Span], most: readonly [number, number]): number {
  const fits = (n: number): boolean =>
    window.every((s, k) => (s[1] - s[0]) / NM_PER_MM / n <= (most[k] as number) + 1e-9);
  return SCALES.find(fits) ?? (SCALES.at(-1) as number);
}
/** No larger than a detail at 1:2 holds. */
export const isSmall = (window: readonly [Span, Span]): boolean => scaleOf(window, ROOMY[1] as [number, number]) <= 2;
/** A scale as it is written: 2:1, 1:1, 1:5. */
export const ratio = (oneTo: number): string => (oneTo < 1 ? `${1 / oneTo}:1` : `1:${oneTo}`);
/** The next larger scale of a detail, up to twice as large as life (ISO 5455). */
export const larger = (oneTo: number): number | undefined => [0.5, ...SCALES][[0.5, ...SCALES].indexOf(oneTo) - 1];
