import { middle, width, type Span } from '../../geom/box.js';
import { secondMoment } from '../../wood/beam.js';
import type { Contact } from '../standing.js';
import {
  across,
  bearersOf,
  burdensOf,
  LEVEL,
  modulusOf,
  onFloor,
  type Frame,
  type Level,
  type Member,
  type Touch,
} from './frame.js';

/** A place along a span where it is borne, nm; `full` when it is borne over at least half of its breadth. */
export interface Station {
  readonly at: Span;
  readonly full: boolean;
  readonly touches: readonly Touch[];
}
/** A member that bends with the span over most of it. */
export interface Companion {
  readonly member: Member;
  readonly glued: boolean;
}
/** A free stretch of a member between two places where it is borne, or beyond the last one. nm. */
export interface Stretch {
  readonly member: Member;
  readonly a: Level;
  readonly free: Span;
  readonly supports: 'rests' | 'one end';
  /** Stations at the low and the high end; one of them where it juts out. */
  readonly low?: Station;
  readonly high?: Station;
  /** Share of an even load that goes this way. */
  readonly share: number;
  readonly companions: readonly Companion[];
  /** Those that bend with it by uprights between them: their loads count too. */
  readonly tied: readonly Member[];
}

/** What can bend under a load: it lies, stands free of the floor, and is no wall of a drawer. */
export const canBend = (f: Frame, m: Member): boolean =>
  m.lies !== 'upright' && !onFloor(f, m) && (m.part.drawer === undefined || m.lies === 'flat');

const M = 1e-9;
/** Stiffness of a plain section along a level axis, N m2; 0 when its wood is in no table. */
export const plainStiffness = (f: Frame, m: Member, a: Level): number =>
  (modulusOf(f.piece, m, a)?.value ?? 0) * secondMoment(width(m.box[across(a)]) * M, width(m.box[2]) * M);

/** A bearer this many times as stiff as what lies on it holds a line; a weaker one bends with it (our default). */
const STIFF = 2;
/** Of the breadth: how far the bearers of a station reach, from the first to the last, that it bears the whole. */
const REACH = 0.4;

/**
 * Whether an upright gives way with what it stands on: its foot is on members that bend, away from where these are borne,
 * and nothing holds it from the side. What it carries and what carries it then bend together.
 */
export function givesWay(f: Frame, u: Member, depth = 0): boolean {
  const known = KNOWN.get(f) ?? new Map<Member, boolean>();
  KNOWN.set(f, known);
  const found = known.get(u) ?? worksLoose(f, u, depth);
  known.set(u, found);
  return found;
}
/** Asked many times of one frame: its answers, kept with it. */
const KNOWN = new WeakMap<Frame, Map<Member, boolean>>();
function worksLoose(f: Frame, u: Member, depth: number): boolean {
  if (u.lies !== 'upright' || onFloor(f, u) || depth > DEEPEST) return false;
  const bearers = bearersOf(f, u);
  const below = bearers.filter((t) => t.contact.normal?.axis === 2);
  const held = bearers.some(
    (t) => !below.includes(t) && (t.joint?.traits.resists.shear ?? 0) >= 2 && !canBend(f, t.lower),
  );
  if (held || below.length === 0) return false;
  return below.every((t) => {
    if (!canBend(f, t.lower)) return false;
    const a = t.lower.along ?? 0;
    const foot = clipped(t.contact.at[a], t.lower.box[a]);
    return !stationsOf(f, t.lower, a, depth + 1).some((s) => s.at[0] <= foot[1] && foot[0] <= s.at[1]);
  });
}
/** Uprights stand on one another in no more storeys than this: our default. */
const DEEPEST = 12;

/**
 * Members that bend together: uprights that give way stand between them, or they are fixed along one another and neither is
 * so stiff that it holds the other as a line. The member itself is not among them.
 */
export function tiedWith(f: Frame, m: Member): Member[] {
  const found = [m];
  const add = (other: Member | undefined): void => {
    if (other && canBend(f, other) && other.part.drawer === m.part.drawer && !found.includes(other)) found.push(other);
  };
  for (const one of found) {
    for (const u of [...bearersOf(f, one).map((t) => t.lower), ...burdensOf(f, one).map((t) => t.upper)]) {
      if (!givesWay(f, u)) continue;
      for (const t of bearersOf(f, u)) add(t.lower);
      for (const t of burdensOf(f, u)) add(t.upper);
    }
    for (const b of f.beside.get(one) ?? []) {
      const other = b.a === one ? b.b : b.a;
      if (alikeStiff(f, one, other, b.contact)) add(other);
    }
  }
  return found.slice(1);
}
/** Fixed along one another over most of the one, unless what is below is so stiff that the upper lies on it as on a line. */
function alikeStiff(f: Frame, p: Member, q: Member, { at, normal }: Contact): boolean {
  const a = p.along;
  if (a === undefined || q.along !== a || width(clipped(at[a], p.box[a])) < 0.8 * width(p.box[a])) return false;
  if (normal?.axis !== 2) return true;
  const [upper, lower] = middle(p.box[2]) >= middle(q.box[2]) ? [p, q] : [q, p];
  return upper.lies === 'on edge' || plainStiffness(f, lower, a) < STIFF * plainStiffness(f, upper, a);
}

/** Where a member is borne along `a`. A bearer that runs along with it and is weaker, or that gives way, does not count. */
export function stationsOf(f: Frame, m: Member, a: Level, depth = 0): Station[] {
  const firm = stationsBy(f, m, a, (t) => !givesWay(f, t.lower, depth));
  return firm.length >= 2 ? firm : stationsBy(f, m, a, () => true);
}
function stationsBy(f: Frame, m: Member, a: Level, counts: (t: Touch) => boolean): Station[] {
  const b = across(a);
  const found = bearersOf(f, m)
    .filter(counts)
    .map((t) => ({ t, at: clipped(t.contact.at[a], m.box[a]), cover: clipped(t.contact.at[b], m.box[b]) }))
    .filter(({ at }) => width(at) >= 0 && width(at) <= width(m.box[a]) / 2)
    .filter(({ t }) => holdsLine(f, m, t.lower, b))
    .sort((p, q) => p.at[0] - q.at[0] || p.at[1] - q.at[1]);
  const groups: (typeof found)[] = [];
  for (const one of found) {
    const last = groups.at(-1);
    if (last && one.at[0] <= Math.max(...last.map((o) => o.at[1]))) last.push(one);
    else groups.push([one]);
  }
  const breadth = width(m.box[b]);
  return groups
    .map((g) => ({ g, hull: hullOf(g.map((o) => o.cover)) }))
    .filter(({ hull }) => m.lies === 'on edge' || width(hull) >= REACH * breadth)
    .map(({ g }) => ({
      at: hullOf(g.map((o) => o.at)),
      full: m.lies === 'on edge' || covered(g.map((o) => o.cover)) >= breadth / 2,
      touches: g.map((o) => o.t),
    }));
}
const clipped = (s: Span, to: Span): Span => [Math.max(s[0], to[0]), Math.min(s[1], to[1])];
const hullOf = (spans: readonly Span[]): Span => [
  Math.min(...spans.map((s) => s[0])),
  Math.max(...spans.map((s) => s[1])),
];
function covered(spans: readonly Span[]): number {
  let [sum, end] = [0, -Infinity];
  for (const [lo, hi] of [...spans].sort((p, q) => p[0] - q[0])) {
    sum += Math.max(0, hi - Math.max(lo, end));
    end = Math.max(end, hi);
  }
  return sum;
}
/** A wall, a leg, what stands on the floor: always. What bends itself along `way`: when it is stiff enough. */
const holdsLine = (f: Frame, m: Member, bearer: Member, way: Level): boolean =>
  !canBend(f, bearer) || bearer.along !== way || plainStiffness(f, bearer, way) >= STIFF * plainStiffness(f, m, way);

/** What runs along with a member over most of a stretch and is no station of its other way. */
function companionsOf(f: Frame, m: Member, a: Level, free: Span, lines: readonly Member[]): Companion[] {
  return (f.beside.get(m) ?? []).flatMap(({ a: p, b: q, contact, glued }): Companion[] => {
    const other = p === m ? q : p;
    if (lines.includes(other) || !canBend(f, other) || other.along !== a) return [];
    if (other.part.drawer !== m.part.drawer) return [];
    const shared = clipped(contact.at[a], free);
    return width(shared) >= 0.8 * width(free) ? [{ member: other, glued }] : [];
  });
}

/** A narrow member that lies on a wall, or is fixed along one, goes where the wall goes. */
function carriedAlong(f: Frame, m: Member, a: Level): boolean {
  const slim = m.lies === 'on edge' || width(m.box[across(a)]) * 6 <= width(m.box[a]);
  const wall = (t: Touch): boolean =>
    width(clipped(t.contact.at[a], m.box[a])) > width(m.box[a]) / 2 && !canBend(f, t.lower);
  return slim && bearersOf(f, m).some(wall);
}

/** The ways in which a member spans: one, or two that share its load. Empty when it does not bend. */
export function waysOf(
  f: Frame,
  m: Member,
): { readonly a: Level; readonly stations: readonly Station[]; share: number }[] {
  if (!canBend(f, m)) return [];
  const levels = m.lies === 'on edge' ? LEVEL.filter((a) => a === m.along) : LEVEL;
  const ways = levels
    .map((a) => ({ a, stations: stationsOf(f, m, a), share: 1 }))
    .filter((w) => w.stations.length >= 2 && !carriedAlong(f, m, w.a));
  const [p, q] = ways;
  if (!p || !q) return ways;
  const ends = (w: (typeof ways)[number]): boolean => w.stations.every((s) => s.full);
  if (ends(p) !== ends(q)) return [ends(p) ? p : q];
  const per = (w: (typeof ways)[number]): number => (modulusOf(f.piece, m, w.a)?.value ?? 0) / longest(w.stations) ** 4;
  // On corners only: the longer way bears it all.
  if (!ends(p)) return [longest(p.stations) >= longest(q.stations) ? p : q];
  const whole = per(p) + per(q);
  return whole > 0 ? ways.map((w) => ({ ...w, share: per(w) / whole })) : ways;
}
const longest = (stations: readonly Station[]): number =>
  Math.max(1, ...stations.slice(1).map((s, i) => s.at[0] - (stations[i] as Station).at[1]));

/** All free stretches of a member. */
export function stretchesOf(f: Frame, m: Member): Stretch[] {
  if (loose(f, m)) return fromEndToEnd(m);
  const ways = waysOf(f, m);
  const tied = tiedWith(f, m);
  return ways.flatMap(({ a, stations, share }) => {
    const others = ways.filter((w) => w.a !== a).flatMap((w) => w.stations);
    const lines = [...stations, ...others].flatMap((s) => s.touches.map((t) => t.lower));
    const make = (free: Span, low?: Station, high?: Station): Stretch[] =>
      width(free) > 0
        ? [
            {
              member: m,
              a,
              free,
              supports: low && high ? 'rests' : 'one end',
              ...(low ? { low } : {}),
              ...(high ? { high } : {}),
              share,
              companions: companionsOf(f, m, a, free, lines),
              tied: tied.filter((o) => o.along === a && width(clipped(o.box[a], free)) >= 0.8 * width(free)),
            },
          ]
        : [];
    const between = stations.slice(1).flatMap((s, i) => {
      const before = stations[i] as Station;
      return make([before.at[1], s.at[0]], before, s);
    });
    const [first, last] = [stations[0] as Station, stations.at(-1) as Station];
    return [
      ...make([m.box[a][0], first.at[0]], undefined, first),
      ...between,
      ...make([last.at[1], m.box[a][1]], last, undefined),
    ];
  });
}

/** A flat part that nothing in the definition bears, such as a shelf on pins: taken to rest at its two ends. */
const loose = (f: Frame, m: Member): boolean =>
  m.lies === 'flat' && m.part.drawer === undefined && canBend(f, m) && bearersOf(f, m).length === 0;
const fromEndToEnd = (m: Member): Stretch[] =>
  m.along === undefined
    ? []
    : [{ member: m, a: m.along, free: m.box[m.along], supports: 'rests', share: 1, companions: [], tied: [] }];
