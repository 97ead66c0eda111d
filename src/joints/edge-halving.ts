import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Face } from '../geom/axis.js';
import { faceSign, opposite } from '../geom/axis.js';
import { meet, span, width } from '../geom/box.js';
import { nm, snap } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import { inchBox } from './example.js';
import { faceField, lengthField, sized } from './fields.js';
import type { Given, JointKind, Site } from './joint.js';
import { common, endOf, fig, finding, INTO, inwards, offAxis, resists, sideOf, THICK, WIDE } from './place.js';

interface Halving {
  /** Edge of the entering part in which its slot is cut: it moves this way to get home. */
  readonly slot: Face;
  /** Where the two slots meet, along axis 0. */
  readonly middle: number;
  readonly entering: Sized;
  readonly receiving: Sized;
}

const spec = z.strictObject({
  slot: faceField(
    'The edge of the entering part in which its slot is cut; the other part is slotted in the opposite edge',
    'front',
  ),
  depth: lengthField('Depth of the slot in the entering part; the other part gets the rest of the overlap', '1 1/2'),
});

function judge(r: Halving, site: Site): Diagnostic[] {
  const out: Diagnostic[] = [];
  const [e, h] = [site.entering.box, site.receiving.box];
  if (h[WIDE][0] <= e[WIDE][0] || h[WIDE][1] >= e[WIDE][1] || e[THICK][0] <= h[THICK][0] || e[THICK][1] >= h[THICK][1])
    out.push(
      finding(site, 'error', 'no-crossing', 'The parts do not cross: one of them ends in the other.', {
        hint: 'Use a dado or a tenon where a part ends.',
      }),
    );
  for (const [name, depth, box, field] of [
    ['entering', r.entering.value, e, 'depth'],
    ['receiving', r.receiving.value, h, 'depth'],
  ] as const) {
    const all = width(box[INTO]);
    if (depth <= 0 || depth >= all)
      out.push(
        finding(
          site,
          'error',
          'slot-depth',
          `The slot in the ${name} part would be ${fig(site, depth)} deep in ${fig(site, all)}.`,
          { field },
        ),
      );
    else if (depth > (2 / 3) * all)
      out.push(
        finding(
          site,
          'warning',
          'slot-deep',
          `The slot in the ${name} part takes ${fig(site, depth)} of ${fig(site, all)}: little is left to carry.`,
          { field },
        ),
      );
  }
  return out;
}

/**
 * Two parts on edge, slotted half into each other. How the boxes stand: they overlap; axis 0 is the direction in which both
 * stand on edge. The depths add up to the overlap; each slot is as wide as the other part is thick.
 */
export const edgeHalving: JointKind<unknown, Halving> = {
  kind: 'edge-halving',
  words: 'edge halving',
  spec,
  lengths: ['depth'],
  stance: 'cross',
  rank: 2,
  example: {
    spec: {},
    site: {
      entering: { box: inchBox([0, 3], [0, 0.75], [0, 30]), grain: 2 },
      receiving: { box: inchBox([0, 3], [-12, 12.75], [14, 14.75]), grain: 1 },
    },
  },
  resolve(spec, site) {
    const side = offAxis(spec, 'slot', INTO, site);
    const slot = (side ? undefined : sideOf(spec, 'slot', site)) ?? 'right';
    const [e, h] = [site.entering.box[INTO], site.receiving.box[INTO]];
    const both = meet(e, h) ?? [0, 0];
    const inputs = [{ name: 'overlap', value: nm(width(both)) }];
    const own = sized(spec, 'depth', () => {
      const half = inwards(both, slot, snap(width(both) / 2, site.world.step));
      return byRule(nm(Math.abs(endOf(e, slot) - half)), 'half of the overlap', 'common practice', inputs);
    });
    const middle = inwards(e, slot, own.value);
    const rest = faceSign(slot) * (middle - endOf(h, opposite(slot)));
    const r: Halving = { slot, middle, entering: own, receiving: derived(nm(rest), 'the rest of the overlap', inputs) };
    return { r, findings: [...(side ? [side] : []), ...judge(r, site)] };
  },
  give,
};

function give(r: Halving, site: Site): Given {
  const [e, h] = [site.entering.box, site.receiving.box];
  const far = opposite(r.slot);
  const note = { notes: ['As wide as the other part is thick, after both are finished to thickness'] };
  return {
    growth: { entering: {} },
    entering: [
      {
        ...common(site, 1, 'entering', 2),
        shape: 'box',
        as: 'slot',
        face: r.slot,
        at: [span(endOf(e[INTO], r.slot), r.middle), e[THICK], h[WIDE]],
        ...note,
      },
    ],
    receiving: [
      {
        ...common(site, 1, 'receiving', 2),
        shape: 'box',
        as: 'slot',
        face: far,
        at: [span(endOf(h[INTO], far), r.middle), e[THICK], h[WIDE]],
        ...note,
      },
    ],
    bodies: [],
    traits: {
      insertion: [r.slot],
      holds: 'aligns',
      glue: 'end-long',
      resists: resists(1, 1, 1, 1),
      freedom: 'fixed',
      shows: true,
    },
    findings: [],
    sizes: { 'slot in the entering part': r.entering, 'slot in the receiving part': r.receiving },
  };
}
