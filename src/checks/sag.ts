import { need } from '../data/printed.js';
import { CREEP_HANDBOOK } from '../data/tables/creep.js';
import { width } from '../geom/box.js';
import { nm } from '../lengths/length.js';
import { quantity, sayQuantity } from '../value/quantity.js';
import { drawerPath, partBodies, partPath } from './bodies.js';
import type { Check, CheckInput, Input, SagSpan } from './check.js';
import { drawerRooms, type DrawerRoom } from './drawerRoom.js';
import { grouped, ratio, type Single } from './grouped.js';
import { compareMarks } from '../words/markOrder.js';
import { flow, type Borne } from './sag/flow.js';
import { across, frameOf, modulusOf, type Frame } from './sag/frame.js';
import { FINE, FIRST, FIRST_SOURCE, limitOf, passes, RULE, type Judged } from './sag/limit.js';
import { remedyOf } from './sag/remedy.js';
import { settle, type Settled } from './sag/settle.js';

const NM = 1e9;
/** What the handbook has of creep, more than the building code: printed beside it. */
const CAREFUL = need(CREEP_HANDBOOK, 'lumber', 'factor');
/** Figures are kept to a millionth of a metre, so that alike parts are told as one. */
const fine = (m: number): number => Math.round(m * 1e6) * 1e3;

function worstOf(f: Frame, all: readonly Borne[], borne: Borne, rooms: readonly DrawerRoom[]): Judged | undefined {
  const limit = limitOf(f.piece, borne, rooms);
  let worst: Settled | undefined;
  for (const stretch of borne.stretches) {
    const s = settle(f, all, borne, stretch);
    if (s && (!worst || s.later / s.span > worst.later / worst.span)) worst = s;
  }
  return worst && { all, borne, settled: worst, limit };
}

function inputsOf(f: Frame, j: Judged): Input[] {
  const { borne, settled } = j;
  const { member } = borne;
  const { stretch } = settled;
  const length = (name: string, v: number): Input => ({ name, quantity: quantity('length', nm(v)) });
  const e = modulusOf(f.piece, member, stretch.a);
  return [
    length('free span', settled.span * NM),
    length('breadth', width(member.box[across(stretch.a)])),
    length('height', width(member.box[2])),
    ...(e
      ? [
          {
            name: 'modulus of elasticity',
            quantity: quantity('stress', e.value),
            source: e.source,
            ...(e.memory ? { memory: true } : {}),
          },
        ]
      : []),
    ...(stretch.share < 1
      ? [{ name: 'borne this way, the rest the other', quantity: quantity('share', 100 * stretch.share) }]
      : []),
    ...stretch.companions.map((c) => ({
      ...length(`with ${c.member.part.mark}, ${c.glued ? 'glued on' : 'beside it'}, high`, width(c.member.box[2])),
    })),
    ...stretch.tied
      .filter((m) => !stretch.companions.some((c) => c.member === m))
      .map((m) => length(`bends with ${m.part.mark}, high`, width(m.box[2]))),
    ...[borne.own, ...borne.loads].map((l) => l.input),
    ...j.all.filter((b) => stretch.tied.includes(b.member)).flatMap((b) => b.loads.map((l) => l.input)),
    {
      name: 'in years, over at first',
      quantity: quantity('ratio', settled.creep),
      source: settled.creepSource,
      ...(settled.creepSource.includes('from memory') ? { memory: true } : {}),
    },
    ...(f.piece.stocks[member.part.stock]?.kind === 'lumber'
      ? [{ name: 'the same, more carefully', quantity: quantity('ratio', CAREFUL.value), source: CAREFUL.source }]
      : []),
    {
      name: 'fine work, at first',
      quantity: quantity('span over sag', FINE.value),
      source: FINE.source,
      memory: FINE.memory === true,
    },
    { name: 'at first', quantity: quantity('span over sag', settled.span / Math.max(settled.now, 1e-9)) },
  ];
}

function singlesOf(f: Frame, j: Judged): Single[] {
  const { borne, settled, limit } = j;
  const { part } = borne.member;
  const drawer = f.piece.drawers.find((d) => d.id === part.drawer);
  const where = settled.stretch.supports === 'rests' ? 'in the middle' : 'at its free end';
  const remedy = passes(settled, limit) ? undefined : remedyOf(f, j);
  const touches = [part, ...settled.stretch.tied.map((m) => m.part)].map((p) => p.id);
  const common = { marks: [part.mark], touches, path: drawer ? drawerPath(drawer) : partPath(part) };
  const resting = settled.stretch.supports === 'rests' && !settled.stretch.low;
  const against = (
    sag: number,
    most: number,
    source: string,
    bad: 'fail' | 'warning',
  ): Omit<Single, 'code' | 'about'> => ({
    ...common,
    verdict: sag <= most ? 'pass' : bad,
    figure: quantity('fine', fine(sag)),
    limit: quantity('fine', fine(most)),
    margin: ratio(most, sag),
    worked: {
      rule: resting ? `${RULE}; nothing known bears it: taken to rest at its ends` : RULE,
      sources: [source, 'Wood Handbook, FPL-GTR-282, equation 9-2'],
      inputs: inputsOf(f, j),
    },
    ...(sag > most && remedy !== undefined ? { remedy } : {}),
  });
  const { now, later, span } = settled;
  const put = borne.loads.find((l) => l.put === true)?.input.quantity;
  const load = put ? `under ${sayQuantity(put, f.piece.units)}` : 'under what it bears';
  const first: Single = {
    code: 'sag-now',
    about: `sags ${where} at first ${load}`,
    ...against(now, span / FIRST, FIRST_SOURCE, 'fail'),
  };
  const years: Single = {
    code: 'sag-later',
    about: `sags ${where} in years ${load}`,
    ...against(later, limit.over(span), limit.source, 'warning'),
  };
  // A drawer's bottom has one limit for both, and sags less at first.
  return drawer ? [years] : [first, years];
}

const spanOf = ({ borne, settled, limit }: Judged): SagSpan => ({
  subject: borne.member.part.mark,
  span: Math.round(settled.span * NM),
  sag: Math.round(settled.now * NM),
  later: Math.round(settled.later * NM),
  limit: Math.round(limit.over(settled.span) * NM),
  supports: settled.stretch.supports,
});

/** What only passes on a load and sags next to nothing is not told: our default, a fifth of its limit. */
const worthTelling = ({ borne, settled, limit }: Judged): boolean =>
  borne.loads.some((l) => l.put === true) || settled.later * 5 > limit.over(settled.span);

/** Of members that bend together the one with the least to spare speaks for all; the first by mark where they are alike. */
function speaksForTied(j: Judged, all: readonly Judged[]): boolean {
  const spare = (x: Judged): number => x.limit.over(x.settled.span) / Math.max(x.settled.later, 1e-12);
  const rivals = all.filter(
    (o) => o !== j && j.settled.stretch.tied.includes(o.borne.member) && Math.abs(o.settled.now - j.settled.now) < 1e-7,
  );
  return rivals.every((o) => {
    const more = spare(o) - spare(j);
    return more > 1e-6 || (more > -1e-6 && compareMarks(j.borne.member.part.mark, o.borne.member.part.mark) < 0);
  });
}

/** What lies between supports and is loaded: how far it sags, at first and in years. Averages of the wood: an estimate. */
export const sag: Check = {
  key: 'sag',
  title: 'Sag of shelves, tops, rails and drawer bottoms',
  run(input: CheckInput) {
    const { piece } = input;
    const bodies = partBodies(input);
    const rooms = drawerRooms(piece, bodies);
    const f = frameOf(piece, bodies);
    const all = flow(f, bodies, rooms).bends;
    const judged = all
      .filter((b) => b.loads.length > 0 || b.stretches.some((t) => t.tied.length > 0))
      .flatMap((b) => worstOf(f, all, b, rooms) ?? [])
      .filter(worthTelling)
      .filter((j, _i, list) => speaksForTied(j, list));
    return {
      judgements: grouped(judged.flatMap((j) => singlesOf(f, j))),
      ...(judged.length > 0 ? { diagrams: [{ kind: 'sag', spans: judged.map(spanOf) }] } : {}),
    };
  },
};
