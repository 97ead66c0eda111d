import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { eachFindings } from '../diag/each.js';
import { diagnose } from '../diag/messages.js';
import type { Count } from '../lengths/each.js';
import { readEach } from '../lengths/each.js';

/** What an `each` counts, and what is wrong with it. */
export interface ReadEach {
  readonly counts: readonly Count[];
  readonly findings: readonly Diagnostic[];
}
/** Reads the `each` of the entry at `path`, whatever is typed there; nothing when it has none. */
export function readTyped(each: unknown, path: JsonPath): ReadEach {
  if (typeof each !== 'string') return { counts: [], findings: [] };
  const { counts, faults } = readEach(each);
  return { counts, findings: eachFindings(faults, [...path, 'each']) };
}

/** Holds the key of an entry and its `each` against each other. */
export function checkEach(id: string, each: unknown, path: JsonPath): ReadEach {
  const inKey = [...id.matchAll(/\{([a-z])([^}]*)\}/g)];
  const read = readTyped(each, path);
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
