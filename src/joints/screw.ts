import { z } from 'zod';
import { SCREWS, screwGauge } from '../data/screws.js';
import type { Diagnostic } from '../diag/diagnostic.js';
import { cosine, sine, tangent } from '../geom/angle.js';
import type { Axis, Face } from '../geom/axis.js';
import { faceAxis, faceOf, faceSign } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { middle, width } from '../geom/box.js';
import { parseFigure } from '../lengths/format.js';
import type { Length } from '../lengths/length.js';
import { inches, mm, nm, snap, snapDown, snapUp } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived, given } from '../value/sized.js';
import type { BoreCut } from '../words/cut.js';
import { inchBox } from './example.js';
import {
  choiceField,
  count,
  countField,
  faceField,
  lengthField,
  lengthsField,
  maybe,
  several,
  sized,
  text,
} from './fields.js';
import type { Given, JointKind, Resolved, Site, SiteBody } from './joint.js';
import { common, either, endOf, fig, finding, INTO, offAxis, resists, sideOf, THICK, wall, WIDE } from './place.js';

const HOLES = ['round', 'slotted', 'pocket'] as const;
type Hole = (typeof HOLES)[number];

interface Screws {
  readonly hole: Hole;
  readonly name: string;
  readonly length: Sized;
  /** Hole for the shank; the shank itself. */
  readonly shank: Length;
  readonly bought: { readonly diameter: Length; readonly gauge?: number };
  readonly head: Length;
  readonly pilot: Length;
  /** How far the top of the head lies below the surface, and how deep its seat is. */
  readonly sink: Sized;
  readonly seat: Length;
  readonly at: readonly (readonly [number, number])[];
  readonly slot?: { readonly axis: Axis; readonly length: Sized };
  readonly face?: Face;
}

const spec = z.strictObject({
  screw: z
    .string()
    .optional()
    .meta({
      description: 'Gauge and length of the screw; in millimetres, diameter and length',
      examples: ['#8 x 1 1/4'],
    }),
  hole: choiceField(HOLES, 'The hole in the entering part: round, slotted for movement, or a pocket'),
  count: countField('Number of screws', 3),
  sink: lengthField('How far the head is sunk below the surface', '1/8'),
  inset: lengthField('Distance of the first and last screw from the ends of the contact', '2'),
  at: lengthsField(
    'Where they stand instead: from the left, front or bottom end of the contact, along its longer side',
    ['2', '9 1/2'],
  ),
  face: faceField('Pocket holes: the face of the entering part in which they start', 'back'),
});

/** Lengths that are sold: common practice. */
const LENGTHS_IN = [1 / 2, 5 / 8, 3 / 4, 1, 1.25, 1.5, 1.75, 2, 2.5, 3].map(inches);
const LENGTHS_MM = [12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70].map(mm);

interface Named {
  readonly gauge?: number;
  readonly shank?: Length;
  readonly length?: Length;
}
/** Reads `#8 x 1 1/4` or, in millimetres, `4 x 40`; undefined when it is neither. */
function readScrew(typed: string, site: Site): Named | undefined {
  const [size, long, more] = typed.split(/\s*[x×]\s*/);
  if (size === undefined || more !== undefined) return undefined;
  const length = long === undefined ? undefined : parseFigure(long.trim(), site.world.units);
  if (long !== undefined && length === undefined) return undefined;
  const tail = length === undefined ? {} : { length };
  const numbered = /^#(\d+)$/.exec(size.trim());
  if (numbered) return screwGauge(Number(numbered[1])) ? { gauge: Number(numbered[1]), ...tail } : undefined;
  const shank = site.world.units === 'mm' ? parseFigure(size.trim(), 'mm') : undefined;
  return shank === undefined ? undefined : { shank, ...tail };
}

type Sizes = Pick<Screws, 'shank' | 'bought' | 'head' | 'pilot'>;
/** Holes of a gauge from the table; of a metric screw: pilot 0.65 and head 2 x the diameter (from memory). */
function holesOf(named: Named): Sizes {
  const row = screwGauge(named.gauge ?? 8) ?? SCREWS[0];
  if (named.shank !== undefined || !row) {
    const d = named.shank ?? mm(4);
    return { shank: nm(d + mm(0.2)), bought: { diameter: d }, head: nm(2 * d), pilot: snap(0.65 * d, mm(0.1)) };
  }
  const bought = { diameter: row.diameter, gauge: row.gauge };
  return { shank: row.shank, bought, head: row.head, pilot: row.pilotHard };
}

/** Thickness of the entering part under the head. */
const under = (site: Site, sink: number): number => width(site.entering.box[INTO]) - sink;

/** About two thirds of it in the receiving part, the point at least 1/8 in (3 mm) from its far face: common practice. */
function lengthRule(site: Site, hole: Hole, sink: number): Sized {
  const through = hole === 'pocket' ? pocketReach(site) - pocketSeat(site) : under(site, sink);
  const most = Math.min(3 * through, through + wall(site) - either(site.world, 1 / 8, 3));
  const sold = site.world.units === 'in' ? LENGTHS_IN : LENGTHS_MM;
  const best = [...sold].reverse().find((l) => l <= most) ?? sold[0] ?? nm(most);
  return byRule(
    best,
    'two thirds in the receiving part, its point 1/8 in (3 mm) from the far face',
    'common practice',
    [
      { name: 'under the head', value: nm(through) },
      { name: 'receiving thickness', value: wall(site) },
    ],
  );
}

/** Screws along a stretch: the first and last `inset` from its ends, the others evenly between, rounded to `step`. */
function spread(over: Span, n: number, inset: number, step: Length): number[] {
  if (n === 1) return [snap(middle(over), step)];
  const gap = (width(over) - 2 * inset) / (n - 1);
  return Array.from({ length: n }, (_, i) =>
    i === 0 ? nm(over[0] + inset) : i === n - 1 ? nm(over[1] - inset) : snap(over[0] + inset + i * gap, step),
  );
}
/** The contact of the two parts: its longer and its shorter side. */
function sides(site: Site): { readonly alongWide: boolean; readonly long: Span; readonly short: Span } {
  const { thick, wide } = site.contact;
  const alongWide = width(wide) >= width(thick);
  return alongWide ? { alongWide, long: wide, short: thick } : { alongWide, long: thick, short: wide };
}
/** Screws whose places are typed: in one row along the middle. */
function placesAsTyped(at: readonly Sized[], site: Site): [number, number][] {
  const { alongWide, long, short } = sides(site);
  const s = snap(middle(short), site.world.step);
  return at.map(({ value }): [number, number] => (alongWide ? [s, nm(long[0] + value)] : [nm(long[0] + value), s]));
}
/** Places that are typed and cannot be: beyond the contact, or with a number and an inset beside them. */
function judgePlaces(spec: Resolved, site: Site): Diagnostic[] {
  const at = several(spec, 'at');
  if (!at) return [];
  const size = width(sides(site).long);
  const beyond = at.find(({ value }) => value <= 0 || value >= size);
  const also = ['count', 'inset'].find((key) => spec[key] !== undefined);
  return [
    ...(beyond
      ? [
          finding(
            site,
            'error',
            'screw-outside',
            `A screw at ${fig(site, beyond.value)} is not on the contact, which is ${fig(site, size)} long.`,
            { field: 'at', hint: 'Places are measured from the left, front or bottom end of what both parts share.' },
          ),
        ]
      : []),
    ...(also === undefined
      ? []
      : [
          finding(site, 'error', 'screw-places', `The places of the screws are given by "at" and by "${also}".`, {
            field: also,
            hint: 'Keep one of the two.',
          }),
        ]),
  ];
}
/**
 * Along the longer side of the contact; in two rows where the shorter side is over 3 in (75 mm) and the number is even.
 * Without a number: one for every 12 in (300 mm) and one more (our default, never fewer than 2).
 */
function places(spec: Resolved, site: Site): [number, number][] {
  const typed = several(spec, 'at');
  if (typed) return placesAsTyped(typed, site);
  const { alongWide, long, short } = sides(site);
  const n = count(spec, 'count') ?? Math.max(2, Math.ceil(width(long) / either(site.world, 12, 300)) + 1);
  const rows = n >= 4 && n % 2 === 0 && width(short) > either(site.world, 3, 75) ? 2 : 1;
  // Pockets are long: those along an edge keep clear of those at its ends.
  const most = text(spec, 'hole') === 'pocket' ? either(site.world, 3, 75) : either(site.world, 2, 50);
  const inset = (over: Span): number =>
    maybe(spec, 'inset')?.value ?? snapDown(Math.min(most, width(over) / 4), site.world.step);
  const rough = either(site.world, 1 / 8, 1);
  const b =
    rows === 2
      ? spread(short, 2, Math.min(inset(short), width(short) / 4), site.world.step)
      : [snap(middle(short), site.world.step)];
  return b.flatMap((s) => {
    const taken = occupied(site, alongWide ? WIDE : THICK, s);
    return spread(long, n / rows, inset(long), rough)
      .map((l) => clearOf(l, taken, long))
      .map((l): [number, number] => (alongWide ? [s, l] : [l, s]));
  });
}

/** Room for a driver beside another part: 1 in (25 mm), our default. */
const driver = (site: Site): Length => either(site.world, 1, 25);

/** Where other joints have taken wood of either part near the line of screws at `across`, and room for a driver beside. */
function occupied(site: Site, long: Axis, across: number): Span[] {
  const short = long === WIDE ? THICK : WIDE;
  const near = driver(site);
  return site.claims.flatMap(({ cut }): Span[] => {
    if (cut.shape !== 'box' && cut.shape !== 'dovetail') return [];
    const along =
      cut.shape === 'box'
        ? cut.at[long]
        : cut.run === long
          ? cut.runSpan
          : cut.taper === long
            ? cut.atFloor
            : undefined;
    const beside =
      cut.shape === 'box'
        ? cut.at[short]
        : cut.run === short
          ? cut.runSpan
          : cut.taper === short
            ? cut.atFloor
            : undefined;
    const end = along === undefined || cut.face === faceOf(long, 1) || cut.face === faceOf(long, -1);
    const hit = beside === undefined || (beside[0] - near < across && across < beside[1] + near);
    return end || !hit || along === undefined ? [] : [[along[0] - near, along[1] + near]];
  });
}
/** The nearest place to `at` outside all `taken`, inside `over`; `at` itself when there is none. */
function clearOf(at: number, taken: readonly Span[], over: Span): number {
  const free = (x: number): boolean => x > over[0] && x < over[1] && !taken.some(([lo, hi]) => lo < x && x < hi);
  if (free(at)) return at;
  const choices = taken.flat().filter(free);
  return choices.sort((p, q) => Math.abs(p - at) - Math.abs(q - at) || p - q)[0] ?? at;
}

/** Slot along the movement of the receiving part, across its grain: the shank, and what it swells each way, at least 1/4 in (6 mm). */
function slotOf(site: Site, shank: number): Screws['slot'] {
  const grain = site.receiving.grain;
  const axis: Axis =
    grain === THICK
      ? WIDE
      : grain === WIDE
        ? THICK
        : width(site.contact.wide) >= width(site.contact.thick)
          ? THICK
          : WIDE;
  const across = width(site.receiving.box[axis]);
  const swell = nm(site.world.swell(site.receiving.part, across));
  const length = byRule(
    snapUp(shank + Math.max(either(site.world, 1 / 4, 6), 2 * swell), site.world.step),
    'shank + twice the swell of the receiving part, at least 1/4 in (6 mm)',
    'common practice',
    [{ name: 'swell', value: swell }],
  );
  return { axis, length };
}

const POCKET = 15;
const pocketDepth = (site: Site): number => width(site.entering.box[THICK]) / 2;
/** From the mouth on the face to where the screw comes out, at half the thickness, along the screw. */
const pocketReach = (site: Site): number => snap(pocketDepth(site) / sine(POCKET), site.world.step);
/** The wide part of a pocket ends 5/8 in (16 mm) before the screw comes out (from memory). */
const pocketSeat = (site: Site): number => Math.max(0, pocketReach(site) - either(site.world, 5 / 8, 16));

function judge(r: Screws, site: Site): Diagnostic[] {
  const out: Diagnostic[] = [];
  const inside =
    r.length.value - (r.hole === 'pocket' ? pocketReach(site) - pocketSeat(site) : under(site, r.sink.value));
  const into = r.hole === 'pocket' ? inside * cosine(POCKET) : inside;
  const left = wall(site) - into;
  if (inside < either(site.world, 1 / 4, 6))
    out.push(
      finding(
        site,
        'error',
        'screw-short',
        `A screw ${fig(site, r.length.value)} long reaches only ${fig(site, Math.max(0, inside))} into the receiving part.`,
        { field: 'screw', hint: 'A longer screw, or sink its head deeper.' },
      ),
    );
  if (left < either(site.world, 1 / 16, 1.5))
    out.push(
      finding(
        site,
        'error',
        'screw-through',
        `A screw ${fig(site, r.length.value)} long would come to within ${fig(site, Math.max(0, left))} of the far face.`,
        { field: 'screw', hint: 'A shorter screw.' },
      ),
    );
  if (r.hole === 'pocket' && width(site.entering.box[INTO]) < 2 * pocketReach(site))
    out.push(finding(site, 'error', 'pocket-short', 'The part is too short for a pocket hole.', { field: 'hole' }));
  if (r.hole !== 'pocket' && r.seat >= width(site.entering.box[INTO]))
    out.push(finding(site, 'error', 'screw-sink', 'The head would be sunk right through the part.', { field: 'sink' }));
  const narrow = r.at.some(([a, b]) =>
    [a - site.contact.thick[0], site.contact.thick[1] - a, b - site.contact.wide[0], site.contact.wide[1] - b].some(
      (gap) => gap < r.shank,
    ),
  );
  if (narrow)
    out.push(
      finding(
        site,
        'warning',
        'screw-edge',
        'A screw stands less than its own thickness from an edge: the wood may split.',
        { field: 'count' },
      ),
    );
  return out;
}

/** Wood screws through the entering part into the receiving one. */
export const screw: JointKind<unknown, Screws> = {
  kind: 'screw',
  words: 'screws',
  spec,
  lengths: ['sink', 'inset', 'at'],
  stance: 'face',
  leans: true,
  rank: 3,
  example: {
    spec: { screw: '#8 x 1 1/4', count: 3 },
    site: {
      entering: { box: inchBox([-0.75, 0], [0, 2.5], [0, 34.25]), grain: 2 },
      receiving: { box: inchBox([0, 0.875], [-0.75, 19.25], [-1.625, 35.875]), grain: 2 },
    },
  },
  resolve(spec, site) {
    const typed = text(spec, 'screw');
    const named = typed === undefined ? { gauge: site.world.units === 'mm' ? undefined : 8 } : readScrew(typed, site);
    const unread = named
      ? []
      : [
          finding(site, 'error', 'screw-unread', `"${typed ?? ''}" is no screw.`, {
            field: 'screw',
            hint: 'Write gauge and length, "#8 x 1 1/4", or in millimetres "4 x 40".',
          }),
        ];
    const usable: Named = {
      ...(named?.gauge === undefined ? {} : { gauge: named.gauge }),
      ...(named && 'shank' in named && named.shank !== undefined ? { shank: named.shank } : {}),
    };
    const metric = site.world.units === 'mm' && usable.gauge === undefined && usable.shank === undefined;
    const sizes = holesOf(metric ? { shank: mm(4) } : usable);
    const hole = (text(spec, 'hole') ?? 'round') as Hole;
    const sink =
      hole === 'pocket'
        ? derived(nm(0), 'in the pocket')
        : sized(spec, 'sink', () => byRule(nm(0), 'flush', 'our default'));
    const length =
      named && 'length' in named && named.length !== undefined
        ? given(named.length, typed ?? '')
        : lengthRule(site, hole, sink.value);
    const slot = hole === 'slotted' ? slotOf(site, sizes.shank) : undefined;
    const face = hole === 'pocket' ? pocketFace(spec, site) : undefined;
    const r: Screws = {
      hole,
      length,
      ...sizes,
      name: nameOf(usable, length, site),
      sink,
      seat: snapUp(sink.value + (sizes.head - sizes.shank) / 2, site.world.step),
      at: places(spec, site),
      ...(slot ? { slot } : {}),
      ...(face ? { face } : {}),
    };
    const leaning =
      site.slope !== undefined
        ? [
            finding(
              site,
              'error',
              'screw-leans',
              'Screws cannot go in at an end that is bevelled to the part it meets.',
              {
                hint: 'Let the part under the heads lie with a face of its own on the other, or make a mortise and tenon.',
              },
            ),
          ]
        : [];
    const side = hole === 'pocket' ? offAxis(spec, 'face', THICK, site) : undefined;
    return {
      r,
      findings: [...unread, ...(side ? [side] : []), ...judgePlaces(spec, site), ...leaning, ...judge(r, site)],
    };
  },
  give,
};

const pocketFace = (spec: Resolved, site: Site): Face => {
  const face = sideOf(spec, 'face', site);
  return face !== undefined && faceAxis(face) === THICK ? face : faceOf(THICK, 1);
};
const nameOf = (named: Named, length: Sized, site: Site): string =>
  named.shank === undefined && site.world.units === 'in'
    ? `#${named.gauge ?? 8} × ${fig(site, length.value)}`
    : `${named.gauge === undefined ? fig(site, named.shank ?? mm(4)) : `#${named.gauge}`} × ${fig(site, length.value)}`;

function straight(r: Screws, site: Site): Pick<Given, 'entering' | 'receiving' | 'bodies'> {
  const top = site.entering.box[INTO][0];
  const inside = r.length.value - under(site, r.sink.value);
  const entering = r.at.map((at, i): BoreCut => ({
    ...common(site, i + 1, 'entering', 3),
    shape: 'bore',
    as: r.slot ? 'slotted' : r.sink.value > 0 ? 'counterbore' : 'hole',
    face: 'left',
    at,
    diameter: r.shank,
    depth: 'through',
    ...(r.slot ? { slot: { axis: r.slot.axis, length: r.slot.length.value } } : {}),
    seat: { diameter: snapUp(r.head, site.world.step), depth: r.seat },
    notes: [`Screw ${r.name}`, ...(r.slot ? ['The screw in the middle of the slot'] : [])],
  }));
  const receiving = r.at.map((at, i): BoreCut => ({
    ...common(site, i + 1, 'receiving', 3),
    shape: 'bore',
    as: 'pilot',
    face: 'left',
    at,
    diameter: r.pilot,
    depth: snapUp(inside, site.world.step),
    notes: [`Screw ${r.name}`],
  }));
  const bodies = r.at.map(([a, b]): SiteBody => ({
    kind: 'screw',
    name: r.name,
    from: [top + r.sink.value, a, b],
    to: [inside, a, b],
    diameter: r.shank,
    head: r.head,
    bought: r.bought,
  }));
  return { entering, receiving, bodies };
}

/** Pockets at 15 degrees to the face; the screw comes out at half the thickness and makes its own way. */
function pockets(r: Screws, site: Site, face: Face): Pick<Given, 'entering' | 'receiving' | 'bodies'> {
  const sign = faceSign(face);
  const surface = endOf(site.entering.box[THICK], face);
  const back = snap(pocketDepth(site) / tangent(POCKET), site.world.step);
  const seat = snap(pocketSeat(site), site.world.step);
  const entering = r.at.map(([, wide], i): BoreCut => ({
    ...common(site, i + 1, 'entering', 3),
    shape: 'bore',
    as: 'pocket',
    face,
    at: [0 - back, wide],
    diameter: r.shank,
    depth: snapUp(pocketReach(site) + r.shank / 2, site.world.step),
    seat: { diameter: either(site.world, 3 / 8, 9.5), depth: seat },
    tilt: { toward: faceOf(INTO, 1), degrees: 90 - POCKET },
    notes: [`Screw ${r.name}`, 'No glue on end grain'],
  }));
  const along = (d: number): [number, number] => [nm(d * cosine(POCKET) - back), nm(surface - sign * d * sine(POCKET))];
  const bodies = r.at.map(([, wide]): SiteBody => ({
    kind: 'screw',
    name: r.name,
    from: [...along(seat), wide],
    to: [...along(seat + r.length.value), wide],
    diameter: r.shank,
    head: r.shank,
    bought: r.bought,
  }));
  return { entering, receiving: [], bodies };
}

function give(r: Screws, site: Site): Given {
  const made = r.face ? pockets(r, site, r.face) : straight(r, site);
  return {
    growth: { entering: {} },
    ...made,
    traits: {
      insertion: ['right'],
      holds: 'pulls',
      glue: 'none',
      resists: resists(2, 2, 1, r.at.length > 1 ? 2 : 0),
      freedom: r.hole === 'slotted' ? 'slides' : 'fixed',
      shows: false,
    },
    findings: [],
    sizes: {
      'screw length': r.length,
      'clearance hole': derived(r.shank, 'shank of the screw'),
      ...(r.hole === 'pocket' ? {} : { 'pilot hole': derived(r.pilot, 'pilot for hardwood') }),
      ...(r.slot ? { slot: r.slot.length } : {}),
      ...(r.sink.value > 0 ? { sunk: r.sink } : {}),
    },
  };
}
