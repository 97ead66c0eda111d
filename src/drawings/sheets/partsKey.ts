import { plural } from '../../lengths/counted.js';
import type { Faces } from '../../type/type.js';
import { compareMarks, ranges } from '../../words/markOrder.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import { blockHeading } from '../frame.js';
import { label } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText, widthOf } from '../text.js';

export interface KeyRow {
  readonly marks: string;
  readonly name: string;
}
/** The case's parts by name, in the order of their marks, and the drawers in one row. */
export function keyRows(input: Prepared): KeyRow[] {
  const byName = new Map<string, string[]>();
  for (const { part } of input.model.case) byName.set(part.name, [...(byName.get(part.name) ?? []), part.mark]);
  const rows = [...byName]
    .map(([name, marks]) => ({ marks: ranges(marks), name: marks.length > 1 ? plural(name) : name }))
    .sort((a, b) => compareMarks(a.marks[0] ?? '', b.marks[0] ?? ''))
    .map((r) => ({ marks: r.marks.join(' '), name: r.name }));
  const drawers = input.piece.drawers.map((d) => d.mark);
  if (drawers.length > 0)
    rows.push({ marks: ranges(drawers).join(' '), name: drawers.length > 1 ? 'drawers' : 'drawer' });
  return rows;
}

const PITCH = 4.65;
const HEAD = 6.9;
/** Block `Parts` in two columns, filled down; returns the baseline below which the next block may start. */
export function partsKey(
  faces: Faces,
  rows: readonly KeyRow[],
  x: number,
  y: number,
  width: number,
): { items: Item[]; y: number } {
  const columns = rows.length > 3 ? 2 : 1;
  const deep = Math.ceil(rows.length / columns);
  const step = width / columns;
  const items = blockHeading(faces, 'Parts', x, y, width);
  for (let c = 0; c < columns; c++) {
    const some = rows.slice(c * deep, (c + 1) * deep);
    const indent = Math.max(8, ...some.map((r) => widthOf(faces, r.marks, SIZE.text, 'semibold') + 2.4));
    some.forEach((r, i) => {
      const at = y + HEAD + i * PITCH;
      items.push(...label(faces, r.marks, x + c * step, at, { face: 'semibold' }));
      items.push(...label(faces, r.name, x + c * step + indent, at));
    });
  }
  return { items, y: y + HEAD + (deep - 1) * PITCH };
}
export const partsKeyHeight = (rows: number): number => HEAD + (Math.ceil(rows / (rows > 3 ? 2 : 1)) - 1) * PITCH;

interface FrontRow {
  readonly marks: string;
  readonly size: string;
  readonly gap: string;
}
/** Drawer fronts: opening across × up and the gap at the top; the gap that most sides share is said once. */
export function frontRows(input: Prepared): { rows: FrontRow[]; common: string } {
  const counts = new Map<number, number>();
  for (const d of input.piece.drawers)
    for (const g of [d.gaps.left, d.gaps.right, d.gaps.bottom, d.gaps.top])
      counts.set(g.value, (counts.get(g.value) ?? 0) + 1);
  const common = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? 0;
  const grouped = new Map<string, { marks: string[]; row: FrontRow }>();
  for (const d of [...input.piece.drawers].sort((a, b) => compareMarks(a.mark, b.mark))) {
    const size = `${printed(input, d.opening.across.value)} × ${printed(input, d.opening.up.value)}`;
    const gap = printed(input, d.gaps.top.value);
    const key = `${size} ${gap}`;
    const known = grouped.get(key) ?? { marks: [], row: { marks: '', size, gap } };
    known.marks.push(d.mark);
    grouped.set(key, known);
  }
  return {
    rows: [...grouped.values()].map(({ marks, row }) => ({ ...row, marks: ranges(marks).join(' ') })),
    common: printed(input, common),
  };
}
const FRONT_PITCH = 6;
export const frontTableHeight = (rows: number): number => (rows === 0 ? 0 : 9 + Math.ceil(rows / 2) * FRONT_PITCH);
/** Block `Drawer fronts` in two columns; `y` is the baseline of its heading. */
export function frontTable(input: Prepared, x: number, y: number, width: number): { items: Item[]; y: number } {
  const { faces } = input;
  const { rows, common } = frontRows(input);
  const items = blockHeading(faces, 'Drawer fronts', x, y, width, [
    { string: 'opening, ' },
    { string: 'top reveal', face: 'semibold' },
    { string: `; else ${common}` },
  ]);
  const deep = Math.ceil(rows.length / 2);
  const step = width / 2 + 2;
  rows.forEach((r, i) => {
    const left = x + Math.floor(i / deep) * step;
    const at = y + 7.4 + (i % deep) * FRONT_PITCH;
    const indent = Math.max(10, widthOf(faces, r.marks, SIZE.text, 'semibold') + 2);
    items.push(...label(faces, r.marks, left, at, { face: 'semibold' }));
    items.push(...setText(faces, r.size, { x: left + indent, y: at, size: SIZE.text }).items);
    const right = left + width / 2 - 2;
    items.push(...setText(faces, r.gap, { x: right, y: at, size: SIZE.text, face: 'semibold', anchor: 'end' }).items);
  });
  return { items, y: y + 7.4 + (deep - 1) * FRONT_PITCH };
}
