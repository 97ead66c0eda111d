/** One piece taken through the stages as the program takes it, with what lies between kept for the tests to look at. */
import { existsSync, readFileSync } from 'node:fs';
import { runChecks } from '../../src/checks/index.js';
import type { Diagnostic } from '../../src/diag/diagnostic.js';
import { hasErrors } from '../../src/diag/diagnostic.js';
import { readDefinition } from '../../src/definition/read.js';
import { drawSheets } from '../../src/drawings/index.js';
import type { Sheet } from '../../src/drawings/picture.js';
import { createKernel } from '../../src/geom/kernel.js';
import { loadFaces } from '../../src/io/fonts.js';
import { sha256, shortHash } from '../../src/io/hash.js';
import { shippedText } from '../../src/io/read.js';
import { layoutPiece } from '../../src/layout/layout-piece.js';
import { makeLists } from '../../src/making/making.js';
import type { Piece } from '../../src/piece/piece.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { writePdf } from '../../src/report/pdf.js';
import { writeSvgs } from '../../src/report/svg.js';
import { makeSolids } from '../../src/solids/make.js';
import type { Solids } from '../../src/solids/solids.js';
import type { Faces } from '../../src/type/type.js';
import { season } from '../../src/wood/moisture.js';

export const SHIPPED = ['nightstand', 'letter-cabinet', 'tall-chest'] as const;
export const SMALL = ['corner-box', 'leg-and-rail', 'wall-shelf'] as const;
export const faces: Faces = loadFaces();

export interface Packet {
  readonly piece: Piece;
  readonly solids: Solids;
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Diagnostic[];
}
/** The text of a small specimen, or of a shipped definition. */
export function definitionText(name: string): string {
  const small = new URL(`../specimens/small/${name}.jsonc`, import.meta.url);
  const text = existsSync(small) ? readFileSync(small, 'utf8') : shippedText(name);
  if (text === undefined) throw new Error(`no definition ${name}`);
  return text;
}
const unsound = (findings: readonly Diagnostic[]): Error =>
  new Error(findings.flatMap((f) => (f.severity === 'error' ? [`${f.code}: ${f.message}`] : [])).join('\n'));

/** A definition drawn. Throws with the findings when it is not sound. */
export async function drawn(name: string): Promise<Packet> {
  const reading = readDefinition(definitionText(name), `${name}.jsonc`, { shipped: shippedText });
  const resolved = reading.value && resolvePiece(reading.value);
  if (!reading.value || !resolved?.value) throw unsound(resolved?.findings ?? reading.findings);
  const { room, shop, units } = reading.value;
  const piece = resolved.value;
  const kernel = await createKernel();
  try {
    const solids = makeSolids(piece, kernel);
    const layout = layoutPiece(piece);
    const volumes = (solids.value?.parts ?? []).map(({ id, volume }) => ({ id, volume }));
    const lists = makeLists(piece, volumes);
    const findings = [reading, resolved, solids, layout, lists].flatMap((s) => s.findings);
    if (hasErrors(findings) || !solids.value || !layout.value || !lists.value) throw unsound(findings);
    const hash = shortHash(sha256(JSON.stringify(reading.value)));
    const at = season(room, shop?.moisture, units);
    const checked = runChecks({ piece, solids: solids.value, making: lists.value, season: at });
    const input = { piece, solids: solids.value, kernel, layout: layout.value, lists: lists.value };
    return {
      piece,
      solids: solids.value,
      findings,
      sheets: drawSheets({ ...input, ...(checked.value ? { checks: checked.value } : {}), faces, hash, findings }),
    };
  } finally {
    kernel.dispose();
  }
}
export const pdfOf = ({ piece: { header } }: Packet, sheets: readonly Sheet[]): Promise<Uint8Array> =>
  writePdf(sheets, { faces, title: header.title, date: header.date, hash: 'packet tests', author: header.maker });
export const svgsOf = (sheets: readonly Sheet[]): Promise<readonly string[]> => writeSvgs(sheets, { faces });
export function sheetOf(packet: Packet, id: string): Sheet {
  const sheet = packet.sheets.find((s) => s.id === id);
  if (!sheet) throw new Error(`no sheet ${id}; there are ${packet.sheets.map((s) => s.id).join(' ')}`);
  return sheet;
}
