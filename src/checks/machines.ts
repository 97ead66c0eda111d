import { overAll } from '../geom/growth.js';
import { inches, mm, type Length } from '../lengths/length.js';
import type { Part, Piece } from '../piece/piece.js';
import type { Machines, ShopProfile } from '../shop/profile.js';
import { roughOf, type Sizes } from '../shop/rough.js';
import { quantity, sayQuantity } from '../value/quantity.js';
import type { Cut } from '../words/cut.js';
import { glueUps } from './machines/clamps.js';
import type { Check, CheckInput, Judgement } from './check.js';
import { grouped, partEntry, ratio, type Single } from './grouped.js';

const MANUAL = "the shop file; the machine's manual stands over it";
/** Parts shorter than this are small at a machine: common practice, from memory. */
const smallLength = (piece: Piece): Length => (piece.units === 'in' ? inches(12) : mm(300));

/** A rough blank: over-all size and the shop's allowance; a stave's width where it is glued up. nm. */
interface Blank {
  readonly part: Part;
  readonly thick: number;
  readonly wide: number;
  readonly long: number;
  /** Width of one stave, the whole width where there is one. */
  readonly stave: number;
}
const finishedOf = (p: Part): Sizes => [overAll(p, p.thickness), overAll(p, p.width), overAll(p, p.length)];
function blankOf(part: Part, piece: Piece): Blank {
  const rough = roughOf(finishedOf(part), piece.shop.allowance, piece.units, part.staves);
  return { part, thick: rough.thickness, wide: rough.width, long: rough.length, stave: rough.stave };
}

interface Limit {
  readonly code: string;
  readonly about: string;
  readonly needs: number;
  readonly has: Length;
  readonly rule: string;
  readonly remedy: string;
  /** The figure must not be under the limit, rather than not over it. */
  readonly least?: boolean;
  readonly path: Judgement['path'];
}
function single(part: Part, l: Limit): Single {
  const good = l.least ? l.needs >= l.has : l.needs <= l.has;
  return {
    code: l.code,
    verdict: good ? 'pass' : 'warning',
    about: l.about,
    figure: quantity('length', Math.round(l.needs)),
    limit: quantity('length', l.has),
    margin: l.least ? ratio(l.needs, l.has) : ratio(l.has, l.needs),
    worked: {
      rule: l.rule,
      sources: [MANUAL],
      inputs: [
        { name: 'the part', quantity: quantity('length', Math.round(l.needs)) },
        { name: 'the machine', quantity: quantity('length', l.has), source: 'shop' },
      ],
    },
    ...(good ? {} : { remedy: l.remedy }),
    touches: [part.id],
    path: good ? l.path : partEntry(part),
    marks: [part.mark],
  };
}

/** What the machines of solid wood say to one blank. */
function milled(b: Blank, piece: Piece, m: Machines): Single[] {
  const { part } = b;
  const say = (v: number): string => sayQuantity(quantity('length', Math.round(v / 396_875) * 396_875), piece.units);
  const out: Single[] = [];
  const add = (l: Limit): void => void out.push(single(part, l));
  const { jointer, planer } = m;
  if (jointer) {
    const staves = Math.ceil(b.wide / jointer.width);
    add({
      code: 'wider-than-jointer',
      about:
        part.staves && part.staves > 1 ? `one of ${part.staves} staves over the jointer` : 'flattened on the jointer',
      needs: b.stave,
      has: jointer.width,
      rule: 'width of the blank, or of a stave, against the cutters of the jointer',
      remedy: `Glue it up from ${staves} staves of ${say(roughOf(finishedOf(part), piece.shop.allowance, piece.units, staves).jointed)}, or flatten it by hand or on a sled in the planer.`,
      path: ['shop', 'machines', 'jointer'],
    });
  }
  if (planer) {
    const halves = Math.ceil(b.wide / planer.width);
    const path = ['shop', 'machines', 'planer'];
    add({
      code: 'wider-than-planer',
      about: part.staves && part.staves > 1 ? 'planed when it is glued up' : 'planed to thickness',
      needs: b.wide,
      has: planer.width,
      rule: 'width of the blank against the planer',
      remedy: `Plane it in ${halves} parts of ${say(b.wide / halves)} and make the last ${halves === 2 ? 'joint' : 'joints'} after, or flatten it by hand.`,
      path,
    });
    if (planer.shortest !== undefined)
      add({
        code: 'shorter-than-planer',
        about: 'through the planer',
        needs: b.long,
        has: planer.shortest,
        least: true,
        rule: 'length of the blank against the least that the planer feeds',
        remedy: `Mill it in one length with others, at least ${say(planer.shortest)}, and cut it off after.`,
        path,
      });
    if (planer.thinnest !== undefined)
      add({
        code: 'thinner-than-planer',
        about: 'planed to thickness',
        needs: part.size[part.thickness].value,
        has: planer.thinnest,
        least: true,
        rule: 'finished thickness against the least of the planer',
        remedy: 'Plane it on a board as a sled, or bring it down by hand.',
        path,
      });
  }
  return out;
}

/** What saws and the bench say to any part. */
function sawn(b: Blank, piece: Piece, m: Machines): Single[] {
  const { part } = b;
  const say = (v: number): string => sayQuantity(quantity('length', v), piece.units);
  const out: Single[] = [];
  const add = (l: Limit): void => void out.push(single(part, l));
  const { tableSaw, bench } = m;
  const wide = overAll(part, part.width);
  if (tableSaw?.crosscut !== undefined)
    add({
      code: 'wider-than-crosscut',
      about: 'ends squared on the table saw',
      needs: wide,
      has: tableSaw.crosscut,
      rule: 'width of the part against the crosscut of the saw',
      remedy: `Square its ends with a guided saw or a plane: the table saw crosscuts ${say(tableSaw.crosscut)}.`,
      path: ['shop', 'machines', 'tableSaw'],
    });
  if (tableSaw?.rip !== undefined)
    add({
      code: 'wider-than-rip',
      about: 'ripped to width between blade and fence',
      needs: wide,
      has: tableSaw.rip,
      rule: 'width of the part against the fence at its furthest',
      remedy: 'Rip it with the waste against the fence, or with a guided saw.',
      path: ['shop', 'machines', 'tableSaw'],
    });
  if (tableSaw?.height !== undefined)
    add({
      code: 'thicker-than-saw',
      about: 'sawn through on the table saw',
      needs: part.size[part.thickness].value,
      has: tableSaw.height,
      rule: 'thickness of the part against the height of the blade',
      remedy: 'Saw it from both sides, or on the bandsaw.',
      path: ['shop', 'machines', 'tableSaw'],
    });
  if (bench)
    add({
      code: 'longer-than-bench',
      about: 'laid on the bench',
      needs: overAll(part, part.length),
      has: bench.length,
      rule: 'length of the part against the bench',
      remedy: 'Bear its far end on a stand.',
      path: ['shop', 'machines', 'bench'],
    });
  return out;
}

const ends = (cut: Cut): boolean => cut.shape === 'tails';
const boreDepth = (cut: Cut, part: Part): number | undefined =>
  cut.shape !== 'bore' ? undefined : cut.depth === 'through' ? part.size[part.thickness].value : cut.depth;

/** Cuts that want the part stood on end at a router table, and holes deeper than the drill goes. */
function worked(part: Part, m: Machines): Single[] {
  const out: Single[] = [];
  if (m.routerTable && part.cuts.some(ends))
    out.push(
      single(part, {
        code: 'taller-than-router-table',
        about: 'stood on end at the router table for its tails',
        needs: overAll(part, part.length),
        has: m.routerTable.tallest,
        rule: 'length of the part against what stands safely on end at the table',
        remedy: 'Cut its tails with the part lying, the cutter level, or by hand.',
        path: ['shop', 'machines', 'routerTable'],
      }),
    );
  const deepest = Math.max(0, ...part.cuts.map((c) => boreDepth(c, part) ?? 0));
  if (m.drillPress && deepest > 0)
    out.push(
      single(part, {
        code: 'deeper-than-drill',
        about: 'bored in one stroke',
        needs: deepest,
        has: m.drillPress.stroke,
        rule: 'depth of the hole against the stroke of the drill',
        remedy: 'Bore it in two goes, or from both sides with a hand drill.',
        path: ['shop', 'machines', 'drillPress'],
      }),
    );
  return out;
}

/** Parts that are small at a machine: not judged against it, but said. */
function small(part: Part, piece: Piece): Single[] {
  const long = overAll(part, part.length);
  const least = smallLength(piece);
  if (long >= least) return [];
  return [
    {
      code: 'small-at-machines',
      verdict: 'note',
      about: 'small at a machine',
      figure: quantity('length', long),
      limit: quantity('length', least),
      worked: {
        rule: 'length of the part against what is held safely by hand at a machine',
        sources: ['common practice, from memory; the limits are those of the machine’s manual'],
        inputs: [
          { name: 'length', quantity: quantity('length', long) },
          { name: 'held safely from', quantity: quantity('length', least), memory: true },
        ],
      },
      remedy: 'Do the work on a longer blank and cut it off last; else a push block, a sled or a clamp.',
      touches: [part.id],
      path: partEntry(part),
      marks: [part.mark],
    },
  ];
}

/** A sheet that one person cannot steer at the saw. */
function sheets(piece: Piece, profile: ShopProfile): Single[] {
  const { alone } = profile;
  if (!alone) return [];
  return Object.values(piece.stocks).flatMap((stock): Single[] => {
    const parts = piece.parts.filter((p) => p.stock === stock.id);
    if (stock.kind !== 'sheet' || !stock.size || parts.length === 0) return [];
    const good = stock.size[0] <= alone[0] && stock.size[1] <= alone[1];
    return [
      {
        code: 'sheet-not-alone',
        verdict: good ? 'pass' : 'note',
        about: `a sheet of ${stock.name} at the saw, one person`,
        figure: quantity('length', stock.size[0]),
        limit: quantity('length', alone[0]),
        margin: ratio(alone[0], stock.size[0]),
        worked: {
          rule: 'the sheet against the largest that one person steers',
          sources: ['the shop file'],
          inputs: [
            { name: 'sheet, long', quantity: quantity('length', stock.size[0]) },
            { name: 'sheet, wide', quantity: quantity('length', stock.size[1]) },
            { name: 'alone, long', quantity: quantity('length', alone[0]), source: 'shop' },
            { name: 'alone, wide', quantity: quantity('length', alone[1]), source: 'shop' },
          ],
        },
        ...(good ? {} : { remedy: 'Break it down with a guided saw on the floor first, or have a second person.' }),
        touches: parts.map((p) => p.id).sort(),
        path: ['stock', stock.id],
        marks: parts.map((p) => p.mark),
      },
    ];
  });
}

/** Each part, panel and glue-up against what the shop has. Where the shop file is silent nothing is judged. */
export const machines: Check = {
  key: 'machines',
  title: 'Machines, clamps and bench',
  run({ piece }: CheckInput) {
    const profile: ShopProfile = piece.profile ?? { machines: {}, clamps: [] };
    const singles = piece.parts.flatMap((part) => {
      const blank = blankOf(part, piece);
      const lumber = piece.stocks[part.stock]?.kind === 'lumber';
      return [
        ...(lumber ? milled(blank, piece, profile.machines) : []),
        ...sawn(blank, piece, profile.machines),
        ...worked(part, profile.machines),
        ...small(part, piece),
      ];
    });
    return { judgements: grouped([...quiet(singles), ...sheets(piece, profile), ...glueUps(piece, profile)]) };
  },
};

/** Of what passes only the tightest of each code is told. */
function quiet(singles: readonly Single[]): Single[] {
  const tightest = new Map<string, Single>();
  for (const s of singles) {
    const before = tightest.get(s.code);
    if (s.verdict === 'pass' && (!before || (s.margin ?? 99) < (before.margin ?? 99))) tightest.set(s.code, s);
  }
  const wanting = new Set(singles.filter((s) => s.verdict !== 'pass').map((s) => s.code));
  return singles.filter((s) => s.verdict !== 'pass' || (tightest.get(s.code) === s && !wanting.has(s.code)));
}
