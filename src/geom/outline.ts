import { arcPoints } from './angle.js';
import type { Outline } from './recipe.js';

export type Point2 = readonly [number, number];

/** Largest distance of a chord from its arc: 0.01 mm in nm. Our default; finer than any line drawn or cut. */
export const ARC_TOLERANCE = 10_000;
/** The same for turned shapes (holes, screws, pegs), 0.03 mm: nothing is fitted to their facets. Our default. */
export const TURNED_TOLERANCE = 30_000;

/** An outline as a ring of points (nm, whole), arcs replaced by chords no further than `tolerance` from them. */
export function flatten(outline: Outline, tolerance = ARC_TOLERANCE): Point2[] {
  const out: Point2[] = [];
  let from = outline[outline.length - 1]?.to ?? [0, 0];
  for (const s of outline) {
    if (s.bulge !== undefined && s.bulge !== 0) {
      for (const [x, y] of arcPoints(from, s.to, s.bulge, tolerance)) out.push([Math.round(x) + 0, Math.round(y) + 0]);
    }
    out.push(s.to);
    from = s.to;
  }
  return out.filter((p, i) => {
    const q = out[(i + 1) % out.length];
    return q === undefined || p[0] !== q[0] || p[1] !== q[1];
  });
}
/** Signed area of a ring, anticlockwise positive. */
export function areaOf(ring: readonly Point2[]): number {
  let twice = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length] as Point2;
    twice += p[0] * q[1] - q[0] * p[1];
  });
  return twice / 2;
}
/** The same outline run the other way. */
export function reversed(outline: Outline): Outline {
  return outline
    .map((s, i) => {
      const from = outline[(i + outline.length - 1) % outline.length] as Outline[number];
      return s.bulge !== undefined && s.bulge !== 0 ? { to: from.to, bulge: -s.bulge } : { to: from.to };
    })
    .reverse();
}
/** An outline as it must run outside: anticlockwise. */
export const outer = (outline: Outline): Outline => (areaOf(flatten(outline)) < 0 ? reversed(outline) : outline);
