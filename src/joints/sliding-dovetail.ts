import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import { opposite } from '../geom/axis.js';
import { tangent } from '../geom/angle.js';
import type { Span } from '../geom/box.js';
import { span, width } from '../geom/box.js';
import { nm, snap, snapDown } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import type { DovetailCut } from '../words/cut.js';
import { entering, inchBox, inchSized } from './example.js';
import { faceField, lengthField, maybe, sized } from './fields.js';
import type { Claim, Given, JointKind, Resolved, Site } from './joint.js';
import {
  about,
  breadth,
  common,
  either,
  fig,
  finding,
  gaugeDown,
  inwards,
  offAxis,
  onStep,
  resists,
  THICK,
  thickness,
  wall,
  WIDE,
} from './place.js';
import type { Run } from './run.js';
import { runOf } from './run.js';

interface Sliding extends Run {
  readonly depth: Sized;
  readonly tail: Sized;
  readonly neck: Sized;
  readonly angle: number;
  readonly ease?: { readonly by: Sized; readonly over: Span; readonly to: Sized };
  /** A socket of the same section that covers this one: both parts go into it. */
  readonly shared?: DovetailCut;
}

const spec = z.strictObject({
  from: faceField('The edge of the receiving part from which the socket runs in and the tail slides home', 'back'),
  stop: lengthField(
    'Where the socket stops, measured from the other edge; without it, where the entering part ends',
    '3/8',
  ),
  depth: lengthField('Depth of the socket and length of the tail', '3/8'),
  ease: lengthField('How much wider the socket is made behind the seat, by a second pass; 0 for none', '0.010'),
  easeTo: lengthField('Where the easing ends, measured from the edge opposite to `from`', '2 3/4'),
});

/**
 * Depth: full-width joints at most T/3 (common practice); a narrow rail, whose socket takes little out of the side,
 * up to 0.45 T (our default: the point at which a warning is due).
 */
function depthRule(site: Site): Sized {
  const t = wall(site);
  const narrow = breadth(site) <= either(site.world, 4, 100);
  const rule = narrow ? 'narrow rail: 0.45 of the receiving thickness' : 'one third of the receiving thickness';
  const value = gaugeDown(site.world, narrow ? 0.45 * t : t / 3);
  return byRule(value, `${rule}, rounded down`, narrow ? 'our default' : 'common practice', [
    { name: 'receiving thickness', value: t },
  ]);
}

/** Second pass behind the seat: only where the tail travels further than it is wide. */
function easing(spec: Resolved, site: Site, run: Run): Sliding['ease'] {
  const asked = maybe(spec, 'ease');
  if (asked ? asked.value === 0 : run.travel <= breadth(site)) return undefined;
  const by = asked ?? byRule(either(site.world, 0.01, 0.25), 'second pass behind the seat', 'our default');
  const far = opposite(run.from);
  const host = site.receiving.box[WIDE];
  const seat = Math.abs(inwards(site.entering.box[WIDE], run.from, 0) - inwards(host, far, 0));
  const to = sized(spec, 'easeTo', () =>
    byRule(onStep(site.world, seat + either(site.world, 0.25, 6)), 'end of the seat + 1/4 in (6 mm)', 'our default'),
  );
  return { by, to, over: span(inwards(host, far, to.value), inwards(host, run.from, 0)) };
}

function judge(r: Sliding, site: Site): Diagnostic[] {
  const out: Diagnostic[] = [];
  const [t, T, d] = [thickness(site), wall(site), r.depth.value];
  const say = (v: number): string => fig(site, v);
  if (d <= 0 || d > T / 2)
    out.push(
      finding(site, 'error', 'socket-too-deep', `The socket is ${say(d)} deep in wood ${say(T)} thick.`, {
        field: 'depth',
        hint: `At most half: ${say(snapDown(T / 2, site.world.step))}.`,
      }),
    );
  else if (d > 0.45 * T)
    out.push(
      finding(
        site,
        'warning',
        'socket-deep',
        `The socket is ${say(d)} deep in wood ${say(T)} thick, more than 0.45 of it.`,
        { field: 'depth' },
      ),
    );
  if (r.tail.value >= t)
    out.push(
      finding(
        site,
        'error',
        'cutter-too-wide',
        `The dovetail cutter is ${say(r.tail.value)} wide, the part only ${say(t)} thick.`,
        {
          hint: 'Name a smaller cutter in the shop file.',
        },
      ),
    );
  if (r.neck.value <= 0)
    out.push(
      finding(site, 'error', 'no-neck', `A cutter ${say(r.tail.value)} wide leaves no neck at a depth of ${say(d)}.`, {
        field: 'depth',
        hint: 'Make the socket shallower.',
      }),
    );
  else if (r.neck.value < 0.4 * t)
    out.push(
      finding(site, 'warning', 'neck-thin', `The neck is ${say(r.neck.value)}, less than 40 % of the ${say(t)} part.`, {
        field: 'depth',
        hint: 'A shallower socket or a wider cutter.',
      }),
    );
  if (width(r.keep) < either(site.world, 0.5, 12))
    out.push(
      finding(site, 'error', 'no-tail-left', `Of the tail only ${say(width(r.keep))} is left.`, { field: 'stop' }),
    );
  return out;
}

/** The trade's dovetailed housing: tail on the end of the entering part, slid into a socket across the receiving part. */
export const slidingDovetail: JointKind<unknown, Sliding> = {
  kind: 'sliding-dovetail',
  words: 'sliding dovetail',
  spec,
  lengths: ['stop', 'depth', 'ease', 'easeTo'],
  stance: 'butt',
  rank: 2,
  example: {
    spec: { from: 'top', stop: inchSized('3/8', 0.375) },
    site: {
      entering: entering(34.25, 0.75, 2.5),
      receiving: { box: inchBox([0, 0.875], [-8.125, 33], [0, 19]), grain: 1 },
    },
  },
  resolve(spec, site) {
    const side = offAxis(spec, 'from', WIDE, site);
    const run = runOf(side ? {} : spec, site);
    const depth = sized(spec, 'depth', () => depthRule(site));
    const bit = site.world.bits.dovetail;
    const tail = byRule(nm(bit.width), 'width of the dovetail cutter', 'our default');
    const inputs = [
      { name: 'cutter', value: bit.width },
      { name: 'depth', value: depth.value },
    ];
    const neck = derived(
      snap(bit.width - 2 * depth.value * tangent(bit.angle), site.world.step),
      `cutter less 2 x depth x tan ${bit.angle}`,
      inputs,
    );
    const ease = easing(spec, site, run);
    const r: Sliding = { ...run, depth, tail, neck, angle: bit.angle, ...(ease ? { ease } : {}) };
    return { r, findings: [...(side ? [side] : []), ...judge(r, site)] };
  },
  yield(r, clash, site) {
    const cut = clash.cut;
    if (clash.part !== site.receiving.part || cut.shape !== 'dovetail') return collision(clash, site);
    const mine = socketOf(r, site);
    if (cut.run !== WIDE || cut.face !== 'left' || cut.depth !== mine.depth) return collision(clash, site);
    if (cut.as === 'ease') return r;
    const same =
      cut.atFace[0] === mine.atFace[0] && cut.atFloor[0] === mine.atFloor[0] && cut.atFloor[1] === mine.atFloor[1];
    if (!same) return collision(clash, site);
    const covers = cut.runSpan[0] <= mine.runSpan[0] && cut.runSpan[1] >= mine.runSpan[1];
    return covers ? { ...r, shared: cut } : r;
  },
  give,
};

const collision = (clash: Claim, site: Site): Diagnostic =>
  finding(
    site,
    'error',
    'joints-collide',
    `This socket runs into a cut of joint "${clash.joint}" in part "${clash.part}".`,
    {
      hint: 'Move one of the two parts, or give them the same height and depth so that they share one socket.',
    },
  );

function socketOf(r: Sliding, site: Site): DovetailCut {
  const centre = width(site.entering.box[THICK]) / 2;
  return {
    ...common(site, 1, 'receiving', 2),
    shape: 'dovetail',
    as: 'socket',
    face: 'left',
    run: WIDE,
    taper: THICK,
    runSpan: r.shared?.runSpan ?? r.run,
    atFace: about(centre, r.neck.value),
    atFloor: about(centre, r.tail.value),
    depth: r.depth.value,
    bit: { width: r.tail.value, angle: r.angle },
    trial: 'one socket and one tail; they slide together by hand, dry, with no gap at the shoulder',
    glue: r.stop
      ? { where: `the first ${fig(site, either(site.world, 2, 50))} behind the stop`, not: 'the rest of the socket' }
      : { where: 'at the seat of the part only', not: 'the rest of the socket' },
  };
}

function give(r: Sliding, site: Site): Given {
  const socket = socketOf(r, site);
  const { by, over } = r.ease ?? {};
  const down = (s: Span): Span => [s[0] - (by?.value ?? 0), s[1] - (by?.value ?? 0)];
  const { trial: _trial, glue: _glue, ...plain } = socket;
  const ease: DovetailCut[] =
    by && over
      ? [
          {
            ...plain,
            ...common(site, 2, 'receiving', 2),
            as: 'ease',
            runSpan: over,
            atFace: down(socket.atFace),
            atFloor: down(socket.atFloor),
            notes: [
              r.shared
                ? 'The part then binds only when nearly home; fit what goes in behind it to the eased width'
                : 'The part then binds only when nearly home',
            ],
          },
        ]
      : [];
  const wideRail = breadth(site) >= either(site.world, 3, 76);
  return {
    growth: { entering: { right: r.depth.value } },
    entering: [
      {
        ...common(site, 1, 'entering', 2),
        shape: 'tails',
        as: 'tail',
        end: 'right',
        base: 0,
        taper: THICK,
        tails: [{ atBase: socket.atFace, atEnd: socket.atFloor }],
        keep: r.keep,
        bit: { width: r.tail.value, angle: r.angle },
        notes: ['Same cutter height as the sockets; leave tight, pare to fit'],
      },
    ],
    receiving: [socket, ...ease],
    bodies: [],
    traits: {
      insertion: [opposite(r.from)],
      holds: 'pulls',
      glue: 'by shape',
      resists: resists(3, 3, wideRail ? 3 : 2, 2),
      freedom: 'fixed',
      shows: r.through,
    },
    findings: [],
    sizes: {
      depth: r.depth,
      'tail at its end': r.tail,
      neck: r.neck,
      ...(r.stop ? { stop: r.stop } : {}),
      ...(r.ease ? { ease: r.ease.by, 'ease to': r.ease.to } : {}),
    },
  };
}
