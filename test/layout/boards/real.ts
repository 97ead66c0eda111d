import { readFileSync } from 'node:fs';
import type { Blank, Board, Defect, DefectKind } from '../../../src/layout/boards/board.js';
import { inches } from '../../../src/lengths/length.js';
import { sequence } from '../../../src/layout/pack/sequence.js';

type Row = readonly [string, string, number, number, readonly number[], readonly number[]];
const bank = JSON.parse(readFileSync(new URL('../published/red-oak-226.json', import.meta.url), 'utf8')) as {
  readonly kinds: readonly string[];
  readonly boards: readonly Row[];
};
const WORDS: Readonly<Record<string, DefectKind>> = {
  'unsound-knot': 'knot',
  'sound-knot': 'sound knot',
  'bark-pocket': 'bark',
};
const quarters = (v: number): number => inches(v / 4);
const rectangles = (flat: readonly number[], face: 'front' | 'back'): Defect[] =>
  Array.from({ length: flat.length / 5 }, (_, i) => {
    const [kind = 0, x0 = 0, y0 = 0, x1 = 0, y1 = 0] = flat.slice(i * 5, i * 5 + 5);
    const word = bank.kinds[kind] ?? '';
    return { kind: WORDS[word] ?? (word as DefectKind), face, at: [x0, y0, x1, y1].map(quarters) as never };
  });

/** The 226 measured boards with their grades, as 4/4 of an inch (thickness is not in the bank). */
export const REAL: readonly (Board & { readonly grade: string })[] = bank.boards.map(
  ([id, grade, length, width, front, back]) => ({
    id,
    grade,
    wood: 'oak-red',
    quarter: '4/4',
    thickness: inches(1),
    length: quarters(length),
    width: [quarters(width), quarters(width)],
    defects: [...rectangles(front, 'front'), ...rectangles(back, 'back')],
  }),
);

/** A blank of red oak, sizes in inches. */
export const blank = (id: string, length: number, width: number, more: Partial<Blank> = {}): Blank => ({
  id,
  part: id,
  mark: id,
  wood: 'oak-red',
  quarter: '4/4',
  thickness: inches(7 / 8),
  finished: inches(3 / 4),
  width: inches(width),
  length: inches(length),
  shows: 'one',
  allows: [],
  ...more,
});

/** Families of furniture parts, inches over all: least and most length and width, how many are alike. Invented. */
const FAMILIES = [
  { name: 'stile', l: [24, 62], w: [2, 3], n: [2, 4], shows: 'both' },
  { name: 'rail', l: [12, 40], w: [2, 4], n: [2, 6], shows: 'one' },
  { name: 'apron', l: [18, 60], w: [3, 5], n: [2, 4], shows: 'one' },
  { name: 'stave', l: [20, 64], w: [3, 5.5], n: [4, 8], shows: 'one' },
  { name: 'front', l: [13, 32], w: [4, 7], n: [2, 4], shows: 'one' },
  { name: 'side', l: [16, 22], w: [3, 6], n: [2, 8], shows: 'none' },
  { name: 'slat', l: [14, 40], w: [1.5, 2.5], n: [4, 10], shows: 'both' },
] as const;

/** A random bill of some `many` furniture parts: families, staves of panels, fronts in runs. */
export function bill(seed: number, many: number): Blank[] {
  const random = sequence(seed);
  const between = ([a, b]: readonly [number, number], step: number): number =>
    Math.round((a + random() * (b - a)) / step) * step;
  const out: Blank[] = [];
  for (let f = 0; out.length < many; f++) {
    const family = FAMILIES[Math.floor(random() * FAMILIES.length)] as (typeof FAMILIES)[number];
    const n = between(family.n, 1);
    const [l, w] = [between(family.l, 1 / 4), between(family.w, 1 / 8)];
    const name = `${family.name}_${f}`;
    const run = family.name === 'front' && l * n < 84;
    for (let i = 0; i < n; i++) {
      const part = family.name === 'stave' ? name : `${name}_${i}`;
      out.push(
        blank(`${name}.${i}`, l, w, {
          part,
          shows: family.shows,
          ...(family.name === 'side' ? { allows: ['sound knot', 'stain', 'sapwood', 'hole', 'knot'] } : {}),
          ...(run ? { run: { id: name, at: i } } : {}),
        }),
      );
    }
  }
  return out;
}
/** Some of the real boards by lot. */
export function some(seed: number, many: number): Board[] {
  const random = sequence(seed);
  const all = [...REAL];
  return Array.from({ length: many }, () => all.splice(Math.floor(random() * all.length), 1)[0] as Board);
}
