import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { brokenEdges } from '../../src/drawings/broken.js';
import { drawSheets } from '../../src/drawings/index.js';
import type { GroupItem, Item, Sheet } from '../../src/drawings/picture.js';
import { radiusOf } from '../../src/drawings/sheets/shapeNotes.js';
import { planesOf } from '../../src/drawings/stations.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { Kernel } from '../../src/geom/solid.js';
import { loadFaces } from '../../src/io/fonts.js';
import { layoutPiece } from '../../src/layout/layout-piece.js';
import { inches } from '../../src/lengths/length.js';
import { makeLists } from '../../src/making/making.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { makeSolids } from '../../src/solids/make.js';

const faces = loadFaces();
let kernel: Kernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

function sheetsOf(path: string): Sheet[] {
  const file = new URL(`../../${path}.jsonc`, import.meta.url);
  const reading = readDefinition(readFileSync(file, 'utf8'), `${path}.jsonc`);
  const piece = reading.value && resolvePiece(reading.value).value;
  const solids = piece && makeSolids(piece, kernel).value;
  const layout = piece && layoutPiece(piece).value;
  const lists = piece && solids && makeLists(piece, solids.parts).value;
  if (!solids || !layout || !lists) throw new Error(path);
  return drawSheets({ piece, solids, kernel, layout, lists, faces, hash: '7f3c91', findings: [] });
}
const groups = (items: readonly Item[]): GroupItem[] =>
  items.flatMap((i) => (i.kind === 'group' ? [i, ...groups(i.items)] : []));
/** Sizes that details claim, inches. */
const sizes = (sheets: readonly Sheet[]): Map<string, number[]> => {
  const out = new Map<string, number[]>();
  for (const g of sheets.flatMap((s) => groups(s.picture))) {
    const letter = /^detail-([a-z])-\d+$/.exec(g.id)?.[1];
    if (letter !== undefined && g.claim?.kind === 'distance')
      out.set(letter, [...(out.get(letter) ?? []), g.claim.nm / 25_400_000]);
  }
  return out;
};
/** The letter of the detail that is called so. */
const letterOf = (sheets: readonly Sheet[], name: RegExp): string =>
  sheets
    .flatMap((s) => groups(s.picture))
    .find((g) => g.role === 'detail' && name.test(g.alt ?? ''))
    ?.id.slice(-1) ?? '';
const names = (sheets: readonly Sheet[]): string[] =>
  sheets.flatMap((s) => groups(s.picture).flatMap((g) => (g.role === 'detail' ? [g.alt ?? ''] : [])));

describe('details', () => {
  it('of a chest: reveal, front, slide and groove of a drawer; tail and neck of a sliding dovetail (bit 1/2, 14 degrees)', () => {
    const sheets = sheetsOf('templates/pieces/tall-chest');
    expect(names(sheets).some((n) => /^Corner of D\d$/.test(n))).toBe(true);
    expect(names(sheets).some((n) => /^Sliding dovetail, [BR]\d in A1$/.test(n))).toBe(true);
    const said = sizes(sheets);
    // From the definition: reveal 1/16, front 3/4, side 7/8, box side 1/2.
    expect(said.get(letterOf(sheets, /^Corner of/))).toEqual(expect.arrayContaining([1 / 16, 3 / 4, 7 / 8, 1 / 2]));
    // Rail 3/4, gaps 1/16 above and 5/64 below it, groove 1/4 deep in two steps (panel enters 7/32, free 1/32).
    expect(said.get(letterOf(sheets, /^Foot of/))).toEqual(
      expect.arrayContaining([3 / 4, 1 / 16, 5 / 64, 7 / 32, 1 / 32]),
    );
    // The socket is as deep as 3/8; its tail 1/2 at the floor less 2 x 3/8 x tan 14 degrees, 0.3130, is 5/16 at the neck.
    const joint = [...said.values()].find((v) => v.includes(5 / 16) && v.includes(3 / 8) && v.includes(1 / 2));
    expect(joint).toBeDefined();
  }, 60_000);
  it('of a piece without drawers: its joint', () => {
    const sheets = sheetsOf('test/specimens/small/leg-and-rail');
    expect(names(sheets)[0]).toMatch(/^Mortise and tenon, R1 in L1$/);
    // Tenon 1 1/16 long and 1 1/4 wide, mortise 1/16 deeper, haunch 3/4 wide.
    expect(sizes(sheets).get('z')).toEqual(expect.arrayContaining([1 + 1 / 16, 1.25, 1 / 16, 3 / 4]));
  });
  it('are lettered as they are read, and each is circled on a section, those that lie together as one', () => {
    for (const file of [
      'templates/pieces/nightstand',
      'templates/pieces/tall-chest',
      'templates/pieces/letter-cabinet',
    ]) {
      const sheets = sheetsOf(file);
      const letters = sheets.flatMap((s) =>
        groups(s.picture).flatMap((g) => (g.role === 'detail' ? [g.id.slice(-1)] : [])),
      );
      expect([...letters].sort().reverse()).toEqual(letters);
      const section = sheets.find((s) => s.id === 'sections');
      const words = (section?.picture ?? []).flatMap((i) => (i.kind === 'text' ? [i.string] : []));
      for (const letter of letters) expect(words).toContain(letter.toUpperCase());
    }
  }, 60_000);
  it('give no part-mark its letter', () => {
    const sheets = sheetsOf('test/specimens/small/corner-box');
    for (const letter of sizes(sheets).keys()) expect(['a', 'b']).not.toContain(letter);
  });
});

describe('exact coordinates', () => {
  it('are those of the recipe, placed; nothing of what leans', () => {
    const box = { op: 'box', at: [[0, 5], [1, 7], [2, 9]] } as const; // prettier-ignore
    const quarter = { rotation: [[0, -1, 0], [1, 0, 0], [0, 0, 1]], origin: [100, 0, 0] } as const; // prettier-ignore
    // A quarter turn about the upright axis: x' = 100 - y, y' = x.
    expect(planesOf(box, quarter).map((s) => [...s].sort((a, b) => a - b))).toEqual([[93, 99], [0, 5], [2, 9]]); // prettier-ignore
    const lean = { rotation: [[0.8, -0.6, 0], [0.6, 0.8, 0], [0, 0, 1]], origin: [0, 0, 0] } as const; // prettier-ignore
    expect(planesOf({ op: 'placed', by: lean, of: box }).map((s) => s.size)).toEqual([0, 0, 0]);
  });
});

describe('an arc', () => {
  /** By hand: chord 34 1/4, rise 1 3/4: 34.25² / 14 + 7/8 = 84.665; to 1/64, 84 43/64. */
  it('has the radius of its chord and rise', () => {
    expect(radiusOf(inches(34.25), inches(1.75), 396_875) / 25_400_000).toBe(84 + 43 / 64);
  });
});

describe('elevations', () => {
  it('say how wide compartments are: (418 - 2 x 12 - 3 x 6) / 4 = 94 mm', () => {
    const sheet = sheetsOf('templates/pieces/letter-cabinet').find((s) => s.id === 'elevations');
    const said = groups(sheet?.picture ?? []).flatMap((g) => (g.claim?.kind === 'distance' ? [g.claim.nm / 1e6] : []));
    expect(said.filter((mm) => mm === 94).length).toBe(4);
  }, 60_000);
  it('say where tapers begin and end, once for legs that are alike', () => {
    const sheet = sheetsOf('templates/pieces/nightstand').find((s) => s.id === 'elevations');
    const words = (sheet?.picture ?? []).flatMap((i) => (i.kind === 'text' ? [i.string] : [])).join(' ');
    expect(words.replace(/\s+/g, ' ')).toContain('L1–L4 taper below 7 1/2 to 7/8 at the foot');
  }, 60_000);
});
describe('a window broken off', () => {
  const frame = { x: 0, y: 0, w: 20, h: 20 };
  const square = (x: number, y: number, s: number) => [[[x, y], [x + s, y], [x + s, y + s], [x, y + s]]] as const; // prettier-ignore
  it('has its freehand line only where wood crosses its edge', () => {
    expect(brokenEdges(frame, [square(5, 5, 10)])).toEqual([]);
    // Wood over the right edge from 5 to 15 high: one line 10 long.
    const [line, ...rest] = brokenEdges(frame, [square(15, 5, 10)]);
    expect(rest).toEqual([]);
    const ys = line?.kind === 'stroke' ? line.d.flatMap((s) => (s[0] === 'Z' ? [] : [s[2] as number])) : [];
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([expect.closeTo(5, 6), expect.closeTo(15, 6)]);
  });
});
