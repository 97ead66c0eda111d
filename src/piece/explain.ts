import { nameHint } from '../diag/didYouMean.js';
import { formatLength } from '../lengths/format.js';
import type { Units } from '../lengths/length.js';
import { COUNTED, type Sized } from '../value/sized.js';
import { stockLines } from './explain-stock.js';
import type { Part, Piece } from './piece.js';

/**
 * How a figure came about, in lines: the figure, how (given, by rule, derived), its rule and source, and what it was made
 * from, each of those told once. `id`: a measure (`W`), a part (`rail_1`), a face or size of it (`rail_1.top`, `rail_1.up`),
 * a joint (`rails.1`), a drawer or a stock. An unknown id gives one line that says so, and what is
 * near it, also of the `others` that somebody else knows of.
 */
export function explain(piece: Piece, id: string, others: readonly string[] = []): string[] {
  const value = piece.values?.[id] ?? piece.measures[id];
  if (value) return figureLines(piece, id, value);
  const part = piece.parts.find((p) => p.id === id || p.mark === id);
  if (part) return partLines(piece, part);
  const joint = piece.joints.find((j) => j.id === id);
  if (joint) {
    const head = `${joint.id}: ${joint.words}, "${joint.entering}" into "${joint.receiving}", going in toward ${joint.way.join(', then ')}`;
    return [
      head,
      ...Object.entries(joint.sizes).flatMap(([name, s]) => figureLines(piece, name, s).map((l) => `  ${l}`)),
    ];
  }
  const several = piece.joints.filter((j) => j.joint === id);
  if (several.length > 0)
    return [
      `${id}: ${several.length} places`,
      ...several.map((j) => `  ${j.id}: "${j.entering}" into "${j.receiving}"`),
    ];
  const drawer = piece.drawers.find((d) => d.id === id || d.mark === id);
  if (drawer) {
    const rows = [
      ...Object.entries(drawer.opening).map(([k, s]) => [`opening ${k}`, s] as const),
      ...Object.entries(drawer.gaps).map(([k, s]) => [`gap ${k}`, s] as const),
    ];
    return [
      `${drawer.id}: drawer ${drawer.mark}, ${drawer.parts.join(', ')}`,
      ...rows.flatMap(([name, s]) => figureLines(piece, name, s).map((l) => `  ${l}`)),
    ];
  }
  const stock = piece.stocks[id];
  if (stock) return stockLines(piece, stock);
  const known = [
    ...Object.keys(piece.measures),
    ...Object.keys(piece.stocks),
    ...piece.parts.map((p) => p.id),
    ...piece.joints.map((j) => j.id),
    ...others,
  ];
  return [`${UNKNOWN} "${id}". ${nameHint(id, known)}`];
}
const UNKNOWN = 'There is nothing called';
/** Whether what `explain` said is that it knows nothing of that name. */
export const isUnknown = (lines: readonly string[]): boolean => lines[0]?.startsWith(UNKNOWN) === true;

const say = (value: number, units: Units): string => `${formatLength(value, units)} ${units}`;

function oneLine(name: string, s: Sized, units: Units): string {
  const rule = s.rule === undefined ? '' : s.how === 'given' ? `, as "${s.rule}"` : `: ${s.rule}`;
  const source = s.source === undefined ? '' : ` (${s.source})`;
  const path = s.path && s.path.length > 0 ? ` [${s.path.join('.')}]` : '';
  const value = COUNTED.has(name) ? String(s.value) : say(s.value, units);
  return `${name} = ${value}, ${s.how}${rule}${source}${path}`;
}

/** A figure and, one level down, each of its inputs with its own way of coming about where that is known. */
function figureLines(piece: Piece, name: string, s: Sized): string[] {
  return [
    oneLine(name, s, piece.units),
    ...(s.inputs ?? []).map((i) => {
      const from = piece.values?.[i.name];
      return `  ${from ? oneLine(i.name, from, piece.units) : `${i.name} = ${say(i.value, piece.units)}`}`;
    }),
  ];
}

function partLines(piece: Piece, p: Part): string[] {
  const axes = ['across', 'deep', 'up'] as const;
  const grown = axes.flatMap((word, a) => {
    const [low, high] = p.growth[a] ?? [0, 0];
    const total = low + high;
    return total === 0
      ? []
      : [
          `  ${word} over all ${say((p.size[a]?.value ?? 0) + total, piece.units)}: joints lengthen it by ${say(low, piece.units)} and ${say(high, piece.units)}`,
        ];
  });
  return [
    `${p.id}: ${p.mark}, ${p.name}, of ${piece.stocks[p.stock]?.name ?? p.stock}; ${p.status}: ${p.statusWhy}`,
    ...axes.flatMap((word, a) => {
      const s = p.size[a];
      return s ? figureLines(piece, word, s).map((l) => `  ${l}`) : [];
    }),
    ...grown,
    ...p.cuts.map((c) => `  cut ${c.id}: ${c.as}${c.mates.length > 0 ? `, takes ${c.mates.join(', ')}` : ''}`),
  ];
}
