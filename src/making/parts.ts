import type { Axis } from '../geom/axis.js';
import type { Part, Piece } from '../piece/piece.js';
import { compareMarks } from '../words/markOrder.js';

export const grows = (p: Part, axis: Axis): boolean => p.growth[axis][0] + p.growth[axis][1] > 0;

/** Parts that are one row and one card: the same shape in the same stock, only turned. Rows by their first mark. */
export function rowsOf(piece: Piece): (readonly Part[])[] {
  const groups = new Map<string, Part[]>();
  for (const p of piece.parts) {
    const key = `${p.turnOf ?? p.id} ${p.stock}`;
    const group = groups.get(key);
    if (group) group.push(p);
    else groups.set(key, [p]);
  }
  return [...groups.values()]
    .map((g) => [...g].sort((a, b) => compareMarks(a.mark, b.mark)))
    .sort((a, b) => compareMarks((a[0] as Part).mark, (b[0] as Part).mark));
}

const GRAIN = ['LEFT to RIGHT', 'FRONT to BACK', 'UP'] as const;
/** Which way the grain runs in the finished piece; `none` for sheet goods without. */
export const grainWords = (p: Part): string => (p.grain === undefined ? 'none' : GRAIN[p.grain]);
