/** Paths of the waist as numbers for the writers: rounded text, arcs as Beziers, bounds. */
import type { Path, Seg } from '../drawings/picture.js';

/** `.001` to `.999` without needless zeros, by thousandths. */
const THOUSANDTHS: readonly string[] = Array.from({ length: 1000 }, (_, n) =>
  n === 0 ? '' : `.${String(n).padStart(3, '0').replace(/0+$/, '')}`,
);
/** A number with at most three decimals, without a needless zero, sign or exponent: 0.001 mm is the fineness of a sheet. */
export function say(value: number): string {
  const n = Math.round(Math.abs(value) * 1000);
  const whole = Math.floor(n / 1000);
  const text = whole + (THOUSANDTHS[n - 1000 * whole] ?? '');
  return value < 0 && n !== 0 ? `-${text}` : text;
}
/** A path in the grammar of SVG (SVG 1.1, 8.3). */
export function svgPath(d: Path): string {
  let out = '';
  for (const s of d) {
    if (s[0] === 'Z') out += 'Z';
    else if (s[0] === 'C') out += `C${say(s[1])} ${say(s[2])} ${say(s[3])} ${say(s[4])} ${say(s[5])} ${say(s[6])}`;
    else if (s[0] === 'A') out += `A${say(s[1])} ${say(s[1])} 0 ${s[3]} ${s[2]} ${say(s[4])} ${say(s[5])}`;
    else out += `${s[0]}${say(s[1])} ${say(s[2])}`;
  }
  return out;
}

type Vector = readonly [number, number];
/** Six numbers of a cubic: two handles and the end. */
export type Cubic = readonly [number, number, number, number, number, number];

/**
 * A circle arc as cubics of a quarter turn or less, error under 0.03 % of the radius. No trigonometry: directions are halved with square roots,
 * and the handle is 4/3 tan(a/4), the standard choice (tangents right, middle of the arc met exactly).
 */
export function arcToCubics(start: Vector, radius: number, sweep: 0 | 1, large: 0 | 1, end: Vector): readonly Cubic[] {
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  const chord = Math.sqrt(dx * dx + dy * dy);
  if (chord === 0) return [];
  // An arc whose radius is a rounding short of half its chord is a half circle (as SVG 1.1, F.6.6 prescribes).
  const r = Math.max(radius, chord / 2);
  const height = Math.sqrt(Math.max(0, r * r - (chord * chord) / 4)) * (sweep === large ? -1 : 1);
  const centre: Vector = [
    (start[0] + end[0]) / 2 - (dy / chord) * height,
    (start[1] + end[1]) / 2 + (dx / chord) * height,
  ];
  const unit = (p: Vector): Vector => [(p[0] - centre[0]) / r, (p[1] - centre[1]) / r];
  const turn = sweep === 1 ? 1 : -1;
  const cubics = quarters(unit(start), unit(end), turn, large === 1).map(([u, v]) => cubicOf(centre, r, u, v, turn));
  return cubics.map((c, i) => (i === cubics.length - 1 ? [c[0], c[1], c[2], c[3], end[0], end[1]] : c));
}
/** Splits the turn from u to v into parts of a quarter or less. */
function quarters(u: Vector, v: Vector, turn: 1 | -1, large: boolean): readonly (readonly [Vector, Vector])[] {
  const cosine = u[0] * v[0] + u[1] * v[1];
  if (!large && cosine > -1e-9) return [[u, v]];
  const sum: Vector = [u[0] + v[0], u[1] + v[1]];
  const length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1]);
  const sign = large ? -1 : 1;
  const square: Vector = [-u[1] * turn, u[0] * turn];
  const middle: Vector = length < 1e-6 ? square : [(sign * sum[0]) / length, (sign * sum[1]) / length];
  return [...quarters(u, middle, turn, false), ...quarters(middle, v, turn, false)];
}
function cubicOf(c: Vector, r: number, u: Vector, v: Vector, turn: 1 | -1): Cubic {
  const cosine = Math.max(-1, Math.min(1, u[0] * v[0] + u[1] * v[1]));
  const half = { cos: Math.sqrt((1 + cosine) / 2), sin: Math.sqrt((1 - cosine) / 2) };
  const k = ((4 / 3) * half.sin) / (1 + half.cos);
  const at = (p: Vector, q: number): Vector => [
    c[0] + r * (p[0] - p[1] * turn * q),
    c[1] + r * (p[1] + p[0] * turn * q),
  ];
  return [...at(u, k), ...at(v, -k), ...at(v, 0)];
}

/** A path as moves, lines, cubics and closes only. */
export function withoutArcs(d: Path): Path {
  if (!d.some((s) => s[0] === 'A')) return d;
  let here: Vector = [0, 0];
  let first: Vector = [0, 0];
  const out: Seg[] = [];
  for (const s of d) {
    const end: Vector = s[0] === 'Z' ? first : s[0] === 'A' ? [s[4], s[5]] : s[0] === 'C' ? [s[5], s[6]] : [s[1], s[2]];
    if (s[0] === 'A') for (const c of arcToCubics(here, s[1], s[2], s[3], end)) out.push(['C', ...c]);
    else out.push(s);
    if (s[0] === 'M') first = end;
    here = end;
  }
  return out;
}
/** Left, top, right, bottom. */
export type Bounds = readonly [number, number, number, number];
/** Bounds of a path by its points and handles: never too small. */
export function pathBounds(d: Path): Bounds | undefined {
  const points = withoutArcs(d).flatMap((s) => (s[0] === 'Z' ? [] : pairs(s.slice(1) as number[])));
  if (points.length === 0) return undefined;
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
const pairs = (n: readonly number[]): Vector[] =>
  Array.from({ length: n.length / 2 }, (_, i) => [n[2 * i] ?? 0, n[2 * i + 1] ?? 0]);
