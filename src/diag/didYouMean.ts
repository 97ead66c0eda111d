/**
 * Steps from one word to another: a letter put in, left out, changed, or two neighbours swapped. Optimal string
 * alignment distance, after F. J. Damerau, "A technique for computer detection and correction of spelling errors",
 * Communications of the ACM 7 (3), 1964.
 */
export function wordDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(at(above, j) + 1, at(row, j - 1) + 1, at(above, j - 1) + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) best = Math.min(best, at(before, j - 2) + 1);
      row.push(best);
    }
    [before, above] = [above, row];
  }
  return at(above, b.length);
}
const at = (row: readonly number[], i: number): number => row[i] as number;

/** The known word that was most likely meant, or undefined. Ties go to the earlier in the alphabet. */
export function didYouMean(word: string, known: readonly string[]): string | undefined {
  const typed = plain(word);
  let best: { readonly word: string; readonly distance: number } | undefined;
  for (const k of [...new Set(known)].sort()) {
    const longer = Math.max(word.length, k.length);
    const allowed = longer < 3 ? 0 : Math.max(1, Math.floor(longer / 3));
    if (Math.abs(word.length - k.length) > allowed) continue;
    const distance = wordDistance(typed, plain(k));
    if (distance <= allowed && distance < Math.min(word.length, k.length) && (!best || distance < best.distance)) {
      best = { word: k, distance };
    }
  }
  return best?.word;
}
const plain = (word: string): string => word.toLowerCase().replace(/[-\s]/g, '_');

/** `did you mean x?`, or the known words when they are few, or nothing. */
export function suggestion(word: string, known: readonly string[]): string | undefined {
  const meant = didYouMean(word, known);
  if (meant !== undefined) return `did you mean ${meant}?`;
  return known.length > 0 && known.length <= 16 ? `known here: ${[...known].sort().join(', ')}` : undefined;
}

/** As a sentence about names: `Did you mean "x"?`, or the first of what there is. */
export function nameHint(word: string, known: readonly string[]): string {
  const meant = didYouMean(word, known);
  if (meant !== undefined) return `Did you mean "${meant}"?`;
  const list = [...known].sort().slice(0, MOST_LISTED).join(', ');
  return list === '' ? 'There is none yet.' : `There is: ${list}${known.length > MOST_LISTED ? ' …' : ''}.`;
}
const MOST_LISTED = 8;
