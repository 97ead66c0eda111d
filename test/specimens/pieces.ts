import { readFileSync } from 'node:fs';
import { readDefinition } from '../../src/definition/read.js';
import { formatLength } from '../../src/lengths/format.js';
import type { Part, Piece } from '../../src/piece/piece.js';
import { resolvePiece } from '../../src/piece/resolve.js';

/** A shipped definition, resolved. Throws with the findings when it is not sound. */
export function shippedPiece(name: string): Piece {
  return pieceOf(readFileSync(new URL(`../../templates/pieces/${name}.jsonc`, import.meta.url), 'utf8'), `${name}.jsonc`);
}
export function pieceOf(text: string, fileName = 'piece.jsonc'): Piece {
  const reading = readDefinition(text, fileName);
  const piece = reading.value ? resolvePiece(reading.value) : undefined;
  if (!piece?.value) throw new Error(JSON.stringify([...reading.findings, ...(piece?.findings ?? [])], null, 1));
  return piece.value;
}
/** `thick x wide x long` over all, as a card prints it. */
export const overAll = (part: Part, piece: Piece): string =>
  [part.thickness, part.width, part.length]
    .map((a) => formatLength(part.size[a].value + part.growth[a][0] + part.growth[a][1], piece.units))
    .join(' x ');
export const shoulder = (part: Part, piece: Piece): string => formatLength(part.size[part.length].value, piece.units);
export const byMark = (piece: Piece, mark: string): Part => {
  const part = piece.parts.find((p) => p.mark === mark);
  if (!part) throw new Error(`no part ${mark}`);
  return part;
};
