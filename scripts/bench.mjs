// npm run bench [-- SUBJECT]: runs scripts/bench/SUBJECT.mjs; without a name, the packet.
import { readdirSync } from 'node:fs';

const folder = new URL('bench/', import.meta.url);
const subjects = readdirSync(folder)
  .filter((name) => name.endsWith('.mjs') && !name.startsWith('_'))
  .map((name) => name.slice(0, -4))
  .sort();
const [subject = 'packet', ...rest] = process.argv.slice(2);
if (!subjects.includes(subject)) {
  console.error(`no bench is called "${subject}"; there are: ${subjects.join(', ')}`);
  process.exitCode = 2;
} else {
  const { run } = await import(new URL(`${subject}.mjs`, folder).href);
  await run(rest);
}
