import type { Axis, Face } from '../geom/axis.js';
import { faceAxis, faceOf, faceSign, others, third } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import type { Outline } from '../geom/recipe.js';
import type { BoxCut, Cut, TailsCut, TenonCut } from './cut.js';
import { tidied } from './slant.js';

/**
 * A signed exchange of axes with a shift: source axis `a` lies along target axis `to[a]`, the same way (+1) or against it
 * (-1); target coordinate = sign[a] * source coordinate + shift[to[a]]. Mirrored frames (odd ones) are allowed. nm.
 */
export interface Frame {
  readonly to: readonly [Axis, Axis, Axis];
  readonly sign: readonly [1 | -1, 1 | -1, 1 | -1];
  readonly shift: Vec3;
}
export const SAME: Frame = { to: [0, 1, 2], sign: [1, 1, 1], shift: [0, 0, 0] };

/** +1 when the frame keeps right-handed axes right-handed, -1 when it mirrors. */
export const handOf = (f: Frame): 1 | -1 => {
  const [a, b, c] = f.to;
  const parity = (a === 0 && b === 1) || (a === 1 && b === 2) || (a === 2 && b === 0) ? 1 : -1;
  return (parity * f.sign[0] * f.sign[1] * f.sign[2] * (c === 3 - a - b ? 1 : NaN)) as 1 | -1;
};
export const mapFace = (f: Frame, face: Face): Face =>
  faceOf(f.to[faceAxis(face)], faceSign(face) * f.sign[faceAxis(face)]);
/** One coordinate along source axis `a`, as a coordinate along `to[a]`. */
export const mapAt = (f: Frame, a: Axis, x: number): number => f.sign[a] * x + f.shift[f.to[a]] + 0;
export const mapSpan = (f: Frame, a: Axis, s: Span): Span => {
  const p = mapAt(f, a, s[0]);
  const q = mapAt(f, a, s[1]);
  return p <= q ? [p, q] : [q, p];
};
const sourceOf = (f: Frame, target: Axis): Axis => f.to.indexOf(target) as Axis;
export const mapBox = (f: Frame, box: Box3): Box3 =>
  byAxis((t) => mapSpan(f, sourceOf(f, t), box[sourceOf(f, t)])) as Box3;
export const mapPoint = (f: Frame, p: Vec3): Vec3 => byAxis((t) => mapAt(f, sourceOf(f, t), p[sourceOf(f, t)]));
export const mapWay = (f: Frame, v: Vec3): Vec3 =>
  byAxis((t) => f.sign[sourceOf(f, t)] * v[sourceOf(f, t)] + 0) as unknown as Vec3;

/** The frame that undoes `f`. */
export function invert(f: Frame): Frame {
  const to = byAxis((t) => sourceOf(f, t));
  const sign = byAxis((t) => f.sign[sourceOf(f, t)]);
  const shift: [number, number, number] = [0, 0, 0];
  for (const a of [0, 1, 2] as const) shift[a] = -f.sign[a] * f.shift[f.to[a]] + 0;
  return { to, sign, shift };
}
/** `outer` after `inner`. */
export function follow(outer: Frame, inner: Frame): Frame {
  return {
    to: byAxis((a) => outer.to[inner.to[a]]),
    sign: byAxis((a) => (inner.sign[a] * outer.sign[inner.to[a]]) as 1 | -1),
    shift: mapPoint(outer, inner.shift),
  };
}

/** Two figures on the axes of `face` (rising order), put into the rising order of the mapped face's axes. */
function pairOn<T>(f: Frame, axes: readonly [Axis, Axis], a: T, b: T): readonly [T, T] {
  return f.to[axes[0]] < f.to[axes[1]] ? [a, b] : [b, a];
}

function mapOutline(f: Frame, face: Face, outline: Outline): Outline {
  const [u, v] = others(faceAxis(face));
  const point = (p: readonly [number, number]): readonly [number, number] =>
    pairOn(f, [u, v], mapAt(f, u, p[0]), mapAt(f, v, p[1]));
  const flips = f.sign[u] * f.sign[v] * (f.to[u] < f.to[v] ? 1 : -1) < 0;
  const withBulge = (to: readonly [number, number], bulge: number | undefined) =>
    bulge === undefined ? { to } : { to, bulge };
  if (!flips) return outline.map((s) => withBulge(point(s.to), s.bulge));
  // Mirrored and run the other way round: both turn the sign of a bulge, so it stays.
  const n = outline.length;
  return outline.map((_, k) => {
    const i = n - 1 - k;
    const before = outline[(i - 1 + n) % n];
    const here = outline[i];
    return withBulge(point(before?.to ?? [0, 0]), here?.bulge);
  });
}

function mapBoxCut(f: Frame, cut: BoxCut): BoxCut {
  const mapped = { ...cut, face: mapFace(f, cut.face), at: mapBox(f, cut.at) };
  const slants = cut.slants?.map((s) => ({ ...s, of: mapFace(f, s.of), toward: mapFace(f, s.toward) }));
  return slants ? tidied({ ...mapped, slants }) : mapped;
}

function mapTails(f: Frame, cut: TailsCut): TailsCut {
  const tails = cut.tails
    .map((t) => ({ atBase: mapSpan(f, cut.taper, t.atBase), atEnd: mapSpan(f, cut.taper, t.atEnd) }))
    .sort((a, b) => a.atBase[0] - b.atBase[0]);
  const across = third(faceAxis(cut.end), cut.taper);
  return {
    ...cut,
    end: mapFace(f, cut.end),
    base: mapAt(f, faceAxis(cut.end), cut.base),
    taper: f.to[cut.taper],
    tails,
    keep: mapSpan(f, across, cut.keep),
  };
}

function mapTenon(f: Frame, cut: TenonCut): TenonCut {
  const axes = others(faceAxis(cut.end));
  const tongues = cut.tongues.map((t) => {
    const [a, b] = pairOn(f, axes, mapSpan(f, axes[0], t.a), mapSpan(f, axes[1], t.b));
    return { ...t, a, b };
  });
  return {
    ...cut,
    end: mapFace(f, cut.end),
    shoulder: mapAt(f, faceAxis(cut.end), cut.shoulder),
    tongues,
    ...(cut.slope ? { slope: mapWay(f, cut.slope) } : {}),
    ...(cut.mitre ? { mitre: { long: mapFace(f, cut.mitre.long) } } : {}),
  };
}

function mapRound(f: Frame, cut: Extract<Cut, { shape: 'bore' }>): Cut {
  const [u, v] = others(faceAxis(cut.face));
  const at = pairOn(f, [u, v], mapAt(f, u, cut.at[0]), mapAt(f, v, cut.at[1]));
  return {
    ...cut,
    face: mapFace(f, cut.face),
    at,
    ...(cut.slot ? { slot: { axis: f.to[cut.slot.axis], length: cut.slot.length } } : {}),
    ...(cut.tilt ? { tilt: { toward: mapFace(f, cut.tilt.toward), degrees: cut.tilt.degrees } } : {}),
  };
}

/** A cut seen in other axes: every coordinate, face and axis of it is carried over; sizes, words and glue stay. */
export function mapCut(cut: Cut, f: Frame): Cut {
  switch (cut.shape) {
    case 'box':
      return mapBoxCut(f, cut);
    case 'dovetail':
      return {
        ...cut,
        face: mapFace(f, cut.face),
        run: f.to[cut.run],
        taper: f.to[cut.taper],
        runSpan: mapSpan(f, cut.run, cut.runSpan),
        atFace: mapSpan(f, cut.taper, cut.atFace),
        atFloor: mapSpan(f, cut.taper, cut.atFloor),
      };
    case 'tails':
      return mapTails(f, cut);
    case 'tenon':
      return mapTenon(f, cut);
    case 'taper':
      return {
        ...cut,
        face: mapFace(f, cut.face),
        end: mapFace(f, cut.end),
        begin: mapAt(f, faceAxis(cut.end), cut.begin),
      };
    case 'arc':
      return {
        ...cut,
        face: mapFace(f, cut.face),
        along: f.to[cut.along],
        over: mapSpan(f, cut.along, cut.over),
      };
    case 'bore':
      return mapRound(f, cut);
    case 'arris': {
      const along = third(faceAxis(cut.faces[0]), faceAxis(cut.faces[1]));
      return {
        ...cut,
        faces: [mapFace(f, cut.faces[0]), mapFace(f, cut.faces[1])],
        over: mapSpan(f, along, cut.over),
      };
    }
    case 'outline':
      return { ...cut, face: mapFace(f, cut.face), keep: mapOutline(f, cut.face, cut.keep) };
    case 'plane':
      return {
        ...cut,
        point: mapPoint(f, cut.point),
        normal: mapWay(f, cut.normal),
        ...(cut.within ? { within: mapBox(f, cut.within) } : {}),
      };
    case 'mark': {
      const side = third(faceAxis(cut.face), cut.axis);
      return {
        ...cut,
        face: mapFace(f, cut.face),
        axis: f.to[cut.axis],
        over: mapSpan(f, cut.axis, cut.over),
        at: mapAt(f, side, cut.at),
      };
    }
  }
}
