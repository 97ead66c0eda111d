import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import { width } from '../geom/box.js';
import { nm } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { derived } from '../value/sized.js';
import { inchBox } from './example.js';
import { flag, flagField } from './fields.js';
import type { JointKind, Member, Site, Traits } from './joint.js';
import { either, fig, finding, INTO, resists, uncut, WIDE } from './place.js';

type Faces = 'end-end' | 'end-long' | 'long-long' | 'long-crossed';
interface Butt {
  readonly faces: Faces;
  readonly glued: boolean;
  readonly sizes: Readonly<Record<string, Sized>>;
}

const spec = z.strictObject({
  glue: flagField('Glue the contact; without it, only where long grain lies along long grain', true),
});

const end = (m: Member): boolean => m.grain === INTO && m.material === 'solid';
/** What meets what: end grain, or long grain running the same way or crossing (sheet goods count as running along). */
function facesOf({ entering: e, receiving: r }: Site): Faces {
  if (end(e) && end(r)) return 'end-end';
  if (end(e) || end(r)) return 'end-long';
  const both = e.material === 'solid' && r.material === 'solid';
  return both && e.grain !== undefined && r.grain !== undefined && e.grain !== r.grain ? 'long-crossed' : 'long-long';
}
/** Crossed, one of the two moves along either side of the contact while the other does not: the longer side counts. */
const crossed = (site: Site): number => Math.max(width(site.contact.thick), width(site.contact.wide));

function judge(r: Butt, site: Site): Diagnostic[] {
  const most = either(site.world, 4, 100);
  if (!r.glued) return [];
  if (r.faces === 'end-end' || r.faces === 'end-long')
    return [
      finding(site, 'warning', 'glue-end-grain', 'Glue on end grain holds next to nothing.', {
        field: 'glue',
        hint: 'Screw it, or use a joint that goes into the wood.',
      }),
    ];
  if (r.faces === 'long-crossed' && crossed(site) > most)
    return [
      finding(
        site,
        'warning',
        'glue-crossed',
        `Glued across the grain over ${fig(site, crossed(site))}: it will split or come loose.`,
        {
          field: 'glue',
          hint: `Glue no more than ${fig(site, most)} of it, and screw the rest in slots.`,
        },
      ),
    ];
  return [];
}

/** One part lies plainly against another: cleats, guides, packers. Nothing is cut, nothing grows; glued or dry. */
export const butt: JointKind<unknown, Butt> = {
  kind: 'butt',
  words: 'plain joint',
  spec,
  lengths: [],
  stance: 'face',
  leans: true,
  rank: 3,
  example: {
    spec: {},
    site: {
      entering: { box: inchBox([-0.625, 0], [0, 1.75], [0, 11.5]), grain: WIDE },
      receiving: { box: inchBox([0, 0.75], [0, 3], [0, 11.5]), grain: WIDE },
    },
  },
  resolve(spec, site) {
    const faces = facesOf(site);
    const { thick, wide } = site.contact;
    const r: Butt = {
      faces,
      glued: flag(spec, 'glue') ?? faces === 'long-long',
      sizes: {
        'contact across': derived(nm(Math.min(width(thick), width(wide))), 'what both parts share'),
        'contact along': derived(nm(Math.max(width(thick), width(wide))), 'what both parts share'),
      },
    };
    return { r, findings: judge(r, site) };
  },
  give(r) {
    const strong = r.glued && r.faces.startsWith('long');
    const glue: Traits['glue'] = r.glued ? r.faces : 'none';
    return uncut(
      {
        insertion: ['right'],
        holds: 'no',
        glue,
        resists: strong ? resists(3, 3, 2, 2) : resists(0, 0, 0, 0),
        freedom: r.glued ? 'fixed' : 'slides',
        shows: false,
      },
      r.sizes,
    );
  },
};
