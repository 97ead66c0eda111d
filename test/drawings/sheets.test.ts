import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawSheets, planSheets } from '../../src/drawings/index.js';
import type { DrawInput } from '../../src/drawings/index.js';
import type { GroupItem, Item, Sheet } from '../../src/drawings/picture.js';
import { cover } from '../../src/drawings/sheets/cover.js';
import { largestScale } from '../../src/drawings/marks.js';
import { tooLarge } from '../../src/drawings/tooLarge.js';
import { modelOf } from '../../src/drawings/model.js';
import { cutPiece } from '../../src/drawings/section.js';
import type { CutPiece } from '../../src/drawings/section.js';
import { extentOf, FRONT, ISOMETRIC, onPaper, PLAN, RIGHT_SIDE, viewAt, viewsOf } from '../../src/drawings/views.js';
import { dot } from '../../src/geom/placement.js';
import { loadFaces } from '../../src/io/fonts.js';
import { inches } from '../../src/lengths/length.js';
import { chestFixture } from './fixture.js';
import { boxOf, clashes, texts } from './laid.js';

let input: DrawInput;
let sheets: Sheet[];
const faces = loadFaces();
beforeAll(async () => {
  input = { ...(await chestFixture()), faces, hash: '7f3c91', findings: [] };
  sheets = drawSheets(input);
}, 60_000);
afterAll(() => input.kernel.dispose());

const groups = (items: readonly Item[]): GroupItem[] =>
  items.flatMap((i) => (i.kind === 'group' ? [i, ...groups(i.items)] : []));
const own = (): Sheet[] => sheets.filter((s) => s.folder !== 'cards');

describe('sheets', () => {
  it('keeps all text inside the frame (Letter: 18.4, 10.45, 250 by 195)', () => {
    for (const sheet of own())
      for (const t of texts(sheet)) {
        const b = boxOf(faces, t);
        const inside = b.x >= 18.4 && b.x + b.w <= 268.4 && b.y >= 10.45 && b.y + b.h <= 205.45;
        expect(inside, `${sheet.id}: "${t.string}" at ${t.x}, ${t.y}`).toBe(true);
      }
  });

  it('keeps the index of a packet of 60 pages in its block on the cover', () => {
    const titles = ['Cover', 'Elevations', 'Sections', 'Details', 'Exploded key', 'Cut list', 'Equal lengths', 'Diagonals', 'Reveals', 'The gap to leave today', 'Hardware', 'Joints', 'Shopping', 'Boards', 'Plywood', 'Milling', 'Panels', 'Set-ups', 'Part cards', 'Board cards', 'Assembly', 'Actual sizes', 'Drawers', 'Finish', 'Checks', 'Figures', 'Rods', 'Delivery', 'Record']; // prettier-ignore
    const index = titles.map((title, i) => ({ id: `s${i}`, title, from: 2 * i + 1, to: 2 * i + 2 }));
    const ready = { ...input, model: modelOf(input.piece, input.solids), views: viewsOf(input.piece, input.solids) };
    const sheet = cover.draw(ready, 0, { n: 1, of: 60, hash: '7f3c91', index });
    const words = texts(sheet);
    expect(groups(sheet.picture).filter((g) => g.role === 'index').length).toBe(titles.length);
    expect(clashes(faces, sheet)).toEqual([]);
    for (const t of words) {
      const b = boxOf(faces, t);
      expect(b.x + b.w <= 268.4 && b.y + b.h <= 205.45, t.string).toBe(true);
    }
  });

  it('prints no word over another', () => {
    for (const sheet of own()) {
      expect(clashes(faces, sheet), sheet.id).toEqual([]);
    }
  });

  it('draws every dimension as long as its figure says, at the scale in the strip', () => {
    let seen = 0;
    for (const sheet of own()) {
      for (const g of groups(sheet.picture)) {
        if (g.claim?.kind !== 'distance') continue;
        const { nm, from, to, scale } = g.claim;
        const paper = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]));
        expect(Math.abs(paper - (nm / 1e6) * scale), g.id).toBeLessThan(0.005);
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(20);
  });

  it('says the sizes of the chest once a view: openings, members and overall (sums by hand: 42, 36, 19, 20)', () => {
    const sheet = sheets.find((s) => s.id === 'elevations') as Sheet;
    const front = groups(sheet.picture).filter((g) => g.id.startsWith('front-') && g.claim?.kind === 'distance');
    const heights = front.flatMap((g) => (g.claim?.kind === 'distance' && vertical(g.claim) ? [g.claim.nm] : []));
    const whole = inches(42);
    expect(heights.filter((h) => h === whole)).toHaveLength(1);
    expect(heights.filter((h) => h !== whole).reduce((a, b) => a + b, 0)).toBe(whole);
    const lying = groups(sheet.picture).flatMap((g) =>
      g.claim?.kind === 'distance' && !vertical(g.claim) ? [g.claim.nm / 25_400_000] : [],
    );
    expect(lying).toEqual(expect.arrayContaining([36, 37.5, 34.25, 19]));
  });

  it('numbers sheets without gaps, and the plan agrees with what is drawn', () => {
    const index = planSheets(input);
    // Entries follow one another; two lists may share a sheet.
    let last = 0;
    for (const entry of index) {
      expect([last, last + 1]).toContain(entry.from);
      expect(entry.to).toBeGreaterThanOrEqual(entry.from);
      last = entry.to;
    }
    expect(sheets).toHaveLength(last);
    const links = groups(sheets[0]?.picture ?? []).flatMap((g) => (g.link === undefined ? [] : [g.link]));
    expect(links).toEqual(index.map((e) => sheets[e.from - 1]?.id));
    expect(new Set(sheets.map((s) => s.id)).size).toBe(sheets.length);
  });

  it('counts on the cover add up to the parts: 22 + 2 + 22 + 0 = 46', () => {
    const cover = sheets.find((s) => s.id === 'cover') as Sheet;
    const words = texts(cover).map((t) => t.string.trim());
    const count = (name: string): number => Number(words[words.lastIndexOf(name) + (name === 'Fit' ? 4 : 2)]);
    const counts = [count('Cut'), count('Leave'), count('Fit'), count('Measure')];
    expect(counts).toEqual([22, 2, 22, 0]);
    expect(counts.reduce((a, b) => a + b, 0)).toBe(input.piece.parts.length);
  });

  it('gives the same bytes twice and survives JSON', () => {
    const again = drawSheets(input);
    expect(JSON.stringify(again)).toBe(JSON.stringify(sheets));
    expect(JSON.parse(JSON.stringify(sheets))).toEqual(sheets);
  });

  it('names every part of the case on the elevations, by balloon or in the key', () => {
    const words = texts(sheets.find((s) => s.id === 'elevations') as Sheet).map((t) => t.string.trim());
    for (const mark of ['A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'A7', 'A8', 'R1', 'R4', 'B1', 'B4']) {
      expect(
        words.some((w) => w.split('–').includes(mark)),
        mark,
      ).toBe(true);
    }
  });
});
const vertical = (c: { from: readonly [number, number]; to: readonly [number, number] }): boolean =>
  Math.abs(c.from[1] - c.to[1]) > Math.abs(c.from[0] - c.to[0]);

describe('sections', () => {
  /** Areas by hand: side 7/8 × 19 in = 16.625 sq in; front rail 3/4 × 2 1/2 = 1.875 sq in. */
  it('cut the parts where the plane meets them, and know how their grain lies', () => {
    const prepared = { ...input, model: modelOf(input.piece, input.solids), views: viewsOf(input.piece, input.solids) };
    const flatwise = cutPiece(prepared, { axis: 2, at: inches(20), direction: PLAN });
    const deep = cutPiece(prepared, { axis: 0, at: inches(30), direction: RIGHT_SIDE });
    const of = (piece: CutPiece, id: string) => piece.parts.find((p) => p.standing.part.id === id);
    expect(Math.abs(area(of(flatwise, 'side_left')?.rings ?? []))).toBeCloseTo(16.625 * 645.16, 3);
    expect(Math.abs(area(of(deep, 'front_rail_2')?.rings ?? []))).toBeCloseTo(1.875 * 645.16, 3);
    expect(of(flatwise, 'side_left')?.grain).toBe('end');
    expect(of(deep, 'front_rail_2')?.grain).toBe('end');
    expect(of(deep, 'd_5.p6')?.grain).toBe('sheet');
    expect(of(flatwise, 'd_4.p1')?.grain).toBe('long');
    expect(of(flatwise, 'top')).toBeUndefined();
  });
});
/** Shoelace formula, sq mm. */
const area = (rings: CutPiece['parts'][number]['rings']): number =>
  rings.reduce(
    (sum, ring) =>
      sum +
      ring.reduce((s, [x, y], i) => {
        const [u, v] = ring[(i + 1) % ring.length] ?? [x, y];
        return s + (x * v - u * y) / 2;
      }, 0),
    0,
  );

describe('views', () => {
  it('are right-handed: right × up points to the eye', () => {
    for (const d of [FRONT, RIGHT_SIDE, PLAN, ISOMETRIC]) {
      const [a, b] = [d.right, d.up];
      const cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]] as const;
      expect(dot(cross, d.toward)).toBeCloseTo(1, 9);
    }
  });
  it('stand in third-angle arrangement: the plan over the front, the right side at its right', () => {
    const box = [
      [0, 36e6],
      [0, 19e6],
      [0, 42e6],
    ] as const;
    const front = viewAt(box, FRONT, 10, 50, 80);
    const plan = viewAt(box, PLAN, 10, 50, 20);
    const side = viewAt(box, RIGHT_SIDE, 10, 120, 80);
    const corner = [36e6, 0, 42e6] as const;
    expect(onPaper(front, corner)[0]).toBe(onPaper(plan, corner)[0]);
    expect(onPaper(front, corner)[1]).toBe(onPaper(side, corner)[1]);
    // In the plan the front edge lies nearest the front view; in the side view it lies nearest it too.
    expect(onPaper(plan, [0, 0, 0])[1]).toBeGreaterThan(onPaper(plan, [0, 19e6, 0])[1]);
    expect(onPaper(side, [0, 0, 0])[0]).toBeLessThan(onPaper(side, [0, 19e6, 0])[0]);
  });
  /** Isometric projection shortens all three axes by sqrt(2/3) (ISO 5456-3, 0.816). */
  it('shorten the axes alike in the isometric picture', () => {
    const lengths = (
      [
        [1e6, 0, 0],
        [0, 1e6, 0],
        [0, 0, 1e6],
      ] as const
    ).map((v) => Math.hypot(dot(ISOMETRIC.right, v) / 1e6, dot(ISOMETRIC.up, v) / 1e6));
    for (const length of lengths) expect(length).toBeCloseTo(Math.sqrt(2 / 3), 9);
    const e = extentOf(
      [
        [0, 1e6],
        [0, 1e6],
        [0, 1e6],
      ],
      ISOMETRIC,
    );
    expect(e.right - e.left).toBeCloseTo(Math.sqrt(2), 9);
  });
});

describe('a piece that is far too large', () => {
  const scaled = (factor: number): DrawInput['piece'] => ({
    ...input.piece,
    parts: input.piece.parts.map((p) => ({
      ...p,
      size: p.size.map((s) => ({ ...s, value: Math.round(s.value * factor) })) as unknown as typeof p.size,
      place: { ...p.place, origin: p.place.origin.map((v) => v * factor) as unknown as typeof p.place.origin },
    })),
  });
  /** 42 in times 500 is 533 m: 53 mm at 1:10 000; times 1000, 107 mm, is more than a view may have. */
  it('is told before it is drawn', () => {
    expect(tooLarge(scaled(500), { ...input.solids, parts: [] })).toEqual([]);
    expect(tooLarge(scaled(1000), { ...input.solids, parts: [] })).toMatchObject([
      { code: 'piece-too-large', severity: 'error' },
    ]);
  });
  /** 60 ft is 18 288 mm: at 1:100 it is 183 mm, at the next scale of ISO 5455, 1:200, 91 mm. */
  it('is drawn at a further scale of ISO 5455 when it only is large', () => {
    expect(largestScale((n) => 18_288 / n <= 100)).toBe(200);
  });
});
