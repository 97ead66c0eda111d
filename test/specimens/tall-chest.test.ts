import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/lengths/format.js';
import { byMark, overAll, shippedPiece, shoulder } from './pieces.js';

/** Sizes of every part worked by hand, as at the bench, from the piece's chains (8 1/8 + 3/4 + 9 + ... = 41 1/8, + 7/8 = 42). */
const chest = shippedPiece('tall-chest');
const SIDES = '7/8 x 19 x 41 1/8';
const RAIL = '3/4 x 2 1/2 x 35';
const LONG_END = (h: string): string => `1/2 x ${h} x 33 7/32`;
const SHORT_BOTTOM = '.205 x 15 5/32 x 15 7/16';
const LONG_BOTTOM = '.354 x 32 21/32 x 15 7/16';

const TABLE: readonly (readonly [marks: string, size: string, shoulder: string, status: string])[] = [
  ['A1 A2', SIDES, '41 1/8', 'cut now'],
  ['A3', '7/8 x 20 x 37 1/2', '37 1/2', 'leave long'],
  ['A4 A8', '3/4 x 2 1/2 x 35 1/2', '34 1/4', 'cut now'],
  ['R1 R2 R3 R4 B1 B2 B3 B4', RAIL, '34 1/4', 'cut now'],
  ['A5', '3/4 x 18 5/8 x 5 11/16', '5 1/4', 'fit to the piece'],
  ['A6', '3/4 x 3 1/2 x 34 1/4', '34 1/4', 'leave long'],
  ['A7', '.205 x 34 15/16 x 33', '33', 'fit to the piece'],
  ['D1.5 D2.5', '3/4 x 5 1/8 x 16 5/8', '16 5/8', 'fit to the piece'],
  ['D3.5', '3/4 x 6 55/64 x 34 1/8', '34 1/8', 'fit to the piece'],
  ['D4.5', '3/4 x 7 55/64 x 34 1/8', '34 1/8', 'fit to the piece'],
  ['D5.5', '3/4 x 8 55/64 x 34 1/8', '34 1/8', 'fit to the piece'],
  ['D1.2 D1.3 D2.2 D2.3', '1/2 x 4 3/8 x 15 3/4', '15', 'cut now'],
  ['D3.2 D3.3', '1/2 x 6 1/8 x 15 3/4', '15', 'cut now'],
  ['D4.2 D4.3', '1/2 x 7 x 15 3/4', '15', 'cut now'],
  ['D5.2 D5.3', '1/2 x 7 7/8 x 15 3/4', '15', 'cut now'],
  ['D1.1 D1.4 D2.1 D2.4', '1/2 x 4 3/8 x 15 23/32', '15 23/32', 'fit to the piece'],
  ['D3.1 D3.4', LONG_END('6 1/8'), '33 7/32', 'fit to the piece'],
  ['D4.1 D4.4', LONG_END('7'), '33 7/32', 'fit to the piece'],
  ['D5.1 D5.4', LONG_END('7 7/8'), '33 7/32', 'fit to the piece'],
  ['D1.6 D2.6', SHORT_BOTTOM, '15', 'fit to the piece'],
  ['D3.6 D4.6 D5.6', LONG_BOTTOM, '15', 'fit to the piece'],
];

describe('tall chest', () => {
  it('has 46 parts, every one in the table', () => {
    expect(chest.parts.map((p) => p.mark).sort()).toEqual(TABLE.flatMap(([marks]) => marks.split(' ')).sort());
    expect(chest.parts).toHaveLength(46);
  });
  it.each(TABLE)('%s: %s, shoulder %s, %s', (marks, size, between, status) => {
    for (const mark of marks.split(' ')) {
      const part = byMark(chest, mark);
      expect([mark, overAll(part, chest), shoulder(part, chest), part.status]).toEqual([mark, size, between, status]);
    }
  });
  it('the sockets of the left side stand as its model card says', () => {
    const sockets = byMark(chest, 'A1').cuts.filter((c) => c.shape === 'dovetail' && c.as === 'socket');
    const centres = sockets.map((c) => (c.shape === 'dovetail' ? (c.atFloor[0] + c.atFloor[1]) / 2 : 0));
    expect(centres.map((c) => formatLength(c, 'in'))).toEqual(['34 3/4', '27', '18 1/4', '8 1/2']);
    for (const c of sockets) {
      if (c.shape !== 'dovetail') continue;
      expect([c.face, formatLength(c.depth, 'in'), c.runSpan.map((x) => formatLength(x, 'in'))]).toEqual(['right', '3/8', ['3/8', '19']]);
      expect([c.atFloor, c.atFace].map((s) => formatLength(s[1] - s[0], 'in'))).toEqual(['1/2', '5/16']);
      expect(c.mates).toHaveLength(2);
    }
  });
  it('the dovetail sockets in its top end are those of the model card', () => {
    const ends = byMark(chest, 'A1').cuts.filter((c) => c.shape === 'dovetail' && c.as === 'end-socket');
    const figures = ends.map((c) => (c.shape === 'dovetail' ? [...c.atFace, ...c.atFloor, c.depth].map((x) => formatLength(x, 'in')) : []));
    expect(figures).toEqual([
      ['11/32', '2 5/32', '1/4', '2 1/4', '5/8'],
      ['16 19/32', '18 13/32', '16 1/2', '18 1/2', '5/8'],
    ]);
  });
  it('the left side carries the slide lines 2 1/2 above each rail', () => {
    const lines = byMark(chest, 'A1').cuts.flatMap((c) => (c.shape === 'mark' ? [formatLength(c.at, 'in')] : []));
    expect(lines.sort()).toEqual(['11 3/8', '21 1/8', '29 7/8', '37 5/8']);
  });
  it('its right side is the mirror of the left, and short drawer sides share a card', () => {
    expect([byMark(chest, 'A2').mirrorOf, byMark(chest, 'D2.2').turnOf]).toEqual(['side_left', 'short_1.side_left']);
    expect(byMark(chest, 'A1').turnOf).toBeUndefined();
  });
  it('its heights add up to 42', () => {
    const chain = ['R4', 'R3', 'R2', 'R1', 'A4'].map((m) => byMark(chest, m).size[2].value).reduce((a, b) => a + b, 0);
    const rows = chest.drawers.filter((d) => d.mark !== 'D2').reduce((a, d) => a + d.opening.up.value, 0);
    const below = byMark(chest, 'R4').place.origin[2];
    expect(formatLength(chain + rows + below + byMark(chest, 'A3').size[2].value, 'in')).toBe('42');
  });
  it('gaps above the fronts are 1/16 for the short drawers and 5/64 for the long ones; 1/16 elsewhere', () => {
    expect(chest.drawers.map((d) => [d.mark, formatLength(d.gaps.top.value, 'in'), formatLength(d.gaps.left.value, 'in')]).sort()).toEqual([
      ['D1', '1/16', '1/16'],
      ['D2', '1/16', '1/16'],
      ['D3', '5/64', '1/16'],
      ['D4', '5/64', '1/16'],
      ['D5', '5/64', '1/16'],
    ]);
  });
});
