import { describe, expect, it } from 'vitest';
import type { Face } from '../../src/geom/axis.js';
import { exampleSite, exampleWorld, inchBox, inchSized } from '../../src/joints/example.js';
import { jointKind } from '../../src/joints/index.js';
import type { Claim, Given, JointKind, Resolved, Site } from '../../src/joints/joint.js';
import { mm, toIn, toMm } from '../../src/lengths/length.js';
import { given } from '../../src/value/sized.js';
import type { BoxCut, DovetailCut, TailsCut } from '../../src/words/cut.js';

const size = (x: number): number => Number(toIn(x).toFixed(6));
const kindOf = (name: string): JointKind => {
  const kind = jointKind(name);
  if (!kind) throw new Error(name);
  return kind;
};
function made(name: string, spec: Resolved, site: Site): Given & { readonly codes: readonly string[] } {
  const kind = kindOf(name);
  const { r, findings } = kind.resolve(spec, site);
  const g = kind.give(r, site);
  return { ...g, codes: [...findings, ...g.findings].map((f) => f.code) };
}
const corner = (w: number, T: number, t = 0.75): Site =>
  exampleSite({
    entering: { box: inchBox([-12, 0], [0, t], [0, w]), grain: 0 },
    receiving: { box: inchBox([0, T], [0, 20], [0, w]), grain: 1 },
  });

/** Layout rule of Noyes, Handwork in Wood (1910), no. 48: n equal divisions, half a space at each edge. Worked by hand from it. */
describe('through dovetail', () => {
  it.each([
    { w: 6, n: 4, T: 0.75, slope: 8, base: 0.75, end: 0.9375, halfBase: 0.375, halfEnd: 0.28125 },
    { w: 6, n: 4, T: 0.75, slope: 6, base: 0.75, end: 1, halfBase: 0.375, halfEnd: 0.25 },
    { w: 3, n: 3, T: 0.5, slope: 8, base: 0.5, end: 0.625, halfBase: 0.25, halfEnd: 0.1875 },
    { w: 16.25, n: 8, T: 0.875, slope: 8, base: 1.015625, end: 1.234375, halfBase: 0.507813, halfEnd: 0.398438 },
  ])('$n tails on $w in, $T deep, 1:$slope', ({ w, n, T, slope, base, end, halfBase, halfEnd }) => {
    const g = made('through-dovetail', { tails: n, slope }, corner(w, T));
    const { tails } = g.entering[0] as TailsCut;
    const near = 1 / 64 + 1e-6; // the shop's step
    expect(tails).toHaveLength(n);
    for (const t of tails) {
      expect(Math.abs(size(t.atBase[1] - t.atBase[0]) - base)).toBeLessThan(near);
      expect(Math.abs(size(t.atEnd[1] - t.atEnd[0]) - end)).toBeLessThan(near);
    }
    expect(Math.abs(size(tails[0]?.atBase[0] ?? NaN) - halfBase)).toBeLessThan(near);
    expect(Math.abs(size(tails[0]?.atEnd[0] ?? NaN) - halfEnd)).toBeLessThan(near);
    const last = tails.at(-1)?.atEnd[1] ?? NaN;
    expect(Math.abs(w - size(last) - halfEnd)).toBeLessThan(near);
    expect(size(g.growth.entering.right ?? 0)).toBe(T);
    expect(g.codes).toEqual([]);
  });
  it('tails three times as wide as the spaces: 5 wide, 3 tails, space .4167 (worked by hand)', () => {
    const g = made('through-dovetail', { tails: 3, space: inchSized('.4167', 0.4167) }, corner(5, 0.375));
    const [t] = (g.entering[0] as TailsCut).tails;
    expect(Math.abs(size((t?.atBase[1] ?? 0) - (t?.atBase[0] ?? 0)) - 1.25)).toBeLessThan(1 / 64);
  });
  it('warns of a slope steeper than 1:6 (Fairham) and tails over four times the spaces (Noyes)', () => {
    expect(made('through-dovetail', { tails: 4, slope: 5 }, corner(6, 0.75)).codes).toContain('slope-steep');
    expect(made('through-dovetail', { tails: 3, space: inchSized('3/8', 0.375) }, corner(6, 0.25)).codes).toContain(
      'tails-wide',
    );
  });
  it('refuses a part that does not stand at an end', () => {
    const mid = exampleSite({
      entering: { box: inchBox([-12, 0], [0, 0.75], [0, 6]), grain: 0 },
      receiving: { box: inchBox([0, 0.75], [-8, 9], [0, 6]), grain: 1 },
    });
    expect(made('through-dovetail', {}, mid).codes).toContain('no-corner');
  });
  it('carries a groove of the tail board on through the tails, and tells when it would show', () => {
    const groove = (lo: number, hi: number): Claim => ({
      joint: 'bottom',
      part: 'entering',
      rank: 1,
      cut: {
        id: 'g',
        from: 'bottom',
        mates: ['bottom'],
        rank: 1,
        shape: 'box',
        as: 'groove',
        face: 'front',
        at: inchBox([-12, 0], [0, 0.25], [lo, hi]),
      },
    });
    const site = corner(6, 0.75);
    const hidden = made('through-dovetail', { tails: 4 }, { ...site, claims: [groove(0.5, 0.75)] });
    expect(hidden.codes).toEqual([]);
    expect((hidden.entering[1] as BoxCut).at.map((s) => s.map(size))).toEqual([
      [0, 0.75],
      [0, 0.25],
      [0.5, 0.75],
    ]);
    expect(made('through-dovetail', { tails: 4 }, { ...site, claims: [groove(0.25, 0.5)] }).codes).toEqual([
      'groove-shows',
    ]);
  });
});

describe('half-blind dovetail off the pitch of the jig', () => {
  it('divides 6 into six of 1 in, not 6 of 7/8 with a strip left over', () => {
    const { tails } = made('half-blind-dovetail', {}, corner(6, 0.5)).entering[0] as TailsCut;
    expect(tails.map((t) => size((t.atEnd[0] + t.atEnd[1]) / 2))).toEqual([0.5, 1.5, 2.5, 3.5, 4.5, 5.5]);
  });
  it('says what is left over when the pitch is asked for, and names the nearest heights', () => {
    const kind = kindOf('half-blind-dovetail');
    const { findings } = kind.resolve({ pitch: inchSized('7/8', 0.875) }, corner(6, 0.5));
    expect(findings.map((f) => [f.code, f.hint])).toEqual([['off-pitch', 'Heights on the pitch: 5 1/4 or 6 1/8.']]);
  });
  it('keeps the cutter from biting its own neck in thick wood', () => {
    const s = (made('half-blind-dovetail', {}, corner(7, 1.5)).receiving[0] as DovetailCut).depth;
    expect(0.5 - 2 * size(s) * Math.tan((14 * Math.PI) / 180)).toBeGreaterThan(0.5 / 3 - 1e-9);
    expect(made('half-blind-dovetail', { length: inchSized('1 1/8', 1.125) }, corner(7, 1.5)).codes).toContain(
      'no-tails',
    );
  });
});

describe('edge halving', () => {
  /** Grid of a letter cabinet: 228 deep, slots 114 in the front edges of one set and the back edges of the other (worked by hand). */
  it('grid 228 deep: 114 in each, FRONT edge of the one and BACK edge of the other', () => {
    const box = (...s: [number, number][]) =>
      s.map(([a, b]) => [mm(a), mm(b)] as const) as unknown as ReturnType<typeof inchBox>;
    // Axis 0 points to the front; the boards reach from 0 (their back edges) to 228.
    const way = (f: Face): Face =>
      (({ front: 'right', back: 'left', left: 'bottom', right: 'top', bottom: 'front', top: 'back' }) as const)[f];
    const site = exampleSite(
      {
        entering: { box: box([0, 228], [0, 6], [0, 394]), grain: 2 },
        receiving: { box: box([0, 228], [-75, 156], [94, 100]), grain: 1 },
      },
      { world: exampleWorld('mm'), direction: way },
    );
    const g = made('edge-halving', { slot: 'front' }, site);
    expect(g.codes).toEqual([]);
    const [a, b] = [g.entering[0] as BoxCut, g.receiving[0] as BoxCut];
    expect([a.face, b.face]).toEqual(['right', 'left']);
    expect(a.at.map((s) => s.map(toMm))).toEqual([
      [114, 228],
      [0, 6],
      [94, 100],
    ]);
    expect(b.at.map((s) => s.map(toMm))).toEqual([
      [0, 114],
      [0, 6],
      [94, 100],
    ]);
    expect(g.traits.insertion).toEqual(['right']);
  });
  it('rail 3 deep and a full-depth divider: 1 1/2 each; the two depths always add up to the overlap', () => {
    const site = exampleSite({
      entering: { box: inchBox([0, 18], [0, 0.75], [0, 20]), grain: 2 },
      receiving: { box: inchBox([15, 18], [-20, 20], [6, 6.75]), grain: 1 },
    });
    const g = made('edge-halving', { slot: 'right' }, site);
    expect((g.entering[0] as BoxCut).at[0].map(size)).toEqual([16.5, 18]);
    expect((g.receiving[0] as BoxCut).at[0].map(size)).toEqual([15, 16.5]);
    const third = made('edge-halving', { slot: 'right', depth: given(inchSized('1', 1).value, '1') }, site);
    expect((third.receiving[0] as BoxCut).at[0].map(size)).toEqual([15, 17]);
  });
  it('refuses a part that ends in the other, and a slot as deep as the part', () => {
    const tee = exampleSite({
      entering: { box: inchBox([0, 3], [0, 0.75], [0, 12]), grain: 2 },
      receiving: { box: inchBox([0, 3], [-9, 9], [11.25, 12]), grain: 1 },
    });
    expect(made('edge-halving', {}, tee).codes).toContain('no-crossing');
    expect(made('edge-halving', { depth: inchSized('3', 3) }, tee).codes).toContain('slot-depth');
  });
});

describe('rabbet for the back of a tall chest (worked by hand)', () => {
  const site = exampleSite(
    {
      entering: { box: inchBox([-34.25, 0], [0, 0.205], [0, 33]), grain: 2 },
      receiving: { box: inchBox([0, 0.875], [-18.75, 0.25], [-8.125, 33]), grain: 2 },
    },
    { material: 'sheet' },
  );
  const g = made('rabbet', {}, site);
  it('on 1/4 from BACK, into 3/8, from TOP down, stop 8 1/8 from BOTTOM', () => {
    const cut = g.receiving[0] as BoxCut;
    expect(cut.at.map((s) => s.map(size))).toEqual([
      [0, 0.375],
      [0, 0.25],
      [0, 33],
    ]);
    expect(size(g.sizes['on']?.value ?? 0)).toBe(0.25);
    expect(g.codes).toEqual([]);
  });
  it('the back is 34 15/16 wide: 34 1/4 + 2 x 3/8 - 1/16', () => {
    expect(34.25 + 2 * size(g.growth.entering.right ?? 0)).toBe(34.9375);
  });
  it('refuses one that comes on less than the panel needs, or goes in too deep', () => {
    expect(made('rabbet', { on: inchSized('1/8', 0.125) }, site).codes).toContain('rabbet-narrow');
    expect(made('rabbet', { depth: inchSized('3/4', 0.75) }, site).codes).toContain('rabbet-too-deep');
  });
  it('a dado that comes in from that edge ends at the ledge; the rabbet stays', () => {
    const shelf = exampleSite({
      entering: { box: inchBox([-34.25, 0], [0, 0.75], [0, 18.75]), grain: 0 },
      receiving: { box: inchBox([0, 0.875], [-20, 20], [0, 19]), grain: 1 },
    });
    const kind = kindOf('dado');
    const { r } = kind.resolve({ from: 'top' }, shelf);
    const ledge: BoxCut = {
      id: 'r',
      from: 'back_in',
      mates: [],
      rank: 1,
      shape: 'box',
      as: 'rabbet',
      face: 'left',
      at: inchBox([0, 0.375], [-12, 20], [18.75, 19]),
    };
    const clash: Claim = { joint: 'back_in', part: 'receiving', rank: 1, cut: ledge };
    const run = (x: unknown): number[] => (kind.give(x, shelf).receiving[0] as BoxCut).at[2].map(size);
    expect(run(r)).toEqual([0, 19]);
    expect(run(kind.yield?.(r, clash, shelf))).toEqual([0, 18.75]);
    const mortise: Claim = { ...clash, rank: 2, cut: { ...ledge, rank: 2, as: 'mortise' } };
    expect(kind.yield?.(r, mortise, shelf)).toMatchObject({ code: 'joints-collide' });
  });
});

describe('mortises from both sides of one leg', () => {
  it('each is kept to half the wood less 1/16', () => {
    const kind = kindOf('mortise-and-tenon');
    const site = exampleSite(kind.example.site);
    const { r } = kind.resolve({}, site);
    const from = (face: Face): Claim => ({
      joint: 'other',
      part: 'receiving',
      rank: 2,
      cut: {
        id: 'm',
        from: 'other',
        mates: [],
        rank: 2,
        shape: 'box',
        as: 'mortise',
        face,
        at: inchBox([0.375, 1.5], [0.25, 0.5], [0.5, 2]),
      },
    });
    const depth = size((kind.give(kind.yield?.(r, from('right'), site), site).receiving[0] as BoxCut).at[0][1]);
    expect(depth).toBe(0.6875);
    expect(2 * depth).toBeLessThanOrEqual(1.5 - 0.125);
  });
});
