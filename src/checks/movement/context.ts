import type { Axis } from '../../geom/axis.js';
import { AXES, faceAxis, faceSign } from '../../geom/axis.js';
import { middle, width, type Span } from '../../geom/box.js';
import type { Hardware, Part, Piece } from '../../piece/piece.js';
import type { Season } from '../../wood/moisture.js';
import type { BoreCut } from '../../words/cut.js';
import type { CheckInput } from '../check.js';
import { meetingsOf, standingsOf, type Meeting, type Standing } from '../standing.js';
import { fieldOf, inOrder, type Bar, type Field, type Tie } from './skeleton.js';
import { strain, type Rings } from './strain.js';

/** All that the parts of this check read: how parts stand, where they meet, where everything goes. */
export interface Moving {
  readonly piece: Piece;
  readonly season: Season;
  readonly stands: ReadonlyMap<string, Standing>;
  readonly meetings: readonly Meeting[];
  readonly ties: readonly [readonly Tie[], readonly Tie[], readonly Tie[]];
  /** Shifts along an axis from one moisture to another. */
  field(axis: Axis, from: number, to: number): Field;
  /** Strain of a part along an axis of the piece. */
  strain(part: string, axis: Axis, from: number, to: number): number;
  mark(part: string): string;
}

/** Slotted holes of a joint, in either part: where they stand and which way they run, piece axes, nm. */
export interface Slot {
  readonly in: Standing;
  readonly axis: Axis;
  readonly at: number;
  readonly cut: BoreCut;
  readonly length: number;
}

export const screwsOf = (piece: Piece, joint: string): readonly Hardware[] =>
  piece.hardware.filter((h) => h.screw && h.id.startsWith(`${joint}.`));

export function slotsOf({ joint, e, r }: Meeting): Slot[] {
  return [e, r].flatMap((s) =>
    s.part.cuts.flatMap((cut): Slot[] => {
      if (cut.shape !== 'bore' || !cut.slot || !cut.id.startsWith(`${joint.id}.`)) return [];
      const { axis: own, length } = cut.slot;
      const axis = AXES.find((a) => s.own[a] === own) as Axis;
      const low = Math.floor(['left', 'right', 'front', 'back', 'bottom', 'top'].indexOf(cut.face) / 2);
      const [u] = AXES.filter((a) => a !== low);
      const at = s.part.place.origin[axis] + s.sign[axis] * (own === u ? cut.at[0] : cut.at[1]);
      return [{ in: s, axis, at, cut, length }];
    }),
  );
}

/** Over what stretch of an axis a joint holds its parts: what of the wood that they share is held, or from the first screw to the last. */
export function heldOver(piece: Piece, m: Meeting, axis: Axis): Span {
  const { held } = m.joint.traits;
  const [low, high] = m.contact.at[axis];
  if (held && faceAxis(held.from) === axis)
    return faceSign(held.from) > 0
      ? [Math.max(low, high - held.length), high]
      : [low, Math.min(high, low + held.length)];
  const screws = m.joint.traits.glue === 'none' ? screwsOf(piece, m.joint.id) : [];
  const at = screws.flatMap((h) => (h.screw ? [h.screw.from[axis]] : []));
  return at.length > 0 && axis !== m.contact.normal?.axis ? [Math.min(...at), Math.max(...at)] : m.contact.at[axis];
}

/** The axes along which a joint holds its parts to one another. What floats is held along none. */
export function heldAlong(m: Meeting): readonly Axis[] {
  const { freedom, holds } = m.joint.traits;
  if (freedom === 'fixed') return AXES;
  if (freedom === 'floats') return [];
  const slots = slotsOf(m);
  if (slots.length > 0) return AXES.filter((a) => !slots.some((s) => s.axis === a));
  return holds === 'pulls' || holds === 'holds' ? AXES.filter((a) => a === m.contact.normal?.axis) : [];
}

/** All of it once for the rings as their sawing is named, and once at the worst of its band. */
export function movingOf({ piece, season }: Pick<CheckInput, 'piece' | 'season'>, rings: Rings = 'as named'): Moving {
  const stands = standingsOf(piece);
  const meetings = meetingsOf(piece, stands);
  const strainOf = (id: string, axis: Axis, from: number, to: number): number => {
    const s = stands.get(id);
    return s ? strain(piece, s.part, s.own[axis], from, to, rings) : 0;
  };
  const tiesAlong = (axis: Axis): readonly Tie[] => {
    const bars = new Map<string, Bar>(
      [...stands].map(([id, s]) => [
        id,
        { id, size: width(s.box[axis]), band: strainOf(id, axis, season.driest, season.wettest) },
      ]),
    );
    const ties = meetings.flatMap((m): Tie[] =>
      heldAlong(m).includes(axis)
        ? [{ id: m.joint.id, a: m.e.part.id, b: m.r.part.id, at: middle(heldOver(piece, m, axis)) }]
        : [],
    );
    return inOrder(bars, ties);
  };
  const ties = [tiesAlong(0), tiesAlong(1), tiesAlong(2)] as const;
  const known = new Map<string, Field>();
  const marks = new Map(piece.parts.map((p): [string, Part] => [p.id, p]));
  return {
    piece,
    season,
    stands,
    meetings,
    ties,
    strain: strainOf,
    mark: (id) => marks.get(id)?.mark ?? id,
    field(axis, from, to) {
      const name = `${axis} ${from} ${to}`;
      const field = known.get(name) ?? fieldOf(axis, ties[axis], (id) => strainOf(id, axis, from, to));
      known.set(name, field);
      return field;
    },
  };
}

/**
 * How far a point of p goes from a point of q along an axis: as both are tied to one body, or, where they are not, each
 * about its own middle.
 */
export function between(
  moving: Moving,
  axis: Axis,
  [from, to]: readonly [number, number],
  p: readonly [string, number],
  q: readonly [string, number],
): number {
  const field = moving.field(axis, from, to);
  if (field.tied(p[0], q[0])) return field.shift(...p) - field.shift(...q) + 0;
  const alone = ([id, x]: readonly [string, number]): number => {
    const s = moving.stands.get(id);
    return s ? moving.strain(id, axis, from, to) * (x - middle(s.box[axis])) : 0;
  };
  return alone(p) - alone(q) + 0;
}
