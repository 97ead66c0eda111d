/** A smaller copy of a font for a printed document: glyph numbers stay, outlines that are not used and hinting are left out. */

const KEPT = ['cmap', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp'] as const;
/** What a font for reading by characters needs besides. */
const NAMED = ['OS/2', 'cmap', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp', 'name', 'post'] as const;
/** Flags of a component (OpenType 1.9, glyf): word arguments, scale, more, two scales, two by two, instructions. */
const [WORDS, SCALE, MORE, TWO_SCALES, MATRIX, INSTRUCTIONS] = [0x1, 0x8, 0x20, 0x40, 0x80, 0x100];

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const padded = (length: number): number => (length + 3) & ~3;

/** Bytes of a TrueType font that prints only the characters asked for, and is looked up by them. Throws on a font without outlines. */
export function subsetFor(bytes: Uint8Array, characters: ReadonlyMap<number, number>): Uint8Array {
  return subsetFont(bytes, characters.values(), characters);
}
/**
 * Bytes of a TrueType font that draws only the glyphs asked for (with the components they are made of). Glyphs are found by number alone unless
 * `characters` (code point to glyph) says otherwise. Throws RangeError on a font without outlines.
 */
export function subsetFont(
  bytes: Uint8Array,
  glyphs: Iterable<number>,
  characters?: ReadonlyMap<number, number>,
): Uint8Array {
  const table = tablesOf(bytes);
  const head = new Uint8Array(table('head'));
  const glyf = table('glyf');
  const loca = viewOf(table('loca'));
  const long = viewOf(head).getInt16(50) === 1;
  const count = viewOf(table('maxp')).getUint16(4);
  const start = (g: number): number => (long ? loca.getUint32(4 * g) : 2 * loca.getUint16(2 * g));
  const outline = (g: number): Uint8Array => glyf.subarray(start(g), start(g + 1));
  const used = new Set([0, ...glyphs]);
  for (const g of used) componentsOf(outline(g)).forEach(({ glyph }) => used.add(glyph));
  const places = new Uint8Array(4 * (count + 1));
  const outlines: Uint8Array[] = [];
  let at = 0;
  for (let g = 0; g < count; g++) {
    viewOf(places).setUint32(4 * g, at);
    if (!used.has(g) || start(g + 1) <= start(g)) continue;
    const bare = withoutInstructions(outline(g));
    outlines.push(bare);
    at += padded(bare.length);
  }
  viewOf(places).setUint32(4 * count, at);
  viewOf(head).setInt16(50, 1);
  viewOf(head).setUint32(8, 0);
  const made: Readonly<Record<string, Uint8Array>> = {
    head,
    loca: places,
    glyf: joined(outlines),
    cmap: characterMap(characters ?? new Map()),
  };
  const tags = characters ? NAMED : KEPT;
  return fontFile(
    tags.map((tag) => [tag, made[tag] ?? (tag === 'post' ? unnamedGlyphs(table(tag)) : table(tag))] as const),
  );
}
function tablesOf(bytes: Uint8Array): (tag: string) => Uint8Array {
  const view = viewOf(bytes);
  const places = new Map<string, Uint8Array>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const tag = String.fromCharCode(...bytes.subarray(at, at + 4));
    const offset = view.getUint32(at + 8);
    places.set(tag, bytes.subarray(offset, offset + view.getUint32(at + 12)));
  }
  return (tag) => {
    const found = places.get(tag);
    if (!found) throw new RangeError(`the font has no table ${tag}`);
    return found;
  };
}
interface Component {
  readonly glyph: number;
  readonly at: number;
  readonly flags: number;
  readonly end: number;
}
function componentsOf(outline: Uint8Array): readonly Component[] {
  if (outline.length === 0) return [];
  const view = viewOf(outline);
  if (view.getInt16(0) >= 0) return [];
  const found: Component[] = [];
  for (let at = 10; ;) {
    const flags = view.getUint16(at);
    const scales = (flags & SCALE) !== 0 ? 2 : (flags & TWO_SCALES) !== 0 ? 4 : (flags & MATRIX) !== 0 ? 8 : 0;
    const end = at + ((flags & WORDS) !== 0 ? 8 : 6) + scales;
    found.push({ glyph: view.getUint16(at + 2), at, flags, end });
    if ((flags & MORE) === 0) return found;
    at = end;
  }
}
function withoutInstructions(outline: Uint8Array): Uint8Array {
  const contours = viewOf(outline).getInt16(0);
  if (contours < 0) {
    const components = componentsOf(outline);
    const copy = outline.slice(0, components.at(-1)?.end ?? 10);
    for (const { at, flags } of components) viewOf(copy).setUint16(at, flags & ~INSTRUCTIONS);
    return copy;
  }
  const at = 10 + 2 * contours;
  const skip = viewOf(outline).getUint16(at);
  const copy = new Uint8Array(outline.length - skip);
  copy.set(outline.subarray(0, at));
  copy.set(outline.subarray(at + 2 + skip), at + 2);
  return copy;
}
function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, p) => sum + padded(p.length), 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += padded(part.length);
  }
  return out;
}
/** The post table without the names of glyphs (version 3). */
function unnamedGlyphs(post: Uint8Array): Uint8Array {
  const copy = post.slice(0, 32);
  viewOf(copy).setUint32(0, 0x00030000);
  return copy;
}
/** A character map with one sub-table of format 4, a segment for each run of characters whose glyphs follow each other too. */
function characterMap(characters: ReadonlyMap<number, number>): Uint8Array {
  const segments: { start: number; end: number; delta: number }[] = [];
  for (const [code, glyph] of [...characters].filter(([c]) => c < 0xffff).sort((a, b) => a[0] - b[0])) {
    const last = segments.at(-1);
    if (last && last.end === code - 1 && last.delta === glyph - code) last.end = code;
    else segments.push({ start: code, end: code, delta: glyph - code });
  }
  segments.push({ start: 0xffff, end: 0xffff, delta: 1 });
  const n = segments.length;
  const power = 2 ** Math.floor(Math.log2(n));
  const head = [0, 1, 3, 1, 0, 12, 4, 16 + 8 * n, 0, 2 * n, 2 * power, Math.log2(power), 2 * (n - power)];
  const ends = [...segments.map((s) => s.end), 0];
  const rest = [...segments.map((s) => s.start), ...segments.map((s) => s.delta & 0xffff), ...segments.map(() => 0)];
  const words = [...head, ...ends, ...rest];
  const out = new Uint8Array(2 * words.length);
  words.forEach((word, i) => viewOf(out).setUint16(2 * i, word));
  return out;
}
/** Checksum of a table: its words added up, modulo 2^32. */
function checksum(bytes: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < bytes.length; i += 4) {
    const word =
      ((bytes[i] ?? 0) * 2 ** 24 + ((bytes[i + 1] ?? 0) << 16) + ((bytes[i + 2] ?? 0) << 8) + (bytes[i + 3] ?? 0)) >>>
      0;
    sum = (sum + word) >>> 0;
  }
  return sum;
}
function fontFile(tables: readonly (readonly [tag: string, bytes: Uint8Array])[]): Uint8Array {
  const count = tables.length;
  const power = 2 ** Math.floor(Math.log2(count));
  const out = new Uint8Array(tables.reduce((sum, [, b]) => sum + padded(b.length), 12 + 16 * count));
  const view = viewOf(out);
  view.setUint32(0, 0x00010000);
  [count, 16 * power, Math.log2(power), 16 * (count - power)].forEach((word, i) => view.setUint16(4 + 2 * i, word));
  let at = 12 + 16 * count;
  let head = 0;
  tables.forEach(([tag, bytes], i) => {
    [...tag].forEach((c, k) => view.setUint8(12 + 16 * i + k, c.charCodeAt(0)));
    [checksum(bytes), at, bytes.length].forEach((word, k) => view.setUint32(16 + 16 * i + 4 * k, word));
    out.set(bytes, at);
    if (tag === 'head') head = at;
    at += padded(bytes.length);
  });
  view.setUint32(head + 8, (0xb1b0afba - checksum(out)) >>> 0);
  return out;
}
