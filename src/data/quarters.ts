import { inches, type Length } from '../lengths/length.js';

/** What lumber sold by quarters of an inch gives when it is planed flat. */
export interface Quarter {
  readonly name: string;
  /** Thickest finished part, nm; with ordinary boards and, where it differs, with short flat ones only. */
  readonly gives: Length;
  readonly atMost: Length;
  readonly source: string;
}
const row = (name: string, gives: number, atMost: number, source = 'common practice'): Quarter => ({
  name,
  gives: inches(gives),
  atMost: inches(atMost),
  source,
});
export const QUARTERS: readonly Quarter[] = [
  row('4/4', 13 / 16, 7 / 8),
  row('5/4', 1, 1 + 1 / 16),
  row('6/4', 1 + 1 / 4, 1 + 5 / 16),
  row('8/4', 1 + 3 / 4, 1 + 3 / 4),
  row('10/4', 2, 2 + 1 / 4),
  row('12/4', 2 + 1 / 4, 2 + 3 / 4, 'our default'),
  row('16/4', 3 + 1 / 4, 3 + 1 / 2, 'our default'),
];
export const quarterByName = (name: string): Quarter | undefined => QUARTERS.find((q) => q.name === name);

/** Which quarter a finished thickness is bought in: at the least, from flat boards, and comfortably; both by name. */
export interface QuarterNeed {
  readonly least: string;
  readonly comfortable: string;
  readonly source: string;
}
interface NeedRow extends QuarterNeed {
  /** Thickest finished part of the row, nm. */
  readonly upTo: Length;
  /** Comfortable where the part is long or wide, when that differs. */
  readonly large?: string;
}
const need = (
  upTo: number,
  least: string,
  comfortable: string,
  large?: string,
  source = 'common practice',
): NeedRow => ({
  upTo: inches(upTo),
  least,
  comfortable,
  ...(large === undefined ? {} : { large }),
  source,
});
const NEEDS: readonly NeedRow[] = [
  need(1 / 2, '4/4', '4/4'),
  need(13 / 16, '4/4', '4/4', '5/4'),
  need(7 / 8, '4/4', '5/4'),
  need(1 + 1 / 16, '5/4', '5/4'),
  need(1 + 5 / 16, '6/4', '8/4'),
  need(1 + 1 / 2, '8/4', '8/4'),
  need(1 + 3 / 4, '8/4', '10/4'),
  need(2 + 1 / 4, '10/4', '12/4'),
  need(2 + 3 / 4, '12/4', '16/4', undefined, 'our default'),
  need(3 + 1 / 2, '16/4', '16/4', undefined, 'our default'),
];
/** A board longer than this, or wider, wants more to be flattened: 5 ft, common practice; 8 in, our default. */
const LARGE = [inches(60), inches(8)] as const;

/** The quarter for a part `thickness` thick whose board is `long` and `wide` (nm); undefined beyond 3 1/2 in: it is glued up. */
export function quarterFor(thickness: number, long: number, wide: number): QuarterNeed | undefined {
  const row = NEEDS.find((r) => thickness <= r.upTo);
  if (!row) return undefined;
  const large = long > LARGE[0] || wide > LARGE[1];
  return { least: row.least, comfortable: (large ? row.large : undefined) ?? row.comfortable, source: row.source };
}
