import { groupCollinear, lengthOf, pointOn, without, GAP, type LineGroup, type Piece2 } from './collinear.js';
import { classified } from './beside.js';
import { sceneOf, STRIDE, type Scene, type SceneItem, type Slab, type ViewAxes } from './scene.js';

/**
 * `silhouette`: there is air beside the line, or what shows on one side lies further back. `edge`: an arris whose two
 * faces both show. `flush`: the same plane runs on at both sides (two parts meet). Hidden lines are all `edge`.
 */
export interface Line2 {
  /** Parts to which it belongs, sorted. */
  readonly ids: readonly string[];
  /** mm in the view's plane: along `right`, along `up`. */
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
  readonly kind: 'silhouette' | 'edge' | 'flush';
}
export type { SceneItem, Slab, ViewAxes };

/** How far a face must lie before an edge to hide it, mm. */
const DEPTH = 2e-3;

/**
 * Hidden-line removal by parameter interval: each drawn edge less the stretches over which a triangle that faces the eye
 * covers it. Every triangle gives three half-planes and a depth, all linear along the edge (after A. Appel's idea of 1967
 * that visibility is a matter of intervals). Sides that are drawn themselves hide exclusively, seams of a flat or curved
 * face inclusively: else an edge exactly under a seam would show through.
 */
export function hiddenLines(items: readonly SceneItem[], view: ViewAxes): { visible: Line2[]; hidden: Line2[] } {
  const scene = sceneOf(items, view);
  const { visible, hidden } = piecesOf(scene, items, true);
  const groups = groupCollinear(visible, hidden);
  const unseen = groups.flatMap((g) =>
    without(g.hidden, g.visible).map((s) => line(pointOn(g, s.from), pointOn(g, s.to), s.ids, 'edge')),
  );
  return { visible: shown(scene, groups), hidden: unseen.sort(byPlace) };
}
/** The visible lines alone, in a third of the time: of a whole piece most edges lie in its joints. With a slab, of what lies in it. */
export function visibleLines(items: readonly SceneItem[], view: ViewAxes, slab?: Slab): Line2[] {
  const scene = sceneOf(items, view, slab);
  return shown(scene, groupCollinear(piecesOf(scene, items, false).visible, []));
}
const shown = (scene: Scene, groups: readonly LineGroup[]): Line2[] =>
  classified(scene, groups)
    .map((s) => line(s.a, s.b, s.ids, s.kind))
    .sort(byPlace);

/** Every drawn edge as what shows of it and, where wanted, what does not. */
function piecesOf(
  scene: Scene,
  items: readonly SceneItem[],
  wantHidden: boolean,
): { readonly visible: Piece2[]; readonly hidden: Piece2[] } {
  const visible: Piece2[] = [];
  const hidden: Piece2[] = [];
  const recent: number[] = [];
  const owner = items.map((item) => [item.id]);
  for (let e = 0; e < scene.edgeItem.length; e++) {
    const ids = owner[scene.edgeItem[e] as number] as readonly string[];
    const p = scene.edges.subarray(e * 6, e * 6 + 6) as unknown as Ends;
    const size = Math.hypot(p[3] - p[0], p[4] - p[1]);
    if (size < GAP) continue;
    const unseen = scene.edgeSeen[e] === 0;
    if (unseen && !wantHidden) continue;
    const at = (t: number): [number, number] => [p[0] + (p[3] - p[0]) * t, p[1] + (p[4] - p[1]) * t];
    const covered = unseen ? [0, 1] : coverOf(scene, p, GAP / size, recent);
    let from = 0;
    for (let i = 0; i <= covered.length; i += 2) {
      const [lo, hi] = [covered[i] ?? 1, covered[i + 1] ?? 1];
      if ((lo - from) * size > GAP) visible.push({ a: at(from), b: at(lo), ids });
      if (wantHidden && (hi - lo) * size > GAP) hidden.push({ a: at(lo), b: at(hi), ids });
      from = hi;
    }
  }
  return { visible, hidden };
}
type Ends = readonly [number, number, number, number, number, number];

/** How many of the triangles that last hid a whole edge are asked first about the next. */
const RECENT = 6;
/**
 * Sorted, disjoint stretches [from, to, from, to ...] of an edge's parameter that are hidden. `recent`: triangles that hid
 * whole edges; neighbours in a list are often hidden by the same, and then the index need not be read.
 */
export function coverOf(scene: Scene, p: Ends, gap: number, recent: number[] = []): number[] {
  const { faces, index } = scene;
  const found: [number, number][] = [];
  const [ax, ay, az, bx, by, bz] = p;
  const low = Math.min(az, bz) + DEPTH;
  let all = false;
  let last = 0;
  const cover = (i: number): boolean => {
    const base = i * STRIDE;
    if (all || (faces[base + 15] as number) <= low) return false;
    let from = 0;
    let to = 1;
    for (let k = 0; k < 4 && from < to; k++) {
      // Height over the side (mm inside it), then depth before the edge: both linear, wanted above a margin.
      const at = base + k * 4;
      const x = faces[at] as number;
      const y = faces[at + 1] as number;
      const c = faces[at + 2] as number;
      const margin = k < 3 ? (faces[at + 3] as number) : DEPTH;
      const h0 = x * ax + y * ay + c - margin - (k < 3 ? 0 : az);
      const h1 = x * bx + y * by + c - margin - (k < 3 ? 0 : bz);
      if (h0 <= 0 && h1 <= 0) to = from;
      else if (h0 < 0) from = Math.max(from, h0 / (h0 - h1));
      else if (h1 < 0) to = Math.min(to, h0 / (h0 - h1));
    }
    if (from <= 0 && to >= 1) {
      all = true;
      last = i;
    } else if (from < to) found.push([from, to]);
    return false;
  };
  for (const i of recent) {
    cover(i);
    if (all) return [0, 1];
  }
  found.length = 0;
  index?.search(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by), cover);
  if (all) {
    recent.unshift(last);
    if (recent.length > RECENT) recent.pop();
    return [0, 1];
  }
  found.sort((q, r) => q[0] - r[0]);
  const out: number[] = [];
  for (const [from, to] of found) {
    const last = out.length - 1;
    if (last > 0 && from <= (out[last] as number) + gap) out[last] = Math.max(out[last] as number, to);
    else out.push(from, to);
  }
  return out;
}

const tidy = (x: number): number => Math.round(x * 1e6) / 1e6 + 0;
function line(a: Line2['a'], b: Line2['a'], ids: readonly string[], kind: Line2['kind']): Line2 {
  const [p, q]: [Line2['a'], Line2['a']] = [[tidy(a[0]), tidy(a[1])], [tidy(b[0]), tidy(b[1])]]; // prettier-ignore
  return p[0] < q[0] || (p[0] === q[0] && p[1] <= q[1]) ? { ids, a: p, b: q, kind } : { ids, a: q, b: p, kind };
}
const byPlace = (s: Line2, t: Line2): number =>
  s.a[0] - t.a[0] || s.a[1] - t.a[1] || s.b[0] - t.b[0] || s.b[1] - t.b[1] || lengthOf(s) - lengthOf(t);
