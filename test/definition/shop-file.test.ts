import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { parse } from 'jsonc-parser';
import { expect, test } from 'vitest';
import type { Definition } from '../../src/definition/definition.js';
import { shopJsonSchema } from '../../src/definition/jsonSchema.js';
import { readDefinition } from '../../src/definition/read.js';
import { ShopFile } from '../../src/definition/shop.js';
import { inShop, readShopFile, standsInShop } from '../../src/definition/shopFile.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { buildPacket } from '../../src/run.js';
import { CASE } from '../bad/whole.js';

const template = (name: string): string => readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8');
const SAMPLE = template('shop/sample-shop.jsonc');
const SHOP = `{
  "format": 1,
  "units": "in",
  "kerf": "1/16",
  "moisture": 6,
  "machines": { "jointer": { "width": "8" }, "planer": { "width": "15" } },
  "lift": 50,
  "woods": { "oak-white": { "gravity": 0.75, "stiffness": 1.5, "source": "own weighing" } }
}
`;
const own = readDefinition(CASE, 'case.json').value as Definition;
const read = (text: string, units: 'in' | 'mm' = 'in') => readShopFile(text, 'shop.json', units);

test('the published schema of a shop is the one that it is read by', () => {
  expect(JSON.parse(template('shop.schema.json'))).toEqual(shopJsonSchema());
});

const ajv = new Ajv.Ajv2020({ strict: false });
const other = ajv.compile(shopJsonSchema() as object);
test.each([
  ['the sample', SAMPLE, true],
  ['a key too many', SHOP.replace('"kerf"', '"cerf"'), false],
  ['no units', SHOP.replace('"units": "in",', ''), false],
  ['no source', SHOP.replace(', "source": "own weighing"', ''), false],
  ['a wood with a name that cannot be', SHOP.replace('"oak-white"', '"Oak white"'), false],
  ['a number for a text', SHOP.replace('"own weighing"', '7'), false],
  ['a machine that is none', SHOP.replace('"jointer"', '"joiner"'), false],
] as const)('both schemas judge alike: %s', (_, text, sound) => {
  const value: unknown = parse(text);
  expect(ShopFile.safeParse(value).success).toBe(sound);
  expect(other(value)).toBe(sound);
});

test('the shipped shop is sound, in either unit, and a piece is built in it', () => {
  for (const units of ['in', 'mm'] as const) {
    const shop = readShopFile(SAMPLE, 'sample-shop.jsonc', units);
    expect(shop.findings).toEqual([]);
    expect(shop.value?.clamps?.length).toBe(2);
  }
  const shop = readShopFile(SAMPLE, 'sample-shop.jsonc', 'in').value ?? {};
  const { shop: _, ...bare } = own;
  const piece = resolvePiece(inShop(bare, shop)).value;
  expect(piece?.profile?.moisture).toBe(7.5);
  expect(piece?.profile?.door).toEqual([42 * 25.4e6, 80 * 25.4e6]);
});

test('the definition stands over the shop, entry by entry', () => {
  const def: Definition = {
    ...own,
    shop: { ...own.shop, machines: { planer: { width: '20' } }, woods: { 'oak-white': { gravity: 0.8, source: 'x' } } },
  };
  const laid = inShop(def, read(SHOP).value ?? {}).shop;
  expect(laid?.moisture).toBe(8);
  expect(laid?.kerf).toBe('1/16');
  expect(laid?.machines).toEqual({ jointer: { width: '8' }, planer: { width: '20' } });
  // A wood is one entry: its source speaks for all of its figures.
  expect(laid?.woods?.['oak-white']).toEqual({ gravity: 0.8, source: 'x' });
});

test('a wood of the table with own figures is used under each of its names', () => {
  const shop = read(SHOP).value ?? {};
  const stock = { ...own.stock, oak: { lumber: 'white-oak', quarter: '4/4' } };
  const wood = resolvePiece(inShop({ ...own, stock }, shop)).value?.stocks['oak']?.wood;
  expect(wood?.gravity).toMatchObject({ value: 0.75, source: 'own weighing' });
  // 1.5 million psi = 10.342 GPa (1 psi = 6894.757 Pa, NIST SP 811).
  expect((wood?.stiffness.value ?? 0) / 1e9).toBeCloseTo(10.342, 3);
  expect(wood?.rupture.source).toContain('Wood Handbook');
});

test('what is typed in other units is brought to those of the piece', () => {
  const mm = read(SHOP, 'mm').value;
  expect(mm?.kerf).toBe('1.5875mm');
  expect(mm?.machines?.jointer?.width).toBe('203.2mm');
  // 50 lb = 22.6796 kg; 1.5 million psi = 10.3421 GPa.
  expect(mm?.lift).toBeCloseTo(22.6796, 4);
  expect(mm?.woods?.['oak-white']?.stiffness).toBeCloseTo(10.3421, 4);
  const back = read(
    SHOP.replace('"in"', '"mm"').replace('"1/16"', '"1.6"').replace('"lift": 50', '"lift": 22.67961850'),
    'in',
  );
  expect(back.value?.kerf).toBe('1.6mm');
  expect(back.value?.lift).toBeCloseTo(50, 6);
});

test.each([
  ['name of a measure', '"kerf": "1/16"', '"kerf": "W"', 'shop-names', 4, 12, 'W', 'shop file'],
  ['two readings', '"kerf": "1/16"', '"kerf": "1/2/4"', '', 4, 12, '1/2/4', ''],
  ['key misspelt', '"planer"', '"plener"', 'key-not-known', 6, 46, '"plener"', 'planer'],
  [
    'day that is none',
    '"moisture": 6',
    '"moisture": 6, "read": "2027-02-30"',
    'date-form',
    5,
    26,
    '"2027-02-30"',
    'year',
  ],
  ['wood without source', ', "source": "own weighing"', '', 'key-missing', 8, 14, '"oak-white"', 'source'],
  ['units of no sort', '"in"', '"inch"', 'word-not-known', 3, 12, '"inch"', 'in'],
  ['comma missing', '"units": "in",', '"units": "in"', 'json-comma-missing', 4, 3, '"kerf"', 'comma'],
] as const)('%s', (_, find, put, code, line, column, under, says) => {
  const { value, findings, locate } = read(SHOP.replace(find, put));
  expect(value).toBeUndefined();
  const first = findings[0];
  if (!first) throw new Error('nothing found');
  if (code !== '') expect(findings.map((f) => f.code)).toEqual([code]);
  const at = locate(first.path, first.key, first.span);
  expect([at.line, at.column]).toEqual([line, column]);
  expect(at.lineText.slice(at.column - 1).startsWith(under.slice(0, 3))).toBe(true);
  expect(`${first.message} ${first.hint ?? ''}`).toContain(says);
});

test('a fault of meaning is told where it stands: in the shop file, or in the definition', async () => {
  const job = { what: 'check' as const, fileName: 'case.json', text: CASE, shipped: {} };
  const bad = SHOP.replace('"jointer": { "width": "8" }', '"jointer": { "width": "0" }');
  const shop = { fileName: 'shop.json', text: bad };
  const { found, stopped } = await buildPacket({ ...job, shop });
  const first = found.find((f) => f.finding.severity === 'error');
  expect(stopped).toBe(true);
  expect([first?.file, first?.at.line, first?.at.column]).toEqual(['shop.json', 6, 39]);
  const here = await buildPacket({
    ...job,
    text: CASE.replace('"moisture": 8', '"moisture": 8, "kerf": "-1"'),
    shop: { ...shop, text: SHOP },
  });
  const second = here.found.find((f) => f.finding.severity === 'error');
  expect([second?.file, second?.at.line]).toEqual([undefined, 6]);
  const unread = await buildPacket({ ...job, shop: { ...shop, text: '{' } });
  expect(unread.found.map((f) => [f.file, f.at.line])).toEqual([['shop.json', 1]]);
});

test('a path is the shop file’s only where the definition does not say it', () => {
  const shop = read(SHOP).value ?? {};
  expect(standsInShop(['shop', 'kerf'], own.shop, shop)).toBe(true);
  expect(standsInShop(['shop', 'moisture'], own.shop, shop)).toBe(false);
  expect(standsInShop(['parts', 'kerf'], own.shop, shop)).toBe(false);
  expect(standsInShop(['shop', 'kerf'], own.shop, undefined)).toBe(false);
});

test('faults of structure and of form are told in one run', () => {
  const { findings } = read(SHOP.replace('"kerf": "1/16"', '"kerf": "W"').replace('"lift": 50', '"lift": "50"'));
  expect(findings.map((f) => f.code)).toEqual(['shop-names', 'wrong-type']);
});

test('a room by its region takes the place of one by its humidity, and the other way about', () => {
  const read = (room: object) =>
    readDefinition(JSON.stringify({ format: 1, from: 'base', room }), 'own.json', { shipped: () => CASE }).value?.room;
  expect(read({ region: 'damp coast' })).toEqual({ region: 'damp coast' });
  expect(read({ temperature: 72 })).toEqual({ humidity: [30, 60], temperature: 72 });
  expect(read({ humidity: [35, 50] })).toEqual({ humidity: [35, 50], temperature: 70 });
});

test('a wood is called as the shop calls it', () => {
  const shop = readShopFile(SAMPLE, 'sample-shop.jsonc', 'in').value ?? {};
  const stock = { ...own.stock, oak: { lumber: 'sample-oak', quarter: '4/4' } };
  const oak = resolvePiece(inShop({ ...own, stock }, shop)).value?.stocks['oak'];
  expect([oak?.material, oak?.name]).toEqual(['sample-oak', 'White oak, sample']);
});

test('the reading of a shipped piece is not that of the shop; its own file stands over both', () => {
  const made = (more: object) => {
    const r = readDefinition(JSON.stringify({ format: 1, from: 'base', ...more }), 'own.json', { shipped: () => CASE });
    return inShop(r.value as Definition, read(SHOP).value ?? {}, r.shop).shop;
  };
  expect(made({})).toMatchObject({ moisture: 6, kerf: '1/16' });
  // A reading without a day does not take the day of another.
  expect(made({})?.read).toBeUndefined();
  expect(made({ shop: { moisture: 9 } })).toMatchObject({ moisture: 9, kerf: '1/16' });
  expect(made({ shop: { read: '2027-03-01' } })).toMatchObject({ moisture: 6, read: '2027-03-01' });
});
