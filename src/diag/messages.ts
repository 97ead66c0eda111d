import type { Diagnostic, JsonPath, Severity } from './diagnostic.js';
import { suggestion } from './didYouMean.js';
import { sentence } from './sentence.js';

interface Wording {
  readonly message: string;
  readonly hint?: string | undefined;
}
const say = (message: string, hint?: string): Wording => ({ message, hint });

const OPENING: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'this is a folder, not a file',
  EACCES: 'it may not be read',
};

/**
 * Every finding that the reading of a file can give: its code, and its words made of its figures. Those of the later rooms
 * are worded where their figures are known; what each of their codes means stands in codes.ts.
 */
export const MESSAGES = {
  'file-not-opened': (f: { name: string; why: string }) =>
    say(`${f.name}: ${OPENING[f.why] ?? `cannot be opened (${f.why})`}`, 'check the path'),
  'file-too-large': (f: { bytes: number; most: number }) =>
    say(
      `the file has ${f.bytes} bytes; at most ${f.most} are read`,
      'a definition is a few pages long: is this the file?',
    ),
  'file-not-text': () => say('the file is not plain text (UTF-8)', 'save it as UTF-8'),
  'nested-too-deep': (f: { most: number }) => say(`nested deeper than ${f.most}`, 'check the brackets'),
  'json-empty': () => say('nothing is written in the file', 'begin with { "format": 1, ... }'),
  'json-comment': () => say('a comment in a .json file', 'name the file .jsonc, or take the comment away'),
  'json-trailing-comma': () => say('a comma before a closing bracket', 'take it away, or name the file .jsonc'),
  'json-comma-missing': () => say('a comma is missing before this', 'write a comma after the entry above'),
  'json-inch-mark': () => say('the text ended at the quote before this', 'inside quotes write \\" for an inch mark'),
  'json-colon-missing': () => say('a colon is missing between a key and its value', 'write "key": value'),
  'json-bracket-missing': (f: { bracket: string }) => say(`a closing ${f.bracket} is missing`, 'close what was opened'),
  'json-string-open': () => say('this text has no closing quote on its line', 'write " at its end'),
  'json-quote': (f: { found: string }) => say(`the quote ${f.found} is not read here`, 'write plain double quotes: "'),
  'json-key-plain': (f: { found: string }) => say('a key stands in double quotes', `write "${f.found}"`),
  'json-key-missing': () => say('a key in double quotes is wanted here', 'write "key": value'),
  'json-value-missing': () => say('a value is missing here', 'write text in quotes, a number, a list or an object'),
  'json-value-plain': (f: { found: string }) =>
    say(`the word "${f.found}" is no value`, `write "${f.found}" in double quotes`),
  'json-escape': () => say('a backslash that means nothing here', 'write \\\\ for a backslash, \\" for an inch mark'),
  'json-number': () => say('this is no number', 'write 0.5 or 12, or put an expression in quotes'),
  'json-expression-plain': () => say('an expression stands in quotes', 'write "1/8" in double quotes'),
  'json-after-end': () => say('something follows the end of the definition', 'one object is the whole file'),
  'json-not-object': () => say('a definition is one object', 'begin with { "format": 1, ... }'),
  'json-syntax': () => say('this cannot be read', 'check brackets, commas and quotes'),
  'key-twice': (f: { key: string; line: number; column: number }) =>
    say(`"${f.key}" is given twice`, `the first stands at ${f.line}:${f.column}; keep one`),
  'csv-quote': () => say('a quote is opened here and never closed', 'close it, or write "" for a quote inside quotes'),
  'csv-cells': (f: { found: number; wanted: number }) =>
    say(`the row has ${f.found} cells; the header names ${f.wanted}`, 'put quotes around a cell that holds a comma'),
  'key-not-known': (f: { key: string; known: readonly string[] }) =>
    say(`"${f.key}" is not a key that belongs here`, suggestion(f.key, f.known)),
  'key-missing': (f: { key: string; what: string | undefined; example: string | undefined }) =>
    say(
      `"${f.key}" is missing${f.what === undefined ? '' : `: ${f.what}`}`,
      f.example && `add "${f.key}": ${f.example}`,
    ),
  'wrong-type': (f: { found: string; wanted: string; example: string | undefined }) =>
    say(`found ${f.found}; wanted ${f.wanted}`, f.example && `write such as ${f.example}`),
  'word-not-known': (f: { found: string; known: readonly string[] }) =>
    say(`"${f.found}" is not one of the words that can stand here`, suggestion(f.found, f.known)),
  'value-not-known': (f: { found: string; wanted: string; about: string | undefined }) =>
    say(`found ${f.found}; wanted ${f.wanted}${f.about === undefined ? '' : ` (${f.about})`}`),
  'number-range': (f: { found: string; wanted: string }) => say(`found ${f.found}; wanted ${f.wanted}`),
  'list-length': (f: { found: number; wanted: string }) =>
    say(`this list has ${f.found} ${f.found === 1 ? 'entry' : 'entries'}; wanted ${f.wanted}`),
  'id-form': (f: { id: string; instead: string | undefined; measure: boolean }) =>
    say(
      `"${f.id}" is not a name that can be used here`,
      `small letters${f.measure ? ' or capitals' : ''} and digits, a letter first, joined by single _${f.instead === undefined ? '' : `: ${f.instead}`}`,
    ),
  'id-reserved': (f: { id: string; use: string }) => say(`"${f.id}" is kept for ${f.use}`, 'use another name'),
  'id-twice': (f: { id: string; section: string }) =>
    say(`"${f.id}" is already a name under "${f.section}"`, 'one name stands for one thing; use another'),
  'control-character': (f: { point: string }) =>
    say(`a character that cannot be printed (${f.point})`, 'take it away; a line break is a new entry in a list'),
  'date-form': (f: { found: string }) => say(`"${f.found}" is not a date`, 'write year-month-day, such as 2027-02-01'),
  'each-form': (f: { found: string }) =>
    say(`"${f.found}" does not say how many`, 'write "i = 1..3", or "i = 1..3, j = 1..2"'),
  'each-backwards': (f: { found: string }) => say(`${f.found} runs backwards`, 'write the smaller number first'),
  'each-range': (f: { found: string; most: number }) =>
    say(`${f.found} is more than ${f.most} of a kind`, 'is this range meant?'),
  'each-letter-twice': (f: { letter: string }) => say(`the letter ${f.letter} is counted twice`, 'use two letters'),
  'each-letter-unused': (f: { letter: string; id: string }) =>
    say(`${f.letter} is counted but "${f.id}" does not hold {${f.letter}}`, `name it ${f.id}_{${f.letter}}`),
  'each-missing': (f: { letter: string }) =>
    say(`{${f.letter}} stands in the name, but nothing counts ${f.letter}`, `add "each": "${f.letter} = 1..3"`),
  'each-shift': (f: { found: string }) =>
    say(`${f.found} cannot stand in the name that is made`, 'write {i} in the key'),
  'joint-made': (f: { id: string; key: string }) =>
    say(`the joint "${f.id}" is made by its drawer, which decides its "${f.key}"`, `take "${f.key}" out`),
  'entries-too-many': (f: { section: string; found: number; most: number }) =>
    say(`"${f.section}" has ${f.found} entries; at most ${f.most} are read`, 'count rows out with "each": "i = 1..20"'),
  'parts-too-many': (f: { found: number; most: number }) =>
    say(`${f.found} parts are asked for; at most ${f.most} are built`),
  'pattern-form': (f: { found: string }) =>
    say(`"${f.found}" is not the name of a part or a row of them`, 'write rail_1, rail_{i}, rail_{2..5} or rail_*'),
  'load-empty': () => say('a load that does not say how much', 'write { "perArea": 40 } or { "middle": 50 }'),
  'extent-form': (f: { found: string }) =>
    say(
      `where the part is, is not fixed by ${f.found}`,
      'write [from, to], or size with one of from, to, mid; from or to alone when the stock is the thickness',
    ),
  'edge-form': (f: { found: string }) =>
    say(`"${f.found}" is not an arris`, 'name two faces that meet, such as "front top"'),
  'graduate-form': (f: { found: string }) => say(`"${f.found}" does not say how a row grows`, 'write "step 3/4"'),
  'from-not-known': (f: { found: string; known: readonly string[] }) =>
    say(
      `no shipped definition is called "${f.found}"`,
      suggestion(f.found, f.known) ?? 'see the list of shipped pieces',
    ),
  'from-circle': (f: { chain: string }) => say(`the definitions start from each other: ${f.chain}`),
  'from-faulty': (f: { found: string; first: string }) => say(`the definition "${f.found}" has a fault: ${f.first}`),
  'deletes-nothing': (f: { key: string }) =>
    say(`null takes "${f.key}" away, but there is no such entry to start from`, 'check its name, or leave it out'),
} as const;

export type MessageCode = keyof typeof MESSAGES;
type Figures<C extends MessageCode> = Parameters<(typeof MESSAGES)[C]> extends [infer F] ? [figures: F] : [];

/** Where a finding points, and how grave it is (an error when left out). */
export interface Where {
  readonly path: JsonPath;
  readonly key?: boolean;
  readonly span?: readonly [number, number];
  readonly severity?: Severity;
}

/** Longest word of a file that a message repeats, characters. */
const LONGEST_WORD = 120;
function shortened(figures: unknown): unknown {
  if (typeof figures !== 'object' || figures === null) return figures;
  const cut = (v: unknown): unknown =>
    typeof v === 'string' && v.length > LONGEST_WORD ? `${v.slice(0, LONGEST_WORD - 3)}...` : v;
  return Object.fromEntries(Object.entries(figures).map(([k, v]) => [k, cut(v)]));
}

/** A finding in the catalogue's words. */
export function diagnose<C extends MessageCode>(code: C, where: Where, ...figures: Figures<C>): Diagnostic {
  const worded = (MESSAGES[code] as (f?: unknown) => Wording)(shortened(figures[0]));
  return {
    code,
    severity: where.severity ?? 'error',
    path: where.path,
    ...(where.key === undefined ? {} : { key: where.key }),
    ...(where.span === undefined ? {} : { span: where.span }),
    message: sentence(worded.message),
    ...(worded.hint === undefined ? {} : { hint: sentence(worded.hint, false) }),
  };
}
