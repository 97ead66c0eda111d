import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import { arcCosine, arcTangent } from '../geom/angle.js';
import type { Axis, Face } from '../geom/axis.js';
import { faceAxis, faceOf, opposite } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { meet, width } from '../geom/box.js';
import { formatAngle } from '../lengths/format.js';
import { nm, snapDown } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import type { BoxCut, TenonCut } from '../words/cut.js';
import { entering, inchBox } from './example.js';
import { flag, flagField, lengthField, maybe, pair, pairField, sized } from './fields.js';
import type { Given, JointKind, Resolved, Site } from './joint.js';
import {
  breadth,
  carriedOn,
  common,
  either,
  fig,
  finding,
  gaugeDown,
  INTO,
  onStep,
  resists,
  THICK,
  thickness,
  wall,
  WIDE,
} from './place.js';

interface Haunch {
  readonly side: Face;
  readonly width: Sized;
  readonly length: Sized;
  /** False where it fills a groove that is there already. */
  readonly cut: boolean;
}
interface MortiseAndTenon {
  readonly thick: Sized;
  readonly offset: Sized;
  readonly low: Sized;
  readonly high: Sized;
  readonly length: Sized;
  readonly depth: Sized;
  readonly through: boolean;
  readonly haunch?: Haunch;
  /** The long side where the end is mitred against another tenon. */
  readonly mitre?: Face;
}

const spec = z.strictObject({
  thickness: lengthField('Thickness of the tenon and width of the mortise', '1/4'),
  offset: lengthField(
    'From the left, front or bottom face of the entering part to the tenon; without it the tenon is central',
    '1/4',
  ),
  shoulders: pairField('Shoulders at both edges, the left, front or bottom one first', ['1/4', '3/8']),
  length: lengthField('Length of the tenon from its shoulder', '1 1/16'),
  depth: lengthField('Depth of the mortise', '1 1/8'),
  haunch: flagField('Leave a haunch where the part is flush with the end of the receiving part', true),
  haunchWidth: lengthField('Width of the haunch: how far the tenon keeps from that end', '3/4'),
  through: flagField('The tenon goes through and is flush at the other side', false),
});

/** A rail that lies flat: its thickness runs along the grain of the part that it enters. */
const liesFlat = (site: Site): boolean => site.receiving.grain === THICK;

/** Grooves already in a part, in site axes. */
const grooves = (site: Site, part: string): BoxCut[] =>
  site.claims.flatMap(({ part: p, cut }) => (p === part && cut.shape === 'box' && cut.as === 'groove' ? [cut] : []));

/** Groove of the entering part in one of its edges. */
const edgeGroove = (site: Site, face: Face): BoxCut | undefined =>
  grooves(site, site.entering.part).find((g) => g.face === face);
/** Groove of the receiving part in the face that the tenon meets. */
const hostGroove = (site: Site, at: Span): BoxCut | undefined =>
  grooves(site, site.receiving.part).find((g) => g.face === 'left' && meet(g.at[THICK], at));

function nearest(choices: readonly number[], wanted: number): number | undefined {
  return [...choices].sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || a - b)[0];
}

function thickRule(site: Site): Sized {
  const t = thickness(site);
  const inputs = [{ name: 'thickness', value: t }];
  if (liesFlat(site))
    return byRule(
      onStep(site.world, t - 2 * either(site.world, 1 / 8, 3)),
      'rail lying flat: 1/8 in (3 mm) shoulder above and below',
      'common practice',
      inputs,
    );
  const groove = edgeGroove(site, 'bottom') ?? edgeGroove(site, 'top');
  if (groove)
    return byRule(
      nm(width(groove.at[THICK])),
      'as thick as the groove is wide',
      'Noyes, Handwork in Wood, no. 42',
      inputs,
    );
  return byRule(
    nm(nearest(site.world.bits.straight, t / 3) ?? onStep(site.world, t / 3)),
    'one third of the thickness, to the nearest cutter',
    'Fairham, Woodwork Joints; Noyes, Handwork in Wood',
    inputs,
  );
}
function offsetRule(site: Site, thick: number): Sized {
  const t = thickness(site);
  const groove = edgeGroove(site, 'bottom') ?? edgeGroove(site, 'top');
  return groove && !liesFlat(site)
    ? derived(nm(groove.at[THICK][0]), 'in line with the groove')
    : byRule(onStep(site.world, (t - thick) / 2), 'central, equal cheeks', 'Fairham, Woodwork Joints', [
        { name: 'thickness', value: t },
      ]);
}

/** Distance from an edge of the rail to that end of the receiving part. */
const toEnd = (site: Site, side: Face): number => {
  const host = site.receiving.box[WIDE];
  return side === 'top' ? host[1] - breadth(site) : -host[0];
};

/** Shoulder at one edge where no haunch is: the groove, 1/4 in, and in a flat rail enough wall in the leg. */
function shoulderRule(site: Site, side: Face): Sized {
  const w = breadth(site);
  const groove = edgeGroove(site, side);
  if (groove) return derived(nm(width(groove.at[WIDE])), 'depth of the groove in that edge');
  const plain = Math.min(either(site.world, 1 / 4, 6), gaugeDown(site.world, w / 6));
  if (!liesFlat(site))
    return byRule(nm(plain), 'edge shoulder 1/4 in (6 mm), at most a sixth', 'common practice', [
      { name: 'width', value: w },
    ]);
  const least = Math.max(either(site.world, 5 / 16, 8), width(site.receiving.box[WIDE]) / 4);
  const need = onStep(site.world, least - toEnd(site, side));
  return byRule(
    nm(Math.max(plain, need)),
    'rail lying flat: a wall of 5/16 in (8 mm) and a quarter of the leg beside the mortise',
    'our default',
    [{ name: 'width', value: w }],
  );
}

function lengths(spec: Resolved, site: Site, thick: Sized): { length: Sized; depth: Sized } {
  const T = wall(site);
  const inputs = [{ name: 'receiving thickness', value: T }];
  if (flag(spec, 'through') === true) {
    const all = derived(T, 'through', inputs);
    return { length: all, depth: all };
  }
  const room = either(site.world, 1 / 16, 1.5);
  const given = { length: maybe(spec, 'length'), depth: maybe(spec, 'depth') };
  const roomy = (length: Sized): Sized =>
    byRule(nm(length.value + room), 'tenon + 1/16 in (1.5 mm) for glue', 'from memory', [
      { name: 'length', value: length.value },
    ]);
  if (given.length) return { length: given.length, depth: given.depth ?? roomy(given.length) };
  if (given.depth)
    return {
      depth: given.depth,
      length: byRule(nm(given.depth.value - room), 'mortise less 1/16 in (1.5 mm) for glue', 'from memory', [
        { name: 'depth', value: given.depth.value },
      ]),
    };
  const flat = liesFlat(site);
  const most = flat ? either(site.world, 11 / 16, 18) : 5 * thick.value;
  const value = nm(Math.min(gaugeDown(site.world, 0.75 * T) - room, most));
  const length = byRule(
    value,
    flat
      ? 'stub tenon: 3/4 of the receiving thickness less room for glue, at most 11/16 in (18 mm)'
      : 'mortise 3/4 of the receiving thickness; tenon at most 5 x its thickness',
    'common practice',
    inputs,
  );
  return { length, depth: roomy(length) };
}

function haunchOf(
  spec: Resolved,
  site: Site,
  a: Span,
  length: Sized,
): { haunch?: Haunch; keep?: { side: Face; width: Sized } } {
  if (liesFlat(site) || site.lean > 0) return {};
  const side: Face = toEnd(site, 'top') <= toEnd(site, 'bottom') ? 'top' : 'bottom';
  const near = toEnd(site, side) <= either(site.world, 1 / 4, 6);
  const asked = flag(spec, 'haunch');
  if (!near && asked !== true && !maybe(spec, 'haunchWidth')) return {};
  const w = breadth(site);
  const keep = sized(spec, 'haunchWidth', () =>
    byRule(
      nm(Math.min(either(site.world, 3 / 4, 20), gaugeDown(site.world, w / 3))),
      '3/4 in (20 mm) from the end, at most a third of the width',
      'common practice',
      [{ name: 'width', value: w }],
    ),
  );
  if (asked === false) return { keep: { side, width: keep } };
  const groove = hostGroove(site, a);
  const over: Span = side === 'top' ? [w - keep.value, w] : [0, keep.value];
  const filled =
    groove &&
    groove.at[THICK][0] <= a[0] &&
    groove.at[THICK][1] >= a[1] &&
    (meet(groove.at[WIDE], over)?.[0] ?? NaN) === over[0] &&
    groove.at[WIDE][1] >= over[1];
  const long = groove
    ? derived(nm(width(groove.at[INTO])), 'depth of the groove that it fills')
    : byRule(onStep(site.world, length.value / 3), 'a third of the tenon', 'common practice', [
        { name: 'length', value: length.value },
      ]);
  return { haunch: { side, width: keep, length: long, cut: filled !== true }, keep: { side, width: keep } };
}

const across = (r: MortiseAndTenon): Span => [r.offset.value, r.offset.value + r.thick.value];
const along = (r: MortiseAndTenon, site: Site): Span => [r.low.value, breadth(site) - r.high.value];

function judge(r: MortiseAndTenon, spec: Resolved, site: Site): Diagnostic[] {
  const out: Diagnostic[] = [];
  const [a, b] = [across(r), along(r, site)];
  const host = site.receiving.box;
  const floor = wall(site) - r.depth.value;
  const tell = (severity: Diagnostic['severity'], code: string, message: string, field?: string): number =>
    out.push(finding(site, severity, code, message, field === undefined ? {} : { field }));
  if (width(b) < either(site.world, 1 / 4, 6) || a[0] < 0 || a[1] > thickness(site) || r.length.value <= 0)
    tell('error', 'no-tenon', 'Shoulders and offset leave no tenon.', 'shoulders');
  if (a[0] < host[THICK][0] || a[1] > host[THICK][1] || b[0] < host[WIDE][0] || b[1] > host[WIDE][1])
    tell('error', 'mortise-outside', 'The mortise would lie beyond the edge of the receiving part.', 'offset');
  if (r.length.value > r.depth.value)
    tell(
      'error',
      'tenon-too-long',
      `The tenon is ${fig(site, r.length.value)} long, the mortise ${fig(site, r.depth.value)} deep.`,
      'length',
    );
  if (!r.through && floor < either(site.world, 1 / 8, 3))
    tell('error', 'mortise-floor', `Only ${fig(site, floor)} would be left under the mortise.`, 'depth');
  const side = Math.min(a[0] - host[THICK][0], host[THICK][1] - a[1]);
  const least =
    width(host[THICK]) > either(site.world, 1, 25)
      ? Math.max(either(site.world, 5 / 16, 8), width(host[THICK]) / 6)
      : width(host[THICK]) / 6;
  if (!liesFlat(site) && side < least)
    tell(
      'warning',
      'mortise-wall',
      `The wall beside the mortise in "${site.receiving.part}" is ${fig(site, side)}, less than ${fig(site, least)}.`,
      'offset',
    );
  if (site.lean > 0)
    for (const field of ['through', 'haunch', 'haunchWidth'])
      if (spec[field] !== undefined && spec[field] !== false)
        tell('error', 'tenon-leans', `A tenon into a part that leans is plain and blind: take "${field}" out.`, field);
  const crosses = site.receiving.grain === WIDE && site.entering.grain === INTO;
  if (crosses && width(b) > either(site.world, 4, 100))
    tell(
      'warning',
      'tenon-wide',
      `The tenon of "${site.entering.part}" is ${fig(site, width(b))} wide across its grain; split it or glue only one half.`,
      'shoulders',
    );
  else if (width(b) > 6 * r.thick.value && !liesFlat(site))
    tell(
      'note',
      'tenon-thin',
      `The tenon of "${site.entering.part}" is ${fig(site, width(b))} wide and ${fig(site, r.thick.value)} thick: more than six times its thickness.`,
      'shoulders',
    );
  return out;
}

/** Blind (or through) mortise and tenon; a haunch fills the groove at the end of a leg or stile. */
export const mortiseAndTenon: JointKind<unknown, MortiseAndTenon> = {
  kind: 'mortise-and-tenon',
  words: 'mortise and tenon',
  spec,
  lengths: ['thickness', 'offset', 'shoulders', 'length', 'depth', 'haunchWidth'],
  stance: 'butt',
  leans: true,
  rank: 2,
  example: {
    spec: { haunch: true },
    site: {
      entering: entering(11.5, 0.75, 3),
      receiving: { box: inchBox([0, 1.5], [-0.125, 1.375], [-22.25, 3]), grain: 2 },
    },
  },
  resolve(spec, site) {
    const thick = sized(spec, 'thickness', () => thickRule(site));
    const offset = sized(spec, 'offset', () => offsetRule(site, thick.value));
    const { length, depth } = lengths(spec, site, thick);
    const { haunch, keep } = haunchOf(spec, site, [offset.value, offset.value + thick.value], length);
    const given = pair(spec, 'shoulders');
    const shoulder = (side: Face, mine: Sized | undefined): Sized =>
      mine ?? (keep?.side === side ? keep.width : shoulderRule(site, side));
    const r: MortiseAndTenon = {
      thick,
      offset,
      low: shoulder('bottom', given?.[0]),
      high: shoulder('top', given?.[1]),
      length,
      depth,
      through: flag(spec, 'through') === true,
      ...(haunch ? { haunch } : {}),
    };
    return { r, findings: judge(r, spec, site) };
  },
  /** Two mortises that run into each other at a corner: both tenons are mitred, points 1/32 in (0.5 mm) short; end to end: both are shortened. */
  yield(r, clash, site) {
    const cut = clash.cut;
    const collide = finding(
      site,
      'error',
      'joints-collide',
      `This mortise runs into a cut of joint "${clash.joint}" in part "${clash.part}".`,
      {
        hint: 'Move one of the parts or make one mortise shallower.',
      },
    );
    if (clash.part !== site.receiving.part || cut.shape !== 'box' || cut.as !== 'mortise') return collide;
    if (faceAxis(cut.face) === INTO) {
      const half = snapDown((wall(site) - either(site.world, 1 / 8, 3)) / 2, site.world.step);
      const depth = derived(half, 'half the thickness, for the mortise from the other side');
      const length = derived(nm(half - either(site.world, 1 / 16, 1.5)), 'mortise less room for glue');
      return r.depth.value <= half ? r : { ...r, depth, length };
    }
    const tongue = faceAxis(cut.face) === THICK ? r.thick.value : width(along(r, site));
    const short = byRule(
      nm(r.depth.value - either(site.world, 1 / 32, 0.5)),
      'mitred, its point 1/32 in (0.5 mm) short of the mortise floor',
      'common practice',
    );
    const length = r.length.how === 'given' ? r.length : short;
    return tongue <= length.value ? { ...r, length, mitre: opposite(cut.face) } : collide;
  },
  give,
};

function mortises(r: MortiseAndTenon, site: Site): BoxCut[] {
  const main: BoxCut = {
    ...common(site, 1, 'receiving', 2),
    shape: 'box',
    as: 'mortise',
    face: 'left',
    at: [[0, r.depth.value], across(r), along(r, site)],
    glue: { where: 'the cheeks of the mortise' },
    ...(site.lean > 0 ? { notes: [leaning(site)] } : {}),
    ...(r.mitre
      ? { notes: ['Runs into another mortise: plug the first before the second is cut; mitre both tenons'] }
      : {}),
  };
  const h = r.haunch;
  if (!h?.cut) return [main];
  const w = breadth(site);
  const over: Span = h.side === 'top' ? [w - h.width.value, w] : [0, h.width.value];
  const notch: BoxCut = {
    ...common(site, 2, 'receiving', 2),
    shape: 'box',
    as: 'notch',
    face: 'left',
    at: [[0, h.length.value], across(r), over],
    notes: ['For the haunch'],
  };
  return [main, notch];
}

/** How a mortise lies to the part that it is in: leaning from square to its face, or only turned on it. */
const leaning = ({ slope, lean }: Site): string =>
  slope
    ? `Leans ${formatAngle(arcCosine(slope[INTO]))} from square`
    : `Square to the face, turned ${formatAngle(lean)} on it`;

/** What a bevel gauge is set to for a sloping shoulder: over each of the two sides, from square. */
function gauge(slope: NonNullable<Site['slope']>): string {
  const over = (a: Axis): string => formatAngle(Math.abs(arcTangent(slope[a] / slope[INTO])));
  return `Bevel gauge ${over(WIDE)} over the width, ${over(THICK)} over the thickness`;
}

function tenon(r: MortiseAndTenon, site: Site): TenonCut {
  const w = breadth(site);
  const h = r.haunch;
  const main = { a: across(r), b: along(r, site), length: r.length.value };
  const over: Span = h?.side === 'bottom' ? [0, h.width.value] : [w - (h?.width.value ?? 0), w];
  return {
    ...common(site, 1, 'entering', 2),
    shape: 'tenon',
    as: 'tenon',
    end: faceOf(INTO, 1),
    shoulder: 0,
    ...(site.slope ? { slope: site.slope, notes: [gauge(site.slope)] } : {}),
    tongues: h ? [main, { a: across(r), b: over, length: h.length.value, haunch: true }] : [main],
    ...(r.mitre ? { mitre: { long: r.mitre } } : {}),
    glue: { where: 'the cheeks of the tenon', not: 'on its end' },
  };
}

/** Grooves that pass beside the tongues run on to the end of the wood: one cut from end to end. */
function clearGrooves(r: MortiseAndTenon, site: Site): BoxCut[] {
  const tongue = along(r, site);
  const kept: Span = r.haunch ? (r.haunch.side === 'top' ? [tongue[0], breadth(site)] : [0, tongue[1]]) : tongue;
  return carriedOn(site, r.length.value).filter((cut) => meet(cut.at[WIDE], kept) === undefined);
}

function give(r: MortiseAndTenon, site: Site): Given {
  return {
    growth: { entering: { right: r.length.value } },
    entering: [tenon(r, site), ...clearGrooves(r, site)],
    receiving: mortises(r, site),
    bodies: [],
    traits: {
      insertion: ['right'],
      holds: 'aligns',
      glue: 'long-crossed',
      resists: resists(2, 3, liesFlat(site) ? 1 : 3, 2),
      freedom: 'fixed',
      shows: r.through,
    },
    findings: [],
    sizes: {
      'tenon thickness': r.thick,
      'from the face': r.offset,
      'tenon length': r.length,
      'mortise depth': r.depth,
      'low shoulder': r.low,
      'high shoulder': r.high,
      ...(r.haunch ? { haunch: r.haunch.width, 'haunch length': r.haunch.length } : {}),
    },
  };
}
