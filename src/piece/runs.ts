import type { Definition } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Axis } from '../geom/axis.js';
import { middle } from '../geom/box.js';
import type { Body } from './body.js';
import type { Findings } from './fault.js';
import { matches } from './patterns.js';
import type { Run } from './piece.js';

type Order = NonNullable<Run['order']>;
/** Which way parts follow one another: first along an axis of the piece, then from the top down, then by id. */
const ALONG: Readonly<Record<Order, readonly [Axis, 1 | -1]>> = {
  'left to right': [0, 1],
  'right to left': [0, -1],
  'front to back': [1, 1],
  'bottom to top': [2, 1],
  'top to bottom': [2, -1],
};

/**
 * Runs of grain as data for the layout of boards: each a list of parts in the order in which they lie end to end on their
 * board. A part that is not there, in two places, of another stock or without grain is an error.
 */
export function runsOf(def: Definition, bodies: ReadonlyMap<string, Body>, findings: Findings): Run[] {
  const seen = new Map<string, string>();
  return Object.entries(def.runs ?? {}).map(([id, run]) => {
    const path: JsonPath = ['runs', id];
    const parts = run.parts.flatMap((pattern, k) =>
      membersOf(pattern, [...path, 'parts', k], run.order, bodies, findings),
    );
    const order = run.order === undefined ? {} : { order: run.order };
    const out: Run = {
      id,
      parts: parts.map((b) => b.id),
      ...order,
      ...(run.from === undefined ? {} : { from: run.from }),
    };
    judge(out, parts, path, seen, findings);
    return out;
  });
}

function membersOf(
  pattern: string,
  path: JsonPath,
  order: Order | undefined,
  bodies: ReadonlyMap<string, Body>,
  findings: Findings,
): Body[] {
  const ids = [...bodies.keys()];
  const found = matches(pattern, ids).flatMap((m) => bodies.get(m.id) ?? []);
  if (found.length === 0)
    findings.error(
      'part-unknown',
      path,
      `No part is called like "${pattern}".`,
      nameHint(pattern.replace(/[{*].*$/, ''), ids),
    );
  if (order === undefined) return found;
  const [axis, sign] = ALONG[order];
  const at = (b: Body, a: Axis): number => middle(b.box[a]);
  return found.sort(
    (a, b) =>
      sign * (at(a, axis) - at(b, axis)) || at(b, 2) - at(a, 2) || at(a, 0) - at(b, 0) || (a.id < b.id ? -1 : 1),
  );
}

function judge(run: Run, parts: readonly Body[], path: JsonPath, seen: Map<string, string>, findings: Findings): void {
  const [first] = parts;
  for (const part of parts) {
    const earlier = seen.get(part.id);
    if (earlier !== undefined) {
      const where = earlier === run.id ? `twice in the run "${run.id}"` : `in the runs "${earlier}" and "${run.id}"`;
      const hint = 'A part is cut from one place of one board: take it out of one of them.';
      findings.error('run-twice', path, `"${part.id}" is ${where}.`, hint, [part.id]);
    }
    seen.set(part.id, run.id);
    if (part.grain === undefined)
      findings.error(
        'run-no-grain',
        path,
        `"${part.id}" has no grain that could run on.`,
        'Take it out of the run, or give its stock a grain.',
        [part.id],
      );
    if (first && part.stock.id !== first.stock.id)
      findings.error(
        'run-mixed-stock',
        path,
        `The run "${run.id}" begins with "${first.id}" of "${first.stock.id}"; "${part.id}" is of "${part.stock.id}".`,
        'Parts of one run come from one stock: make them of the same, or two runs of them.',
        [first.id, part.id],
      );
  }
}
