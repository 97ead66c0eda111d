import { execFileSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const help = (...args: string[]): string =>
  execFileSync(process.execPath, [join(root, 'dist', 'main.js'), ...args], { encoding: 'utf8' });

test('the help that is kept is what the parser prints (npm run help writes it)', () => {
  // Asked for twice, the parser itself answers.
  const parsed = help('--help', '--help');
  expect(parsed).toContain('benchpacket build <file..>');
  expect(help('--help')).toBe(parsed);
  expect(help()).toBe(parsed);
});
