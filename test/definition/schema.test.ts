import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { parse } from 'jsonc-parser';
import { expect, test } from 'vitest';
import type { z } from 'zod';
import { definitionJsonSchema } from '../../src/definition/jsonSchema.js';
import { definitionSchema } from '../../src/definition/schema.js';
import { JOINTS } from '../../src/joints/index.js';
import { shippedNames, shippedText } from '../../src/io/read.js';
import { BAD, SOUND } from '../bad/snippets.js';

const published = new URL('../../templates/piece.schema.json', import.meta.url);
const json = definitionJsonSchema(JOINTS);
const zod = definitionSchema(JOINTS);
const ajv = new Ajv.Ajv2020({ strict: false, allErrors: false });
const other = ajv.compile(json as object);

test('the published schema is the one that the program reads by (npm run build && node scripts/schema.mjs writes it)', () => {
  expect(JSON.parse(readFileSync(published, 'utf8'))).toEqual(json);
});

test('the schema is itself a schema of its draft', () => {
  expect(ajv.validateSchema(json as object)).toBe(true);
});

const agree = (value: unknown): void => {
  expect(other(value)).toBe(zod.safeParse(value).success);
};
test.each(shippedNames())('both schemas take %s', (name) => {
  const value: unknown = parse(shippedText(name) as string, [], { allowTrailingComma: true });
  expect(zod.safeParse(value).error?.issues ?? []).toEqual([]);
  agree(value);
});
test.each(BAD.filter((b) => !b.put.includes('__proto__')))('both schemas judge alike: $name', (bad) => {
  const text = SOUND.replace(bad.find, () => bad.put);
  try {
    agree(JSON.parse(text));
  } catch (e) {
    if (!(e instanceof SyntaxError)) throw e;
  }
});

/** Every path of a value to something that can be replaced. */
const paths = (v: unknown, at: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] =>
  typeof v === 'object' && v !== null
    ? [at, ...Object.entries(v).flatMap(([k, x]) => paths(x, [...at, Array.isArray(v) ? Number(k) : k]))]
    : [at];
type Change = (holder: Record<string | number, unknown>, key: string | number) => void;
const changed = (value: unknown, path: readonly (string | number)[], change: Change): unknown => {
  const copy = structuredClone({ root: value }) as Record<string | number, unknown>;
  const full = ['root', ...path];
  const last = full[full.length - 1] as string | number;
  const holder = full.slice(0, -1).reduce<unknown>((v, k) => (v as Record<string | number, unknown>)[k], copy);
  change(holder as Record<string | number, unknown>, last);
  return copy['root'];
};

test('both schemas judge alike whatever is changed', () => {
  const sound: unknown = JSON.parse(SOUND);
  const all = paths(sound);
  const value = fc.oneof(
    fc.constantFrom<unknown>(
      null,
      true,
      0,
      -1,
      1.5,
      'x',
      '',
      'up',
      'left',
      [],
      {},
      ['0', '1'],
      ['0', '1', '2'],
      { x: 1 },
      { from: '0' },
    ),
  );
  fc.assert(
    fc.property(
      fc.constantFrom(...all),
      value,
      fc.nat(2),
      fc.constantFrom('x', 'A_b', 'a b', 'rail_{i}'),
      (path, v, how, key) => {
        const next = changed(sound, path, (holder, last) => {
          if (how === 0) holder[last] = v;
          else if (how === 1 && !Array.isArray(holder)) delete holder[last];
          else if (!Array.isArray(holder)) holder[key] = v;
        });
        agree(next);
      },
    ),
    { numRuns: 600 },
  );
});

test('every field says what it is and gives an example that fits', () => {
  const lacking: string[] = [];
  const look = (schema: Record<string, unknown>, where: string): void => {
    for (const [key, field] of Object.entries(
      (schema['properties'] ?? {}) as Record<string, Record<string, unknown>>,
    )) {
      if (typeof field['description'] !== 'string' || !Array.isArray(field['examples']))
        lacking.push(`${where}.${key}`);
    }
    for (const [k, v] of Object.entries(schema)) {
      if (typeof v === 'object' && v !== null) look(v as Record<string, unknown>, `${where}/${k}`);
    }
  };
  look(json as Record<string, unknown>, '');
  expect(lacking).toEqual([]);
});

test('nothing in the schema is refined or transformed', () => {
  const seen = new Set<unknown>();
  const kinds = new Set<string>();
  const look = (s: unknown): void => {
    if (typeof s !== 'object' || s === null || seen.has(s)) return;
    seen.add(s);
    const def = (s as z.ZodType)._zod?.def as unknown as Record<string, unknown> | undefined;
    if (def === undefined) return;
    kinds.add(String(def['type'] ?? def['check']));
    for (const v of Object.values(def)) {
      if (Array.isArray(v)) v.forEach(look);
      else if (typeof v === 'object' && v !== null) [v, ...Object.values(v)].forEach(look);
    }
    const shape = (s as { shape?: object }).shape;
    if (shape !== undefined) Object.values(shape).forEach(look);
  };
  look(zod);
  // the last row: checks that a JSON Schema can hold (a pattern, a whole number, a least value)
  const plain = [
    'object',
    'string',
    'number',
    'boolean',
    'literal',
    'enum',
    'union',
    'array',
    'tuple',
    'record',
    'optional',
    'never',
    ...['string_format', 'number_format', 'greater_than', 'less_than', 'min_length', 'max_length'],
  ];
  expect([...kinds].filter((k) => !plain.includes(k))).toEqual([]);
  expect(kinds.size).toBeGreaterThan(8);
});

test.each(JOINTS.map((j) => [j.kind, j] as const))(
  '%s: its fields can be joined to those that all joints have',
  (_, joint) => {
    const shape = (joint.spec as { shape?: Record<string, unknown> }).shape ?? {};
    expect(joint.spec).toHaveProperty('shape');
    expect(joint.lengths.filter((f) => !Object.hasOwn(shape, f))).toEqual([]);
    expect(Object.keys(shape).filter((f) => ['kind', 'part', 'into', 'each'].includes(f))).toEqual([]);
  },
);
