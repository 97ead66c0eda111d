import type { GroupItem, Item, Sheet, TextItem } from '../../src/drawings/picture.js';
import { textWidth } from '../../src/type/measure.js';
import type { Faces } from '../../src/type/type.js';

/** What tests ask of a sheet: its items without groups, its words, and the boxes that they take. */
export const flat = (items: readonly Item[]): Exclude<Item, GroupItem>[] =>
  items.flatMap((i) => (i.kind === 'group' ? flat(i.items) : [i]));
export const texts = (sheet: Sheet): TextItem[] => flat(sheet.picture).filter((i): i is TextItem => i.kind === 'text');
/** All words of a sheet in the order in which they are set. */
export const said = (sheet: Sheet): string =>
  texts(sheet)
    .map((t) => t.string.trim())
    .join(' ');
/** Height of a capital in Plex Sans Condensed, 0.698 em: from the font's own outlines. */
export const boxOf = (faces: Faces, t: TextItem) => ({
  x: t.x,
  y: t.y - 0.69 * t.size,
  w: t.hidden ?? textWidth(faces[t.face], t.string.trimEnd(), t.size),
  h: 0.69 * t.size,
});
/** Words that lie over one another. */
export function clashes(faces: Faces, sheet: Sheet): string[] {
  const boxes = texts(sheet).map((t) => ({ t, b: boxOf(faces, t) }));
  return boxes.flatMap(({ t, b }, i) =>
    boxes.slice(i + 1).flatMap(({ t: u, b: o }) => {
      const over = Math.min(b.x + b.w, o.x + o.w) - Math.max(b.x, o.x);
      const deep = Math.min(b.y + b.h, o.y + o.h) - Math.max(b.y, o.y);
      return over > 0.05 && deep > 0.05 ? [`"${t.string}" on "${u.string}"`] : [];
    }),
  );
}
