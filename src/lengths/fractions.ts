import { NM_PER_IN } from './length.js';

/** 1/64 in, the finest division of a maker's rule (common practice). Whole nanometres. */
export const SIXTY_FOURTH = NM_PER_IN / 64;

/** Greatest common divisor of two whole numbers. Euclid, Elements VII.2. */
export function gcd(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** A mixed number: sign, whole part and a proper fraction in lowest terms (0/1 when there is none). */
export interface Mixed {
  readonly negative: boolean;
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
}

/** `count` parts of `1/per` as a mixed number in lowest terms; both whole, `per` > 0. */
export function mixed(count: number, per: number): Mixed {
  const size = Math.abs(count);
  const rest = size % per;
  const common = gcd(rest, per);
  return {
    negative: count < 0,
    whole: Math.floor(size / per),
    numerator: rest / common,
    denominator: per / common,
  };
}

/** `33 1/2`, `7/32`, `-3/4`, `0`: one space, a solidus, the minus in front of the whole. */
export function mixedText(m: Mixed): string {
  const sign = m.negative && (m.whole > 0 || m.numerator > 0) ? '-' : '';
  if (m.numerator === 0) return `${sign}${m.whole}`;
  const fraction = `${m.numerator}/${m.denominator}`;
  return m.whole === 0 ? `${sign}${fraction}` : `${sign}${m.whole} ${fraction}`;
}
