import { describe, expect, it } from 'vitest';
import type { PartSpec } from '../../src/definition/definition.js';
import { definition, part, partOf, solved } from './sample.js';

const pair = (a: Partial<PartSpec>, b: Partial<PartSpec>) => {
  const piece = solved(definition({ parts: { a: part(a), b: part({ across: ['10', '11'], ...b }) } }));
  const { turnOf, mirrorOf, hand } = partOf(piece, 'b');
  return { turnOf, mirrorOf, hand };
};
const hole = (face: string, u: string, v: string) => ({
  holes: [{ face, at: [u, v] as const, diameter: '1/8', depth: '1/2' }],
});

describe('equal parts of 1 x 2 x 3 in', () => {
  it('plain ones are one card', () => {
    expect(pair({}, {})).toEqual({ turnOf: 'a', mirrorOf: undefined, hand: undefined });
  });
  it('a hole in the front left and one in the back right are one card, turned half round', () => {
    expect(pair(hole('front', '1/4', '1'), hole('back', '3/4', '1')).turnOf).toBe('a');
  });
  it('a hole in the front left and one in the front right, low down, are mirror images and have a hand', () => {
    expect(pair(hole('front', '1/4', '1'), hole('front', '3/4', '1'))).toEqual({
      turnOf: undefined,
      mirrorOf: 'a',
      hand: 'right',
    });
  });
  it('the same, but with the hole in the middle of the height: turned end for end it is one card', () => {
    expect(pair(hole('front', '1/4', '1 1/2'), hole('front', '3/4', '1 1/2')).turnOf).toBe('a');
  });
  it('a show face tells them apart: that turn would hide it', () => {
    const shown = { show: ['front', 'left'] };
    expect(
      pair({ ...hole('front', '1/4', '1 1/2'), ...shown }, { ...hole('front', '3/4', '1 1/2'), ...shown }).turnOf,
    ).toBeUndefined();
  });
  it('another height, grain, stock or status is another card', () => {
    const none = { turnOf: undefined, mirrorOf: undefined, hand: undefined };
    expect(pair(hole('front', '1/4', '1'), hole('front', '1/4', '1 1/8'))).toEqual(none);
    expect(
      pair(
        { stock: 'ply', across: { from: '0' }, up: ['0', '2'], grain: 'up' },
        { stock: 'ply', across: { from: '5' }, up: ['0', '2'], grain: 'deep' },
      ).turnOf,
    ).toBe('a');
    expect(pair({ grain: 'up' }, { grain: 'deep' })).toEqual(none);
    expect(pair({}, { status: 'leave long' })).toEqual(none);
    expect(pair({ stock: 'thick' }, {})).toEqual(none);
  });
  it('stands in another way but is the same thing', () => {
    expect(pair({}, { across: ['10', '13'], deep: ['0', '1'], up: ['0', '2'] }).turnOf).toBe('a');
  });
});
