import type { Axis, Face } from '../geom/axis.js';
import { AXES, faceOf } from '../geom/axis.js';
import type { Box3, Span } from '../geom/box.js';
import { byAxis, middle } from '../geom/box.js';
import { isSquare, turn } from '../geom/placement.js';
import type { Joint, Part, Piece } from '../piece/piece.js';

/** A part that stands square in the piece: its boxes in piece axes, nm. */
export interface Standing {
  readonly part: Part;
  /** Between shoulders. */
  readonly box: Box3;
  /** With what its joints make it longer. */
  readonly blank: Box3;
  /** The part's own axis that lies along an axis of the piece. */
  readonly own: readonly [Axis, Axis, Axis];
  /** +1 where the own axis points the same way. */
  readonly sign: readonly [number, number, number];
}

/** How a part stands; undefined when it leans. */
export function standing(part: Part): Standing | undefined {
  const { place, size, growth } = part;
  if (!isSquare(place)) return undefined;
  const own = byAxis((a) => AXES.find((c) => place.rotation[a][c] !== 0) ?? a);
  const sign = byAxis((a) => place.rotation[a][own[a]]);
  const spanOf = (a: Axis, low: number, high: number): Span => {
    const [p, q] = [place.origin[a] + sign[a] * low, place.origin[a] + sign[a] * high];
    return p <= q ? [p, q] : [q, p];
  };
  const box = byAxis((a) => spanOf(a, 0, size[own[a]].value)) as Box3;
  const blank = byAxis((a) => {
    const o = own[a];
    return spanOf(a, 0 - growth[o][0], size[o].value + growth[o][1]);
  }) as Box3;
  return { part, box, blank, own, sign };
}

/** Where a face of a part looks in the piece; undefined when it leans. */
export function faceInPiece(part: Part, face: Axis, side: number): Face | undefined {
  const way = turn(part.place, byAxis((a) => (a === face ? side : 0)) as [number, number, number]);
  const axis = AXES.find((a) => Math.abs(way[a]) === 1);
  return axis === undefined ? undefined : faceOf(axis, way[axis]);
}

/** What two parts share where they meet: a flat box, its plane across `normal`; where they run through one another, a box. */
export interface Contact {
  readonly at: Box3;
  /** The axis across the plane of contact and the side of the entering part on which it lies; none where parts cross. */
  readonly normal?: { readonly axis: Axis; readonly side: 1 | -1 };
}

export function contactOf(e: Box3, r: Box3): Contact | undefined {
  const shared = byAxis((a): Span => [Math.max(e[a][0], r[a][0]), Math.min(e[a][1], r[a][1])]);
  if (shared.some(([lo, hi]) => hi < lo)) return undefined;
  const axis = AXES.find((a) => shared[a][0] === shared[a][1]);
  if (axis === undefined) return { at: shared };
  return { at: shared, normal: { axis, side: middle(r[axis]) > middle(e[axis]) ? 1 : -1 } };
}

/** A joint between two parts that stand square, and where they meet. */
export interface Meeting {
  readonly joint: Joint;
  readonly e: Standing;
  readonly r: Standing;
  readonly contact: Contact;
}

/** All joints of two parts that stand square and touch, in the order of the piece. */
export function meetingsOf(piece: Piece, stands: ReadonlyMap<string, Standing>): Meeting[] {
  return piece.joints.flatMap((joint) => {
    const [e, r] = [stands.get(joint.entering), stands.get(joint.receiving)];
    const contact = e && r && e !== r ? contactOf(e.box, r.box) : undefined;
    return e && r && contact ? [{ joint, e, r, contact }] : [];
  });
}
export const standingsOf = (piece: Piece): ReadonlyMap<string, Standing> =>
  new Map(
    piece.parts.flatMap((p) => {
      const s = standing(p);
      return s ? [[p.id, s] as const] : [];
    }),
  );
