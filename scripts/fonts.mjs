/**
 * First: npm install --no-save --ignore-scripts @ibm/plex-sans-condensed@2.0.0
 * Makes templates/fonts/*.ttf once from the WOFF files of @ibm/plex-sans-condensed (SIL Open Font License 1.1): the same tables,
 * unchanged and whole, without the compression. WOFF 1.0 (W3C Recommendation, 2012): each table is stored plain or deflated.
 */
import { inflateSync } from 'node:zlib';
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';

const SOURCE = new URL('../node_modules/@ibm/plex-sans-condensed/', import.meta.url);
const TARGET = new URL('../templates/fonts/', import.meta.url);

/** The TrueType file that a WOFF file holds, its tables in the order of the directory. */
function unpack(woff) {
  const v = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (v.getUint32(0) !== 0x774f4646) throw new Error('not a WOFF file');
  const count = v.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((o) => v.getUint32(44 + 20 * i + o));
    const raw = woff.subarray(offset, offset + packed);
    return { tag, checksum, bytes: packed < length ? inflateSync(raw) : raw };
  });
  const size = tables.reduce((total, t) => total + ((t.bytes.length + 3) & ~3), 12 + 16 * count);
  const out = new Uint8Array(size);
  const w = new DataView(out.buffer);
  const log = Math.floor(Math.log2(count));
  w.setUint32(0, v.getUint32(4));
  [count, 16 * 2 ** log, log, 16 * (count - 2 ** log)].forEach((x, i) => w.setUint16(4 + 2 * i, x));
  let at = 12 + 16 * count;
  tables.forEach(({ tag, checksum, bytes }, i) => {
    [tag, checksum, at, bytes.length].forEach((x, k) => w.setUint32(12 + 16 * i + 4 * k, x));
    out.set(bytes, at);
    at += (bytes.length + 3) & ~3;
  });
  return out;
}

for (const weight of ['Regular', 'SemiBold']) {
  const name = `IBMPlexSansCondensed-${weight}`;
  writeFileSync(
    new URL(`${name}.ttf`, TARGET),
    unpack(readFileSync(new URL(`fonts/complete/woff/${name}.woff`, SOURCE))),
  );
}
copyFileSync(new URL('LICENSE.txt', SOURCE), new URL('OFL.txt', TARGET));
