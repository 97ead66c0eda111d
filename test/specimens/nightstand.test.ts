import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/lengths/format.js';
import type { BoxCut } from '../../src/words/cut.js';
import { byMark, overAll, shippedPiece } from './pieces.js';

/** Figures worked by hand from the chains 3 + 11 3/4 + 2 1/2 + 8 = 25 1/4 and 3/4 + 4 1/2 + 3/4 + 9 1/2 + 1 3/4 = 17 1/4. */
const stand = shippedPiece('nightstand');
const say = (n: number): string => formatLength(n, 'in');
const length = byMark(stand, 'L1').size[2].value;
const mortise = (mark: string, from: string): BoxCut =>
  byMark(stand, mark).cuts.find((c) => c.shape === 'box' && c.as === 'mortise' && c.from === from) as BoxCut;
const fromTop = (c: BoxCut): string => `${say(length - c.at[2][1])} to ${say(length - c.at[2][0])}`;

describe('nightstand', () => {
  it('legs are 1 1/2 square and 25 1/4 long; the front ones are a mirror pair', () => {
    for (const mark of ['L1', 'L2', 'L3', 'L4']) expect(overAll(byMark(stand, mark), stand)).toBe('1 1/2 x 1 1/2 x 25 1/4');
    expect(byMark(stand, 'L2').mirrorOf).toBe('leg_front_left');
    expect(byMark(stand, 'L2').turnOf).toBeUndefined();
  });
  it('the two back legs are one part, turned', () => {
    expect(byMark(stand, 'L4').turnOf).toBe('leg_back_left');
  });
  it.each([
    ['ends_top', 'back', '1 1/8 to 2 5/8', '1 1/8'],
    ['ends_low', 'back', '15 1/8 to 16 5/8', '1 1/8'],
    ['front_lows', 'right', '15 3/4 to 17', '1 1/8'],
    ['drawer_rails', 'right', '5 3/8 to 5 7/8', '3/4'],
  ])('front left leg: mortise for %s on its %s face, %s from TOP, %s deep', (from, face, heights, depth) => {
    const c = mortise('L1', from);
    const axis = face === 'back' ? 1 : 0;
    expect([c.face, fromTop(c), say(c.at[axis][1] - c.at[axis][0])]).toEqual([face, heights, depth]);
  });
  it('its groove runs from TOP, 1/4 wide and 3/8 deep, and ends inside mortise b', () => {
    const groove = byMark(stand, 'L1').cuts.find((c) => c.shape === 'box' && c.as === 'groove') as BoxCut;
    expect([say(groove.at[0][0]), say(groove.at[0][1]), say(groove.at[1][1] - groove.at[1][0]), say(length - groove.at[2][1])]).toEqual(['3/8', '5/8', '3/8', '0']);
    // It must end inside mortise b, so that no open groove shows below the rail.
    const b = mortise('L1', 'ends_low');
    expect(groove.at[2][0]).toBeGreaterThanOrEqual(b.at[2][0]);
    expect(groove.at[2][0]).toBeLessThanOrEqual(b.at[2][1]);
  });
  it('tapers are on the inside faces only, 5/8 off each in the last 7 1/2', () => {
    const tapers = byMark(stand, 'L1').cuts.flatMap((c) => (c.shape === 'taper' ? [[c.face, say(c.begin), say(c.off)]] : []));
    expect(tapers).toEqual([
      ['right', '7 1/2', '5/8'],
      ['back', '7 1/2', '5/8'],
    ]);
  });
  it('between the mortises of an end: 12 1/2, the panel opening and two grooves', () => {
    expect(say(mortise('L1', 'ends_top').at[2][0] - mortise('L1', 'ends_low').at[2][1])).toBe('12 1/2');
  });
});
