import { describe, expect, it } from 'vitest';
import { SIZE } from '../../src/drawings/pens.js';
import type { FillItem, Item, TextItem } from '../../src/drawings/picture.js';
import { blockDrop, setBlock, setText, widthOf, wrap, type Line, type Run } from '../../src/drawings/text.js';
import { loadFaces } from '../../src/io/fonts.js';
import { figureText } from '../../src/type/fraction.js';
import { textWidth } from '../../src/type/measure.js';

const faces = loadFaces();
const at = { x: 10, y: 20, size: SIZE.figure };
const texts = (items: readonly Item[]): TextItem[] => items.filter((i) => i.kind === 'text');
const strings = (items: readonly Item[]): string[] => texts(items).map((t) => t.string);
const fills = (items: readonly Item[]): FillItem[] => items.filter((i) => i.kind === 'fill');
const said = (items: readonly Item[]): string => strings(items).join('').replace(/ +/g, ' ');

describe('a line of text', () => {
  it('has one text item a word, each at its own place', () => {
    const { items, width } = setText(faces, 'Front, right side and plan', at);
    expect(strings(items)).toEqual(['Front, ', 'right ', 'side ', 'and ', 'plan']);
    expect(width).toBeCloseTo(textWidth(faces.regular, 'Front, right side and plan', at.size), 6);
    const second = texts(items)[1]?.x ?? 0;
    expect(second).toBeCloseTo(10 + textWidth(faces.regular, 'Front, ', at.size), 3);
  });
  it('is set to the middle and to the end', () => {
    const [a, b, c] = (['start', 'middle', 'end'] as const).map((anchor) =>
      setText(faces, '33 1/2', { ...at, anchor }),
    );
    const x = (s: typeof a): number => texts(s?.items ?? [])[0]?.x ?? 0;
    expect(x(a) - x(b)).toBeCloseTo((a?.width ?? 0) / 2, 2);
    expect(x(a) - x(c)).toBeCloseTo(a?.width ?? 0, 2);
  });
  it('keeps apart the runs of two faces, and joins words over them', () => {
    const runs: Run[] = [{ string: 'No\u00a0glue', face: 'semibold' }, { string: '; screws.' }];
    const { items } = setText(faces, runs, at);
    expect(texts(items).map((t) => [t.string, t.face])).toEqual([
      ['No ', 'semibold'],
      ['glue', 'semibold'],
      ['; ', 'regular'],
      ['screws.', 'regular'],
    ]);
  });
});

describe('a figure', () => {
  it('is outlines with a hidden run of its plain text at the same place and width', () => {
    const { items, width } = setText(faces, '37 1/2', at);
    expect(fills(items)).toHaveLength(1);
    expect(texts(items)).toMatchObject([{ string: '37 1/2', x: 10, y: 20, face: 'regular' }]);
    expect(texts(items)[0]?.hidden).toBeCloseTo(width, 3);
    // By hand: 2 x 0.54 em, 0.07 em, 0.54 x 2.76, 0.3 mm.
    expect(width).toBeCloseTo(1.08 * at.size + 0.07 * at.size + 0.54 * 2.76 + 0.3, 6);
  });
  it('has its bar 0.25 thick, 0.349 em above the baseline, and its numbers clear of it', () => {
    const { items } = setText(faces, '3/4', at);
    const bar =
      fills(items)[0]
        ?.d.slice(0, 4)
        .map((s) => s.slice(1) as number[]) ?? [];
    expect([...new Set(bar.map((p) => p[1]))].map((y) => y ?? 0)).toEqual(
      [20 - 1.231 - 0.125, 20 - 1.231 + 0.125].map((y) => expect.closeTo(y, 3)),
    );
    const ys =
      fills(items)[0]
        ?.d.slice(5)
        .flatMap((s) => (s[0] === 'M' || s[0] === 'L' ? [s[2]] : [])) ?? [];
    const [above, below] = [ys.filter((y) => y < 18.769), ys.filter((y) => y > 18.769)];
    expect(Math.max(...above)).toBeLessThanOrEqual(18.644 - 0.36 + 0.05);
    expect(Math.min(...below)).toBeGreaterThanOrEqual(18.894 + 0.36 - 0.05);
  });
  it('reads in its sentence with its spaces', () => {
    const { items } = setText(faces, 'stop 3/8 from FRONT, then 1/4, 2 1/2 (5/4 stock)', at);
    expect(said(items)).toBe('stop 3/8 from FRONT, then 1/4, 2 1/2 (5/4 stock)');
    expect(fills(items)).toHaveLength(3);
  });
  it('stays plain where the run says so', () => {
    expect(fills(setText(faces, [{ string: '3/4', plain: true }], at).items)).toHaveLength(0);
  });
  it('is white on black where asked', () => {
    expect(fills(setText(faces, '3/4', { ...at, tone: 'white' }).items)[0]?.tone).toBe('white');
  });
});

/** An atom as it was written. */
function plain(atom: Line['atoms'][number]): string {
  if (atom.kind === 'word') return atom.string;
  return atom.kind === 'figure' ? figureText(atom.figure) : ' ';
}

describe('wrapping', () => {
  const text =
    'Rabbet, on 1/4 from BACK edge, into INSIDE face 3/8. From END\u00a0T down, stop 8 1/8 from BOTTOM, after cut 2, see 7/32\u00a0wide.';
  const lines = wrap(faces, text, 40, SIZE.text);
  it('keeps every line in its column and loses no word', () => {
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) expect(line.width).toBeLessThanOrEqual(40);
    const set = (line: (typeof lines)[number]): string =>
      said(setBlock(faces, line.atoms.map(plain).join(''), { x: 0, y: 0, size: SIZE.text, width: 99 }).items);
    expect(lines.map(set).join(' ')).toBe(text.replaceAll('\u00a0', ' '));
  });
  it('never parts END T, 8 1/8 or 7/32 wide, at any width', () => {
    for (let width = 12; width < 80; width += 1) {
      const rows = new Map<number, string>();
      const { items } = setBlock(faces, text, { x: 0, y: 0, size: SIZE.text, width });
      for (const t of texts(items)) rows.set(t.y, `${rows.get(t.y) ?? ''}${t.string}`);
      const all = [...rows.values()];
      for (const whole of ['END T', '8 1/8', '7/32 wide']) expect(all.some((row) => row.includes(whole))).toBe(true);
    }
  });
  it('makes a line with a fraction, and the one after it, taller', () => {
    const some = wrap(faces, 'none here\n1/2 here\nafter it\nnone again', 60, SIZE.text);
    expect(some.map((l) => l.tall)).toEqual([false, true, false, false]);
    const [, second = 0, third = 0, fourth = 0] = some.map((l) => l.drop);
    expect([second, third].every((d) => d >= 4.9)).toBe(true);
    expect(fourth).toBeCloseTo(1.32 * SIZE.text, 6);
    expect(blockDrop(some)).toBeCloseTo(second + third + fourth, 6);
  });
  it('gives a word that is too wide a line to itself', () => {
    expect(wrap(faces, 'a incommensurable b', 8, SIZE.text).map((l) => l.atoms.length)).toEqual([1, 1, 1]);
  });
  it('sets nothing for no text', () => {
    expect(setBlock(faces, '', { ...at, width: 10 }).items).toEqual([]);
    expect(widthOf(faces, '   ', 3)).toBe(0);
  });
});
