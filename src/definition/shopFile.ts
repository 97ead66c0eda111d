import type { Diagnostic, JsonPath, Outcome } from '../diag/diagnostic.js';
import { hasErrors } from '../diag/diagnostic.js';
import { diagnose } from '../diag/messages.js';
import type { Locate, Location } from '../diag/print.js';
import { evaluateExpr, referenceName } from '../lengths/evaluate.js';
import type { Units } from '../lengths/length.js';
import { parseExpression } from '../lengths/parse.js';
import type { Definition, PanelSpec, ShopSpec, WoodSpec } from './definition.js';
import { issueFindings } from './issues.js';
import type { Json } from './json.js';
import { isObject, parseFile } from './json.js';
import { pathLocator } from './locate.js';
import { merged } from './merge.js';
import { inFileOrder, strangeKeys } from './read.js';
import { expressionFinding, isDate } from './rules.js';
import { ShopFile } from './shop.js';
import { eachLength } from './walk.js';
import { POUND_FORCE_N, POUND_KG, PSI_PA } from '../lengths/units.js';

export interface ShopReading extends Outcome<ShopSpec> {
  /** Where a path from the root of the shop file stands in it. */
  readonly locate: Locate;
}

/**
 * Reads a shop's own file as it is needed by a definition in `units`: what is typed in others is brought to them. Lengths
 * stand alone there: a shop knows no measures of a piece. No value when anything is an error.
 */
export function readShopFile(text: string, fileName: string, units: Units): ShopReading {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  const file = parseFile(plain, fileName.endsWith('.jsonc'));
  const { syntaxAt } = file;
  const locate = syntaxAt === undefined ? pathLocator(plain, file.root) : (): Location => syntaxAt;
  if (file.value === undefined) return { findings: file.findings, locate };
  const findings = [...file.findings];
  const value: Json = file.value;
  const checked = ShopFile.safeParse(value);
  if (!checked.success) findings.push(...issueFindings(checked.error.issues, { schema: ShopFile, value }));
  findings.push(...strangeKeys(value));
  findings.push(...formOf(value));
  const sorted = inFileOrder(findings, locate);
  if (!checked.success || hasErrors(sorted)) return { findings: sorted, locate };
  const { format: _format, units: typed, ...spec } = checked.data;
  return { value: inUnits(spec as ShopSpec, typed, units), findings: sorted, locate };
}

/** What the schema cannot say: lengths that stand alone, a day that there is. Looked for even where the schema is not met. */
function formOf(value: Json): readonly Diagnostic[] {
  if (!isObject(value)) return [];
  const findings: Diagnostic[] = [];
  const units = value['units'] === 'mm' ? 'mm' : 'in';
  eachLength(ShopFile, value, (path, text) => {
    if (typeof text !== 'string' && typeof text !== 'number') return;
    const read = lengthAlone(text, units);
    if ('fault' in read) findings.push(expressionFinding(read.fault, path));
  });
  const { read } = value;
  if (typeof read === 'string' && !isDate(read))
    findings.push(diagnose('date-form', { path: ['read'] }, { found: read }));
  return findings;
}

/** A length that names nothing, in nm; `where` it stands. */
export function lengthAlone(text: string | number, units: Units, where = 'a shop file') {
  const read = parseExpression(typeof text === 'number' ? String(text) : text);
  if ('fault' in read) return read;
  return evaluateExpr(read.tree, units, (r) => ({
    fault: {
      code: 'shop-names',
      message: `there is no "${referenceName(r)}" in ${where}`,
      hint: 'Type the size itself; what depends on a piece stands in its definition.',
    },
  }));
}

/** Inch-pound to metric units of a file: pounds to kg, million psi to GPa, psi to MPa, lbf to N. */
const FACTORS = { lift: POUND_KG, stiffness: PSI_PA / 1000, strength: PSI_PA / 1e6, hardness: POUND_FORCE_N } as const;

/** The same shop in other units; lengths become millimetres, which any file can hold exactly. */
function inUnits(spec: ShopSpec, typed: Units, wanted: Units): ShopSpec {
  if (typed === wanted) return spec;
  const copy = structuredClone(spec) as Record<string, unknown>;
  eachLength(ShopFile, spec, (path, text) => {
    const read = lengthAlone(text as string | number, typed);
    if ('value' in read) put(copy, path, `${(read.value / 1e6).toFixed(6).replace(/\.?0+$/, '')}mm`);
  });
  const scaled = (v: number, field: keyof typeof FACTORS): number =>
    Number((typed === 'in' ? v * FACTORS[field] : v / FACTORS[field]).toPrecision(12));
  const wood = (w: WoodSpec): WoodSpec => ({
    ...w,
    ...(w.stiffness === undefined ? {} : { stiffness: scaled(w.stiffness, 'stiffness') }),
    ...(w.strength === undefined ? {} : { strength: scaled(w.strength, 'strength') }),
    ...(w.hardness === undefined ? {} : { hardness: scaled(w.hardness, 'hardness') }),
  });
  const panel = (p: PanelSpec): PanelSpec => ({
    ...p,
    ...(p.stiffness === undefined
      ? {}
      : { stiffness: [scaled(p.stiffness[0], 'stiffness'), scaled(p.stiffness[1], 'stiffness')] as const }),
  });
  const all = <T>(entries: Readonly<Record<string, T>>, act: (v: T) => T): Record<string, T> =>
    Object.fromEntries(Object.entries(entries).map(([k, v]) => [k, act(v)]));
  return {
    ...(copy as ShopSpec),
    ...(spec.lift === undefined ? {} : { lift: scaled(spec.lift, 'lift') }),
    ...(spec.woods ? { woods: all(spec.woods, wood) } : {}),
    ...(spec.panels ? { panels: all(spec.panels, panel) } : {}),
  };
}
function put(holder: Record<string | number, unknown>, path: JsonPath, value: unknown): void {
  const [step, ...rest] = path as [string | number, ...(string | number)[]];
  if (rest.length === 0) holder[step] = value;
  else put(holder[step] as Record<string | number, unknown>, rest, value);
}

/**
 * A definition in a shop: what its own file types under `shop` stands over the shop's file, entry by entry, and that over
 * what the definition starts from: a shipped piece's reading is not this shop's.
 */
export function inShop(def: Definition, shop: ShopSpec, typed: Json = (def.shop ?? {}) as unknown as Json): Definition {
  const over = (below: Json, above: Json): Json => merged(dated(below, above), above, () => undefined, ['shop']);
  const below = over((def.shop ?? {}) as unknown as Json, shop as unknown as Json);
  return { ...def, shop: over(below, typed) as ShopSpec };
}

/** A reading and its day say one thing: another reading without a day has none. */
function dated(below: Json, above: Json): Json {
  if (!isObject(below) || !isObject(above) || !('moisture' in above) || 'read' in above) return below;
  const { read: _read, ...rest } = below;
  return rest;
}

/** Does a path under `shop` stand in the shop's file, and not in what the definition's own file types there? */
export function standsInShop(path: JsonPath, typed: unknown, shop: ShopSpec | undefined): boolean {
  if (path[0] !== 'shop' || shop === undefined) return false;
  const reach = (root: unknown): number => {
    let at: unknown = root;
    for (const [i, step] of path.slice(1).entries()) {
      if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return i;
      at = (at as Record<string | number, unknown>)[step];
    }
    return path.length - 1;
  };
  return reach(shop) > reach(typed);
}
