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
