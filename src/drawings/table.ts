/**
 * The one way in which sheets set tables: columns, wrapped cells, rows over columns and pages. A table is laid out once
 * (`layTable`), asked how high its rows are (`heightOf`), and drawn row by row (`drawTable`). Sheets of lists are composed
 * of laid tables by sheets/listSheet.ts.
 */
import { stackHeight } from '../type/fraction.js';
import type { Faces } from '../type/type.js';
import { line, tickBox } from './draw.js';
import { SIZE } from './pens.js';
import type { Item, Table } from './picture.js';
import type { FaceName, Line, Text } from './text.js';
import { blockDrop, setLines, setText, widthOf, wrap } from './text.js';

export interface TableLook {
  /** Columns drawn, by id, in this order; the others are data only. All where it is missing. A column without words is left out. */
  readonly columns?: readonly string[];
  /** Columns set in SemiBold, by id. */
  readonly strong?: readonly string[];
  /** A box to tick before every row. */
  readonly boxed?: boolean;
  /** What stands before each row in place of a box, at most 4 square round the middle (x, y). */
  readonly marks?: readonly ((x: number, y: number) => Item[])[];
  /** What is said under a row, over its whole width. */
  readonly under?: readonly (Text | undefined)[];
  /** Widths of columns by id, mm, where tables that stand under one another are to agree; one that is left out takes the rest. */
  readonly widths?: Readonly<Record<string, number>>;
  /** Of the whole table, mm. */
  readonly width: number;
  /** Least height of a row, mm: 5.6 with boxes, else 4.9. */
  readonly least?: number;
}
interface Column {
  readonly index: number;
  readonly label: string;
  readonly align: 'left' | 'right';
  readonly face: FaceName;
  /** With its share of what is left over, mm. */
  readonly width: number;
}
interface Row {
  readonly cells: readonly (readonly Line[])[];
  /** Of its cells; of all. */
  readonly own: number;
  readonly height: number;
  readonly under: readonly Line[];
  /** A row that is drawn: it has no cells. */
  readonly drawn?: Strip['draw'];
}
export interface LaidTable {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly lead: 'box' | 'none' | NonNullable<TableLook['marks']>;
  readonly width: number;
  /** Height of the labels of its columns with their rule. */
  readonly head: number;
}
/** A drawing that stands among tables, never torn apart; (x, y): its upper left corner. */
export interface Strip {
  readonly height: number;
  draw(x: number, y: number): readonly Item[];
}
/** Rows of a table, [from, to). */
export type RowSpan = readonly [from: number, to: number];

const GUTTER = 3.4;
const BOX = 5.6;
const HEAD = 6.4;
/** From the foot of a row's cells to the first baseline of what is said under it, and from the last to the row's foot. */
const UNDER = [2.9, 2] as const;
/** No column is made narrower than this for its words, nor than its longest word: our default. */
const NARROW = 9;
/** At most so much of what is left over goes to each gutter, so that a short row can still be followed across. */
const SPREAD = 12;

/** Lays a table out to its width: the columns are as narrow as makes all rows together lowest. */
export function layTable(faces: Faces, table: Table, look: TableLook): LaidTable {
  const lead = look.marks ?? (look.boxed === true ? 'box' : 'none');
  const start = lead === 'none' ? 0 : BOX;
  const ids = look.columns ?? table.columns.map((c) => c.id);
  const chosen = ids.flatMap((id) => {
    const index = table.columns.findIndex((c) => c.id === id);
    const column = table.columns[index];
    if (!column || (!look.widths && table.rows.every((r) => (r[index] ?? '') === ''))) return [];
    const face: FaceName = look.strong?.includes(id) === true ? 'semibold' : 'regular';
    return [{ ...column, index, face, cells: table.rows.map((r) => r[index] ?? '') }];
  });
  const room = look.width - start - GUTTER * Math.max(0, chosen.length - 1);
  const fits = chosen.map((c) => fitting(faces, c.cells, c.label, c.face));
  const widths = look.widths
    ? given(
        chosen.map((c) => look.widths?.[c.id]),
        room,
      )
    : sharedOut(fits, room);
  const spare = Math.max(0, room - widths.reduce((a, b) => a + b, 0)) / Math.max(1, chosen.length - 1);
  const least = look.least ?? (lead === 'none' ? 4.9 : 5.6);
  return {
    columns: chosen.map(({ index, label, align, face }, i) => ({
      index,
      label,
      align,
      face,
      width: (widths[i] as number) + (i < chosen.length - 1 ? Math.min(spare, SPREAD) : 0),
    })),
    rows: table.rows.map((_, r): Row => {
      const cells = fits.map((f, i) => f.at(widths[i] as number)[r] as readonly Line[]);
      const own = Math.max(least, ...cells.map(heightOfCell));
      const said = look.under?.[r];
      const under = said === undefined ? [] : wrap(faces, said, look.width - start, SIZE.text);
      const below = under.length === 0 ? 0 : UNDER[0] + blockDrop(under) + UNDER[1];
      return { cells, own, height: own + below, under };
    }),
    lead,
    width: look.width,
    // Columns without labels have no head: the block's heading stands over them.
    head: chosen.every((c) => c.label === '') ? 0 : HEAD,
  };
}
/** Drawings one under the other as a table lays its rows, so that they flow over columns and pages as rows do. */
export const laidStrips = (strips: readonly Strip[], width: number): LaidTable => ({
  columns: [],
  rows: strips.map((s) => ({ cells: [], own: s.height, height: s.height, under: [], drawn: s.draw })),
  lead: 'none',
  width,
  head: 0,
});
/** Widths as they are given; what is left goes to those that are not, in equal shares. */
function given(widths: readonly (number | undefined)[], room: number): number[] {
  const free = widths.filter((w) => w === undefined).length;
  const left = room - widths.reduce<number>((sum, w) => sum + (w ?? 0), 0);
  return widths.map((w) => w ?? left / free);
}
const heightOfCell = (lines: readonly Line[]): number =>
  lines.reduce((h, l) => h + l.drop, 0) +
  (lines.some((l) => l.tall) ? stackHeight(SIZE.text) + 1.2 : 4.9) +
  (lines.length > 1 ? 0.9 : 0);

/** A column at any width: its natural and its least width, and its cells wrapped to a width. */
interface Fitting {
  readonly natural: number;
  readonly least: number;
  at(width: number): readonly (readonly Line[])[];
}
function fitting(faces: Faces, cells: readonly string[], label: string, face: FaceName): Fitting {
  const width = (text: string): number => widthOf(faces, text, SIZE.text, face);
  const head = widthOf(faces, label, SIZE.text, 'semibold');
  const words = cells.flatMap((c) => c.split(' '));
  const memo = new Map<number, readonly (readonly Line[])[]>();
  return {
    natural: Math.max(head, ...cells.map(width)) + 0.01,
    least: Math.max(head, NARROW, ...words.map(width)) + 0.01,
    at: (w) => {
      const known = memo.get(w) ?? cells.map((c) => wrap(faces, c, w + 1e-6, SIZE.text, face));
      memo.set(w, known);
      return known;
    },
  };
}
/** Step by which a column gives way, mm. */
const STEP = 2;
/** Natural widths where all fit; else the column gives way whose giving way makes all rows together lowest, the widest first. */
function sharedOut(columns: readonly Fitting[], room: number): number[] {
  const widths = columns.map((c) => Math.min(c.natural, room));
  const heights = (i: number, w: number): number[] => (columns[i] as Fitting).at(w).map(heightOfCell);
  const now = widths.map((w, i) => heights(i, w));
  const sum = (i: number, mine: readonly number[]): number =>
    mine.reduce((total, h, r) => total + Math.max(h, ...now.map((n, k) => (k === i ? 0 : (n[r] as number)))), 0);
  for (let over = total(widths) - room; over > 1e-9; over = total(widths) - room) {
    const tries = widths.flatMap((w, i) => {
      const next = Math.max((columns[i] as Fitting).least, w - Math.min(STEP, over));
      return next < w - 1e-9 ? [{ i, next, height: sum(i, heights(i, next)) }] : [];
    });
    const best = tries.sort((a, b) => a.height - b.height || (widths[b.i] as number) - (widths[a.i] as number))[0];
    if (!best) return widths;
    widths[best.i] = best.next;
    now[best.i] = heights(best.i, best.next);
  }
  return widths;
}
const total = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Height of the heading and of the rows [from, to), mm. */
export const heightOf = (laid: LaidTable, [from, to]: RowSpan = [0, laid.rows.length]): number =>
  laid.head + laid.rows.slice(from, to).reduce((h, r) => h + r.height, 0);

/** How many rows from `from` on fit into `room` mm under a heading; never none, so that every table comes to an end. */
export function rowsIn(laid: LaidTable, from: number, room: number): number {
  let left = room - laid.head;
  let to = from;
  while (to < laid.rows.length && (laid.rows[to]?.height ?? 0) <= left + 1e-9) left -= laid.rows[to++]?.height ?? 0;
  return Math.max(to, from + 1);
}

/** Draws rows [from, to): rule W under the heading and below the last row, H between rows. `y`: top of the heading, then below the last rule. */
export function drawTable(
  faces: Faces,
  laid: LaidTable,
  x: number,
  y: number,
  [from, to]: RowSpan = [0, laid.rows.length],
): { items: Item[]; y: number } {
  const start = x + (laid.lead === 'none' ? 0 : BOX);
  const xs = laid.columns.map((_, i) => start + laid.columns.slice(0, i).reduce((a, c) => a + c.width + GUTTER, 0));
  const anchors = laid.columns.map((c, i): Anchor =>
    c.align === 'right' ? { x: (xs[i] as number) + c.width, anchor: 'end' } : { x: xs[i] as number, anchor: 'start' },
  );
  const rule = (pen: 'W' | 'H', at: number): Item[] =>
    laid.columns.length > 0 ? line(pen, x, at, x + laid.width, at) : [];
  const items: Item[] = laid.columns.flatMap(
    (c, i) =>
      setText(faces, c.label, { ...(anchors[i] as Anchor), y: y + 3.9, size: SIZE.text, face: 'semibold' }).items,
  );
  if (laid.head > 0) items.push(...rule('W', y + laid.head));
  let top = y + laid.head;
  laid.rows.slice(from, to).forEach((row, r) => {
    if (r > 0) items.push(...rule('H', top));
    items.push(...(row.drawn ? row.drawn(x, top) : drawRow(faces, laid, from + r, anchors, x, top)));
    top += row.height;
  });
  items.push(...rule('W', top));
  return { items, y: top };
}
interface Anchor {
  readonly x: number;
  readonly anchor: 'start' | 'end';
}
/** One row: what stands before it, its cells, what is said under it. */
function drawRow(
  faces: Faces,
  laid: LaidTable,
  index: number,
  anchors: readonly Anchor[],
  x: number,
  top: number,
): Item[] {
  const row = laid.rows[index] as Row;
  const tall = row.cells.some((lines) => lines[0]?.tall === true);
  const single = row.cells.every((c) => c.length <= 1);
  const base = top + 1.17 + (single ? row.own / 2 : tall ? (stackHeight(SIZE.text) + 1.2) / 2 : 2.43);
  const middle = base - 1.17;
  const lead = laid.lead === 'box' ? tickBox(faces, x, middle - 2) : laid.lead === 'none' ? [] : laid.lead[index]?.(x + 2, middle); // prettier-ignore
  const cells = row.cells.flatMap((lines, i) => {
    const { face } = laid.columns[i] as Column;
    return setLines(faces, lines, { ...(anchors[i] as Anchor), y: base, size: SIZE.text, face }).items;
  });
  const under = setLines(faces, row.under, {
    x: x + (laid.lead === 'none' ? 0 : BOX),
    y: top + row.own + UNDER[0],
    size: SIZE.text,
  });
  return [...(lead ?? []), ...cells, ...under.items];
}
