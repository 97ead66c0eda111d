import type { Axis } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis, width } from '../geom/box.js';
import { isSquare, place } from '../geom/placement.js';
import type { Mesh } from '../geom/solid.js';
import { NM_PER_MM } from '../lengths/length.js';
import type { Drawer, Part, Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import { planesOf, type Planes } from './stations.js';

/** A part as it stands in the piece. Boxes in piece axes, nm. */
export interface Standing {
  readonly part: Part;
  /** What shows: the shoulder box. */
  readonly shoulder: Box3;
  /** With all that goes into other parts. */
  readonly whole: Box3;
  /** False when it leans: its boxes are then only an outer bound. */
  readonly square: boolean;
}
/** An opening for a drawer, from its front and the gaps round it. Piece axes, nm. */
export interface Opening {
  readonly drawer: Drawer;
  readonly across: Span;
  readonly up: Span;
}
export interface Model {
  readonly piece: Piece;
  readonly standing: readonly Standing[];
  /** All that is not in a drawer. */
  readonly case: readonly Standing[];
  readonly openings: readonly Opening[];
  /** Overall box of wood, without hardware. */
  readonly overall: Box3;
  /** Where flat faces and edges of all parts lie along the three axes, nm; worked out when first asked for. */
  faces(): Planes;
}

/** A placed box as the box round it in the outer axes. */
export function placedBox(box: Box3, by: Part['place']): Box3 {
  const corners: Vec3[] = [];
  for (const x of box[0]) for (const y of box[1]) for (const z of box[2]) corners.push(place(by, [x, y, z]));
  return byAxis((axis) => hull(corners.map((c): Span => [c[axis], c[axis]])));
}
const hull = (spans: readonly Span[]): Span => [
  Math.min(...spans.map((s) => s[0])) + 0,
  Math.max(...spans.map((s) => s[1])) + 0,
];
/** The box round a leaning part as it is, its bevelled ends too; to the micrometre, as a mesh is no nearer. nm. */
function placedMesh(mesh: Mesh, by: Part['place']): Box3 {
  const corners: Vec3[] = [];
  for (let i = 0; i < mesh.positions.length; i += 3)
    corners.push(
      place(
        by,
        byAxis((a) => (mesh.positions[i + a] as number) * NM_PER_MM),
      ),
    );
  const near = (x: number): number => Math.round(x / 1000) * 1000 + 0;
  return byAxis((axis) => hull(corners.map((c): Span => [near(c[axis]), near(c[axis])])));
}
/** The box round several boxes; they must not be none. */
export const round = (boxes: readonly Box3[]): Box3 => byAxis((axis) => hull(boxes.map((b) => b[axis])));

function facesOf(piece: Piece, solids: Solids): Planes {
  const recipes = new Map(solids.parts.map((s) => [s.id, s.recipe]));
  const all = piece.parts.flatMap((p) => {
    const recipe = recipes.get(p.id);
    return recipe ? [planesOf(recipe, p.place)] : [];
  });
  return [0, 1, 2].map((axis) => new Set(all.flatMap((p) => [...p[axis as Axis]]))) as unknown as Planes;
}
/** Where everything stands: read once, used by all sheets. */
export function modelOf(piece: Piece, solids: Solids): Model {
  const bounds = new Map(solids.parts.map((s) => [s.id, s.bounds]));
  const meshes = new Map(solids.parts.map((s) => [s.id, s.mesh]));
  const standing = piece.parts.map((part): Standing => {
    const shoulder = byAxis((axis): Span => [0, part.size[axis].value]);
    const whole = bounds.get(part.id);
    const scaled = whole && byAxis((axis): Span => [whole[axis][0] * NM_PER_MM, whole[axis][1] * NM_PER_MM]);
    const square = isSquare(part.place);
    const mesh = meshes.get(part.id);
    if (!square && mesh) {
      const box = placedMesh(mesh, part.place);
      return { part, square, shoulder: box, whole: box };
    }
    return {
      part,
      square,
      shoulder: placedBox(shoulder, part.place),
      whole: placedBox(scaled ?? shoulder, part.place),
    };
  });
  const by = new Map(standing.map((s) => [s.part.id, s]));
  let faces: Planes | undefined;
  const openings = piece.drawers.flatMap((drawer): Opening[] => {
    const front = by.get(drawer.front);
    if (!front) return [];
    const { left, right, bottom, top } = drawer.gaps;
    const [x, , z] = front.shoulder;
    return [{ drawer, across: [x[0] - left.value, x[1] + right.value], up: [z[0] - bottom.value, z[1] + top.value] }];
  });
  return {
    piece,
    standing,
    case: standing.filter((s) => s.part.drawer === undefined),
    openings,
    overall: round(standing.map((s) => (s.square ? s.shoulder : s.whole))),
    faces: () => (faces ??= facesOf(piece, solids)),
  };
}

/** One stretch along a probe: a member, a drawer's opening, or air. nm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly kind: 'member' | 'opening' | 'air';
  /** Part id, or drawer id. */
  readonly id?: string;
}

/** How a probe looks: along which axis it runs, which axis it is held at, and from which side one looks. */
export interface Look {
  readonly axis: Axis;
  readonly held: Axis;
  readonly sight: Axis;
  /** Sign of the sight axis toward the eye. */
  readonly eye: -1 | 1;
}
/** Heights and widths as seen from the front; heights and depths as seen from the right. */
export const HEIGHTS: Look = { axis: 2, held: 0, sight: 1, eye: -1 };
export const WIDTHS: Look = { axis: 0, held: 2, sight: 1, eye: -1 };
export const DEPTHS: Look = { axis: 1, held: 2, sight: 0, eye: 1 };

/**
 * What is met on the face of the piece along a line: of several parts one behind another the nearest to the eye counts,
 * and only what lies in the near third of the piece (our default). Openings are met from the front only.
 */
export function probe(model: Model, look: Look, at: number): Stretch[] {
  const { axis, held, sight, eye } = look;
  const near = (b: Box3): number => (eye > 0 ? -b[sight][1] : b[sight][0]);
  const [low, high] = model.overall[sight];
  const zone = (eye > 0 ? -high : low) + (high - low) / 3;
  const openings = sight === 1 ? model.openings.filter((o) => inside(held === 0 ? o.across : o.up, at)) : [];
  const span = (o: Opening): Span => (axis === 0 ? o.across : o.up);
  const members = model.case.filter((s) => s.square && inside(s.shoulder[held], at) && near(s.shoulder) < zone);
  const spans = [...openings.map(span), ...members.map((m) => m.shoulder[axis]), model.overall[axis]];
  const cuts = [...new Set(spans.flat())].sort((a, b) => a - b);
  const out: Stretch[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1] as number, cuts[i] as number];
    const mid = (from + to) / 2;
    const opening = openings.find((o) => inside(span(o), mid));
    const member = members
      .filter((m) => inside(m.shoulder[axis], mid))
      .sort((a, b) => near(a.shoulder) - near(b.shoulder) || (a.part.id < b.part.id ? -1 : 1))[0];
    const next: Stretch = opening
      ? { from, to, kind: 'opening', id: opening.drawer.id }
      : member
        ? { from, to, kind: 'member', id: member.part.id }
        : { from, to, kind: 'air' };
    const last = out.at(-1);
    if (last && last.kind === next.kind && last.id === next.id) out[out.length - 1] = { ...last, to };
    else out.push(next);
  }
  return out;
}
/** A probe without the air at its two ends. */
export function trimmed(stretches: readonly Stretch[]): Stretch[] {
  const solid = stretches.map((s) => s.kind !== 'air');
  const first = solid.indexOf(true);
  return first < 0 ? [] : stretches.slice(first, solid.lastIndexOf(true) + 1);
}
const inside = (s: Span, x: number): boolean => s[0] < x && x < s[1];

/** The place to probe that tells most: most openings, then most members, then nearest the right. */
export function bestProbe(model: Model, look: Look, candidates: readonly number[]): number {
  const ranked = candidates
    .map((at) => {
      const stretches = probe(model, look, at);
      const count = (kind: Stretch['kind']): number => stretches.filter((s) => s.kind === kind).length;
      return { at, openings: count('opening'), members: count('member') };
    })
    .sort((a, b) => b.openings - a.openings || b.members - a.members || b.at - a.at);
  return ranked[0]?.at ?? 0;
}
/** Where a probe may stand: the middles of openings, and a little past the middle of the piece. */
export const middles = (model: Model, axis: 0 | 2): number[] => {
  const mids = model.openings.map((o) => (axis === 0 ? (o.across[0] + o.across[1]) / 2 : (o.up[0] + o.up[1]) / 2));
  const [low, high] = model.overall[axis];
  return [...new Set([...mids, low + (high - low) * 0.55])];
};

/**
 * Where the two cutting planes stand: A–A square to `across` through a drawer, B–B square to `up`; clear of pulls, and never
 * along a face of a part, a socket or a tail. nm.
 */
export function cuttingPlanes(model: Model, pulls: readonly Box3[]): { across: number; up: number } {
  const pick = (axis: 0 | 2, spans: readonly Span[], fractions: readonly number[]): number => {
    const all = spans.length > 0 ? spans : [model.overall[axis]];
    const faces = [...model.faces()[axis]];
    const clear = (at: number): boolean =>
      !pulls.some((p) => at > p[axis][0] - CLEARANCE && at < p[axis][1] + CLEARANCE) &&
      !model.case.some((s) => edges(s.shoulder[axis]).some((e) => Math.abs(e - at) < 4 * NM_PER_MM));
    const across = (at: number): boolean => !faces.some((f) => Math.abs(f - at) < GRAZE);
    const nudged = (at: number): number[] => NUDGES.map((by) => at + by * NM_PER_MM);
    const places = all.flatMap((s) => fractions.map((f) => s[0] + (s[1] - s[0]) * f)).filter(clear);
    const first = all[0] as Span;
    const middle = first[0] + (first[1] - first[0]) * 0.55;
    const at =
      places.flatMap(nudged).find((p) => clear(p) && across(p)) ?? places[0] ?? nudged(middle).find(across) ?? middle;
    return Math.round(at);
  };
  const right = [...model.openings].sort((a, b) => width(a.across) - width(b.across) || b.across[1] - a.across[1]);
  const byHeight = [...model.openings].sort((a, b) => b.up[1] - a.up[1] || b.across[1] - a.across[1]);
  const middle = byHeight.slice(Math.floor((byHeight.length - 1) / 2));
  return {
    across: pick(
      0,
      right.map((o) => o.across),
      [0.78, 0.7, 0.62, 0.35, 0.25],
    ),
    up: pick(
      2,
      middle.map((o) => o.up),
      middle.length > 0 ? [0.75, 0.65, 0.3] : [0.86, 0.9, 0.8, 0.7, 0.6, 0.4],
    ),
  };
}
const edges = (s: Span): number[] => [s[0], s[1]];
/** A plane this near a face would run along it, nm; planes are moved by so much to be clear of faces, mm (our defaults). */
const GRAZE = 0.8 * NM_PER_MM;
const NUDGES = [0, 2, -2, 4, -4];
/** Clear of a pull by this much: our default. */
const CLEARANCE = 10 * NM_PER_MM;
