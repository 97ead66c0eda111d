import { faceAxis } from '../../geom/axis.js';
import { counted } from '../../lengths/counted.js';
import type { SheetLayout } from '../../layout/layout.js';
import { markRanges, ranges } from '../../words/markOrder.js';
import { label, line, statusBar, tickBox, whiteDisc } from '../draw.js';
import { blockHeading, fieldOf, fitted } from '../frame.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import type { Text } from '../text.js';
import { setText, widthOf } from '../text.js';

/** Cuts that share one fence setting and one reference: one row, one box each. */
export interface CutRow {
  readonly numbers: readonly number[];
  readonly words: string;
  readonly fence: string;
  readonly leaves: string;
}
export function cutRows(input: Prepared, sheet: SheetLayout): CutRow[] {
  const rows: CutRow[] = [];
  let last: SheetLayout['cuts'][number] | undefined;
  for (const c of sheet.cuts) {
    const row = rows.at(-1);
    const same =
      last &&
      row &&
      c.kind === last.kind &&
      c.kind !== 'trim' &&
      c.stage === last.stage &&
      c.fence === last.fence &&
      row.numbers.length < 3;
    if (same)
      rows[rows.length - 1] = {
        ...row,
        numbers: [...row.numbers, c.number],
        words: then(row.words),
        leaves: joinLeaves(row.leaves, c.leaves),
      };
    else rows.push({ numbers: [c.number], words: wordsOf(c), fence: printed(input, c.fence), leaves: c.leaves });
    last = c;
  }
  return rows;
}
const then = (words: string): string =>
  words.includes('then') ? words : words.replace(/ to the fence$/, '') + ', then cut edge';
/** Parts of several cuts together; what is left over only once, from the last cut. */
function joinLeaves(a: string, b: string): string {
  const part = (text: string): string => text.replace(/,? ?leaves .*$/, '');
  const rest = /leaves .*$/.exec(b)?.[0];
  // `strip of D3.6` and `strip of D4.6`: strips of both.
  const strip = (text: string): string | undefined => /^strips? of (.*)$/.exec(text)?.[1];
  const [one, other] = [strip(part(a)), strip(part(b))];
  const both = one !== undefined && other !== undefined ? `strips of ${one} ${other}` : `${part(a)} ${part(b)}`;
  const parts = part(a) === part(b) ? part(a) : both;
  return rest === undefined ? parts : `${parts}, ${rest}`;
}
/**
 * The longest form of the text that fits: whole, marks as ranges, without what is left, at last only how many parts. All
 * marks stand in the drawing and in the table of the sheet.
 */
function shortened(input: Prepared, text: string, room: number): string {
  const [, strips = '', marks = '', rest = ''] = /^(strips? of )?(.*?)(, leaves .*)?$/.exec(text) ?? [];
  const all = marks.split(' ').filter((m) => m !== '');
  const ranged = markRanges(all);
  const number = strips === '' ? counted(all.length, 'part') : `${strips.trim()} ${counted(all.length, 'part')}`;
  const forms = [text, `${strips}${ranged}${rest}`, `${strips}${ranged}`, ranged, `${number}${rest}`, number];
  return forms.find((f) => widthOf(input.faces, f, SIZE.text) <= room) ?? number;
}
/** Against what the cut is made, as the maker says it. A trim cut names the edge that it makes true. */
function wordsOf(c: SheetLayout['cuts'][number]): string {
  if (/ as it came$/.test(c.against)) return `raw ${c.against.replace(/ as it came$/, '')} to the fence`;
  if (c.kind !== 'trim') return `${c.against.replace(/^the edge left by cut (\d+)$/, 'edge of cut $1')} to the fence`;
  const long = Math.abs(c.from[0] - c.to[0]) > Math.abs(c.from[1] - c.to[1]);
  if (/^(a|an) /.test(c.against)) return `trim ${c.against}`;
  return `trim ${long ? 'a long edge' : 'an end'}${c.against === '' ? '' : `, square to ${c.against}`}`;
}

const ROW = 6.2;
/** Rows (both columns together) on a page with the diagram, and on a page of cuts only. The verdict takes three of them. */
export const rowsPerPage = (page: number): number => (page === 0 ? 13 : 44);
const split = (rows: number): number => Math.max(3, Math.ceil((rows + 2) / 2));
export function cutTableHeight(rows: number, notes: number): number {
  const left = Math.min(split(rows), rows);
  const right = rows - left;
  const more = Math.max(0, notes - 1) * NOTE;
  return 2 + Math.max(3.2 + left * ROW, (right > 0 ? 3.2 + right * ROW + 7.4 + 9 : 10) + more);
}

/** Rows of cuts from row `from` in two columns under `y`, then the verdict on the number of sheets. */
export function drawCuts(input: Prepared, sheet: SheetLayout, from: number, y: number): Item[] {
  const { left, right } = fieldOf(input.paper);
  const all = cutRows(input, sheet);
  const rows = all.slice(from, from + rowsPerPage(from === 0 ? 0 : 1));
  const first = split(rows.length);
  const width = (right - left - 12) / 2;
  const settings = new Set(all.map((r) => r.fence)).size;
  const x2 = right - width;
  const items = [
    ...column(
      input,
      rows.slice(0, first),
      left,
      y,
      width,
      from === 0 ? 'Cuts, in this order' : 'Cuts, continued',
      `${counted(sheet.cuts.length, 'cut')}, ${counted(settings, 'fence setting')}`,
    ),
    ...(rows.length > first ? column(input, rows.slice(first), x2, y, width, 'Then', undefined) : []),
  ];
  const after = rows.length > first ? y + 3.2 + (rows.length - first) * ROW + 7.4 : y;
  return [
    ...items,
    ...(from + rows.length >= all.length ? verdict(input, sheet, x2, after, width) : more(input, x2, after)),
  ];
}
const more = (input: Prepared, x: number, y: number): Item[] =>
  label(input.faces, 'further cuts on the next sheet', x, y);

function column(
  input: Prepared,
  rows: readonly CutRow[],
  x: number,
  y: number,
  width: number,
  title: string,
  remark: string | undefined,
): Item[] {
  const { faces } = input;
  const fence = x + 60;
  const items = [
    ...blockHeading(faces, title, x, y, width, remark, 'W'),
    ...label(faces, 'fence', fence, y, { anchor: 'end' }),
  ];
  rows.forEach((row, i) => {
    const top = y + 3.2 + i * ROW;
    const base = top + 4.2;
    if (i > 0) items.push(...line('H', x, top - 0.1, x + width, top - 0.1));
    row.numbers.forEach((n, k) => items.push(...whiteDisc(faces, n, x + 2.9 + k * 6.2, top + 3)));
    const indent = Math.max(8, row.numbers.length * 6.2 + 2);
    items.push(...fitted(faces, row.words, x + indent, base, SIZE.text, fence - 9 - x - indent, 'regular'));
    items.push(
      ...setText(faces, row.fence, { x: fence, y: base, size: SIZE.figure, face: 'semibold', anchor: 'end' }).items,
    );
    const room = x + width - 5 - (row.numbers.length - 1) * 5.4 - (fence + 4);
    items.push(...fitted(faces, shortened(input, row.leaves, room), fence + 4, base, SIZE.text, room, 'regular'));
    row.numbers.forEach((_, k) =>
      items.push(...tickBox(faces, x + width - 4 - (row.numbers.length - 1 - k) * 5.4, top + 1)),
    );
  });
  const foot = y + 3.2 + rows.length * ROW;
  return [...items, ...line('W', x, foot, x + width, foot)];
}

function verdict(input: Prepared, sheet: SheetLayout, x: number, y: number, width: number): Item[] {
  const { faces } = input;
  const used = sheet.pieces.reduce((sum, p) => sum + p.w * p.h, 0) / (sheet.length * sheet.width);
  const all = input.layout.counts.find((c) => c.stock === sheet.stock)?.cost;
  const cost = all === undefined ? '' : `cost ${Number(all.toFixed(2))} in all, `;
  return [
    ...setText(faces, judged(input, sheet), { x, y: y + 1, size: SIZE.mark, face: 'semibold' }).items,
    ...label(
      faces,
      `${cost}${Math.round(used * 100)}% of the ${sheet.rack === undefined ? 'sheet' : 'offcut'} used`,
      x + width,
      y + 1,
      { anchor: 'end' },
    ),
    ...notesOf(input, sheet).flatMap((note, i) => drawNote(input, note, x, y + 8 + i * NOTE)),
  ];
}

/** How many sheets are taken, and whether fewer (or, where there is a choice of sizes, cheaper ones) are ruled out. */
function judged(input: Prepared, sheet: SheetLayout): string {
  const count = input.layout.counts.find((c) => c.stock === sheet.stock);
  if (!count) return `Sheets: ${sheet.of}`;
  if (count.choice) return count.proved ? 'Least cost, proved' : 'Cheaper not ruled out';
  return count.proved
    ? `Fewest sheets: ${count.used}, proved`
    : `${counted(count.used, 'sheet')}, ${count.used - 1} not ruled out`;
}
/** A note under the verdict: what it is about, and what to do; the bar of parts that are fitted goes before it. */
interface Note {
  readonly strong: string;
  readonly rest: string;
  readonly fit?: true;
}
const NOTE = 5.4;
/** Parts that are cut only when the piece can be measured, cuts that want a second person, which face is up. */
export function notesOf(input: Prepared, sheet: SheetLayout): readonly Note[] {
  const parts = sheet.pieces.flatMap((p) => input.piece.parts.find((q) => q.id === p.part) ?? []);
  const fit = parts.filter((p) => p.status === 'fit to the piece').map((p) => p.mark);
  const helped = sheet.cuts.filter((c) => c.helper).map((c) => String(c.number));
  const shown = parts.filter((p) => p.show.some((f) => faceAxis(f) === p.thickness)).map((p) => p.mark);
  return [
    ...(fit.length === 0
      ? []
      : [{ strong: 'Fit to the piece:', rest: `measure before you cut ${ranges(fit).join(' ')}`, fit: true as const }]),
    ...(helped.length === 0
      ? []
      : [
          {
            strong: 'Not alone:',
            rest: `${helped.length === 1 ? 'cut' : 'cuts'} ${markRanges(helped)}; two people, or a guided saw`,
          },
        ]),
    ...(shown.length === 0
      ? []
      : [{ strong: 'Show face up', rest: `at a table saw, down under a guided saw: ${markRanges(shown)}` }]),
  ];
}
function drawNote(input: Prepared, note: Note, x: number, y: number): Item[] {
  const text: Text = [{ string: note.strong, face: 'semibold' }, { string: ` ${note.rest}` }];
  return [
    ...(note.fit ? statusBar('fit to the piece', x, y - 2.4) : []),
    ...setText(input.faces, text, { x: note.fit ? x + 12 : x, y, size: SIZE.text }).items,
  ];
}
