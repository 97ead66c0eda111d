// npm run bench: the packet of the tall chest, cold process and warm, by stage, with peak memory; beside it the same pages
// printed by headless Chromium where it is installed (Debian package chromium), as a ratio in the same run.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const piece = 'templates/pieces/tall-chest.jsonc';
const out = join('out', 'bench');
const median = (xs) => [...xs].sort((a, b) => a - b)[Math.floor(xs.length / 2)];
const ms = (x) => `${x.toFixed(0)} ms`;
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });

const cold = [];
for (let i = 0; i < 5; i += 1) {
  const from = process.hrtime.bigint();
  execFileSync(process.execPath, ['dist/main.js', 'build', piece, '--out', out], { stdio: 'pipe' });
  cold.push(Number(process.hrtime.bigint() - from) / 1e6);
}
console.log(
  `cold process, ${piece}: median ${ms(median(cold))}, least ${ms(Math.min(...cold))}, most ${ms(Math.max(...cold))}`,
);

const help = [];
for (let i = 0; i < 9; i += 1) {
  const from = process.hrtime.bigint();
  execFileSync(process.execPath, ['dist/main.js', '--help'], { stdio: 'pipe' });
  help.push(Number(process.hrtime.bigint() - from) / 1e6);
}
console.log(`--help: median ${ms(median(help))}`);

const { buildPacket } = await import('../dist/run.js');
const job = { what: 'build', fileName: piece, text: readFileSync(piece, 'utf8'), shipped: {} };
const stages = new Map();
let pages = 0;
for (let i = 0; i < 6; i += 1) {
  let last;
  let at = performance.now();
  const mark = (stage) => {
    const now = performance.now();
    if (i > 0 && last !== undefined) stages.set(last, [...(stages.get(last) ?? []), now - at]);
    [last, at] = [stage, now];
  };
  const answer = await buildPacket(job, mark);
  mark('end');
  pages = answer.files.filter((f) => f.path.endsWith('.svg')).length;
}
console.log(`warm, ${pages} sheets, median of 5:`);
let total = 0;
for (const [stage, times] of stages) {
  total += median(times);
  console.log(`  ${stage.padEnd(11)} ${ms(median(times))}`);
}
console.log(`  all         ${ms(total)}; peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`);

const chromium = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find(existsSync);
if (!chromium) console.log('Chromium is not installed: no comparison (apt-get install chromium)');
else {
  const packet = join(out, readdirSync(out)[0]);
  const svgs = ['drawings', 'cards', 'nesting', 'lists'].flatMap((d) =>
    existsSync(join(packet, d))
      ? readdirSync(join(packet, d))
          .filter((f) => f.endsWith('.svg'))
          .map((f) => readFileSync(join(packet, d, f), 'utf8'))
      : [],
  );
  const html = join(out, 'all.html');
  writeFileSync(
    html,
    `<style>@page{size:279.4mm 215.9mm;margin:0}body{margin:0}svg{display:block;break-after:page}</style>${svgs.join('\n')}`,
  );
  const times = [];
  for (let i = 0; i < 3; i += 1) {
    const from = process.hrtime.bigint();
    spawnSync(
      chromium,
      [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        `--user-data-dir=${join(out, `profile${i}`)}`,
        '--no-pdf-header-footer',
        `--print-to-pdf=${join(out, 'chromium.pdf')}`,
        `file://${join(process.cwd(), html)}`,
      ],
      { stdio: 'ignore' },
    );
    times.push(Number(process.hrtime.bigint() - from) / 1e6);
  }
  const report = median(stages.get('report') ?? [0]);
  console.log(
    `the same ${svgs.length} pages by headless Chromium: median ${ms(median(times))}; ours, SVG and PDF writers warm: ${ms(report)}: ratio ${(median(times) / report).toFixed(1)}`,
  );
  console.log(`whole cold process against Chromium's printing alone: ${(median(cold) / median(times)).toFixed(2)}`);
}
