import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PANELS } from '../../src/data/panels.js';
import { cell, type Figure, type Printed } from '../../src/data/printed.js';
import { SOURCES } from '../../src/data/sources.js';
import { SPECIES, type Species } from '../../src/data/species.js';
import { dustOf } from '../../src/data/tables/wood-dust.js';

const room = new URL('../../src/data/', import.meta.url);
const files = [...readdirSync(room), ...readdirSync(new URL('tables/', room)).map((f) => `tables/${f}`)].filter((f) =>
  f.endsWith('.ts'),
);
const modules = await Promise.all(
  files.map(async (f) => [f, (await import(new URL(f, room).href)) as Record<string, unknown>] as const),
);
type Bag = Record<string, unknown>;
const isBag = (v: unknown): v is Bag => typeof v === 'object' && v !== null;
const isTable = (v: Bag): boolean => Array.isArray(v['rows']) && Array.isArray(v['columns']);

/** Paths of numbers that nothing above them gives a source to. A table's key is the source of all its cells. */
function unsourced(value: unknown, path: string, known: boolean): string[] {
  if (typeof value === 'number') return known ? [] : [path];
  if (!isBag(value)) return [];
  const named =
    (typeof value['source'] === 'string' && value['source'].length > 3) ||
    (typeof value['key'] === 'string' && Object.hasOwn(SOURCES, value['key']));
  return Object.entries(value).flatMap(([k, v]) => unsourced(v, `${path}.${k}`, known || named));
}
const all = modules.flatMap(([file, m]) => Object.entries(m).map(([name, v]) => [`${file} ${name}`, v] as const));

describe('figures', () => {
  it('none stands in this room without its source', () => {
    expect(all.length).toBeGreaterThan(30);
    expect(all.flatMap(([name, v]) => unsourced(v, name, false))).toEqual([]);
  });
  it('the test itself sees one that does', () => {
    expect(unsourced({ a: [{ value: 1 }] }, 'x', false)).toEqual(['x.a.0.value']);
    expect(unsourced({ key: 'nobody', rows: [[1]] }, 'x', false)).toEqual(['x.rows.0.0']);
    expect(unsourced({ key: 'trade', rows: [[1]] }, 'x', false)).toEqual([]);
  });
  it('every figure has a status and a source of the list, and one from memory says so', () => {
    const figures: Figure[] = [];
    const walk = (v: unknown): void => {
      if (!isBag(v)) return;
      if (typeof v['value'] === 'number' && 'status' in v) figures.push(v as unknown as Figure);
      else Object.values(v).forEach(walk);
    };
    [SPECIES, PANELS].forEach(walk);
    expect(figures.length).toBeGreaterThan(60 * 8);
    for (const f of figures) {
      expect(Object.hasOwn(SOURCES, f.key)).toBe(true);
      expect(['R', 'R2', 'RM', 'MC', 'M', 'D']).toContain(f.status);
      if (f.status === 'M' || f.status === 'MC') {
        expect(f.memory).toBe(true);
        expect(f.source).toMatch(/memory/);
      } else if (f.status !== 'D') expect(f.memory).toBeUndefined();
      expect(Number.isFinite(f.value) && f.value > 0).toBe(true);
    }
  });
  it('what is derived from a remembered figure is remembered too', () => {
    const teak = SPECIES.find((s) => s.id === 'spanish-cedar') as Species;
    expect(teak.gravity.status).toBe('D');
    expect(teak.gravity.memory).toBe(true);
    expect(SPECIES.find((s) => s.id === 'sapele')?.tangential.memory).toBeUndefined();
  });
});

describe('tables', () => {
  const tables = all.filter(([, v]) => isBag(v) && isTable(v)) as unknown as [string, Printed<string>][];
  it('have whole rows, each once, each cell with its status', () => {
    expect(tables.length).toBeGreaterThan(14);
    for (const [name, t] of tables) {
      expect(Object.hasOwn(SOURCES, t.key), name).toBe(true);
      expect(new Set(t.rows.map(([id]) => id)).size, name).toBe(t.rows.length);
      for (const row of t.rows) {
        expect(row.length - 1, `${name} ${row[0]}`).toBe(t.columns.length);
        for (const c of row.slice(1) as (readonly [number, string] | null)[])
          if (c) expect(['R', 'R2', 'RM', 'MC', 'M', 'D']).toContain(c[1]);
      }
    }
  });
  it('every source is named by a figure, and says what it is', () => {
    const text = files
      .filter((f) => f !== 'sources.ts')
      .concat()
      .map((f) => readFileSync(new URL(f, room), 'utf8'))
      .join('\n');
    const wood = readdirSync(new URL('../wood/', room)).map((f) => readFileSync(new URL(`../wood/${f}`, room), 'utf8'));
    for (const [key, s] of Object.entries(SOURCES)) {
      expect(
        [text, ...wood].some((t) => t.includes(`'${key}'`)),
        key,
      ).toBe(true);
      expect(s.title.length * s.edition.length * s.short.length).toBeGreaterThan(0);
    }
  });
  it('hold enough: 50 woods and 10 panels and more, each with its stiffness', () => {
    expect(SPECIES.length).toBeGreaterThanOrEqual(50);
    expect(PANELS.length).toBeGreaterThanOrEqual(10);
    for (const s of SPECIES) {
      // All woods that furniture is made of lie between 5 and 17 GPa, and at 1/200 to 1/90 of that in bending strength.
      expect(s.stiffness.value / 1e9, s.id).toBeGreaterThan(5);
      expect(s.stiffness.value / 1e9, s.id).toBeLessThan(17);
      const ratio = s.stiffness.value / s.rupture.value;
      expect(ratio > 75 && ratio < 200, `${s.id} ${ratio}`).toBe(true);
      if (s.hardness) expect(s.hardness.value, s.id).toBeGreaterThan(1000);
      expect(s.shrinkage.volumetric?.value ?? 0, s.id).toBeGreaterThan(s.shrinkage.tangential.value);
    }
    for (const p of PANELS) expect(p.stiffness.across.value, p.id).toBeLessThanOrEqual(p.stiffness.along.value);
  });
  // Wood Handbook, table 5-3b, inch-pound columns as they are widely printed: side hardness in lbf, rounded to 10.
  it.each([
    ['cherry-black', 950],
    ['oak-white', 1360],
    ['maple-sugar', 1450],
    ['yellow-poplar', 540],
    ['walnut-black', 1010],
  ])('%s: side hardness %d lbf', (id, lbf) => {
    const n = SPECIES.find((s) => s.id === id)?.hardness?.value ?? 0;
    expect(Math.abs(n / 4.4482216 - lbf)).toBeLessThan(25);
  });
  it('give nothing for what they do not have', () => {
    expect(SPECIES.find((s) => s.id === 'sassafras')?.hardness).toBeUndefined();
    expect(SPECIES.find((s) => s.id === 'teak')?.crushing).toBeUndefined();
    const [, first] = tables[0] as [string, Printed<string>];
    expect(cell(first, 'cheese', first.columns[0]?.[0] ?? '')).toBeUndefined();
  });
});

describe('dust', () => {
  // NIOSH Pocket Guide, wood dust, with the notes of ACGIH.
  it.each([
    ['oak-white', 'A1', 1],
    ['oak-red-northern', 'A1', 1],
    ['beech-american', 'A1', 1],
    ['walnut-black', 'A2', 1],
    ['mahogany-true', 'A2', 1],
    ['teak', 'A2', 1],
    ['birch-yellow', 'A2', 1],
    ['cedar-western-red', 'sensitizer', 0.5],
  ] as const)('%s: %s, %d mg/m3', (id, sort, limit) => {
    expect(SPECIES.find((s) => s.id === id)?.dust).toMatchObject({ sort, limit: { value: limit } });
  });
  it('of other woods is not classed', () => {
    expect(dustOf('cedar-eastern-red')).toBeUndefined();
    expect(dustOf('oakwood')).toBeUndefined();
    expect(SPECIES.find((s) => s.id === 'cherry-black')?.dust).toBeUndefined();
  });
});
