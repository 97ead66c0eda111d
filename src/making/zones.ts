import { cosine, sine } from '../geom/angle.js';
import { faceAxis, faceSign, others, type Axis, type Face } from '../geom/axis.js';
import { byAxis, meet, type Box3, type Span, type Vec3 } from '../geom/box.js';
import { flatten } from '../geom/outline.js';
import type { Part } from '../piece/piece.js';
import type { BoreCut, Cut } from '../words/cut.js';

/** A part's blank when it is cut to size, own axes, nm. */
export const blankBox = (p: Part): Box3 => byAxis((a): Span => [-p.growth[a][0], p.size[a].value + p.growth[a][1]]);

/** From a face inward by `depth`. */
function under(box: Box3, face: Face, depth: number): Span {
  const [low, high] = box[faceAxis(face)];
  return faceSign(face) > 0 ? [high - depth, high] : [low, low + depth];
}
/** Beyond a coordinate, toward a face. */
function beyond(box: Box3, face: Face, from: number): Span {
  const [low, high] = box[faceAxis(face)];
  return faceSign(face) > 0 ? [Math.min(from, high), high] : [low, Math.max(from, low)];
}
const boxOf = (box: Box3, ...sides: readonly (readonly [Axis, Span])[]): Box3 =>
  byAxis((a) => sides.find(([axis]) => axis === a)?.[1] ?? box[a]);

/** A strip of a part across one of its axes: a glue line with what is let into it. */
export interface Band {
  readonly axis: Axis;
  readonly span: Span;
}
/** Boxes that hold all the wood a cut takes from a part, of an outline within a band; own axes, nm. Aligners keep clear of them. */
export function zonesOf(cut: Cut, part: Part, band: Band): Box3[] {
  const box = blankBox(part);
  switch (cut.shape) {
    case 'box':
      return [cut.at];
    case 'dovetail': {
      const across: Span = [Math.min(cut.atFace[0], cut.atFloor[0]), Math.max(cut.atFace[1], cut.atFloor[1])];
      return [
        boxOf(box, [cut.run, cut.runSpan], [cut.taper, across], [faceAxis(cut.face), under(box, cut.face, cut.depth)]),
      ];
    }
    case 'tails':
      return [boxOf(box, [faceAxis(cut.end), beyond(box, cut.end, cut.base)])];
    case 'tenon':
      return [boxOf(box, [faceAxis(cut.end), beyond(box, cut.end, cut.shoulder)])];
    case 'taper':
      return [
        boxOf(
          box,
          [faceAxis(cut.end), beyond(box, cut.end, cut.begin)],
          [faceAxis(cut.face), under(box, cut.face, cut.off)],
        ),
      ];
    case 'arc':
      return [boxOf(box, [cut.along, cut.over], [faceAxis(cut.face), under(box, cut.face, cut.rise)])];
    case 'bore':
      return [boreBox(box, cut)];
    case 'arris': {
      const [a, b] = cut.faces;
      const along = ([0, 1, 2] as const).find((x) => x !== faceAxis(a) && x !== faceAxis(b)) as Axis;
      return [
        boxOf(box, [along, cut.over], [faceAxis(a), under(box, a, cut.size)], [faceAxis(b), under(box, b, cut.size)]),
      ];
    }
    case 'outline':
      return outside(box, cut.face, flatten(cut.keep), band);
    case 'plane': {
      const zone = beyondPlane(cut.within ?? box, cut.point, cut.normal);
      return zone ? [zone] : [];
    }
    case 'mark':
      return [];
  }
}

/** A hole with its seat, drawn out along its slot; one that leans goes over to the side by as much as its depth takes it. */
function boreBox(box: Box3, cut: BoreCut): Box3 {
  const axis = faceAxis(cut.face);
  const lean = cut.tilt?.degrees ?? 0;
  const [low, high] = box[axis];
  const deep = cut.depth === 'through' ? (high - low) / cosine(lean) : cut.depth;
  const radius = Math.max(cut.diameter, cut.seat?.diameter ?? 0) / 2;
  const over = cut.slot ? (cut.slot.length - cut.diameter) / 2 : 0;
  const spans = others(axis).map((u, i): readonly [Axis, Span] => {
    const half = (radius + (cut.slot?.axis === u ? over : 0)) / cosine(lean);
    const aside = cut.tilt && faceAxis(cut.tilt.toward) === u ? deep * sine(lean) * faceSign(cut.tilt.toward) : 0;
    const at = cut.at[i] ?? 0;
    return [u, [at - half + Math.min(0, aside), at + half + Math.max(0, aside)]];
  });
  return boxOf(box, ...spans, [
    axis,
    cut.depth === 'through' ? box[axis] : under(box, cut.face, deep * cosine(lean) + radius * sine(lean)),
  ]);
}

/** What an outline leaves of a band across it: beyond the first and the last place where it is whole over the band's width. */
function outside(box: Box3, face: Face, points: readonly (readonly [number, number])[], band: Band): Box3[] {
  const [u, v] = others(faceAxis(face));
  if (band.axis !== u && band.axis !== v) return [];
  const along = band.axis === u ? v : u;
  const [of, on] = band.axis === u ? ([0, 1] as const) : ([1, 0] as const);
  const [low, high] = box[along];
  let kept: Span = [low, high];
  for (const at of [band.span[0], (band.span[0] + band.span[1]) / 2, band.span[1]]) {
    const places = points.flatMap((p, i) => {
      const q = points[(i + 1) % points.length] ?? p;
      const [s, t] = [p[of] - at, q[of] - at];
      return s * t < 0 || s === 0 ? [s === t ? p[on] : p[on] + ((q[on] - p[on]) * s) / (s - t)] : [];
    });
    kept =
      places.length < 2
        ? [high, high]
        : [Math.max(kept[0], Math.min(...places)), Math.min(kept[1], Math.max(...places))];
  }
  const strips: Span[] = kept[1] <= kept[0] ? [[low, high]] : [[low, kept[0]], [kept[1], high]]; // prettier-ignore
  return strips.filter(([a, b]) => b > a).map((strip) => boxOf(box, [along, strip], [band.axis, band.span]));
}

/** Bounds of the part of a box that lies on a plane's side: its corners there, and where its edges pass the plane. */
function beyondPlane(box: Box3, point: Vec3, normal: Vec3): Box3 | undefined {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((n): Vec3 => byAxis((a) => box[a][(n >> a) & 1 ? 1 : 0]));
  const side = (p: Vec3): number => byAxis((a) => (p[a] - point[a]) * normal[a]).reduce((s, x) => s + x, 0);
  const found: Vec3[] = corners.filter((c) => side(c) >= 0);
  corners.forEach((p, n) => {
    for (const bit of [1, 2, 4]) {
      const q = corners[n | bit];
      if ((n & bit) !== 0 || !q) continue;
      const [s, t] = [side(p), side(q)];
      if (s * t < 0) found.push(byAxis((a) => p[a] + ((q[a] - p[a]) * s) / (s - t)));
    }
  });
  if (found.length === 0) return undefined;
  return byAxis((a): Span => [Math.min(...found.map((p) => p[a])), Math.max(...found.map((p) => p[a]))]);
}
/** Do two spans share more than an end? */
export const overlap = (a: Span, b: Span): boolean => meet(a, b) !== undefined;
