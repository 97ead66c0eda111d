import { AXES, type Axis } from '../../geom/axis.js';
import { byAxis, type Box3, type Span } from '../../geom/box.js';
import { mm } from '../../lengths/length.js';
import type { Joint, Part, Piece } from '../../piece/piece.js';
import { panelOf, woodOf } from '../../wood/material.js';
import type { PartBody } from '../bodies.js';
import { contactOf, standing, type Contact, type Standing } from '../standing.js';

/** A level axis of the piece. */
export type Level = 0 | 1;
export const LEVEL: readonly Level[] = [0, 1];
export const across = (a: Level): Level => (a === 0 ? 1 : 0);

/** A part as it stands in the frame that bears loads; one that leans only bears. Boxes in nm, piece axes. */
export interface Member {
  readonly part: Part;
  readonly at?: Standing;
  readonly box: Box3;
  /** Lies flat (its thickness upright) or on its edge; neither for what stands upright. */
  readonly lies: 'flat' | 'on edge' | 'upright';
  /** Where its grain (or length) runs, when that is level. */
  readonly along?: Level;
}
/** Two members that touch: bearing from below, or held at its end or edge by a joint. */
export interface Touch {
  readonly upper: Member;
  readonly lower: Member;
  readonly contact: Contact;
  readonly joint?: Joint;
}
/** Side by side or one on the other, for a stretch: they bend together. */
export interface Beside {
  readonly a: Member;
  readonly b: Member;
  readonly contact: Contact;
  readonly glued: boolean;
}
export interface Frame {
  readonly piece: Piece;
  readonly members: readonly Member[];
  /** What bears what: `upper` is borne by `lower`. By the upper one, by the lower one. */
  readonly below: ReadonlyMap<Member, readonly Touch[]>;
  readonly above: ReadonlyMap<Member, readonly Touch[]>;
  readonly beside: ReadonlyMap<Member, readonly Beside[]>;
  /** Height of the floor, nm. */
  readonly floor: number;
}

function memberOf(part: Part): Member | undefined {
  const at = standing(part);
  if (!at) return undefined;
  const up = at.own[2];
  const long = AXES.find((a) => at.own[a] === part.length) as Axis;
  const lies = up === part.thickness ? 'flat' : up === part.width ? 'on edge' : 'upright';
  return { part, at, box: at.box, lies, ...(long === 2 ? {} : { along: long }) };
}

/** Stiffness of a member for a span along a level axis, Pa; how it is known. Wood across its grain: about a sixteenth. */
export const ACROSS_GRAIN = 0.06;
export function modulusOf(
  piece: Piece,
  m: Member,
  a: Level,
): { readonly value: number; readonly source: string; readonly memory: boolean } | undefined {
  const stock = piece.stocks[m.part.stock];
  const wood = woodOf(stock);
  const along = m.along === a;
  if (wood) {
    const { value, source, memory } = wood.stiffness;
    return along
      ? { value, source, memory: memory === true }
      : {
          value: value * ACROSS_GRAIN,
          source: `across the grain, ${ACROSS_GRAIN} of along, from memory`,
          memory: true,
        };
  }
  const panel = panelOf(stock);
  if (!panel) return undefined;
  const f = along || !panel.grain ? panel.stiffness.along : panel.stiffness.across;
  return { value: f.value, source: f.source, memory: f.memory === true };
}

const middleUp = (m: Member): number => (m.box[2][0] + m.box[2][1]) / 2;
/** Faces this near to one another touch, nm. */
const TOUCH = mm(0.01);

/** A leg that leans: its box is that of its solid, and it bears where its upper end is. */
const leaning = ({ part, bounds }: PartBody): Member => ({ part, box: nmBox(bounds), lies: 'upright' });
/** A box of mm in nm. */
export const nmBox = (b: Box3): Box3 => byAxis((a) => [mm(b[a][0]), mm(b[a][1])] as const) as Box3;
/** Where the points of a leaning part that reach up to a member stand in plan. */
function headUnder(upper: Member, body: PartBody): Contact | undefined {
  const bottom = upper.box[2][0];
  const near = body.points.filter((p) => mm(p[2]) >= bottom - TOUCH);
  if (near.length === 0 || body.bounds[2][0] * 1e6 >= bottom) return undefined;
  const over = (a: Level): Span => {
    const at = near.map((p) => mm(p[a]));
    return [Math.max(upper.box[a][0], Math.min(...at)), Math.min(upper.box[a][1], Math.max(...at))];
  };
  return { at: [over(0), over(1), [bottom, bottom]], normal: { axis: 2, side: -1 } };
}

/** The frame: who bears whom. A joint counts by what it resists, never by its kind; a part on another bears without one. */
export function frameOf(piece: Piece, bodies: readonly PartBody[]): Frame {
  const members = bodies.map((b) => memberOf(b.part) ?? leaning(b));
  const bodyOf = new Map(bodies.map((b) => [b.part.id, b]));
  const byId = new Map(members.map((m) => [m.part.id, m]));
  const touches: Touch[] = [];
  const beside: Beside[] = [];
  const joined = new Set<string>();
  for (const joint of piece.joints) {
    const [e, r] = [byId.get(joint.entering), byId.get(joint.receiving)];
    if (!e || !r || e === r) continue;
    const [lean, other] = e.at ? [r, e] : [e, r];
    const body = lean.at ? undefined : bodyOf.get(lean.part.id);
    if (body) {
      const head = other.at && headUnder(other, body);
      if (head) touches.push({ upper: other, lower: lean, contact: head, joint });
      continue;
    }
    const contact = contactOf(e.box, r.box);
    if (!contact) continue;
    joined.add(`${e.part.id} ${r.part.id}`).add(`${r.part.id} ${e.part.id}`);
    const found = borneBy(e, r, contact, joint);
    if (found) touches.push(found);
    const { traits } = joint;
    const fast = traits.freedom === 'fixed' && traits.resists.shear >= 2;
    if (fast || contact.normal?.axis === 2)
      beside.push({ a: e, b: r, contact, glued: fast && traits.glue === 'long-long' });
  }
  const square = members.filter((m) => m.at !== undefined);
  for (const bare of bareTouches(square, joined)) {
    touches.push(bare);
    beside.push({ a: bare.upper, b: bare.lower, contact: bare.contact, glued: false });
  }
  return {
    piece,
    members,
    below: gathered(touches, (t) => [t.upper]),
    above: gathered(touches, (t) => [t.lower]),
    beside: gathered(beside, (b) => [b.a, b.b]),
    floor: members.reduce((low, m) => Math.min(low, m.box[2][0]), Infinity),
  };
}
function gathered<T>(list: readonly T[], of: (one: T) => readonly Member[]): Map<Member, T[]> {
  const out = new Map<Member, T[]>();
  for (const one of list)
    for (const m of of(one)) {
      const own = out.get(m);
      if (own) own.push(one);
      else out.set(m, [one]);
    }
  return out;
}
export const bearersOf = (f: Frame, m: Member): readonly Touch[] => f.below.get(m) ?? [];
export const burdensOf = (f: Frame, m: Member): readonly Touch[] => f.above.get(m) ?? [];

function borneBy(e: Member, r: Member, contact: Contact, joint: Joint): Touch | undefined {
  const { resists } = joint.traits;
  if (contact.normal?.axis === 2) {
    const [upper, lower] = middleUp(e) >= middleUp(r) ? [e, r] : [r, e];
    return { upper, lower, contact, joint };
  }
  return resists.shear >= 1 ? { upper: e, lower: r, contact, joint } : undefined;
}

/** Parts that stand on one another with no joint between. */
function bareTouches(members: readonly Member[], joined: ReadonlySet<string>): Touch[] {
  const out: Touch[] = [];
  const byBottom = [...members].sort((p, q) => p.box[2][0] - q.box[2][0]);
  for (const lower of members)
    for (const upper of byBottom) {
      const gap = upper.box[2][0] - lower.box[2][1];
      if (gap > TOUCH) break;
      if (gap < -TOUCH || upper === lower || upper.part.drawer !== lower.part.drawer) continue;
      if (joined.has(`${upper.part.id} ${lower.part.id}`)) continue;
      const plan = ([0, 1] as const).map((a) => [
        Math.max(upper.box[a][0], lower.box[a][0]),
        Math.min(upper.box[a][1], lower.box[a][1]),
      ]) as [[number, number], [number, number]];
      if (plan.some(([lo, hi]) => hi - lo <= TOUCH)) continue;
      const at: Box3 = [plan[0], plan[1], [upper.box[2][0], upper.box[2][0]]];
      out.push({ upper, lower, contact: { at, normal: { axis: 2, side: -1 } } });
    }
  return out;
}

/** It stands on the floor: what it bears goes no further. */
export const onFloor = (f: Frame, m: Member): boolean => m.box[2][0] - f.floor <= TOUCH;
