import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Span } from '../geom/box.js';
import { width } from '../geom/box.js';
import { inches, nm, snapDown, snapUp } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import { entering, inchBox } from './example.js';
import { choiceField, faceField, lengthField, maybe, sized, text } from './fields.js';
import type { Given, JointKind, Resolved, Site } from './joint.js';
import {
  common,
  either,
  endOf,
  fig,
  finding,
  INTO,
  inwards,
  offAxis,
  runsInto,
  thickness,
  trench,
  wall,
  WIDE,
} from './place.js';
import type { Trench } from './trench.js';
import { depthFound, floating, runOfTrench } from './trench.js';

interface Groove extends Trench {
  readonly width: Sized;
  readonly low: number;
}

const spec = z.strictObject({
  depth: lengthField('Depth of the groove', '1/4'),
  width: lengthField('Width of the groove', '7/32'),
  slack: lengthField('Left between the edge of the panel and the floor of the groove', '1/32'),
  from: faceField('The end from which the groove runs in', 'top'),
  stop: lengthField('Where it stops, measured from the other end', '9 1/4'),
  run: choiceField(['through', 'panel'], 'From end to end, or only as far as the panel goes'),
});

/** Sheet goods: measured thickness + .010 for two passes; solid: the next straight cutter when it is at most 1/32 in wider. */
function widthRule(site: Site): Sized {
  const t = nm(site.entering.measured ?? thickness(site));
  const inputs = [{ name: 'panel', value: t }];
  if (site.entering.material === 'sheet')
    return byRule(
      snapUp(t + inches(0.01), site.world.step),
      'measured panel + .010 in (0.25 mm), rounded up',
      'common practice',
      inputs,
    );
  const cutter = [...site.world.bits.straight].sort((a, b) => a - b).find((b) => b >= t && b - t <= inches(1 / 32));
  return cutter === undefined
    ? byRule(snapUp(t, site.world.step), 'thickness of the panel, which is planed to slide', 'common practice', inputs)
    : byRule(nm(cutter), 'the next straight cutter; the panel is planed to slide', 'common practice', inputs);
}
/** Depth: half the wood; 1/4 in for a sheet, 3/8 in for a solid panel that moves. */
function depthRule(site: Site): Sized {
  const T = wall(site);
  const sheet = site.entering.material === 'sheet';
  const most = sheet ? either(site.world, 1 / 4, 6) : either(site.world, 3 / 8, 10);
  const rule = sheet
    ? '1/4 in (6 mm) for sheet goods, at most half the wood'
    : '3/8 in (10 mm) for a solid panel, at most half the wood';
  return byRule(nm(Math.min(most, snapDown(T / 2, site.world.step))), rule, 'from memory', [
    { name: 'receiving thickness', value: T },
  ]);
}
/**
 * What is left for the panel to swell into: across the grain of a solid panel half its swell to the wettest + 1/32 in,
 * else 1/32 in (panel reserve: common practice).
 */
function slackRule(site: Site, depth: number): Sized {
  const least = either(site.world, 1 / 32, 0.8);
  const across = site.entering.material === 'solid' && site.entering.grain !== INTO;
  if (!across) return byRule(least, '1/32 in (0.8 mm) at each edge', 'common practice');
  const full = width(site.entering.box[INTO]) + 2 * depth;
  const swell = nm(site.world.swell(site.entering.part, full));
  return byRule(
    snapUp(swell / 2 + least, site.world.step),
    'half the swell to the wettest + 1/32 in (0.8 mm)',
    'common practice',
    [
      { name: 'swell', value: swell },
      { name: 'panel', value: nm(full) },
    ],
  );
}

/**
 * Where the groove runs. Without `from`, `stop` or `run` it comes out at an end of the receiving part that the panel
 * reaches to within 4 in (100 mm, a rail's width), and else stops where the panel in its own grooves ends.
 */
function runSpan(spec: Resolved, site: Site, depth: number): Span {
  const host = site.receiving.box[WIDE];
  const panel = site.entering.box[WIDE];
  const how = text(spec, 'run');
  if (how === 'through') return [host[0], host[1]];
  const near = how === 'panel' ? 0 : either(site.world, 4, 100);
  return runOfTrench(spec, site, (face) => {
    const e = endOf(host, face);
    const own = inwards(panel, face, -depth);
    const beyond = face === 'top' ? e - own : own - e;
    return beyond <= near ? e : own;
  });
}

function judge(r: Groove, site: Site): Diagnostic[] {
  const [depth, wood] = [fig(site, r.depth.value), fig(site, wall(site))];
  const out = depthFound(
    r,
    site,
    () =>
      finding(site, 'error', 'groove-too-deep', `The groove is ${depth} deep in wood ${wood} thick.`, {
        field: 'depth',
        hint: 'At most half of it.',
      }),
    () =>
      finding(site, 'warning', 'groove-deep', `The groove takes ${depth} of wood ${wood} thick, more than half.`, {
        field: 'depth',
      }),
  );
  if (r.width.value < thickness(site))
    out.push(
      finding(
        site,
        'error',
        'groove-too-narrow',
        `The groove is ${fig(site, r.width.value)} wide, the panel ${fig(site, thickness(site))} thick.`,
        { field: 'width' },
      ),
    );
  const holds = r.depth.value - r.slack.value;
  if (holds <= 0)
    out.push(finding(site, 'error', 'panel-out', 'The panel would not reach into its groove.', { field: 'slack' }));
  else if (site.entering.material === 'solid' && holds < either(site.world, 3 / 16, 5))
    out.push(
      finding(site, 'warning', 'panel-shallow', `The panel stands only ${fig(site, holds)} in its groove.`, {
        field: 'depth',
        hint: 'Make the groove deeper: it also shrinks.',
      }),
    );
  if (r.run[1] <= r.run[0])
    out.push(finding(site, 'error', 'groove-none', 'The groove has no length.', { field: 'stop' }));
  return out;
}

/** A panel's edge in a groove: floating when it is solid, held by its own stiffness when it is a sheet. Never glued. */
export const groove: JointKind<unknown, Groove> = {
  kind: 'groove',
  words: 'groove',
  spec,
  lengths: ['depth', 'width', 'slack', 'stop'],
  stance: 'butt',
  rank: 1,
  example: {
    spec: {},
    site: {
      entering: entering(14.71875, 0.25, 15),
      receiving: { box: inchBox([0, 0.5], [-0.3125, 4.0625], [0, 15]), grain: 2 },
    },
  },
  resolve(spec, site) {
    const side = offAxis(spec, 'from', WIDE, site);
    const depth = sized(spec, 'depth', () => depthRule(site));
    const slack = sized(spec, 'slack', () => slackRule(site, depth.value));
    const fit = sized(spec, 'width', () => widthRule(site));
    const spare = Math.max(0, fit.value - thickness(site));
    const stop = maybe(spec, 'stop');
    const r: Groove = {
      width: fit,
      depth,
      slack,
      run: runSpan(side ? {} : spec, site, depth.value),
      low: -snapDown(spare / 2, site.world.step) + 0,
      ...(stop ? { stop } : {}),
    };
    return { r, findings: [...(side ? [side] : []), ...judge(r, site)] };
  },
  yield: (r, clash, site) => (trench(site, clash) ? r : runsInto(site, clash)),
  give,
};

function give(r: Groove, site: Site): Given {
  const solid = site.entering.material === 'solid';
  const grows = derived(nm(r.depth.value - r.slack.value), 'groove less what is left free', [
    { name: 'depth', value: r.depth.value },
    { name: 'slack', value: r.slack.value },
  ]);
  return {
    ...floating(r, grows, site, 'right', { width: r.width, depth: r.depth }),
    receiving: [
      {
        ...common(site, 1, 'receiving', 1),
        shape: 'box',
        as: 'groove',
        face: 'left',
        at: [[0, r.depth.value], [r.low, r.low + r.width.value], r.run],
        glue: { where: '' },
        ...(solid ? {} : { trial: 'the panel runs the groove from end to end' }),
        notes: [solid ? 'The panel stays loose' : 'To fit the panel as measured'],
      },
    ],
  };
}
