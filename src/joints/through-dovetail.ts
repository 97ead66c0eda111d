import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import { opposite } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { width } from '../geom/box.js';
import { nm, snap, snapDown } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import type { Tail, TailRow } from './corner.js';
import { cornerFault, grooveFaults, openSide, socketCuts, tailCuts } from './corner.js';
import { entering, inchBox } from './example.js';
import { count, countField, faceField, lengthField, sized } from './fields.js';
import type { Given, JointKind, Resolved, Site } from './joint.js';
import { breadth, either, fig, finding, offAxis, resists, THICK, wall } from './place.js';

interface ThroughDovetail extends TailRow {
  readonly sizes: Readonly<Record<string, Sized>>;
}

const spec = z.strictObject({
  tails: countField('Number of tails', 4),
  slope: z
    .number()
    .min(3)
    .max(12)
    .optional()
    .meta({ description: 'Slope of the tails, 1 in this number', examples: [8] }),
  space: lengthField('Width of a whole space between two tails at the base line', '3/4'),
  from: faceField('The side of the receiving part at which the sockets are open and the tails go in', 'left'),
});

/** Tails of about 1 3/4 in (45 mm) with their space between them, at least two. */
const tailsRule = (site: Site): number => Math.max(2, Math.round(breadth(site) / either(site.world, 1.75, 45)));

/**
 * Equal divisions, half a space at each edge (Noyes, Handwork in Wood, no. 48); tails as wide as the spaces at the base line
 * are strongest (same). What the step leaves over goes to the outer half spaces.
 */
function layOut(spec: Resolved, site: Site): Pick<ThroughDovetail, 'tails' | 'sizes'> {
  const { step } = site.world;
  const [w, T] = [breadth(site), wall(site)];
  const n = count(spec, 'tails') ?? tailsRule(site);
  const pitch = derived(snapDown(w / n, step), `width / ${n} tails, half a space at each edge`, [
    { name: 'width', value: w },
  ]);
  const space = sized(spec, 'space', () =>
    byRule(
      snap(pitch.value / 2, step),
      'space as wide as the tail at the base line',
      'Noyes, Handwork in Wood, no. 48',
      [{ name: 'pitch', value: pitch.value }],
    ),
  );
  const slope = count(spec, 'slope') ?? 8;
  const splay = byRule(
    snap(T / slope, step),
    `slope 1:${slope}`,
    'Fairham, Woodwork Joints: 1:8, never steeper than 1:6',
    [{ name: 'receiving thickness', value: T }],
  );
  const neck = nm(pitch.value - space.value);
  const first = (w - (n - 1) * pitch.value - neck) / 2;
  const tails = Array.from({ length: n }, (_, i): Tail => {
    const lo = snap(first, step) + i * pitch.value;
    const atBase: Span = [lo, lo + neck];
    return { atBase, atEnd: [atBase[0] - splay.value, atBase[1] + splay.value] };
  });
  const atBase = derived(neck, 'pitch less space', [{ name: 'pitch', value: pitch.value }]);
  const atEnd = derived(nm(neck + 2 * splay.value), 'tail at its base line + twice the splay');
  return { tails, sizes: { pitch, space, 'tail at its base line': atBase, 'tail at its end': atEnd, splay } };
}

function judge(r: ThroughDovetail, site: Site, slope: number): Diagnostic[] {
  const out: Diagnostic[] = [];
  const [first, second] = r.tails;
  const last = r.tails.at(-1);
  if (
    !first ||
    !last ||
    first.atBase[1] <= first.atBase[0] ||
    first.atEnd[0] <= 0 ||
    last.atEnd[1] >= breadth(site) ||
    (second && second.atEnd[0] <= first.atEnd[1])
  )
    return [
      finding(site, 'error', 'no-pins', 'The tails leave no pins between them.', {
        field: 'tails',
        hint: 'Fewer tails, a wider space or a gentler slope.',
      }),
    ];
  const half = first.atBase[0];
  const least = either(site.world, 1 / 4, 6);
  if (half < Math.min(least, wall(site) / 3))
    out.push(
      finding(
        site,
        'warning',
        'half-pin-thin',
        `The half pins are ${fig(site, half)} at the base line; ${fig(site, least)} is usual.`,
        { field: 'tails' },
      ),
    );
  if (slope < 6)
    out.push(
      finding(
        site,
        'warning',
        'slope-steep',
        `A slope of 1:${slope} is steeper than 1:6: the tips of the tails are weak.`,
        { field: 'slope' },
      ),
    );
  const tail = width(first.atBase);
  const space = second ? second.atBase[0] - first.atBase[1] : 2 * half;
  if (tail > 4 * space)
    out.push(
      finding(
        site,
        'warning',
        'tails-wide',
        `The tails are more than four times as wide as the spaces (${fig(site, tail)} to ${fig(site, space)}).`,
        { field: 'space' },
      ),
    );
  return out;
}

/**
 * How the boxes stand: the entering (tail) board's shoulder box ends at the near face of the receiving (pin) board, flush
 * with its end; it grows by the whole receiving thickness. The pin board keeps its size; its pins are what the sockets leave.
 */
export const throughDovetail: JointKind<unknown, ThroughDovetail> = {
  kind: 'through-dovetail',
  words: 'through dovetail',
  spec,
  lengths: ['space'],
  stance: 'corner',
  rank: 2,
  example: {
    spec: { tails: 4 },
    site: { entering: entering(12, 0.75, 6), receiving: { box: inchBox([0, 0.75], [0, 20], [0, 6]), grain: 1 } },
  },
  resolve(spec, site) {
    const side = offAxis(spec, 'from', THICK, site);
    const from = openSide(side ? {} : spec, site);
    const r: ThroughDovetail = { from, length: wall(site), scribe: true, ...layOut(spec, site) };
    const found = [side, cornerFault(site, from), ...judge(r, site, count(spec, 'slope') ?? 8)];
    return { r, findings: found.filter((f) => f !== undefined) };
  },
  give,
};

function give(r: ThroughDovetail, site: Site): Given {
  return {
    growth: { entering: { right: r.length } },
    entering: tailCuts(r, site),
    receiving: socketCuts(r, site),
    bodies: [],
    traits: {
      insertion: [opposite(r.from)],
      holds: 'holds',
      glue: 'long-crossed',
      resists: resists(3, 3, 3, 3),
      freedom: 'fixed',
      shows: true,
    },
    findings: grooveFaults(r, site),
    sizes: r.sizes,
  };
}
