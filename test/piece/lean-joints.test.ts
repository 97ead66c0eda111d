import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cosine, sine, tangent } from '../../src/geom/angle.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import { inches, toIn } from '../../src/lengths/length.js';
import type { BoreCut, BoxCut, TenonCut } from '../../src/words/cut.js';
import { makeSolids } from '../../src/solids/make.js';
import { definition, errorsOf, part, partOf, solved } from './sample.js';

/** Two legs 1 1/2 square that lean 10 degrees in the front view only, their tops 20 up; a rail 1 1/4 high between them, 8 up. */
const LEAN = 10;
const leg = {
  stock: 'thick',
  stand: { at: ['6', '3', '20'] as const, reach: 'floor', front: -LEAN, side: 0, section: ['1 1/2', '1 1/2'] as const },
};
const rail = {
  stock: 'oak',
  span: { from: 'leg_l.right', to: 'leg_r.left', at: '8', section: ['3/4', '1 1/4'] as const },
};
const trestle = (more: object = {}, joint: object = {}) =>
  definition({
    parts: { leg_l: leg, leg_r: { mirror: 'leg_l', about: '12' }, rail, ...more } as never,
    joints: {
      rails: {
        kind: 'mortise-and-tenon',
        part: 'rail',
        into: ['leg_l', 'leg_r'],
        length: '3/4',
        thickness: '1/4',
        ...joint,
      },
    },
  });
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());
const t = tangent(LEAN);

describe('a rail square to the view in which its legs lean', () => {
  const piece = solved(trestle());
  const made = partOf(piece, 'rail');
  const [mortise] = partOf(piece, 'leg_l').cuts.filter((c): c is BoxCut => c.shape === 'box');

  it('is between its shoulders as long as the legs stand apart there, and its blank a tenon longer at each end', () => {
    // Middle of the leg's right face 8 up: the axis is at 6 - 12 tan 10 and the face half the thickness square to it,
    // 3/4 / cos 10 along the level. The rail spans twice the rest to 12; over its bevels it is 1 1/4 tan 10 longer.
    const between = 2 * (12 - (6 - 12 * t + 0.75 / cosine(LEAN)));
    expect(toIn(made.size[0].value)).toBeCloseTo(between + 1.25 * t, 5);
    const over = toIn(made.size[0].value + made.growth[0][0] + made.growth[0][1]);
    expect(over).toBeCloseTo(between + 2 * 0.75, 5);
  });
  it('its shoulders slope by the lean over the width and stand square over the thickness; no bevel is left', () => {
    const tenons = made.cuts.filter((c): c is TenonCut => c.shape === 'tenon');
    expect(tenons.map((c) => c.end).sort()).toEqual(['left', 'right']);
    for (const c of tenons) {
      const [x, y, z] = (c.slope ?? []).map(Math.abs) as [number, number, number];
      expect([x, y, z].map((n) => n.toFixed(9))).toEqual([cosine(LEAN), 0, sine(LEAN)].map((n) => n.toFixed(9)));
      expect(c.notes).toEqual(['Bevel gauge 10° over the width, 0° over the thickness']);
    }
    expect(made.cuts.filter((c) => c.shape === 'plane')).toEqual([]);
  });
  it('its mortise is a tenon over the cosine high, goes in square to the face, and its floor lies lower', () => {
    // Edge shoulder 1/4, at most a sixth of 1 1/4, down to a 16th: 3/16 at each edge, so the tenon is 7/8 wide.
    const high = (mortise?.at[2][1] ?? 0) - (mortise?.at[2][0] ?? 0);
    expect(toIn(high)).toBeCloseTo(0.875 / cosine(LEAN), 5);
    // The deepest corner: 3/4 + 1/16 along the rail from the middle, at the tenon's lower edge 7/16 down:
    // .8125 cos 10 + .4375 sin 10 = .8761, up to the next 64th .890625.
    const deep = 0.8125 * cosine(LEAN) + 0.4375 * sine(LEAN);
    expect(deep.toFixed(4)).toBe('0.8761');
    expect(toIn((mortise?.at[0][1] ?? 0) - (mortise?.at[0][0] ?? 0))).toBe(57 / 64);
    expect(mortise?.slants?.map((s) => [s.of, s.toward])).toEqual([['left', 'bottom']]);
    expect(toIn(mortise?.slants?.[0]?.by ?? 0)).toBeCloseTo((57 / 64) * t, 5);
    expect(mortise?.notes).toEqual(['Leans 10° from square']);
  });
  it('fills its mortise to the shoulder and stands in nothing else', () => {
    expect(makeSolids(piece, kernel).findings).toEqual([]);
  });
  it('the two legs are one part, turned about its length: they lean in one view only', () => {
    expect(partOf(piece, 'leg_r').turnOf).toBe('leg_l');
  });
});

describe('a rail between legs that lean only away from it', () => {
  it('has square shoulders, and its mortises stand turned on the faces of the legs', () => {
    const away = { ...leg, stand: { ...leg.stand, front: 0, side: -LEAN } };
    const piece = solved(trestle({ leg_l: away }));
    const tenons = partOf(piece, 'rail').cuts.filter((c): c is TenonCut => c.shape === 'tenon');
    expect(tenons.map((c) => c.slope)).toEqual([undefined, undefined]);
    const [m] = partOf(piece, 'leg_l').cuts.filter((c): c is BoxCut => c.shape === 'box');
    expect(m?.notes).toEqual(['Square to the face, turned 10° on it']);
    expect(m?.slants?.map((s) => [s.of, s.toward])).toEqual([
      ['back', 'top'],
      ['top', 'front'],
    ]);
    // The mouth, 1/4 by 7/8 turned 10 degrees: one end of each side off by the side times the sine.
    expect(m?.slants?.map((s) => toIn(s.by).toFixed(4))).toEqual([0.25, 0.875].map((x) => (x * sine(LEAN)).toFixed(4)));
    expect(makeSolids(piece, kernel).findings).toEqual([]);
  });
});

describe('a plate screwed to the front of leaning legs', () => {
  const plate = part({
    across: ['3', '21'],
    deep: { to: '9/4', size: '3/4' },
    up: ['12', '15'],
    grain: 'across',
  });
  const piece = solved({
    ...trestle({ plate }),
    joints: { on: { kind: 'screw', part: 'plate', into: ['leg_l', 'leg_r'], screw: '#8 x 1 1/2', at: ['1', '2'] } },
  });
  it('has its holes where the legs pass, and pilots in the legs square to their faces there', () => {
    const legs = partOf(piece, 'leg_l');
    const pilots = legs.cuts.filter((c): c is BoreCut => c.shape === 'bore');
    const holes = partOf(piece, 'plate').cuts.filter((c): c is BoreCut => c.shape === 'bore' && c.at[0] < inches(9));
    expect([pilots.length, holes.length]).toEqual([2, 2]);
    expect(pilots.map((c) => [c.face, c.tilt])).toEqual([
      ['front', undefined],
      ['front', undefined],
    ]);
    // A place (x, z) of the piece is, from the leg's axis, (x - 6 + (20 - z) tan 10) cos 10 across the leg.
    for (const [k, hole] of holes.entries()) {
      const [x, z] = [3 + toIn(hole.at[0]), 12 + toIn(hole.at[1])];
      const across = 0.75 + (x - (6 - (20 - z) * t)) * cosine(LEAN);
      expect(toIn(pilots[k]?.at[0] ?? 0)).toBeCloseTo(across, 5);
    }
  });
  it('its screws stand in the wood', () => {
    expect(makeSolids(piece, kernel).findings.filter((f) => f.severity === 'error')).toEqual([]);
    expect(piece.hardware.map((h) => h.screw?.holds)).toEqual(['leg_l', 'leg_l', 'leg_r', 'leg_r']);
  });
});

describe('what cannot be made in leaning parts', () => {
  const codes = (joint: object) => errorsOf(trestle({}, joint)).map((f) => f.code);
  it('a through or haunched tenon, a screw through a bevelled end, another kind, parts that do not meet', () => {
    expect(codes({ through: true })).toEqual(['tenon-leans']);
    expect(codes({ haunch: true })).toEqual(['tenon-leans']);
    const other = (more: object, parts: object = {}) =>
      errorsOf({ ...trestle(parts), joints: { j: { part: 'rail', into: 'leg_l', ...more } } } as never).map(
        (f) => f.code,
      );
    expect(other({ kind: 'screw' })).toContain('screw-leans');
    expect(other({ kind: 'dado' })).toEqual(['joint-leans']);
    const away = part({ across: ['20', '22'], deep: ['20', '20 3/4'], up: ['0', '3'] });
    expect(other({ kind: 'butt', part: 'away' }, { away })).toEqual(['joint-does-not-touch']);
  });
});
