import { sidesFor } from './angle.js';
import { others, type Axis } from './axis.js';
import { byAxis, type Box3, type Vec3 } from './box.js';
import { canonicalMesh, canonicalRings } from './canonical.js';
import { commonRoom } from './common.js';
import { keyOf } from './key.js';
import { areaOf, flatten, TURNED_TOLERANCE } from './outline.js';
import { dot, type Placement } from './placement.js';
import type { Recipe } from './recipe.js';
import { SinglePrecision } from './singlePrecision.js';
import type { Kernel, Mesh, Rings } from './solid.js';

/**
 * Inside, a length is nm / 2^20 (1.048576 mm): whole nanometres are then exact both in doubles and on the 2^-27 grid to
 * which the library's flat outlines are rounded, so that faces meant to touch do touch.
 */
const UNIT = 2 ** 20;
const MM = UNIT / 1e6;
/** Solids further apart than this (own units, about a micrometre) do not touch. */
const CLEAR = 1e-3;

/** What is used of the library; its own declarations do not resolve under Node's module rules. */
type Matrix = number[];
interface Manifold {
  transform(columns: Matrix): Manifold;
  translate(x: number, y: number, z: number): Manifold;
  add(other: Manifold): Manifold;
  subtract(other: Manifold): Manifold;
  intersect(other: Manifold): Manifold;
  slice(height: number): CrossSection;
  decompose(): Manifold[];
  /** The function behind its `setProperties`, which makes a new function and five arrays a corner; doubles at `at` are x, y, z. */
  _SetProperties(count: number, fill: number): Manifold;
  getMesh(): { readonly numProp: number; readonly vertProperties: Float32Array; readonly triVerts: Uint32Array };
  boundingBox(): { readonly min: Vec3; readonly max: Vec3 };
  volume(): number;
  numTri(): number;
  isEmpty(): boolean;
  status(): string;
  delete(): void;
}
interface CrossSection {
  extrude(height: number): Manifold;
  revolve(sides: number): Manifold;
  toPolygons(): [number, number][][];
  delete(): void;
}
interface ManifoldToplevel {
  readonly Manifold: {
    compose(apart: readonly Manifold[]): Manifold;
    cube(size: readonly number[]): Manifold;
    hull(points: readonly Vec3[]): Manifold;
    tetrahedron(): Manifold;
  };
  readonly CrossSection: new (rings: readonly (readonly (readonly number[])[])[], rule: 'EvenOdd') => CrossSection;
  setup(): void;
  addFunction(call: (next: number, at: number, old: number) => void, signature: 'viii'): number;
  readonly HEAPF64: Float64Array;
}

/** A kernel that also tells how many of the library's objects it has made and freed. */
export interface CountedKernel extends Kernel {
  handles(): { readonly made: number; readonly freed: number };
}
/** The solid library's complaint about one recipe: which operation, and its key. */
export class KernelError extends Error {
  constructor(
    readonly op: Recipe['op'],
    readonly recipeKey: string,
    why: string,
  ) {
    super(`the solid kernel could not make a ${op} (${recipeKey}): ${why}`);
  }
}

/** The library, and how it tells where the corners of a solid truly are: x, y, z in doubles, one after the other. */
interface Library {
  readonly lib: ManifoldToplevel;
  readonly cornersOf: (solid: Manifold) => readonly number[];
}
let library: Promise<Library> | undefined;
const load = (): Promise<Library> =>
  (library ??= import('manifold-3d').then(async ({ default: make }) => {
    const lib = (await make()) as unknown as ManifoldToplevel;
    lib.setup();
    let told: number[] = [];
    const tell = lib.addFunction((_, at) => {
      const [heap, i] = [lib.HEAPF64, at >>> 3];
      told.push(heap[i] as number, heap[i + 1] as number, heap[i + 2] as number);
    }, 'viii');
    const cornersOf = (solid: Manifold): readonly number[] => {
      told = [];
      solid._SetProperties(1, tell).delete();
      return told;
    };
    return { lib, cornersOf };
  }));

/** Makes an empty kernel; `dispose` must be called when its piece is done. */
export async function createKernel(): Promise<CountedKernel> {
  const { lib, cornersOf } = await load();
  return new Arena(lib, cornersOf);
}

/** Columns of a 4 x 4 matrix that takes (u, v, w) of a prism or turning to (x, y, z): w along `axis`, u and v the others rising. */
function standing(axis: Axis): Matrix {
  if (axis === 2) return [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
  if (axis === 0) return [0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1];
  return [1, 0, 0, 0, 0, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 1];
}
function matrixOf(p: Placement): Matrix {
  const [r, o] = [p.rotation, p.origin];
  const column = (i: 0 | 1 | 2): [number, number, number] => [r[0][i], r[1][i], r[2][i]];
  return [...column(0), 0, ...column(1), 0, ...column(2), 0, o[0] / UNIT, o[1] / UNIT, o[2] / UNIT, 1];
}
/** True when points span no room: fewer than four, or all within a nanometre of one plane. */
function flat(points: readonly Vec3[]): boolean {
  const [a, ...rest] = points;
  if (!a) return true;
  const from = rest.map((p): Vec3 => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
  const cross = (u: Vec3, v: Vec3): Vec3 => [
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  ];
  const longest = (list: readonly Vec3[]): Vec3 =>
    list.reduce((m, v) => (Math.hypot(...v) > Math.hypot(...m) ? v : m), [0, 0, 0]);
  const along = longest(from);
  const normal = longest(from.map((v) => cross(along, v)));
  const size = Math.hypot(...normal);
  return size === 0 || from.every((v) => Math.abs(dot(normal, v)) <= size);
}
type Turned = Extract<Recipe, { op: 'turned' }>;
/** A turned shape with its axis through the origin and its profile begun at 0, and how far it must then be moved. */
function atOrigin(recipe: Turned): { base: Turned; shift: Vec3 } {
  const start = Math.min(...recipe.profile.map(([, h]) => h));
  const shift = recipe.centre.map((x, i) => (i === recipe.axis ? start : x)) as unknown as Vec3;
  const profile = recipe.profile.map(([r, h]) => [r, h - start] as const);
  return { base: { op: 'turned', axis: recipe.axis, centre: [0, 0, 0], profile }, shift };
}
type Prism = Extract<Recipe, { op: 'prism' }>;
/** A straight-sided prism with its low corner at the origin, and how far it must then be moved; arcs stay where they are, for their rounding. */
function prismAtOrigin(recipe: Prism): { base: Prism; shift: Vec3 } | undefined {
  const stretches = recipe.outlines.flat();
  if (stretches.length === 0 || stretches.some((s) => s.bulge !== undefined && s.bulge !== 0)) return undefined;
  const [x0, y0] = ([0, 1] as const).map((k) => Math.min(...stretches.map((s) => s.to[k]))) as [number, number];
  if (x0 === 0 && y0 === 0 && recipe.from === 0) return undefined;
  const outlines = recipe.outlines.map((o) => o.map(({ to }) => ({ to: [to[0] - x0, to[1] - y0] as const })));
  const [u, v] = others(recipe.axis);
  const shift = byAxis((a) => (a === u ? x0 : a === v ? y0 : recipe.from));
  return { base: { op: 'prism', axis: recipe.axis, from: 0, to: recipe.to - recipe.from, outlines }, shift };
}
/** mm, to a thousandth of a nanometre. */
const toMillimetres = (x: number): number => Math.round(x * UNIT * 1e3) / 1e9 + 0;
class Arena implements CountedKernel {
  private readonly solids = new Map<string, Manifold>();
  private readonly meshes = new Map<string, Mesh>();
  private made = 0;
  private freed = 0;

  constructor(
    private readonly lib: ManifoldToplevel,
    private readonly cornersOf: Library['cornersOf'],
  ) {}

  key(recipe: Recipe): string {
    return keyOf(recipe);
  }
  handles(): { made: number; freed: number } {
    return { made: this.made, freed: this.freed };
  }
  dispose(): void {
    for (const solid of this.solids.values()) this.free(solid);
    this.solids.clear();
    this.meshes.clear();
  }
  volume(recipe: Recipe): number {
    return this.solid(recipe).volume() * MM ** 3;
  }
  bounds(recipe: Recipe): Box3 | undefined {
    return this.boundsOf(this.solid(recipe));
  }
  mesh(recipe: Recipe): Mesh {
    const key = keyOf(recipe);
    const known = this.meshes.get(key);
    if (known) return known;
    const mesh = recipe.op === 'turned' ? this.turnedMesh(recipe) : this.meshOf(this.solid(recipe));
    this.meshes.set(key, mesh);
    return mesh;
  }
  overlap(a: Recipe, b: Recipe): { volume: number; at?: Box3 } {
    const room = commonRoom(a, b);
    const solid = room && this.solid(room.recipe);
    const at = solid && this.boundsOf(solid);
    if (!at) return { volume: 0 };
    const back = (x: number, i: Axis): number => Math.round((x + room.shift[i] / 1e6) * 1e9) / 1e9 + 0;
    return { volume: solid.volume() * MM ** 3, at: byAxis((i) => [back(at[i][0], i), back(at[i][1], i)]) };
  }
  slice(recipe: Recipe, point: Vec3, u: Vec3, v: Vec3): Rings {
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
    const drop = -(n[0] * point[0] + n[1] * point[1] + n[2] * point[2]) / MM;
    const matrix = [...([0, 1, 2] as const).flatMap((i) => [u[i], v[i], n[i], 0]), 0, 0, drop, 1];
    return this.using(this.solid(recipe).transform(matrix), (turned) =>
      this.using(turned.slice(0), (section) =>
        canonicalRings(section.toPolygons().map((ring) => ring.map(([x, y]) => [toMillimetres(x), toMillimetres(y)]))),
      ),
    );
  }
  lumps(recipe: Recipe): number {
    const pieces = this.solid(recipe).decompose();
    this.made += pieces.length;
    // A hollow inside comes as a piece of its own, turned inside out: its volume is negative.
    const lumps = pieces.filter((piece) => piece.volume() > 0).length;
    for (const piece of pieces) this.free(piece);
    return lumps;
  }

  private solid(recipe: Recipe): Manifold {
    const key = keyOf(recipe);
    const known = this.solids.get(key);
    if (known) return known;
    const solid = this.make(recipe);
    solid.numTri(); // Evaluated now, alone: a batch of touching tools hangs, and shared lazy trees change the order of bytes.
    const status = solid.status();
    if (status !== 'NoError') {
      this.free(solid);
      throw new KernelError(recipe.op, key, status);
    }
    this.solids.set(key, solid);
    return solid;
  }
  private make(recipe: Recipe): Manifold {
    switch (recipe.op) {
      case 'box':
        return this.box(recipe.at);
      case 'prism':
        return this.prism(recipe);
      case 'hull':
        return flat(recipe.points)
          ? this.nothing()
          : this.kept(this.lib.Manifold.hull(recipe.points.map(([x, y, z]) => [x / UNIT, y / UNIT, z / UNIT])));
      case 'turned':
        return this.turned(recipe);
      case 'placed':
        return this.kept(this.solid(recipe.of).transform(matrixOf(recipe.by)));
      case 'cut':
        return this.cut(recipe);
      case 'joined':
        return this.fold(recipe.of.map((r) => this.solid(r)), (a, b) => a.add(b)); // prettier-ignore
      case 'met':
        return this.fold(recipe.of.map((r) => this.solid(r)), (a, b) => a.intersect(b)); // prettier-ignore
    }
  }
  /** Tools that stand clear of one another are taken away in one go, as one solid of several lumps; others in turn. */
  private cut(recipe: Extract<Recipe, { op: 'cut' }>): Manifold {
    const from = this.solid(recipe.from);
    const tools = recipe.tools.map((t) => this.solid(t)).filter((t) => this.boxesMeet(from, t));
    const sets: Manifold[][] = [];
    for (const tool of tools) {
      const room = sets.find((set) => set.every((t) => this.boxesClear(t, tool)));
      if (room) room.push(tool);
      else sets.push([tool]);
    }
    return this.fold([from, ...sets], (a, b) => a.subtract(b));
  }
  /** One operand after the other, each result evaluated before the next. Several solids in one operand stand clear. */
  private fold(of: readonly (Manifold | Manifold[])[], step: (a: Manifold, b: Manifold) => Manifold): Manifold {
    let result: Manifold | undefined;
    for (const operand of of) {
      const [next, made] = Array.isArray(operand)
        ? operand.length === 1
          ? [operand[0] as Manifold, false]
          : [this.kept(this.lib.Manifold.compose(operand)), true]
        : [operand, false];
      const last = result;
      result = this.kept(last ? step(last, next) : next.translate(0, 0, 0));
      result.numTri();
      if (last) this.free(last);
      if (made) this.free(next);
    }
    return result ?? this.nothing();
  }
  private moved(base: Recipe, by: Vec3): Manifold {
    return this.kept(this.solid(base).translate(by[0] / UNIT, by[1] / UNIT, by[2] / UNIT));
  }
  private nothing(): Manifold {
    return this.using(this.lib.Manifold.tetrahedron(), (a) => this.kept(a.subtract(a)));
  }
  private box(at: Box3): Manifold {
    const [x, y, z] = at;
    const size = [x, y, z].map((s) => (s[1] - s[0]) / UNIT) as [number, number, number];
    if (size.some((s) => s <= 0)) return this.nothing();
    return this.using(this.lib.Manifold.cube(size), (cube) =>
      this.kept(cube.translate(x[0] / UNIT, y[0] / UNIT, z[0] / UNIT)),
    );
  }
  /** Straight-sided prisms of one section and length (sockets, tails) are made once, at the origin, and moved. */
  private prism(recipe: Prism): Manifold {
    const home = prismAtOrigin(recipe);
    if (home) return this.moved(home.base, home.shift);
    const solid = recipe.outlines.map((o) => flatten(o)).filter((ring) => areaOf(ring) !== 0);
    if (recipe.to <= recipe.from || solid.length === 0) return this.nothing();
    const rings = solid.map((ring) => ring.map(([x, y]): [number, number] => [x / UNIT, y / UNIT]));
    return this.section(rings, (section) => {
      const raised = section.extrude((recipe.to - recipe.from) / UNIT);
      return this.using(raised, (flat) => {
        const shifted = flat.translate(0, 0, recipe.from / UNIT);
        return this.using(shifted, (s) => this.kept(s.transform(standing(recipe.axis))));
      });
    });
  }
  /** Turned shapes of one profile (screws, holes) are made once, at the origin, and moved. */
  private turned(recipe: Turned): Manifold {
    const { base, shift } = atOrigin(recipe);
    if (shift.some((x) => x !== 0)) {
      return this.moved(base, shift);
    }
    const profile = recipe.profile.map(([r, h]): [number, number] => [r / UNIT, h / UNIT]);
    const [first, last] = [profile[0], profile[profile.length - 1]];
    if (first && first[0] !== 0) profile.unshift([0, first[1]]);
    if (last && last[0] !== 0) profile.push([0, last[1]]);
    const radius = Math.max(0, ...recipe.profile.map(([r]) => r));
    if (areaOf(profile) === 0) return this.nothing();
    return this.section([profile], (section) =>
      this.using(section.revolve(sidesFor(radius, TURNED_TOLERANCE)), (upright) =>
        this.kept(upright.transform(standing(recipe.axis))),
      ),
    );
  }
  /** A flat outline for the time of `use`. Either way round is taken: even-odd rule. */
  private section<T>(rings: [number, number][][], use: (section: CrossSection) => T): T {
    return this.using(new this.lib.CrossSection(rings, 'EvenOdd'), use);
  }
  private turnedMesh(recipe: Turned): Mesh {
    const { base, shift } = atOrigin(recipe);
    if (shift.every((x) => x === 0)) return this.meshOf(this.solid(recipe));
    const { positions, triangles } = this.mesh(base);
    const by = shift.map((x) => x / 1e6);
    return { positions: positions.map((x, i) => Math.round((x + (by[i % 3] as number)) * 1e9) / 1e9 + 0), triangles };
  }
  private meshOf(solid: Manifold): Mesh {
    // The library gives corners in single precision; where each truly is, it tells only when asked to set properties.
    // (The properties themselves are of no use: after a mirror, version 3.2.1 hands them to the wrong corners.)
    const exact = new SinglePrecision(this.cornersOf(solid));
    const { vertProperties, triVerts, numProp } = solid.getMesh();
    const points = Array.from({ length: vertProperties.length / numProp }, (_, i): Vec3 => {
      const at = i * numProp;
      const [x, y, z] = [vertProperties[at] as number, vertProperties[at + 1] as number, vertProperties[at + 2] as number]; // prettier-ignore
      const [p, q, r] = exact.of(x, y, z) ?? [x, y, z];
      return [toMillimetres(p), toMillimetres(q), toMillimetres(r)];
    });
    return canonicalMesh(points, triVerts);
  }
  private boundsOf(solid: Manifold): Box3 | undefined {
    if (solid.isEmpty()) return undefined;
    const { min, max } = solid.boundingBox();
    const side = (i: 0 | 1 | 2): [number, number] => [toMillimetres(min[i]), toMillimetres(max[i])];
    return [side(0), side(1), side(2)];
  }
  private boxesMeet(a: Manifold, b: Manifold): boolean {
    if (a.isEmpty() || b.isEmpty()) return false;
    const [p, q] = [a.boundingBox(), b.boundingBox()];
    return ([0, 1, 2] as const).every((i) => p.min[i] < q.max[i] && q.min[i] < p.max[i]);
  }
  private boxesClear(a: Manifold, b: Manifold): boolean {
    const [p, q] = [a.boundingBox(), b.boundingBox()];
    return ([0, 1, 2] as const).some((i) => p.max[i] + CLEAR < q.min[i] || q.max[i] + CLEAR < p.min[i]);
  }
  private kept<T extends Manifold | CrossSection>(handle: T): T {
    this.made++;
    return handle;
  }
  private free(handle: Manifold | CrossSection): void {
    this.freed++;
    handle.delete();
  }
  /** Uses a handle and frees it whatever happens. */
  private using<H extends Manifold | CrossSection, T>(handle: H, use: (handle: H) => T): T {
    this.kept(handle);
    try {
      return use(handle);
    } finally {
      this.free(handle);
    }
  }
}
