import { counted } from '../../lengths/counted.js';
import type { Board, CutBoard, LaidBoards } from '../../layout/boards/board.js';
import { ranges } from '../../words/markOrder.js';
import { fieldOf } from '../frame.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import type { Table } from '../picture.js';
import { cutStrips } from './boardsCuts.js';
import { feetOfBoard } from '../../shop/board-feet.js';
import { blankOf, feetSaid, openSaid, usedBoards, woodOf, woodSums } from './boardsFigures.js';
import { boardStrip, keyStrip, scaleOf } from './boardsPicture.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

/** Where lumber is laid on the boards there are: what is used, each board with its cuts, the rough cut list, what is missing. */
export const boards = listSheet({
  id: 'boards',
  title: 'Boards',
  blocks: (input) => {
    const laid = input.layout.boards;
    if (!laid || laid.blanks.length === 0) return [];
    const used = usedBoards(laid);
    return [
      sums(input, laid),
      missing(laid),
      ...(used.length > 0 ? [key(input, used)] : []),
      ...used.map(({ board, cut }) => card(input, board, cut)),
      rough(input, laid),
    ];
  },
  head: (input) => {
    const laid = input.layout.boards;
    return laid ? [sentence(laid), remark(laid)] : ['Boards', ''];
  },
});

function sentence(laid: LaidBoards): string {
  const used = usedBoards(laid);
  const pieces = used.reduce((n, { cut }) => n + cut.pieces.length, 0);
  if (pieces === 0) return 'Nothing comes out of these boards';
  return `Cut ${counted(pieces, 'rough piece')} from ${counted(used.length, 'board')}`;
}
/** How much is used, how much of it is needed, and whether a cheaper choice of boards may be left. */
function remark(laid: LaidBoards): string {
  const all = woodSums(laid);
  if (all.length === 0) return '';
  const sum = (f: (s: (typeof all)[number]) => number): number => all.reduce((n, s) => n + f(s), 0);
  const verdict = all.every((s) => s.proved)
    ? 'proved'
    : `${openSaid(
        laid,
        sum((s) => s.open),
      )} not ruled out`;
  return `${feetSaid(sum((s) => s.feet))} board feet used, net need ${feetSaid(sum((s) => s.net))}; ${verdict}`;
}

function sums(input: Prepared, laid: LaidBoards): ListBlock {
  const rows = woodSums(laid).map((s) => [
    woodOf(input, s.wood, s.quarter),
    String(s.boards.length),
    ranges(s.boards).join(' '),
    feetSaid(s.feet),
    feetSaid(s.net),
    s.proved ? 'no cheaper choice of boards, proved' : `cheaper by up to ${openSaid(laid, s.open)} is not ruled out`,
  ]);
  const unused = laid.stock.length - usedBoards(laid).length;
  return {
    id: 'boards-used',
    title: 'Boards used',
    remark: `${laid.unit === 'money' ? 'least money' : 'least board feet'}; ${counted(unused, 'board')} not touched`,
    table: {
      id: 'boards-used',
      columns: [
        { id: 'wood', label: 'Wood', align: 'left' },
        { id: 'count', label: 'No.', align: 'right' },
        { id: 'boards', label: 'Boards', align: 'left' },
        { id: 'used', label: 'Board feet', align: 'right' },
        { id: 'net', label: 'Net need', align: 'right' },
        { id: 'proved', label: 'Choice', align: 'left' },
      ],
      rows,
    },
    look: { strong: ['boards'] },
    note: 'Net need: the rough pieces that come out of them, without kerfs and waste. Crosscuts are measured from the marked end, rips from the lower edge; the saw goes beyond the line, or before or below it where the list says so. Before you cut, look at both faces of each board again: what is not measured is not kept clear of.',
  };
}

/** What does not come out, those with one reason and one remedy together. */
function missing(laid: LaidBoards): ListBlock {
  const groups = new Map<string, { marks: string[]; why: string; would: string }>();
  for (const m of laid.missing) {
    const key = JSON.stringify([m.why, m.would]);
    const group = groups.get(key) ?? { marks: [], why: m.why, would: m.would };
    groups.set(key, group);
    group.marks.push(blankOf(laid, m.blank)?.mark ?? m.blank);
  }
  return {
    id: 'boards-missing',
    title: 'Missing',
    remark: `${counted(laid.missing.length, 'rough piece')} without a place`,
    table: {
      id: 'boards-missing',
      columns: [
        { id: 'marks', label: 'Pieces', align: 'left' },
        { id: 'why', label: 'Why', align: 'left' },
        { id: 'would', label: 'What would do it', align: 'left' },
      ],
      rows: [...groups.values()].map((g) => [[...new Set(g.marks)].join(', '), g.why, g.would]),
    },
    look: { strong: ['marks'] },
  };
}

const key = (input: Prepared, used: readonly { readonly board: Board }[]): ListBlock => ({
  id: 'boards-key',
  title: 'Marks on the boards',
  remark: 'better face up, lower edge below',
  table: { id: 'boards-key', columns: [], rows: [] },
  look: {},
  strips: () => [keyStrip(input, used.map(({ board }) => board))], // prettier-ignore
});

/** One board: its picture to scale, then its cuts in their order. */
function card(input: Prepared, board: Board, cut: CutBoard): ListBlock {
  const { left, right } = fieldOf(input.paper);
  const width = right - left;
  const [a, b] = board.width;
  const wide = a === b ? printed(input, a) : `${printed(input, a)} to ${printed(input, b)}`;
  const more = [board.cut, board.group, `${feetSaid(feetOfBoard(board))} board feet`, `1:${scaleOf(board, width)}`];
  return {
    id: `board-${board.id}`,
    title: `Board ${board.id}, ${woodOf(input, board.wood, board.quarter)}`,
    remark: `${printed(input, board.length)} × ${wide} × ${printed(input, board.thickness)}, ${more.filter(Boolean).join(', ')}`,
    table: { id: `board-${board.id}`, columns: [], rows: [] },
    look: {},
    strips: (w) => [boardStrip(input, board, cut, w), ...cutStrips(input, cut, board.length, w)],
  };
}

const COLUMNS: Table['columns'] = [
  { id: 'board', label: 'Board', align: 'left' },
  { id: 'mark', label: 'Mark', align: 'left' },
  { id: 'part', label: 'Part', align: 'left' },
  { id: 'length', label: 'Length', align: 'right' },
  { id: 'width', label: 'Width', align: 'right' },
  { id: 'thickness', label: 'Planes to', align: 'right' },
  { id: 'from', label: 'From marked end', align: 'right' },
  { id: 'up', label: 'Lower edge', align: 'right' },
  { id: 'shows', label: 'Shows', align: 'left' },
];
/** Every rough piece in the order of the boards, from the marked end on. */
function rough(input: Prepared, laid: LaidBoards): ListBlock {
  const rows = usedBoards(laid).flatMap(({ board, cut }) =>
    [...cut.pieces]
      .sort((a, b) => a.x - b.x || a.y - b.y)
      .map((p) => {
        const blank = blankOf(laid, p.blank);
        const part = input.piece.parts.find((q) => q.id === blank?.part)?.name ?? '';
        const name = blank?.spare === true ? `${part}, spare` : part;
        const finished = blank ? printed(input, blank.finished) : '';
        const face = blank?.shows === 'none' ? '' : p.backUp ? 'back' : 'front';
        return [board.id, blank?.mark ?? p.blank, name, printed(input, p.length), printed(input, p.width), finished, printed(input, p.x), printed(input, p.y), face]; // prettier-ignore
      }),
  );
  return {
    id: 'rough-by-board',
    title: 'Rough cut list by board',
    remark: counted(rows.length, 'rough piece'),
    table: { id: 'rough-by-board', columns: COLUMNS, rows },
    look: { strong: ['mark', 'length', 'width'], boxed: true },
  };
}
