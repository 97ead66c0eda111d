import { execFileSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Before the tests: the compiled program is made from the sources as they are, so that the commands are tested as shipped. */
export default function build(): void {
  try {
    compile();
  } catch {
    // What does not type-check is still written, and told by `npm run check` and by `npm ci`; here the tests judge it.
  }
}
function compile(): void {
  const root = join(dirname(fileURLToPath(import.meta.url)), '..');
  execFileSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.build.json'], {
    cwd: root,
    stdio: 'inherit',
  });
}
