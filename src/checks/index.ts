import type { Outcome } from '../diag/diagnostic.js';
import type { Table } from '../making/table.js';
import type { Season } from '../wood/moisture.js';
import type { Check, CheckInput, Diagram } from './check.js';
import { cautionsOf, refusal, type Caution } from './cautions.js';
import { delivery } from './delivery.js';
import { findingsOf, staleAccepted, stampOf, withAccepted, type Judged } from './fold.js';
import { fixings } from './fixings.js';
import { machines } from './machines.js';
import { movement } from './movement.js';
import { sag } from './sag.js';
import { stability } from './stability.js';
import { thickness } from './thickness.js';
import { weight } from './weight.js';

/** The one list of checks, in the order of the checks sheet. */
export const CHECKS: readonly Check[] = [movement, fixings, thickness, sag, weight, stability, machines, delivery];

export interface Checked {
  readonly checks: readonly {
    readonly key: string;
    readonly title: string;
    readonly judged: readonly Judged[];
    readonly tables: readonly Table[];
    readonly diagrams: readonly Diagram[];
  }[];
  readonly cautions: readonly Caution[];
  readonly season: Season;
  /** What a packet that fails is stamped with. */
  readonly stamp?: string;
}

/** The stage: every check of the list over one piece. Findings are what does not pass. */
export function runChecks(input: CheckInput, list: readonly Check[] = CHECKS): Outcome<Checked> {
  const { piece } = input;
  const checks = list.map((check) => {
    const { judgements, tables = [], diagrams = [] } = check.run(input);
    return { key: check.key, title: check.title, judged: withAccepted(judgements, piece), tables, diagrams };
  });
  const refused = withAccepted(refusal(piece), { ...piece, accepted: [] });
  const all = [...refused, ...checks.flatMap((c) => c.judged)];
  const stamp = stampOf(all, piece.units);
  const value = { checks, cautions: cautionsOf(input, all), season: input.season, ...(stamp ? { stamp } : {}) };
  // Of some checks alone nobody can say what they leave unfound.
  const stale = list === CHECKS ? staleAccepted(all, piece) : [];
  return { value, findings: [...findingsOf(all, piece.units), ...stale] };
}
