import { AXES, faceAxis, faceOf, faceSign } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Box3, Span } from '../geom/box.js';
import type { Units } from '../lengths/length.js';

/** What the words of one part refer to: its six names, its over-all blank and the three things figures are measured from. */
export interface Frame {
  readonly words: Readonly<Record<Face, string>>;
  /** Over-all blank (shoulder box and growth), own axes, nm. */
  readonly blank: Box3;
  /** By own axis: the face from which figures along it are measured. */
  readonly datum: readonly [Face, Face, Face];
  readonly thickness: Axis;
  readonly width: Axis;
  readonly length: Axis;
  readonly units: Units;
}

/** The fields of a part that its words need. */
export interface PartLike {
  readonly size: readonly [{ readonly value: number }, { readonly value: number }, { readonly value: number }];
  readonly growth: Box3;
  readonly thickness: Axis;
  readonly width: Axis;
  readonly length: Axis;
  readonly faceWords: Readonly<Record<Face, string>>;
  readonly reference: { readonly face: Face; readonly edge: Face; readonly end: Face };
}

/** The frame of a part: figures along each axis run from its reference face, edge or end. */
export function frameOf(part: PartLike, units: Units): Frame {
  const blank = byAxis<Span>((a) => [-part.growth[a][0] + 0, part.size[a].value + part.growth[a][1]]);
  const refs = [part.reference.face, part.reference.edge, part.reference.end];
  return {
    words: part.faceWords,
    blank,
    datum: byAxis((a) => refs.find((f) => faceAxis(f) === a) ?? faceOf(a, -1)),
    thickness: part.thickness,
    width: part.width,
    length: part.length,
    units,
  };
}

/** Distance of a coordinate from a face of the blank, into the wood, nm. */
export const distance = (f: Frame, face: Face, at: number): number =>
  faceSign(face) < 0 ? at - f.blank[faceAxis(face)][0] : f.blank[faceAxis(face)][1] - at;
/** The coordinate that lies a distance (nm) in from a face of the blank. */
export const coordinate = (f: Frame, face: Face, from: number): number =>
  faceSign(face) < 0 ? f.blank[faceAxis(face)][0] + from : f.blank[faceAxis(face)][1] - from;
/** A span as two rising distances from a face. */
export const spanFrom = (f: Frame, face: Face, s: Span): Span => {
  const a = distance(f, face, s[0]);
  const b = distance(f, face, s[1]);
  return a <= b ? [a, b] : [b, a];
};
/** The other way about. */
export const spanAt = (f: Frame, face: Face, s: Span): Span => {
  const a = coordinate(f, face, s[0]);
  const b = coordinate(f, face, s[1]);
  return a <= b ? [a, b] : [b, a];
};
export const blankSize = (f: Frame, axis: Axis): number => f.blank[axis][1] - f.blank[axis][0];
export const faceAt = (f: Frame, face: Face): number => f.blank[faceAxis(face)][faceSign(face) < 0 ? 0 : 1];
/** A span with all that lies outside the blank left off. */
export const clip = (f: Frame, axis: Axis, s: Span): Span => [
  Math.max(s[0], f.blank[axis][0]),
  Math.min(s[1], f.blank[axis][1]),
];
export const isFull = (f: Frame, axis: Axis, s: Span): boolean => s[0] <= f.blank[axis][0] && s[1] >= f.blank[axis][1];
/** The faces of the blank that a span reaches, on its axis. */
export const reaches = (f: Frame, axis: Axis, s: Span): readonly Face[] => [
  ...(s[0] <= f.blank[axis][0] ? [faceOf(axis, -1)] : []),
  ...(s[1] >= f.blank[axis][1] ? [faceOf(axis, 1)] : []),
];

/** `face`, `edge` or `end`: what a maker calls the side of the part. A square section has no edges, only faces. */
export function noun(f: Frame, face: Face): string {
  const axis = faceAxis(face);
  if (axis === f.length) return 'end';
  if (axis === f.thickness) return 'face';
  return blankSize(f, f.thickness) === blankSize(f, f.width) ? 'face' : 'edge';
}
/** `INSIDE face`, `BACK edge`, `TOP end`. */
export const called = (f: Frame, face: Face): string => `${f.words[face]} ${noun(f, face)}`;
export const datumOf = (f: Frame, axis: Axis): Face => f.datum[axis];
/** The six faces, longest word first, so that a reader never stops at a shorter word. */
export const facesByWord = (f: Frame): readonly Face[] =>
  AXES.flatMap((a) => [faceOf(a, -1), faceOf(a, 1)]).sort(
    (a, b) => f.words[b].length - f.words[a].length || (f.words[a] < f.words[b] ? -1 : 1),
  );
