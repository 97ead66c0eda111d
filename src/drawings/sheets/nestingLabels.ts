import type { SheetLayout } from '../../layout/layout.js';
import { grainArrow, group, label, rect } from '../draw.js';
import { fieldOf, fitted, headline } from '../frame.js';
import { printed, sheetOf } from '../input.js';
import type { Prepared, SheetKind } from '../input.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText, widthOf } from '../text.js';
import { whichSheet } from './nesting.js';

/** Fewer pieces than this are told apart without labels (our default). */
const WORTH_IT = 9;
const COLUMNS = 4;
const ROWS = 8;
const GAP = 2;

interface Piece {
  readonly sheet: SheetLayout;
  readonly piece: SheetLayout['pieces'][number];
  readonly number: number;
}
/** Every piece in the order of its sheets, numbered on. */
const piecesOf = (input: Prepared): Piece[] =>
  input.layout.sheets
    .flatMap((sheet) => sheet.pieces.map((piece) => ({ sheet, piece })))
    .map((p, i) => ({ ...p, number: i + 1 }));

/** Labels for pieces of sheet goods: mark, name, size, grain, where it is cut; to cut out and put on as it leaves the saw. */
export const nestingLabels: SheetKind = {
  id: 'labels',
  title: 'Labels for sheet goods',
  plan(input) {
    const pieces = piecesOf(input).length;
    return pieces < WORTH_IT ? 0 : Math.ceil(pieces / (COLUMNS * ROWS));
  },
  draw(input, page, place) {
    const all = piecesOf(input);
    const shown = all.slice(page * COLUMNS * ROWS, (page + 1) * COLUMNS * ROWS);
    const title = 'Labels for sheet goods';
    return sheetOf(input, place, {
      id: `labels-${page + 1}`,
      title,
      folder: 'nesting',
      alt: `${title}: ${shown.length} of ${all.length}`,
      scale: 'none',
      items: [
        ...headline(input.faces, 'Label each piece as it leaves the saw', 'Cut on the lines', input.paper),
        ...shown.flatMap((p, i) => drawLabel(input, p, all.length, i)),
      ],
    });
  },
};

function drawLabel(input: Prepared, { sheet, piece, number }: Piece, of: number, at: number): Item[] {
  const { faces } = input;
  const { left, right, top, bottom } = fieldOf(input.paper);
  const y0 = top + 13;
  const [w, h] = [(right - left + GAP) / COLUMNS, (bottom - y0 + GAP) / ROWS];
  const [x, y] = [left + (at % COLUMNS) * w, y0 + Math.floor(at / COLUMNS) * h];
  const part = input.piece.parts.find((p) => p.id === piece.part);
  const mark = `${part?.mark ?? piece.part}${piece.spare ? ' spare' : ''}`;
  const size = `${printed(input, piece.w)} × ${printed(input, piece.h)}`;
  const room = w - GAP - 4;
  const where = whichSheet(input, sheet);
  const base = y + h - GAP - 2.2;
  const items = [
    ...rect('H', x, y, w - GAP, h - GAP),
    ...setText(faces, mark, { x: x + 2, y: y + 6.2, size: SIZE.mark, face: 'semibold' }).items,
    ...label(faces, `${number} of ${of}`, x + w - GAP - 2, y + 5.6, { anchor: 'end' }),
    ...fitted(faces, part?.name ?? piece.part, x + 2, y + 11, SIZE.text, room, 'regular'),
    ...setText(faces, size, { x: x + 2, y: base, size: SIZE.text, face: 'semibold' }).items,
    ...fitted(faces, where, x + w - GAP - 2 - widthOf(faces, where, SIZE.text), base, SIZE.text, room, 'regular'),
    ...grainOf(input, { sheet, piece, number }, x + w - GAP - 2, y + 9.6),
  ];
  return [group(`label-${number}`, items, { role: 'label' })];
}

/** Which way the grain runs of the size as it is printed: along its first figure, or along its second. */
function grainOf(input: Prepared, { sheet, piece }: Piece, right: number, y: number): Item[] {
  const grain = input.piece.parts.find((p) => p.id === piece.part)?.grain;
  if (sheet.grain === 'none' || grain === undefined) return [];
  return sheet.grain === 'length'
    ? grainArrow([right - 14, y], [right, y])
    : grainArrow([right - 7, y + 5.5], [right - 7, y - 3]);
}
