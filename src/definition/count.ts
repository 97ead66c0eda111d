import { eachValues, howMany, readEach } from '../lengths/each.js';
import type { Found } from './json.js';
import { entries } from './json.js';

/** Most parts that are built of one definition (our default). */
export const MOST_PARTS = 600;
/** Parts of one drawer: front, two sides, box front, box back, bottom. */
const OF_A_DRAWER = 6;

/** How many parts a definition makes: its rows counted out, groups with those that are like them, drawers by their grids. */
export function partsMade(value: Found): number {
  const groups = entries(value['groups']);
  const inGroup = (g: Found): number => {
    const other = groups.find(([id]) => id === (g['mirror'] ?? g['like']))?.[1];
    return sum(entries((other ?? g)['parts']).map(([, part]) => countOf(part)));
  };
  const rows = entries(value['parts']);
  const single = sum(rows.map(([, part]) => countOf(part))) + sum(groups.map(([, g]) => inGroup(g)));
  if (single > MOST_PARTS) return single;
  const drawers = entries(value['drawers']);
  const ids = drawers.length === 0 ? [] : rows.flatMap(([id, part]) => idsOf(id, part));
  const cells = (d: Found): number =>
    ['across', 'up'].reduce(
      (n, field) => n * Math.max(0, bounds(field, d, drawers).flatMap((w) => named(w, ids)).length - 1),
      1,
    );
  return single + OF_A_DRAWER * sum(drawers.map(([, d]) => cells(d)));
}
const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);

const countsOf = (entry: Found): ReturnType<typeof readEach>['counts'] =>
  typeof entry['each'] === 'string' ? readEach(entry['each']).counts : [];
const countOf = (entry: Found): number => howMany(countsOf(entry));
const idsOf = (id: string, entry: Found): string[] =>
  eachValues(countsOf(entry)).map((letters) =>
    id.replace(/\{([a-z])\}/g, (all, letter: string) => String(letters[letter] ?? all)),
  );

/** The bounding parts of a grid as typed, its own or those of the drawers that it is like. */
function bounds(field: string, d: Found, drawers: readonly (readonly [string, Found])[]): readonly string[] {
  const seen = new Set<unknown>();
  for (let at: Found | undefined = d; at !== undefined && !seen.has(at);) {
    const list = at[field];
    if (Array.isArray(list)) return list.filter((w): w is string => typeof w === 'string');
    seen.add(at);
    const { like }: Found = at;
    at = drawers.find(([id]) => id === like)?.[1];
  }
  return [];
}
/** What a word of a grid names: one part, a range of a row, or all that a `*` or a letter sweeps up. */
function named(word: string, ids: readonly string[]): readonly string[] {
  const range = /\{(\d{1,4})\.\.(\d{1,4})\}/.exec(word);
  if (range) return Array.from({ length: Math.max(0, Number(range[2]) - Number(range[1]) + 1) }, () => word);
  if (!/[*{]/.test(word)) return [word];
  const test = new RegExp(
    `^${word
      .replace(/\*/g, '[^.]*')
      .replace(/\{[^}]*\}/g, '\\d+')
      .replace(/\./g, '\\.')}$`,
  );
  return ids.filter((id) => test.test(id));
}
