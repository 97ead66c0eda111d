import Flatbush from 'flatbush';
import type { Vec3 } from './box.js';
import { topology, type Topology } from './edges.js';
import { dot, turn, type Placement } from './placement.js';
import type { Mesh } from './solid.js';

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
function turned({ mesh, placement }: SceneItem, view: ViewAxes): Turned {
  const rows = [view.right, view.up, view.toward];
  const own = rows.map((r) => [0, 1, 2].map((i) => dot(r, turn(placement, [+(i === 0), +(i === 1), +(i === 2)]))));
  const shift = rows.map((r) => dot(r, placement.origin) / NM_PER_MM);
  const move = (source: Float64Array, by: readonly number[]): Float64Array => {
    const out = new Float64Array(source.length);
    for (let k = 0; k < 3; k++) {
      const [p, q, r, d] = [...(own[k] as number[]), by[k]] as [number, number, number, number];
      for (let i = 0; i < source.length; i += 3)
        out[i + k] = p * (source[i] as number) + q * (source[i + 1] as number) + r * (source[i + 2] as number) + d;
    }
    return out;
  };
  const topo = topology(mesh);
  const normals = move(topo.normals, [0, 0, 0]);
  const faces = new Uint8Array(normals.length / 3);
  for (let i = 0; i < faces.length; i++) faces[i] = (normals[i * 3 + 2] as number) > EDGE_ON ? 1 : 0;
  return { points: move(mesh.positions, shift), normals, faces, topo };
}

/** True where an edge is drawn in this view: an arris, or where a curve turns away from the eye. */
const drawn = (t: Turned, edge: number): boolean =>
  t.topo.arris[edge] === 1 || t.faces[t.topo.left[edge] as number] !== t.faces[t.topo.right[edge] as number];

/** Writes one seen triangle at `at`; false when it covers nothing. */
function writeFace(t: Turned, triangles: Uint32Array, triangle: number, out: Float64Array, at: number): boolean {
  const p = t.points;
  const n = triangle * 3;
  const [a, b, c] = [(triangles[n] as number) * 3, (triangles[n + 1] as number) * 3, (triangles[n + 2] as number) * 3];
  const [ax, ay, az] = [p[a] as number, p[a + 1] as number, p[a + 2] as number];
  const [bx, by, bz] = [p[b] as number, p[b + 1] as number, p[b + 2] as number];
  const [cx, cy, cz] = [p[c] as number, p[c + 1] as number, p[c + 2] as number];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (Math.abs(area) < 1e-9) return false;
  const way = Math.sign(area);
  const side = (k: number, ux: number, uy: number, vx: number, vy: number): void => {
    const [dx, dy] = [vx - ux, vy - uy];
    const long = Math.sqrt(dx * dx + dy * dy) || 1;
    const [nx, ny] = [(-dy * way) / long, (dx * way) / long];
    out[at + k * 4] = nx;
    out[at + k * 4 + 1] = ny;
    out[at + k * 4 + 2] = -(nx * ux + ny * uy);
    out[at + k * 4 + 3] = drawn(t, t.topo.sides[n + k] as number) ? NEAR : -NEAR;
  };
  side(0, ax, ay, bx, by);
  side(1, bx, by, cx, cy);
  side(2, cx, cy, ax, ay);
  const [nx, ny, nz] = [t.normals[n] as number, t.normals[n + 1] as number, t.normals[n + 2] as number];
  out[at + 12] = -nx / nz;
  out[at + 13] = -ny / nz;
  out[at + 14] = az + (nx * ax + ny * ay) / nz;
  out[at + 15] = Math.max(az, bz, cz);
  return true;
}

/** Turns all items to the view and indexes the triangles that face the eye. */
export function sceneOf(items: readonly SceneItem[], view: ViewAxes): Scene {
  const all = items.map((item) => turned(item, view));
  const most = all.reduce((n, t) => n + t.faces.reduce((m, f) => m + f, 0), 0);
  const lines = all.reduce((n, t) => n + t.topo.from.reduce((m, _, e) => m + (drawn(t, e) ? 1 : 0), 0), 0);
  const faces = new Float64Array(most * STRIDE);
  const faceNormals = new Float64Array(most * 3);
  const boxes = new Float64Array(most * 4);
  const edges = new Float64Array(lines * 6);
  const [edgeItem, edgeSeen] = [new Uint32Array(lines), new Uint8Array(lines)];
  let [count, line] = [0, 0];
  all.forEach((t, number) => {
    const { triangles } = (items[number] as SceneItem).mesh;
    for (let i = 0; i < t.faces.length; i++) {
      if (!t.faces[i] || !writeFace(t, triangles, i, faces, count * STRIDE)) continue;
      for (let k = 0; k < 3; k++) faceNormals[count * 3 + k] = t.normals[i * 3 + k] as number;
      writeBox(t.points, triangles, i, boxes, count * 4);
      count++;
    }
    for (let e = 0; e < t.topo.from.length; e++) {
      if (!drawn(t, e)) continue;
      const [a, b] = [(t.topo.from[e] as number) * 3, (t.topo.to[e] as number) * 3];
      for (let k = 0; k < 3; k++) {
        edges[line * 6 + k] = t.points[a + k] as number;
        edges[line * 6 + 3 + k] = t.points[b + k] as number;
      }
      edgeItem[line] = number;
      edgeSeen[line++] = (t.faces[t.topo.left[e] as number] as number) | (t.faces[t.topo.right[e] as number] as number);
    }
  });
  return { faces, faceNormals, index: indexOf(boxes, count), edges, edgeItem, edgeSeen };
}
function writeBox(p: Float64Array, triangles: Uint32Array, i: number, out: Float64Array, at: number): void {
  for (let axis = 0; axis < 2; axis++) {
    const [a, b, c] = [0, 1, 2].map((k) => p[(triangles[i * 3 + k] as number) * 3 + axis] as number) as unknown as Vec3;
    out[at + axis] = Math.min(a, b, c);
    out[at + axis + 2] = Math.max(a, b, c);
  }
}
function indexOf(boxes: Float64Array, count: number): Flatbush | undefined {
  if (count === 0) return undefined;
  const index = new Flatbush(count);
  for (let i = 0; i < count * 4; i += 4)
    index.add(boxes[i] as number, boxes[i + 1] as number, boxes[i + 2], boxes[i + 3]);
  index.finish();
  return index;
}
