import { eachFindings } from '../diag/each.js';
import type { JsonPath } from '../diag/diagnostic.js';
import type { Letters } from '../lengths/each.js';
import { eachValues, readEach } from '../lengths/each.js';
import type { Findings } from './fault.js';

/** Every set of values of an `each`, the last letter fastest; undefined when it cannot be read (told). */
export function countedOut(each: string, path: JsonPath, findings: Findings): readonly Letters[] | undefined {
  const { counts, faults } = readEach(each);
  for (const d of eachFindings(faults, [...path, 'each'])) findings.add(d);
  return faults.length > 0 ? undefined : eachValues(counts);
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
