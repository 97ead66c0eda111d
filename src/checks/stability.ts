import { need, type Figure } from '../data/printed.js';
import { CLOTHES_SCOPE, CLOTHES_TESTS } from '../data/tables/clothing-storage.js';
import type { Span } from '../geom/box.js';
import { mm, NM_PER_MM, snap, snapDown, inches } from '../lengths/length.js';
import type { Piece } from '../piece/piece.js';
import { quantity, sayQuantity } from '../value/quantity.js';
import { boundsOf, centreOf, massOf, partBodies, type PartBody } from './bodies.js';
import type { Check, CheckInput, Input, Judgement, TipCase, Verdict } from './check.js';
import { drawerRooms, FILL, FILL_SOURCE, type DrawerRoom } from './drawerRoom.js';
import { boughtInAll } from './weight/bought.js';
import { balance, GRAVITY, leanOn, type Balance, type Weight2 } from './tipping.js';
import { FOOT_M, INCH_MM, POUND_KG } from '../lengths/units.js';

const RULE = '16 CFR 1261';
/** Scope: height, mass and enclosed volume from which on it counts. */
const least = (row: string, unit: number): Figure => need(CLOTHES_SCOPE, row, 'least', unit);
const SCOPE = {
  height: least('height', INCH_MM).value,
  kg: least('mass', POUND_KG).value,
  volume: least('volume', FOOT_M ** 3).value,
};
const SCOPE_SOURCE = `${RULE} and the scope of ASTM F2057-23: 27 in, 30 lb, 3.2 ft³`;
/** Figures of the tests, and where they were had, as it is printed beside them. */
const tested = (row: string, unit: number): Figure => need(CLOTHES_TESTS, row, 'value', unit);
const had = ({ source, memory }: Figure): Pick<Input, 'source' | 'memory'> => ({
  source,
  ...(memory ? { memory } : {}),
});
/** Level pull, at this height or the top. */
const PULL = { force: tested('pull', POUND_KG * GRAVITY), height: tested('pull-height', INCH_MM) };
/** A child at an open part, and the carpet under the front feet as blocks under the rear ones. */
const CHILD = { mass: tested('child', POUND_KG), block: tested('block', INCH_MM) };
/** Kept in hand: the density of wood varies by about a tenth (our default). */
const IN_HAND = 1.1;
const NEVERTHELESS = `An acceptance does not make it pass ${RULE}, which tests without the wall: not to be sold so for clothes in the US.`;
const ALWAYS = ' (an estimate, not a test)';
const ESTIMATE = 'an estimate, not a test; bought things left out';

/** How the piece stands, mm in piece axes. `front` and `back` are the outermost lines on which it stands on the floor. */
export interface Stance {
  readonly piece: Piece;
  readonly still: readonly PartBody[];
  readonly drawers: readonly DrawerRoom[];
  readonly floor: number;
  readonly front: number;
  readonly back: number;
  readonly top: number;
  readonly kg: number;
  readonly volume: number;
}
/** Points this near to the lowest one stand on the floor, mm. */
const ON_FLOOR = 0.05;

/** Where it stands: read off the solids. Drawers count at home. */
export function stanceOf(input: CheckInput): Stance | undefined {
  const { piece } = input;
  const bodies = partBodies(input);
  const drawn = new Set(piece.drawers.flatMap((d) => d.parts));
  const still = bodies.filter((b) => !drawn.has(b.part.id));
  if (still.length === 0) return undefined;
  const floor = boundsOf(still)[2][0];
  let [front, back] = [Infinity, -Infinity];
  for (const b of still)
    if (b.bounds[2][0] <= floor + ON_FLOOR)
      for (const p of b.points)
        if (p[2] <= floor + ON_FLOOR) [front, back] = [Math.min(front, p[1]), Math.max(back, p[1])];
  const drawers = drawerRooms(piece, bodies);
  return {
    piece,
    still,
    drawers,
    floor,
    front,
    back,
    top: boundsOf(bodies)[2][1],
    kg: massOf(bodies) + boughtInAll(piece),
    volume: drawers.reduce((s, d) => s + d.volume, 0),
  };
}

/** One way of standing and being pulled at. */
interface Case {
  readonly code: string;
  readonly name: string;
  readonly about: string;
  readonly open: boolean;
  readonly full: boolean;
  readonly tilt: number;
  readonly pull?: { readonly up: number; readonly newtons: number };
  /** The one drawer that is out; without it all are. */
  readonly only?: DrawerRoom;
  /** Drawer at whose front a child hangs. */
  readonly child?: DrawerRoom;
  readonly inputs: readonly Input[];
  readonly sources: readonly string[];
}

const travelOf = (d: DrawerRoom, c: Case, most: number): number =>
  c.open && (c.only ?? d) === d ? Math.min(d.travel, most) : 0;

/** All masses of a case in the side view; drawers come out by their travel, but by no more than `most`. */
function weightsOf(s: Stance, c: Case, most = Infinity): Weight2[] {
  const at = (name: string, kg: number, deep: number, up: number): Weight2 => ({
    name,
    kg,
    behind: deep - s.front,
    up: up - s.floor,
  });
  const parts = s.still.map((b) => at(b.part.mark, b.kg, b.centre[1], b.centre[2]));
  const drawn = s.drawers.flatMap((d): Weight2[] => {
    const out = travelOf(d, c, most);
    const room = (axis: 1 | 2): number => (d.room[axis][0] + d.room[axis][1]) / 2;
    return [
      at(d.drawer.mark, d.kg, d.centre[1] - out, d.centre[2]),
      ...(c.full ? [at(`in ${d.drawer.mark}`, FILL * d.volume, room(1) - out, room(2))] : []),
    ];
  });
  const { child } = c;
  const hung = child
    ? [at('child', CHILD.mass.value, child.bounds[1][0] - travelOf(child, c, most), child.bounds[2][1])]
    : [];
  return [...parts, ...drawn, ...hung];
}
const balanceOf = (s: Stance, c: Case, most = Infinity): Balance => balance(weightsOf(s, c, most), c.tilt, c.pull);
const ratioOf = ({ holding, tipping }: Balance): number => (tipping > 0 ? holding / tipping : Infinity);

/** Whether it is clothing storage under the rule: every condition, and those that are wanting, in words. */
export interface Scope {
  readonly sized: boolean;
  readonly inside: boolean;
  readonly wanting: readonly string[];
}
export function scopeOf(s: Pick<Stance, 'piece' | 'floor' | 'top' | 'kg' | 'volume'>): Scope {
  const { units, use } = s.piece;
  const said = (of: 'mass' | 'volume', v: number): string => sayQuantity(quantity(of, v), units);
  const step = units === 'in' ? inches(1 / 64) : mm(1);
  const long = (v: number): string => sayQuantity(quantity('length', snap(mm(v), step)), units);
  const high = s.top - s.floor;
  const slack = 1e-9;
  const sizes = [
    ...(high < SCOPE.height - slack ? [`${long(high)} high is under ${long(SCOPE.height)}`] : []),
    ...(s.kg < SCOPE.kg - slack ? [`${said('mass', s.kg)} is under ${said('mass', SCOPE.kg)}`] : []),
    ...(s.volume < SCOPE.volume - slack
      ? [`${said('volume', s.volume)} enclosed is under ${said('volume', SCOPE.volume)}`]
      : []),
  ];
  const uses = [
    ...(use?.kind === 'clothes' ? [] : [use?.kind === undefined ? 'its use is not said' : 'not for clothes']),
    ...(use?.fixed === true ? ['fixed to the building'] : []),
  ];
  return { sized: sizes.length === 0, inside: sizes.length + uses.length === 0, wanting: [...sizes, ...uses] };
}

function scopeJudgement(s: Stance, scope: Scope): Judgement {
  const unsaid = scope.sized && s.piece.use?.kind === undefined && s.piece.use?.fixed !== true;
  return {
    code: 'tip-scope',
    verdict: scope.inside || unsaid ? 'note' : 'pass',
    subject: 'The piece',
    about: scope.inside
      ? `is clothing storage under ${RULE}, by use, height, weight and room`
      : `is not clothing storage under ${RULE} (${scope.wanting.join('; ')}), room enclosed`,
    figure: quantity('volume', s.volume),
    limit: quantity('volume', SCOPE.volume),
    worked: {
      rule: 'free-standing, for clothes, and all of: height, mass, enclosed volume at least the limit',
      sources: [SCOPE_SOURCE],
      inputs: [
        { name: 'height', quantity: quantity('length', mm(s.top - s.floor)) },
        {
          name: 'mass, empty, with slides and screws',
          quantity: quantity('mass', s.kg),
          source: 'an estimate, not a test',
        },
        { name: 'room in its drawers', quantity: quantity('volume', s.volume) },
      ],
    },
    ...(scope.inside
      ? {
          remedy:
            'It must pass the tests of ASTM F2057 as built, with its label and a device for the wall: have it tested or take advice.',
        }
      : unsaid
        ? { remedy: 'Say what it is for under "use": for clothes it would have to pass the tests of ASTM F2057.' }
        : {}),
    touches: [],
    path: s.piece.use ? ['use'] : ['piece'],
  };
}

const length = (name: string, v: number, more: Partial<Input> = {}): Input => ({
  name,
  quantity: quantity('length', mm(v)),
  ...more,
});

/** The cases that are judged: open drawers always; pull and child where its height and mass, or its use, bring them in. */
export function casesOf(s: Stance, scope: Scope): Case[] {
  const { use } = s.piece;
  const drawn = s.drawers.length > 0;
  const great = s.top - s.floor >= SCOPE.height && s.kg >= SCOPE.kg;
  const level = { open: true, tilt: 0, sources: [] };
  const fill: Input = {
    name: 'clothes in 1 ft³ of drawer',
    quantity: quantity('mass', FILL * FOOT_M ** 3),
    source: FILL_SOURCE,
  };
  const cases: Case[] = [];
  if (drawn)
    cases.push(
      {
        ...level,
        code: 'tip-open',
        name: 'All open, empty',
        about: `pulled forward by every drawer, open and empty${ALWAYS}`,
        full: false,
        inputs: [],
      },
      {
        ...level,
        code: 'tip-full',
        name: 'All open, full',
        about: `pulled forward by every drawer, open and full${ALWAYS}`,
        full: true,
        inputs: [fill],
        sources: [FILL_SOURCE],
      },
    );
  if (great || use?.kind === 'clothes') {
    const up = Math.min(PULL.height.value, s.top - s.floor);
    cases.push({
      code: 'tip-push',
      name: 'Pulled at',
      about: `pulled level at ${sayQuantity(quantity('length', mm(up)), s.piece.units)} up, drawers shut${ALWAYS}`,
      open: false,
      full: false,
      tilt: 0,
      pull: { up, newtons: PULL.force.value },
      inputs: [
        { name: 'pull', quantity: quantity('force', PULL.force.value), ...had(PULL.force) },
        length('height of the pull', up, had(PULL.height)),
      ],
      sources: [PULL.force.source],
    });
    const child = drawn ? childCase(s, scope, fill) : undefined;
    if (child) cases.push(child);
  }
  return cases;
}

/** The child hangs where it tips most; on carpet the piece leans. */
function childCase(s: Stance, scope: Scope, fill: Input): Case | undefined {
  const carpet = scope.inside || s.piece.use?.floor !== 'hard';
  const tilt = carpet ? leanOn(CHILD.block.value, s.back - s.front) : 0;
  const base = { code: 'tip-child', open: true, full: true, tilt, sources: [CHILD.mass.source, FILL_SOURCE] };
  const at = (d: DrawerRoom): Case => ({
    ...base,
    name: `Child at ${d.drawer.mark}`,
    about: `pulled forward by a child of ${sayQuantity(quantity('mass', CHILD.mass.value), s.piece.units)} at the front of ${d.drawer.mark}, every drawer open and full${carpet ? ', on carpet' : ''}${ALWAYS}`,
    child: d,
    inputs: [
      { name: 'child', quantity: quantity('mass', CHILD.mass.value), ...had(CHILD.mass) },
      fill,
      ...(carpet
        ? [
            length('rear raised by', CHILD.block.value, had(CHILD.block)),
            { name: 'so the floor leans', quantity: quantity('angle', tilt) } as Input,
          ]
        : []),
    ],
  });
  let worst: Case | undefined;
  for (const d of s.drawers) {
    const c = at(d);
    if (!worst || ratioOf(balanceOf(s, c)) < ratioOf(balanceOf(s, worst)) - 1e-12) worst = c;
  }
  return worst;
}

function judged(s: Stance, c: Case, scope: Scope): Judgement {
  const b = balanceOf(s, c);
  const ratio = ratioOf(b);
  const verdict: Verdict = ratio >= IN_HAND ? 'pass' : ratio >= 1 || !scope.inside ? 'warning' : 'fail';
  return {
    code: c.code,
    verdict,
    subject: 'The piece',
    about: c.about,
    figure: quantity('moment', b.tipping),
    limit: quantity('moment', b.holding),
    ...(Number.isFinite(ratio) ? { margin: ratio } : {}),
    worked: {
      rule: `moments about the front line on which it stands: what holds over what tips, at least ${IN_HAND}; ${ESTIMATE}`,
      sources: [
        ...c.sources,
        'Wood Handbook, FPL-GTR-282, equation 4-14, for the wood',
        `our default: ${IN_HAND} times in hand`,
      ],
      inputs: [
        length('front line of the floor, from the front of the piece axes', s.front),
        { name: 'mass without drawers', quantity: quantity('mass', massOf(s.still)) },
        length('its middle behind the front line', centreOf(s.still)[1] - s.front),
        ...s.drawers.flatMap((d): Input[] => [
          { name: `${d.drawer.mark}, empty`, quantity: quantity('mass', d.kg) },
          ...(c.open ? [length(`${d.drawer.mark} comes out`, d.travel, { source: d.why })] : []),
        ]),
        ...c.inputs,
        { name: 'holding', quantity: quantity('moment', b.holding) },
        { name: 'tipping', quantity: quantity('moment', b.tipping) },
      ],
    },
    ...(verdict === 'pass' ? {} : { remedy: remedyOf(s, c, b, scope) }),
    ...(scope.inside && ratio < 1 ? { nevertheless: NEVERTHELESS } : {}),
    // The whole piece tips: no card of one part is the place for it.
    touches: [],
    path: c.open && s.piece.drawers.length > 0 ? ['drawers'] : ['piece'],
  };
}

/** What would pass: a weight low at the back, or drawers that come out less. */
function remedyOf(s: Stance, c: Case, b: Balance, scope: Scope): string {
  const { units } = s.piece;
  const arm = (s.back - s.front - INCH_MM) / 1000;
  const more = arm > 0 ? (IN_HAND * b.tipping - b.holding) / (GRAVITY * arm) : 0;
  const most = c.open ? travelThatPasses(s, c) : undefined;
  const step = units === 'in' ? inches(1 / 4) : mm(5);
  const ways = [
    ...(more > 0 ? [`${sayQuantity(quantity('mass', more), units)} more, low at the back`] : []),
    ...(most !== undefined && mm(most) >= step
      ? [`drawers that come out no more than ${sayQuantity(quantity('length', snapDown(mm(most), step)), units)}`]
      : []),
    ...(c.open && s.drawers.length > 1 && passesOneByOne(s, c)
      ? ['an interlock that lets one drawer out at a time']
      : []),
  ].join(', or ');
  return scope.inside
    ? `It must stand without the wall, and be fixed to it besides${ways === '' ? '' : `: ${ways}, would pass`}.`
    : `Fix it to the wall${ways === '' ? '' : `; standing free, ${ways}, would pass`}.`;
}
/**
 * Whether it passes with any one drawer out and the others shut: less than half of the room open, nothing is filled (ASTM
 * F2057, from memory). A child hangs at the one that is out.
 */
function passesOneByOne(s: Stance, c: Case): boolean {
  return s.drawers.every((d) => {
    const { child, ...rest } = c;
    const one: Case = { ...rest, full: false, only: d, ...(child ? { child: d } : {}) };
    return ratioOf(balanceOf(s, one)) >= IN_HAND;
  });
}
/** Greatest travel (mm) of the drawers at which the case passes; undefined when even shut it does not. */
export function travelThatPasses(s: Stance, c: Case): number | undefined {
  const passes = (most: number): boolean => ratioOf(balanceOf(s, c, most)) >= IN_HAND;
  if (!passes(0)) return undefined;
  let [low, high] = [0, Math.max(...s.drawers.map((d) => d.travel))];
  for (let i = 0; i < 40; i++) {
    const m = (low + high) / 2;
    if (passes(m)) low = m;
    else high = m;
  }
  return low;
}

function diagram(s: Stance, c: Case): TipCase {
  const x = (deep: number): number => Math.round((s.front - deep) * NM_PER_MM) + 0;
  const y = (up: number): number => Math.round((up - s.floor) * NM_PER_MM) + 0;
  const box = ([deep, up]: readonly [Span, Span]): readonly [number, number, number, number] => [
    x(deep[1]),
    y(up[0]),
    x(deep[0]),
    y(up[1]),
  ];
  const still = boundsOf(s.still);
  const shown = weightsOf(s, c).filter((w) => !s.still.some((b) => b.part.mark === w.name));
  const centre = centreOf(s.still);
  const b = balanceOf(s, c);
  return {
    name: c.name,
    boxes: [
      { box: box([still[1], still[2]]), open: false },
      ...s.drawers.map((d) => {
        const out = travelOf(d, c, Infinity);
        return { box: box([[d.bounds[1][0] - out, d.bounds[1][1] - out], d.bounds[2]]), open: c.open };
      }),
    ],
    loads: [
      { name: 'the rest', x: x(centre[1]), y: y(centre[2]), newtons: massOf(s.still) * GRAVITY },
      ...shown.map((w) => ({
        name: w.name,
        x: Math.round(-w.behind * NM_PER_MM) + 0,
        y: Math.round(w.up * NM_PER_MM) + 0,
        newtons: w.kg * GRAVITY,
      })),
    ],
    ...(c.pull ? { pull: { y: Math.round(c.pull.up * NM_PER_MM), newtons: c.pull.newtons } } : {}),
    tilt: c.tilt,
    ...b,
  };
}

/** Whether it tips: an estimate from the solids, never a test. What is fixed to the building does not tip. */
export const stability: Check = {
  key: 'stability',
  title: 'Tipping over: an estimate, not a test',
  run(input) {
    const s = stanceOf(input);
    if (!s || !Number.isFinite(s.front)) return { judgements: [] };
    const scope = scopeOf(s);
    const scoped = s.drawers.length > 0 ? [scopeJudgement(s, scope)] : [];
    const cases = s.piece.use?.fixed === true ? [] : casesOf(s, scope);
    return {
      judgements: [...cases.map((c) => judged(s, c, scope)), ...scoped],
      ...(cases.length > 0 ? { diagrams: [{ kind: 'tip-over', cases: cases.map((c) => diagram(s, c)) }] } : {}),
    };
  },
};
