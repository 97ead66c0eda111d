import { middle, width, type Span } from '../../geom/box.js';
import type { Piece } from '../../piece/piece.js';
import { CREEP, CREEP_SOURCE, restingSag, tipSag, type Bar } from '../../wood/beam.js';
import { panelOf } from '../../wood/material.js';
import { modulusOf, type Frame, type Member } from './frame.js';
import { partOn, type Borne } from './flow.js';
import type { Load } from './loads.js';
import { stiffnessOver } from './section.js';
import type { Stretch } from './spans.js';

const M = 1e-9;

/** A stretch as it bends: m. */
export interface Settled {
  readonly stretch: Stretch;
  readonly span: number;
  readonly now: number;
  /** In years: what lasts of the load times its creep, and the rest as at first. */
  readonly later: number;
  readonly creep: number;
  readonly creepSource: string;
}
/** Other figures to try: height (m; of one that bends with it when `of` says so), modulus (Pa), how much heavier, half the span. */
export interface Change {
  readonly of?: Member;
  readonly height?: number;
  readonly modulus?: number;
  readonly heavier?: number;
  readonly halved?: boolean;
}

export function creepOf(piece: Piece, m: Member): { readonly creep: number; readonly creepSource: string } {
  const panel = panelOf(piece.stocks[m.part.stock]);
  const kind = panel === undefined ? 'solid' : panel.core === 'plywood' ? 'plywood' : 'board';
  return { creep: CREEP[kind], creepSource: CREEP_SOURCE[kind] };
}

/** Loads over the whole plan of a member are shared with its other way; what stands at a place is borne by this one. */
const isEven = (load: Load, m: Member): boolean => load.region[0] === m.box[0] && load.region[1] === m.box[1];

/** Undefined when the wood of a stretch is in no table. */
export function settle(
  f: Frame,
  all: readonly Borne[],
  borne: Borne,
  stretch: Stretch,
  change: Change = {},
): Settled | undefined {
  const { member, a, share } = stretch;
  const own = modulusOf(f.piece, member, a);
  if (!own) return undefined;
  const free: Span = change.halved ? [stretch.free[0], middle(stretch.free)] : stretch.free;
  // What nothing is said of keeps its height.
  const heightOf = (m: Member): { readonly height?: number } =>
    change.height !== undefined && (change.of ?? member) === m ? { height: change.height } : {};
  const main = {
    member,
    modulus: change.modulus ?? own.value,
    ...heightOf(member),
  };
  const tied = stretch.tied.filter((t) => !stretch.companions.some((c) => c.member === t));
  const others = [...stretch.companions, ...tied.map((t) => ({ member: t, glued: false }))].flatMap((c) => {
    const e = modulusOf(f.piece, c.member, a);
    return e ? [{ piece: { member: c.member, modulus: e.value, ...heightOf(c.member) }, glued: c.glued }] : [];
  });
  const stiffness = stiffnessOver(a, free, main, others);
  const height = heightOf(member).height;
  const taller = height === undefined ? 1 : height / (width(member.box[2]) * M);
  const self = {
    ...borne.own,
    newtons: borne.own.newtons * taller * (change.heavier ?? 1),
    lasting: borne.own.lasting * taller * (change.heavier ?? 1),
  };
  const tiedLoads = all.filter((b) => stretch.tied.includes(b.member)).flatMap((b) => [b.own, ...b.loads]);
  const bar = (of: 'newtons' | 'lasting'): Bar => ({
    length: width(free) * M,
    stiffness,
    loads: [self, ...borne.loads, ...tiedLoads].flatMap((load) => {
      const part = partOn(load, a, free);
      const n = load[of] * (part?.share ?? 0) * (isEven(load, member) ? share : 1);
      return part && n > 0 ? [{ from: (part.at[0] - free[0]) * M, to: (part.at[1] - free[0]) * M, newtons: n }] : [];
    }),
  });
  const held = stretch.high && !stretch.low ? 'high' : 'low';
  const sag = (b: Bar): number => (stretch.supports === 'rests' ? most(b) : tipSag(held === 'low' ? b : mirrored(b)));
  const [now, lasting] = [sag(bar('newtons')), sag(bar('lasting'))];
  const { creep, creepSource } = creepOf(f.piece, member);
  return {
    stretch,
    span: width(free) * M,
    now,
    later: creep * lasting + Math.max(0, now - lasting),
    creep,
    creepSource,
  };
}
/** The sag in the middle, or under a load at a point where that is more. */
const most = (b: Bar): number =>
  Math.max(
    restingSag(b),
    ...b.loads.filter((l) => l.to <= l.from && l.from > 0 && l.from < b.length).map((l) => restingSag(b, l.from)),
  );
const mirrored = (b: Bar): Bar => {
  const turned = <T extends { readonly from: number; readonly to: number }>(l: T): T => ({
    ...l,
    from: b.length - l.to,
    to: b.length - l.from,
  });
  return { length: b.length, stiffness: b.stiffness.map(turned), loads: b.loads.map(turned) };
};
