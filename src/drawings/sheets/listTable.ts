import type { Faces } from '../../type/type.js';
import { line, tickBox } from '../draw.js';
import type { Item, Table } from '../picture.js';
import { SIZE } from '../pens.js';
import type { FaceName } from '../text.js';
import { setLines, setText, widthOf, wrap } from '../text.js';
import type { Line } from '../text.js';
import { stackHeight } from '../../type/fraction.js';

/** A table whose long cells wrap, laid out once: widths, rows with their heights, pages. */
export interface ListLook {
  /** Columns drawn, in this order; others are data only. */
  readonly columns: readonly string[];
  readonly strong?: readonly string[];
  /** A box to tick before the first column's text. */
  readonly boxed?: boolean;
  readonly width: number;
  readonly least?: number;
}
interface Column {
  readonly index: number;
  readonly label: string;
  readonly align: 'left' | 'right';
  readonly face: FaceName;
  readonly width: number;
}
interface Row {
  readonly cells: readonly (readonly Line[])[];
  readonly height: number;
}
export interface LaidTable {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly boxed: boolean;
  readonly width: number;
}
const GUTTER = 3.4;
const BOX = 5.6;
const HEAD = 6.4;

/** Widths: natural where all fits, else the widest columns are narrowed until it does, but not below 18 mm. */
export function layTable(faces: Faces, table: Table, look: ListLook): LaidTable {
  const chosen = look.columns
    .flatMap((id) => {
      const index = table.columns.findIndex((c) => c.id === id);
      const column = table.columns[index];
      if (!column) return [];
      const face: FaceName = look.strong?.includes(id) === true ? 'semibold' : 'regular';
      const cells = table.rows.map((r) => widthOf(faces, r[index] ?? '', SIZE.text, face));
      const head = widthOf(faces, column.label, SIZE.text, 'semibold');
      return [
        {
          index,
          label: column.label,
          align: column.align,
          face,
          width: Math.max(head, ...cells) + 0.01,
          empty: cells.every((w) => w === 0),
        },
      ];
    })
    .filter((c) => !c.empty);
  const room = look.width - (look.boxed === true ? BOX : 0) - GUTTER * Math.max(0, chosen.length - 1);
  const widths = narrowed(
    chosen.map((c) => c.width),
    room,
  );
  const spare = Math.max(0, room - widths.reduce((a, b) => a + b, 0)) / Math.max(1, chosen.length - 1);
  const columns = chosen.map((c, i): Column => ({
    index: c.index,
    label: c.label,
    align: c.align,
    face: c.face,
    width: (widths[i] as number) + (i < chosen.length - 1 ? Math.min(spare, 12) : 0),
  }));
  const rows = table.rows.map((r): Row => {
    const cells = columns.map((c, i) => wrap(faces, r[c.index] ?? '', (widths[i] as number) + 1e-6, SIZE.text, c.face));
    const heights = cells.map(
      (lines) =>
        lines.reduce((h, l) => h + l.drop, 0) + (lines.some((l) => l.tall) ? stackHeight(SIZE.text) + 1.2 : 4.9),
    );
    return { cells, height: Math.max(look.least ?? (look.boxed === true ? 6.2 : 4.9), ...heights) };
  });
  return { columns, rows, boxed: look.boxed === true, width: look.width };
}
function narrowed(widths: readonly number[], room: number): number[] {
  const out = [...widths];
  for (let guard = 0; guard < 4000; guard++) {
    const total = out.reduce((a, b) => a + b, 0);
    if (total <= room) return out;
    const widest = out.reduce((m, w, i) => (w > (out[m] as number) ? i : m), 0);
    if ((out[widest] as number) <= 12) return out;
    out[widest] = Math.max(12, (out[widest] as number) - Math.min(1, total - room));
  }
  return out;
}

/** Rows of each page: [from, to) pairs; a page holds what fits into its height, the first may be shorter. */
export function pageRows(laid: LaidTable, first: number, next: number): [number, number][] {
  const out: [number, number][] = [];
  let from = 0;
  let left = first - HEAD;
  laid.rows.forEach((row, i) => {
    if (row.height > left && i > from) {
      out.push([from, i]);
      from = i;
      left = next - HEAD;
    }
    left -= row.height;
  });
  out.push([from, laid.rows.length]);
  return out;
}
export const tableHeight = (laid: LaidTable): number => HEAD + laid.rows.reduce((h, r) => h + r.height, 0);

/** Draws rows [from, to): rule W under the heading and below the last row, H between rows. */
export function drawList(
  faces: Faces,
  laid: LaidTable,
  x: number,
  y: number,
  from = 0,
  to = laid.rows.length,
): { items: Item[]; y: number } {
  const start = x + (laid.boxed ? BOX : 0);
  const xs = laid.columns.map((_, i) => start + laid.columns.slice(0, i).reduce((a, c) => a + c.width + GUTTER, 0));
  const anchorAt = (i: number): { x: number; anchor: 'start' | 'end' } => {
    const c = laid.columns[i] as Column;
    return c.align === 'right'
      ? { x: (xs[i] as number) + c.width, anchor: 'end' }
      : { x: xs[i] as number, anchor: 'start' };
  };
  const items: Item[] = laid.columns.flatMap(
    (c, i) => setText(faces, c.label, { ...anchorAt(i), y: y + 3.9, size: SIZE.text, face: 'semibold' }).items,
  );
  items.push(...line('W', x, y + HEAD, x + laid.width, y + HEAD));
  let top = y + HEAD;
  laid.rows.slice(from, to).forEach((row, r) => {
    if (r > 0) items.push(...line('H', x, top, x + laid.width, top));
    const tall = row.cells.some((lines) => lines[0]?.tall === true);
    const single = row.cells.every((c) => c.length <= 1);
    const base = top + 1.17 + (single ? row.height / 2 : tall ? (stackHeight(SIZE.text) + 1.2) / 2 : 2.43);
    if (laid.boxed) items.push(...tickBox(faces, x, base - 1.17 - 2));
    row.cells.forEach((lines, i) => {
      const c = laid.columns[i] as Column;
      if (lines.length > 0)
        items.push(...setLines(faces, lines, { ...anchorAt(i), y: base, size: SIZE.text, face: c.face }).items);
    });
    top += row.height;
  });
  items.push(...line('W', x, top, x + laid.width, top));
  return { items, y: top };
}
