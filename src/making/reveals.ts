import type { Diagnostic } from '../diag/diagnostic.js';
import { formatLength } from '../lengths/format.js';
import { inches, nm } from '../lengths/length.js';
import type { Drawer, Part, Piece } from '../piece/piece.js';
import { woodOf } from '../wood/material.js';
import type { Season } from '../wood/moisture.js';
import { change } from '../wood/movement.js';
import { compareMarks } from '../words/markOrder.js';
import { columns, type Table } from './table.js';

/** Change of a front's height to a moisture, nm; 0 for a wood that is in no table. */
function moved(piece: Piece, front: Part, from: number, to: number): number {
  const stock = piece.stocks[front.stock];
  const wood = woodOf(stock);
  return wood ? change(front.size[front.width].value, wood, stock?.cut, from, to) : 0;
}

/**
 * The gap over each inset drawer front as it is made, at the driest and at the wettest, all movement taken upward. Gaps
 * differ with the height of the front, and that is right. Decimals: they are to be looked at, not cut to.
 */
export function reveals(piece: Piece, season: Season): Table {
  const rows = [...piece.drawers]
    .sort((a, b) => compareMarks(a.mark, b.mark))
    .flatMap((d) => {
      const front = frontOf(piece, d);
      if (!front) return [];
      const fig = (v: number): string => formatLength(v, piece.units);
      const about = (v: number): string => formatLength(roundFine(v, piece), piece.units);
      const top = d.gaps.top.value;
      return [
        [
          d.mark,
          fig(d.opening.up.value),
          fig(front.size[front.width].value),
          fig(top),
          about(top - moved(piece, front, season.made, season.driest)),
          about(top - moved(piece, front, season.made, season.wettest)),
        ],
      ];
    });
  return {
    id: 'reveals',
    columns: columns(
      'drawer:Drawer',
      'opening:Opening>',
      'front:Front>',
      'made:Gap above, made>',
      'driest:Driest>',
      'wettest:Wettest>',
    ),
    rows,
  };
}

const frontOf = (piece: Piece, d: Drawer): Part | undefined => piece.parts.find((p) => p.id === d.front);
/** To .001 in or 0.01 mm. */
const roundFine = (v: number, piece: Piece): number => {
  const step = piece.units === 'in' ? 25_400 : 10_000;
  return nm(Math.round(v / step) * step);
};

/** Inset fronts over 6 in (150 mm) high move much unless they are quartered or rift (common practice). */
export function movingFronts(piece: Piece): Diagnostic[] {
  return piece.drawers.flatMap((d): Diagnostic[] => {
    const front = frontOf(piece, d);
    const stock = front && piece.stocks[front.stock];
    if (!front || stock?.kind !== 'lumber' || stock.cut === 'quartered' || stock.cut === 'rift') return [];
    const high = front.size[front.width].value;
    if (high <= (piece.units === 'in' ? inches(6) : 150e6)) return [];
    return [
      {
        code: 'front-moves-much',
        severity: 'warning',
        path: ['drawers', d.id.replace(/_\d+$/, '')],
        message: `The front of ${d.mark} is ${formatLength(high, piece.units)} high and not quartered: the gap above it changes much with the season.`,
        hint: 'Take quartered or rift wood for it.',
        touches: [front.id],
      },
    ];
  });
}
