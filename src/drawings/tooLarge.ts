import type { Diagnostic } from '../diag/diagnostic.js';
import { formatLength } from '../lengths/format.js';
import type { Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import { byAxis, width } from '../geom/box.js';
import { SMALLEST } from './marks.js';
import { modelOf } from './model.js';

/** Views that are larger than this at the smallest scale find no room on a sheet, mm: our default, for the smallest paper. */
const LARGEST = 60;

/** A piece that no scale brings onto a sheet: told before it is drawn. */
export function tooLarge(piece: Piece, solids: Solids): Diagnostic[] {
  const { overall } = modelOf(piece, solids);
  const sizes = byAxis((a) => width(overall[a]));
  const most = LARGEST * 1e6 * SMALLEST;
  if (sizes.every((s) => s <= most)) return [];
  return [
    {
      code: 'piece-too-large',
      severity: 'error',
      path: ['parts'],
      message: `The piece is ${sizes.map((s) => formatLength(s, piece.units)).join(' × ')} ${piece.units}; at 1:${SMALLEST}, the smallest scale, its views go on no sheet.`,
      hint: 'Look for a size that is far too large.',
    },
  ];
}
