import { stackHeight, FIGURE_HEIGHT, figuresIn } from '../type/fraction.js';
import type { Faces } from '../type/type.js';
import type { DimensionPlan, DimensionTask, Link, PlacedFigure, Point } from './dimensions.js';
import { group, line, MIDDLE, stroke } from './draw.js';
import { SIZE } from './pens.js';
import type { GroupItem, Item, Seg } from './picture.js';
import { round3, setText, widthOf } from './text.js';

/** Size of a dimension figure as printed, for the placer. */
export const measureFigure =
  (faces: Faces): DimensionTask['measure'] =>
  (figure, strong) => ({
    w: widthOf(faces, figure, SIZE.figure, strong ? 'semibold' : 'regular'),
    h: figuresIn(figure).length > 0 ? stackHeight(SIZE.figure) : FIGURE_HEIGHT * SIZE.figure,
  });

/** Placed dimensions as items: lines by pen, and one group a figure that claims the distance it spans. */
export function drawDimensions(faces: Faces, id: string, plan: DimensionPlan, oneTo: number): Item[] {
  const paths: Record<'N' | 'W', Seg[]> = { N: [], W: [] };
  for (const { a, b, pen } of plan.lines) {
    paths[pen].push(['M', round3(a[0]), round3(a[1])], ['L', round3(b[0]), round3(b[1])]);
  }
  const lines = (['N', 'W'] as const).filter((pen) => paths[pen].length > 0).map((pen) => stroke(pen, paths[pen]));
  return [...lines, ...plan.figures.map((f, i) => figureItem(faces, `${id}-${i + 1}`, f, oneTo))];
}
function figureItem(faces: Faces, id: string, f: PlacedFigure, oneTo: number): GroupItem {
  const { items } = setText(faces, f.link.figure, {
    x: f.box.x + f.box.w / 2,
    y: f.box.y + f.box.h / 2 + MIDDLE * SIZE.figure,
    size: SIZE.figure,
    face: f.strong ? 'semibold' : 'regular',
    anchor: 'middle',
  });
  return claim(id, f.link, f.span, oneTo, items);
}
const claim = (
  id: string,
  link: Link,
  span: readonly [Point, Point],
  oneTo: number,
  items: readonly Item[],
): GroupItem =>
  group(id, items, {
    role: 'dimension',
    claim: { kind: 'distance', nm: link.nm, from: point(span[0]), to: point(span[1]), scale: 1 / oneTo },
  });
const point = (p: Point): Point => [round3(p[0]), round3(p[1])];

/** A dimension inside a view, from edge to edge in free air, its figure in a break of the line. Lying or standing. */
export function airDimension(
  faces: Faces,
  id: string,
  link: Link,
  from: Point,
  to: Point,
  oneTo: number,
): { readonly items: Item[]; readonly fits: boolean } {
  const lying = Math.abs(to[1] - from[1]) < 1e-6;
  const { w, h } = measureFigure(faces)(link.figure, true);
  const half = lying ? w / 2 + 1.2 : h / 2 + 0.45;
  const mid: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const length = lying ? Math.abs(to[0] - from[0]) : Math.abs(to[1] - from[1]);
  const at = (k: number): Point => (lying ? [mid[0] + k, mid[1]] : [mid[0], mid[1] + k]);
  const { items } = setText(faces, link.figure, {
    x: mid[0],
    y: mid[1] + MIDDLE * SIZE.figure,
    size: SIZE.figure,
    face: 'semibold',
    anchor: 'middle',
  });
  const s = 0.707;
  return {
    fits: length >= 2 * half + 3,
    items: [
      ...line('N', ...at(-length / 2), ...at(-half)),
      ...line('N', ...at(half), ...at(length / 2)),
      ...[at(-length / 2), at(length / 2)].flatMap(([x, y]) => line('W', x - s, y + s, x + s, y - s)),
      claim(id, link, [from, to], oneTo, items),
    ],
  };
}

const CHAIN_WORDS: Readonly<Record<string, string>> = {
  height: 'height',
  width: 'width over all',
  case: 'width of the case',
  depth: 'depth of the case',
  'depth-overall': 'depth over all',
};
/** Sizes that found no place beside their view, in words: none is ever left out in silence. */
export const furtherSizes = (plan: DimensionPlan): string[] =>
  plan.table.map(({ chain, link }) => {
    const name = [CHAIN_WORDS[chain] ?? '', link.name ?? ''].filter((w) => w !== '').join(' ');
    return `${name === '' ? 'between' : name}\u00a0${link.figure.replace(/ /g, '\u00a0')}`;
  });
