/** The marks that every sheet is drawn with. Paper mm, y down; sizes after trade practice and our default where no standard is named. */
import type { Status } from '../piece/piece.js';
import type { Faces } from '../type/type.js';
import { SIZE } from './pens.js';
import type { FillItem, GroupItem, Item, Path, Pen, Seg, StrokeItem, Tone } from './picture.js';
import { round3, setText, type FaceName } from './text.js';

export type Point = readonly [number, number];
/** Middle of a capital or figure above the baseline, em. */
export const MIDDLE = 0.349;

// ---- plain shapes ------------------------------------------------------------------------------------------------------------

export const stroke = (pen: Pen, d: Path): StrokeItem => ({ kind: 'stroke', pen, d });
export const fill = (tone: Tone, d: Path): FillItem => ({ kind: 'fill', tone, d });
/** A group of items; `id` is unique on its sheet. */
export const group = (
  id: string,
  items: readonly Item[],
  more: Omit<GroupItem, 'kind' | 'id' | 'items'> = {},
): GroupItem => ({
  kind: 'group',
  id,
  ...more,
  items,
});
const to = (kind: 'M' | 'L', [x, y]: Point): Seg => [kind, round3(x), round3(y)];
/** The path through points, closed where asked. */
export const through = (points: readonly Point[], closed = false): Path => [
  ...points.map((p, i) => to(i === 0 ? 'M' : 'L', p)),
  ...(closed ? [['Z'] as const] : []),
];
export const rectPath = (x: number, y: number, w: number, h: number): Path =>
  through([[x, y], [x + w, y], [x + w, y + h], [x, y + h]], true); // prettier-ignore
export const circlePath = (x: number, y: number, r: number): Path => [
  to('M', [x - r, y]),
  ['A', round3(r), 1, 0, round3(x + r), round3(y)],
  ['A', round3(r), 1, 0, round3(x - r), round3(y)],
  ['Z'],
];
export const line = (pen: Pen, x1: number, y1: number, x2: number, y2: number): Item[] => [
  stroke(pen, through([[x1, y1], [x2, y2]])), // prettier-ignore
];
export const polyline = (pen: Pen, points: readonly Point[], closed = false): Item[] => [
  stroke(pen, through(points, closed)),
];
/** A closed area, outlined where a pen is given. */
export const area = (tone: Tone, points: readonly Point[], pen?: Pen): Item[] => {
  const d = through(points, true);
  return [fill(tone, d), ...(pen ? [stroke(pen, d)] : [])];
};
export const rect = (pen: Pen | undefined, x: number, y: number, w: number, h: number, tone?: Tone): Item[] => {
  const d = rectPath(x, y, w, h);
  return [...(tone ? [fill(tone, d)] : []), ...(pen ? [stroke(pen, d)] : [])];
};
export const circle = (pen: Pen | undefined, x: number, y: number, r: number, tone?: Tone): Item[] => {
  const d = circlePath(x, y, r);
  return [...(tone ? [fill(tone, d)] : []), ...(pen ? [stroke(pen, d)] : [])];
};
/** A short label: one line of text of one face. */
export const label = (
  faces: Faces,
  string: string,
  x: number,
  y: number,
  more: { size?: number; face?: FaceName; anchor?: 'start' | 'middle' | 'end'; tone?: Tone } = {},
): Item[] => [...setText(faces, string, { x, y, size: SIZE.text, ...more }).items];

/** The unit vector from a to b; to the right when they are one. */
export function unit(a: Point, b: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.sqrt(dx * dx + dy * dy);
  return length === 0 ? [1, 0] : [dx / length, dy / length];
}
/** The point `along` from p in direction u, and `aside` to the right of it as one looks along u on paper. */
const from = (p: Point, u: Point, along: number, aside: number): Point => [
  p[0] + u[0] * along - u[1] * aside,
  p[1] + u[1] * along + u[0] * aside,
];

// ---- arrows and dimension marks -----------------------------------------------------------------------------------------------

/** A solid arrowhead with its tip at `tip`, pointing along `direction` (a unit vector); 2.2 x 1.0 for running figures. */
export const arrowhead = (tip: Point, direction: Point, length = 2.2, width = 1): Item[] =>
  area('black', [tip, from(tip, direction, -length, width / 2), from(tip, direction, -length, -width / 2)]);
/** Oblique stroke at 45 degrees across a dimension line, 2.0 long each way, wide pen (ISO 129-1). */
export const obliqueTick = (x: number, y: number): Item[] => line('W', x - 1, y + 1, x + 1, y - 1);
/** Small circle at the origin of running figures, r 0.9 (ISO 129-1). */
export const originCircle = (x: number, y: number): Item[] => circle('N', x, y, 0.9, 'white');
/** The way a thing is moved: shaft 1.0, solid head. */
export function movementArrow(start: Point, end: Point): Item[] {
  const u = unit(start, end);
  return [...polyline('shaft', [start, from(end, u, -4.4, 0)]), ...arrowhead(end, u, 4.5, 4)];
}
/** Where a clamp presses: shaft W, open head 3.2 x 2.6. */
export function clampArrow(start: Point, end: Point): Item[] {
  const u = unit(start, end);
  const head = [end, from(end, u, -3.2, 1.3), from(end, u, -3.2, -1.3)];
  return [...polyline('W', [start, from(end, u, -3.2, 0)]), ...area('white', head, 'W')];
}
/** Leader (narrow detail pen) from a balloon's edge to a dot r 0.55 inside the part. */
export const leader = (start: Point, target: Point): Item[] => [
  ...polyline('H', [start, target]),
  ...circle(undefined, target[0], target[1], 0.55, 'black'),
];
/** Arrow of a cutting plane: corner at `at`, bar along the plane `along`, looking `looks`; letter beyond the arrow (after ISO 128-3). */
export function planeEnd(faces: Faces, letter: string, at: Point, along: Point, looks: Point): Item[] {
  const tip = from(at, looks, 5, 0);
  const beside = from(tip, looks, 2.9, 0);
  const end = from(at, along, 8, 0);
  return [
    ...polyline('plane', [end, at]),
    ...polyline('W', [from(at, along, 3, 0), at]),
    ...polyline('N', [at, from(tip, looks, -2.6, 0)]),
    ...arrowhead(tip, looks, 2.8, 1.6),
    ...label(faces, letter, beside[0], beside[1] + MIDDLE * SIZE.name, {
      size: SIZE.name,
      face: 'semibold',
      anchor: 'middle',
    }),
  ];
}

// ---- discs, balloons, boxes ---------------------------------------------------------------------------------------------------

/** Joint disc: black r 2.5, white figure: the number of the cut or of the joint. */
export const disc = (faces: Faces, number: string | number, x: number, y: number, r = 2.5): Item[] => [
  ...circle(undefined, x, y, r, 'black'),
  ...label(faces, String(number), x, y + MIDDLE * SIZE.text, { face: 'semibold', anchor: 'middle', tone: 'white' }),
];
/** White disc r 2.9: the number of a cut on a nesting diagram. */
export const whiteDisc = (faces: Faces, number: string | number, x: number, y: number): Item[] => [
  ...circle('N', x, y, 2.9, 'white'),
  ...label(faces, String(number), x, y + MIDDLE * SIZE.text, { face: 'semibold', anchor: 'middle' }),
];
/** Part balloon (ISO 6433): r 3.7, on cards 3.2 with the smaller type. */
export function balloon(faces: Faces, mark: string, x: number, y: number, r = 3.7): Item[] {
  const size = r >= 3.5 ? SIZE.figure : SIZE.text;
  const width = setText(faces, mark, { x, y, size, face: 'semibold' }).width;
  // A long id (D12.3) takes an oblong of the same height.
  const half = Math.max(0, width / 2 + 1.4 - r);
  const oblong: Path = [
    to('M', [x - half, y - r]),
    to('L', [x + half, y - r]),
    ['A', round3(r), 1, 0, round3(x + half), round3(y + r)],
    to('L', [x - half, y + r]),
    ['A', round3(r), 1, 0, round3(x - half), round3(y - r)],
    ['Z'],
  ];
  const d = half > 0.3 ? oblong : circlePath(x, y, r);
  const name = label(faces, mark, x, y + MIDDLE * size, { size, face: 'semibold', anchor: 'middle' });
  return [fill('white', d), stroke('N', d), ...name];
}
/** A joint meets a part: disc joined to balloon, 6.8 apart. */
export const discWithBalloon = (faces: Faces, number: string | number, mark: string, x: number, y: number): Item[] => [
  ...line('N', x, y, x + 6.8, y),
  ...disc(faces, number, x, y),
  ...balloon(faces, mark, x + 6.8, y, 3.2),
];
/** Black tag with a card's id in white 28 pt; `width` 25, or 32 for ids of four characters. */
export const tag = (faces: Faces, mark: string, x: number, y: number, width = 25, height = 14): Item[] => [
  ...rect(undefined, x, y, width, height, 'black'),
  ...label(faces, mark, x + width / 2, y + height / 2 + MIDDLE * SIZE.tag, {
    size: SIZE.tag,
    face: 'semibold',
    anchor: 'middle',
    tone: 'white',
  }),
];
/** Box to tick, 4 x 4 over all; a figure inside where given. */
export function tickBox(faces: Faces, x: number, y: number, inside?: string): Item[] {
  const name =
    inside === undefined ? [] : label(faces, inside, x + 2, y + 2 + MIDDLE * SIZE.text, { anchor: 'middle' });
  return [...rect('D', x + 0.175, y + 0.175, 3.65, 3.65, 'white'), ...name];
}
/** A blank to write in: a line at the baseline. */
export const blank = (x: number, y: number, width = 10): Item[] => line('N', x, y + 0.6, x + width, y + 0.6);
/** Glue: a black square; no glue: a crossed white one. */
export const glueSquare = (glue: boolean, x: number, y: number, size = 3): Item[] =>
  glue ? rect('N', x, y, size, size, 'black') : [...rect('N', x, y, size, size, 'white'), ...cross(x, y, size, size)];
const cross = (x: number, y: number, w: number, h: number): Item[] => [
  ...line('N', x, y, x + w, y + h),
  ...line('N', x, y + h, x + w, y),
];
/** No work here: the face at small scale, crossed corner to corner. */
export const crossedBox = (x: number, y: number, w: number, h: number): Item[] => [
  ...rect('N', x, y, w, h),
  ...cross(x, y, w, h),
];
/** How sure a size is, 9 x 2.6: the more ink, the surer. */
export function statusBar(status: Status, x: number, y: number): Item[] {
  const [w, h] = [9, 2.6];
  const outline = rect('D', x, y, w, h);
  if (status === 'cut now') return [...rect(undefined, x, y, w, h, 'black'), ...outline];
  const white = rect(undefined, x, y, w, h, 'white');
  if (status === 'measure first') return [...white, ...outline];
  if (status === 'leave long') return [...white, ...rect(undefined, x, y, 0.6 * w, h, 'black'), ...outline];
  return [...white, ...[0.7, 2.5, 4.3, 6.1].flatMap((k) => line('N', x + k, y + h, x + k + 2.2, y)), ...outline];
}

// ---- marks on the wood --------------------------------------------------------------------------------------------------------

export type Heading = 'right' | 'left' | 'up' | 'down';
/** Where a heading points, and the side of it on which a mark's foot lies; left mirrors right, as the other hand's mark does. */
const HEADINGS: Readonly<Record<Heading, readonly [Point, Point]>> = {
  right: [
    [1, 0],
    [0, 1],
  ],
  left: [
    [-1, 0],
    [0, 1],
  ],
  up: [
    [0, -1],
    [1, 0],
  ],
  down: [[0, 1], [1, 0]], // prettier-ignore
};
const place = (x: number, y: number, into: Heading, u: number, v: number): Point => {
  const [a, b] = HEADINGS[into];
  return [x + a[0] * u + b[0] * v, y + a[1] * u + b[1] * v];
};
/** Face mark: one stroke from the reference edge at (x, y), heading into the face (common practice; form our default). `turned`: mirrored. */
export function faceMark(x: number, y: number, into: Heading, turned = false): Item[] {
  const at = (u: number, v: number): Point => place(x, y, into, u, turned ? -v : v);
  const curve = (a: Point, b: Point, c: Point): Seg => {
    const [p, q, r] = [at(...a), at(...b), at(...c)].map(([px, py]) => [round3(px), round3(py)] as const);
    return ['C', ...(p ?? a), ...(q ?? b), ...(r ?? c)];
  };
  return [
    stroke('W', [
      to('M', at(0, 0)),
      curve([3.2, -0.6], [7.4, -2.6], [8.6, -6]),
      curve([9.2, -8.4], [6.6, -9], [6.3, -6.2]),
      curve([6.1, -3.6], [7.4, -0.6], [9.6, 1]),
    ]),
  ];
}
/** Edge mark: a V 3.4 x 3.8 outside the reference edge, its apex on it; `into` points from the edge into the wood. */
export const edgeMark = (x: number, y: number, into: Heading): Item[] =>
  polyline('W', [place(x, y, into, -3.4, -1.9), place(x, y, into, -0.35, 0), place(x, y, into, -3.4, 1.9)]);
/** Grain: a line with one half barb 3 x 1.1 at each end, on opposite sides. */
export function grainArrow(start: Point, end: Point): Item[] {
  const u = unit(start, end);
  return [
    ...polyline('N', [start, end]),
    ...polyline('W', [start, from(start, u, 3, -1.1)]),
    ...polyline('W', [end, from(end, u, -3, 1.1)]),
  ];
}

// ---- scale and projection -----------------------------------------------------------------------------------------------------

export interface ScaleBar {
  readonly label: string;
  /** Length of one block on paper, mm, and the figures at its ends, first to last (one more than blocks). */
  readonly block: number;
  readonly figures: readonly string[];
}
/** Scale bar of black and white blocks 1.6 high (map practice). (x, y): left end, baseline of the label above. */
export function scaleBar(faces: Faces, bar: ScaleBar, x: number, y: number): Item[] {
  const top = y + 1.8;
  const last = bar.figures.length - 1;
  const blocks = Array.from({ length: last }, (_, i) =>
    rect('H', x + i * bar.block, top, bar.block, 1.6, i % 2 === 0 ? 'black' : 'white'),
  ).flat();
  const figures = bar.figures.flatMap((figure, i) => {
    const anchor = i === 0 ? 'start' : i === last ? 'end' : 'middle';
    return label(faces, figure, x + i * bar.block, top + 4.9, { anchor });
  });
  return [...label(faces, bar.label, x, y), ...blocks, ...figures];
}
/** A scale bar for paper mm per real mm `scale`: a foot in blocks of 3 in, or 400 mm in blocks of 100, or finer for larger scales. */
export function scaleBarFor(units: 'in' | 'mm', scale: number): ScaleBar {
  const large = [1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000];
  const steps =
    units === 'in'
      ? [1 / 4, 1 / 2, 1, 3, 6, 12, 24, 60, 120, 240, 600, 1200, 2400, 6000]
      : [5, 10, 20, 50, 100, 200, 500, ...large];
  const real = units === 'in' ? 25.4 : 1;
  const wanted = steps.find((step) => step * real * scale >= 6) ?? steps[steps.length - 1] ?? 1;
  const names: Readonly<Record<string, string>> = { '0.25': '1/4', '0.5': '1/2', '0.75': '3/4', '1.5': '1 1/2' };
  const figures = [0, 1, 2, 3, 4].map((i) => names[String(i * wanted)] ?? String(i * wanted));
  return { label: units === 'in' ? 'Inches' : 'Millimetres', block: wanted * real * scale, figures };
}
/** Symbol of third-angle projection (ISO 5456-2), large circle 5.4 across; x: left end of its axis (15 long), y: axis. */
export function thirdAngleSymbol(x: number, y: number): Item[] {
  const cx = x + 3.7;
  const cone: readonly Point[] = [[x + 8.6, y - 1.35], [x + 14, y - 2.7], [x + 14, y + 2.7], [x + 8.6, y + 1.35]]; // prettier-ignore
  return [
    ...circle('D', cx, y, 2.7),
    ...circle('D', cx, y, 1.35),
    ...polyline('D', cone, true),
    ...line('centre', x, y, x + 15, y),
    ...line('centre', cx, y - 3.7, cx, y + 3.7),
  ];
}
