import { need } from '../data/printed.js';
import { CREEP_EN, CREEP_NDS } from '../data/tables/creep.js';

/**
 * Beams of wood. SI units throughout: m, N, Pa, N m2. Wood Handbook, FPL-GTR-282, equation 9-2 and table 9-1; beams of
 * changing section by the work of a unit load, exact for loads that are even or stand at points.
 */

/** Bending and shear factors of table 9-1: `kb W L3 / (E I) + ks W L / (G A')`, W the whole load. */
export const FACTORS = {
  'even, simple': { bending: 5 / 384, shear: 1 / 8 },
  'even, clamped': { bending: 1 / 384, shear: 1 / 8 },
  'middle, simple': { bending: 1 / 48, shear: 1 / 4 },
  'middle, clamped': { bending: 1 / 192, shear: 1 / 4 },
  'quarter points, simple': { bending: 11 / 768, shear: 1 / 8 },
  'even, one end': { bending: 1 / 8, shear: 1 / 2 },
  'tip, one end': { bending: 1 / 3, shear: 1 },
} as const;
export type LoadCase = keyof typeof FACTORS;

/** Second moment of a rectangle, m4. */
export const secondMoment = (breadth: number, height: number): number => (breadth * height ** 3) / 12;

/**
 * Sag by equation 9-2. Without `shear` the modulus is that of the tables (apparent: they have shear in them). With it the
 * modulus is raised by a tenth first, G is E/16 of it and the area that shears 5/6 of the section: never both.
 */
export function tableSag(
  load: LoadCase,
  newtons: number,
  span: number,
  modulus: number,
  section: { readonly breadth: number; readonly height: number },
  shear = false,
): number {
  const { bending, shear: ks } = FACTORS[load];
  const e = shear ? 1.1 * modulus : modulus;
  const bent = (bending * newtons * span ** 3) / (e * secondMoment(section.breadth, section.height));
  const area = (5 / 6) * section.breadth * section.height;
  return shear ? bent + (ks * newtons * span) / ((e / 16) * area) : bent;
}

/** Longest span (m) of a shelf under an even load (Pa) that sags no more than 1/n of it: `L = cbrt(384 E t3 / (60 w n))`. */
export const longestShelf = (modulus: number, thickness: number, pascals: number, n: number): number =>
  Math.cbrt((384 * modulus * thickness ** 3) / (60 * pascals * n));

/** A rectangle of a section, low to high over any level; a negative breadth takes away. */
export interface Strip {
  readonly modulus: number;
  readonly breadth: number;
  readonly low: number;
  readonly high: number;
}
/** Stiffness E I of strips that bend as one, about their common neutral line, N m2. */
export function sectionStiffness(strips: readonly Strip[]): number {
  const ea = (s: Strip): number => s.modulus * s.breadth * (s.high - s.low);
  const middle = (s: Strip): number => (s.high + s.low) / 2;
  const whole = strips.reduce((t, s) => t + ea(s), 0);
  if (whole === 0) return 0;
  const neutral = strips.reduce((t, s) => t + ea(s) * middle(s), 0) / whole;
  return strips.reduce(
    (t, s) => t + s.modulus * secondMoment(s.breadth, s.high - s.low) + ea(s) * (middle(s) - neutral) ** 2,
    0,
  );
}

/** A beam of `length`, with its stiffness and loads by stretches. Points are stretches of no length. */
export interface Bar {
  readonly length: number;
  readonly stiffness: readonly { readonly from: number; readonly to: number; readonly ei: number }[];
  readonly loads: readonly { readonly from: number; readonly to: number; readonly newtons: number }[];
}

const ramp = (v: number): number => Math.max(0, v);
/** First moment about `s` of the load's part before it. */
function before(load: Bar['loads'][number], s: number): number {
  const { from, to, newtons } = load;
  if (to <= from) return newtons * ramp(s - from);
  const w = newtons / (to - from);
  return (w * (ramp(s - from) ** 2 - ramp(s - to) ** 2)) / 2;
}
const centre = (l: Bar['loads'][number]): number => (l.from + l.to) / 2;

/** Integral of M m / (E I) over the bar, exact: between two breaks both are polynomials, their product at most cubic. */
function work(bar: Bar, m: (s: number) => number, unit: (s: number) => number, extra: readonly number[]): number {
  const inside = (x: number): boolean => x > 0 && x < bar.length;
  const ends = [...bar.stiffness, ...bar.loads].flatMap((p) => [p.from, p.to]);
  const breaks = [...new Set([0, bar.length, ...[...ends, ...extra].filter(inside)])].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i + 1 < breaks.length; i++) {
    const [a, b] = [breaks[i] as number, breaks[i + 1] as number];
    const mid = (a + b) / 2;
    const ei = bar.stiffness.find((p) => p.from <= mid && mid <= p.to)?.ei;
    if (ei === undefined || !(ei > 0)) return Infinity;
    const at = (s: number): number => m(s) * unit(s);
    sum += ((b - a) / 6 / ei) * (at(a) + 4 * at(mid) + at(b));
  }
  return sum;
}

/** Sag (m, down) at `x` of a bar that rests at both ends. */
export function restingSag(bar: Bar, x = bar.length / 2): number {
  const { length, loads } = bar;
  const left = loads.reduce((t, l) => t + (l.newtons * (length - centre(l))) / length, 0);
  const m = (s: number): number => left * s - loads.reduce((t, l) => t + before(l, s), 0);
  const unit = (s: number): number => ((length - x) / length) * s - ramp(s - x);
  return work(bar, m, unit, [x]);
}
/** Sag (m) at the free end of a bar held fast at 0. */
export function tipSag(bar: Bar): number {
  const { length, loads } = bar;
  const all = (s: number): number => loads.reduce((t, l) => t + l.newtons * (centre(l) - s) + before(l, s), 0);
  return work(bar, all, (s) => length - s, []);
}

/**
 * How a plate that is borne all round shares an even load between its two ways: the shares of equal sag, of strips that rest
 * at both ends. Strips have no twist: near plate theory for plywood, whose stiffness in shear is low; on the safe side for
 * boards alike both ways, by up to six tenths.
 */
export function shares(a: { modulus: number; span: number }, b: { modulus: number; span: number }): [number, number] {
  const [ka, kb] = [a.modulus / a.span ** 4, b.modulus / b.span ** 4];
  return [ka / (ka + kb), kb / (ka + kb)];
}

/** By how much a lasting load sags in years, over its first sag. */
export const CREEP = {
  solid: need(CREEP_NDS, 'lumber', 'factor').value,
  plywood: need(CREEP_NDS, 'plywood', 'factor').value,
  board: need(CREEP_EN, 'mdf', 'factor').value,
} as const;
export const CREEP_SOURCE = {
  solid: 'NDS 3.5.2, seasoned wood kept dry: 1.5',
  plywood: 'NDS 3.5.2, wood structural panels: 2.0, from memory',
  board: 'Eurocode 5, service class 1, particleboard and MDF: 1 + 2.25',
} as const;
