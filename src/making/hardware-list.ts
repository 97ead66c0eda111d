import type { Piece } from '../piece/piece.js';
import { compareMarks, markRanges } from './marks.js';
import { slideScrews } from './slide-screws.js';
import { columns, type Table } from './table.js';

/** Everything bought, by name, with where it goes; the screws that come with slides in a row of their own. */
export function hardwareList(piece: Piece): Table {
  const rows = new Map<string, { kind: string; count: number; where: Set<string> }>();
  const add = (kind: string, name: string, count: number, where: string): void => {
    const row = rows.get(name) ?? { kind, count: 0, where: new Set<string>() };
    row.count += count;
    if (where !== '') row.where.add(where);
    rows.set(name, row);
  };
  for (const h of piece.hardware) {
    const where = piece.drawers.find((d) => d.id === h.drawer)?.mark;
    const marks = where === undefined ? piece.parts.filter((p) => h.into.includes(p.id)).map((p) => p.mark) : [where];
    add(h.kind, h.name, 1, '');
    for (const m of marks) rows.get(h.name)?.where.add(m);
    if (h.kind !== 'slide') continue;
    for (const s of slideScrews(h, piece))
      add('screw', `${s.name}, for slides, into the ${s.into}`, s.count, where ?? '');
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
