import type { CutBoard } from '../../layout/boards/board.js';
import { tickBox } from '../draw.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import type { Item, Table } from '../picture.js';
import { cutNumber } from './boardsPicture.js';
import { drawTable, heightOf, layTable } from '../table.js';
import type { LaidTable, Strip } from '../table.js';

type Cut = CutBoard['cuts'][number];
const COLUMNS: Table['columns'] = [
  { id: 'kind', label: 'cut', align: 'left' },
  { id: 'at', label: 'at', align: 'right' },
  { id: 'over', label: 'over, saw', align: 'left' },
  { id: 'leaves', label: 'leaves', align: 'left' },
];
/** Columns of cuts and the air between them; the boxes to tick at the right of each; cuts that stay together. */
const ACROSS = 3;
const APART = 5;
const BOX = 5;
const TOGETHER = 30;

/** Over what a cut runs that does not run through, and on which side of the line the saw goes where that is not beyond it. */
const overOf = (input: Prepared, c: Cut, length: number): string => {
  const whole = c.kind === 'crosscut' || (c.over[0] <= 0 && c.over[1] >= length);
  const over = whole ? '' : `${printed(input, c.over[0])} to ${printed(input, c.over[1])}`;
  const side = c.saw === 'beyond' ? '' : c.kind === 'crosscut' ? 'before' : 'below';
  return [over, side].filter(Boolean).join(', ');
};
/** The cuts of a board in their order: number, kind, distance, what they leave, a box to tick; in columns. */
export function cutStrips(input: Prepared, cut: CutBoard, length: number, width: number): Strip[] {
  const each = (width - APART * (ACROSS - 1)) / ACROSS;
  const out: Strip[] = [];
  for (let i = 0; i < cut.cuts.length; i += TOGETHER) {
    const some = cut.cuts.slice(i, i + TOGETHER);
    const rows = Math.max(3, Math.ceil(some.length / ACROSS));
    const columns = Array.from({ length: ACROSS }, (_, k) => some.slice(k * rows, (k + 1) * rows))
      .filter((c) => c.length > 0)
      .map((cuts) => layCuts(input, cuts, length, each));
    out.push({
      height: Math.max(...columns.map((laid) => heightOf(laid))) + 2,
      draw: (x, y) => columns.flatMap((laid, k) => drawCuts(input, laid, x + k * (each + APART), y, each)),
    });
  }
  return out;
}
function layCuts(input: Prepared, cuts: readonly Cut[], length: number, width: number): LaidTable {
  const rows = cuts.map((c) => [c.kind, printed(input, c.at), overOf(input, c, length), c.leaves]);
  const marks = cuts.map((c) => (x: number, y: number) => cutNumber(input.faces, c.number, x + 0.3, y));
  return layTable(
    input.faces,
    { id: 'cuts', columns: COLUMNS, rows },
    { width: width - BOX, strong: ['at'], marks, least: 5.4 },
  );
}
function drawCuts(input: Prepared, laid: LaidTable, x: number, y: number, width: number): Item[] {
  let top = y + laid.head;
  const boxes = laid.rows.flatMap((r) => {
    const box = tickBox(input.faces, x + width - 4, top + Math.min(r.own, 7) / 2 - 2);
    top += r.height;
    return box;
  });
  return [...drawTable(input.faces, laid, x, y).items, ...boxes];
}
