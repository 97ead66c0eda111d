import { formatLength } from '../lengths/format.js';
import { nm, type Units } from '../lengths/length.js';
import { FOOT_M, POUND_FORCE_N, POUND_KG, PSI_PA } from '../lengths/units.js';

/**
 * A physical quantity in its own unit, printed in the units of the piece. `length` is a size that is cut (nm, a fraction),
 * `fine` one that is looked at (nm, to .001 in or 0.01 mm), `mass` kg, `force` N, `moment` N m, `area load` Pa, `stress` Pa,
 * `volume` m3, `angle` degrees, `moisture` and `share` %, `ratio` and `count` bare, `coefficient` bare (a share of a size per
 * 1 % of moisture), `span over sag` the n of L/n.
 */
export interface Quantity {
  readonly of:
    | 'length'
    | 'fine'
    | 'mass'
    | 'force'
    | 'moment'
    | 'area load'
    | 'stress'
    | 'volume'
    | 'angle'
    | 'moisture'
    | 'share'
    | 'ratio'
    | 'coefficient'
    | 'count'
    | 'span over sag';
  readonly value: number;
}
export const quantity = (of: Quantity['of'], value: number): Quantity => ({ of, value: value + 0 });

const fixed = (value: number, places: number): string => {
  const text = value.toFixed(places);
  return Number(text) === 0 ? text.replace('-', '') : text;
};
/** About three figures, no exponent. */
const about = (value: number): string => {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : 2);
};
const fine = (value: number, units: Units): string => {
  const step = units === 'in' ? 25_400 : 10_000;
  return formatLength(nm(Math.round(value / step) * step), units);
};

/** A modulus of elasticity is said in millions of psi or in GPa. */
function stress(pascals: number, inch: boolean): string {
  const psi = pascals / PSI_PA;
  if (inch) return Math.abs(psi) >= 1e5 ? `${about(psi / 1e6)} million psi` : `${about(psi)} psi`;
  return Math.abs(pascals) >= 1e9 ? `${about(pascals / 1e9)} GPa` : `${about(pascals / 1e6)} MPa`;
}

/** A quantity as it is printed: `1/4`, `0.138`, `12.8 lb`, `40 lb/ft²`, `L/379`. */
export function sayQuantity({ of, value }: Quantity, units: Units): string {
  const inch = units === 'in';
  switch (of) {
    case 'length':
      return formatLength(nm(Math.round(value)), units);
    case 'fine':
      return fine(value, units);
    case 'mass':
      return inch ? `${about(value / POUND_KG)} lb` : `${about(value)} kg`;
    case 'force':
      return inch ? `${about(value / POUND_FORCE_N)} lbf` : `${about(value)} N`;
    case 'moment':
      return inch ? `${about(value / POUND_FORCE_N / FOOT_M)} ft-lb` : `${about(value)} N·m`;
    case 'area load':
      return inch ? `${about((value / POUND_FORCE_N) * FOOT_M * FOOT_M)} lb/ft²` : `${about(value / 1000)} kN/m²`;
    case 'stress':
      return stress(value, inch);
    case 'volume':
      return inch ? `${about(value / FOOT_M ** 3)} ft³` : `${about(value * 1000)} l`;
    case 'angle':
      return `${fixed(value, 1)}°`;
    case 'moisture':
    case 'share':
      return `${fixed(value, 1)} %`;
    case 'count':
      return fixed(value, 0);
    case 'span over sag':
      return `L/${fixed(value, 0)}`;
    case 'ratio':
      return fixed(value, 2);
    case 'coefficient':
      return fixed(value, 5);
  }
}
