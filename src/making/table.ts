/** A table as data: feeds the drawn grid, the CSV and the page alike. */
export interface Table {
  readonly id: string;
  readonly columns: readonly { readonly id: string; readonly label: string; readonly align: 'left' | 'right' }[];
  readonly rows: readonly (readonly string[])[];
}
/** Columns from `id:label`, right-aligned where the label ends in `>`. */
export const columns = (...names: readonly string[]): Table['columns'] =>
  names.map((n) => {
    const [id, label] = n.split(':') as [string, string];
    return label.endsWith('>') ? { id, label: label.slice(0, -1), align: 'right' } : { id, label, align: 'left' };
  });
