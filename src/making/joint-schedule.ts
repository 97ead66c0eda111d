import { COUNTED } from '../value/sized.js';
import { formatLength } from '../lengths/format.js';
import type { Joint, Piece } from '../piece/piece.js';
import { markRanges } from '../words/markOrder.js';
import { columns, type Table } from './table.js';

/** A joint by the definition's id; those that drawers bring by what they do: `drawers: corner front`. */
export const jointLabel = (id: string): string => {
  const own = /\.(.+)$/.exec(id)?.[1];
  return own === undefined ? id : `drawers: ${own.replace(/_(left|right)$/, '').replaceAll('_', ' ')}`;
};

/** Every joint once: places with the same kind, sizes and hold share a row, wherever in the piece they are. */
export function jointSchedule(piece: Piece): Table {
  const groups = new Map<string, Joint[]>();
  for (const j of piece.joints) {
    const key = [j.kind, sizesOf(j, piece), j.traits.holds, j.traits.glue].join('|');
    groups.set(key, [...(groups.get(key) ?? []), j]);
  }
  // Those of one kind together, the case before the drawers.
  const key = (g: readonly Joint[]): string =>
    `${g[0]?.joint.includes('.') ? 1 : 0} ${g[0]?.kind ?? ''} ${g[0]?.id ?? ''}`;
  const sorted = [...groups.values()].sort((a, b) => (key(a) < key(b) ? -1 : 1));
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
      'holds:By itself',
      'glue:Glue',
    ),
    rows: sorted.map((g) => {
      const j = g[0] as Joint;
      return [
        [...new Set(g.map((x) => jointLabel(x.joint)))].sort().join(', '),
        j.words,
        String(g.length),
        marks(g.map((x) => x.entering)),
        marks(g.map((x) => x.receiving)),
        sizesOf(j, piece),
        either(g.map(wayOf)),
        j.traits.holds,
        j.traits.glue,
      ];
    }),
  };
}

/** Ways in that differ from place to place: `to LEFT or RIGHT`, `to BACK, FRONT or LEFT`. */
function either(ways: readonly string[]): string {
  const all = [...new Set(ways)].sort().map((w, i) => (i === 0 ? w : w.replace(/^to /, '')));
  const straight = all.every((w) => !w.includes(','));
  return straight ? all.join(', ').replace(/, ([^,]*)$/, ' or $1') : all.join(' or ');
}
const sizesOf = (j: Joint, piece: Piece): string =>
  Object.keys(j.sizes)
    .sort()
    .map((k) => {
      const value = j.sizes[k]?.value ?? 0;
      return `${k} ${COUNTED.has(k) ? value : formatLength(value, piece.units)}`;
    })
    .join(', ');
const wayOf = (j: Joint): string => j.way.map((f) => `to ${f.toUpperCase()}`).join(', then ');
