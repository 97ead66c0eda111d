import { closeSync, fstatSync, openSync, readFileSync, readdirSync } from 'node:fs';
import { LARGEST_FILE } from '../definition/json.js';
import type { Diagnostic } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';

const PIECES = new URL('../../templates/pieces/', import.meta.url);
const NAME = /^[a-z][a-z0-9]*(?:[-_][a-z0-9]+)*$/;
const ENDINGS = ['.jsonc', '.json'];

/**
 * The text of a file. A finding when there is none, when it is no file, larger than a definition can be, or not UTF-8.
 * The size is asked of the open file, so that nothing large is read first.
 */
export function readText(path: string | URL): { readonly text: string } | { readonly finding: Diagnostic } {
  const name = String(path);
  let handle: number;
  try {
    handle = openSync(path, 'r');
  } catch (e) {
    return { finding: diagnose('file-not-opened', { path: [] }, { name, why: codeOf(e) }) };
  }
  try {
    const facts = fstatSync(handle);
    if (facts.isDirectory()) return { finding: diagnose('file-not-opened', { path: [] }, { name, why: 'EISDIR' }) };
    if (facts.size > LARGEST_FILE) {
      return { finding: diagnose('file-too-large', { path: [] }, { bytes: facts.size, most: LARGEST_FILE }) };
    }
    return decoded(readFileSync(handle));
  } catch (e) {
    return { finding: diagnose('file-not-opened', { path: [] }, { name, why: codeOf(e) }) };
  } finally {
    closeSync(handle);
  }
}
const codeOf = (e: unknown): string => (e instanceof Error && 'code' in e ? String(e.code) : 'unknown');

/** Bytes as UTF-8 text; what is not UTF-8 is refused, never replaced by marks. */
function decoded(bytes: Uint8Array): { readonly text: string } | { readonly finding: Diagnostic } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { finding: diagnose('file-not-text', { path: [] }) };
  }
}

/** Names of the shipped definitions, sorted. */
export const shippedNames = (): readonly string[] =>
  readdirSync(PIECES)
    .filter((f) => ENDINGS.some((e) => f.endsWith(e)))
    .map((f) => f.replace(/\.jsonc?$/, ''))
    .sort();

/** The text of a shipped definition by its name (as `from` gives it); undefined when there is none. */
export function shippedText(name: string): string | undefined {
  if (!NAME.test(name)) return undefined;
  for (const ending of ENDINGS) {
    const read = readText(new URL(name + ending, PIECES));
    if ('text' in read) return read.text;
  }
  return undefined;
}
