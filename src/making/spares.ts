import { inches, mm, toIn, type Units } from '../lengths/length.js';
import type { Piece } from '../piece/piece.js';
import { markRanges } from '../words/markOrder.js';
import { boardFeet, quarterInches } from '../shop/board-feet.js';
import { plainName, rowsBy, sameBlank, type Blank, type BlankRow } from './rough.js';

/** A blank that becomes no part: one more of a set, or a length to try settings on. nm. */
export interface Spare {
  readonly kind: 'spare' | 'trial';
  readonly stock: string;
  readonly count: number;
  /** Finished thickness and width that it is milled to with the others. */
  readonly thickness: number;
  readonly width: number;
  /** As it is cut. */
  readonly rough: readonly [thickness: number, width: number, length: number];
  /** Of all of them, board feet. */
  readonly feet: number;
  readonly why: string;
}

/** So many alike want one more; a trial piece is so long, and no wider than this: our default. */
const SET = 4;
const widest = (units: Units): number => (units === 'in' ? inches(4) : mm(100));
const trialLength = (units: Units): number => (units === 'in' ? inches(16) : mm(400));

/**
 * Spare blanks and trial lengths: as many as the piece asks for of a part, and a stock of each thickness. Where no spares are
 * asked for at all, one more of every set of four and more that is not glued up; where a stock says nothing, one trial.
 */
export function sparesOf(piece: Piece, blanks: readonly Blank[]): Spare[] {
  return [...sets(piece, blanks), ...trials(piece, blanks)];
}
const feetOf = (b: Blank, wide: number, long: number): number =>
  boardFeet(quarterInches(b.stock.quarter ?? '') ?? toIn(b.rough.thickness), toIn(wide), toIn(long));

function sets(piece: Piece, blanks: readonly Blank[]): Spare[] {
  return rowsBy(blanks, sameBlank).flatMap((row): Spare[] => {
    const [first] = row.blanks;
    const asked = row.blanks.reduce((n, b) => n + (piece.spares?.[b.part.id] ?? 0), 0);
    if (!first) return [];
    const { rough, finished, stock } = first;
    const usual = piece.spares === undefined && rough.staves < 2 && row.blanks.length >= SET ? 1 : 0;
    const count = asked > 0 ? asked : usual;
    if (count === 0) return [];
    const what = `${rough.staves > 1 ? 'stave of the ' : ''}${plainName(first.part.name)}`;
    return [
      {
        kind: 'spare',
        stock: stock.id,
        count,
        thickness: finished[0],
        width: rough.staves > 1 ? rough.jointed : finished[1],
        rough: [rough.thickness, rough.stave, rough.length],
        feet: count * feetOf(first, rough.stave, rough.length),
        why: `${count === 1 ? `one more ${what}` : `${count} more, ${what}`}, ${markRanges(row.blanks.map((b) => b.part.mark))}`,
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
    const count = first?.stock.trials ?? 1;
    if (!first || count === 0) return [];
    const { rough, finished, stock } = first;
    const whole = rough.staves > 1 ? [rough.jointed, rough.stave] : [finished[1], rough.width];
    const [width = 0, wide = 0] = whole.map((v) => Math.min(v, widest(piece.units)));
    const long = trialLength(piece.units);
    return [
      {
        kind: 'trial',
        stock: stock.id,
        count,
        thickness: finished[0],
        width,
        rough: [rough.thickness, wide, long],
        feet: count * feetOf(first, wide, long),
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
