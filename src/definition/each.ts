import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';

/** Most of one kind that an `each` or a range makes (our default). */
export const MOST_EACH = 200;
/** Most parts that are built of one definition (our default). */
export const MOST_PARTS = 2000;

/** Longest `each` read, characters. */
const LONGEST_EACH = 100;

/** One letter of an `each`: counts from `from` to `to`, both among them. */
export interface Count {
  readonly letter: string;
  readonly from: number;
  readonly to: number;
}
const COUNT = /^ *([a-z]) *= *(\d{1,4}) *\.\. *(\d{1,4}) *$/;

/**
 * Reads `i = 1..3, j = 1..2`. Findings point at the stretch of the text; the counts that could be read are given even
 * so.
 */
export function parseEach(
  text: string,
  path: JsonPath,
): { readonly counts: readonly Count[]; readonly findings: Diagnostic[] } {
  const counts: Count[] = [];
  const findings: Diagnostic[] = [];
  if (text.length > LONGEST_EACH) return { counts, findings: [diagnose('each-form', { path }, { found: text })] };
  let start = 0;
  for (const piece of text.split(',')) {
    const lead = piece.length - piece.trimStart().length;
    const from = start + lead;
    const where = { path, span: [from, Math.max(from + 1, start + piece.trimEnd().length)] as const };
    start += piece.length + 1;
    const m = COUNT.exec(piece);
    const found = piece.trim();
    if (m === null) {
      findings.push(diagnose('each-form', where, { found }));
      continue;
    }
    const count = { letter: m[1] as string, from: Number(m[2]), to: Number(m[3]) };
    if (count.to < count.from) findings.push(diagnose('each-backwards', where, { found }));
    else if (count.to - count.from >= MOST_EACH)
      findings.push(diagnose('each-range', where, { found, most: MOST_EACH }));
    else if (counts.some((c) => c.letter === count.letter)) {
      findings.push(diagnose('each-letter-twice', where, { letter: count.letter }));
    } else counts.push(count);
  }
  if (findings.length === 0 && howMany(counts) > MOST_EACH) {
    const where = { path, span: [0, text.length] as const };
    findings.push(diagnose('each-range', where, { found: text.trim(), most: MOST_EACH }));
  }
  return { counts, findings };
}

/** How many one entry makes. */
export const howMany = (counts: readonly Count[]): number => counts.reduce((n, c) => n * (c.to - c.from + 1), 1);

/** Every set of values of the letters, the first letter slowest; one empty set when there are none. */
export function eachValues(counts: readonly Count[]): readonly Readonly<Record<string, number>>[] {
  return counts.reduce<readonly Readonly<Record<string, number>>[]>(
    (sets, c) =>
      sets.flatMap((set) => Array.from({ length: c.to - c.from + 1 }, (_, k) => ({ ...set, [c.letter]: c.from + k }))),
    [{}],
  );
}

/** Holds the key of an entry and its `each` against each other. */
export function checkEach(
  id: string,
  each: unknown,
  path: JsonPath,
): { readonly counts: readonly Count[]; readonly findings: Diagnostic[] } {
  const inKey = [...id.matchAll(/\{([a-z])([^}]*)\}/g)];
  const read = typeof each === 'string' ? parseEach(each, [...path, 'each']) : { counts: [], findings: [] };
  const findings = [...read.findings];
  const at = { path, key: true };
  for (const [all, letter, shift] of inKey) {
    if (shift !== '') findings.push(diagnose('each-shift', at, { found: all }));
    else if (each === undefined) findings.push(diagnose('each-missing', at, { letter: letter as string }));
    else if (typeof each === 'string' && read.findings.length === 0 && !read.counts.some((c) => c.letter === letter)) {
      findings.push(diagnose('each-missing', at, { letter: letter as string }));
    }
  }
  for (const c of read.counts) {
    if (inKey.some((m) => m[1] === c.letter)) continue;
    findings.push(diagnose('each-letter-unused', at, { letter: c.letter, id }));
  }
  return { counts: read.counts, findings };
}
