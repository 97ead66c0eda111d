import type { Table } from '../making/table.js';

/** Columns of a check's table from `id`, label pairs; figures to the right, words to the left (label ending in `<`). */
export const columns = (...pairs: readonly (readonly [id: string, label: string])[]): Table['columns'] =>
  pairs.map(([id, label]) =>
    label.endsWith('<') ? { id, label: label.slice(0, -1), align: 'left' } : { id, label, align: 'right' },
  );

/** Rows that are alike but for their mark as one, in the order of the first; `say` puts the marks together. */
export function mergedRows(
  rows: readonly { readonly mark: string; readonly cells: readonly string[] }[],
  say: (marks: readonly string[]) => string,
): string[][] {
  const groups = new Map<string, { readonly marks: string[]; readonly cells: readonly string[] }>();
  for (const { mark, cells } of rows) {
    const key = JSON.stringify(cells);
    const group = groups.get(key) ?? { marks: [], cells };
    group.marks.push(mark);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ marks, cells }) => [say(marks), ...cells]);
}
