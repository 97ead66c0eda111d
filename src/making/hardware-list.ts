import type { Piece } from '../piece/piece.js';
import { compareMarks, markRanges } from '../words/markOrder.js';
import { columns, type Table } from './table.js';

/** Everything bought, by name, with where it goes; the screws of slides in rows of their own. */
export function hardwareList(piece: Piece): Table {
  const rows = new Map<string, { kind: string; count: number; where: Set<string> }>();
  for (const h of piece.hardware) {
    const where = piece.drawers.find((d) => d.id === h.drawer)?.mark;
    const marks = where === undefined ? piece.parts.filter((p) => h.into.includes(p.id)).map((p) => p.mark) : [where];
    const row = rows.get(h.name) ?? { kind: h.kind, count: 0, where: new Set<string>() };
    row.count += 1;
    for (const m of marks) row.where.add(m);
    rows.set(h.name, row);
  }
  const order = ['slide', 'pull', 'screw'];
  const sorted = [...rows].sort(
    ([a, x], [b, y]) => order.indexOf(x.kind) - order.indexOf(y.kind) || compareMarks(a, b),
  );
  return {
    id: 'hardware',
    columns: columns('name:Name', 'count:No.>', 'where:Where'),
    rows: sorted.map(([name, r]) => [name, String(r.count), markRanges([...r.where])]),
  };
}
