import { AXES, faceAxis, faceSign, opposite } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import type { BoxCut, Slant } from './cut.js';
import { called } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { fig } from './span.js';

/** The eight corners of a box with some of its sides moved along themselves; low before high, the first axis fastest. */
export function slantedCorners(at: Box3, slants: readonly Slant[]): Vec3[] {
  return [0, 1, 2, 3, 4, 5, 6, 7].map((i) => {
    const end = (axis: 0 | 1 | 2): 0 | 1 => ((i >> axis) & 1) as 0 | 1;
    const corner = byAxis((a) => at[a][end(a)]);
    for (const { of, toward, by } of slants)
      if (end(faceAxis(of)) === (faceSign(of) > 0 ? 1 : 0)) corner[faceAxis(toward)] += faceSign(toward) * by;
    return corner;
  });
}
/** What a box cut takes, at the most; own axes, nm. */
export function boxBounds(cut: BoxCut): Box3 {
  if (!cut.slants) return cut.at;
  const corners = slantedCorners(cut.at, cut.slants);
  return byAxis((a) => [Math.min(...corners.map((c) => c[a])), Math.max(...corners.map((c) => c[a]))] as const);
}

/** `floor 5/64 nearer TOP end`: how a mortise leans, as it is laid out on the face and its floor. */
export const saySlant = (f: Frame, cut: BoxCut, s: Slant): string =>
  `${s.of === opposite(cut.face) ? 'floor' : `${f.words[s.of]} side`} ${fig(f, s.by)} nearer ${called(f, s.toward)}`;

/** Reads one such clause of a cut into `face`. */
export function readSlant(r: Reader, face: Face): Slant | undefined {
  return r.attempt(() => {
    const of = r.take('floor') ? opposite(face) : r.face();
    if (of === undefined || (of !== opposite(face) && !r.take('side'))) return undefined;
    const by = r.figure();
    const toward = by !== undefined && r.take('nearer') ? r.face() : undefined;
    return by === undefined || toward === undefined ? undefined : { of, toward, by };
  });
}
/**
 * A box cut with its slants told in one way, so that equal cuts are equal data: the floor and the high sides move, the mouth
 * and the low sides stay; none of nothing, none backwards, always in one order.
 */
export function tidied(cut: BoxCut): BoxCut {
  if (!cut.slants) return cut;
  const at: [Span, Span, Span] = [...cut.at];
  const slants = cut.slants.map((s): Slant => {
    if (faceAxis(s.of) === faceAxis(cut.face) || faceSign(s.of) > 0) return s;
    const [axis, by] = [faceAxis(s.toward), faceSign(s.toward) * s.by];
    at[axis] = [at[axis][0] + by, at[axis][1] + by];
    return { of: opposite(s.of), toward: s.toward, by: -s.by };
  });
  const said = slants
    .filter((s) => s.by !== 0)
    .map((s) => (s.by < 0 ? { of: s.of, toward: opposite(s.toward), by: -s.by } : s))
    .sort((p, q) => rank(p) - rank(q));
  const { slants: _given, ...rest } = cut;
  return { ...rest, at, ...(said.length > 0 ? { slants: said } : {}) };
}
const rank = (s: Slant): number => AXES.indexOf(faceAxis(s.of)) * 3 + faceAxis(s.toward);
