import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Sheet } from '../../src/drawings/picture.js';
import { loadFaces } from '../../src/io/fonts.js';
import { writePdf } from '../../src/report/pdf.js';
import { writeSvgs } from '../../src/report/svg.js';
import { textWidth } from '../../src/type/measure.js';
import { unprintable } from '../../src/report/unprintable.js';
import { setText } from '../../src/drawings/text.js';
import { overlaps } from './overlaps.js';
import { openPdf, pdfPixels, pdfStrings, pdfText, svgPixels } from './render.js';
import { sampleSheet } from './sample.js';

const faces = loadFaces();
const options = { faces, title: 'Tall chest', date: '2027-02-01', hash: '7f3c91aa' };
const sheets: readonly Sheet[] = [sampleSheet(faces), sampleSheet(faces, 'second', 3)];
let pdf = new Uint8Array();
let svg = '';
beforeAll(async () => {
  pdf = (await writePdf(sheets, options)) as Uint8Array<ArrayBuffer>;
  svg = (await writeSvgs(sheets, { faces, hrefOf: (id) => `${id}.svg` }))[0] ?? '';
  mkdirSync('test/out', { recursive: true });
  writeFileSync('test/out/sample.pdf', pdf);
  writeFileSync('test/out/sample.svg', svg);
});
/** The text that a reader should find, from the sample's own words. */
const SAID = [
  'Cut 33 1/2 on the long rails',
  '8 1/2 R4 B4 · 18 1/4 R3 B3 · 27 R2 B2. 3/8 deep; bit 1/2, 14°. White oak 5/4, stop 3/8 from FRONT edge',
  '7/8 × 19 × 41 1/8',
  '15/32 × 4 3/4 × 15 31/32',
  'Revision A · 7f3c91 2 of 53',
];

describe('the PDF', () => {
  it('reads as plain text in pdfjs: 33 1/2, never 3312', async () => {
    const text = await pdfText(pdf, 1);
    for (const said of SAID) expect(text.replace(/ ,/g, ',')).toContain(said);
    expect(text).not.toContain('3312');
  });
  it('reads as plain text in poppler', (context) => {
    const text: string[] = [];
    try {
      for (const mode of ['-raw', '-layout', '-nopgbrk'])
        text.push(execFileSync('pdftotext', [mode, 'test/out/sample.pdf', '-'], { encoding: 'utf8' }));
    } catch {
      context.skip('pdftotext is not installed');
    }
    const plain = text.map((t) => t.replace(/\s+/g, ' ').replace(/ ,/g, ','));
    for (const said of [SAID[0], '8 1/2 R4 B4 · 18 1/4 R3 B3 · 27 R2 B2. 3/8 deep; bit 1/2', ...SAID.slice(2, 4)])
      for (const one of plain) expect(one).toContain(said);
  });
  it('has the title, page labels, an outline and links between sheets', async () => {
    const doc = await openPdf(pdf);
    const { info } = await doc.getMetadata();
    expect(info).toMatchObject({ Title: 'Tall chest', CreationDate: 'D:20270201000000Z', Producer: 'benchpacket' });
    expect(await doc.getPageLabels()).toEqual(['1', '2']);
    expect((await doc.getOutline()).map((o) => o.title)).toEqual(['1  Sample sample', '2  Sample second']);
    const [note] = await (await doc.getPage(1)).getAnnotations();
    const target = (await doc.getPage(2)).ref;
    expect(note.dest[0]).toMatchObject(target ?? {});
    // The group is clipped to 20 x 10 at (235, 145) on a sheet 215.9 high.
    const points = [235, 215.9 - 155, 255, 215.9 - 145].map((mm) => expect.closeTo((mm * 72) / 25.4, 2));
    expect(note.rect).toEqual(points);
  });
  it('has the same bytes twice, and a date it was not given is refused', async () => {
    expect(Buffer.from(await writePdf(sheets, options)).equals(Buffer.from(pdf))).toBe(true);
    await expect(writePdf(sheets, { ...options, date: 'today' })).rejects.toThrow(RangeError);
  });
});

it('characters that the typeface lacks are found, wherever they stand', () => {
  const text = {
    kind: 'text',
    x: 10,
    y: 10,
    size: 4,
    face: 'semibold',
    anchor: 'start',
    turn: 0,
    string: '木 a ☐ 木',
  } as const;
  const odd: Sheet = { ...(sheets[0] as Sheet), id: 'odd', picture: [{ kind: 'group', id: 'g', items: [text] }] };
  expect(unprintable(faces, [...sheets, odd])).toEqual([
    { character: '☐', sheet: 'odd' },
    { character: '木', sheet: 'odd' },
  ]);
});

describe('the SVG', () => {
  it('has the same bytes twice, in any order', async () => {
    const [, again] = await writeSvgs([sheets[1] as Sheet, sheets[0] as Sheet], { faces, hrefOf: (id) => `${id}.svg` });
    expect(again).toBe(svg);
  });
  it('names itself, keeps the plain text of figures, and leads to other sheets', () => {
    expect(svg).toContain('>Sample sample</title>');
    expect(svg).toContain('>Every mark once.</desc>');
    expect(svg).toMatch(/<text[^>]* textLength="[\d.]+" lengthAdjust="spacingAndGlyphs">33 1\/2<\/text>/);
    expect(svg).toContain('<a href="second.svg">');
    expect(svg).not.toMatch(/svgjs|SvgjsG/i);
  });
  it('is sound XML whatever is written on it', async () => {
    const string = 'R&D <b> "q" \u0001 \ud800 ]]> 木';
    const text = { kind: 'text', x: 10, y: 10, size: 4, face: 'regular', anchor: 'start', turn: 0, string } as const;
    const odd: Sheet = { ...(sheets[0] as Sheet), id: '1 & <2>', title: string, alt: string, picture: [text] };
    const [written = ''] = await writeSvgs([odd], { faces });
    expect(written).toContain('>R&amp;D &lt;b');
    // An independent reader accepts it.
    expect(svgPixels(written, 1).width).toBe(792);
    expect(await pdfText(await writePdf([odd], options), 1)).toContain('R&D <b> "q"');
  });
  it('stands alone where the fonts are asked for', async () => {
    const [alone = ''] = await writeSvgs([sheets[0] as Sheet], { faces, embedFonts: true });
    expect(alone.match(/src:url\(data:font\/ttf;base64,AAEAAAA/g)).toHaveLength(2);
    expect(alone.length - svg.length).toBeLessThan(60_000);
  });
});

/** Pixels that differ, at 216 dpi and a threshold that lets the renderers' edges differ by a shade. */
async function difference(sheet: number): Promise<number> {
  const page = await pdfPixels(pdf, sheet + 1, 3);
  const [text = ''] = (await writeSvgs([sheets[sheet] as Sheet], { faces })).slice(0);
  const drawing = svgPixels(text, 3);
  expect([drawing.width, drawing.height]).toEqual([page.width, page.height]);
  return pixelmatch(drawing.data, page.data, undefined, page.width, page.height, { threshold: 0.3 });
}
it('SVG and PDF are the same drawing', async () => {
  expect(await difference(0)).toBeLessThanOrEqual(20);
}, 20_000);
it('the hidden run is as wide as the drawn figure', async () => {
  const figure = (await pdfStrings(pdf, 1)).find((s) => s.str === '37 1/2');
  // By hand, 10 pt: two digits of 0.54 em, 0.07 em of air, a digit of 0.54 em of 2.76 mm, and 0.3 mm of bar beyond it.
  const size = (10 * 25.4) / 72;
  const width = 2 * 0.54 * size + 0.07 * size + 0.54 * 2.76 + 0.3;
  expect((figure?.width ?? 0) * (25.4 / 72)).toBeCloseTo(width, 2);
});
it('words are as wide in the PDF as the table of advance widths says, and stand at their own places', async () => {
  const strings = await pdfStrings(pdf, 1);
  const line = strings.find((s) => s.str.startsWith('shoulder,'));
  const words = 'shoulder, and the grain runs with the rail.';
  expect(line?.str).toBe(words);
  expect((line?.width ?? 0) * (25.4 / 72)).toBeCloseTo(textWidth(faces.regular, words, (9.5 * 25.4) / 72), 1);
});
it('no words lie over others on the sample, and words that do are found', () => {
  const sheet = sheets[0] as Sheet;
  expect(overlaps(faces, sheet.picture)).toEqual([]);
  const over = setText(faces, 'over it', { x: 26, y: 45, size: 3.4 }).items;
  expect(overlaps(faces, [...sheet.picture, ...over]).map((o) => o.other)).toContain('over ');
});
