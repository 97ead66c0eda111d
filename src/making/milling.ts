import { nm } from '../lengths/length.js';
import type { Piece, Status } from '../piece/piece.js';
import { gangOf, tooShort } from '../shop/rough.js';
import { rowsBy, type Blank, type BlankRow } from './rough.js';
import type { Spare } from './spares.js';

/** How far a row is milled before the piece is there: `wide` and `long` are left as they are, or finished. */
export interface MillingRow extends BlankRow {
  readonly status: Status;
  /** As it is cut from the board and first milled, nm; of staves each one. */
  readonly rough: readonly [thickness: number, width: number, length: number];
  /** As it leaves the final milling: what waits is left rough. */
  readonly final: readonly [thickness: number, width: number, length: number];
  /** Sizes of `final` that are left over: width, length. */
  readonly waits: readonly ('width' | 'length')[];
  readonly staves: number;
  /** Of staves, their width when jointed: the panel is planed after it is glued. */
  readonly jointed?: number;
}
/** All blanks of one finished thickness: one setting of the planer, one session. */
export interface MillingGroup {
  readonly thickness: number;
  readonly rows: readonly MillingRow[];
  readonly spares: readonly Spare[];
}
/** Short blanks that are milled in one length and cut apart after. */
export interface Gang {
  readonly marks: readonly string[];
  readonly name: string;
  readonly stock: string;
  readonly section: readonly [thickness: number, width: number];
  /** Finished length of each, how many there are, how many lie in one length, how many such lengths, each how long. */
  readonly each: number;
  readonly count: number;
  readonly of: number;
  readonly lengths: number;
  readonly long: number;
  /** Alone it is short: the length is left long until the thickness is done. */
  readonly padded: boolean;
}
/** Blanks of one width, whatever their thickness: one setting of the fence. */
export interface EqualWidth {
  readonly width: number;
  readonly marks: readonly string[];
}
export interface Milling {
  readonly groups: readonly MillingGroup[];
  readonly widths: readonly EqualWidth[];
  readonly gangs: readonly Gang[];
}

export function milling(piece: Piece, blanks: readonly Blank[], spares: readonly Spare[]): Milling {
  return { groups: groupsOf(blanks, spares), widths: widthsOf(blanks), gangs: gangsOf(piece, blanks) };
}

/** Thickest first: what comes out too thin for its group still serves the next. */
function groupsOf(blanks: readonly Blank[], spares: readonly Spare[]): MillingGroup[] {
  return rowsBy(blanks, (b) => `${b.finished[0]}`)
    .map(({ blanks: mine }): MillingGroup => {
      const thickness = mine[0]?.finished[0] ?? 0;
      const rows = rowsBy(mine, (b) => [b.stock.id, b.part.status, ...b.finished, b.rough.staves].join('|'))
        .map(millingRow)
        .sort((a, b) => b.final[1] - a.final[1] || b.final[2] - a.final[2]);
      return { thickness, rows, spares: spares.filter((s) => s.thickness === thickness) };
    })
    .sort((a, b) => b.thickness - a.thickness);
}
/** What a status leaves for later. Nothing is brought to width or length that is fitted to the piece or still to be measured. */
const WAITS: Readonly<Record<Status, MillingRow['waits']>> = {
  'cut now': [],
  'leave long': ['length'],
  'fit to the piece': ['width', 'length'],
  'measure first': ['width', 'length'],
};
function millingRow(row: BlankRow): MillingRow {
  const { part, finished, rough } = row.blanks[0] as Blank;
  const waits = WAITS[part.status];
  const glued = rough.staves > 1;
  const width = glued || waits.includes('width') ? rough.width : finished[1];
  const length = glued || waits.includes('length') ? rough.length : finished[2];
  return {
    ...row,
    status: part.status,
    rough: [rough.thickness, rough.stave, rough.length],
    final: [finished[0], width, length],
    waits,
    staves: rough.staves,
    ...(glued ? { jointed: rough.jointed } : {}),
  };
}

/** Widths that come more than once among what is brought to width now, widest first. */
function widthsOf(blanks: readonly Blank[]): EqualWidth[] {
  const now = blanks.filter((b) => b.rough.staves < 2 && !WAITS[b.part.status].includes('width'));
  return rowsBy(now, (b) => `${b.finished[1]}`)
    .filter((r) => r.blanks.length > 1)
    .map((r) => ({ width: r.blanks[0]?.finished[1] ?? 0, marks: r.blanks.map((b) => b.part.mark) }))
    .sort((a, b) => b.width - a.width);
}

function gangsOf(piece: Piece, blanks: readonly Blank[]): Gang[] {
  const { units, shop, profile } = piece;
  const shortest = profile?.machines.planer?.shortest;
  const short = blanks.filter((b) => tooShort(b.finished[2], units, shortest));
  return rowsBy(short, (b) => [b.stock.id, ...b.finished, b.rough.staves].join('|')).map((row): Gang => {
    const { finished, rough, stock } = row.blanks[0] as Blank;
    const glued = rough.staves > 1;
    const each = glued ? rough.length : finished[2];
    const count = row.blanks.length * rough.staves;
    const facts = { allowance: shop.allowance[2], kerf: shop.kerf, units };
    const gang = gangOf(each, count, shortest === undefined ? facts : { ...facts, shortest });
    return {
      marks: row.blanks.map((b) => b.part.mark),
      name: glued ? `staves, ${row.name}` : row.name,
      stock: stock.id,
      section: [rough.thickness, nm(rough.stave)],
      each,
      count,
      of: gang.of,
      lengths: Math.ceil(count / gang.of),
      long: gang.length,
      padded: !gang.reaches,
    };
  });
}
