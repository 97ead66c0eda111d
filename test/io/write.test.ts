import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256, shortHash } from '../../src/io/hash.js';
import { recover, writeBundle, WriteRefused, type OutputFile, type Step } from '../../src/io/write.js';

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'packet-'));
});
afterEach(() => rm(root, { recursive: true, force: true }));

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
function packet(text: string): OutputFile[] {
  const files = [
    { path: 'packet.pdf', bytes: bytes(`${text} pdf`) },
    { path: 'cards/01-a1.svg', bytes: bytes(`${text} card`) },
  ];
  const manifest = files.map((f) => `${sha256(f.bytes)}  ${f.path}\n`).join('');
  return [...files, { path: 'manifest-sha256.txt', bytes: bytes(manifest) }];
}
const target = (): string => join(root, 'out', 'chest');
const text = (path: string): Promise<string> => readFile(join(target(), path), 'utf8');
/** A crash: the step is reached and nothing runs after it. */
const stopAfter = (where: Step): Promise<void> =>
  new Promise((reached) => {
    const after = (step: Step): void | Promise<never> => {
      if (step !== where) return;
      reached();
      return new Promise<never>(() => undefined);
    };
    void writeBundle(target(), packet('new'), { after });
  });

describe('a packet is written whole or not at all', () => {
  it('writes into a new place, and replaces the whole of an older packet', async () => {
    await writeBundle(target(), [...packet('old'), { path: 'lists/gone.csv', bytes: bytes('x') }].slice(0, 3));
    expect(await text('cards/01-a1.svg')).toBe('old card');
    await writeBundle(
      target(),
      packet('new').filter((f) => f.path !== 'cards/01-a1.svg'),
    );
    expect(await readdir(target())).toEqual(['manifest-sha256.txt', 'packet.pdf']);
    expect(await readdir(join(root, 'out'))).toEqual(['chest']);
  });
  it.each(['built', 'aside', 'in place'] as const)('after a crash when %s there is one whole packet', async (step) => {
    await writeBundle(target(), packet('old'));
    await stopAfter(step);
    await recover(target());
    const whole = step === 'in place' ? 'new' : 'old';
    expect(await text('packet.pdf')).toBe(`${whole} pdf`);
    expect(await text('cards/01-a1.svg')).toBe(`${whole} card`);
    expect(await readdir(join(root, 'out'))).toEqual(['chest']);
  });
  it('the next packet is written after a crash without a word', async () => {
    await writeBundle(target(), packet('old'));
    await stopAfter('aside');
    await writeBundle(target(), packet('newer'));
    expect(await text('packet.pdf')).toBe('newer pdf');
  });
  it('a fault leaves the old one', async () => {
    await writeBundle(target(), packet('old'));
    const after = (step: Step): void => {
      if (step === 'built') throw new Error('the disk is full');
    };
    await expect(writeBundle(target(), packet('new'), { after })).rejects.toThrow('the disk is full');
    expect(await text('packet.pdf')).toBe('old pdf');
    expect(await readdir(join(root, 'out'))).toEqual(['chest']);
  });
  it('the old one is kept when something else takes its place between the two moves', async () => {
    await writeBundle(target(), packet('old'));
    const after = async (step: Step): Promise<void> => {
      if (step !== 'aside') return;
      await mkdir(target());
      await writeFile(join(target(), 'letter.txt'), 'mine');
    };
    await expect(writeBundle(target(), packet('new'), { after })).rejects.toThrow();
    await expect(recover(target())).rejects.toThrow(/stands aside/);
    await rm(target(), { recursive: true });
    await recover(target());
    expect(await text('packet.pdf')).toBe('old pdf');
  });
});

describe('what is refused', () => {
  it("a folder that is not a packet, or holds files of the maker's own", async () => {
    await mkdir(target(), { recursive: true });
    await writeFile(join(target(), 'letter.txt'), 'mine');
    await expect(writeBundle(target(), packet('new'))).rejects.toThrow(/not a packet/);
    await rm(target(), { recursive: true });
    await writeBundle(target(), packet('old'));
    await writeFile(join(target(), 'cards', 'photo.jpg'), 'mine');
    await expect(writeBundle(target(), packet('new'))).rejects.toThrow(/cards\/photo\.jpg/);
    expect(await text('cards/photo.jpg')).toBe('mine');
    expect(await text('packet.pdf')).toBe('old pdf');
  });
  it('paths that lead outside', async () => {
    for (const path of ['../a', '/a', 'a//b', 'a\\b', 'c:a', './a'])
      await expect(writeBundle(target(), [{ path, bytes: bytes('') }])).rejects.toThrow(WriteRefused);
  });
  it('a packet that another process is writing', async () => {
    await mkdir(join(root, 'out', '.chest.new-4242'), { recursive: true });
    await expect(writeBundle(target(), packet('new'), { alive: () => true })).rejects.toThrow(/process 4242/);
    await writeBundle(target(), packet('new'), { alive: () => false });
    expect(await text('packet.pdf')).toBe('new pdf');
  });
});

// FIPS 180-2, appendix B.1: the digest of "abc".
it('SHA-256', () => {
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(shortHash(sha256(bytes('abc')))).toBe('ba7816');
});
