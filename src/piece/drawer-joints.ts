import type { ComponentJoint } from '../components/index.js';
import type { Definition } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import { isMade } from './expand.js';
import type { JointPlan, MeetingContext } from './meetings.js';
import { fieldsOf, kindOf } from './meetings.js';
import { matches } from './patterns.js';

/**
 * The joints of one component as plans. An entry such as `joints["short_1.corner_back_left"]` or `["short_*.corner_*"]` says
 * otherwise: fields over those that the component gives, or another kind with fields of its own; of several the last counts.
 */
export function madePlans(
  joints: readonly ComponentJoint[],
  path: JsonPath,
  def: Definition,
  ctx: MeetingContext,
): JointPlan[] {
  return joints.flatMap((j) => {
    const plan = { id: j.id, parts: [j.part], into: j.into };
    const key = Object.keys(def.joints ?? {})
      .filter((k) => isMade(k) && matches(k, [j.id]).length > 0)
      .at(-1);
    const spec = key === undefined ? undefined : def.joints?.[key];
    if (key === undefined || !spec) {
      const kind = kindOf(j.kind, [...path, 'box', 'corner'], ctx);
      return kind ? [{ ...plan, kind, spec: j.fields, path }] : [];
    }
    const at = ['joints', key];
    const kind = kindOf(spec.kind, [...at, 'kind'], ctx);
    const fields = kind && fieldsOf(kind, spec, at, ctx);
    if (!kind || !fields) return [];
    return [{ ...plan, kind, spec: kind.kind === j.kind ? { ...j.fields, ...fields } : fields, path: at }];
  });
}

/** Entries about joints that no drawer makes. */
export function checkMade(def: Definition, made: readonly string[], ctx: MeetingContext): void {
  for (const key of Object.keys(def.joints ?? {}).filter(isMade))
    if (matches(key, made).length === 0)
      ctx.findings.error('joint-not-made', ['joints', key], `No drawer makes a joint "${key}".`, nameHint(key, made));
}
