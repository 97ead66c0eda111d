import type { z } from 'zod';
import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';
import { sentence } from '../diag/sentence.js';
import type { SyntaxFault } from '../lengths/expression.js';
import { parseExpression } from '../lengths/parse.js';
import type { Letters } from '../lengths/each.js';
import { MOST_EACH } from '../lengths/each.js';
import { MOST_PARTS, partsMade } from './count.js';
import type { ReadEach } from './each.js';
import { checkEach, readTyped } from './each.js';
import { FACE_WORDS } from './fields.js';
import type { Found, Json } from './json.js';
import { entries, isObject } from './json.js';
import type { JointFields } from './schema.js';
import { eachLength } from './walk.js';

const listed = (v: unknown): readonly (readonly [string, JsonPath])[] =>
  typeof v === 'string'
    ? [[v, []]]
    : Array.isArray(v)
      ? v.flatMap((x, i) => (typeof x === 'string' ? [[x, [i]] as const] : []))
      : [];

/** What the schema cannot say of a definition's form: names, rows, extents, expressions, dates. Nothing of its meaning. */
export function formFindings(value: Json, schema: z.ZodType, kinds: readonly JointFields[]): readonly Diagnostic[] {
  if (!isObject(value)) return [];
  const letters = new Map<string, Letters>();
  return [
    ...names(value),
    ...rows(value, letters),
    ...parts(value['parts'], ['parts']),
    ...entries(value['groups']).flatMap(([id, g]) => parts(g['parts'], ['groups', id, 'parts'])),
    ...patterns(value),
    ...joinedParts(value, kinds),
    ...expressions(value, schema, kinds, letters),
    ...others(value),
  ];
}

const FUNCTION_WORDS = ['floor', 'min', 'max', 'round', 'mid'];
const UNIT_WORDS = ['in', 'mm', 'ft'];
const SECTIONS = ['measures', 'parts', 'joints', 'drawers', 'groups', 'runs'];

/** One name space; words with a meaning of their own in an expression cannot be names. */
function names(value: Found): Diagnostic[] {
  const findings: Diagnostic[] = [];
  const taken = new Map<string, string>();
  for (const section of SECTIONS) {
    const holder = value[section];
    if (!isObject(holder)) continue;
    for (const id of Object.keys(holder)) {
      const at = { path: [section, id], key: true };
      const use = reserved(id, section);
      if (use !== undefined) findings.push(diagnose('id-reserved', at, { id, use }));
      const earlier = taken.get(id);
      if (earlier !== undefined) findings.push(diagnose('id-twice', at, { id, section: earlier }));
      else taken.set(id, section);
    }
  }
  return findings;
}
/** What a word is kept for. A part may be called `top`: faces are only read after a point. A measure may not. */
function reserved(id: string, section: string): string | undefined {
  if (FUNCTION_WORDS.includes(id)) return 'expressions';
  if (UNIT_WORDS.includes(id)) return 'a unit';
  return section === 'measures' && (FACE_WORDS as readonly string[]).includes(id) ? 'a face' : undefined;
}

/** `each` against the keys, and how many parts come of it. Notes the letters of every entry for its expressions. */
function rows(value: Found, letters: Map<string, Letters>): Diagnostic[] {
  const findings: Diagnostic[] = [];
  const note = (entry: Found, path: JsonPath, { counts, findings: found }: ReadEach): void => {
    findings.push(...found);
    // a row that is not counted rightly says so once, not again in each of its expressions
    const readable = entry['each'] === undefined || typeof entry['each'] === 'string';
    if (readable && found.length === 0)
      letters.set(JSON.stringify(path), Object.fromEntries(counts.map((c) => [c.letter, c.to])));
  };
  for (const [id, part] of entries(value['parts']))
    note(part, ['parts', id], checkEach(id, part['each'], ['parts', id]));
  for (const [id, joint] of entries(value['joints']))
    note(joint, ['joints', id], readTyped(joint['each'], ['joints', id]));
  for (const [group, g] of entries(value['groups'])) {
    for (const field of ['parts', 'joints']) {
      for (const [id, entry] of entries(g[field])) {
        const path = ['groups', group, field, id];
        note(entry, path, field === 'parts' ? checkEach(id, entry['each'], path) : readTyped(entry['each'], path));
      }
    }
  }
  const made = partsMade(value);
  if (made > MOST_PARTS) {
    findings.push(diagnose('parts-too-many', { path: ['parts'], key: true }, { found: made, most: MOST_PARTS }));
  }
  return findings;
}

const EXTENTS = ['from size', 'size to', 'mid size', 'from', 'to', 'from to'];
function parts(holder: unknown, path: JsonPath): Diagnostic[] {
  return entries(holder).flatMap(([id, part]) => [
    ...['across', 'deep', 'up'].flatMap((axis) => extent(part[axis], [...path, id, axis])),
    ...shapes(part['shape'], [...path, id, 'shape']),
  ]);
}
function extent(value: unknown, path: JsonPath): Diagnostic[] {
  if (!isObject(value)) return [];
  const keys = Object.keys(value);
  if (keys.some((k) => !['from', 'to', 'mid', 'size'].includes(k))) return [];
  if (EXTENTS.includes([...keys].sort().join(' '))) return [];
  const found = keys.length === 0 ? 'nothing at all' : keys.length === 1 ? `${keys[0]} alone` : keys.join(', ');
  return [diagnose('extent-form', { path }, { found })];
}
/** Arrises are named by two faces that meet. */
function shapes(value: unknown, path: JsonPath): Diagnostic[] {
  if (!Array.isArray(value)) return [];
  return (value as readonly Json[]).flatMap((shape, i) => {
    if (!isObject(shape)) return [];
    const named = shape['cut'] === 'flat' ? listed(shape['edge']) : listed(shape['edges']);
    const field = shape['cut'] === 'flat' ? 'edge' : 'edges';
    return named
      .filter(([words]) => !isArris(words))
      .map(([found, at]) => diagnose('edge-form', { path: [...path, i, field, ...at] }, { found }));
  });
}
function isArris(words: string): boolean {
  const faces = words.split(' ').map((w) => (FACE_WORDS as readonly string[]).indexOf(w));
  const [a, b] = faces;
  return faces.length === 2 && !faces.includes(-1) && Math.floor((a as number) / 2) !== Math.floor((b as number) / 2);
}

const PATTERN =
  /^[a-z*](?:[a-z0-9*]|_(?=[a-z0-9*{])|(?<=_)\{[a-z](?:[+-]\d{1,3})?\}|(?<=_)\{\d{1,4}\.\.\d{1,4}\}|\.(?=[a-z*]))*$/;
const RANGE = /\{(\d+)\.\.(\d+)\}/g;
/** Names of parts, in rows and with stars, wherever parts are named. */
function patterns(value: Found): Diagnostic[] {
  const joints = (holder: unknown, path: JsonPath): Diagnostic[] =>
    entries(holder).flatMap(([id, j]) => ['part', 'into'].flatMap((f) => pattern(j[f], [...path, id, f])));
  return [
    ...joints(value['joints'], ['joints']),
    ...entries(value['groups']).flatMap(([id, g]) => joints(g['joints'], ['groups', id, 'joints'])),
    ...entries(value['drawers']).flatMap(([id, d]) =>
      ['across', 'up'].flatMap((f) => pattern(d[f], ['drawers', id, f])),
    ),
    ...entries(value['runs']).flatMap(([id, r]) => pattern(r['parts'], ['runs', id, 'parts'])),
    ...circumstances(value),
  ];
}
/** Parts named under `use` and `delivery`; a load says how much it is. */
function circumstances(value: Found): Diagnostic[] {
  const [use, delivery] = [value['use'], value['delivery']];
  const keyed = ['loads', 'sag'].flatMap((field) =>
    isObject(use) && isObject(use[field])
      ? Object.keys(use[field]).flatMap((key) => pattern(key, ['use', field, key]).map((f) => ({ ...f, key: true })))
      : [],
  );
  const empty = entries(isObject(use) ? use['loads'] : undefined)
    .filter(([, load]) => Object.keys(load).length === 0)
    .map(([id]) => diagnose('load-empty', { path: ['use', 'loads', id] }));
  const apart = isObject(delivery) ? pattern(delivery['apart'], ['delivery', 'apart']) : [];
  const of = listOf(value['accepted']).flatMap((a, i) => (isObject(a) ? pattern(a['of'], ['accepted', i, 'of']) : []));
  return [...keyed, ...empty, ...apart, ...of];
}
const listOf = (v: unknown): readonly Json[] => (Array.isArray(v) ? (v as readonly Json[]) : []);

/** A joint names its parts; one that a drawer makes (`short_1.corner_back_left`) has them already. */
function joinedParts(value: Found, kinds: readonly JointFields[]): Diagnostic[] {
  const of = (holder: unknown, path: JsonPath): Diagnostic[] =>
    entries(holder).flatMap(([id, joint]) => {
      const made = id.includes('.');
      const at = { path: [...path, id], key: true };
      if (made)
        return ['part', 'into', 'each']
          .filter((key) => key in joint)
          .map((key) => diagnose('joint-made', { path: [...at.path, key], key: true }, { id, key }));
      // A key that is not known may be "part" misspelt: that is told by itself.
      const { shape } = (kinds.find((k) => k.kind === joint['kind'])?.spec ?? {}) as { shape?: object };
      const known = new Set(['kind', 'into', 'each', ...Object.keys(shape ?? {})]);
      if ('part' in joint || Object.keys(joint).some((key) => !known.has(key))) return [];
      return [
        diagnose('key-missing', at, { key: 'part', what: 'the part that goes in, or several', example: '"rail_1"' }),
      ];
    });
  return [
    ...of(value['joints'], ['joints']),
    ...entries(value['groups']).flatMap(([id, g]) => of(g['joints'], ['groups', id, 'joints'])),
  ];
}
function pattern(value: unknown, path: JsonPath): Diagnostic[] {
  return listed(value).flatMap(([text, at]) => {
    const where = { path: [...path, ...at] };
    if (!PATTERN.test(text)) return [diagnose('pattern-form', where, { found: text })];
    return [...text.matchAll(RANGE)].flatMap((m) => {
      const [found, from, to] = [m[0], Number(m[1]), Number(m[2])];
      const span = [m.index, m.index + found.length] as const;
      if (to < from) return [diagnose('each-backwards', { ...where, span }, { found })];
      return to - from < MOST_EACH ? [] : [diagnose('each-range', { ...where, span }, { found, most: MOST_EACH })];
    });
  });
}

/** Every expression is read once for its form. */
function expressions(
  value: Found,
  schema: z.ZodType,
  kinds: readonly JointFields[],
  letters: ReadonlyMap<string, Letters>,
): Diagnostic[] {
  const findings: Diagnostic[] = [];
  const check = (path: JsonPath, text: unknown): void => {
    if (typeof text !== 'string') return;
    const known = letters.get(JSON.stringify(path.slice(0, path[0] === 'groups' ? 4 : 2)));
    const read = parseExpression(text, known ? { letters: known } : {});
    if ('fault' in read) findings.push(expressionFinding(read.fault, path));
  };
  eachLength(schema, value, check);
  const joints = (holder: unknown, path: JsonPath): void => {
    for (const [id, j] of entries(holder)) {
      const kind = kinds.find((k) => k.kind === j['kind']);
      for (const f of kind?.lengths ?? []) for (const [text, at] of listed(j[f])) check([...path, id, f, ...at], text);
    }
  };
  joints(value['joints'], ['joints']);
  for (const [id, g] of entries(value['groups'])) joints(g['joints'], ['groups', id, 'joints']);
  return findings;
}
/** A fault of an expression as a finding at the place where it is typed. */
export const expressionFinding = (fault: SyntaxFault, path: JsonPath): Diagnostic => ({
  code: fault.code,
  severity: 'error',
  path,
  span: fault.at,
  message: sentence(fault.message),
  ...(fault.hint === undefined ? {} : { hint: sentence(fault.hint, false) }),
});

function others(value: Found): Diagnostic[] {
  const findings: Diagnostic[] = [];
  const date = (holder: unknown, path: JsonPath): void => {
    const found = isObject(holder) ? holder[path.at(-1) as string] : undefined;
    if (typeof found === 'string' && !isDate(found)) findings.push(diagnose('date-form', { path }, { found }));
  };
  date(value['piece'], ['piece', 'date']);
  date(value['shop'], ['shop', 'read']);
  listOf(value['accepted']).forEach((a, i) => date(a, ['accepted', i, 'on']));
  for (const [name, measure] of entries(value['measures'])) {
    const by = measure['by'];
    if (typeof by !== 'string') continue;
    const path = ['measures', name, 'by'];
    const step = /^step (.*)$/.exec(by)?.[1];
    if (step === undefined) findings.push(diagnose('graduate-form', { path }, { found: by }));
    const read = step === undefined ? undefined : parseExpression(step);
    if (read !== undefined && 'fault' in read) {
      const [from, to] = read.fault.at;
      findings.push(expressionFinding({ ...read.fault, at: [from + 5, to + 5] }, path));
    }
  }
  return findings;
}
/** A day of the Gregorian calendar, ISO 8601 extended form. */
export function isDate(text: string): boolean {
  const m = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (m === null) return false;
  const [year, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}
