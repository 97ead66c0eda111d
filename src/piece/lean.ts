import type { PartSpec } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { cosine, sine, tangent } from '../geom/angle.js';
import type { Axis } from '../geom/axis.js';
import { AXIS_NAMES, FACES } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis, middle, width } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import { place, unturn } from '../geom/placement.js';
import { nm } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import type { Cut } from '../words/cut.js';
import type { BodyContext } from './body.js';
import type { Draft } from './expand.js';

/** A leaning part: its own size, how it stands in the piece, and the bevels at its ends, all in its own axes. */
export interface Leaning {
  readonly size: readonly [Sized, Sized, Sized];
  readonly place: Placement;
  readonly cuts: readonly Cut[];
}
/** Steepest slope that is taken for a leg, degrees from upright (our default). */
const MOST_SLOPE = 60;

export const scaled = (v: Vec3, by: number): Vec3 => byAxis((a) => v[a] * by) as Vec3;
export const lengthOf = (v: Vec3): number => Math.sqrt(v[0] ** 2 + v[1] ** 2 + v[2] ** 2);
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const tell = (
  draft: Draft,
  field: string,
  code: string,
  message: string,
  hint: string,
  ctx: BodyContext,
): undefined => {
  ctx.findings.error(code, pathOf(draft, field), message, hint, [draft.id]);
  return undefined;
};
const pathOf = (draft: Draft, ...field: string[]): JsonPath => [
  ...(draft.fieldPath[field[0] ?? ''] ?? draft.path),
  ...field.slice(1),
];

/**
 * A leg stood from a point to a plane: `front` and `side` are its slopes as seen in the front and the side elevation, degrees
 * from upright, positive where the far end lies to the right or to the back. Its front and back stay square to the front
 * view's plane as far as the lean allows; both ends are bevelled to lie flat in level planes. Undefined when told.
 */
export function standing(draft: Draft, ctx: BodyContext): Leaning | undefined {
  const stand = draft.spec.stand as NonNullable<PartSpec['stand']>;
  const at = stand.at.map((t, k) => ctx.ev.length(t, [...pathOf(draft, 'stand', 'at'), k])?.value);
  const section = (stand.section ?? []).map((t, k) => ctx.ev.length(t, [...pathOf(draft, 'stand', 'section'), k]));
  const plane = reached(stand.reach, draft, ctx);
  if (!stand.section)
    return tell(
      draft,
      'stand',
      'section-missing',
      `"${draft.id}" does not say how thick it is.`,
      'Add "section": [across, deep].',
      ctx,
    );
  const [a, b] = section;
  const [x, y, z] = at;
  if (!a || !b || x === undefined || y === undefined || z === undefined || plane === undefined) return undefined;
  const [f, s] = [stand.front ?? 0, stand.side ?? 0];
  if (Math.max(Math.abs(f), Math.abs(s)) > MOST_SLOPE)
    return tell(
      draft,
      'stand',
      'slope-too-flat',
      `"${draft.id}" leans ${Math.max(Math.abs(f), Math.abs(s))} degrees from upright.`,
      `At most ${MOST_SLOPE}.`,
      ctx,
    );
  if (plane === z || a.value <= 0 || b.value <= 0)
    return tell(
      draft,
      'stand',
      'size-not-positive',
      `"${draft.id}" has no size.`,
      'Check its point, its plane and its section.',
      ctx,
    );
  return slope([x, y, z], plane, [tangent(f), tangent(s)], [a, b], draft);
}

/** Names the level ends of a part that is stood from a point to a plane, so that others can be measured from them. */
export function defineLevels(draft: Draft, ctx: BodyContext): void {
  const { graph } = ctx.ev;
  const base = draft.mirrorOf === undefined ? undefined : ctx.drafts.get(draft.mirrorOf);
  const ends = (): readonly [Sized, Sized] | undefined => {
    const stand = draft.spec.stand as NonNullable<PartSpec['stand']>;
    const at = ctx.ev.length(stand.at[2], [...pathOf(draft, 'stand', 'at'), 2]);
    const plane = reached(stand.reach, draft, ctx);
    if (!at || plane === undefined) return undefined;
    const other: Sized = { ...derived(nm(plane), `where it reaches: ${stand.reach}`), path: pathOf(draft, 'stand') };
    return at.value <= plane ? [at, other] : [other, at];
  };
  (['bottom', 'top'] as const).forEach((face, k) => {
    const node = (): Sized | undefined => (base ? graph.get(`${base.id}.${face}`) : ends()?.[k]);
    if (leans(draft, ctx.drafts) === 'stand') graph.define(`${draft.id}.${face}`, pathOf(draft, 'stand'), node);
  });
}

function reached(word: string, draft: Draft, ctx: BodyContext): number | undefined {
  if (word === 'floor') return 0;
  const found = /\.(top|bottom)$/.test(word) ? ctx.ev.length(word, pathOf(draft, 'stand', 'reach')) : undefined;
  if (found || /\.(top|bottom)$/.test(word)) return found?.value;
  return tell(
    draft,
    'stand',
    'plane-unknown',
    `"${word}" is no level plane to stand on.`,
    'Say "floor", or the top or bottom of a part: "rail.bottom".',
    ctx,
  );
}

function slope(
  at: Vec3,
  plane: number,
  tan: readonly [number, number],
  section: readonly [Sized, Sized],
  draft: Draft,
): Leaning {
  const height = Math.abs(at[2] - plane);
  const far: Vec3 = [at[0] + tan[0] * height, at[1] + tan[1] * height, plane];
  const [foot, head] = plane < at[2] ? [far, at] : [at, far];
  const run = byAxis((k) => head[k] - foot[k]) as Vec3;
  const axis = lengthOf(run);
  const w = scaled(run, 1 / axis);
  const u0: Vec3 = [1 - w[0] * w[0], -w[0] * w[1], -w[0] * w[2]];
  const u = scaled(u0, 1 / lengthOf(u0));
  const v = cross(w, u);
  const [a, b] = [section[0].value, section[1].value];
  const bevel = (Math.abs(u[2]) * (a / 2) + Math.abs(v[2]) * (b / 2)) / w[2];
  const total = byRule(
    nm(axis + 2 * bevel),
    'from level plane to level plane along its slope, over the bevels',
    'Pythagoras',
    [
      { name: 'height', value: nm(height) },
      { name: 'along its middle', value: nm(axis) },
    ],
  );
  const rotation = byAxis((k) => [u[k], v[k], w[k]] as Vec3);
  const low = byAxis((k) => foot[k] - (u[k] * a) / 2 - (v[k] * b) / 2 - w[k] * bevel) as Vec3;
  const placed: Placement = { rotation, origin: low };
  const level = unturn(placed, [0, 0, 1]);
  const cuts =
    bevel === 0
      ? []
      : [
          flatEnd('stand', 'bottom', [a / 2, b / 2, bevel], scaled(level, -1)),
          flatEnd('stand', 'top', [a / 2, b / 2, total.value - bevel], level),
        ];
  const path = draft.fieldPath['stand'] ?? draft.path;
  return { size: [section[0], section[1], { ...total, path }], place: placed, cuts };
}
/** A bevel through a point, all beyond it taken off. */
export const flatEnd = (from: 'stand' | 'span', end: string, point: Vec3, normal: Vec3): Cut => ({
  id: `${from}.${end}`,
  from,
  mates: [],
  rank: 2,
  shape: 'plane',
  as: 'bevel',
  point: byAxis((k) => nm(point[k])) as Vec3,
  normal: byAxis((k) => normal[k] + 0) as Vec3,
});

/** A square part turned about its middle, by degrees, anticlockwise as seen from the axis' high end. */
export function turned(draft: Draft, ctx: BodyContext): Leaning | undefined {
  const ends = FACES.map((f) => ctx.ev.graph.get(`${draft.id}.${f}`)?.value);
  const [x, y, z] = AXIS_NAMES.map((a) => ctx.ev.graph.get(`${draft.id}.${a}`));
  if (!x || !y || !z || ends.includes(undefined)) return undefined;
  const box = byAxis((a) => [ends[2 * a] ?? 0, ends[2 * a + 1] ?? 0] as const) as Box3;
  const t = draft.spec.turn as NonNullable<PartSpec['turn']>;
  const axis = AXIS_NAMES.indexOf(t.about) as Axis;
  const [c, s] = [cosine(t.by), sine(t.by)];
  const [p, q] = [((axis + 1) % 3) as Axis, ((axis + 2) % 3) as Axis];
  const rotation = byAxis(
    (row) =>
      byAxis((k) =>
        row === axis
          ? k === axis
            ? 1
            : 0
          : row === p
            ? k === p
              ? c
              : k === q
                ? -s
                : 0
            : k === p
              ? s
              : k === q
                ? c
                : 0,
      ) as Vec3,
  );
  const about = byAxis((k) => middle(box[k])) as Vec3;
  const half = place({ rotation, origin: [0, 0, 0] }, byAxis((k) => width(box[k]) / 2) as Vec3);
  return { size: [x, y, z], place: { rotation, origin: byAxis((k) => about[k] - half[k] + 0) as Vec3 }, cuts: [] };
}

/** The mirror image across of a leaning part: own axes stay right-handed, so its own left and right change places. */
export function mirrorPlace(by: Placement, across: number, about: number): Placement {
  const r = by.rotation;
  const rotation = byAxis((row) => byAxis((k) => (row === 0 ? -1 : 1) * (k === 0 ? -1 : 1) * r[row][k] + 0) as Vec3);
  const high = place(by, [across, 0, 0]);
  return { rotation, origin: [2 * about - high[0], high[1], high[2]] };
}

/** The box about a placed part, piece axes, nm. */
export function boxAbout(by: Placement, size: Vec3): Box3 {
  const corners = [0, 1].flatMap((i) =>
    [0, 1].flatMap((j) => [0, 1].map((k) => place(by, [i * size[0], j * size[1], k * size[2]]))),
  );
  return byAxis((a): Span => [
    nm(Math.min(...corners.map((c) => c[a]))),
    nm(Math.max(...corners.map((c) => c[a]))),
  ]) as Box3;
}
const LEANS = ['stand', 'span', 'turn'] as const;
/** How a part leans, by itself or as the mirror image of one that does. */
export function leans(draft: Draft, drafts: ReadonlyMap<string, Draft>): (typeof LEANS)[number] | undefined {
  const base = draft.mirrorOf === undefined ? undefined : drafts.get(draft.mirrorOf);
  return base ? leans(base, drafts) : LEANS.find((f) => draft.spec[f] !== undefined);
}
