import type { Diagnostic } from '../diag/diagnostic.js';
import type { Face } from '../geom/axis.js';
import { faceOf } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import type { Sized } from '../value/sized.js';
import { maybe } from './fields.js';
import type { Given, Resolved, Site, Traits } from './joint.js';
import { endOf, inwards, resists, sideOf, wall, WIDE } from './place.js';

/** What grooves and rabbets have alike: a trench along the receiving part in which the edge of a panel floats. */
export interface Trench {
  readonly depth: Sized;
  readonly slack: Sized;
  readonly run: Span;
  readonly stop?: Sized;
}

/** Where it runs: from the end at which it comes in, to its stop, else at each end as far as the kind says. */
export function runOfTrench(spec: Resolved, site: Site, reach: (face: Face) => number): Span {
  const host = site.receiving.box[WIDE];
  const from = sideOf(spec, 'from', site);
  const stop = maybe(spec, 'stop');
  const end = (face: Face): number => {
    if (face === from) return endOf(host, face);
    return stop && (from !== undefined || face === 'bottom') ? inwards(host, face, stop.value) : reach(face);
  };
  return [end(faceOf(WIDE, -1)), end(faceOf(WIDE, 1))];
}

/** Over two thirds of the wood is refused, over half of it told (common practice). */
export function depthFound(r: Trench, site: Site, none: () => Diagnostic, deep: () => Diagnostic): Diagnostic[] {
  const T = wall(site);
  if (r.depth.value <= 0 || r.depth.value > (2 / 3) * T) return [none()];
  return r.depth.value > T / 2 ? [deep()] : [];
}

/** What the panel gives: it grows into the trench, and floats. `insertion`: the way home. */
export const floating = (
  r: Trench,
  grows: Sized,
  site: Site,
  insertion: Face,
  sizes: Given['sizes'],
): Omit<Given, 'receiving'> => ({
  growth: { entering: { right: grows.value } },
  entering: [],
  bodies: [],
  traits: floats(site, insertion),
  findings: [],
  sizes: { ...sizes, 'left free': r.slack, 'panel enters': grows, ...(r.stop ? { stop: r.stop } : {}) },
});
const floats = (site: Site, insertion: Face): Traits => ({
  insertion: [insertion],
  holds: 'aligns',
  glue: 'none',
  resists: resists(0, 1, site.entering.material === 'solid' ? 1 : 2, 1),
  freedom: 'floats',
  shows: false,
});
