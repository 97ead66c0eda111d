import { collide } from '../dimensions.js';
import type { Point, Rect } from '../dimensions.js';
import { balloon, circle, group, label, leader, line, rectPath, unit } from '../draw.js';
import { fieldOf } from '../frame.js';
import type { Prepared } from '../input.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import { drawSection } from '../section.js';
import type { CutPart, CutPiece } from '../section.js';
import { setText, widthOf } from '../text.js';
import { onPaper, rectOf } from '../views.js';
import { pullBoxes } from './elevations.js';
import type { View } from '../views.js';

/** A place worth seeing larger, in piece axes (nm), and what to call it. */
interface Spot {
  readonly letter: string;
  readonly name: string;
  readonly piece: CutPiece;
  readonly view: View;
  readonly at: readonly [number, number, number];
}
const SCALE = 2;
const HEIGHT = 44;

/**
 * Details at 1:2 under B–B: Y the corner of a drawer in plan, Z its foot in the section through the depth, cut off by a
 * frame. They are left out where there is no room or no drawer.
 */
export function details(input: Prepared, a: CutPiece, av: View, b: CutPiece, bv: View, under: number): Item[] {
  const { bottom, right } = fieldOf(input.paper);
  const top = bv.box.y + bv.box.h + under;
  const room = bottom - 6 - (top + 6);
  const spots = spotsOf(input, a, av, b, bv);
  if (room < 36 || spots.length === 0) return [];
  const left = Math.max(bv.box.x - 12, av.box.x + av.box.w + 24);
  const gap = 16;
  const wide = Math.min(52, (right - left - gap * (spots.length - 1)) / spots.length);
  return spots.flatMap((s, i) => {
    const x = left + i * (wide + gap);
    const frame = { x, y: top + 10, w: wide, h: Math.min(room - 4, HEIGHT) };
    return [...detail(input, s, frame, top), ...mark(input, s)];
  });
}
function spotsOf(input: Prepared, a: CutPiece, av: View, b: CutPiece, bv: View): Spot[] {
  const standing = new Map(input.model.standing.map((s) => [s.part.id, s]));
  const cutBy = (piece: CutPiece, id: string): boolean => piece.parts.some((p) => p.standing.part.id === id);
  const out: Spot[] = [];
  const plan = input.model.openings.find((o) => cutBy(b, o.drawer.front));
  const front = plan && standing.get(plan.drawer.front);
  if (plan && front) {
    const [x, y] = [plan.across[0], front.shoulder[1][1]];
    out.push({
      letter: 'Y',
      name: `Corner of ${plan.drawer.mark}, plan`,
      piece: b,
      view: bv,
      at: [x + 12e6, y + 8e6, b.plane.at],
    });
  }
  const deep = input.model.openings.find((o) => cutBy(a, o.drawer.front));
  const face = deep && standing.get(deep.drawer.front);
  if (deep && face) {
    const at: [number, number, number] = [a.plane.at, face.shoulder[1][1] + 8e6, deep.up[0] + 6e6];
    out.push({ letter: 'Z', name: `Foot of ${deep.drawer.mark}, section`, piece: a, view: av, at });
  }
  return out;
}
/** The same place at 1:2 inside a frame; the balloon opens its heading. */
function detail(input: Prepared, spot: Spot, frame: Rect, y: number): Item[] {
  const centre: Point = [frame.x + frame.w / 2, frame.y + frame.h / 2];
  const shifted: View = { ...spot.view, oneTo: SCALE, origin: [0, 0] };
  const [px, py] = onPaper(shifted, spot.at);
  const view: View = { ...shifted, origin: [centre[0] - px, centre[1] - py] };
  const drawn = drawSection(spot.piece, view, true);
  const names = drawn.cut.flatMap((c): Item[] => {
    const seen = overlap(c.box, frame);
    const { mark } = c.standing.part;
    const w = widthOf(input.faces, mark, SIZE.text, 'semibold');
    if (!seen || seen.w < w + 1.6 || seen.h < 4.2) return [];
    const [x, base] = [seen.x + seen.w / 2, seen.y + seen.h / 2 + 1.2];
    if (
      ![
        [x - w / 2, base - 2.6],
        [x + w / 2, base - 2.6],
        [x, base - 1.2],
        [x - w / 2, base],
        [x + w / 2, base],
      ].every(([u = 0, v = 0]) => holds(c, u, v))
    )
      return [];
    const cover = rectPath(x - w / 2 - 0.6, base - 3, w + 1.2, 3.6);
    return [
      { kind: 'fill', tone: 'white', d: cover },
      ...label(input.faces, mark, x, base, { face: 'semibold', anchor: 'middle' }),
    ];
  });
  const clip = rectPath(frame.x, frame.y, frame.w, frame.h);
  const scale = `1:${SCALE}`;
  return [
    ...balloon(input.faces, spot.letter, frame.x + 3.7, y),
    ...setText(input.faces, spot.name, { x: frame.x + 10, y: y + 1.2, size: SIZE.figure, face: 'semibold' }).items,
    ...label(input.faces, scale, frame.x + frame.w, y + 1.2, { anchor: 'end' }),
    ...line('N', frame.x + 10, y + 3.5, frame.x + frame.w, y + 3.5),
    group(`detail-${spot.letter.toLowerCase()}`, [...drawn.items, ...names], { role: 'detail', clip, alt: spot.name }),
    ...[
      line('N', frame.x, frame.y, frame.x + frame.w, frame.y),
      line('N', frame.x, frame.y + frame.h, frame.x + frame.w, frame.y + frame.h),
      line('N', frame.x, frame.y, frame.x, frame.y + frame.h),
      line('N', frame.x + frame.w, frame.y, frame.x + frame.w, frame.y + frame.h),
    ].flat(),
  ];
}
/** True where the point lies in the cut wood (even-odd rule). */
function holds(c: CutPart, x: number, y: number): boolean {
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
/** Circle on the section and its balloon in the view's left margin. */
function mark(input: Prepared, spot: Spot): Item[] {
  const at = onPaper(spot.view, spot.at);
  const r = 5;
  const x = Math.max(spot.view.box.x - 11, fieldOf(input.paper).left + 3.7);
  const pulls = pullBoxes(input).map((b) => rectOf(spot.view, b));
  const free = [-7, 10, -15, 2.5].find((dy) => {
    const box = { x: x - 4.5, y: at[1] + dy - 4.5, w: 9, h: 9 };
    return !pulls.some((p) => collide(p, box));
  });
  const centre: Point = [x, at[1] + (free ?? -7)];
  const u = unit(centre, at);
  const d = Math.sqrt((at[0] - centre[0]) ** 2 + (at[1] - centre[1]) ** 2);
  const end: Point = [centre[0] + u[0] * (d - r), centre[1] + u[1] * (d - r)];
  return [
    ...circle('D', at[0], at[1], r),
    ...leader([centre[0] + u[0] * 3.7, centre[1] + u[1] * 3.7], end).slice(0, 1),
    ...balloon(input.faces, spot.letter, centre[0], centre[1]),
  ];
}
