import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  FACTORS,
  longestShelf,
  restingSag,
  secondMoment,
  sectionStiffness,
  shares,
  tableSag,
  tipSag,
  type Bar,
} from '../../src/wood/beam.js';

const IN = 0.0254;
const LBF = 4.4482216152605;
const PSI = LBF / IN ** 2;
const PSF = LBF / 0.3048 ** 2;

describe('published shelf spans', () => {
  // Architectural Woodwork Standards, edition 1 (2009): longest shelf by modulus, thickness and load at L/144.
  it.each([
    [950_000, 0.75, 40, 40.03, 40],
    [950_000, 0.75, 50, 37.16, 37],
    [950_000, 1, 40, 53.37, 53],
    [1_800_000, 0.75, 40, 49.53, 49],
    [1_800_000, 0.75, 50, 45.98, 46],
    [1_800_000, 1, 40, 66.03, 66],
    [1_820_000, 0.75, 40, 49.71, 49],
    [1_820_000, 0.75, 50, 46.15, 46],
    [1_820_000, 1, 40, 66.28, 66],
  ])('%d psi, %d in, %d lb/ft2: %d in', (psi, thick, psf, inch, printed) => {
    const l = longestShelf(psi * PSI, thick * IN, psf * PSF, 144) / IN;
    expect(l).toBeCloseTo(inch, 1);
    expect(Math.floor(l + 0.05)).toBe(printed);
    // The same by the beam formula, for a shelf of any breadth: it sags a 144th.
    const sag = tableSag('even, simple', psf * PSF * l * IN * 0.3, l * IN, psi * PSI, {
      breadth: 0.3,
      height: thick * IN,
    });
    expect((l * IN) / sag).toBeCloseTo(144, 6);
  });
});

describe('worked figures, equation 9-2', () => {
  const shelf = (wide: number) => ({ breadth: wide * IN, height: 0.75 * IN });
  // 5 x 100 x 36^3 / (384 x 1.82e6 x .3516) = .0949 in, a 379th.
  it('red oak, 36 x 10 x 3/4, 100 lb even', () => {
    const sag = tableSag('even, simple', 100 * LBF, 36 * IN, 1.82e6 * PSI, shelf(10)) / IN;
    expect(sag).toBeCloseTo(0.0949, 4);
    expect(36 / sag).toBeCloseTo(379, 0);
  });
  it('the same with a tenth more stiffness and the shear term', () => {
    expect(tableSag('even, simple', 100 * LBF, 36 * IN, 1.82e6 * PSI, shelf(10), true) / IN).toBeCloseTo(0.0869, 4);
  });
  it('white pine, 75 lb: at first and in years', () => {
    const now = tableSag('even, simple', 75 * LBF, 36 * IN, 1.24e6 * PSI, shelf(10)) / IN;
    expect(now).toBeCloseTo(0.1045, 4);
    expect(1.5 * now).toBeCloseTo(0.1568, 4);
  });
  it('hard maple, 30 x 12 x 3/4, 50 lb in the middle', () => {
    expect(tableSag('middle, simple', 50 * LBF, 30 * IN, 1.83e6 * PSI, shelf(12)) / IN).toBeCloseTo(0.0364, 4);
  });
});

/** Deflection by integrating the curvature twice with small steps: code of its own. */
function stepped(bar: Bar, fixed: boolean): (x: number) => number {
  const n = 20_000;
  const h = bar.length / n;
  const lumps = bar.loads.flatMap((l) => {
    const k = l.to > l.from ? 400 : 1;
    return Array.from({ length: k }, (_, i) => ({ at: l.from + ((l.to - l.from) * (i + 0.5)) / k, p: l.newtons / k }));
  });
  const left = lumps.reduce((t, p) => t + (p.p * (bar.length - p.at)) / bar.length, 0);
  const moment = (s: number): number =>
    fixed
      ? 0 - lumps.reduce((t, p) => t + (p.at > s ? p.p * (p.at - s) : 0), 0)
      : left * s - lumps.reduce((t, p) => t + (p.at < s ? p.p * (s - p.at) : 0), 0);
  const y = [0];
  let [slope, at] = [0, 0];
  for (let i = 0; i < n; i++) {
    const s = (i + 0.5) * h;
    const ei = bar.stiffness.find((p) => p.from <= s && s <= p.to)?.ei ?? 0;
    const bend = (moment(s) / ei) * h;
    at += (slope + bend / 2) * h;
    slope += bend;
    y.push(at);
  }
  // Resting: the chord through both ends is level.
  const tilt = fixed ? 0 : (y[n] ?? 0) / bar.length;
  return (x) => {
    const i = Math.round(x / h);
    return Math.abs((y[i] ?? 0) - tilt * i * h);
  };
}

describe('bars of changing section', () => {
  const plain = (loads: Bar['loads']): Bar => ({ length: 1.2, stiffness: [{ from: 0, to: 1.2, ei: 900 }], loads });
  it('an even bar gives the table', () => {
    const even = plain([{ from: 0, to: 1.2, newtons: 300 }]);
    expect(restingSag(even)).toBeCloseTo((FACTORS['even, simple'].bending * 300 * 1.2 ** 3) / 900, 12);
    expect(tipSag(even)).toBeCloseTo((FACTORS['even, one end'].bending * 300 * 1.2 ** 3) / 900, 12);
    const point = plain([{ from: 0.6, to: 0.6, newtons: 300 }]);
    expect(restingSag(point)).toBeCloseTo((FACTORS['middle, simple'].bending * 300 * 1.2 ** 3) / 900, 12);
    const tip = plain([{ from: 1.2, to: 1.2, newtons: 300 }]);
    expect(tipSag(tip)).toBeCloseTo((FACTORS['tip, one end'].bending * 300 * 1.2 ** 3) / 900, 12);
    const quarters = plain([0.3, 0.9].map((x) => ({ from: x, to: x, newtons: 150 })));
    expect(restingSag(quarters)).toBeCloseTo((FACTORS['quarter points, simple'].bending * 300 * 1.2 ** 3) / 900, 12);
    // Under a quarter-point load: 1/96 W L3 / EI, by beam theory.
    expect(restingSag(quarters, 0.3)).toBeCloseTo(((1 / 96) * 300 * 1.2 ** 3) / 900, 12);
  });
  it('a notched bar with odd loads: as by small steps', () => {
    const bar: Bar = {
      length: 1,
      stiffness: [
        { from: 0, to: 0.35, ei: 800 },
        { from: 0.35, to: 0.45, ei: 120 },
        { from: 0.45, to: 1, ei: 800 },
      ],
      loads: [
        { from: 0, to: 1, newtons: 200 },
        { from: 0.2, to: 0.6, newtons: 90 },
        { from: 0.7, to: 0.7, newtons: 150 },
      ],
    };
    const resting = stepped(bar, false);
    for (const x of [0.25, 0.5, 0.7]) expect(restingSag(bar, x) / resting(x)).toBeCloseTo(1, 3);
    expect(tipSag(bar) / stepped(bar, true)(1)).toBeCloseTo(1, 3);
  });
  it('a bar with no stiffness somewhere never comes to rest', () => {
    const bar: Bar = { length: 1, stiffness: [{ from: 0, to: 0.5, ei: 1 }], loads: [{ from: 0, to: 1, newtons: 1 }] };
    expect(restingSag(bar)).toBe(Infinity);
  });
});

describe('sections', () => {
  it('two boards glued face to face are one of twice the thickness; loose they are two', () => {
    const one = { modulus: 1e10, breadth: 0.2, low: 0, high: 0.02 };
    const two = { ...one, low: 0.02, high: 0.04 };
    expect(sectionStiffness([one, two])).toBeCloseTo(1e10 * secondMoment(0.2, 0.04), 6);
    expect(sectionStiffness([one]) + sectionStiffness([two])).toBeCloseTo((1e10 * secondMoment(0.2, 0.04)) / 4, 6);
  });
  it('a T by hand: 10 x 3/4 shelf over a 3/4 x 1 1/2 front edge, tops level', () => {
    // Areas 7.5 and 1.125 in2; middles 1.125 and .75 up; neutral line (8.4375 + .84375) / 8.625 = 1.0761.
    // I = .35156 + 7.5 x .00239 + .21094 + 1.125 x .10634 = .7001 in4.
    const i = sectionStiffness([
      { modulus: 1, breadth: 10, low: 0.75, high: 1.5 },
      { modulus: 1, breadth: 0.75, low: 0, high: 1.5 },
    ]);
    expect(i).toBeCloseTo(0.7001, 3);
  });
  it('a strip taken away is a hollow', () => {
    const whole = { modulus: 1, breadth: 4, low: 0, high: 3 };
    expect(sectionStiffness([whole, { modulus: 1, breadth: -4, low: 2, high: 3 }])).toBeCloseTo(secondMoment(4, 2), 12);
  });
});

describe('laws', () => {
  const positive = fc.double({ min: 0.05, max: 3, noNaN: true });
  it('sag falls with the cube of the thickness and grows with that of the span', () => {
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 1.1, max: 4, noNaN: true }), (span, thick, k) => {
        const sag = (l: number, t: number): number =>
          tableSag('even, simple', 100, l, 1e10, { breadth: 0.3, height: t });
        expect(sag(span, thick) / sag(span, k * thick)).toBeCloseTo(k ** 3, 6);
        expect(sag(k * span, thick) / sag(span, thick)).toBeCloseTo(k ** 3, 6);
      }),
    );
  });
  it('a square plate alike both ways shares its load in halves; the short way bears the most', () => {
    expect(shares({ modulus: 1, span: 2 }, { modulus: 1, span: 2 })).toEqual([0.5, 0.5]);
    expect(shares({ modulus: 1, span: 1 }, { modulus: 1, span: 2 })[0]).toBeCloseTo(16 / 17, 12);
  });
});

describe('plates borne all round, against the double series of plate theory (Navier)', () => {
  /** Middle of a plate a x b under an even load: D dx, dy both ways and 2h of twist, by 40 x 40 odd terms. */
  const series = (a: number, b: number, dx: number, dy: number, h: number): number => {
    let w = 0;
    for (let m = 1; m < 80; m += 2)
      for (let n = 1; n < 80; n += 2) {
        const sign = ((m + n) / 2) % 2 === 1 ? 1 : -1;
        const stiff = dx * (m / a) ** 4 + 2 * h * (m / a) ** 2 * (n / b) ** 2 + dy * (n / b) ** 4;
        w += (sign * 16) / (Math.PI ** 6 * m * n * stiff);
      }
    return w;
  };
  const strips = (a: number, b: number, dx: number, dy: number): number =>
    ((5 / 384) * shares({ modulus: dx, span: a }, { modulus: dy, span: b })[0] * a ** 4) / dx;
  it('the series itself: a square plate alike both ways sags .00406 q a4 / D', () => {
    expect(series(1, 1, 1, 1, 1)).toBeCloseTo(0.00406, 5);
  });
  // Plywood: half as stiff across, and in twist about a quarter of the mean (shear modulus about a tenth of E).
  it.each([
    [1, 1],
    [1, 1.3],
    [1.3, 1],
    [1, 2],
    [2, 1],
  ])('plywood %d x %d: within 15 %%', (a, b) => {
    const ratio = strips(a, b, 1, 0.5) / series(a, b, 1, 0.5, 0.25 * Math.sqrt(0.5));
    expect(ratio).toBeGreaterThan(0.85);
    expect(ratio).toBeLessThan(1.15);
  });
  it('alike both ways: never less, at most six tenths more', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2, noNaN: true }), (b) => {
        const ratio = strips(1, b, 1, 1) / series(1, b, 1, 1, 1);
        expect(ratio).toBeGreaterThan(0.99);
        expect(ratio).toBeLessThan(1.61);
      }),
      { numRuns: 25 },
    );
  });
});
