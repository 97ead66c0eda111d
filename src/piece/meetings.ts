import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { JointSpec, Length_ } from '../definition/definition.js';
import { FACES } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import type { JointKind, Resolved, World } from '../joints/joint.js';
import type { Sized } from '../value/sized.js';
import type { Body } from './body.js';
import type { Evaluator } from './evaluate.js';
import type { JointDraft } from './expand.js';
import type { Findings } from './fault.js';
import type { Meet } from './joints.js';
import { countedOut, fill, fillDeep } from './letters.js';
import type { Match } from './patterns.js';
import { agree, matches } from './patterns.js';
import { leaningSite } from './lean-site.js';
import type { Meeting, Placed } from './site.js';
import { apart, crossing, siteAt, STANCE_WORDS, touching } from './site.js';

export interface MeetingContext {
  readonly kinds: readonly JointKind[];
  readonly bodies: ReadonlyMap<string, Body>;
  readonly ev: Evaluator;
  readonly world: World;
  readonly findings: Findings;
  /** Ids typed that failed earlier: silent here. */
  readonly failed: ReadonlySet<string>;
}

/** A joint whose fields are worked out, not yet brought to its places. */
export interface JointPlan {
  readonly id: string;
  readonly kind: JointKind;
  readonly spec: Resolved;
  readonly parts: readonly string[];
  readonly into: readonly string[];
  readonly path: JsonPath;
}

/** The joint of a definition with its lengths evaluated; undefined when it cannot be read (told). */
export function planJoint(draft: JointDraft, ctx: MeetingContext): JointPlan[] {
  const { part, into, each } = draft.spec;
  const kind = kindOf(draft.spec.kind, [...draft.path, 'kind'], ctx);
  if (!kind) return [];
  const sets = each === undefined ? [{}] : countedOut(each, draft.path, ctx.findings);
  const list = (p: JointSpec['part'] | undefined): readonly string[] =>
    p === undefined ? [] : typeof p === 'string' ? [p] : p;
  return (sets ?? []).flatMap((letters) => {
    const spec = fieldsOf(kind, fillDeep(draft.spec, letters), draft.path, ctx);
    const filled = (p: readonly string[]): string[] => p.map((x) => fill(x, letters));
    return spec
      ? [{ id: draft.id, kind, spec, parts: filled(list(part)), into: filled(list(into)), path: draft.path }]
      : [];
  });
}

/** The kind of joint of that name; undefined when there is none (told). */
export function kindOf(word: string, path: JsonPath, ctx: MeetingContext): JointKind | undefined {
  const kind = ctx.kinds.find((k) => k.kind === word);
  const names = ctx.kinds.map((k) => k.kind);
  if (!kind) ctx.findings.error('joint-unknown', path, `There is no joint "${word}".`, nameHint(word, names));
  return kind;
}
/** What every joint has; the rest are the kind's own. */
const EVERY = new Set(['kind', 'part', 'into', 'each']);

/** A kind's own fields worked out; undefined when one cannot be (told). */
export function fieldsOf(
  kind: JointKind,
  fields: Readonly<Record<string, unknown>>,
  path: JsonPath,
  ctx: MeetingContext,
): Resolved | undefined {
  const out: Record<string, Resolved[string]> = {};
  for (const [key, value] of Object.entries(fields)) {
    if (EVERY.has(key)) continue;
    if (!kind.lengths.includes(key)) {
      if (typeof value === 'number' && value > MOST_OF_ONE) {
        ctx.findings.error(
          'joint-count',
          [...path, key],
          `${value} is more than ${MOST_OF_ONE} in one joint.`,
          'Is this number meant?',
        );
        return undefined;
      }
      out[key] = value as Resolved[string];
      continue;
    }
    if (Array.isArray(value)) {
      const all = value.map((v: unknown, k) => ctx.ev.length(v as Length_, [...path, key, k]));
      if (all.some((s) => s === undefined)) return undefined;
      out[key] = all as Sized[];
    } else {
      const one = ctx.ev.length(value as Length_, [...path, key]);
      if (!one || !canBe(key, one, [...path, key], ctx)) return undefined;
      out[key] = one;
    }
  }
  return out;
}

/** Most screws, tails and so on in one joint (our default). */
const MOST_OF_ONE = 100;
/** Sizes of wood taken away; the other lengths of a joint may be nothing, and an offset may go either way. */
const SIZES = new Set(['depth', 'width', 'length', 'thickness', 'on', 'pitch', 'widest']);
function canBe(key: string, size: Sized, path: JsonPath, ctx: MeetingContext): boolean {
  if (key === 'offset' || size.value > 0 || (size.value === 0 && !SIZES.has(key))) return true;
  ctx.findings.error(
    'joint-size',
    path,
    `The ${key} is ${ctx.ev.say(size.value)}: ${size.value === 0 ? 'nothing' : 'less than nothing'}.`,
    'Write a size above nothing, or leave it out: the rule of the joint gives one.',
  );
  return false;
}

/** Every place where a joint's parts meet, numbered in order: `rails.1`, `rails.2` … */
export function meetingsOf(plans: readonly JointPlan[], ctx: MeetingContext): Meet[] {
  const out: Meet[] = [];
  const counts = new Map<string, number>();
  const ids = [...ctx.bodies.keys()];
  for (const plan of plans) {
    const next = (): string => {
      const n = (counts.get(plan.id) ?? 0) + 1;
      counts.set(plan.id, n);
      return `${plan.id}.${n}`;
    };
    const parts = named(plan.parts, 'part', plan, ids, ctx);
    const into = named(plan.into, 'into', plan, ids, ctx);
    const leaning = plan.kind.leans
      ? undefined
      : [...parts, ...into].find((m) => m.named && ctx.bodies.get(m.id)?.place);
    if (leaning) {
      const able = ctx.kinds.filter((k) => k.leans).map((k) => k.words);
      ctx.findings.error(
        'joint-leans',
        plan.path,
        `"${leaning.id}" leans; a ${plan.kind.words} cannot be made in it.`,
        `Parts that lean can have: ${able.join(', ')}.`,
        [leaning.id],
      );
      continue;
    }
    const itself = plan.parts.length === 1 && plan.into.length === 1 && plan.parts[0] === plan.into[0];
    if (itself && parts.length === 1) {
      ctx.findings.error(
        'joint-into-itself',
        [...plan.path, 'into'],
        `"${plan.into[0]}" cannot be joined to itself.`,
        'Name the part that it goes into.',
        [plan.into[0] ?? ''],
      );
      continue;
    }
    if (plan.kind.stance === 'edge') {
      for (const p of parts) out.push(staves(plan, next(), ctx.bodies.get(p.id) as Body, ctx));
      continue;
    }
    if (plan.into.length === 0) {
      ctx.findings.error(
        'joint-needs-into',
        plan.path,
        `The joint "${plan.id}" does not say what it goes into.`,
        'Add "into": a part, or a list of parts.',
      );
      continue;
    }
    const able = (m: Match): boolean => plan.kind.leans === true || ctx.bodies.get(m.id)?.place === undefined;
    out.push(...pairs(plan, parts.filter(able), into.filter(able), next, ctx));
  }
  checkTwice(out, ctx);
  return out;
}

/** The same joint between the same two parts from two entries; fasteners may be many. */
function checkTwice(meets: readonly Meet[], ctx: MeetingContext): void {
  const first = new Map<string, Meet>();
  for (const m of meets) {
    if (m.kind.rank === 3) continue;
    const key = `${m.kind.kind}|${m.entering.id}|${m.receiving.id}`;
    const earlier = first.get(key);
    if (!earlier) first.set(key, m);
    else if (earlier.site.joint !== m.site.joint)
      ctx.findings.error(
        'joint-twice',
        m.path,
        `${m.kind.words}: "${earlier.site.joint}" joins "${m.entering.id}" and "${m.receiving.id}" already.`,
        'Keep one of the two.',
        [m.entering.id, m.receiving.id],
      );
  }
}

function named(
  patterns: readonly string[],
  field: string,
  plan: JointPlan,
  ids: readonly string[],
  ctx: MeetingContext,
): Match[] {
  const out = new Map<string, Match>();
  patterns.forEach((pattern, k) => {
    const found = matches(pattern, ids);
    const plain = !/[*{]/.test(pattern);
    const at = [...plan.path, field, ...(patterns.length > 1 ? [k] : [])];
    if (found.length > 0) checkRow(pattern, [...ids, ...ctx.failed], at, ctx);
    if (found.length === 0 && matches(pattern, [...ctx.failed]).length === 0)
      ctx.findings.error(
        'part-unknown',
        at,
        plain ? `There is no part "${pattern}".` : `No part is called like "${pattern}".`,
        nameHint(pattern.replace(/[{*].*$/, ''), ids),
      );
    for (const m of found) if (!out.has(m.id)) out.set(m.id, m);
  });
  return [...out.values()];
}

/** A range in a joint is a row named out loud: all of it must be there. */
function checkRow(pattern: string, ids: readonly string[], path: JsonPath, ctx: MeetingContext): void {
  const range = /^([^{*]*)\{(\d+)\.\.(\d+)\}([^{*]*)$/.exec(pattern);
  if (!range) return;
  const [, head, lo, hi, tail] = range;
  const missing: string[] = [];
  for (let i = Number(lo); i <= Number(hi) && missing.length < 3; i++)
    if (!ids.includes(`${head}${i}${tail}`)) missing.push(`"${head}${i}${tail}"`);
  if (missing.length > 0)
    ctx.findings.error(
      'part-unknown',
      path,
      `"${pattern}" names ${missing.join(', ')}, and there is no such part.`,
      'Shorten the range to the parts there are, or write * for all of them.',
    );
}

function pairs(
  plan: JointPlan,
  parts: readonly Match[],
  into: readonly Match[],
  next: () => string,
  ctx: MeetingContext,
): Meet[] {
  const out: Meet[] = [];
  const met = new Set<string>();
  let nearest: { readonly gap: number; readonly text: string } | undefined;
  const lonely: string[] = [];
  for (const p of parts) {
    const e = ctx.bodies.get(p.id) as Body;
    let best: { readonly gap: number; readonly text: string } | undefined;
    for (const q of into) {
      const r = ctx.bodies.get(q.id) as Body;
      if (p.id === q.id || !agree(p.letters, q.letters)) continue;
      const placed = sited(plan, e, r, next, ctx);
      if (placed) {
        met.add(p.id);
        out.push({
          ...placed,
          kind: plan.kind,
          spec: plan.spec,
          entering: e,
          receiving: r,
          path: plan.path,
        });
        continue;
      }
      const found = howApart(e, r, ctx);
      const text = `between "${p.id}" and "${q.id}" ${found.words}`;
      if (!best || found.gap < best.gap) best = { gap: found.gap, text };
    }
    if (!met.has(p.id)) {
      lonely.push(p.id);
      if (best && (!nearest || best.gap < nearest.gap)) nearest = best;
    }
  }
  // A part named out loud that the joint goes into must be met by one of the others.
  if (out.length > 0)
    for (const [k, q] of plan.into.entries()) {
      const r = ctx.bodies.get(q);
      if (!r || /[*{]/.test(q) || out.some((m) => m.receiving.id === q) || parts.some((p) => p.id === q)) continue;
      const gaps = parts.map((p) => {
        const e = ctx.bodies.get(p.id) as Body;
        return { id: p.id, ...howApart(e, r, ctx) };
      });
      const near = gaps.sort((a, b) => a.gap - b.gap)[0];
      const found = near ? `; between "${near.id}" and "${q}" ${near.words}` : '';
      ctx.findings.error(
        'joint-does-not-touch',
        [...plan.path, 'into', ...(plan.into.length > 1 ? [k] : [])],
        `${plan.kind.words}: nothing of this joint meets "${q}"${found}.`,
        'Close the gap, or take the part out of "into".',
        [q],
      );
    }
  const wanted = parts.some((p) => p.named)
    ? lonely.filter((id) => parts.some((p) => p.id === id && p.named))
    : out.length === 0
      ? lonely
      : [];
  if (wanted.length > 0 && into.length > 0)
    ctx.findings.error(
      'joint-does-not-touch',
      plan.path,
      `${plan.kind.words}: ${wanted.map((w) => `"${w}"`).join(', ')} ${wanted.length === 1 ? 'meets' : 'meet'} none of ${into.map((i) => `"${i.id}"`).join(', ')}; ${nearest?.text ?? 'they are not beside each other'}.`,
      `For this joint ${STANCE_WORDS[plan.kind.stance]}: close the gap, or take the part out of the joint.`,
      wanted,
    );
  return out;
}

/** The site of this joint between two parts, numbered when there is one. */
function sited(plan: JointPlan, e: Body, r: Body, next: () => string, ctx: MeetingContext): Placed | undefined {
  if (e.place || r.place) {
    const placed = leaningSite('', plan.id, e, r, ctx.world);
    return placed && { ...placed, site: { ...placed.site, id: next() } };
  }
  const at = stand(plan, e, r);
  return at && siteAt(next(), plan.id, e, r, at, ctx.world);
}
/** Why two parts do not meet, in words, and by how much. */
function howApart(e: Body, r: Body, ctx: MeetingContext): ReturnType<typeof apart> {
  const found = apart(e.box, r.box, (v) => ctx.ev.say(v));
  const leaning = e.place !== undefined || r.place !== undefined;
  return leaning && found.gap === 0
    ? { gap: 0, words: 'no flat side of the one lies on a flat side of the other' }
    : found;
}
/** How two parts stand for this kind of joint. */
function stand(plan: JointPlan, e: Body, r: Body): Meeting | undefined {
  if (plan.kind.stance !== 'cross') return touching(e.box, r.box);
  const from = plan.spec['from'];
  return crossing(e, r, (FACES as readonly unknown[]).includes(from) ? (from as Face) : undefined);
}

/** The joint between the staves of one part: the part stands for both, edge to edge across its width. */
function staves(plan: JointPlan, id: string, b: Body, ctx: MeetingContext): Meet {
  const plane = b.box[b.width][1];
  const made = siteAt(id, plan.id, b, b, { axis: b.width, sign: 1, plane }, ctx.world);
  return { ...made, kind: plan.kind, spec: plan.spec, entering: b, receiving: b, path: plan.path };
}
