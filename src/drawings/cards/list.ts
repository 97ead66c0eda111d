import type { Faces } from '../../type/type.js';
import type { Callout } from '../../words/callout.js';
import { disc, line, MIDDLE, tickBox } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { blockDrop, setLines, setText, widthOf, wrap } from '../text.js';
import type { Line, Run } from '../text.js';
import type { Row } from './words.js';

/** Text of a cut starts this far in, after its disc; the box at the right takes this much. mm */
const INDENT = 7.4;
const TICK = 7;
export const LABEL = 13.4;
/** From the rule above a row to its first baseline, and from its last baseline to the rule below. */
const FIRST = 4.7;
const LAST = 1.9;

export interface Column {
  readonly x: number;
  readonly w: number;
  /** Set closer: lines and rows a little nearer one another. */
  readonly close?: boolean;
  /** Set closer still: fractions too, where the card would need a second sheet. */
  readonly tight?: boolean;
}
/** Pitch of lines set closer, to the usual one (our default). */
const CLOSE = 0.95;
/** Joins what is never parted: a figure and the word that says its way, and marks of mates. */
const kept = (text: string): string =>
  text
    .replace(/(\d) (wide|long|deep|across|beyond|off)\b/g, '$1\u00a0$2')
    .replace(/(#\d+) ([x×]) (\d)/g, '$1\u00a0$2\u00a0$3')
    .replace(/ (·) /g, '\u00a0$1 ')
    .replace(/\b(cuts?) (\d)/g, '$1\u00a0$2')
    .replace(/(\d) to (\d)/g, '$1\u00a0to\u00a0$2')
    .replace(/\b(For|into|Screws?) (?=#|$)/g, '$1\u00a0');
const runsOf = (c: Callout): Run[] =>
  c.runs.map((r): Run => ({ string: kept(r.text), face: r.bold ? 'semibold' : 'regular' }));
const linesOf = (faces: Faces, runs: readonly Run[], w: number): readonly Line[] => wrap(faces, runs, w, SIZE.text);
const extra = (lines: readonly Line[]): number => (lines[0]?.tall ? 0.7 : 0);

const broken = new WeakMap<Callout, Map<number, readonly Line[]>>();
/** A cut's words in lines; broken once for a width, for a card is measured before it is drawn. */
function cutLines(faces: Faces, c: Callout, w: number): readonly Line[] {
  const known = broken.get(c) ?? new Map<number, readonly Line[]>();
  broken.set(c, known);
  const lines = known.get(w) ?? linesOf(faces, runsOf(c), w - INDENT - TICK);
  known.set(w, lines);
  return lines;
}
const pitched = (lines: readonly Line[], col: Column): readonly Line[] =>
  lines.map((l, i) => {
    const stacked = l.tall && lines[i - 1]?.tall === true;
    // Two lines of fractions are never set closer: their digits would touch.
    return col.close && (!stacked || col.tight) ? { ...l, drop: l.drop * CLOSE } : l;
  });
/** Height of a cut's row, mm. */
export const cutHeight = (faces: Faces, c: Callout, col: Column): number => {
  const lines = pitched(cutLines(faces, c, col.w), col);
  return FIRST + extra(lines) + blockDrop(lines) + (col.close ? LAST - 0.6 : LAST) + (lines.at(-1)?.tall ? 0.5 : 0);
};
/** A cut: disc, words, box to tick (a trial has none), hairline above. `y`: top of the row. */
export function cutRow(faces: Faces, c: Callout, col: Column, y: number, first: boolean): Item[] {
  const lines = pitched(cutLines(faces, c, col.w), col);
  const base = y + FIRST + extra(lines);
  return [
    ...(first ? [] : line('N', col.x, y, col.x + col.w, y)),
    ...disc(faces, c.number, col.x + 2.5, base - MIDDLE * SIZE.text),
    ...setLines(faces, lines, { x: col.x + INDENT, y: base, size: SIZE.text }).items,
    ...(c.trial ? [] : tickBox(faces, col.x + col.w - 4, base - MIDDLE * SIZE.text - 2)),
  ];
}
interface Set {
  readonly indent: number;
  readonly lines: readonly Line[];
}
const setRows = new WeakMap<Row, Map<string, Set>>();
/** A row's words in lines; one that would just run over begins closer to its label. Broken once for a column. */
function rowSet(faces: Faces, row: Row, col: Column): Set {
  const known = setRows.get(row) ?? new Map<string, Set>();
  setRows.set(row, known);
  const key = `${col.w} ${col.close === true} ${col.tight === true}`;
  const set = known.get(key) ?? newRowSet(faces, row, col);
  known.set(key, set);
  return set;
}
function newRowSet(faces: Faces, row: Row, col: Column): Set {
  const runs = row.text.map((r) => ({ ...r, string: kept(r.string) }));
  const at = (indent: number): Set => ({
    indent,
    lines: pitched(linesOf(faces, runs, col.w - indent - (row.tick ? TICK : 0)), col),
  });
  const usual = at(LABEL);
  const near = widthOf(faces, row.label, SIZE.text, 'semibold') + 2.2;
  if (col.close !== true || usual.lines.length < 2 || near >= LABEL) return usual;
  const closer = at(near);
  return closer.lines.length < usual.lines.length ? closer : usual;
}
/** From the baseline before it to its last baseline. */
export const rowHeight = (faces: Faces, row: Row, col: Column): number => {
  const { lines } = rowSet(faces, row, col);
  return (col.close ? 4.5 : 4.7) + extra(lines) * 0.8 + blockDrop(lines);
};
/** A labelled row under the cuts; `y`: the baseline before it. */
export function labelRow(faces: Faces, row: Row, col: Column, y: number): Item[] {
  const { indent, lines } = rowSet(faces, row, col);
  const base = y + (col.close ? 4.5 : 4.7) + extra(lines) * 0.8;
  return [
    ...setText(faces, row.label, { x: col.x, y: base, size: SIZE.text, face: 'semibold' }).items,
    ...setLines(faces, lines, { x: col.x + indent, y: base, size: SIZE.text }).items,
    ...(row.tick ? tickBox(faces, col.x + col.w - 4, base - MIDDLE * SIZE.text - 2) : []),
  ];
}
/** Whether the cuts and rows of a card end above `bottom` in a column from `top`: what columnOf finds, without drawing it. */
export function fitsColumn(
  faces: Faces,
  callouts: readonly Callout[],
  rows: readonly Row[],
  col: Column,
  top: number,
  bottom: number,
): boolean {
  let y = top;
  for (const c of callouts) {
    const h = cutHeight(faces, c, col);
    if (y + h > bottom) return false;
    y += h;
  }
  let base = y + 0.2;
  for (const row of rows) {
    const h = rowHeight(faces, row, col);
    if (base + h + hanging(faces, row, col) > bottom) return false;
    base += h;
  }
  return true;
}
/** A fraction hangs below its line. */
const hanging = (faces: Faces, row: Row, col: Column): number => (rowSet(faces, row, col).lines.at(-1)?.tall ? 1.2 : 0);
/** The cuts and rows of a card in a column from `top`; what does not end above `bottom` is handed back. */
export function columnOf(
  faces: Faces,
  callouts: readonly Callout[],
  rows: readonly Row[],
  col: Column,
  top: number,
  bottom: number,
): { items: Item[]; y: number; callouts: readonly Callout[]; rows: readonly Row[] } {
  const items: Item[] = [];
  let y = top;
  let i = 0;
  for (; i < callouts.length; i += 1) {
    const c = callouts[i] as Callout;
    const h = cutHeight(faces, c, col);
    if (y + h > bottom) return { items, y, callouts: callouts.slice(i), rows };
    items.push(...cutRow(faces, c, col, y, i === 0));
    y += h;
  }
  if (callouts.length > 0) items.push(...line('W', col.x, y, col.x + col.w, y));
  let base = y + 0.2;
  for (let k = 0; k < rows.length; k += 1) {
    const row = rows[k] as Row;
    const h = rowHeight(faces, row, col);
    if (base + h + hanging(faces, row, col) > bottom) return { items, y: base, callouts: [], rows: rows.slice(k) };
    items.push(...labelRow(faces, row, col, base));
    base += h;
  }
  return { items, y: base, callouts: [], rows: [] };
}
