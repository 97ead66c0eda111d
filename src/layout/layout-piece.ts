import type { Diagnostic, JsonPath, Outcome } from '../diag/diagnostic.js';
import type { Axis } from '../geom/axis.js';
import type { Part, Piece, Stock } from '../piece/piece.js';
import type { Layout } from './layout.js';
import { nestSheets, type NestJob, type NestStock } from './nest.js';

/** The stage: every part of sheet goods of a piece on its sheets. A part that fits no sheet is an error. */
export function layoutPiece(piece: Piece): Outcome<Layout> {
  const value = nestSheets(nestJob(piece));
  const findings = value.unplaced.map(({ part, why }): Diagnostic => ({
    code: 'part-larger-than-sheet',
    severity: 'error',
    path: pathOf(piece, part),
    message: `${markOf(piece, part)} cannot be cut from its sheet: ${why}.`,
    hint: 'A larger sheet, or the part in two.',
    touches: [part],
  }));
  return { value, findings };
}

/** Where the part stands in the definition, as near as its sizes tell. */
const pathOf = (piece: Piece, id: string): JsonPath =>
  piece.parts
    .find((p) => p.id === id)
    ?.size.find((s) => s.path)
    ?.path?.slice(0, 2) ?? ['parts', id];
const markOf = (piece: Piece, id: string): string => piece.parts.find((p) => p.id === id)?.mark ?? id;

/** What is to be cut from which sheets: over-all sizes, tongues and all. */
export function nestJob(piece: Piece): NestJob {
  const stocks: NestStock[] = [];
  for (const id of Object.keys(piece.stocks).sort()) {
    const stock = piece.stocks[id] as Stock;
    if (stock.kind !== 'sheet' || !stock.size) continue;
    const grain = stock.grain ?? 'length';
    const items = piece.parts.filter((p) => p.stock === id).map((p) => nestItem(p, grain));
    if (items.length > 0) stocks.push({ id, sheets: [{ length: stock.size[0], width: stock.size[1] }], grain, items });
  }
  return { stocks, kerf: piece.shop.kerf, trim: piece.shop.trim };
}

function nestItem(part: Part, grain: NestStock['grain']): NestStock['items'][number] {
  const over = (axis: Axis): number => part.size[axis].value + part.growth[axis][0] + part.growth[axis][1];
  const inPlane = ([0, 1, 2] as const).filter((a) => a !== part.thickness);
  const along = part.grain !== undefined && part.grain !== part.thickness ? part.grain : part.length;
  const across = inPlane.find((a) => a !== along) ?? part.width;
  return {
    part: part.id,
    mark: part.mark,
    length: over(along),
    width: over(across),
    mayTurn: grain === 'none' || part.grain === undefined,
  };
}
