import type { Axis, Face } from '../geom/axis.js';
import { AXES, AXIS_NAMES, faceOf } from '../geom/axis.js';
import type { Box3, Span } from '../geom/box.js';
import { meet } from '../geom/box.js';
import type { Claim, JointKind, Member, Site, World } from '../joints/joint.js';
import { nm } from '../lengths/length.js';
import type { Frame } from '../words/mapCut.js';
import { handOf, invert, mapBox, mapFace } from '../words/mapCut.js';
import type { Body } from './body.js';
import type { Leans } from './lean-site.js';

/** Where two parts meet: the axis of the way in, which way it points, and the plane they share (or the overlap's). */
export interface Meeting {
  readonly axis: Axis;
  readonly sign: 1 | -1;
  readonly plane: number;
}

/** The parts touch when one face of each lies in the same plane and they share an area of it. */
export function touching(e: Box3, r: Box3): Meeting | undefined {
  for (const axis of AXES) {
    const beside = AXES.every((a) => a === axis || meet(e[a], r[a]) !== undefined);
    if (!beside) continue;
    if (e[axis][1] === r[axis][0]) return { axis, sign: 1, plane: e[axis][1] };
    if (e[axis][0] === r[axis][1]) return { axis, sign: -1, plane: e[axis][0] };
  }
  return undefined;
}

/** Two parts cross when their boxes overlap and each sticks out of the other; the way in is along the axis in which both are wide. */
export function crossing(e: Body, r: Body, from: Face | undefined): Meeting | undefined {
  if (AXES.some((a) => meet(e.box[a], r.box[a]) === undefined)) return undefined;
  const axis = (3 - e.length - r.length) as Axis;
  if (e.length === r.length) return undefined;
  const above = from === undefined ? e.box[axis][1] >= r.box[axis][1] : from === faceOf(axis, 1);
  // Coming in from the high side, the way in points down.
  return above ? { axis, sign: -1, plane: r.box[axis][1] } : { axis, sign: 1, plane: r.box[axis][0] };
}

/** How far apart two boxes stand: the axes with air (or wood) between them, for the message. */
export function apart(e: Box3, r: Box3, say: (v: number) => string): { readonly gap: number; readonly words: string } {
  const gaps = AXES.map((a) => ({ a, gap: Math.max(r[a][0] - e[a][1], e[a][0] - r[a][1]) })).filter((g) => g.gap > 0);
  if (gaps.length === 0) {
    const deepest = AXES.map((a) => ({ a, by: Math.min(e[a][1], r[a][1]) - Math.max(e[a][0], r[a][0]) })).sort(
      (p, q) => p.by - q.by || p.a - q.a,
    )[0];
    if (!deepest || deepest.by === 0) return { gap: 0, words: 'they meet only along an edge' };
    return { gap: 0, words: `they stand ${say(deepest.by)} in each other ${AXIS_NAMES[deepest.a]}` };
  }
  const total = gaps.reduce((s, g) => s + g.gap, 0);
  return { gap: total, words: `the gap is ${gaps.map((g) => `${say(g.gap)} ${AXIS_NAMES[g.a]}`).join(' and ')}` };
}

export interface Placed {
  readonly site: Site;
  /** From the site's axes to the piece's. */
  readonly frame: Frame;
  /** Where the parts lean against one another: then `frame` is only the nearest square one. */
  readonly leans?: Leans;
}

/** Axes 1 and 2 of a site: thickness and width of the entering part, or what is left of them when one is the way in. */
function crossAxes(e: Body, into: Axis): readonly [Axis, Axis] {
  const left = [e.thickness, e.width, e.length].filter((a) => a !== into);
  return [left[0] as Axis, left[1] as Axis];
}

/** The site of a joint where two parts meet: its frame and everything a joint may ask. */
export function siteAt(id: string, joint: string, e: Body, r: Body, at: Meeting, world: World): Placed {
  const [thick, wide] = crossAxes(e, at.axis);
  const shift: [number, number, number] = [0, 0, 0];
  shift[at.axis] = at.plane;
  shift[thick] = e.box[thick][0];
  shift[wide] = e.box[wide][0];
  const frame: Frame = { to: [at.axis, thick, wide], sign: [at.sign, 1, 1], shift };
  const back = invert(frame);
  const shared = (a: Axis): Span => meet(mapBox(back, e.box)[a], mapBox(back, r.box)[a]) ?? [0, 0];
  const site: Site = {
    id,
    joint,
    hand: handOf(frame),
    entering: member(e, back),
    receiving: member(r, back),
    contact: { thick: shared(1), wide: shared(2) },
    direction: (piece) => mapFace(back, piece),
    lean: 0,
    world,
    claims: [],
  };
  return { site, frame };
}
export const withClaims = (site: Site, claims: readonly Claim[]): Site => ({ ...site, claims });

function member(b: Body, back: Frame): Member {
  return {
    part: b.id,
    box: mapBox(back, b.box),
    material: b.stock.kind === 'sheet' ? 'sheet' : 'solid',
    ...(b.grain === undefined ? {} : { grain: back.to[b.grain] }),
    ...(b.stock.thickness === undefined ? {} : { measured: nm(b.stock.thickness) }),
  };
}

/** The way two parts must stand for a kind of joint, in words. */
export const STANCE_WORDS: Readonly<Record<JointKind['stance'], string>> = {
  butt: 'an end or edge of the one must lie against the other',
  corner: 'an end of the one must lie against the other, at a corner',
  cross: 'the two must cross',
  face: 'a face of the one must lie against a face of the other',
  edge: 'it joins the staves of one part',
};
