import type { Axis } from '../geom/axis.js';
import { faceAxis, inFace } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import type { BoreCut, BoxCut, Cut, MarkCut } from '../words/cut.js';

const moveSpan = (s: Span, by: number): Span => [s[0] + by, s[1] + by];
const moveBox = (b: Box3, by: Vec3): Box3 => [moveSpan(b[0], by[0]), moveSpan(b[1], by[1]), moveSpan(b[2], by[2])];

/** A cut seen from an origin that lies at `origin` (nm): from piece axes to the axes of a part that does not lean. */
export function shiftCut<C extends BoxCut | BoreCut | MarkCut>(cut: C, origin: Vec3): C;
export function shiftCut(cut: BoxCut | BoreCut | MarkCut, origin: Vec3): Cut {
  const by: Vec3 = [0 - origin[0], 0 - origin[1], 0 - origin[2]];
  if (cut.shape === 'box') return { ...cut, at: moveBox(cut.at, by) };
  const [a, b] = inFace(cut.face);
  if (cut.shape === 'bore') return { ...cut, at: [cut.at[0] + by[a], cut.at[1] + by[b]] };
  const other = otherInFace(cut);
  return { ...cut, over: moveSpan(cut.over, by[cut.axis]), at: cut.at + by[other] };
}

/** The axis of a marked face that its line does not run along. */
export const otherInFace = (mark: MarkCut): Axis => (3 - faceAxis(mark.face) - mark.axis) as Axis;
