import type { Board, CutBoard, Defect } from '../../layout/boards/board.js';
import { toMm, nm } from '../../lengths/length.js';
import type { Faces } from '../../type/type.js';
import type { Rect } from '../dimensions.js';
import { area, arrowhead, circle, grainArrow, label, line, MIDDLE, originCircle, polyline, rect } from '../draw.js';
import type { Point } from '../draw.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import { largestScale, SMALLEST } from '../marks.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { spread } from '../spread.js';
import type { Strip } from '../table.js';
import { setText, widthOf } from '../text.js';
import type { Text } from '../text.js';
import { drawDefect } from './boardsDefects.js';
import { blankOf } from './boardsFigures.js';

/** Left of a board stands the mark of its marked end, right of it the last running figure. */
const SIDES = [9, 10] as const;
/** Above the board: discs of whole cuts. Under it: rows of running figures. */
const ABOVE = 8;
const ROW = 5.6;
const LINE = 4.4;
const UNDER = 1.6;
/** The number of a cut on its line: our default, so that it finds room in a narrow piece. */
const DISC = 2.3;

/** The largest scale at which a board fits over the width of a list: 1:n. */
export const scaleOf = (board: Board, width: number): number =>
  largestScale((n) => n >= 5 && toMm(nm(board.length)) / n <= width - SIDES[0] - SIDES[1]) ?? SMALLEST;

interface Frame {
  readonly input: Prepared;
  readonly board: Board;
  readonly cut: CutBoard;
  /** Paper x of a distance from the marked end, paper y of one from the lower edge. */
  readonly px: (v: number) => number;
  readonly py: (v: number) => number;
  readonly top: number;
  readonly foot: number;
}
const boxOf = (f: Frame, [x0, y0, x1, y1]: readonly [number, number, number, number]): Rect => ({
  x: f.px(x0),
  y: f.py(y1),
  w: f.px(x1) - f.px(x0),
  h: f.py(y0) - f.py(y1),
});
/** Area that two rectangles share, mm². */
const shared = (a: Rect, b: Rect): number =>
  Math.max(0, Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y));

/** A board to scale, its marked end at the left and its lower edge below: defects, pieces, cuts, what is left. */
export function boardStrip(input: Prepared, board: Board, cut: CutBoard, width: number): Strip {
  const oneTo = scaleOf(board, width);
  const high = toMm(nm(Math.max(...board.width))) / oneTo;
  const running = runningFigures(input, board, cut, oneTo, width);
  const below = LINE + running.rows * ROW;
  return {
    height: ABOVE + high + below + UNDER,
    draw: (x, y) => {
      const foot = y + ABOVE + high;
      const f: Frame = {
        input,
        board,
        cut,
        px: (v) => x + SIDES[0] + toMm(nm(v)) / oneTo,
        py: (v) => foot - toMm(nm(v)) / oneTo,
        top: y + ABOVE,
        foot,
      };
      return [...wood(f), ...cutsAndWords(f), ...drawRunning(f, running, x + SIDES[0]), ...grain(f, x + width)];
    },
  };
}

function wood(f: Frame): Item[] {
  const { board, cut } = f;
  const [w0, w1] = board.width;
  const outline: Point[] = [
    [f.px(0), f.py(0)],
    [f.px(board.length), f.py(0)],
    [f.px(board.length), f.py(w1)],
    [f.px(0), f.py(w0)],
  ];
  const middle = (f.py(0) + f.py(w0)) / 2;
  const white = (b: Rect): Item[] => rect(undefined, b.x, b.y, b.w, b.h, 'white');
  const pieces = cut.pieces.map((p) => boxOf(f, [p.x, p.y, p.x + p.length, p.y + p.width]));
  return [
    ...area('grey', outline),
    ...cut.remnants.flatMap((r) => white(boxOf(f, r.at))),
    ...pieces.flatMap(white),
    ...board.defects.flatMap((d) => drawDefect(d, seen(f, d))),
    ...pieces.flatMap((b) => rect('N', b.x, b.y, b.w, b.h)),
    ...polyline('W', outline, true),
    ...arrowhead([f.px(0) - 0.9, middle], [1, 0], 4.6, 4.2),
  ];
}
/** A defect within its board, never so small that it is not seen. */
function seen(f: Frame, d: Defect): Rect {
  const b = boxOf(f, d.at);
  const [w, h] = [Math.max(1.2, b.w), Math.max(0.8, b.h)];
  return { x: Math.min(b.x, f.px(f.board.length) - w), y: Math.max(f.top, b.y - (h - b.h) / 2), w, h };
}

/** Words of pieces and remnants first, then the numbers of the cuts where they leave them free. */
function cutsAndWords(f: Frame): Item[] {
  const { input, cut } = f;
  /** Of what is left no more is said than there is. */
  const { step } = input.piece;
  const least = (v: number): string => printed(input, Math.floor(v / step) * step);
  const words = [
    ...cut.pieces.map((p) => {
      const laid = input.layout.boards;
      const mark = (laid && blankOf(laid, p.blank)?.mark) ?? p.blank;
      const size = `${printed(input, p.length)} × ${printed(input, p.width)}${p.backUp ? ', back shows' : ''}`;
      return wordsIn(f, boxOf(f, [p.x, p.y, p.x + p.length, p.y + p.width]), mark, size);
    }),
    ...cut.remnants.map((r) => {
      const [x0, y0, x1, y1] = r.clear;
      return wordsIn(f, boxOf(f, r.at), `${f.board.id}-${r.name}`, `${least(x1 - x0)} × ${least(y1 - y0)}`, 'keep ');
    }),
  ].flat();
  const lines = drawCuts(
    f,
    words.map((w) => w.box),
  );
  return [...words.flatMap((w) => [...rect(undefined, w.box.x, w.box.y, w.box.w, w.box.h, 'white')]), ...lines, ...words.flatMap((w) => w.items)]; // prettier-ignore
}
/** The mark with the size beside or under it, as much as the box holds. */
function wordsIn(f: Frame, box: Rect, mark: string, size: string, before = ''): { items: Item[]; box: Rect }[] {
  const { faces } = f.input;
  const strong: Text = [{ string: before }, { string: mark, face: 'semibold' }];
  const one: Text = [...strong, { string: `  ${size}` }];
  const [room, high] = [box.w - 1.6, box.h - 0.8];
  const [middleX, middleY] = [box.x + box.w / 2, box.y + box.h / 2];
  const wide = (t: Text, s: number): number => widthOf(faces, t, s);
  const put = (t: Text, s: number, y: number): Item[] => [...setText(faces, t, { x: middleX, y, size: s, anchor: 'middle' }).items]; // prettier-ignore
  const at = (w: number, h: number): Rect => ({ x: middleX - w / 2 - 0.5, y: middleY - h / 2, w: w + 1, h });
  const big = before === '' ? SIZE.mark : SIZE.text;
  const two = Math.max(wide(strong, big), wide(size, SIZE.text));
  // Numbers of cuts stand on the ends of narrow pieces.
  const clear = room - 2 * DISC;
  if (two <= clear && high >= 10.4)
    return [{ items: [...put(strong, big, middleY - 0.6), ...put(size, SIZE.text, middleY + 4.4)], box: at(two, 10) }];
  const small = Math.max(wide(strong, SIZE.text), wide(size, SIZE.text));
  if (wide(one, SIZE.text) > clear && small <= clear && high >= 8.4)
    return [
      { items: [...put(strong, SIZE.text, middleY - 1), ...put(size, SIZE.text, middleY + 3.4)], box: at(small, 8.4) },
    ];
  if (wide(one, SIZE.text) <= clear && high >= 4.4)
    return [{ items: put(one, SIZE.text, middleY + 1.17), box: at(wide(one, SIZE.text), 4.4) }];
  if (wide(strong, SIZE.text) <= room && high >= 2.5)
    return [{ items: put(strong, SIZE.text, middleY + 1.17), box: at(wide(strong, SIZE.text), 2.6) }];
  return [];
}

type Cut = CutBoard['cuts'][number];
const ends = (f: Frame, c: Cut): readonly [Point, Point] =>
  c.kind === 'crosscut'
    ? [
        [f.px(c.at), f.py(c.over[1])],
        [f.px(c.at), f.py(c.over[0])],
      ]
    : [
        [f.px(c.over[0]), f.py(c.at)],
        [f.px(c.over[1]), f.py(c.at)],
      ];
/** Lines of the saw; a crosscut from edge to edge runs up to its disc, another carries its number on the line. */
function drawCuts(f: Frame, words: readonly Rect[]): Item[] {
  const out: Item[] = f.cut.cuts.flatMap((c) => {
    const [[x1, y1], [x2, y2]] = ends(f, c);
    return line('W', x1, y1, x2, y2);
  });
  const reaches = (c: Cut): boolean => c.kind === 'crosscut' && c.over[1] >= Math.min(...f.board.width) * 0.97;
  const above = f.cut.cuts.filter(reaches).sort((a, b) => a.at - b.at || a.number - b.number);
  const at = placed(
    above.map((c) => ({ at: f.px(c.at), half: DISC })),
    [f.px(0) - SIDES[0] + 1, f.px(f.board.length) + SIDES[1]],
    0.3,
  );
  const taken: Rect[] = [...words];
  above.forEach((c, i) => {
    const x = at[i] as number;
    const y = f.top - ABOVE + DISC + 0.8;
    const [[lineX, lineY]] = ends(f, c);
    out.push(...polyline('N', [[x, y], [x, y + DISC + 1.2], [lineX, f.top - 0.6], [lineX, lineY]]), ...number(f, c, x, y)); // prettier-ignore
  });
  // Short lines have the least choice of a place.
  const lengthOf = (c: Cut): number => {
    const [[x1, y1], [x2, y2]] = ends(f, c);
    return x2 - x1 + (y2 - y1);
  };
  for (const c of f.cut.cuts
    .filter((k) => !reaches(k))
    .sort((a, b) => lengthOf(a) - lengthOf(b) || a.number - b.number)) {
    const [x, y] = freeSpot(f, c, taken);
    taken.push({ x: x - DISC, y: y - DISC, w: 2 * DISC, h: 2 * DISC });
    out.push(...number(f, c, x, y));
  }
  return out;
}
/** A place on the line of a cut that words and other numbers leave free, from its start on; else the least crowded. */
function freeSpot(f: Frame, c: Cut, taken: readonly Rect[]): Point {
  const [[x1, y1], [x2, y2]] = ends(f, c);
  const length = x2 - x1 + (y2 - y1);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const count = Math.max(1, Math.floor((length - 2 * DISC) / 0.5) + 1);
  const tries = Array.from({ length: count }, (_, i) => (count === 1 ? length / 2 : DISC + i * 0.5));
  const near = (k: number): number => {
    const box = { x: x1 + ux * k - DISC, y: y1 + uy * k - DISC, w: 2 * DISC, h: 2 * DISC };
    return taken.reduce((sum, t) => sum + shared(t, box), 0);
  };
  const best = tries.reduce((a, k) => (near(k) < near(a) ? k : a), tries[0] as number);
  return [x1 + ux * best, y1 + uy * best];
}
/** The number of a cut, in the picture and in its list. */
export const cutNumber = (faces: Faces, n: number, x: number, y: number): Item[] => [
  ...circle('N', x, y, DISC, 'white'),
  ...label(faces, String(n), x, y + MIDDLE * SIZE.text, { face: 'semibold', anchor: 'middle' }),
];
const number = (f: Frame, c: Cut, x: number, y: number): Item[] => cutNumber(f.input.faces, c.number, x, y);
/** Places along a line, apart; in equal steps where they do not find room near what they belong to. */
function placed(
  wishes: readonly { at: number; half: number }[],
  within: readonly [number, number],
  gap: number,
): readonly number[] {
  // prettier-ignore
  const room = within[1] - within[0];
  return (
    spread(wishes, { gap, pitch: 0, blocked: [], within }) ??
    wishes.map((_, i) => within[0] + (room * (i + 0.5)) / wishes.length)
  );
}

interface Running {
  readonly rows: number;
  readonly figures: readonly { readonly nm: number; readonly text: string; readonly x: number; readonly row: number }[];
}
/** Distances of crosscuts from the marked end, each once, in as few rows as they fit; x from the marked end, mm of paper. */
function runningFigures(input: Prepared, board: Board, cut: CutBoard, oneTo: number, width: number): Running {
  const at = [...new Set(cut.cuts.filter((c) => c.kind === 'crosscut').map((c) => c.at))].sort((a, b) => a - b);
  const figures = [...at, ...(at.includes(board.length) ? [] : [board.length])].map((v) => ({
    nm: v,
    text: printed(input, v),
    wish: toMm(nm(v)) / oneTo,
  }));
  const half = (text: string): number => widthOf(input.faces, text, SIZE.text) / 2;
  for (let rows = 1; ; rows++) {
    const out: Running['figures'][number][] = [];
    for (let row = 0; row < rows; row++) {
      const mine = figures.filter((_, i) => i % rows === row);
      const xs = spread(
        mine.map((m) => ({ at: m.wish, half: half(m.text) })),
        { gap: 1.4, pitch: 0, blocked: [], within: [-SIDES[0] + 3, width - SIDES[0]] },
      );
      if (!xs) break;
      // A figure far from its station no longer belongs to it.
      if (rows < 4 && mine.some((m, i) => Math.abs((xs[i] as number) - m.wish) > 7)) break;
      mine.forEach((m, i) => out.push({ nm: m.nm, text: m.text, x: xs[i] as number, row }));
    }
    if (out.length === figures.length) return { rows, figures: [...out].sort((a, b) => a.nm - b.nm) };
  }
}
/** Running figures from the marked end along the lower side (ISO 129-1): origin circle, an arrowhead at each station. */
function drawRunning(f: Frame, running: Running, x0: number): Item[] {
  const y = f.foot + 2.2;
  const out: Item[] = [...line('N', f.px(0), y, f.px(f.board.length), y), ...originCircle(f.px(0), y)];
  let before = f.px(0);
  for (const figure of running.figures) {
    const x = f.px(figure.nm);
    const base = f.foot + LINE + (figure.row + 1) * ROW - 1.4;
    const tip = x - before > 2.6;
    out.push(
      ...polyline('H', [[x, f.foot + 0.6], [x, y + 1], [x0 + figure.x, y + 2.4], [x0 + figure.x, base - 3.6]]), // prettier-ignore
      ...(tip ? arrowhead([x, y], [1, 0]) : line('W', x - 0.5, y + 0.5, x + 0.5, y - 0.5)),
      ...setText(f.input.faces, figure.text, { x: x0 + figure.x, y: base, size: SIZE.text, anchor: 'middle' }).items,
    );
    before = x;
  }
  return out;
}

/** The grain arrow beyond the board's end, where it leaves room. */
function grain(f: Frame, right: number): Item[] {
  const from = f.px(f.board.length) + 4;
  const y = (f.top + f.foot) / 2;
  return right - from < 10 ? [] : grainArrow([from, y], [Math.min(from + 16, right), y]);
}
/** What the marks on some boards mean: only the defects that are on them. */
export function keyStrip(input: Prepared, boards: readonly Board[]): Strip {
  return { height: 6.4, draw: (x, y) => key(input, boards, x, y + 4.4) };
}
function key({ faces }: Prepared, boards: readonly Board[], x: number, y: number): Item[] {
  const out: Item[] = [];
  let at = x;
  const put = (mark: (x: number) => readonly Item[], room: number, words: string): void => {
    out.push(...mark(at), ...setText(faces, words, { x: at + room, y, size: SIZE.text }).items);
    at += room + widthOf(faces, words, SIZE.text) + 4.2;
  };
  put((k) => arrowhead([k + 4.2, y - 1.2], [1, 0], 4.2, 3.6), 5.4, 'marked end');
  put((k) => grainArrow([k, y - 1.2], [k + 10, y - 1.2]), 11.4, 'grain');
  put((k) => rect('N', k, y - 2.7, 5, 3, 'grey'), 6.2, 'waste');
  const defects = boards.flatMap((b) => b.defects);
  for (const kind of [...new Set(defects.map((d) => d.kind))].sort())
    put((k) => drawDefect({ kind, face: 'front' }, { x: k, y: y - 2.9, w: 5, h: 3.4 }), 6.2, kind);
  if (defects.some((d) => d.face === 'back')) put((k) => rect('hidden', k, y - 2.7, 5, 3), 6.2, 'on the back only');
  return out;
}
