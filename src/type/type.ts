/** The typeface leaf: one table of advance widths and the glyph outlines, used by drawings (placement) and report (embedding). */
export interface Face {
  readonly name: string;
  readonly unitsPerEm: number;
  /** Font file bytes (TrueType), for embedding. */
  readonly bytes: Uint8Array;
  /** Glyph index of a character; 0 when the font has none. */
  glyph(codePoint: number): number;
  /** Advance in font units. */
  advance(glyph: number): number;
  /** Quadratic outline in font units, y up: contours of on/off-curve points already resolved to M/L/Q. */
  outline(
    glyph: number,
  ): readonly (
    readonly ['M' | 'L', number, number] | readonly ['Q', number, number, number, number] | readonly ['Z']
  )[];
}
export interface Faces {
  readonly regular: Face;
  readonly semibold: Face;
}
