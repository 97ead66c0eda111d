import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import { opposite } from '../geom/axis.js';
import { width } from '../geom/box.js';
import { nm, snapUp } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import type { BoxCut, Glue } from '../words/cut.js';
import { entering, inchBox, inchSized } from './example.js';
import { faceField, lengthField, maybe, sized } from './fields.js';
import type { Given, JointKind, Site } from './joint.js';
import {
  breadth,
  common,
  either,
  fig,
  finding,
  gaugeDown,
  INTO,
  offAxis,
  pieceWord,
  resists,
  runsInto,
  sideOf,
  THICK,
  thickness,
  trench,
  wall,
  WIDE,
} from './place.js';
import type { Run } from './run.js';
import { cornerBeyond, runOf } from './run.js';

interface Dado extends Run {
  readonly depth: Sized;
  readonly width: Sized;
  /** Glued over this much from the end away from `from`; all of it without. */
  readonly glued?: Sized;
  /** The edge was named: the part slides in from there, and need not come in endways. */
  readonly slides: boolean;
}

const spec = z.strictObject({
  from: faceField('The edge of the receiving part from which the dado runs in', 'back'),
  stop: lengthField('Where it stops, measured from the other edge; without it, where the entering part ends', '3/8'),
  depth: lengthField('Depth of the dado', '1/4'),
  width: lengthField('Width of the dado, when it is not to be the thickness of the entering part', '3/4'),
  glued: lengthField(
    'Glued over this much from its far end only, the rest dry, so that a part can move across the grain',
    '2',
  ),
});

function judge(r: Dado, site: Site): Diagnostic[] {
  const T = wall(site);
  const out: Diagnostic[] = [];
  if (r.depth.value <= 0 || r.depth.value > T / 2)
    out.push(
      finding(
        site,
        'error',
        'dado-too-deep',
        `The dado is ${fig(site, r.depth.value)} deep in wood ${fig(site, T)} thick.`,
        { field: 'depth', hint: 'At most half of it.' },
      ),
    );
  if (r.width.value < thickness(site))
    out.push(
      finding(
        site,
        'error',
        'dado-too-narrow',
        `The dado is ${fig(site, r.width.value)} wide, the part ${fig(site, thickness(site))} thick.`,
        { field: 'width' },
      ),
    );
  if (width(r.keep) < either(site.world, 1 / 2, 12))
    out.push(
      finding(
        site,
        'error',
        'no-tongue-left',
        `Only ${fig(site, width(r.keep))} of the part would stand in the dado.`,
        { field: 'stop', hint: 'A shorter stop.' },
      ),
    );
  return out;
}

/** Housing across the grain, through or stopped; a part that reaches past the stop is notched there, 1/32 in (1 mm) clear. */
export const dado: JointKind<unknown, Dado> = {
  kind: 'dado',
  words: 'dado',
  spec,
  lengths: ['stop', 'depth', 'width', 'glued'],
  stance: 'butt',
  rank: 1,
  example: {
    spec: { from: 'top', stop: inchSized('3/8', 0.375) },
    site: { entering: entering(30, 0.75, 11), receiving: { box: inchBox([0, 0.75], [-20, 20], [0, 11]), grain: 1 } },
  },
  resolve(spec, site) {
    const side = offAxis(spec, 'from', WIDE, site);
    const T = wall(site);
    const depth = sized(spec, 'depth', () =>
      byRule(gaugeDown(site.world, T / 3), 'one third of the receiving thickness, rounded down', 'from memory', [
        { name: 'receiving thickness', value: T },
      ]),
    );
    const t = site.entering.measured ?? thickness(site);
    const fit = sized(spec, 'width', () =>
      derived(snapUp(t, site.world.step), 'thickness of the part that goes in, as measured', [
        { name: 'thickness', value: nm(t) },
      ]),
    );
    const glued = maybe(spec, 'glued');
    const r: Dado = {
      ...(glued ? { glued } : {}),
      ...runOf(side ? {} : spec, site, either(site.world, 1 / 32, 1)),
      depth,
      width: fit,
      slides: !side && sideOf(spec, 'from', site) !== undefined,
    };
    return { r, findings: [...(side ? [side] : []), ...judge(r, site)] };
  },
  /** A rabbet or groove along the edge from which it comes in: the dado ends there; else the two trenches cross. */
  yield(r, clash, site) {
    const other = trench(site, clash);
    if (!other) return runsInto(site, clash);
    const [lo, hi] = other.at[WIDE];
    const high = r.from === 'top';
    const open = high ? r.run[1] : r.run[0];
    const ends = high ? hi >= open && lo > r.run[0] : lo <= open && hi < r.run[1];
    const covers = other.at[INTO][1] >= r.depth.value && other.at[THICK][0] <= 0 && other.at[THICK][1] >= r.width.value;
    return ends && covers ? { ...r, run: high ? [r.run[0], lo] : [hi, r.run[1]] } : r;
  },
  give,
};

function give(r: Dado, site: Site): Given {
  const own = site.entering.box;
  const lost = cornerBeyond(own[WIDE], r);
  const corners: BoxCut[] = lost
    ? [
        {
          ...common(site, 1, 'entering', 2),
          shape: 'box',
          as: 'notch',
          face: 'right',
          at: [[0, r.depth.value], [own[THICK][0], own[THICK][1]], lost],
        },
      ]
    : [];
  const along = site.entering.grain === WIDE;
  return {
    growth: { entering: { right: r.depth.value } },
    entering: corners,
    receiving: [
      {
        ...common(site, 1, 'receiving', 1),
        shape: 'box',
        as: 'dado',
        face: 'left',
        at: [[0, r.depth.value], [0, r.width.value], r.run],
        ...(r.stop ? { notes: ['Square the blind end'] } : {}),
        glue: along ? { where: '' } : glueOf(r, site),
      },
    ],
    bodies: [],
    traits: {
      insertion: [r.slides ? opposite(r.from) : 'right'],
      holds: 'aligns',
      glue: along ? 'none' : 'end-long',
      resists: resists(0, 3, breadth(site) > either(site.world, 6, 150) ? 1 : 0, 1),
      freedom: along ? 'slides' : 'fixed',
      ...(r.glued && !along ? { held: { from: opposite(r.from), length: r.glued.value } } : {}),
      shows: r.through,
    },
    findings: [],
    sizes: {
      depth: r.depth,
      width: r.width,
      ...(r.stop ? { stop: r.stop } : {}),
      ...(r.glued ? { glued: r.glued } : {}),
    },
  };
}

/** All of it, or only its far end: what lies beyond moves. */
const glueOf = (r: Dado, site: Site): Glue =>
  r.glued
    ? { where: `the ${pieceWord(site, opposite(r.from))} ${fig(site, r.glued.value)}, sparingly`, not: 'beyond it' }
    : { where: 'the floor and walls, sparingly' };
