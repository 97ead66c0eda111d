import { formatLength } from '../lengths/format.js';
import type { Joint, Piece } from '../piece/piece.js';
import { markRanges } from './marks.js';
import { columns, type Table } from './table.js';

/** Every joint once: places with the same kind, sizes and way in share a row. */
export function jointSchedule(piece: Piece): Table {
  const groups = new Map<string, Joint[]>();
  for (const j of piece.joints) {
    const key = [j.joint, j.kind, sizesOf(j, piece), wayOf(j)].join('|');
    groups.set(key, [...(groups.get(key) ?? []), j]);
  }
  const sorted = [...groups.values()].sort((a, b) => ((a[0] as Joint).id < (b[0] as Joint).id ? -1 : 1));
  const marks = (ids: readonly string[]): string =>
    markRanges(ids.map((id) => piece.parts.find((p) => p.id === id)?.mark ?? id));
  return {
    id: 'joints',
    columns: columns(
      'joint:Joint',
      'kind:Kind',
      'count:No.>',
      'parts:Parts',
      'into:Into',
      'sizes:Sizes',
      'way:Goes in',
      'holds:Holds by itself',
      'glue:Glue',
    ),
    rows: sorted.map((g) => {
      const j = g[0] as Joint;
      return [
        j.joint,
        j.words,
        String(g.length),
        marks(g.map((x) => x.entering)),
        marks(g.map((x) => x.receiving)),
        sizesOf(j, piece),
        wayOf(j),
        j.traits.holds,
        j.traits.glue,
      ];
    }),
  };
}

const sizesOf = (j: Joint, piece: Piece): string =>
  Object.keys(j.sizes)
    .sort()
    .map((k) => `${k} ${formatLength(j.sizes[k]?.value ?? 0, piece.units)}`)
    .join(', ');
const wayOf = (j: Joint): string => j.way.map((f) => `to ${f.toUpperCase()}`).join(', then ');
