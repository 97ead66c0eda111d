import Flatbush from 'flatbush';
import { cosine } from '../../geom/angle.js';
import { faceAxis, faceOf, faceSign, opposite, others } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import type { Span, Vec3 } from '../../geom/box.js';
import { byAxis, middle } from '../../geom/box.js';
import type { Line2 } from '../../geom/hiddenLines.js';
import { dot, IDENTITY } from '../../geom/placement.js';
import type { Mesh } from '../../geom/solid.js';
import { toMm } from '../../lengths/length.js';
import type { Cut } from '../../words/cut.js';
import { distance } from '../../words/frame.js';
import type { Frame } from '../../words/frame.js';
import { area, rect } from '../draw.js';
import type { Point } from '../draw.js';
import { collide } from '../dimensions.js';
import type { Rect } from '../dimensions.js';
import type { Item } from '../picture.js';
import { drawLines, project } from '../views.js';
import type { Direction, Lines, View } from '../views.js';

/** One side of a part as it lies before the maker: the face toward the eye, which own axes lie along the paper. */
export interface Side {
  readonly face: Face;
  readonly direction: Direction;
  /** Faces at the left, right, bottom and top of the view. */
  readonly left: Face;
  readonly right: Face;
  readonly bottom: Face;
  readonly top: Face;
}
const unitAlong = (face: Face): Vec3 => byAxis((a) => (a === faceAxis(face) ? faceSign(face) : 0) + 0);
const crossed = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1] + 0,
  a[2] * b[0] - a[0] * b[2] + 0,
  a[0] * b[1] - a[1] * b[0] + 0,
];
/** How a face is looked at: upright as in the piece; tops and bottoms with the back up. */
export function sideOf(face: Face, top: Face = faceAxis(face) === 2 ? 'back' : 'top'): Side {
  const toward = unitAlong(face);
  const up = unitAlong(top);
  const right = crossed(up, toward);
  const axis = ([0, 1, 2] as const).find((a) => right[a] !== 0) as Axis;
  const rightFace = (['left', 'front', 'bottom'] as const)[axis];
  const r: Face = right[axis] > 0 ? opposite(rightFace) : rightFace;
  return { face, direction: { right, up, toward }, left: opposite(r), right: r, bottom: opposite(top), top };
}
export const across = (s: Side): Axis => faceAxis(s.right);
export const upward = (s: Side): Axis => faceAxis(s.top);

/** A view of the blank on paper: upper left corner, scale 1 : oneTo, size in mm. */
export interface Placed {
  readonly side: Side;
  readonly frame: Frame;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly oneTo: number;
  /** What is broken out, all along one axis, in order from the left or upper side. */
  readonly skips: readonly Skip[];
}
/** A stretch broken out of a view: distances from its left or upper side, nm, and the gap left for it on paper, mm. */
export interface Skip {
  readonly axis: Axis;
  readonly from: number;
  readonly to: number;
  readonly gap: number;
}
/** Distance on paper that a broken stretch closes up by, mm. */
const closes = (k: Skip, oneTo: number): number => toMm(k.to - k.from) / oneTo - k.gap;
export function placeView(
  side: Side,
  frame: Frame,
  x: number,
  y: number,
  oneTo: number,
  skips: readonly Skip[] = [],
): Placed {
  const size = (axis: Axis): number => {
    const all = toMm(frame.blank[axis][1] - frame.blank[axis][0]) / oneTo;
    return skips.reduce((n, k) => (k.axis === axis ? n - closes(k, oneTo) : n), all);
  };
  return { side, frame, x, y, w: size(across(side)), h: size(upward(side)), oneTo, skips };
}
/** Paper distance for a distance from the left or upper side of the wood: what is broken out closes up. */
function onPaper(v: Placed, axis: Axis, d: number): number {
  let before = 0;
  for (const skip of v.skips) {
    if (skip.axis !== axis || d <= skip.from) break;
    if (d < skip.to) {
      const at = toMm(skip.from) / v.oneTo - before;
      return at + (2 * d > skip.from + skip.to ? skip.gap : 0);
    }
    before += closes(skip, v.oneTo);
  }
  return toMm(d) / v.oneTo - before;
}
/** True when a coordinate along an axis lies in what is broken out. */
export function isBrokenOut(v: Placed, axis: Axis, at: number): boolean {
  const d = distance(v.frame, axis === across(v.side) ? v.side.left : v.side.top, at);
  return v.skips.some((k) => k.axis === axis && d > k.from && d < k.to);
}
/** True when a stretch lies wholly in what is broken out, its bounds counted in. */
const isGone = (v: Placed, spans: readonly [Span, Span, Span]): boolean =>
  v.skips.some((k) => {
    const side = k.axis === across(v.side) ? v.side.left : v.side.top;
    return spans[k.axis].map((x) => distance(v.frame, side, x)).every((d) => d >= k.from && d <= k.to);
  });
/** True when a box lies over the wavy lines of a broken view. */
export const overBreak = (v: Placed, r: Rect): boolean =>
  v.skips.some((k) => {
    const lying = k.axis === across(v.side);
    const low = (lying ? v.side.left : v.side.top) === faceOf(k.axis, -1);
    const at = v.frame.blank[k.axis][low ? 0 : 1] + (low ? k.from : -k.from);
    const from = (lying ? paperX(v, at) : paperY(v, at)) - 1.6;
    const size = k.gap + 3.2;
    return collide(lying ? { x: from, y: v.y, w: size, h: v.h } : { x: v.x, y: from, w: v.w, h: size }, r);
  });
/** A coordinate of the part along a view's own axis, on paper. */
export const paperX = (v: Placed, at: number): number => v.x + onPaper(v, across(v.side), distance(v.frame, v.side.left, at)); // prettier-ignore
export const paperY = (v: Placed, at: number): number => v.y + onPaper(v, upward(v.side), distance(v.frame, v.side.top, at)); // prettier-ignore
const spanX = (v: Placed, s: Span): Span => [Math.min(paperX(v, s[0]), paperX(v, s[1])), Math.max(paperX(v, s[0]), paperX(v, s[1]))]; // prettier-ignore
const spanY = (v: Placed, s: Span): Span => [Math.min(paperY(v, s[0]), paperY(v, s[1])), Math.max(paperY(v, s[0]), paperY(v, s[1]))]; // prettier-ignore

/** The rectangle of a part's stretch on a view: [x, y, w, h], kept inside the blank. */
export function onView(v: Placed, spans: readonly [Span, Span, Span]): readonly [number, number, number, number] {
  const [x0, x1] = spanX(v, spans[across(v.side)]);
  const [y0, y1] = spanY(v, spans[upward(v.side)]);
  const [l, r] = [Math.max(v.x, x0), Math.min(v.x + v.w, x1)];
  const [t, b] = [Math.max(v.y, y0), Math.min(v.y + v.h, y1)];
  return [l, t, Math.max(0, r - l), Math.max(0, b - t)];
}

type Spans = readonly [Span, Span, Span];
/** Where cuts of a card lie is asked for each view that is tried. */
const known = new WeakMap<Frame, WeakMap<Cut, Spans>>();
/** Where a cut lies, as spans on the three axes. */
export function spansOf(cut: Cut, f: Frame): Spans {
  const of = known.get(f) ?? new WeakMap<Cut, Spans>();
  known.set(f, of);
  const spans = of.get(cut) ?? workedOut(cut, f);
  of.set(cut, spans);
  return spans;
}
function workedOut(cut: Cut, f: Frame): Spans {
  const out: [Span, Span, Span] = [...f.blank];
  const sunk = (face: Face, depth: number): Span => {
    const [lo, hi] = f.blank[faceAxis(face)];
    return faceSign(face) < 0 ? [lo, lo + depth] : [hi - depth, hi];
  };
  const beyond = (end: Face, at: number): Span => {
    const [lo, hi] = f.blank[faceAxis(end)];
    return faceSign(end) < 0 ? [lo, at] : [at, hi];
  };
  switch (cut.shape) {
    case 'box':
      return cut.at;
    case 'dovetail':
      out[faceAxis(cut.face)] = sunk(cut.face, cut.depth);
      out[cut.run] = cut.runSpan;
      out[cut.taper] = [Math.min(cut.atFace[0], cut.atFloor[0]), Math.max(cut.atFace[1], cut.atFloor[1])];
      return out;
    case 'tails':
      out[faceAxis(cut.end)] = beyond(cut.end, cut.base);
      return out;
    case 'tenon':
      out[faceAxis(cut.end)] = beyond(cut.end, cut.shoulder);
      return out;
    case 'taper':
      out[faceAxis(cut.end)] = beyond(cut.end, cut.begin);
      out[faceAxis(cut.face)] = sunk(cut.face, cut.off);
      return out;
    case 'arc':
      out[faceAxis(cut.face)] = sunk(cut.face, cut.rise);
      out[cut.along] = cut.over;
      return out;
    case 'bore': {
      const [p, q] = others(faceAxis(cut.face));
      out[p] = [cut.at[0] - cut.diameter / 2, cut.at[0] + cut.diameter / 2];
      out[q] = [cut.at[1] - cut.diameter / 2, cut.at[1] + cut.diameter / 2];
      if (cut.depth !== 'through') out[faceAxis(cut.face)] = sunk(cut.face, cut.depth * cosine(cut.tilt?.degrees ?? 0));
      return out;
    }
    case 'arris':
      for (const face of cut.faces) out[faceAxis(face)] = sunk(face, cut.size);
      return out;
    case 'mark': {
      out[cut.axis] = cut.over;
      out[faceAxis(cut.face)] = sunk(cut.face, 0);
      out[(3 - cut.axis - faceAxis(cut.face)) as Axis] = [cut.at, cut.at];
      return out;
    }
    default:
      return out;
  }
}
/** True where the cut shows on the side toward the eye, and not only in what is broken out; a pencil line on its own side alone. */
export function shows(cut: Cut, v: Placed): boolean {
  if (cut.shape === 'mark' && cut.face !== v.side.face) return false;
  const axis = faceAxis(v.side.face);
  const spans = spansOf(cut, v.frame);
  if (isGone(v, spans)) return false;
  const s = spans[axis];
  const [lo, hi] = v.frame.blank[axis];
  return faceSign(v.side.face) < 0 ? s[0] <= lo : s[1] >= hi;
}

/** Grey where wood goes: sockets, grooves and rabbets open to this side, and the waste between tails. */
export function greyOf(cut: Cut, v: Placed): Item[] {
  if (!shows(cut, v)) return [];
  if (cut.shape === 'box' || (cut.shape === 'dovetail' && cut.face === v.side.face)) {
    const spans: [Span, Span, Span] = [...spansOf(cut, v.frame)];
    if (cut.shape === 'dovetail') spans[cut.taper] = cut.atFace;
    const [x, y, w, h] = onView(v, spans);
    return w > 0.01 && h > 0.01 ? rect(undefined, x, y, w, h, 'grey') : [];
  }
  if (cut.shape === 'dovetail' && faceAxis(v.side.face) === cut.run) {
    const deep = spansOf(cut, v.frame)[faceAxis(cut.face)];
    const [mouth, floor] = faceSign(cut.face) > 0 ? [deep[1], deep[0]] : [deep[0], deep[1]];
    const corner = (d: number, t: number): Point => at(v, faceAxis(cut.face), d, cut.taper, t);
    return area('grey', [
      corner(mouth, cut.atFace[0]),
      corner(mouth, cut.atFace[1]),
      corner(floor, cut.atFloor[1]),
      corner(floor, cut.atFloor[0]),
    ]);
  }
  if (cut.shape === 'tails' && faceAxis(v.side.face) !== cut.taper && faceAxis(v.side.face) !== faceAxis(cut.end)) {
    const [x, y, w, h] = onView(v, spansOf(cut, v.frame));
    const tip = v.frame.blank[faceAxis(cut.end)][faceSign(cut.end) > 0 ? 1 : 0];
    const corner = (d: number, t: number): Point => at(v, faceAxis(cut.end), d, cut.taper, t);
    const tails = cut.tails.flatMap((k) =>
      area('white', [
        corner(cut.base, k.atBase[0]),
        corner(cut.base, k.atBase[1]),
        corner(tip, k.atEnd[1]),
        corner(tip, k.atEnd[0]),
      ]),
    );
    return [...rect(undefined, x, y, w, h, 'grey'), ...tails];
  }
  return [];
}
const at = (v: Placed, a: Axis, x: number, b: Axis, y: number): Point => {
  const value: [number, number, number] = [0, 0, 0];
  value[a] = x;
  value[b] = y;
  return [paperX(v, value[across(v.side)]), paperY(v, value[upward(v.side)])];
};

const seen = new WeakMap<Mesh, Map<string, Lines>>();
/** The lines of a part from one side; worked out once for a mesh. Those with air beside them are silhouettes, all others edges. */
function linesOf(mesh: Mesh, direction: Direction): readonly Line2[] {
  const known = seen.get(mesh) ?? new Map<string, Lines>();
  seen.set(mesh, known);
  const key = `${direction.toward.join(' ')} ${direction.up.join(' ')}`;
  const made = known.get(key) ?? project([{ id: 'part', mesh, placement: IDENTITY }], direction);
  if (known.has(key)) return made.visible;
  const flat = flatTriangles(mesh, direction);
  const visible = made.visible.map((l): Line2 => ({
    ...l,
    kind: l.kind === 'silhouette' && hasAir(l, flat) ? 'silhouette' : 'edge',
  }));
  known.set(key, { visible });
  return visible;
}
/** Three corners, then left, low, right and high. */
type Flat = readonly [number, number, number, number, number, number, number, number, number, number];
interface FlatTriangles {
  readonly all: readonly Flat[];
  readonly index: Flatbush | undefined;
}
function flatTriangles(mesh: Mesh, d: Direction): FlatTriangles {
  const out: Flat[] = [];
  const at = (i: number): Vec3 => byAxis((a) => mesh.positions[(mesh.triangles[i] as number) * 3 + a] as number);
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [p, q, r] = [at(i), at(i + 1), at(i + 2)];
    const [px, qx, rx] = [dot(d.right, p), dot(d.right, q), dot(d.right, r)];
    const [py, qy, ry] = [dot(d.up, p), dot(d.up, q), dot(d.up, r)];
    const twice = (qx - px) * (ry - py) - (qy - py) * (rx - px);
    if (Math.abs(twice) <= 1e-6) continue;
    const [left, low] = [Math.min(px, qx, rx), Math.min(py, qy, ry)];
    out.push([px, py, qx, qy, rx, ry, left, low, Math.max(px, qx, rx), Math.max(py, qy, ry)]);
  }
  if (out.length === 0) return { all: out, index: undefined };
  const index = new Flatbush(out.length);
  for (const t of out) index.add(t[6], t[7], t[8], t[9]);
  index.finish();
  return { all: out, index };
}
/** True when a point a hair's breadth (0.05 mm) to one side of the line's middle lies on no wood at all. */
function hasAir(l: Line2, { all, index }: FlatTriangles): boolean {
  const [dx, dy] = [l.b[0] - l.a[0], l.b[1] - l.a[1]];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  const [mx, my] = [(l.a[0] + l.b[0]) / 2, (l.a[1] + l.b[1]) / 2];
  return [0.05, -0.05].some((k) => {
    const [x, y] = [mx - (dy / size) * k, my + (dx / size) * k];
    let wood = false;
    const over = (number: number): boolean => {
      if (wood) return false;
      const t = all[number] as Flat;
      const turn = (i: 0 | 2 | 4, j: 0 | 2 | 4): number =>
        (t[j] - t[i]) * (y - t[(i + 1) as 1]) - (t[(j + 1) as 1] - t[(i + 1) as 1]) * (x - t[i]);
      const [a, b, c] = [turn(0, 2), turn(2, 4), turn(4, 0)];
      wood = (a >= 0 && b >= 0 && c >= 0) || (a <= 0 && b <= 0 && c <= 0);
      return false;
    };
    index?.search(x - 1e-6, y - 1e-6, x + 1e-6, y + 1e-6, over);
    return !wood;
  });
}
/** Keeps of a line what is not broken out, closed up; `lead`: distance of the part's origin from the left or top, mm. */
function closedUp(l: Line2, v: Placed, axis: Axis): Line2[] {
  const k = axis === across(v.side) ? 0 : 1;
  const lead = toMm(distance(v.frame, k === 0 ? v.side.left : v.side.top, 0));
  const way = k === 0 ? 1 : -1;
  const far = (p: readonly [number, number]): number => lead + way * p[k];
  const [p, q] = far(l.a) <= far(l.b) ? [l.a, l.b] : [l.b, l.a];
  const [dp, dq] = [far(p), far(q)];
  const at = (d: number, back: number): readonly [number, number] => {
    const t = (d - dp) / (dq - dp || 1);
    const whole = [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])] as const;
    return k === 0 ? [whole[0] - back * way, whole[1]] : [whole[0], whole[1] - back * way];
  };
  const out: Line2[] = [];
  let [from, back] = [-Infinity, 0];
  const last = toMm(v.frame.blank[axis][1] - v.frame.blank[axis][0]);
  const keep = (to: number): void => {
    if (to <= 0 || from >= last || dq < from || dp > to) return;
    // A line square to the break is kept or not; it has no part to keep.
    const whole = dq - dp < 1e-9;
    const b = whole ? at(dp + 1, back) : at(Math.min(dq, to), back);
    out.push({ ...l, a: at(Math.max(dp, from), back), b });
  };
  for (const skip of v.skips) {
    keep(toMm(skip.from));
    from = toMm(skip.to);
    back += closes(skip, v.oneTo) * v.oneTo;
  }
  keep(Infinity);
  return out;
}
/** The wavy lines where a view is broken, white between them. */
export function breakLines(v: Placed): Item[] {
  return v.skips.flatMap((skip) => {
    const lying = skip.axis === across(v.side);
    const whole = v.frame.blank[skip.axis][1] - v.frame.blank[skip.axis][0];
    const cut = onPaper(v, skip.axis, skip.from);
    const at = [...(skip.from > 0 ? [cut] : []), ...(skip.to < whole ? [cut + skip.gap] : [])];
    const size = lying ? v.h : v.w;
    const beyond = 0.8;
    const sway = Math.min(1.2, size * 0.12);
    const point = (d: number, t: number): Point => (lying ? [v.x + d, v.y + t] : [v.x + t, v.y + d]);
    const wave = (d: number): Item => ({
      kind: 'stroke',
      pen: 'N',
      d: [
        ['M', ...point(d, -beyond)],
        ['C', ...point(d + sway, size * 0.25), ...point(d + sway, size * 0.25), ...point(d, size / 2)],
        ['C', ...point(d - sway, size * 0.75), ...point(d - sway, size * 0.75), ...point(d, size + beyond)],
      ],
    });
    const white = skip.gap > 0 ? rect(undefined, ...point(cut, -0.3), ...(lying ? [skip.gap, size + 0.6] as const : [size + 0.6, skip.gap] as const), 'white') : []; // prettier-ignore
    return [...white, ...at.map(wave)];
  });
}
/** The part itself, from its solid: wide where there is air beside the edge, narrow elsewhere. */
export function woodOf(v: Placed, mesh: Mesh): Item[] {
  // The projection's origin is the part's own origin: where coordinate 0 lies on paper.
  const view: View = {
    direction: v.side.direction,
    oneTo: v.oneTo,
    origin: [
      v.x + toMm(distance(v.frame, v.side.left, 0)) / v.oneTo,
      v.y + toMm(distance(v.frame, v.side.top, 0)) / v.oneTo,
    ],
    box: { x: v.x, y: v.y, w: v.w, h: v.h },
  };
  const all = linesOf(mesh, v.side.direction);
  const [broken] = v.skips;
  const shown = broken ? all.flatMap((l) => closedUp(l, v, broken.axis)) : all;
  return drawLines(view, shown, { silhouette: 'W', edge: 'N', flush: 'N' });
}
export const centreOf = (r: readonly [number, number, number, number]): Point => [r[0] + r[2] / 2, r[1] + r[3] / 2];
export const mid = middle;
