import { inflateSync } from 'node:zlib';

/** One object of a PDF: its dictionary or value as text, and its stream's bytes, inflated when they are asked for. */
export interface PdfObject {
  readonly text: string;
  readonly stream?: () => Uint8Array;
}
/** Bytes as characters of the same number. */
export const latin = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');

/** All objects of a PDF by number, those packed in object streams too (PDF 1.7, 7.3.10 and 7.5.7). Throws RangeError when it is none. */
export function pdfObjects(bytes: Uint8Array): ReadonlyMap<number, PdfObject> {
  const file = latin(bytes);
  if (!file.startsWith('%PDF-')) throw new RangeError('not a PDF');
  const out = new Map<number, PdfObject>();
  const head = /(\d+) 0 obj\s*/g;
  for (let found = head.exec(file); found; found = head.exec(file)) {
    const start = head.lastIndex;
    const end = file.indexOf('endobj', start);
    const at = file.indexOf('stream', start);
    if (at < 0 || at > end) {
      out.set(Number(found[1]), { text: file.slice(start, end).trim() });
      head.lastIndex = end;
      continue;
    }
    const text = file.slice(start, at).trim();
    const from = file.startsWith('\r\n', at + 6) ? at + 8 : at + 7;
    const length = Number(/\/Length (\d+)(?! \d+ R)/.exec(text)?.[1]);
    const raw = bytes.subarray(from, from + length);
    out.set(Number(found[1]), { text, stream: () => (text.includes('/FlateDecode') ? inflateSync(raw) : raw) });
    head.lastIndex = from + length;
  }
  unpack(out);
  return out;
}
function unpack(objects: Map<number, PdfObject>): void {
  for (const { text, stream } of [...objects.values()]) {
    if (!stream || !/\/Type\s*\/ObjStm/.test(text)) continue;
    const content = latin(stream());
    const first = numberIn(text, 'First');
    const pairs = content.slice(0, first).trim().split(/\s+/).map(Number);
    for (let i = 0; i + 1 < pairs.length; i += 2) {
      const from = first + (pairs[i + 1] as number);
      const to = i + 3 < pairs.length ? first + (pairs[i + 3] as number) : content.length;
      objects.set(pairs[i] as number, { text: content.slice(from, to).trim() });
    }
  }
}
export const numberIn = (text: string, key: string): number =>
  Number(new RegExp(`/${key}\\s+(-?[\\d.]+)`).exec(text)?.[1] ?? NaN);
/** The numbers of the objects that a key refers to, one or an array. */
export function refsIn(text: string, key: string): number[] {
  const found = new RegExp(`/${key}\\s*(\\[[^\\]]*\\]|\\d+ 0 R)`).exec(text)?.[1] ?? '';
  return [...found.matchAll(/(\d+) 0 R/g)].map((m) => Number(m[1]));
}
