/** A piece as text that can be read: a figure with its history on one line, lengths as they are said, short things not broken. */
import type { Units } from '../../src/lengths/length.js';
import type { Sized } from '../../src/value/sized.js';

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
const WIDTH = 120;

/**
 * Lengths are the whole numbers of a thousand nanometres and more (angles, signs and counts are all below): millimetres, or
 * inches with a fraction where a 64th fits. Nothing is rounded.
 */
export function lengthText(nm: number, units: Units): string {
  if (units === 'mm') return String(nm / 1e6);
  const parts = Math.abs(nm) / 396_875;
  if (!Number.isInteger(parts)) return String(nm / 25.4e6);
  let [over, under] = [parts % 64, 64];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const whole = Math.floor(parts / 64);
  const words = [...(whole > 0 || over === 0 ? [String(whole)] : []), ...(over > 0 ? [`${over}/${under}`] : [])];
  return (nm < 0 ? '-' : '') + words.join(' ');
}
const isSized = (value: unknown): value is Sized =>
  typeof value === 'object' && value !== null && 'value' in value && 'how' in value;
function sizedText(s: Sized, units: Units): string {
  const from = (s.inputs ?? []).map((i) => `${i.name} ${lengthText(i.value, units)}`).join(', ');
  const words = [s.rule, s.source && `[${s.source}]`, from && `from ${from}`, s.path && `at ${s.path.join('.')}`];
  return `${lengthText(s.value, units)} ${s.how}: ${words.filter(Boolean).join(' ')}`;
}
function plain(value: unknown, units: Units): Json {
  if (isSized(value)) return sizedText(value, units);
  if (typeof value === 'number' && Number.isInteger(value) && Math.abs(value) >= 1000) return lengthText(value, units);
  if (Array.isArray(value)) return value.map((v: unknown) => plain(v, units));
  if (typeof value !== 'object' || value === null) return value as Json;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .map(([k, v]) => [k, plain(v, units)]),
  );
}
function broken(value: Json, indent: string): string {
  const flat = JSON.stringify(value);
  if (typeof value !== 'object' || value === null || indent.length + flat.length <= WIDTH) return flat;
  const inner = `${indent} `;
  if (Array.isArray(value)) {
    return `[\n${value.map((v: Json) => inner + broken(v, inner)).join(',\n')}\n${indent}]`;
  }
  const rows = Object.entries(value).map(([k, v]) => `${inner}${JSON.stringify(k)}: ${broken(v as Json, inner)}`);
  return `{\n${rows.join(',\n')}\n${indent}}`;
}
/** JSON of anything with lengths in it. */
export const compact = (value: unknown, units: Units): string => `${broken(plain(value, units), '')}\n`;
