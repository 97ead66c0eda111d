import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { resolvePiece } from '../../src/piece/resolve.js';

/** The shipped tall chest, with entries put before its parts on a line of their own. */
const CHEST = readFileSync(new URL('../../templates/pieces/tall-chest.jsonc', import.meta.url), 'utf8');
const OPEN = '  "parts": {\n';
const LINE = CHEST.slice(0, CHEST.indexOf(OPEN)).split('\n').length + 1;
const withEntry = (entry: string): string => CHEST.replace(OPEN, `${OPEN}    ${entry},\n`);

function tried(entry: string): { readonly said: string[]; readonly hint: string; readonly piece: unknown } {
  expect(CHEST.split(OPEN)).toHaveLength(2);
  const { value, findings, locate } = readDefinition(withEntry(entry), 'chest.jsonc');
  const resolved = value === undefined ? undefined : resolvePiece(value);
  const all = [...findings, ...(resolved?.findings ?? [])].filter((f) => f.severity === 'error');
  const said = all.map((f) => {
    const at = locate(f.path, f.key, f.span);
    return `${f.code} ${at.line - LINE}:${at.column} ${at.lineText.slice(at.column - 1, at.endColumn - 1)}`;
  });
  return { said, hint: all[0]?.hint ?? '', piece: resolved?.value };
}

test('a part that a drawer makes takes a name, a mark, a status and notes by its key', () => {
  const entry =
    '"short_1.front": { "name": "till front", "mark": "T1", "status": "measure first", "notes": ["choose the quietest board"] }';
  const { said, piece } = tried(entry);
  expect(said).toEqual([]);
  const { parts } = piece as { parts: readonly { id: string; notes: readonly string[] }[] };
  const front = parts.find((p) => p.id === 'short_1.front');
  expect(front).toMatchObject({ name: 'till front', mark: 'T1', status: 'measure first' });
  expect(front?.notes).toContain('choose the quietest board');
  expect(parts.find((p) => p.id === 'short_2.front')?.notes).not.toContain('choose the quietest board');
});

test.each([
  // columns are counted on the line as typed: four blanks, then the key
  ['"short_1.front": { "across": ["0", "1"] }', 'override-field 0:34 ["0", "1"]', 'sizes belong to the drawer'],
  ['"short_9.front": { "name": "x" }', 'part-unknown 0:22 { "name": "x" }', 'short_'],
  ['"short_1.frunt": { "name": "x" }', 'part-unknown 0:22 { "name": "x" }', 'short_1.front'],
  ['"short_1.Front": { "name": "x" }', 'id-form 0:5 "short_1.Front"', 'short_1.front'],
  ['"short_1.front.x": { "name": "x" }', 'id-form 0:5 "short_1.front.x"', ''],
  ['"short_{i}.front": { "each": "i = 1..2", "name": "x" }', 'id-form 0:5 "short_{i}.front"', ''],
  ['"short_1.front": { "status": "cut" }', 'word-not-known 0:34 "cut"', 'cut now'],
  ['"short_1.front": { "nmae": "x" }', 'key-not-known 0:24 "nmae"', 'name'],
])('%s', (entry, said, hint) => {
  const found = tried(entry);
  expect(found.said[0]).toBe(said);
  expect(found.said).toHaveLength(1);
  expect(found.hint).toContain(hint);
});

test('only parts of the piece have such keys: not joints, nor the parts of a group', () => {
  expect(tried('"spare": {}').said.length).toBeGreaterThan(0);
  const more = CHEST.replace(OPEN, `  "groups": { "g": { "parts": { "a.b": { "name": "x" } } } },\n${OPEN}`);
  expect(readDefinition(more, 'chest.jsonc').findings.map((f) => f.code)).toEqual(['id-form']);
});
