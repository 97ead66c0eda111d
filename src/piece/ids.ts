import type { Definition } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { FACES } from '../geom/axis.js';
import type { Drafts } from './expand.js';
import type { Findings } from './fault.js';

/** Words that an expression reads in its own way; a measure may not be called like a face either, though a part may (`top.bottom`). */
const RESERVED: ReadonlySet<string> = new Set(['floor', 'min', 'max', 'round', 'mid']);
const FACE_WORDS: ReadonlySet<string> = new Set(FACES);

/** One name space: a part, a measure, a joint, a drawer and a group never share an id, and none is a word with a meaning of its own. */
export function checkIds(def: Definition, drafts: Drafts, measures: readonly string[], findings: Findings): void {
  const seen = new Map<string, string>();
  const take = (id: string, kind: string, path: JsonPath): void => {
    if (RESERVED.has(id) || (kind === 'measure' && FACE_WORDS.has(id)))
      findings.error(
        'id-reserved',
        path,
        `"${id}" cannot be the name of a ${kind}: it has a meaning of its own.`,
        'Call it something else.',
      );
    const other = seen.get(id);
    if (other !== undefined && other !== kind)
      findings.error(
        'id-twice',
        path,
        `"${id}" is a ${kind} and also a ${other}.`,
        'All names share one space: call one of them something else.',
      );
    seen.set(id, kind);
  };
  for (const d of drafts.parts.values()) take(d.id, 'part', d.path);
  for (const m of measures) take(m, 'measure', ['measures', m in (def.measures ?? {}) ? m : m.replace(/_\d+$/, '')]);
  for (const id of Object.keys(def.joints ?? {})) take(id, 'joint', ['joints', id]);
  for (const id of Object.keys(def.drawers ?? {})) take(id, 'drawer', ['drawers', id]);
  for (const id of Object.keys(def.groups ?? {})) take(id, 'group', ['groups', id]);
}
