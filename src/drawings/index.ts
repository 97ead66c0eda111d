import type { DrawInput, IndexEntry, Prepared, SheetKind } from './input.js';
import { modelOf } from './model.js';
import type { Item, Sheet } from './picture.js';
import { SHEETS } from './sheets/index.js';
import { viewsOf } from './views.js';

export type { DrawInput, IndexEntry, SheetKind, SheetPlace } from './input.js';

const prepared = (input: DrawInput): Prepared => ({
  ...input,
  model: modelOf(input.piece, input.solids),
  views: viewsOf(input.piece, input.solids),
});
interface Planned {
  readonly kind: SheetKind;
  /** Number of its first page, and how many it has. */
  readonly from: number;
  readonly pages: number;
}
function planOf(input: Prepared): { index: IndexEntry[]; planned: Planned[]; of: number } {
  let n = 0;
  const planned = SHEETS.flatMap((kind): Planned[] => {
    const pages = kind.plan(input);
    const from = n + 1;
    n += pages;
    return pages === 0 ? [] : [{ kind, from, pages }];
  });
  const index = planned.flatMap(({ kind, from, pages }) =>
    kind.entries
      ? kind.entries(input).map((e) => ({ ...e, from: e.from + from, to: e.to + from }))
      : [{ id: kind.id, title: kind.title, from, to: from + pages - 1 }],
  );
  return { index, planned, of: n };
}

/** Which sheets the packet will have, with their numbers; nothing is drawn. */
export const planSheets = (input: DrawInput): readonly IndexEntry[] => planOf(prepared(input)).index;

/** All sheets in their order. Pure: the same input gives the same sheets. Throws only when the program is at fault. */
export function drawSheets(input: DrawInput): Sheet[] {
  const ready = prepared(input);
  const { index, planned, of } = planOf(ready);
  const sheets = planned.flatMap(({ kind, from, pages }) =>
    Array.from({ length: pages }, (_, page) => kind.draw(ready, page, { n: from + page, of, hash: ready.hash, index })),
  );
  // Entries of the index lead to the first sheet of their kind, whatever that calls itself.
  const ids = new Map(index.map((e) => [e.id, sheets[e.from - 1]?.id ?? e.id]));
  return sheets.map((s) => ({ ...s, picture: linked(s.picture, ids) }));
}
const linked = (items: readonly Item[], ids: ReadonlyMap<string, string>): readonly Item[] =>
  items.map((item) => {
    if (item.kind !== 'group') return item;
    const inner = { ...item, items: linked(item.items, ids) };
    return item.link === undefined ? inner : { ...inner, link: ids.get(item.link) ?? item.link };
  });
