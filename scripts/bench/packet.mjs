// The packet of the tall chest: cold process and warm, by stage and by page, with memory; beside it the same pages printed
// by headless Chromium where it is installed (Debian package chromium), as a ratio in the same run.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load, least, median, ms, processor, runs } from './_measure.mjs';

const PIECE = 'templates/pieces/tall-chest.jsonc';
const OUT = join('out', 'bench');
const said = (walls) => `median ${ms(median(walls))}, least ${ms(least(walls))}`;

export async function run() {
  rmSync(OUT, { recursive: true, force: true });
  mkdirSync(OUT, { recursive: true });
  console.log(`${PIECE}; ${load()} on this machine: least of several runs is nearest to an idle one`);
  const cold = runs(5, process.execPath, ['dist/main.js', 'build', PIECE, '--out', OUT]);
  console.log(`cold process   ${said(cold.walls)}; peak memory ${most(cold.peaks)}`);
  console.log(`--help         ${said(runs(9, process.execPath, ['dist/main.js', '--help']).walls)}`);
  const report = await warm();
  chromium(least(cold.walls), report);
}
const most = (peaks) => (peaks.length === 0 ? 'unknown' : `${Math.max(...peaks).toFixed(0)} MB`);

/** Warm builds in one process: each stage's wall time and processor time; gives the least of the writers, ms. */
async function warm(times = 8) {
  const { buildPacket } = await import('../../dist/run.js');
  const job = { what: 'build', fileName: PIECE, text: readFileSync(PIECE, 'utf8'), shipped: {} };
  const stages = new Map();
  let pages = 0;
  for (let i = 0; i < times; i += 1) {
    let last;
    let at = [performance.now(), processor()];
    const mark = (stage) => {
      const now = [performance.now(), processor()];
      if (i > 1 && last !== undefined) {
        const known = stages.get(last) ?? { walls: [], cpu: [] };
        known.walls.push(now[0] - at[0]);
        known.cpu.push(now[1] - at[1]);
        stages.set(last, known);
      }
      [last, at] = [stage, now];
    };
    const answer = await buildPacket(job, mark);
    mark('end');
    pages = answer.files.filter((f) => f.path.endsWith('.svg')).length;
  }
  console.log(`warm, ${pages} pages, ${times - 2} builds:`);
  let [all, cpu] = [0, 0];
  for (const [stage, t] of stages) {
    console.log(`  ${stage.padEnd(12)} ${said(t.walls)}; processor, all threads, least ${ms(least(t.cpu))}`);
    all += least(t.walls);
    cpu += least(t.cpu);
  }
  const [drawings, report] = ['drawings', 'report'].map((s) => least(stages.get(s)?.walls ?? [0]));
  const each = (drawings + report) / pages;
  console.log(`  ${'all'.padEnd(12)} least ${ms(all)}; processor ${ms(cpu)}`);
  console.log(`  a page, drawings and writers together: ${each.toFixed(1)} ms`);
  return report;
}

/** The same SVG sheets printed by headless Chromium. */
function chromium(cold, report) {
  const program = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((p) => existsSync(p));
  if (!program) return void console.log('Chromium is not installed: no comparison (apt-get install chromium)');
  const packet = join(OUT, readdirSync(OUT)[0]);
  const svgs = ['drawings', 'cards', 'nesting', 'lists'].flatMap((d) => {
    const folder = join(packet, d);
    const names = existsSync(folder) ? readdirSync(folder).filter((f) => f.endsWith('.svg')) : [];
    return names.map((f) => readFileSync(join(folder, f), 'utf8'));
  });
  const style = '@page{size:279.4mm 215.9mm;margin:0}body{margin:0}svg{display:block;break-after:page}';
  const html = join(OUT, 'all.html');
  writeFileSync(html, `<style>${style}</style>${svgs.join('\n')}`);
  const walls = [0, 1, 2].map((i) => {
    const from = performance.now();
    const still = ['--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-sync'];
    const own = ['--disable-component-update', `--user-data-dir=${join(OUT, `profile${i}`)}`];
    const print = ['--no-pdf-header-footer', `--print-to-pdf=${join(OUT, 'chromium.pdf')}`];
    const page = `file://${join(process.cwd(), html)}`;
    spawnSync(program, ['--headless', '--no-sandbox', ...still, ...own, ...print, page], { stdio: 'ignore' });
    return performance.now() - from;
  });
  if (!existsSync(join(OUT, 'chromium.pdf'))) return void console.log('Chromium printed nothing: no comparison');
  const its = least(walls);
  console.log(`the same ${svgs.length} pages printed by headless Chromium: ${said(walls)}`);
  console.log(`  Chromium's printing to our writers (SVG and PDF) warm: ${(its / report).toFixed(1)} to 1`);
  console.log(`  our whole cold process to Chromium's printing alone: ${(cold / its).toFixed(2)} to 1`);
}
