import { INCH_MM, POUND_KG } from '../lengths/units.js';
/**
 * What one person lifts with two hands by the revised equation of NIOSH (Waters and others 1993; Applications Manual,
 * 94-110): RWL = LC HM VM DM AM FM CM, in kg and mm. Constants are those of its metric form but for the load constant, 51 lb.
 */
/** Load constant: 51 lb, about 23 kg. */
export const LOAD_CONSTANT = 51 * POUND_KG;
export const LIFTING_SOURCE = 'NIOSH lifting equation, revised 1991';

/** How a load is lifted, mm: hands ahead of the ankles, hands over the floor at the start, how far up or down it goes. */
export interface Lift {
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  /** Degrees that the body turns. */
  readonly turn?: number;
  /** Frequency and grip, 1 where seldom and good. */
  readonly often?: number;
  readonly grip?: number;
}
export interface Multipliers {
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  readonly turn: number;
  readonly often: number;
  readonly grip: number;
}
const between = (v: number, low: number, high: number): number => Math.min(high, Math.max(low, v));

/** HM = 10/H, VM = 1 - 0.0075 |V - 30|, DM = 0.82 + 1.8/D, AM = 1 - 0.0032 A; lengths in inches. Out of reach is 0. */
export function multipliers(lift: Lift): Multipliers {
  const [h, v, d] = [lift.reach / INCH_MM, lift.height / INCH_MM, Math.abs(lift.travel) / INCH_MM];
  const turn = lift.turn ?? 0;
  return {
    reach: h > 25 ? 0 : 10 / Math.max(10, h),
    height: v < 0 || v > 70 ? 0 : 1 - 0.0075 * Math.abs(v - 30),
    travel: d > 70 ? 0 : 0.82 + 1.8 / between(d, 10, 70),
    turn: turn > 135 ? 0 : 1 - 0.0032 * turn,
    often: lift.often ?? 1,
    grip: lift.grip ?? 1,
  };
}
/** Recommended weight limit, kg. */
export function recommendedWeight(lift: Lift): number {
  const m = multipliers(lift);
  return LOAD_CONSTANT * m.reach * m.height * m.travel * m.turn * m.often * m.grip;
}
/** How many people it takes when each bears at most `each` kg (the load constant, or what the shop says). */
export const peopleFor = (kg: number, each = LOAD_CONSTANT): number => Math.max(1, Math.ceil(kg / each - 1e-9));
