import { toMm } from '../../lengths/length.js';
import { counted } from '../../lengths/counted.js';
import { formatLength } from '../../lengths/format.js';
import type { SheetLayout } from '../../layout/layout.js';
import type { Part, Stock } from '../../piece/piece.js';
import { collide } from '../dimensions.js';
import type { Rect } from '../dimensions.js';
import { grainArrow, group, label, line, rect, scaleBar, scaleBarFor, statusBar, whiteDisc } from '../draw.js';
import { fieldOf, headline, lead, LETTER } from '../frame.js';
import { printed, sheetOf } from '../input.js';
import type { Prepared, SheetKind } from '../input.js';
import { largestScale, SMALLEST } from '../marks.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { spread } from '../spread.js';
import { blockDrop, setLines, setText, widthOf, wrap } from '../text.js';
import type { Line, Text } from '../text.js';
import { cautionsOn } from './cautions.js';
import { cutRows, cutTableHeight, drawCuts, notesOf, rowsPerPage } from './nestingCuts.js';

/** Sheet goods: where every part lies, every cut in order with the fence setting. A long list of cuts takes a second page. */
export const nesting: SheetKind = {
  id: 'nesting',
  title: 'Plywood',
  plan: (input) => pagesOf(input).length,
  draw(input, page, place) {
    const { sheet, from } = pagesOf(input)[page] as NestingPage;
    const stock = input.piece.stocks[sheet.stock];
    const title = `${stock?.name ?? sheet.stock}, ${whichSheet(input, sheet)}${from > 0 ? ', cuts' : ''}`;
    const drawn = from > 0 ? undefined : diagram(input, sheet);
    return sheetOf(input, place, {
      id: `nesting-${page + 1}`,
      title: title.slice(0, 1).toUpperCase() + title.slice(1),
      folder: 'nesting',
      alt: `${title}: parts, offcuts and ${counted(sheet.cuts.length, 'cut')}`,
      scale: drawn ? `1:${drawn.oneTo}` : 'none',
      items: [
        ...headline(input.faces, sentence(input, sheet), kindOf(input, stock)),
        ...(drawn?.items ?? []),
        ...drawCuts(input, sheet, from, drawn?.foot ?? (input.paper ?? LETTER).frame[1] + 24),
      ],
      tables: from > 0 ? [] : [table(input, sheet, page)],
    });
  },
};
interface NestingPage {
  readonly sheet: SheetLayout;
  /** First row of cuts on this page. */
  readonly from: number;
}
function pagesOf(input: Prepared): NestingPage[] {
  return input.layout.sheets.flatMap((sheet) => {
    const rows = cutRows(input, sheet).length;
    const more = Math.max(0, Math.ceil((rows - rowsPerPage(0)) / rowsPerPage(1)));
    return Array.from({ length: 1 + more }, (_, i) => ({
      sheet,
      from: i === 0 ? 0 : rowsPerPage(0) + (i - 1) * rowsPerPage(1),
    }));
  });
}

/** `sheet 1 of 2` among those that are bought, `offcut K3` of those on the rack. */
export function whichSheet(input: Prepared, sheet: SheetLayout): string {
  if (sheet.rack !== undefined) return `offcut ${sheet.rack}`;
  const bought = input.layout.sheets.filter((s) => s.stock === sheet.stock && s.rack === undefined);
  return `sheet ${bought.indexOf(sheet) + 1} of ${bought.length}`;
}
const partOf = (input: Prepared, id: string): Part | undefined => input.piece.parts.find((p) => p.id === id);
/** `Cut the back and 2 bottoms from one sheet`. */
function sentence(input: Prepared, sheet: SheetLayout): string {
  const names = new Map<string, number>();
  for (const p of sheet.pieces) {
    const name = partOf(input, p.part)?.name ?? p.part;
    names.set(name, (names.get(name) ?? 0) + 1);
  }
  const said = [...names].map(([name, n]) => (n === 1 ? `the ${name}` : counted(n, name)));
  const what =
    said.length > 3 ? counted(sheet.pieces.length, 'part') : said.join(', ').replace(/, ([^,]*)$/, ' and $1');
  const which = whichSheet(input, sheet);
  const from = sheet.rack === undefined ? which.replace(/^sheet 1 of 1$/, 'one sheet') : `the ${which}`;
  const full = `Cut ${what} from ${from}`;
  return widthOf(input.faces, full, SIZE.headline, 'semibold') > 165
    ? `Cut ${counted(sheet.pieces.length, 'part')} from ${from}`
    : full;
}
function kindOf(input: Prepared, stock: Stock | undefined): string {
  if (!stock) return '';
  const nominal = stock.nominal ? ` ${stock.nominal}` : '';
  const measured =
    stock.thickness === undefined ? '' : `, measured ${formatLength(stock.thickness, input.piece.units)}`;
  return `${stock.name.slice(0, 1).toUpperCase()}${stock.name.slice(1)}${nominal}${measured}`;
}

/** What can hurt at the saw, whole, in lines over the width of the sheet; the first `most` of it. */
function cautionLines(input: Prepared, most: number): readonly Line[] {
  const { left, right } = fieldOf(input.paper);
  const said = cautionsOn(input, 'cutting').slice(0, most).map((c) => c.text); // prettier-ignore
  return said.length === 0 ? [] : wrap(input.faces, lead('Caution:', said.join(' ')), right - left, SIZE.text);
}
const cautionHeight = (lines: readonly Line[]): number => (lines.length === 0 ? 0 : blockDrop(lines) + 5);
/** All cautions where they take nothing from the scale, else the first; `scaleFor` tells it over so many mm at the foot. */
function cautionsAt(input: Prepared, scaleFor: (foot: number) => number): readonly Line[] {
  const all = cautionLines(input, Infinity);
  return scaleFor(cautionHeight(all)) === scaleFor(0) ? all : cautionLines(input, 1);
}

/** From the sheet's edge to the heading of the cuts. */
const FOOT = 14.4;
interface Diagram {
  readonly items: Item[];
  readonly oneTo: number;
  readonly foot: number;
}
function diagram(input: Prepared, sheet: SheetLayout): Diagram {
  const { left, right, bottom, top } = fieldOf(input.paper);
  const [L, W] = [toMm(sheet.length), toMm(sheet.width)];
  const table = cutTableHeight(Math.min(cutRows(input, sheet).length, rowsPerPage(0)), notesOf(input, sheet).length);
  const y0 = top + 20.5;
  const room = bottom - y0 - table - FOOT;
  const scaleFor = (foot: number): number =>
    largestScale((n) => L / n <= right - left - 26 && W / n <= room - foot) ?? SMALLEST;
  const cautions = cautionsAt(input, scaleFor);
  const oneTo = scaleFor(cautionHeight(cautions));
  const x0 = left + 14 + Math.max(0, right - left - 30 - L / oneTo) / 2;
  const at = (v: number): number => toMm(v) / oneTo;
  // The trimmed strips lie before the origin.
  const ox = x0 + at(sheet.trim);
  const oy = y0 + at(sheet.trim);
  const box = (p: { x: number; y: number; w: number; h: number }): Rect => ({
    x: ox + at(p.x),
    y: oy + at(p.y),
    w: at(p.w),
    h: at(p.h),
  });
  const outline = { x: x0, y: y0, w: L / oneTo, h: W / oneTo };
  const names = sheet.pieces.map((p) => ({ box: box(p), lines: pieceWords(input, p) }));
  const labels = [
    ...names,
    ...sheet.offcuts.filter((o) => o.keep).map((o) => ({ box: box(o), lines: offcutWords(input, o) })),
  ];
  const placed = labels.flatMap((l) => wordsIn(input, l.box, l.lines));
  const unsure = sheet.pieces.filter((p) => partOf(input, p.part)?.status === 'fit to the piece');
  const items = [
    ...rect('N', outline.x, outline.y, outline.w, outline.h, 'grey'),
    ...sheet.pieces.flatMap((p) => filled(box(p))),
    ...sheet.offcuts.flatMap((o) => (o.keep ? filled(box(o)) : [])),
    ...rect('N', outline.x, outline.y, outline.w, outline.h),
    ...cutLines(
      input,
      sheet,
      ox,
      oy,
      at,
      outline,
      placed.map((p) => p.box),
    ),
    ...placed.flatMap((p) => p.items),
    ...unsure.flatMap((p) =>
      fitMark(
        box(p),
        placed.map((w) => w.box),
      ),
    ),
    ...legend(input, sheet, outline, oneTo),
  ];
  return {
    items: [
      group(`nest-${sheet.stock}-${sheet.index}`, items, { role: 'nesting' }),
      ...setLines(input.faces, cautions, { x: left, y: bottom - 1.8 - blockDrop(cautions), size: SIZE.text }).items,
    ],
    oneTo,
    foot: outline.y + outline.h + FOOT,
  };
}
/** The bar of a part that is fitted to the piece, under its words where there is room: the size on the sheet is not sure yet. */
function fitMark(part: Rect, words: readonly Rect[]): Item[] {
  const mine = words.find((w) => w.x >= part.x - 0.1 && w.x + w.w <= part.x + part.w + 0.1 && collide(w, part));
  const y = mine ? mine.y + mine.h + 1 : part.y + part.h / 2 - 1.3;
  const fits = part.w > 11 && y + 2.6 < part.y + part.h - 1;
  const at = fits ? y : mine && mine.y - 3.8 > part.y + 0.6 ? mine.y - 3.4 : undefined;
  return at === undefined || part.w <= 11 ? [] : statusBar('fit to the piece', part.x + part.w / 2 - 4.5, at);
}
const filled = (r: Rect): Item[] => rect(undefined, r.x, r.y, r.w, r.h, 'white');

interface Words {
  readonly text: Text;
  readonly size: number;
  readonly face: 'regular' | 'semibold';
}
const GRAIN = ['LEFT to RIGHT', 'FRONT to BACK', 'UP'] as const;
function pieceWords(input: Prepared, p: SheetLayout['pieces'][number]): Words[] {
  const part = partOf(input, p.part);
  const grain = part?.grain === undefined ? '' : `grain ${GRAIN[part.grain]}`;
  return [
    { text: `${part?.mark ?? p.part}${p.spare ? ' spare' : ''}`, size: SIZE.mark, face: 'semibold' },
    { text: `${printed(input, p.w)} × ${printed(input, p.h)}`, size: SIZE.text, face: 'regular' },
    {
      text: [part?.drawer === undefined ? part?.name : undefined, grain].filter(Boolean).join(', '),
      size: SIZE.text,
      face: 'regular',
    },
  ];
}
function offcutWords(input: Prepared, o: SheetLayout['offcuts'][number]): Words[] {
  const name: Text = [{ string: 'keep ' }, { string: o.name, face: 'semibold' }];
  return [
    { text: name, size: SIZE.text, face: 'regular' },
    { text: `${printed(input, o.w)} × ${printed(input, o.h)}`, size: SIZE.text, face: 'regular' },
  ];
}
/** As many of the lines as the box holds, the first ones first; smaller type when even the first is too wide. */
function wordsIn(input: Prepared, box: Rect, lines: readonly Words[]): { items: Item[]; box: Rect }[] {
  const { faces } = input;
  const size = (w: Words): Words =>
    widthOf(faces, w.text, w.size, w.face) <= box.w - 1.5 ? w : { ...w, size: SIZE.text };
  const kept: Words[] = [];
  for (const wanted of lines) {
    const w = size(wanted);
    if (wanted.text === '' || widthOf(faces, w.text, w.size, w.face) > box.w - 1) continue;
    if (heightOf([...kept, w]) > box.h - 1) break;
    kept.push(w);
  }
  if (kept.length === 0) return [];
  let y = box.y + box.h / 2 - heightOf(kept) / 2;
  const top = y;
  const x = box.x + box.w / 2;
  const items: Item[] = [];
  for (const w of kept) {
    y += pitch(w);
    items.push(
      ...setText(faces, w.text, { x, y: y - pitch(w) * 0.28, size: w.size, face: w.face, anchor: 'middle' }).items,
    );
  }
  const wide = Math.max(...kept.map((w) => widthOf(faces, w.text, w.size, w.face)));
  return [{ items, box: { x: x - wide / 2 - 0.6, y: top, w: wide + 1.2, h: y - top } }];
}
const pitch = (w: Words): number => (w.size > SIZE.text ? w.size * 1.25 : 5.1);
const heightOf = (words: readonly Words[]): number => words.reduce((s, w) => s + pitch(w), 0);

type Cut = SheetLayout['cuts'][number];
/** Lines of the cuts with their discs: whole cuts run 3 past the sheet to the disc, later ones carry it on the line. */
function cutLines(
  input: Prepared,
  sheet: SheetLayout,
  ox: number,
  oy: number,
  at: (v: number) => number,
  outline: Rect,
  words: readonly Rect[],
): Item[] {
  const ends = (c: Cut): [number, number, number, number] => {
    const [x1, y1, x2, y2] = [ox + at(c.from[0]), oy + at(c.from[1]), ox + at(c.to[0]), oy + at(c.to[1])];
    return [Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)];
  };
  const standing = (c: Cut): boolean => Math.abs(c.from[0] - c.to[0]) < Math.abs(c.from[1] - c.to[1]);
  const whole = (c: Cut): boolean => {
    const [x1, y1, x2, y2] = ends(c);
    return standing(c) ? y2 - y1 > outline.h * 0.85 : x2 - x1 > outline.w * 0.85;
  };
  const items: Item[] = [];
  for (const c of sheet.cuts) items.push(...line('W', ...ends(c)));
  const discs: Rect[] = [];
  const disc = (c: Cut, x: number, y: number): void => {
    discs.push({ x: x - 3, y: y - 3, w: 6, h: 6 });
    items.push(...whiteDisc(input.faces, c.number, x, y));
  };
  for (const upright of [true, false]) {
    const cuts = sheet.cuts
      .filter((c) => whole(c) && standing(c) === upright)
      .sort((a, b) => ends(a)[upright ? 0 : 1] - ends(b)[upright ? 0 : 1]);
    const along = (c: Cut): number => (upright ? ends(c)[0] : ends(c)[1]);
    const places = spread(
      cuts.map((c) => ({ at: along(c), half: 3 })),
      {
        gap: 0.4,
        pitch: 6.4,
        blocked: [],
        within: upright ? [outline.x - 8, outline.x + outline.w + 8] : [outline.y - 4, outline.y + outline.h + 4],
      },
    );
    cuts.forEach((c, i) => {
      const place = places?.[i] ?? along(c);
      const [x, y] = upright ? [place, outline.y - 6] : [outline.x - 6, place];
      items.push(...(upright ? line('W', along(c), outline.y, x, y) : line('W', outline.x, along(c), x, y)));
      disc(c, x, y);
    });
  }
  for (const c of sheet.cuts.filter((k) => !whole(k))) {
    const [x1, y1, x2, y2] = ends(c);
    const length = standing(c) ? y2 - y1 : x2 - x1;
    const spot = (k: number): [number, number] => (standing(c) ? [x1, y1 + k] : [x1 + k, y1]);
    const tries = [5.9, 9, 13, 18, 24, 32, 42, 55, length - 3.2].filter((k) => k < length - 2).concat(length / 2);
    const free = tries.find((k) => {
      const [x, y] = spot(k);
      const r = { x: x - 3, y: y - 3, w: 6, h: 6 };
      return ![...discs, ...words].some((d) => collide(d, r));
    });
    disc(c, ...spot(free ?? (tries[0] as number)));
  }
  return items;
}

/** Under the sheet: its size, scale bar, grain of the face, kerf and trim. */
function legend(input: Prepared, sheet: SheetLayout, outline: Rect, oneTo: number): Item[] {
  const { faces } = input;
  const y = outline.y + outline.h + 6.2;
  const what = sheet.rack === undefined ? 'Sheet' : `Offcut ${sheet.rack}`;
  const words = `${what} ${printed(input, sheet.length)} × ${printed(input, sheet.width)}`;
  const trim = sheet.trim > 0 ? `trim ${printed(input, sheet.trim)} on two edges` : 'no trim';
  const right = `kerf ${printed(input, sheet.kerf)}, ${trim}`;
  const full = scaleBarFor(input.piece.units, 1 / oneTo);
  // Short blocks: every second figure only.
  const bar = full.block < 9 ? { ...full, figures: full.figures.map((f, i) => (i % 2 === 0 ? f : '')) } : full;
  const [sizeWidth, rightWidth] = [widthOf(faces, words, SIZE.text), widthOf(faces, right, SIZE.text)];
  const grainWidth = sheet.grain === 'none' ? 0 : 31 + widthOf(faces, 'grain of the face', SIZE.text);
  const least = sizeWidth + 5 + bar.block * 4 + 10 + grainWidth + 8 + rightWidth;
  const field = fieldOf(input.paper);
  const x = Math.max(field.left, Math.min(outline.x, field.right - least));
  const barX = x + sizeWidth + 5;
  const grainX = barX + bar.block * 4 + 10;
  const standing = sheet.grain === 'width';
  const arrow = standing
    ? grainArrow([grainX + 4, y + 3], [grainX + 4, y - 5])
    : grainArrow([grainX, y - 1.2], [grainX + 28, y - 1.2]);
  const grain =
    grainWidth === 0 ? [] : [...arrow, ...label(faces, 'grain of the face', grainX + (standing ? 9 : 31), y)];
  const end = Math.max(outline.x + outline.w, x + least);
  return [
    ...setText(faces, words, { x, y, size: SIZE.text }).items,
    ...scaleBar(faces, { ...bar, label: '' }, barX, y - 3.4),
    ...grain,
    ...setText(faces, right, { x: end, y, size: SIZE.text, anchor: 'end' }).items,
  ];
}

function table(input: Prepared, sheet: SheetLayout, page: number) {
  return {
    id: `nesting-${page + 1}`,
    columns: [
      { id: 'cut', label: 'cut', align: 'right' as const },
      { id: 'kind', label: 'kind', align: 'left' as const },
      { id: 'against', label: 'against the fence', align: 'left' as const },
      { id: 'fence', label: 'fence', align: 'right' as const },
      { id: 'leaves', label: 'leaves', align: 'left' as const },
    ],
    rows: sheet.cuts.map((c) => [String(c.number), c.kind, c.against, printed(input, c.fence), c.leaves]),
  };
}
