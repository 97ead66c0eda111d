import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';
import type { Locate, Location } from '../diag/print.js';
import type { Json } from './json.js';
import { offsetLocator } from './locate.js';

/**
 * Boards as a table: a header, then one row a board. Columns in any order, those not needed left out. A row that names a kind
 * of defect is a defect of the board of that id (on the board's own row, or on one of its own that gives the id alone).
 */
export const BOARD_COLUMNS = [
  'id',
  'units',
  'species',
  'quarter',
  'thickness',
  'width',
  'width2',
  'length',
  'cut',
  'moisture',
  'price',
  'group',
  'crook',
  'bow',
  'cup',
  'defect',
  'face',
  'x0',
  'y0',
  'x1',
  'y1',
] as const;
type Column = (typeof BOARD_COLUMNS)[number];
const DEFECT: readonly Column[] = ['defect', 'face', 'x0', 'y0', 'x1', 'y1'];
const NUMBERS: readonly Column[] = ['moisture', 'price'];

interface Cell {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}
type Row = readonly Cell[];

export interface ReadCsv {
  /** The same value as a JSON boards file holds. */
  readonly value: Json;
  readonly findings: readonly Diagnostic[];
  readonly locate: Locate;
}

export function readBoardsCsv(text: string): ReadCsv {
  const at = offsetLocator(text);
  const places = new Map<string, Cell>();
  const key = (path: JsonPath): string => JSON.stringify(path);
  const locate: Locate = (path, _key, span): Location => {
    for (let n = path.length; n > 0; n--) {
      const cell = places.get(key(path.slice(0, n)));
      if (!cell) continue;
      // A span counts from the cell's first character.
      if (span && n === path.length && cell.to - cell.from === cell.text.length)
        return at(cell.from + span[0], Math.max(cell.from + span[0] + 1, cell.from + span[1]));
      return at(cell.from, Math.max(cell.from + 1, cell.to));
    }
    return at(0, 1);
  };
  const { rows, open } = cellsOf(text);
  const findings: Diagnostic[] = [];
  const tell = (finding: Diagnostic, cell: Cell): void => {
    places.set(key(finding.path), cell);
    findings.push(finding);
  };
  if (open) tell(diagnose('csv-quote', { path: ['csv', 'quote'] }), open);
  const [header = [], ...body] = rows;
  const columns = header.map((c) => c.text.trim().toLowerCase());
  header.forEach((c, i) => {
    const path: JsonPath = ['csv', i];
    if (!(BOARD_COLUMNS as readonly string[]).includes(columns[i] ?? ''))
      tell(diagnose('key-not-known', { path, key: true }, { key: c.text.trim(), known: BOARD_COLUMNS }), c);
  });
  const reading = new Boards(places, tell, at);
  for (const row of body) {
    const extra = row[columns.length];
    if (extra && extra.text.trim() !== '') {
      const path: JsonPath = ['csv', 'cells', extra.from];
      tell(diagnose('csv-cells', { path }, { found: row.length, wanted: columns.length }), extra);
    }
    const cells = new Map<string, Cell>();
    columns.forEach((c, i) => {
      const cell = row[i];
      if (cell && cell.text.trim() !== '') cells.set(c, cell);
    });
    if (cells.size > 0) reading.row(cells, row[0] as Cell);
  }
  const units = reading.units;
  const value: Json = { format: 1, ...(units === undefined ? {} : { units }), boards: reading.boards as Json };
  return { value, findings, locate };
}

class Boards {
  readonly boards: Record<string, Record<string, unknown>> = {};
  units: string | undefined;
  private readonly first = new Map<string, Cell>();

  constructor(
    private readonly places: Map<string, Cell>,
    private readonly tell: (finding: Diagnostic, cell: Cell) => void,
    private readonly at: (from: number, to: number) => Location,
  ) {}

  row(cells: ReadonlyMap<string, Cell>, start: Cell): void {
    const idCell = cells.get('id');
    if (!idCell) {
      const figures = { key: 'id', what: 'what is chalked on the board', example: '"B1"' };
      this.tell(diagnose('key-missing', { path: ['csv', 'id', start.from] }, figures), start);
      return;
    }
    const id = idCell.text.trim();
    const units = cells.get('units');
    if (units) {
      if (this.units === undefined) this.put(['units'], units);
      this.units ??= units.text.trim();
      if (units.text.trim() !== this.units)
        this.tell(
          diagnose(
            'word-not-known',
            { path: ['units', units.from] },
            { found: units.text.trim(), known: [this.units] },
          ),
          units,
        );
    }
    const own = [...cells.keys()].some(
      (c) => c !== 'id' && c !== 'units' && !(DEFECT as readonly string[]).includes(c),
    );
    const earlier = this.first.get(id);
    if (own && earlier) {
      const { line, column } = this.at(earlier.from, earlier.to);
      this.tell(diagnose('key-twice', { path: ['boards', id, 'csv', idCell.from] }, { key: id, line, column }), idCell);
      return;
    }
    if (own || !earlier) this.board(id, idCell, cells);
    if (DEFECT.some((c) => cells.has(c))) this.defect(id, idCell, cells);
  }
  private put(path: JsonPath, cell: Cell): void {
    this.places.set(JSON.stringify(path), cell);
  }
  private board(id: string, idCell: Cell, cells: ReadonlyMap<string, Cell>): void {
    this.first.set(id, idCell);
    this.put(['boards', id], idCell);
    const board: Record<string, unknown> = {};
    for (const column of BOARD_COLUMNS) {
      const cell = cells.get(column);
      if (!cell || ['id', 'units', 'width2'].includes(column) || DEFECT.includes(column)) continue;
      board[column] = NUMBERS.includes(column) ? numeric(cell.text.trim()) : cell.text.trim();
      this.put(['boards', id, column], cell);
    }
    const [near, far] = [cells.get('width'), cells.get('width2')];
    if (near && far) {
      board['width'] = [near.text.trim(), far.text.trim()];
      this.put(['boards', id, 'width', 0], near);
      this.put(['boards', id, 'width', 1], far);
    }
    Object.defineProperty(this.boards, id, { value: board, enumerable: true, configurable: true, writable: true });
  }
  private defect(id: string, idCell: Cell, cells: ReadonlyMap<string, Cell>): void {
    const board = this.boards[id];
    if (!board) return;
    const list = (board['defects'] ??= []) as unknown[];
    const path: JsonPath = ['boards', id, 'defects', list.length];
    this.put(path, cells.get('defect') ?? idCell);
    const corner = (name: 'from' | 'to', x: Column, y: Column): Record<string, unknown> => {
      const pair = [cells.get(x), cells.get(y)];
      pair.forEach((c, i) => c && this.put([...path, name, i], c));
      const texts = pair.flatMap((c) => (c ? [c.text.trim()] : []));
      return texts.length === 0 ? {} : { [name]: texts };
    };
    const say = (name: string, cell: Cell | undefined): Record<string, unknown> => {
      if (cell) this.put([...path, name], cell);
      return cell ? { [name]: cell.text.trim() } : {};
    };
    list.push({
      ...say('kind', cells.get('defect')),
      ...say('face', cells.get('face')),
      ...corner('from', 'x0', 'y0'),
      ...corner('to', 'x1', 'y1'),
    });
  }
}
const numeric = (text: string): string | number => (/^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text);

/** Cells with their place in the text (RFC 4180: quotes around what holds commas or breaks, doubled inside). */
function cellsOf(text: string): { readonly rows: readonly Row[]; readonly open?: Cell } {
  const rows: Cell[][] = [];
  let row: Cell[] = [];
  let i = 0;
  const end = (): void => {
    if (row.some((c) => c.text !== '')) rows.push(row);
    row = [];
  };
  while (i <= text.length) {
    const quoted = text[i] === '"';
    const from = quoted ? i + 1 : i;
    let cell = '';
    if (quoted) {
      i++;
      while (i < text.length && !(text[i] === '"' && text[i + 1] !== '"')) {
        if (text[i] === '"') i++;
        cell += text[i++];
      }
      if (i >= text.length) return { rows, open: { text: '', from: from - 1, to: from } };
    }
    const to = i;
    if (quoted) i++;
    while (i < text.length && !/[,\r\n]/.test(text[i] as string)) cell += text[i++];
    row.push({ text: cell, from, to: quoted ? to : i });
    if (text[i] === ',') {
      i++;
      continue;
    }
    end();
    if (text[i] === '\r' && text[i + 1] === '\n') i++;
    i++;
  }
  return { rows };
}
