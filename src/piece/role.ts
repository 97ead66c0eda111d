import type { Axis, Face } from '../geom/axis.js';
import { faceAxis, faceOf, opposite } from '../geom/axis.js';
import type { Box3, Span } from '../geom/box.js';
import { byAxis, middle, width } from '../geom/box.js';
import type { Body } from './body.js';
import { sizesOf } from './body.js';
import type { Part } from './piece.js';

/** What a part is, by how it stands: its face words and what it is measured from follow from this. */
export type Role = 'leg' | 'side' | 'divider' | 'end rail' | 'lying' | 'front' | 'back' | 'standing';

/** The box about the whole piece (shoulder boxes). */
export function wholeOf(bodies: readonly Body[]): Box3 {
  return byAxis(
    (a) => [Math.min(...bodies.map((b) => b.box[a][0])), Math.max(...bodies.map((b) => b.box[a][1]))] as Span,
  ) as Box3;
}

/** A standing part whose section is near square and that is at least four times as long as it is wide (our default). */
export function roleOf(b: Body, whole: Box3): Role {
  const size = sizesOf(b);
  const stick = size[b.width] <= 1.6 * size[b.thickness] && size[b.length] >= 4 * size[b.width];
  if (b.length === 2 && stick) return 'leg';
  if (b.thickness === 2) return 'lying';
  if (b.thickness === 0) {
    if (isMiddle(b, whole, 0)) return 'divider';
    return b.length === 1 ? 'end rail' : 'side';
  }
  if (b.length === 2) return 'standing';
  return middle(b.box[1]) <= middle(whole[1]) ? 'front' : 'back';
}
const isMiddle = (b: Body, whole: Box3, axis: Axis): boolean =>
  b.box[axis][0] > whole[axis][0] + width(whole[axis]) / 8 && b.box[axis][1] < whole[axis][1] - width(whole[axis]) / 8;

const PLAIN: Part['faceWords'] = {
  left: 'LEFT',
  right: 'RIGHT',
  front: 'FRONT',
  back: 'BACK',
  bottom: 'BOTTOM',
  top: 'TOP',
};
/** The face that looks away from the piece's middle. */
const outer = (b: Body, whole: Box3, axis: Axis): Face =>
  faceOf(axis, middle(b.box[axis]) <= middle(whole[axis]) ? -1 : 1);

/**
 * Words for the six faces: a side's faces are INSIDE and OUTSIDE, everything else is called as it stands; a lying part
 * has a TOP and an UNDERSIDE (common practice).
 */
export function wordsOf(b: Body, role: Role, whole: Box3): Part['faceWords'] {
  if (role === 'side' || role === 'end rail') {
    const out = outer(b, whole, 0);
    return { ...PLAIN, [out]: 'OUTSIDE', [opposite(out)]: 'INSIDE' };
  }
  return role === 'lying' ? { ...PLAIN, bottom: 'UNDERSIDE' } : PLAIN;
}

/**
 * What all figures are measured from, by role. Legs: the two outside faces and the top end; rails: outside face and top edge
 * (bottom edge in a case) (Fairham). Case sides: inside face, front edge, bottom end (common practice).
 */
export function referenceOf(b: Body, role: Role, whole: Box3, legs: boolean): Part['reference'] {
  const low = (a: Axis): Face => faceOf(a, -1);
  const byRole: Readonly<Record<Role, Part['reference']>> = {
    leg: { face: outer(b, whole, b.thickness), edge: outer(b, whole, b.width), end: 'top' },
    side: { face: opposite(outer(b, whole, 0)), edge: 'front', end: 'bottom' },
    divider: { face: 'left', edge: low(b.width), end: low(b.length) },
    'end rail': { face: outer(b, whole, 0), edge: legs ? 'top' : 'bottom', end: 'front' },
    lying: { face: 'top', edge: low(b.width), end: low(b.length) },
    front: { face: 'front', edge: legs ? 'top' : 'bottom', end: 'left' },
    back: { face: legs ? 'back' : 'front', edge: legs ? 'top' : 'bottom', end: 'left' },
    standing: { face: middle(b.box[1]) <= middle(whole[1]) ? 'front' : 'back', edge: 'left', end: 'bottom' },
  };
  return onAxes(byRole[role], b);
}

/** One reference on each axis, whatever way the part's sides compare. */
function onAxes(r: Part['reference'], b: Body): Part['reference'] {
  const all = [r.face, r.edge, r.end];
  const on = (axis: Axis): Face => all.find((f) => faceAxis(f) === axis) ?? faceOf(axis, -1);
  return { face: on(b.thickness), edge: on(b.width), end: on(b.length) };
}
