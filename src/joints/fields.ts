import { z } from 'zod';
import { FACES } from '../geom/axis.js';
import type { Resolved } from './joint.js';
import type { Sized } from '../value/sized.js';

/** An optional length of a spec: an expression, or a bare number in the file's units. */
export const lengthField = (description: string, example: string) =>
  z
    .union([z.string(), z.number()])
    .optional()
    .meta({ description, examples: [example] });
/** An optional pair of lengths, low then high (left, front or bottom first). */
export const pairField = (description: string, example: readonly [string, string]) =>
  z
    .tuple([z.union([z.string(), z.number()]), z.union([z.string(), z.number()])])
    .optional()
    .meta({ description, examples: [[...example]] });
/** An optional list of lengths. */
export const lengthsField = (description: string, example: readonly string[]) =>
  z
    .array(z.union([z.string(), z.number()]))
    .min(1)
    .optional()
    .meta({ description, examples: [[...example]] });
/** An optional face of the finished piece. */
export const faceField = (description: string, example: (typeof FACES)[number]) =>
  z
    .enum(FACES)
    .optional()
    .meta({ description, examples: [example] });
export const flagField = (description: string, example: boolean) =>
  z
    .boolean()
    .optional()
    .meta({ description, examples: [example] });
export const countField = (description: string, example: number) =>
  z
    .int()
    .min(1)
    .optional()
    .meta({ description, examples: [example] });
export const choiceField = <const T extends readonly [string, ...string[]]>(words: T, description: string) =>
  z
    .enum(words)
    .optional()
    .meta({ description, examples: [words[0]] });

export const isSized = (v: unknown): v is Sized => typeof v === 'object' && v !== null && 'value' in v && 'how' in v;

/** The field as given, or by its rule. */
export function sized(spec: Resolved, key: string, rule: () => Sized): Sized {
  const v = spec[key];
  return isSized(v) ? v : rule();
}
export function maybe(spec: Resolved, key: string): Sized | undefined {
  const v = spec[key];
  return isSized(v) ? v : undefined;
}
/** A pair of lengths, low then high; one length stands for both. */
export function pair(spec: Resolved, key: string): readonly [Sized, Sized] | undefined {
  const v = spec[key];
  if (isSized(v)) return [v, v];
  if (!Array.isArray(v)) return undefined;
  const [a, b]: readonly unknown[] = v;
  return isSized(a) && isSized(b) ? [a, b] : undefined;
}
/** A list of lengths; undefined when it is not given. */
export function several(spec: Resolved, key: string): readonly Sized[] | undefined {
  const v = spec[key];
  return Array.isArray(v) ? (v as readonly unknown[]).filter(isSized) : undefined;
}
export const text = (spec: Resolved, key: string): string | undefined => {
  const v = spec[key];
  return typeof v === 'string' ? v : undefined;
};
export const count = (spec: Resolved, key: string): number | undefined => {
  const v = spec[key];
  return typeof v === 'number' ? v : undefined;
};
export const flag = (spec: Resolved, key: string): boolean | undefined => {
  const v = spec[key];
  return typeof v === 'boolean' ? v : undefined;
};
