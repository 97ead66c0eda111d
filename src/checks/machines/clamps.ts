import { overAll } from '../../geom/growth.js';
import type { Axis } from '../../geom/axis.js';
import { NM_PER_IN, NM_PER_MM, type Length } from '../../lengths/length.js';
import type { Joint, Part, Piece } from '../../piece/piece.js';
import { CLAMP_MORE as MORE, clampsFor, openingFor, RULE_CLAMPS, withOpening } from '../../shop/clamps.js';
import type { ShopProfile } from '../../shop/profile.js';
import { roughOf } from '../../shop/rough.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { faceAxis } from '../../geom/axis.js';
import { standingsOf, type Standing } from '../standing.js';
import { jointPath, partEntry, ratio, type Single } from '../grouped.js';

const RULE_OPENING = 'the work and 4 in for jaws and cauls';
const PRACTICE = 'common practice';

const widest = (profile: ShopProfile): Length =>
  profile.clamps.reduce<Length>((w, c) => (c.opening > w ? c.opening : w), 0 as Length);

/** What is glued up against the clamps of the shop: panels, and joints that do not hold by themselves. */
export function glueUps(piece: Piece, profile: ShopProfile): Single[] {
  if (profile.clamps.length === 0) return [];
  return [...piece.parts.flatMap((p) => panel(p, piece, profile)), ...assemblies(piece, profile)];
}

function panel(part: Part, piece: Piece, profile: ShopProfile): Single[] {
  const staves = part.staves ?? 1;
  if (staves < 2) return [];
  const sizes = [overAll(part, part.thickness), overAll(part, part.width), overAll(part, part.length)] as const;
  const { width: wide, length: long, jointed } = roughOf(sizes, piece.shop.allowance, piece.units, staves);
  const opening = openingFor(wide);
  const wanted = clampsFor(long, jointed);
  const has = withOpening(profile.clamps, opening);
  const good = has >= wanted;
  const whole = piece.units === 'in' ? NM_PER_IN : 10 * NM_PER_MM;
  const say = (v: number): string => sayQuantity(quantity('length', Math.ceil(v / whole) * whole), piece.units);
  return [
    {
      code: 'clamps-panel',
      verdict: good ? 'pass' : 'warning',
      about: `glued up from ${staves} staves, clamps that open ${say(opening)}`,
      figure: quantity('count', wanted),
      limit: quantity('count', has),
      margin: ratio(has, wanted),
      worked: {
        rule: RULE_CLAMPS,
        sources: [PRACTICE, 'the shop file'],
        inputs: [
          { name: 'blank, long', quantity: quantity('length', long) },
          { name: 'blank, wide', quantity: quantity('length', wide) },
          { name: 'jaws and cauls', quantity: quantity('length', MORE), source: PRACTICE },
          { name: 'clamps that open so far', quantity: quantity('count', has), source: 'shop' },
        ],
      },
      ...(good
        ? {}
        : {
            remedy: `It wants ${wanted} clamps of ${say(opening)}: borrow ${wanted - has}, glue it in two halves, or rub the joints.`,
          }),
      touches: [part.id],
      path: partEntry(part),
      marks: [part.mark],
    },
  ];
}

/** A glued joint that is drawn home by clamps, from outside to outside of what it joins. */
function assemblies(piece: Piece, profile: ShopProfile): Single[] {
  const stands = standingsOf(piece);
  const most = widest(profile);
  const wants = piece.joints.filter(
    (j) =>
      j.traits.glue !== 'none' &&
      (j.traits.holds === 'no' || j.traits.holds === 'aligns') &&
      j.entering !== j.receiving,
  );
  const seen = new Set<string>();
  return wants.flatMap((j): Single[] => {
    const entering = stands.get(j.entering)?.part;
    const axis = clampAxis(j);
    if (!entering || axis === undefined || seen.has(`${j.joint} ${j.entering}`)) return [];
    seen.add(`${j.joint} ${j.entering}`);
    const opening = reach(j, axis, piece, stands) + MORE;
    const good = opening <= most;
    return [
      {
        code: 'clamps-short',
        verdict: good ? 'pass' : 'warning',
        about: 'drawn together by clamps',
        figure: quantity('length', opening),
        limit: quantity('length', most),
        margin: ratio(most, opening),
        worked: {
          rule: RULE_OPENING,
          sources: [PRACTICE, 'the shop file'],
          inputs: [
            { name: 'from outside to outside', quantity: quantity('length', opening - MORE) },
            { name: 'jaws and cauls', quantity: quantity('length', MORE), source: PRACTICE },
            { name: 'longest clamp', quantity: quantity('length', most), source: 'shop' },
          ],
        },
        ...(good
          ? {}
          : {
              remedy: 'Two clamps hooked together, a band, wedges against a batten, or a joint that holds by itself.',
            }),
        touches: [j.entering, j.receiving].sort(),
        path: jointPath(piece, j),
        marks: [entering.mark],
        of: j.joint,
      },
    ];
  });
}
const clampAxis = (j: Joint): Axis | undefined => {
  const first = j.way[0];
  return first === undefined ? undefined : faceAxis(first);
};
/** From outside to outside along the axis of what the joint's entry joins on this part, shoulder to shoulder; nm. */
function reach(j: Joint, axis: Axis, piece: Piece, stands: ReadonlyMap<string, Standing>): number {
  const ids = new Set([
    j.entering,
    ...piece.joints.filter((o) => o.joint === j.joint && o.entering === j.entering).map((o) => o.receiving),
  ]);
  const spans = [...ids].flatMap((id) => {
    const s = stands.get(id);
    return s ? [s.box[axis]] : [];
  });
  return Math.max(...spans.map((s) => s[1])) - Math.min(...spans.map((s) => s[0]));
}
