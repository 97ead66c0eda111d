// npm run golden                      lists what differs from the accepted goldens (after npm test)
// npm run golden -- accept NAME...    takes those over, by name, after you have looked at them
import { copyFileSync, existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

/** Bytes at most; the picture of the README may be larger. */
const capOf = (name) => (name.startsWith('readme') ? 150 : 96) * 1024;
const got = join('test', 'out', 'golden');
const walk = (dir) =>
  existsSync(dir)
    ? readdirSync(dir).flatMap((n) => (statSync(join(dir, n)).isDirectory() ? walk(join(dir, n)) : [join(dir, n)]))
    : [];
const [verb, ...names] = process.argv.slice(2);
if (verb === undefined) {
  const differing = walk(got).map((f) => relative(got, f));
  console.log(differing.length === 0 ? 'nothing differs' : differing.sort().join('\n'));
} else if (verb !== 'accept' || names.length === 0) {
  console.error('usage: npm run golden [-- accept NAME...]');
  process.exitCode = 2;
} else if (process.env.CI) {
  console.error('goldens are never written in CI');
  process.exitCode = 2;
} else {
  for (const name of names) {
    const from = join(got, name);
    if (!existsSync(from)) {
      console.error(`${name}: nothing to accept`);
      process.exitCode = 1;
    } else if (statSync(from).size > capOf(name)) {
      console.error(
        `${name}: ${statSync(from).size} bytes is over the cap of ${capOf(name)}; make the specimen smaller`,
      );
      process.exitCode = 1;
    } else {
      mkdirSync(dirname(join('golden', name)), { recursive: true });
      copyFileSync(from, join('golden', name));
      console.log(`accepted ${name}`);
    }
  }
}
