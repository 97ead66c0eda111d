import { canonicalRings } from './canonical.js';
import { turn } from './placement.js';
import { turnedTo, type SceneItem, type ViewAxes } from './scene.js';
import type { Rings } from './solid.js';

/**
 * Where the plane square to the line of sight at `height` (mm toward the eye) cuts a closed mesh, mm along the view's right
 * and up; outer rings anticlockwise. A corner exactly in the plane counts as below it, so that every ring closes.
 */
export function sliceMesh(
  { mesh, placement }: Pick<SceneItem, 'mesh' | 'placement'>,
  view: ViewAxes,
  height: number,
): Rings {
  const points = turnedTo(view, placement, mesh.positions, { shift: true });
  const { triangles: t } = mesh;
  const corners = points.length / 3;
  const above = (c: number): boolean => (points[c * 3 + 2] as number) > height;
  // A side is known by its two corners; from each downward crossing a segment leads to the upward one of its triangle.
  const next = new Map<number, number[]>();
  for (let i = 0; i < t.length; i += 3) {
    let [down, up] = [-1, -1];
    for (let k = 0; k < 3; k++) {
      const [a, b] = [t[i + k] as number, t[i + ((k + 1) % 3)] as number];
      if (above(a) === above(b)) continue;
      const side = Math.min(a, b) * corners + Math.max(a, b);
      if (above(a)) down = side;
      else up = side;
    }
    if (down < 0) continue;
    const known = next.get(down);
    if (known) known.push(up);
    else next.set(down, [up]);
  }
  const rings: (readonly [number, number])[][] = [];
  for (const start of next.keys())
    for (let side = next.get(start)?.pop(); side !== undefined; side = next.get(start)?.pop()) {
      const ring = [crossing(points, corners, start, height)];
      for (let at: number | undefined = side; at !== undefined && at !== start; at = next.get(at)?.pop())
        ring.push(crossing(points, corners, at, height));
      rings.push(ring);
    }
  return canonicalRings(mirrors(view, placement) ? rings.map((r) => r.reverse()) : rings);
}
function crossing(points: Float64Array, corners: number, side: number, height: number): readonly [number, number] {
  const [a, b] = [Math.floor(side / corners) * 3, (side % corners) * 3];
  const [low, high] = [points[a + 2] as number, points[b + 2] as number];
  const f = (height - low) / (high - low);
  const at = (k: 0 | 1): number => {
    const p = points[a + k] as number;
    return Math.round((p + ((points[b + k] as number) - p) * f) * 1e9) / 1e9 + 0;
  };
  return [at(0), at(1)];
}
/** True where a placement and a view together turn things inside out. */
function mirrors(view: ViewAxes, placement: SceneItem['placement']): boolean {
  const [x, y, z] = ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const).map((v) => turn(placement, v)); // prettier-ignore
  const [p, q, r] = [x, y, z] as [typeof view.right, typeof view.right, typeof view.right];
  return p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0]) < 0; // prettier-ignore
}
