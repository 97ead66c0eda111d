import type { Definition, PartSpec } from '../../src/definition/definition.js';
import type { Diagnostic } from '../../src/diag/diagnostic.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import type { Part, Piece } from '../../src/piece/piece.js';
import { toIn } from '../../src/lengths/length.js';

/** A definition in inches with an oak, a poplar and a plywood in stock. */
export function definition(more: Partial<Definition> = {}): Definition {
  return {
    format: 1,
    piece: { title: 'Sample', number: 'S-1', revision: 'A', date: '2027-02-01', client: 'sample', maker: 'sample' },
    units: 'in',
    stock: {
      oak: { lumber: 'oak-white', quarter: '5/4' },
      thick: { lumber: 'walnut', quarter: '8/4' },
      poplar: { lumber: 'yellow-poplar', quarter: '4/4' },
      ply: { sheet: 'plywood-birch', thickness: '0.205', size: ['96', '48'] },
    },
    parts: {},
    ...more,
  };
}
/** An oak part 1 x 2 x 3 in unless told. */
export const part = (more: Partial<PartSpec> = {}): PartSpec => ({
  stock: 'oak',
  across: ['0', '1'],
  deep: ['0', '2'],
  up: ['0', '3'],
  ...more,
});
/** The piece; throws with the findings when there is none. */
export function solved(def: Definition): Piece {
  const { value, findings } = resolvePiece(def);
  if (!value) throw new Error(findings.map((f) => `${f.code} at ${f.path.join('.')}: ${f.message}`).join('\n'));
  return value;
}
export const findingsOf = (def: Definition): readonly Diagnostic[] => resolvePiece(def).findings;
export const errorsOf = (def: Definition): readonly Diagnostic[] =>
  findingsOf(def).filter((f) => f.severity === 'error');
export function partOf(piece: Piece, id: string): Part {
  const found = piece.parts.find((p) => p.id === id);
  if (!found) throw new Error(`no part ${id}`);
  return found;
}
/** Low and high end of a part in the piece, inches, by axis. */
export const boxOf = (piece: Piece, id: string): (readonly [number, number])[] => {
  const p = partOf(piece, id);
  return p.size.map((s, a) => {
    const low = p.place.origin[a] ?? 0;
    return [toIn(low), toIn(low + s.value)] as const;
  });
};
