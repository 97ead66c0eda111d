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
  it('takes the full form for more than four cuts or words that overflow, else two half cards a page', () => {
    const { pages, of } = planCards(input);
    const shown = pages.filter((p) => p.part === 0);
    // Each card once, numbered in the order of the marks.
    const numbers = shown.flatMap((p) => p.cards.map((c) => c.n)).sort((a, b) => a - b);
    expect(numbers).toEqual([...Array(of).keys()].map((i) => i + 1));
    for (const p of shown) {
      for (const { card } of p.cards) if (card.callouts.length > 4) expect(p.form).toBe('full');
      expect(p.cards.length).toBeLessThanOrEqual(p.form === 'full' ? 1 : 2);
    }
    // No half stays empty, and a left half card has its right beside it.
    const halves = shown.filter((p) => p.form === 'half');
    expect(halves.every((p) => p.cards.length === 2)).toBe(true);
    for (const p of halves) {
      const [a, b] = p.cards.map((c) => c.card.part);
      for (const [one, two] of [[a, b], [b, a]] as const) if (one?.mirrorOf) expect(one.mirrorOf).toBe(two?.id); // prettier-ignore
    }
    const formOf = (mark: string): string | undefined => shown.find((p) => p.cards.some((c) => c.card.part.mark === mark))?.form; // prettier-ignore
    expect([formOf('A1'), formOf('L1')]).toEqual(['full', 'full']);
    expect(formOf('D1.2')).toBe(formOf('D1.3'));
  });
  it('says on a card that runs over where it goes on, and ticks only on its first sheet', () => {
    const { pages } = planCards(input);
    const sheets = cardSheets(input, 7).map((s) => JSON.stringify(s.picture));
    pages.forEach((p, i) => {
      const goesOn = pages[i + 1]?.part === p.part + 1;
      const words = [...(sheets[i] ?? '').matchAll(/"string":"([^"]*)"/g)].map((m) => m[1] ?? '').join('').replace(/\s+/g, ' '); // prettier-ignore
      expect(words.includes(`continues on sheet ${i + 8}`)).toBe(goesOn);
      if (p.form === 'full') expect(words.includes('initials')).toBe(p.part === 0);
    });
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
