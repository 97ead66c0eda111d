import { inches, mm, toIn, type Units } from '../lengths/length.js';
import type { Piece } from '../piece/piece.js';
import { markRanges } from '../words/markOrder.js';
import { boardFeet, quarterInches } from './board-feet.js';
import { plainName, rowsBy, sameBlank, type Blank, type BlankRow } from './rough.js';

/** A blank that becomes no part: one more of a set, or a length to try settings on. nm. */
export interface Spare {
  readonly kind: 'spare' | 'trial';
  readonly stock: string;
  /** Finished thickness and width that it is milled to with the others. */
  readonly thickness: number;
  readonly width: number;
  /** As it is cut. */
  readonly rough: readonly [thickness: number, width: number, length: number];
  readonly feet: number;
  readonly why: string;
}

/** So many alike want one more; a trial piece is so long, and no wider than this: our default. */
const SET = 4;
const widest = (units: Units): number => (units === 'in' ? inches(4) : mm(100));
const trialLength = (units: Units): number => (units === 'in' ? inches(16) : mm(400));

/** Spare blanks: one more of every set of four and more alike that is not glued up, and a trial length of each thickness that is joined. */
export function sparesOf(piece: Piece, blanks: readonly Blank[]): Spare[] {
  return [...sets(blanks), ...trials(piece, blanks)];
}
const feetOf = (b: Blank, wide: number, long: number): number =>
  boardFeet(quarterInches(b.stock.quarter ?? '') ?? toIn(b.rough.thickness), toIn(wide), toIn(long));

function sets(blanks: readonly Blank[]): Spare[] {
  const single = blanks.filter((b) => b.rough.staves < 2);
  return rowsBy(single, sameBlank).flatMap((row): Spare[] => {
    const [first] = row.blanks;
    if (!first || row.blanks.length < SET) return [];
    const { rough, finished, stock } = first;
    return [
      {
        kind: 'spare',
        stock: stock.id,
        thickness: finished[0],
        width: finished[1],
        rough: [rough.thickness, rough.width, rough.length],
        feet: feetOf(first, rough.width, rough.length),
        why: `one more ${plainName(first.part.name)}, ${markRanges(row.blanks.map((b) => b.part.mark))}`,
      },
    ];
  });
}
/** Of each stock and thickness that has joints, as wide as the width that comes most often. */
function trials(piece: Piece, blanks: readonly Blank[]): Spare[] {
  const joined = new Set(
    piece.joints.filter((j) => j.entering !== j.receiving).flatMap((j) => [j.entering, j.receiving]),
  );
  const groups = rowsBy(
    blanks.filter((b) => joined.has(b.part.id)),
    (b) => `${b.stock.id}|${b.finished[0]}`,
  );
  return groups.flatMap((row): Spare[] => {
    const first = commonest(row);
    if (!first) return [];
    const { rough, finished, stock } = first;
    const whole = rough.staves > 1 ? [rough.jointed, rough.stave] : [finished[1], rough.width];
    const [width = 0, wide = 0] = whole.map((v) => Math.min(v, widest(piece.units)));
    const long = trialLength(piece.units);
    return [
      {
        kind: 'trial',
        stock: stock.id,
        thickness: finished[0],
        width,
        rough: [rough.thickness, wide, long],
        feet: feetOf(first, wide, long),
        why: 'trial pieces for its joints',
      },
    ];
  });
}
/** A blank of the width that comes most often; of several the narrowest. */
function commonest(row: BlankRow): Blank | undefined {
  const count = (b: Blank): number => row.blanks.filter((o) => o.finished[1] === b.finished[1]).length;
  return [...row.blanks].sort(
    (a, b) => count(b) - count(a) || a.finished[1] - b.finished[1] || (a.part.id < b.part.id ? -1 : 1),
  )[0];
}
