import type { Axis, Face } from '../geom/axis.js';
import { faceAxis, faceOf, faceSign, inFace } from '../geom/axis.js';
import type { Span, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import type { Length } from '../lengths/length.js';
import { nm, snapUp } from '../lengths/length.js';
import type { BoreCut, BoxCut, Cut } from '../words/cut.js';
import { tidied } from '../words/slant.js';
import type { Leans } from './lean-site.js';

/**
 * A cut of a leaning joint in the receiving part's own axes: a box, sunk along the site's first axis, becomes a box whose
 * sides slant (mouth on the face, floor level with it and deep enough for every corner of what goes in); a hole square to
 * the face moves its mouth. Undefined for a shape that cannot be carried over. `thick`: the part along that face's axis.
 */
export function carried(cut: Cut, leans: Leans, thick: number, step: Length): Cut | undefined {
  if (cut.shape === 'box') return mortise(cut, leans, thick, step);
  return cut.shape === 'bore' && cut.tilt === undefined && cut.slot === undefined ? hole(cut, leans) : undefined;
}

function mortise(cut: BoxCut, { toReceiving, face }: Leans, thick: number, step: Length): BoxCut | undefined {
  const axis = faceAxis(face);
  const mouth = faceSign(face) < 0 ? 0 : thick;
  const inward = -faceSign(face);
  const [, deep] = cut.at[0];
  const line = (i: 0 | 1, j: 0 | 1): readonly [Vec3, Vec3] => [
    toReceiving([0, cut.at[1][i], cut.at[2][j]]),
    toReceiving([deep, cut.at[1][i], cut.at[2][j]]),
  ];
  const tips = ([0, 1] as const).flatMap((i) => ([0, 1] as const).map((j) => line(i, j)[1]));
  const depth = snapUp(nm(Math.max(...tips.map((t) => (t[axis] - mouth) * inward))), step);
  const at = (i: 0 | 1, j: 0 | 1, level: number): Vec3 => {
    const [p, q] = line(i, j);
    const k = (level - p[axis]) / (q[axis] - p[axis]);
    return byAxis((a) => p[a] + k * (q[a] - p[a]));
  };
  const base = at(0, 0, mouth);
  const less = (v: Vec3): Vec3 => byAxis((a) => v[a] - base[a]);
  const edges = [less(at(1, 0, mouth)), less(at(0, 1, mouth))] as const;
  const [u, v] = inFace(face);
  // Which edge of the mouth runs along which axis of the face.
  const [alongU, alongV] = Math.abs(edges[0][u]) >= Math.abs(edges[0][v]) ? edges : [edges[1], edges[0]];
  const floor = less(at(0, 0, mouth + inward * depth));
  const extent = (a: Axis, by: number): Span => {
    const [x, y] = [nm(base[a]), nm(base[a] + by)];
    return x <= y ? [x, y] : [y, x];
  };
  const side = (a: Axis, by: number): Face => faceOf(a, by);
  const slants = [
    { of: side(u, alongU[u]), toward: faceOf(v, 1), by: nm(alongU[v]) },
    { of: side(v, alongV[v]), toward: faceOf(u, 1), by: nm(alongV[u]) },
    { of: faceOf(axis, inward), toward: faceOf(u, 1), by: nm(floor[u]) },
    { of: faceOf(axis, inward), toward: faceOf(v, 1), by: nm(floor[v]) },
  ];
  const box = byAxis((a): Span => {
    if (a === axis) return inward > 0 ? [mouth, mouth + depth] : [mouth - depth, mouth];
    return a === u ? extent(u, alongU[u]) : extent(v, alongV[v]);
  });
  return tidied({ ...cut, face, at: box, slants });
}

function hole(cut: BoreCut, { toReceiving, face }: Leans): BoreCut {
  const at = toReceiving([0, cut.at[0], cut.at[1]]);
  const [u, v] = inFace(face);
  return { ...cut, face, at: [nm(at[u]), nm(at[v])] };
}
