import type { Blank, Board, BoardJob, BoardLayout, CutBoard } from '../../../src/layout/boards/board.js';

type Piece = CutBoard['pieces'][number];
interface Box {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}
/** Kinds that may be on a hidden face, written out again: the program's own list is what is being checked. */
const HIDDEN_SOUND = ['sound knot', 'sapwood', 'stain', 'hole', 'bark'];

/** Judges a layout by itself, with no code of the layout: everything that is wrong with it, in words. */
export function faults(layout: BoardLayout, job: BoardJob): string[] {
  const out: string[] = [];
  const blanks = new Map(job.blanks.map((b) => [b.id, b]));
  const boards = new Map(job.boards.map((b) => [b.id, b]));
  const told = [...layout.boards.flatMap((b) => b.pieces.map((p) => p.blank)), ...layout.missing.map((m) => m.blank)];
  for (const id of blanks.keys()) {
    const times = told.filter((t) => t === id).length;
    if (times !== 1) out.push(`${id} is told ${times} times`);
  }
  if (told.length !== blanks.size) out.push('blanks that were not asked for');
  if (new Set(layout.boards.map((b) => b.board)).size !== layout.boards.length) out.push('a board is cut twice');
  for (const cut of layout.boards) {
    const board = boards.get(cut.board);
    if (!board) out.push(`${cut.board} is not there`);
    else out.push(...boardFaults(cut, board, blanks, layout, job).map((f) => `${cut.board}: ${f}`));
  }
  out.push(...runFaults(layout, job));
  if (layout.bound > layout.used * (1 + 1e-9)) out.push('the bound is above what is used');
  return out;
}

function boardFaults(
  cut: CutBoard,
  board: Board,
  blanks: ReadonlyMap<string, Blank>,
  layout: BoardLayout,
  job: BoardJob,
): string[] {
  const out: string[] = [];
  const edge = (x: number): number => board.width[0] + ((board.width[1] - board.width[0]) / board.length) * x;
  for (const p of cut.pieces) {
    const b = blanks.get(p.blank);
    if (!b) continue;
    if (p.length !== b.length || p.width !== b.width) out.push(`${b.id} has another size`);
    if (b.wood !== board.wood || b.quarter !== board.quarter) out.push(`${b.id} is of another wood`);
    if (b.cut && board.cut && b.cut !== board.cut) out.push(`${b.id} is of another cut`);
    if (p.x < layout.endTrim || p.x + p.length > board.length - layout.endTrim) out.push(`${b.id} is in the end waste`);
    if (p.y < 0 || p.y + p.width > edge(p.x) + 1 || p.y + p.width > edge(p.x + p.length) + 1)
      out.push(`${b.id} is off the board`);
    const flat =
      board.thickness -
      (board.cup ?? 0) * (b.width / Math.max(...board.width)) ** 2 -
      (board.bow ?? 0) * (b.length / board.length) ** 2 -
      25.4e6 / 16;
    if (flat < b.finished - 1) out.push(`${b.id} does not clean up`);
    if (p.y < (board.crook ?? 0) * (b.length / board.length) ** 2 - 1) out.push(`${b.id} has a crooked edge`);
    for (const d of board.defects) if (meets(p, d.at) && !allowed(d, b, p)) out.push(`${b.id} has a ${d.kind}`);
  }
  const all: Box[] = [
    ...cut.pieces,
    ...cut.remnants.map(({ at }) => ({ x: at[0], y: at[1], length: at[2] - at[0], width: at[3] - at[1] })),
  ];
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [a, b] = [all[i] as Box, all[j] as Box];
      const apart = Math.max(a.x - b.x - b.length, b.x - a.x - a.length, a.y - b.y - b.width, b.y - a.y - a.width);
      if (apart < job.kerf) out.push(`pieces ${i} and ${j} are closer than a kerf`);
    }
  if (!guillotine(all, job.kerf)) out.push('it cannot be cut edge to edge');
  out.push(...sawnFaults(cut, board, job.kerf));
  for (const r of cut.remnants) {
    const inside = r.clear.every((v, k) => (k < 2 ? v >= (r.at[k] as number) : v <= (r.at[k] as number)));
    if (!inside) out.push(`${r.name} is clear where it is not`);
    const [x, y, x1, y1] = r.clear;
    if (board.defects.some((d) => meets({ x, y, length: x1 - x, width: y1 - y }, d.at)))
      out.push(`${r.name} is not clear`);
  }
  return out;
}

const meets = (p: Box, at: readonly [number, number, number, number]): boolean =>
  p.x < at[2] && p.x + p.length > at[0] && p.y < at[3] && p.y + p.width > at[1];
function allowed(d: Board['defects'][number], b: Blank, p: Piece): boolean {
  if (d.kind === 'void') return false;
  if (b.allows.includes(d.kind)) return true;
  if (!HIDDEN_SOUND.includes(d.kind) || b.shows === 'both') return false;
  return b.shows === 'none' || (d.face !== 'through' && (d.face === 'back') !== p.backUp);
}

/** By recursion: some line from edge to edge meets no box, and so on in both halves, until one is left. */
function guillotine(boxes: readonly Box[], kerf: number): boolean {
  if (boxes.length <= 1) return true;
  for (const [at, size] of [
    ['x', 'length'],
    ['y', 'width'],
  ] as const)
    for (const end of [...new Set(boxes.map((b) => b[at] + b[size]))].sort((a, b) => a - b).slice(0, -1)) {
      const low = boxes.filter((b) => b[at] + b[size] <= end);
      const high = boxes.filter((b) => b[at] >= end + kerf);
      if (low.length + high.length < boxes.length || high.length === 0) continue;
      return guillotine(low, kerf) && guillotine(high, kerf);
    }
  return false;
}

/** Saws the board as the list says, stick by stick; every piece must be among the sticks that are left. */
function sawnFaults(cut: CutBoard, board: Board, kerf: number): string[] {
  const out: string[] = [];
  let sticks: Box[] = [{ x: 0, y: 0, length: board.length, width: Math.max(...board.width) }];
  cut.cuts.forEach((c, i) => {
    if (c.number !== i + 1) out.push('cuts are not numbered in order');
    const cross = c.kind === 'crosscut';
    const from = c.saw === 'beyond' ? c.at : c.at - kerf;
    const mid = c.at + (c.saw === 'beyond' ? kerf : -kerf) / 2;
    const [lo, hi] = c.over;
    const middle = (lo + hi) / 2;
    const on = sticks.filter((s) =>
      cross
        ? s.x < c.at && s.x + s.length > Math.min(mid, c.at) && s.y <= middle && s.y + s.width >= middle
        : s.y <= c.at && s.y + s.width >= c.at && s.x <= middle && s.x + s.length >= middle,
    );
    const [stick] = on;
    if (on.length !== 1 || !stick) {
      out.push(`cut ${c.number} is in ${on.length} sticks`);
      return;
    }
    sticks = sticks.filter((s) => s !== stick);
    const put = (b: Box): void => void (b.length > 0 && b.width > 0 && sticks.push(b));
    if (cross) {
      put({ ...stick, length: from - stick.x });
      put({ ...stick, x: from + kerf, length: stick.x + stick.length - from - kerf });
    } else {
      put({ ...stick, width: from - stick.y });
      put({ ...stick, y: from + kerf, width: stick.y + stick.width - from - kerf });
    }
  });
  for (const p of cut.pieces) {
    const found = sticks.find(
      (s) => s.x === p.x && s.length === p.length && s.y === p.y && Math.abs(s.width - p.width) < 1,
    );
    const jointed = sticks.find((s) => s.x === p.x && s.length === p.length && s.y === p.y && s.width >= p.width);
    const taper = jointed && p.y + p.width >= Math.min(...board.width);
    if (!found && !taper) out.push(`the cuts do not give ${p.blank}`);
  }
  return out;
}

/** Blanks of a run: on at most so many boards, in order, first board first; in rows, each along the board. */
function runFaults(layout: BoardLayout, job: BoardJob): string[] {
  const out: string[] = [];
  const where = new Map(layout.boards.flatMap((b) => b.pieces.map((p) => [p.blank, { board: b.board, p }] as const)));
  for (const id of new Set(job.blanks.flatMap((b) => (b.run ? [b.run.id] : [])))) {
    const run = job.blanks.filter((b) => b.run?.id === id).sort((a, b) => (a.run?.at ?? 0) - (b.run?.at ?? 0));
    const placed = run.flatMap((b) => where.get(b.id) ?? []);
    if (new Set(placed.map((x) => x.board)).size > (run[0]?.run?.most ?? 1))
      out.push(`run ${id} is on too many boards`);
    placed.slice(1).forEach((now, i) => {
      const before = placed[i];
      if (!before || before.board !== now.board) return;
      const along = now.p.x >= before.p.x + before.p.length + job.kerf;
      const above = now.p.y >= before.p.y + before.p.width + job.kerf;
      if (!along && !above) out.push(`run ${id} is out of order`);
      if (now.p.backUp !== before.p.backUp) out.push(`run ${id} shows both faces`);
    });
  }
  return out;
}
