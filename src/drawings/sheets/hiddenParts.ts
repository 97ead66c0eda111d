import type { Rect } from '../dimensions.js';
import { line } from '../draw.js';
import type { Point } from '../draw.js';
import type { Prepared } from '../input.js';
import { round } from '../model.js';
import type { Standing } from '../model.js';
import { showing } from '../balloons.js';
import type { Item } from '../picture.js';
import type { View } from '../views.js';
import { rectOf } from '../views.js';
import type { Arrangement } from './arrangement.js';

type Edge = readonly [Point, Point];
/** Lines nearer than this on paper are drawn as one (after ISO 128-2). */
const ONE_LINE = 0.8;

/**
 * Dashed boxes of thin members that do not show, sparingly: not those whose both sides are large; in the side view the
 * boxes of the drawers too, which tell how deep they are.
 */
export const hiddenParts = (input: Prepared, lay: Arrangement): Item[] =>
  [lay.side, lay.plan].flatMap((view) => {
    const boxes = [...members(input, view), ...(view === lay.side ? drawerBoxes(input, view) : [])];
    const kept: Edge[] = [];
    for (const edge of boxes.flatMap(edgesOf))
      if (!onOutline(view, edge) && !kept.some((k) => asOne(k, edge))) kept.push(edge);
    return kept.flatMap(([a, b]) => line('hidden', ...a, ...b));
  });

function members(input: Prepared, view: View): Rect[] {
  const largest = Math.max(view.box.w, view.box.h);
  return input.model.case
    .filter((s) => s.square && !shaped(s) && showing(view, s, input.model.case, 1) === undefined)
    .map((s) => rectOf(view, s.shoulder))
    .filter((r) => Math.min(r.w, r.h) <= 0.12 * largest && Math.max(r.w, r.h) >= 1.5);
}
/** Each drawer without its front. */
function drawerBoxes(input: Prepared, view: View): Rect[] {
  const standing = new Map(input.model.standing.map((s) => [s.part.id, s]));
  return input.piece.drawers.flatMap((d) => {
    const parts = d.parts.filter((p) => p !== d.front).flatMap((p) => standing.get(p) ?? []);
    return parts.length === 0 ? [] : [rectOf(view, round(parts.map((p) => p.shoulder)))];
  });
}
/** Cut to a shape that a box does not tell. */
const shaped = (s: Standing): boolean => s.part.cuts.some((c) => c.shape === 'taper' || c.shape === 'outline');
const edgesOf = ({ x, y, w, h }: Rect): Edge[] => [
  [[x, y], [x + w, y]],
  [[x + w, y], [x + w, y + h]],
  [[x, y + h], [x + w, y + h]],
  [[x, y], [x, y + h]],
]; // prettier-ignore
const near = (p: number, q: number, by = ONE_LINE): boolean => Math.abs(p - q) < by;
function onOutline(view: View, [a, b]: Edge): boolean {
  const { x, y, w, h } = view.box;
  return (
    (near(a[0], b[0], 0.01) && (near(a[0], x) || near(a[0], x + w))) ||
    (near(a[1], b[1], 0.01) && (near(a[1], y) || near(a[1], y + h)))
  );
}
/** True when the second line would print on the first for nearly all of its length. */
function asOne([a, b]: Edge, [c, d]: Edge): boolean {
  const k = near(a[1], b[1], 0.01) ? 0 : 1;
  const across = k === 0 ? 1 : 0;
  if (!near(c[across], d[across], 0.01) || !near(a[across], c[across])) return false;
  const shared = Math.min(b[k], d[k]) - Math.max(a[k], c[k]);
  return shared > 0.85 * (d[k] - c[k]);
}
