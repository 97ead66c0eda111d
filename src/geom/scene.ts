import Flatbush from 'flatbush';
import type { Vec3 } from './box.js';
import { topology, type Topology } from './edges.js';
import { dot, turn, type Placement } from './placement.js';
import { bandsOf } from './bands.js';
import type { Mesh, Rings } from './solid.js';

/** Right-handed, unit, square to one another: right x up = toward (the eye). */
export interface ViewAxes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
}
export interface SceneItem {
  readonly id: string;
  readonly mesh: Mesh;
  /** Origin nm, as everywhere; meshes are in mm. */
  readonly placement: Placement;
  /** Where the item is cut by the nearer plane of the slab (`sliceMesh`): what lies before that plane is taken away. */
  readonly cap?: Rings;
  /** Whether the rings of the cap are drawn too. */
  readonly outlined?: boolean;
}
/** What is looked at: all that lies between two planes square to the line of sight (mm toward the eye), and in a window, mm. */
export interface Slab {
  readonly low: number;
  readonly high: number;
  /** Left, low, right, high: what lies wholly outside is left out. */
  readonly window?: readonly [number, number, number, number];
}
/** 2-D closeness, mm: a drawn side of a triangle hides only what is further in than this, an undrawn one that much more. */
export const NEAR = 5e-4;
/** A face this little toward the eye (sine) counts as seen edge-on. */
const EDGE_ON = 2e-5;
/** Numbers kept for each seen triangle: three sides (x, y, constant, margin), plane (x, y, constant), greatest height. */
export const STRIDE = 16;
const NM_PER_MM = 1e6;

/** Everything turned to the view: x right, y up, z toward the eye, mm. */
export interface Scene {
  /** Triangles that face the eye: STRIDE numbers each. */
  readonly faces: Float64Array;
  readonly faceNormals: Float64Array;
  readonly index: Flatbush | undefined;
  /** Edges to draw: ax ay az bx by bz. */
  readonly edges: Float64Array;
  /** Item of each edge, and 1 where a face beside it looks toward the eye. */
  readonly edgeItem: Uint32Array;
  readonly edgeSeen: Uint8Array;
}

interface Turned {
  readonly points: Float64Array;
  readonly normals: Float64Array;
  readonly faces: Uint8Array;
  readonly topo: Topology;
}
/** Numbers of three, turned by a placement and to a view; `shift` where they are points (mm), not directions. */
export function turnedTo(
  view: ViewAxes,
  placement: Placement,
  source: Float64Array,
  { shift }: { readonly shift: boolean },
): Float64Array {
  const out = new Float64Array(source.length);
  [view.right, view.up, view.toward].forEach((row, k) => {
    const [p, q, r] = [0, 1, 2].map((i) => dot(row, turn(placement, [+(i === 0), +(i === 1), +(i === 2)]))) as [number, number, number]; // prettier-ignore
    const d = shift ? dot(row, placement.origin) / NM_PER_MM : 0;
    for (let i = 0; i < source.length; i += 3)
      out[i + k] = p * (source[i] as number) + q * (source[i + 1] as number) + r * (source[i + 2] as number) + d;
  });
  return out;
}
function turned({ mesh, placement }: SceneItem, view: ViewAxes): Turned {
  const topo = topology(mesh);
  const normals = turnedTo(view, placement, topo.normals, { shift: false });
  const faces = new Uint8Array(normals.length / 3);
  for (let i = 0; i < faces.length; i++) faces[i] = (normals[i * 3 + 2] as number) > EDGE_ON ? 1 : 0;
  return { points: turnedTo(view, placement, mesh.positions, { shift: true }), normals, faces, topo };
}

/** True where an edge is drawn in this view: an arris, or where a curve turns away from the eye. */
const drawn = (t: Turned, edge: number): boolean =>
  t.topo.arris[edge] === 1 || t.faces[t.topo.left[edge] as number] !== t.faces[t.topo.right[edge] as number];

type Nine = readonly [number, number, number, number, number, number, number, number, number];
/** Where seen triangles and drawn edges are gathered. */
class Gathered {
  readonly faces: number[] = [];
  readonly normals: number[] = [];
  readonly boxes: number[] = [];
  readonly edges: number[] = [];
  readonly edgeItem: number[] = [];
  readonly edgeSeen: number[] = [];

  constructor(private readonly window: Slab['window']) {}
  private outside(x0: number, y0: number, x1: number, y1: number): boolean {
    const w = this.window;
    return w !== undefined && (x1 < w[0] || y1 < w[1] || x0 > w[2] || y0 > w[3]);
  }
  /** The corners of the next triangle, nine numbers: set in place, since there are many. */
  readonly corners = new Float64Array(9);
  /** A triangle that faces the eye, its plane's normal, and how each of its sides hides; nothing where it covers nothing. */
  triangle(nx: number, ny: number, nz: number, ab: number, bc: number, ca: number): void {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = this.corners as unknown as Nine;
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    if (Math.abs(area) < 1e-9) return;
    const [x0, y0, x1, y1] = [Math.min(ax, bx, cx), Math.min(ay, by, cy), Math.max(ax, bx, cx), Math.max(ay, by, cy)];
    if (this.outside(x0, y0, x1, y1)) return;
    const way = Math.sign(area);
    this.side(ax, ay, bx, by, way, ab);
    this.side(bx, by, cx, cy, way, bc);
    this.side(cx, cy, ax, ay, way, ca);
    this.faces.push(-nx / nz, -ny / nz, az + (nx * ax + ny * ay) / nz, Math.max(az, bz, cz));
    this.normals.push(nx, ny, nz);
    this.boxes.push(x0, y0, x1, y1);
  }
  private side(ux: number, uy: number, vx: number, vy: number, way: number, margin: number): void {
    const [dx, dy] = [vx - ux, vy - uy];
    const long = Math.sqrt(dx * dx + dy * dy) || 1;
    const [nx, ny] = [(-dy * way) / long, (dx * way) / long];
    this.faces.push(nx, ny, -(nx * ux + ny * uy), margin);
  }
  edge(a: Vec3, b: Vec3, item: number, seen: number): void {
    if (this.outside(Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1]))) return;
    this.edges.push(a[0], a[1], a[2], b[0], b[1], b[2]);
    this.edgeItem.push(item);
    this.edgeSeen.push(seen);
  }
}
const pointOf = (t: Turned, corner: number): Vec3 =>
  [t.points[corner * 3], t.points[corner * 3 + 1], t.points[corner * 3 + 2]] as unknown as Vec3;
const between = (a: Vec3, b: Vec3, f: number): Vec3 => [
  a[0] + (b[0] - a[0]) * f,
  a[1] + (b[1] - a[1]) * f,
  a[2] + (b[2] - a[2]) * f,
];

function gatherFaces(t: Turned, triangles: Uint32Array, slab: Slab | undefined, out: Gathered): void {
  const margin = (side: number): number => (drawn(t, t.topo.sides[side] as number) ? NEAR : -NEAR);
  const { points, normals } = t;
  for (let i = 0; i < t.faces.length; i++) {
    if (!t.faces[i]) continue;
    const n = i * 3;
    const [nx, ny, nz] = [normals[n] as number, normals[n + 1] as number, normals[n + 2] as number];
    for (let k = 0; k < 3; k++) {
      const at = (triangles[n + k] as number) * 3;
      for (let j = 0; j < 3; j++) out.corners[k * 3 + j] = points[at + j] as number;
    }
    const [ab, bc, ca] = [margin(n), margin(n + 1), margin(n + 2)];
    if (!slab || [2, 5, 8].every((k) => within(slab, out.corners[k] as number))) out.triangle(nx, ny, nz, ab, bc, ca);
    else {
      const corners = [0, 1, 2].map((k) => pointOf(t, triangles[n + k] as number));
      fan(clippedTo(slab, corners, [ab, bc, ca]), [nx, ny, nz], out);
    }
  }
}
const within = (slab: Slab, z: number): boolean => z <= slab.high && z >= slab.low;
/** A corner, and how the side that begins at it hides. */
type Corner = readonly [Vec3, number];
/** What of a triangle lies in the slab (Sutherland and Hodgman, 1974). */
function clippedTo(slab: Slab, points: readonly Vec3[], margins: readonly number[]): Corner[] {
  let ring = points.map((p, i): Corner => [p, margins[i] as number]);
  for (const [sign, at] of [
    [1, slab.high],
    [-1, slab.low],
  ] as const)
    // prettier-ignore
    ring = ring.flatMap(([p, margin], i): Corner[] => {
      const q = (ring[(i + 1) % ring.length] as Corner)[0];
      const [h, k] = [(at - p[2]) * sign, (at - q[2]) * sign];
      if (h >= 0 && k >= 0) return [[p, margin]];
      if (h < 0 && k < 0) return [];
      const cut = between(p, q, h / (h - k));
      return h >= 0 ? [[p, margin], [cut, NEAR]] : [[cut, margin]]; // prettier-ignore
    });
  return ring;
}
function fan(ring: readonly Corner[], normal: Vec3, out: Gathered): void {
  const [first, ...rest] = ring;
  if (!first) return;
  for (let i = 0; i + 1 < rest.length; i++) {
    const [b, c] = [rest[i] as Corner, rest[i + 1] as Corner];
    out.corners.set([...first[0], ...b[0], ...c[0]]);
    out.triangle(...normal, i === 0 ? first[1] : -NEAR, b[1], i + 2 < rest.length ? -NEAR : c[1]);
  }
}
function gatherEdges(t: Turned, item: number, slab: Slab | undefined, out: Gathered): void {
  for (let e = 0; e < t.topo.from.length; e++) {
    if (!drawn(t, e)) continue;
    const seen = (t.faces[t.topo.left[e] as number] as number) | (t.faces[t.topo.right[e] as number] as number);
    const [a, b] = [pointOf(t, t.topo.from[e] as number), pointOf(t, t.topo.to[e] as number)];
    if (!slab || (within(slab, a[2]) && within(slab, b[2]))) {
      out.edge(a, b, item, seen);
      continue;
    }
    const rise = b[2] - a[2];
    const at = (z: number): number => (rise === 0 ? -1 : (z - a[2]) / rise);
    const [p, q] = rise > 0 ? [at(slab.low), at(slab.high)] : [at(slab.high), at(slab.low)];
    const [from, to] = [Math.max(0, p), Math.min(1, q)];
    if (from < to) out.edge(between(a, b, from), between(a, b, to), item, seen);
  }
}
/** The cut face: it hides what lies behind it, its rim too, since its outline is drawn over all. */
function gatherCap(cap: Rings, high: number, item: number, outlined: boolean, out: Gathered): void {
  for (const [x0, x1, x2, x3, y0, y1] of bandsOf(cap))
    for (const half of [
      [x0, y0, high, x1, y0, high, x2, y1, high],
      [x0, y0, high, x2, y1, high, x3, y1, high],
    ]) {
      // prettier-ignore
      out.corners.set(half);
      out.triangle(0, 0, 1, -NEAR, -NEAR, -NEAR);
    }
  if (!outlined) return;
  for (const ring of cap)
    ring.forEach(([x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length] as readonly [number, number];
      out.edge([x, y, high], [u, v, high], item, 1);
    });
}

/** Turns all items to the view, less what lies outside the slab, and indexes the triangles that face the eye. */
export function sceneOf(items: readonly SceneItem[], view: ViewAxes, slab?: Slab): Scene {
  const out = new Gathered(slab?.window);
  items.forEach((item, number) => {
    const t = turned(item, view);
    gatherFaces(t, item.mesh.triangles, slab, out);
    gatherEdges(t, number, slab, out);
    if (item.cap && slab) gatherCap(item.cap, slab.high, number, item.outlined === true, out);
  });
  return {
    faces: new Float64Array(out.faces),
    faceNormals: new Float64Array(out.normals),
    index: indexOf(out.boxes),
    edges: new Float64Array(out.edges),
    edgeItem: new Uint32Array(out.edgeItem),
    edgeSeen: new Uint8Array(out.edgeSeen),
  };
}
function indexOf(boxes: readonly number[]): Flatbush | undefined {
  if (boxes.length === 0) return undefined;
  const index = new Flatbush(boxes.length / 4);
  for (let i = 0; i < boxes.length; i += 4)
    index.add(boxes[i] as number, boxes[i + 1] as number, boxes[i + 2], boxes[i + 3]);
  index.finish();
  return index;
}
