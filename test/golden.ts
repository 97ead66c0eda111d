import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/**
 * Compares a text with the golden of that name (`specimen/02-piece.json`). A difference leaves the new text in
 * test/out/golden for a look; `npm run golden -- accept <name>` takes it over, by name, never all at once and never in CI.
 */
export function expectGolden(name: string, text: string): void {
  const wanted = join(root, 'golden', name);
  const got = join(root, 'test', 'out', 'golden', name);
  const before = existsSync(wanted) ? readFileSync(wanted, 'utf8') : undefined;
  if (before === text) {
    rmSync(got, { force: true });
    return;
  }
  mkdirSync(dirname(got), { recursive: true });
  writeFileSync(got, text);
  expect(text, `golden ${name} differs; look at test/out/golden/${name}`).toBe(before ?? '(no golden yet)');
}
