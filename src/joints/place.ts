import type { Diagnostic, Severity } from '../diag/diagnostic.js';
import type { Axis, Face } from '../geom/axis.js';
import { FACES, faceAxis, faceOf, faceSign } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { width } from '../geom/box.js';
import { formatLength } from '../lengths/format.js';
import type { Length } from '../lengths/length.js';
import { inches, mm, nm, snap, snapDown } from '../lengths/length.js';
import type { BoxCut, CutCommon } from '../words/cut.js';
import type { Claim, Given, Resolved, Site, Traits, World } from './joint.js';
import { text } from './fields.js';

/** Site axes by name. */
export const INTO: Axis = 0;
export const THICK: Axis = 1;
export const WIDE: Axis = 2;

/** The plain figures that most rules start from, nm. */
export const thickness = (site: Site): Length => nm(width(site.entering.box[THICK]));
export const breadth = (site: Site): Length => nm(width(site.entering.box[WIDE]));
/** Wood of the receiving part along the insertion axis. */
export const wall = (site: Site): Length => nm(width(site.receiving.box[INTO]));

/** A round figure of the trade in the file's own units. */
export const either = (world: World, inch: number, millimetres: number): Length =>
  world.units === 'in' ? inches(inch) : mm(millimetres);
/** Rounds a rule's outcome down to 1/16 in or 0.5 mm, as a maker would set a gauge. */
export const gaugeDown = (world: World, value: number): Length => snapDown(value, either(world, 1 / 16, 0.5));
export const onStep = (world: World, value: number): Length => snap(value, world.step);
export const fig = (site: Site, value: number): string => formatLength(value, site.world.units);

/** A span of `size` centred on `centre`. */
export const about = (centre: number, size: number): Span => {
  const lo = nm(centre - size / 2);
  return [lo, lo + size];
};

/** Findings of a joint point at its entry in the definition and touch both parts. */
export function finding(
  site: Site,
  severity: Severity,
  code: string,
  message: string,
  more: { readonly field?: string; readonly hint?: string } = {},
): Diagnostic {
  return {
    code,
    severity,
    path: more.field === undefined ? ['joints', site.joint] : ['joints', site.joint, more.field],
    message,
    ...(more.hint === undefined ? {} : { hint: more.hint }),
    touches: [site.entering.part, site.receiving.part, site.id],
  };
}
export const isFace = (word: string | undefined): word is Face => (FACES as readonly string[]).includes(word ?? '');

/** A field that names a face of the piece, as a face of the site; undefined when it is not given. */
export function sideOf(spec: Resolved, key: string, site: Site): Face | undefined {
  const word = text(spec, key);
  return isFace(word) ? site.direction(word) : undefined;
}
/** The piece's word for a site face. */
export const pieceWord = (site: Site, face: Face): Face => FACES.find((f) => site.direction(f) === face) ?? face;

/** End of a span on the side that a face points to. */
export const endOf = (s: Span, face: Face): number => (faceSign(face) > 0 ? s[1] : s[0]);
/** The end moved inwards by `by`. */
export const inwards = (s: Span, face: Face, by: number): number => endOf(s, face) - faceSign(face) * by;

/** What all cuts of one joint in one part share. */
export const common = (
  site: Site,
  number: number,
  in_: 'entering' | 'receiving',
  rank: CutCommon['rank'],
): Pick<CutCommon, 'id' | 'from' | 'mates' | 'rank'> => ({
  id: `${site.id}.${number}`,
  from: site.joint,
  mates: [in_ === 'entering' ? site.receiving.part : site.entering.part],
  rank,
});

/** What a joint gives that cuts nothing and lets nothing grow. */
export const uncut = (traits: Traits, sizes: Given['sizes']): Given => ({
  growth: { entering: {} },
  entering: [],
  receiving: [],
  bodies: [],
  traits,
  findings: [],
  sizes,
});
export const resists = (tension: number, shear: number, racking: number, twist: number): Traits['resists'] => ({
  tension,
  shear,
  racking,
  twist,
});

/** `spec` with a face word that does not lie on `axis` is an error; the finding, or undefined. */
export function offAxis(spec: Resolved, key: string, axis: Axis, site: Site): Diagnostic | undefined {
  const face = sideOf(spec, key, site);
  if (face === undefined || faceAxis(face) === axis) return undefined;
  const a = pieceWord(site, faceOf(axis, -1));
  const b = pieceWord(site, faceOf(axis, 1));
  return finding(site, 'error', 'joint-side', `"${text(spec, key) ?? ''}" is no side on which this joint can lie.`, {
    field: key,
    hint: `Say "${a}" or "${b}".`,
  });
}

/** Grooves and rabbets of the entering part that come out at the end which meets the receiving part. */
export const runningOut = (site: Site): BoxCut[] =>
  site.claims.flatMap(({ part, cut }) =>
    part === site.entering.part &&
    cut.shape === 'box' &&
    (cut.as === 'groove' || cut.as === 'rabbet') &&
    faceAxis(cut.face) !== INTO &&
    cut.at[INTO][1] >= 0 &&
    cut.at[INTO][0] < 0
      ? [cut]
      : [],
  );
/** The same grooves and rabbets carried on over the wood by which the part grows: a saw or a cutter runs right through. */
export const carriedOn = (site: Site, growth: number): BoxCut[] =>
  runningOut(site).map((cut, i) => ({
    ...cut,
    id: `${site.id}.out.${i + 1}`,
    at: [[0, growth], cut.at[THICK], cut.at[WIDE]],
  }));

/** Trenches of equal rank may run into one another; whether what stands in them meets is proved on the solids. */
export const trench = (site: Site, clash: Claim): BoxCut | undefined =>
  clash.part === site.receiving.part && clash.cut.shape === 'box' && clash.rank === 1 ? clash.cut : undefined;
export const runsInto = (site: Site, clash: Claim): Diagnostic =>
  finding(site, 'error', 'joints-collide', `It runs into a cut of joint "${clash.joint}" in part "${clash.part}".`, {
    hint: 'Move one of the parts, or make one of the cuts shallower.',
  });
