import { byAxis } from '../../geom/box.js';
import type { Span, Vec3 } from '../../geom/box.js';
import { dot } from '../../geom/placement.js';
import { NM_PER_MM } from '../../lengths/length.js';
import { brokenEdges, brokenWindow } from '../broken.js';
import { drawDimensions, furtherSizes, measureFigure } from '../chains.js';
import { collide, placeDimensions } from '../dimensions.js';
import type { Chain, DimensionPlan, Link, Point, Rect, Side } from '../dimensions.js';
import { balloon, group, label, line, rectPath } from '../draw.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import { drawSection } from '../section.js';
import type { CutPart, CutPiece } from '../section.js';
import { cornersOf } from '../stations.js';
import { blockDrop, setBlock, setText, widthOf, wrap } from '../text.js';
import { onPaper } from '../views.js';
import type { View } from '../views.js';
import { ratio } from './detailScale.js';
import type { Spot } from './detailSpots.js';

/** A detail at a scale, measured: it is placed and lettered when its sheet knows where. */
export interface Detail {
  readonly spot: Spot;
  readonly oneTo: number;
  readonly w: number;
  readonly h: number;
  /** Draws it with its upper left corner at (x, y). */
  draw(letter: string, x: number, y: number): Item[];
}
/** Heading over a detail; room for its dimensions. */
const HEADING = 10.5;
const ROOM: Readonly<Record<Side, number>> = { left: 21, right: 21, above: 17, below: 17 };

/** A detail of a spot at 1 : oneTo, with all its dimensions. */
export function detailOf(input: Prepared, spot: Spot, oneTo: number): Detail {
  const [w, h] = spot.window.map((s) => (s[1] - s[0]) / NM_PER_MM / oneTo) as [number, number];
  const measured = measure(input, spot, { x: 0, y: 0, w, h }, oneTo);
  const { depth } = measured;
  const words = furtherSizes(measured).join(', ');
  const title = widthOf(input.faces, spot.name, SIZE.figure, 'semibold') + 10 + 6 + widthOf(input.faces, scaleWords(spot, oneTo), SIZE.text); // prettier-ignore
  const wide = Math.max(title, ink(measured, w, 'left') + w + ink(measured, w, 'right'));
  const note = words === '' ? 0 : 5 + blockDrop(wrap(input.faces, `Also ${words}`, wide, SIZE.text));
  return {
    spot,
    oneTo,
    w: wide,
    h: HEADING + depth.above + h + Math.max(depth.below, lowest(measured, h)) + note,
    draw(letter, x, y) {
      const spare = wide - ink(measured, w, 'left') - w - ink(measured, w, 'right');
      const frame = { x: x + ink(measured, w, 'left') + spare / 2, y: y + HEADING + depth.above, w, h };
      const plan = { dimensions: measure(input, spot, frame, oneTo), oneTo };
      const below = frame.y + h + Math.max(depth.below, lowest(measured, h));
      return [
        ...headingOf(input, spot, letter, oneTo, x, y + 3.7, wide),
        ...picture(input, spot, letter, frame, plan),
        ...drawDimensions(input.faces, `detail-${letter.toLowerCase()}`, plan.dimensions, oneTo),
        ...(words === ''
          ? []
          : setBlock(input.faces, `Also ${words}`, { x, y: below + 5, size: SIZE.text, width: wide }).items),
      ];
    },
  };
}
/** How far figures and lines stand out from the window at a side. */
const ink = (plan: DimensionPlan, w: number, side: 'left' | 'right'): number =>
  Math.max(plan.depth[side], 0, ...plan.figures.map((f) => (side === 'left' ? -f.box.x : f.box.x + f.box.w - w)));
const lowest = (plan: DimensionPlan, h: number): number =>
  Math.max(0, ...plan.figures.map((f) => f.box.y + f.box.h - h));
const scaleWords = (spot: Spot, oneTo: number): string => `${spot.look} ${ratio(oneTo)}`;
function headingOf(
  input: Prepared,
  spot: Spot,
  letter: string,
  oneTo: number,
  x: number,
  y: number,
  width: number,
): Item[] {
  return [
    ...balloon(input.faces, letter, x + 3.7, y),
    ...setText(input.faces, spot.name, { x: x + 10, y: y + 1.2, size: SIZE.figure, face: 'semibold' }).items,
    ...label(input.faces, scaleWords(spot, oneTo), x + width, y + 1.2, { anchor: 'end' }),
    ...line('N', x + 10, y + 3.5, x + width, y + 3.5),
  ];
}

// ---- what it measures ---------------------------------------------------------------------------------------------------------

/** A coordinate at which corners lie, paper; and how far the nearest of them is from each of the two sides that show it. */
interface Station {
  readonly nm: number;
  readonly at: number;
  readonly near: readonly [number, number];
  readonly parts: ReadonlySet<string>;
  /** How much it says beside one that prints on it. */
  readonly worth: number;
}
function measure(input: Prepared, spot: Spot, frame: Rect, oneTo: number): DimensionPlan {
  const recipes = new Map(input.solids.parts.map((s) => [s.id, s.recipe]));
  const thicknessOf = new Map(input.piece.parts.map((p) => [p.id, p.size[p.thickness].value]));
  const all = cornersOf(spot.piece, recipes, (id) => spot.focus.has(id));
  const inside = all.filter((c) => [0, 1].every((k) => holds(spot.window[k] as Span, c.at[k] as number)));
  const paper = (k: 0 | 1, v: number): number => {
    const off = (v - (spot.window[k] as Span)[0]) / NM_PER_MM / oneTo;
    return k === 0 ? frame.x + off : frame.y + frame.h - off;
  };
  const stations = (k: 0 | 1): Station[] => {
    const other = k === 0 ? 1 : 0;
    const [low, high] = k === 0 ? [frame.y + frame.h, frame.y] : [frame.x, frame.x + frame.w];
    const values = [...new Set(inside.map((c) => c.at[k]))].sort((p, q) => p - q);
    return values.map((nm) => {
      const here = inside.filter((c) => c.at[k] === nm);
      const near = (side: number): number => Math.min(...here.map((c) => Math.abs(paper(other, c.at[other]) - side)));
      const thick = Math.max(...here.map((c) => thicknessOf.get(c.part) ?? 0));
      const worth = thick + (nm % input.piece.step === 0 ? 1e12 : 0);
      return { nm, at: paper(k, nm), near: [near(low), near(high)], parts: new Set(here.map((c) => c.part)), worth };
    });
  };
  const chains: Chain[] = [
    ...sideChains(input, 'below', 'above', stations(0), frame.h),
    ...sideChains(input, 'left', 'right', stations(1), frame.w),
  ];
  return placeDimensions({ view: frame, chains, room: ROOM, beyond: 12, measure: measureFigure(input.faces) });
}
const holds = (s: Span, v: number): boolean => v >= s[0] && v <= s[1];
/** A corner counts for a side when it lies in the half of the window toward it, or a little farther. */
const TOWARD = 0.56;
/** Each station is measured on the sides that have corners of it near; a size that both sides would give, on the first. */
function sideChains(input: Prepared, first: Side, second: Side, stations: readonly Station[], across: number): Chain[] {
  const of = (k: 0 | 1): Station[] => apart(stations.filter((s) => s.near[k] <= TOWARD * across));
  const all = stations.map((s) => s.at).sort((p, q) => p - q);
  const near = linksOf(input, of(0), 0, all);
  const said = new Set(near.map((l) => `${l.from} ${l.to}`));
  const far = linksOf(input, of(1), 1, all).filter((l) => !said.has(`${l.from} ${l.to}`));
  return [
    { id: `detail ${first}`, side: first, links: near },
    { id: `detail ${second}`, side: second, links: far },
  ].filter((c) => c.links.length > 0);
}
/** Of stations that would print as one line, the one on the shop's step, then the one on the thickest part: the groove, not the panel in it. */
function apart(stations: readonly Station[]): Station[] {
  const out: Station[] = [];
  for (const s of [...stations].sort((p, q) => p.at - q.at)) {
    const last = out.at(-1);
    if (!last || s.at - last.at >= ONE_LINE) out.push(s);
    else if (s.worth > last.worth) out[out.length - 1] = s;
  }
  return out;
}
/** Gaps under this on paper are drawn as one line (after ISO 128-2). */
const ONE_LINE = 0.7;
/** Sizes between neighbours: of one part, or of the air between two; never over something of a third. */
function linksOf(input: Prepared, stations: readonly Station[], k: 0 | 1, all: readonly number[]): Link[] {
  const sorted = [...stations].sort((p, q) => p.at - q.at);
  return sorted.slice(1).flatMap((to, i): Link[] => {
    const from = sorted[i] as Station;
    const nm = Math.abs(to.nm - from.nm);
    const shared = [...from.parts].some((p) => to.parts.has(p));
    if (!shared && all.some((at) => at > from.at + ONE_LINE && at < to.at - ONE_LINE)) return [];
    return [{ from: from.at, to: to.at, figure: printed(input, nm), nm, inset: [from.near[k], to.near[k]] }];
  });
}

// ---- what it shows ------------------------------------------------------------------------------------------------------------

/** Lines along the rim of the window, which the freehand line would show in pieces, are left out. */
const RIM = 0.9;
function offRim(piece: CutPiece, view: View, frame: Rect): CutPiece {
  const on = ([x, y]: readonly [number, number]): Point => [
    view.origin[0] + x / view.oneTo,
    view.origin[1] - y / view.oneTo,
  ];
  const rims = [
    (p: Point) => p[0] - frame.x,
    (p: Point) => p[0] - frame.x - frame.w,
    (p: Point) => p[1] - frame.y,
    (p: Point) => p[1] - frame.y - frame.h,
  ];
  const along = (a: Point, b: Point): boolean => rims.some((r) => Math.abs(r(a)) < RIM && Math.abs(r(b)) < RIM);
  return { ...piece, lines: piece.lines.filter((l) => !along(on(l.a), on(l.b))) };
}
function picture(
  input: Prepared,
  spot: Spot,
  letter: string,
  frame: Rect,
  { dimensions, oneTo }: { readonly dimensions: DimensionPlan; readonly oneTo: number },
): Item[] {
  const [x, y] = spot.window;
  const view: View = {
    direction: spot.piece.plane.direction,
    oneTo,
    origin: [frame.x - x[0] / NM_PER_MM / oneTo, frame.y + frame.h + y[0] / NM_PER_MM / oneTo],
    box: frame,
  };
  // A knob that reaches into the window would be a stray line.
  const wood = new Set(input.piece.parts.map((p) => p.id));
  const piece = { ...spot.piece, lines: spot.piece.lines.filter((l) => l.ids.some((id) => wood.has(id))) };
  const drawn = drawSection(offRim(piece, view, frame), view, frame);
  const lines = dimensions.lines.map((l): Rect => {
    const [x1, y1] = [Math.min(l.a[0], l.b[0]), Math.min(l.a[1], l.b[1])];
    return { x: x1, y: y1, w: Math.abs(l.a[0] - l.b[0]), h: Math.abs(l.a[1] - l.b[1]) };
  });
  const names = drawn.cut.flatMap((c) => nameIn(input, c, frame, lines));
  const id = `view-detail-${letter.toLowerCase()}`;
  return [
    group(id, [...drawn.items, ...names], { role: 'detail', clip: brokenWindow(frame), alt: spot.name }),
    ...brokenEdges(
      frame,
      drawn.cut.map((c) => c.rings),
    ),
  ];
}
const PLACES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
/** The id of a cut part where it has room for it, on white. */
function nameIn(input: Prepared, c: CutPart, frame: Rect, lines: readonly Rect[]): Item[] {
  const { mark } = c.standing.part;
  const seen = overlap(c.box, { x: frame.x + 1, y: frame.y + 1, w: frame.w - 2, h: frame.h - 2 });
  if (!seen) return [];
  const w = widthOf(input.faces, mark, SIZE.text, 'semibold');
  for (const fy of PLACES)
    for (const fx of PLACES) {
      const [x, base] = [seen.x + seen.w * fx, seen.y + seen.h * fy + 1.2];
      const box = { x: x - w / 2 - 0.5, y: base - 2.9, w: w + 1, h: 3.4 };
      if (!inWood(c, box) || !within(box, seen) || lines.some((l) => collide(l, box))) continue;
      return [
        { kind: 'fill', tone: 'white', d: rectPath(box.x, box.y, box.w, box.h) },
        ...label(input.faces, mark, x, base, { face: 'semibold', anchor: 'middle' }),
      ];
    }
  return [];
}
const within = (a: Rect, b: Rect): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.w <= b.x + b.w && a.y + a.h <= b.y + b.h;
/** True where a box lies in the cut wood: its rim, point by point (even-odd rule). */
const inWood = (c: CutPart, b: Rect): boolean =>
  [0, 0.25, 0.5, 0.75, 1].every((f) => [0, 0.5, 1].every((g) => inRings(c, b.x + b.w * f, b.y + b.h * g)));
function inRings(c: CutPart, x: number, y: number): boolean {
  let inside = false;
  for (const ring of c.rings)
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      if (p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])) inside = !inside;
    });
  return inside;
}
function overlap(a: Rect, b: Rect): Rect | undefined {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  const [r, f] = [Math.min(a.x + a.w, b.x + b.w), Math.min(a.y + a.h, b.y + b.h)];
  return r > x && f > y ? { x, y, w: r - x, h: f - y } : undefined;
}

/** The middle of a spot on a view, and half its size there, whether it is seen from the same side or stands edge-on. */
export function spotOn(spot: Spot, view: View): { readonly at: readonly [number, number]; readonly half: number } {
  const { plane } = spot.piece;
  const { right, up } = plane.direction;
  const [x, y] = spot.window.map((s) => (s[0] + s[1]) / 2) as [number, number];
  const at = byAxis((i) => (i === plane.axis ? plane.at : right[i] * x + up[i] * y)) as Vec3;
  const sides = spot.window.filter((_, k) => {
    const along = k === 0 ? right : up;
    return Math.abs(dot(along, view.direction.toward)) < 0.5;
  });
  return { at: onPaper(view, at), half: Math.max(...sides.map((s) => (s[1] - s[0]) / 2)) / NM_PER_MM / view.oneTo };
}
