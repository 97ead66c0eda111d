import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/lengths/format.js';
import type { BoxCut } from '../../src/words/cut.js';
import { byMark, overAll, shippedPiece } from './pieces.js';

/** Worked by hand: 394 = 4 x 94 + 3 x 6 inside, 307 = 60 drawer + 10 shelf + 3 x 75 + 2 x 6; 418 x 240 x 331 outside. */
const cabinet = shippedPiece('letter-cabinet');
const say = (n: number): string => formatLength(n, 'mm');

describe('desk-top letter cabinet', () => {
  it.each([
    ['A1', '12 x 240 x 331'],
    ['A3', '12 x 240 x 418'],
    ['A5', '10 x 234 x 402'],
    ['G2', '6 x 228 x 243'],
    ['H1', '6 x 228 x 400'],
  ])('%s is %s over all', (mark, size) => {
    expect(overAll(byMark(cabinet, mark), cabinet)).toBe(size);
  });
  it('the grid divides the inside into four by three', () => {
    const lefts = ['G1', 'G2', 'G3'].map((m) => say(byMark(cabinet, m).place.origin[0] - byMark(cabinet, 'A1').size[0].value));
    expect(lefts).toEqual(['94', '194', '294']);
    const shelfTop = byMark(cabinet, 'A5').place.origin[2] + byMark(cabinet, 'A5').size[2].value;
    expect(['H1', 'H2'].map((m) => say(byMark(cabinet, m).place.origin[2] - shelfTop))).toEqual(['75', '156']);
  });
  it('halved slots are 114 deep, in the FRONT edges of one set and the BACK edges of the other', () => {
    const slots = (mark: string): BoxCut[] => byMark(cabinet, mark).cuts.filter((c): c is BoxCut => c.shape === 'box' && c.as === 'slot');
    expect(slots('H1').map((c) => [c.face, say(c.at[1][1] - c.at[1][0]), say(c.at[0][1] - c.at[0][0])])).toEqual(Array(3).fill(['front', '114', '6']));
    expect(slots('G1').map((c) => [c.face, say(c.at[1][1] - c.at[1][0]), say(c.at[2][1] - c.at[2][0])])).toEqual(Array(2).fill(['back', '114', '6']));
  });
  it('its dadoes are open at the back and stopped in front, so that the grid goes in from BACK as one unit', () => {
    const dadoes = byMark(cabinet, 'A1').cuts.filter((c): c is BoxCut => c.shape === 'box' && c.as === 'dado');
    expect(dadoes.length).toBe(3);
    for (const d of dadoes) expect([say(d.at[1][0]), d.at[1][1] >= 234_000_000]).toEqual(['6', true]);
    expect(cabinet.joints.filter((j) => j.entering.startsWith('tray') && j.receiving.startsWith('side')).every((j) => j.way.includes('front'))).toBe(true);
  });
  it('the tails are on the sides: the case is lifted by its top', () => {
    for (const j of cabinet.joints.filter((x) => x.joint === 'corners')) expect([j.entering.startsWith('side'), ['top', 'bottom'].includes(j.receiving)]).toEqual([true, true]);
  });
  it('the drawer front is integral: five members and no slides', () => {
    expect(cabinet.parts.filter((p) => p.drawer !== undefined)).toHaveLength(5);
    expect(cabinet.hardware.filter((h) => h.kind === 'slide')).toEqual([]);
  });
});
