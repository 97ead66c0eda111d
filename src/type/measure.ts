import type { Face } from './type.js';

/** A no-break space is set as a space. */
const SPACE = 0x20;
const NO_BREAK = 0xa0;
/** The glyph of a character, a no-break space being a space. */
export const glyphOf = (face: Face, codePoint: number): number =>
  face.glyph(codePoint === NO_BREAK ? SPACE : codePoint);

/** Width in mm of a string set at `size` mm em, from the advance widths alone: no kerning, no ligatures. */
export function textWidth(face: Face, string: string, size: number): number {
  let units = 0;
  for (const character of string) units += face.advance(glyphOf(face, character.codePointAt(0) ?? SPACE));
  return (units / face.unitsPerEm) * size;
}

/** The characters of a string that a face cannot print, each once, in order. */
export function missingCharacters(face: Face, string: string): readonly string[] {
  const missing = [...string].filter((c) => glyphOf(face, c.codePointAt(0) ?? SPACE) === 0);
  return [...new Set(missing)];
}
