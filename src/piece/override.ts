import { nameHint } from '../diag/didYouMean.js';
import type { Definition, PartSpec } from '../definition/definition.js';
import type { Body } from './body.js';
import { isMade } from './expand.js';
import type { Findings } from './fault.js';

/** What a definition may say about a part that a component makes. */
const FIELDS = ['name', 'mark', 'status', 'notes', 'faces'] as const;

/** Applies entries such as `parts["short_1.front"]` to the parts that components made. */
export function override(def: Definition, bodies: Map<string, Body>, findings: Findings): void {
  for (const [id, spec] of Object.entries(def.parts)) {
    if (!isMade(id)) continue;
    const body = bodies.get(id);
    if (!body) {
      const made = [...bodies.keys()].filter(isMade);
      findings.error('part-unknown', ['parts', id], `No drawer makes a part "${id}".`, nameHint(id, made));
      continue;
    }
    const wrong = Object.keys(spec).find((k) => !(FIELDS as readonly string[]).includes(k));
    if (wrong !== undefined)
      findings.error(
        'override-field',
        ['parts', id, wrong],
        `"${id}" is made by its drawer, which decides its "${wrong}".`,
        `Here you can give ${FIELDS.join(', ')}; sizes belong to the drawer.`,
        [id],
      );
    bodies.set(id, { ...body, path: ['parts', id], own: { ...body.own, ...saidOf(spec) } });
  }
}

function saidOf(s: PartSpec): Partial<Body['own']> {
  return {
    ...(s.name === undefined ? {} : { name: s.name }),
    ...(s.mark === undefined ? {} : { mark: s.mark }),
    ...(s.status === undefined ? {} : { status: s.status, statusWhy: 'as the definition says' }),
    ...(s.notes === undefined ? {} : { notes: s.notes }),
    ...(s.faces === undefined ? {} : { faces: s.faces }),
  };
}
