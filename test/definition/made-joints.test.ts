import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { inches } from '../../src/lengths/length.js';
import type { Joint, Piece } from '../../src/piece/piece.js';
import { resolvePiece } from '../../src/piece/resolve.js';

/** The shipped tall chest, with entries put before its joints. */
const CHEST = readFileSync(new URL('../../templates/pieces/tall-chest.jsonc', import.meta.url), 'utf8');
const OPEN = /\n {2}"joints": *\{\n/;
function tried(entries: string): { readonly said: string[]; readonly hint: string; readonly piece: Piece | undefined } {
  expect(CHEST.split(OPEN)).toHaveLength(2);
  const { value, findings } = readDefinition(
    CHEST.replace(OPEN, (open) => `${open}    ${entries},\n`),
    'chest.jsonc',
  );
  const resolved = value === undefined ? undefined : resolvePiece(value);
  const all = [...findings, ...(resolved?.findings ?? [])].filter((f) => f.severity === 'error');
  return {
    said: all.map((f) => `${f.code} ${f.path.join('/')}`),
    hint: all[0]?.hint ?? '',
    piece: resolved?.value,
  };
}
const joint = (piece: Piece | undefined, id: string): Joint => {
  const found = piece?.joints.find((j) => j.joint === id);
  if (!found) throw new Error(id);
  return found;
};

test('a joint that a drawer makes takes what its entry says, and keeps what the drawer says of the rest', () => {
  const plain = tried('"short_1.corner_back_left": { "kind": "half-blind-dovetail" }');
  const { said, piece } = tried('"short_1.corner_back_left": { "kind": "half-blind-dovetail", "lap": "3/16" }');
  expect([plain.said, said]).toEqual([[], []]);
  const [was, is] = [plain.piece, piece].map((p) => joint(p, 'short_1.corner_back_left'));
  expect(was?.sizes['lap']?.value).not.toBe(inches(3 / 16));
  expect(is?.sizes['lap']).toMatchObject({ value: inches(3 / 16), how: 'given' });
  expect(is?.sizes['pitch']).toEqual(was?.sizes['pitch']);
  expect(joint(piece, 'short_1.corner_front_left')).toEqual(joint(plain.piece, 'short_1.corner_front_left'));
});
test('an entry may be of another kind, and stand for several by a star; the last that fits counts', () => {
  const { said, piece } = tried(
    `"short_*.corner_back_*": { "kind": "through-dovetail", "tails": 2 },
     "short_2.corner_back_right": { "kind": "through-dovetail", "tails": 3 }`,
  );
  expect(said).toEqual([]);
  const kinds = piece?.joints.filter((j) => /^short_\d\.corner/.test(j.joint)).map((j) => `${j.joint} ${j.kind}`);
  expect(kinds?.filter((k) => k.includes('_back_')).every((k) => k.endsWith('through-dovetail'))).toBe(true);
  expect(kinds?.filter((k) => k.includes('_front_')).every((k) => k.endsWith('half-blind-dovetail'))).toBe(true);
  const tails = (id: string): number => {
    const { entering } = joint(piece, id);
    const cuts = piece?.parts.find((p) => p.id === entering)?.cuts ?? [];
    return cuts.flatMap((c) => (c.shape === 'tails' && c.from === id ? c.tails : [])).length;
  };
  expect([tails('short_1.corner_back_right'), tails('short_2.corner_back_right')]).toEqual([2, 3]);
});
test.each([
  ['"short_9.corner_back_left": { "kind": "dado" }', 'joint-not-made joints/short_9.corner_back_left', 'short_1'],
  ['"short_1.corner_back_left": { "kind": "dadoo" }', 'word-not-known joints/short_1.corner_back_left/kind', 'dado'],
  [
    '"short_1.bottom_groove": { "kind": "groove", "into": "top" }',
    'joint-made joints/short_1.bottom_groove/into',
    'Take',
  ],
  ['"short_1.bottom_groove": { "kind": "groove", "depht": "1/4" }', 'key-not-known', 'depth'],
  ['"short_1.Corner": { "kind": "dado" }', 'id-form joints/short_1.Corner', 'short_1.corner'],
  ['"plain": { "kind": "dado", "into": "top" }', 'key-missing joints/plain', '"part"'],
  ['"plain": { "kind": "dado", "prat": "rail_1", "into": "top" }', 'key-not-known', 'part'],
])('%s', (entry, said, hint) => {
  const found = tried(entry);
  expect(found.said).toHaveLength(1);
  expect(found.said[0]).toContain(said);
  expect(found.hint).toContain(hint);
});
