import type { DrawInput, IndexEntry, Prepared } from './input.js';
import { modelOf } from './model.js';
import type { Sheet } from './picture.js';
import { SHEETS } from './sheets/index.js';
import { viewsOf } from './views.js';

export type { DrawInput, IndexEntry, SheetKind, SheetPlace } from './input.js';

const prepared = (input: DrawInput): Prepared => ({
  ...input,
  model: modelOf(input.piece, input.solids),
  views: viewsOf(input.piece, input.solids),
});
function indexOf(input: Prepared): { index: IndexEntry[]; of: number } {
  let n = 0;
  const index = SHEETS.flatMap((kind): IndexEntry[] => {
    const pages = kind.plan(input);
    if (pages === 0) return [];
    const from = n + 1;
    n += pages;
    return [{ id: kind.id, title: kind.title, from, to: n }];
  });
  return { index, of: n };
}

/** Which sheets the packet will have, with their numbers; nothing is drawn. */
export const planSheets = (input: DrawInput): readonly IndexEntry[] => indexOf(prepared(input)).index;

/** All sheets in their order. Pure: the same input gives the same sheets. Throws only when the program is at fault. */
export function drawSheets(input: DrawInput): Sheet[] {
  const ready = prepared(input);
  const { index, of } = indexOf(ready);
  return index.flatMap((entry) => {
    const kind = SHEETS.find((k) => k.id === entry.id);
    if (!kind) return [];
    return Array.from({ length: entry.to - entry.from + 1 }, (_, page) =>
      kind.draw(ready, page, { n: entry.from + page, of, hash: ready.hash, index }),
    );
  });
}
