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
    for (let i = 0; i < source.length; i += 3)
      for (let k = 0; k < 3; k++) {
        const [p, q, r] = own[k] as [number, number, number];
        const [x, y, z] = [source[i] as number, source[i + 1] as number, source[i + 2] as number];
        out[i + k] = p * x + q * y + r * z + (by[k] as number);
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

/** Writes one seen triangle; false when it covers nothing. */
function writeFace(t: Turned, mesh: Mesh, triangle: number, out: number[]): boolean {
  const corner = (k: number): number => (mesh.triangles[triangle * 3 + (k % 3)] as number) * 3;
  const [a, b, c] = [corner(0), corner(1), corner(2)];
  const p = (i: number): number => t.points[i] as number;
  const area = (p(b) - p(a)) * (p(c + 1) - p(a + 1)) - (p(c) - p(a)) * (p(b + 1) - p(a + 1));
  if (Math.abs(area) < 1e-9) return false;
  const way = Math.sign(area);
  for (let k = 0; k < 3; k++) {
    const [u, v] = [corner(k), corner(k + 1)];
    const [dx, dy] = [p(v) - p(u), p(v + 1) - p(u + 1)];
    const long = Math.hypot(dx, dy) || 1;
    const [nx, ny] = [(-dy * way) / long, (dx * way) / long];
    const margin = drawn(t, t.topo.sides[triangle * 3 + k] as number) ? NEAR : -NEAR;
    out.push(nx, ny, -(nx * p(u) + ny * p(u + 1)), margin);
  }
  const n = triangle * 3;
  const [nx, ny, nz] = [t.normals[n] as number, t.normals[n + 1] as number, t.normals[n + 2] as number];
  out.push(-nx / nz, -ny / nz, p(a + 2) + (nx * p(a) + ny * p(a + 1)) / nz, Math.max(p(a + 2), p(b + 2), p(c + 2)));
  return true;
}

/** Turns all items to the view and indexes the triangles that face the eye. */
export function sceneOf(items: readonly SceneItem[], view: ViewAxes): Scene {
  const faces: number[] = [];
  const normals: number[] = [];
  const boxes: number[] = [];
  const edges: number[] = [];
  const edgeItem: number[] = [];
  const edgeSeen: number[] = [];
  items.forEach((item, number) => {
    const t = turned(item, view);
    const { points: p, topo } = t;
    for (let i = 0; i < t.faces.length; i++) {
      if (!t.faces[i] || !writeFace(t, item.mesh, i, faces)) continue;
      normals.push(...t.normals.subarray(i * 3, i * 3 + 3));
      const at = [0, 1, 2].map((k) => (item.mesh.triangles[i * 3 + k] as number) * 3);
      const [xs, ys] = [at.map((k) => p[k] as number), at.map((k) => p[k + 1] as number)];
      boxes.push(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
    }
    for (let e = 0; e < topo.from.length; e++) {
      if (!drawn(t, e)) continue;
      const [a, b] = [(topo.from[e] as number) * 3, (topo.to[e] as number) * 3];
      edges.push(...p.subarray(a, a + 3), ...p.subarray(b, b + 3));
      edgeItem.push(number);
      edgeSeen.push((t.faces[topo.left[e] as number] as number) | (t.faces[topo.right[e] as number] as number));
    }
  });
  const count = boxes.length / 4;
  const index = count > 0 ? new Flatbush(count) : undefined;
  for (let i = 0; i < count; i++)
    index?.add(boxes[i * 4] as number, boxes[i * 4 + 1] as number, boxes[i * 4 + 2], boxes[i * 4 + 3]);
  index?.finish();
  return {
    faces: Float64Array.from(faces),
    faceNormals: Float64Array.from(normals),
    index,
    edges: Float64Array.from(edges),
    edgeItem: Uint32Array.from(edgeItem),
    edgeSeen: Uint8Array.from(edgeSeen),
  };
}
