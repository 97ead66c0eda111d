import { describe, expect, it } from 'vitest';
import type { Face } from '../../src/geom/axis.js';
import { inches, mm } from '../../src/lengths/length.js';
import type { Part } from '../../src/piece/piece.js';
import { parseCallout, parseCallouts, sayCuts } from '../../src/words/callout.js';
import { cardText, parseCard } from '../../src/words/card.js';
import type { Cut, PlaneCut } from '../../src/words/cut.js';
import { frameOf } from '../../src/words/frame.js';
import { chestSide, drawerSide, leg, markOf, sample } from '../proof/parts.js';

const said = (part: Part): string[] => sayCuts(part, part.cuts, { units: 'in', markOf }).map((c) => c.text);

describe('what a card says', () => {
  // Sums by hand for the chest: heights of the rails 8 1/8, 17 7/8, 26 5/8, 34 3/8 from the floor, each plus half of 3/4.
  it('gives equal sockets as one callout, each centre with its mates', () => {
    const sockets = said(chestSide())[1] ?? '';
    expect(sockets).toContain('centres from BOTTOM end 8 1/2 R4 B4 · 18 1/4 R3 B3 · 27 R2 B2 · 34 3/4 R1 B1');
    expect(sockets).toContain('from BACK edge, stop 3/8 from FRONT edge');
  });
  it('puts the trial first, then joints, then shaping, then pencil lines', () => {
    const names = said(chestSide()).map((t) => t.split(',')[0]);
    expect(names).toEqual([
      'Trial first',
      'Sliding dovetail sockets',
      'Dovetail sockets',
      'Rabbet',
      'Relief',
      'Slide lines',
    ]);
  });
  it('says a stop that is measured from the side the cut begins at by that side alone', () => {
    const groove = cut({ shape: 'box', as: 'groove', face: 'front', at: [[inches(0.5), inches(0.75)], [0, inches(0.25)], [0, inches(5)]] }); // prettier-ignore
    const text = said(block([groove]))[0] ?? '';
    expect(text).toContain('from BOTTOM end, stop 5 from it');
    expect(parseCallout(text, frameOf(block([groove]), 'in'))?.cuts[0]).toMatchObject({ at: (groove as { at: unknown }).at }); // prettier-ignore
    // From the other end `it` would be no place that figures are measured from.
    expect(parseCallout(text.replace('from BOTTOM end, stop', 'from TOP end, stop'), frameOf(block([groove]), 'in'))).toBeUndefined(); // prettier-ignore
  });
  it('gives a recess into an edge two figures, each with its own direction', () => {
    expect(said(chestSide())[3]).toMatch(
      /^Rabbet, INSIDE face: into the face 3\/8; on 1\/4 from BACK edge; from TOP end, stop 8 1\/8 from BOTTOM end\./,
    );
  });
  // Five tails at 7/8: half a space of 7/16, then 7/8 each; by hand 7/16, 1 5/16, 2 3/16, 3 1/16, 3 15/16.
  it('says the tails of both ends in one callout', () => {
    const tails = said(drawerSide()).filter((t) => t.startsWith('Tails'));
    expect(tails).toHaveLength(1);
    expect(tails[0]).toContain(
      'five at each end: base line 3/8 from the end; bit 1/2, 14°; centres from BOTTOM edge 7/16, pitch 7/8; each',
    );
    const read = parseCallout(tails[0] ?? '', frameOf(drawerSide(), 'in'))?.cuts[0];
    const centres = read?.shape === 'tails' ? read.tails.map((x) => (x.atBase[0] + x.atBase[1]) / 2) : [];
    expect(centres).toEqual([7 / 16, 1 + 5 / 16, 2 + 3 / 16, 3 + 1 / 16, 3 + 15 / 16].map(inches));
    expect(tails[0]).toContain('FRONT end into D1.1; BACK end into D1.4.');
  });
  it('says eased sockets by the cut that they pass again, and reads them back moved, each with its own rail', () => {
    const part = chestSide();
    const ease = part.cuts.flatMap((c): Cut[] => {
      if (c.shape !== 'dovetail' || c.as !== 'socket') return [];
      const by = inches(-0.01); // toward BOTTOM
      const moved = (s: readonly [number, number]) => [s[0] + by, s[1] + by] as const;
      // From BACK (19) to 2 3/4 from FRONT; the back rail does not bind there.
      const run = [inches(2.75), c.runSpan[1]] as const;
      return [{ ...c, id: `${c.id}.ease`, as: 'ease', atFace: moved(c.atFace), atFloor: moved(c.atFloor), runSpan: run, mates: c.mates.slice(0, 1) }]; // prettier-ignore
    });
    expect(ease).toHaveLength(4);
    const all = [...part.cuts.filter((c) => c.shape !== 'dovetail' || c.as !== 'ease'), ...ease];
    const texts = sayCuts({ ...part }, all, { units: 'in', markOf }).map((c) => c.text);
    const i = texts.findIndex((t) => t.startsWith('Ease'));
    expect(texts[i]).toContain(
      'Ease the sockets, four, across INSIDE face: as cut 2, guide moved .010 toward BOTTOM end; from BACK edge, stop 2 3/4 from FRONT edge. For R',
    );
    const read = parseCallouts(texts, frameOf(part, 'in'))[i]?.cuts ?? [];
    const wanted = ease.map(({ id: _i, from: _f, rank: _r, glue: _g, notes: _n, trial: _t, ...c }) => ({ ...c, mates: c.mates.map(markOf) })); // prettier-ignore
    expect(read).toHaveLength(4);
    for (const w of wanted) expect(read).toContainEqual(w);
    // Without the card's other callouts the words stand for nothing.
    expect(parseCallout(texts[i] ?? '', frameOf(part, 'in'))).toBeUndefined();
  });
  it('says two tapers at once', () => {
    const tapers = said(leg()).find((t) => t.startsWith('Tapers'));
    expect(tapers).toBe(
      'Tapers, RIGHT face and BACK face: begin 17 3/4 from TOP end, straight to BOTTOM end; there 5/8 off each face.',
    );
  });
});

describe('a whole card read back', () => {
  it('finds mark, hand, size by direction, datums and every cut', () => {
    const part = drawerSide();
    const card = parseCard(cardText(part, sayCuts(part, part.cuts, { units: 'in', markOf }), 'in').replace(/ /g, '\n'));
    expect(card?.mark).toBe('D1.2');
    expect(card?.hand).toBe('left');
    expect(card?.frame.blank).toEqual([[0, inches(0.5)], [0, inches(15.75)], [0, inches(4.375)]]); // prettier-ignore
    expect(card?.reference).toEqual({ face: 'right', edge: 'bottom', end: 'front' });
    expect(card?.cuts).toHaveLength(4);
    expect(card?.unread).toEqual([]);
  });
  it('names a callout that is not in the grammar', () => {
    const part = drawerSide();
    const text = cardText(part, sayCuts(part, part.cuts, { units: 'in', markOf }), 'in').replace(
      '7/32 wide',
      '7/32 thick',
    );
    expect(parseCard(text)?.unread).toHaveLength(1);
  });
  it('is undefined for a text with no size row', () => {
    expect(parseCard('Measure from INSIDE face · FRONT edge · TOP end\nCuts, in this order')).toBeUndefined();
  });
});

const WORDS = ['LEFT', 'RIGHT', 'FRONT', 'BACK', 'BOTTOM', 'TOP'];
const block = (cuts: readonly Cut[], growth = 0): Part =>
  sample({
    id: 'x',
    mark: 'X1',
    name: 'block',
    size: [2, 3, 20],
    growth: [[0, 0], [0, 0], [growth, growth]], // prettier-ignore
    order: [0, 1, 2],
    words: WORDS,
    reference: { face: 'front', edge: 'left', end: 'bottom' },
    cuts,
  });
const cut = (rest: object, id = 'c'): Cut => ({ id, from: 'j', mates: [], rank: 2, ...rest }) as unknown as Cut;

describe('further shapes', () => {
  it('reads a bevel back as the same plane to half a thousandth of an inch', () => {
    const [c, s] = [0.9961947, 0.0871557]; // cosine and sine of 5 degrees
    const bevel = cut({ shape: 'plane', as: 'bevel', point: [0, 0, inches(19)], normal: [0, s, c] });
    const part = block([bevel]);
    const text = sayCuts(part, part.cuts, { units: 'in', markOf })[0]?.text ?? '';
    const read = parseCallout(text, frameOf(part, 'in'))?.cuts[0] as PlaneCut | undefined;
    const at = (p: readonly number[]): number => s * (p[1] ?? 0) + c * ((p[2] ?? 0) - inches(19));
    expect(read?.shape).toBe('plane');
    expect(Math.abs(at(read?.point ?? [0, 0, 0]))).toBeLessThan(12_700);
    expect(read?.normal[1]).toBeCloseTo(s, 3);
    expect(read?.normal[2]).toBeCloseTo(c, 3);
  });
  it('says equal end sockets at two ends once, and apart where they differ', () => {
    const socket = (end: 'bottom' | 'top', lo: number, mate: string): Cut =>
      cut(
        {
          shape: 'dovetail',
          as: 'end-socket',
          face: 'front',
          run: 2,
          taper: 0,
          runSpan: end === 'top' ? [inches(19.5), inches(20)] : [0, inches(0.5)],
          atFace: [inches(lo + 1 / 8), inches(lo + 5 / 8)],
          atFloor: [inches(lo), inches(lo + 3 / 4)],
          depth: inches(0.5),
          mates: [mate],
        },
        `${end}${lo}`,
      );
    const same = block([
      socket('bottom', 0.25, 'p1'),
      socket('bottom', 1, 'p1'),
      socket('top', 0.25, 'p2'),
      socket('top', 1, 'p2'),
    ]);
    const texts = said(same);
    expect(texts).toHaveLength(1);
    expect(texts[0]).toContain('two at each end');
    const read = parseCallout(texts[0] ?? '', frameOf(same, 'in'))?.cuts ?? [];
    const wanted = same.cuts.map((c) => ({ ...c, mates: c.mates.map(markOf) }));
    expect(read).toHaveLength(4);
    for (const w of wanted) {
      const { id, from, rank, ...rest } = w;
      expect([id, from, rank].length).toBe(3);
      expect(read).toContainEqual(rest);
    }
    expect(said(block([socket('bottom', 0.25, 'p1'), socket('top', 1, 'p2')]))).toHaveLength(2);
  });
  it('names the slide that a pencil line is for by its drawer, and reads it back as one mate', () => {
    const line = (at: number, id: string): Cut =>
      cut({ shape: 'mark', as: 'slide-line', face: 'front', axis: 0, over: [0, inches(2)], at: inches(at), mates: [id] }, id); // prettier-ignore
    const part = block([line(3, 's1'), line(9, 's2')]);
    const slides = (id: string): string => `slide of D${id.slice(1)}`;
    const text = sayCuts(part, part.cuts, { units: 'in', markOf: slides })[0]?.text ?? '';
    expect(text).toContain('3 slide of D1 · 9 slide of D2;');
    expect(parseCallout(text, frameOf(part, 'in'))?.cuts.map((c) => c.mates)).toEqual([
      ['slide of D1'],
      ['slide of D2'],
    ]);
  });
  it('prints and reads millimetres exactly', () => {
    const at = [[0, mm(12.3)], [mm(4), mm(10.5)], [mm(100), mm(163.5)]]; // prettier-ignore
    const mortise = cut({ shape: 'box', as: 'mortise', face: 'left' as Face, at });
    const part = {
      ...block([mortise]),
      size: [mm(50), mm(75), mm(500)].map((value) => ({ value, how: 'given' as const })),
    } as unknown as Part;
    const text = sayCuts(part, part.cuts, { units: 'mm', markOf })[0]?.text ?? '';
    expect(text).toBe(
      'Mortise, LEFT face: into the face 12.3; 4 to 10.5 from FRONT edge; 100 to 163.5 from BOTTOM end.',
    );
    expect(parseCallout(text, frameOf(part, 'mm'))?.cuts[0]).toMatchObject({
      shape: 'box',
      as: 'mortise',
      face: 'left',
      at,
    });
    const card = parseCard(cardText(part, sayCuts(part, part.cuts, { units: 'mm', markOf }), 'mm'));
    expect(card?.frame.units).toBe('mm');
    expect(card?.frame.blank[2]).toEqual([0, mm(500)]);
  });
});
