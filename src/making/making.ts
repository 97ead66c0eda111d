import type { Outcome, Diagnostic } from '../diag/diagnostic.js';
import { quarterByName } from '../data/quarters.js';
import { formatLength } from '../lengths/format.js';
import type { Piece } from '../piece/piece.js';
import { footage, type BoardFootage } from './board-feet.js';
import { cutList } from './cut-list.js';
import { diagonals, type Diagonal } from './diagonals.js';
import { equalLengths, type EqualLength } from './equal-lengths.js';
import { hardwareList } from './hardware-list.js';
import { jointSchedule } from './joint-schedule.js';
import type { Season } from '../wood/moisture.js';
import { movingFronts, reveals } from './reveals.js';
import type { Table } from './table.js';
import { weights, type Weights } from './weights.js';

/** The lists that the work is done from: plain data. */
export interface Making {
  readonly cutList: Table;
  readonly hardware: Table;
  readonly joints: Table;
  readonly equal: readonly EqualLength[];
  readonly diagonals: readonly Diagonal[];
  readonly footage: readonly BoardFootage[];
  readonly weights: Weights;
  /** Gaps over drawer fronts through the year; when the season is known and there are drawers. */
  readonly reveals?: Table;
}

/** The stage. `volumes` (mm3) come from the solids. A part thicker than its rough stock can give is a finding. */
export function makeLists(
  piece: Piece,
  volumes: readonly { readonly id: string; readonly volume: number }[],
  season?: Season,
): Outcome<Making> {
  const value: Making = {
    cutList: cutList(piece),
    hardware: hardwareList(piece),
    joints: jointSchedule(piece),
    equal: equalLengths(piece),
    diagonals: diagonals(piece),
    footage: footage(piece),
    weights: weights(piece, volumes),
    ...(season && piece.drawers.length > 0 ? { reveals: reveals(piece, season) } : {}),
  };
  const { unknown } = value.weights;
  return {
    value,
    findings: [...thin(piece), ...movingFronts(piece), ...(unknown.length > 0 ? [noMass(unknown)] : [])],
  };
}

/** Parts that their rough stock gives only from short flat boards (warning), or not at all (error). */
function thin(piece: Piece): Diagnostic[] {
  return piece.parts.flatMap((p): Diagnostic[] => {
    const stock = piece.stocks[p.stock];
    const quarter = stock?.kind === 'lumber' ? quarterByName(stock.quarter ?? '') : undefined;
    const thickness = p.size[p.thickness].value;
    if (!quarter || thickness <= quarter.gives) return [];
    const none = thickness > quarter.atMost;
    const fig = formatLength(thickness, piece.units);
    return [
      {
        code: none ? 'stock-too-thin' : 'stock-barely-thick',
        severity: none ? 'error' : 'warning',
        path: ['parts', p.id],
        message: `${p.mark} is ${fig} thick; ${quarter.name} planes to ${formatLength(quarter.gives, piece.units)}${none ? '' : ', to this only from short flat boards'}.`,
        hint: 'Take the next thicker stock, or make the part thinner.',
        touches: [p.id],
      },
    ];
  });
}

const noMass = (parts: readonly string[]): Diagnostic => ({
  code: 'no-mass',
  severity: 'note',
  path: ['stock'],
  message: `The weight leaves out ${parts.length} parts whose material is in no table.`,
  touches: parts,
});
