import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { cardsOf } from '../../src/drawings/cards/words.js';
import type { Card } from '../../src/drawings/cards/words.js';
import { resolvePiece } from '../../src/piece/resolve.js';

const cards = (file: string): Map<string, Card> => {
  const text = readFileSync(new URL(`../../templates/pieces/${file}`, import.meta.url), 'utf8');
  const read = readDefinition(text, file, { shipped: () => undefined });
  const piece = read.value && resolvePiece(read.value).value;
  if (!piece) throw new Error(`${file} makes no piece`);
  return new Map(cardsOf({ piece }).map((c) => [c.part.mark, c]));
};
const chest = cards('tall-chest.jsonc');
const stand = cards('nightstand.jsonc');
const row = (all: Map<string, Card>, mark: string, label: string): string | undefined =>
  all.get(mark)?.rows.find((r) => r.label === label)?.text.map((t) => t.string).join(''); // prettier-ignore
const cutText = (all: Map<string, Card>, mark: string, name: RegExp): string =>
  all.get(mark)?.callouts.find((c) => name.test(c.text))?.text ?? '';

describe('the rows of a case side', () => {
  // The relief is work on the BOTTOM end, though it goes through the thickness; sockets and rabbet come out at the back.
  it('name no face as untouched where a cut is made or a joint comes out', () => {
    expect(row(chest, 'A1', 'No work')).toBe(
      'OUTSIDE face, FRONT edge. BACK edge: only where cuts 2, 3 and 5 run out.',
    );
  });
  it('give the glue of both rails that share a socket', () => {
    expect(cutText(chest, 'A1', /^Sliding/)).toContain(
      'Glue the first 2 behind the stop; the last 2 before the rabbet; none between them.',
    );
  });
  // By hand: 41 1/8 less the uppermost centre, 34 3/4.
  it('are proved by the end and the nearest socket', () => {
    expect(chest.get('A1')?.prove).toEqual({ what: 'TOP end to centre of the nearest socket', figure: '6 3/8' });
  });
  it('name each slide by its drawer, and only the screws that this part takes', () => {
    const line = cutText(chest, 'A1', /^Slide/);
    expect(line).toContain('11 3/8 slide of D5 · 21 1/8 slide of D4 · 29 7/8 slide of D3 · 37 5/8 slide of D1;');
    expect(line).not.toContain('both faces');
  });
});

describe('the rows of a drawer box', () => {
  // Clockwise from above: FRONT left A, FRONT right B, BACK right C, BACK left D; each corner has one letter on both members.
  it('letter its four corners alike on all four members', () => {
    const said = ['D1.1', 'D1.2', 'D1.3', 'D1.4'].map((m) => row(chest, m, 'Letter')?.split(',')[0]);
    expect(said).toEqual([
      'LEFT end A · RIGHT end B',
      'FRONT end A · BACK end D',
      'FRONT end B · BACK end C',
      'LEFT end D · RIGHT end C',
    ]);
  });
  // By hand: 16 3/4 less 1 1/32 is 15 23/32; less 1, plus 1/2, less 1/16 is 15 5/32; 15 plus 1/2 less 1/16 is 15 7/16.
  it('give the sizes of the mates', () => {
    expect(row(chest, 'D1.2', 'Mates')).toBe(
      'D1.1 and D1.4 15 23/32 long, fit. D1.6 15 5/32 × 15 7/16, in before the last side.',
    );
  });
  it('say how the side goes on, and what is cut with it', () => {
    expect(row(chest, 'D1.2', 'Way in')).toBe('Goes on broadside, from the left, on to D1.1 and D1.4 at once.');
    expect(row(chest, 'D1.2', 'Alike')).toMatch(/^With D1\.3, D2\.2 and D2\.3: one stop/);
  });
  it('say whose mates the copy in another drawer takes, and how thick its bottom was measured', () => {
    expect(row(chest, 'D1.2', 'Marks')).toBe('On D2.2 read D2 where this card says D1.');
    expect(row(chest, 'D1.2', 'Turned')).toBeUndefined();
    expect(cutText(chest, 'D1.2', /^Groove/)).toContain('For D1.6. No glue. Dry fit it (.205) in an offcut first.');
  });
  it('proves the side between its base lines: 16 less two halves', () => {
    expect(chest.get('D1.2')?.prove).toEqual({ what: 'base line to base line', figure: '15' });
  });
});

describe('the rows of a leg', () => {
  // By hand: the opening of the end panel 11 3/4 and two grooves of 3/8.
  it('prove it between the mortises of the end frame', () => {
    expect(stand.get('L1')?.prove).toEqual({
      what: 'BACK face, top of lower mortise to bottom of upper',
      figure: '12 1/2',
    });
  });
  it('name the mortise that a mortise runs into by the number of its cut', () => {
    const met = stand.get('L1')?.callouts.filter((c) => c.text.includes('Runs into')) ?? [];
    expect(met).toHaveLength(2);
    expect(met[0]?.text).toContain(`Runs into cut ${met[1]?.number}`);
    expect(met[1]?.text).toContain(`Runs into cut ${met[0]?.number}`);
  });
  // The back right leg is the back left one turned a quarter clockwise from above: right goes to the front, front to the left.
  it('say what the leg that shares the card takes where it stands', () => {
    expect(row(stand, 'L3', 'Turned')).toBe(
      'L4: RIGHT face stands FRONT, takes E4, E5, E6; FRONT face stands LEFT, takes K1, K2, K3.',
    );
  });
});

describe('every row of every card', () => {
  it('begins with a capital or a figure and ends with a stop', () => {
    for (const all of [chest, stand, cards('letter-cabinet.jsonc')]) {
      for (const card of all.values()) {
        for (const r of card.rows) expect(r.text.map((t) => t.string).join('')).toMatch(/^[A-Z0-9].*\.$/);
      }
    }
  });
});
