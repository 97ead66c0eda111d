import type { Blank } from './board.js';
import type { Kind, Link } from './ground.js';

/** Blanks by kind: alike ones together, a run as one. `members[k]`: a list of blanks a piece of the kind (one a link). */
export interface Sorted {
  readonly kinds: readonly Kind[];
  readonly members: readonly (readonly (readonly Blank[])[])[];
}

/** Blanks of one class (wood and quarter) as kinds, in the order of their ids. `kerf` lies between blanks of a run. */
export function sorted(blanks: readonly Blank[], kerf: number): Sorted {
  const groups = new Map<string, Blank[][]>();
  const add = (key: string, unit: Blank[]): void => void groups.set(key, [...(groups.get(key) ?? []), unit]);
  const runs = new Map<string, Blank[]>();
  for (const b of [...blanks].sort((p, q) => (p.id < q.id ? -1 : 1))) {
    if (b.run) runs.set(b.run.id, [...(runs.get(b.run.id) ?? []), b]);
    else add(likeness(b), [b]);
  }
  for (const [id, run] of runs) {
    const inOrder = run.sort((p, q) => (p.run?.at ?? 0) - (q.run?.at ?? 0));
    if (inOrder.length === 1 && !id.includes(PART)) add(likeness(inOrder[0] as Blank), inOrder);
    else add(`run ${id}`, inOrder);
  }
  const kinds: Kind[] = [];
  const members: (readonly Blank[])[][] = [];
  for (const units of groups.values()) {
    kinds.push(kindOf(units[0] as Blank[], kerf));
    members.push(units);
  }
  return { kinds, members };
}
const likeness = (b: Blank): string =>
  [b.length, b.width, b.finished, b.shows, b.cut ?? '', [...b.allows].sort().join()].join('|');

function kindOf(unit: readonly Blank[], kerf: number): Kind {
  const links = unit.map((blank): Link => ({ l: blank.length, w: blank.width, blank }));
  const folds = links.length === 1 ? [[1]] : foldsOf(links, kerf);
  const long = (fold: readonly number[]): number => Math.max(...rowsOf(links, fold).map((row) => lengthOf(row, kerf)));
  const wide = (fold: readonly number[]): number =>
    rowsOf(links, fold).reduce((s, row) => s + Math.max(...row.map((x) => x.w)) + kerf, -kerf);
  const [run, part] = unit[0]?.run?.id.split(PART) ?? [];
  const sizes = { l: Math.min(...folds.map(long)), w: Math.min(...folds.map(wide)) };
  return { ...sizes, links, folds, ...(run !== undefined && part !== undefined ? { run } : {}) };
}
const lengthOf = (row: readonly Link[], kerf: number): number => row.reduce((s, x) => s + x.l + kerf, -kerf);
function rowsOf(links: readonly Link[], fold: readonly number[]): Link[][] {
  let at = 0;
  return fold.map((n) => links.slice(at, (at += n)));
}
/** One row, two, three and all beside one another: of each number of rows the split whose longest row is shortest. */
function foldsOf(links: readonly Link[], kerf: number): number[][] {
  const out: number[][] = [];
  for (let rows = 1; rows <= links.length; rows++) {
    if (rows > 3 && rows < links.length) continue;
    out.push(split(links, rows, kerf));
  }
  return out;
}
function split(links: readonly Link[], rows: number, kerf: number): number[] {
  if (rows === 1) return [links.length];
  let best: number[] | undefined;
  let least = Infinity;
  for (let first = 1; first <= links.length - rows + 1; first++) {
    const rest = split(links.slice(first), rows - 1, kerf);
    const fold = [first, ...rest];
    const long = Math.max(...rowsOf(links, fold).map((row) => lengthOf(row, kerf)));
    if (long >= least) continue;
    best = fold;
    least = long;
  }
  return best ?? [links.length];
}

/** Between the id of a run and the number of a part of it that comes from a board of its own. */
const PART = '#';
export const partId = (run: string, n: number): string => `${run}${PART}${n}`;
/** A run cut into `n` runs that follow one another, as even in length as can be. */
export function parted(run: readonly Blank[], n: number, kerf: number): Blank[][] {
  const links = run.map((blank): Link => ({ l: blank.length, w: blank.width, blank }));
  return rowsOf(links, split(links, Math.min(n, run.length), kerf)).map((row) => row.map((x) => x.blank));
}
