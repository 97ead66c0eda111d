import { afterAll, describe, expect, it, vi } from 'vitest';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { sha256 } from '../../src/io/hash.js';
import type { Answer } from '../../src/run.js';
import { buildPacket } from '../../src/run.js';
import { definitionText } from './packet.js';

/** Every kernel that a run makes, so that its handles can be counted afterwards. */
const kernels = vi.hoisted(() => [] as CountedKernel[]);
vi.mock('../../src/geom/kernel.js', async (original) => {
  const real = await original<typeof import('../../src/geom/kernel.js')>();
  const createKernel = async (): Promise<CountedKernel> => {
    const kernel = await real.createKernel();
    kernels.push(kernel);
    return kernel;
  };
  return { ...real, createKernel };
});
const build = (name: string, what: 'build' | 'check' = 'build', text = definitionText(name)): Promise<Answer> =>
  buildPacket({ what, fileName: `${name}.jsonc`, text, shipped: {}, solids: true });
const digest = (answer: Answer): Record<string, string> =>
  Object.fromEntries((answer.files ?? []).map((f) => [f.path, sha256(f.bytes)]));
const open = (): number[] => kernels.map((k) => k.handles().made - k.handles().freed);

describe('one process', () => {
  it('gives the same bytes whatever was built before: nightstand, tall chest, nightstand', async () => {
    const first = await build('nightstand');
    const between = await build('tall-chest');
    const again = await build('nightstand');
    for (const answer of [first, between, again]) expect([answer.stopped, answer.ours]).toEqual([false, []]);
    const files = digest(first);
    expect(Object.keys(files).length).toBeGreaterThan(40);
    expect(digest(again)).toEqual(files);
    expect(digest(between)['packet.pdf']).not.toBe(files['packet.pdf']);
    expect(kernels).toHaveLength(3);
    expect(kernels.every((k) => k.handles().made > 100)).toBe(true);
    expect(open()).toEqual([0, 0, 0]);
  });
  it('frees every handle where a piece is only checked, and where it is at fault', async () => {
    kernels.length = 0;
    expect((await build('wall-shelf', 'check')).stopped).toBe(false);
    // A block that stands in the side: found on the solids, after the kernel has been at work.
    const block =
      '"block": { "stock": "maple", "grain": "up", "across": ["9", "27"], "deep": ["20", "60"], "up": ["50", "90"] }';
    const faulty = definitionText('corner-box').replace('"parts": {', `"parts": {\n    ${block},`);
    const answer = await build('corner-box', 'build', faulty);
    const errors = answer.found.filter((f) => f.finding.severity === 'error').map((f) => f.finding.code);
    expect([answer.stopped, answer.files, errors]).toEqual([true, undefined, ['parts-overlap']]);
    expect(kernels).toHaveLength(2);
    expect(open()).toEqual([0, 0]);
  });
});
afterAll(() => {
  vi.restoreAllMocks();
});
