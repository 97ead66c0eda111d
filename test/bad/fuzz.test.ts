import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { resolvePiece } from '../../src/piece/resolve.js';

/** Shipped definitions with things deleted, exchanged and mistyped: told, never thrown, and soon. */
const folder = join(import.meta.dirname, '../../templates/pieces');
const shipped = readdirSync(folder)
  .filter((f) => f.endsWith('.jsonc'))
  .sort()
  .map((f) => [f, parse(readFileSync(join(folder, f), 'utf8')) as Json] as const);

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
interface Slip {
  readonly how: 'delete' | 'word' | 'other' | 'number' | 'copy';
  readonly where: number;
  readonly from: number;
  readonly word: string;
}
const WORDS = ['', '0', '-1', '1/2', '30', '1e9', 'W', 'top', 'top.top', 'left', 'x + 1', '1 / 0', '*', 'rail_{i}', 'i = 1..4', '*_1', 'D * D', '{i}', '19mm', 'none', 'from', '__proto__']; // prettier-ignore
const slip = fc.record({
  how: fc.constantFrom<Slip['how'][]>('delete', 'word', 'other', 'number', 'copy'),
  where: fc.nat(100_000),
  from: fc.nat(100_000),
  word: fc.oneof(fc.constantFrom(...WORDS), fc.string({ maxLength: 12 })),
});

type Path = readonly (string | number)[];
/** Every place in a value, the value itself left out. */
function places(value: Json, path: Path = []): Path[] {
  const inside = (k: string | number, v: Json): Path[] => [[...path, k], ...places(v, [...path, k])];
  if (Array.isArray(value)) return (value as readonly Json[]).flatMap((v, k) => inside(k, v));
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(([k, v]) => inside(k, v)) : [];
}
const at = (value: Json, path: Path): Json =>
  path.reduce<Json>((v, k) => (v as Record<string | number, Json>)[k] as Json, value);
/** A copy with the value at a path put in its place, or taken out. */
function put(value: Json, [k, ...rest]: Path, one: Json | undefined): Json {
  if (k === undefined) return one as Json;
  const inner = (v: Json): Json | undefined => (rest.length === 0 ? one : put(v, rest, one));
  if (Array.isArray(value))
    return (value as readonly Json[]).flatMap((v, i) => (i === k ? [inner(v)] : [v])).filter((v) => v !== undefined);
  return Object.fromEntries(
    Object.entries(value as Record<string, Json>)
      .map(([key, v]) => [key, key === k ? inner(v) : v] as const)
      .filter((e): e is readonly [string, Json] => e[1] !== undefined),
  );
}
function slipped(value: Json, s: Slip): Json {
  const all = places(value);
  const of = (kind: (v: Json) => boolean): Path[] => all.filter((p) => kind(at(value, p)));
  const pick = (list: readonly Path[], n: number): Path => list[n % list.length] as Path;
  const strings = of((v) => typeof v === 'string');
  switch (s.how) {
    case 'delete':
      return put(value, pick(all, s.where), undefined);
    case 'word':
      return put(value, pick(strings, s.where), s.word);
    case 'other':
      return put(value, pick(strings, s.where), at(value, pick(strings, s.from)));
    case 'number': {
      const figures = of((v) => typeof v === 'number' || (typeof v === 'string' && /^-?\d/.test(v)));
      return put(value, pick(figures, s.where), at(value, pick(figures, s.from)));
    }
    case 'copy':
      return put(value, pick(all, s.where), at(value, pick(all, s.from)));
  }
}

/** Milliseconds that one mutated definition may take at most; a sound one takes some tens. */
const SLOWEST = 10_000;
test.each(shipped)('%s with slips is told what is wrong, never thrown', (name, whole) => {
  let settled = 0;
  fc.assert(
    fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
      const text = JSON.stringify(slips.reduce(slipped, whole), undefined, 1);
      const begun = performance.now();
      const read = readDefinition(text, name);
      for (const f of read.findings) read.locate(f.path, f.key, f.span);
      if (!read.value) {
        expect(read.findings.length).toBeGreaterThan(0);
        return;
      }
      const piece = resolvePiece(read.value);
      for (const f of piece.findings) {
        expect(f.code).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
        expect(f.message).not.toMatch(/undefined|NaN|\[object/);
        read.locate(f.path, f.key, f.span);
      }
      expect(piece.value !== undefined || piece.findings.some((f) => f.severity === 'error')).toBe(true);
      expect(performance.now() - begun).toBeLessThan(SLOWEST);
      settled += 1;
    }),
    { seed: 20270201, numRuns: 250 },
  );
  // The slips must often be such that only the piece can judge them.
  expect(settled).toBeGreaterThan(40);
});
