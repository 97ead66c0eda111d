import { readdirSync, statSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { cardTexts } from '../src/proof/cardRegions.js';
import { pdfTexts } from '../src/proof/pdfTexts.js';
import { expectGolden } from './golden.js';
import { compact } from './packet/compact.js';
import { drawn, pdfOf, sheetOf, SMALL, svgsOf } from './packet/packet.js';
import type { Packet } from './packet/packet.js';
import { expectPicture } from './packet/pictures.js';
import { pdfPixels } from './report/render.js';

/**
 * What each stage makes of three small pieces, in the order of the flow: the first golden that differs is the stage to look
 * at. Whole texts, since a figure that wanders by a 64th is a wrong cut.
 */
const SHEETS: Readonly<Record<(typeof SMALL)[number], readonly string[]>> = {
  'wall-shelf': ['elevations', 'lists', 'shopping-1'],
  'corner-box': ['nesting-1', 'card'],
  'leg-and-rail': ['sections', 'lists', 'milling', 'checks'],
};
const tenth = (v: number): number => Math.round(v * 10) / 10 + 0;

describe.each(SMALL)('%s', (name) => {
  let packet: Packet;
  beforeAll(async () => {
    packet = await drawn(name);
  });
  it('2 piece', () => expectGolden(`${name}/02-piece.json`, compact(packet.piece, packet.piece.units)));
  it('3 recipes: keys, volumes in mm3 and bounds in mm', () => {
    const parts = packet.solids.parts.map(({ id, key, volume, bounds }) => ({
      id,
      key,
      volume: `${tenth(volume)} mm3`,
      bounds: bounds.map((s) => s.join(' to ')),
    }));
    expectGolden(`${name}/03-recipes.json`, compact(parts, packet.piece.units));
  });
  it('7 words of the cards, as they read back from the PDF', async () => {
    const cards = packet.sheets.filter((s) => s.folder === 'cards');
    const read = cardTexts(pdfTexts(await pdfOf(packet, cards)));
    expect(read.length).toBeGreaterThanOrEqual(cards.length);
    expectGolden(`${name}/07-cards.txt`, `${read.map((c) => c.text).join('\n\n')}\n`);
  });
  it.each(SHEETS[name])('8 %s.svg', async (id) => {
    // The first card, however cards are paired on pages.
    const sheet = id === 'card' ? packet.sheets.find((s) => s.folder === 'cards') : sheetOf(packet, id);
    const [svg = ''] = await svgsOf(sheet ? [sheet] : []);
    // One element a line, so that a difference can be read.
    expectGolden(`${name}/08-${id}.svg`, svg.replace(/></g, '>\n<'));
  });
});

describe('3 volumes by hand', () => {
  const CUBIC_INCH = 25.4 ** 3;
  it.each([
    // An end, 3/4 x 8 x 12, less a dado 1/4 deep, 3/4 wide and 8 - 3/8 long.
    ['wall-shelf', 'end_left', (0.75 * 8 * 12 - 0.25 * 0.75 * 7.625) * CUBIC_INCH],
    // The shelf, 22 1/2 and two tongues of 1/4, each notched 13/32 (the stop and 1/32 of air) at the front.
    ['wall-shelf', 'shelf', (0.75 * 8 * 23 - 2 * 0.25 * 0.75 * (13 / 32)) * CUBIC_INCH],
    // 1 1/2 square, 16; taper 1/2 off in the last 5; mortise 1/4 x 1 1/4 x 1 1/8; for the haunch 1/4 x 3/4 x 23/64.
    ['leg-and-rail', 'leg', (36 - (1.5 * 5 * 0.5) / 2 - 0.25 * 1.25 * 1.125 - 0.25 * 0.75 * (23 / 64)) * CUBIC_INCH],
    // 3/4 x 2 1/4 x 13 1/2 between shoulder and end; tenon 1/4 x 1 1/4 x 1 1/16; haunch 1/4 x 3/4 x 23/64.
    ['leg-and-rail', 'rail', (0.75 * 2.25 * 13.5 + 0.25 * 1.25 * 1.0625 + 0.25 * 0.75 * (23 / 64)) * CUBIC_INCH],
    // Five sockets 13.5 deep, 18 high, 11.3 wide at the face and 18 at the floor; a rabbet 8 x 6 x 170. The last socket runs
    // into the rabbet: its side, 3.35 out over 13.5 of depth, passes the rabbet's edge (0.35 off at the face) before 8 deep.
    [
      'corner-box',
      'side',
      18 * 120 * 180 - 5 * 13.5 * 18 * 14.65 - 8 * 6 * 170 + (8 * (8 * (3.35 / 13.5) - 0.35) ** 2) / (3.35 / 13.5) / 2,
    ],
  ] as const)('%s %s', async (name, id, volume) => {
    const { solids } = await drawn(name);
    expect(solids.parts.find((p) => p.id === id)?.volume).toBeCloseTo(volume, 0);
  });
});

describe('8 a page of the PDF, as a reader of PDF paints it', () => {
  it('leg-and-rail, elevations: at most 1 pixel in 10 000 differs', async () => {
    const packet = await drawn('leg-and-rail');
    const pdf = await pdfOf(packet, [sheetOf(packet, 'elevations')]);
    expectPicture('leg-and-rail/08-elevations.png', await pdfPixels(pdf, 1, 1), 0.0001);
  });
});

describe('the folder of goldens', () => {
  const folder = new URL('../golden/', import.meta.url);
  const inside = (name: string): string[] => readdirSync(new URL(`${name}/`, folder)).sort();
  it.each(SMALL)('%s holds what is compared here and nothing else', (name) => {
    const pages = name === 'leg-and-rail' ? ['08-elevations.png'] : [];
    const sheets = SHEETS[name].map((id) => `08-${id}.svg`);
    expect(inside(name)).toEqual(['02-piece.json', '03-recipes.json', '07-cards.txt', ...pages, ...sheets].sort());
  });
  it('is light: 96 kB a file, 150 for the picture of the README', () => {
    for (const name of readdirSync(folder))
      for (const file of inside(name)) {
        const most = (name === 'readme' ? 150 : 96) * 1024;
        expect(statSync(new URL(`${name}/${file}`, folder)).size, `${name}/${file}`).toBeLessThanOrEqual(most);
      }
  });
});
