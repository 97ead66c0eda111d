import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cardSheets, planCards } from '../../../src/drawings/cards/index.js';
import type { CardInput } from '../../../src/drawings/cards/index.js';
import type { Sheet } from '../../../src/drawings/picture.js';
import { createKernel } from '../../../src/geom/kernel.js';
import type { CountedKernel } from '../../../src/geom/kernel.js';
import { loadFaces } from '../../../src/io/fonts.js';
import { proveCards } from '../../../src/proof/proveCards.js';
import { writePdf } from '../../../src/report/pdf.js';
import { svgWriter } from '../../../src/report/svg.js';
import { samplePiece } from './samplePiece.js';

let kernel: CountedKernel;
let input: CardInput;
beforeAll(async () => {
  kernel = await createKernel();
  input = { ...samplePiece(kernel), faces: loadFaces() };
});
afterAll(() => kernel.dispose());

describe('part cards', () => {
  it('takes the full form for more than four cuts, else two half cards a page', () => {
    const forms = planCards(input).pages.map((p) => `${p.form} ${p.cards.map((c) => c.card.part.mark).join(' ')}`);
    expect(forms).toEqual(['full A1', 'full A2', 'half D1.2 D1.3', 'full L1', 'half R4']);
  });
  it('reads back from the PDF: every part rebuilt from its card is the part of the model', async () => {
    const pdf = await writePdf(cardSheets(input), {
      faces: input.faces,
      title: 'cards',
      date: '2027-02-01',
      hash: 'abc',
    });
    const found = proveCards(pdf, input.piece, input.solids, kernel);
    expect(found.map((f) => `${f.code} ${f.message}`)).toEqual([]);
  });
  it('catches one figure, one face and one hand changed on the printed sheet', async () => {
    const sheets = JSON.stringify(cardSheets(input));
    const changes = [
      ['"string":"7/32"', '"string":"9/32"'],
      ['"string":"34 3/4"', '"string":"34 1/4"'],
      ['"string":"OUTSIDE "', '"string":"INSIDE "'],
      ['"string":"RIGHT "', '"string":"LEFT "'],
    ] as const;
    for (const [from, to] of changes) {
      expect(sheets).toContain(from);
      // The last place is in the words of a card, the first ones may only be in a picture.
      const at = sheets.lastIndexOf(from);
      const changed = JSON.parse(sheets.slice(0, at) + to + sheets.slice(at + from.length)) as Sheet[];
      const pdf = await writePdf(changed, { faces: input.faces, title: 'cards', date: '2027-02-01', hash: 'abc' });
      expect(proveCards(pdf, input.piece, input.solids, kernel).length).toBeGreaterThan(0);
    }
  });
  it('draws the same sheets twice', async () => {
    const write = await svgWriter({ faces: input.faces });
    const texts = cardSheets(input).map(write);
    expect(cardSheets(input).map(write)).toEqual(texts);
  });
});
