import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatAngle, formatLength, parseAngle, parseFigure } from '../../src/lengths/format.js';
import { gcd, mixed, mixedText, SIXTY_FOURTH } from '../../src/lengths/fractions.js';
import { inches, mm, nm } from '../../src/lengths/length.js';
import type { Length } from '../../src/lengths/length.js';

test.each([
  [33.5, '33 1/2'],
  [7 / 32, '7/32'],
  [0, '0'],
  [-0.75, '-3/4'],
  [-33.5, '-33 1/2'],
  [0.205, '.205'], // a sheet sold as 1/4 in, as measured
  [1.205, '1.205'],
  [-0.205, '-.205'],
  [63 / 64, '63/64'],
  [12, '12'],
  [0.0001, '0'],
  [-0.0001, '0'],
])('%f in prints as %s', (value, text) => {
  expect(formatLength(inches(value), 'in')).toBe(text);
});

test.each([
  [19, '19'],
  [0.1, '0.1'],
  [12.7, '12.7'],
  [3.175, '3.175'],
  [-2.5, '-2.5'],
  [1000 / 3, '333.333'],
  [0, '0'],
])('%f mm prints as %s', (value, text) => {
  expect(formatLength(mm(value), 'mm')).toBe(text);
});

test('a figure off a coarser step prints its fraction and its decimal', () => {
  const step = inches(1 / 32);
  expect(formatLength(inches(7 / 64), 'in', { step })).toBe('7/64 (.109)');
  expect(formatLength(inches(7 / 32), 'in', { step })).toBe('7/32');
  expect(formatLength(inches(7 / 32), 'in', { fractionAndDecimal: true })).toBe('7/32 (.219)');
  expect(formatLength(inches(0.205), 'in', { fractionAndDecimal: true })).toBe('13/64 (.205)');
  expect(formatLength(inches(7), 'in', { fractionAndDecimal: true })).toBe('7');
});

const onRule = fc.integer({ min: -64 * 200, max: 64 * 200 }).map((n) => nm(n * SIXTY_FOURTH));
const onTenth = fc.integer({ min: -50_000, max: 50_000 }).map((n) => nm(n * 100_000));
const onThousandth = fc.integer({ min: -200_000, max: 200_000 }).map((n) => nm(n * 25_400));

test('reading back what was printed gives the same length', () => {
  fc.assert(fc.property(onRule, (x) => parseFigure(formatLength(x, 'in'), 'in') === x));
  fc.assert(fc.property(onTenth, (x) => parseFigure(formatLength(x, 'mm'), 'mm') === x));
  fc.assert(fc.property(onThousandth, (x) => parseFigure(formatLength(x, 'in'), 'in') === x));
  const both = { fractionAndDecimal: true };
  fc.assert(fc.property(onRule, (x) => parseFigure(formatLength(x, 'in', both), 'in') === x));
});

test('any length comes back within half the last printed place', () => {
  const any = fc.integer({ min: -5_000_000_000, max: 5_000_000_000 }).map((n) => n as Length);
  const near = (x: Length, back: Length | undefined, half: number): boolean =>
    back !== undefined && Math.abs(back - x) <= half + 1;
  fc.assert(fc.property(any, (x) => near(x, parseFigure(formatLength(x, 'in'), 'in'), 12_700)));
  fc.assert(fc.property(any, (x) => near(x, parseFigure(formatLength(x, 'mm'), 'mm'), 500)));
  const both = { fractionAndDecimal: true };
  fc.assert(fc.property(any, (x) => near(x, parseFigure(formatLength(x, 'in', both), 'in'), 2 * 12_700)));
});

test.each(['', '1/0', '1 /2', 'x', '1  1/2', '--1', '1,5', '(1)', '1/2 (', '.', '1.'])('%j is no figure', (text) => {
  expect(parseFigure(text, 'in')).toBeUndefined();
});
test('a fraction is no figure in millimetres', () => expect(parseFigure('7/8', 'mm')).toBeUndefined());

test('fractions are in lowest terms', () => {
  fc.assert(
    fc.property(fc.integer({ min: -100_000, max: 100_000 }), fc.integer({ min: 1, max: 1000 }), (n, d) => {
      const m = mixed(n, d);
      const size = m.whole + m.numerator / m.denominator;
      return gcd(m.numerator, m.denominator) === 1 && Math.abs((m.negative ? -size : size) - n / d) < 1e-9;
    }),
  );
  expect(gcd(48, 36)).toBe(12);
  expect(mixedText(mixed(-0, 64))).toBe('0');
});

test('angles', () => {
  expect(formatAngle(14)).toBe('14°');
  expect(formatAngle(7.125)).toBe('7.1°'); // 1 in 8 is atan(1/8) = 7.125 degrees
  expect(formatAngle(7.125, 3)).toBe('7.125°');
  expect(formatAngle(-0.01)).toBe('0°');
  expect(parseAngle('7.1°')).toBe(7.1);
  expect(parseAngle('7.1')).toBeUndefined();
});
