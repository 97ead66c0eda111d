import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Prepared } from '../../src/drawings/input.js';
import { modelOf } from '../../src/drawings/model.js';
import type { Sheet } from '../../src/drawings/picture.js';
import { boards } from '../../src/drawings/sheets/boards.js';
import { viewsOf } from '../../src/drawings/views.js';
import { loadFaces } from '../../src/io/fonts.js';
import type { Blank, Board, LaidBoards } from '../../src/layout/boards/board.js';
import { boardsAfter } from '../../src/layout/boards/after.js';
import { layBoards } from '../../src/layout/boards/lay.js';
import { formatLength } from '../../src/lengths/format.js';
import { inches } from '../../src/lengths/length.js';
import { chestFixture } from './fixture.js';
import { boxOf, clashes, flat, said, texts } from './laid.js';

const faces = loadFaces();
const board = (id: string, length: number, width: readonly [number, number], more: Partial<Board> = {}): Board => ({
  id,
  wood: 'oak-white',
  quarter: '5/4',
  thickness: inches(1.25),
  length: inches(length),
  width: [inches(width[0]), inches(width[1])],
  defects: [],
  ...more,
});
const blank = (id: string, length: number, width: number): Blank => ({
  id,
  part: id,
  mark: id.toUpperCase(),
  wood: 'oak-white',
  quarter: '5/4',
  thickness: inches(1),
  width: inches(width),
  length: inches(length),
  finished: inches(0.75),
  shows: 'one',
  allows: [],
});
const at = (x0: number, y0: number, x1: number, y1: number) =>
  [inches(x0), inches(y0), inches(x1), inches(y1)] as const;
const stock = [
  board('k', 96, [9, 8], { defects: [{ kind: 'knot', face: 'front', at: at(40, 3, 43, 5) }] }),
  board('m', 72, [7, 7], { crook: inches(0.25), defects: [{ kind: 'stain', face: 'back', at: at(10, 1, 20, 3) }] }),
];
const blanks = [
  ...Array.from({ length: 6 }, (_, i) => blank(`a${i + 1}`, 18, 3.5)),
  ...Array.from({ length: 8 }, (_, i) => blank(`b${i + 1}`, 9, 1.5)),
  blank('long', 120, 6),
];
const laidOf = (some: readonly Blank[]): LaidBoards => ({
  ...layBoards({ boards: stock, blanks: some, kerf: inches(0.125), budget: 100 }),
  stock,
  blanks: some,
});

let ready: Prepared;
let laid: LaidBoards;
let sheets: Sheet[];
const draw = (input: Prepared): Sheet[] =>
  Array.from({ length: boards.plan(input) }, (_, n) =>
    boards.draw(input, n, { n: n + 1, of: 9, hash: '7f3c91', index: [] }),
  );
beforeAll(async () => {
  const input = { ...(await chestFixture()), faces, hash: '7f3c91', findings: [] };
  laid = laidOf(blanks);
  const layout = { ...input.layout, boards: laid };
  ready = { ...input, layout, model: modelOf(input.piece, input.solids), views: viewsOf(input.piece, input.solids) };
  sheets = draw(ready);
}, 60_000);
afterAll(() => ready.kernel.dispose());

const table = (id: string) => sheets.flatMap((s) => s.tables).find((t) => t.id === id);
const all = (): string => sheets.map(said).join(' ');

describe('sheets of boards', () => {
  it('are there only where lumber is laid on boards', () => {
    const { boards: _, ...bare } = ready.layout;
    expect(boards.plan({ ...ready, layout: bare })).toBe(0);
    expect(sheets.length).toBeGreaterThan(0);
  });
  it('keep all words inside the frame (Letter: 18.4, 10.45, 250 by 195), none over another', () => {
    for (const sheet of sheets) {
      for (const t of texts(sheet)) {
        const b = boxOf(faces, t);
        const inside = b.x >= 18.4 && b.x + b.w <= 268.4 && b.y >= 10.45 && b.y + b.h <= 205.45;
        expect(inside, `${sheet.id}: "${t.string}"`).toBe(true);
        expect(t.string.includes('…'), t.string).toBe(false);
      }
      expect(clashes(faces, sheet), sheet.id).toEqual([]);
    }
  });
  it('name every board that is cut, and chalk the mark of every piece on it', () => {
    const words = all();
    for (const cut of laid.boards) {
      expect(words).toContain(`Board ${cut.board}, `);
      for (const p of cut.pieces) expect(words.split(' ')).toContain(p.blank.toUpperCase());
    }
  });
  it('number each cut twice, in the picture and in the list', () => {
    // Numbers of cuts stand alone, SemiBold, in the middle of a circle of radius 2.3.
    const circles = sheets.flatMap((s) => flat(s.picture)).filter((i) => i.kind === 'stroke' && i.d[1]?.[0] === 'A' && i.d[1][1] === 2.3).length; // prettier-ignore
    expect(circles).toBe(2 * laid.boards.reduce((n, b) => n + b.cuts.length, 0));
  });
  it('say of each cut what it is and how far, and the running figures the crosscuts and the length again', () => {
    const words = all();
    const count = (what: string): number => ` ${words} `.split(` ${what} `).length - 1;
    for (const { board: id, cuts } of laid.boards) {
      for (const c of cuts) expect(words).toContain(`${c.number} ${c.kind} ${formatLength(c.at, 'in')} `);
      for (const c of cuts.filter((k) => k.kind === 'crosscut'))
        expect(count(formatLength(c.at, 'in')), `${id} ${c.number}`).toBeGreaterThan(1);
    }
  });
  it('name what is kept as the stock after cutting does', () => {
    const kept = boardsAfter(laid, stock).filter((s) => s.id.includes('-'));
    expect(kept.length).toBeGreaterThan(0);
    for (const b of kept) expect(all().split(' '), b.id).toContain(b.id);
  });
  it('list every piece that comes out where it lies, in the order of the boards', () => {
    const rows = table('rough-by-board')?.rows ?? [];
    expect(rows.length).toBe(laid.boards.reduce((n, b) => n + b.pieces.length, 0));
    expect([...rows].map((r) => r[0])).toEqual([...rows].map((r) => r[0]).sort());
    expect(rows.filter((r) => r[1]?.startsWith('A')).every((r) => r[3] === '18' && r[4] === '3 1/2')).toBe(true);
  });
  it('say the board feet by hand: 96 by 8 1/2 mean and 72 by 7, an inch and a quarter thick', () => {
    const feet = { k: (1.25 * 8.5 * 96) / 144, m: (1.25 * 7 * 72) / 144 };
    const used = laid.boards.reduce((sum, b) => sum + feet[b.board as 'k' | 'm'], 0);
    const net = (1.25 * (6 * 18 * 3.5 + 8 * 9 * 1.5)) / 144;
    expect(table('boards-used')?.rows[0]?.slice(3, 5)).toEqual([used.toFixed(1), net.toFixed(1)]);
  });
  it('tell what is missing, why, and what would do it', () => {
    expect(table('boards-missing')?.rows.map((r) => r[0])).toEqual(['LONG']);
    expect(table('boards-missing')?.rows[0]?.every((cell) => cell.length > 0)).toBe(true);
  });
  it('explain only the defects that are on the boards that are cut', () => {
    const on = laid.boards.flatMap((b) => stock.find((s) => s.id === b.board)?.defects.map((d) => d.kind) ?? []);
    for (const kind of ['knot', 'stain', 'wane'] as const) expect(all().split(' ').includes(kind)).toBe(on.some((k) => k === kind)); // prettier-ignore
  });
});
