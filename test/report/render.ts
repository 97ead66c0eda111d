/** Independent readers of what the writers wrote: resvg for SVG, pdfjs for PDF. */
import { readFileSync } from 'node:fs';
import { DOMMatrix, ImageData, Path2D, createCanvas } from '@napi-rs/canvas';
import { Resvg } from '@resvg/resvg-js';

Object.assign(globalThis, { DOMMatrix, ImageData, Path2D });

export const FONT_FILES = ['Regular', 'SemiBold'].map((w) => `templates/fonts/IBMPlexSansCondensed-${w}.ttf`);

export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}
/** An SVG at `scale` pixels a point. */
export function svgPixels(svg: string, scale: number): Pixels & { png(): Uint8Array } {
  const font = { loadSystemFonts: false, fontFiles: FONT_FILES, defaultFontFamily: 'IBM Plex Sans Condensed' };
  // Widths in mm are 96 pixels an inch; a point is 1/72 in.
  const image = new Resvg(svg, { font, fitTo: { mode: 'zoom', value: (scale * 72) / 96 } }).render();
  return { width: image.width, height: image.height, data: new Uint8Array(image.pixels), png: () => image.asPng() };
}

export async function openPdf(bytes: Uint8Array) {
  const pdfjs = await import('pdfjs-dist/legacy/build/pdf.mjs');
  return pdfjs.getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false, disableFontFace: true }).promise;
}
export async function pdfPixels(
  bytes: Uint8Array,
  page: number,
  scale: number,
): Promise<Pixels & { png(): Uint8Array }> {
  const doc = await openPdf(bytes);
  const opened = await doc.getPage(page);
  const viewport = opened.getViewport({ scale });
  const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
  const context = canvas.getContext('2d');
  await opened.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
  const image = context.getImageData(0, 0, canvas.width, canvas.height);
  const data = new Uint8Array(image.data.buffer);
  return { width: canvas.width, height: canvas.height, data, png: () => canvas.toBuffer('image/png') };
}
/** The strings of a page in the order of the content, empty ones left out. */
export async function pdfStrings(
  bytes: Uint8Array,
  page: number,
): Promise<readonly { str: string; width: number; x: number; y: number }[]> {
  const doc = await openPdf(bytes);
  const content = await (await doc.getPage(page)).getTextContent({ disableNormalization: true });
  return content.items.flatMap((item) =>
    'str' in item && item.str !== ''
      ? [{ str: item.str, width: item.width, x: item.transform[4], y: item.transform[5] }]
      : [],
  );
}
/** A page's strings as one text. */
export const pdfText = async (bytes: Uint8Array, page: number): Promise<string> =>
  (await pdfStrings(bytes, page))
    .map((s) => s.str)
    .join(' ')
    .replace(/ +/g, ' ');
export const read = (path: string): Uint8Array => new Uint8Array(readFileSync(path));
