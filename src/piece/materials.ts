import { ownPanel, ownWood, TABLES, type Materials } from '../data/own.js';
import type { Panel } from '../data/panels.js';
import { speciesById, type Species } from '../data/species.js';
import type { Definition, PanelSpec, WoodSpec } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Findings } from './fault.js';
import { POUND_FORCE_N, PSI_PA } from '../lengths/units.js';

/** The woods and panels of the tables with the shop's own over them; what is wrong with those is told. */
export function materialsOf(def: Definition, findings: Findings): Materials {
  const inch = def.units === 'in';
  const woods = new Map<string, Species>();
  for (const [key, spec] of Object.entries(def.shop?.woods ?? {})) {
    const path = ['shop', 'woods', key];
    const base = baseOf(key, spec.like, path, TABLES.wood, TABLES.woods, findings);
    const id = speciesById(key)?.id ?? key;
    const sound = inRange(woodFigures(spec, inch), path, findings);
    if (base && sound) woods.set(id, ownWood(id, base, woodOf(spec, inch)));
  }
  const panels = new Map<string, Panel>();
  for (const [key, spec] of Object.entries(def.shop?.panels ?? {})) {
    const path = ['shop', 'panels', key];
    const base = baseOf(key, spec.like, path, TABLES.panel, TABLES.panels, findings);
    const sound = inRange(panelFigures(spec, inch), path, findings);
    if (base && sound) panels.set(key, ownPanel(key, base, panelOf(spec, inch)));
  }
  return {
    wood: (id) => woods.get(speciesById(id)?.id ?? id) ?? TABLES.wood(id),
    panel: (id) => panels.get(id) ?? TABLES.panel(id),
    woods: [...TABLES.woods, ...[...woods.keys()].filter((k) => !TABLES.woods.includes(k))],
    panels: [...TABLES.panels, ...[...panels.keys()].filter((k) => !TABLES.panels.includes(k))],
  };
}

/** The table's entry that an own one departs from: itself, or what it is like. */
function baseOf<T>(
  key: string,
  like: string | undefined,
  path: JsonPath,
  find: (id: string) => T | undefined,
  known: readonly string[],
  findings: Findings,
): T | undefined {
  const found = find(like ?? key);
  if (found) return found;
  if (like === undefined)
    findings.error(
      'like-missing',
      path,
      `"${key}" is not in the table, and does not say what it is like.`,
      `Add "like" with the nearest of the table. ${nameHint(key, known)}`,
    );
  else findings.error('like-unknown', [...path, 'like'], `There is no "${like}" in the table.`, nameHint(like, known));
  return undefined;
}

interface Ranged {
  readonly at: JsonPath;
  readonly value: number | undefined;
  readonly range: readonly [number, number];
}
/** Widest ranges of all woods and panels; what is outside is a slip of the pen or of the unit (our default). */
const GRAVITY = [0.05, 1.4] as const;
const CHANGE = [0.0002, 0.01] as const;
const SHRINKAGE = [0.5, 25] as const;
const STIFFNESS = [0.5e9, 40e9] as const;
const RUPTURE = [5e6, 300e6] as const;
const HARDNESS = [100, 30_000] as const;

const over = (range: readonly [number, number], unit: number): readonly [number, number] => [
  range[0] / unit,
  range[1] / unit,
];
const stiffnessUnit = (inch: boolean): number => (inch ? 1e6 * PSI_PA : 1e9);
const woodFigures = (s: WoodSpec, inch: boolean): readonly Ranged[] => [
  { at: ['gravity'], value: s.gravity, range: GRAVITY },
  { at: ['radial'], value: s.radial, range: CHANGE },
  { at: ['tangential'], value: s.tangential, range: CHANGE },
  { at: ['shrinkage', 0], value: s.shrinkage?.[0], range: SHRINKAGE },
  { at: ['shrinkage', 1], value: s.shrinkage?.[1], range: SHRINKAGE },
  { at: ['stiffness'], value: s.stiffness, range: over(STIFFNESS, stiffnessUnit(inch)) },
  { at: ['strength'], value: s.strength, range: over(RUPTURE, inch ? PSI_PA : 1e6) },
  { at: ['hardness'], value: s.hardness, range: over(HARDNESS, inch ? POUND_FORCE_N : 1) },
];
const panelFigures = (s: PanelSpec, inch: boolean): readonly Ranged[] => [
  { at: ['gravity'], value: s.gravity, range: GRAVITY },
  ...[0, 1].map((k) => ({
    at: ['stiffness', k],
    value: s.stiffness?.[k],
    range: over([STIFFNESS[0] / 10, STIFFNESS[1]], stiffnessUnit(inch)),
  })),
];
const three = (v: number): string => String(Number(v.toPrecision(3)));
function inRange(figures: readonly Ranged[], path: JsonPath, findings: Findings): boolean {
  const wrong = figures.filter((f) => f.value !== undefined && !(f.value >= f.range[0] && f.value <= f.range[1]));
  for (const { at, value, range } of wrong)
    findings.error(
      'number-given',
      [...path, ...at],
      `${at[0]} of ${value} cannot be: it lies between ${three(range[0])} and ${three(range[1])}.`,
      'Is it in the unit that this file takes?',
    );
  return wrong.length === 0;
}

const woodOf = (s: WoodSpec, inch: boolean) => ({
  source: s.source,
  ...(s.name === undefined ? {} : { name: s.name }),
  ...(s.gravity === undefined ? {} : { gravity: s.gravity }),
  ...(s.radial === undefined ? {} : { radial: s.radial }),
  ...(s.tangential === undefined ? {} : { tangential: s.tangential }),
  ...(s.shrinkage === undefined ? {} : { shrinkage: s.shrinkage }),
  ...(s.stiffness === undefined ? {} : { stiffness: s.stiffness * stiffnessUnit(inch) }),
  ...(s.strength === undefined ? {} : { rupture: s.strength * (inch ? PSI_PA : 1e6) }),
  ...(s.hardness === undefined ? {} : { hardness: s.hardness * (inch ? POUND_FORCE_N : 1) }),
});
const panelOf = (s: PanelSpec, inch: boolean) => ({
  source: s.source,
  ...(s.name === undefined ? {} : { name: s.name }),
  ...(s.gravity === undefined ? {} : { gravity: s.gravity }),
  ...(s.stiffness === undefined
    ? {}
    : { stiffness: [s.stiffness[0] * stiffnessUnit(inch), s.stiffness[1] * stiffnessUnit(inch)] as const }),
});
