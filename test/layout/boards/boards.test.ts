import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Blank, Board, BoardJob, Defect } from '../../../src/layout/boards/board.js';
import { clearRectangles, unionArea, type Rect } from '../../../src/layout/boards/clear.js';
import { flattening, straightening } from '../../../src/layout/boards/ground.js';
import { layBoards } from '../../../src/layout/boards/lay.js';
import { feetOfBoard } from '../../../src/shop/board-feet.js';
import { DEFECT_KINDS } from '../../../src/wood/defects.js';
import { inches, toIn } from '../../../src/lengths/length.js';
import { faults } from './check.js';
import { blank } from './real.js';

const board = (id: string, length: number, width: number, more: Partial<Board> = {}): Board => ({
  id,
  wood: 'oak-red',
  quarter: '4/4',
  thickness: inches(1),
  length: inches(length),
  width: [inches(width), inches(width)],
  defects: [],
  ...more,
});
const KERF = inches(1 / 8);
const lay = (boards: readonly Board[], blanks: readonly Blank[], more: Partial<BoardJob> = {}) => {
  const job: BoardJob = { boards, blanks, kerf: KERF, budget: 100, ...more };
  const out = layBoards(job);
  expect(faults(out, job)).toEqual([]);
  return out;
};
const defect = (kind: Defect['kind'], face: Defect['face'], at: readonly [number, number, number, number]): Defect => ({
  kind,
  face,
  at: at.map(inches) as unknown as Defect['at'],
});

describe('clear rectangles', () => {
  const cell = fc.tuple(fc.nat(7), fc.nat(5), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 }));
  it('are all that can be, and none that is not: counted cell by cell', () => {
    fc.assert(
      fc.property(fc.array(cell, { maxLength: 6 }), (cells) => {
        const [L, H] = [9, 7];
        const obstacles = cells.map(([x, y, w, h]): Rect => [x, y, Math.min(L, x + w), Math.min(H, y + h)]);
        const free = (x0: number, y0: number, x1: number, y1: number): boolean =>
          x0 >= 0 &&
          y0 >= 0 &&
          x1 <= L &&
          y1 <= H &&
          !obstacles.some((o) => x0 < o[2] && x1 > o[0] && y0 < o[3] && y1 > o[1]);
        const wanted: string[] = [];
        for (let x0 = 0; x0 < L; x0++)
          for (let y0 = 0; y0 < H; y0++)
            for (let x1 = x0 + 1; x1 <= L; x1++)
              for (let y1 = y0 + 1; y1 <= H; y1++)
                if (
                  free(x0, y0, x1, y1) &&
                  !free(x0 - 1, y0, x1, y1) &&
                  !free(x0, y0 - 1, x1, y1) &&
                  !free(x0, y0, x1 + 1, y1) &&
                  !free(x0, y0, x1, y1 + 1)
                )
                  wanted.push([x0, y0, x1, y1].join());
        expect(
          clearRectangles(L, H, obstacles, [1, 1])
            .map((r) => r.join())
            .sort(),
        ).toEqual(wanted.sort());
        let area = 0;
        for (let x = 0; x < L; x++) for (let y = 0; y < H; y++) if (!free(x, y, x + 1, y + 1)) area++;
        expect(unionArea(obstacles)).toBe(area);
      }),
      { numRuns: 60 },
    );
  });
});

describe('by hand', () => {
  it('flattening and straightening: cup and bow by the square of their share, and a sixteenth', () => {
    // 8 in wide, 96 in long, cupped 1/8, bowed 3/4, crooked 1/2: a blank of 4 x 24 in loses 1/32 + 3/64 + 1/16.
    const b = board('a', 96, 8, { cup: inches(1 / 8), bow: inches(3 / 4), crook: inches(1 / 2) });
    expect(toIn(flattening(b, inches(24), inches(4)))).toBeCloseTo(1 / 32 + 3 / 64 + 1 / 16, 9);
    expect(toIn(straightening(b, inches(48)))).toBeCloseTo(1 / 8, 9);
  });
  it('three blanks along a clear board: cuts from the marked end, a kerf between, the rest kept', () => {
    const out = lay([board('a', 100, 6)], [blank('x', 30, 6), blank('y', 24, 6), blank('z', 20, 6)]);
    // 1/2 end waste, 30, 1/8, 24, 1/8, 20: the cuts stand at 1/2, 30 1/2, 54 5/8 and 74 3/4.
    const [cut] = out.boards;
    expect(cut?.cuts.map((c) => [c.kind, toIn(c.at), c.saw])).toEqual([
      ['crosscut', 0.5, 'before'],
      ['crosscut', 30.5, 'beyond'],
      ['crosscut', 54.625, 'beyond'],
      ['crosscut', 74.75, 'beyond'],
    ]);
    expect(cut?.cuts.map((c) => c.leaves)).toEqual(['waste', 'x', 'y', 'z']);
    expect(cut?.remnants.map((r) => r.at.map(toIn))).toEqual([[74.875, 0, 100, 6]]);
    expect(out.counts[0]?.proved).toBe(true);
  });
  it('board feet: 5/4 counts 1 1/4, under an inch counts one, the width is the mean', () => {
    // 8 ft of 5/4, 9 and 7 in wide at its ends: 1.25 x 8 x 96 / 144 = 6 2/3.
    const b = board('a', 96, 9, { quarter: '5/4', width: [inches(9), inches(7)] });
    expect(feetOfBoard(b)).toBeCloseTo(20 / 3, 9);
  });
  it('the cheaper of two boards is taken, and it is proved', () => {
    const boards = [board('a', 60, 6, { price: 30 }), board('b', 90, 8, { price: 20 })];
    const out = lay(boards, [blank('x', 50, 5)]);
    expect(out.boards.map((b) => b.board)).toEqual(['b']);
    expect([out.used, out.bound, out.unit, out.counts[0]?.proved]).toEqual([20, 20, 'money', true]);
  });
});

describe('faces', () => {
  const knotty = (face: Defect['face'], kind: Defect['kind'] = 'sound knot'): Board =>
    board('a', 40, 5, { defects: [defect(kind, face, [18, 2, 20, 3])] });
  const wide = (more: Partial<Blank> = {}): Blank => blank('x', 36, 4.5, more);
  it('a knot goes on the face that does not show: the board is turned over', () => {
    expect(lay([knotty('front')], [wide()]).boards[0]?.pieces[0]?.backUp).toBe(true);
    expect(lay([knotty('back')], [wide()]).boards[0]?.pieces[0]?.backUp).toBe(false);
  });
  it.each([
    ['both faces show', knotty('back'), wide({ shows: 'both' }), false],
    ['both show, and the stock allows it', knotty('back'), wide({ shows: 'both', allows: ['sound knot'] }), true],
    ['through both faces', knotty('through'), wide(), false],
    ['a split on the hidden face', knotty('back', 'split'), wide(), false],
    ['none shows', knotty('through'), wide({ shows: 'none' }), true],
    [
      'no wood there, whatever is allowed',
      knotty('back', 'void'),
      wide({ shows: 'none', allows: [...DEFECT_KINDS] }),
      false,
    ],
  ] as const)('%s', (_, b, x, fits) => {
    expect(lay([b], [x]).boards.length).toBe(fits ? 1 : 0);
  });
});

describe('runs', () => {
  const fronts = (n: number, length: number, most?: number): Blank[] =>
    Array.from({ length: n }, (_, i) =>
      blank(`f${i}`, length, 5, { run: { id: 'fronts', at: n - i, ...(most === undefined ? {} : { most }) } }),
    );
  const xs = (out: ReturnType<typeof lay>): (readonly [string, number])[] =>
    (out.boards[0]?.pieces ?? []).map((p) => [p.blank, toIn(p.x)] as const).sort((a, b) => a[1] - b[1]);
  it('follow one another along one board in their order, past what is in the way', () => {
    const b = board('a', 120, 6, { defects: [defect('knot', 'through', [30, 0, 32, 6])] });
    expect(xs(lay([board('b', 60, 6), b], fronts(3, 24)))).toEqual([
      ['f2', 0.5],
      ['f1', 32],
      ['f0', 56.125],
    ]);
  });
  it('lie in rows where the board is not long enough', () => {
    const out = lay([board('a', 60, 11)], fronts(4, 28));
    expect(out.missing).toEqual([]);
  });
  it('that no board takes are told whole; from two boards they come', () => {
    const boards = [board('a', 60, 6), board('b', 60, 6)];
    const out = lay(boards, fronts(4, 28));
    expect(out.missing.length).toBe(4);
    expect(out.missing[0]?.why).toContain('run of 4');
    expect(lay(boards, fronts(4, 28, 2)).missing).toEqual([]);
  });
});

describe('what does not fit is told', () => {
  it.each([
    ['no such wood', [board('a', 96, 8, { wood: 'cherry' })], blank('x', 20, 4), /no board of oak-red/, /4 in wide/],
    ['too wide', [board('a', 96, 8)], blank('x', 20, 14), /the widest gives 8 in/, /^2 staves of 7 1\/4 in/],
    ['too long', [board('a', 60, 8)], blank('x', 70, 4), /the longest gives 59 in/, /71 in long/],
    ['too thin', [board('a', 96, 8, { bow: inches(3) })], blank('x', 90, 4), /not|no board is thick enough/, /shorter/],
    ['another cut', [board('a', 96, 8, { cut: 'flat' })], blank('x', 20, 4, { cut: 'rift' }), /is rift sawn/, /clear/],
  ] as const)('%s', (_, boards, x, why, would) => {
    const out = lay(boards, [x]);
    expect(out.missing.length).toBe(1);
    expect(out.missing[0]?.why).toMatch(why);
    expect(out.missing[0]?.would).toMatch(would);
  });
  it('and how much more wood would do', () => {
    const out = lay([board('a', 40, 5)], [blank('x', 36, 4), blank('y', 36, 4)]);
    expect(out.missing).toEqual([
      {
        blank: 'y',
        why: 'the boards are used up',
        would: '1 sq ft more of 4/4, clear on one face, at least 4 in wide and 36 in long',
      },
    ]);
  });
});

const sixteenths = (from: number, to: number) =>
  fc.integer({ min: from * 16, max: to * 16 }).map((v) => inches(v / 16));
const someDefect = fc
  .tuple(
    fc.constantFrom(...DEFECT_KINDS),
    fc.constantFrom('front', 'back', 'through'),
    fc.nat(90),
    fc.nat(8),
    fc.integer({ min: 1, max: 8 }),
    fc.integer({ min: 1, max: 3 }),
  )
  .map(([kind, face, x, y, l, w]) => defect(kind, face, [x, y, x + l, y + w / 2]));
const someBoard = fc.record({
  length: sixteenths(30, 110),
  width: fc.tuple(sixteenths(4, 10), sixteenths(4, 10)),
  defects: fc.array(someDefect, { maxLength: 6 }),
  crook: fc.option(sixteenths(0, 1), { nil: undefined }),
  bow: fc.option(sixteenths(0, 1), { nil: undefined }),
  group: fc.constantFrom('red', 'pale'),
});
const someBlank = fc.record({
  length: sixteenths(8, 60),
  width: sixteenths(1, 7),
  shows: fc.constantFrom('both', 'one', 'none'),
  allows: fc.constantFrom([], ['sapwood', 'sound knot'] as const),
  run: fc.option(fc.constantFrom('r', 's'), { nil: undefined, freq: 3 }),
});
test('random boards and blanks: no fault, and the same again', () => {
  fc.assert(
    fc.property(
      fc.array(someBoard, { minLength: 1, maxLength: 8 }),
      fc.array(someBlank, { minLength: 1, maxLength: 16 }),
      (bs, xs) => {
        const boards = bs.map(({ crook, bow, ...b }, i): Board => ({
          ...board(`b${i}`, 1, 1),
          ...b,
          ...(crook === undefined ? {} : { crook }),
          ...(bow === undefined ? {} : { bow }),
        }));
        const blanks = xs.map(({ run, length, width, ...x }, i): Blank => ({
          ...blank(`x${i}`, toIn(length), toIn(width), x),
          ...(run === undefined ? {} : { run: { id: run, at: i, most: run === 'r' ? 1 : 2 } }),
        }));
        const job: BoardJob = { boards, blanks, kerf: KERF, budget: 20 };
        const out = layBoards(job);
        expect(faults(out, job)).toEqual([]);
        expect(
          JSON.stringify(layBoards({ ...job, boards: [...boards].reverse(), blanks: [...blanks].reverse() })),
        ).toBe(JSON.stringify(out));
      },
    ),
    { numRuns: 60 },
  );
});
