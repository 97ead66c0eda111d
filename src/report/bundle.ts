/** The packet as a list of files: drawings, cards, nesting and lists in their folders, the PDF, and the manifest of hashes. */
import type { Sheet } from '../drawings/picture.js';
import { writeCsv } from './csv.js';
import { writeHtml } from './html.js';

export interface PacketFile {
  /** Relative, with forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
}
export interface Parts {
  readonly sheets: readonly Sheet[];
  /** One SVG text a sheet, in the same order. */
  readonly svgs: readonly string[];
  readonly pdf: Uint8Array;
  /** Title of the piece: with it, a page to open first (index.html) is written too. */
  readonly title?: string;
  /** Files made elsewhere: the definition as read, the findings, solids. */
  readonly more?: readonly PacketFile[];
  /** SHA-256 of bytes in lower-case hexadecimal. */
  readonly sha256: (bytes: Uint8Array) => string;
}
export const MANIFEST = 'manifest-sha256.txt';
export const PDF_NAME = 'packet.pdf';
export const INDEX = 'index.html';
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const byPath = (a: PacketFile, b: PacketFile): number => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0);

/** Path of a sheet's SVG: its folder, its number in the packet, its id. `of` is the number of sheets. */
export function sheetPath(sheet: Pick<Sheet, 'id' | 'folder'>, n: number, of: number): string {
  const width = Math.max(2, String(of).length);
  return `${sheet.folder}/${String(n).padStart(width, '0')}-${slug(sheet.id)}.svg`;
}
/** The way from one sheet's SVG to another's: every sheet lies one folder down. */
export const sheetHref = (sheets: readonly Pick<Sheet, 'id' | 'folder'>[]): ((id: string) => string | undefined) => {
  const paths = new Map(sheets.map((sheet, i) => [sheet.id, `../${sheetPath(sheet, i + 1, sheets.length)}`]));
  return (id) => paths.get(id);
};
const slug = (id: string): string => id.replace(/[^A-Za-z0-9._-]+/g, '-').replace(/^[-.]+/, '');

/** All files of a packet, sorted by path, the manifest among them. Throws RangeError when two would have one path. */
export function assemble(parts: Parts): readonly PacketFile[] {
  const { sheets } = parts;
  const drawings = sheets.map((sheet, i) => ({
    path: sheetPath(sheet, i + 1, sheets.length),
    bytes: utf8(parts.svgs[i] ?? ''),
  }));
  const first = parts.title === undefined ? [] : [{ path: INDEX, bytes: utf8(indexPage(sheets, parts.title)) }];
  const files = [
    ...drawings,
    ...lists(sheets),
    ...first,
    { path: PDF_NAME, bytes: parts.pdf },
    ...(parts.more ?? []),
  ].sort(byPath);
  refuseTwice(files);
  return [...files, { path: MANIFEST, bytes: utf8(manifest(files, parts.sha256)) }].sort(byPath);
}
const indexPage = (sheets: readonly Sheet[], title: string): string =>
  writeHtml(sheets, { title, pdf: PDF_NAME, hrefOf: (sheet, n) => sheetPath(sheet, n, sheets.length) });
/** One CSV a table. A table that runs over several sheets (one id, other rows) is one list; the byte order mark tells spreadsheets it is UTF-8. */
function lists(sheets: readonly Sheet[]): readonly PacketFile[] {
  const tables = new Map<string, Sheet['tables'][number]>();
  for (const table of sheets.flatMap((sheet) => sheet.tables)) {
    const known = tables.get(table.id);
    const same = known && JSON.stringify(known) === JSON.stringify(table);
    if (!known) tables.set(table.id, table);
    else if (!same) tables.set(table.id, { ...known, rows: [...known.rows, ...table.rows] });
  }
  return [...tables.values()].map((t) => ({ path: `lists/${slug(t.id)}.csv`, bytes: utf8(`\ufeff${writeCsv(t)}`) }));
}
/** Paths that differ only in capitals are one file on many disks. */
function refuseTwice(files: readonly PacketFile[]): void {
  const seen = new Map<string, string>();
  for (const { path } of files) {
    const other = seen.get(path.toLowerCase());
    if (other !== undefined) throw new RangeError(`two files of the packet have one path: ${other} and ${path}`);
    seen.set(path.toLowerCase(), path);
  }
}
/** The manifest: `hash, two spaces, path` a line, as the usual checksum tools read it. */
export const manifest = (files: readonly PacketFile[], sha256: Parts['sha256']): string =>
  files.map((f) => `${sha256(f.bytes)}  ${f.path}\n`).join('');
