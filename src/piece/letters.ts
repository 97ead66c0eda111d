/** The counting letters of `each`, and their place in ids and expressions. */
export type Letters = Readonly<Record<string, number>>;

export interface EachFault {
  readonly message: string;
  readonly hint: string;
}

/** More copies than this in one entry is taken for a slip of the pen (our default). */
const MOST = 200;

/** Reads `i = 1..3` or `i = 1..3, j = 1..2`: every set of values in order, the last letter running fastest. */
export function readEach(text: string): { readonly sets: readonly Letters[] } | { readonly fault: EachFault } {
  const hint = 'Write a letter, its first and its last number: "i = 1..3", or two: "i = 1..3, j = 1..2".';
  let sets: Letters[] = [{}];
  for (const one of text.split(',')) {
    const found = /^\s*([a-z])\s*=\s*(\d+)\s*\.\.\s*(\d+)\s*$/.exec(one);
    if (!found) return { fault: { message: `"${one.trim()}" is not a count.`, hint } };
    const [, letter = '', low = '', high = ''] = found;
    if (sets.some((s) => letter in s)) return { fault: { message: `The letter ${letter} is used twice.`, hint } };
    const [from, to] = [Number(low), Number(high)];
    if (to < from) return { fault: { message: `${from}..${to} runs backward and makes no part.`, hint } };
    if (sets.length * (to - from + 1) > MOST)
      return { fault: { message: `"${text}" makes more than ${MOST} copies.`, hint: 'Use a smaller count.' } };
    sets = sets.flatMap((s) => Array.from({ length: to - from + 1 }, (_, k) => ({ ...s, [letter]: from + k })));
  }
  if (Object.keys(sets[0] ?? {}).length > 2) return { fault: { message: 'More than two letters.', hint } };
  return { sets };
}

/** Puts numbers in the place of `{i}`, `{i-1}`, `{i+2}`; braces that hold anything else are left alone. */
export function fill(text: string, letters: Letters): string {
  return text.replace(
    /\{\s*([a-z])\s*(?:([+-])\s*(\d+))?\s*\}/g,
    (whole, letter: string, sign?: string, by?: string) => {
      const value = letters[letter];
      if (value === undefined) return whole;
      return String(value + (sign === '-' ? -1 : 1) * Number(by ?? 0));
    },
  );
}

/** `fill` in every string of a value, keys and numbers untouched. */
export function fillDeep<T>(value: T, letters: Letters): T {
  if (typeof value === 'string') return fill(value, letters) as T;
  if (Array.isArray(value)) return value.map((v: unknown) => fillDeep(v, letters)) as T;
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, fillDeep(v as unknown, letters)])) as T;
  return value;
}
