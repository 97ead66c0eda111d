/**
 * Axes as one stands in front of the finished piece, right-handed: 0 across (left to right), 1 deep (front to back),
 * 2 up (bottom to top). A part's own axes carry the same names, so that an unleaning part's faces are the piece's.
 */
export type Axis = 0 | 1 | 2;
export const AXES: readonly Axis[] = [0, 1, 2];
export const AXIS_NAMES = ['across', 'deep', 'up'] as const;
export const FACES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;
export type Face = (typeof FACES)[number];

export const faceAxis = (face: Face): Axis => Math.floor(FACES.indexOf(face) / 2) as Axis;
export const faceSign = (face: Face): -1 | 1 => (FACES.indexOf(face) % 2 === 0 ? -1 : 1);
export const faceOf = (axis: Axis, sign: number): Face => FACES[axis * 2 + (sign > 0 ? 1 : 0)] as Face;
export const opposite = (face: Face): Face => faceOf(faceAxis(face), -faceSign(face));
/** The two axes that lie in a face, in rising order. */
export const inFace = (face: Face): readonly [Axis, Axis] => others(faceAxis(face));
/** The other two axes, in rising order. */
export const others = (axis: Axis): readonly [Axis, Axis] => (axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1]);
/** The third axis. */
export const third = (a: Axis, b: Axis): Axis => (3 - a - b) as Axis;
