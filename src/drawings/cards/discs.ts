import { faceAxis } from '../../geom/axis.js';
import type { Cut } from '../../words/cut.js';
import type { Rect } from '../dimensions.js';
import { collide } from '../dimensions.js';
import { disc, line } from '../draw.js';
import type { Item } from '../picture.js';
import type { Look } from './panel.js';
import { across, centreOf, onView, overBreak, shows, spansOf } from './view.js';
import type { Placed } from './view.js';

type Four = readonly [number, number, number, number];
type At = readonly [number, number];
const box = (cx: number, cy: number, w: number, h: number): Rect => ({ x: cx - w / 2, y: cy - h / 2, w, h });
const rectOf = ([x, y, w, h]: Four, air = 0): Rect => ({ x: x - air, y: y - air, w: w + 2 * air, h: h + 2 * air });

/** Where the datum stands at the right a view is laid out from there, so that a right-hand part's card is the mirror of the left's. */
export const fromRight = (v: Placed): boolean => v.frame.datum[across(v.side)] === v.side.right;
/** A share of a view's width, counted from its datum's side. */
export const shareX = (v: Placed, k: number): number => v.x + v.w * (fromRight(v) ? 1 - k : k);

/** Places of one callout closer than this have one disc, mm on paper. */
const NEIGHBOUR = 6.2;
/** A disc is 5 across; so much of the paper is its own, mm. */
const ROOM = 5.4;
/** What a fault of a disc's place counts beside 1 for each mm that it stands off its cut (our default). */
const FAULT = {
  hides: 14,
  overWork: 14,
  nearerOther: 8,
  crosses: 9,
  offWood: 9,
  overBreak: 12,
  slants: 0.8,
  missed: 60,
};

/** A cut's place on a view, and the disc that is to stand there. */
interface Want {
  readonly number: number;
  readonly r: Four;
  /** Work of other discs, to keep off. */
  readonly others: readonly Four[];
}
/** A numbered disc at each place of each cut that shows here: on its own work, else beside it with a leader. `cost`: how badly they stand. */
export function discs(
  look: Look,
  v: Placed,
  taken: readonly Rect[],
): { readonly items: Item[]; readonly taken: readonly Rect[]; readonly cost: number } {
  const { faces } = look;
  const all = [...taken];
  const items: Item[] = [];
  let cost = 0;
  const wants = wantsOf(look, v);
  // What has the least choice comes first: small work before long grooves.
  const order = wants.map((w, i) => ({ w, i, size: Math.max(w.r[2], w.r[3]) })).sort((a, b) => a.size - b.size || a.i - b.i); // prettier-ignore
  for (const { w } of order) {
    const spot = place(w, v, all);
    if (!spot) {
      cost += FAULT.missed;
      continue;
    }
    cost += spot.cost;
    const [px, py] = spot.at;
    all.push(box(px, py, 5.6, 5.6));
    const [cx, cy] = nearest(w.r, spot.at);
    if (Math.abs(cx - px) + Math.abs(cy - py) > 2.5) items.unshift(...line('N', px, py, cx, cy));
    items.push(...disc(faces, w.number, px, py));
  }
  return { items, taken: all, cost };
}
function wantsOf({ card }: Look, v: Placed): Want[] {
  const shown = card.callouts.flatMap((callout) => {
    if (callout.trial) return [];
    const own: At[] = [];
    return callout.cuts.flatMap((id) => {
      const cut = card.part.cuts.find((c) => c.id === id);
      if (!cut || !shows(cut, v)) return [];
      const r = discPlace(cut, v);
      // What is one act over a stretch of wood has one disc there.
      const at = centreOf(r);
      const near = isPlaced(cut) && !(cut.shape === 'dovetail' && cut.as === 'end-socket') ? NEIGHBOUR : 14;
      const again = own.some((o) => Math.abs(o[0] - at[0]) + Math.abs(o[1] - at[1]) < near);
      if (!again) own.push(at);
      return [{ number: callout.number, cut, r, again }];
    });
  });
  const work = shown.filter((s) => isBounded(s.cut)).map((s) => ({ number: s.number, r: onView(v, spansOf(s.cut, v.frame)) })); // prettier-ignore
  return shown.flatMap(({ number, r, again }) =>
    again ? [] : [{ number, r, others: work.filter((o) => o.number !== number && !covers(o.r, r)).map((o) => o.r) }],
  );
}
/** Work that most of this work lies in, or is: a disc on the one is on the other too. */
const covers = (o: Four, r: Four): boolean => {
  const over = (a: 0 | 1): number => Math.min(o[a] + o[(a + 2) as 2], r[a] + r[(a + 2) as 2]) - Math.max(o[a], r[a]);
  return over(0) >= 0.6 * r[2] - 0.01 && over(1) >= 0.6 * r[3] - 0.01;
};
const isPlaced = (c: Cut): boolean => c.shape === 'box' || c.shape === 'dovetail' || c.shape === 'bore' || c.shape === 'mark'; // prettier-ignore
/** Work that a disc of another may be taken for: not what is shaped all over. */
const isBounded = (c: Cut): boolean => isPlaced(c) || c.shape === 'tails' || c.shape === 'tenon';

const clamp = (x: number, lo: number, hi: number): number => Math.min(Math.max(x, lo), hi);
const nearest = (r: Four, [x, y]: At): At => [clamp(x, r[0], r[0] + r[2]), clamp(y, r[1], r[1] + r[3])];
const isSlanted = (r: Four, at: At): boolean => {
  const [x, y] = nearest(r, at);
  return Math.abs(x - at[0]) > 0.1 && Math.abs(y - at[1]) > 0.1;
};
const off = (r: Four, at: At): number => {
  const [x, y] = nearest(r, at);
  return Math.abs(x - at[0]) + Math.abs(y - at[1]);
};
/** The best place for a disc, and how bad it is; undefined when all are taken. */
function place(w: Want, v: Placed, taken: readonly Rect[]): { readonly at: At; readonly cost: number } | undefined {
  let best: { at: At; cost: number } | undefined;
  for (const at of spots(w.r, v)) {
    // It costs at least its distance.
    if (best && off(w.r, at) >= best.cost) continue;
    const here = box(at[0], at[1], ROOM, ROOM);
    if (taken.some((t) => collide(t, here))) continue;
    const cost = badness(w, v, at, taken, best?.cost ?? Infinity);
    if (!best || cost < best.cost - 1e-9) best = { at, cost };
  }
  return best;
}
/** On the cut and beside it, from its middle outward; then all over the wood near it. In a mirrored view, mirrored. */
function spots(r: Four, v: Placed): At[] {
  const [cx, cy] = centreOf(r);
  const way = fromRight(v) ? -1 : 1;
  const long = r[2] >= r[3];
  const out: At[] = [];
  for (const d of [0, 5, -5, 6.5, -6.5])
    for (const k of [0, -0.15, 0.15, -0.28, 0.28, -0.38, 0.38])
      out.push(long ? [cx + way * k * r[2], cy + d] : [cx + way * d, cy + k * r[3]]);
  for (let dx = -26; dx <= 26; dx += 1.3)
    for (let dy = -26; dy <= 26; dy += 1.3) if (Math.abs(dx) + Math.abs(dy) < 26) out.push([cx + way * dx, cy + dy]);
  // Below the wood stands the caption.
  return out.filter(([x, y]) => x > v.x - 1 && x < v.x + v.w + 1 && y > v.y - 1 && y < v.y + v.h - 0.5);
}
function badness(w: Want, v: Placed, at: At, taken: readonly Rect[], most: number): number {
  const { r } = w;
  const d = off(r, at);
  const [cx, cy] = centreOf(r);
  // A disc would hide work smaller than itself: it stands beside it.
  const small = Math.min(r[2], r[3]) < 2.6 ? Math.max(r[2], r[3]) < 9 : Math.max(r[2], r[3]) < 4.6;
  let cost =
    d +
    0.05 * (Math.abs(at[0] - cx) + Math.abs(at[1] - cy)) +
    (small && collide(rectOf(r, 0.9), box(at[0], at[1], 5, 5)) ? FAULT.hides : 0);
  if (d > 2.7 && isSlanted(r, at)) cost += FAULT.slants;
  if (cost >= most) return cost;
  const here = box(at[0], at[1], 5.2, 5.2);
  if (here.x < v.x || here.y < v.y || here.x + 5.2 > v.x + v.w || here.y + 5.2 > v.y + v.h) cost += FAULT.offWood;
  if (overBreak(v, here)) cost += FAULT.overBreak;
  const foot = nearest(r, at);
  const way = (k: number): At => [at[0] + (foot[0] - at[0]) * k, at[1] + (foot[1] - at[1]) * k];
  const path = d > 2.7 ? [0.3, 0.45, 0.6, 0.75, 0.9].map(way) : [];
  for (const o of w.others) {
    if (cost >= most) return cost;
    if (collide(rectOf(o, 0.3), here)) cost += FAULT.overWork;
    else if (path.length > 0 && off(o, at) < d) cost += FAULT.nearerOther;
    if (path.some((p) => off(o, p) < 0.05 && off(o, foot) > 0.05)) cost += FAULT.crosses;
  }
  // Nor does a leader run under a name or another disc.
  if (path.some((p) => taken.some((t) => collide(t, box(p[0], p[1], 0.6, 0.6))) || overBreak(v, box(p[0], p[1], 0.6, 0.6)))) cost += FAULT.crosses; // prettier-ignore
  return cost;
}
/** Where the disc of a cut belongs: on the cut; of tails and tenons just inside their base line, so that they stay in sight. */
function discPlace(cut: Cut, v: Placed): Four {
  const r = onView(v, spansOf(cut, v.frame));
  if ((cut.shape !== 'tails' && cut.shape !== 'tenon') || faceAxis(v.side.face) === faceAxis(cut.end)) return r;
  const inward = Math.min(3.2, (cut.end === v.side.left || cut.end === v.side.right ? v.w : v.h) / 4);
  if (cut.end === v.side.left) return [r[0] + r[2] + inward, r[1], 0, r[3]];
  if (cut.end === v.side.right) return [r[0] - inward, r[1], 0, r[3]];
  return cut.end === v.side.top ? [r[0], r[1] + r[3] + inward, r[2], 0] : [r[0], r[1] - inward, r[2], 0];
}
