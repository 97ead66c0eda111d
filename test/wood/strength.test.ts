import { describe, expect, it } from 'vitest';
import { panelById } from '../../src/data/panels.js';
import { speciesById, type Species } from '../../src/data/species.js';
import { intersectionOf, stiffnessOf, strengthAt } from '../../src/wood/elasticity.js';
import { densityOf, kilograms, pounds, woodDensity } from '../../src/wood/mass.js';
import { lateral, panelWithdrawal, withdrawal, withdrawalAllowed } from '../../src/wood/screws.js';

const wood = (id: string): Species => {
  const found = speciesById(id);
  if (!found) throw new Error(id);
  return found;
};
const POUND_FORCE = 4.4482216152605;
const INCH = 25.4;

describe('mass at a moisture', () => {
  const maple = wood('hard-maple');
  // 72 x 36 x 1 in of hard maple, 12 and 7 %: worked by equations 4-14 and 4-10.
  it('hard maple, 1.5 cubic feet: 66.1 lb at 12 %, 64.9 at 7', () => {
    const volume = 72 * 36 * INCH ** 3;
    expect(Math.abs(pounds(kilograms(volume, woodDensity(maple, 12))) - 66.1)).toBeLessThan(0.1);
    expect(Math.abs(pounds(kilograms(volume, woodDensity(maple, 7))) - 64.9)).toBeLessThan(0.1);
  });
  // Wood Handbook, table 4-6a: specific gravity 0.60 at 12 % is 672 kg/m3.
  it('specific gravity 0.60 at 12 %: 672 kg/m3', () => {
    const s: Species = { ...maple, gravity: { ...maple.gravity, value: 0.6 } };
    expect(Math.abs(woodDensity(s, 12) - 672)).toBeLessThan(0.1);
  });
  it('a board foot of cherry at 12 %: 2.91 lb', () => {
    const boardFoot = 144 * INCH ** 3;
    expect(Math.abs(pounds(kilograms(boardFoot, woodDensity(wood('cherry')))) - 2.91)).toBeLessThan(0.01);
  });
  it('falls as wood dries, and sheet goods weigh what they weigh', () => {
    expect(woodDensity(maple, 6)).toBeLessThan(woodDensity(maple, 10));
    expect(densityOf({ kind: 'sheet', material: 'mdf' }, 6)).toBe(800);
  });
});

describe('strength', () => {
  // Wood Handbook, chapter 5: white ash, modulus of rupture at 8 %, printed 119,500 kPa.
  it('white ash at 8 %: 119,473 kPa', () => {
    const at8 = strengthAt(103_000, 66_000, 8, intersectionOf('ash-white'));
    expect(Math.abs(at8 - 119_473)).toBeLessThan(50);
    expect(strengthAt(103_000, 66_000, 12, 24)).toBe(103_000);
    expect(strengthAt(103_000, 66_000, 24, 24)).toBeCloseTo(66_000, 6);
    expect(() => strengthAt(103_000, 66_000, 5)).toThrow(RangeError);
    expect(intersectionOf('oak-white')).toBe(25);
  });
  // Wood Handbook, table 5-3: cherry 1.49 million psi, hard maple 1.83, white oak 1.78 (inch-pound columns, rounded).
  it.each([
    ['cherry', 1.49],
    ['hard-maple', 1.83],
    ['white-oak', 1.78],
    ['red-oak', 1.82],
    ['sapele', 1.7],
  ])('modulus of elasticity of %s: %d million psi', (id, mpsi) => {
    const e = stiffnessOf({ kind: 'lumber', material: id })?.value ?? 0;
    expect(Math.abs(e / 6894.757e6 - mpsi)).toBeLessThan(0.008);
  });
  it('of panels by how the span lies to the face grain, and of lumber along its grain only', () => {
    // Table 12-1: plywood 6.96 GPa at least, MDF 3.59.
    expect(stiffnessOf({ kind: 'sheet', material: 'plywood' })?.value).toBe(6.96e9);
    expect(stiffnessOf({ kind: 'sheet', material: 'plywood' }, 'across')?.memory).toBe(true);
    expect(stiffnessOf({ kind: 'sheet', material: 'mdf' }, 'across')?.value).toBe(3.59e9);
    expect(stiffnessOf({ kind: 'lumber', material: 'cherry' }, 'across')).toBeUndefined();
    expect(stiffnessOf(undefined)).toBeUndefined();
  });
});

describe('screws', () => {
  // NDS 12.2 by way of a printed table: G 0.45, No. 10 (0.190 in): 109 lb for each inch of thread.
  it('allowable: 109.7 lbf an inch', () => {
    expect(withdrawalAllowed(0.45, 0.19 * INCH, INCH) / POUND_FORCE).toBeCloseTo(109.7, 1);
  });
  // By hand from equation 8-10: No. 8 (0.164 in), 5/8 in in yellow-poplar.
  it('ultimate: No. 8, 5/8 in in yellow-poplar, 284 lbf', () => {
    const g = wood('poplar').gravity.value;
    expect(Math.abs(withdrawal(g, 0.164 * INCH, 0.625 * INCH) / POUND_FORCE - 284)).toBeLessThan(0.5);
  });
  // By hand from equation 8-13: No. 10 in cherry (0.50), K 4640 lbf/in2.
  it('sideways: No. 10 in cherry, 167.5 lbf; half the thread half of it', () => {
    const d = 0.19 * INCH;
    expect(Math.abs((lateral(wood('cherry'), d, 7 * d) ?? 0) / POUND_FORCE - 167.5)).toBeLessThan(0.2);
    expect(lateral(wood('cherry'), d, 3.5 * d)).toBeCloseTo((lateral(wood('cherry'), d, 7 * d) ?? 0) / 2, 9);
  });
  it('sideways outside the table: nothing is made up', () => {
    expect(lateral(wood('jatoba'), 5, 50)).toBeUndefined();
    expect(lateral({ ...wood('cherry'), gravity: { ...wood('cherry').gravity, value: 0.3 } }, 5, 50)).toBeUndefined();
    // White pine, 0.35: softwood from 0.29.
    expect(lateral(wood('pine-eastern-white'), 1, 7)).toBeCloseTo(23.17, 6);
  });
  it('in boards: the metric and the inch-pound forms agree; plywood is not in it', () => {
    const mdf = panelById('mdf');
    if (!mdf) throw new Error('mdf');
    // 2655 D^0.5 (L - D/3)^1.25 G2 lbf, in: D 0.164, L 5/8, G 0.8.
    const inch = 2655 * 0.164 ** 0.5 * (0.625 - 0.164 / 3) ** 1.25 * 0.8 ** 2;
    const metric = (panelWithdrawal(mdf, 'face', 0.164 * INCH, 0.625 * INCH) ?? 0) / POUND_FORCE;
    expect(Math.abs(metric / inch - 1)).toBeLessThan(0.005);
    expect(panelWithdrawal(mdf, 'edge', 4, 16)).toBeLessThan(panelWithdrawal(mdf, 'face', 4, 16) ?? 0);
    expect(panelWithdrawal({ ...mdf, core: 'plywood' }, 'face', 4, 16)).toBeUndefined();
    expect(panelWithdrawal(mdf, 'face', 4, 1)).toBeUndefined();
  });
});
