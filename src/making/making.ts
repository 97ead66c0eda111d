import type { Outcome, Diagnostic } from '../diag/diagnostic.js';
import type { Piece } from '../piece/piece.js';
import { cutList } from './cut-list.js';
import { diagonals, type Diagonal } from './diagonals.js';
import { equalLengths, type EqualLength } from './equal-lengths.js';
import { hardwareList } from './hardware-list.js';
import { jointSchedule } from './joint-schedule.js';
import { milling, type Milling } from './milling.js';
import { panels, type Panel } from './panels.js';
import { blanksOf } from './rough.js';
import { shopping, type ShoppingGroup } from './shopping.js';
import { sparesOf } from './spares.js';
import type { Table } from './table.js';
import { weights, type Weights } from './weights.js';

/** The lists that the work is done from: plain data. */
export interface Making {
  readonly cutList: Table;
  readonly hardware: Table;
  readonly joints: Table;
  readonly equal: readonly EqualLength[];
  readonly diagonals: readonly Diagonal[];
  readonly shopping: readonly ShoppingGroup[];
  readonly milling: Milling;
  readonly panels: readonly Panel[];
  readonly weights: Weights;
}

/** The stage. `volumes` (mm3) come from the solids. */
export function makeLists(
  piece: Piece,
  volumes: readonly { readonly id: string; readonly volume: number }[],
): Outcome<Making> {
  const blanks = blanksOf(piece);
  const spares = sparesOf(piece, blanks);
  const value: Making = {
    cutList: cutList(piece),
    hardware: hardwareList(piece),
    joints: jointSchedule(piece),
    equal: equalLengths(piece),
    diagonals: diagonals(piece),
    shopping: shopping(piece, blanks, spares),
    milling: milling(piece, blanks, spares),
    panels: panels(piece, blanks),
    weights: weights(piece, volumes),
  };
  const { unknown } = value.weights;
  return {
    value,
    findings: unknown.length > 0 ? [noMass(unknown)] : [],
  };
}

const noMass = (parts: readonly string[]): Diagnostic => ({
  code: 'no-mass',
  severity: 'note',
  path: ['stock'],
  message: `The weight leaves out ${parts.length} parts whose material is in no table.`,
  touches: parts,
});
