import { latin, pdfObjects, refsIn } from './pdfObjects.js';
import type { PdfObject } from './pdfObjects.js';

/** A string as it stands on a page: mm from the upper left corner, y its baseline; page from 1. */
export interface PdfText {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly string: string;
}
type Matrix = readonly [number, number, number, number, number, number];
const MM = 25.4 / 72;
const ONE: Matrix = [1, 0, 0, 1, 0, 0];
/** a, then b. */
const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];

/** Every string of a PDF in the order it is drawn, unseen ones too. Throws RangeError when the bytes are no PDF. */
export function pdfTexts(bytes: Uint8Array): PdfText[] {
  const objects = pdfObjects(bytes);
  const maps = new Map<string, ReadonlyMap<string, string>>();
  return pagesOf(objects).flatMap((page, i) => {
    const height = Number(/\/MediaBox\s*\[\s*\S+\s+\S+\s+\S+\s+([\d.]+)/.exec(page.text)?.[1]);
    const fonts = fontsOf(objects, page.text, maps);
    const content = refsIn(page.text, 'Contents').map((n) => latin(objects.get(n)?.stream?.() ?? new Uint8Array()));
    return readContent(content.join('\n'), fonts).map((t) => ({
      page: i + 1,
      x: t.x * MM,
      y: (height - t.y) * MM,
      string: t.string,
    }));
  });
}
function pagesOf(objects: ReadonlyMap<number, PdfObject>): PdfObject[] {
  const catalog = [...objects.values()].find((o) => /\/Type\s*\/Catalog/.test(o.text));
  const out: PdfObject[] = [];
  const walk = (n: number): void => {
    const node = objects.get(n);
    if (!node) return;
    if (/\/Type\s*\/Pages/.test(node.text)) refsIn(node.text, 'Kids').forEach(walk);
    else out.push(node);
  };
  refsIn(catalog?.text ?? '', 'Pages').forEach(walk);
  return out;
}
/** By resource name: glyph number to text, from the font's ToUnicode map. */
function fontsOf(
  objects: ReadonlyMap<number, PdfObject>,
  page: string,
  maps: Map<string, ReadonlyMap<string, string>>,
): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const resources = refsIn(page, 'Resources')[0];
  const text = resources === undefined ? page : (objects.get(resources)?.text ?? '');
  const fonts = /\/Font\s*<<([\s\S]*?)>>/.exec(text)?.[1] ?? '';
  const out = new Map<string, ReadonlyMap<string, string>>();
  for (const [, name, ref] of fonts.matchAll(/\/(\w+)\s+(\d+) 0 R/g)) {
    const known = maps.get(ref as string);
    const map = known ?? readMap(cmapOf(objects, Number(ref)));
    maps.set(ref as string, map);
    out.set(name as string, map);
  }
  return out;
}
function cmapOf(objects: ReadonlyMap<number, PdfObject>, font: number): string {
  const map = refsIn(objects.get(font)?.text ?? '', 'ToUnicode')[0];
  return latin((map === undefined ? undefined : objects.get(map)?.stream?.()) ?? new Uint8Array());
}
function readMap(cmap: string): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  for (const [, block] of cmap.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph, codes] of (block as string).matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) {
      const units = (codes as string).match(/.{4}/g) ?? [];
      out.set((glyph as string).toUpperCase(), String.fromCharCode(...units.map((u) => parseInt(u, 16))));
    }
  }
  return out;
}

interface State {
  ctm: Matrix;
  font: string;
}
function readContent(
  content: string,
  fonts: ReadonlyMap<string, ReadonlyMap<string, string>>,
): { x: number; y: number; string: string }[] {
  const out: { x: number; y: number; string: string }[] = [];
  const stack: State[] = [];
  let state: State = { ctm: ONE, font: '' };
  let text = ONE;
  // Only the operators that place text, each with what stands right before it.
  const operator = /(?<![^\s>\])])(?:[qQ]|cm|BT|T[mfj])(?!\S)/g;
  for (let found = operator.exec(content); found; found = operator.exec(content)) {
    const [token, end] = [found[0], found.index];
    const matrix = (): Matrix => before(content, end, 6).map(Number) as unknown as Matrix;
    if (token === 'q') stack.push({ ...state });
    else if (token === 'Q') state = stack.pop() ?? state;
    else if (token === 'cm') state.ctm = times(matrix(), state.ctm);
    else if (token === 'BT') text = ONE;
    else if (token === 'Tm') text = matrix();
    else if (token === 'Tf') state.font = (before(content, end, 2)[0] ?? '').slice(1);
    else {
      const at = times(text, state.ctm);
      const hex = content.slice(content.lastIndexOf('<', end) + 1, content.lastIndexOf('>', end));
      out.push({ x: at[4], y: at[5], string: decode(hex.replace(/\s/g, '').toUpperCase(), fonts.get(state.font)) });
    }
  }
  return out;
}
/** The `count` operands that stand right before a place, parted by white space. */
function before(content: string, end: number, count: number): string[] {
  const out: string[] = [];
  for (let to = end; out.length < count;) {
    while (to > 0 && content.charCodeAt(to - 1) <= 32) to--;
    let from = to;
    while (from > 0 && content.charCodeAt(from - 1) > 32) from--;
    out.unshift(content.slice(from, to));
    to = from;
    if (from === 0) break;
  }
  return out;
}
function decode(hex: string, map: ReadonlyMap<string, string> | undefined): string {
  let out = '';
  for (let i = 0; i + 4 <= hex.length; i += 4) out += map?.get(hex.slice(i, i + 4)) ?? '\ufffd';
  return out;
}
