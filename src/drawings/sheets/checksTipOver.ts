import type { TipCase } from '../../checks/check.js';
import { cosine, sine } from '../../geom/angle.js';
import type { Units } from '../../lengths/length.js';
import type { Faces } from '../../type/type.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import type { Point } from '../draw.js';
import { area, arrowhead, circle, fill, label, line, polyline, rect } from '../draw.js';
import type { Item, Path } from '../picture.js';
import { SIZE } from '../pens.js';
import type { Strip } from '../table.js';
import { round3, setText, widthOf } from '../text.js';

/** Heights of the picture and of all, mm. */
const PICTURE = 42;
const HIGH = 59;
const ACROSS = 3;
/** A case that holds so many times over need not be seen. */
const PLAIN = 3;
/** The worst cases, in the order in which they were judged. */
export function casesToDraw(cases: readonly TipCase[]): readonly TipCase[] {
  const ratio = (c: TipCase): number => c.holding / Math.max(1e-9, c.tipping);
  const close = cases.filter((c) => ratio(c) < PLAIN);
  const worst = [...close].sort((p, q) => ratio(p) - ratio(q)).slice(0, ACROSS);
  return close.filter((c) => worst.includes(c));
}

interface Look {
  readonly faces: Faces;
  readonly units: Units;
  /** Paper mm per nm. */
  readonly scale: number;
  /** Marks of drawers: a load of another name hangs on it. */
  readonly drawers: readonly string[];
}
/**
 * Side views, front to the left as in the side elevation: what stands, what is open, the middle of all its mass with the
 * plumb line from it, loads and pulls, and the two moments as bars.
 */
export function tipStrips(
  faces: Faces,
  cases: readonly TipCase[],
  drawers: readonly string[],
  units: Units,
  width: number,
): Strip[] {
  const drawn = casesToDraw(cases);
  const cell = (width - 8 * (ACROSS - 1)) / ACROSS;
  const points = drawn.flatMap((c) => [...c.boxes.flatMap(({ box }) => corners(c, box)), ...c.loads.map((l) => turned(c, l.x, l.y))]); // prettier-ignore
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const [back, front, high] = [Math.min(...xs), Math.max(...xs), Math.max(...ys)];
  const scale = Math.min((cell - 18) / (front - back), (PICTURE - 8) / high);
  const look: Look = { faces, units, scale, drawers };
  const most = Math.max(...drawn.flatMap((c) => [c.holding, c.tipping]));
  return [
    {
      height: HIGH,
      draw: (x, y) =>
        drawn.flatMap((c, i) => {
          const left = x + i * (cell + 8);
          const pivot: Point = [left + 9 + front * scale, y + 7 + PICTURE - 4];
          return [
            ...label(faces, c.name, left, y + 4.4, { face: 'semibold' }),
            ...(c.tilt > 0
              ? label(faces, `floor leans ${c.tilt.toFixed(1)}°`, left + cell, y + 4.4, { anchor: 'end' })
              : []),
            ...picture(look, c, pivot, [left, left + cell]),
            ...bars(look, c, most, left, y + 7 + PICTURE + 2, cell),
          ];
        }),
    },
  ];
}
/** A point of the piece as it stands on a floor that leans forward by its tilt. */
function turned(c: TipCase, x: number, y: number): Point {
  const [k, s] = [cosine(c.tilt), sine(c.tilt)];
  return [x * k + y * s, y * k - x * s];
}
const corners = (c: TipCase, [x0, y0, x1, y1]: readonly [number, number, number, number]): Point[] =>
  [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(([x, y]) => turned(c, x as number, y as number)); // prettier-ignore

function picture(look: Look, c: TipCase, pivot: Point, [left, right]: readonly [number, number]): Item[] {
  const { faces, units, scale, drawers } = look;
  const paper = ([x, y]: Point): Point => [pivot[0] - x * scale, pivot[1] - y * scale];
  const at = (x: number, y: number): Point => paper(turned(c, x, y));
  const force = (v: number): string => sayQuantity(quantity('force', v), units);
  const boxes = [...c.boxes].sort((a, b) => Number(a.open) - Number(b.open));
  const total = c.loads.reduce((s, l) => s + l.newtons, 0);
  const mean = (pick: (l: TipCase['loads'][number]) => number): number =>
    c.loads.reduce((s, l) => s + pick(l) * l.newtons, 0) / total;
  const middle = at(mean((l) => l.x), mean((l) => l.y)); // prettier-ignore
  const hung = c.loads.filter((l) => l.name !== 'the rest' && !l.name.startsWith('in ') && !drawers.includes(l.name));
  const front = Math.max(...c.boxes.filter((b) => !b.open).map((b) => b.box[2]));
  const pulled = c.pull ? at(front, c.pull.y) : undefined;
  return [
    ...boxes.flatMap(({ box, open }) => polyline(open ? 'open' : 'W', corners(c, box).map(paper), true)),
    ...line('W', left, pivot[1], right, pivot[1]),
    ...area('black', [pivot, [pivot[0] + 1.5, pivot[1] + 2.8], [pivot[0] - 1.5, pivot[1] + 2.8]]), // prettier-ignore
    ...line('centre', middle[0], middle[1], middle[0], pivot[1]),
    ...massMark(middle),
    ...onWhite(faces, force(total), middle[0] + 2.6, middle[1] + 1.2),
    ...hung.flatMap((l) => {
      const p = at(l.x, l.y);
      const foot: Point = [p[0], p[1] + 9];
      return [
        ...polyline('W', [p, [foot[0], foot[1] - 2.4]]), // prettier-ignore
        ...arrowhead(foot, [0, 1], 2.8, 1.8),
        ...label(faces, `${l.name} ${force(l.newtons)}`, p[0], p[1] - 1.4, { anchor: 'middle' }),
      ];
    }),
    ...(pulled && c.pull
      ? [
          ...polyline('W', [pulled, [pulled[0] - 8, pulled[1]]]), // prettier-ignore
          ...arrowhead([pulled[0] - 10, pulled[1]], [-1, 0], 2.8, 1.8),
          ...label(faces, force(c.pull.newtons), pulled[0] - 10, pulled[1] - 1.6, { anchor: 'middle' }),
        ]
      : []),
  ];
}
/** A figure over lines, on a patch of white. */
const onWhite = (faces: Faces, string: string, x: number, y: number): Item[] => [
  ...rect(undefined, x - 0.4, y - 2.8, widthOf(faces, string, SIZE.text) + 0.8, 3.6, 'white'),
  ...label(faces, string, x, y),
];
/** Middle of mass: a circle, two quarters of it black. */
function massMark([x, y]: Point): Item[] {
  const r = 1.9;
  const quarter = (u: 1 | -1): Path => [
    ['M', round3(x), round3(y)],
    ['L', round3(x + u * r), round3(y)],
    ['A', r, 1, 0, round3(x), round3(y + u * r)],
    ['Z'],
  ];
  return [...circle('N', x, y, r, 'white'), fill('black', quarter(1)), fill('black', quarter(-1))];
}
/** What holds and what tips as bars of one scale, with how many times it holds. */
function bars({ faces, units }: Look, c: TipCase, most: number, x: number, y: number, width: number): Item[] {
  const room = width - 12 - 22;
  const row = (name: string, v: number, at: number, tone: 'white' | 'black'): Item[] => [
    ...label(faces, name, x, at + 2.8),
    ...(v > 0 ? rect('N', x + 12, at, Math.max(0.3, (v / most) * room), 3, tone) : []),
    ...setText(faces, sayQuantity(quantity('moment', v), units), { x: x + 14 + (Math.max(0, v) / most) * room, y: at + 2.8, size: SIZE.text }).items, // prettier-ignore
  ];
  return [...row('holds', c.holding, y, 'white'), ...row('tips', c.tipping, y + 4.8, 'black')];
}
