import { faceAxis, faceSign, type Axis, type Face } from '../../geom/axis.js';
import { hatch } from '../../geom/hatch.js';
import { toMm } from '../../lengths/length.js';
import type { Panel } from '../../making/panels.js';
import { across, sideOf } from '../cards/view.js';
import { drawDimensions, furtherSizes, measureFigure } from '../chains.js';
import { placeDimensions, type Chain, type Rect } from '../dimensions.js';
import { circle, clampArrow, label, line, MIDDLE, polyline, rect, type Point } from '../draw.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import { largestScale, SMALLEST } from '../marks.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { widthOf } from '../text.js';

/** Around the wood: a clamp's arrow, a line for the name of an edge or an end, dimensions (one chain and the overall size), bare paper. */
const ARROW = 7;
const LINE = 5.6;
const CHAINS: Readonly<Record<Edge, number>> = { left: 20, right: 20, above: 17, below: 17 };
const BARE = 1;
/** The round foot of a clamp under the panel, beyond its arrow. */
const FOOT = 1.6;

export interface PanelPicture {
  readonly items: Item[];
  readonly oneTo: number;
  /** Sizes that found no room in the drawing, in words. */
  readonly further: readonly string[];
}
type Edge = 'left' | 'right' | 'above' | 'below';
const OTHER: Readonly<Record<Edge, Edge>> = { left: 'right', right: 'left', above: 'below', below: 'above' };

/** How the blank lies on paper: as it stands in the piece, on the face that is marked. */
interface Lie {
  readonly lying: boolean;
  /** On which side the edge at stave a is, and the marked end; sizes stand across from them. */
  readonly edge: Edge;
  readonly end: Edge;
}
function lieOf(p: Panel): Lie {
  const side = sideOf(p.face);
  const where = (f: Face): Edge =>
    f === side.left ? 'left' : f === side.right ? 'right' : f === side.top ? 'above' : 'below';
  return { lying: across(side) === p.part.length, edge: where(p.edge), end: where(p.end) };
}

/** The glued blank on its marked face: staves, triangle, trim lines, aligners, clamps. */
export function panelPicture(input: Prepared, p: Panel, id: string, cell: Rect): PanelPicture {
  const lie = lieOf(p);
  const { lying } = lie;
  const [wide, high] = lying ? [p.rough.length, p.rough.width] : [p.rough.width, p.rough.length];
  const wordy = (f: Face): number => widthOf(input.faces, p.part.faceWords[f], SIZE.text, 'semibold') + 3;
  const name = (side: Edge, f: Face): number => (side === 'left' || side === 'right' ? wordy(f) : LINE);
  const margin: Record<Edge, number> = { left: BARE, right: BARE, above: BARE, below: BARE };
  for (const side of [lie.edge, OTHER[lie.edge]]) margin[side] += ARROW;
  margin[lie.edge] += name(lie.edge, p.edge);
  margin[lie.end] += name(lie.end, p.end);
  for (const side of [OTHER[lie.edge], OTHER[lie.end]]) margin[side] += CHAINS[side];
  const [w, h] = [cell.w - margin.left - margin.right, cell.h - margin.above - margin.below];
  const oneTo = largestScale((n) => toMm(wide) / n <= w && toMm(high) / n <= h) ?? SMALLEST;
  const box: Rect = {
    x: cell.x + margin.left + Math.max(0, w - toMm(wide) / oneTo) / 2,
    y: cell.y + margin.above + Math.max(0, h - toMm(high) / oneTo) / 2,
    w: toMm(wide) / oneTo,
    h: toMm(high) / oneTo,
  };
  const at = onFace(p, box, oneTo);
  const sizes = dimensions(input, p, id, box, lie, oneTo);
  const items = [
    ...wood(p, box, at),
    ...p.joints.flatMap((j) => glueLine(p, j, at)),
    ...triangle(p, at, oneTo),
    ...letters(input, p, at, oneTo),
    ...clamps(p, at),
    ...names(input, p, box, lie),
    ...sizes.items,
  ];
  return { items, oneTo, further: sizes.further };
}

/** A point of the blank, `along` from its marked end and `over` from the edge at stave a (nm), on paper. */
type OnFace = (along: number, over: number, out?: readonly [number, number]) => Point;
function onFace(p: Panel, box: Rect, oneTo: number): OnFace {
  const side = sideOf(p.face);
  const lying = across(side) === p.part.length;
  // Which way on paper one goes from the marked end, and from stave a.
  const from = (face: Face, axis: Axis): 1 | -1 => {
    const positive = axis === across(side) ? faceSign(side.right) : (-faceSign(side.top) as 1 | -1);
    return (faceSign(face) < 0 ? positive : -positive) as 1 | -1;
  };
  const [u, v] = [from(p.end, p.part.length), from(p.edge, p.part.width)];
  const start = (sign: 1 | -1, low: number, size: number): number => (sign > 0 ? low : low + size);
  return (along, over, [du, dv] = [0, 0]) => {
    const a = (toMm(along) / oneTo + du) * u;
    const b = (toMm(over) / oneTo + dv) * v;
    return lying
      ? [start(u, box.x, box.w) + a, start(v, box.y, box.h) + b]
      : [start(v, box.x, box.w) + b, start(u, box.y, box.h) + a];
  };
}
/** Blank with its waste in grey, the finished outline as it will be trimmed. */
function wood(p: Panel, box: Rect, at: OnFace): Item[] {
  const [dw, dl] = [(p.rough.width - p.finished[1]) / 2, (p.rough.length - p.finished[2]) / 2];
  const corners = [at(dl, dw), at(p.rough.length - dl, p.rough.width - dw)] as const;
  const [x0, x1] = [Math.min(corners[0][0], corners[1][0]), Math.max(corners[0][0], corners[1][0])];
  const [y0, y1] = [Math.min(corners[0][1], corners[1][1]), Math.max(corners[0][1], corners[1][1])];
  const inner: readonly Point[] = [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]; // prettier-ignore
  return [
    ...rect(undefined, box.x, box.y, box.w, box.h, 'grey'),
    ...rect(undefined, x0, y0, x1 - x0, y1 - y0, 'white'),
    ...polyline('cutline', inner, true),
    ...rect('W', box.x, box.y, box.w, box.h),
  ];
}
/** A glue line with a stroke across it at each aligner; hatched where none may be. */
function glueLine(p: Panel, j: Panel['joints'][number], at: OnFace): Item[] {
  const [a, b] = [at(0, j.at), at(p.rough.length, j.at)];
  const marks = j.aligners.flatMap((u) => polyline('W', [at(u, j.at, [0, -1.7]), at(u, j.at, [0, 1.7])]));
  const blocked = j.keepOut.flatMap(([from, to]): Item[] => {
    const ring = [at(from, j.at, [0, -0.9]), at(to, j.at, [0, -0.9]), at(to, j.at, [0, 0.9]), at(from, j.at, [0, 0.9])];
    return hatch([ring], 45, 0.9).flatMap(([s, t]) => line('H', s[0], s[1], t[0], t[1]));
  });
  return [...blocked, ...polyline('N', [a, b]), ...marks];
}

/** A panel shorter than this on paper has its triangle beyond the letters. */
const SHORT = 34;
/** Cabinetmaker's triangle over all staves, from the middle of the first to the middle of the last (common practice). */
function triangle(p: Panel, at: OnFace, oneTo: number): Item[] {
  const { length, width, jointed } = p.rough;
  const [first, last] = [jointed / 2, width - jointed / 2];
  const short = toMm(length) / oneTo < SHORT;
  if (faceAxis(p.toward) === p.part.length) {
    // Along the grain: its base crosses every stave.
    const [base, apex] = short ? [0.52, 0.84] : [0.38, 0.7];
    const far = (share: number): number => length * (p.toward === p.end ? base + apex - share : share);
    return polyline('W', [at(far(apex), width / 2), at(far(base), first), at(far(base), last)], true);
  }
  const [apex, base] = p.toward === p.edge ? [first, last] : [last, first];
  const half = Math.min(length * 0.2, width * 0.5);
  const middle = length * (short ? 0.62 : 0.5);
  return polyline('W', [at(middle, apex), at(middle - half, base), at(middle + half, base)], true);
}
/** Each stave's letter near the marked end. */
function letters(input: Prepared, p: Panel, at: OnFace, oneTo: number): Item[] {
  const trim = (p.rough.length - p.finished[2]) / 2;
  const size = toMm(p.rough.jointed) / oneTo < 6.5 ? SIZE.name : SIZE.mark;
  return p.letters.flatMap((name, k) => {
    const [x, y] = at(trim, (k + 0.5) * p.rough.jointed, [4.4, 0]);
    return label(input.faces, name, x, y + MIDDLE * size * 0.8, { size, face: 'semibold', anchor: 'middle' });
  });
}
/** Clamps press on both edges, over and under the panel by turns: those under it have a round foot. */
function clamps(p: Panel, at: OnFace): Item[] {
  return p.clamps.at.flatMap((u, i) => {
    const ends = [
      [at(u, 0, [0, -ARROW]), at(u, 0, [0, -0.7])],
      [at(u, p.rough.width, [0, ARROW]), at(u, p.rough.width, [0, 0.7])],
    ] as const;
    return ends.flatMap(([start, tip]) => [
      ...clampArrow(start, tip),
      ...(i % 2 === 1 ? circle('N', start[0], start[1], 0.9, 'white') : []),
    ]);
  });
}
/** The names of the edge at stave a and of the marked end, outside them. */
function names(input: Prepared, p: Panel, box: Rect, lie: Lie): Item[] {
  const put = (side: Edge, word: string, off: number): Item[] => {
    const [cx, cy] = [box.x + box.w / 2, box.y + box.h / 2];
    const anchor = side === 'left' ? 'end' : side === 'right' ? 'start' : 'middle';
    const x = side === 'left' ? box.x - off : side === 'right' ? box.x + box.w + off : cx;
    const y = side === 'above' ? box.y - off : side === 'below' ? box.y + box.h + off + 2.4 : cy + 1.2;
    return label(input.faces, word, x, y, { face: 'semibold', anchor });
  };
  const word = (f: Face): string => p.part.faceWords[f];
  return [...put(lie.edge, word(p.edge), ARROW + 2), ...put(lie.end, word(p.end), 2)];
}
/** Finished size and blank, each way; what finds no room is told in words. */
function dimensions(
  input: Prepared,
  p: Panel,
  id: string,
  box: Rect,
  lie: Lie,
  oneTo: number,
): Pick<PanelPicture, 'items' | 'further'> {
  const mm = (v: number): number => toMm(v) / oneTo;
  const link = (start: number, low: number, size: number, strong: boolean) => ({
    from: start + mm(low),
    to: start + mm(low + size),
    figure: printed(input, size),
    name: strong ? 'finished' : 'blank',
    nm: size,
    strong,
  });
  const chainsOf = (side: Edge, whole: number, finished: number): Chain[] => {
    const start = side === 'left' || side === 'right' ? box.y : box.x;
    return [
      { id: `${side}-finished`, side, links: [link(start, (whole - finished) / 2, finished, true)] },
      { id: `${side}-blank`, side, links: [link(start, 0, whole, false)] },
    ];
  };
  const [lengths, widths] = [OTHER[lie.edge], OTHER[lie.end]];
  const plan = placeDimensions({
    view: box,
    chains: [...chainsOf(lengths, p.rough.length, p.finished[2]), ...chainsOf(widths, p.rough.width, p.finished[1])],
    room: { [lengths]: CHAINS[lengths] + ARROW + FOOT + 3, [widths]: CHAINS[widths] + 3 },
    clear: { [lengths]: ARROW + FOOT },
    measure: measureFigure(input.faces),
  });
  return { items: drawDimensions(input.faces, `${id}-size`, plan, oneTo), further: furtherSizes(plan) };
}
