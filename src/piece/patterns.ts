import type { Letters } from '../lengths/each.js';

/** A part named by a pattern, and what the pattern's letters stand for in its id. */
export interface Match {
  readonly id: string;
  readonly letters: Letters;
  /** Named out loud, not swept up by a `*`. */
  readonly named: boolean;
}

/**
 * The ids that a pattern names, in the order of the definition: `rail_{2..5}` a range, `*` any run of characters but a
 * point, `{i}` or `{i-1}` any number, remembered as i.
 */
export function matches(pattern: string, ids: readonly string[]): Match[] {
  const letters: { letter: string; offset: number }[] = [];
  const ranges: (readonly [number, number])[] = [];
  const kinds: ('letter' | 'range' | 'any')[] = [];
  const source = pattern.replace(
    /\{\s*(?:(\d+)\s*\.\.\s*(\d+)|([a-z])\s*(?:([+-])\s*(\d+))?)\s*\}|\*|[.+?^$()|[\]\\{}]/g,
    (whole, lo?: string, hi?: string, letter?: string, sign?: string, by?: string) => {
      if (whole === '*') {
        kinds.push('any');
        return '([^.]*)';
      }
      if (lo !== undefined) {
        kinds.push('range');
        ranges.push([Number(lo), Number(hi)]);
        return '(\\d+)';
      }
      if (letter !== undefined) {
        kinds.push('letter');
        letters.push({ letter, offset: (sign === '-' ? -1 : 1) * Number(by ?? 0) });
        return '(\\d+)';
      }
      return `\\${whole}`;
    },
  );
  const test = new RegExp(`^${source}$`);
  return ids.flatMap((id) => {
    const found = test.exec(id);
    const read = found && readGroups(found, kinds, letters, ranges);
    return read ? [{ id, letters: read, named: !kinds.includes('any') }] : [];
  });
}

function readGroups(
  found: RegExpExecArray,
  kinds: readonly string[],
  letters: readonly { letter: string; offset: number }[],
  ranges: readonly (readonly [number, number])[],
): Letters | undefined {
  const out: Record<string, number> = {};
  let [l, r] = [0, 0];
  for (const [k, kind] of kinds.entries()) {
    const value = Number(found[k + 1]);
    if (kind === 'range') {
      const range = ranges[r++];
      if (!range || value < range[0] || value > range[1]) return undefined;
    } else if (kind === 'letter') {
      const one = letters[l++];
      if (!one) return undefined;
      const i = value - one.offset;
      if (out[one.letter] !== undefined && out[one.letter] !== i) return undefined;
      out[one.letter] = i;
    }
  }
  return out;
}

/** The same letter pairs index with index. */
export const agree = (a: Letters, b: Letters): boolean =>
  Object.entries(a).every(([letter, value]) => b[letter] === undefined || b[letter] === value);
