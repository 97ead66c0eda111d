import type { Table } from '../drawings/picture.js';

/** A cell that a spreadsheet would run as a formula (it begins with = + - @, a tab or a return) but is not a plain number. */
const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** A cell after RFC 4180: quoted where it holds a comma, a quote or a line end; an apostrophe stands before what a spreadsheet would run. */
export function csvCell(value: string): string {
  const safe = FORMULA.test(value) && !NUMBER.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
/** A table as CSV (RFC 4180: header row, CRLF after every row). No-break spaces become spaces, so that a search finds the words. */
export function writeCsv(table: Table): string {
  const rows = [table.columns.map((c) => c.label), ...table.rows];
  const width = table.columns.length;
  const cells = (row: readonly string[]): readonly string[] => Array.from({ length: width }, (_, i) => row[i] ?? '');
  const plain = (cell: string): string => csvCell(cell.replaceAll('\u00a0', ' '));
  return rows.map((row) => `${cells(row).map(plain).join(',')}\r\n`).join('');
}
