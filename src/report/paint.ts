/** What both picture writers agree on: strokes of one pen that follow each other are one path, words of one line are one text. */
import type { FillItem, GroupItem, Item, Path, Pen, Picture, Sheet, TextItem } from '../drawings/picture.js';
import { textWidth } from '../type/measure.js';
import type { Faces } from '../type/type.js';
import { pathBounds, type Bounds } from './paths.js';

export type Paint =
  | { readonly kind: 'stroke'; readonly pen: Pen; readonly d: Path }
  | FillItem
  | { readonly kind: 'line'; readonly words: readonly TextItem[] }
  | { readonly kind: 'hidden'; readonly text: TextItem; readonly width: number }
  /** Outlines of a figure and the hidden run that lies over them. */
  | { readonly kind: 'figure'; readonly fill: FillItem; readonly text: TextItem; readonly width: number }
  | { readonly kind: 'group'; readonly group: GroupItem; readonly paints: readonly Paint[] };

/** A picture in the order in which it is painted. */
export function paintsOf(picture: Picture): readonly Paint[] {
  const paints: Paint[] = [];
  for (const item of picture) {
    const last = paints.at(-1);
    if (item.kind === 'stroke' && last?.kind === 'stroke' && last.pen === item.pen) {
      (last.d as Path[number][]).push(...item.d);
    } else if (item.kind === 'stroke') paints.push({ kind: 'stroke', pen: item.pen, d: [...item.d] });
    else if (item.kind === 'fill') paints.push(item);
    else if (item.kind === 'group') paints.push({ kind: 'group', group: item, paints: paintsOf(item.items) });
    else if (item.hidden !== undefined && last?.kind === 'fill' && last.figure)
      paints[paints.length - 1] = { kind: 'figure', fill: last, text: item, width: item.hidden };
    else if (item.hidden !== undefined) paints.push({ kind: 'hidden', text: item, width: item.hidden });
    else if (last?.kind === 'line' && continues(last.words, item)) (last.words as TextItem[]).push(item);
    else paints.push({ kind: 'line', words: [item] });
  }
  return paints;
}
function continues(words: readonly TextItem[], item: TextItem): boolean {
  const last = words[words.length - 1];
  if (!last || last.turn !== 0 || item.turn !== 0 || last.anchor !== 'start' || item.anchor !== 'start') return false;
  const joined = last.string.endsWith(' ') || item.string.startsWith(' ');
  return joined && last.y === item.y && last.size === item.size && last.tone === item.tone && item.x > last.x;
}

/** Where a text starts, whatever its anchor. */
export function startOf(faces: Faces, text: TextItem): number {
  if (text.anchor === 'start') return text.x;
  const width = textWidth(faces[text.face], text.string, text.size);
  return text.x - (text.anchor === 'middle' ? width / 2 : width);
}
/** Bounds of items on the sheet, mm. */
export function boundsOf(
  faces: Faces,
  items: readonly Item[],
  at: readonly [number, number] = [0, 0],
): Bounds | undefined {
  return items.map((item) => shifted(itemBounds(faces, item), at)).reduce(join, undefined);
}
function itemBounds(faces: Faces, item: Item): Bounds | undefined {
  if (item.kind === 'group') {
    const inner = boundsOf(faces, item.items);
    return shifted(item.clip ? meet(inner, pathBounds(item.clip)) : inner, item.at ?? [0, 0]);
  }
  if (item.kind !== 'text') return pathBounds(item.d);
  const x = startOf(faces, item);
  const width = item.hidden ?? textWidth(faces[item.face], item.string, item.size);
  return [x, item.y - 0.78 * item.size, x + width, item.y + 0.22 * item.size];
}
const shifted = (b: Bounds | undefined, [x, y]: readonly [number, number]): Bounds | undefined =>
  b && [b[0] + x, b[1] + y, b[2] + x, b[3] + y];
/** What two bounds share; nothing where they lie apart. */
function meet(a: Bounds | undefined, b: Bounds | undefined): Bounds | undefined {
  if (!a || !b) return undefined;
  const m: Bounds = [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.min(a[2], b[2]), Math.min(a[3], b[3])];
  return m[0] <= m[2] && m[1] <= m[3] ? m : undefined;
}
const join = (a: Bounds | undefined, b: Bounds | undefined): Bounds | undefined =>
  a && b ? [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])] : (a ?? b);

/** The groups of a sheet that lead somewhere, with their bounds. */
export function linksOf(faces: Faces, sheet: Sheet): readonly { readonly to: string; readonly bounds: Bounds }[] {
  const visit = (items: readonly Item[], x: number, y: number): { to: string; bounds: Bounds }[] =>
    items.flatMap((item) => {
      if (item.kind !== 'group') return [];
      const [dx, dy] = item.at ?? [0, 0];
      const bounds = item.link === undefined ? undefined : boundsOf(faces, [item], [x, y]);
      const here = item.link !== undefined && bounds ? [{ to: item.link, bounds }] : [];
      return [...here, ...visit(item.items, x + dx, y + dy)];
    });
  return visit(sheet.picture, 0, 0);
}
