import type { Axis } from '../../geom/axis.js';
import { faceAxis, faceSign, inFace } from '../../geom/axis.js';
import { byAxis, meet, middle, width, type Box3, type Span } from '../../geom/box.js';
import type { Cut } from '../../words/cut.js';
import { sectionStiffness, type Bar, type Strip } from '../../wood/beam.js';
import { across, type Level, type Member } from './frame.js';

const M = 1e-9;

/** What a cut takes, as a box in own axes; undefined for what weakens a section little (bores, arrises, tapers, marks). */
function takenBy(cut: Cut, size: (a: Axis) => number): Box3 | undefined {
  switch (cut.shape) {
    case 'box':
      return cut.at;
    case 'dovetail': {
      const face = faceAxis(cut.face);
      const wide: Span = [Math.min(cut.atFace[0], cut.atFloor[0]), Math.max(cut.atFace[1], cut.atFloor[1])];
      const side = inFace(cut.face).find((a) => a !== cut.run);
      const deep: Span = faceSign(cut.face) > 0 ? [size(face) - cut.depth, size(face)] : [0, cut.depth];
      return byAxis((a) =>
        a === face ? deep : a === cut.run ? cut.runSpan : a === side ? wide : [0, size(a)],
      ) as Box3;
    }
    case 'arc': {
      // The whole rise over the whole of the arc: on the safe side.
      const face = faceAxis(cut.face);
      const deep: Span = faceSign(cut.face) > 0 ? [size(face) - cut.rise, size(face)] : [0, cut.rise];
      return byAxis((a) => (a === face ? deep : a === cut.along ? cut.over : [0, size(a)])) as Box3;
    }
    default:
      return undefined;
  }
}

/** What is taken from a member, in piece axes, nm, within its shoulder box. */
export function takenFrom(m: Member): Box3[] {
  const { part, at, box } = m;
  if (!at) return [];
  const size = (a: Axis): number => part.size[a].value;
  return part.cuts.flatMap((cut): Box3[] => {
    const own = takenBy(cut, size);
    if (!own) return [];
    const spans = byAxis((a) => {
      const s = own[at.own[a]];
      const low = at.sign[a] > 0 ? box[a][0] + s[0] : box[a][1] - s[1];
      return meet([low, low + width(s)], box[a]);
    });
    return spans.every((s) => s !== undefined) ? [spans as unknown as Box3] : [];
  });
}

/** A member's section along `a`, other figures than its own where a remedy tries them. */
export interface Piece1 {
  readonly member: Member;
  readonly modulus: number;
  /** Another height, m. */
  readonly height?: number;
}
const stripsAt = (p: Piece1, a: Level, x: number, taken: readonly Box3[]): Strip[] => {
  const { member, modulus } = p;
  const b = across(a);
  const low = member.box[2][0] * M;
  const high = p.height === undefined ? member.box[2][1] * M : low + p.height;
  const [left, right] = member.box[b];
  const gone = taken
    .filter((t) => t[a][0] <= x && x <= t[a][1])
    .map((t) => {
      // A cut keeps its depth when the thickness changes: from the face that it opens to.
      const top = middle(t[2]) > middle(member.box[2]);
      const deep = Math.min(width(t[2]) * M, high - low);
      return { wide: t[b], low: top ? high - deep : low, high: top ? high : low + deep };
    });
  // Cuts may lie over one another: what is left is counted stretch by stretch of the breadth.
  const breaks = [left, right, ...gone.flatMap((g) => g.wide)].filter((y) => y >= left && y <= right);
  const sides = [...new Set(breaks)].sort((p, q) => p - q);
  return sides.slice(0, -1).flatMap((from, k): Strip[] => {
    const to = sides[k + 1] as number;
    const over = gone.filter((g) => g.wide[0] <= from && g.wide[1] >= to).sort((p, q) => p.low - q.low);
    const out: Strip[] = [];
    let at = low;
    for (const g of [...over, { low: high, high }]) {
      if (g.low > at) out.push({ modulus, breadth: (to - from) * M, low: at, high: g.low });
      at = Math.max(at, g.high);
    }
    return out;
  });
};

/**
 * Stiffness over [from, to] (nm along `a`) of members that bend together: glued ones as one section, loose ones side by
 * side. Stretches between the ends of cuts, in m from `from`.
 */
export function stiffnessOver(
  a: Level,
  [from, to]: Span,
  main: Piece1,
  others: readonly { readonly piece: Piece1; readonly glued: boolean }[],
): Bar['stiffness'] {
  const all = [main, ...others.map((o) => o.piece)].map((p) => ({ p, taken: takenFrom(p.member) }));
  const ends = all.flatMap(({ taken }) => taken.flatMap((t) => [t[a][0], t[a][1]]));
  const breaks = [...new Set([from, to, ...ends.filter((x) => x > from && x < to)])].sort((p, q) => p - q);
  const glued = (i: number): boolean => i === 0 || others[i - 1]?.glued === true;
  return breaks.slice(0, -1).map((low, i) => {
    const high = breaks[i + 1] as number;
    const x = (low + high) / 2;
    const strips = all.map(({ p, taken }) => stripsAt(p, a, x, taken));
    const one = sectionStiffness(strips.filter((_, k) => glued(k)).flat());
    const loose = strips.filter((_, k) => !glued(k)).reduce((s, own) => s + Math.max(0, sectionStiffness(own)), 0);
    return { from: (low - from) * M, to: (high - from) * M, ei: Math.max(1e-6, one + loose) };
  });
}
