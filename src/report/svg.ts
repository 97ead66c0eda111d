/** Writes a sheet as SVG through svg.js on svgdom: one detached root a sheet, own ids, no measuring by the library. */
import type { Container, Dom, Svg } from '@svgdotjs/svg.js';
import type { Picture, Sheet, TextItem, Tone } from '../drawings/picture.js';
import { glyphOf } from '../type/measure.js';
import { PENS } from '../type/pens.js';
import { subsetFor } from '../type/subset.js';
import type { Faces } from '../type/type.js';
import { paintsOf, startOf, type Paint } from './paint.js';
import { say, svgPath } from './paths.js';

export interface SvgOptions {
  readonly faces: Faces;
  /** Writes what the sheet needs of both fonts into the file, so that it looks the same where the typeface is not installed. */
  readonly embedFonts?: boolean;
  /** Address of a sheet that a group leads to; without it, links are left out. */
  readonly hrefOf?: (sheet: string) => string | undefined;
}
const FAMILY = 'IBM Plex Sans Condensed';
const TONE: Readonly<Record<Tone, string>> = { black: '#000', white: '#fff', grey: '#e4e4e4' };
type Attributes = Readonly<Record<string, string>>;
/** The writer: one SVG text a sheet. */
export type SvgWriter = (sheet: Sheet) => string;

/** Loads the library once and gives the writer. */
export async function svgWriter(options: SvgOptions): Promise<SvgWriter> {
  const [{ createSVGWindow }, svgjs] = await Promise.all([import('svgdom'), import('@svgdotjs/svg.js')]);
  const window = createSVGWindow();
  svgjs.registerWindow(window, window.document);
  return (sheet) => writeSheet(svgjs.SVG() as Svg, sheet, options);
}
/** Writes several sheets, in their order. */
export async function writeSvgs(sheets: readonly Sheet[], options: SvgOptions): Promise<readonly string[]> {
  const write = await svgWriter(options);
  return sheets.map(write);
}

function writeSheet(root: Svg, sheet: Sheet, options: SvgOptions): string {
  const [width, height] = sheet.size.map(say) as [string, string];
  const id = xmlId(sheet.id);
  root.attr({
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: `0 0 ${width} ${height}`,
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-alt`,
    style: 'font-kerning:none;font-variant-ligatures:none',
    'text-rendering': 'geometricPrecision',
    'stroke-linejoin': 'round',
    'font-family': FAMILY,
    fill: 'none',
  });
  add(root, 'title', { id: `${id}-title` }).words(printable(sheet.title));
  add(root, 'desc', { id: `${id}-alt` }).words(printable(sheet.alt));
  if (options.embedFonts === true) add(root, 'style', {}).words(fontFaces(options.faces, sheet.picture));
  add(root, 'path', { d: `M0 0H${width}V${height}H0Z`, fill: '#fff' });
  paintsOf(sheet.picture).forEach((paint) => write(root, paint, options));
  const out: string[] = [];
  addText(root.node as unknown as TreeNode, out);
  return `${out.join('')}\n`;
}
/** What is read of svgdom's tree. */
interface TreeNode {
  readonly nodeType: number;
  readonly nodeName: string;
  readonly data: string;
  readonly attrs: Iterable<{ readonly name: string; readonly value: string }>;
  readonly childNodes: readonly TreeNode[];
}
const TEXT_NODE = 3;
const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string =>
  /[&<>"]/.test(text) ? text.replace(/[&<>"]/g, (c) => ENTITIES[c] as string) : text;
/** Attributes that this writer makes of numbers alone. */
const NUMERIC: ReadonlySet<string> = new Set(['d', 'x', 'y', 'font-size', 'stroke-width', 'textLength']);
/** An element and all in it as text: what the library's own writer gives, in a third of its time. Pieces, to be joined. */
function addText(node: TreeNode, out: string[]): void {
  if (node.nodeType === TEXT_NODE) {
    out.push(escaped(node.data));
    return;
  }
  out.push('<', node.nodeName);
  for (const { name, value } of node.attrs) out.push(' ', name, '="', NUMERIC.has(name) ? value : escaped(value), '"');
  out.push('>');
  for (const inner of node.childNodes) addText(inner, out);
  out.push('</', node.nodeName, '>');
}
/** Adds an element with its attributes, by name, so that nothing is parsed, measured or numbered by the library. */
function add(parent: Dom, name: string, attributes: Attributes): Container {
  const element = parent.element(name) as unknown as Container;
  for (const [key, value] of Object.entries(attributes)) element.node.setAttribute(key, value);
  return element;
}
const xmlId = (id: string): string => id.replace(/[^A-Za-z0-9_.-]/g, '-').replace(/^(?![A-Za-z_])/, '_');

function write(parent: Dom, paint: Paint, options: SvgOptions): void {
  if (paint.kind === 'fill') add(parent, 'path', { d: svgPath(paint.d), fill: TONE[paint.tone] });
  else if (paint.kind === 'stroke') add(parent, 'path', { d: svgPath(paint.d), ...penAttributes(paint.pen) });
  else if (paint.kind === 'line') writeLine(parent, paint.words, options.faces);
  else if (paint.kind === 'hidden') writeHidden(parent, paint.text, paint.width);
  else if (paint.kind === 'figure') {
    write(parent, paint.fill, options);
    writeHidden(parent, paint.text, paint.width);
  } else writeGroup(parent, paint, options);
}
function penAttributes(pen: keyof typeof PENS): Attributes {
  const { width, dash, cap } = PENS[pen];
  return {
    stroke: '#000',
    'stroke-width': say(width),
    ...(cap === 'butt' ? {} : { 'stroke-linecap': cap }),
    ...(dash ? { 'stroke-dasharray': dash.map(say).join(' ') } : {}),
  };
}
const weight = (text: TextItem): Attributes => (text.face === 'semibold' ? { 'font-weight': '600' } : {});

/** One text object for the words of a line, each at its own x from the table of advance widths. */
function writeLine(parent: Dom, words: readonly TextItem[], faces: Faces): void {
  const first = words[0];
  if (!first) return;
  const x = startOf(faces, first);
  const place = first.turn === 0 ? {} : { transform: `rotate(${say(first.turn)} ${say(first.x)} ${say(first.y)})` };
  const text = add(parent, 'text', {
    x: say(x),
    y: say(first.y),
    'font-size': say(first.size),
    fill: TONE[first.tone ?? 'black'],
    'xml:space': 'preserve',
    ...place,
    ...(words.length === 1 ? weight(first) : {}),
  });
  if (words.length === 1) text.words(printable(first.string));
  else words.forEach((w) => add(text, 'tspan', { x: say(startOf(faces, w)), ...weight(w) }).words(printable(w.string)));
}
/** What XML can carry (XML 1.0, 2.2), a no-break space as a space; anything else becomes the sign for a character that cannot be shown. */
const printable = (string: string): string =>
  string
    .replaceAll('\u00a0', ' ')
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '\ufffd');
/** The plain text that lies unseen over an outlined figure, for reading and searching. */
function writeHidden(parent: Dom, text: TextItem, width: number): void {
  add(parent, 'text', {
    x: say(text.x),
    y: say(text.y),
    'font-size': say(text.size),
    ...weight(text),
    textLength: say(width),
    lengthAdjust: 'spacingAndGlyphs',
  }).words(printable(text.string));
}
function writeGroup(parent: Dom, paint: Paint & { kind: 'group' }, options: SvgOptions): void {
  const { group } = paint;
  const id = xmlId(group.id);
  const href = group.link === undefined ? undefined : options.hrefOf?.(group.link);
  const outer = href === undefined ? parent : add(parent, 'a', { href });
  if (group.clip) add(add(outer, 'clipPath', { id: `${id}-clip` }), 'path', { d: svgPath(group.clip) });
  const [x, y] = group.at ?? [0, 0];
  const element = add(outer, 'g', {
    id,
    ...(group.at ? { transform: `translate(${say(x)} ${say(y)})` } : {}),
    ...(group.clip ? { 'clip-path': `url(#${id}-clip)` } : {}),
    ...(group.role === undefined ? {} : { 'data-role': group.role }),
  });
  if (group.alt !== undefined) add(element, 'title', {}).words(printable(group.alt));
  paint.paints.forEach((inner) => write(element, inner, options));
}
/** What the sheet uses of both fonts, as data, so that the file stands alone. */
function fontFaces(faces: Faces, picture: Picture): string {
  const face = (which: TextItem['face'], weightOf: number): string => {
    const characters = charactersOf(faces, picture, which);
    if (characters.size === 0) return '';
    const data = base64(subsetFor(faces[which].bytes, characters));
    return `@font-face{font-family:"${FAMILY}";font-weight:${weightOf};src:url(data:font/ttf;base64,${data}) format("truetype")}`;
  };
  return face('regular', 400) + face('semibold', 600);
}
/** Code points that are set in a face, with their glyphs. */
function charactersOf(faces: Faces, picture: Picture, which: TextItem['face']): Map<number, number> {
  const found = new Map<number, number>();
  const visit = (items: Picture): void => {
    for (const item of items) {
      if (item.kind === 'group') visit(item.items);
      else if (item.kind === 'text' && item.face === which)
        for (const c of printable(item.string))
          found.set(c.codePointAt(0) ?? 0x20, glyphOf(faces[which], c.codePointAt(0) ?? 0x20));
    }
  };
  visit(picture);
  return found;
}
const base64 = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64');
