import type { Axis } from '../../geom/axis.js';
import { AXES, AXIS_NAMES } from '../../geom/axis.js';
import { width } from '../../geom/box.js';
import { inches, mm } from '../../lengths/length.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import type { Judgement, Verdict } from '../check.js';
import { familyOf, jointPath, ratio, type Single } from '../grouped.js';
import type { Meeting } from '../standing.js';
import { heldAlong, heldOver, type Moving } from './context.js';
import { coefficientInput, MOVEMENT_SOURCE, seasonInputs } from './strain.js';

/** Widths over which grain may be held across grain: common practice gives 4 to 6 in as where to look; from memory. */
const looked = (m: Moving): number => (m.piece.units === 'in' ? inches(4) : mm(100));
const most = (m: Moving): number => (m.piece.units === 'in' ? inches(6) : mm(150));
/** What may be held back: about what 6 in of flat-sawn oak makes of 3 % moisture; our default. Twice as much splits. */
const back = (m: Moving): number => (m.piece.units === 'in' ? inches(1 / 16) : mm(1.5));
/** What is held back less than this, or is narrower than this, is not worth a line: a quarter of the limits, our default. */
const little = (m: Moving): number => back(m) / 4;
const narrow = (m: Moving): number => most(m) / 4;
/** Below this wood does not move, nm: a hundredth of a millimetre. */
const NOTHING = 10_000;

const WIDTH_SOURCE =
  'limit: common practice, 4 to 6 in (100 to 150 mm), from memory; a mismatch of 1/8 in (3 mm) fails: our default';
const BACK_SOURCE = 'limit: our default, about what 6 in of flat-sawn oak moves by 3 %';

interface Crossing {
  readonly axis: Axis;
  readonly over: number;
  readonly crossed: boolean;
  readonly dry: number;
  readonly wet: number;
}
const worst = (c: Crossing): number => Math.max(Math.abs(c.dry), Math.abs(c.wet));

/** What a joint holds back along each axis of its contact: the strain of the one part less that of the other. */
function crossings(m: Meeting, moving: Moving): Crossing[] {
  const { made, driest, wettest } = moving.season;
  const held = heldAlong(m);
  return AXES.flatMap((axis): Crossing[] => {
    if (axis === m.contact.normal?.axis || !held.includes(axis)) return [];
    const over = width(heldOver(moving.piece, m, axis));
    const by = (id: string, to: number): number => moving.strain(id, axis, made, to);
    const moves = (id: string): boolean => by(id, driest) !== 0 || by(id, wettest) !== 0;
    const [e, r] = [m.e.part.id, m.r.part.id];
    const apart = (to: number): number => (by(e, to) - by(r, to)) * over + 0;
    return [{ axis, over, crossed: moves(e) !== moves(r), dry: apart(driest), wet: apart(wettest) }];
  });
}

/** Every joint that holds grain across grain: over what width, and what it holds back. */
export function crossGrain(moving: Moving): Single[] {
  return moving.meetings.flatMap((m): Single[] => {
    const all = crossings(m, moving).filter((c) => worst(c) > NOTHING);
    const across = all
      .filter((c) => c.crossed && c.over >= narrow(moving))
      .sort((p, q) => q.over - p.over || p.axis - q.axis)[0];
    const alike = all
      .filter((c) => !c.crossed && worst(c) >= little(moving))
      .sort((p, q) => worst(q) - worst(p) || p.axis - q.axis)[0];
    return [...(across ? [tiedAcross(m, across, moving)] : []), ...(alike ? [tiedAlike(m, alike, moving)] : [])];
  });
}

const common = (
  m: Meeting,
  c: Crossing,
  moving: Moving,
): Pick<Judgement, 'worked' | 'touches' | 'path'> & Pick<Single, 'marks' | 'on' | 'of'> => ({
  marks: [m.e.part.mark],
  on: [m.r.part.mark],
  of: familyOf(m.joint),
  touches: [m.joint.id, m.e.part.id, m.r.part.id],
  path: jointPath(moving.piece, m.joint),
  worked: {
    rule: 'width held × (movement of the one − movement of the other)',
    sources: [MOVEMENT_SOURCE, c.crossed ? WIDTH_SOURCE : BACK_SOURCE],
    inputs: [
      { name: 'width held', quantity: quantity('length', c.over) },
      ...[m.e, m.r].flatMap((s) => coefficientInput(moving.piece, s.part, s.own[c.axis])),
      ...seasonInputs(moving.season),
      { name: 'held back at the driest', quantity: quantity('fine', c.dry) },
      { name: 'held back at the wettest', quantity: quantity('fine', c.wet) },
    ],
  },
});

function tiedAcross(m: Meeting, c: Crossing, moving: Moving): Single {
  const limit = most(moving);
  const verdict: Verdict =
    c.over <= looked(moving) ? 'pass' : c.over <= limit ? 'note' : worst(c) > 2 * back(moving) ? 'fail' : 'warning';
  const say = (of: 'length' | 'fine', v: number): string => sayQuantity(quantity(of, v), moving.piece.units);
  return {
    code: 'tied-across',
    verdict,
    about: 'is held across the grain over',
    figure: quantity('length', c.over),
    limit: quantity('length', limit),
    ...(verdict === 'fail' ? {} : { margin: ratio(limit, c.over) }),
    ...(verdict === 'pass'
      ? {}
      : {
          remedy: `It works by ${say('fine', worst(c))}: hold no more than ${say('length', looked(moving))} of it, at one end or in the middle, and let the rest slide.`,
        }),
    ...common(m, c, moving),
  };
}

function tiedAlike(m: Meeting, c: Crossing, moving: Moving): Single {
  const limit = back(moving);
  const verdict: Verdict = worst(c) <= limit ? 'pass' : worst(c) <= 2 * limit ? 'warning' : 'fail';
  return {
    code: 'tied-unlike',
    verdict,
    about: 'holds parts that move unequally, apart by',
    figure: quantity('fine', worst(c)),
    limit: quantity('fine', limit),
    margin: ratio(limit, worst(c)),
    ...(verdict === 'pass' ? {} : { remedy: 'Take both of one wood and one cut, or hold less of the width.' }),
    ...common(m, c, moving),
  };
}

/**
 * Rings: parts held to one another in two places that go apart, as a top screwed down in front and behind on a frame that
 * does not move. The tie that moves most is the one that is told.
 */
export function heldApart(moving: Moving): Single[] {
  const { made, driest, wettest } = moving.season;
  return AXES.flatMap((axis) => {
    const dry = moving.field(axis, made, driest).rings;
    const wet = new Map(moving.field(axis, made, wettest).rings.map((r) => [r.tie.id, r.apart]));
    return dry.flatMap(({ tie, apart }): Single[] => {
      const m = moving.meetings.find((x) => x.joint.id === tie.id);
      const both = [apart, wet.get(tie.id) ?? 0] as const;
      const figure = Math.max(...both.map(Math.abs));
      if (!m || figure < little(moving)) return [];
      const limit = back(moving);
      const verdict: Verdict = figure <= limit ? 'pass' : figure <= 2 * limit ? 'warning' : 'fail';
      const slot = sayQuantity(quantity('fine', figure), moving.piece.units);
      return [
        {
          code: 'held-apart',
          verdict,
          marks: [m.e.part.mark],
          on: [m.r.part.mark],
          of: familyOf(m.joint),
          about: `holds back, ${AXIS_NAMES[axis]}, what other joints of the same parts would have move by`,
          figure: quantity('fine', figure),
          limit: quantity('fine', limit),
          margin: ratio(limit, figure),
          ...(verdict === 'pass'
            ? {}
            : { remedy: `Let this joint slide ${AXIS_NAMES[axis]}, ${slot} each way, or leave it dry.` }),
          worked: {
            rule: 'shift of the one part at this joint − shift of the other, both as the other joints place them',
            sources: [MOVEMENT_SOURCE, BACK_SOURCE],
            inputs: [
              { name: 'place of the joint', quantity: quantity('length', tie.at) },
              ...[m.e, m.r].flatMap((s) => coefficientInput(moving.piece, s.part, s.own[axis])),
              ...seasonInputs(moving.season),
              { name: 'apart at the driest', quantity: quantity('fine', both[0]) },
              { name: 'apart at the wettest', quantity: quantity('fine', both[1]) },
            ],
          },
          touches: [m.joint.id, m.e.part.id, m.r.part.id],
          path: jointPath(moving.piece, m.joint),
        },
      ];
    });
  });
}
