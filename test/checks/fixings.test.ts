import { describe, expect, it } from 'vitest';
import type { CheckInput, Judgement } from '../../src/checks/check.js';
import { fixings } from '../../src/checks/fixings.js';
import { movement } from '../../src/checks/movement.js';
import { byAxis } from '../../src/geom/box.js';
import { inches, toIn } from '../../src/lengths/length.js';
import type { Hardware } from '../../src/piece/piece.js';
import { cap, underTop } from './pieces.js';
import { ran, shippedInput } from './run.js';

const POUND = 0.45359237;
const POUND_FORCE = 4.4482216152605;
const judgements = (input: CheckInput): readonly Judgement[] => fixings.run(input).judgements;
const of = (input: CheckInput, code: string, subject?: string): Judgement => {
  const found = judgements(input).find((j) => j.code === code && (subject === undefined || j.subject === subject));
  if (!found)
    throw new Error(
      `no ${code}: ${judgements(input)
        .map((j) => `${j.code} ${j.subject}`)
        .join(', ')}`,
    );
  return found;
};
const bad = (input: CheckInput): string[] =>
  judgements(input).flatMap((j) => (j.verdict === 'pass' ? [] : [`${j.verdict} ${j.code} ${j.subject}`]));
const pounds = (j: Judgement, name: string): number =>
  (j.worked.inputs.find((i) => i.name === name)?.quantity.value ?? NaN) / POUND;
const lbf = (q: Judgement['figure'] | undefined): number => (q?.value ?? NaN) / POUND_FORCE;

describe('points and bite', () => {
  it('a point 3/32 under a top that is seen is a warning; an inch and a quarter through 3/4 is silent', async () => {
    // 3/4 - 1/8 + 3/4 - 1 9/32 = 3/32.
    const near = await underTop({ screw: '#8 x 1 9/32', sink: '1/8' });
    expect(bad(near)).toEqual(['warning screw-tip R1 on T1']);
    expect(toIn(of(near, 'screw-tip').figure.value)).toBeCloseTo(3 / 32, 9);
    expect(bad(await underTop({ screw: '#8 x 1 1/4', sink: '1/8' }))).toEqual([]);
  });
  it('the same point under a face that is not seen passes', async () => {
    expect(bad(await underTop({ screw: '#8 x 1 9/32', sink: '1/8' }, 'oak-white', { show: [] }))).toEqual([]);
  });
  it('a quarter of an inch of an inch is little, and is told what would do', async () => {
    const j = of(await underTop({ screw: '#8 x 1' }), 'screw-bite');
    expect([j.verdict, j.figure.value]).toEqual(['warning', 25]);
    // Three times what is under the head would be 2 1/4; 3/4 + 3/4 - 1/8 fits.
    expect(j.remedy).toBe('Take a screw up to 1 3/8 long.');
  });
  it('in a part that leans nothing is said of it, and that is told', async () => {
    const input = await underTop({ sink: '1/8', count: 3 });
    const parts = input.piece.parts.map((p) =>
      p.id === 'top'
        ? {
            ...p,
            place: {
              ...p.place,
              rotation: [
                [1, 0, 0],
                [0, 0.8, -0.6],
                [0, 0.6, 0.8],
              ] as const,
            },
          }
        : p,
    );
    expect(bad({ ...input, piece: { ...input.piece, parts } })).toEqual(['note screw-unjudged R1 T1']);
  });
  it('end grain is flagged; turned across it is silent', async () => {
    expect(bad(await cap('up'))).toEqual(['warning screw-end-grain C1 on P1']);
    expect(bad(await cap('across'))).toEqual([]);
  });
});

describe('holes', () => {
  it('the larger pilot belongs to the harder wood: 7/64 in oak, 3/32 in poplar for a number 8', async () => {
    expect(of(await underTop({ sink: '1/8' }), 'screw-pilot').verdict).toBe('pass');
    const soft = of(await underTop({ sink: '1/8' }, 'yellow-poplar'), 'screw-pilot');
    expect([soft.verdict, toIn(soft.figure.value), toIn(soft.limit!.value)]).toEqual(['note', 7 / 64, 3 / 32]);
    expect(soft.remedy).toMatch(/^Drill 3\/32/);
  });
  it('tables every sort of screw with its holes, counted', async () => {
    const rows = fixings.run(await underTop({ sink: '1/8', count: 4 })).tables?.[0]?.rows;
    // 1 1/4 - (3/4 - 1/8) = 5/8 in the top, 1/8 left over it; number 8: 11/64 and 7/64.
    expect(rows).toEqual([['#8 × 1 1/4', '4', 'R1', 'T1', '5/8', '1/8', '11/64', '7/64', '5/8']]);
  });
});

describe('fixings of a top', () => {
  it('one is too few; two 36 in apart are too far; one in 12 in is silent', async () => {
    expect(bad(await underTop({ sink: '1/8', count: 1 }))).toEqual(['warning top-fixings-few R1 on T1']);
    const far = await underTop({ sink: '1/8', count: 2, inset: '2' });
    expect(bad(far)).toEqual(['warning top-fixings-far R1 on T1']);
    // 36 in in spaces of 15 at most: 3 spaces.
    expect(of(far, 'top-fixings-far').remedy).toBe('Give it 4 fixings.');
    expect(bad(await underTop({ sink: '1/8', count: 4, inset: '2' }))).toEqual([]);
  });
  it('lifted by the top: 2850 G2 D an inch of thread for every screw', async () => {
    const input = await underTop({ sink: '1/8', count: 4, inset: '2' });
    const j = of(input, 'top-lifts-off');
    // White oak .68, number 8 .164, 5/8 of thread: 135.1 lbf each.
    expect(lbf(j.limit)).toBeCloseTo(4 * 2850 * 0.68 ** 2 * 0.164 * 0.625, 1);
    // What hangs: the rail, 40 x 2 1/2 x 3/4 = 75 cubic inches, less its holes.
    expect(lbf(j.figure)).toBeCloseTo((75 / 1728) * 62.43 * 0.68 * 1.12, 0);
    const { making } = input;
    const heavy = { ...making.weights, parts: making.weights.parts.map((p) => ({ ...p, kg: 300 })) };
    expect(bad({ ...input, making: { ...making, weights: heavy } })).toEqual(['fail top-lifts-off T1']);
  });
});

describe('slides under a full drawer', () => {
  const chest = shippedInput('tall-chest');
  const changed = async (f: (h: Hardware) => Hardware): Promise<CheckInput> => {
    const input = await chest;
    return { ...input, piece: { ...input.piece, hardware: input.piece.hardware.map(f) } };
  };
  it('the long drawer: 32 7/32 x 15 x 7 17/64 inside, filled at 8.5 lb a cubic foot', async () => {
    const j = of(await chest, 'slide-load', 'D5');
    // 34 1/4 - 2 (33/64 + 1/2); 16 - 2 x 1/2; 7 7/8 - 1/4 - .354.
    const cubicFeet = ((34.25 - 2 * (33 / 64 + 0.5)) * 15 * (7.875 - 0.25 - 0.354)) / 1728;
    expect(pounds(j, 'filled with')).toBeCloseTo(8.5 * cubicFeet, 1);
    expect([j.verdict, Number((j.limit!.value / POUND).toFixed(6))]).toEqual(['pass', 75]);
    const weak = await changed((h) => (h.carries ? { ...h, carries: { ...h.carries, kg: 14 } } : h));
    // 14 kg are 30.9 lb: D4 with 30.5 just passes, D5 with 34.0 does not.
    expect(bad(weak).filter((b) => b.includes('slide-load'))).toEqual(['fail slide-load D5']);
  });
  it('its first screw: the couple by hand, and number 6 in quartered oak by both equations', async () => {
    const input = await chest;
    const full = of(input, 'slide-load', 'D5').figure.value / POUND;
    const [draws, bears] = ['slide-screw-draws', 'slide-screw-bears'].map((c) => of(input, c, 'D5 on A1 A2'));
    // Half the load; 8 - 16 + 8 in: its middle, 8 in behind the box's front, comes 16 out: 9 1/2 ahead of the first screw; 13 between screws.
    expect(lbf(bears!.figure)).toBeCloseTo((full / 2) * (1 + 9.5 / 13), 1);
    expect(lbf(draws!.figure)).toBeCloseTo(((full / 2) * (1 + 9.5 / 13) * 0.5) / 0.875, 1);
    const thread = 5 / 8 - 3 / 64;
    expect(lbf(draws!.limit)).toBeCloseTo(2850 * 0.68 ** 2 * 0.138 * thread, 1);
    // K 6400 for woods of .57 to .74; seven shanks would be .966.
    expect(Math.abs(lbf(bears!.limit) - (6400 * 0.138 ** 2 * thread) / (7 * 0.138))).toBeLessThan(0.1);
  });
  it('screws that hardly enter fail both ways', async () => {
    const short = await changed((h) => {
      if (!h.screw || !h.drawer) return h;
      const { from, to } = h.screw;
      return {
        ...h,
        screw: {
          ...h.screw,
          length: inches(0.1),
          to: byAxis((a) => (a === 0 ? from[a] + Math.sign(to[a] - from[a]) * inches(0.1) : to[a])),
        },
      };
    });
    const found = bad(short).filter((b) => /slide-screw-\w+ D5/.test(b));
    expect(found).toEqual(['fail slide-screw-bears D5 on A1 A2', 'fail slide-screw-draws D5 on A1 A2']);
    expect(bad(await chest).filter((b) => b.includes('slide'))).toEqual([]);
  });
});

describe('both checks', () => {
  it.each([
    ['movement', movement],
    ['fixings', fixings],
  ])('%s reads what joints do and never what they are called', async (_name, check) => {
    const input = await shippedInput('nightstand');
    const joints = input.piece.joints.map((j) => ({ ...j, kind: 'unheard-of', words: 'no name' }));
    expect(check.run({ ...input, piece: { ...input.piece, joints } })).toEqual(check.run(input));
  });
  it('fixings are plain data, the same twice, with a remedy wherever one is due', async () => {
    const input = await shippedInput('tall-chest');
    const once = fixings.run(input);
    expect(JSON.parse(JSON.stringify(once))).toEqual(once);
    expect(fixings.run(input)).toEqual(once);
    for (const j of once.judgements) {
      expect(j.worked.rule.length > 0 && j.worked.sources.every((s) => s.length > 0)).toBe(true);
      if (j.verdict === 'warning' || j.verdict === 'fail') expect(j.remedy).toMatch(/\.$/);
    }
    expect(ran(fixings, input).findings.every((f) => f.severity === 'note')).toBe(true);
  });
});
