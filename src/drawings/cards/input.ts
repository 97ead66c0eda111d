import type { Checked } from '../../checks/index.js';
import type { Diagnostic } from '../../diag/diagnostic.js';
import type { Layout } from '../../layout/layout.js';
import type { Piece } from '../../piece/piece.js';
import type { Solids } from '../../solids/solids.js';
import type { Faces } from '../../type/type.js';
import type { Views } from '../views.js';

/** What part cards are drawn from. */
export interface CardInput {
  readonly piece: Piece;
  readonly solids: Solids;
  readonly faces: Faces;
  /** Sheet goods as they are nested, to say which sheet a part comes from. */
  readonly layout?: Layout;
  readonly findings?: readonly Diagnostic[];
  /** Its cautions are printed on the cards that they touch. */
  readonly checks?: Checked;
  /** Short hash of a card's own words; FNV-1a where none is given. */
  readonly revisionOf?: (text: string) => string;
  readonly views?: Views;
  readonly stamp?: string;
}

/** FNV-1a over the UTF-16 units, 32 bit (Fowler, Noll, Vo), the last six hexadecimal digits. */
export function fnv(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(16).padStart(8, '0').slice(2);
}
