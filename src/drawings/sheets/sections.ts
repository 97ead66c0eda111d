import type { Span } from '../../geom/box.js';
import { NM_PER_MM } from '../../lengths/length.js';
import { counted } from '../../lengths/counted.js';
import { round } from '../model.js';
import { cuttingPlanes } from '../model.js';
import { drawDimensions, furtherSizes, measureFigure } from '../chains.js';
import { collide, placeDimensions } from '../dimensions.js';
import type { Chain, Link, Point, Rect } from '../dimensions.js';
import { balloon, circle, fill, group, label, leader, rectPath, unit } from '../draw.js';
import { fieldOf } from '../frame.js';
import { printed, sheetOf } from '../input.js';
import { ranges } from '../../words/markOrder.js';
import type { Prepared, SheetKind } from '../input.js';
import { largestScale, SMALLEST } from '../marks.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import { cutPiece, drawSection } from '../section.js';
import type { CutPart, CutPiece, Plane } from '../section.js';
import { detailOf, spotOn } from './details.js';
import { larger, ratio, ROOMY, scaleOf } from './detailScale.js';
import type { Detail } from './details.js';
import { spotsOf } from './detailSpots.js';
import type { Spot } from './detailSpots.js';
import { enlarged, packed, shared } from './packed.js';
import type { Area, PlacedDetail } from './packed.js';
import { spread } from '../spread.js';
import { blockDrop, setLines, setText, widthOf, wrap } from '../text.js';
import type { Text } from '../text.js';
import { extentOf, onPaper, PLAN, rectOf, RIGHT_SIDE, viewAt } from '../views.js';
import type { View } from '../views.js';
import { pullBoxes } from './elevations.js';

/** A–A through the depth, looking left; B–B through the width, looking down. Same scale, hatched by grain. */
export const sections: SheetKind = {
  id: 'sections',
  title: 'Sections',
  plan: () => 1,
  draw(input, _page, place) {
    const plan = sectionPlan(input);
    const { lay } = plan;
    const scale = `1:${lay.oneTo}`;
    const count = plan.inline.length;
    const title = count === 0 ? 'Sections' : `Sections and ${count === 1 ? 'a detail' : counted(count, 'detail')}`;
    return sheetOf(input, place, {
      id: 'sections',
      title,
      folder: 'drawings',
      alt: `${input.piece.header.title}: sections A–A and B–B, ${scale}`,
      scale,
      projection: true,
      items: [
        ...heading(input, 'A–A', scale, lay.a.box.x - 12, lay.top),
        ...heading(input, 'B–B', scale, lay.b.box.x - 12, lay.top),
        ...plan.drawn.a.items,
        ...plan.drawn.b.items,
        ...plan.further,
        ...marks(input, plan),
        ...plan.inline.flatMap((p) => p.detail.draw(p.letter, p.x, p.y)),
      ],
    });
  },
};
/** Details that the sections have no room for: drawers and joints as large as life, with all their sizes. */
export const details: SheetKind = {
  id: 'details',
  title: 'Details',
  plan: (input) => sectionPlan(input).pages.length,
  draw(input, page, place) {
    const { pages } = sectionPlan(input);
    const mine = pages[page] ?? [];
    const scales = [...new Set(mine.map((p) => p.detail.oneTo))];
    return sheetOf(input, place, {
      id: pages.length > 1 ? `details-${page + 1}` : 'details',
      title: pages.length > 1 ? `Details, ${page + 1} of ${pages.length}` : 'Details',
      folder: 'drawings',
      alt: `${input.piece.header.title}: ${mine.map((p) => `${p.letter}, ${p.detail.spot.name}`).join('; ')}`,
      scale: scales.length === 1 ? ratio(scales[0] as number) : 'as noted',
      items: mine.flatMap((p) => p.detail.draw(p.letter, p.x, p.y)),
    });
  },
};

interface SectionPlan {
  readonly lay: ReturnType<typeof layOut>;
  readonly a: CutPiece;
  readonly b: CutPiece;
  readonly drawn: Readonly<Record<'a' | 'b', ReturnType<typeof section>>>;
  readonly further: readonly Item[];
  readonly inline: readonly Lettered[];
  readonly pages: readonly (readonly Lettered[])[];
}
type Lettered = PlacedDetail & { readonly letter: string };
const PLANS = new WeakMap<Prepared, SectionPlan>();
/** Both sections, and where the details go: under B–B as many as fit there, the others on sheets of their own. */
function sectionPlan(input: Prepared): SectionPlan {
  const known = PLANS.get(input);
  if (known) return known;
  const planes = planesOf(input);
  const [a, b] = [cutPiece(input, planes.a), cutPiece(input, planes.b)];
  const lay = layOut(input);
  const spots = spotsOf(input, a, b);
  const drawn = {
    a: section(input, 'section-a', a, lay.a, circlesOf(spots, 'a', lay, planes.a)),
    b: section(input, 'section-b', b, lay.b, circlesOf(spots, 'b', lay, planes.a)),
  };
  const { left, right, top, bottom } = fieldOf(input.paper);
  const x = Math.max(lay.b.box.x - 12, lay.a.box.x + lay.a.box.w + drawn.a.right + 3);
  const words = [...drawn.a.further, ...drawn.b.further];
  const lines = words.length === 0 ? [] : wrap(input.faces, furtherText(words), right - x, SIZE.text);
  const foot = bottom - 4 - (lines.length === 0 ? 0 : blockDrop(lines) + 6);
  const further = setLines(input.faces, lines, { x, y: foot + 6, size: SIZE.text }).items;
  const under = { x, y: lay.b.box.y + lay.b.box.h + Math.max(8, drawn.b.below + 5), right, bottom: foot };
  const sheet = { x: left, y: top, right, bottom: bottom - 2.5 };
  const { inline, pages } = detailsOf(input, spots, under, sheet);
  const letters = lettersFor(input, spots.length);
  const lettered = (p: PlacedDetail): Lettered => ({ ...p, letter: letters.shift() ?? '' });
  const plan: SectionPlan = { lay, a, b, drawn, further, inline: inline.map(lettered), pages: pages.map((p) => p.map(lettered)) }; // prettier-ignore
  PLANS.set(input, plan);
  return plan;
}
/** Where every detail goes and how large it is: as large as takes the fewest sheets and shows most on them, then as those hold. */
function detailsOf(input: Prepared, spots: readonly Spot[], under: Area, sheet: Area): ReturnType<typeof shared> {
  const known = new Map<string, Detail>();
  const at = (spot: Spot, oneTo: number): Detail => {
    const key = `${spots.indexOf(spot)} ${oneTo}`;
    const detail = known.get(key) ?? detailOf(input, spot, oneTo);
    known.set(key, detail);
    return detail;
  };
  const tries = ROOMY.map((most) => shared(spots.map((s) => at(s, scaleOf(s.window, most))), under, sheet)); // prettier-ignore
  const shown = (t: (typeof tries)[number]): number => t.inline.length + t.pages.flat().length;
  const better = (p: (typeof tries)[number], q: (typeof tries)[number]): boolean =>
    q.pages.length < p.pages.length || (q.pages.length === p.pages.length && shown(q) > shown(p));
  let best = tries.reduce((p, q) => (better(p, q) ? q : p));
  // A sheet with little on it takes what stands under the sections too.
  if (best.pages.length === 1 && (best.pages[0]?.length ?? 0) <= 2 && best.inline.length > 0) {
    const all = packed([...best.inline, ...best.pages.flat()].map((p) => p.detail), sheet); // prettier-ignore
    if (all.length === 1) best = { inline: [], pages: all };
  }
  // Twice as large as life only what is small.
  const grown = (most: number) => (d: Detail) => {
    const oneTo = larger(d.oneTo);
    const small = d.spot.window.every((s, k) => (s[1] - s[0]) / NM_PER_MM / (oneTo ?? 1) <= (k === 0 ? 84 : 70));
    return oneTo === undefined || oneTo < most || (oneTo < 1 && !small) ? undefined : at(d.spot, oneTo);
  };
  return {
    inline: enlarged(best.inline, under, grown(1)),
    pages: best.pages.map((page) => enlarged(page, sheet, grown(0.5))),
  };
}
const furtherText = (words: readonly string[]): Text => [
  { string: 'Further sizes: ', face: 'semibold' },
  { string: words.join(', ') },
];
/** Letters from the end of the alphabet, none with which a part's mark begins (ISO 128-3; choice our default). */
function lettersFor(input: Prepared, count: number): string[] {
  const taken = new Set([...input.piece.parts, ...input.piece.drawers].map((p) => p.mark.slice(0, 1)));
  const free = [...'ZYXWVUTSRQPNMLKJHGFEDC'].filter((c) => !taken.has(c));
  return Array.from({ length: count }, (_, i) => free[i] ?? `Z${i}`);
}
/** The section on which a detail is circled: the one that looks the same way; A–A or B–B where none does and it shows there. */
function circledOn(spot: Spot, lay: SectionPlan['lay'], a: Plane): 'a' | 'b' {
  const { direction } = spot.piece.plane;
  if (direction === lay.a.direction) return 'a';
  if (direction === lay.b.direction) return 'b';
  // Looked at from the front: A–A shows what lies left of it.
  return (spot.window[0][0] + spot.window[0][1]) / 2 < a.at ? 'a' : 'b';
}
interface Ring<T> {
  readonly at: Point;
  readonly r: number;
  readonly of: readonly T[];
}
/** Circles round spots on a view; those that would run into one another are one. */
function ringsOf<T extends { readonly spot: Spot }>(all: readonly T[], view: View): Ring<T>[] {
  const out: Ring<T>[] = [];
  for (const one of all) {
    const { at, half } = spotOn(one.spot, view);
    let ring: Ring<T> = { at, r: Math.max(3.2, Math.min(6.5, half)), of: [one] };
    for (;;) {
      const near = out.find((o) => Math.hypot(o.at[0] - ring.at[0], o.at[1] - ring.at[1]) < o.r + ring.r);
      if (!near) break;
      out.splice(out.indexOf(near), 1);
      ring = joined(near, ring);
    }
    out.push(ring);
  }
  return out;
}
/** The least circle round two. */
function joined<T>(p: Ring<T>, q: Ring<T>): Ring<T> {
  const d = Math.hypot(q.at[0] - p.at[0], q.at[1] - p.at[1]);
  const of = [...p.of, ...q.of];
  if (d + q.r <= p.r) return { ...p, of };
  if (d + p.r <= q.r) return { ...q, of };
  const r = (d + p.r + q.r) / 2;
  const f = (r - p.r) / d;
  return { at: [p.at[0] + (q.at[0] - p.at[0]) * f, p.at[1] + (q.at[1] - p.at[1]) * f], r, of };
}
/** Boxes round the circles of the details that are shown on a view: no word stands on them. */
const circlesOf = (spots: readonly Spot[], name: 'a' | 'b', lay: SectionPlan['lay'], a: Plane): Rect[] =>
  ringsOf(
    spots.filter((s) => circledOn(s, lay, a) === name).map((spot) => ({ spot })),
    lay[name],
  ).map(({ at, r }) => ({ x: at[0] - r, y: at[1] - r, w: 2 * r, h: 2 * r }));
/** Circles on the sections that details come from, and their letters in the view's left margin, pitch kept. */
function marks(input: Prepared, plan: SectionPlan): Item[] {
  const all = [...plan.inline, ...plan.pages.flat()].map((p) => ({ letter: p.letter, spot: p.detail.spot }));
  const { left } = fieldOf(input.paper);
  return (['a', 'b'] as const).flatMap((name) => {
    const view = plan.lay[name];
    const mine = ringsOf(
      all.filter((d) => circledOn(d.spot, plan.lay, plan.a.plane) === name),
      view,
    ).sort((p, q) => p.at[1] - q.at[1] || p.at[0] - q.at[0]);
    const pulls = pullBoxes(input).map((b) => rectOf(view, b));
    const x = Math.max(view.box.x - 12, left + 3.7);
    const inWay = [...pulls, ...plan.drawn[name].taken].filter((r) => r.x < x + 4.5 && r.x + r.w > x - 4.5);
    const ys = spread(
      mine.map((m) => ({ at: m.at[1] - 6, half: 3.7 * m.of.length })),
      {
        gap: 1,
        pitch: 8.4,
        blocked: inWay.map((r) => [r.y - 0.8, r.y + r.h + 0.8] as const),
        within: [view.box.y - 6, view.box.y + view.box.h + 10],
      },
    );
    return mine.flatMap((m, i) => ringMark(input, m, x, ys?.[i]));
  });
}
/** A circle, and its letters one under the other, touching; one leader from the nearest of them. */
function ringMark(
  input: Prepared,
  m: Ring<{ readonly letter: string }>,
  x: number,
  middle: number | undefined,
): Item[] {
  const ring = circle('D', m.at[0], m.at[1], m.r);
  if (middle === undefined) return ring;
  const letters = m.of.map((d) => d.letter).sort((p, q) => (p < q ? 1 : -1));
  const ys = letters.map((_, k) => middle + 7.4 * (k - (letters.length - 1) / 2));
  const y = ys.reduce((p, q) => (Math.abs(q - m.at[1]) < Math.abs(p - m.at[1]) ? q : p));
  const u = unit([x, y], m.at);
  const d = Math.hypot(m.at[0] - x, m.at[1] - y);
  const end: Point = [x + u[0] * (d - m.r), y + u[1] * (d - m.r)];
  return [
    ...ring,
    ...leader([x + u[0] * 3.7, y + u[1] * 3.7], end).slice(0, 1),
    ...letters.flatMap((letter, k) => balloon(input.faces, letter, x, ys[k] as number)),
  ];
}
function planesOf(input: Prepared): { a: Plane; b: Plane } {
  const at = cuttingPlanes(input.model, pullBoxes(input));
  return {
    a: { axis: 0, at: at.across, direction: RIGHT_SIDE },
    b: { axis: 2, at: at.up, direction: PLAN },
  };
}
function layOut(input: Prepared): { a: View; b: View; oneTo: number; top: number } {
  const { left, right, top, bottom } = fieldOf(input.paper);
  const box = input.model.overall;
  const a = extentOf(box, RIGHT_SIDE);
  const b = extentOf(box, PLAN);
  const [aw, ah, bw, bh] = [a.right - a.left, a.high - a.low, b.right - b.left, b.high - b.low];
  // 13 at the left of A–A, 32 of chains and names between, 8 at the right; under both two lanes.
  const wide = (n: number): number => 13 + aw / n + 32 + bw / n + 8;
  const oneTo =
    largestScale((n) => wide(n) <= right - left && Math.max(ah, bh) / n + 18 + 22 <= bottom - top) ?? SMALLEST;
  const spare = right - left - wide(oneTo);
  const y = top + 18;
  const low = (h: number): number => Math.max(0, bottom - 22 - y - h / oneTo) * 0.35;
  return {
    oneTo,
    top: top + 4.5,
    a: viewAt(box, RIGHT_SIDE, oneTo, left + 13 + spare * 0.2, y + low(ah)),
    b: viewAt(box, PLAN, oneTo, left + 13 + aw / oneTo + 32 + spare * 0.6, y),
  };
}
const heading = (input: Prepared, name: string, scale: string, x: number, y: number): Item[] => {
  const left = Math.max(x, fieldOf(input.paper).left);
  const set = setText(input.faces, name, { x: left, y, size: SIZE.mark, face: 'semibold' });
  return [...set.items, ...label(input.faces, scale, left + set.width + 3.4, y)];
};

interface DrawnSection {
  readonly items: Item[];
  /** How far its dimensions reach below and to the right. */
  readonly below: number;
  readonly right: number;
  /** What else may not stand on. */
  readonly taken: readonly Rect[];
  /** Sizes without a place, in words. */
  readonly further: readonly string[];
}
function section(input: Prepared, id: string, piece: CutPiece, view: View, circles: readonly Rect[]): DrawnSection {
  const { plane } = piece;
  const drawn = drawSection(piece, view);
  const chains = plane.axis === 0 ? depthChains(input, plane, view) : widthChains(input, plane, view);
  const plan = placeDimensions({
    view: view.box,
    chains,
    room: { right: 26, below: 27 },
    measure: measureFigure(input.faces),
    beyond: 14,
    clear: { below: plane.axis === 2 ? pullsOut(input, view) + 1.5 : 0 },
  });
  const taken = plan.figures.map((f) => f.box);
  const names = plane.axis === 0 ? [] : boxNote(input, plane, view);
  const drawers = drawerNames(input, plane, view);
  const blocked = [...taken, ...circles, ...drawers.map((d) => d.box), ...names.map((n) => n.box)];
  const items = [
    group(id, drawn.items, { role: 'section', alt: id }),
    ...drawDimensions(input.faces, id, plan, view.oneTo),
    ...[...drawers, ...names].flatMap((d) => d.items),
    ...memberNames(input, drawn.cut, view, blocked, plane.axis === 0 ? 3 : 11, edgesOf(piece, view)),
  ];
  return { items, below: plan.depth.below, right: plan.depth.right, taken: blocked, further: furtherSizes(plan) };
}
/** Square lines beyond the plane as thin boxes on paper. */
const edgesOf = (piece: CutPiece, view: View): Rect[] =>
  piece.lines.flatMap((l): Rect[] => {
    const [x1, y1] = [view.origin[0] + l.a[0] / view.oneTo, view.origin[1] - l.a[1] / view.oneTo];
    const [x2, y2] = [view.origin[0] + l.b[0] / view.oneTo, view.origin[1] - l.b[1] / view.oneTo];
    const square = Math.abs(x1 - x2) < 0.01 || Math.abs(y1 - y2) < 0.01;
    const box = {
      x: Math.min(x1, x2) - 0.4,
      y: Math.min(y1, y2) - 0.4,
      w: Math.abs(x1 - x2) + 0.8,
      h: Math.abs(y1 - y2) + 0.8,
    };
    return square ? [box] : [];
  });
/** How far pulls stand out below a view of the plan. */
const pullsOut = (input: Prepared, view: View): number =>
  Math.max(
    0,
    ...pullBoxes(input)
      .map((b) => rectOf(view, b))
      .map((r) => r.y + r.h - view.box.y - view.box.h),
  );
const links = (input: Prepared, view: View, axis: 0 | 1 | 2, stations: readonly number[]): Link[] => {
  const k = Math.abs(view.direction.right[axis]) > 0.5 ? 0 : 1;
  const at = (v: number): number => onPaper(view, [axis === 0 ? v : 0, axis === 1 ? v : 0, axis === 2 ? v : 0])[k];
  const sorted = [...new Set(stations)].sort((p, q) => at(p) - at(q));
  return sorted.slice(1).map((v, i): Link => {
    const nm = Math.abs(v - (sorted[i] as number));
    return {
      from: at(sorted[i] as number),
      to: at(v),
      figure: printed(input, nm),
      nm,
      name: between(input, axis, sorted[i] as number, v),
    };
  });
};
/** What a size spans: the parts that are as long, or what stands at its two ends. */
function between(input: Prepared, axis: 0 | 1 | 2, a: number, b: number): string {
  const [low, high] = [Math.min(a, b), Math.max(a, b)];
  const marksOf = (test: (s: Span) => boolean): string[] =>
    input.model.standing.filter((s) => test(s.shoulder[axis])).map((s) => s.part.mark);
  const mine = marksOf((s) => s[0] === low && s[1] === high);
  if (mine.length > 0) return ranges(mine).slice(0, 2).join(' ');
  const [one, other] = [marksOf((s) => s[1] === low)[0], marksOf((s) => s[0] === high)[0]];
  return one && other ? `${one} to ${other}` : '';
}
/** The box of each drawer without its front, piece axes. */
function boxesOf(input: Prepared, plane: Plane) {
  const standing = new Map(input.model.standing.map((s) => [s.part.id, s]));
  return input.model.openings.flatMap((opening) => {
    const parts = opening.drawer.parts.filter((p) => p !== opening.drawer.front).flatMap((p) => standing.get(p) ?? []);
    if (parts.length === 0) return [];
    const box = round(parts.map((p) => p.shoulder));
    return box[plane.axis][0] < plane.at && plane.at < box[plane.axis][1] ? [{ opening, box }] : [];
  });
}
/** A–A: heights of drawer boxes and what lies under them at the right; front, box and the rest below. */
function depthChains(input: Prepared, plane: Plane, view: View): Chain[] {
  const cut = boxesOf(input, plane);
  const heights = cut.flatMap(({ opening, box }) => links(input, view, 2, [opening.up[0], box[2][0], box[2][1]]));
  const body = caseSpan(input, 1);
  const first = cut[0];
  const front = first && input.model.standing.find((s) => s.part.id === first.opening.drawer.front);
  const depth =
    first && front
      ? links(input, view, 1, [
          body[0],
          front.shoulder[1][0],
          front.shoulder[1][1],
          first.box[1][0],
          first.box[1][1],
          body[1],
        ])
      : links(input, view, 1, depthStations(input, plane, body));
  return [
    { id: 'boxes', side: 'right', links: heights.map((l) => l) },
    { id: 'depth', side: 'below', links: depth },
    ...(depth.length > 1 ? [{ id: 'body', side: 'below' as const, links: links(input, view, 1, body) }] : []),
  ];
}
/** Faces of the case parts that are cut, but no more than seven stations: else only the whole depth. */
function depthStations(input: Prepared, plane: Plane, body: Span): number[] {
  const cut = input.model.case.filter((s) => s.whole[plane.axis][0] < plane.at && plane.at < s.whole[plane.axis][1]);
  const thin = cut.filter((s) => s.square && s.shoulder[1][1] - s.shoulder[1][0] < (body[1] - body[0]) / 3);
  const stations = [...new Set([...body, ...thin.flatMap((s) => [...s.shoulder[1]])])].filter(
    (v) => v >= body[0] && v <= body[1],
  );
  return stations.length <= 7 ? stations : [...body];
}
/** The case without overhangs: what its tallest members span. */
function caseSpan(input: Prepared, axis: 0 | 1): Span {
  const tall = input.model.case.filter(
    (s) => s.shoulder[2][1] - s.shoulder[2][0] > (input.model.overall[2][1] - input.model.overall[2][0]) / 2,
  );
  return tall.length > 0 ? round(tall.map((s) => s.shoulder))[axis] : input.model.overall[axis];
}
/** B–B: members and clear widths across at mid depth. */
function widthChains(input: Prepared, plane: Plane, view: View): Chain[] {
  const body = caseSpan(input, 0);
  const [front, back] = input.model.overall[1];
  const mid = (front + back) / 2;
  const cut = input.model.case.filter(
    (s) =>
      s.square &&
      s.shoulder[2][0] < plane.at &&
      plane.at < s.shoulder[2][1] &&
      s.shoulder[1][0] < mid &&
      mid < s.shoulder[1][1],
  );
  const stations = [...body, ...cut.flatMap((s) => [...s.shoulder[0]])];
  const across = links(input, view, 0, stations);
  const chains: Chain[] = [{ id: 'widths', side: 'below', links: across }];
  const whole = [Math.min(...stations), Math.max(...stations)];
  if (across.length > 1) chains.push({ id: 'width', side: 'below', links: links(input, view, 0, whole) });
  return chains;
}

interface Placed {
  readonly items: Item[];
  readonly box: Rect;
}
function drawerNames(input: Prepared, plane: Plane, view: View): Placed[] {
  return boxesOf(input, plane).map(({ opening, box }) => {
    const [x, y] = onPaper(view, [
      (box[0][0] + box[0][1]) / 2,
      (box[1][0] + box[1][1]) / 2,
      (box[2][0] + box[2][1]) / 2,
    ]);
    const w = widthOf(input.faces, opening.drawer.mark, SIZE.name, 'semibold');
    return {
      items: label(input.faces, opening.drawer.mark, x, y + 1.5, {
        size: SIZE.name,
        face: 'semibold',
        anchor: 'middle',
      }),
      box: { x: x - w / 2, y: y - 2, w, h: 4 },
    };
  });
}
/** B–B: how wide the box is and how much less than its opening. */
function boxNote(input: Prepared, plane: Plane, view: View): Placed[] {
  return boxesOf(input, plane).flatMap(({ opening, box }): Placed[] => {
    const width = box[0][1] - box[0][0];
    const less = opening.across[1] - opening.across[0] - width;
    const words = `box ${printed(input, width)}: opening less ${printed(input, less)}`;
    const w = widthOf(input.faces, words, SIZE.text);
    const [x, y] = onPaper(view, [(box[0][0] + box[0][1]) / 2, (box[1][0] + box[1][1]) / 2, 0]);
    if (w > width / 1e6 / view.oneTo - 4) return [];
    return [
      {
        items: [...setText(input.faces, words, { x, y: y + 8.5, size: SIZE.text, anchor: 'middle' }).items],
        box: { x: x - w / 2, y: y + 5, w, h: 5 },
      },
    ];
  });
}

/** Ids of the cut members stand in the air beside them; thin ones get a balloon above B–B; one without air is left to the key. */
function memberNames(
  input: Prepared,
  cut: readonly CutPart[],
  view: View,
  blocked: readonly Rect[],
  right: number,
  edges: readonly Rect[],
): Item[] {
  const rects = cut.map((c) => c.box);
  const placed: Rect[] = [...blocked];
  const out: Item[] = [];
  const limit: Rect = { x: view.box.x - 11, y: view.box.y - 5, w: view.box.w + 11 + right, h: view.box.h + 5 };
  for (const c of cut) {
    if (c.standing.part.drawer !== undefined) continue;
    const { mark } = c.standing.part;
    if (Math.min(c.box.w, c.box.h) < 1.2) {
      out.push(...thinName(input, c, view));
      continue;
    }
    const w = widthOf(input.faces, mark, SIZE.text, 'semibold');
    const spots = spotsBeside(c.box, w).filter((s) => {
      const roomy = { x: s.x - 0.5, y: s.y - 0.5, w: s.w + 1, h: s.h + 1 };
      const within =
        s.x >= limit.x && s.y >= limit.y && s.x + s.w <= limit.x + limit.w && s.y + s.h <= limit.y + limit.h;
      return within && !rects.some((r) => collide(r, roomy)) && !placed.some((p) => collide(p, roomy));
    });
    // Best in clear air; else over lines that lie beyond, which are interrupted.
    const free = spots.find((s) => !edges.some((e) => collide(e, s))) ?? spots[0];
    if (!free) continue;
    placed.push(free);
    out.push(fill('white', rectPath(free.x - 0.4, free.y - 0.4, free.w + 0.8, free.h + 0.8)));
    out.push(...label(input.faces, mark, free.x, free.y + free.h, { face: 'semibold' }));
  }
  return out;
}
function spotsBeside(box: Rect, w: number): Rect[] {
  const h = 2.5;
  return [0.5, 0.3, 0.7, 0.15, 0.85].flatMap((f): Rect[] => [
    { x: box.x + box.w + 2, y: box.y + box.h * f - h / 2, w, h },
    { x: box.x - 2 - w, y: box.y + box.h * f - h / 2, w, h },
    { x: box.x + box.w * f - w / 2, y: box.y - 1.4 - h, w, h },
    { x: box.x + box.w * f - w / 2, y: box.y + box.h + 1.4, w, h },
  ]);
}
/** A lying thin panel at the top edge of a view carries a balloon above it; elsewhere the other section names it. */
function thinName(input: Prepared, c: CutPart, view: View): Item[] {
  if (c.box.w < 20 || c.box.y > view.box.y + 4) return [];
  const x = c.box.x + c.box.w * 0.2;
  const y = c.box.y - 8;
  return [
    ...leader([x + 2.2, y + 3], [x + 5, c.box.y + c.box.h / 2]),
    ...balloon(input.faces, c.standing.part.mark, x, y),
  ];
}
