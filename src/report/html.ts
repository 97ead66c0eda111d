/** The packet as one page to open first: its sheets, each a link, and its tables, which a screen reader can read and a search can find. */
import type { Sheet, Table } from '../drawings/picture.js';

export interface HtmlOptions {
  readonly title: string;
  /** Address of a sheet's SVG from the page. */
  readonly hrefOf: (sheet: Sheet, n: number) => string;
  /** Address of the PDF from the page. */
  readonly pdf: string;
}
const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
/** Text that is safe between tags and in attributes. */
export const escapeHtml = (text: string): string => text.replace(/[&<>"']/g, (c) => ESCAPES[c] ?? c);

const STYLE = [
  'body{font:16px/1.4 "IBM Plex Sans Condensed",sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem;color:#000;background:#fff}',
  'table{border-collapse:collapse;font-variant-numeric:tabular-nums}caption{text-align:left;font-weight:600;padding:1rem 0 .3rem}',
  'th,td{padding:.2rem 1rem .2rem 0;text-align:left;vertical-align:top}thead th{border-bottom:2px solid}td{border-bottom:1px solid #aaa}',
  '.right{text-align:right}a{color:inherit}',
].join('');

/** Writes the page: HTML 5, no script, nothing from elsewhere. */
export function writeHtml(sheets: readonly Sheet[], options: HtmlOptions): string {
  const title = escapeHtml(options.title);
  const entries = sheets.map((sheet, i) => {
    const href = escapeHtml(options.hrefOf(sheet, i + 1));
    return `<li><a href="${href}">${escapeHtml(sheet.title)}</a></li>`;
  });
  return [
    '<!doctype html>',
    '<html lang="en">',
    `<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><style>${STYLE}</style></head>`,
    `<body><h1>${title}</h1>`,
    `<p><a href="${escapeHtml(options.pdf)}">All sheets to print, full size</a></p>`,
    '<h2>Sheets</h2>',
    `<ol>${entries.join('\n')}</ol>`,
    ...(sheets.some((s) => s.tables.length > 0) ? ['<h2>Lists</h2>'] : []),
    ...sheets.flatMap((sheet) => sheet.tables.map((table) => htmlTable(table, sheet.title))),
    '</body></html>',
    '',
  ].join('\n');
}
function htmlTable(table: Table, caption: string): string {
  const side = (i: number): string => (table.columns[i]?.align === 'right' ? ' class="right"' : '');
  const heads = table.columns.map((c, i) => `<th scope="col"${side(i)}>${escapeHtml(c.label)}</th>`);
  const rows = table.rows.map((row) => `<tr>${row.map((c, i) => `<td${side(i)}>${escapeHtml(c)}</td>`).join('')}</tr>`);
  return [
    `<table><caption>${escapeHtml(caption)}</caption>`,
    `<thead><tr>${heads.join('')}</tr></thead>`,
    `<tbody>${rows.join('\n')}</tbody></table>`,
  ].join('\n');
}
