import { middle, width, type Span } from '../../geom/box.js';
import { quantity } from '../../value/quantity.js';
import type { PartBody } from '../bodies.js';
import type { DrawerRoom } from '../drawerRoom.js';
import { canBend, stretchesOf, type Station, type Stretch } from './spans.js';
import { bearersOf, burdensOf, onFloor, type Frame, type Level, type Member, type Touch } from './frame.js';
import { drawerLoads, selfWeight, uprightWeights, useLoads, type Load } from './loads.js';

/** A member that bends, all that it bears, and its free stretches. */
export interface Borne {
  readonly member: Member;
  readonly own: Load;
  readonly loads: readonly Load[];
  readonly stretches: readonly Stretch[];
}

/** Members so that each comes after all that it bears; what stands in a ring comes by height, highest first. */
function fromAbove(f: Frame): Member[] {
  const waiting = [...f.members].sort(
    (p, q) => middle(q.box[2]) - middle(p.box[2]) || (p.part.id < q.part.id ? -1 : 1),
  );
  const out: Member[] = [];
  const done = new Set<Member>();
  while (waiting.length > 0) {
    const i = waiting.findIndex((m) => burdensOf(f, m).every((t) => t.upper === m || done.has(t.upper)));
    const [next] = waiting.splice(Math.max(0, i), 1) as [Member];
    done.add(next);
    out.push(next);
  }
  return out;
}

/** The part of a load on [from, to] along `a`: a load at a point is in it where the point is. */
export function partOn(load: Load, a: Level, s: Span): { readonly at: Span; readonly share: number } | undefined {
  const over = load.region[a];
  const at: Span = [Math.max(over[0], s[0]), Math.min(over[1], s[1])];
  if (at[1] < at[0]) return undefined;
  const share = width(over) > 0 ? width(at) / width(over) : 1;
  return share > 0 ? { at, share } : undefined;
}

/** All that bends, with its loads, and what comes to rest (N): on the floor, and where nothing known bears it. */
export interface Flow {
  readonly bends: readonly Borne[];
  readonly rest: number;
}

/** Loads go down from what lies to what bears it: to both ends of a stretch by the lever, from what stands to its foot. */
export function flow(f: Frame, bodies: readonly PartBody[], rooms: readonly DrawerRoom[]): Flow {
  const on = new Map<Member, Load[]>(f.members.map((m) => [m, []]));
  const post = (m: Member, load: Load): void => {
    if (load.newtons > 0) on.get(m)?.push(load);
  };
  for (const [m, load] of [...uprightWeights(f, bodies), ...drawerLoads(f, rooms)]) post(m, load);
  for (const m of f.members) for (const load of useLoads(f, m, rooms)) post(m, { ...load, put: true });
  const bends: Borne[] = [];
  let rest = 0;
  for (const m of fromAbove(f)) {
    const loads = on.get(m) ?? [];
    const own = selfWeight(f.piece, m);
    const stretches = stretchesOf(f, m);
    const bending = canBend(f, m);
    if (bending) bends.push({ member: m, own, loads, stretches });
    const all = bending ? [own, ...loads] : loads;
    const borne = stretches.some((t) => t.low ?? t.high);
    if (onFloor(f, m) || bearersOf(f, m).length === 0) rest += all.reduce((sum, l) => sum + l.newtons, 0);
    else if (borne) for (const t of stretches) handOn(t, stretches, all, post);
    else spread(f, m, all, post);
  }
  return { bends, rest };
}

type Post = (m: Member, load: Load) => void;
const named = (m: Member, newtons: number): Load['input'] => ({
  name: `from ${m.part.mark}`,
  quantity: quantity('force', newtons),
});

/**
 * A stretch's loads to its stations, by the lever; the bearers of a station share alike. Stretches of one way divide the
 * member between them at the middles of its stations.
 */
function handOn(s: Stretch, all: readonly Stretch[], loads: readonly Load[], post: Post): void {
  const m = s.member;
  const give = (station: Station, newtons: number, lasting: number): void => {
    const n = station.touches.length;
    for (const t of station.touches)
      post(t.lower, {
        region: t.contact.at,
        newtons: newtons / n,
        lasting: lasting / n,
        input: named(m, newtons / n),
      });
  };
  const { a, low, high } = s;
  const shared = (station: Station | undefined): boolean =>
    all.filter((o) => o.a === a && (o.low === station || o.high === station)).length > 1;
  const own: Span = [
    low && shared(low) ? middle(low.at) : m.box[a][0],
    high && shared(high) ? middle(high.at) : m.box[a][1],
  ];
  const lever = (x: number): number =>
    low && high ? Math.min(1, Math.max(0, (x - middle(low.at)) / (middle(high.at) - middle(low.at)))) : 0;
  for (const load of loads) {
    const part = partOn(load, a, own);
    if (!part) continue;
    const right = lever(middle(part.at));
    const [n, stay] = [load.newtons * part.share * s.share, load.lasting * part.share * s.share];
    if (low && high) {
      give(low, n * (1 - right), stay * (1 - right));
      give(high, n * right, stay * right);
    } else {
      const only = low ?? high;
      if (only) give(only, n, stay);
    }
  }
}

/** What does not bend hands all on: to what it stands on, else to what holds it, alike. */
function spread(f: Frame, m: Member, loads: readonly Load[], post: Post): void {
  const bearers = bearersOf(f, m);
  const below = bearers.filter((t) => t.contact.normal?.axis === 2);
  const to: readonly Touch[] = below.length > 0 ? below : bearers;
  for (const load of loads)
    for (const t of to) {
      const n = load.newtons / to.length;
      post(t.lower, {
        region: t.contact.at,
        newtons: n,
        lasting: load.lasting / to.length,
        input: { ...load.input, quantity: quantity('force', n) },
      });
    }
}
