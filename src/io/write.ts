/**
 * Writes a packet whole or not at all. It is built in a folder beside its target and flushed to the disk; the old packet is moved aside, the new
 * one renamed in, the old one deleted (a rename onto a folder that is not empty fails). What a crash leaves behind is put right at the next start.
 */
import { access, mkdir, open, readFile, readdir, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';

export interface OutputFile {
  /** Relative to the packet, with forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
}
/** Thrown when the target must not be touched; the message says why and what to do. */
export class WriteRefused extends Error {}

export type Step = 'built' | 'aside' | 'in place' | 'done';
export interface WriteOptions {
  /** Called after each step; a test stops here. */
  readonly after?: (step: Step) => void | Promise<void>;
  /** Whether a process is still running. */
  readonly alive?: (pid: number) => boolean;
}
const MANIFEST = 'manifest-sha256.txt';

/**
 * Puts `files` at `target` in place of the packet that is there. A folder that holds anything which is not in the old packet's manifest is left alone:
 * WriteRefused. Any other error leaves the old packet as it was.
 */
export async function writeBundle(
  target: string,
  files: readonly OutputFile[],
  options: WriteOptions = {},
): Promise<void> {
  const at = resolve(target);
  const after = options.after ?? (() => undefined);
  files.forEach(({ path }) => refuseStray(path));
  await recover(at, options);
  await refuseForeign(at);
  const [fresh, aside] = [beside(at, 'new', process.pid), beside(at, 'old', process.pid)];
  await mkdir(dirname(at), { recursive: true });
  try {
    await build(fresh, files);
    await after('built');
    const old = await exists(at);
    if (old) await rename(at, aside);
    await after('aside');
    await rename(fresh, at).catch(async (error: unknown) => {
      if (old) await rename(aside, at);
      throw error;
    });
    await flushFolder(dirname(at));
    await after('in place');
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
  await rm(aside, { recursive: true, force: true });
  await after('done');
}

/** Puts right what a crash left: an old packet that stands aside with no packet in its place is moved back; half-built ones are deleted. */
export async function recover(target: string, options: WriteOptions = {}): Promise<void> {
  const at = resolve(target);
  const alive = options.alive ?? isRunning;
  for (const left of await leftovers(at)) {
    const ours = left.pid === process.pid;
    if (!ours && alive(left.pid))
      throw new WriteRefused(`${at} is being written by process ${left.pid}; wait for it, or delete ${left.path}`);
    const taken = await exists(at);
    if (left.kind === 'old' && taken && !(await exists(join(at, MANIFEST))))
      throw new WriteRefused(
        `the last packet stands aside at ${left.path}, and ${at} is something else; move that away first`,
      );
    if (left.kind === 'old' && !taken) await rename(left.path, at);
    else await rm(left.path, { recursive: true, force: true });
  }
}

type Kind = 'new' | 'old';
/** Folders beside the target carry the number of the process that made them. */
const beside = (at: string, kind: Kind, pid: number): string => join(dirname(at), `.${basename(at)}.${kind}-${pid}`);
interface Leftover {
  readonly path: string;
  readonly kind: Kind;
  readonly pid: number;
}
async function leftovers(at: string): Promise<readonly Leftover[]> {
  const names = (await exists(dirname(at))) ? (await readdir(dirname(at))).sort() : [];
  return names.flatMap((name): Leftover[] => {
    const prefix = `.${basename(at)}.`;
    const parts = name.startsWith(prefix) ? /^(new|old)-(\d+)$/.exec(name.slice(prefix.length)) : null;
    return parts ? [{ path: join(dirname(at), name), kind: parts[1] as Kind, pid: Number(parts[2]) }] : [];
  });
}
function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

function refuseStray(path: string): void {
  const parts = path.split('/');
  const stray = parts.some((p) => p === '' || p === '.' || p === '..') || /[\\:\0]/.test(path);
  if (stray) throw new WriteRefused(`a file of the packet would lie outside it: ${JSON.stringify(path)}`);
}
/** Nothing that the program did not write is ever deleted. */
async function refuseForeign(at: string): Promise<void> {
  if (!(await exists(at))) return;
  const found = await listFiles(at, '').catch((error: unknown) => {
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') throw new WriteRefused(`${at} is a file, not a folder`);
    throw error;
  });
  if (found.length === 0) return;
  const text = await readFile(join(at, MANIFEST), 'utf8').catch(() => undefined);
  if (text === undefined)
    throw new WriteRefused(`${at} is not a packet (it has no ${MANIFEST}); name another folder, or empty it`);
  const ours = new Set([MANIFEST, ...text.split('\n').map((line) => line.slice(66))]);
  const foreign = found.filter((path) => !ours.has(path));
  if (foreign.length === 0) return;
  const named = foreign.slice(0, 3).join(', ') + (foreign.length > 3 ? ` and ${foreign.length - 3} more` : '');
  throw new WriteRefused(`${at} holds files that are not the packet's: ${named}; move them out first`);
}
async function listFiles(root: string, under: string): Promise<readonly string[]> {
  const entries = await readdir(join(root, under), { withFileTypes: true });
  const found = entries.map((e) => {
    const path = under === '' ? e.name : `${under}/${e.name}`;
    return e.isDirectory() ? listFiles(root, path) : Promise.resolve([path]);
  });
  return (await Promise.all(found)).flat().sort();
}

/** Writes the files into a new folder and flushes them and their folders. */
async function build(root: string, files: readonly OutputFile[]): Promise<void> {
  await mkdir(root);
  const folders = new Set([root]);
  for (const { path, bytes } of files) {
    const at = join(root, ...path.split('/'));
    for (let folder = dirname(at); folder !== root; folder = dirname(folder)) folders.add(folder);
    await mkdir(dirname(at), { recursive: true });
    const handle = await open(at, 'wx');
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
  }
  for (const folder of [...folders].sort().reverse()) await flushFolder(folder);
}
/** Flushes a folder's entries; some systems cannot open a folder, and need not. */
async function flushFolder(path: string): Promise<void> {
  const handle = await open(path, 'r').catch(() => undefined);
  try {
    await handle?.sync().catch(() => undefined);
  } finally {
    await handle?.close();
  }
}
