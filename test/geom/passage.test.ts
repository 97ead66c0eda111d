import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cosine, sine } from '../../src/geom/angle.js';
import { rectangleInside, squareHeadroom, tippedHeight, widestRoundCorner } from '../../src/geom/passage.js';

/** Turned by every angle to a twentieth of a degree: how high the rectangle is where it is no wider than `a`. */
function tried(p: number, q: number, a: number): number {
  let least = Infinity;
  for (let t = 0; t <= 90; t += 0.05) {
    const [c, s] = [cosine(t), sine(t)];
    if (p * c + q * s <= a + 1e-9) least = Math.min(least, p * s + q * c);
  }
  return least;
}

describe('a rectangle in a rectangle', () => {
  const side = fc.integer({ min: 10, max: 100 });
  it('agrees with turning it by trial', () => {
    fc.assert(
      fc.property(side, side, side, side, (p, q, a, b) => {
        const [wide, high] = [Math.max(a, b), Math.min(a, b)];
        const least = Math.min(
          tried(Math.max(p, q), Math.min(p, q), wide),
          tried(Math.min(p, q), Math.max(p, q), wide),
        );
        const got = rectangleInside(p, q, a, b);
        // Trial is coarse: it is left out where it is within a quarter of a unit.
        if (Math.abs(least - high) > 0.25) expect(got.fits).toBe(least <= high);
        if (got.fits && got.turn > 0) {
          const [long, short] = [Math.max(p, q), Math.min(p, q)];
          expect(long * cosine(got.turn) + short * sine(got.turn)).toBeCloseTo(wide, 6);
          expect(long * sine(got.turn) + short * cosine(got.turn)).toBeCloseTo(got.needs, 6);
        }
      }),
      { seed: 20261125, numRuns: 120 },
    );
  });
  // A 10 x 1 strip has no room in 9 x 9 flat, but lies across its corners: 9 = 10 cos t + sin t at t = 31.6 degrees.
  it('lies across the corners', () => {
    expect(rectangleInside(10, 1, 9, 9)).toMatchObject({
      fits: true,
      turn: expect.closeTo(5.7106 + 26.4242, 2) as number,
    });
    expect(rectangleInside(10, 1, 9, 5).fits).toBe(false);
  });
});

describe('round a corner', () => {
  // By hand at 45 degrees: (36 x .70711 x 2 - 20) / .5 = 61.8.
  it('two passages of 36 in let 61.8 x 20 in round', () => {
    expect(widestRoundCorner(61.82, 36, 36).width).toBeCloseTo(20, 1);
    expect(widestRoundCorner(61.82, 36, 36).turn).toBeCloseTo(45, 3);
  });
  // A line of no width: (a^(2/3) + b^(2/3))^(3/2), the classic ladder; 27 and 64 give 125.
  it('a ladder of 125 goes round 27 and 64 just so', () => {
    expect(widestRoundCorner(125, 27, 64).width).toBeCloseTo(0, 6);
    expect(widestRoundCorner(124, 27, 64).width).toBeGreaterThan(0);
    expect(widestRoundCorner(126, 27, 64).width).toBeLessThan(0);
  });
  it('what is longer is never wider', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 90 }), (length, more) => {
        expect(widestRoundCorner(length + more, 50, 70).width).toBeLessThanOrEqual(
          widestRoundCorner(length, 50, 70).width + 1e-9,
        );
      }),
      { seed: 1, numRuns: 60 },
    );
  });
});

describe('tipped up, and on a slope', () => {
  it('82 x 44 in takes 93.1 in, a bookcase of 72 x 12 in 73.0', () => {
    expect(tippedHeight(44, 82)).toBeCloseTo(93.06, 2);
    expect(tippedHeight(12, 72)).toBeCloseTo(72.99, 2);
  });
  it('80 in plumb over a stair of 35 degrees is 65.5 in square to it', () =>
    expect(squareHeadroom(80, 35)).toBeCloseTo(65.53, 2));
});
