/** Pictures compared with goldens: the file goes the way of the texts (test/golden.ts), but a few pixels may differ. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { expect } from 'vitest';
import type { Pixels } from '../report/render.js';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
/** Colour distance (0 to 1) below which two renderers' edges count as the same. */
export const THRESHOLD = 0.3;

/** How many pixels differ between two pictures of one size, edges (antialiasing) left out of the count. Throws when the sizes differ. */
export const different = (a: Pixels, b: Pixels): number =>
  pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: THRESHOLD });

/** Grey PNG, as small as it goes: our sheets are ink on white. */
export function greyPng({ width, height, data }: Pixels): Uint8Array {
  const png = new PNG({ width, height });
  png.data = Buffer.from(data);
  return PNG.sync.write(png, { colorType: 0, inputColorType: 6, deflateLevel: 9 });
}
/** Compares pixels with the accepted picture of that name; at most `share` of them may differ. */
export function expectPicture(name: string, pixels: Pixels, share: number): void {
  const [wanted, got] = [join(root, 'golden', name), join(root, 'test', 'out', 'golden', name)];
  const before = existsSync(wanted) ? PNG.sync.read(readFileSync(wanted)) : undefined;
  const sameSize = before?.width === pixels.width && before.height === pixels.height;
  const off = before && sameSize ? different(before, pixels) : Infinity;
  const most = Math.floor(share * pixels.width * pixels.height);
  if (off <= most) return rmSync(got, { force: true });
  mkdirSync(dirname(got), { recursive: true });
  writeFileSync(got, greyPng(pixels));
  expect(off, `pixels of golden ${name} that differ; look at test/out/golden/${name}`).toBeLessThanOrEqual(most);
}
