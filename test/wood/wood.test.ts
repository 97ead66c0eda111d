import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SPECIES, speciesById, tradeName, type Species } from '../../src/data/species.js';
import { density, kilograms, pounds } from '../../src/wood/mass.js';
import { celsius, equilibrium, roomFaults, season } from '../../src/wood/moisture.js';
import { change, coefficient, swell } from '../../src/wood/movement.js';

const table = JSON.parse(readFileSync(new URL('./emc-table-4-2.json', import.meta.url), 'utf8')) as {
  humidity: number[];
  moisture: Record<string, number[]>;
};
const wood = (id: string): Species => {
  const found = speciesById(id);
  if (!found) throw new Error(id);
  return found;
};

describe('equilibrium moisture', () => {
  it('is within 0.06 % of every cell of the published table', () => {
    let cells = 0;
    for (const [fahrenheit, row] of Object.entries(table.moisture))
      row.forEach((printed, i) => {
        cells++;
        const computed = equilibrium(table.humidity[i] as number, celsius(Number(fahrenheit)));
        expect(Math.abs(computed - printed), `${fahrenheit} F, ${table.humidity[i]} %`).toBeLessThan(0.06);
      });
    expect(cells).toBe(342);
  });
  it('rises with humidity and refuses what is no humidity', () => {
    for (let h = 1; h <= 95; h++) expect(equilibrium(h, 21)).toBeGreaterThan(equilibrium(h - 1, 21));
    expect(() => equilibrium(96, 21)).toThrow(RangeError);
    expect(() => equilibrium(50, 100)).toThrow(RangeError);
    expect(() => equilibrium(-1, 21)).toThrow(RangeError);
  });
  it('gives a room its two seasons, in either unit', () => {
    const inch = season({ humidity: [30, 60], temperature: 70 }, undefined, 'in');
    expect([inch.made, Number(inch.driest.toFixed(1)), Number(inch.wettest.toFixed(1))]).toEqual([8, 6.2, 11]);
    const metric = season({ humidity: [60, 30], temperature: celsius(70) }, 7, 'mm');
    expect(metric).toMatchObject({ made: 7, driest: inch.driest, wettest: inch.wettest });
    expect(season(undefined, undefined, 'in')).toMatchObject({ made: 8, driest: 6, wettest: 11 });
  });
});

describe('a room', () => {
  const codes = (humidity: [number, number], temperature?: number, made?: number, units: 'in' | 'mm' = 'in') =>
    roomFaults({ humidity, ...(temperature === undefined ? {} : { temperature }) }, made, units).map((f) =>
      f.path.join('.'),
    );
  it('outside the table is a fault, and gives no nonsense', () => {
    expect(codes([30, 60])).toEqual([]);
    expect(codes([30, 150])).toEqual(['room.humidity.1']);
    expect(codes([-1, 60])).toEqual(['room.humidity.0']);
    expect(codes([30, 60], 300)).toEqual(['room.temperature']);
    expect(codes([30, 60], 70, undefined, 'mm')).toEqual([]);
    expect(codes([30, 60], 70, 40)).toEqual(['shop.moisture']);
    expect(roomFaults(undefined, undefined, 'mm')).toEqual([]);
    expect(season({ humidity: [30, 150] }, undefined, 'in').wettest).toBe(
      season({ humidity: [30, 95] }, undefined, 'in').wettest,
    );
  });
});

describe('movement', () => {
  // Flat-sawn, 12 in, 6 -> 11 %, in inches: computed by hand from table 13-5.
  it.each([
    ['cherry', 0.149],
    ['walnut', 0.164],
    ['hard-maple', 0.212],
    ['white-oak', 0.219],
    ['white-ash', 0.164],
  ])('%s moves %d in a foot', (id, inch) => {
    expect(change(12, wood(id), 'flat', 6, 11)).toBeCloseTo(inch, 3);
  });
  it('agrees across the seam of its two equations, and swells back as much as it shrank by the first', () => {
    const oak = wood('white-oak');
    expect(change(10, oak, 'flat', 8, 14.001) - change(10, oak, 'flat', 8, 14)).toBeLessThan(0.01);
    expect(change(10, oak, 'quartered', 8, 6)).toBeCloseTo(-change(10, oak, 'quartered', 6, 8), 12);
    expect(change(10, oak, 'flat', 30, 40)).toBeCloseTo(0, 12);
  });
  it('a 9 in white oak front made at 8 % for 11 %: .130 above it flat-sawn, .080 quartered', () => {
    const s = { made: 8, driest: 6, wettest: 11 };
    expect(1 / 32 + swell(9, wood('white-oak'), 'flat', s)).toBeCloseTo(0.13, 3);
    expect(1 / 32 + swell(9, wood('white-oak'), 'quartered', s)).toBeCloseTo(0.08, 3);
    expect(swell(9, wood('white-oak'), 'flat', { made: 12, driest: 6, wettest: 11 })).toBe(0);
  });
  it('rift is the mean, unknown is flat', () => {
    const oak = wood('white-oak');
    expect(coefficient(oak, 'rift')).toBeCloseTo((0.0018 + 0.00365) / 2, 12);
    expect(coefficient(oak, undefined)).toBe(0.00365);
  });
});

describe('mass', () => {
  // Wood Handbook densities at 12 %, lb/ft3, rounded: cherry 35, white oak 47.5, yellow-poplar 29.4.
  it.each([
    ['cherry', 35],
    ['white-oak', 47.5],
    ['yellow-poplar', 29.4],
  ])('%s weighs %d lb a cubic foot', (id, lb) => {
    const perFoot = pounds(kilograms(304.8 ** 3, density('lumber', id) ?? 0));
    expect(Math.abs(perFoot - lb)).toBeLessThan(0.1);
  });
  it('knows nothing of what is in no table', () => {
    expect(density('lumber', 'cheese')).toBeUndefined();
    expect(density('sheet', 'cheese')).toBeUndefined();
    expect(density('sheet', 'mdf')).toBe(800);
  });
});

describe('the species table', () => {
  it('has plausible rows: tangential over radial, ids unique, every figure with a source', () => {
    expect(new Set(SPECIES.map((s) => s.id)).size).toBe(SPECIES.length);
    for (const s of SPECIES) {
      expect(s.tangential.value, s.id).toBeGreaterThan(s.radial.value);
      expect(s.gravity.value).toBeGreaterThan(0.3);
      expect(s.gravity.value).toBeLessThan(0.8);
      expect(s.radial.source).toContain('Wood Handbook');
    }
  });
  it('says no family twice, and keeps names as names', () => {
    expect(
      ['cedar-western-red', 'cedar-eastern-red', 'douglas-fir-coast', 'cedar-yellow'].map((n) => tradeName(wood(n))),
    ).toEqual(['Western redcedar', 'Eastern redcedar', 'Coast Douglas-fir', 'Yellow cedar']);
    for (const s of SPECIES) {
      const words = tradeName(s).toLowerCase().split(' ');
      expect(new Set(words).size, s.id).toBe(words.length);
    }
  });
  it('speaks the names of the trade', () => {
    expect(
      ['oak-white', 'hard-maple', 'poplar', 'walnut', 'soft-maple', 'red-oak'].map((n) => tradeName(wood(n))),
    ).toEqual(['White oak', 'Hard maple', 'Yellow-poplar', 'Black walnut', 'Soft maple', 'Northern red oak']);
  });
});
