import { direction, turnOf } from './angle.js';
import type { Point } from './collinear.js';

/** A straight line or an arc of a drawing. Angles in degrees; `sweep` anticlockwise positive. */
export type Path2 =
  | { readonly op: 'line'; readonly a: Point; readonly b: Point }
  | {
      readonly op: 'arc';
      readonly centre: Point;
      readonly r: number;
      readonly from: number;
      readonly sweep: number;
      readonly a: Point;
      readonly b: Point;
    };
/** An open or closed run of points; closed when the first is also the last. */
export type Chain = readonly Point[];

/** Ends nearer than this, mm, are one point. */
const JOIN = 0.012;
/** A chord's ends and the arc through its neighbours may differ by this, mm; chords themselves are within 0.01 of the arc. */
const FIT = 0.004;
/** Fewest chords that count as an arc, and the greatest angle between neighbours (degrees). */
const LEAST = 3;
const TURN = 31;

/**
 * Joins lines end to end where exactly two meet; a third line at a point stops the chain. Chains and their direction do
 * not depend on the order given: each begins at its lowest end (by x, then y).
 */
export function chains(lines: readonly { readonly a: Point; readonly b: Point }[]): Chain[] {
  const nodes = nodesOf(lines);
  const used = new Uint8Array(lines.length);
  const out: Point[][] = [];
  const follow = (start: number, line: number): Point[] => {
    const run = [nodes.points[start] as Point];
    let [node, at] = [start, line];
    while (used[at] === 0) {
      used[at] = 1;
      const [p, q] = nodes.ends[at] as [number, number];
      node = p === node ? q : p;
      run.push(nodes.points[node] as Point);
      const here = nodes.lines[node] as number[];
      const next = here.length === 2 ? here.find((l) => used[l] === 0) : undefined;
      if (next === undefined) break;
      at = next;
    }
    return run;
  };
  nodes.lines.forEach((here, node) => {
    if (here.length !== 2) for (const line of here) if (used[line] === 0) out.push(follow(node, line));
  });
  nodes.lines.forEach((here, node) => {
    for (const line of here) if (used[line] === 0) out.push(follow(node, line));
  });
  return out;
}
interface Nodes {
  readonly points: readonly Point[];
  readonly ends: readonly (readonly [number, number])[];
  readonly lines: readonly (readonly number[])[];
}
/** Ends of lines made one where they nearly agree; nodes numbered by place. */
function nodesOf(lines: readonly { readonly a: Point; readonly b: Point }[]): Nodes {
  const ends = lines.flatMap((l, i) => [{ p: l.a, end: i * 2 }, { p: l.b, end: i * 2 + 1 }]); // prettier-ignore
  ends.sort((s, t) => s.p[0] - t.p[0] || s.p[1] - t.p[1] || s.end - t.end);
  const points: Point[] = [];
  const nodeOf = new Array<number>(ends.length).fill(0);
  let window = 0;
  for (const { p, end } of ends) {
    while (window < points.length && (points[window] as Point)[0] < p[0] - JOIN) window++;
    let node = points.findIndex((q, i) => i >= window && Math.hypot(q[0] - p[0], q[1] - p[1]) <= JOIN);
    if (node < 0) node = points.push(p) - 1;
    nodeOf[end] = node;
  }
  const at = points.map((): number[] => []);
  const pairs = lines.map((_, i): readonly [number, number] => [nodeOf[i * 2] as number, nodeOf[i * 2 + 1] as number]);
  pairs.forEach(([p, q], i) => {
    at[p]?.push(i);
    if (q !== p) at[q]?.push(i);
  });
  const far = (line: number, node: number): number => {
    const [p, q] = pairs[line] as readonly [number, number];
    return p === node ? q : p;
  };
  at.forEach((here, node) => here.sort((k, l) => far(k, node) - far(l, node) || k - l));
  return { points, ends: pairs, lines: at };
}

interface Circle {
  readonly centre: Point;
  readonly r: number;
}
function circleThrough(a: Point, b: Point, c: Point): Circle | undefined {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
  const d = 2 * (bx * cy - by * cx);
  if (Math.abs(d) < 1e-9 * Math.hypot(bx, by) * Math.hypot(cx, cy)) return undefined;
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
  const centre: Point = [a[0] + (cy * b2 - by * c2) / d, a[1] + (bx * c2 - cx * b2) / d];
  return { centre, r: Math.hypot(a[0] - centre[0], a[1] - centre[1]) };
}
const turnAt = (a: Point, b: Point, c: Point): number => {
  const t = direction(c[0] - b[0], c[1] - b[1]) - direction(b[0] - a[0], b[1] - a[1]);
  return t > 180 ? t - 360 : t <= -180 ? t + 360 : t;
};

/** How far from `first` the chain runs on one circle, as the index of its last point; `first` when it does not. */
function arcEnd(chain: Chain, first: number): number {
  const p = (i: number): Point => chain[i] as Point;
  let last = first;
  let sweep = 0;
  let end = first + LEAST;
  while (end < chain.length) {
    const whole = Math.hypot(p(first)[0] - p(end)[0], p(first)[1] - p(end)[1]) < JOIN;
    const third = whole ? Math.floor((first + 3 * end) / 4) : end;
    const circle = circleThrough(p(first), p(Math.floor((first + end) / 2)), p(third));
    if (!circle) break;
    const turns = Array.from({ length: end - first - 1 }, (_, i) =>
      turnAt(p(first + i), p(first + i + 1), p(first + i + 2)),
    );
    const [least, most] = [Math.min(...turns.map(Math.abs)), Math.max(...turns.map(Math.abs))];
    // Neighbouring chords of one arc turn alike; the first and last may be cut short by whatever hides them.
    const alike = turns.every((t) => Math.sign(t) === Math.sign(turns[0] as number)) && most < TURN && least > 1e-3;
    const on = chain
      .slice(first, end + 1)
      .every((q) => Math.abs(Math.hypot(q[0] - circle.centre[0], q[1] - circle.centre[1]) - circle.r) < FIT);
    sweep = turns.reduce((s, t) => s + t, 0) * ((end - first) / Math.max(1, end - first - 1));
    if (!alike || !on || Math.abs(sweep) > 360.5) break;
    last = end++;
  }
  return last;
}
function arcOf(points: Chain): Path2 {
  const [a, m, b] = [points[0], points[Math.floor((points.length - 1) / 2)], points[points.length - 1]] as [
    Point,
    Point,
    Point,
  ];
  const closed = Math.hypot(a[0] - b[0], a[1] - b[1]) < JOIN;
  const c = circleThrough(a, m, closed ? (points[Math.floor(((points.length - 1) * 3) / 4)] as Point) : b) as Circle;
  const angle = (p: Point): number => direction(p[0] - c.centre[0], p[1] - c.centre[1]);
  const [from, mid, to] = [angle(a), angle(m), angle(b)];
  const left = turnAt(a, points[1] as Point, points[2] as Point) > 0;
  const around = turnOf(left ? to - from : from - to);
  const sweep = closed ? 360 : around === 0 ? turnOf(left ? mid - from : from - mid) * 2 : around;
  return { op: 'arc', centre: c.centre, r: c.r, from, sweep: left ? sweep : -sweep, a, b };
}
/**
 * A chain as lines and arcs: stretches of at least three chords that lie on one circle become an arc. Good for line work;
 * a printed radius comes from the definition, never from here (end points are chord points, so r may be off by 0.01 mm).
 */
export function fitArcs(chain: Chain): Path2[] {
  const out: Path2[] = [];
  for (let i = 0; i + 1 < chain.length;) {
    const end = arcEnd(chain, i);
    if (end > i) out.push(arcOf(chain.slice(i, end + 1)));
    else out.push({ op: 'line', a: chain[i] as Point, b: chain[i + 1] as Point });
    i = Math.max(end, i + 1);
  }
  return out;
}
