import type { Axis } from '../../geom/axis.js';
import { byAxis } from '../../geom/box.js';
import type { Box3, Span, Vec3 } from '../../geom/box.js';
import { NM_PER_MM } from '../../lengths/length.js';
import type { Joint } from '../../piece/piece.js';
import type { Prepared } from '../input.js';
import type { Standing } from '../model.js';
import { cutParts, cutPiece } from '../section.js';
import type { CutPiece, Plane } from '../section.js';
import type { Direction } from '../views.js';
import { isSmall } from './detailScale.js';
import { FRONT, PLAN, RIGHT_SIDE } from '../views.js';

/** A place worth seeing larger. */
export interface Spot {
  readonly name: string;
  /** How it is looked at: `plan`, `section`, `from the front`. */
  readonly look: string;
  readonly piece: CutPiece;
  /** Parts whose corners are measured. */
  readonly focus: ReadonlySet<string>;
  /** A second look at a joint that is shown already: left out before it costs a sheet. */
  readonly second: boolean;
  /** What is shown, along the paper's right and up, nm. */
  readonly window: readonly [Span, Span];
}
const MM = NM_PER_MM;
/** At most so many details of a piece: our default, what one or two sheets hold. */
const MOST = 6;
const LOOKS: readonly { readonly direction: Direction; readonly words: string }[] = [
  { direction: RIGHT_SIDE, words: 'section' },
  { direction: FRONT, words: 'from the front' },
  { direction: PLAN, words: 'plan' },
];

/** Corner and foot of a drawer, then the joints of the case: one of each sort, those that occur most often first. */
export function spotsOf(input: Prepared, a: CutPiece, b: CutPiece): Spot[] {
  const drawer = [...cornerOfDrawer(input, b), ...footOfDrawer(input, a)];
  const views = jointSpots(input);
  const first = views.flatMap((v) => v.slice(0, 1));
  const second = views.flatMap((v) => v.slice(1, 2));
  return [...drawer, ...[...first, ...second].slice(0, Math.max(0, MOST - drawer.length)).map((make) => make())];
}

/** Parts that a section cuts inside a window, so that their corners are measured. */
function cutIn(piece: CutPiece, [x, y]: readonly [Span, Span]): Set<string> {
  const { right, up } = piece.plane.direction;
  const axis = (v: Vec3): Axis => (Math.abs(v[0]) > 0.5 ? 0 : Math.abs(v[1]) > 0.5 ? 1 : 2);
  const meets = (s: Span, w: Span): boolean => s[0] < w[1] && s[1] > w[0];
  return new Set(
    piece.parts
      .filter(({ standing: s }) => meets(s.whole[axis(right)], x) && meets(s.whole[axis(up)], y))
      .map(({ standing }) => standing.part.id),
  );
}
const thickness = (span: Span): number => span[1] - span[0];
const cutBy = (piece: CutPiece, id: string): boolean => piece.parts.some((p) => p.standing.part.id === id);

/** The front left corner of a drawer in plan: reveal, clearance of the slide, thicknesses. */
function cornerOfDrawer(input: Prepared, b: CutPiece): Spot[] {
  const opening = input.model.openings.find((o) => cutBy(b, o.drawer.front));
  const front = b.parts.find((p) => p.standing.part.id === opening?.drawer.front)?.standing;
  if (!opening || !front) return [];
  const [x] = opening.across;
  const besides = b.parts.map((p) => p.standing).filter((s) => Math.abs(s.shoulder[0][1] - x) < 0.1 * MM);
  const beside = besides[0];
  const boxes = b.parts
    .map((p) => p.standing)
    .filter((s) => opening.drawer.parts.includes(s.part.id) && s !== front && thickness(s.shoulder[0]) < 40 * MM);
  const inner = boxes.filter((s) => s.shoulder[0][0] < x + 60 * MM).map((s) => s.shoulder[0][1]);
  const low = Math.min(front.shoulder[1][0], ...besides.map((s) => s.shoulder[1][0]));
  const window: readonly [Span, Span] = [
    [
      x - Math.min(26 * MM, beside ? thickness(beside.shoulder[0]) + 4 * MM : 12 * MM),
      Math.max(x + 22 * MM, ...inner) + 9 * MM,
    ],
    [low - 4 * MM, front.shoulder[1][1] + 24 * MM],
  ];
  return [
    {
      name: `Corner of ${opening.drawer.mark}`,
      look: 'plan',
      piece: b,
      focus: cutIn(b, window),
      window,
      second: false,
    },
  ];
}
/** The foot of a drawer in the section through the depth: reveal, rail, groove of the bottom. */
function footOfDrawer(input: Prepared, a: CutPiece): Spot[] {
  const opening = input.model.openings.find((o) => cutBy(a, o.drawer.front));
  const front = a.parts.find((p) => p.standing.part.id === opening?.drawer.front)?.standing;
  if (!opening || !front) return [];
  const [z] = opening.up;
  const under = a.parts.map((p) => p.standing).find((s) => Math.abs(s.shoulder[2][1] - z) < 0.1 * MM);
  const low = Math.min(front.shoulder[1][0], under?.shoulder[1][0] ?? Infinity);
  const window: readonly [Span, Span] = [
    [low - 4 * MM, front.shoulder[1][1] + 27 * MM],
    [z - Math.min(29 * MM, under ? thickness(under.shoulder[2]) + 6.5 * MM : 12 * MM), z + 27 * MM],
  ];
  return [
    {
      name: `Foot of ${opening.drawer.mark}`,
      look: 'section',
      piece: a,
      focus: cutIn(a, window),
      window,
      second: false,
    },
  ];
}

/** For each sort of joint the ways to look at its first place, best first; each cut only when it is asked for. */
function jointSpots(input: Prepared): (() => Spot)[][] {
  const standing = new Map(input.model.standing.map((s) => [s.part.id, s]));
  const groups = new Map<string, Joint[]>();
  for (const j of input.piece.joints) {
    const key = `${j.kind} ${Object.entries(j.sizes).map(([k, s]) => `${k}${s.value}`).sort().join(' ')}`; // prettier-ignore
    groups.set(key, [...(groups.get(key) ?? []), j]);
  }
  // Of joints that are alike the foremost is shown, then the one farthest left: where it is looked for first.
  const placeOf = (j: Joint, axis: 0 | 1): number =>
    Math.max(...[j.entering, j.receiving].map((id) => standing.get(id)?.shoulder[axis][0] ?? 0));
  const sorts = [...groups.values()].flatMap((g): { joint: Joint; count: number; ways: Way[] }[] => {
    const [joint] = g
      .filter((j) => j.entering !== j.receiving && [j.entering, j.receiving].every((id) => inCase(standing.get(id))))
      .sort((p, q) => placeOf(p, 1) - placeOf(q, 1) || placeOf(p, 0) - placeOf(q, 0));
    const ways = joint ? waysToLook(input, joint, standing) : [];
    return joint && ways.length > 0 ? [{ joint, count: g.length, ways }] : [];
  });
  // One of each kind before a second size of any.
  const kinds = new Map<string, number>();
  const ranked = sorts
    .sort((a, b) => b.count - a.count || (a.joint.id < b.joint.id ? -1 : 1))
    .map((s) => {
      const turn = kinds.get(s.joint.kind) ?? 0;
      kinds.set(s.joint.kind, turn + 1);
      return { ...s, turn };
    })
    .sort((a, b) => a.turn - b.turn);
  return ranked.map(({ joint, ways }) =>
    ways.map((way, i) => () => ({ ...spotOf(input, joint, way, standing), second: i > 0 })),
  );
}
const inCase = (s: Standing | undefined): boolean => s !== undefined && s.square && s.part.drawer === undefined;

interface Way {
  readonly plane: Plane;
  readonly common: Box3;
  readonly corners: number;
  /** How much of the entering part is seen in the joint: the middle of a tail or tenon, not its haunch. */
  readonly reach: number;
}
/** Where a joint lies: what both parts fill between them with all that goes in; undefined where nothing goes in. */
function commonOf(a: Standing, b: Standing): Box3 | undefined {
  const box = byAxis((i): Span => [Math.max(a.whole[i][0], b.whole[i][0]), Math.min(a.whole[i][1], b.whole[i][1])]);
  return box.every((s) => thickness(s) > 1 * MM) ? box : undefined;
}
/** The planes through a joint, the one that shows most corners first. Never at an edge of the joint, so never along a glue line. */
function waysToLook(input: Prepared, joint: Joint, standing: ReadonlyMap<string, Standing>): Way[] {
  const [a, b] = [standing.get(joint.entering), standing.get(joint.receiving)];
  const common = a && b && commonOf(a, b);
  if (!common) return [];
  return ([2, 1, 0] as Axis[])
    .map((axis) => {
      const tries = [0.5, 0.3, 0.75].map((f): Way => {
        const at = Math.round(common[axis][0] + thickness(common[axis]) * f);
        const plane = { axis, at, direction: (LOOKS[axis] as (typeof LOOKS)[number]).direction };
        return { plane, common, ...shownIn(input, plane, [a, b], common) };
      });
      return tries.sort((p, q) => q.reach - p.reach || q.corners - p.corners)[0] as Way;
    })
    .filter((w) => w.corners >= 4 && isSmall(windowOf([a, b], w)))
    .sort((p, q) => q.corners - p.corners);
}
/** Corners of the two parts inside the joint, none where one of them is not cut there; and how far the first reaches into it. */
function shownIn(
  input: Prepared,
  plane: Plane,
  parts: readonly Standing[],
  common: Box3,
): { readonly corners: number; readonly reach: number } {
  const [u, v] = ([0, 1, 2] as Axis[]).filter((i) => i !== plane.axis) as [Axis, Axis];
  const within = (n: number, s: Span): boolean => n * MM > s[0] - MM && n * MM < s[1] + MM;
  const seen = parts.map((s) => {
    const [rings] = cutParts(input, plane, [s]).map((c) => c.rings);
    return (rings ?? []).flat().filter(([x, y]) => within(x, common[u]) && within(y, common[v]));
  });
  const stretch = (k: 0 | 1): number => {
    const values = (seen[0] ?? []).map((p) => p[k]);
    return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
  };
  const none = seen.some((s) => s.length === 0);
  return {
    corners: none ? 0 : seen.reduce((n, s) => n + s.length, 0),
    // To 0.01 mm, so that what is as large in the mesh is as large here.
    reach: none ? 0 : Math.round(stretch(0) * 100) * Math.round(stretch(1) * 100),
  };
}

/** How far a member's face may lie from the joint to be shown; beyond it the member is broken off; air beyond a face shown. */
const REACH = 34 * MM;
const BROKEN = 11 * MM;
const AIR = 4 * MM;
/** So much behind the plane is drawn. */
const DEEP = 60 * MM;
/** What is shown of a joint: it and, where they are near, the faces of its members; what goes on is broken off. */
function windowOf(members: readonly Standing[], { plane, common }: Way): readonly [Span, Span] {
  const stretch = (i: Axis): Span => {
    const [low, high] = common[i];
    const faces = members.flatMap((s) => [...s.shoulder[i], ...s.whole[i]]);
    const below = faces.filter((f) => f <= low && f > low - REACH).map((f) => f - AIR);
    const above = faces.filter((f) => f >= high && f < high + REACH).map((f) => f + AIR);
    // Wood that goes on is broken off a little way from the joint.
    const on = (beyond: (s: Span) => boolean): number => (members.some((s) => beyond(s.shoulder[i])) ? BROKEN : AIR);
    return [
      Math.min(low - on((s) => s[0] < low - REACH), ...below),
      Math.max(high + on((s) => s[1] > high + REACH), ...above),
    ];
  };
  const [u, v] = ([0, 1, 2] as Axis[]).filter((i) => i !== plane.axis) as [Axis, Axis];
  return [stretch(u), stretch(v)];
}
function spotOf(
  input: Prepared,
  joint: Joint,
  way: Way,
  standing: ReadonlyMap<string, Standing>,
): Omit<Spot, 'second'> {
  const members = [joint.entering, joint.receiving].flatMap((id) => standing.get(id) ?? []);
  const { axis } = way.plane;
  const [u, v] = ([0, 1, 2] as Axis[]).filter((i) => i !== axis) as [Axis, Axis];
  const window = windowOf(members, way);
  const meets = (s: Standing): boolean =>
    s.whole[u][0] < window[0][1] && s.whole[u][1] > window[0][0] && s.whole[v][0] < window[1][1] && s.whole[v][1] > window[1][0]; // prettier-ignore
  const parts = new Set(input.model.case.filter(meets).map((s) => s.part.id));
  const [entering, receiving] = members.map((s) => s.part.mark);
  return {
    name: `${joint.words.slice(0, 1).toUpperCase()}${joint.words.slice(1)}, ${entering} in ${receiving}`,
    look: (LOOKS[axis] as (typeof LOOKS)[number]).words,
    piece: cutPiece(input, way.plane, { parts, deep: DEEP, window }),
    focus: new Set([joint.entering, joint.receiving]),
    window,
  };
}
