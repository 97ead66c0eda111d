import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  existsSync,
  copyFileSync,
  mkdirSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const main = join(root, 'dist', 'main.js');
const stand = join(root, 'templates', 'pieces', 'nightstand.jsonc');
let dir = '';
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'benchpacket-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
function run(args: readonly string[], env: NodeJS.ProcessEnv = {}, cwd = dir): Promise<Ran> {
  return new Promise((resolve) => {
    execFile(process.execPath, [main, ...args], { cwd, env: { ...process.env, ...env } }, (e, out, err) =>
      resolve({ code: e ? Number(e.code) : 0, out, err }),
    );
  });
}
const walk = (at: string): string[] =>
  readdirSync(at)
    .sort()
    .flatMap((n) => (statSync(join(at, n)).isDirectory() ? walk(join(at, n)) : [join(at, n)]));
const digest = (at: string): Record<string, string> =>
  Object.fromEntries(
    walk(at).map((f) => [relative(at, f), createHash('sha256').update(readFileSync(f)).digest('hex')]),
  );

describe('commands', () => {
  it('bare and --help show an example first', async () => {
    const [bare, help] = await Promise.all([run([]), run(['--help'])]);
    expect(bare.code).toBe(0);
    expect(help.out).toMatch(/^benchpacket turns a definition[^]*benchpacket new nightstand/);
    expect(bare.out).toContain('benchpacket build my-nightstand.jsonc');
  });
  it('templates lists the shipped pieces; new copies one and never over a file', async () => {
    const listed = await run(['templates']);
    expect(listed.out).toMatch(/letter-cabinet[^]*nightstand[^]*tall-chest/);
    expect((await run(['new', 'nightstand', 'mine.jsonc'])).code).toBe(0);
    expect(readFileSync(join(dir, 'mine.jsonc'), 'utf8')).toBe(readFileSync(stand, 'utf8'));
    const again = await run(['new', 'nightstand', 'mine.jsonc']);
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('is there already')]);
    expect((await run(['new', 'nightstnd', 'other.jsonc'])).code).toBe(2);
  });
  it('explain says how a value came about', async () => {
    const said = await run(['explain', stand, 'drawer_rail.top']);
    expect(said.code).toBe(0);
    expect(said.out).toMatch(/drawer_rail\.top = 20 in, derived: front_top\.bottom - 4 1\/2/);
    expect((await run(['explain', stand, 'no_such'])).code).toBe(2);
    expect((await run(['explain', stand, 'sag-latr'])).err).toContain('Did you mean "sag-later"?');
    const judged = await run(['explain', stand, 'sag-later', 'of', 'shelf']);
    expect([judged.code, judged.out]).toEqual([0, expect.stringMatching(/^sag-later passes: S1 [^]*\n {2}rule: /)]);
  });
  it('schema prints the published schema', async () => {
    expect((await run(['schema'])).out.trim()).toBe(
      readFileSync(join(root, 'templates', 'piece.schema.json'), 'utf8').trim(),
    );
    expect((await run(['schema', 'shop'])).out.trim()).toBe(
      readFileSync(join(root, 'templates', 'shop.schema.json'), 'utf8').trim(),
    );
  });
  it('--shop: faults of the shop are told in its file; one that is not there is trouble', async () => {
    const sample = readFileSync(join(root, 'templates', 'shop', 'sample-shop.jsonc'), 'utf8');
    writeFileSync(join(dir, 'shop.jsonc'), sample.replace('"lift": 50', '"lift": 5000'));
    const bad = await run(['check', stand, '--shop', 'shop.jsonc'], { NO_COLOR: '1' });
    expect(bad.code).toBe(1);
    const line = sample.split('\n').findIndex((l) => l.includes('"lift"')) + 1;
    expect(bad.err).toContain(`shop.jsonc:${line}:11: error[number-given]`);
    expect((await run(['check', stand, '--shop', 'none.jsonc'])).code).toBe(2);
  });
  it('exit codes: 2 for usage and files, 1 for the piece', async () => {
    expect((await run(['bild', 'x.jsonc'])).code).toBe(2);
    expect((await run(['build', 'not-there.jsonc'])).code).toBe(2);
    writeFileSync(
      join(dir, 'bad.jsonc'),
      readFileSync(stand, 'utf8').replace('"9 1/2"', '"9 1/2 + rox"').replace('- 9 1/2', '- 9-1/2'),
    );
    const bad = await run(['check', 'bad.jsonc'], { NO_COLOR: '1' });
    expect(bad.code).toBe(1);
    expect(bad.err).toMatch(/bad\.jsonc:\d+:\d+: error\[/);
    expect(bad.err).toContain('^');
    const json = await run(['check', 'bad.jsonc', '--format', 'json']);
    expect((JSON.parse(json.out) as { code: string; line: number }[])[0]?.line).toBeGreaterThan(1);
  });
  it('a check that fails: the packet is written, stamped, and the exit code is 1', async () => {
    // A crib stands under mandatory rules (16 CFR 1219, 1220) that these checks do not cover.
    const crib = readFileSync(stand, 'utf8').replace('"format": 1,', '"format": 1, "use": { "kind": "crib" },');
    writeFileSync(join(dir, 'crib.jsonc'), crib);
    const [built, checked] = [await run(['build', 'crib.jsonc', '--out', 'f']), await run(['check', 'crib.jsonc'])];
    expect([built.code, checked.code]).toEqual([1, 1]);
    expect(built.err).toMatch(/fail\[outside-checks\][^]*wrote f\/[^\n]*every sheet stamped NOT FOR WORKSHOP/);
    expect(checked.err).toContain('stamped NOT FOR WORKSHOP');
    const packet = join(dir, 'f', readdirSync(join(dir, 'f'))[0] as string);
    const sheets = walk(packet).filter((f) => f.endsWith('.svg'));
    expect(sheets.length).toBeGreaterThan(10);
    for (const sheet of sheets) expect(readFileSync(sheet, 'utf8'), sheet).toContain('WORKSHOP');
  });
});

describe('a packet', () => {
  it('is the same to the byte in another folder, zone, language and order, and is whole', async () => {
    const other = join(dir, 'elsewhere');
    mkdirSync(other);
    copyFileSync(stand, join(other, 'renamed.jsonc'));
    const cabinet = join(root, 'templates', 'pieces', 'letter-cabinet.jsonc');
    const one = await run(['build', stand, cabinet, '--out', 'a', '--solids'], {
      TZ: 'Pacific/Auckland',
      LANG: 'de_DE.UTF-8',
    });
    const two = await run(
      ['build', cabinet, 'renamed.jsonc', '--out', 'b', '--solids'],
      { TZ: 'America/New_York', LC_ALL: 'C' },
      other,
    );
    expect([one.code, one.err.includes('our own bug'), two.code]).toEqual([0, false, 0]);
    const packet = 'C-030-nightstand-A';
    const [a, b] = [join(dir, 'a', packet), join(other, 'b', packet)];
    expect(digest(a)).toEqual(digest(b));
    const files = Object.keys(digest(a));
    for (const want of [
      /^packet\.pdf$/,
      /^drawings\/.*\.svg$/,
      /^cards\/.*\.svg$/,
      /^nesting\/.*\.svg$/,
      /^lists\/cut-list\.csv$/,
      /^lists\/hardware\.csv$/,
      /^piece\.json$/,
      /^findings\.json$/,
      /^solids\/.*\.stl$/,
    ])
      expect(
        files.some((f) => want.test(f)),
        String(want),
      ).toBe(true);
    for (const line of readFileSync(join(a, 'manifest-sha256.txt'), 'utf8').trimEnd().split('\n')) {
      const [hash, path] = line.split('  ') as [string, string];
      expect(
        createHash('sha256')
          .update(readFileSync(join(a, path)))
          .digest('hex'),
      ).toBe(hash);
    }
  });
  it('stays as it was when the piece is at fault', async () => {
    const file = join(dir, 'stays.jsonc');
    copyFileSync(stand, file);
    await run(['build', file, '--out', 'kept']);
    const packet = join(dir, 'kept', 'C-030-nightstand-A');
    const before = digest(packet);
    writeFileSync(file, readFileSync(stand, 'utf8').replace('"leg": "1 1/2"', '"leg": "0"'));
    const ran = await run(['build', file, '--out', 'kept']);
    expect(ran.code).toBe(1);
    expect(digest(packet)).toEqual(before);
    expect(readdirSync(join(dir, 'kept'))).toEqual(['C-030-nightstand-A']);
    expect(existsSync(join(packet, 'packet.pdf'))).toBe(true);
  });
});
