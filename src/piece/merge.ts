import { faceAxis, faceSign, inFace } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis, meet, withSpan } from '../geom/box.js';
import { intoBore, intoBox, leans } from './leaning-bore.js';
import { boxBounds } from '../words/slant.js';
import type { BoreCut, BoxCut, Cut, DovetailCut, TailsCut, TenonCut } from '../words/cut.js';

/** The smallest box about what a cut takes (own axes, nm; far ends unbounded). Undefined for pencil lines and shapes, which cannot clash, and for leaning holes, which are no box. */
export function bounds(cut: Cut, size: Vec3): Box3 | undefined {
  const from = (face: Parameters<typeof faceSign>[0], depth: number): Span =>
    faceSign(face) < 0 ? [0, depth] : [size[faceAxis(face)] - depth, size[faceAxis(face)]];
  switch (cut.shape) {
    case 'box':
      return boxBounds(cut);
    case 'dovetail': {
      const wide: Span = [Math.min(cut.atFace[0], cut.atFloor[0]), Math.max(cut.atFace[1], cut.atFloor[1])];
      const deep = from(cut.face, cut.depth);
      return byAxis((a) => (a === cut.run ? cut.runSpan : a === cut.taper ? wide : deep)) as Box3;
    }
    case 'bore': {
      if (cut.tilt) return undefined;
      const [u, v] = inFace(cut.face);
      const r = Math.max(cut.diameter, cut.seat?.diameter ?? 0) / 2;
      const deep = from(cut.face, cut.depth === 'through' ? size[faceAxis(cut.face)] : cut.depth);
      return byAxis((a) =>
        a === u ? [cut.at[0] - r, cut.at[0] + r] : a === v ? [cut.at[1] - r, cut.at[1] + r] : deep,
      ) as Box3;
    }
    default:
      return undefined;
  }
}

/** Do two cuts in one part want the same wood? `shared`: one pass makes both, so that it does no harm. */
export function clash(a: Cut, b: Cut, size: Vec3): 'no' | 'shared' | 'yes' {
  if ((a.shape === 'tails' || a.shape === 'tenon') && (b.shape === 'tails' || b.shape === 'tenon'))
    return a.end === b.end && !merged(a, b) ? 'yes' : 'no';
  if (leans(a)) return leaningClash(a, b, size);
  if (leans(b)) return leaningClash(b, a, size);
  const p = bounds(a, size);
  const q = bounds(b, size);
  if (p === undefined || q === undefined || byAxis((x) => meet(p[x], q[x])).includes(undefined)) return 'no';
  return merged(a, b) ? 'shared' : 'yes';
}

function leaningClash(a: BoreCut, b: Cut, size: Vec3): 'no' | 'yes' {
  if (b.shape === 'bore') return intoBore(a, b, size) ? 'yes' : 'no';
  const box = bounds(b, size);
  return box && intoBox(a, size, box) ? 'yes' : 'no';
}

const same = (a: Span, b: Span): boolean => a[0] === b[0] && a[1] === b[1];
const hull = (a: Span, b: Span): Span => [Math.min(a[0], b[0]), Math.max(a[1], b[1])];
const mates = (a: Cut, b: Cut): readonly string[] => [...a.mates, ...b.mates.filter((m) => !a.mates.includes(m))];

/** Two cuts that one pass makes (the same section in line; tongues at the same end): the one cut that both are, or undefined. */
export function merged(a: Cut, b: Cut): Cut | undefined {
  if (a.shape === 'dovetail' && b.shape === 'dovetail') return oneSocket(a, b);
  if (a.shape === 'box' && b.shape === 'box') return oneTrench(a, b);
  if (a.shape === 'tails' && b.shape === 'tails') return oneTail(a, b);
  if (a.shape === 'tenon' && b.shape === 'tenon') return oneTenon(a, b);
  return undefined;
}
const touchOrMeet = (a: Span, b: Span): boolean => a[0] <= b[1] && b[0] <= a[1];

function oneSocket(a: DovetailCut, b: DovetailCut): DovetailCut | undefined {
  const alike =
    a.as === b.as &&
    a.face === b.face &&
    a.run === b.run &&
    a.taper === b.taper &&
    a.depth === b.depth &&
    same(a.atFace, b.atFace) &&
    same(a.atFloor, b.atFloor);
  if (!alike || !touchOrMeet(a.runSpan, b.runSpan)) return undefined;
  return { ...a, runSpan: hull(a.runSpan, b.runSpan), mates: mates(a, b) };
}
function oneTrench(a: BoxCut, b: BoxCut): BoxCut | undefined {
  if (a.as !== b.as || a.face !== b.face || a.as === 'mortise') return undefined;
  const differ = ([0, 1, 2] as const).filter((x) => !same(a.at[x], b.at[x]));
  const [run] = differ;
  if (run === undefined) return { ...a, mates: mates(a, b) };
  if (differ.length > 1 || run === faceAxis(a.face) || !touchOrMeet(a.at[run], b.at[run])) return undefined;
  return { ...a, at: withSpan(a.at, run, hull(a.at[run], b.at[run])), mates: mates(a, b) };
}
/** One tail along an end that enters two parts in line: kept between them too. */
function oneTail(a: TailsCut, b: TailsCut): TailsCut | undefined {
  const alike =
    a.end === b.end &&
    a.base === b.base &&
    a.taper === b.taper &&
    a.tails.length === b.tails.length &&
    a.tails.every((t, i) => {
      const u = b.tails[i];
      return u !== undefined && same(t.atBase, u.atBase) && same(t.atEnd, u.atEnd);
    });
  return alike ? { ...a, keep: hull(a.keep, b.keep), mates: mates(a, b) } : undefined;
}
function oneTenon(a: TenonCut, b: TenonCut): TenonCut | undefined {
  if (a.end !== b.end || a.shoulder !== b.shoulder || a.as !== b.as || a.mitre || b.mitre) return undefined;
  const key = (t: TenonCut['tongues'][number]): string => [...t.a, ...t.b, t.length].join();
  const have = new Set(a.tongues.map(key));
  const tongues = [...a.tongues, ...b.tongues.filter((t) => !have.has(key(t)))];
  return { ...a, tongues, mates: mates(a, b) };
}

/** Puts a cut among a part's cuts, as one with the cut that makes it already, where there is one. */
export function addCut(cuts: Cut[], cut: Cut): void {
  const k = cuts.findIndex((c) => c.rank === cut.rank && merged(c, cut) !== undefined);
  const one = k < 0 ? undefined : merged(cuts[k] as Cut, cut);
  if (one) cuts[k] = one;
  else cuts.push(cut);
}
