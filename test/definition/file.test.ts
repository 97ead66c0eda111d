import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readText, shippedNames, shippedText } from '../../src/io/read.js';

const folder = mkdtempSync(join(tmpdir(), 'read-'));
afterAll(() => rmSync(folder, { recursive: true }));
const written = (name: string, bytes: string | Uint8Array): string => {
  writeFileSync(join(folder, name), bytes);
  return join(folder, name);
};
const code = (path: string): string | undefined => {
  const read = readText(path);
  return 'finding' in read ? read.finding.code : undefined;
};

test('the text of a file comes as it is', () => {
  expect(readText(written('a.json', '{ "a": "½ ü" }\r\n'))).toEqual({ text: '{ "a": "½ ü" }\r\n' });
  expect(readText(written('empty.json', ''))).toEqual({ text: '' });
});
test('what cannot be read is a finding', () => {
  expect(code(join(folder, 'none.json'))).toBe('file-not-opened');
  expect(code(folder)).toBe('file-not-opened');
  // 0xff never stands in UTF-8; 0xc3 begins a character that 0x28 does not end (Unicode standard, table 3-7)
  expect(code(written('b.json', Uint8Array.of(0x7b, 0xff, 0x7d)))).toBe('file-not-text');
  expect(code(written('c.json', Uint8Array.of(0xc3, 0x28)))).toBe('file-not-text');
  expect(code(written('d.json', ' '.repeat(1_000_001)))).toBe('file-too-large');
  expect(code(written('e.json', ' '.repeat(1_000_000)))).toBeUndefined();
});
test('shipped definitions are known by name only', () => {
  const [first] = shippedNames();
  expect(first && shippedText(first)).toContain('"format": 1');
  expect(shippedText('no-such-piece')).toBeUndefined();
  expect(shippedText('../piece.schema')).toBeUndefined();
  expect(shippedText('')).toBeUndefined();
});
