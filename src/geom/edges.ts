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
  /** The flat face that each triangle lies in, as the number of one of its triangles. */
  readonly flat: Int32Array;
}
const KNOWN = new WeakMap<Mesh, Topology>();

/** Normals (unit) and whether each triangle is a sliver. Plain sums and roots: they are exact alike on every machine. */
function rawNormals({ positions: p, triangles: t }: Mesh): { normals: Float64Array; sliver: Uint8Array } {
  const normals = new Float64Array(t.length);
  const sliver = new Uint8Array(t.length / 3);
  for (let i = 0; i < t.length; i += 3) {
    const a = (t[i] as number) * 3;
    const b = (t[i + 1] as number) * 3;
    const c = (t[i + 2] as number) * 3;
    const ux = (p[b] as number) - (p[a] as number);
    const uy = (p[b + 1] as number) - (p[a + 1] as number);
    const uz = (p[b + 2] as number) - (p[a + 2] as number);
    const vx = (p[c] as number) - (p[a] as number);
    const vy = (p[c + 1] as number) - (p[a + 1] as number);
    const vz = (p[c + 2] as number) - (p[a + 2] as number);
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const longest = Math.max(lengthOf(ux, uy, uz), lengthOf(vx, vy, vz), lengthOf(vx - ux, vy - uy, vz - uz));
    sliver[i / 3] = twice < SLIVER * longest ? 1 : 0;
    if (twice === 0) continue;
    normals[i] = nx / twice;
    normals[i + 1] = ny / twice;
    normals[i + 2] = nz / twice;
  }
  return { normals, sliver };
}
const lengthOf = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);

/** Lists of numbers by a first number, oldest first, in three arrays: what a map of lists is, without its cost. */
class Chains {
  private readonly first: Int32Array;
  private readonly last: Int32Array;
  private readonly next: Int32Array;
  constructor(lists: number, items: number) {
    this.first = new Int32Array(lists).fill(-1);
    this.last = new Int32Array(lists).fill(-1);
    this.next = new Int32Array(items).fill(-1);
  }
  add(list: number, item: number): void {
    const last = this.last[list] as number;
    if (last < 0) this.first[list] = item;
    else this.next[last] = item;
    this.last[list] = item;
    this.next[item] = -1;
  }
  /** The oldest item of a list that `holds`, -1 where there is none; it is taken out unless `stays`. */
  find(list: number, holds: (item: number) => boolean, stays: boolean): number {
    let before = -1;
    for (let i = this.first[list] as number; i >= 0; i = this.next[i] as number) {
      if (holds(i)) {
        if (!stays) this.drop(list, before, i);
        return i;
      }
      before = i;
    }
    return -1;
  }
  private drop(list: number, before: number, item: number): void {
    const after = this.next[item] as number;
    if (before < 0) this.first[list] = after;
    else this.next[before] = after;
    if (after < 0) this.last[list] = before;
  }
}
const sideEnd = (t: Uint32Array, s: number): number => t[s % 3 === 2 ? s - 2 : s + 1] as number;

/**
 * Pairs every directed side with the oldest one that runs back: two numbers a pair. Where four triangles share an edge it
 * becomes two edges; `shared` tells for each side whether its edge is such a one.
 */
function pairSides({ triangles: t, positions }: Mesh): { pairs: Int32Array; shared: Uint8Array } {
  const open = new Chains(positions.length / 3, t.length);
  const pairs = new Int32Array(t.length);
  let count = 0;
  for (let s = 0; s < t.length; s++) {
    const a = t[s] as number;
    const mate = open.find(sideEnd(t, s), (other) => sideEnd(t, other) === a, false);
    if (mate < 0) {
      open.add(a, s);
      continue;
    }
    pairs[count] = mate;
    pairs[count + 1] = s;
    count += 2;
  }
  return { pairs: pairs.subarray(0, count), shared: sharedSides(t, positions.length / 3) };
}
function sharedSides(t: Uint32Array, corners: number): Uint8Array {
  const firsts = new Chains(corners, t.length);
  const count = new Uint8Array(t.length);
  const edge = new Int32Array(t.length);
  const other = (s: number): number => Math.max(t[s] as number, sideEnd(t, s));
  for (let s = 0; s < t.length; s++) {
    const low = Math.min(t[s] as number, sideEnd(t, s));
    const high = other(s);
    const known = firsts.find(low, (first) => other(first) === high, true);
    if (known < 0) firsts.add(low, s);
    edge[s] = known < 0 ? s : known;
    count[edge[s] as number] = Math.min(3, (count[edge[s] as number] as number) + 1);
  }
  return Uint8Array.from(edge, (first) => ((count[first] as number) > 2 ? 1 : 0));
}

/** Slivers take the normal of the neighbour at their longest side, in a few passes. */
function mendNormals(mesh: Mesh, normals: Float64Array, sliver: Uint8Array, pairs: Int32Array): void {
  if (!sliver.includes(1)) return;
  const { positions: p, triangles: t } = mesh;
  const mate = new Int32Array(t.length).fill(-1);
  for (let i = 0; i < pairs.length; i += 2) {
    mate[pairs[i] as number] = pairs[i + 1] as number;
    mate[pairs[i + 1] as number] = pairs[i] as number;
  }
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

const triangleOf = (side: number): number => Math.floor(side / 3);
/** The flat face that each triangle lies in, as the number of one of its triangles. */
function flatFaces(normals: Float64Array, pairs: Int32Array): Int32Array {
  const face = new Int32Array(normals.length / 3);
  for (let i = 0; i < face.length; i++) face[i] = i;
  const root = (i: number): number => {
    let r = i;
    while (face[r] !== r) r = face[r] = face[face[r] as number] as number;
    return r;
  };
  for (let k = 0; k < pairs.length; k += 2) {
    const i = triangleOf(pairs[k] as number);
    const j = triangleOf(pairs[k + 1] as number);
    const x = (normals[i * 3] as number) - (normals[j * 3] as number);
    const y = (normals[i * 3 + 1] as number) - (normals[j * 3 + 1] as number);
    const z = (normals[i * 3 + 2] as number) - (normals[j * 3 + 2] as number);
    if (x * x + y * y + z * z < 1e-8) face[root(i)] = root(j);
  }
  return face.map((_, i) => root(i));
}
/** Tells how far the flat face that a triangle lies in reaches from an edge of it, square to the edge, mm. */
function facetWidths(
  { positions: p, triangles: t }: Mesh,
  faces: Int32Array,
): (triangle: number, a: number, b: number) => number {
  // The corners of each face one after another, from `begin` of its number.
  const begin = new Int32Array(faces.length + 1);
  for (const face of faces) begin[face + 1] = (begin[face + 1] as number) + 3;
  for (let i = 0; i < faces.length; i++) begin[i + 1] = (begin[i + 1] as number) + (begin[i] as number);
  const filled = begin.slice();
  const corners = new Int32Array(t.length);
  t.forEach((corner, c) => {
    const face = faces[triangleOf(c)] as number;
    corners[filled[face] as number] = corner;
    filled[face] = (filled[face] as number) + 1;
  });
  return (triangle, a, b) => {
    const face = faces[triangle] as number;
    const [qx, qy, qz] = [p[a * 3] as number, p[a * 3 + 1] as number, p[a * 3 + 2] as number];
    const [dx, dy, dz] = [(p[b * 3] as number) - qx, (p[b * 3 + 1] as number) - qy, (p[b * 3 + 2] as number) - qz];
    const long = lengthOf(dx, dy, dz);
    let most = 0;
    for (let i = begin[face] as number; i < (begin[face + 1] as number); i++) {
      const c = (corners[i] as number) * 3;
      const ux = (p[c] as number) - qx;
      const uy = (p[c + 1] as number) - qy;
      const uz = (p[c + 2] as number) - qz;
      most = Math.max(most, lengthOf(uy * dz - uz * dy, uz * dx - ux * dz, ux * dy - uy * dx) / long);
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
  const flat = flatFaces(normals, pairs);
  const count = pairs.length / 2;
  const made = {
    from: new Uint32Array(count),
    to: new Uint32Array(count),
    left: new Uint32Array(count),
    right: new Uint32Array(count),
    arris: new Uint8Array(count),
    normals,
    sides: new Uint32Array(t.length),
    flat,
  };
  const [smooth, level] = [cosine(ARRIS_DEGREES), cosine(FLAT_DEGREES)];
  const widthOf = facetWidths(mesh, flat);
  for (let i = 0; i < count; i++) {
    const [s, r] = [pairs[i * 2] as number, pairs[i * 2 + 1] as number];
    const [a, b] = [t[s] as number, t[r] as number];
    const [left, right] = [triangleOf(s), triangleOf(r)];
    made.from[i] = a;
    made.to[i] = b;
    made.left[i] = left;
    made.right[i] = right;
    let cos = 0;
    for (let x = 0; x < 3; x++) cos += (normals[left * 3 + x] as number) * (normals[right * 3 + x] as number);
    const sharp = cos < smooth || shared[s] === 1;
    const wide = FACET / Math.sqrt(Math.max(2 - 2 * cos, 1e-12)); // the chord of the turn, near enough the turn itself
    made.arris[i] = sharp || (cos < level && widthOf(left, a, b) > wide && widthOf(right, a, b) > wide) ? 1 : 0;
    made.sides[s] = i;
    made.sides[r] = i;
  }
  KNOWN.set(mesh, made);
  return made;
}
