import type { Axis } from '../../geom/axis.js';
import { AXES, AXIS_NAMES, faceOf } from '../../geom/axis.js';
import { inches, mm } from '../../lengths/length.js';
import type { Table } from '../../making/table.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { compareMarks, markRanges } from '../../words/markOrder.js';
import { columns, mergedRows } from '../columns.js';
import { atLeast, familyOf, jointPath, ratio, type Single } from '../grouped.js';
import type { Meeting, Standing } from '../standing.js';
import { between, type Moving } from './context.js';
import { coefficientInput, MOVEMENT_SOURCE, seasonInputs } from './strain.js';

/** An edge of a panel in its groove: how far it enters and what is left behind it, as made, nm. */
interface Edge {
  readonly m: Meeting;
  readonly axis: Axis;
  readonly side: 1 | -1;
  readonly enters: number;
  readonly room: number;
  readonly floor: number;
  readonly mouth: number;
  readonly edge: number;
}

/** Span of a cut along an axis of the piece. */
function spanAt(host: Standing, own: readonly [number, number], axis: Axis): readonly [number, number] {
  const at = (v: number): number => host.part.place.origin[axis] + host.sign[axis] * v;
  const [p, q] = [at(own[0]), at(own[1])];
  return p <= q ? [p, q] : [q, p];
}

/** The edge that a floating joint lets in: from the cut in the host and the size of the panel; none where no cut is found. */
function edgeOf(m: Meeting): Edge | undefined {
  const { normal, at } = m.contact;
  if (!normal) return undefined;
  const { axis, side } = normal;
  const mouth = at[axis][0];
  const floors = m.r.part.cuts.flatMap((cut) => {
    if (cut.shape !== 'box' || !cut.mates.includes(m.e.part.id)) return [];
    const [low, high] = spanAt(m.r, cut.at[m.r.own[axis]], axis);
    return low <= mouth && mouth <= high ? [side > 0 ? high : low] : [];
  });
  if (floors.length === 0) return undefined;
  const floor = side > 0 ? Math.min(...floors) : Math.max(...floors);
  const edge = m.e.blank[axis][side > 0 ? 1 : 0];
  return { m, axis, side, enters: side * (edge - mouth), room: side * (floor - edge), floor, mouth, edge };
}

const LEAST = {
  frame: (m: Moving): number => (m.piece.units === 'in' ? inches(3 / 16) : mm(5)),
  back: (m: Moving): number => (m.piece.units === 'in' ? inches(1 / 8) : mm(3)),
  /** Across the grain of a solid panel; where it does not grow itself, half of it at each edge. */
  room: (m: Moving): number => (m.piece.units === 'in' ? inches(1 / 32) : mm(0.8)),
  roomStill: (m: Moving): number => (m.piece.units === 'in' ? inches(1 / 64) : mm(0.4)),
};
const LIMITS =
  'limits: a frame panel enters 3/16 in (5 mm), a back 1/8 in (3 mm) at the driest, 1/32 in (0.8 mm) free at the wettest, half of it where it does not grow: common practice';
/** Movement that is not worth a line, nm. */
const NOTHING = 10_000;

/**
 * How far the floor and the mouth of one edge go away from the panel's edge, nm: exact where the panel is tied to its host,
 * else its whole movement shared evenly between its two edges, as when it is held in the middle.
 */
function opens(
  e: Edge,
  far: Edge | undefined,
  moving: Moving,
  to: number,
): { readonly room: number; readonly enters: number } {
  const band = [moving.season.made, to] as const;
  const panel = e.m.e.part.id;
  const host = e.m.r.part.id;
  if (moving.field(e.axis, ...band).tied(panel, host) || !far) {
    const at = (x: number): number => e.side * between(moving, e.axis, band, [host, x], [panel, e.edge]);
    return { room: at(e.floor), enters: 0 - at(e.mouth) + 0 };
  }
  const wide = e.side * (e.edge - far.edge);
  const grows = moving.strain(panel, e.axis, ...band) * wide;
  const apart = (a: number, b: number): number =>
    e.side * between(moving, e.axis, band, [host, a], [far.m.r.part.id, b]);
  return { room: (apart(e.floor, far.floor) - grows) / 2, enters: (grows - apart(e.mouth, far.mouth)) / 2 + 0 };
}

/** An edge that moves in its groove, with what it does at the driest and at the wettest, and all edges of its panel. */
interface Moved {
  readonly e: Edge;
  readonly own: readonly Edge[];
  readonly dry: ReturnType<typeof opens>;
  readonly wet: ReturnType<typeof opens>;
}
function movedEdges(moving: Moving): Moved[] {
  const edges = moving.meetings.flatMap((m) => {
    const edge = m.joint.traits.freedom === 'floats' ? edgeOf(m) : undefined;
    return edge ? [edge] : [];
  });
  const { driest, wettest } = moving.season;
  return edges.flatMap((e): Moved[] => {
    const own = edges.filter((x) => x.m.e === e.m.e);
    const far = own.find((x) => x.axis === e.axis && x.side !== e.side);
    const [dry, wet] = [opens(e, far, moving, driest), opens(e, far, moving, wettest)];
    const most = Math.max(...[dry.room, wet.room, dry.enters, wet.enters].map(Math.abs));
    return most > NOTHING ? [{ e, own, dry, wet }] : [];
  });
}

/** Panels, backs and bottoms in their grooves: how far they enter and what is free behind them, as made and through the year. */
export function panelSeasons(moving: Moving): Table {
  const { units } = moving.piece;
  const three = (made: number, dry: number, wet: number): string[] =>
    [made, made + dry, made + wet].map((v) => sayQuantity(quantity('fine', v), units));
  const rows = movedEdges(moving).map(({ e, dry, wet }) => ({
    mark: e.m.e.part.mark,
    cells: [AXIS_NAMES[e.axis], ...three(e.enters, dry.enters, wet.enters), ...three(e.room, dry.room, wet.room)],
  }));
  return {
    id: 'panels-through-the-year',
    columns: columns(
      ['panel', 'Panel<'],
      ['way', 'In its grooves<'],
      ['enters', 'Enters'],
      ['enters_dry', 'driest'],
      ['enters_wet', 'wettest'],
      ['free', 'Free'],
      ['free_dry', 'driest'],
      ['free_wet', 'wettest'],
    ),
    rows: mergedRows(
      rows.sort((p, q) => compareMarks(p.mark, q.mark)),
      (marks) => markRanges([...new Set(marks)]),
    ),
  };
}

/** Every panel that floats: what stays in its grooves at the driest and what is free at the wettest, side by side. */
export function panels(moving: Moving): Single[] {
  return movedEdges(moving).flatMap(({ e, own, dry, wet }): Single[] => {
    const sides = AXES.filter(
      (a) => own.some((x) => x.axis === a && x.side > 0) && own.some((x) => x.axis === a && x.side < 0),
    );
    const solid = moving.piece.stocks[e.m.e.part.stock]?.kind === 'lumber';
    const frame = sides.length > 1 && solid;
    return [stays(e, [dry.enters, wet.enters], frame, moving), free(e, [dry.room, wet.room], moving)];
  });
}

function stays(e: Edge, [dry, wet]: readonly [number, number], frame: boolean, moving: Moving): Single {
  const limit = frame ? LEAST.frame(moving) : LEAST.back(moving);
  const figure = e.enters + Math.min(dry, wet);
  const verdict = atLeast(figure, limit);
  const more = sayQuantity(quantity('fine', limit - figure), moving.piece.units);
  return {
    code: 'panel-leaves-groove',
    verdict,
    about: `stands ${AXIS_NAMES[e.axis]} in its groove at the driest by`,
    figure: quantity('fine', figure),
    limit: quantity('fine', limit),
    margin: ratio(figure, limit),
    ...(verdict === 'pass'
      ? {}
      : { remedy: `Make the panel reach ${more} further in, and the groove as much deeper.` }),
    ...told(
      e,
      [dry, wet],
      'enters',
      'as made it enters + what it grows less what the frame opens, shared by its two edges',
      moving,
    ),
  };
}

function free(e: Edge, [dry, wet]: readonly [number, number], moving: Moving): Single {
  const { made, wettest } = moving.season;
  const grows = moving.strain(e.m.e.part.id, e.axis, made, wettest) !== 0;
  const limit = grows ? LEAST.room(moving) : LEAST.roomStill(moving);
  const figure = e.room + Math.min(dry, wet);
  const verdict = atLeast(figure, limit);
  const more = sayQuantity(quantity('fine', limit - figure), moving.piece.units);
  return {
    code: 'panel-presses',
    verdict,
    about: `is free ${AXIS_NAMES[e.axis]} in its groove at the wettest by`,
    figure: quantity('fine', figure),
    limit: quantity('fine', limit),
    margin: ratio(figure, limit),
    ...(verdict === 'pass' ? {} : { remedy: `Leave ${more} more between the panel and the floor of the groove.` }),
    ...told(
      e,
      [dry, wet],
      'room',
      'as made it is free − what it grows less what the frame opens, shared by its two edges',
      moving,
    ),
  };
}

const told = (
  e: Edge,
  [dry, wet]: readonly [number, number],
  what: 'enters' | 'room',
  rule: string,
  moving: Moving,
): Pick<Single, 'marks' | 'on' | 'of' | 'worked' | 'touches' | 'path'> => ({
  marks: [e.m.e.part.mark],
  on: [e.m.r.part.mark],
  of: familyOf(e.m.joint),
  worked: {
    rule,
    sources: [MOVEMENT_SOURCE, LIMITS],
    inputs: [
      {
        name: `${what === 'enters' ? 'enters' : 'free'} as made, ${faceOf(e.axis, e.side)}`,
        quantity: quantity('fine', e[what]),
      },
      { name: 'panel', quantity: quantity('length', e.m.e.blank[e.axis][1] - e.m.e.blank[e.axis][0]) },
      ...[e.m.e, e.m.r].flatMap((s) => coefficientInput(moving.piece, s.part, s.own[e.axis])),
      ...seasonInputs(moving.season),
      { name: 'change to the driest', quantity: quantity('fine', dry) },
      { name: 'change to the wettest', quantity: quantity('fine', wet) },
    ],
  },
  touches: [e.m.joint.id, e.m.e.part.id, e.m.r.part.id],
  path: jointPath(moving.piece, e.m.joint),
});
