import Flatbush from 'flatbush';
import { GAP, pointOn, type LineGroup, type Point } from './collinear.js';
import { STRIDE, type Scene } from './scene.js';

export interface Kinded {
  readonly a: Point;
  readonly b: Point;
  readonly ids: readonly string[];
  readonly kind: 'silhouette' | 'edge' | 'flush';
}
/** How far beside a line is looked, mm; narrower gaps than this are not seen. */
const ASIDE = 0.02;
/** Surfaces that differ in height by less, mm, meet at the line. */
const LEVEL = 0.01;
/** Cosine of about one degree: planes closer than that are one. */
const SAME_PLANE = 0.99985;

interface Run {
  readonly group: LineGroup;
  readonly from: number;
  readonly to: number;
  readonly ids: readonly string[];
}
/**
 * What a visible line borders on, found by looking a little to either side. What shows beside a line can only change where
 * another visible line meets it, so each line is first cut there; pieces of one kind are then put together again.
 */
export function classified(scene: Scene, groups: readonly LineGroup[]): Kinded[] {
  const runs = groups.flatMap((group) => group.visible.map((s): Run => ({ group, ...s })));
  if (runs.length === 0) return [];
  const index = new Flatbush(runs.length);
  for (const r of runs) {
    const [p, q] = [pointOn(r.group, r.from), pointOn(r.group, r.to)];
    index.add(Math.min(p[0], q[0]), Math.min(p[1], q[1]), Math.max(p[0], q[0]), Math.max(p[1], q[1]));
  }
  index.finish();
  return runs.flatMap((run) => {
    const cuts = meetings(run, runs, index);
    const out: { from: number; to: number; kind: Kinded['kind'] }[] = [];
    cuts.slice(1).forEach((to, i) => {
      const from = cuts[i] as number;
      const kind = kindAt(scene, pointOn(run.group, (from + to) / 2), run.group.along);
      const last = out[out.length - 1];
      if (last && last.kind === kind) last.to = to;
      else out.push({ from, to, kind });
    });
    return out.map((o) => ({
      a: pointOn(run.group, o.from),
      b: pointOn(run.group, o.to),
      ids: run.ids,
      kind: o.kind,
    }));
  });
}
/** Where other lines touch or cross this one, along it, with both its ends; sorted, no two closer than GAP. */
function meetings(run: Run, runs: readonly Run[], index: Flatbush): number[] {
  const [p, q] = [pointOn(run.group, run.from), pointOn(run.group, run.to)];
  const [u, o] = [run.group.along, run.group.origin];
  const near = index.search(
    Math.min(p[0], q[0]) - GAP,
    Math.min(p[1], q[1]) - GAP,
    Math.max(p[0], q[0]) + GAP,
    Math.max(p[1], q[1]) + GAP,
  );
  const at: number[] = [];
  for (const i of near) {
    const other = runs[i] as Run;
    const [v, w] = [other.group.along, other.group.origin];
    const cross = u[0] * v[1] - u[1] * v[0];
    if (Math.abs(cross) < 1e-5) continue;
    const [dx, dy] = [w[0] - o[0], w[1] - o[1]];
    const mine = (dx * v[1] - dy * v[0]) / cross;
    const its = (dx * u[1] - dy * u[0]) / cross;
    if (its > other.from - GAP && its < other.to + GAP) at.push(mine);
  }
  const inner = at.filter((s) => s > run.from + GAP && s < run.to - GAP).sort((s, t) => s - t);
  return [run.from, ...inner.filter((s, i) => i === 0 || s - (inner[i - 1] as number) > GAP), run.to];
}
function kindAt(scene: Scene, p: Point, along: Point): Kinded['kind'] {
  const [nx, ny] = [-along[1] * ASIDE, along[0] * ASIDE];
  const [left, right] = [faceAt(scene, [p[0] + nx, p[1] + ny]), faceAt(scene, [p[0] - nx, p[1] - ny])];
  if (left === undefined || right === undefined) return 'silhouette';
  if (Math.abs(heightOf(scene, left, p) - heightOf(scene, right, p)) > LEVEL) return 'silhouette';
  let cos = 0;
  for (let k = 0; k < 3; k++)
    cos += (scene.faceNormals[left * 3 + k] as number) * (scene.faceNormals[right * 3 + k] as number);
  return cos > SAME_PLANE ? 'flush' : 'edge';
}
const heightOf = ({ faces }: Scene, i: number, p: Point): number => {
  const at = i * STRIDE + 12;
  return (faces[at] as number) * p[0] + (faces[at + 1] as number) * p[1] + (faces[at + 2] as number);
};
/** The triangle that shows at a point; undefined where there is none. */
export function faceAt(scene: Scene, p: Point): number | undefined {
  let best: number | undefined;
  let height = -Infinity;
  for (const i of scene.index?.search(p[0], p[1], p[0], p[1]) ?? []) {
    const base = i * STRIDE;
    let inside = true;
    for (let k = 0; k < 12 && inside; k += 4)
      inside =
        (scene.faces[base + k] as number) * p[0] + (scene.faces[base + k + 1] as number) * p[1] >=
        -(scene.faces[base + k + 2] as number) - 1e-6;
    const z = inside ? heightOf(scene, i, p) : -Infinity;
    if (z > height || (z === height && best !== undefined && i < best)) [best, height] = [i, z];
  }
  return best;
}
