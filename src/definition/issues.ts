import type { z } from 'zod';
import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { didYouMean } from '../diag/didYouMean.js';
import { diagnose } from '../diag/messages.js';
import { described, fixedLength, isLength, knownKeys, schemaAt, valueAt } from './walk.js';

type Issue = z.core.$ZodIssue;
interface Context {
  readonly schema: z.ZodType;
  readonly value: unknown;
}

/** The structural faults of a value in our words, exact to the place; one finding a fault. */
export function issueFindings(issues: readonly Issue[], context: Context): readonly Diagnostic[] {
  const findings = issues.flatMap((issue) => one(issue, [], context));
  return withoutEchoes(findings, context);
}

/** A key that is missing and stands beside it misspelt is one fault. */
function withoutEchoes(findings: readonly Diagnostic[], context: Context): readonly Diagnostic[] {
  const parent = (path: JsonPath): string => JSON.stringify(path);
  const meant = new Set(
    findings
      .filter((f) => f.code === 'key-not-known')
      .map((f) => {
        const holder = f.path.slice(0, -1);
        const known = knownKeys(schemaAt(context.schema, context.value, holder), valueAt(context.value, holder));
        return `${parent(holder)} ${didYouMean(String(f.path.at(-1)), known) ?? ''}`;
      }),
  );
  return findings.filter((f) => {
    const key = f.code === 'key-missing' ? /^"([^"]*)"/.exec(f.message)?.[1] : undefined;
    return key === undefined || !meant.has(`${parent(f.path)} ${key}`);
  });
}

function one(issue: Issue, base: JsonPath, context: Context): readonly Diagnostic[] {
  const path: JsonPath = [...base, ...issue.path.map((s) => (typeof s === 'number' ? s : String(s)))];
  const value = valueAt(context.value, path);
  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = knownKeys(schemaAt(context.schema, context.value, path), value);
      return issue.keys.map((key) => diagnose('key-not-known', { path: [...path, key], key: true }, { key, known }));
    }
    case 'invalid_union':
      return union(issue, path, value, context);
    case 'invalid_value': {
      if (value === undefined) return [missing(path, context)];
      const known = issue.values.map(String);
      if (typeof value === 'string' && typeof issue.values[0] === 'string') {
        return [diagnose('word-not-known', { path }, { found: value, known })];
      }
      const about = described(schemaAt(context.schema, context.value, path) ?? context.schema).description;
      return [diagnose('value-not-known', { path }, { found: shown(value), wanted: known.join(' or '), about })];
    }
    case 'invalid_key':
      return [idForm(path, issue.issues)];
    case 'too_small':
    case 'too_big':
      return [range(issue, path, value, context)];
    default:
      return value === undefined ? [missing(path, context)] : [wrongType(issue, path, value, context)];
  }
}

function union(issue: Extract<Issue, { code: 'invalid_union' }>, path: JsonPath, value: unknown, context: Context) {
  if ('discriminator' in issue && issue.discriminator !== undefined && issue.errors.length === 0) {
    const at = path.at(-1) === issue.discriminator ? path : [...path, issue.discriminator];
    const found = valueAt(context.value, at);
    const known = 'options' in issue && issue.options !== undefined ? issue.options.map(String) : [];
    if (found === undefined) {
      const figures = { key: issue.discriminator, what: `one of ${[...known].sort().join(', ')}`, example: undefined };
      return [diagnose('key-missing', { path: at.slice(0, -1), key: true }, figures)];
    }
    if (typeof found === 'string') return [diagnose('word-not-known', { path: at }, { found, known })];
    return [diagnose('wrong-type', { path: at }, { found: shown(found), wanted: 'one word', example: undefined })];
  }
  if (value === undefined) return [missing(path, context)];
  const inside = issue.errors.filter((branch) => !branch.some(ofAnotherSort));
  const faults = inside.map((branch) => branch.flatMap((i) => one(i, path, context)));
  const best = [...faults].sort((a, b) => a.length - b.length)[0];
  return best ?? [wrongType(issue, path, value, context)];
}

/** Is the value as a whole of another sort than the branch of a union takes. */
function ofAnotherSort(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_union') return issue.errors.every((branch) => branch.some(ofAnotherSort));
  return issue.code === 'invalid_type' || issue.code === 'invalid_value';
}

function missing(path: JsonPath, context: Context): Diagnostic {
  const schema = schemaAt(context.schema, context.value, path);
  const said = schema === undefined ? {} : described(schema);
  const figures = { key: String(path.at(-1)), what: said.description, example: said.example };
  return diagnose('key-missing', { path: path.slice(0, -1), key: true }, figures);
}

function wrongType(issue: Issue, path: JsonPath, value: unknown, context: Context): Diagnostic {
  const schema = schemaAt(context.schema, context.value, path);
  const said = schema === undefined ? {} : described(schema);
  const type =
    issue.code === 'invalid_type' ? TYPES[issue.expected] : schema && isLength(schema) ? 'a length' : undefined;
  const about = said.description ?? 'something else';
  const wanted = type === undefined ? about : said.description === undefined ? type : `${type} (${about})`;
  return diagnose('wrong-type', { path }, { found: shown(value), wanted, example: said.example });
}
const TYPES: Readonly<Record<string, string>> = {
  string: 'text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list in [ ]',
  tuple: 'a list in [ ]',
  object: 'an object in { }',
  record: 'an object in { }',
};

function range(
  issue: Extract<Issue, { code: 'too_small' | 'too_big' }>,
  path: JsonPath,
  value: unknown,
  context: Context,
): Diagnostic {
  const limit = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  const bound = issue.code === 'too_small' ? `at least ${limit}` : `at most ${limit}`;
  if (Array.isArray(value)) {
    const exact = fixedLength(schemaAt(context.schema, context.value, path), value);
    return diagnose('list-length', { path }, { found: value.length, wanted: exact === undefined ? bound : `${exact}` });
  }
  return diagnose('number-range', { path }, { found: shown(value), wanted: bound });
}

function idForm(path: JsonPath, inside: readonly Issue[]): Diagnostic {
  const id = String(path.at(-1));
  const pattern = inside.map((i) => ('pattern' in i ? String(i.pattern) : '')).join('');
  const measure = path[0] === 'measures';
  if (pattern === '') {
    const known = inside.flatMap((i) => (i.code === 'invalid_value' ? i.values.map(String) : []));
    return diagnose('key-not-known', { path, key: true }, { key: id, known });
  }
  return diagnose('id-form', { path, key: true }, { id, instead: asId(id, path), measure });
}
/** The nearest name that may be used, when there is one. */
function asId(id: string, path: JsonPath): string | undefined {
  if (id.length > 80) return undefined;
  const measure = path[0] === 'measures';
  const [owner, made, ...more] = id.split('.');
  if ((path[0] === 'parts' || path[0] === 'joints') && made !== undefined && more.length === 0) {
    const both = [owner as string, made].map((word) => asId(word, []));
    return both.includes(undefined) ? undefined : both.join('.');
  }
  const joined = id
    .trim()
    .replace(measure ? /$^/ : /([a-z0-9])([A-Z])/g, '$1_$2')
    .replace(/[^A-Za-z0-9{}+-]+|-(?![^{]*\})/g, '_')
    .replace(/^[_0-9]+|_+$/g, '')
    .replace(/_+/g, '_');
  const small = measure ? joined : joined.toLowerCase();
  return /^[a-z]/i.test(small) ? small : undefined;
}

/** What was found, in a few words. */
function shown(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string')
    return `the text ${JSON.stringify(value.length > 40 ? `${value.slice(0, 37)}...` : value)}`;
  return String(value);
}
