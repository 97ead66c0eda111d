import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Face } from '../geom/axis.js';
import { faceSign, opposite } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { span, width } from '../geom/box.js';
import { nm, snapDown } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import { entering, inchBox, inchSized } from './example.js';
import { faceField, lengthField, maybe, sized } from './fields.js';
import type { Given, JointKind, Resolved, Site } from './joint.js';
import {
  common,
  either,
  endOf,
  fig,
  finding,
  inwards,
  offAxis,
  runsInto,
  sideOf,
  THICK,
  trench,
  wall,
  WIDE,
} from './place.js';
import type { Trench } from './trench.js';
import { depthFound, floating, runOfTrench } from './trench.js';

interface Rabbet extends Trench {
  /** Edge of the receiving part along which the rabbet lies. */
  readonly edge: Face;
  readonly on: Sized;
}

const spec = z.strictObject({
  edge: faceField('The edge of the receiving part along which the rabbet lies', 'back'),
  on: lengthField('How far it comes on from that edge', '1/4'),
  depth: lengthField('How far it goes into the face', '3/8'),
  slack: lengthField('Left between the edge of the panel and the rabbet', '1/32'),
  from: faceField('The end from which it runs in', 'top'),
  stop: lengthField('Where it stops, measured from the other end', '8 1/8'),
});

/**
 * Without `from` and `stop`: open at an end which the panel reaches. Where the receiving part goes on by no more than 1 1/2 in
 * (40 mm, a case corner) it runs on by its depth, for the panel turns the corner there; else it stops where the panel ends.
 */
function runSpan(spec: Resolved, site: Site, depth: number): Span {
  const host = site.receiving.box[WIDE];
  const panel = site.entering.box[WIDE];
  return runOfTrench(spec, site, (face) => {
    const sign = faceSign(face);
    const e = endOf(host, face);
    const left = sign * (e - endOf(panel, face));
    if (left <= 0) return e;
    return left <= either(site.world, 1.5, 40) ? endOf(panel, face) + sign * Math.min(left, depth) : endOf(panel, face);
  });
}

function judge(r: Rabbet, site: Site): Diagnostic[] {
  const across = width(site.receiving.box[THICK]);
  const [depth, wood] = [fig(site, r.depth.value), fig(site, wall(site))];
  const out = depthFound(
    r,
    site,
    () =>
      finding(site, 'error', 'rabbet-too-deep', `The rabbet goes ${depth} into wood ${wood} thick.`, {
        field: 'depth',
        hint: 'At most half of it.',
      }),
    () =>
      finding(site, 'warning', 'rabbet-deep', `The rabbet takes ${depth} of wood ${wood} thick, more than half.`, {
        field: 'depth',
      }),
  );
  if (r.on.value <= 0 || r.on.value >= across)
    out.push(
      finding(
        site,
        'error',
        'rabbet-on',
        `The rabbet would come ${fig(site, r.on.value)} on from an edge ${fig(site, across)} wide.`,
        { field: 'on' },
      ),
    );
  const ledge = endOf(site.receiving.box[THICK], r.edge) - faceSign(r.edge) * r.on.value;
  const seat = endOf(site.entering.box[THICK], opposite(r.edge));
  if (faceSign(r.edge) * (ledge - seat) > 0)
    out.push(
      finding(
        site,
        'error',
        'rabbet-narrow',
        `The panel stands ${fig(site, Math.abs(ledge - seat))} in front of the ledge of the rabbet.`,
        { field: 'on' },
      ),
    );
  if (r.slack.value >= r.depth.value)
    out.push(finding(site, 'error', 'panel-out', 'The panel would not reach into its rabbet.', { field: 'slack' }));
  return out;
}

/** Rebate along an edge for a back: on from the edge, into the face; the panel grows into it, 1/32 in (0.8 mm) clear at each side. */
export const rabbet: JointKind<unknown, Rabbet> = {
  kind: 'rabbet',
  words: 'rabbet',
  spec,
  lengths: ['on', 'depth', 'slack', 'stop'],
  stance: 'butt',
  rank: 1,
  example: {
    spec: { depth: inchSized('3/8', 0.375) },
    site: {
      entering: entering(34.25, 0.205, 33, 2),
      receiving: { box: inchBox([0, 0.875], [-18.75, 0.25], [-8.125, 33]), grain: 2 },
    },
  },
  resolve(spec, site) {
    const side = offAxis(spec, 'edge', THICK, site) ?? offAxis(spec, 'from', WIDE, site);
    const usable = side ? {} : spec;
    const [own, host] = [site.entering.box[THICK], site.receiving.box[THICK]];
    const edge = sideOf(usable, 'edge', site) ?? (host[1] - own[1] <= own[0] - host[0] ? 'back' : 'front');
    const on = sized(spec, 'on', () =>
      derived(
        nm(Math.abs(endOf(host, edge) - endOf(own, opposite(edge)))),
        'from the edge to the face of the panel that lies on the ledge',
      ),
    );
    const T = wall(site);
    const depth = sized(spec, 'depth', () =>
      byRule(
        nm(Math.min(either(site.world, 3 / 8, 10), snapDown(T / 2, site.world.step))),
        '3/8 in (10 mm), at most half the thickness',
        'from memory',
        [{ name: 'receiving thickness', value: T }],
      ),
    );
    const slack = sized(spec, 'slack', () =>
      byRule(either(site.world, 1 / 32, 0.8), '1/32 in (0.8 mm) at each edge', 'our default'),
    );
    const stop = maybe(spec, 'stop');
    const r: Rabbet = { edge, on, depth, slack, run: runSpan(usable, site, depth.value), ...(stop ? { stop } : {}) };
    return { r, findings: [...(side ? [side] : []), ...judge(r, site)] };
  },
  yield: (r, clash, site) => (trench(site, clash) ? r : runsInto(site, clash)),
  give,
};

function give(r: Rabbet, site: Site): Given {
  const host = site.receiving.box[THICK];
  const grows = derived(nm(r.depth.value - r.slack.value), 'rabbet less what is left free');
  return {
    ...floating(r, grows, site, opposite(r.edge), { on: r.on, into: r.depth }),
    receiving: [
      {
        // Made after the sockets, whose torn ends it takes off.
        ...common(site, 1, 'receiving', 3),
        shape: 'box',
        as: 'rabbet',
        face: 'left',
        at: [[0, r.depth.value], span(endOf(host, r.edge), inwards(host, r.edge, r.on.value)), r.run],
        glue: { where: '' },
        ...(site.entering.material === 'sheet' ? { notes: ['Takes the panel as measured'] } : {}),
      },
    ],
  };
}
