/** The type of a PDF: which glyphs a document uses, and the content operators of its strings. */
import type { TextItem } from '../drawings/picture.js';
import { glyphOf, textWidth } from '../type/measure.js';
import type { Face, Faces } from '../type/type.js';
import { startOf } from './paint.js';
import { say } from './paths.js';

export type FaceName = TextItem['face'];
/** Name of a face in a page's resources. */
export const FONT: Readonly<Record<FaceName, string>> = { regular: 'R', semibold: 'S' };

/** A space as wide as a figure. */
const FIGURE_SPACE = '\u2007';
/** What is read back as a plain space. */
const SPACES = `\u00a0${FIGURE_SPACE}`;

/** The glyphs used, each with the first character that asked for it. */
export class GlyphUse {
  readonly regular = new Map<number, number>();
  readonly semibold = new Map<number, number>();
  constructor(private readonly faces: Faces) {}
  /** The string as hexadecimal glyph numbers (Identity-H), remembered as used. */
  encode(face: FaceName, string: string): string {
    const use = this[face];
    let out = '';
    for (const character of string) {
      const code = character.codePointAt(0) ?? 0x20;
      const glyph = glyphOf(this.faces[face], code);
      if (!use.has(glyph)) use.set(glyph, SPACES.includes(character) ? 0x20 : code);
      out += glyph.toString(16).padStart(4, '0');
    }
    return `<${out}>`;
  }
}
const hex = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');
/** Glyph numbers back to characters (PDF 1.7, 9.10.3), in blocks of at most 100. */
export function toUnicode(use: ReadonlyMap<number, number>): string {
  const pairs = [...use].filter(([glyph]) => glyph !== 0).sort((a, b) => a[0] - b[0]);
  const blocks: string[] = [];
  for (let i = 0; i < pairs.length; i += 100) {
    const block = pairs.slice(i, i + 100).map(([glyph, code]) => `<${hex(glyph)}> <${utf16(code)}>`);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`);
  }
  return [
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def',
    '1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange',
    ...blocks,
    'endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n',
  ].join('\n');
}
const utf16 = (code: number): string =>
  [...String.fromCodePoint(code)]
    .flatMap((c) => Array.from({ length: c.length }, (_, i) => hex(c.charCodeAt(i))))
    .join('');
/** Widths of the used glyphs in thousandths of an em (PDF 1.7, 9.7.4.3), runs of neighbours together. */
export function widthArray(face: Face, use: ReadonlyMap<number, number>): readonly (number | readonly number[])[] {
  const runs: [number, number[]][] = [];
  for (const glyph of [...use.keys()].sort((a, b) => a - b)) {
    const width = Math.round((face.advance(glyph) * 1000) / face.unitsPerEm);
    const last = runs.at(-1);
    if (last && last[0] + last[1].length === glyph) last[1].push(width);
    else runs.push([glyph, [width]]);
  }
  return runs.flat();
}
/** Six capitals before the name of a subset (PDF 1.7, 9.6.4), from the glyphs alone, so that they are the same every time. */
export function subsetTag(use: ReadonlyMap<number, number>): string {
  let sum = 2166136261;
  for (const glyph of [...use.keys()].sort((a, b) => a - b)) sum = Math.imul(sum ^ glyph, 16777619) >>> 0;
  return Array.from({ length: 6 }, (_, i) => String.fromCharCode(65 + (Math.floor(sum / 26 ** i) % 26))).join('');
}

/**
 * The operators that set words of one size in a line, turned about each word's anchor (cosine and sine of the turn); the page's space has y
 * down, so the text is turned over.
 */
export function lineOperators(
  faces: Faces,
  use: GlyphUse,
  words: readonly TextItem[],
  cosine: number,
  sine: number,
): string {
  const matrix = `${say(cosine)} ${say(sine)} ${say(sine)} ${say(-cosine)}`;
  let font = '';
  const parts = words.map((w) => {
    const set = `/${FONT[w.face]} ${say(w.size)} Tf `;
    const change = set === font ? '' : set;
    font = set;
    const back = w.x - startOf(faces, w);
    return `${change}${matrix} ${say(w.x - back * cosine)} ${say(w.y - back * sine)} Tm ${use.encode(w.face, w.string)} Tj`;
  });
  return `BT ${parts.join('\n')} ET`;
}
/**
 * The unseen run over an outlined figure: rendering mode 3, stretched to the figure's width. Readers see a space where two words are more than
 * 0.15 em apart (poppler); squeezed, the font's own space is less, so the wide space of figures stands for it and is read back as a plain one.
 */
export function hiddenOperators(faces: Faces, use: GlyphUse, text: TextItem, width: number): string {
  const string = text.string.replaceAll(' ', FIGURE_SPACE);
  const natural = textWidth(faces[text.face], string, text.size);
  const stretch = say(natural === 0 ? 100 : (100 * width) / natural);
  const place = `/${FONT[text.face]} ${say(text.size)} Tf 1 0 0 -1 ${say(text.x)} ${say(text.y)} Tm`;
  return `BT 3 Tr ${stretch} Tz ${place} ${use.encode(text.face, string)} Tj 0 Tr 100 Tz ET`;
}
