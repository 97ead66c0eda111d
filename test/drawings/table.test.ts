import { describe, expect, it } from 'vitest';
import type { Item, Table, TextItem } from '../../src/drawings/picture.js';
import { drawTable, heightOf, layTable, rowsIn } from '../../src/drawings/table.js';
import { loadFaces } from '../../src/io/fonts.js';
import { boundsOf } from '../../src/report/paint.js';
import { TABLE } from '../report/sample.js';

const faces = loadFaces();
const texts = (items: readonly Item[]): TextItem[] => items.filter((i) => i.kind === 'text');

describe('a table', () => {
  it('is as wide as it is asked to be, and its rows lie under one another', () => {
    const laid = layTable(faces, TABLE, { width: 90 });
    const drawn = drawTable(faces, laid, 10, 20);
    // Heading 6.4; rows with a stacked fraction are as high as the fraction and its air.
    expect(drawn.y).toBeCloseTo(20 + heightOf(laid), 6);
    expect(heightOf(laid)).toBeCloseTo(6.4 + laid.rows.reduce((h, r) => h + r.height, 0), 6);
    const b = boundsOf(faces, drawn.items);
    expect([b?.[0], b?.[2]]).toEqual([expect.closeTo(10, 6), expect.closeTo(100, 6)]);
  });
  it('sets figures flush right', () => {
    const { items } = drawTable(faces, layTable(faces, TABLE, { width: 60 }), 0, 0);
    const ends = texts(items)
      .filter((t) => ['4', '1', '12'].includes(t.string))
      .map((t) => boundsOf(faces, [t])?.[2] ?? 0);
    expect(ends).toHaveLength(3);
    for (const end of ends) expect(end).toBeCloseTo(ends[0] as number, 1);
  });
  it('draws part of itself, for a sheet that goes on', () => {
    const said = texts(drawTable(faces, layTable(faces, TABLE, { width: 90 }), 0, 0, [1, 2]).items).map(
      (t) => t.string,
    );
    expect(said).toContain('A3');
    expect(said).not.toContain('R1');
  });
  it('leaves out a column without words, and one that is not asked for', () => {
    const table: Table = { ...TABLE, rows: TABLE.rows.map((r) => [r[0] ?? '', '', r[2] ?? '']) };
    expect(layTable(faces, table, { width: 90 }).columns.map((c) => c.label)).toEqual(['Part', 'Off']);
    expect(layTable(faces, TABLE, { width: 90, columns: ['n'] }).columns.map((c) => c.label)).toEqual(['Off']);
  });
  /** By hand: of a long and a short cell of the same sort in one row, the room goes where it saves lines. */
  it('gives its room to the column that has most to say', () => {
    const say = (n: number): string => Array.from({ length: n }, () => 'word').join(' ');
    const table: Table = {
      id: 't',
      columns: [
        { id: 'a', label: 'A', align: 'left' },
        { id: 'b', label: 'B', align: 'left' },
      ],
      rows: [[say(6), say(30)]],
    };
    const [a, b] = layTable(faces, table, { width: 100 }).columns;
    expect(b?.width ?? 0).toBeGreaterThan(2.5 * (a?.width ?? 0));
    const equal = 2 * 48;
    expect((a?.width ?? 0) + (b?.width ?? 0)).toBeGreaterThan(equal);
  });
  it('says how many rows fit, and never none', () => {
    const laid = layTable(faces, TABLE, { width: 90 });
    const two = 6.4 + (laid.rows[0]?.height ?? 0) + (laid.rows[1]?.height ?? 0);
    expect(rowsIn(laid, 0, two)).toBe(2);
    expect(rowsIn(laid, 0, two - 0.1)).toBe(1);
    expect(rowsIn(laid, 2, 0)).toBe(3);
  });
});
