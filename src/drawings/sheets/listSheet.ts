import { blockHeading, fieldOf, headline } from '../frame.js';
import { sheetOf } from '../input.js';
import type { Prepared, SheetKind } from '../input.js';
import type { Item, Table } from '../picture.js';
import { SIZE } from '../pens.js';
import { drawTable, heightOf, laidStrips, layTable, rowsIn } from '../table.js';
import type { LaidTable, RowSpan, Strip, TableLook } from '../table.js';
import { blockDrop, setBlock, widthOf, wrap } from '../text.js';
import type { Text } from '../text.js';

/** One list of a sheet of lists. */
export interface ListBlock {
  /** Unique among all sheets: what the cover's index links to. */
  readonly id: string;
  /** As the index and the block's own heading call it. */
  readonly title: string;
  /** Headline of a page that holds nothing else; the title where it is missing. */
  readonly heading?: string;
  /** At the right of the heading. */
  readonly remark?: string;
  readonly table: Table;
  readonly look: Omit<TableLook, 'width'>;
  /** Drawings instead of a table, one under the other, to the width of the block. */
  readonly strips?: (width: number) => readonly Strip[];
  /** Said under the table. */
  readonly note?: Text;
  /** Half the width: such blocks stand side by side. */
  readonly half?: boolean;
}
/** A kind of sheet made of lists: short ones share a page, long ones run on. A list without rows is left out. */
export function listSheet(kind: {
  readonly id: string;
  readonly title: string;
  readonly blocks: (input: Prepared) => readonly ListBlock[];
  /**
   * Headline of all its pages and the remark beside it: then its blocks have one line in the index, and keep their order
   * but for those that find room on an earlier page.
   */
  readonly head?: (input: Prepared) => readonly [sentence: string, remark: string];
}): SheetKind {
  const memo = new WeakMap<Prepared, Page[]>();
  const pagesOf = (input: Prepared): Page[] => {
    const set = kind.head ? compact : fewest;
    const known = memo.get(input) ?? set(laidBlocks(input, kind.blocks(input)), roomOf(input));
    memo.set(input, known);
    return known;
  };
  return {
    id: kind.id,
    title: kind.title,
    plan: (input) => pagesOf(input).length,
    ...(kind.head ? {} : { entries: (input: Prepared) => entriesOf(pagesOf(input)) }),
    draw(input, page, place) {
      const pages = pagesOf(input);
      const mine = pages[page] ?? [];
      const head = kind.head?.(input);
      const title = head?.[0] ?? titleOf(input, mine, kind.title);
      const short = head || widthOf(input.faces, title, SIZE.figure, 'semibold') > 53 ? kind.title : title;
      return sheetOf(input, place, {
        id: pages.length > 1 ? `${kind.id}-${page + 1}` : kind.id,
        title: short,
        folder: 'lists',
        alt: mine
          .map((p) => `${p.block.title}: ${p.block.strips ? 'drawn' : `rows ${p.rows[0] + 1} to ${p.rows[1]}`}`)
          .join('; '),
        items: drawPage(input, mine, title, head?.[1]),
        tables: mine.filter((p) => p.rows[0] === 0 && !p.block.strips).map((p) => p.block.table),
      });
    },
  };
}

/** From the frame's top to the first list under a headline. */
const TOP = 19;
/** Between two columns; between blocks; a block's heading with its rule; the note under a table. */
const APART = 12;
const GAP = 7;
const HEADING = 6.6;
const NOTE = 5.5;
interface Laid extends ListBlock {
  readonly laid: LaidTable;
}
/** Some rows of a list at a place on a page: column 0 or 1 where it is half as wide; `y` from the top of the lists. */
interface Piece {
  readonly block: Laid;
  readonly rows: RowSpan;
  readonly column: 0 | 1;
  readonly y: number;
}
type Page = readonly Piece[];

const roomOf = (input: Prepared): number => {
  const { top, bottom } = fieldOf(input.paper);
  return bottom - 4 - (top - 7 + TOP);
};
function laidBlocks(input: Prepared, blocks: readonly ListBlock[]): Laid[] {
  const { left, right } = fieldOf(input.paper);
  const width = (b: ListBlock): number => (b.half === true ? (right - left - APART) / 2 : right - left);
  return blocks
    .filter((b) => b.strips !== undefined || b.table.rows.length > 0)
    .map((b) => ({
      ...b,
      laid: b.strips
        ? laidStrips(b.strips(width(b)), width(b))
        : layTable(input.faces, b.table, { ...b.look, width: width(b) }),
    }))
    .map((b) => ({ ...b, ...(b.note === undefined ? {} : { noteHeight: noteHeight(input, b) }) }));
}
const noteHeight = (input: Prepared, b: Laid): number =>
  NOTE + blockDrop(wrap(input.faces, b.note ?? '', b.laid.width, SIZE.text)) + 1.5;

/** Height of some rows of a block with its heading and, after the last row, its note. */
const heightWith = (b: Laid & { readonly noteHeight?: number }, rows: RowSpan): number =>
  HEADING + heightOf(b.laid, rows) + (rows[1] === b.laid.rows.length ? (b.noteHeight ?? 0) : 0);
const whole = (b: Laid): RowSpan => [0, b.laid.rows.length];

/** The order given; where it takes fewer pages, those over the whole width first. */
function fewest(blocks: readonly Laid[], room: number): Page[] {
  const inOrder = flow(blocks, room);
  const wideFirst = flow([...blocks.filter((b) => b.half !== true), ...blocks.filter((b) => b.half === true)], room);
  return wideFirst.length < inOrder.length ? wideFirst : inOrder;
}
/** Each block on the first page that has room for it; those of half width that follow one another together. */
function compact(blocks: readonly Laid[], room: number): Page[] {
  const pages: { pieces: Piece[]; used: number }[] = [];
  for (let i = 0; i < blocks.length;) {
    const group = Math.max(1, halves(blocks, i).length);
    // What is continued never stands before what it continues.
    let after = -1;
    for (const page of flow(blocks.slice(i, i + group), room, 0)) {
      const used = Math.max(...page.map((p) => p.y + heightWith(p.block, p.rows)));
      const goesOn = page.some((p) => p.rows[0] > 0);
      const free = pages.findIndex((p, n) => (!goesOn || n > after) && p.used + GAP + used <= room);
      const at = pages[free];
      after = at ? free : pages.length;
      if (at) {
        at.pieces.push(...page.map((p) => ({ ...p, y: p.y + at.used + GAP })));
        at.used += GAP + used;
      } else pages.push({ pieces: [...page], used });
    }
    i += group;
  }
  return pages.map((p) => p.pieces);
}
/** Blocks in their order on as few pages as they take without being torn apart. */
function flow(blocks: readonly Laid[], room: number, saved = HEADING): Page[] {
  const pages: Piece[][] = [];
  let y = Infinity;
  const start = (): void => {
    pages.push([]);
    y = 0;
  };
  for (let i = 0; i < blocks.length;) {
    const run = halves(blocks, i);
    const first = blocks[i] as Laid;
    if (run.length > 0) {
      // As many as find room under what stands on the page; all of them on the next where none does.
      const taken = most(run, room - y) ?? (y > 0 ? undefined : { count: run.length, bands: filled(run, room) });
      if (!taken) start();
      for (const [k, band] of (taken?.bands ?? []).entries()) {
        if (k > 0) start();
        pages.at(-1)?.push(...band.pieces.map((p) => ({ ...p, y: p.y + y })));
        y += band.height + GAP;
      }
      i += taken?.count ?? 0;
    } else {
      y = full(first, { room, saved }, y, pages, start);
      i += 1;
    }
  }
  return pages;
}
/** The blocks of half width from `i` on. */
function halves(blocks: readonly Laid[], i: number): Laid[] {
  const out: Laid[] = [];
  for (let k = i; blocks[k]?.half === true; k++) out.push(blocks[k] as Laid);
  return out;
}
/** Height of a page, and what a list alone on it saves: then it has the headline for its heading. */
interface Room {
  readonly room: number;
  readonly saved: number;
}
/** A block over the whole width: whole where it fits, else over several pages, the last of them with three rows or more. */
function full(block: Laid, { room, saved }: Room, y: number, pages: Piece[][], start: () => void): number {
  const all = whole(block);
  const alone = heightWith(block, all) - saved <= room;
  let at = y;
  const fresh = (): void => {
    start();
    at = 0;
  };
  if (at + heightWith(block, all) > room && (alone || at > room * 0.6)) fresh();
  let from = 0;
  while (from < all[1]) {
    const bonus = at === 0 ? saved : 0;
    let to = rowsIn(block.laid, from, room - at - HEADING + bonus);
    if (to < all[1]) to = Math.min(to, Math.max(from + 1, all[1] - 3));
    pages.at(-1)?.push({ block, rows: [from, to], column: 0, y: at });
    at += heightWith(block, [from, to]) + GAP;
    from = to;
    if (from < all[1]) fresh();
  }
  return at;
}
interface Band {
  readonly pieces: readonly Piece[];
  readonly height: number;
}
/** The most of some blocks of half width, from the first on, that fit into `room` in two columns. */
function most(blocks: readonly Laid[], room: number): { count: number; bands: Band[] } | undefined {
  for (let count = blocks.length; count > 0; count--) {
    const band = bandOf(blocks.slice(0, count));
    if (band.height <= room) return { count, bands: [band] };
  }
  return undefined;
}
/** Blocks of half width in two columns of like height. */
function bandOf(blocks: readonly Laid[]): Band {
  const column = (some: readonly Laid[], at: 0 | 1): Band => {
    let y = 0;
    const pieces = some.map((block): Piece => {
      const piece: Piece = { block, rows: whole(block), column: at, y };
      y += heightWith(block, whole(block)) + GAP;
      return piece;
    });
    return { pieces, height: Math.max(0, y - GAP) };
  };
  const splits = blocks.map((_, k): Band => {
    const [a, b] = [column(blocks.slice(0, k + 1), 0), column(blocks.slice(k + 1), 1)];
    return { pieces: [...a.pieces, ...b.pieces], height: Math.max(a.height, b.height) };
  });
  return [...splits].sort((a, b) => a.height - b.height)[0] as Band;
}
/** Blocks too long for a page, filled down column by column. */
function filled(blocks: readonly Laid[], room: number): Band[] {
  const pieces: Piece[][] = [[]];
  let column: 0 | 1 = 0;
  let y = 0;
  const next = (): void => {
    if (column === 1) pieces.push([]);
    column = column === 0 ? 1 : 0;
    y = 0;
  };
  for (const block of blocks) {
    const all = whole(block);
    if (y > 0 && y + heightWith(block, all) > room) next();
    for (let from = 0; from < all[1];) {
      const to = rowsIn(block.laid, from, room - y - HEADING - (heightWith(block, all) > room ? NOTE + 5 : 0));
      pieces.at(-1)?.push({ block, rows: [from, to], column, y });
      y += heightWith(block, [from, to]) + GAP;
      from = to;
      if (from < all[1]) next();
    }
  }
  const height = (some: readonly Piece[]): number => Math.max(0, ...some.map((p) => p.y + heightWith(p.block, p.rows)));
  return pieces.filter((p) => p.length > 0).map((p) => ({ pieces: p, height: height(p) }));
}

/** One list over the whole page has the headline for its heading. */
const single = (page: Page): Piece | undefined =>
  page.length === 1 && page[0]?.block.half !== true ? page[0] : undefined;
/** `Cut list, hardware and joints`; the kind's title where that is too long for a headline. */
function titleOf(input: Prepared, page: Page, otherwise: string): string {
  const names = [...new Set(page.map((p) => p.block.title))];
  const said = names
    .map((n, i) => (i === 0 ? n : n.slice(0, 1).toLowerCase() + n.slice(1)))
    .join(', ')
    .replace(/, ([^,]*)$/, ' and $1');
  const { left, right } = fieldOf(input.paper);
  return widthOf(input.faces, said, SIZE.headline, 'semibold') > right - left ? otherwise : said;
}
function drawPage(input: Prepared, page: Page, title: string, remark?: string): Item[] {
  const { faces, paper } = input;
  const { left, right, top } = fieldOf(paper);
  const y0 = top - 7 + TOP;
  const alone = remark === undefined ? single(page) : undefined;
  if (alone) {
    const drawn = drawTable(faces, alone.block.laid, left, y0, alone.rows);
    return [
      ...headline(faces, alone.block.heading ?? alone.block.title, alone.block.remark ?? '', paper),
      ...drawn.items,
      ...noteOf(input, alone, left, drawn.y),
    ];
  }
  const items = [...headline(faces, title, remark ?? '', paper)];
  for (const piece of page) {
    const { block, rows } = piece;
    const x = piece.column === 0 ? left : right - block.laid.width;
    const y = y0 + piece.y;
    const name = rows[0] > 0 ? `${block.title}, continued` : block.title;
    const drawn = drawTable(faces, block.laid, x, y + HEADING, rows);
    const heading = blockHeading(faces, name, x, y + 4.2, block.laid.width, rows[0] > 0 ? undefined : block.remark);
    items.push(...heading, ...drawn.items, ...noteOf(input, piece, x, drawn.y));
  }
  return items;
}
function noteOf(input: Prepared, { block, rows }: Piece, x: number, y: number): Item[] {
  if (block.note === undefined || rows[1] < block.laid.rows.length) return [];
  return [...setBlock(input.faces, block.note, { x, y: y + NOTE, size: SIZE.text, width: block.laid.width }).items];
}
/** Where each list begins and ends, pages from 0. */
function entriesOf(pages: readonly Page[]): { id: string; title: string; from: number; to: number }[] {
  const out = new Map<string, { id: string; title: string; from: number; to: number }>();
  pages.forEach((page, n) => {
    for (const { block } of page) {
      const known = out.get(block.id);
      out.set(block.id, { id: block.id, title: block.title, from: known?.from ?? n, to: n });
    }
  });
  return [...out.values()];
}
