import { SPECIES, speciesById } from '../data/species.js';
import type { Diagnostic, JsonPath, Outcome } from '../diag/diagnostic.js';
import { hasErrors } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';
import type { Locate, Location } from '../diag/print.js';
import type { Length, Units } from '../lengths/length.js';
import type { DefectKind } from '../wood/defects.js';
import { BoardsFile } from './boards.js';
import { readBoardsCsv } from './boardsCsv.js';
import { issueFindings } from './issues.js';
import { LARGEST_FILE, parseFile, type Json } from './json.js';
import { pathLocator } from './locate.js';
import { inFileOrder, strangeKeys } from './read.js';
import { expressionFinding } from './rules.js';
import { lengthAlone } from './shopFile.js';
import { eachLength } from './walk.js';

/** A board as its file says, lengths in nm (x from the marked end, y from the lower edge; both faces in one frame). */
export interface BoardSpec {
  readonly id: string;
  readonly wood: string;
  readonly quarter: string;
  readonly thickness: Length;
  readonly length: Length;
  readonly width: readonly [Length, Length];
  readonly cut?: 'flat' | 'rift' | 'quartered';
  readonly moisture?: number;
  readonly price?: number;
  readonly group?: string;
  readonly crook?: Length;
  readonly bow?: Length;
  readonly cup?: Length;
  readonly defects: readonly {
    readonly kind: DefectKind;
    readonly face: 'front' | 'back' | 'through';
    readonly at: readonly [number, number, number, number];
  }[];
}
export interface Boards {
  readonly units: Units;
  readonly boards: readonly BoardSpec[];
}
export interface BoardsReading extends Outcome<Boards> {
  readonly locate: Locate;
}

/**
 * Reads a file of boards: JSON (`.json`, `.jsonc`) or a table (`.csv`). `own`: keys of the shop's own woods. No value when
 * anything is an error.
 */
export function readBoardsFile(text: string, fileName: string, own: readonly string[] = []): BoardsReading {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  const bytes = new TextEncoder().encode(plain).length;
  if (fileName.endsWith('.csv') && bytes <= LARGEST_FILE) {
    const csv = readBoardsCsv(plain);
    return judged(csv.value, csv.findings, csv.locate, own);
  }
  const file = parseFile(plain, fileName.endsWith('.jsonc'));
  const { syntaxAt } = file;
  const locate = syntaxAt === undefined ? pathLocator(plain, file.root) : (): Location => syntaxAt;
  if (file.value === undefined) return { findings: file.findings, locate };
  return judged(file.value, file.findings, locate, own);
}

function judged(value: Json, early: readonly Diagnostic[], locate: Locate, own: readonly string[]): BoardsReading {
  const findings = [...early];
  const checked = BoardsFile.safeParse(value);
  if (!checked.success) findings.push(...issueFindings(checked.error.issues, { schema: BoardsFile, value }));
  findings.push(...strangeKeys(value));
  const units = (value as { units?: unknown }).units === 'mm' ? 'mm' : 'in';
  eachLength(BoardsFile, value, (path, typed) => {
    if (typeof typed !== 'string' && typeof typed !== 'number') return;
    const read = lengthAlone(typed, units, 'a boards file');
    if ('fault' in read) findings.push(expressionFinding(read.fault, path));
  });
  const sorted = (): readonly Diagnostic[] => inFileOrder(findings, locate);
  if (!checked.success || hasErrors(findings)) return { findings: sorted(), locate };
  const boards = Object.entries(checked.data.boards).map(([id, b]) => boardOf(id, b, units));
  for (const b of boards) findings.push(...faultsOf(b, own));
  if (hasErrors(findings)) return { findings: sorted(), locate };
  const named = (wood: string): string => (own.includes(wood) ? wood : (speciesById(wood)?.id ?? wood));
  return { value: { units, boards: boards.map((b) => ({ ...b, wood: named(b.wood) })) }, findings: sorted(), locate };
}

type Typed = ReturnType<typeof BoardsFile.parse>['boards'][string];
function boardOf(id: string, typed: Typed, units: Units): BoardSpec {
  const nm = (v: string | number): Length => {
    const read = lengthAlone(v, units);
    return ('value' in read ? read.value : 0) as Length;
  };
  const { species, width, defects, crook, bow, cup, thickness, length, ...rest } = typed;
  const wide = Array.isArray(width) ? ([nm(width[0]), nm(width[1])] as const) : ([nm(width), nm(width)] as const);
  const given = Object.fromEntries(Object.entries(rest).filter(([, v]) => v !== undefined)) as Pick<
    BoardSpec,
    'quarter'
  >;
  return {
    id,
    wood: species,
    ...given,
    thickness: nm(thickness),
    length: nm(length),
    width: wide,
    ...(crook === undefined ? {} : { crook: nm(crook) }),
    ...(bow === undefined ? {} : { bow: nm(bow) }),
    ...(cup === undefined ? {} : { cup: nm(cup) }),
    defects: (defects ?? []).map(({ kind, face, from, to }) => ({
      kind,
      face: face ?? 'through',
      at: [nm(from[0]), nm(from[1]), nm(to[0]), nm(to[1])] as const,
    })),
  };
}

/** What the schema cannot say: a wood that is known, sizes above nothing, defects that have room on their board. */
function faultsOf(board: BoardSpec, own: readonly string[]): Diagnostic[] {
  const out: Diagnostic[] = [];
  const path: JsonPath = ['boards', board.id];
  if (!own.includes(board.wood) && !speciesById(board.wood)) {
    const known = [...SPECIES.map((s) => s.id), ...own];
    out.push(diagnose('word-not-known', { path: [...path, 'species'] }, { found: board.wood, known }));
  }
  const wrong = (at: JsonPath, message: string, hint: string): void =>
    void out.push({ code: 'board-size', severity: 'error', path: [...path, ...at], message, hint });
  for (const key of ['thickness', 'length'] as const)
    if (board[key] <= 0) wrong([key], `The ${key} of board ${board.id} is nothing or less.`, 'Type what was measured.');
  if (Math.min(...board.width) <= 0) wrong(['width'], `Board ${board.id} has no width.`, 'Type what was measured.');
  for (const key of ['crook', 'bow', 'cup', 'price'] as const)
    if ((board[key] ?? 0) < 0)
      wrong([key], `The ${key} of board ${board.id} is less than nothing.`, 'Leave out the minus.');
  board.defects.forEach(({ at: [x0, y0, x1, y1] }, i) => {
    const where = ['defects', i] as const;
    if (x1 <= x0 || y1 <= y0) {
      const hint = 'The first corner is nearer the marked end and the lower edge than the second.';
      wrong(where, `A defect of board ${board.id} covers nothing.`, hint);
    } else if (x0 < 0 || y0 < 0 || x1 > board.length || y1 > Math.max(...board.width)) {
      const hint = 'Measure from the marked end along the board, and from its lower edge across.';
      wrong(where, `A defect of board ${board.id} reaches beyond its board.`, hint);
    }
  });
  return out;
}
