import { beforeAll, describe, expect, it } from 'vitest';
import type { GroupItem, Item, Sheet, StrokeItem, TextItem } from '../../src/drawings/picture.js';
import type { Piece } from '../../src/piece/piece.js';
import { compareMarks } from '../../src/words/markOrder.js';
import { writeCsv } from '../../src/report/csv.js';
import { drawn, SHIPPED } from '../packet/packet.js';

const flat = (items: readonly Item[]): Exclude<Item, GroupItem>[] =>
  items.flatMap((i) => (i.kind === 'group' ? flat(i.items) : [i]));
const groups = (items: readonly Item[]): GroupItem[] =>
  items.flatMap((i) => (i.kind === 'group' ? [i, ...groups(i.items)] : []));
/** Marks as printed, ranges opened: `R1–R4` is four. */
function opened(cell: string): string[] {
  return cell.split(' ').flatMap((m) => {
    const [, head = '', from = '', to = ''] = /^(.*?)(\d+)–.*?(\d+)$/.exec(m) ?? [];
    if (from === '') return [m];
    return Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => `${head}${Number(from) + i}`);
  });
}
const marksIn = (sheets: readonly Sheet[], id: string): string[] =>
  sheets
    .flatMap((s) => s.tables)
    .filter((t) => t.id === id)
    .flatMap((t) => t.rows.flatMap((r) => opened(r[t.columns.findIndex((c) => c.id === 'parts')] ?? '')))
    .filter((m) => m !== 'spare' && m !== 'trial')
    .sort(compareMarks);

describe.each(SHIPPED)('lumber sheets of the %s', (name) => {
  let piece: Piece;
  let sheets: readonly Sheet[];
  beforeAll(async () => {
    ({ piece, sheets } = await drawn(name));
  }, 60_000);
  const lumber = (): string[] =>
    piece.parts
      .filter((p) => piece.stocks[p.stock]?.kind === 'lumber')
      .map((p) => p.mark)
      .sort(compareMarks);

  it('name every part of lumber once, on the shopping and on the milling sheet', () => {
    expect(marksIn(sheets, 'shopping')).toEqual(lumber());
    expect(marksIn(sheets, 'milling')).toEqual(lumber());
  });
  it('have a cell in every row for every column of their tables', () => {
    const tables = sheets
      .filter((s) => /^(shopping|milling|panels)/.test(s.id))
      .flatMap((s) => s.tables)
      .filter((t) => t.rows.some((r) => r.length !== t.columns.length));
    expect(tables.map((t) => t.id)).toEqual([]);
  });
  it('leave lines to write in the boards bought: no cell but the letter is filled', () => {
    const table = sheets.flatMap((s) => s.tables).find((t) => t.id === 'boards-bought');
    expect(table?.rows.length).toBeGreaterThanOrEqual(6);
    expect(table?.rows.every((r) => r.slice(1).every((c) => c === ''))).toBe(true);
  });
  it('take no more than three pages for the yard', () => {
    expect(sheets.filter((s) => s.id.startsWith('shopping')).length).toBeLessThanOrEqual(3);
  });
  it('say four sizes of each panel: finished and blank, both ways', () => {
    const panels = sheets.flatMap((s) => s.tables).find((t) => t.id === 'panels')?.rows.length ?? 0;
    const claims = sheets
      .filter((s) => s.id.startsWith('panels'))
      .flatMap((s) => groups(s.picture))
      .filter((g) => g.claim?.kind === 'distance');
    expect(claims).toHaveLength(4 * panels);
  });
  it('draw each panel with all its staves lettered', () => {
    const words = sheets
      .filter((s) => s.id.startsWith('panels'))
      .flatMap((s) => flat(s.picture))
      .filter((i): i is TextItem => i.kind === 'text' && i.face === 'semibold' && /^[a-z]$/.test(i.string));
    const staves = sheets
      .flatMap((s) => s.tables)
      .filter((t) => t.id === 'panels')
      .flatMap((t) => t.rows.map((r) => Number(r[t.columns.findIndex((c) => c.id === 'staves')])));
    expect(words).toHaveLength(staves.reduce((a, b) => a + b, 0));
  });
});

describe('panels of the chest', () => {
  /** Three sides; every stave crossed by two of them, so that none can be turned or moved unseen. */
  it('are marked with a triangle over all staves, mirrored for the other side', async () => {
    const { sheets } = await drawn('tall-chest');
    const page = sheets.find((s) => s.id === 'panels-1');
    const triangles = flat(page?.picture ?? []).filter(
      (i): i is StrokeItem => i.kind === 'stroke' && i.pen === 'W' && i.d.length === 4 && i.d[3]?.[0] === 'Z',
    );
    // Heads of the clamp arrows are triangles too, and small.
    const wide = triangles
      .map((t) => t.d.flatMap((s) => (s[0] === 'M' || s[0] === 'L' ? [[s[1], s[2]] as const] : [])))
      .filter((p) => Math.max(...p.map(([x]) => x)) - Math.min(...p.map(([x]) => x)) > 10);
    expect(wide).toHaveLength(2);
    for (const points of wide) {
      const top = points.reduce((a, b) => (b[1] < a[1] ? b : a));
      const xs = points.map(([x]) => x).sort((a, b) => a - b);
      // Pointing up, its point over the middle of its base.
      expect(top[0]).toBeCloseTo(((xs[0] as number) + (xs[2] as number)) / 2, 2);
    }
    // 19 1/2 wide at 1:16 is 30.96 mm: three quarters of it from the middle of the first stave to that of the last.
    const [first] = wide;
    const span = Math.max(...(first ?? []).map(([x]) => x)) - Math.min(...(first ?? []).map(([x]) => x));
    expect(span).toBeCloseTo((19.5 * 25.4 * 0.75) / 16, 2);
  }, 60_000);
  it('the list for a spreadsheet has a row a kind of blank, wood and all', async () => {
    const { sheets } = await drawn('tall-chest');
    const tables = sheets.flatMap((s) => s.tables).filter((t) => t.id === 'shopping');
    expect(new Set(tables.map((t) => JSON.stringify(t.columns))).size).toBe(1);
    expect(tables.map((t) => writeCsv(t)).join('')).toContain('"White oak 5/4, quartered",R1–R4,front rails,4,');
  }, 60_000);
});
