import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { cardSheets } from '../../src/drawings/cards/index.js';
import type { Sheet } from '../../src/drawings/picture.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { loadFaces } from '../../src/io/fonts.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { proveCards } from '../../src/proof/proveCards.js';
import { writePdf } from '../../src/report/pdf.js';
import { makeSolids } from '../../src/solids/make.js';
import { overlaps } from '../report/overlaps.js';

const FOLDER = new URL('../../templates/pieces/', import.meta.url);
const faces = loadFaces();
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

describe('every card of every shipped piece', () => {
  for (const file of readdirSync(FOLDER).sort()) {
    it(file, async () => {
      const text = readFileSync(new URL(file, FOLDER), 'utf8');
      const read = readDefinition(text, file, { shipped: () => undefined });
      const piece = read.value && resolvePiece(read.value).value;
      const solids = piece && makeSolids(piece, kernel).value;
      if (!piece || !solids) throw new Error(`${file} makes no piece`);
      const sheets: Sheet[] = cardSheets({ piece, solids, faces });
      const pdf = await writePdf(sheets, { faces, title: file, date: '2027-02-01', hash: 'abc' });
      const found = proveCards(pdf, piece, solids, kernel);
      expect(found.map((f) => `${f.code} ${f.message}`)).toEqual([]);
      for (const sheet of sheets) {
        expect({ id: sheet.id, over: overlaps(faces, sheet.picture) }).toEqual({ id: sheet.id, over: [] });
      }
    });
  }
});
