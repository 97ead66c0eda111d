import type { Face } from '../geom/axis.js';
import { faceSign, opposite } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { meet, span } from '../geom/box.js';
import type { Sized } from '../value/sized.js';
import type { Resolved, Site } from './joint.js';
import { maybe } from './fields.js';
import { endOf, inwards, sideOf, WIDE } from './place.js';

/** A trench across the receiving part that is entered from one edge: where it runs and what of the entering part fits. */
export interface Run {
  /** Site face at which it comes in. */
  readonly from: Face;
  /** Distance of its blind end from the other edge of the receiving part; absent when it is open there. */
  readonly stop?: Sized;
  readonly run: Span;
  /** What the tongue or tail keeps along axis 2. */
  readonly keep: Span;
  /** True where it comes out at both edges. */
  readonly through: boolean;
  /** How far the tail must slide from the edge to its seat. */
  readonly travel: number;
}

/**
 * A trench runs in from `from` (when not given: from the edge that the entering part reaches, the high one before the low
 * one) and ends at `stop` from the other edge, or else where the entering part ends. `slack` is left between the blind
 * end and a part that is notched for it.
 */
export function runOf(spec: Resolved, site: Site, slack = 0): Run {
  const own = site.entering.box[WIDE];
  const host = site.receiving.box[WIDE];
  const from = sideOf(spec, 'from', site) ?? (own[0] <= host[0] && own[1] < host[1] ? 'bottom' : 'top');
  const far = opposite(from);
  const stop = maybe(spec, 'stop');
  const seatEnd = endOf(own, far);
  const reaches = faceSign(far) * (seatEnd - endOf(host, far)) >= 0;
  const blind = stop ? inwards(host, far, stop.value) : reaches ? endOf(host, far) : seatEnd;
  const run = span(endOf(host, from), blind);
  const limit = stop && faceSign(far) * (seatEnd - blind) > 0 ? inwards(run, far, slack) : blind;
  const keep = meet(own, span(endOf(host, from), limit)) ?? [own[0], own[0]];
  return {
    from,
    ...(stop ? { stop } : {}),
    run,
    keep,
    through: !stop && reaches,
    travel: Math.max(0, faceSign(from) * (endOf(host, from) - endOf(own, from))),
  };
}

/**
 * The corner that a stopped part loses: all of it from its far edge to `keep`. Undefined when it ends before the stop. Where the
 * receiving part merely ends (a divider over two rails) nothing is taken: the tongue runs on between them.
 */
export function cornerBeyond(own: Span, run: Run): Span | undefined {
  if (!run.stop) return undefined;
  const low = faceSign(run.from) > 0;
  const lost: Span = low ? [own[0], run.keep[0]] : [run.keep[1], own[1]];
  return lost[1] > lost[0] ? lost : undefined;
}
