import { width } from '../geom/box.js';
import { inches, mm, snap } from '../lengths/length.js';
import type { Table } from '../making/table.js';
import type { Piece } from '../piece/piece.js';
import { quantity, sayQuantity } from '../value/quantity.js';
import {
  LIFTING_SOURCE,
  LOAD_CONSTANT,
  multipliers,
  peopleFor,
  recommendedWeight,
  type Lift,
} from '../wood/lifting.js';
import { compareMarks, markRanges } from '../words/markOrder.js';
import { boundsOf, centreOf, drawerPath, massOf, partBodies, partPath, type PartBody } from './bodies.js';
import type { Check, CheckInput, Input, Judgement } from './check.js';
import { drawerRooms, FILL, type DrawerRoom } from './drawerRoom.js';
import { boughtInAll, boughtInput, boughtOn, BOUGHT_SOURCE } from './weight/bought.js';
import { joinedOf } from './weight/joined.js';
import { INCH_MM } from '../lengths/units.js';

/** Height of a bench, mm: our default. */
const BENCH = 34 * INCH_MM;
/** Hands above this height lift no better, mm: the best height of the equation. */
const KNUCKLES = 30 * INCH_MM;
/** Least travel that the equation knows, mm. */
const LEAST_TRAVEL = 10 * INCH_MM;
const DENSITY = 'Wood Handbook, FPL-GTR-282, equation 4-14, at 12 % moisture';

/** Hands ahead of the ankles for a load `deep` (mm) from front to back: 8 in and half of it, 10 in when gripped near the floor. */
const reachOf = (deep: number, height: number): number => (height < 10 * INCH_MM ? 10 : 8) * INCH_MM + deep / 2;
/** Just lifted clear and carried: hands start at `height`. */
const liftAt = (deep: number, height: number): Lift => ({ reach: reachOf(deep, height), height, travel: LEAST_TRAVEL });

/** What one person may lift, and how that came about: what the shop says stands over the equation. */
function limitOf(lift: Lift, piece: Piece): { readonly kg: number; readonly inputs: Input[]; readonly source: string } {
  const own = piece.profile?.lift;
  if (own !== undefined)
    return {
      kg: own,
      inputs: [{ name: 'one person lifts', quantity: quantity('mass', own), source: 'shop' }],
      source: 'shop',
    };
  const m = multipliers(lift);
  const size = (name: string, v: number, memory = false): Input => ({
    name,
    quantity: quantity('length', mm(v)),
    ...(memory ? { source: 'NIOSH Applications Manual', memory } : {}),
  });
  return {
    kg: recommendedWeight(lift),
    source: LIFTING_SOURCE,
    inputs: [
      { name: 'load constant', quantity: quantity('mass', LOAD_CONSTANT), source: LIFTING_SOURCE },
      size('hands ahead of the ankles', lift.reach, true),
      size('hands over the floor', lift.height),
      size('lifted by', lift.travel),
      { name: 'reach multiplier 10/H', quantity: quantity('ratio', m.reach) },
      { name: 'height multiplier 1 − 0.0075|V − 30|', quantity: quantity('ratio', m.height) },
      { name: 'travel multiplier 0.82 + 1.8/D', quantity: quantity('ratio', m.travel) },
    ],
  };
}
const RULE = 'RWL = LC HM VM DM AM FM CM, one person, two hands, seldom, square on, good grip';

interface Load {
  readonly code: string;
  readonly subject: string;
  readonly about: string;
  readonly kg: number;
  /** Of it, what is bought, kg. */
  readonly bought?: number;
  readonly lift: Lift;
  readonly touches: readonly string[];
  readonly path: Judgement['path'];
}

/** One load against one person, then two: more than two make a warning. */
function lifted(load: Load, piece: Piece, lighter: string): Judgement {
  const one = limitOf(load.lift, piece);
  const each = piece.profile?.lift ?? LOAD_CONSTANT;
  const people = load.kg <= one.kg ? 1 : Math.max(2, peopleFor(load.kg, each));
  const limit = people === 1 ? one.kg : 2 * each;
  const said = (kg: number): string => sayQuantity(quantity('mass', kg), piece.units);
  return {
    code: load.code,
    verdict: people === 1 ? 'pass' : people === 2 ? 'note' : 'warning',
    subject: load.subject,
    about: `${load.about}${people === 1 ? ', one person' : ', two people'}`,
    figure: quantity('mass', load.kg),
    limit: quantity('mass', limit),
    ...(load.kg > 0 ? { margin: limit / load.kg } : {}),
    worked: {
      rule: people === 1 ? RULE : `${RULE}; for more people the load constant each`,
      sources: [one.source, DENSITY, ...(load.bought ? [BOUGHT_SOURCE] : [])],
      inputs: [
        { name: 'wood', quantity: quantity('mass', load.kg - (load.bought ?? 0)), source: DENSITY },
        ...boughtInput(load.bought ?? 0),
        ...one.inputs,
      ],
    },
    ...(people === 1
      ? {}
      : {
          remedy:
            people === 2
              ? `Two people lift it; one person lifts ${said(one.kg)} so.`
              : `Have ${people} people, or ${lighter} until it is under ${said(2 * each)}.`,
        }),
    touches: load.touches,
    path: load.path,
  };
}

/** The heaviest part, and every other that one person should not lift alone. Turned and mirrored ones once. */
function partLoads(bodies: readonly PartBody[], piece: Piece): Judgement[] {
  const judged = [...bodies]
    .sort((a, b) => b.kg - a.kg || compareMarks(a.part.mark, b.part.mark))
    .filter((b) => b.kg > 0 && b.part.turnOf === undefined && b.part.mirrorOf === undefined)
    .map((b) => {
      const same = bodies.filter((o) => [o.part.turnOf, o.part.mirrorOf].includes(b.part.id));
      const parts = [b, ...same].map((o) => o.part);
      const load: Load = {
        code: 'part-heavy',
        subject: markRanges(parts.map((p) => p.mark)),
        about: 'lifted off the bench',
        kg: b.kg,
        lift: liftAt(width(b.bounds[b.part.thickness]), BENCH),
        touches: parts.map((p) => p.id).sort(),
        path: partPath(b.part),
      };
      return lifted(load, piece, 'make it of two parts');
    });
  return judged.filter((j, i) => i === 0 || j.verdict !== 'pass');
}

/** The heaviest drawer as it is lifted out, and every other that one person should not lift alone. */
function drawerLoads(rooms: readonly DrawerRoom[], piece: Piece): Judgement[] {
  const judged = rooms
    .map((r) => ({ ...r, bought: boughtOn(piece, r.drawer.id, r.drawer.parts) }))
    .sort((p, q) => q.kg + q.bought - p.kg - p.bought || compareMarks(p.drawer.mark, q.drawer.mark))
    .map((r) =>
      lifted(
        {
          code: 'drawer-heavy',
          subject: r.drawer.mark,
          about: 'empty, lifted out',
          kg: r.kg + r.bought,
          bought: r.bought,
          lift: liftAt(width(r.bounds[1]), BENCH),
          touches: r.bodies.map((b) => b.part.id).sort(),
          path: drawerPath(r.drawer),
        },
        piece,
        'make it smaller',
      ),
    );
  return judged.filter((x, n) => n === 0 || x.verdict !== 'pass');
}

interface Unit {
  readonly name: string;
  readonly bodies: readonly PartBody[];
  /** What is bought and stays on it, kg. */
  readonly bought: number;
}
/** What is carried in one go: parts that come off for the carry, each; the rest without its drawers. */
function unitsOf(piece: Piece, bodies: readonly PartBody[]): Unit[] {
  const apart = new Set(piece.delivery?.apart ?? []);
  const drawn = new Set(piece.drawers.flatMap((d) => d.parts));
  const rest = bodies.filter((b) => !apart.has(b.part.id) && !drawn.has(b.part.id));
  const off = bodies.filter((b) => apart.has(b.part.id));
  const out = [
    ...(drawn.size > 0 ? ['its drawers'] : []),
    ...(off.length > 0 ? [markRanges(off.map((b) => b.part.mark))] : []),
  ];
  const name = out.length === 0 ? 'The piece' : `The piece without ${out.join(' and ')}`;
  const onDrawers = piece.drawers.reduce((sum, d) => sum + boughtOn(piece, d.id, d.parts), 0);
  const bought = boughtInAll(piece) - onDrawers;
  return [{ name, bodies: rest, bought }, ...off.map((b) => ({ name: b.part.mark, bodies: [b], bought: 0 }))].filter(
    (u) => u.bodies.length > 0,
  );
}

const planDepth = (u: Unit): number => {
  const box = boundsOf(u.bodies);
  return Math.min(width(box[0]), width(box[1]));
};
/** Hands level with the middle of mass over its foot: our default. */
const gripOf = (u: Unit): number => Math.min(KNUCKLES, centreOf(u.bodies)[2] - boundsOf(u.bodies)[2][0]);
const carried = (u: Unit, piece: Piece): Judgement =>
  lifted(
    {
      code: 'carry-heavy',
      subject: u.name,
      about: 'carried, gripped level with its middle',
      kg: massOf(u.bodies) + u.bought,
      ...(u.bought > 0 ? { bought: u.bought } : {}),
      lift: liftAt(planDepth(u), gripOf(u)),
      touches: u.bodies.length === 1 ? u.bodies.map((b) => b.part.id) : [],
      path: piece.delivery ? ['delivery'] : ['piece'],
    },
    piece,
    'let parts come off for the carry',
  );

function tableOf(units: readonly Unit[], rooms: readonly DrawerRoom[], all: readonly PartBody[], piece: Piece): Table {
  const step = piece.units === 'in' ? inches(1 / 8) : mm(1);
  const size = (v: number): string => sayQuantity(quantity('length', snap(mm(v), step)), piece.units);
  const said = (kg: number): string => sayQuantity(quantity('mass', kg), piece.units);
  const row = (name: string, bodies: readonly PartBody[], bought = 0, more = 0): string[] => {
    const kg = massOf(bodies) + bought;
    return [name, said(kg), more > 0 ? said(kg + more) : '', ...centreOf(bodies).map(size)];
  };
  const joined = joinedOf(piece, all);
  const inAll = boughtInAll(piece);
  const on = (r: DrawerRoom): number => boughtOn(piece, r.drawer.id, r.drawer.parts);
  return {
    id: 'weights',
    columns: [
      { id: 'unit', label: 'Unit', align: 'left' },
      { id: 'mass', label: 'Weight', align: 'right' },
      { id: 'full', label: 'Full', align: 'right' },
      { id: 'across', label: 'Middle of mass: across', align: 'right' },
      { id: 'deep', label: 'deep', align: 'right' },
      { id: 'up', label: 'up', align: 'right' },
    ],
    rows: [
      row('All together', all, inAll),
      ...(inAll > 0 ? [['Of it slides, pulls and screws *', said(inAll), '', '', '', '']] : []),
      ...units.map((u) => row(u.name, u.bodies, u.bought)),
      ...(joined.length > 1 ? joined.map((g) => row(g.name, g.bodies)) : []),
      ...rooms.map((r) => row(r.drawer.mark, r.bodies, on(r), r.slides ? FILL * r.volume : 0)),
    ],
  };
}

/**
 * What is lifted, by whom: parts, drawers, and what is carried in one go; sub-assemblies are tabled. An estimate from the
 * wood's average density; middles of mass are those of the wood.
 */
export const weight: Check = {
  key: 'weight',
  title: 'Weight and lifting',
  run(input: CheckInput) {
    const { piece } = input;
    const bodies = partBodies(input);
    const rooms = drawerRooms(piece, bodies).sort((a, b) => compareMarks(a.drawer.mark, b.drawer.mark));
    const units = unitsOf(piece, bodies);
    return {
      judgements: [...partLoads(bodies, piece), ...drawerLoads(rooms, piece), ...units.map((u) => carried(u, piece))],
      tables: [tableOf(units, rooms, bodies, piece)],
    };
  },
};
