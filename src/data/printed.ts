import { SOURCES, type SourceKey } from './sources.js';

/**
 * How a figure was had: R read in the source, R2 read in two that agree, RM read and remembered alike, MC remembered and
 * borne out by calculation, M from memory only, D derived from figures of the source.
 */
export type FigureStatus = 'R' | 'R2' | 'RM' | 'MC' | 'M' | 'D';

/** One figure with where it comes from. */
export interface Figure {
  readonly value: number;
  /** As it is printed beside the figure. */
  readonly source: string;
  readonly key: SourceKey;
  readonly status: FigureStatus;
  /** It was not read in its source: a mark stands beside it wherever it is printed. */
  readonly memory?: true;
}
/** A cell as printed, with its status; null where the table has none. */
export type Cell = readonly [value: number, status: FigureStatus] | null;

/** A table as it is printed: rows and units as there. */
export interface Printed<C extends string> {
  readonly key: SourceKey;
  /** `13-5`; an equation or a section where it is no table. */
  readonly table: string;
  readonly page?: string;
  readonly columns: readonly (readonly [name: C, unit: string])[];
  readonly rows: readonly (readonly [id: string, ...cells: Cell[]])[];
}
export const printed = <const C extends string>(table: Printed<C>): Printed<C> => table;

/** `Wood Handbook, FPL-GTR-190, table 13-5`; says so where the figure was not read there. */
export function sourceText(key: SourceKey, table: string, status: FigureStatus): string {
  const place = `${SOURCES[key].short}${table === '' ? '' : `, ${/^\d/.test(table) ? `table ${table}` : table}`}`;
  if (status === 'M') return `from memory (${place})`;
  if (status === 'MC') return `from memory, borne out by calculation (${place})`;
  return status === 'D' ? `derived from ${place}` : place;
}
const remembered = (status: FigureStatus): boolean => status === 'M' || status === 'MC';

/** A figure that stands in no table of its own. `table`: a section, an equation, a table number; may be empty. */
export const figure = (value: number, status: FigureStatus, key: SourceKey, table = ''): Figure => ({
  value,
  status,
  key,
  source: sourceText(key, table, status),
  ...(remembered(status) ? { memory: true as const } : {}),
});

/** The figure of a cell, in `scale` times its printed unit; undefined where the table has none. */
export function cell<C extends string>(table: Printed<C>, id: string, column: C, scale = 1): Figure | undefined {
  const k = table.columns.findIndex(([name]) => name === column);
  const found = table.rows.find(([row]) => row === id)?.[k + 1] as Cell | undefined;
  // Twelve places: what a unit adds to a printed figure is no figure.
  return found ? figure(Number((found[0] * scale).toPrecision(12)), found[1], table.key, table.table) : undefined;
}

/** The figure of a cell that the program cannot do without: a hole in a table is a slip of ours, and throws. */
export function need<C extends string>(table: Printed<C>, id: string, column: C, scale = 1): Figure {
  const found = cell(table, id, column, scale);
  if (found === undefined) throw new Error(`no figure for ${id} in table ${table.table}`);
  return found;
}

/** A figure that follows from others: remembered when one of them is. */
export const derived = (value: number, rule: string, from: readonly Figure[]): Figure => {
  const key = from[0]?.key ?? 'ours';
  return {
    value,
    status: 'D',
    key,
    source: `${rule}, from ${[...new Set(from.map((f) => f.source))].join('; ')}`,
    ...(from.some((f) => f.memory) ? { memory: true as const } : {}),
  };
};
