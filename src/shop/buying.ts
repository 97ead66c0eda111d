/**
 * How much lumber is bought for so many rough board feet. Grade yields are those of the hardwood grades (FAS 83 1/3 %, clear
 * faces before kerf, planing and matching); all other factors are our default, set so that ordinary work from FAS comes to
 * 1.22 to 1.5 times its rough blanks: one job known in full took 49 board feet, picked by hand, for 40.
 */
export interface Want {
  /** Board feet of the rough blanks. */
  readonly feet: number;
  /** Longest and widest single board that it is cut from, inches. */
  readonly long: number;
  readonly wide: number;
  readonly look: 'hidden' | 'shows' | 'one board';
  /** Sapwood is cut away: walnut that shows. */
  readonly heart?: boolean;
}
export interface Step {
  readonly what: 'grade' | 'size' | 'look' | 'heart' | 'trial' | 'board';
  /** By how much it multiplies (`times`), or what it adds in board feet (`plus`). */
  readonly times?: number;
  readonly plus?: number;
}
export interface Buying {
  readonly rough: number;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** From the rough blanks to what is likely, and what `high` adds to that. */
  readonly steps: readonly Step[];
  readonly more: readonly Step[];
}

/** FAS, clear faces of a board; and what cutting programs get from FAS boards picked one by one (a simulation of 4/4 poplar). */
export const FAS_YIELD = 5 / 6;
export const PICKED_YIELD = 0.85;
export const COMMON_YIELD = 2 / 3;
const SIZE = { short: 0.97, medium: 0.92, large: 0.82 } as const;
const LOOK = { hidden: 1, shows: 0.92, 'one board': 0.8 } as const;
const HEART = 0.88;
/** Trial stock as a share: least, usual, most. */
const TRIAL = [0.03, 0.04, 0.05] as const;

/** Short: under 24 in long and 4 in wide. Large: over 6 ft long or 8 in wide. */
export const sizeOf = (w: Pick<Want, 'long' | 'wide'>): keyof typeof SIZE =>
  w.long > 72 || w.wide > 8 ? 'large' : w.long < 24 && w.wide <= 4 ? 'short' : 'medium';

/** What to buy, board feet. `trial`: blanks for trials and spares, where they are more than their share. `board`: one board more. */
export function buying(wants: readonly Want[], trial: number, board: number): Buying {
  const total = (f: (w: Want) => number): number => wants.reduce((s, w) => s + w.feet / f(w), 0);
  const rough = total(() => 1);
  const sized = total((w) => SIZE[sizeOf(w)]);
  const looked = total((w) => SIZE[sizeOf(w)] * LOOK[w.look]);
  const all = total((w) => SIZE[sizeOf(w)] * LOOK[w.look] * (w.heart ? HEART : 1));
  const [least, usual, most] = TRIAL.map((share) => Math.max(trial, share * rough)) as [number, number, number];
  const likely = all / FAS_YIELD + usual;
  const times = (a: number, b: number): number => (b === 0 ? 1 : a / b);
  return {
    rough,
    low: sized / PICKED_YIELD + least,
    likely,
    high: likely + (most - usual) + board,
    steps: [
      { what: 'grade', times: 1 / FAS_YIELD },
      { what: 'size', times: times(sized, rough) },
      { what: 'look', times: times(looked, sized) },
      ...(all > looked ? [{ what: 'heart' as const, times: times(all, looked) }] : []),
      { what: 'trial', plus: usual },
    ],
    more: [...(most > usual ? [{ what: 'trial' as const, plus: most - usual }] : []), { what: 'board', plus: board }],
  };
}
