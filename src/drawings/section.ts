import type { Axis } from '../geom/axis.js';
import type { Span, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import { hatch } from '../geom/hatch.js';
import { direction as angleOf } from '../geom/angle.js';
import { dot, IDENTITY, turn } from '../geom/placement.js';
import type { Line2 } from '../geom/hiddenLines.js';
import { sliceMesh } from '../geom/sliceMesh.js';
import type { Rings } from '../geom/solid.js';
import { NM_PER_MM } from '../lengths/length.js';
import type { Part } from '../piece/piece.js';
import type { Rect } from './dimensions.js';
import { fill, stroke } from './draw.js';
import type { Prepared } from './input.js';
import type { Standing } from './model.js';
import type { Item, Path, Pen, Seg } from './picture.js';
import { round3 } from './text.js';
import { drawLines, project } from './views.js';
import type { Direction, View, ViewItem } from './views.js';

/** A cutting plane square to `axis` at `at` (nm), and the way one looks at it. */
export interface Plane {
  readonly axis: Axis;
  readonly at: number;
  readonly direction: Direction;
}
/** One part where the plane cuts it. Rings on paper. */
export interface CutPart {
  readonly standing: Standing;
  readonly rings: Rings;
  /** Box round the rings, paper. */
  readonly box: Rect;
  readonly grain: 'end' | 'long' | 'sheet';
}
/** A piece cut by a plane, at full size: worked out once, drawn at any scale. */
export interface CutPiece {
  readonly plane: Plane;
  readonly lines: readonly Line2[];
  readonly parts: readonly { readonly standing: Standing; readonly rings: Rings; readonly grain: CutPart['grain'] }[];
}
export interface Section {
  readonly cut: readonly CutPart[];
  readonly items: readonly Item[];
}
/** Cuts the piece: rings of the parts that are met (mm, in the view's plane), visible lines of all that lies beyond. */
export function cutPiece(input: Prepared, plane: Plane, only: Only = {}): CutPiece {
  const standing = input.model.standing.filter((s) => only.parts?.has(s.part.id) ?? true);
  const parts = cutParts(input, plane, standing);
  const high = heightOf(plane);
  const [x, y] = only.window ?? [];
  const slab = {
    low: high - (only.deep ?? FAR) / NM_PER_MM,
    high,
    ...(x && y ? { window: [x[0], y[0], x[1], y[1]].map((v) => v / NM_PER_MM) as unknown as Window } : {}),
  };
  return {
    plane,
    lines: project(remaining(input, plane, standing, parts, only), plane.direction, slab).visible,
    parts,
  };
}
type Window = readonly [number, number, number, number];
/** How far a plane lies toward the eye, mm. */
const heightOf = ({ axis, at, direction }: Plane): number => (direction.toward[axis] * at) / NM_PER_MM + 0;
/** What of the piece is drawn: these parts without hardware, no deeper than this behind the plane, in this window (nm); else all. */
export interface Only {
  readonly parts?: ReadonlySet<string>;
  readonly deep?: number;
  readonly window?: readonly [Span, Span];
}

/** Draws a cut piece: lines beyond narrow, cut outlines over them, hatched by grain. A detail (what of it is `seen`) has wide outlines and open hatching. */
export function drawSection(piece: CutPiece, view: View, seen?: Rect): Section {
  const detail = seen !== undefined;
  const beyondPens = { silhouette: 'N', edge: 'N', flush: 'H' } as const;
  const cut = piece.parts.map(({ standing, rings, grain }): CutPart => {
    const placed = rings.map((ring) =>
      ring.map(([x, y]) => [view.origin[0] + x / view.oneTo, view.origin[1] - y / view.oneTo] as const),
    );
    return { standing, rings: placed, box: boxOf(placed), grain };
  });
  const ways = alternate(cut).map((w) => (detail ? { ...w, pitch: w.pitch + 0.7 } : w));
  return {
    cut,
    items: [
      ...drawLines(view, piece.lines, beyondPens),
      ...cut.map((c) => fill('white', pathOf(c.rings))),
      ...cut.flatMap((c, i) => hatched(c, view, ways[i] as Way, seen)),
      ...cut.map((c) => stroke(detail ? 'W' : 'D', pathOf(c.rings))),
    ],
  };
}

/** Farther than any piece reaches: 1 km, nm. */
const FAR = 1e12;
/** The stretch of the axis that is kept: the side of the plane away from the eye. */
const keptSpan = ({ at, axis, direction }: Plane, deep = FAR): Span =>
  direction.toward[axis] > 0 ? [at - deep, at] : [at, at + deep];
/** All that lies beyond the plane, wholly or in part; what the plane itself cuts carries its cut face. */
function remaining(
  input: Prepared,
  plane: Plane,
  standing: readonly Standing[],
  cut: CutPiece['parts'],
  only: Only,
): ViewItem[] {
  const meshes = new Map(input.solids.parts.map((s) => [s.id, s.mesh]));
  const caps = new Map(cut.map((c) => [c.standing.part.id, c.rings]));
  const kept = keptSpan(plane, only.deep);
  const isOut = (s: Span): boolean => s[1] <= kept[0] || s[0] >= kept[1];
  const parts = standing.flatMap((s): ViewItem[] => {
    const mesh = meshes.get(s.part.id);
    if (!mesh || isOut(s.whole[plane.axis])) return [];
    const cap = caps.get(s.part.id);
    return [{ id: s.part.id, mesh, placement: s.part.place, ...(cap ? { cap } : {}) }];
  });
  const bought = (only.parts ? [] : input.solids.hardware).flatMap((h): ViewItem[] => {
    const bounds = input.kernel.bounds(h.recipe)?.[plane.axis];
    const kind = input.piece.hardware.find((x) => x.id === h.id)?.kind;
    if (!bounds || kind === 'screw' || isOut([bounds[0] * NM_PER_MM, bounds[1] * NM_PER_MM])) return [];
    const item = { id: h.id, mesh: h.mesh, placement: IDENTITY };
    const cap = sliceMesh(item, plane.direction, heightOf(plane));
    return [{ ...item, ...(cap.length > 0 ? { cap, outlined: true } : {}) }];
  });
  return [...parts, ...bought];
}

/** Of these parts those that the plane cuts, with their rings. */
export function cutParts(input: Prepared, plane: Plane, all: readonly Standing[]): CutPiece['parts'] {
  const meshes = new Map(input.solids.parts.map((s) => [s.id, s.mesh]));
  return all.flatMap((standing): CutPiece['parts'] => {
    const mesh = meshes.get(standing.part.id);
    const [low, high] = standing.whole[plane.axis];
    if (!mesh || low >= plane.at || high <= plane.at) return [];
    const rings = sliceMesh({ mesh, placement: standing.part.place }, plane.direction, heightOf(plane));
    return rings.length === 0 ? [] : [{ standing, rings, grain: grainOf(input, standing.part, plane) }];
  });
}
function boxOf(rings: Rings): Rect {
  const xs = rings.flatMap((r) => r.map((p) => p[0]));
  const ys = rings.flatMap((r) => r.map((p) => p[1]));
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y };
}
const unitOf = (axis: Axis): Vec3 => byAxis((a) => (a === axis ? 1 : 0)) as Vec3;
function grainOf(input: Prepared, part: Part, plane: Plane): CutPart['grain'] {
  if (input.piece.stocks[part.stock]?.kind === 'sheet') return 'sheet';
  if (part.grain === undefined) return 'end';
  return Math.abs(turn(part.place, unitOf(part.grain))[plane.axis]) > 0.7 ? 'end' : 'long';
}
const pathOf = (rings: Rings): Path =>
  rings.flatMap((ring): Seg[] => [...ring.map(([x, y], i): Seg => [i === 0 ? 'M' : 'L', round3(x), round3(y)]), ['Z']]);

interface Way {
  readonly degrees: 45 | 135;
  readonly pitch: number;
}
const WAYS: readonly Way[] = [
  { degrees: 45, pitch: 1.5 },
  { degrees: 135, pitch: 1.5 },
  { degrees: 45, pitch: 1.9 },
  { degrees: 135, pitch: 1.3 },
];
/** End-grain hatching so that touching parts differ in direction or pitch (after ISO 128-50). */
function alternate(cut: readonly CutPart[]): Way[] {
  const touch = (a: Rect, b: Rect): boolean =>
    a.x < b.x + b.w + 0.4 && b.x < a.x + a.w + 0.4 && a.y < b.y + b.h + 0.4 && b.y < a.y + a.h + 0.4;
  const out: Way[] = [];
  cut.forEach((c, i) => {
    const near = cut.slice(0, i).flatMap((d, k) => (d.grain === 'end' && touch(c.box, d.box) ? [out[k] as Way] : []));
    out.push(WAYS.find((w) => !near.includes(w)) ?? (WAYS[0] as Way));
  });
  return out;
}

/** Cut thinner than this on paper is solid black (ISO 128 thin sections; figure our default). */
const THIN = 0.7;
function hatched(c: CutPart, view: View, way: Way, seen: Rect | undefined): Item[] {
  const thin = Math.min(c.box.w, c.box.h);
  if (thin < THIN) return [fill('black', pathOf(c.rings))];
  if (c.grain === 'end') return lines('H', hatch(c.rings, way.degrees, way.pitch));
  const along = c.grain === 'long' ? grainAngle(c, view) : c.box.w >= c.box.h ? 90 : 0;
  // Sheet goods: lines square to the panel at half its thickness; long grain: lines along it, a fifth of the thickness apart.
  if (c.grain === 'sheet') return lines('H', hatch(c.rings, along, Math.max(0.55, thin / 2), 0.5));
  return lines(
    'H',
    hatch(c.rings, along, Math.max(0.45, Math.min(1.6, thin / 5)), 0.5).flatMap((s, i) =>
      grouped(s, along, seen ? common(c.box, seen) : c.box, i),
    ),
  );
}
/** Direction of the grain on paper, degrees (y down). */
function grainAngle(c: CutPart, view: View): number {
  const { part } = c.standing;
  const g = turn(part.place, unitOf(part.grain ?? part.length));
  return angleOf(dot(g, view.direction.right), -dot(g, view.direction.up));
}
/** What two boxes have in common; of no size where they lie apart. */
function common(a: Rect, b: Rect): Rect {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  return {
    x,
    y,
    w: Math.max(0, Math.min(a.x + a.w, b.x + b.w) - x),
    h: Math.max(0, Math.min(a.y + a.h, b.y + b.h) - y),
  };
}
type Segment = readonly [readonly [number, number], readonly [number, number]];
/** Only groups of lines 10–12 long at the ends and the middle; their ends are uneven, line by line. */
function grouped([a, b]: Segment, degrees: number, box: Rect, index: number): Segment[] {
  const lying = Math.abs((((degrees % 180) + 180) % 180) - 90) > 45;
  const [low, high] = lying ? [box.x, box.x + box.w] : [box.y, box.y + box.h];
  const length = high - low;
  const uneven = [0, 1.6, 0.6][index % 3] as number;
  const mid = (low + high) / 2;
  const windows: [number, number][] =
    length < 16
      ? [[low + 1, high - 1 - uneven]]
      : length < 44
        ? [[mid - 5.5 + uneven, mid + 5.5 - uneven / 2]]
        : [
            [low + 0.8, low + 11 - uneven],
            [mid - 5.5 + uneven, mid + 5.5 - uneven / 2],
            [high - 11 + uneven, high - 0.8],
          ];
  const k = lying ? 0 : 1;
  return windows.flatMap(([from, to]): Segment[] => {
    const [p, q] = a[k] <= b[k] ? [a, b] : [b, a];
    const [s, t] = [Math.max(from, p[k]), Math.min(to, q[k])];
    if (t - s < 1) return [];
    const at = (v: number): readonly [number, number] => {
      const f = (v - p[k]) / (q[k] - p[k]);
      return [p[0] + (q[0] - p[0]) * f, p[1] + (q[1] - p[1]) * f];
    };
    return [[at(s), at(t)]];
  });
}
function lines(pen: Pen, segments: readonly Segment[]): Item[] {
  if (segments.length === 0) return [];
  const d = segments.flatMap(([a, b]): Seg[] => [
    ['M', round3(a[0]), round3(a[1])],
    ['L', round3(b[0]), round3(b[1])],
  ]);
  return [stroke(pen, d)];
}
