import type { Diagnostic } from '../diag/diagnostic.js';
import type { Part } from '../piece/piece.js';

/** A fault of ours: what a part's card says and the model does not, or the other way about. */
export const finding = (code: string, part: Part, what: string): Diagnostic => ({
  code,
  severity: 'error',
  path: ['parts', part.id],
  message: `Card ${part.mark}: ${what}.`,
  touches: [part.id],
});
