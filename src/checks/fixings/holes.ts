import { SCREWS, type ScrewGauge } from '../../data/screws.js';
import { mm } from '../../lengths/length.js';
import type { Table } from '../../making/table.js';
import type { Piece } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { woodOf } from '../../wood/material.js';
import { compareMarks, markRanges } from '../../words/markOrder.js';
import type { Verdict } from '../check.js';
import { columns } from '../columns.js';
import { ratio, type Single } from '../grouped.js';
import { about, type Bite } from './bite.js';
import { POUND_FORCE_N } from '../../lengths/units.js';

/** Side hardness from which a wood takes the larger pilot: between Douglas-fir (710 lbf) and cherry (950): our default. */
const HARD = 800 * POUND_FORCE_N;
/** The same by specific gravity, for a wood without a hardness: our default. */
const DENSE = 0.47;
/** Drills stand this near to one another, nm: our default. */
const DRILL = mm(0.3);

const rowOf = (b: Bite): ScrewGauge | undefined =>
  [...SCREWS]
    .map((row) => ({ row, off: Math.abs(row.diameter - b.screw.diameter) }))
    .filter(({ off }) => off <= mm(0.3))
    .sort((p, q) => p.off - q.off || p.row.gauge - q.row.gauge)[0]?.row;

interface Holes {
  readonly row: ScrewGauge;
  readonly pilot: number;
  readonly hard: boolean;
  readonly wood: string;
}
/** The holes for a screw in the wood that holds it; undefined in sheet goods and for a gauge that is in no table. */
export function holesFor(b: Bite, piece: Piece): Holes | undefined {
  const wood = woodOf(piece.stocks[b.holds.part.stock]);
  const row = rowOf(b);
  if (!wood || !row) return undefined;
  const hard = wood.hardness ? wood.hardness.value >= HARD : wood.gravity.value >= DENSE;
  return { row, pilot: hard ? row.pilotHard : row.pilotSoft, hard, wood: piece.stocks[b.holds.part.stock]?.name ?? '' };
}
/** The pilot as it is drilled, nm: undefined where the screw makes its own way. */
const drilled = (b: Bite): number | undefined => {
  const { joint } = b;
  const cut =
    joint && b.holds.part.cuts.find((c) => c.shape === 'bore' && c.as === 'pilot' && c.id.startsWith(`${joint.id}.`));
  return cut?.shape === 'bore' ? cut.diameter : undefined;
};

/** Is the pilot that the joint drills the one for the hardness of the wood? */
export function pilot(b: Bite, piece: Piece): Single[] {
  const holes = holesFor(b, piece);
  const own = drilled(b);
  if (!holes || own === undefined) return [];
  const off = own - holes.pilot;
  const verdict: Verdict = Math.abs(off) <= DRILL ? 'pass' : off > 0 ? 'note' : 'warning';
  const want = sayQuantity(quantity('length', holes.pilot), piece.units);
  const wood = woodOf(piece.stocks[b.holds.part.stock]);
  return [
    {
      code: 'screw-pilot',
      verdict,
      about: `has in ${holes.wood.toLowerCase()}, which counts as ${holes.hard ? 'hard' : 'soft'}, a pilot of`,
      figure: quantity('length', own),
      limit: quantity('length', holes.pilot),
      ...(verdict === 'pass' ? { margin: Math.max(1, ratio(own, holes.pilot)) } : {}),
      ...(verdict === 'pass'
        ? {}
        : { remedy: off > 0 ? `Drill ${want}: it holds better.` : `Drill ${want}: the wood may split.` }),
      worked: {
        rule: 'pilot by gauge, the larger in the harder wood',
        sources: [`${holes.row.source}; hard from 800 lbf (3.6 kN) side hardness: our default`],
        inputs: [
          {
            name: 'shank',
            quantity: quantity('fine', b.screw.diameter),
            source: 'ASME B18.6.1, 0.060 + 0.013 × gauge',
          },
          ...(wood?.hardness
            ? [
                {
                  name: 'side hardness',
                  quantity: quantity('force', wood.hardness.value),
                  source: wood.hardness.source,
                  ...(wood.hardness.memory ? { memory: true } : {}),
                },
              ]
            : []),
        ],
      },
      ...about(b, piece),
    },
  ];
}

/** Every sort of screw with its holes: clearance in what it draws on, pilot in what holds it and how deep. */
export function screwTable(bites: readonly Bite[], piece: Piece): Table {
  const say = (of: 'length' | 'fine', v: number): string => sayQuantity(quantity(of, v), piece.units);
  const groups = new Map<
    string,
    { readonly cells: readonly string[]; n: number; readonly clamps: Set<string>; readonly holds: Set<string> }
  >();
  for (const b of bites) {
    const holes = holesFor(b, piece);
    // As deep as the thread in hard wood, half of it in soft: common practice.
    const deep = holes && (holes.hard ? b.inside : b.inside / 2);
    const cells = [
      b.body.name,
      say('fine', b.inside),
      say('fine', b.left),
      holes ? say('length', holes.row.shank) : '',
      holes ? say('length', holes.pilot) : '',
      deep === undefined ? '' : say('fine', deep),
    ];
    const key = JSON.stringify(cells);
    const group = groups.get(key) ?? { cells, n: 0, clamps: new Set<string>(), holds: new Set<string>() };
    group.n += 1;
    const { marks, on = [] } = about(b, piece);
    for (const m of marks) group.clamps.add(m);
    for (const m of on) group.holds.add(m);
    groups.set(key, group);
  }
  const rows = [...groups.values()].sort(
    (p, q) =>
      compareMarks(p.cells[0] ?? '', q.cells[0] ?? '') ||
      compareMarks(markRanges([...p.holds]), markRanges([...q.holds])),
  );
  return {
    id: 'screws',
    columns: columns(
      ['screw', 'Screw<'],
      ['count', 'No.'],
      ['clamps', 'Draws on<'],
      ['holds', 'Holds in<'],
      ['inside', 'In it'],
      ['left', 'Left before a face'],
      ['clearance', 'Clearance'],
      ['pilot', 'Pilot'],
      ['deep', 'Pilot deep'],
    ),
    rows: rows.map(({ cells: [name = '', ...rest], n, clamps, holds }) => [
      name,
      String(n),
      markRanges([...clamps]),
      markRanges([...holds]),
      ...rest,
    ]),
  };
}
