import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { parse } from 'jsonc-parser';
import { expect, test } from 'vitest';
import type { z } from 'zod';
import { definitionJsonSchema, shopJsonSchema } from '../../src/definition/jsonSchema.js';
import { definitionSchema } from '../../src/definition/schema.js';
import { ShopFile } from '../../src/definition/shop.js';
import { JOINTS } from '../../src/joints/index.js';
import { WHOLE } from '../bad/circumstances.js';

type Step = string | number;
type Holder = Record<Step, unknown>;
const ajv = new Ajv.Ajv2020({ strict: false });
const shop = readFileSync(new URL('../../templates/shop/sample-shop.jsonc', import.meta.url), 'utf8');

/** Every path of a value, lists by number. */
const paths = (v: unknown, at: readonly Step[] = []): readonly (readonly Step[])[] =>
  typeof v === 'object' && v !== null
    ? [at, ...Object.entries(v).flatMap(([k, x]) => paths(x, [...at, Array.isArray(v) ? Number(k) : k]))]
    : [at];
function changed(value: unknown, path: readonly Step[], act: (holder: Holder, key: Step) => void): unknown {
  const copy = structuredClone({ root: value }) as Holder;
  const full: readonly Step[] = ['root', ...path];
  const holder = full.slice(0, -1).reduce<unknown>((v, k) => (v as Holder)[k], copy) as Holder;
  act(holder, full.at(-1) as Step);
  return copy['root'];
}
const odd = fc.constantFrom<unknown>(null, true, 0, -1, 1.5, 384, '', 'x', 'carpet', [], {}, ['1', '2'], [1, 2], {
  perArea: 1,
});

test.each([
  ['a definition', WHOLE, definitionSchema(JOINTS) as z.ZodType, definitionJsonSchema(JOINTS)],
  ['a shop', shop, ShopFile as z.ZodType, shopJsonSchema()],
] as const)(
  'both schemas of %s judge alike whatever is changed in its use, its way or its shop',
  (_, text, zod, json) => {
    const other = ajv.compile(json as object);
    const sound: unknown = parse(text, [], { allowTrailingComma: true });
    expect(zod.safeParse(sound).success).toBe(true);
    expect(other(sound)).toBe(true);
    const inSection = (p: readonly Step[]): boolean =>
      text === shop || ['use', 'delivery', 'accepted', 'shop', 'room'].includes(String(p[0]));
    const all = paths(sound).filter(inSection);
    const verdicts = new Set<boolean>();
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        odd,
        fc.nat(2),
        fc.constantFrom('x', 'A_b', 'a b', 'rail_*', 'my-oak'),
        (path, v, how, key) => {
          const next = changed(sound, path, (holder, last) => {
            if (how === 0) holder[last] = v;
            else if (how === 1 && !Array.isArray(holder)) delete holder[last];
            else if (!Array.isArray(holder)) holder[key] = v;
          });
          const verdict = zod.safeParse(next).success;
          verdicts.add(verdict);
          expect(other(next)).toBe(verdict);
        },
      ),
      { numRuns: 500 },
    );
    expect(verdicts.size).toBe(2);
  },
);

test('every field of a shop says what it is and gives an example that fits', () => {
  const lacking: string[] = [];
  const look = (schema: Record<string, unknown>, where: string): void => {
    for (const [key, field] of Object.entries((schema['properties'] ?? {}) as Record<string, Holder>))
      if (typeof field['description'] !== 'string' || !Array.isArray(field['examples']))
        lacking.push(`${where}.${key}`);
    for (const [k, v] of Object.entries(schema))
      if (typeof v === 'object' && v !== null) look(v as Record<string, unknown>, `${where}/${k}`);
  };
  look(shopJsonSchema() as Record<string, unknown>, '');
  expect(lacking).toEqual([]);
  // A bare number has a unit, save a count.
  const units: string[] = [];
  const numbers = (schema: Record<string, unknown>, where: string): void => {
    if (
      schema['type'] === 'number' &&
      !('const' in schema) &&
      typeof schema['unit'] !== 'string' &&
      !where.includes('anyOf') &&
      !where.includes('prefixItems')
    )
      units.push(where);
    for (const [k, v] of Object.entries(schema))
      if (typeof v === 'object' && v !== null) numbers(v as Record<string, unknown>, `${where}/${k}`);
  };
  numbers(shopJsonSchema() as Record<string, unknown>, '');
  expect(units).toEqual([]);
});
