/** Most of one kind that an `each` or a range makes (our default). */
export const MOST_EACH = 200;

/** Longest `each` read, characters. */
const LONGEST_EACH = 100;

/** One letter of an `each`: counts from `from` to `to`, both among them. */
export interface Count {
  readonly letter: string;
  readonly from: number;
  readonly to: number;
}
/** What an `each` may have wrong, and the stretch of its text (characters) where. */
export interface EachFault {
  readonly code: 'each-form' | 'each-backwards' | 'each-range' | 'each-letter-twice';
  readonly at: readonly [from: number, to: number];
  /** The count as typed; of a letter counted twice, the letter. */
  readonly found: string;
}
/** One value of every counting letter: what `{i}` stands for in one of the copies. */
export type Letters = Readonly<Record<string, number>>;

const COUNT = /^ *([a-z]) *= *(\d{1,4}) *\.\. *(\d{1,4}) *$/;

/** Reads `i = 1..3, j = 1..2`. Faults point at the stretch of the text; the counts that could be read are given even so. */
export function readEach(text: string): { readonly counts: readonly Count[]; readonly faults: readonly EachFault[] } {
  const counts: Count[] = [];
  const faults: EachFault[] = [];
  if (text.length > LONGEST_EACH) return { counts, faults: [{ code: 'each-form', at: [0, text.length], found: text }] };
  let start = 0;
  for (const piece of text.split(',')) {
    const from = start + piece.length - piece.trimStart().length;
    const at = [from, Math.max(from + 1, start + piece.trimEnd().length)] as const;
    start += piece.length + 1;
    const count = readCount(piece);
    const fault = count === undefined ? 'each-form' : faultOf(count, counts);
    if (fault !== undefined)
      faults.push({ code: fault, at, found: fault === 'each-letter-twice' ? (count?.letter ?? '') : piece.trim() });
    else if (count) counts.push(count);
  }
  if (faults.length === 0 && howMany(counts) > MOST_EACH)
    faults.push({ code: 'each-range', at: [0, text.length], found: text.trim() });
  return { counts, faults };
}
function readCount(piece: string): Count | undefined {
  const m = COUNT.exec(piece);
  return m === null ? undefined : { letter: m[1] as string, from: Number(m[2]), to: Number(m[3]) };
}
function faultOf(count: Count, before: readonly Count[]): EachFault['code'] | undefined {
  if (count.to < count.from) return 'each-backwards';
  if (count.to - count.from >= MOST_EACH) return 'each-range';
  return before.some((c) => c.letter === count.letter) ? 'each-letter-twice' : undefined;
}

/** How many one entry makes. */
export const howMany = (counts: readonly Count[]): number => counts.reduce((n, c) => n * (c.to - c.from + 1), 1);

/** Every set of values of the letters, the first letter slowest; one empty set when there are none. */
export function eachValues(counts: readonly Count[]): readonly Letters[] {
  return counts.reduce<readonly Letters[]>(
    (sets, c) =>
      sets.flatMap((set) => Array.from({ length: c.to - c.from + 1 }, (_, k) => ({ ...set, [c.letter]: c.from + k }))),
    [{}],
  );
}
