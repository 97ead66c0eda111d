import type { Definition, Length_, MachineSpecs } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import type { Length } from '../lengths/length.js';
import type { Machines, ShopProfile } from '../shop/profile.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import { POUND_KG } from '../lengths/units.js';

/** More than one person lifts, kg: our default. */
const HEAVIEST = 200;

/** Reads sizes that must be above nothing; an entry that cannot be worked out has been told and is left out. */
export class Sizes {
  constructor(
    private readonly ev: Evaluator,
    private readonly findings: Findings,
  ) {}

  one(text: Length_, path: JsonPath, least: 0 | 1 = 1): Length | undefined {
    const value = this.ev.length(text, path)?.value;
    if (value === undefined || value >= least) return value;
    const message = `A size of ${this.ev.say(value)} cannot be.`;
    this.findings.error('size-given', path, message, 'Measure it; leave it out when it is not known.');
    return undefined;
  }
  /** The fields of an object as lengths, those given; undefined when one that is needed could not be read. */
  all<T extends object>(
    holder: object | undefined,
    path: JsonPath,
    needed: readonly (keyof T & string)[],
  ): T | undefined {
    if (holder === undefined) return undefined;
    const out: Record<string, Length> = {};
    for (const [field, text] of Object.entries(holder) as [string, Length_][]) {
      const value = this.one(text, [...path, field]);
      if (value !== undefined) out[field] = value;
    }
    return needed.every((f) => Object.hasOwn(out, f)) ? (out as T) : undefined;
  }
}

const NEEDED: Readonly<Record<keyof MachineSpecs, readonly string[]>> = {
  jointer: ['width'],
  planer: ['width'],
  tableSaw: [],
  bandsaw: ['height'],
  routerTable: ['tallest'],
  drillPress: ['stroke'],
  bench: ['length'],
};

/** The shop's machines, clamps and limits as typed; what is not typed is not known. Undefined when nothing is. */
export function profileOf(def: Definition, ev: Evaluator, findings: Findings): ShopProfile | undefined {
  const s = def.shop ?? {};
  const sizes = new Sizes(ev, findings);
  const machines: Record<string, object> = {};
  for (const [name, spec] of Object.entries(s.machines ?? {})) {
    const read = sizes.all<Record<string, Length>>(
      spec,
      ['shop', 'machines', name],
      NEEDED[name as keyof MachineSpecs],
    );
    if (read) machines[name] = read;
  }
  const clamps = (s.clamps ?? []).flatMap((c, i) => {
    const opening = sizes.one(c.opening, ['shop', 'clamps', i, 'opening']);
    return opening === undefined ? [] : [{ opening, count: c.count }];
  });
  const lift = s.lift === undefined ? undefined : s.lift * (def.units === 'in' ? POUND_KG : 1);
  if (lift !== undefined && !(lift > 0 && lift <= HEAVIEST))
    findings.error(
      'number-given',
      ['shop', 'lift'],
      `One person does not lift ${s.lift} ${def.units === 'in' ? 'lb' : 'kg'}.`,
      'Leave it out when it is not known.',
    );
  const alone = sizes.all<{ length: Length; width: Length }>(s.alone, ['shop', 'alone'], ['length', 'width']);
  const door = sizes.all<{ width: Length; height: Length }>(s.door, ['shop', 'door'], ['width', 'height']);
  const known = {
    ...(lift === undefined ? {} : { lift }),
    ...(alone ? { alone: [alone.length, alone.width] as const } : {}),
    ...(door ? { door: [door.width, door.height] as const } : {}),
    ...(s.moisture === undefined ? {} : { moisture: s.moisture }),
    ...(s.read === undefined ? {} : { read: s.read }),
  };
  if (Object.keys({ ...known, ...machines }).length === 0 && clamps.length === 0) return undefined;
  return {
    machines: machines as Machines,
    clamps: clamps.sort((a, b) => b.opening - a.opening || b.count - a.count),
    ...known,
  };
}
