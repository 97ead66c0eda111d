/** Order of marks: letters by the alphabet, numbers by value (`R2` before `R10`). */
export function compareMarks(a: string, b: string): number {
  const pieces = (s: string): string[] => s.match(/\d+|\D+/g) ?? [];
  const [x, y] = [pieces(a), pieces(b)];
  for (let i = 0; i < Math.max(x.length, y.length); i++) {
    const [p, q] = [x[i], y[i]];
    if (p === undefined) return -1;
    if (q === undefined) return 1;
    if (p === q) continue;
    const [m, n] = [Number(p), Number(q)];
    if (!Number.isNaN(m) && !Number.isNaN(n) && m !== n) return m - n;
    return p < q ? -1 : 1;
  }
  return 0;
}

/** Marks in order, three or more in a row as a range: `A4 A6 R1–R4`. Doubles count once. */
export const markRanges = (marks: readonly string[]): string => ranges(marks).join(' ');
/** The same, one by one: `A4`, `A6`, `R1–R4`. Two in a row stay two. */
export function ranges(marks: readonly string[]): string[] {
  const sorted = [...new Set(marks)].sort(compareMarks);
  const out: string[] = [];
  for (let i = 0; i < sorted.length;) {
    let j = i;
    while (j + 1 < sorted.length && follows(sorted[j] as string, sorted[j + 1] as string)) j++;
    if (j - i >= 2) out.push(`${sorted[i]}–${sorted[j]}`);
    else out.push(...sorted.slice(i, j + 1));
    i = j + 1;
  }
  return out;
}

/** `R2` follows `R1`: the same but for a last number that is one more. */
function follows(a: string, b: string): boolean {
  const [, ahead, n] = /^(.*?)(\d+)$/.exec(a) ?? [];
  const [, head, m] = /^(.*?)(\d+)$/.exec(b) ?? [];
  return ahead !== undefined && ahead === head && Number(m) === Number(n) + 1;
}
