import type { Faces } from '../type/type.js';
import type { Rect } from './dimensions.js';
import { balloon, leader, unit } from './draw.js';
import type { Point } from './draw.js';
import type { Standing } from './model.js';
import type { Item } from './picture.js';
import { spread } from './spread.js';
import type { Axis } from '../geom/axis.js';
import type { Direction, View } from './views.js';
import { rectOf } from './views.js';

/** Balloon radius and pitch in a column (after ISO 6433; sizes our default). */
const R = 3.7;
const PITCH = 8.4;
export interface Target {
  readonly mark: string;
  readonly at: Point;
}

/** Distance of a part's near face toward the eye, nm. */
function nearness(s: Standing, toward: Direction['toward']): number {
  const axis: Axis = toward[0] !== 0 ? 0 : toward[1] !== 0 ? 1 : 2;
  const [a, b] = s.shoulder[axis];
  return Math.max(a * toward[axis], b * toward[axis]);
}

/**
 * A place on a part where it shows in a view, as near the right as may be, else undefined. `reach` is how far from the
 * right edge of the view it may lie (share of the width), so that leaders stay short.
 */
export function showing(view: View, part: Standing, all: readonly Standing[], reach: number): Point | undefined {
  const r = rectOf(view, part.shoulder);
  if (Math.min(r.w, r.h) < 0.9) return undefined;
  const near = nearness(part, view.direction.toward);
  const before = all
    .filter((s) => s !== part && nearness(s, view.direction.toward) > near - 1)
    .map((s) => rectOf(view, s.shoulder));
  const inset = Math.min(1.4, r.w / 2 - 0.01);
  for (const fx of [0.95, 0.9, 0.8, 0.65, 0.5, 0.35]) {
    for (const fy of [0.5, 0.35, 0.65, 0.2, 0.8]) {
      const at: Point = [Math.min(r.x + r.w * fx, r.x + r.w - inset), r.y + r.h * fy];
      if (at[0] < view.box.x + view.box.w * (1 - reach)) continue;
      if (!before.some((b) => within(b, at))) return at;
    }
  }
  return undefined;
}
const within = (r: Rect, p: Point): boolean =>
  p[0] > r.x - 0.7 && p[0] < r.x + r.w + 0.7 && p[1] > r.y - 0.7 && p[1] < r.y + r.h + 0.7;

/** The targets in an order in which no two leaders cross, as far as exchanging pairs goes. */
function uncrossed(targets: readonly Target[], x: number, ys: readonly number[]): Target[] {
  const out = [...targets];
  const side = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
    side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
  for (let pass = 0; pass < 20; pass++) {
    let changed = false;
    for (let i = 0; i < out.length; i++)
      for (let k = i + 1; k < out.length; k++) {
        const [p, q] = [out[i] as Target, out[k] as Target];
        if (!cross([x, ys[i] as number], p.at, [x, ys[k] as number], q.at)) continue;
        [out[i], out[k]] = [q, p];
        changed = true;
      }
    if (!changed) break;
  }
  return out;
}

/** A column of balloons at `x`, in the order of their targets, pitch kept; those that find no place are left over. */
export function balloonColumn(
  faces: Faces,
  targets: readonly Target[],
  x: number,
  within: readonly [number, number],
): { readonly items: Item[]; readonly left: readonly Target[] } {
  const sorted = [...targets].sort((a, b) => a.at[1] - b.at[1] || (a.mark < b.mark ? -1 : 1));
  const room = Math.max(0, Math.floor((within[1] - within[0] - 2 * R) / PITCH) + 1);
  const kept = sorted.slice(0, room);
  const ys = spread(
    kept.map((t) => ({ at: t.at[1], half: R })),
    { gap: 0.6, pitch: PITCH, blocked: [], within },
  );
  if (!ys) return { items: [], left: sorted };
  const items = uncrossed(kept, x, ys).flatMap((t, i) => {
    const centre: Point = [x, ys[i] as number];
    const u = unit(centre, t.at);
    return [...leader([centre[0] + u[0] * R, centre[1] + u[1] * R], t.at), ...balloon(faces, t.mark, x, centre[1])];
  });
  return { items, left: sorted.slice(room) };
}
