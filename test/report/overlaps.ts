import type { Item } from '../../src/drawings/picture.js';
import { boundsOf } from '../../src/report/paint.js';
import type { Faces } from '../../src/type/type.js';

export interface Overlap {
  readonly one: string;
  readonly other: string;
  readonly at: readonly [number, number];
}
interface Placed {
  readonly string: string;
  readonly box: readonly [number, number, number, number];
}
/** Pairs of strings whose letters lie over one another (both boxes shrunk to the height of capitals), left to right and top to bottom. */
export function overlaps(faces: Faces, picture: readonly Item[]): readonly Overlap[] {
  const placed = placedTexts(faces, picture, 0, 0);
  const found: Overlap[] = [];
  placed.forEach((a, i) =>
    placed.slice(i + 1).forEach((b) => {
      const across = Math.min(a.box[2], b.box[2]) - Math.max(a.box[0], b.box[0]);
      const up = Math.min(a.box[3], b.box[3]) - Math.max(a.box[1], b.box[1]);
      if (across > 0.15 && up > 0.15)
        found.push({ one: a.string, other: b.string, at: [Math.round(a.box[0]), Math.round(a.box[3])] });
    }),
  );
  return found.sort((p, q) => p.at[1] - q.at[1] || p.at[0] - q.at[0]);
}
function placedTexts(faces: Faces, items: readonly Item[], x: number, y: number): Placed[] {
  return items.flatMap((item): Placed[] => {
    if (item.kind === 'group') return placedTexts(faces, item.items, x + (item.at?.[0] ?? 0), y + (item.at?.[1] ?? 0));
    if (item.kind !== 'text' || item.turn !== 0 || item.string.trim() === '') return [];
    const lead = item.string.length - item.string.trimStart().length;
    const bounds = boundsOf(faces, [{ ...item, string: item.string.trim() }]);
    if (!bounds) return [];
    const shift = lead * 0.212 * item.size * (item.hidden === undefined ? 1 : 0);
    const stack = item.hidden === undefined ? 0 : 0.36 * item.size;
    const top = item.y - 0.7 * item.size - stack;
    return [{ string: item.string, box: [x + bounds[0] + shift, y + top, x + bounds[2] + shift, y + item.y + stack] }];
  });
}
