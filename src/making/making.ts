import type { Outcome, Diagnostic } from '../diag/diagnostic.js';
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

/** The stage. `volumes` (mm3) come from the solids. Fronts that move more than their reveal are findings. */
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
    findings: [...movingFronts(piece), ...(unknown.length > 0 ? [noMass(unknown)] : [])],
  };
}

const noMass = (parts: readonly string[]): Diagnostic => ({
  code: 'no-mass',
  severity: 'note',
  path: ['stock'],
  message: `The weight leaves out ${parts.length} parts whose material is in no table.`,
  touches: parts,
});
