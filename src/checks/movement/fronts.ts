import { meet, width } from '../../geom/box.js';
import { formatLength } from '../../lengths/format.js';
import { inches, mm, snapUp } from '../../lengths/length.js';
import type { Table } from '../../making/table.js';
import type { Drawer } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { compareMarks, markRanges } from '../../words/markOrder.js';
import type { RevealRow, Verdict } from '../check.js';
import { columns, mergedRows } from '../columns.js';
import { atLeast, partEntry, ratio, type Single } from '../grouped.js';
import type { Standing } from '../standing.js';
import { between, type Moving } from './context.js';
import { coefficientInput, MOVEMENT_SOURCE, seasonInputs } from './strain.js';

/** A gap above or below a front, nm, and how it changes from one moisture to another: more is wider. */
export interface Gap {
  readonly drawer: Drawer;
  readonly front: Standing;
  readonly where: 'above' | 'below';
  readonly made: number;
  /** Height of the line that drawer and case share: the screws of its slides, or the wood that it stands on. */
  readonly line: number;
  readonly on: 'slides' | 'wood';
  opens(from: number, to: number): number;
}

type Point = readonly [part: string, x: number];
/** Where a drawer is carried: a point of its own and the point of the case that carries it. */
interface Carried {
  readonly drawer: Point;
  readonly case: Point;
  readonly on: Gap['on'];
}

const UP = 2;

/** The nearest part of the case over or under a front. */
function neighbour(
  front: Standing,
  side: 1 | -1,
  moving: Moving,
): { readonly part: string; readonly face: number } | undefined {
  const own = front.box[UP][side > 0 ? 1 : 0];
  const found = [...moving.stands.values()].flatMap((s) => {
    if (s.part.drawer !== undefined || ![0, 1].every((a) => meet(s.box[a as 0 | 1], front.box[a as 0 | 1]))) return [];
    const face = s.box[UP][side > 0 ? 0 : 1];
    const gap = side * (face - own);
    return gap >= 0 ? [{ part: s.part.id, face, gap }] : [];
  });
  return found.sort((p, q) => p.gap - q.gap || (p.part < q.part ? -1 : 1))[0];
}

/** By the screws of a slide; else by the lowest edge of the drawer on the part below. */
function carriedBy(drawer: Drawer, front: Standing, moving: Moving): Carried | undefined {
  const { piece } = moving;
  for (const slide of piece.hardware.filter((h) => h.kind === 'slide' && h.drawer === drawer.id)) {
    const screws = piece.hardware.flatMap((h) => (h.screw?.clamps === slide.id ? [h.screw] : []));
    const own = screws.find((s) => drawer.parts.includes(s.holds));
    const other = screws.find((s) => !drawer.parts.includes(s.holds));
    if (own && other) return { drawer: [own.holds, own.from[UP]], case: [other.holds, other.from[UP]], on: 'slides' };
  }
  const sides = drawer.parts.flatMap((id) => moving.stands.get(id) ?? []);
  const lowest = [...sides].sort((p, q) => p.box[UP][0] - q.box[UP][0] || (p.part.id < q.part.id ? -1 : 1))[0];
  const below = neighbour(front, -1, moving);
  if (!lowest || !below) return undefined;
  return { drawer: [lowest.part.id, lowest.box[UP][0]], case: [below.part, below.face], on: 'wood' };
}

/** Every gap over and under the fronts, drawers by their marks. */
export function gapsOf(moving: Moving): Gap[] {
  return [...moving.piece.drawers]
    .sort((p, q) => compareMarks(p.mark, q.mark))
    .flatMap((drawer): Gap[] => {
      const front = moving.stands.get(drawer.front);
      const carried = front && carriedBy(drawer, front, moving);
      if (!front || !carried) return [];
      return ([1, -1] as const).flatMap((side): Gap[] => {
        const next = neighbour(front, side, moving);
        if (!next) return [];
        const edge = front.box[UP][side > 0 ? 1 : 0];
        const made = side * (next.face - edge);
        if (side < 0 && carried.on === 'wood' && made === 0) return [];
        return [
          {
            drawer,
            front,
            where: side > 0 ? 'above' : 'below',
            made,
            line: carried.case[1],
            on: carried.on,
            opens: (from, to) =>
              side *
                (between(moving, UP, [from, to], [next.part, next.face], carried.case) -
                  between(moving, UP, [from, to], [front.part.id, edge], carried.drawer)) +
              0,
          },
        ];
      });
    });
}

const leastGap = (m: Moving): number => (m.piece.units === 'in' ? inches(1 / 32) : mm(0.8));
/** What a gap may change over the year: about what 6 in of flat-sawn oak does in a heated room; our default. */
const mostChange = (m: Moving): number => (m.piece.units === 'in' ? inches(7 / 64) : mm(2.8));

/** What the gap must be as made so that it keeps its least at the wettest, up to the step. */
export const toLeave = (gap: Gap, moving: Moving, now: number): number => {
  const closes = Math.max(0, 0 - gap.opens(now, Math.max(now, moving.season.wettest)));
  return snapUp(leastGap(moving) + closes, moving.piece.step);
};

/** Is the least kept, and does the gap change no more than the eye forgives? */
export function fronts(gaps: readonly Gap[], moving: Moving): Single[] {
  const { made, driest, wettest } = moving.season;
  return gaps.flatMap((gap): Single[] => {
    const [dry, wet] = [gap.opens(made, driest), gap.opens(made, wettest)];
    const least = gap.made + Math.min(dry, wet);
    const limit = leastGap(moving);
    const verdict = atLeast(least, limit);
    const leave = sayQuantity(quantity('length', toLeave(gap, moving, made)), moving.piece.units);
    return [
      {
        code: 'front-binds',
        verdict,
        about: `keeps a gap ${gap.where} of`,
        figure: quantity('fine', least),
        limit: quantity('fine', limit),
        margin: ratio(least, limit),
        ...(verdict === 'pass' ? {} : { remedy: `Leave ${leave} ${gap.where} it as the wood is now.` }),
        ...told(
          gap,
          dry,
          wet,
          moving,
          'gap as made + what the case moves − what the front moves, from the line that carries the drawer',
          'least gap 1/32 in (0.8 mm) at the wettest: common practice',
        ),
      },
      ...(gap.where === 'above' ? [much(gap, dry, wet, moving)] : []),
    ];
  });
}

function much(gap: Gap, dry: number, wet: number, moving: Moving): Single {
  const figure = Math.abs(dry - wet);
  const limit = mostChange(moving);
  const verdict: Verdict = figure <= limit ? 'pass' : 'warning';
  const stock = moving.piece.stocks[gap.front.part.stock];
  const flat = stock?.cut !== 'quartered' && stock?.cut !== 'rift';
  return {
    code: 'front-moves-much',
    verdict,
    about: 'has a gap above that changes through the year by',
    figure: quantity('fine', figure),
    limit: quantity('fine', limit),
    margin: ratio(limit, figure),
    ...(verdict === 'pass'
      ? {}
      : {
          remedy: flat ? 'Take quartered or rift wood for it.' : 'Make the front lower, or let it lie over the case.',
        }),
    ...told(
      gap,
      dry,
      wet,
      moving,
      'gap at the driest − gap at the wettest',
      'limit: our default, what 6 in of flat-sawn white oak changes by over 6 to 11 %; fronts higher than 6 in want quartered or rift wood: common practice',
    ),
  };
}

const told = (
  gap: Gap,
  dry: number,
  wet: number,
  moving: Moving,
  rule: string,
  source: string,
): Pick<Single, 'marks' | 'worked' | 'touches' | 'path'> => ({
  marks: [gap.drawer.mark],
  worked: {
    rule,
    sources: [MOVEMENT_SOURCE, source],
    inputs: [
      { name: 'front', quantity: quantity('length', width(gap.front.box[UP])) },
      { name: 'gap as made', quantity: quantity('length', gap.made) },
      {
        name: `from the edge to the line of the ${gap.on}`,
        quantity: quantity('length', Math.abs(gap.front.box[UP][gap.where === 'above' ? 1 : 0] - gap.line)),
      },
      ...coefficientInput(moving.piece, gap.front.part, gap.front.own[UP]),
      ...seasonInputs(moving.season),
      { name: 'gap at the driest', quantity: quantity('fine', gap.made + dry) },
      { name: 'gap at the wettest', quantity: quantity('fine', gap.made + wet) },
    ],
  },
  touches: [gap.front.part.id, gap.drawer.id],
  path: partEntry(gap.front.part),
});

/** What is above all drawers first, so that drawers that are alike stand in one row. */
const inTables = (gaps: readonly Gap[]): Gap[] => [
  ...gaps.filter((g) => g.where === 'above'),
  ...gaps.filter((g) => g.where === 'below'),
];

/** Gaps as made, at the driest and at the wettest. Decimals: to be looked at, not cut to. */
export function reveals(all: readonly Gap[], moving: Moving): Table {
  const gaps = inTables(all);
  const { made, driest, wettest } = moving.season;
  const { units } = moving.piece;
  const fine = (v: number): string => sayQuantity(quantity('fine', v), units);
  return {
    id: 'reveals',
    columns: columns(
      ['drawer', 'Drawer<'],
      ['where', 'Gap<'],
      ['opening', 'Opening'],
      ['front', 'Front'],
      ['made', 'Made'],
      ['driest', 'Driest'],
      ['wettest', 'Wettest'],
    ),
    rows: mergedRows(
      gaps.map((g) => ({
        mark: g.drawer.mark,
        cells: [
          g.where,
          formatLength(g.drawer.opening.up.value, units),
          formatLength(width(g.front.box[UP]), units),
          formatLength(g.made, units),
          fine(g.made + g.opens(made, driest)),
          fine(g.made + g.opens(made, wettest)),
        ],
      })),
      markRanges,
    ),
  };
}

/** Meter readings for which the gap to leave is tabled, %. */
export const READINGS = [6, 7, 8, 9, 10, 11, 12] as const;

/** What gap to leave, by what the meter reads in the front on the day, so that it keeps its least at the wettest. */
export function gapToday(all: readonly Gap[], moving: Moving): Table {
  const gaps = inTables(all);
  return {
    id: 'gap-today',
    columns: columns(['drawer', 'Drawer<'], ['where', 'Gap<'], ...READINGS.map((m) => [`at_${m}`, `${m} %`] as const)),
    rows: mergedRows(
      gaps.map((g) => ({
        mark: g.drawer.mark,
        cells: [g.where, ...READINGS.map((m) => formatLength(toLeave(g, moving, m), moving.piece.units))],
      })),
      markRanges,
    ),
  };
}

export const revealRows = (gaps: readonly Gap[], moving: Moving): RevealRow[] => {
  const { made, driest, wettest } = moving.season;
  return gaps.map((g) => ({
    subject: g.drawer.mark,
    where: g.where,
    made: g.made,
    driest: Math.round(g.made + g.opens(made, driest)),
    wettest: Math.round(g.made + g.opens(made, wettest)),
    least: leastGap(moving),
  }));
};
