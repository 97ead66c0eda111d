import type { JsonPath } from '../diag/diagnostic.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import { momentsOf } from '../geom/moments.js';
import { turn, type Placement } from '../geom/placement.js';
import type { Mesh } from '../geom/solid.js';
import { toMm } from '../lengths/length.js';
import type { Drawer, Part } from '../piece/piece.js';
import type { CheckInput } from './check.js';

/** A part as a body with mass: kg, and mm in piece axes. */
export interface PartBody {
  readonly part: Part;
  readonly kg: number;
  readonly centre: Vec3;
  readonly bounds: Box3;
  /** Corners of its solid, in piece axes. */
  readonly points: readonly Vec3[];
}

const placedMm = (by: Placement, p: Vec3): Vec3 => {
  const t = turn(by, p);
  return byAxis((a) => t[a] + toMm(by.origin[a]));
};
const pointsOf = ({ positions }: Mesh, by: Placement): Vec3[] =>
  Array.from({ length: positions.length / 3 }, (_, i) =>
    placedMm(by, [positions[3 * i] ?? 0, positions[3 * i + 1] ?? 0, positions[3 * i + 2] ?? 0]),
  );
const spanOf = (values: readonly number[]): Span => {
  let [low, high] = [Infinity, -Infinity];
  for (const v of values) [low, high] = [Math.min(low, v), Math.max(high, v)];
  return [low, high];
};

type Weighed = Pick<CheckInput, 'piece' | 'solids' | 'making'>;
/** Several checks ask for the bodies of one piece: worked out once, kept with its solids. */
const KEPT = new WeakMap<Weighed['solids'], { readonly of: Weighed; readonly bodies: readonly PartBody[] }>();

/**
 * Every part with its mass (as the lists give it: wood at 12 %, bought things left out) and its middle, by exact integrals
 * over its solid. Sorted as the piece's parts are.
 */
export function partBodies({ piece, solids, making }: Weighed): readonly PartBody[] {
  const kept = KEPT.get(solids);
  if (kept && kept.of.piece === piece && kept.of.making === making) return kept.bodies;
  const bodies = weighed({ piece, solids, making });
  KEPT.set(solids, { of: { piece, solids, making }, bodies });
  return bodies;
}
function weighed({ piece, solids, making }: Weighed): PartBody[] {
  const masses = new Map(making.weights.parts.map((p) => [p.part, p.kg]));
  const meshes = new Map(solids.parts.map((s) => [s.id, s.mesh]));
  return piece.parts.flatMap((part) => {
    const mesh = meshes.get(part.id);
    if (!mesh) return [];
    const points = pointsOf(mesh, part.place);
    return [
      {
        part,
        kg: masses.get(part.id) ?? 0,
        centre: placedMm(part.place, momentsOf(mesh).centre),
        bounds: byAxis((a) => spanOf(points.map((p) => p[a]))) as Box3,
        points,
      },
    ];
  });
}

export const massOf = (bodies: readonly { readonly kg: number }[]): number => bodies.reduce((s, b) => s + b.kg, 0);
/** Middle of mass; the origin when there is no mass. */
export function centreOf(bodies: readonly { readonly kg: number; readonly centre: Vec3 }[]): Vec3 {
  const kg = massOf(bodies);
  return byAxis((a) => (kg > 0 ? bodies.reduce((s, b) => s + b.kg * b.centre[a], 0) / kg : 0));
}
export const boundsOf = (bodies: readonly PartBody[]): Box3 =>
  byAxis((a) => spanOf(bodies.flatMap((b) => [...b.bounds[a]]))) as Box3;

/** Where a part stands in the definition, as near as its sizes tell. */
export const partPath = (part: Part): JsonPath =>
  part.size.find((s) => s.path)?.path?.slice(0, 2) ?? ['parts', part.id];
/** The entry that a drawer of a grid comes from. */
export const drawerPath = (drawer: Drawer): JsonPath => ['drawers', drawer.id.replace(/_\d+$/, '')];
