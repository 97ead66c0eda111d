/** Binds sheets into one PDF with pdf-lib: our own content streams and font objects, fixed dates and id, the same bytes every time. */
import type { PDFDocument, PDFName, PDFRef } from 'pdf-lib';
import { deflate } from 'pako';
import type { Sheet } from '../drawings/picture.js';
import { subsetFont } from '../type/subset.js';
import type { Face, Faces } from '../type/type.js';
import { linksOf } from './paint.js';
import { say } from './paths.js';
import { FigureUse, pageContent, POINT } from './pdfContent.js';
import { FONT, GlyphUse, subsetTag, toUnicode, widthArray, type FaceName } from './pdfText.js';

export interface PdfOptions {
  readonly faces: Faces;
  readonly title: string;
  /** Date of the definition, `2027-02-01`: the only date in the document. */
  readonly date: string;
  /** Hash of the inputs in hexadecimal: becomes the document's id. */
  readonly hash: string;
  readonly author?: string;
}
type Library = typeof import('pdf-lib');

/** Writes the sheets, one page each, in their order. Throws RangeError when the date is not a date. */
export async function writePdf(sheets: readonly Sheet[], options: PdfOptions): Promise<Uint8Array> {
  const lib = await import('pdf-lib');
  const doc = await lib.PDFDocument.create({ updateMetadata: false });
  describe(lib, doc, options);
  const use = new GlyphUse(options.faces);
  const figures = new FigureUse();
  const contents = sheets.map((s) => pageContent(options.faces, use, figures, s.picture, s.size[1]));
  const fonts = {
    [FONT.regular]: addFont(lib, doc, options.faces.regular, use, 'regular'),
    [FONT.semibold]: addFont(lib, doc, options.faces.semibold, use, 'semibold'),
  };
  const resources = doc.context.register(doc.context.obj({ Font: fonts, XObject: addFigures(lib, doc, figures) }));
  const pages = sheets.map((sheet, i) => {
    const page = doc.addPage([round(sheet.size[0] * POINT), round(sheet.size[1] * POINT)]);
    page.node.set(name(lib, 'Resources'), resources);
    page.node.set(name(lib, 'Contents'), addStream(lib, doc, contents[i] ?? ''));
    return page.ref;
  });
  addLinks(lib, doc, options.faces, sheets, pages);
  addOutline(lib, doc, sheets, pages);
  return doc.save({
    useObjectStreams: true,
    addDefaultPage: false,
    updateFieldAppearances: false,
    objectsPerTick: Infinity,
  });
}
const round = (points: number): number => Number(say(points));
const name = (lib: Library, value: string): PDFName => lib.PDFName.of(value);
/** Content streams hold ASCII alone: strings are glyph numbers. */
const ascii = (text: string): Uint8Array => Buffer.from(text, 'latin1');
/** How little of it all the packing of a short stream needs: a window of 4 kB, small tables. A third of the time. */
const SHORT = { level: 3, windowBits: 12, memLevel: 4, chunkSize: 2048 } as const;
/** A stream deflated by pako, whose bytes do not depend on the processor; level 3: half the time of 6 for a tenth more bytes (measured). */
function addStream(
  lib: Library,
  doc: PDFDocument,
  content: string | Uint8Array,
  more: Record<string, number> = {},
): PDFRef {
  const bytes = deflate(typeof content === 'string' ? ascii(content) : content, { level: 3 });
  const dict = doc.context.obj({ ...more, Filter: 'FlateDecode', Length: bytes.length });
  return doc.context.register(lib.PDFRawStream.of(dict, bytes));
}
function describe(lib: Library, doc: PDFDocument, options: PdfOptions): void {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(options.date);
  if (!parts) throw new RangeError(`not a date: ${options.date}`);
  const text = (s: string) => lib.PDFHexString.fromText(s);
  const date = lib.PDFString.of(`D:${parts.slice(1).join('')}000000Z`);
  const information = { Title: text(options.title), Creator: text('benchpacket'), Producer: text('benchpacket') };
  const author = options.author === undefined || options.author === '' ? {} : { Author: text(options.author) };
  const { context, catalog } = doc;
  context.trailerInfo.Info = context.register(
    context.obj({ ...information, ...author, CreationDate: date, ModDate: date }),
  );
  const id = lib.PDFHexString.of(
    options.hash
      .replace(/[^0-9a-fA-F]/g, '')
      .padEnd(32, '0')
      .slice(0, 32)
      .toUpperCase(),
  );
  context.trailerInfo.ID = context.obj([id, id]);
  catalog.set(name(lib, 'Lang'), lib.PDFString.of('en'));
  catalog.set(name(lib, 'ViewerPreferences'), context.obj({ DisplayDocTitle: true, PrintScaling: 'None' }));
  catalog.set(name(lib, 'PageLabels'), context.obj({ Nums: [0, { S: 'D' }] }));
}
/** The forms of the figures, by name. */
function addFigures(lib: Library, doc: PDFDocument, figures: FigureUse): Record<string, PDFRef> {
  const forms = figures.forms.map(({ name: key, content, box }): [string, PDFRef] => {
    const bytes = deflate(ascii(content), SHORT);
    const kind = { Type: 'XObject', Subtype: 'Form', BBox: box.map(round), Resources: {} };
    const dict = doc.context.obj({ ...kind, Filter: 'FlateDecode', Length: bytes.length });
    return [key, doc.context.register(lib.PDFRawStream.of(dict, bytes))];
  });
  return Object.fromEntries(forms);
}
/** A Type 0 font over a TrueType subset, glyphs named by number (PDF 1.7, 9.7). */
function addFont(lib: Library, doc: PDFDocument, face: Face, use: GlyphUse, which: FaceName): PDFRef {
  const used = use[which];
  const { context } = doc;
  const file = subsetFont(face.bytes, used.keys());
  const BaseFont = `${subsetTag(used)}+${face.name}`;
  const descriptor = context.register(
    context.obj({
      Type: 'FontDescriptor',
      FontName: BaseFont,
      Flags: 4,
      FontBBox: [...fontBox(face)],
      ItalicAngle: 0,
      Ascent: 1025,
      Descent: -275,
      CapHeight: 698,
      StemV: which === 'regular' ? 80 : 120,
      FontFile2: addStream(lib, doc, file, { Length1: file.length }),
    }),
  );
  const descendant = context.obj({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    BaseFont,
    CIDSystemInfo: { Registry: lib.PDFString.of('Adobe'), Ordering: lib.PDFString.of('Identity'), Supplement: 0 },
    FontDescriptor: descriptor,
    DW: 0,
    W: widthArray(face, used).map((entry) => (typeof entry === 'number' ? entry : [...entry])),
    CIDToGIDMap: 'Identity',
  });
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'Type0',
      BaseFont,
      Encoding: 'Identity-H',
      DescendantFonts: [context.register(descendant)],
      ToUnicode: addStream(lib, doc, toUnicode(used)),
    }),
  );
}
/** The font's box in thousandths of an em, from its head table. */
function fontBox(face: Face): readonly number[] {
  const view = new DataView(face.bytes.buffer, face.bytes.byteOffset, face.bytes.byteLength);
  for (let i = 0; i < view.getUint16(4); i++) {
    if (view.getUint32(12 + 16 * i) !== 0x68656164) continue;
    const head = view.getUint32(12 + 16 * i + 8);
    return [36, 38, 40, 42].map((at) => Math.round((view.getInt16(head + at) * 1000) / face.unitsPerEm));
  }
  return [0, -275, 1000, 1025];
}
/** Makes each group that leads to a sheet a link to its page. */
function addLinks(
  lib: Library,
  doc: PDFDocument,
  faces: Faces,
  sheets: readonly Sheet[],
  pages: readonly PDFRef[],
): void {
  const pageOf = new Map(sheets.map((sheet, i) => [sheet.id, pages[i]]));
  sheets.forEach((sheet, i) => {
    const notes = linksOf(faces, sheet).flatMap(({ to, bounds }) => {
      const target = pageOf.get(to);
      if (!target) return [];
      const [left, top, right, bottom] = bounds;
      const Rect = [left, sheet.size[1] - bottom, right, sheet.size[1] - top].map((v) => round(v * POINT));
      return [
        doc.context.register(
          doc.context.obj({ Type: 'Annot', Subtype: 'Link', Rect, Border: [0, 0, 0], Dest: [target, 'Fit'] }),
        ),
      ];
    });
    if (notes.length > 0) doc.getPage(i).node.set(name(lib, 'Annots'), doc.context.obj(notes));
  });
}
/** The list of sheets at the side of a reader: one entry a sheet. */
function addOutline(lib: Library, doc: PDFDocument, sheets: readonly Sheet[], pages: readonly PDFRef[]): void {
  if (sheets.length === 0) return;
  const { context, catalog } = doc;
  const root = context.nextRef();
  const entries = sheets.map(() => context.nextRef());
  const link = (key: string, ref: PDFRef | undefined) => (ref ? { [key]: ref } : {});
  sheets.forEach((sheet, i) => {
    const [ref, page] = [entries[i], pages[i]];
    if (!ref || !page) return;
    const Title = lib.PDFHexString.fromText(`${i + 1}  ${sheet.title}`);
    const beside = { ...link('Prev', entries[i - 1]), ...link('Next', entries[i + 1]) };
    context.assign(ref, context.obj({ Title, Parent: root, Dest: [page, 'Fit'], ...beside }));
  });
  const ends = { ...link('First', entries[0]), ...link('Last', entries[entries.length - 1]) };
  context.assign(root, context.obj({ Type: 'Outlines', Count: entries.length, ...ends }));
  catalog.set(name(lib, 'Outlines'), root);
}
