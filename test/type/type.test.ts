import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { loadFaces } from '../../src/io/fonts.js';
import { FIGURE_HEIGHT, figuresIn, figureText, linePitch, stackHeight, stackOf } from '../../src/type/fraction.js';
import { glyphOf, missingCharacters, textWidth } from '../../src/type/measure.js';
import { PENS } from '../../src/type/pens.js';
import { subsetFont, subsetFor } from '../../src/type/subset.js';
import { readFace } from '../../src/type/truetype.js';
import { svgPixels } from '../report/render.js';

const faces = loadFaces();
/** Bounds of an outline by its points: left, bottom, right, top. */
function bounds(character: string, face = faces.regular): readonly number[] {
  const points = face.outline(face.glyph(character.codePointAt(0) ?? 0)).flatMap((c) => (c[0] === 'Z' ? [] : [c]));
  const xs = points.flatMap((c) => (c[0] === 'Q' ? [c[1], c[3]] : [c[1]]));
  const ys = points.flatMap((c) => (c[0] === 'Q' ? [c[2], c[4]] : [c[2]]));
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

describe('the typeface', () => {
  it('has the family the sheets name, 1000 units an em, and figures of one width', () => {
    for (const face of [faces.regular, faces.semibold]) {
      expect(face.name).toMatch(/^IBMPlexSansCond/);
      expect(face.unitsPerEm).toBe(1000);
      expect(new Set([...'0123456789'].map((c) => face.advance(face.glyph(c.charCodeAt(0)))))).toEqual(new Set([540]));
    }
  });
  it('can print every sign that the sheets use', () => {
    const signs = 'AÉaéñß0123456789 \u00a0·–—‘’“”…×÷°±≤≥½¼¾½#&@%/()[]→←↑↓−ØÅ✓';
    expect(missingCharacters(faces.regular, signs)).toEqual([]);
    expect(missingCharacters(faces.semibold, signs)).toEqual([]);
    expect(missingCharacters(faces.regular, '木木A')).toEqual(['木']);
  });
  it('reads outlines: a figure one stands on the line, 698 units high; an accented letter is made of two', () => {
    expect(bounds('1')).toEqual([54, 0, 493, 698]);
    expect(bounds('1')[3]).toBe(FIGURE_HEIGHT * 1000);
    const [base, accented] = [bounds('e'), bounds('é')];
    expect(accented.slice(0, 2)).toEqual(base.slice(0, 2));
    expect(accented[3]).toBeGreaterThan((base[3] ?? 0) + 100);
  });
  it('refuses what is not a font', () => {
    expect(() => readFace(new Uint8Array(64))).toThrow(RangeError);
  });
});

/** Right edge of the ink of black pixels in a picture of one line of text, in mm at 10 pixels a mm. */
function inkRight(string: string, weight: 400 | 600, x: number): number {
  const text = `<text x="${x}" y="10" font-family="IBM Plex Sans Condensed" font-weight="${weight}" font-size="5" style="font-kerning:none">`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="15mm" viewBox="0 0 200 15">${text}${string}</text></svg>`;
  const image = svgPixels(svg, (10 * 25.4) / 72);
  let right = 0;
  for (let p = 0; p < image.width * image.height; p++)
    if ((image.data[4 * p + 3] ?? 0) > 127) right = Math.max(right, p % image.width);
  return ((right + 1) * 200) / image.width;
}
describe('measuring', () => {
  it.each([
    ['Front, right side and plan|', 400],
    ['Sliding dovetail sockets, four|', 600],
    ['AVATAR To. Ty 11/16 fi ffl|', 400],
  ] as const)('%s is as wide as an independent renderer sets it', (string, weight) => {
    const face = weight === 400 ? faces.regular : faces.semibold;
    // The ink ends at the right edge of the upright bar, whose own place in its advance is known from its outline.
    const bar = bounds('|', face)[2] ?? 0;
    const advance = face.advance(glyphOf(face, 0x7c));
    const expected = 5 + textWidth(face, string, 5) - ((advance - bar) * 5) / 1000;
    expect(Math.abs(inkRight(string, weight, 5) - expected)).toBeLessThan(0.11);
  });
  it('sets a no-break space as a space', () => {
    expect(textWidth(faces.regular, 'END\u00a0T', 3.351)).toBe(textWidth(faces.regular, 'END T', 3.351));
  });
});

describe('figures', () => {
  const found = (s: string): string[] => figuresIn(s).map(figureText);
  it('are found with their whole number', () => {
    expect(found('bit 1/2, 14°; 33 1/2 to 7/32 wide, 8\u00a01/8.')).toEqual(['1/2', '33 1/2', '7/32', '8 1/8']);
    expect(found('3/4 × 2 1/2 × 35')).toEqual(['3/4', '2 1/2']);
  });
  it('are not found in names of stock, dates, scales and decimals', () => {
    expect(found('5/4 4/4 8/4, 2027/02/01, 1:10, 1.5/2, 0/8, and/or, 1/2/3')).toEqual([]);
  });
});

describe('the stacked fraction', () => {
  // Sizes of the model sheets: digits 0.66 of the figure, never under 1.92 high; lines of 9.5 pt with a fraction 4.9 apart.
  it('has digits no lower than 1.92 mm', () => {
    for (const pt of [9.5, 10, 12, 22, 40]) {
      const { digits } = stackOf((pt * 25.4) / 72);
      expect(digits * FIGURE_HEIGHT).toBeGreaterThanOrEqual(1.92);
    }
    expect(stackOf((22 * 25.4) / 72).digits).toBeCloseTo(5.122, 3);
  });
  it('makes its line and the next one taller', () => {
    const size = (9.5 * 25.4) / 72;
    expect(linePitch(size, 0)).toBeCloseTo(4.424, 3);
    expect(linePitch(size, 1)).toBeGreaterThanOrEqual(4.9);
    expect(linePitch(size, 1)).toBeGreaterThan(stackHeight(size));
    // Two lines with fractions: 0.3 mm of white between the numbers of one and of the other.
    expect(linePitch(size, 2) - stackHeight(size)).toBeGreaterThan(0.3);
  });
});

describe('a subset', () => {
  const glyphs = [...'é33 1/2'].map((c) => glyphOf(faces.regular, c.codePointAt(0) ?? 0));
  const bytes = subsetFont(faces.regular.bytes, glyphs);
  it('draws the glyphs asked for as the whole font does, and no others', () => {
    const small = readFace(bytes);
    for (const g of glyphs) expect(small.outline(g)).toEqual(faces.regular.outline(g));
    for (const g of glyphs) expect(small.advance(g)).toBe(faces.regular.advance(g));
    expect(small.outline(glyphOf(faces.regular, 0x41))).toEqual([]);
  });
  it('is a smaller font with its tables in order and its checksum right', () => {
    const view = new DataView(bytes.buffer);
    const tags = Array.from({ length: view.getUint16(4) }, (_, i) =>
      String.fromCharCode(...bytes.subarray(12 + 16 * i, 16 + 16 * i)),
    );
    expect(tags).toEqual([...tags].sort());
    expect(bytes.length).toBeLessThan(faces.regular.bytes.length / 4);
    // OpenType 1.9, head: all words of the file add up to 0xB1B0AFBA.
    let sum = 0;
    for (let i = 0; i < bytes.length; i += 4) sum = (sum + view.getUint32(i)) >>> 0;
    expect(sum).toBe(0xb1b0afba);
  });
});

it('a subset for reading by characters is a font that an independent library sets as wide as the whole one', () => {
  const string = 'Glue 33 1/2 é – END T';
  const codes = [...string].map((c) => c.codePointAt(0) ?? 0);
  const bytes = subsetFor(faces.semibold.bytes, new Map(codes.map((c) => [c, glyphOf(faces.semibold, c)])));
  expect(bytes.length).toBeLessThan(20_000);
  const small = readFace(bytes);
  for (const c of codes) expect(small.outline(small.glyph(c))).toEqual(faces.semibold.outline(faces.semibold.glyph(c)));
  expect(small.glyph(0x51)).toBe(0);
  expect(GlobalFonts.register(Buffer.from(bytes), 'Subset')).not.toBeNull();
  const context = createCanvas(10, 10).getContext('2d');
  context.font = '100px Subset';
  expect(context.measureText(string).width).toBeCloseTo(textWidth(faces.semibold, string, 100), 1);
});

it('pens are in two widths, two to one, with two for details', () => {
  expect(PENS.W.width).toBe(2 * PENS.N.width);
  // ISO 128-2 series of widths: 0.18, 0.25, 0.35, 0.5.
  expect([PENS.H, PENS.N, PENS.D, PENS.W].map((p) => p.width)).toEqual([0.18, 0.25, 0.35, 0.5]);
});
