import { z } from 'zod';
import { width } from '../geom/box.js';
import type { Length } from '../lengths/length.js';
import { nm } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, given } from '../value/sized.js';
import { inchBox } from './example.js';
import { count, countField, lengthField, sized } from './fields.js';
import type { JointKind } from './joint.js';
import { either, fig, finding, INTO, resists, uncut } from './place.js';

interface Edge {
  /** A number of staves, not a length. */
  readonly staves: Sized;
  readonly widest: Sized;
}

const spec = z.strictObject({
  staves: countField('Number of staves', 4),
  widest: lengthField('Staves are no wider than this', '5'),
});

/**
 * A part glued up from staves, edge to edge, grain all one way. Nothing is cut in the part itself and nothing grows. The site's
 * two members are the part itself; axis 0 runs across its width.
 */
export const edge: JointKind<unknown, Edge> = {
  kind: 'edge',
  words: 'edge joint',
  spec,
  lengths: ['widest'],
  stance: 'edge',
  rank: 1,
  example: {
    spec: {},
    site: {
      entering: { box: inchBox([-19, 0], [0, 0.875], [0, 41.125]), grain: 2 },
      receiving: { box: inchBox([-19, 0], [0, 0.875], [0, 41.125]), grain: 2 },
    },
  },
  resolve(spec, site) {
    const across = nm(width(site.entering.box[INTO]));
    const widest = sized(spec, 'widest', () =>
      byRule(either(site.world, 5, 125), 'staves at most 5 in (125 mm) wide', 'our default'),
    );
    const asked = count(spec, 'staves');
    const n = asked ?? Math.max(1, Math.ceil(across / Math.max(1, widest.value) - 1e-9));
    const staves = asked
      ? given(asked as Length, 'number of staves')
      : byRule(n as Length, 'number of staves: width over the widest stave, rounded up', 'our default', [
          { name: 'width', value: across },
          { name: 'widest stave', value: widest.value },
        ]);
    const alongWidth = site.entering.grain === INTO;
    const findings = [
      ...(site.entering.material === 'sheet'
        ? [
            finding(
              site,
              'error',
              'staves-sheet',
              `"${site.entering.part}" is sheet goods: it is not glued up from staves.`,
            ),
          ]
        : []),
      ...(alongWidth
        ? [
            finding(
              site,
              'error',
              'staves-grain',
              `The grain of "${site.entering.part}" runs across its width: staves would meet end to end.`,
            ),
          ]
        : []),
      ...(asked && across / asked > either(site.world, 8, 200)
        ? [
            finding(
              site,
              'warning',
              'staves-wide',
              `Staves of ${fig(site, across / asked)} are wide: they cup and are hard to find.`,
              { field: 'staves' },
            ),
          ]
        : []),
    ];
    return { r: { staves, widest }, findings };
  },
  give(r) {
    return uncut(
      {
        insertion: ['right'],
        holds: 'no',
        glue: 'long-long',
        resists: resists(3, 3, 3, 3),
        freedom: 'fixed',
        shows: false,
      },
      { staves: r.staves, 'widest stave': r.widest },
    );
  },
};
