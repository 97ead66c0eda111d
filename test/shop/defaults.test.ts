import { describe, expect, it } from 'vitest';
import { toIn, toMm } from '../../src/lengths/length.js';
import { shopDefaults } from '../../src/shop/defaults.js';

describe('shop defaults', () => {
  const inch = shopDefaults('in');
  const metric = shopDefaults('mm');
  it('every size in inches lies on the step of 1/64', () => {
    const { step, kerf, trim, pitch, dovetail, straight, allowance } = inch;
    for (const x of [kerf, trim, pitch, dovetail.width, ...straight, ...allowance]) expect(x % step).toBe(0);
    expect(toIn(step) * 64).toBe(1);
  });
  it('every size in millimetres lies on the step of 0.1', () => {
    const { step, kerf, trim, pitch, dovetail, straight, allowance } = metric;
    for (const x of [kerf, trim, pitch, dovetail.width, ...straight, ...allowance]) expect(x % step).toBe(0);
    expect(toMm(step)).toBe(0.1);
  });
  it('both shops are the same within a twentieth, or 1 mm', () => {
    const near = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThan(Math.max(0.05 * a, 1e6));
    near(inch.kerf, metric.kerf);
    near(inch.trim, metric.trim);
    near(inch.pitch, metric.pitch);
    near(inch.dovetail.width, metric.dovetail.width);
    inch.straight.forEach((x, i) => near(x, metric.straight[i] ?? 0));
    inch.allowance.forEach((x, i) => near(x, metric.allowance[i] ?? 0));
  });
  it('cutters rise in width and leave a pin beside the dovetail cutter on its pitch', () => {
    for (const shop of [inch, metric]) {
      expect([...shop.straight].sort((a, b) => a - b)).toEqual(shop.straight);
      expect(shop.pitch - shop.dovetail.width).toBeGreaterThan(shop.dovetail.width / 2);
    }
  });
});
