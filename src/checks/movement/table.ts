import { formatLength } from '../../lengths/format.js';
import type { Table } from '../../making/table.js';
import type { Axis } from '../../geom/axis.js';
import type { Part } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { compareMarks, markRanges } from '../../words/markOrder.js';
import { columns, mergedRows } from '../columns.js';
import type { Moving } from './context.js';
import { speciesOf, strain } from './strain.js';

/** Every part of solid wood across its width and its thickness, as made and through the year. Equal parts in one row. */
export function partsTable(moving: Moving): Table {
  const { piece, season } = moving;
  const fine = (v: number): string => sayQuantity(quantity('fine', v), piece.units);
  const three = (part: Part, own: Axis): string[] => {
    const size = part.size[own].value;
    const at = (to: number): string => fine(size * (1 + strain(piece, part, own, season.made, to)));
    return [formatLength(size, piece.units), at(season.driest), at(season.wettest)];
  };
  const rows = [...piece.parts]
    .sort((p, q) => compareMarks(p.mark, q.mark))
    .flatMap((part) => {
      const stock = piece.stocks[part.stock];
      if (!stock || !speciesOf(piece, part)) return [];
      const wood = `${stock.name}, ${stock.cut ?? 'cut not known'}`;
      return [{ mark: part.mark, cells: [wood, ...three(part, part.width), ...three(part, part.thickness)] }];
    });
  return {
    id: 'movement',
    columns: columns(
      ['part', 'Part<'],
      ['wood', 'Wood<'],
      ['width', 'Width'],
      ['width_dry', 'driest'],
      ['width_wet', 'wettest'],
      ['thickness', 'Thickness'],
      ['thickness_dry', 'driest'],
      ['thickness_wet', 'wettest'],
    ),
    rows: mergedRows(rows, markRanges),
  };
}
