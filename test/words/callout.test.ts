import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AXES, FACES, faceAxis, inFace, others, third } from '../../src/geom/axis.js';
import type { Axis, Face } from '../../src/geom/axis.js';
import type { Box3, Span } from '../../src/geom/box.js';
import type { Units } from '../../src/lengths/length.js';
import { parseCallout, sayCuts } from '../../src/words/callout.js';
import type { Cut } from '../../src/words/cut.js';
import { frameOf } from '../../src/words/frame.js';
import type { PartLike } from '../../src/words/frame.js';
import { FACE_WORDS, bare, markOf } from './sample.js';

const S = 396_875; // 1/64 in, nm
const SIZE = [40, 200, 400] as const; // in 64ths, own axes
const COMMON = { id: 'c', from: 'j', mates: [] as string[], rank: 1 as const };

const part: fc.Arbitrary<PartLike> = fc
  .record({
    growth: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 6, maxLength: 6 }),
    sign: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
    order: fc.constantFrom<readonly [Axis, Axis, Axis]>([0, 1, 2], [1, 2, 0], [2, 0, 1], [0, 2, 1]),
    words: fc.constantFrom(...FACE_WORDS),
    step: fc.constantFrom(1, 2),
  })
  .map(({ growth, sign, order, words }) => {
    const ref = (i: 0 | 1 | 2): Face => FACES[order[i] * 2 + (sign[i] ? 1 : 0)] as Face;
    return {
      size: [{ value: SIZE[0] * S }, { value: SIZE[1] * S }, { value: SIZE[2] * S }],
      growth: AXES.map((a) => [(growth[a] ?? 0) * S, (growth[a + 3] ?? 0) * S]) as unknown as Box3,
      thickness: order[0],
      width: order[1],
      length: order[2],
      faceWords: words,
      reference: { face: ref(0), edge: ref(1), end: ref(2) },
    };
  });

const face = fc.constantFrom(...FACES);
/** A span of even sixty-fourths inside the shoulder box, at least two long, so that centres are whole sixty-fourths. */
const within = (a: Axis): fc.Arbitrary<Span> =>
  fc
    .tuple(fc.integer({ min: 0, max: SIZE[a] / 2 - 1 }), fc.integer({ min: 1, max: SIZE[a] / 2 }))
    .map(([x, w]) => [x * 2 * S, Math.min(SIZE[a], (x + w) * 2) * S] as Span);
const blankOf = (p: PartLike): Box3 =>
  AXES.map((a) => [-p.growth[a][0] + 0, p.size[a].value + p.growth[a][1]]) as unknown as Box3;
/** A span along an axis: somewhere inside, from a side of the blank, or right through it. */
const run = (p: PartLike, a: Axis): fc.Arbitrary<Span> =>
  fc.tuple(within(a), fc.constantFrom('in', 'low', 'high', 'full')).map(([s, how]) => {
    const blank = blankOf(p)[a];
    if (how === 'full') return blank;
    return how === 'low' ? [blank[0], s[1]] : how === 'high' ? [s[0], blank[1]] : s;
  });
const length = (a: Axis, min = 1): fc.Arbitrary<number> => fc.integer({ min, max: SIZE[a] - 1 }).map((x) => x * S);

const box = (p: PartLike): fc.Arbitrary<Cut> =>
  face.chain((f) =>
    fc
      .tuple(
        run(p, 0),
        run(p, 1),
        run(p, 2),
        fc.constantFrom('mortise', 'dado', 'groove', 'rabbet', 'slot', 'notch', 'relief'),
      )
      .map(([x, y, z, as]) => ({ ...COMMON, shape: 'box', as, face: f, at: [x, y, z] }) as Cut),
  );
const dovetail = (p: PartLike): fc.Arbitrary<Cut> =>
  face.chain((f) => {
    const [q, r] = inFace(f);
    return fc.boolean().chain((swap) => {
      const [along, taper] = swap ? [r, q] : [q, r];
      return fc
        .record({
          runSpan: run(p, along),
          atFloor: within(taper),
          inset: fc.integer({ min: 0, max: 0 }),
          depth: length(faceAxis(f)),
          as: fc.constantFrom('socket', 'end-socket', 'ease'),
          bit: fc.constantFrom(undefined, { width: 32 * S, angle: 14 }),
          shift: fc.constantFrom(0, S),
        })
        .map(({ runSpan, atFloor, depth, as, bit, shift }) => {
          const atFace: Span = [atFloor[0] + shift, atFloor[1] - shift];
          const fields = { shape: 'dovetail', as, face: f, run: along, taper, runSpan, atFace, atFloor, depth };
          return { ...COMMON, ...fields, ...(bit ? { bit } : {}) } as Cut;
        });
    });
  });
const tails = (p: PartLike): fc.Arbitrary<Cut> =>
  face.chain((end) => {
    const [q, r] = others(faceAxis(end));
    return fc.constantFrom([q, r] as const, [r, q] as const).chain(([taper, k]) =>
      fc
        .record({
          base: fc.integer({ min: 1, max: 8 }),
          n: fc.integer({ min: 1, max: 3 }),
          narrow: fc.integer({ min: 0, max: 1 }),
          odd: fc.integer({ min: 0, max: 3 }),
          keep: run(p, k),
          pitch: fc.constantFrom(undefined, 10 * S),
        })
        .map(({ base, n, narrow, odd, keep, pitch }) => {
          const one = (i: number): { atEnd: Span; atBase: Span } => {
            const lo = (2 + i * 10) * S;
            const hi = lo + (6 + (i === 0 ? odd : 0)) * S;
            return { atEnd: [lo, hi], atBase: [lo + narrow * S, hi - narrow * S] };
          };
          const blank = blankOf(p)[faceAxis(end)];
          const at = FACES.indexOf(end) % 2 === 0 ? blank[0] + base * S : blank[1] - base * S;
          const list = Array.from({ length: n }, (_, i) => one(i));
          const fields = { shape: 'tails', as: n === 1 ? 'tail' : 'tails', end, base: at, taper, tails: list, keep };
          return { ...COMMON, mates: ['m1'], ...fields, ...(pitch === undefined ? {} : { pitch }) } as Cut;
        }),
    );
  });
const tenon = (p: PartLike): fc.Arbitrary<Cut> =>
  face.chain((end) => {
    const [q, r] = others(faceAxis(end));
    return fc
      .record({
        shoulder: fc.integer({ min: 1, max: 20 }),
        a: run(p, q),
        b: run(p, r),
        c: run(p, r),
        haunch: fc.boolean(),
        mitre: fc.constantFrom(undefined, FACES[q * 2 + 1], FACES[r * 2]),
      })
      .map(({ shoulder, a, b, c, haunch, mitre }) => {
        const blank = blankOf(p)[faceAxis(end)];
        const at = FACES.indexOf(end) % 2 === 0 ? blank[0] + shoulder * S : blank[1] - shoulder * S;
        const tongues = [{ a, b, length: shoulder * S }, ...(haunch ? [{ a, b: c, length: S, haunch: true }] : [])];
        const fields = { shape: 'tenon', as: 'tenon', end, shoulder: at, tongues };
        return { ...COMMON, mates: ['m2'], ...fields, ...(mitre ? { mitre: { long: mitre } } : {}) } as Cut;
      });
  });
const twoFaces = fc.tuple(face, face).filter(([f, g]) => faceAxis(f) !== faceAxis(g));
const taper = (): fc.Arbitrary<Cut> =>
  twoFaces.chain(([f, end]) =>
    fc
      .tuple(length(faceAxis(end)), length(faceAxis(f)))
      .map(([begin, off]) => ({ ...COMMON, shape: 'taper', as: 'taper', face: f, end, begin, off }) as Cut),
  );
const arc = (): fc.Arbitrary<Cut> =>
  face.chain((f) =>
    fc
      .constantFrom(...inFace(f))
      .chain((along) =>
        fc
          .tuple(within(along), length(faceAxis(f)))
          .map(([over, rise]) => ({ ...COMMON, shape: 'arc', as: 'arc', face: f, along, over, rise }) as Cut),
      ),
  );
const bore = (): fc.Arbitrary<Cut> =>
  face.chain((f) => {
    const [q, r] = inFace(f);
    return fc
      .record({
        x: length(q),
        y: length(r),
        diameter: fc.integer({ min: 1, max: 30 }),
        depth: fc.oneof(fc.constant('through'), length(faceAxis(f))),
        slot: fc.constantFrom(undefined, { axis: q, length: 60 * S }),
        seat: fc.constantFrom(undefined, { diameter: 40 * S, depth: 4 * S }),
        tilt: fc.constantFrom(undefined, { toward: FACES[r * 2 + 1], degrees: 15 }),
        as: fc.constantFrom('hole', 'pilot', 'slotted', 'counterbore', 'pocket'),
      })
      .map(({ x, y, diameter, depth, slot, seat, tilt, as }) => {
        const extra = { ...(slot ? { slot } : {}), ...(seat ? { seat } : {}), ...(tilt ? { tilt } : {}) };
        const fields = { shape: 'bore', as, face: f, at: [x, y], diameter: diameter * S, depth, ...extra };
        return { ...COMMON, ...fields } as unknown as Cut;
      });
  });
const arris = (p: PartLike): fc.Arbitrary<Cut> =>
  twoFaces.chain(([f, g]) =>
    fc
      .tuple(
        run(p, third(faceAxis(f), faceAxis(g))),
        fc.constantFrom('chamfer', 'round-over', 'cove'),
        fc.constantFrom(1, 4),
      )
      .map(([over, as, size]) => ({ ...COMMON, shape: 'arris', as, faces: [f, g], size: size * S, over }) as Cut),
  );
const outline = (): fc.Arbitrary<Cut> =>
  face.chain((f) => {
    const [q, r] = inFace(f);
    const point = fc.tuple(length(q), length(r), fc.constantFrom(0, 0, 0.25, -0.4142136));
    return fc.array(point, { minLength: 3, maxLength: 6 }).map((points) => {
      const keep = points.map(([x, y, bulge]) => (bulge === 0 ? { to: [x, y] } : { to: [x, y], bulge }));
      return { ...COMMON, shape: 'outline', as: 'outline', face: f, keep } as unknown as Cut;
    });
  });
const marking = (): fc.Arbitrary<Cut> =>
  face.chain((f) =>
    fc.constantFrom(...inFace(f)).chain((a) =>
      fc.tuple(within(a), length(third(faceAxis(f), a)), fc.boolean()).map(([over, at, beyond]) => {
        const span = beyond ? [over[0] - 20 * S, over[1]] : over;
        return { ...COMMON, shape: 'mark', as: 'slide-line', face: f, axis: a, over: span, at } as Cut;
      }),
    ),
  );

const SHAPES: Readonly<Record<string, (p: PartLike) => fc.Arbitrary<Cut>>> = {
  box,
  dovetail,
  tails,
  tenon,
  taper,
  arc,
  bore,
  arris,
  outline,
  mark: marking,
};
/** The text as it might come out of a narrow column: every blank may be a line break. */
const wrapped = (text: string, every: number): string =>
  text
    .split(' ')
    .map((w, i) => (i % every === every - 1 ? `${w}\n  ` : `${w} `))
    .join('');

describe('parse(print(x)) = x', () => {
  for (const [name, make] of Object.entries(SHAPES)) {
    it(name, () => {
      const both = part.chain((p) => make(p).map((cut) => ({ p, cut })));
      fc.assert(
        fc.property(
          both,
          fc.integer({ min: 1, max: 9 }),
          fc.constantFrom<Units>('in', 'in', 'mm'),
          ({ p, cut }, every, units) => {
            const said = sayCuts(p, [cut], { units, markOf });
            expect(said).toHaveLength(1);
            const text = said[0]?.text ?? '';
            const read = parseCallout(wrapped(text, every), frameOf(p, units));
            expect(read?.cuts ?? text).toEqual(units === 'in' ? [bare(cut)] : read?.cuts);
            if (units === 'mm') expect(read?.cuts[0]?.shape).toBe(cut.shape);
          },
        ),
        { numRuns: 200, seed: 7 },
      );
    });
  }
});
