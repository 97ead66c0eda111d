import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  expandDrawer,
  gridCells,
  shiftCut,
  type ComponentContext,
  type DrawerFields,
} from '../../src/components/index.js';
import { inches, mm, nm, toIn, type Length } from '../../src/lengths/length.js';
import { given } from '../../src/value/sized.js';

const at = (value: Length) => given(value, 'test');
const span = (a: number, b: number) => [at(inches(a)), at(inches(b))] as const;

/** White oak, quartered: 0.00180 per 1 % (Wood Handbook, table 13-5), made at 8 % for 11 %. */
const OAK_QUARTERED = 0.0018 * 3;

const chest = (
  id: string,
  across: readonly [number, number],
  up: readonly [number, number],
  bottom: number,
): ComponentContext => ({
  id,
  index: 1,
  mark: 'D1',
  path: ['drawers', 'short'],
  opening: {
    left: 'side_left',
    right: 'divider',
    bottom: 'rail_2',
    top: 'rail_1',
    across: span(...across),
    deep: span(0, 18.75),
    up: span(...up),
    shrinks: nm(0),
  },
  world: {
    units: 'in',
    step: inches(1 / 64),
    pitch: inches(7 / 8),
    swell: (_stock, width) => width * OAK_QUARTERED,
    shrink: () => 0,
    thickness: (stock) => (stock === 'ply' ? inches(bottom) : undefined),
  },
});
const FIELDS: DrawerFields = {
  front: { kind: 'separate', stock: 'oak' },
  box: { stock: 'poplar', bottom: 'ply', runner: 'side-slide' },
};
const sizesOf = (context: ComponentContext, fields = FIELDS) => {
  const made = expandDrawer(fields, context);
  expect(made.findings).toEqual([]);
  const size = (name: string): number[] => {
    const part = made.parts.find((p) => p.id === `${context.id}.${name}`);
    if (!part) throw new Error(name);
    return part.box.map(([lo, hi]) => toIn(hi.value - lo.value));
  };
  return { made, size };
};

// The openings, fronts, sides, box fronts and bottoms below are worked out by hand for a chest 36 x 19 x 42, sides 7/8,
// divider 3/4, openings 5 1/4, 7, 8, 9 high, back 1/4 from the back edge.
describe('a drawer on side slides', () => {
  const short = sizesOf(chest('short_1', [7 / 8, 17.625], [35.125, 40.375], 0.205));

  it('has the front, box and bottom that the bench sums give', () => {
    expect(short.size('front')).toEqual([16.625, 0.75, 5.125]);
    expect(short.size('side_left')).toEqual([0.5, 15, 4.375]);
    expect(short.size('box_front')).toEqual([15 + 23 / 32, 0.5, 4.375]);
    expect(short.size('box_back')).toEqual([15 + 23 / 32, 0.5, 4.375]);
    // Between the box's insides; the groove takes 1/4 on each side less 1/32.
    expect(short.size('bottom')).toEqual([14 + 23 / 32, 15, 0.205]);
    const groove = short.made.joints.find((j) => j.kind === 'groove');
    expect(groove?.fields['depth']).toMatchObject({ value: inches(1 / 4) });
    expect(groove?.fields['slack']).toMatchObject({ value: inches(1 / 32) });
    expect(14 + 23 / 32 + 0.5 - 1 / 16).toBe(15 + 5 / 32);
  });

  it.each([
    ['long_1', 7, 6.125, 5 / 64],
    ['long_2', 8, 7, 5 / 64],
    ['long_3', 9, 7.875, 5 / 64],
    ['short_1', 5.25, 4.375, 1 / 16],
  ])('%s: height %d gives sides %d and a gap above of %d', (id, height, side, gap) => {
    const { made, size } = sizesOf(chest(id, [0.875, 35.125], [10, 10 + height], 0.354));
    expect(size('side_right')[2]).toBe(side);
    expect(toIn(made.drawer?.gaps.top.value ?? 0)).toBe(gap);
    expect(size('front')).toEqual([34.125, 0.75, height - 1 / 16 - gap]);
    expect(size('box_back')[0]).toBe(33 + 7 / 32);
    expect(size('bottom')[0]).toBe(32 + 21 / 32 - 7 / 16);
  });

  it('stands where it should: box 1/2 over the rail and 13/16 behind the front edge, groove 5/16 or 1/4 up', () => {
    const side = short.made.parts.find((p) => p.id === 'short_1.side_left');
    const base = short.made.parts.find((p) => p.id === 'short_1.box_front');
    expect(toIn(side?.box[2][0].value ?? 0)).toBe(35.625);
    expect(toIn(base?.box[1][0].value ?? 0)).toBe(13 / 16);
    const bottom = short.made.parts.find((p) => p.id === 'short_1.bottom');
    expect(toIn(bottom?.box[2][0].value ?? 0)).toBe(35.625 + 5 / 16);
    const thick = sizesOf(chest('long_1', [0.875, 35.125], [10, 17], 0.354)).made.parts.find(
      (p) => p.id === 'long_1.bottom',
    );
    expect(toIn(thick?.box[2][0].value ?? 0)).toBe(10.5 + 1 / 4);
  });

  it('marks the slide line 2 1/2 over the rail, 16 long from 13/16, on the faces that see each other', () => {
    const marks = short.made.cuts.filter((c) => c.cut.shape === 'mark');
    expect(marks.map((c) => [c.part, c.cut.face])).toEqual([
      ['side_left', 'right'],
      ['short_1.side_left', 'left'],
      ['divider', 'left'],
      ['short_1.side_right', 'right'],
    ]);
    const first = marks[0]?.cut;
    if (first?.shape !== 'mark') throw new Error('no mark');
    expect(toIn(first.at)).toBe(37.625);
    expect(first.over.map(toIn)).toEqual([13 / 16, 16 + 13 / 16]);
    const own = shiftCut(first, [0, inches(1), inches(37)]);
    expect([toIn(own.at), toIn(own.over[0])]).toEqual([0.625, 13 / 16 - 1]);
  });

  it('keeps the slides and the box clear of one another', () => {
    const slides = short.made.hardware.filter((h) => h.kind === 'slide');
    const spans = slides.map((h) => (h.body.op === 'box' ? h.body.at[0].map(toIn) : []));
    const box = short.made.parts.find((p) => p.id === 'short_1.box_front')?.box[0].map((s) => toIn(s.value)) ?? [];
    expect(spans).toEqual([
      [0.875, 1.375],
      [17.125, 17.625],
    ]);
    expect((box[0] ?? 0) - 1.375).toBeCloseTo(1 / 64, 9);
    expect(17.125 - (box[1] ?? 0)).toBeCloseTo(1 / 64, 9);
  });

  it('numbers its members from the mark', () => {
    expect(short.made.parts.map((p) => [p.mark, p.role])).toEqual([
      ['D1.1', 'box front'],
      ['D1.2', 'left side'],
      ['D1.3', 'right side'],
      ['D1.4', 'box back'],
      ['D1.5', 'front'],
      ['D1.6', 'bottom'],
    ]);
    expect(short.made.joints.map((j) => j.kind)).toEqual([...Array(4).fill('half-blind-dovetail'), 'groove', 'screw']);
  });

  it('refuses an opening that is too low, too shallow, or a slide it does not know', () => {
    const codes = (c: ComponentContext, f = FIELDS) => expandDrawer(f, c).findings.map((d) => d.code);
    expect(codes(chest('a_1', [0, 10], [0, 1.5], 0.2))).toContain('drawer-opening-too-small');
    const shallow = chest('a_1', [0, 10], [0, 5], 0.2);
    expect(codes({ ...shallow, opening: { ...shallow.opening, deep: span(0, 9) } })).toContain('no-slide-fits');
    // 1/16 set back + 3/4 front + a slide of 10 + 1/2 behind = 11 5/16: it must be there when the case is at its driest, too.
    const just = { ...shallow.opening, deep: span(0, 11.3125) };
    expect(codes({ ...shallow, opening: just })).not.toContain('no-slide-fits');
    expect(codes({ ...shallow, opening: { ...just, shrinks: inches(1 / 32) } })).toContain('no-slide-fits');
    expect(codes(shallow, { ...FIELDS, box: { ...FIELDS.box, slide: 'nonsense' } })).toContain('unknown-slide');
    expect(codes(shallow, { ...FIELDS, box: { ...FIELDS.box, runner: 'none' } })).toContain('drawer-without-runner');
  });
});

describe('any opening', () => {
  it('gives a box and a front inside it, every size on the step, or says why not', () => {
    const sixteenth = (min: number, max: number) => fc.integer({ min: min * 16, max: max * 16 }).map((n) => n / 16);
    fc.assert(
      fc.property(sixteenth(4, 40), sixteenth(2, 14), sixteenth(8, 32), (wide, high, deep) => {
        const base = chest('any_1', [1, 1 + wide], [3, 3 + high], 0.205);
        const made = expandDrawer(FIELDS, { ...base, opening: { ...base.opening, deep: span(0, deep) } });
        if (made.findings.length > 0) {
          expect(made.parts).toEqual([]);
          expect(made.findings.every((f) => f.severity === 'error' && f.message !== '')).toBe(true);
          return;
        }
        const box = (id: string) => {
          const p = made.parts.find((m) => m.id === `any_1.${id}`);
          if (!p) throw new Error(id);
          return p.box.map(([lo, hi]) => [lo.value, hi.value] as const);
        };
        for (const p of made.parts)
          p.box.forEach(([lo, hi], axis) => {
            expect(hi.value).toBeGreaterThan(lo.value);
            const room = [base.opening.across, span(0, deep), base.opening.up][axis] ?? span(0, 0);
            expect(lo.value).toBeGreaterThanOrEqual(room[0].value);
            expect(hi.value).toBeLessThanOrEqual(room[1].value);
          });
        const [left, right, fore, back, base2] = ['side_left', 'side_right', 'box_front', 'box_back', 'bottom'].map(
          box,
        );
        if (!left || !right || !fore || !back || !base2) throw new Error('members');
        // Sides stand between front and back and flush with their ends; all four have one height, on the jig's pitch.
        expect([left[1]?.[0], left[1]?.[1]]).toEqual([fore[1]?.[1], back[1]?.[0]]);
        expect([left[0]?.[0], right[0]?.[1]]).toEqual([...(fore[0] ?? [])]);
        for (const m of [right, fore, back]) expect(m[2]).toEqual(left[2]);
        expect(((left[2]?.[1] ?? 0) - (left[2]?.[0] ?? 0)) % inches(7 / 8)).toBe(0);
        // The box is as long as its slide, and there is at least 1/2 behind.
        const length = toIn((back[1]?.[1] ?? 0) - (fore[1]?.[0] ?? 0));
        expect(length % 2).toBe(0);
        expect(deep - toIn(back[1]?.[1] ?? 0)).toBeGreaterThanOrEqual(0.5);
        // The bottom fills the inside; its groove is over the lower edge of the sides.
        expect([base2[0]?.[0], base2[0]?.[1]]).toEqual([left[0]?.[1], right[0]?.[0]]);
        expect(base2[2]?.[0]).toBeGreaterThan(left[2]?.[0] ?? 0);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
  it('bores for its pulls through the front and the box front at one place', () => {
    const { made } = sizesOf(chest('long_1', [0.875, 35.125], [10, 17], 0.354));
    const bores = made.cuts.flatMap((c) => (c.cut.shape === 'bore' ? [{ part: c.part, at: c.cut.at }] : []));
    expect(bores.map((b) => b.part)).toEqual(['long_1.front', 'long_1.box_front', 'long_1.front', 'long_1.box_front']);
    expect(bores[0]?.at).toEqual(bores[1]?.at);
    expect(bores[2]?.at).toEqual(bores[3]?.at);
    // Two pulls at a quarter from each end of a front 34 1/8 long.
    expect((toIn(bores[0]?.at[0] ?? 0) + toIn(bores[2]?.at[0] ?? 0)) / 2).toBeCloseTo(18, 1);
    expect(made.hardware.filter((h) => h.kind === 'pull')).toHaveLength(2);
    expect(
      sizesOf(chest('a_1', [0, 20], [0, 7], 0.2), {
        ...FIELDS,
        front: { ...FIELDS.front, pulls: 'none' },
      }).made.hardware.map((h) => h.kind),
    ).toEqual(['slide', 'slide']);
  });
});

describe('a drawer with an integral front, millimetres', () => {
  it('fills its opening and slides on the part below', () => {
    const metric = (v: number) => at(mm(v));
    const context: ComponentContext = {
      ...chest('drawer_1', [0, 1], [0, 1], 0.2),
      id: 'drawer_1',
      opening: {
        left: 'a',
        right: 'b',
        bottom: 'c',
        top: 'd',
        across: [metric(12), metric(406)],
        deep: [metric(0), metric(234)],
        up: [metric(12), metric(72)],
        shrinks: nm(0),
      },
      world: {
        units: 'mm',
        step: nm(100_000),
        pitch: mm(20),
        swell: (_s, w) => w * 0.004,
        shrink: () => 0,
        thickness: () => mm(4),
      },
    };
    const fields: DrawerFields = {
      front: { kind: 'integral', stock: 'maple', pulls: 'none' },
      box: { stock: 'maple', bottom: 'ply', runner: 'none' },
    };
    const made = expandDrawer(fields, context);
    expect(made.findings).toEqual([]);
    const front = made.parts.find((p) => p.id === 'drawer_1.front');
    // 394 - 2 x 0.4; 60 less (0.8 + 60 x 0.004 = 1.04, up to 1.1).
    expect(front?.box.map(([lo, hi]) => (hi.value - lo.value) / 1e6)).toEqual([393.2, 19, 58.9]);
    expect(made.parts.map((p) => p.role)).toEqual(['front', 'left side', 'right side', 'box back', 'bottom']);
    expect(made.hardware).toEqual([]);
    // 234 less a stop of 5.
    const corner = made.joints.find((j) => j.kind === 'half-blind-dovetail');
    // 58.9 over two tails, down to 0.1; the groove no deeper than half of a thin side.
    expect(corner?.fields['pitch']).toMatchObject({ value: mm(29.4) });
    const thin = expandDrawer({ ...fields, box: { ...fields.box, sides: metric(9) } }, context);
    expect(thin.joints.find((j) => j.kind === 'groove')?.fields['depth']).toMatchObject({ value: mm(4.5) });
    const back = made.parts.find((p) => p.role === 'box back');
    expect(back?.box[1][1].value).toBe(mm(229));
  });
});

describe('a grid of openings', () => {
  it('is numbered left to right, top to bottom', () => {
    expect(
      gridCells('d', ['l', 'm', 'r'], ['c', 'b', 'a']).map((c) => [c.id, c.left, c.right, c.bottom, c.top]),
    ).toEqual([
      ['d_1', 'l', 'm', 'b', 'a'],
      ['d_2', 'm', 'r', 'b', 'a'],
      ['d_3', 'l', 'm', 'c', 'b'],
      ['d_4', 'm', 'r', 'c', 'b'],
    ]);
    expect(gridCells('d', ['l'], ['a', 'b'])).toEqual([]);
  });
});
