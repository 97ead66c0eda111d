import { arcCosine } from '../geom/angle.js';
import type { Axis, Face } from '../geom/axis.js';
import { AXES, FACES, faceAxis, faceSign, others } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis, meet, middle } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import { dot, place, shifted, turn, unplace, unturn } from '../geom/placement.js';
import type { Member, Site, World } from '../joints/joint.js';
import { nm } from '../lengths/length.js';
import type { Frame } from '../words/mapCut.js';
import { follow, handOf, invert, mapBox, mapFace, mapPoint, mapWay } from '../words/mapCut.js';
import type { Body } from './body.js';
import { originOf, sizesOf } from './body.js';
import type { Placed } from './site.js';

/** How the site of a joint lies in its two parts where they lean against one another. */
export interface Leans {
  /** From the site's axes to the entering part's own, and to the piece's. */
  readonly own: Frame;
  readonly toPiece: (p: Vec3) => Vec3;
  /** To the receiving part's own axes, and the face of it that is met. */
  readonly toReceiving: (p: Vec3) => Vec3;
  readonly face: Face;
}

/** A flat side of a part as it stands: a face of its box, or the bevel at an end. */
interface Side {
  readonly face: Face;
  readonly bevel: boolean;
  /** A point of it on the part's middle, and out of the wood; piece axes. */
  readonly point: Vec3;
  readonly normal: Vec3;
}
export const placeOf = (b: Body): Placement => b.place ?? shifted(originOf(b));
const along = (axis: Axis, by: number): Vec3 => byAxis((a) => (a === axis ? by : 0));

function sidesOf(b: Body): Side[] {
  const by = placeOf(b);
  const size = sizesOf(b);
  return FACES.map((face): Side => {
    const axis = faceAxis(face);
    const cut = b.cuts.find(
      (c) => c.shape === 'plane' && c.as === 'bevel' && axis === b.length && c.normal[axis] * faceSign(face) > 0.5,
    );
    if (cut?.shape === 'plane') return { face, bevel: true, point: place(by, cut.point), normal: turn(by, cut.normal) };
    const at = byAxis((a) => (a === axis ? (faceSign(face) < 0 ? 0 : size[a]) : size[a] / 2));
    return { face, bevel: false, point: place(by, at), normal: turn(by, along(axis, faceSign(face))) };
  });
}

/** Two planes count as one within this, nm: places are worked out in fractions of a nanometre and printed in micrometres. */
const NEAR = 1_000;
/** Normals that point against one another, as far as a double tells. */
const against = (a: Vec3, b: Vec3): boolean => dot(a, b) < -1 + 1e-9;

/** The sides at which two parts lie flat against one another. */
function touchingSides(e: Body, r: Body): readonly [Side, Side] | undefined {
  for (const p of sidesOf(e))
    for (const q of sidesOf(r)) {
      if (!against(p.normal, q.normal)) continue;
      const off = dot(
        q.normal,
        byAxis((a) => p.point[a] - q.point[a]),
      );
      if (Math.abs(off) <= NEAR && shared(e, p, r)) return [p, q];
    }
  return undefined;
}
/** What of the other part's box the corners of a side cover, along each of the other part's own axes. */
function shared(e: Body, side: Side, r: Body): Box3 | undefined {
  const [by, size, other] = [placeOf(e), sizesOf(e), sizesOf(r)];
  const own = unplace(by, side.point);
  const corners = [0, 1, 2, 3].map((i) =>
    unplace(
      placeOf(r),
      place(
        by,
        byAxis((a) => {
          const k = others(faceAxis(side.face)).indexOf(a);
          return k < 0 ? own[a] : (i >> k) & 1 ? size[a] : 0;
        }),
      ),
    ),
  );
  const at = byAxis((a): Span => [Math.min(...corners.map((c) => c[a])), Math.max(...corners.map((c) => c[a]))]);
  const flat = AXES.map((a) => at[a][1] - at[a][0]);
  const thin = flat.indexOf(Math.min(...flat));
  return AXES.every((a) => a === thin || meet(at[a], [0, other[a]]) !== undefined) ? (at as Box3) : undefined;
}

/**
 * The site of a joint between parts that lean against one another: its axes are the entering part's own, 0 at the place where
 * that part's middle line comes to the face it meets. The receiving part's box is what it is near that place. Undefined where
 * they do not lie flat against one another; the finding where this joint cannot be made so.
 */
export function leaningSite(id: string, joint: string, e: Body, r: Body, world: World): Placed | undefined {
  const met = touchingSides(e, r);
  if (!met) return undefined;
  const [p, q] = met;
  if (q.bevel) return undefined;
  const [out, back] = [placeOf(e), placeOf(r)];
  const axis = faceAxis(p.face);
  const [thick, wide] = [e.thickness, e.width, e.length].filter((a) => a !== axis) as [Axis, Axis];
  const contact = unplace(out, p.point);
  const own: Frame = {
    to: [axis, thick, wide],
    sign: [faceSign(p.face), 1, 1],
    shift: byAxis((a) => (a === axis ? nm(contact[a]) : 0)),
  };
  const home = invert(own);
  const toPiece = (v: Vec3): Vec3 => place(out, mapPoint(own, v));
  const toReceiving = (v: Vec3): Vec3 => unplace(back, toPiece(v));
  const normal = mapWay(
    home,
    unturn(
      out,
      byAxis((a) => -q.normal[a]),
    ),
  );
  const box = (b: Body): Box3 => mapBox(home, byAxis((a): Span => [0, sizesOf(b)[a]]) as Box3);
  const entering = member(e, box(e), home.to);
  const facing = (v: Vec3): Vec3 => unturn(back, turn(out, mapWay(own, v)));
  const receiving = beside(
    r,
    byAxis((a) => facing(along(a, 1))),
    [0, middle(entering.box[1]), middle(entering.box[2])],
    toReceiving,
  );
  const nearest = follow(nearestFrame(out), own);
  const site: Site = {
    id,
    joint,
    hand: handOf(nearest),
    entering,
    receiving,
    contact: {
      thick: meet(entering.box[1], receiving.box[1]) ?? entering.box[1],
      wide: meet(entering.box[2], receiving.box[2]) ?? entering.box[2],
    },
    direction: (piece) => mapFace(invert(nearest), piece),
    lean: leanOf(AXES.map((a) => facing(along(a, 1)))),
    ...(p.bevel ? { slope: normal } : {}),
    world,
    claims: [],
  };
  return { site, frame: nearest, leans: { own, toPiece, toReceiving, face: q.face } };
}

/** Less than this is no lean, degrees: 0.0001 over a yard is a hair's breadth. */
const LEAST_LEAN = 1e-4;
/** The most by which any of three directions leans from the axis nearest to it, degrees. */
function leanOf(ways: readonly Vec3[]): number {
  const most = Math.max(...ways.map((w) => arcCosine(Math.max(...AXES.map((k) => Math.abs(w[k]))))));
  return most < LEAST_LEAN ? 0 : most;
}
const member = (b: Body, box: Box3, to: readonly Axis[]): Member => ({
  part: b.id,
  box,
  material: b.stock.kind === 'sheet' ? 'sheet' : 'solid',
  ...(b.grain === undefined ? {} : { grain: to[b.grain] as Axis }),
  ...(b.stock.thickness === undefined ? {} : { measured: nm(b.stock.thickness) }),
});

/** The receiving part near a place of the site: how far its wood goes on along each axis of the site, nm. */
function beside(r: Body, ways: readonly Vec3[], at: Vec3, toReceiving: (v: Vec3) => Vec3): Member {
  const here = toReceiving(at);
  const size = sizesOf(r);
  const to: Axis[] = [0, 1, 2];
  const box = byAxis((a): Span => {
    const way = ways[a] as Vec3;
    const k = [...AXES].sort((x, y) => Math.abs(way[y]) - Math.abs(way[x]) || x - y)[0] as Axis;
    to[k] = a;
    const ends = [(0 - here[k]) / way[k], (size[k] - here[k]) / way[k]].map((d) => nm(at[a] + d));
    return [Math.min(...ends), Math.max(...ends)];
  }) as Box3;
  return member(r, box, to);
}

/** The signed exchange of axes nearest to how a part stands. */
function nearestFrame(by: Placement): Frame {
  const left = new Set<Axis>(AXES);
  const to = byAxis((a): Axis => {
    const way = turn(by, along(a, 1));
    const best = [...left].sort((x, y) => Math.abs(way[y]) - Math.abs(way[x]) || x - y)[0] as Axis;
    left.delete(best);
    return best;
  });
  const sign = byAxis((a): 1 | -1 => (turn(by, along(a, 1))[to[a]] < 0 ? -1 : 1));
  return { to, sign, shift: [0, 0, 0] };
}
