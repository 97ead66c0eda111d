import { counted, plural } from '../../lengths/counted.js';
import { formatAngle, formatLength } from '../../lengths/format.js';
import type { Part, Status, Stock } from '../../piece/piece.js';
import { sayQuantity } from '../../value/quantity.js';
import { ranges } from '../../words/markOrder.js';
import { group, label, line, statusBar, tickBox } from '../draw.js';
import { blockHeading, fieldOf } from '../frame.js';
import { printed, sheetOf } from '../input.js';
import type { IndexEntry, Prepared, SheetKind, SheetPlace } from '../input.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import { setBlock, setText, widthOf } from '../text.js';
import { drawLines, extentOf, ISOMETRIC, PICTURE_PENS, viewAt, withoutReveals } from '../views.js';
import { cardCount } from './cards.js';
import { cautionsOn } from './cautions.js';
import { hardwarePen } from './elevations.js';

const COLUMN = 103;
/** What the signatures take at the foot. */
const SIGNED = 11.5;
/** Picture at the left; what it is, the sheets, what to have in hand, how sure the sizes are, cautions, signatures. */
export const cover: SheetKind = {
  id: 'cover',
  title: 'Cover',
  plan: () => 1,
  draw(input, _page, place) {
    const { left, right, bottom } = fieldOf(input.paper);
    const x = right - COLUMN;
    const beside = text(input, place, x, false);
    const below = beside.y > bottom - SIGNED;
    // Cautions for which the column has no room stand under the picture, whole.
    const wide = x - 9 - left;
    const high = below ? cautions(input, left, 0, wide).y : 0;
    const words = below
      ? [...text(input, place, x, true).items, ...cautions(input, left, bottom - 4.2 - high, wide).items]
      : beside.items;
    return sheetOf(input, place, {
      id: 'cover',
      title: 'Shop packet',
      folder: 'drawings',
      alt: `${input.piece.header.title}: picture, list of sheets, status of sizes`,
      items: [...picture(input, x - 9, below ? high + 6 : 0), ...words],
    });
  },
};

/** Isometric picture, as large as the left of the sheet allows over `foot` mm. */
function picture(input: Prepared, limit: number, foot: number): Item[] {
  const { left, bottom, top } = fieldOf(input.paper);
  const [x0, y0, w, h] = [left + 1, top + 3, limit - left - 2, bottom - top - 10 - foot];
  const e = extentOf(input.model.overall, ISOMETRIC);
  const oneTo = Math.max((e.right - e.left) / w, (e.high - e.low) / h);
  const [pw, ph] = [(e.right - e.left) / oneTo, (e.high - e.low) / oneTo];
  const view = viewAt(input.model.overall, ISOMETRIC, oneTo, x0 + (w - pw) / 2, y0 + (h - ph) / 2);
  const { visible } = input.views.lines(ISOMETRIC);
  const drawer = new Set(input.piece.parts.filter((p) => p.drawer !== undefined).map((p) => p.id));
  const tidy = withoutReveals(visible, oneTo, (id) => drawer.has(id));
  const { parts, bought } = hardwarePen(input, tidy);
  return [
    group(
      'picture',
      [...drawLines(view, parts, PICTURE_PENS), ...drawLines(view, bought, { silhouette: 'D', edge: 'N', flush: 'N' })],
      {
        role: 'picture',
        alt: `${input.piece.header.title}, isometric picture from the front and right`,
      },
    ),
  ];
}

/** `below`: the cautions stand under the picture. */
function text(input: Prepared, place: SheetPlace, x: number, below: boolean): Block {
  const { bottom, top } = fieldOf(input.paper);
  const limit = bottom - SIGNED;
  // Looser first; when the cautions would not fit, rows move closer, then the index takes three columns.
  for (const tight of [0, 1, 2]) {
    const gap = tight === 0 ? 0 : 1;
    const head = title(input, x, top - 7);
    const facts = factRows(input, place, x, head.y + 8.4 - gap);
    const index = sheetIndex(input, place.index, x, facts.y + 7.2 - gap, tight > 1 ? 3 : 2);
    const hand = inHand(input, x, index.y + 7.4 - gap);
    const status = statusOfSizes(input, x, hand.y + 6.6 - gap / 2);
    const caution = below ? undefined : cautions(input, x, status.y + 6.8 - gap, COLUMN);
    if ((caution ?? status).y > limit && tight < 2) continue;
    const blocks = [head, facts, index, hand, status, ...(caution ? [caution] : [])];
    return {
      items: blocks.flatMap((b) => b.items).concat(signatures(input, x, bottom - 8.5)),
      y: (caution ?? status).y,
    };
  }
  return { items: [], y: 0 };
}
interface Block {
  readonly items: Item[];
  /** Baseline of the last line. */
  readonly y: number;
}

function title(input: Prepared, x: number, top: number): Block {
  const { faces, piece, model } = input;
  const name = piece.header.title;
  const full = widthOf(faces, name, SIZE.title, 'semibold');
  const size = Math.max(SIZE.finished, SIZE.title * Math.min(1, COLUMN / full));
  const y = top + 18;
  const size3 = (axis: 0 | 1 | 2): string => printed(input, model.overall[axis][1] - model.overall[axis][0]);
  const sizes = `${size3(0)} wide, ${size3(1)} deep, ${size3(2)} high${piece.units === 'mm' ? ', mm' : ''}`;
  const woods = setBlock(faces, piece.header.woods, { x, y: y + 8, size: SIZE.mark, width: COLUMN });
  return {
    items: [
      ...setBlock(faces, name, { x, y, size, face: 'semibold', width: COLUMN }).items,
      ...woods.items,
      ...setText(faces, sizes, { x, y: woods.y + 6.5, size: SIZE.mark }).items,
    ],
    y: woods.y + 6.5,
  };
}

function factRows(input: Prepared, place: SheetPlace, x: number, y: number): Block {
  const { header, parts } = input.piece;
  const rows: [string, string, string, string][] = [
    ['Piece', header.number, 'Revision', `${header.revision} · ${place.hash}`],
    ['Client', header.client, 'Date', header.date],
    ['Maker', header.maker, 'Parts', `${parts.length}, on ${counted(cardCount(input), 'card')}`],
  ];
  const items = rows.flatMap(([a, b, c, d], i) => {
    const at = y + i * 4.8;
    return [
      ...label(input.faces, a, x, at),
      ...label(input.faces, b, x + 17, at, { face: 'semibold' }),
      ...label(input.faces, c, x + 54.5, at),
      ...label(input.faces, d, x + 71.5, at, { face: 'semibold' }),
    ];
  });
  return { items, y: y + 9.6 };
}

function sheetIndex(input: Prepared, index: readonly IndexEntry[], x: number, y: number, columns: number): Block {
  const deep = Math.ceil(index.length / columns);
  const lefts = columns === 2 ? [x, x + 54.5] : columnsOf(input, index, deep, x);
  const items = blockHeading(input.faces, 'Sheets', x, y, COLUMN);
  index.forEach((entry, i) => {
    const left = lefts[Math.floor(i / deep)] ?? x;
    const at = y + 6.6 + (i % deep) * 4.4;
    const numbers = entry.from === entry.to ? String(entry.from) : `${entry.from}–${entry.to}`;
    const named = [
      ...label(input.faces, numbers, left + 10, at, { face: 'semibold', anchor: 'end' }),
      ...label(input.faces, entry.title, left + 13, at),
    ];
    items.push(group(`index-${entry.id}`, named, { role: 'index', link: entry.id }));
  });
  return { items, y: y + 6.6 + (deep - 1) * 4.4 };
}

/** Columns of the index as wide as what stands in them, what is left over shared out between them. */
function columnsOf(input: Prepared, index: readonly IndexEntry[], deep: number, x: number): number[] {
  const wide = Array.from({ length: Math.ceil(index.length / deep) }, (_, k) =>
    Math.max(...index.slice(k * deep, (k + 1) * deep).map((e) => 13 + widthOf(input.faces, e.title, SIZE.text))),
  );
  const gap = (COLUMN - wide.reduce((a, b) => a + b, 0)) / Math.max(1, wide.length - 1);
  return wide.map((_, k) => x + wide.slice(0, k).reduce((a, b) => a + b + gap, 0));
}

/** Bought things and sheet goods, each with the sizes that hang on it. */
export function thingsInHand(input: Prepared): { what: string; decides: string }[] {
  const { piece } = input;
  const kinds = (kind: 'slide' | 'pull'): Map<string, number> => {
    const out = new Map<string, number>();
    for (const h of piece.hardware) if (h.kind === kind) out.set(h.name, (out.get(h.name) ?? 0) + 1);
    return out;
  };
  const used = new Set(piece.parts.map((p) => p.stock));
  const sheets = Object.values(piece.stocks).filter((s) => s.kind === 'sheet' && used.has(s.id));
  const bits = new Map<string, string>();
  for (const p of piece.parts)
    for (const c of p.cuts)
      if ((c.shape === 'dovetail' || c.shape === 'tails') && c.bit) {
        const size = `${formatLength(c.bit.width, piece.units)}, ${formatAngle(c.bit.angle)}`;
        bits.set(size, size);
      }
  const pairs = (n: number): string => (n % 2 === 0 ? counted(n / 2, 'pair') : String(n));
  return [
    ...[...kinds('slide')].map(([name, n]) => ({
      what: `${name}, ${pairs(n)}`,
      decides: 'width, depth of boxes',
    })),
    ...sheetThings(input, sheets),
    ...[...bits.keys()].sort().map((b) => ({ what: `dovetail bit ${b}`, decides: 'tails and sockets' })),
    ...[...kinds('pull')].map(([name, n]) => ({ what: `${name}, ${n}`, decides: 'holes in the drawer fronts' })),
  ];
}
/** Sheet goods of one name in one row: their thicknesses as sold, and as measured. */
function sheetThings(input: Prepared, sheets: readonly Stock[]): { what: string; decides: string }[] {
  const names = [...new Set(sheets.map((s) => s.name))];
  return names.map((name) => {
    const mine = sheets.filter((s) => s.name === name);
    const measured = mine.flatMap((s) =>
      s.thickness === undefined ? [] : [formatLength(s.thickness, input.piece.units)],
    );
    const nominal = mine.flatMap((s) => (s.nominal === undefined ? [] : [s.nominal]));
    return {
      what: `${name} ${nominal.join(', ')}`.trim(),
      decides: measured.length > 0 ? `measured ${measured.join(', ')}: grooves, rabbets` : 'grooves, rabbets',
    };
  });
}
function inHand(input: Prepared, x: number, y: number): Block {
  const { faces } = input;
  const things = thingsInHand(input).slice(0, 7);
  if (things.length === 0) return { items: [], y: y - 7 };
  const items = blockHeading(faces, 'Have in hand before cutting', x, y, COLUMN, 'the sizes that it decides');
  let at = y + 7.2;
  things.forEach((t, i) => {
    if (i > 0) at += 5.2;
    items.push(...tickBox(faces, x, at - 3.15));
    const what = setText(faces, t.what, { x: x + 5.6, y: at, size: SIZE.text, face: 'semibold' });
    items.push(...what.items);
    const beside = 5.6 + what.width + 3 + widthOf(faces, t.decides, SIZE.text) <= COLUMN;
    if (!beside) at += 4.6;
    items.push(...setText(faces, t.decides, { x: x + COLUMN, y: at, size: SIZE.text, anchor: 'end' }).items);
  });
  return { items, y: at };
}

const STATUSES: readonly Status[] = ['cut now', 'leave long', 'fit to the piece', 'measure first'];
/** Marks of case parts, then the parts of drawers by name where all of that name have the status. */
export function statusWords(input: Prepared, status: Status): string {
  const { parts } = input.piece;
  const mine = parts.filter((p) => p.status === status);
  const short = (p: Part): string => plural((p.name.split(',')[0] ?? '').replace(/^((drawer|left|right) )+/, ''));
  const byName = new Map<string, Part[]>();
  const marks: string[] = [];
  for (const p of mine) {
    const all = parts.filter((q) => q.drawer !== undefined && short(q) === short(p));
    if (p.drawer === undefined || all.some((q) => q.status !== status)) marks.push(p.mark);
    else byName.set(short(p), all);
  }
  return [ranges(marks).join(' '), ...byName.keys()].filter((s) => s !== '').join(', ') || 'none';
}
function statusOfSizes(input: Prepared, x: number, y: number): Block {
  const { faces, piece } = input;
  const items = blockHeading(faces, 'Status of sizes', x, y, COLUMN, counted(piece.parts.length, 'part'));
  let at = y + 6.8;
  for (const status of STATUSES) {
    const count = piece.parts.filter((p) => p.status === status).length;
    items.push(...statusBar(status, x, at - 2.5));
    items.push(...label(faces, status.slice(0, 1).toUpperCase() + status.slice(1), x + 12, at, { face: 'semibold' }));
    items.push(...label(faces, String(count), x + 44, at, { face: 'semibold', anchor: 'end' }));
    const words = setBlock(faces, statusWords(input, status), {
      x: x + 47,
      y: at,
      size: SIZE.text,
      width: COLUMN - 47,
    });
    items.push(...words.items);
    at = words.y + 4.8;
  }
  return { items, y: at - 4.8 };
}

/** Every caution of the cover, the gravest first, and who carries it: never clipped. */
function cautionWords(input: Prepared): string {
  return [...cautionsOn(input, 'cover').map((c) => c.text), carryWords(input)].join(' ');
}
/** Who carries the heaviest of what is carried in one go; of the whole where no check has said it. */
function carryWords({ lists, piece, checks }: Prepared): string {
  const loads = checks?.checks.flatMap((c) => c.judged).filter((j) => j.code === 'carry-heavy') ?? [];
  const heaviest = [...loads].sort((p, q) => q.figure.value - p.figure.value)[0];
  if (heaviest)
    return `${heaviest.subject}: about ${sayQuantity(heaviest.figure, piece.units)}, ${heaviest.about.split(', ').at(-1) ?? ''} (an estimate).`;
  const { lb, kg, carriers } = lists.weights;
  const weight = piece.units === 'in' ? `${Math.round(lb)}\u00a0lb` : `${Math.round(kg)}\u00a0kg`;
  return `${['One carries', 'Two carry', 'Three carry'][carriers - 1]} it, about ${weight}, an estimate.`;
}
function cautions(input: Prepared, x: number, y: number, width: number): Block {
  const set = setBlock(input.faces, cautionWords(input), { x, y: y + 6.6, size: SIZE.text, width });
  return { items: [...blockHeading(input.faces, 'Caution', x, y, width), ...set.items], y: set.y };
}
function signatures(input: Prepared, x: number, y: number): Item[] {
  return ['Client', 'Maker'].flatMap((who, i) => {
    const left = x + i * 54.5;
    return [
      ...line('N', left, y, left + 48.5, y),
      ...label(input.faces, who, left, y + 4.2),
      ...label(input.faces, 'date', left + 48.5, y + 4.2, { anchor: 'end' }),
    ];
  });
}
