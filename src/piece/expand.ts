import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Definition, GroupSpec, JointSpec, PartSpec } from '../definition/definition.js';
import { AXIS_NAMES } from '../geom/axis.js';
import type { Letters } from '../lengths/each.js';
import type { Findings } from './fault.js';
import { countedOut, fill, fillDeep } from './letters.js';

/** One part as it will be made: letters filled in, fields of `like` copied; nothing measured yet. */
export interface Draft {
  readonly id: string;
  readonly spec: PartSpec;
  /** Where the fields stand in the definition, field by field where they were copied. */
  readonly path: JsonPath;
  readonly fieldPath: Readonly<Record<string, JsonPath>>;
  /** Mirror image of this part, about a plane across. */
  readonly mirrorOf?: string;
  readonly about?: string | number;
  /** Extents that it gives itself although it is like a mirror image. */
  readonly ownExtents?: readonly string[];
  readonly letters: Letters;
}
export interface JointDraft {
  readonly id: string;
  readonly spec: JointSpec;
  readonly path: JsonPath;
}
export interface Drafts {
  readonly parts: ReadonlyMap<string, Draft>;
  readonly joints: readonly JointDraft[];
  /** Ids that were typed and could not be settled (told). */
  readonly lost: ReadonlySet<string>;
}

/** `short_1.front` is made by a component; an entry of that name only says otherwise about it. */
export const isMade = (id: string): boolean => id.includes('.');

const OWN = new Set(['each', 'like', 'mirror', 'about']);

/** Parts and joints of a definition, one by one, in its order: `each` counted out, `like` and groups copied, mirrors named. */
export function expand(def: Definition, findings: Findings): Drafts {
  const raw = new Map<string, Draft>();
  for (const [key, spec] of Object.entries(def.parts))
    if (!isMade(key)) addPart(raw, key, spec, ['parts', key], findings);
  const joints: JointDraft[] = [];
  for (const [key, spec] of Object.entries(def.joints ?? {}))
    if (!isMade(key)) joints.push(...countJoint(key, spec, ['joints', key]));
  for (const [key, group] of Object.entries(def.groups ?? {})) addGroup(raw, joints, def, key, group, findings);
  const parts = new Map<string, Draft>();
  for (const id of raw.keys()) {
    const settled = settle(id, raw, parts, [], findings);
    if (settled) parts.set(id, settled);
  }
  // In the order of the definition, whatever order `like` needed.
  return {
    parts: new Map([...raw.keys()].flatMap((id) => (parts.has(id) ? [[id, parts.get(id) as Draft]] : []))),
    joints,
    lost: new Set([...raw.keys()].filter((id) => !parts.has(id))),
  };
}

function addPart(raw: Map<string, Draft>, key: string, spec: PartSpec, path: JsonPath, findings: Findings): void {
  let sets: readonly Letters[] = [{}];
  if (spec.each !== undefined) {
    const read = countedOut(spec.each, path, findings);
    if (!read) return;
    sets = read;
  }
  for (const letters of sets) {
    const id = fill(key, letters);
    if (id.includes('{')) {
      findings.error(
        'letter-unknown',
        path,
        `"${key}" has a letter that "each" does not count.`,
        'Add "each": "i = 1..3".',
      );
      return;
    }
    if (raw.has(id)) {
      const why =
        spec.each === undefined ? 'is given twice' : `is made twice; put {${Object.keys(letters)[0]}} in the id`;
      findings.error('id-twice', path, `The part "${id}" ${why}.`, 'Give each part an id of its own.');
      return;
    }
    const filled = fillDeep(spec, letters);
    const fieldPath = Object.fromEntries(Object.keys(spec).map((f) => [f, [...path, f]]));
    raw.set(id, { id, spec: filled, path, fieldPath, letters });
  }
}

/** Copies the fields of `like` (its own first, then those of the part it is like) and names the part it mirrors. */
function settle(
  id: string,
  raw: ReadonlyMap<string, Draft>,
  done: Map<string, Draft>,
  stack: readonly string[],
  findings: Findings,
): Draft | undefined {
  const ready = done.get(id);
  if (ready) return ready;
  const draft = raw.get(id);
  if (!draft) return undefined;
  if (stack.includes(id)) {
    tellCircle(stack.slice(stack.indexOf(id)), raw, findings);
    return undefined;
  }
  const other = draft.spec.like ?? draft.spec.mirror;
  if (other === undefined) return draft;
  const field = draft.spec.like !== undefined ? 'like' : 'mirror';
  const path = draft.fieldPath[field] ?? draft.path;
  if (!raw.has(other)) {
    findings.error('part-unknown', path, `There is no part "${other}".`, nameHint(other, [...raw.keys()]));
    return undefined;
  }
  const base = settle(other, raw, done, [...stack, id], findings);
  if (!base) return undefined;
  done.set(other, base);
  return field === 'like' ? alike(draft, base) : mirrored(draft, base, findings);
}

/** Told once a circle: the chain begins at the first of its ids by spelling, whichever was asked for first. */
function tellCircle(ring: readonly string[], raw: ReadonlyMap<string, Draft>, findings: Findings): void {
  const first = [...ring].sort()[0] ?? '';
  const k = ring.indexOf(first);
  const chain = [...ring.slice(k), ...ring.slice(0, k), first].join(' -> ');
  const draft = raw.get(first);
  findings.error(
    'like-in-a-circle',
    draft?.fieldPath['like'] ?? draft?.fieldPath['mirror'] ?? ['parts', first],
    ring.length === 1 ? `The part "${first}" is like itself.` : `These parts are each like the next: ${chain}.`,
    'Give one of them its own fields.',
    ring,
  );
}

function alike(draft: Draft, base: Draft): Draft {
  // The copied fields keep their letters' meaning: `{i}` was filled where the other part stands, so recount only its own.
  const copied = Object.fromEntries(Object.entries(base.spec).filter(([k]) => !OWN.has(k) && k !== 'mark'));
  return {
    ...draft,
    spec: { ...copied, ...draft.spec },
    fieldPath: { ...base.fieldPath, ...draft.fieldPath },
    ...(base.mirrorOf === undefined ? {} : { mirrorOf: base.mirrorOf }),
    ...(base.about === undefined ? {} : { about: base.about }),
    ...(base.mirrorOf === undefined
      ? {}
      : {
          ownExtents: [
            ...new Set([...(base.ownExtents ?? []), ...AXIS_NAMES.filter((f) => draft.spec[f] !== undefined)]),
          ],
        }),
  };
}

function mirrored(draft: Draft, base: Draft, findings: Findings): Draft | undefined {
  if (draft.spec.about === undefined) {
    findings.error(
      'mirror-needs-about',
      draft.path,
      `"${draft.id}" mirrors "${base.id}" about nothing.`,
      'Add the plane: "about": "W / 2".',
    );
    return undefined;
  }
  const sized = (['across', 'deep', 'up', 'grain', 'shape', 'holes'] as const).find((f) => draft.spec[f] !== undefined);
  if (sized !== undefined) {
    findings.error(
      'mirror-with-size',
      draft.fieldPath[sized] ?? draft.path,
      `"${draft.id}" is a mirror image and also gives "${sized}".`,
      'Take one of them out, or use "like".',
    );
    return undefined;
  }
  const copied = Object.fromEntries(
    (
      [
        'stock',
        'grain',
        'shape',
        'holes',
        'status',
        'name',
        'show',
        'faces',
        'reference',
        'notes',
        'across',
        'deep',
        'up',
      ] as const
    )
      .filter((f) => base.spec[f] !== undefined)
      .map((f) => [f, base.spec[f]]),
  );
  const { name: _name, ...rest } = copied as PartSpec;
  return {
    ...draft,
    spec: { ...rest, ...draft.spec },
    fieldPath: { ...base.fieldPath, ...draft.fieldPath },
    mirrorOf: base.id,
    about: draft.spec.about,
  };
}

/** A joint with `each` is counted out; its pattern ids keep `{2..5}`, `*` for later. */
export function countJoint(key: string, spec: JointSpec, path: JsonPath): JointDraft[] {
  return [{ id: key, spec, path }];
}

/** Group parts are called `group_part`; a group that mirrors another mirrors each of its parts and repeats its joints. */
function addGroup(
  raw: Map<string, Draft>,
  joints: JointDraft[],
  def: Definition,
  key: string,
  group: GroupSpec,
  findings: Findings,
): void {
  const path: JsonPath = ['groups', key];
  const other = group.mirror ?? group.like;
  const source = other === undefined ? group : def.groups?.[other];
  if (!source) {
    findings.error(
      'group-unknown',
      [...path, group.mirror ? 'mirror' : 'like'],
      `There is no group "${other}".`,
      nameHint(other ?? '', Object.keys(def.groups ?? {})),
    );
    return;
  }
  if (other !== undefined && !source.parts) {
    const message =
      other === key ? `The group "${key}" is like itself.` : `The group "${other}" has no parts of its own.`;
    findings.error(
      'group-empty',
      [...path, group.mirror ? 'mirror' : 'like'],
      message,
      'Name a group whose "parts" are written out.',
    );
    return;
  }
  if (group.mirror !== undefined && group.about === undefined) {
    findings.error(
      'mirror-needs-about',
      path,
      `The group "${key}" mirrors "${other}" about nothing.`,
      'Add the plane: "about": "W / 2".',
    );
    return;
  }
  const local = Object.keys(source.parts ?? {});
  for (const [id, spec] of Object.entries(source.parts ?? {})) {
    const made: PartSpec =
      group.mirror === undefined
        ? moved(prefixed(spec, key, local), group.at)
        : {
            mirror: `${other}_${id}`,
            about: group.about ?? 0,
            ...(spec.each === undefined ? {} : { each: spec.each }),
          };
    addPart(raw, `${key}_${id}`, made, other === undefined ? [...path, 'parts', id] : path, findings);
  }
  const named = other === undefined ? group : source;
  for (const [id, spec] of Object.entries(named.joints ?? {})) {
    joints.push({
      id: `${key}_${id}`,
      spec: prefixed(spec, key, local),
      path: other === undefined ? [...path, 'joints', id] : path,
    });
  }
}

/** Inside a group a part is called by its short name; outside by `group_part`. */
function prefixed<T>(value: T, group: string, local: readonly string[]): T {
  if (typeof value === 'string') {
    return value.replace(/[a-z][a-z0-9]*(?:_(?:[a-z0-9]+|\{[^}]*\}))*(?:_\*)?/g, (word) =>
      local.includes(word) || local.some((l) => likeness(l, word)) ? `${group}_${word}` : word,
    ) as T;
  }
  if (Array.isArray(value)) return value.map((v: unknown) => prefixed(v, group, local)) as T;
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(
      Object.entries(value).map(([k, v]) => [k, KEPT.has(k) ? (v as unknown) : prefixed(v as unknown, group, local)]),
    ) as T;
  }
  return value;
}
const KEPT = new Set([
  'kind',
  'stock',
  'grain',
  'name',
  'mark',
  'status',
  'cut',
  'face',
  'faces',
  'edge',
  'edges',
  'end',
  'show',
  'notes',
  'each',
  'from_face',
]);

/** `leg_{i}` counts for `leg_2`, `leg_{1..4}`, `leg_*`. */
function likeness(pattern: string, word: string): boolean {
  if (!pattern.includes('{')) return false;
  const source = pattern
    .replace(/\{[^}]*\}/g, '@')
    .replace(/[.*+?^$()|[\]\\]/g, '\\$&')
    .replace(/@/g, '(\\d+|\\{[^}]*\\}|\\*)');
  return new RegExp(`^${source}$`).test(word);
}

/** A placed group: its `at` is added to every coordinate (never to a size). */
function moved(spec: PartSpec, at: GroupSpec['at']): PartSpec {
  if (!at) return spec;
  const plus = (v: string | number | undefined, by: string | number) =>
    v === undefined ? undefined : `(${v}) + (${by})`;
  const out: Record<string, unknown> = { ...spec };
  (['across', 'deep', 'up'] as const).forEach((axis, k) => {
    const e = spec[axis];
    const by = at[k] ?? 0;
    if (e === undefined) return;
    if (Array.isArray(e)) out[axis] = [plus(e[0] as string, by), plus(e[1] as string, by)];
    else {
      const { from, to, mid, size } = e as Exclude<typeof e, readonly unknown[]>;
      out[axis] = Object.fromEntries(
        Object.entries({ from: plus(from, by), to: plus(to, by), mid: plus(mid, by), size }).filter(
          ([, v]) => v !== undefined,
        ),
      );
    }
  });
  return out as PartSpec;
}
