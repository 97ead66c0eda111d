import { ranges } from '../../words/markOrder.js';
import { fieldOf, headline, blockHeading } from '../frame.js';
import { sheetOf } from '../input.js';
import type { Prepared, SheetKind } from '../input.js';
import { printed } from '../input.js';
import type { Item, Table } from '../picture.js';
import { SIZE } from '../pens.js';
import { label, tickBox } from '../draw.js';
import { setBlock } from '../text.js';
import { drawList, layTable, pageRows } from './listTable.js';
import type { LaidTable, ListLook } from './listTable.js';

/** From the frame's top to a table under a headline. */
const TOP = 19;
interface ListSheet {
  readonly id: string;
  readonly title: string;
  readonly heading: string;
  table(input: Prepared): Table;
  remark(input: Prepared, table: Table): string;
  look(input: Prepared): Omit<ListLook, 'width'>;
}
/** A kind of sheet that is one table over as many pages as it needs. */
function listSheet(list: ListSheet): SheetKind {
  const laid = (input: Prepared): { table: Table; laid: LaidTable; pages: [number, number][]; top: number } => {
    const { left, right, bottom, top } = fieldOf(input.paper);
    const table = list.table(input);
    const l = layTable(input.faces, table, { ...list.look(input), width: right - left });
    const room = bottom - 4 - (top - 7 + TOP);
    return { table, laid: l, pages: pageRows(l, room, room), top: top - 7 + TOP };
  };
  return {
    id: list.id,
    title: list.title,
    plan: (input) => (list.table(input).rows.length === 0 ? 0 : laid(input).pages.length),
    draw(input, page, place) {
      const { table, laid: l, pages, top } = laid(input);
      const [from, to] = pages[page] ?? [0, 0];
      const many = pages.length > 1 ? `, ${page + 1} of ${pages.length}` : '';
      return sheetOf(input, place, {
        id: pages.length > 1 ? `${list.id}-${page + 1}` : list.id,
        title: `${list.title}${many}`,
        folder: 'lists',
        alt: `${list.heading}: rows ${from + 1} to ${to} of ${table.rows.length}`,
        items: [
          ...headline(input.faces, list.heading, list.remark(input, table), input.paper),
          ...drawList(input.faces, l, fieldOf(input.paper).left, top, from, to).items,
        ],
        tables: page === 0 ? [table] : [],
      });
    },
  };
}

/** Every part with its finished size, length between shoulders, stock, grain and status. */
export const cutList = listSheet({
  id: 'cut-list',
  title: 'Cut list',
  heading: 'Cut list',
  table: (input) => input.lists.cutList,
  remark: (input, table) => `${input.piece.parts.length} parts in ${table.rows.length} rows, sizes over all`,
  look: () => ({
    columns: ['mark', 'name', 'quantity', 'thickness', 'width', 'length', 'shoulder', 'stock', 'grain', 'status'],
    strong: ['mark', 'thickness', 'width', 'length'],
    boxed: true,
  }),
});
/** Each joint once, with its sizes, the way in and what holds it. */
export const joints = listSheet({
  id: 'joints',
  title: 'Joints',
  heading: 'Joints',
  table: (input) => input.lists.joints,
  remark: (input) => `${input.piece.joints.length} places`,
  look: () => ({
    columns: ['kind', 'count', 'parts', 'into', 'sizes', 'way', 'holds', 'glue'],
    strong: ['parts', 'into'],
  }),
});
/** What is bought, with where it goes. */
export const hardware = listSheet({
  id: 'hardware',
  title: 'Hardware',
  heading: 'Have the hardware in hand before you cut',
  table: (input) => input.lists.hardware,
  remark: (_, table) => (table.rows.length === 1 ? '1 kind' : `${table.rows.length} kinds`),
  look: () => ({ columns: ['name', 'count', 'where'], strong: ['count'], boxed: true, least: 7.6 }),
});

/** Parts that are cut at one stop, and what is tested for square with a tape: two blocks side by side. */
export const lengths: SheetKind = {
  id: 'lengths',
  title: 'Equal lengths, diagonals',
  plan: (input) => columnsOf(input).length,
  draw(input, page, place) {
    const all = columnsOf(input);
    return sheetOf(input, place, {
      id: all.length > 1 ? `lengths-${page + 1}` : 'lengths',
      title: 'Equal lengths and diagonals',
      folder: 'lists',
      alt: 'Parts of equal length and diagonals to test for square',
      items: [
        ...headline(input.faces, 'Cut equal lengths at one stop', 'set the stop once', input.paper),
        ...(all[page] ?? []),
      ],
      tables: page === 0 ? [equalTable(input), diagonalTable(input)] : [],
    });
  },
};
const equalTable = (input: Prepared): Table => ({
  id: 'equal-lengths',
  columns: [
    { id: 'length', label: 'Length', align: 'right' },
    { id: 'kind', label: 'Measured', align: 'left' },
    { id: 'count', label: 'No.', align: 'right' },
    { id: 'parts', label: 'Parts', align: 'left' },
  ],
  rows: input.lists.equal.map((e) => [
    printed(input, e.length),
    e.kind,
    String(e.marks.length),
    ranges(e.marks).join(' '),
  ]),
});
const diagonalTable = (input: Prepared): Table => ({
  id: 'diagonals',
  columns: [
    { id: 'what', label: 'Square', align: 'left' },
    { id: 'size', label: 'Wide × high or deep', align: 'left' },
    { id: 'diagonal', label: 'Diagonal', align: 'right' },
  ],
  rows: input.lists.diagonals.map((d) => [
    d.what,
    `${printed(input, d.wide)} × ${printed(input, d.high)}`,
    printed(input, d.diagonal),
  ]),
});
/** Both tables as columns of pages: equal lengths left, diagonals right. */
function columnsOf(input: Prepared): Item[][] {
  const { left, right, bottom, top } = fieldOf(input.paper);
  const width = (right - left - 12) / 2;
  const y = top - 7 + 24;
  const room = bottom - y - 12;
  const equal = layTable(input.faces, equalTable(input), {
    columns: ['length', 'kind', 'count', 'parts'],
    strong: ['length'],
    boxed: true,
    width,
  });
  const square = layTable(input.faces, diagonalTable(input), {
    columns: ['what', 'size', 'diagonal'],
    strong: ['diagonal'],
    boxed: true,
    width,
  });
  if (equal.rows.length + square.rows.length === 0) return [];
  const [a, b] = [pageRows(equal, room, room), pageRows(square, room, room)];
  return Array.from({ length: Math.max(a.length, b.length) }, (_, i) => {
    const items: Item[] = [];
    const [p, q] = [a[i], b[i]];
    if (p && equal.rows.length > 0) {
      items.push(...blockHeading(input.faces, 'Equal lengths', left, y, width, undefined, 'W'));
      items.push(...drawList(input.faces, equal, left, y + 2.3, ...p).items);
    }
    if (q && square.rows.length > 0) {
      const x = right - width;
      items.push(...blockHeading(input.faces, 'Square when both diagonals agree', x, y, width, undefined, 'W'));
      const drawn = drawList(input.faces, square, x, y + 2.3, ...q);
      items.push(...drawn.items);
      const note = 'Measure both ways; the figure is a check, equality is the proof.';
      items.push(...setBlock(input.faces, note, { x, y: drawn.y + 5.5, size: SIZE.text, width }).items);
    }
    return items;
  });
}
/** A row of boxes to tick with a word each; used on the cover too. */
export function tickRow(
  input: Prepared,
  words: readonly string[],
  x: number,
  y: number,
  width: number,
): { items: Item[]; y: number } {
  let at = x;
  let base = y;
  const items: Item[] = [];
  for (const word of words) {
    const set = setBlock(input.faces, word, { x: 0, y: 0, size: SIZE.text, width: width - 6 });
    if (at > x && at + 5.6 + set.width > x + width) {
      at = x;
      base += 6.2;
    }
    items.push(...tickBox(input.faces, at, base - 3.2), ...label(input.faces, word, at + 5.6, base));
    at += 5.6 + set.width + 6;
  }
  return { items, y: base };
}
