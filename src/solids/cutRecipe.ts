import { bulgeOf, cosine, sine, tangent } from '../geom/angle.js';
import { faceAxis, faceSign, inFace, opposite, others, third, type Axis, type Face } from '../geom/axis.js';
import { byAxis, middle, span, withSpan, type Box3, type Span, type Vec3 } from '../geom/box.js';
import { keyOf } from '../geom/key.js';
import { outer } from '../geom/outline.js';
import type { Placement } from '../geom/placement.js';
import type { Outline, Recipe } from '../geom/recipe.js';
import type { Part } from '../piece/piece.js';
import type {
  ArcCut,
  ArrisCut,
  BoreCut,
  Cut,
  DovetailCut,
  OutlineCut,
  PlaneCut,
  TailsCut,
  TaperCut,
  TenonCut,
} from '../words/cut.js';
import { slantedCorners } from '../words/slant.js';

/** How far a tool that takes "all beyond" reaches past the blank: 1 mm. It changes nothing in the wood. */
const PAST = 1_000_000;

const grown = (box: Box3, by: number): Box3 => byAxis((a) => [box[a][0] - by, box[a][1] + by]);
/** Coordinate of a face of a box along its axis. */
const plane = (box: Box3, face: Face): number => box[faceAxis(face)][faceSign(face) > 0 ? 1 : 0];
const vec = (...places: readonly (readonly [Axis, number])[]): Vec3 =>
  byAxis((a) => places.find(([axis]) => axis === a)?.[1] ?? 0);

interface Corner {
  readonly at: Vec3;
  readonly bulge?: number;
}
/**
 * A prism along `axis` whose outline is given by points in space (their coordinate along `axis` is not read). A bulge is
 * that of the stretch *to* the point, as seen with `right` to the right and `up` upward.
 */
function prism(axis: Axis, over: Span, corners: readonly Corner[], right: Axis = others(axis)[0]): Recipe {
  const [u, v] = others(axis);
  const turn = right === u ? 1 : -1;
  const outline: Outline = corners.map((c) => {
    const to = [c.at[u], c.at[v]] as const;
    return c.bulge === undefined ? { to } : { to, bulge: c.bulge * turn };
  });
  return { op: 'prism', axis, from: over[0], to: over[1], outlines: [outer(outline)] };
}

function dovetail(cut: DovetailCut, blank: Box3): Recipe {
  const deep = faceAxis(cut.face);
  const mouth = plane(blank, cut.face);
  const floor = mouth - faceSign(cut.face) * cut.depth;
  const corner = (d: number, t: number): Corner => ({ at: vec([deep, d], [cut.taper, t]) });
  return prism(cut.run, cut.runSpan, [
    corner(mouth, cut.atFace[0]),
    corner(mouth, cut.atFace[1]),
    corner(floor, cut.atFloor[1]),
    corner(floor, cut.atFloor[0]),
  ]);
}
/** All of the blank beyond `from` at an end, with something to spare all round. */
const beyond = (blank: Box3, end: Face, from: number): Box3 =>
  withSpan(grown(blank, PAST), faceAxis(end), span(from, plane(blank, end) + faceSign(end) * PAST));

function tails(cut: TailsCut, blank: Box3): Recipe {
  const along = faceAxis(cut.end);
  const tip = plane(blank, cut.end);
  const corner = (d: number, t: number): Corner => ({ at: vec([along, d], [cut.taper, t]) });
  const kept = cut.tails.map((t) =>
    prism(third(along, cut.taper), cut.keep, [
      corner(cut.base, t.atBase[0]),
      corner(cut.base, t.atBase[1]),
      corner(tip, t.atEnd[1]),
      corner(tip, t.atEnd[0]),
    ]),
  );
  return { op: 'cut', from: { op: 'box', at: beyond(blank, cut.end, cut.base) }, tools: kept };
}
function tenon(cut: TenonCut, blank: Box3): Recipe | undefined {
  const [along, sign] = [faceAxis(cut.end), faceSign(cut.end)];
  const [a, b] = others(along);
  // A haunch fills the groove beside the mortise and meets no other tenon: its end stays square.
  const kept = cut.tongues.map((tongue): Recipe => {
    const tip = cut.shoulder + sign * tongue.length;
    // From behind a shoulder that lies aslant: the tongue runs on into the part.
    const root = cut.slope ? plane(blank, opposite(cut.end)) : cut.shoulder;
    const straight = withSpan(withSpan(withSpan(blank, along, span(root, tip)), a, tongue.a), b, tongue.b);
    return cut.mitre && !tongue.haunch
      ? mitred(straight, cut.mitre.long, along, sign, tongue.length)
      : { op: 'box', at: straight };
  });
  if (!cut.slope) return { op: 'cut', from: { op: 'box', at: beyond(blank, cut.end, cut.shoulder) }, tools: kept };
  const point = byAxis((x) => (x === along ? cut.shoulder : middle(blank[x])));
  const waste = halfBox({ point, normal: cut.slope }, blank);
  return waste && { op: 'cut', from: waste, tools: kept };
}
/** A tongue whose end is mitred at 45 degrees: full length at the side `long`. */
function mitred(box: Box3, long: Face, along: Axis, sign: number, length: number): Recipe {
  const across = faceAxis(long);
  const toward = faceSign(long);
  const [shoulder, tip] = sign > 0 ? box[along] : [box[along][1], box[along][0]];
  const far = plane(box, long);
  const size = box[across][1] - box[across][0];
  const corner = (d: number, t: number): Corner => ({ at: vec([along, d], [across, t]) });
  const reach = Math.min(size, length);
  const corners = [corner(shoulder, far), corner(tip, far), corner(tip - sign * reach, far - toward * reach)];
  if (size < length) corners.push(corner(shoulder, far - toward * size));
  const axis = third(along, across);
  return prism(axis, box[axis], corners);
}
function taper(cut: TaperCut, blank: Box3): Recipe {
  const [deep, along] = [faceAxis(cut.face), faceAxis(cut.end)];
  const [face, end] = [plane(blank, cut.face), plane(blank, cut.end)];
  const corner = (d: number, f: number): Corner => ({ at: vec([along, d], [deep, f]) });
  const axis = third(deep, along);
  return prism(axis, grown(blank, PAST)[axis], [
    corner(cut.begin, face),
    corner(end, face),
    corner(end, face - faceSign(cut.face) * cut.off),
  ]);
}
/** A segment of a circle on its chord: bulge = rise / half the chord. */
function arc(cut: ArcCut, blank: Box3): Recipe {
  const deep = faceAxis(cut.face);
  const face = plane(blank, cut.face);
  const axis = third(deep, cut.along);
  const at = (a: number): Vec3 => vec([cut.along, a], [deep, face]);
  const bulge = (2 * cut.rise) / (cut.over[1] - cut.over[0]);
  // The stretch back from high to low lies above the chord with a positive bulge (anticlockwise, `along` to the right).
  const corners = [{ at: at(cut.over[1]) }, { at: at(cut.over[0]), bulge: -faceSign(cut.face) * bulge }];
  return prism(axis, grown(blank, PAST)[axis], corners, cut.along);
}
function bore(cut: BoreCut, blank: Box3): Recipe {
  const axis = faceAxis(cut.face);
  const [u, v] = inFace(cut.face);
  const sign = faceSign(cut.face);
  const mouth = vec([axis, plane(blank, cut.face)], [u, cut.at[0]], [v, cut.at[1]]);
  const lean = cut.tilt?.degrees ?? 0;
  const wide = Math.max(cut.diameter, cut.seat?.diameter ?? 0, cut.slot?.length ?? 0);
  const spare = lean === 0 ? 0 : PAST + Math.ceil(wide * Math.abs(tangent(lean)));
  const out = PAST + spare;
  const thick = blank[axis][1] - blank[axis][0];
  const deep = cut.depth === 'through' ? Math.ceil(thick / cosine(lean)) + out : cut.depth;
  // Upright at the origin: +axis goes into the wood when the face is the low one.
  const into = (from: number, to: number): Span => span(-sign * from, -sign * to);
  const holes = [round(axis, cut.diameter, into(-out, deep), cut.slot)];
  if (cut.seat) {
    const slot = cut.slot && { ...cut.slot, length: cut.slot.length + cut.seat.diameter - cut.diameter };
    holes.push(round(axis, cut.seat.diameter, into(-out, cut.seat.depth), slot));
  }
  const upright: Recipe = holes.length === 1 ? (holes[0] as Recipe) : { op: 'joined', of: holes };
  const rotation = cut.tilt
    ? leaning(axis, sign, faceAxis(cut.tilt.toward), faceSign(cut.tilt.toward), lean)
    : STRAIGHT;
  return { op: 'placed', by: { rotation, origin: mouth }, of: upright };
}
const STRAIGHT: Placement['rotation'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
/** A round or slotted hole about the line through the origin along `axis`. */
function round(axis: Axis, diameter: number, over: Span, slot: BoreCut['slot']): Recipe {
  const r = diameter / 2;
  if (!slot) return { op: 'turned', axis, centre: [0, 0, 0], profile: [[r, over[0]], [r, over[1]]] }; // prettier-ignore
  const side = third(axis, slot.axis);
  const reach = Math.max(0, slot.length / 2 - r);
  const corner = (along: number, across: number, bulge?: number): Corner => {
    const at = vec([slot.axis, along], [side, across]);
    return bulge === undefined ? { at } : { at, bulge };
  };
  return prism(
    axis,
    over,
    [corner(reach, -r), corner(reach, r, 1), corner(-reach, r), corner(-reach, -r, 1)],
    slot.axis,
  );
}
/** Turns the way in (-sign along `axis`) by `degrees` toward a side. */
function leaning(axis: Axis, sign: number, side: Axis, toward: number, degrees: number): Placement['rotation'] {
  const [c, s] = [cosine(degrees), sine(degrees)];
  // The unit vector `in` = -sign on `axis` goes to c * in + s * toward; `toward` goes to c * toward - s * in.
  const cross = s * toward * -sign;
  return byAxis((row) =>
    byAxis((col) => {
      if (row === col) return row === axis || row === side ? c : 1;
      if (row === side && col === axis) return cross;
      return row === axis && col === side ? -cross : 0;
    }),
  );
}
function arris(cut: ArrisCut, blank: Box3): Recipe {
  const [f, g] = cut.faces;
  const [a, b] = [faceAxis(f), faceAxis(g)];
  const [sa, sb] = [faceSign(f), faceSign(g)];
  const [pa, pb] = [plane(blank, f), plane(blank, g)];
  const corner = (da: number, db: number): Vec3 => vec([a, pa - sa * da], [b, pb - sb * db]);
  const quarter = bulgeOf(90) * sa * sb;
  // Seen with `a` to the right; from the point on `g` back to the point on `f`.
  const bulge = cut.as === 'chamfer' ? undefined : cut.as === 'round-over' ? -quarter : quarter;
  const last = { at: corner(0, cut.size) };
  const corners: Corner[] = [
    { at: corner(0, 0) },
    { at: corner(cut.size, 0) },
    bulge === undefined ? last : { ...last, bulge },
  ];
  return prism(third(a, b), cut.over, corners, a);
}
function outside(cut: OutlineCut, blank: Box3): Recipe {
  const axis = faceAxis(cut.face);
  const slab = grown(blank, PAST);
  const over: Span = [slab[axis][0] - PAST, slab[axis][1] + PAST];
  const kept: Recipe = { op: 'prism', axis, from: over[0], to: over[1], outlines: [outer(cut.keep)] };
  return { op: 'cut', from: { op: 'box', at: slab }, tools: [kept] };
}
/** What of a box lies on the side of a plane that its normal points to, as the hull of its corners. */
function halfBox(cut: Pick<PlaneCut, 'point' | 'normal' | 'within'>, blank: Box3): Recipe | undefined {
  const box = cut.within ?? grown(blank, PAST);
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => byAxis((a) => box[a][((i >> a) & 1) as 0 | 1]));
  const height = (p: Vec3): number => byAxis((a) => (p[a] - cut.point[a]) * cut.normal[a]).reduce((s, x) => s + x, 0);
  const points: Vec3[] = corners.filter((p) => height(p) >= 0);
  if (!corners.some((p) => height(p) > 0)) return undefined;
  corners.forEach((p, i) => {
    for (const bit of [1, 2, 4]) {
      const q = corners[i | bit] as Vec3;
      const [h, k] = [height(p), height(q)];
      if (i & bit || h * k >= 0) continue;
      points.push(byAxis((a) => p[a] + ((q[a] - p[a]) * h) / (h - k)));
    }
  });
  return { op: 'hull', points };
}

/**
 * What a cut takes away, as a solid in the part's own axes (nm); undefined for pencil lines and for a plane that misses.
 * `blank` is the shoulder box plus growth; "from the face" is from the blank's face.
 */
export function cutRecipe(cut: Cut, blank: Box3): Recipe | undefined {
  switch (cut.shape) {
    case 'box':
      return cut.slants ? { op: 'hull', points: slantedCorners(cut.at, cut.slants) } : { op: 'box', at: cut.at };
    case 'dovetail':
      return dovetail(cut, blank);
    case 'tails':
      return tails(cut, blank);
    case 'tenon':
      return tenon(cut, blank);
    case 'taper':
      return cut.off === 0 ? undefined : taper(cut, blank);
    case 'arc':
      return arc(cut, blank);
    case 'bore':
      return bore(cut, blank);
    case 'arris':
      return arris(cut, blank);
    case 'outline':
      return outside(cut, blank);
    case 'plane':
      return halfBox(cut, blank);
    case 'mark':
      return undefined;
  }
}
/** The shoulder box plus growth, own axes, nm. */
export const blankOf = (part: Pick<Part, 'size' | 'growth'>): Box3 =>
  byAxis((a): Span => [0 - part.growth[a][0], part.size[a].value + part.growth[a][1]]);

/** A part as its blank less its cuts. Tools are sorted by key, so equal parts share a recipe whatever made their cuts. */
export function partRecipe(part: Pick<Part, 'size' | 'growth' | 'cuts'>): Recipe {
  const blank = blankOf(part);
  const tools = part.cuts.map((cut) => cutRecipe(cut, blank)).filter((tool) => tool !== undefined);
  const sorted = tools
    .map((tool) => ({ tool, key: keyOf(tool) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .filter((t, i, all) => t.key !== all[i - 1]?.key);
  const from: Recipe = { op: 'box', at: blank };
  return sorted.length === 0 ? from : { op: 'cut', from, tools: sorted.map((t) => t.tool) };
}
