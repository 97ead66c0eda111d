import type { Diagnostic, JsonPath } from './diagnostic.js';

/** A stretch of one line: numbers from 1, `endColumn` just past the last character; columns count UTF-16 units. */
export interface Location {
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
  readonly lineText: string;
}
export type Locate = (path: JsonPath, key?: boolean, span?: readonly [number, number]) => Location;
export interface PrintOptions {
  readonly color?: boolean;
  /** Widest source line shown, characters; a longer one is shown around the fault. */
  readonly width?: number;
}

const PAINT = {
  fail: '\u001b[31m',
  error: '\u001b[31m',
  warning: '\u001b[33m',
  note: '\u001b[36m',
  bold: '\u001b[1m',
  plain: '\u001b[0m',
} as const;
const ELLIPSIS = '...';
const TAB = 4;

/** Tabs as spaces to the next multiple of four; control characters as a blank. Gives the shown text and the shown column of each unit. */
function untabbed(line: string): { readonly text: string; readonly columns: readonly number[] } {
  let text = '';
  const columns: number[] = [];
  for (let i = 0; i < line.length; i += 1) {
    columns.push(text.length);
    const c = line[i] as string;
    text += c === '\t' ? ' '.repeat(TAB - (text.length % TAB)) : c < ' ' || c === '\u007f' ? ' ' : c;
  }
  columns.push(text.length);
  return { text, columns };
}

/** The part of a long line that holds the fault, with its start. */
function windowed(text: string, from: number, width: number): { readonly text: string; readonly shift: number } {
  if (text.length <= width) return { text, shift: 0 };
  const start = Math.max(0, Math.min(from - Math.floor(width / 3), text.length - width));
  const end = Math.min(text.length, start + width);
  const head = start > 0 ? ELLIPSIS : '';
  const tail = end < text.length ? ELLIPSIS : '';
  return { text: head + text.slice(start, end) + tail, shift: start - head.length };
}

/** The source line and the line of carets under it. */
export function sourceLines(at: Location, width = 100): readonly [string, string] {
  const { text, columns } = untabbed(at.lineText);
  const last = columns.length - 1;
  const from = columns[Math.min(at.column - 1, last)] as number;
  const to = Math.max(from + 1, columns[Math.min(at.endColumn - 1, last)] as number);
  const shown = windowed(text, from, width);
  const left = from - shown.shift;
  const right = Math.min(to - shown.shift, Math.max(shown.text.length, left + 1));
  return [shown.text.trimEnd(), ' '.repeat(left) + '^'.repeat(Math.max(1, right - left))];
}

/**
 * One finding as lines: `file:line:column: error[code]: message`, the source line, carets, and the hint. No trailing
 * newline. With `color` terminal colours are put around the head and the carets.
 */
export function printDiagnostic(d: Diagnostic, locate: Locate, fileName: string, options: PrintOptions = {}): string {
  const at = locate(d.path, d.key, d.span);
  const paint = (style: keyof typeof PAINT, text: string): string =>
    options.color === true ? PAINT[style] + text + PAINT.plain : text;
  const [found, wanted] = splitWanted(d.message);
  const place = paint('bold', `${fileName}:${at.line}:${at.column}:`);
  const lines = [`${place} ${paint(d.severity, `${d.severity}[${d.code}]`)}: ${found}`];
  if (at.lineText.trim() !== '') {
    const gutter = `${at.line} | `;
    const [source, carets] = sourceLines(at, options.width);
    lines.push(gutter + source, `${' '.repeat(gutter.length)}${paint(d.severity, carets)}`);
  }
  if (wanted !== undefined) lines.push(`  wanted: ${wanted}`);
  if (d.hint !== undefined) lines.push(`  hint: ${d.hint}`);
  return lines.join('\n');
}

/** `found x; wanted y` as its two halves. */
function splitWanted(message: string): readonly [string, string | undefined] {
  const i = message.indexOf('; wanted ');
  if (i < 0) return [message, undefined];
  return [`${message.slice(0, i)}.`, message.slice(i + '; wanted '.length).replace(/\.$/, '')];
}

/** All findings, a blank line between, then a line that counts them. */
export function printDiagnostics(
  findings: readonly Diagnostic[],
  locate: Locate,
  fileName: string,
  options: PrintOptions = {},
): string {
  const count = (severity: string): number => findings.filter((f) => f.severity === severity).length;
  const counts = (['error', 'fail', 'warning', 'note'] as const)
    .map((s) => [count(s), s] as const)
    .filter(([n]) => n > 0)
    .map(([n, s]) => `${n} ${s}${n === 1 ? '' : 's'}`);
  return [...findings.map((d) => printDiagnostic(d, locate, fileName, options)), counts.join(', ')]
    .filter((block) => block !== '')
    .join('\n\n');
}

/** A finding as plain data for other programs: itself with file, line and columns. */
export function diagnosticJson(d: Diagnostic, locate: Locate, fileName: string): Record<string, unknown> {
  const at = locate(d.path, d.key, d.span);
  return { file: fileName, line: at.line, column: at.column, endColumn: at.endColumn, ...d };
}
