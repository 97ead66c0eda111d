import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { drawSheets } from '../../src/drawings/index.js';
import type { GroupItem, Item, Sheet, TextItem } from '../../src/drawings/picture.js';
import { createKernel } from '../../src/geom/kernel.js';
import { loadFaces } from '../../src/io/fonts.js';
import { layoutPiece } from '../../src/layout/layout-piece.js';
import { makeLists } from '../../src/making/making.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { makeSolids } from '../../src/solids/make.js';
import { textWidth } from '../../src/type/measure.js';

const faces = loadFaces();
const root = new URL('../..', import.meta.url).pathname;
const folder = (name: string): string[] =>
  readdirSync(`${root}/${name}`)
    .filter((f) => f.endsWith('.jsonc'))
    .map((f) => `${root}/${name}/${f}`);
const files = [...folder('test/specimens/plans'), ...folder('test/specimens/small'), ...folder('templates/pieces')];

async function sheetsOf(file: string): Promise<Sheet[]> {
  const reading = readDefinition(readFileSync(file, 'utf8'), file, { shipped: () => undefined });
  const piece = reading.value && resolvePiece(reading.value).value;
  if (!piece) throw new Error(`${file} does not resolve`);
  const kernel = await createKernel();
  try {
    const solids = makeSolids(piece, kernel).value;
    const layout = layoutPiece(piece).value;
    const lists = solids && makeLists(piece, solids.parts).value;
    if (!solids || !layout || !lists) throw new Error(file);
    return drawSheets({ piece, solids, kernel, layout, lists, faces, hash: '7f3c91', findings: [] });
  } finally {
    kernel.dispose();
  }
}
const flat = (items: readonly Item[]): Exclude<Item, GroupItem>[] =>
  items.flatMap((i) => (i.kind === 'group' ? (i.clip ? [] : flat(i.items)) : [i]));
const groups = (items: readonly Item[]): GroupItem[] =>
  items.flatMap((i) => (i.kind === 'group' ? [i, ...groups(i.items)] : []));

interface Box {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly f: number;
}
const boxes = (sheet: Sheet): Box[] =>
  flat(sheet.picture)
    .filter((i): i is TextItem => i.kind === 'text')
    .map((t) => {
      const w = t.hidden ?? textWidth(faces[t.face], t.string.trimEnd(), t.size);
      return { text: t.string, x: t.x, y: t.y - 0.69 * t.size, r: t.x + w, f: t.y };
    });

/** Real pieces from end to end: what a reader would see at once is tested by measure. */
describe.each(files.map((f) => [f.split('/').at(-1) as string, f]))('sheets of %s', (_, file) => {
  it('keep text inside the frame, apart, and dimensions true', async () => {
    const sheets = (await sheetsOf(file)).filter((s) => s.folder !== 'cards');
    const faults: string[] = [];
    for (const sheet of sheets) {
      const all = boxes(sheet);
      all.forEach((b, i) => {
        if (b.x < 18.4 || b.r > 268.4 || b.y < 10.45 || b.f > 205.45) faults.push(`${sheet.id}: "${b.text}" outside`);
        for (const o of all.slice(i + 1)) {
          const over = Math.min(b.r, o.r) - Math.max(b.x, o.x);
          const deep = Math.min(b.f, o.f) - Math.max(b.y, o.y);
          if (over > 0.05 && deep > 0.05) faults.push(`${sheet.id}: "${b.text}" on "${o.text}"`);
        }
      });
      for (const g of groups(sheet.picture)) {
        if (g.claim?.kind !== 'distance') continue;
        const { nm, from, to, scale } = g.claim;
        const paper = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]));
        if (Math.abs(paper - (nm / 1e6) * scale) > 0.005) faults.push(`${sheet.id}: ${g.id} is not its length`);
      }
    }
    expect(faults).toEqual([]);
  }, 60_000);
});
