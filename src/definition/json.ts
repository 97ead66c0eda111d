import type { Node, ParseError } from 'jsonc-parser';
import { createScanner, parseTree, printParseErrorCode } from 'jsonc-parser';
import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import type { Location } from '../diag/print.js';
import { diagnose } from '../diag/messages.js';
import { offsetLocator } from './locate.js';

/** Largest file read, bytes, and deepest nesting (our defaults: a piece of 200 parts takes some 60 kB, depth 9). */
export const LARGEST_FILE = 1_000_000;
export const DEEPEST_FILE = 32;

/** The values a JSON text can hold. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
export const isObject = (v: unknown): v is { readonly [key: string]: Json } =>
  typeof v === 'object' && v !== null && !Array.isArray(v);
export type Found = { readonly [key: string]: Json };
/** The entries of an object that are objects themselves; none of what is no object. */
export const entries = (v: unknown): readonly (readonly [string, Found])[] =>
  isObject(v) ? Object.entries(v).filter((e): e is [string, Found] => isObject(e[1])) : [];

export interface ParsedFile {
  readonly root?: Node;
  readonly value?: Json;
  readonly findings: readonly Diagnostic[];
  /** Where the one syntax error stands, when there is one: it has no path. */
  readonly syntaxAt?: Location;
}
interface Fault {
  readonly finding: Diagnostic;
  readonly from: number;
  readonly to: number;
}
const ROOT: { readonly path: JsonPath } = { path: [] };

/** Reads JSON, with comments and trailing commas when `comments`. Only the first syntax error is reported. */
export function parseFile(text: string, comments: boolean): ParsedFile {
  const bytes = new TextEncoder().encode(text).length;
  if (bytes > LARGEST_FILE) return { findings: [diagnose('file-too-large', ROOT, { bytes, most: LARGEST_FILE })] };
  const at = offsetLocator(text);
  const failed = (f: Fault): ParsedFile => ({ findings: [f.finding], syntaxAt: at(f.from, f.to) });
  const deep = tooDeep(text);
  if (deep !== undefined) return failed(deep);
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { disallowComments: !comments, allowTrailingComma: comments });
  const first = errors[0];
  if (first !== undefined) return failed(syntaxFault(text, first));
  if (root?.type !== 'object') return failed({ finding: diagnose('json-not-object', ROOT), from: 0, to: 1 });
  const findings: Diagnostic[] = [];
  return { root, value: valueOf(root, [], { findings, at }), findings };
}

/** The first bracket that is nested too deep: looked for word by word, since the parser calls itself. */
function tooDeep(text: string): Fault | undefined {
  const scanner = createScanner(text, true);
  let depth = 0;
  for (let kind = scanner.scan(); kind !== 17; kind = scanner.scan()) {
    if (kind === 1 || kind === 3) depth += 1;
    if (kind === 2 || kind === 4) depth -= 1;
    if (depth > DEEPEST_FILE) {
      const from = scanner.getTokenOffset();
      return { finding: diagnose('nested-too-deep', ROOT, { most: DEEPEST_FILE }), from, to: from + 1 };
    }
  }
  return undefined;
}

const fault = (finding: Diagnostic, from: number, to: number): Fault => ({ finding, from, to });

/** The parser's first error in our words, at the place where the maker must look. */
function syntaxFault(text: string, e: ParseError): Fault {
  const [from, to] = [e.offset, e.offset + Math.max(1, e.length)];
  const here = text.slice(from, to);
  if (text.trim() === '') return fault(diagnose('json-empty', ROOT), 0, 1);
  const expression = /^\/(?![/*])/.test(here) && /\d$/.test(text.slice(0, from));
  if (expression) return fault(diagnose('json-expression-plain', ROOT), from, to);
  const code = printParseErrorCode(e.error);
  const previous = text.slice(0, from).trimEnd();
  const last = previous.at(-1);
  const strange = /^[\u2018\u2019\u201c\u201d'`]/.exec(here)?.[0];
  if (strange !== undefined) return fault(diagnose('json-quote', ROOT, { found: strange }), from, from + 1);
  if (last === ',' && (here === '}' || here === ']')) {
    return fault(diagnose('json-trailing-comma', ROOT), previous.length - 1, previous.length);
  }
  switch (code) {
    case 'InvalidCommentToken':
      return fault(diagnose('json-comment', ROOT), from, to);
    case 'UnexpectedEndOfComment':
      return fault(diagnose('json-syntax', ROOT), from, to);
    case 'UnexpectedEndOfString':
      return fault(diagnose('json-string-open', ROOT), from, to);
    case 'InvalidEscapeCharacter':
    case 'InvalidUnicode':
      return fault(diagnose('json-escape', ROOT), ...badEscape(text, from, to));
    case 'InvalidCharacter':
      return fault(diagnose('control-character', ROOT, { point: controlPoint(here) }), ...badControl(text, from, to));
    case 'UnexpectedEndOfNumber':
    case 'InvalidNumberFormat':
      return fault(diagnose('json-number', ROOT), from, to);
    case 'EndOfFileExpected':
      return fault(diagnose('json-after-end', ROOT), from, to);
    case 'CommaExpected':
      if (here.startsWith('"') && text[from - 1] === '"') return fault(diagnose('json-inch-mark', ROOT), from, to);
      return fault(diagnose('json-comma-missing', ROOT), from, to);
    case 'ColonExpected':
      return fault(diagnose('json-colon-missing', ROOT), from, to);
    case 'CloseBraceExpected':
      return fault(diagnose('json-bracket-missing', ROOT, { bracket: '}' }), ...endOf(previous));
    case 'CloseBracketExpected':
      return fault(diagnose('json-bracket-missing', ROOT, { bracket: ']' }), ...endOf(previous));
    default:
      return wordFault(code, previous, here, from, to);
  }
}
function wordFault(code: string, previous: string, here: string, from: number, to: number): Fault {
  const word = /^[A-Za-z_][\w-]*/.exec(here)?.[0];
  const keyPlace = code === 'PropertyNameExpected' || (code === 'InvalidSymbol' && /[{,]$/.test(previous));
  if (here.trim() === '') return fault(diagnose('json-bracket-missing', ROOT, { bracket: '}' }), ...endOf(previous));
  if (word !== undefined && keyPlace) return fault(diagnose('json-key-plain', ROOT, { found: word }), from, to);
  if (/^[.+-]?[\d.]/.test(here)) return fault(diagnose('json-number', ROOT), from, to);
  if (word !== undefined) return fault(diagnose('json-value-plain', ROOT, { found: word }), from, to);
  if (code === 'PropertyNameExpected') return fault(diagnose('json-key-missing', ROOT), from, to);
  if (code === 'ValueExpected') return fault(diagnose('json-value-missing', ROOT), from, to);
  return fault(diagnose('json-syntax', ROOT), from, to);
}
const endOf = (previous: string): [number, number] => [Math.max(0, previous.length - 1), previous.length];
function badEscape(text: string, from: number, to: number): [number, number] {
  const m = /\\(?!["\\/bfnrt]|u[0-9a-fA-F]{4})(?:u[0-9a-fA-F]{0,3}|.)?/.exec(
    text.slice(from, to).replace(/\\["\\/bfnrt]/g, '\u0001\u0001'),
  );
  return m === null ? [from, to] : [from + m.index, from + m.index + m[0].length];
}
function badControl(text: string, from: number, to: number): [number, number] {
  const i = CONTROL.exec(text.slice(from, to))?.index ?? 0;
  return [from + i, from + i + 1];
}
// C0 and C1 controls, lone surrogates and the marks that turn the direction of writing: none of them can be printed
const CONTROL =
  /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;
function controlPoint(text: string): string {
  const c = CONTROL.exec(text)?.[0].charCodeAt(0) ?? 0;
  return `U+${c.toString(16).toUpperCase().padStart(4, '0')}`;
}

interface Reading {
  readonly findings: Diagnostic[];
  readonly at: (from: number, to: number) => Location;
}
/** The plain value of a node; of a key given twice the last. Reports keys given twice and characters that cannot be printed. */
function valueOf(node: Node, path: JsonPath, reading: Reading): Json {
  if (node.type === 'array') return (node.children ?? []).map((c, i) => valueOf(c, [...path, i], reading));
  if (node.type === 'object') return objectOf(node, path, reading);
  const value = node.value as string | number | boolean | null;
  if (typeof value === 'string') {
    const m = CONTROL.exec(value);
    if (m !== null) {
      const where = { path, span: [m.index, m.index + 1] as const };
      reading.findings.push(diagnose('control-character', where, { point: controlPoint(value) }));
    }
  }
  return value;
}
function objectOf(node: Node, path: JsonPath, reading: Reading): Json {
  const earlier = new Map<string, Node>();
  const twice = new Set<string>();
  const out: Record<string, Json> = {};
  for (const property of node.children ?? []) {
    const [name, child] = property.children as [Node, Node | undefined];
    const key = name.value as string;
    const first = earlier.get(key);
    if (first === undefined) earlier.set(key, name);
    else if (!twice.has(key)) {
      twice.add(key);
      const { line, column } = reading.at(first.offset, first.offset + first.length);
      reading.findings.push(diagnose('key-twice', { path: [...path, key], key: true }, { key, line, column }));
    }
    if (child === undefined) continue;
    // defined, not assigned: "__proto__" is a key like any other here, and is refused as one that is not known
    const value = valueOf(child, [...path, key], reading);
    Object.defineProperty(out, key, { value, enumerable: true, configurable: true, writable: true });
  }
  return out;
}
