import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  celsius,
  equilibrium,
  equilibriumFahrenheit,
  fahrenheit,
  humidityFor,
  sorption,
} from '../../src/wood/equilibrium.js';
import { readingNotes, roomFaults, season, shopHumidity } from '../../src/wood/moisture.js';

const table = JSON.parse(readFileSync(new URL('./emc-table-4-2.json', import.meta.url), 'utf8')) as {
  humidity: number[];
  moisture: Record<string, number[]>;
};
const cells = Object.entries(table.moisture).flatMap(([f, row]) =>
  row.map((printed, i) => ({ f: Number(f), h: table.humidity[i] as number, printed })),
);

describe('the equation for equilibrium moisture', () => {
  // Wood Handbook, table 4-2: all cells. The reference that both forms were compared with: at most 0.056 and 0.067 off.
  it('is within 0.06 % of all 342 cells in Celsius, and within 0.07 in Fahrenheit', () => {
    expect(cells.length).toBe(342);
    const off = (by: (c: (typeof cells)[number]) => number): number =>
      Math.max(...cells.map((c) => Math.abs(by(c) - c.printed)));
    expect(off((c) => equilibrium(c.h, celsius(c.f)))).toBeLessThan(0.06);
    expect(off((c) => equilibriumFahrenheit(c.h, c.f))).toBeLessThan(0.07);
  });
  it('gives the same by both forms, to 0.013 %', () => {
    const off = cells.map((c) => Math.abs(equilibrium(c.h, celsius(c.f)) - equilibriumFahrenheit(c.h, c.f)));
    expect(Math.max(...off)).toBeLessThan(0.0135);
  });
  // Cells of table 4-2, Wood Handbook p. 4-4.
  it.each([
    [70, 40, 7.7],
    [70, 25, 5.4],
    [70, 50, 9.2],
    [70, 65, 12.0],
    [70, 80, 16.0],
    [50, 35, 7.1],
    [90, 80, 15.4],
    [30, 95, 24.3],
  ])('%d F, %d %%: %d %%', (f, h, moisture) => {
    expect(Math.abs(equilibrium(h, celsius(f)) - moisture)).toBeLessThan(0.06);
    expect(Math.abs(equilibriumFahrenheit(h, f) - moisture)).toBeLessThan(0.06);
  });
  // Worked by hand from the printed equation 4-5.
  it('at 20 C and 50 %: 9.2711, from W 380.2, K 0.818628, K1 5.9612, K2 2.6068', () => {
    expect(Math.abs(equilibrium(50, 20) - 9.2711)).toBeLessThan(0.0005);
    const s = sorption(20);
    for (const [got, want] of [
      [s.w, 380.2],
      [s.k, 0.818628],
      [s.k1, 5.9612],
      [s.k2, 2.6068],
    ] as const)
      expect(Math.abs(got / want - 1)).toBeLessThan(1e-6);
  });
  it('is refused outside the table, never stretched', () => {
    for (const [h, t] of [
      [95.1, 21],
      [100, 21],
      [-0.1, 21],
      [50, -2],
      [50, 94],
      [Number.NaN, 21],
    ] as const) {
      expect(() => equilibrium(h, t)).toThrow(RangeError);
      expect(() => equilibriumFahrenheit(h, fahrenheit(t))).toThrow(RangeError);
    }
    expect(() => humidityFor(-0.1, 21)).toThrow(RangeError);
    expect(() => humidityFor(30, 21)).toThrow(RangeError);
  });
  it('turned about: 8 % at 70 F (21.1 C) is air of 42 %', () => {
    expect(Math.abs(humidityFor(8, celsius(70)) / 100 - 0.4199)).toBeLessThan(0.0005);
    expect(shopHumidity(8, undefined, 'in')).toBeCloseTo(41.99, 1);
    expect(shopHumidity(29, undefined, 'in')).toBeUndefined();
  });
  it('there and back gives the same air, and damper air never drier wood', () => {
    const air = fc.double({ min: 0, max: 95, noNaN: true });
    const warm = fc.double({ min: -1, max: 93, noNaN: true });
    fc.assert(
      fc.property(air, air, warm, (a, b, t) => {
        expect(humidityFor(equilibrium(a, t), t)).toBeCloseTo(a, 6);
        if (a < b) expect(equilibrium(b, t)).toBeGreaterThanOrEqual(equilibrium(a, t));
      }),
    );
  });
});

describe('a room by its region', () => {
  // Wood Handbook, table 13-2: interior, ranges of single pieces.
  it.each([
    ['most of the US', 6, 10, undefined],
    ['dry southwest', 4, 9, true],
    ['damp coast', 8, 13, true],
  ] as const)('%s: %d to %d %%', (region, driest, wettest, memory) => {
    const s = season({ region }, { moisture: 7.5, read: '2027-01-15' }, 'in');
    expect(s).toMatchObject({ made: 7.5, driest, wettest });
    expect(s.basis?.memory).toBe(memory);
    // Table 4-2, 70 F: 35 % gives 6.9, 40 % 7.7; 7.5 % lies at about 39.
    expect(s.basis?.made).toBe('read 7.5 % on 2027-01-15, as in air of 39 %');
    expect(s.basis?.source).toContain('table 13-2');
  });
  it('is not also a room by its humidity, nor by neither', () => {
    const where = (room: Parameters<typeof roomFaults>[0]) =>
      roomFaults(room, undefined, 'in').map((f) => f.path.join('.'));
    expect(where({ region: 'damp coast' })).toEqual([]);
    expect(where({ region: 'damp coast', humidity: [30, 60] })).toEqual(['room.region']);
    expect(where({ temperature: 70 })).toEqual(['room']);
  });
  it('says what the seasons were had from', () => {
    const { basis } = season({ humidity: [30, 60], temperature: 70 }, {}, 'in');
    expect(basis?.room).toBe('30 to 60 % humidity at 70 °F');
    expect(basis?.made).toContain('not read, taken as 8 %');
    expect(season({ humidity: [30, 60] }, {}, 'mm').basis?.room).toContain('21 °C');
  });
});

it('the shop’s own reading is asked for, with its day', () => {
  expect(readingNotes({}).map((f) => [f.severity, f.code])).toEqual([['note', 'moisture-not-read']]);
  expect(readingNotes({ moisture: 7 })[0]?.message).toContain('no date');
  expect(readingNotes({ moisture: 7, read: '2027-01-15' })).toEqual([]);
});
