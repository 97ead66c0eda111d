import type { Axis } from '../../geom/axis.js';
import { AXES } from '../../geom/axis.js';
import { byAxis } from '../../geom/box.js';
import { inches, mm } from '../../lengths/length.js';
import type { Hardware, Joint, Part, Piece } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { END_GRAIN } from '../../wood/screws.js';
import type { Verdict } from '../check.js';
import { familyOf, jointPath, partEntry, ratio, type Single } from '../grouped.js';
import { faceInPiece, type Standing } from '../standing.js';

type Facts = NonNullable<Hardware['screw']>;

/** A screw in the part that holds it: how much of it bites, and how near its point comes to a face. nm. */
export interface Bite {
  readonly body: Hardware;
  readonly screw: Facts;
  readonly joint?: Joint;
  readonly holds: Standing;
  readonly inside: number;
  /** From the point to the nearest face but the one by which it came in; less than nothing when it is out. */
  readonly left: number;
  /** That face is seen. */
  readonly shown: boolean;
  /** By a face of the part that holds it, or by an edge or an end. */
  readonly through: 'face' | 'edge';
  /** It runs along the grain of what holds it. */
  readonly endGrain: boolean;
}

/** Where the screw runs inside the box of what holds it, as shares of its length, and the axis by which it comes in. */
function stretch(
  s: Facts,
  { blank }: Standing,
): { readonly from: number; readonly to: number; readonly by: Axis } | undefined {
  let [from, to] = [0, 1];
  let by: Axis | undefined;
  for (const a of AXES) {
    const way = s.to[a] - s.from[a];
    if (way === 0) {
      if (s.from[a] < blank[a][0] || s.from[a] > blank[a][1]) return undefined;
      continue;
    }
    const ends = [(blank[a][0] - s.from[a]) / way, (blank[a][1] - s.from[a]) / way].sort((p, q) => p - q);
    const [enters = 0, leaves = 1] = ends;
    if (enters > from) [from, by] = [enters, a];
    to = Math.min(to, leaves);
  }
  return to > from && by !== undefined ? { from, to, by } : undefined;
}

/** Every screw whose facts are known, in the square part that holds it. */
export function bitesOf(piece: Piece, stands: ReadonlyMap<string, Standing>): Bite[] {
  return piece.hardware.flatMap((body): Bite[] => {
    const { screw } = body;
    const holds = screw && stands.get(screw.holds);
    const run = screw && holds && stretch(screw, holds);
    if (!screw || !holds || !run) return [];
    const joint = piece.joints.find((j) => body.id.startsWith(`${j.id}.`));
    const way = byAxis((a) => screw.to[a] - screw.from[a]);
    const sides = AXES.flatMap((a) =>
      ([-1, 1] as const).flatMap((side) => {
        const entered = a === run.by && side * way[a] < 0;
        const face = holds.blank[a][side > 0 ? 1 : 0];
        return entered ? [] : [{ a, side, left: side * (face - screw.to[a]) }];
      }),
    );
    const nearest = [...sides].sort((p, q) => p.left - q.left || p.a - q.a || p.side - q.side)[0];
    const own = holds.own;
    const grain = holds.part.grain;
    const main = AXES.find((a) => Math.abs(way[a]) > 0.9 * screw.length);
    return [
      {
        body,
        screw,
        ...(joint ? { joint } : {}),
        holds,
        inside: (run.to - run.from) * screw.length,
        left: nearest?.left ?? 0,
        shown: nearest !== undefined && seen(holds.part, nearest.a, nearest.side),
        through: main !== undefined && own[main] === holds.part.thickness ? 'face' : 'edge',
        endGrain:
          main !== undefined &&
          grain !== undefined &&
          own[main] === grain &&
          piece.stocks[holds.part.stock]?.kind === 'lumber',
      },
    ];
  });
}
const seen = (part: Part, axis: Axis, side: number): boolean =>
  part.show.some((f) => {
    const k = ['left', 'right', 'front', 'back', 'bottom', 'top'].indexOf(f);
    return faceInPiece(part, Math.floor(k / 2) as Axis, k % 2 === 0 ? -1 : 1) === FACE[axis][side > 0 ? 1 : 0];
  });
const FACE = [
  ['left', 'right'],
  ['front', 'back'],
  ['bottom', 'top'],
] as const;

/** What all judgements of one screw share. */
export function about(b: Bite, piece: Piece): Pick<Single, 'marks' | 'on' | 'of' | 'touches' | 'path'> {
  const clamped = piece.parts.find((p) => p.id === b.screw.clamps);
  const drawer = piece.drawers.find((d) => d.id === b.body.drawer);
  return {
    marks: [clamped?.mark ?? drawer?.mark ?? b.body.id],
    on: [b.holds.part.mark],
    of: b.joint ? familyOf(b.joint) : 'slides',
    touches: [...(b.joint ? [b.joint.id] : []), ...(clamped ? [clamped.id] : []), b.holds.part.id],
    path: b.joint ? jointPath(piece, b.joint) : partEntry(clamped ?? b.holds.part),
  };
}
const nameOf = (b: Bite): string => b.body.name.replace(/, for slides.*$/, '');

const TIP_SOURCE =
  'limit: common practice, 1/8 in (3 mm) before a face that is seen; 1/32 in (0.8 mm) before another: our default';

const least = (piece: Piece): number => (piece.units === 'in' ? inches(1 / 32) : mm(0.8));
const tipLimit = (b: Bite, piece: Piece): number =>
  b.shown ? (piece.units === 'in' ? inches(1 / 8) : mm(3)) : least(piece);

/** Does the point stay in the wood, and clear of a face that is seen? */
export function tip(b: Bite, piece: Piece): Single {
  const limit = tipLimit(b, piece);
  const near = least(piece);
  const verdict: Verdict = b.left < 0 || (b.shown && b.left < near) ? 'fail' : b.left < limit ? 'warning' : 'pass';
  const shorter = sayQuantity(quantity('fine', limit - b.left), piece.units);
  return {
    code: 'screw-tip',
    verdict,
    about: `${nameOf(b)} ends before ${b.shown ? 'a face that is seen' : 'the nearest face'} by`,
    figure: quantity('fine', b.left),
    limit: quantity('length', limit),
    margin: ratio(b.left, limit),
    ...(verdict === 'pass' ? {} : { remedy: `Take a screw shorter by ${shorter} at least, or sink its head less.` }),
    worked: {
      rule: 'from the point of the screw to the nearest face of the part that holds it, but the one it came in by',
      sources: [TIP_SOURCE],
      inputs: [
        { name: 'length of the screw', quantity: quantity('length', b.screw.length) },
        { name: 'of it in the part that holds', quantity: quantity('fine', b.inside) },
      ],
    },
    ...about(b, piece),
  };
}

/** About two thirds of a screw belong in the part that holds it. */
export function share(b: Bite, piece: Piece): Single {
  const figure = (100 * b.inside) / b.screw.length;
  const verdict: Verdict = figure >= 49 ? 'pass' : figure >= 100 / 3 ? 'note' : 'warning';
  // As much longer as the wood behind the point allows, no more than two thirds want.
  const longest = Math.min(3 * (b.screw.length - b.inside), b.screw.length + b.left - tipLimit(b, piece));
  const longer = longest - b.screw.length >= inches(1 / 8);
  return {
    code: 'screw-bite',
    verdict,
    about: `${nameOf(b)} bites with`,
    figure: quantity('share', figure),
    limit: quantity('share', 50),
    margin: ratio(figure, 50),
    ...(verdict === 'pass'
      ? {}
      : {
          remedy: longer
            ? `Take a screw up to ${sayQuantity(quantity('fine', longest), piece.units)} long.`
            : 'Sink its head deeper: the wood that holds it takes no longer screw.',
        }),
    worked: {
      rule: 'length in the part that holds / length of the screw',
      sources: ['two thirds: common practice; half passes, about what 3/4 in on 3/4 in allows: our default'],
      inputs: [
        { name: 'length of the screw', quantity: quantity('length', b.screw.length) },
        { name: 'of it in the part that holds', quantity: quantity('fine', b.inside) },
      ],
    },
    ...about(b, piece),
  };
}

/** Screws of which nothing is said: the part that holds them leans, or they pass it by. Told, by the joint. */
export function unjudged(piece: Piece, bites: readonly Bite[]): Single[] {
  const judged = new Set(bites.map((b) => b.body.id));
  return piece.hardware.flatMap((body): Single[] => {
    const { screw } = body;
    if (!screw || judged.has(body.id)) return [];
    const parts = piece.parts.filter((p) => [screw.clamps, screw.holds].includes(p.id));
    const joint = piece.joints.find((j) => body.id.startsWith(`${j.id}.`));
    return [
      {
        code: 'screw-unjudged',
        verdict: 'note',
        about: `${body.name} is not judged where a part leans, length`,
        figure: quantity('length', screw.length),
        worked: { rule: 'length of the screw', sources: ['square parts only'], inputs: [] },
        marks: parts.length > 0 ? parts.map((p) => p.mark) : [body.id],
        touches: [...(joint ? [joint.id] : []), ...parts.map((p) => p.id)],
        path: joint ? jointPath(piece, joint) : ['joints'],
      },
    ];
  });
}

/** Screws in end grain are flagged: tests give them about three quarters of side grain, but without any reliance. */
export function endGrain(b: Bite, piece: Piece): Single[] {
  if (!b.endGrain) return [];
  return [
    {
      code: 'screw-end-grain',
      verdict: 'warning',
      about: `${nameOf(b)} holds in end grain, where it is counted on for`,
      figure: quantity('force', 0),
      remedy:
        'Turn the screw into side grain, or let a dowel, a cleat or a joint that goes into the wood carry the load.',
      worked: {
        rule: 'end grain holds about three quarters of side grain, but unevenly: nothing is counted',
        sources: [`${END_GRAIN.source}; not counted: our default`],
        inputs: [{ name: 'of it in the part that holds', quantity: quantity('fine', b.inside) }],
      },
      ...about(b, piece),
    },
  ];
}
