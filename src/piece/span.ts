import type { PartSpec } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Axis, Face } from '../geom/axis.js';
import { FACES, faceAxis, faceSign } from '../geom/axis.js';
import type { Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import { dot, place, shifted, turn, unturn } from '../geom/placement.js';
import { nm } from '../lengths/length.js';
import { byRule } from '../value/sized.js';
import type { Cut } from '../words/cut.js';
import type { BodyContext } from './body.js';
import type { Draft } from './expand.js';
import { cross, flatEnd, lengthOf, scaled, type Leaning } from './lean.js';

/** A face as a plane in the piece, with the middle of it at a height. */
interface Mouth {
  readonly point: Vec3;
  /** Out of the part. */
  readonly normal: Vec3;
  readonly axis: Axis;
}
/** How a part that a span begins or ends at stands. */
export type StandOf = (id: string) => { readonly place: Placement; readonly size: Vec3 } | undefined;

/**
 * A stretcher from a face of one part to a face of another, its middle line at a height: from the middle of the one face to
 * the middle of the other, its ends bevelled to lie flat against both. Undefined when told.
 */
export function spanning(draft: Draft, ctx: BodyContext, standOf: StandOf): Leaning | undefined {
  const span = draft.spec.span as NonNullable<PartSpec['span']>;
  const path = draft.fieldPath['span'] ?? draft.path;
  const height = ctx.ev.length(span.at, [...path, 'at']);
  const [thick, high] = span.section.map((t, k) => ctx.ev.length(t, [...path, 'section', k]));
  if (!height || !thick || !high) return undefined;
  const ends = (['from', 'to'] as const).map((f) => mouth(span[f], height.value, [...path, f], draft, ctx, standOf));
  const [a, b] = ends;
  if (!a || !b) return undefined;
  const axis = a.axis;
  const [low, top] = a.point[axis] <= b.point[axis] ? [a, b] : [b, a];
  const run = byAxis((k) => top.point[k] - low.point[k]) as Vec3;
  const long = lengthOf(run);
  const w = scaled(run, 1 / (long || 1));
  const facing = axis !== 2 && b.axis === axis && dot(low.normal, w) > 0.1 && dot(top.normal, w) < -0.1;
  if (!facing || thick.value <= 0 || high.value <= 0) {
    ctx.findings.error(
      'span-faces',
      path,
      `"${span.from}" and "${span.to}" do not face each other, so nothing spans between them.`,
      'Name the two faces that look at each other: "leg_1.right", "leg_2.left".',
      [draft.id],
    );
    return undefined;
  }
  const up0: Vec3 = [-w[2] * w[0], -w[2] * w[1], 1 - w[2] * w[2]];
  const up = scaled(up0, 1 / lengthOf(up0));
  const side = axis === 0 ? cross(up, w) : cross(w, up);
  const bevel = (m: Mouth): number =>
    (Math.abs(dot(m.normal, side)) * (thick.value / 2) + Math.abs(dot(m.normal, up)) * (high.value / 2)) /
    Math.abs(dot(m.normal, w));
  const [e0, e1] = [bevel(low), bevel(top)];
  const total = {
    ...byRule(nm(long + e0 + e1), 'from face to face along its middle, over the bevels', 'Pythagoras', [
      { name: 'along its middle', value: nm(long) },
    ]),
    path,
  };
  const rotation = byAxis((k) => (axis === 0 ? [w[k], side[k], up[k]] : [side[k], w[k], up[k]]) as Vec3);
  const origin = byAxis(
    (k) => low.point[k] - w[k] * e0 - (side[k] * thick.value) / 2 - (up[k] * high.value) / 2,
  ) as Vec3;
  const placed: Placement = { rotation, origin };
  const own = (along: number): Vec3 =>
    axis === 0 ? [along, thick.value / 2, high.value / 2] : [thick.value / 2, along, high.value / 2];
  const cut = (name: string, m: Mouth, along: number, e: number): Cut[] =>
    e === 0 ? [] : [flatEnd('span', name, own(along), unturn(placed, scaled(m.normal, -1)))];
  return {
    size: axis === 0 ? [total, thick, high] : [thick, total, high],
    place: placed,
    cuts: [...cut('low', low, e0, e0), ...cut('high', top, total.value - e1, e1)],
  };
}

function mouth(
  word: string,
  height: number,
  path: JsonPath,
  draft: Draft,
  ctx: BodyContext,
  standOf: StandOf,
): Mouth | undefined {
  const [id = '', faceWord = ''] = word.split('.');
  const face = FACES.find((f) => f === faceWord) as Face | undefined;
  if (!ctx.drafts.has(id) || !face) {
    const hint = ctx.drafts.has(id) ? nameHint(faceWord, FACES) : nameHint(id, [...ctx.drafts.keys()]);
    ctx.findings.error('face-unknown', path, `"${word}" is no face of a part.`, hint, [draft.id]);
    return undefined;
  }
  const stand = standOf(id);
  if (!stand) return undefined;
  const axis = faceAxis(face);
  const upright = stand.place.rotation[2][2];
  const at = byAxis((k) =>
    k === axis ? (faceSign(face) < 0 ? 0 : stand.size[k]) : k === 2 ? 0 : stand.size[k] / 2,
  ) as Vec3;
  const foot = place(stand.place, at);
  const along = (height - foot[2]) / upright;
  if (axis === 2 || Math.abs(upright) < 0.1 || along < 0 || along > stand.size[2]) {
    ctx.findings.error(
      'span-height',
      path,
      `"${word}" has no place ${ctx.ev.say(height)} up.`,
      'Give a height at which the part stands.',
      [draft.id],
    );
    return undefined;
  }
  const way: Vec3 = byAxis((k) => (k === axis ? faceSign(face) : 0)) as Vec3;
  return { point: place(stand.place, [at[0], at[1], along]), normal: turn(stand.place, way), axis };
}
/** A square part, as it stands. */
export const squareStand = (low: Vec3, size: Vec3): { readonly place: Placement; readonly size: Vec3 } => ({
  place: shifted(low),
  size,
});
