import type { Pass } from '../../checks/check.js';
import { cosine, sine } from '../../geom/angle.js';
import { formatLength } from '../../lengths/format.js';
import { nm } from '../../lengths/length.js';
import type { Units } from '../../lengths/length.js';
import type { Faces } from '../../type/type.js';
import type { Point } from '../draw.js';
import { area, label, polyline } from '../draw.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import type { Strip } from '../table.js';
import { setText } from '../text.js';
import { verdictMark } from '../verdicts.js';

/** Beside one another in a whole width, in a half. */
const ACROSS = [3, 1] as const;
const PICTURE = 46;
const HIGH = 60;

/** A pass that can be drawn in plan: a corner with what is carried as it lies in plan. */
type InPlan = Pass & { readonly plan: readonly [number, number] };
export const inPlan = (passes: readonly Pass[]): InPlan[] =>
  passes.flatMap((p) => (p.kind === 'corner' && p.plan ? [{ ...p, plan: p.plan }] : []));

/** Corners from above, as many a strip as find room: both passages, and what is carried at the angle where it is tightest. */
export function corridorStrips(faces: Faces, passes: readonly Pass[], units: Units, width: number): Strip[] {
  const drawn = inPlan(passes);
  const across = ACROSS[width > 150 ? 0 : 1];
  const cell = (width - 8 * (across - 1)) / across;
  return Array.from({ length: Math.ceil(drawn.length / across) }, (_, i): Strip => ({
    height: HIGH,
    draw: (x, y) =>
      drawn.slice(i * across, (i + 1) * across).flatMap((p, k) => corner(faces, p, units, x + k * (cell + 8), y, cell)),
  }));
}
/**
 * The outer corner at the origin, one passage `a` wide along x, the other `b` along y; the long side lies with its ends on
 * the outer walls, turned by t, the way in which geom/passage.ts finds the tightest angle.
 */
function corner(faces: Faces, p: InPlan, units: Units, x: number, y: number, width: number): Item[] {
  const [a, b] = [p.clear[0] as number, p.clear[1] as number];
  const [long, short] = p.plan;
  const t = p.turn ?? 0;
  const [k, s] = [cosine(t), sine(t)];
  const reach = Math.max(b * 1.9, a * 1.9, long * k + short * s, long * s + short * k) * 1.06;
  const scale = Math.min((width - 14) / reach, PICTURE / reach);
  const foot = y + 8 + PICTURE;
  const at = (u: number, v: number): Point => [x + 1 + u * scale, foot - v * scale];
  const piece = [at(long * k, 0), at(0, long * s), at(short * s, long * s + short * k), at(long * k + short * s, short * k)]; // prettier-ignore
  const say = (v: number): string => formatLength(nm(v), units);
  const [endX, endY] = [at(reach, a / 2), at(b / 2, reach)];
  return [
    ...verdictMark(p.passes ? 'pass' : 'fail', x + 2, y + 3.2),
    ...setText(faces, p.name, { x: x + 5.6, y: y + 4.4, size: SIZE.text, face: 'semibold' }).items,
    ...area('white', piece, 'D'),
    ...polyline('W', [at(reach, 0), at(0, 0), at(0, reach)]),
    ...polyline('W', [at(reach, a), at(b, a), at(b, reach)]),
    ...setText(faces, say(a), { x: endX[0] + 1.5, y: endX[1] + 1.2, size: SIZE.figure }).items,
    ...setText(faces, say(b), { x: endY[0], y: endY[1] + 3.6, size: SIZE.figure, anchor: 'middle' }).items,
    ...label(faces, t > 0 ? `${say(long)} × ${say(short)}, turned ${t.toFixed(0)}°` : `${say(long)} × ${say(short)}, not turned`, x, foot + 5), // prettier-ignore
  ];
}
