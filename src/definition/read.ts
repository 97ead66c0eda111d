import type { Diagnostic, JsonPath, Outcome } from '../diag/diagnostic.js';
import { hasErrors } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';
import type { Locate, Location } from '../diag/print.js';
import { JOINTS } from '../joints/index.js';
import type { Definition } from './definition.js';
import { issueFindings } from './issues.js';
import type { Json } from './json.js';
import { entries, isObject, parseFile } from './json.js';
import { pathLocator } from './locate.js';
import { merged } from './merge.js';
import { formFindings } from './rules.js';
import type { DefinitionSchema, JointFields } from './schema.js';
import { definitionSchema } from './schema.js';

/** The text of a shipped definition by its name; undefined when there is none. */
export type Shipped = (name: string) => string | undefined;
export interface ReadOptions {
  /** Gives the text of what `from` names (read as .jsonc). */
  readonly shipped?: Shipped;
  /** Names that `shipped` knows, for "did you mean". */
  readonly shippedNames?: readonly string[];
  /** Kinds of joint that joints are held to; all that there are when left out. With none any joint passes. */
  readonly kinds?: readonly JointFields[];
}
export interface Reading extends Outcome<Definition> {
  /** Where a path stands in the file; for a syntax error, where that stands whatever the path. */
  readonly locate: Locate;
  /** Its `shop` as typed in this very file, without what it starts from. */
  readonly shop?: Json;
}

const schemas = new WeakMap<readonly JointFields[], DefinitionSchema>();
/** The schema is built once for each list of kinds. */
function schemaOf(kinds: readonly JointFields[]): DefinitionSchema {
  const known = schemas.get(kinds);
  if (known !== undefined) return known;
  const schema = definitionSchema(kinds);
  schemas.set(kinds, schema);
  return schema;
}

/**
 * Reads a definition: its text (comments and trailing commas only when the name ends in `.jsonc`), laid over the shipped
 * one that `from` names, held to the schema, names, rows and expressions checked for their form. All structural faults
 * are found in one run; of syntax errors the first. No value when anything is an error.
 */
export function readDefinition(text: string, fileName: string, options: ReadOptions = {}): Reading {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  const file = parseFile(plain, fileName.endsWith('.jsonc'));
  const { syntaxAt } = file;
  const locate = syntaxAt === undefined ? pathLocator(plain, file.root) : (): Location => syntaxAt;
  if (file.value === undefined) return { findings: file.findings, locate };
  const findings = [...file.findings];
  const value = started(file.value, options, findings, []);
  if (value === undefined) return { findings, locate };
  const large = tooLarge(value);
  if (large) return { findings: [...findings, large], locate };
  const kinds: readonly JointFields[] = options.kinds ?? JOINTS;
  const schema = schemaOf(kinds);
  const checked = schema.safeParse(value);
  if (!checked.success) findings.push(...issueFindings(checked.error.issues, { schema, value }));
  findings.push(...strangeKeys(value), ...formFindings(value, schema, kinds));
  const sorted = inFileOrder(findings, locate);
  return hasErrors(sorted)
    ? { findings: sorted, locate }
    : { value: value as unknown as Definition, findings: sorted, locate, shop: shopTyped(file.value) };
}

const shopTyped = (value: Json): Json => (isObject(value) ? (value['shop'] ?? {}) : {});

/** Most entries of one section that are looked at one by one (our default). */
const MOST_ENTRIES = 2000;
/** The first section that is far too large, as a finding. */
function tooLarge(value: Json): Diagnostic | undefined {
  for (const [section, v] of entries(value)) {
    const found = Object.keys(v).length;
    if (found > MOST_ENTRIES)
      return diagnose('entries-too-many', { path: [section], key: true }, { section, found, most: MOST_ENTRIES });
  }
  return undefined;
}

/** A value laid over what it starts from; undefined when that cannot be had. */
function started(
  value: Json,
  options: ReadOptions,
  findings: Diagnostic[],
  chain: readonly string[],
): Json | undefined {
  const name = isObject(value) ? value['from'] : undefined;
  if (typeof name !== 'string') return value;
  const at = { path: ['from'] };
  if (chain.includes(name)) {
    findings.push(diagnose('from-circle', at, { chain: [...chain, name].join(', ') }));
    return undefined;
  }
  const text = options.shipped?.(name);
  if (text === undefined) {
    findings.push(diagnose('from-not-known', at, { found: name, known: options.shippedNames ?? [] }));
    return undefined;
  }
  const base = parseFile(text, true);
  const first = base.findings[0];
  if (base.value === undefined || first !== undefined) {
    findings.push(diagnose('from-faulty', at, { found: name, first: first?.message ?? 'it cannot be read' }));
    return undefined;
  }
  const below = started(base.value, options, findings, [...chain, name]);
  if (below === undefined) return undefined;
  const nothing = (path: JsonPath): void => {
    const where = { path, key: true };
    if (chain.length === 0) findings.push(diagnose('deletes-nothing', where, { key: String(path.at(-1)) }));
  };
  return merged(below, value, nothing);
}

/** The one key that a record would pass over in silence. */
export function strangeKeys(value: Json, path: JsonPath = []): readonly Diagnostic[] {
  if (Array.isArray(value)) return (value as readonly Json[]).flatMap((v, i) => strangeKeys(v, [...path, i]));
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([key, v]) => [
    ...(key === '__proto__'
      ? [diagnose('key-not-known', { path: [...path, key], key: true }, { key, known: [] })]
      : []),
    ...strangeKeys(v, [...path, key]),
  ]);
}

/** By line and column, then by code; the same finding once. */
export function inFileOrder(findings: readonly Diagnostic[], locate: Locate): readonly Diagnostic[] {
  const placed = findings.map((f) => ({ f, at: locate(f.path, f.key, f.span) }));
  placed.sort(
    (a, b) =>
      a.at.line - b.at.line || a.at.column - b.at.column || (a.f.code < b.f.code ? -1 : a.f.code > b.f.code ? 1 : 0),
  );
  const seen = new Set<string>();
  return placed
    .filter(({ f }) => {
      const key = JSON.stringify([f.code, f.path, f.span, f.message]);
      return seen.has(key) ? false : (seen.add(key), true);
    })
    .map(({ f }) => f);
}
