import { AXES, faceAxis, faceOf, faceSign, others } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Span, Vec3 } from '../geom/box.js';
import type { PlaneCut } from './cut.js';
import { called, clip, coordinate, distance, faceAt, isFull } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { b, t } from './say.js';
import type { Bare, ShapeWords } from './say.js';
import { fig, readSpan, saySpan } from './span.js';

const NAMES: Readonly<Record<PlaneCut['as'], string>> = { bevel: 'Bevel', flat: 'Flat' };

/** The side of the blank that the cut's face looks to most. */
function side(c: PlaneCut): Face {
  const axis = [...AXES].sort((p, q) => Math.abs(c.normal[q]) - Math.abs(c.normal[p]) || p - q)[0] as Axis;
  return faceOf(axis, c.normal[axis]);
}
/** Three arrises square to that side, each by the two faces that meet in it. */
const arrises = (axis: Axis): readonly (readonly [Face, Face])[] => {
  const [p, q] = others(axis);
  return [
    [faceOf(p, -1), faceOf(q, -1)],
    [faceOf(p, 1), faceOf(q, -1)],
    [faceOf(p, -1), faceOf(q, 1)],
  ];
};

/** A plane by where it crosses three long arrises, each measured from the side it takes wood from: marks that a maker can knife. */
export const planeWords: ShapeWords<PlaneCut> = {
  key: (c) => `plane|${c.id}`,
  print(group, f) {
    const c = group[0] as PlaneCut;
    const end = side(c);
    const name = `${NAMES[c.as]},`;
    const text = ` ${called(f, end)}: to marks on three arrises, from ${called(f, end)}: ${sayMarks(f, c, end)}${within(f, c)}.`;
    return { name, runs: [b(name), t(text)] };
  },
  parse: parsePlane,
};

/** Where a plane crosses three arrises of the blank, from the side `end`: three marks that fix it. */
export const sayMarks = (f: Frame, c: Pick<PlaneCut, 'point' | 'normal'>, end: Face): string =>
  arrises(faceAxis(end))
    .map(
      ([p, q]) => `${f.words[p]} with ${f.words[q]} ${fig(f, distance(f, end, crossing(c, faceAxis(end), f, p, q)))}`,
    )
    .join(' · ');

function crossing(c: Pick<PlaneCut, 'point' | 'normal'>, axis: Axis, f: Frame, p: Face, q: Face): number {
  const [a, d] = [faceAxis(p), faceAxis(q)];
  const rest = c.normal[a] * (faceAt(f, p) - c.point[a]) + c.normal[d] * (faceAt(f, q) - c.point[d]);
  return Math.round(c.point[axis] - rest / c.normal[axis]);
}
function within(f: Frame, c: PlaneCut): string {
  if (!c.within) return '';
  const box = c.within;
  const spans = AXES.filter((a) => !isFull(f, a, box[a])).map((a) => saySpan(f, a, clip(f, a, box[a])));
  return spans.length === 0 ? '' : `; only within ${spans.join(' and within ')}`;
}

function parsePlane(r: Reader): readonly Bare<PlaneCut>[] | undefined {
  const as = (['bevel', 'flat'] as const).find((k) => r.take(`${NAMES[k]},`));
  const end = as && r.face();
  if (as === undefined || end === undefined || !r.take(': to marks on three arrises, from')) return undefined;
  const from = r.face();
  if (from === undefined || !r.take(':')) return undefined;
  const marks = readMarks(r);
  const points = marks?.map((m) => markAt(r.frame, m, from));
  if (!points) return undefined;
  const only: [Span, Span, Span] = [...r.frame.blank];
  let limited = false;
  while (r.oneOf(['; only within', 'and within']) !== undefined) {
    const clause = readSpan(r);
    if (!clause) return undefined;
    only[clause.axis] = (clause.items[0] as { span: Span }).span;
    limited = true;
  }
  const normal = facing(points, end);
  if (!r.take('.') || !normal) return undefined;
  const point = points[0] as Vec3;
  return [{ shape: 'plane', as, point, normal, ...(limited ? { within: only } : {}), mates: [] }];
}
/** A mark on the arris of two faces, at a distance from an end. */
export interface Mark {
  readonly faces: readonly [Face, Face];
  readonly at: number;
}
/** Reads what `sayMarks` printed. */
export function readMarks(r: Reader): readonly Mark[] | undefined {
  const marks: Mark[] = [];
  do {
    const p = r.face();
    const q = p !== undefined && r.take('with') ? r.face() : undefined;
    const at = q === undefined ? undefined : r.figure();
    if (p === undefined || q === undefined || at === undefined) return undefined;
    marks.push({ faces: [p, q], at });
  } while (r.take('·'));
  return marks;
}
/** The place of a mark that is measured from `end`. */
export function markAt(f: Frame, { faces: [p, q], at }: Mark, end: Face): Vec3 {
  const point = byAxis((): number => coordinate(f, end, at));
  point[faceAxis(p)] = faceAt(f, p);
  point[faceAxis(q)] = faceAt(f, q);
  return point;
}
/** The unit normal of the plane through three points, on the side of `end`. */
export function facing(points: readonly Vec3[], end: Face): Vec3 | undefined {
  const [o, p, q] = points;
  if (!o || !p || !q || points.length !== 3) return undefined;
  const u = byAxis((a) => p[a] - o[a]);
  const v = byAxis((a) => q[a] - o[a]);
  const n: Vec3 = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const size = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
  if (size === 0) return undefined;
  const sign = n[faceAxis(end)] * faceSign(end) < 0 ? -1 : 1;
  return byAxis((a) => (sign * n[a]) / size + 0);
}
