// npm run help: writes templates/help.txt from the built program, so that --help need not load the parser of arguments.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// Given twice, the parser itself answers.
const main = fileURLToPath(new URL('../dist/main.js', import.meta.url));
writeFileSync(
  new URL('../templates/help.txt', import.meta.url),
  execFileSync(process.execPath, [main, '--help', '--help'], { encoding: 'utf8' }),
);
