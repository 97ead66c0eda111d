/** Number of single-letter changes (put in, left out, exchanged, swapped with its neighbour) between two words. Optimal string alignment. */
export function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((rows[i - 1]?.[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (rows[i - 1]?.[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, (rows[i - 2]?.[j - 2] ?? 0) + 1);
      row.push(best);
    }
    rows.push(row);
  }
  return rows[a.length]?.[b.length] ?? 0;
}

/** The known name nearest to `word`, when it is near enough to be a slip of the pen; ties go to the first by id. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  const limit = Math.max(1, Math.floor(word.length / 3));
  let best: string | undefined;
  let bestAt = limit + 1;
  for (const name of [...known].sort()) {
    const d = distance(word, name);
    if (d < bestAt) {
      best = name;
      bestAt = d;
    }
  }
  return best;
}

/** `did you mean "x"?`, or a short list of what there is. */
export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  if (near !== undefined) return `Did you mean "${near}"?`;
  const list = [...known].sort().slice(0, 8).join(', ');
  return list === '' ? 'There is none yet.' : `There is: ${list}${known.length > 8 ? ' …' : ''}.`;
}
