/** Reads a TrueType font: tables head, maxp, hhea, hmtx, cmap format 4, loca and glyf. Source: OpenType specification 1.9. */
import type { Face } from './type.js';

type Command = readonly ['M' | 'L', number, number] | readonly ['Q', number, number, number, number] | readonly ['Z'];
interface Point {
  readonly x: number;
  readonly y: number;
  readonly on: boolean;
}
type Contour = readonly Point[];

/** Reads the bytes of a TrueType font into a face. Throws RangeError when a needed table is missing or of another kind. */
export function readFace(bytes: Uint8Array): Face {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = readDirectory(view);
  const table = (tag: string): number => {
    const at = tables.get(tag);
    if (at === undefined) throw new RangeError(`the font has no table ${tag}`);
    return at;
  };
  const head = table('head');
  const glyphs = view.getUint16(table('maxp') + 4);
  const metrics = view.getUint16(table('hhea') + 34);
  const hmtx = table('hmtx');
  const cmap = readCharacters(view, table('cmap'));
  const read = outlineReader(view, table('loca'), table('glyf'), view.getInt16(head + 50) === 1, glyphs);
  const outlines = new Map<number, readonly Command[]>();
  return {
    name: readName(view, tables.get('name')),
    unitsPerEm: view.getUint16(head + 18),
    bytes,
    glyph: (codePoint) => cmap.get(codePoint) ?? 0,
    advance: (glyph) => view.getUint16(hmtx + 4 * Math.min(glyph, metrics - 1)),
    outline(glyph) {
      const known = outlines.get(glyph);
      if (known) return known;
      const drawn = read(glyph, 0).flatMap(contourPath);
      outlines.set(glyph, drawn);
      return drawn;
    },
  };
}

function readDirectory(view: DataView): Map<string, number> {
  if (view.getUint32(0) !== 0x00010000) throw new RangeError('not a font with TrueType outlines');
  const tables = new Map<string, number>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const tag = [0, 1, 2, 3].map((k) => String.fromCharCode(view.getUint8(at + k))).join('');
    tables.set(tag, view.getUint32(at + 8));
  }
  return tables;
}

/** The PostScript name (name id 6, Windows platform); a subset has none. */
function readName(view: DataView, at: number | undefined): string {
  if (at === undefined) return 'unnamed';
  const strings = at + view.getUint16(at + 4);
  for (let i = 0; i < view.getUint16(at + 2); i++) {
    const record = at + 6 + 12 * i;
    if (view.getUint16(record) !== 3 || view.getUint16(record + 6) !== 6) continue;
    const start = strings + view.getUint16(record + 10);
    const length = view.getUint16(record + 8) / 2;
    return Array.from({ length }, (_, k) => String.fromCharCode(view.getUint16(start + 2 * k))).join('');
  }
  return 'unnamed';
}

function readCharacters(view: DataView, cmap: number): Map<number, number> {
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const at = cmap + view.getUint32(cmap + 8 + 8 * i);
    if (view.getUint16(at) === 4) return readSegments(view, at);
  }
  throw new RangeError('the font has no character map of format 4');
}
function readSegments(view: DataView, at: number): Map<number, number> {
  const count = view.getUint16(at + 6) / 2;
  const characters = new Map<number, number>();
  for (let s = 0; s < count; s++) {
    const end = view.getUint16(at + 14 + 2 * s);
    const start = view.getUint16(at + 16 + 2 * count + 2 * s);
    const delta = view.getUint16(at + 16 + 4 * count + 2 * s);
    const range = at + 16 + 6 * count + 2 * s;
    const offset = view.getUint16(range);
    for (let c = start; c <= end && c < 0xffff; c++) {
      const listed = offset === 0 ? c : view.getUint16(range + offset + 2 * (c - start));
      if (offset !== 0 && listed === 0) continue;
      const glyph = (listed + delta) & 0xffff;
      if (glyph !== 0) characters.set(c, glyph);
    }
  }
  return characters;
}

function outlineReader(view: DataView, loca: number, glyf: number, long: boolean, glyphs: number) {
  const start = (g: number): number => (long ? view.getUint32(loca + 4 * g) : 2 * view.getUint16(loca + 2 * g));
  const read = (glyph: number, depth: number): readonly Contour[] => {
    if (glyph < 0 || glyph >= glyphs || start(glyph + 1) <= start(glyph)) return [];
    const at = glyf + start(glyph);
    const contours = view.getInt16(at);
    if (contours >= 0) return readSimple(view, at, contours);
    if (depth > 6) throw new RangeError(`glyph ${glyph} is made of itself`);
    return readComposite(view, at, (g) => read(g, depth + 1));
  };
  return read;
}

function readSimple(view: DataView, at: number, contours: number): readonly Contour[] {
  const ends = Array.from({ length: contours }, (_, i) => view.getUint16(at + 10 + 2 * i));
  const count = contours === 0 ? 0 : (ends[contours - 1] ?? -1) + 1;
  let cursor = at + 12 + 2 * contours + view.getUint16(at + 10 + 2 * contours);
  const flags: number[] = [];
  while (flags.length < count) {
    const flag = view.getUint8(cursor++);
    const times = (flag & 8) !== 0 ? view.getUint8(cursor++) + 1 : 1;
    for (let i = 0; i < times; i++) flags.push(flag);
  }
  const axis = (short: number, same: number): number[] => {
    let value = 0;
    return flags.map((flag) => {
      if ((flag & short) !== 0) value += (flag & same) !== 0 ? view.getUint8(cursor++) : -view.getUint8(cursor++);
      else if ((flag & same) === 0) {
        value += view.getInt16(cursor);
        cursor += 2;
      }
      return value;
    });
  };
  const xs = axis(2, 16);
  const ys = axis(4, 32);
  const points = flags.map((flag, i) => ({ x: xs[i] ?? 0, y: ys[i] ?? 0, on: (flag & 1) !== 0 }));
  return ends.map((end, i) => points.slice(i === 0 ? 0 : (ends[i - 1] ?? -1) + 1, end + 1));
}

function readComposite(view: DataView, at: number, read: (glyph: number) => readonly Contour[]): readonly Contour[] {
  const found: Contour[] = [];
  let cursor = at + 10;
  for (let more = true; more;) {
    const flags = view.getUint16(cursor);
    const glyph = view.getUint16(cursor + 2);
    const words = (flags & 1) !== 0;
    if ((flags & 2) === 0) throw new RangeError(`glyph ${glyph} is placed by point numbers, which is not read here`);
    const dx = words ? view.getInt16(cursor + 4) : view.getInt8(cursor + 4);
    const dy = words ? view.getInt16(cursor + 6) : view.getInt8(cursor + 5);
    cursor += words ? 8 : 6;
    const fraction = (i: number): number => view.getInt16(cursor + 2 * i) / 16384;
    let [a, b, c, d] = [1, 0, 0, 1];
    if ((flags & 0x08) !== 0) {
      a = d = fraction(0);
      cursor += 2;
    } else if ((flags & 0x40) !== 0) {
      [a, d] = [fraction(0), fraction(1)];
      cursor += 4;
    } else if ((flags & 0x80) !== 0) {
      [a, b, c, d] = [fraction(0), fraction(1), fraction(2), fraction(3)];
      cursor += 8;
    }
    for (const contour of read(glyph))
      found.push(contour.map((p) => ({ x: a * p.x + c * p.y + dx, y: b * p.x + d * p.y + dy, on: p.on })));
    more = (flags & 0x20) !== 0;
  }
  return found;
}

/** On-curve points lie half-way between two neighbouring off-curve points. */
function contourPath(contour: Contour): readonly Command[] {
  const first = contour.findIndex((p) => p.on);
  const a = contour[0];
  const z = contour[contour.length - 1];
  if (!a || !z) return [];
  const middle = (p: Point, q: Point): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2, on: true });
  const start = first >= 0 ? (contour[first] ?? a) : middle(z, a);
  const rest = first >= 0 ? [...contour.slice(first + 1), ...contour.slice(0, first)] : [...contour];
  const out: Command[] = [['M', start.x, start.y]];
  let off: Point | undefined;
  for (const point of [...rest, start]) {
    if (off && point.on) out.push(['Q', off.x, off.y, point.x, point.y]);
    else if (point.on) out.push(['L', point.x, point.y]);
    else if (off) {
      const between = middle(off, point);
      out.push(['Q', off.x, off.y, between.x, between.y]);
    }
    off = point.on ? undefined : point;
  }
  out.push(['Z']);
  return out;
}
