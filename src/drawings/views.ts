import { chains, fitArcs } from '../geom/arcs.js';
import type { Path2 } from '../geom/arcs.js';
import { visibleLines } from '../geom/hiddenLines.js';
import type { Line2, SceneItem, Slab } from '../geom/hiddenLines.js';
import type { Box3, Vec3 } from '../geom/box.js';
import { dot, IDENTITY } from '../geom/placement.js';
import { NM_PER_MM } from '../lengths/length.js';
import type { Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import type { Rect } from './dimensions.js';
import { stroke } from './draw.js';
import type { Item, Pen, Seg } from './picture.js';
import { round3 } from './text.js';

/** A way of looking: the two paper directions and the one toward the eye, unit, right-handed (right × up = toward). */
export interface Direction {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
}
const unit = (v: Vec3): Vec3 => {
  const length = Math.sqrt(dot(v, v));
  return [v[0] / length, v[1] / length, v[2] / length];
};
/** Third-angle arrangement: the plan has the back at its top. */
export const FRONT: Direction = { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] };
export const RIGHT_SIDE: Direction = { right: [0, 1, 0], up: [0, 0, 1], toward: [1, 0, 0] };
export const PLAN: Direction = { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] };
/** Isometric from the front, the right and above: all three axes are shortened alike (ISO 5456-3). */
export const ISOMETRIC: Direction = { right: unit([1, 1, 0]), up: unit([-1, 1, 2]), toward: unit([1, -1, 1]) };

export type ViewItem = SceneItem;
export interface Lines {
  readonly visible: readonly Line2[];
}
/** The views of one piece, each worked out when it is first asked for. */
export interface Views {
  readonly items: readonly ViewItem[];
  lines(direction: Direction, which?: 'all' | 'case'): Lines;
}

export function viewsOf(piece: Piece, solids: Solids): Views {
  const places = new Map(piece.parts.map((p) => [p.id, p]));
  const parts = solids.parts.map((s): ViewItem & { drawer: boolean } => ({
    id: s.id,
    mesh: s.mesh,
    placement: places.get(s.id)?.place ?? IDENTITY,
    drawer: places.get(s.id)?.drawer !== undefined,
  }));
  const hardware = solids.hardware
    .filter((h) => piece.hardware.find((x) => x.id === h.id)?.kind === 'pull')
    .map((h) => ({ id: h.id, mesh: h.mesh, placement: IDENTITY, drawer: true }));
  // The boxes of closed drawers are not seen in any of these views; their fronts and pulls are.
  const fronts = new Set(piece.drawers.map((d) => d.front));
  const items = [...parts.filter((p) => !p.drawer || fronts.has(p.id)), ...hardware];
  const memo = new Map<string, Lines>();
  return {
    items,
    lines: (direction, which = 'all') => {
      const key = `${which} ${direction.toward.join(' ')}`;
      const known = memo.get(key);
      if (known) return known;
      const made = project(which === 'all' ? items : items.filter((i) => !i.drawer), direction);
      memo.set(key, made);
      return made;
    },
  };
}
export const project = (items: readonly ViewItem[], direction: Direction, slab?: Slab): Lines => ({
  visible: visibleLines(items, direction, slab),
});

/** A view on paper: where the piece's origin lies and at which scale, 1 : oneTo. */
export interface View {
  readonly direction: Direction;
  readonly oneTo: number;
  readonly origin: readonly [number, number];
  /** The outline of the piece on paper. */
  readonly box: Rect;
}
/** Extent of a box (nm) as seen: left, right, low, high, mm at full size. */
export function extentOf(box: Box3, direction: Direction): { left: number; right: number; low: number; high: number } {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const x of box[0])
    for (const y of box[1])
      for (const z of box[2]) {
        xs.push(dot(direction.right, [x, y, z]) / NM_PER_MM);
        ys.push(dot(direction.up, [x, y, z]) / NM_PER_MM);
      }
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}
/** Places the view of a box (nm) with its upper left corner at (x, y) on paper. */
export function viewAt(box: Box3, direction: Direction, oneTo: number, x: number, y: number): View {
  const e = extentOf(box, direction);
  return {
    direction,
    oneTo,
    origin: [x - e.left / oneTo, y + e.high / oneTo],
    box: { x, y, w: (e.right - e.left) / oneTo, h: (e.high - e.low) / oneTo },
  };
}
/** A point of the piece (nm) on paper. */
export const onPaper = (view: View, v: Vec3): readonly [number, number] => [
  view.origin[0] + dot(view.direction.right, v) / NM_PER_MM / view.oneTo,
  view.origin[1] - dot(view.direction.up, v) / NM_PER_MM / view.oneTo,
];
/** The box round a box of the piece (nm) on paper. */
export function rectOf(view: View, box: Box3): Rect {
  const e = extentOf(box, view.direction);
  return {
    x: view.origin[0] + e.left / view.oneTo,
    y: view.origin[1] - e.high / view.oneTo,
    w: (e.right - e.left) / view.oneTo,
    h: (e.high - e.low) / view.oneTo,
  };
}

/** Strokes of lines, one item a pen; runs of short chords that lie on one circle become an arc again. */
export function drawLines(
  view: View,
  lines: readonly Line2[],
  pens: Readonly<Record<Line2['kind'], Pen | undefined>>,
): Item[] {
  const byPen = new Map<Pen, Line2[]>();
  for (const line of lines) {
    const pen = pens[line.kind];
    if (pen) byPen.set(pen, [...(byPen.get(pen) ?? []), line]);
  }
  return [...byPen]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([pen, mine]) =>
      stroke(
        pen,
        chains(mine).flatMap((chain) => segmentsOf(view, fitArcs(chain))),
      ),
    );
}
function segmentsOf(view: View, paths: readonly Path2[]): Seg[] {
  const on = (p: readonly [number, number]): readonly [number, number] => [
    round3(view.origin[0] + p[0] / view.oneTo),
    round3(view.origin[1] - p[1] / view.oneTo),
  ];
  const out: Seg[] = [];
  let last: readonly [number, number] | undefined;
  for (const path of paths) {
    const [a, b] = [on(path.a), on(path.b)];
    if (last === undefined || last[0] !== a[0] || last[1] !== a[1]) out.push(['M', ...a]);
    if (path.op === 'line') out.push(['L', ...b]);
    else out.push(...arcSegments(path, on, view.oneTo));
    last = b;
  }
  return out;
}
/** Anticlockwise on paper is sweep 0 (y runs down); a full circle is two halves. */
function arcSegments(
  path: Extract<Path2, { op: 'arc' }>,
  on: (p: readonly [number, number]) => readonly [number, number],
  oneTo: number,
): Seg[] {
  const r = round3(path.r / oneTo);
  const way = path.sweep > 0 ? 0 : 1;
  const far: readonly [number, number] = [2 * path.centre[0] - path.a[0], 2 * path.centre[1] - path.a[1]];
  if (Math.abs(path.sweep) > 359)
    return [
      ['A', r, way, 0, ...on(far)],
      ['A', r, way, 0, ...on(path.a)],
    ];
  return [['A', r, way, Math.abs(path.sweep) > 180 ? 1 : 0, ...on(path.b)]];
}

/** Gaps under this on paper are drawn as one line (after ISO 128-2). */
const ONE_LINE = 0.7;
/**
 * Without the lines of `loose` parts (drawers) that run along a line of other parts so near that both would print as one:
 * a reveal is then the edge of the opening. Square lines only.
 */
export function withoutReveals(lines: readonly Line2[], oneTo: number, loose: (id: string) => boolean): Line2[] {
  const near = ONE_LINE * oneTo;
  const isLoose = (l: Line2): boolean => l.ids.every(loose);
  const fixed = lines.filter((l) => !isLoose(l));
  const along = (l: Line2): 0 | 1 | undefined =>
    Math.abs(l.a[1] - l.b[1]) < 1e-3 ? 0 : Math.abs(l.a[0] - l.b[0]) < 1e-3 ? 1 : undefined;
  return lines.filter((l) => {
    const k = along(l);
    if (k === undefined || !isLoose(l)) return true;
    const across = k === 0 ? 1 : 0;
    const [low, high] = [Math.min(l.a[k], l.b[k]), Math.max(l.a[k], l.b[k])];
    const covered = fixed
      .filter((f) => along(f) === k && Math.abs(f.a[across] - l.a[across]) < near)
      .reduce((sum, f) => {
        const shared = Math.min(high, Math.max(f.a[k], f.b[k])) - Math.max(low, Math.min(f.a[k], f.b[k]));
        return sum + Math.max(0, shared);
      }, 0);
    return covered < 0.9 * (high - low);
  });
}
/** Elevations: wide where there is air beside the edge, narrow where two faces lie flush. */
export const ELEVATION_PENS = { silhouette: 'W', edge: 'W', flush: 'N' } as const;
/** Pictures: outlines wide, arrises narrow. */
export const PICTURE_PENS = { silhouette: 'W', edge: 'N', flush: 'N' } as const;
