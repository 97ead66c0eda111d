import type { Diagnostic } from '../diag/diagnostic.js';
import type { Item, Sheet } from '../drawings/picture.js';
import { missingCharacters } from '../type/measure.js';
import type { Faces } from '../type/type.js';

/** Characters on the sheets that the typeface cannot print, each once with the first sheet that has it, in order of code point. */
export function unprintable(
  faces: Faces,
  sheets: readonly Sheet[],
): readonly { readonly character: string; readonly sheet: string }[] {
  const found = new Map<string, string>();
  const visit = (items: readonly Item[], sheet: string): void => {
    for (const item of items) {
      if (item.kind === 'group') visit(item.items, sheet);
      else if (item.kind === 'text')
        for (const c of missingCharacters(faces[item.face], item.string)) if (!found.has(c)) found.set(c, sheet);
    }
  };
  for (const sheet of sheets) visit(sheet.picture, sheet.id);
  const code = (c: string): number => c.codePointAt(0) ?? 0;
  return [...found]
    .map(([character, sheet]) => ({ character, sheet }))
    .sort((a, b) => code(a.character) - code(b.character));
}

/** A finding for what the typeface lacks: it is left blank on the sheets, which may hide a word. */
export const unprintableFindings = (faces: Faces, sheets: readonly Sheet[]): Diagnostic[] =>
  unprintable(faces, sheets).map(({ character, sheet }) => ({
    code: 'character-not-printed',
    severity: 'warning',
    path: [],
    message: `The typeface has no "${character}" (U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}); it is blank on the sheet "${sheet}" and wherever else it stands.`,
    hint: 'Write the name or the note with letters that it has: Latin, with accents.',
  }));
