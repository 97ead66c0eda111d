import { cosine } from './angle.js';
import type { Mesh } from './solid.js';

/** Edges whose faces turn by more than this are arrises and drawn, whatever they are made of. Our default. */
const ARRIS_DEGREES = 25;
/** Faces that turn by less than this are one face. */
const FLAT_DEGREES = 0.2;
/**
 * A curve flattened with a sagitta s has facets 8 s / turn wide (s = r t^2 / 8, width = r t). Where both faces are wider
 * than three times that for s = 0.03 mm, even a shallow edge is a true arris: a taper, the field of a raised panel.
 */
const FACET = 3 * 8 * 0.03;
/** A triangle lower than this (mm) has no trustworthy normal. */
const SLIVER = 1e-4;

/** Edges of a mesh with the triangles at their sides. An edge runs `from` -> `to` in triangle `left`, back in `right`. */
export interface Topology {
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  readonly left: Uint32Array;
  readonly right: Uint32Array;
  /** 1 where the edge is an arris, whatever the view. */
  readonly arris: Uint8Array;
  /** Unit outward normals, three numbers a triangle. */
  readonly normals: Float64Array;
  /** Edge at each triangle's side (from corner i to corner i + 1), three a triangle. */
  readonly sides: Uint32Array;
}
const KNOWN = new WeakMap<Mesh, Topology>();

/** Normals (unit) and whether each triangle is a sliver. */
function rawNormals({ positions: p, triangles: t }: Mesh): { normals: Float64Array; sliver: Uint8Array } {
  const normals = new Float64Array(t.length);
  const sliver = new Uint8Array(t.length / 3);
  const at = (corner: number, axis: number): number => p[(t[corner] as number) * 3 + axis] as number;
  for (let i = 0; i < t.length; i += 3) {
    const [px, py, pz] = [at(i, 0), at(i, 1), at(i, 2)];
    const [qx, qy, qz] = [at(i + 1, 0), at(i + 1, 1), at(i + 1, 2)];
    const [rx, ry, rz] = [at(i + 2, 0), at(i + 2, 1), at(i + 2, 2)];
    const [ux, uy, uz] = [qx - px, qy - py, qz - pz];
    const [vx, vy, vz] = [rx - px, ry - py, rz - pz];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const twice = Math.hypot(nx, ny, nz);
    const longest = Math.max(Math.hypot(ux, uy, uz), Math.hypot(vx, vy, vz), Math.hypot(rx - qx, ry - qy, rz - qz));
    sliver[i / 3] = twice < SLIVER * longest ? 1 : 0;
    if (twice === 0) continue;
    normals[i] = nx / twice;
    normals[i + 1] = ny / twice;
    normals[i + 2] = nz / twice;
  }
  return { normals, sliver };
}

/** Pairs every directed side with one that runs back. Where four triangles share an edge it becomes two edges. */
function pairSides({ triangles: t }: Mesh): { pairs: [number, number][]; shared: Set<number> } {
  /** The one side that waits at an edge, and those behind it. */
  const open = new Map<number, number>();
  const behind = new Map<number, number[]>();
  const pairs: [number, number][] = [];
  const shared = new Set<number>();
  const base = t.reduce((m, x) => Math.max(m, x), 0) + 1;
  const seen = new Map<number, number>();
  for (let s = 0; s < t.length; s++) {
    const [a, b] = [t[s] as number, t[s - (s % 3) + ((s + 1) % 3)] as number];
    const key = Math.min(a, b) * base + Math.max(a, b);
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    if (count > 2) shared.add(key);
    const [there, back] = [a * base + b, b * base + a];
    const mate = open.get(back);
    if (mate !== undefined) {
      pairs.push([mate, s]);
      const next = behind.get(back)?.shift();
      if (next === undefined) open.delete(back);
      else open.set(back, next);
    } else if (!open.has(there)) open.set(there, s);
    else behind.set(there, [...(behind.get(there) ?? []), s]);
  }
  return { pairs, shared };
}

/** Slivers take the normal of the neighbour at their longest side, in a few passes. */
function mendNormals(mesh: Mesh, normals: Float64Array, sliver: Uint8Array, pairs: readonly [number, number][]): void {
  if (!sliver.includes(1)) return;
  const { positions: p, triangles: t } = mesh;
  const mate = new Int32Array(t.length).fill(-1);
  for (const [a, b] of pairs) [mate[a], mate[b]] = [b, a];
  const long = (s: number): number => {
    const [a, b] = [(t[s] as number) * 3, (t[s - (s % 3) + ((s + 1) % 3)] as number) * 3];
    return Math.hypot(...[0, 1, 2].map((x) => (p[a + x] as number) - (p[b + x] as number)));
  };
  for (let pass = 0; pass < 8 && sliver.includes(1); pass++) {
    for (let i = 0; i < sliver.length; i++) {
      if (!sliver[i]) continue;
      const order = [i * 3, i * 3 + 1, i * 3 + 2].sort((a, b) => long(b) - long(a) || a - b);
      const good = order
        .slice(0, 2)
        .find((s) => (mate[s] as number) >= 0 && !sliver[Math.floor((mate[s] as number) / 3)]);
      if (good === undefined) continue;
      const from = Math.floor((mate[good] as number) / 3) * 3;
      for (let x = 0; x < 3; x++) normals[i * 3 + x] = normals[from + x] as number;
      sliver[i] = 0;
    }
  }
}

/** Tells how far the flat face that a triangle lies in reaches from an edge of it, square to the edge, mm. */
function facetWidths(
  { positions: p, triangles: t }: Mesh,
  normals: Float64Array,
  pairs: readonly [number, number][],
): (triangle: number, a: number, b: number) => number {
  const parent = Int32Array.from({ length: t.length / 3 }, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r] = parent[parent[r] as number] as number;
    return r;
  };
  for (const [s, r] of pairs) {
    const [i, j] = [Math.floor(s / 3), Math.floor(r / 3)];
    let off = 0;
    for (let x = 0; x < 3; x++) off += ((normals[i * 3 + x] as number) - (normals[j * 3 + x] as number)) ** 2;
    if (off < 1e-8) parent[root(i)] = root(j);
  }
  const corners = new Map<number, Set<number>>();
  const cornersOf = (face: number): Set<number> => {
    if (corners.size === 0)
      for (let c = 0; c < t.length; c++) {
        const r = root(Math.floor(c / 3));
        const set = corners.get(r) ?? new Set();
        corners.set(r, set.add(t[c] as number));
      }
    return corners.get(root(face)) ?? new Set();
  };
  return (triangle, a, b) => {
    const at = (i: number): [number, number, number] => [
      p[i * 3] as number,
      p[i * 3 + 1] as number,
      p[i * 3 + 2] as number,
    ];
    const [q, r] = [at(a), at(b)];
    const d = [r[0] - q[0], r[1] - q[1], r[2] - q[2]] as const;
    const long = Math.hypot(...d);
    let most = 0;
    for (const c of cornersOf(triangle)) {
      const ux = (p[c * 3] as number) - q[0];
      const uy = (p[c * 3 + 1] as number) - q[1];
      const uz = (p[c * 3 + 2] as number) - q[2];
      most = Math.max(most, Math.hypot(uy * d[2] - uz * d[1], uz * d[0] - ux * d[2], ux * d[1] - uy * d[0]) / long);
    }
    return most;
  };
}

/** The edges of a closed mesh; kept for as long as the mesh is. */
export function topology(mesh: Mesh): Topology {
  const known = KNOWN.get(mesh);
  if (known) return known;
  const { triangles: t } = mesh;
  const { normals, sliver } = rawNormals(mesh);
  const { pairs, shared } = pairSides(mesh);
  mendNormals(mesh, normals, sliver, pairs);
  const base = t.reduce((m, x) => Math.max(m, x), 0) + 1;
  const count = pairs.length;
  const made = {
    from: new Uint32Array(count),
    to: new Uint32Array(count),
    left: new Uint32Array(count),
    right: new Uint32Array(count),
    arris: new Uint8Array(count),
    normals,
    sides: new Uint32Array(t.length),
  };
  const [smooth, level] = [cosine(ARRIS_DEGREES), cosine(FLAT_DEGREES)];
  const widthOf = facetWidths(mesh, normals, pairs);
  pairs.forEach(([s, r], i) => {
    const [a, b] = [t[s] as number, t[r] as number];
    const [left, right] = [Math.floor(s / 3), Math.floor(r / 3)];
    [made.from[i], made.to[i], made.left[i], made.right[i]] = [a, b, left, right];
    let cos = 0;
    for (let x = 0; x < 3; x++) cos += (normals[left * 3 + x] as number) * (normals[right * 3 + x] as number);
    const sharp = cos < smooth || shared.has(Math.min(a, b) * base + Math.max(a, b));
    const wide = FACET / Math.sqrt(Math.max(2 - 2 * cos, 1e-12)); // the chord of the turn, near enough the turn itself
    made.arris[i] = sharp || (cos < level && widthOf(left, a, b) > wide && widthOf(right, a, b) > wide) ? 1 : 0;
    made.sides[s] = i;
    made.sides[r] = i;
  });
  KNOWN.set(mesh, made);
  return made;
}
