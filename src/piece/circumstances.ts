import type { Definition, DeliverySpec, UseSpec } from '../definition/definition.js';
import { CODES } from '../diag/codes.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import { nm, type Length } from '../lengths/length.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import { matches } from './patterns.js';
import type { Accepted, Delivery, Piece, Use } from './piece.js';
import { Sizes } from './profile.js';
import { FOOT_M, POUND_FORCE_N, POUND_KG } from '../lengths/units.js';

/** What a piece's circumstances are read against: the ids that there are, once all parts are made. */
export interface Named {
  readonly parts: readonly string[];
  readonly joints: readonly { readonly id: string; readonly joint: string }[];
  readonly stockOf: (part: string) => string | undefined;
  readonly ev: Evaluator;
  readonly findings: Findings;
}
type Circumstances = Pick<Piece, 'use' | 'delivery' | 'accepted' | 'spares'>;

/** What it is for, the way to its room, and what is answered for, as far as the definition says. */
export function circumstancesOf(def: Definition, named: Named): Circumstances {
  return {
    ...(def.use ? { use: useOf(def.use, def.units, named) } : {}),
    ...(def.delivery ? { delivery: deliveryOf(def.delivery, named) } : {}),
    ...(def.accepted ? { accepted: acceptedOf(def, named) } : {}),
    ...sparesOf(def, named),
  };
}

/** How many more of a part are cut, by part; all of them of the stock that says it. */
function sparesOf(def: Definition, named: Named): Pick<Piece, 'spares'> {
  const all = Object.entries(def.stock).flatMap(([id, stock]) => {
    if (!stock.spares) return [];
    const found = Object.entries(byPart(stock.spares, ['stock', id, 'spares'], named));
    for (const [part] of found)
      if (named.stockOf(part) !== id) {
        const message = `"${part}" is not cut from "${id}".`;
        const hint = 'Name its spares under the stock that it is made of.';
        named.findings.error('spare-elsewhere', ['stock', id, 'spares'], message, hint, [part]);
      }
    return found;
  });
  const wanted = all.filter(([, n]) => n > 0).sort(([a], [b]) => (a < b ? -1 : 1));
  return wanted.length === 0 ? {} : { spares: Object.fromEntries(wanted) };
}

/** Parts that a pattern names; told when there is none. */
function partsNamed(pattern: string, path: JsonPath, { parts, findings }: Named, key = false): readonly string[] {
  const found = matches(pattern, parts).map((m) => m.id);
  if (found.length === 0)
    findings.add({
      code: 'part-unknown',
      severity: 'error',
      path,
      key,
      message: `No part is called like "${pattern}".`,
      hint: nameHint(pattern.replace(/[{*].*$/, ''), parts),
    });
  return found;
}

/** Entries by pattern as entries by part: one that names a part out loud stands over one that sweeps it up with `*`. */
function byPart<T>(entries: Readonly<Record<string, T>> | undefined, path: JsonPath, named: Named): Record<string, T> {
  const out = new Map<string, T>();
  const typed = Object.entries(entries ?? {});
  const sweeping = (pattern: string): boolean => pattern.includes('*');
  for (const [pattern, value] of [...typed.filter(([p]) => sweeping(p)), ...typed.filter(([p]) => !sweeping(p))])
    for (const id of partsNamed(pattern, [...path, pattern], named, true)) out.set(id, value);
  return Object.fromEntries([...out].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Standard gravity, m/s2 (by definition). */
const GRAVITY = 9.80665;

/** A load or a limit larger than this is a slip of the pen (our default). */
const LARGEST = 10_000;

function useOf(spec: UseSpec, units: 'in' | 'mm', named: Named): Use {
  const { findings } = named;
  const above = (value: number | undefined, path: JsonPath): boolean => {
    if (value === undefined || (value > 0 && value <= LARGEST)) return value !== undefined;
    const wrong = value > 0 ? `more than ${LARGEST}` : 'not above nothing';
    findings.error('number-given', path, `${value} is ${wrong}.`, 'Leave it out when nothing is meant.');
    return false;
  };
  for (const [id, n] of Object.entries(spec.sag ?? {})) above(n, ['use', 'sag', id]);
  const loads = Object.fromEntries(
    Object.entries(spec.loads ?? {}).map(([id, { perArea, middle }]) => [
      id,
      {
        ...(above(perArea, ['use', 'loads', id, 'perArea'])
          ? { pascals: (perArea as number) * (units === 'in' ? POUND_FORCE_N / FOOT_M ** 2 : GRAVITY) }
          : {}),
        ...(above(middle, ['use', 'loads', id, 'middle'])
          ? { kilograms: (middle as number) * (units === 'in' ? POUND_KG : 1) }
          : {}),
      },
    ]),
  );
  return {
    ...(spec.kind === undefined ? {} : { kind: spec.kind }),
    ...(spec.fixed === undefined ? {} : { fixed: spec.fixed }),
    ...(spec.floor === undefined ? {} : { floor: spec.floor }),
    loads: byPart(loads, ['use', 'loads'], named),
    sag: byPart(spec.sag, ['use', 'sag'], named),
  };
}

function deliveryOf(spec: DeliverySpec, named: Named): Delivery {
  const sizes = new Sizes(named.ev, named.findings);
  const at = (...path: JsonPath): JsonPath => ['delivery', ...path];
  const ceiling = spec.ceiling === undefined ? undefined : sizes.one(spec.ceiling, at('ceiling'));
  const v = sizes.all<{ length: Length; width: Length; height: Length }>(spec.vehicle, at('vehicle'), [
    'length',
    'width',
    'height',
  ]);
  const wrap = spec.wrap === undefined ? undefined : sizes.one(spec.wrap, at('wrap'), 0);
  const apart = (spec.apart ?? []).flatMap((p, i) => partsNamed(p, at('apart', i), named));
  return {
    doors: (spec.doors ?? []).flatMap(({ name, ...clear }, i) => {
      const read = sizes.all<Omit<Delivery['doors'][number], 'name'>>(clear, at('doors', i), ['width', 'height']);
      return read ? [{ name, ...read }] : [];
    }),
    corners: (spec.corners ?? []).flatMap(({ name, widths, ...clear }, i) => {
      const read = sizes.all<{ height?: Length }>(clear, at('corners', i), []);
      const [before, after] = widths.map((w, k) => sizes.one(w, at('corners', i, 'widths', k)));
      return read && before !== undefined && after !== undefined
        ? [{ name, widths: [before, after] as const, ...read }]
        : [];
    }),
    stairs: (spec.stairs ?? []).flatMap(({ name, pitch, ...clear }, i) => {
      const needed = ['width', 'headroom'] as const;
      const read = sizes.all<{ width: Length; headroom: Length; landing?: Length }>(clear, at('stairs', i), needed);
      return read && pitched(pitch, at('stairs', i, 'pitch'), named) ? [{ name, pitch, ...read }] : [];
    }),
    ...(ceiling === undefined ? {} : { ceiling }),
    ...(v ? { vehicle: [v.length, v.width, v.height] as const } : {}),
    wrap: wrap ?? nm(0),
    apart: [...new Set(apart)].sort(),
  };
}
/** A stair rises between level and a ladder; steeper than 60 degrees is a slip of the pen (our default). */
function pitched(pitch: number, path: JsonPath, { findings }: Named): boolean {
  if (pitch > 0 && pitch < 60) return true;
  findings.error('number-given', path, `A stair of ${pitch} degrees cannot be.`, 'Most are 30 to 42 degrees.');
  return false;
}

function acceptedOf(def: Definition, { parts, joints, findings }: Named): Accepted[] {
  const ids = [...new Set([...parts, ...joints.flatMap((j) => [j.id, j.joint])])];
  return (def.accepted ?? []).map((a, i): Accepted => {
    if (!Object.hasOwn(CODES, a.finding)) {
      const message = `No finding has the code "${a.finding}".`;
      findings.error('finding-unknown', ['accepted', i, 'finding'], message, nameHint(a.finding, Object.keys(CODES)));
    }
    for (const field of ['why', 'by'] as const)
      if (a[field].trim() === '')
        findings.error(
          'accepted-unsaid',
          ['accepted', i, field],
          field === 'why' ? 'An acceptance without its reason.' : 'An acceptance that nobody answers for.',
          `Write "${field}" out, or take the acceptance away.`,
        );
    if (a.of === undefined) return a;
    const found = new Set(matches(a.of, ids).map((m) => m.id));
    if (found.size === 0) {
      const message = `No part or joint is called like "${a.of}".`;
      findings.error('part-unknown', ['accepted', i, 'of'], message, nameHint(a.of.replace(/[{*].*$/, ''), ids));
    }
    for (const j of joints) if (found.has(j.joint)) found.add(j.id);
    return { ...a, ids: [...found].sort() };
  });
}
