/** A length is a whole number of nanometres in a branded double: 1/64 in = 396 875 nm, 0.001 mm and 0.001 in are exact. */
declare const lengthBrand: unique symbol;
export type Length = number & { readonly [lengthBrand]: true };

/** The two ways in which a file gives bare numbers and a sheet prints figures. */
export type Units = 'in' | 'mm';

export const NM_PER_IN = 25_400_000;
export const NM_PER_MM = 1_000_000;

/** Rounds to a whole number of nanometres; never gives -0. Throws RangeError when the value is not finite. */
export function nm(value: number): Length {
  if (!Number.isFinite(value)) throw new RangeError(`not a length: ${value}`);
  return (Math.round(value) + 0) as Length;
}
/** Inches to a length. */
export const inches = (value: number): Length => nm(value * NM_PER_IN);
/** Millimetres to a length. */
export const mm = (value: number): Length => nm(value * NM_PER_MM);
/** A length (or any number of nanometres) in millimetres. */
export const toMm = (value: number): number => value / NM_PER_MM;
/** A length (or any number of nanometres) in inches. */
export const toIn = (value: number): number => value / NM_PER_IN;
/** Rounds to the nearest whole multiple of `step` (both nm). */
export const snap = (value: number, step: number): Length => nm(Math.round(value / step) * step);
/** Rounds down to a whole multiple of `step` (both nm). */
export const snapDown = (value: number, step: number): Length => nm(Math.floor(value / step + 1e-9) * step);
/** Rounds up to a whole multiple of `step` (both nm). */
export const snapUp = (value: number, step: number): Length => nm(Math.ceil(value / step - 1e-9) * step);
