import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../src/drawings/picture.js';
import { sha256 } from '../../src/io/hash.js';
import { assemble, MANIFEST, sheetHref, sheetPath } from '../../src/report/bundle.js';
import { csvCell, writeCsv } from '../../src/report/csv.js';

const column = (id: string) => ({ id, label: id, align: 'left' as const });
const sheet = (id: string, rows: string[][] = []): Sheet => ({
  id,
  title: id,
  folder: 'lists',
  size: [279.4, 215.9],
  alt: '',
  picture: [],
  tables: rows.length > 0 ? [{ id: 'cut list', columns: [column('a'), column('b')], rows }] : [],
});
const text = (bytes: Uint8Array | undefined): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);

describe('CSV', () => {
  // RFC 4180, section 2, rules 5 to 7 with their examples.
  it('quotes commas, quotes and line ends, and ends rows with CRLF', () => {
    expect(csvCell('b CRLF\r\nbb')).toBe('"b CRLF\r\nbb"');
    expect(csvCell('b"bb')).toBe('"b""bb"');
    const table = { id: 't', columns: [column('one'), column('two')], rows: [['a,b', 'R4\u00a0B4'], ['c']] };
    expect(writeCsv(table)).toBe('one,two\r\n"a,b",R4 B4\r\nc,\r\n');
  });
  it('a spreadsheet runs nothing of it', () => {
    for (const cell of ['=1+1', '+cmd', '-2+3', '@sum', '\tx']) expect(csvCell(cell).replace('"', '')[0]).toBe("'");
    for (const cell of ['-1.5', '+3', '3/4', 'A-1']) expect(csvCell(cell)).toBe(cell);
  });
});

describe('the packet', () => {
  const sheets = [sheet('cut list 1', [['1', '2']]), sheet('cut list 2', [['3', '4']]), sheet('last')];
  const parts = { sheets, svgs: ['<a/>', '<b/>', '<c/>'], pdf: new Uint8Array([37]), sha256 };
  it('is sorted, and its manifest names every file with its hash', () => {
    const files = assemble(parts);
    expect(files.map((f) => f.path)).toEqual([
      'lists/01-cut-list-1.svg',
      'lists/02-cut-list-2.svg',
      'lists/03-last.svg',
      'lists/cut-list.csv',
      'manifest-sha256.txt',
      'packet.pdf',
    ]);
    const lines = text(files.find((f) => f.path === MANIFEST)?.bytes)
      .trimEnd()
      .split('\n');
    const others = files.filter((f) => f.path !== MANIFEST);
    expect(lines).toEqual(others.map((f) => `${sha256(f.bytes)}  ${f.path}`));
  });
  it('joins a table that runs over two sheets', () => {
    const list = assemble(parts).find((f) => f.path.endsWith('.csv'));
    expect(text(list?.bytes)).toBe('\ufeffa,b\r\n1,2\r\n3,4\r\n');
  });
  it('has a page to open first, where a title is given', () => {
    const odd = { ...sheet('x', [['<b>', 'R&D "1/2"']]), title: 'Fronts <left>' };
    const page = text(
      assemble({ ...parts, sheets: [odd], svgs: ['<a/>'], title: 'Tall & wide' }).find((f) => f.path === 'index.html')
        ?.bytes,
    );
    expect(page).toContain('<title>Tall &amp; wide</title>');
    expect(page).toContain('<a href="lists/01-x.svg">Fronts &lt;left&gt;</a>');
    expect(page).toContain('<td>&lt;b&gt;</td><td>R&amp;D &quot;1/2&quot;</td>');
    expect(page).not.toMatch(/https?:|<script/);
  });
  it('refuses two files at one path, whatever the capitals', () => {
    const more = [{ path: 'PACKET.pdf', bytes: new Uint8Array() }];
    expect(() => assemble({ ...parts, more })).toThrow(/PACKET\.pdf/);
  });
  it('leads from sheet to sheet', () => {
    expect(sheetHref(sheets)('last')).toBe('../lists/03-last.svg');
    expect(sheetPath({ id: 'a', folder: 'cards' }, 7, 120)).toBe('cards/007-a.svg');
  });
});
