import { overAll } from '../geom/growth.js';
import type { Diagnostic, JsonPath, Outcome } from '../diag/diagnostic.js';
import type { Axis } from '../geom/axis.js';
import { inches } from '../lengths/length.js';
import type { Part, Piece, Stock } from '../piece/piece.js';
import type { Board } from './boards/board.js';
import { missingFindings, pieceOnBoards } from './boards/piece-on-boards.js';
import type { Layout } from './layout.js';
import { BUDGET, nestSheets, type NestJob, type NestSheet, type NestStock } from './nest.js';

/**
 * The stage: every part of sheet goods of a piece on its sheets, and every blank of lumber on the boards there are, where they
 * are known. A part that fits no sheet is an error, one that no board gives is told. `effort`: how many times the usual number
 * of steps may be spent.
 */
export function layoutPiece(piece: Piece, effort = 1, stock?: readonly Board[]): Outcome<Layout> {
  const sheets = nestSheets(nestJob(piece, effort));
  const boards = stock && pieceOnBoards(piece, stock, effort);
  const value = boards ? { ...sheets, boards } : sheets;
  const missing = boards ? missingFindings(boards, piece, (id) => pathOf(piece, id)) : [];
  const findings = sheets.unplaced.map(({ part, why }): Diagnostic => ({
    code: 'part-larger-than-sheet',
    severity: 'error',
    path: pathOf(piece, part),
    message: `${markOf(piece, part)} cannot be cut from its sheet: ${why}.`,
    hint: 'A larger sheet, or the part in two.',
    touches: [part],
  }));
  return { value, findings: [...findings, ...missing] };
}

/** Where the part stands in the definition, as near as its sizes tell. */
const pathOf = (piece: Piece, id: string): JsonPath =>
  piece.parts
    .find((p) => p.id === id)
    ?.size.find((s) => s.path)
    ?.path?.slice(0, 2) ?? ['parts', id];
const markOf = (piece: Piece, id: string): string => piece.parts.find((p) => p.id === id)?.mark ?? id;

/** What is to be cut from which sheets: over-all sizes, tongues and all, and the spares. */
export function nestJob(piece: Piece, effort = 1): NestJob {
  const stocks: NestStock[] = [];
  for (const id of Object.keys(piece.stocks).sort()) {
    const stock = piece.stocks[id] as Stock;
    if (stock.kind !== 'sheet' || !stock.size) continue;
    const grain = stock.grain ?? 'length';
    const items = piece.parts.filter((p) => p.stock === id).flatMap((p) => nestItems(p, grain, piece));
    if (items.length > 0) stocks.push({ id, sheets: sheetsOf(stock, grain, piece), grain, items });
  }
  const { kerf, trim, saw } = piece.shop;
  const { alone } = piece.profile ?? {};
  return {
    stocks,
    kerf,
    trim,
    budget: BUDGET * effort,
    ...(saw?.stages === undefined ? {} : { stages: saw.stages === 'any' ? Infinity : saw.stages }),
    ...(saw?.first === undefined ? {} : { first: saw.first }),
    ...(saw?.keep ? { keep: saw.keep } : {}),
    ...(alone ? { alone: alone[0] >= alone[1] ? alone : [alone[1], alone[0]] } : {}),
  };
}

/** An offcut serves for a sheet that measures no more than this otherwise: 0.005 in, a slack that a groove has (our default). */
const SAME_THICKNESS = inches(0.005);

/** The sizes in which a stock is bought, then what lies on the rack of it, turned so that its grain lies as the sheet's. */
function sheetsOf(stock: Stock, grain: NestStock['grain'], piece: Piece): NestSheet[] {
  const price = (p: number | undefined): { price?: number } => (p === undefined ? {} : { price: p });
  const [length, width] = stock.size as readonly [number, number];
  const bought = (stock.sizes ?? []).map(({ size, price: cost, count }) => ({
    length: size[0],
    width: size[1],
    ...price(cost),
    ...(count === undefined ? {} : { count }),
  }));
  const rack = (piece.shop.offcuts ?? []).flatMap((o): NestSheet[] => {
    if (o.sheet !== stock.material || Math.abs(o.thickness - (stock.thickness ?? 0)) > SAME_THICKNESS) return [];
    // An offcut without a grain of its own cannot serve where there is one.
    if ((o.grain === 'none') !== (grain === 'none')) return [];
    const [l, w] = o.grain === grain ? o.size : [o.size[1], o.size[0]];
    return [{ name: o.id, length: l, width: w }];
  });
  return [{ length, width, ...price(stock.price) }, ...bought, ...rack];
}

function nestItems(part: Part, grain: NestStock['grain'], piece: Piece): NestStock['items'][number][] {
  const item = nestItem(part, grain);
  const spares = piece.spares?.[part.id] ?? 0;
  return [
    item,
    ...Array.from({ length: spares }, () => ({ ...item, mark: `${part.mark}(spare)`, spare: true as const })),
  ];
}
function nestItem(part: Part, grain: NestStock['grain']): NestStock['items'][number] {
  const over = (axis: Axis): number => overAll(part, axis);
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
