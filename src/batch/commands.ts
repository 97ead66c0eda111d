import { access, readFile, writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Location } from '../diag/print.js';
import { diagnosticJson, printDiagnostic } from '../diag/print.js';
import { readText, shippedNames, shippedText } from '../io/read.js';
import { runWatched, WatchdogError } from '../io/watched.js';
import { writeBundle, WriteRefused } from '../io/write.js';
import { isUnknown } from '../piece/explain.js';
import type { Answer, Found, Job } from '../run.js';

/** The commands: each reads files, has the packet built in a watched worker, prints, and gives its exit code. */
const SOUND = 0;
const AT_FAULT = 1;
const TROUBLE = 2;
const OURS = 70;
const LIMIT_MS = 120_000;
/** Most effort: what the watch over a packet leaves time for. */
const MOST_EFFORT = 50;
const TEMPLATES = new URL('../../templates/', import.meta.url);
const WORKER = new URL('../io/packetWorker.js', import.meta.url);

interface Said {
  readonly format: 'text' | 'json';
}
/** A command that may be told of the shop's own file, and of the boards that there are. */
interface InShop extends Said {
  readonly shop?: string | undefined;
  readonly boards?: string | undefined;
}
const out = (text: string): void => void process.stdout.write(`${text}\n`);
const err = (text: string): void => void process.stderr.write(`${text}\n`);
const coloured = (): boolean => process.stderr.isTTY === true && !process.env['NO_COLOR'];

/** Texts of the shipped definitions by name, for `from`. */
const shipped = (): Record<string, string> =>
  Object.fromEntries(shippedNames().map((name) => [name, shippedText(name) ?? '']));
const NOWHERE: Location = { line: 1, column: 1, endColumn: 1, lineText: '' };

/** Prints what was found, errors first as they stand in the file; JSON is one array on stdout. */
function printFound(answer: Answer, file: string, said: Said): void {
  if (said.format === 'json') {
    out(
      JSON.stringify(
        answer.found.map(({ finding, at, file: other }) => diagnosticJson(finding, () => at, other ?? file)),
        null,
        1,
      ),
    );
    return;
  }
  for (const { finding, at, file: other, also } of told(answer)) {
    const more = also.length > 0 ? `\n  also at line ${also.join(', ')}` : '';
    err(`${printDiagnostic(finding, () => at, other ?? file, { color: coloured() })}${more}\n`);
  }
}
/** Notes of one kind are told once, with the lines of the others. */
function told({ found }: Answer): (Found & { also: number[] })[] {
  const out: (Found & { also: number[] })[] = [];
  for (const one of found) {
    const same = (o: Found): boolean => o.finding.code === one.finding.code && o.file === one.file;
    const first = one.finding.severity === 'note' ? out.find(same) : undefined;
    if (!first) out.push({ ...one, also: [] });
    else if (one.at.line !== first.at.line && !first.also.includes(one.at.line)) first.also.push(one.at.line);
  }
  return out;
}
const printOurs = (ours: readonly Diagnostic[], file: string): void => {
  for (const o of ours.slice(0, 20)) err(`${file}: our own bug [${o.code}]: ${o.message}`);
  err(`${file}: no packet was written; the fault is the program's, not the piece's (${ours.length} in all)`);
};

async function answerFor(job: Job): Promise<Answer> {
  const terminal = process.stderr.isTTY === true;
  const show = (stage: string): void => {
    if (terminal) process.stderr.write(`\r\u001b[K${job.fileName}: ${stage}`);
  };
  try {
    return await runWatched<Answer>(WORKER, job, LIMIT_MS, show);
  } finally {
    if (terminal) process.stderr.write('\r\u001b[K');
  }
}

/** A file beside the definition as a job takes it; undefined when it cannot be read (told). */
function besideOf<K extends 'shop' | 'boards'>(said: InShop, kind: K): Pick<Job, K> | undefined {
  const path = said[kind];
  if (path === undefined) return {} as Pick<Job, K>;
  const fileName = path.split(sep).join('/');
  const got = readText(path);
  if ('text' in got) return { [kind]: { fileName, text: got.text } } as Pick<Job, K>;
  err(`${printDiagnostic(got.finding, () => NOWHERE, fileName, { color: coloured() })}\n`);
  return undefined;
}

/** Runs `act` on each file's answer, each in the shop that is named; the worst code wins. */
async function eachFile(
  files: readonly string[],
  said: InShop,
  job: (fileName: string, text: string) => Promise<Job>,
  act: (answer: Answer, file: string) => Promise<number>,
): Promise<number> {
  const shop = besideOf(said, 'shop');
  const boards = besideOf(said, 'boards');
  if (!shop || !boards) return TROUBLE;
  let worst = SOUND;
  for (const file of files) {
    const got = readText(file);
    let code = TROUBLE;
    if ('finding' in got) err(`${printDiagnostic(got.finding, () => NOWHERE, file, { color: coloured() })}\n`);
    else {
      try {
        const answer = await answerFor({ ...(await job(file.split(sep).join('/'), got.text)), ...shop, ...boards });
        printFound(answer, file, said);
        if (answer.ours.length > 0) printOurs(answer.ours, file);
        const told = answer.lines !== undefined && answer.lines.length > 0 ? await act(answer, file) : undefined;
        code = answer.ours.length > 0 ? OURS : answer.stopped ? AT_FAULT : (told ?? (await act(answer, file)));
        if (code === SOUND && answer.failed === true) code = AT_FAULT;
      } catch (e) {
        if (!(e instanceof WatchdogError)) throw e;
        err(`${file}: our own bug: ${e.message}`);
        code = OURS;
      }
    }
    worst = Math.max(worst, code);
  }
  return worst;
}

/** `build <file...>`: a packet a definition, whole or not at all. */
export async function build(
  files: readonly string[],
  said: InShop & { out: string; solids: boolean; fonts: boolean; effort: number },
): Promise<number> {
  const texts = shipped();
  const { solids, fonts } = said;
  const effort = Math.min(MOST_EFFORT, Math.max(0.1, Number.isFinite(said.effort) ? said.effort : 1));
  const wanted = { solids, fonts, effort };
  return eachFile(
    files,
    said,
    (fileName, text) => Promise.resolve({ what: 'build', fileName, text, shipped: texts, ...wanted }),
    async (answer) => {
      const target = join(said.out, answer.folder ?? 'packet');
      try {
        await writeBundle(target, answer.files ?? []);
      } catch (e) {
        const code = (e as NodeJS.ErrnoException).code;
        if (!(e instanceof WriteRefused) && code === undefined) throw e;
        err(`benchpacket: ${e instanceof WriteRefused ? e.message : `${target}: cannot be written (${code})`}`);
        return TROUBLE;
      }
      const stamped = answer.failed === true ? ', every sheet stamped NOT FOR WORKSHOP' : '';
      err(`wrote ${relative('.', target) || target}: ${answer.files?.length ?? 0} files, print packet.pdf${stamped}`);
      return SOUND;
    },
  );
}

/** `check <file...>`: what is wrong, nothing written. */
export async function check(files: readonly string[], said: InShop): Promise<number> {
  const texts = shipped();
  return eachFile(
    files,
    said,
    (fileName, text) => Promise.resolve({ what: 'check', fileName, text, shipped: texts }),
    (answer, file) => {
      const failed = answer.failed === true;
      if (said.format === 'text')
        err(`${file}: ${failed ? 'a check fails: the packet would be stamped NOT FOR WORKSHOP' : 'sound'}`);
      return Promise.resolve(SOUND);
    },
  );
}

/** `explain <file> <id>`: how a size came about, and what is judged. A piece at fault still says what it knows. */
export async function explainValue(file: string, id: string, said: InShop): Promise<number> {
  const texts = shipped();
  return eachFile(
    [file],
    { format: 'text', shop: said.shop },
    (fileName, text) => Promise.resolve({ what: 'explain', fileName, text, shipped: texts, id }),
    (answer) => {
      const lines = answer.lines ?? [];
      const unknown = isUnknown(lines);
      if (unknown) err(lines.join('\n'));
      else out(said.format === 'json' ? JSON.stringify(lines, null, 1) : lines.join('\n'));
      return Promise.resolve(unknown ? TROUBLE : SOUND);
    },
  );
}

/** `new <template> <file>`: a copy of a shipped definition to start from; an existing file is left alone. */
export async function newFrom(template: string, file: string): Promise<number> {
  if (!shippedNames().includes(template)) {
    err(`benchpacket: there is no shipped definition "${template}"; there are: ${shippedNames().join(', ')}`);
    return TROUBLE;
  }
  if (!/\.jsonc$/.test(file)) {
    err(`benchpacket: ${file}: name it .jsonc, since the shipped definitions hold comments`);
    return TROUBLE;
  }
  const there = await access(file).then(
    () => true,
    () => false,
  );
  if (there) {
    err(`benchpacket: ${file}: is there already; choose another name`);
    return TROUBLE;
  }
  try {
    await writeFile(file, shippedText(template) ?? '', { flag: 'wx' });
  } catch (e) {
    err(`benchpacket: ${file}: cannot be written (${(e as NodeJS.ErrnoException).code ?? String(e)})`);
    return TROUBLE;
  }
  err(`wrote ${file}; next: benchpacket build ${file}`);
  return SOUND;
}

/** `templates`: name and title of each shipped definition. */
export function listTemplates(): Promise<number> {
  const texts = shipped();
  for (const name of shippedNames())
    out(`${name.padEnd(18)}${/"title": "([^"]*)"/.exec(texts[name] ?? '')?.[1] ?? ''}`);
  return Promise.resolve(SOUND);
}

/** `schema`: the published JSON Schema of a definition, a shop or a boards file. */
export async function printSchema(of: 'piece' | 'shop' | 'boards'): Promise<number> {
  out((await readFile(new URL(`${of}.schema.json`, TEMPLATES), 'utf8')).trimEnd());
  return SOUND;
}
