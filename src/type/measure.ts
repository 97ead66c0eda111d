import type { Face } from './type.js';

/** A no-break space is set as a space. */
const SPACE = 0x20;
const NO_BREAK = 0xa0;
/** The glyph of a character, a no-break space being a space. */
export const glyphOf = (face: Face, codePoint: number): number =>
  face.glyph(codePoint === NO_BREAK ? SPACE : codePoint);

/** Width in mm of a string set at `size` mm em, from the advance widths alone: no kerning, no ligatures. */
export function textWidth(face: Face, string: string, size: number): number {
  return (unitsOf(face, string) / face.unitsPerEm) * size;
}
const KNOWN = new WeakMap<Face, Map<string, number>>();
/** Strings remembered for a face: the words of a packet, and no more than these. */
const MOST = 20_000;
/** Width of a string in the face's own units. */
function unitsOf(face: Face, string: string): number {
  let known = KNOWN.get(face);
  if (!known || known.size > MOST) KNOWN.set(face, (known = new Map<string, number>()));
  const before = known.get(string);
  if (before !== undefined) return before;
  let units = 0;
  for (const character of string) units += face.advance(glyphOf(face, character.codePointAt(0) ?? SPACE));
  known.set(string, units);
  return units;
}

/** The characters of a string that a face cannot print, each once, in order. */
export function missingCharacters(face: Face, string: string): readonly string[] {
  const missing = [...string].filter((c) => glyphOf(face, c.codePointAt(0) ?? SPACE) === 0);
  return [...new Set(missing)];
}
