import { describe, expect, it } from 'vitest';
import type { Box3 } from '../../src/geom/box.js';
import { exampleSite, exampleWorld, inchBox, inchSized } from '../../src/joints/example.js';
import { jointKind } from '../../src/joints/index.js';
import type { Given, Resolved, Site } from '../../src/joints/joint.js';
import { toIn } from '../../src/lengths/length.js';
import type { BoxCut, Cut, DovetailCut, TailsCut, TenonCut } from '../../src/words/cut.js';
import type { Face } from '../../src/geom/axis.js';

/** Source of the figures: part cards of a tall chest and a nightstand, worked by hand (sums beside each figure). */
const size = (x: number): number => Number(toIn(x).toFixed(6));
const spans = (box: Box3): number[][] => box.map((s) => s.map(size));
const made = (kind: string, spec: Resolved, site: Site): Given & { findings: Given['findings'] } => {
  const j = jointKind(kind);
  if (!j) throw new Error(kind);
  const { r, findings } = j.resolve(spec, site);
  const g = j.give(r, site);
  return { ...g, findings: [...findings, ...g.findings] };
};
const shape = <S extends Cut['shape']>(cuts: readonly Cut[], s: S): Extract<Cut, { shape: S }>[] =>
  cuts.filter((c): c is Extract<Cut, { shape: S }> => c.shape === s);
/** Piece directions of a case side's joints: deep runs along `wide`, up along `thick`. */
const caseWay = (face: Face): Face =>
  (({ left: 'left', right: 'right', front: 'bottom', back: 'top', bottom: 'front', top: 'back' }) as const)[face];

describe('sliding dovetail of a case rail (tall chest, worked by hand)', () => {
  const site = (from: number): Site =>
    exampleSite(
      {
        entering: { box: inchBox([-34.25, 0], [0, 0.75], [0, 2.5]), grain: 0 },
        receiving: { box: inchBox([0, 0.875], [-8.125, 33], [-from, 19 - from]), grain: 1 },
      },
      { direction: caseWay },
    );
  const g = made('sliding-dovetail', { from: 'back', stop: inchSized('3/8', 0.375) }, site(0));
  const [socket, ease] = shape(g.receiving, 'dovetail') as [DovetailCut, DovetailCut];
  it('is 3/8 deep, 1/2 at the floor, 5/16 at the face: 1/2 - 2 x 3/8 x tan 14 = .313', () => {
    expect(size(socket.depth)).toBe(0.375);
    expect(socket.atFloor.map(size)).toEqual([0.125, 0.625]);
    expect(socket.atFace.map(size)).toEqual([0.21875, 0.53125]);
    expect(g.findings).toEqual([]);
  });
  it('runs in from BACK and stops 3/8 from FRONT; the tail is notched 3/8 there', () => {
    expect(socket.runSpan.map(size)).toEqual([0.375, 19]);
    expect((g.entering[0] as TailsCut).keep.map(size)).toEqual([0.375, 2.5]);
  });
  it('is eased .010 toward BOTTOM from BACK to 2 3/4 from FRONT', () => {
    expect(ease.as).toBe('ease');
    expect(ease.runSpan.map(size)).toEqual([2.75, 19]);
    expect(ease.atFloor.map(size)).toEqual([0.115, 0.615]);
  });
  it('lengthens the rail from 34 1/4 to 35 over both tails', () => {
    expect(34.25 + 2 * size(g.growth.entering.right ?? 0)).toBe(35);
  });
  it('back rail: same section, only as far as its seat, not eased, and shares the trench of the front rail', () => {
    const back = site(16.25);
    const kind = jointKind('sliding-dovetail');
    if (!kind?.yield) throw new Error('no yield');
    const { r, findings } = kind.resolve({ from: 'back' }, back);
    expect(findings).toEqual([]);
    const own = kind.give(r, back).receiving;
    expect(own).toHaveLength(1);
    expect((own[0] as DovetailCut).runSpan.map((x) => size(x) + 16.25)).toEqual([16.25, 19]);
    const front: DovetailCut = {
      ...socket,
      runSpan: [socket.runSpan[0] - 16.25 * 25.4e6, socket.runSpan[1] - 16.25 * 25.4e6],
    };
    const shared = kind.yield(r, { joint: 'rails', part: 'receiving', rank: 2, cut: front }, back);
    expect((kind.give(shared, back).receiving[0] as DovetailCut).runSpan).toEqual(front.runSpan);
  });
  it('divider 18 5/8 deep into a 3/4 rail: a third, 1/4 deep (worked by hand)', () => {
    const d = made(
      'sliding-dovetail',
      { from: 'top', stop: inchSized('3/8', 0.375) },
      exampleSite({
        entering: { box: inchBox([-5.25, 0], [0, 0.75], [0, 18.625]), grain: 0 },
        receiving: { box: inchBox([0, 0.75], [-16, 16], [0, 18.625]), grain: 1 },
      }),
    );
    expect(size((d.receiving[0] as DovetailCut).depth)).toBe(0.25);
  });
  it('refuses a socket deeper than half the wood and warns above 0.45 and under a 40 % neck', () => {
    const codes = (depth: number): string[] =>
      made('sliding-dovetail', { from: 'back', depth: inchSized('', depth) }, site(0)).findings.map((f) => f.code);
    expect(codes(0.5)).toContain('socket-too-deep');
    expect(codes(0.40625)).toContain('socket-deep');
    expect(codes(0.4375)).toContain('neck-thin'); // .5 - 2 x .4375 x .2493 = .2818 < .3
    expect(codes(0.375)).toEqual([]);
  });
});

describe('half-blind dovetail', () => {
  it('one tail of a top rail let down into a 7/8 side (tall chest, worked by hand)', () => {
    const g = made(
      'half-blind-dovetail',
      {},
      exampleSite(
        {
          entering: { box: inchBox([-34.25, 0], [0, 0.75], [0, 2.5]), grain: 0 },
          receiving: { box: inchBox([0, 0.875], [-40.375, 0.75], [0, 19]), grain: 1 },
        },
        { direction: caseWay },
      ),
    );
    const tail = (g.entering[0] as TailsCut).tails[0];
    expect(tail?.atEnd.map(size)).toEqual([0.25, 2.25]); // 2 wide at its end
    expect(tail?.atBase.map(size)).toEqual([0.34375, 2.15625]); // 11/32 to 2 5/32: 1 13/16
    const socket = g.receiving[0] as DovetailCut;
    expect(size(socket.depth)).toBe(0.625); // lap 1/4
    expect(socket.runSpan.map(size)).toEqual([0, 0.75]); // down 3/4
    expect(g.traits.insertion).toEqual(['front']); // in this site: down
    expect(34.25 + 2 * size(g.growth.entering.right ?? 0)).toBe(35.5);
    expect(g.findings).toEqual([]);
  });
  it('front top rail of a nightstand, 1 3/8 wide, 1/2 into the leg (worked by hand)', () => {
    const g = made(
      'half-blind-dovetail',
      { length: inchSized('1/2', 0.5) },
      exampleSite({
        entering: { box: inchBox([-15.5, 0], [0, 0.75], [0, 1.375]), grain: 0 },
        receiving: { box: inchBox([0, 1.5], [-24.5, 0.75], [-0.125, 1.375]), grain: 1 },
      }),
    );
    const s = g.receiving[0] as DovetailCut;
    expect(s.atFace.map((x) => size(x) + 0.125)).toEqual([0.4375, 1.1875]); // 7/16 to 1 3/16 from FRONT
    expect(s.atFloor.map((x) => size(x) + 0.125)).toEqual([0.375, 1.25]); // 3/8 to 1 1/4
  });
  it('drawer side 4 3/8 on a 7/8 pitch: five tails, 9/16 and 3/8, base line 3/8 (worked by hand)', () => {
    const j = jointKind('half-blind-dovetail');
    const g = made('half-blind-dovetail', {}, exampleSite(j!.example.site));
    const t = g.entering[0] as TailsCut;
    expect(t.tails.map((x) => size((x.atEnd[0] + x.atEnd[1]) / 2))).toEqual([0.4375, 1.3125, 2.1875, 3.0625, 3.9375]);
    expect(t.tails.map((x) => size(x.atEnd[1] - x.atEnd[0]))).toEqual([0.5625, 0.5625, 0.5625, 0.5625, 0.5625]);
    expect(t.tails.map((x) => size(x.atBase[1] - x.atBase[0]))).toEqual([0.375, 0.375, 0.375, 0.375, 0.375]);
    expect(size(t.tails[0]!.atBase[0])).toBe(0.25); // half space at the edge
    expect(15 + 2 * size(g.growth.entering.right ?? 0)).toBe(15.75);
    expect(shape(g.receiving, 'dovetail')).toHaveLength(5);
    expect(g.findings).toEqual([]);
  });
  it('lap of a 3/4 front is 3/16 (handbook figures for 3/4 fronts; common practice)', () => {
    const g = made(
      'half-blind-dovetail',
      {},
      exampleSite({
        entering: { box: inchBox([-15, 0], [0, 0.5], [0, 4.375]), grain: 0 },
        receiving: { box: inchBox([0, 0.75], [0, 15.71875], [0, 4.375]), grain: 1 },
      }),
    );
    expect(size(g.sizes['lap']!.value)).toBe(0.1875);
  });
});

describe('mortise and tenon of a nightstand (worked by hand)', () => {
  const groove = (site: 'entering' | 'receiving', face: Face, at: Box3) => ({
    joint: 'panels',
    part: site,
    rank: 1 as const,
    cut: { id: 'g', from: 'panels', mates: [], rank: 1, shape: 'box', as: 'groove', face, at } as BoxCut,
  });
  const rail = (wide: number, up: number, claims: Site['claims']) =>
    exampleSite(
      {
        entering: { box: inchBox([-11.5, 0], [0, 0.75], [0, wide]), grain: 0 },
        receiving: { box: inchBox([0, 1.5], [-0.125, 1.375], [-up, 25.25 - up]), grain: 2 },
      },
      { claims },
    );
  it('a: end top rail 3 wide: 3/4 haunch + 1 7/8 + 3/8 groove; haunch fills the groove', () => {
    const g = made(
      'mortise-and-tenon',
      { haunch: true },
      rail(3, 22.25, [
        groove('entering', 'bottom', inchBox([-11.5, 0], [0.25, 0.5], [0, 0.375])),
        groove('receiving', 'left', inchBox([0, 0.375], [0.25, 0.5], [-12, 3])),
      ]),
    );
    const m = g.receiving as BoxCut[];
    expect(m).toHaveLength(1);
    expect(spans(m[0]!.at)).toEqual([
      [0, 1.125],
      [0.25, 0.5],
      [0.375, 2.25],
    ]);
    const t = g.entering[0] as TenonCut;
    expect(t.tongues.map((x) => [x.b.map(size), size(x.length)])).toEqual([
      [[0.375, 2.25], 1.0625],
      [[2.25, 3], 0.375],
    ]);
  });
  it('b and c: 3/8 groove + 1 7/8 + 1/4 = 2 1/2, and 1/4 + 1 1/4 + 1/4 = 1 3/4; where they meet both are mitred', () => {
    const site = rail(2.5, 8, [groove('entering', 'top', inchBox([-11.5, 0], [0.25, 0.5], [2.125, 2.5]))]);
    const b = made('mortise-and-tenon', {}, site);
    expect(spans((b.receiving[0] as BoxCut).at)).toEqual([
      [0, 1.125],
      [0.25, 0.5],
      [0.25, 2.125],
    ]);
    const c = made('mortise-and-tenon', {}, rail(1.75, 8, []));
    expect(spans((c.receiving[0] as BoxCut).at)).toEqual([
      [0, 1.125],
      [0.25, 0.5],
      [0.25, 1.5],
    ]);
    const kind = jointKind('mortise-and-tenon')!;
    const clash: BoxCut = {
      id: 'c',
      from: 'front_lows',
      mates: [],
      rank: 2,
      shape: 'box',
      as: 'mortise',
      face: 'back',
      at: inchBox([1, 1.25], [0.25, 1.375], [0.25, 1.5]),
    };
    const mitred = kind.yield!(
      kind.resolve({}, site).r,
      { joint: 'front_lows', part: 'receiving', rank: 2, cut: clash },
      site,
    );
    const t = kind.give(mitred, site).entering[0] as TenonCut;
    expect(t.mitre).toEqual({ long: 'front' });
    expect(size(t.tongues[0]!.length)).toBe(1.09375); // point 1/32 short of 1 1/8
  });
  it('d: drawer rail lying flat: 1/2 of 3/4, 3/8 to 1 1/8 from FRONT, 3/4 deep, tenon 11/16', () => {
    const g = made(
      'mortise-and-tenon',
      { depth: inchSized('3/4', 0.75) },
      exampleSite({
        entering: { box: inchBox([-15.5, 0], [0, 0.75], [0, 1.375]), grain: 0 },
        receiving: { box: inchBox([0, 1.5], [-19, 6], [-0.125, 1.375]), grain: 1 },
      }),
    );
    const at = spans((g.receiving[0] as BoxCut).at);
    expect(at).toEqual([
      [0, 0.75],
      [0.125, 0.625],
      [0.25, 1],
    ]);
    expect(at[2]!.map((x) => x + 0.125)).toEqual([0.375, 1.125]);
    expect(size((g.entering[0] as TenonCut).tongues[0]!.length)).toBe(0.6875);
  });
  it('thickness is a third of the stock: 3/4 gives 1/4 (Fairham; Noyes no. 42)', () => {
    const g = made('mortise-and-tenon', {}, rail(2.5, 8, []));
    expect(size(g.sizes['tenon thickness']!.value)).toBe(0.25);
  });
  it('refuses a mortise that leaves less than 1/8 under it', () => {
    const f = made('mortise-and-tenon', { depth: inchSized('', 1.4375) }, rail(2.5, 8, [])).findings;
    expect(f.map((x) => x.code)).toContain('mortise-floor');
  });
});

describe('dado', () => {
  it('is a third of the wood deep, 1/4 in 3/4; a shelf is notched stop + 1/32 (common practice)', () => {
    const g = made(
      'dado',
      { from: 'top', stop: inchSized('1/2', 0.5) },
      exampleSite({
        entering: { box: inchBox([-30, 0], [0, 0.75], [0, 11]), grain: 0 },
        receiving: { box: inchBox([0, 0.75], [-20, 20], [0, 11]), grain: 1 },
      }),
    );
    expect(spans((g.receiving[0] as BoxCut).at)).toEqual([
      [0, 0.25],
      [0, 0.75],
      [0.5, 11],
    ]);
    expect(spans((g.entering[0] as BoxCut).at)).toEqual([
      [0, 0.25],
      [0, 0.75],
      [0, 0.53125],
    ]);
  });
});

describe('groove', () => {
  it('drawer bottom .205 in a 1/2 side: 7/32 wide, 1/4 deep, full length; 15 between gives 15 7/16 (worked by hand)', () => {
    const g = made(
      'groove',
      {},
      exampleSite(
        {
          entering: { box: inchBox([-15, 0], [0, 0.205], [0, 14.71875]), grain: 2 },
          receiving: { box: inchBox([0, 0.5], [-0.3125, 4.0625], [0, 14.71875]), grain: 2 },
        },
        { material: 'sheet' },
      ),
    );
    expect(spans((g.receiving[0] as BoxCut).at)).toEqual([
      [0, 0.25],
      [0, 0.21875],
      [0, 14.71875],
    ]);
    expect(15 + 2 * size(g.growth.entering.right ?? 0)).toBe(15.4375);
  });
  it('walnut panel 14 wide, swell .153: reserve .108, of 3/8 it enters .267 (reserve formula worked by hand)', () => {
    const g = made(
      'groove',
      { depth: inchSized('3/8', 0.375) },
      exampleSite(
        {
          entering: { box: inchBox([-13.25, 0], [0, 0.25], [0, 20]), grain: 2 },
          receiving: { box: inchBox([0, 2], [-0.25, 0.5], [-3, 23]), grain: 2 },
        },
        { world: exampleWorld('in', () => 0.153 * 25.4e6) },
      ),
    );
    const enters = size(g.growth.entering.right ?? 0);
    expect(enters).toBeLessThanOrEqual(0.375 - 0.1078);
    expect(enters).toBeGreaterThan(0.375 - 0.1078 - 1 / 64);
  });
  it('leg: comes out at TOP three inches from the panel, stops beyond the panel below (nightstand, worked by hand)', () => {
    const leg = exampleSite({
      entering: { box: inchBox([-11.5, 0], [0, 0.25], [0, 11.75]), grain: 2 },
      receiving: { box: inchBox([0, 1.5], [-0.375, 1.125], [-10.5, 14.75]), grain: 2 },
    });
    const at = (spec: Resolved): number[][] => spans((made('groove', spec, leg).receiving[0] as BoxCut).at);
    expect(at({})).toEqual([
      [0, 0.375],
      [0, 0.25],
      [-0.375, 14.75],
    ]);
    expect(at({ from: 'top', stop: inchSized('9 1/4', 9.25) })[2]!.map((x) => 14.75 - x)).toEqual([16, 0]);
  });
});
