import { z } from 'zod';
import type { JsonPath } from '../diag/diagnostic.js';
import { Length } from './fields.js';
import { isObject } from './json.js';

/** Is the schema the length of fields.ts, however described. */
export const isLength = (schema: z.ZodType): boolean => schema._zod.def === Length._zod.def;

/** What stands inside `optional`. */
function bare(schema: z.ZodType): z.ZodType {
  let s = schema;
  while (s instanceof z.ZodOptional) s = s.unwrap() as z.ZodType;
  return s;
}
/** JSON on one line as a person types it, a space after each comma and colon. */
const spaced = (value: unknown): string =>
  JSON.stringify(value, null, 1).replace(/\n\s*/g, ' ').replace(/\[ /g, '[').replace(/ \]/g, ']');
/** What the schema says of itself: description and example, from the outermost that says it. */
export function described(schema: z.ZodType): { readonly description?: string; readonly example?: string } {
  const meta = { ...bare(schema).meta(), ...schema.meta() };
  const example = Array.isArray(meta['examples']) ? (meta['examples'][0] as unknown) : undefined;
  return {
    ...(meta.description === undefined ? {} : { description: meta.description }),
    ...(example === undefined ? {} : { example: spaced(example) }),
  };
}

/** The option of a union that a value was most likely meant to be. */
function meant(options: readonly z.ZodType[], value: unknown): z.ZodType | undefined {
  const passing = options.find((o) => o.safeParse(value).success);
  if (passing !== undefined) return passing;
  const kinds = options.filter((o) =>
    Array.isArray(value) ? o instanceof z.ZodTuple || o instanceof z.ZodArray : o instanceof z.ZodObject,
  );
  const score = (o: z.ZodType): number => {
    if (!(o instanceof z.ZodObject) || !isObject(value)) return 0;
    const shape = o.shape as Record<string, z.ZodType>;
    const literals = Object.entries(shape).filter(([k, s]) => k in value && s instanceof z.ZodLiteral);
    const wrong = literals.some(([k, s]) => !s.safeParse(value[k]).success);
    return (wrong ? -100 : 0) + Object.keys(value).filter((k) => Object.hasOwn(shape, k)).length;
  };
  return [...kinds].sort((a, b) => score(b) - score(a))[0];
}

/** One step down a schema. */
function inner(schema: z.ZodType, step: string | number, value: unknown): z.ZodType | undefined {
  const s = bare(schema);
  if (s instanceof z.ZodObject) {
    const shape = s.shape as Record<string, z.ZodType>;
    return Object.hasOwn(shape, step) ? shape[step] : undefined;
  }
  if (s instanceof z.ZodRecord) return s.valueType as z.ZodType;
  if (s instanceof z.ZodArray) return s.element as z.ZodType;
  if (s instanceof z.ZodTuple) return s.def.items[Number(step)] as z.ZodType | undefined;
  if (s instanceof z.ZodUnion && !isLength(s)) {
    const option = meant(s.options as z.ZodType[], value);
    return option && inner(option, step, value);
  }
  return undefined;
}
const child = (value: unknown, step: string | number): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, step)
    ? (value as Record<string | number, unknown>)[step]
    : undefined;

/** How many entries a list has when the schema fixes it. */
export function fixedLength(schema: z.ZodType | undefined, value: unknown): number | undefined {
  const s = schema === undefined ? undefined : bare(schema);
  if (s instanceof z.ZodUnion) return fixedLength(meant(s.options as z.ZodType[], value), value);
  return s instanceof z.ZodTuple ? s.def.items.length : undefined;
}

/** The value at a path; undefined when there is none. */
export const valueAt = (value: unknown, path: JsonPath): unknown => path.reduce<unknown>(child, value);

/** The schema that governs a path of a value, choosing among unions what the value was most likely meant to be. */
export function schemaAt(schema: z.ZodType, value: unknown, path: JsonPath): z.ZodType | undefined {
  let s: z.ZodType | undefined = schema;
  let v = value;
  for (const step of path) {
    if (s === undefined) return undefined;
    s = inner(s, step, v);
    v = child(v, step);
  }
  return s;
}

/** The keys that an object may have where the schema says so; none when it is open. */
export function knownKeys(schema: z.ZodType | undefined, value: unknown): readonly string[] {
  if (schema === undefined) return [];
  const s = bare(schema);
  if (s instanceof z.ZodObject) return Object.keys(s.shape as object);
  if (s instanceof z.ZodUnion) return knownKeys(meant(s.options as z.ZodType[], value), value);
  return [];
}

/** Calls `visit` at every length that was typed, in the order of the file. */
export function eachLength(schema: z.ZodType, value: unknown, visit: (path: JsonPath, value: unknown) => void): void {
  const down = (s0: z.ZodType, v: unknown, path: JsonPath): void => {
    const s = bare(s0);
    if (v === undefined || v === null) return;
    if (isLength(s)) return visit(path, v);
    if (s instanceof z.ZodUnion) {
      const option = meant(s.options as z.ZodType[], v);
      if (option !== undefined) down(option, v, path);
      return;
    }
    if (typeof v !== 'object') return;
    for (const key of Array.isArray(v) ? v.keys() : Object.keys(v)) {
      const next = inner(s, key, v);
      if (next !== undefined) down(next, child(v, key), [...path, key]);
    }
  };
  down(schema, value, []);
}
