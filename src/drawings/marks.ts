/** Marks written on the wood, in the order of a reader: letters, then numbers as numbers (`A2` before `A10`). */
export function byMark(a: string, b: string): number {
  const x = a.match(/\d+|\D+/g) ?? [];
  const y = b.match(/\d+|\D+/g) ?? [];
  for (let i = 0; i < Math.max(x.length, y.length); i++) {
    const [p, q] = [x[i] ?? '', y[i] ?? ''];
    if (p === q) continue;
    const numbers = /^\d+$/.test(p) && /^\d+$/.test(q);
    if (numbers && Number(p) !== Number(q)) return Number(p) - Number(q);
    return p < q ? -1 : 1;
  }
  return 0;
}

/** Marks shortened to ranges: `R1 R2 R3 A1` gives `A1`, `R1–R3`. Two in a row stay two. */
export function ranges(marks: readonly string[]): string[] {
  const sorted = [...new Set(marks)].sort(byMark);
  const out: string[] = [];
  let run: string[] = [];
  const flush = (): void => {
    if (run.length > 2) out.push(`${run[0]}–${run.at(-1)}`);
    else out.push(...run);
    run = [];
  };
  for (const mark of sorted) {
    const last = run.at(-1);
    if (last !== undefined && !follows(last, mark)) flush();
    run.push(mark);
  }
  flush();
  return out;
}
function follows(a: string, b: string): boolean {
  const x = a.match(/^(.*?)(\d+)$/);
  const y = b.match(/^(.*?)(\d+)$/);
  return x !== null && y !== null && x[1] === y[1] && Number(y[2]) === Number(x[2]) + 1;
}

/** Scales of ISO 5455 and of US architects' and furniture practice, largest first, as 1:n. */
export const SCALES: readonly number[] = [1, 2, 4, 5, 8, 10, 12, 16, 20, 24, 32, 48, 50, 64, 96, 100];
/** The largest scale at which `fits` says yes; undefined when none does. */
export const largestScale = (fits: (oneTo: number) => boolean): number | undefined => SCALES.find(fits);

/** Splits rows over pages: the first page holds `first`, the others `next`. Never an empty last page. */
export function pages<T>(rows: readonly T[], first: number, next = first): T[][] {
  const out: T[][] = [rows.slice(0, first)];
  for (let i = first; i < rows.length; i += next) out.push(rows.slice(i, i + next));
  return out;
}
