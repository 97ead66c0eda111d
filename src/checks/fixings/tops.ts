import { width } from '../../geom/box.js';
import { inches, mm, toMm } from '../../lengths/length.js';
import type { Part, Piece } from '../../piece/piece.js';
import { quantity } from '../../value/quantity.js';
import { drawnAllowed } from '../../wood/screws.js';
import type { Verdict } from '../check.js';
import { jointPath, partEntry, ratio, type Single } from '../grouped.js';
import type { Standing } from '../standing.js';
import type { Bite } from './bite.js';
import { about } from './bite.js';

const GRAVITY = 9.80665;
const UP = 2;

/** What lies flat on top of everything: the top of a table or a case. */
export function topsOf(stands: ReadonlyMap<string, Standing>): readonly Standing[] {
  const all = [...stands.values()];
  const highest = Math.max(...all.map((s) => s.box[UP][1]));
  return all.filter((s) => s.box[UP][1] === highest && s.own[UP] === s.part.thickness);
}

/** Screws from below into one top, by the part that they go through. */
function byRail(top: Standing, bites: readonly Bite[]): ReadonlyMap<string, readonly Bite[]> {
  const rails = new Map<string, Bite[]>();
  for (const b of bites)
    if (b.holds.part.id === top.part.id && b.screw.to[UP] > b.screw.from[UP])
      rails.set(b.screw.clamps, [...(rails.get(b.screw.clamps) ?? []), b]);
  return rails;
}

const FEW_SOURCE = 'limit: our default, one for every 12 to 15 in (300 to 380 mm) of rail, never fewer than 2';

/** Fixings of a top: how many a rail has and how far apart they stand, and whether the top may be lifted by them. */
export function topFixings(
  piece: Piece,
  stands: ReadonlyMap<string, Standing>,
  bites: readonly Bite[],
  weigh: (part: string) => number,
): Single[] {
  return topsOf(stands).flatMap((top): Single[] => {
    const rails = byRail(top, bites);
    const each = [...rails]
      .sort(([p], [q]) => (p < q ? -1 : 1))
      .flatMap(([rail, own]): Single[] => {
        const s = stands.get(rail);
        return s ? spaced(s, own, piece) : [];
      });
    return [...each, ...lifted(top, [...rails.values()].flat(), piece, weigh)];
  });
}

function spaced(rail: Standing, own: readonly Bite[], piece: Piece): Single[] {
  const first = own[0];
  if (!first) return [];
  const along = width(rail.box[0]) >= width(rail.box[1]) ? 0 : 1;
  const at = own.map((b) => b.screw.from[along]).sort((p, q) => p - q);
  const gaps = at.slice(1).map((x, i) => x - (at[i] ?? x));
  const most = piece.units === 'in' ? inches(15) : mm(380);
  const widest = Math.max(0, ...gaps);
  const few = own.length < 2;
  const far = widest > most;
  // Two at least; as many as keep them within the limit.
  const wanted = Math.max(
    2,
    Math.ceil((at.at(-1) ?? 0) - (at[0] ?? 0) > 0 ? ((at.at(-1) ?? 0) - (at[0] ?? 0)) / most : 0) + 1,
  );
  const worked = {
    rule: 'screws from below through one part into the top, and the widest space between two',
    sources: [FEW_SOURCE],
    inputs: [{ name: 'rail', quantity: quantity('length', width(rail.box[along])) }],
  };
  const verdict = (bad: boolean): Verdict => (bad ? 'warning' : 'pass');
  return [
    {
      code: 'top-fixings-few',
      verdict: verdict(few),
      about: 'holds the top with fixings, in number',
      figure: quantity('count', own.length),
      limit: quantity('count', 2),
      margin: ratio(own.length, 2),
      ...(few ? { remedy: 'Give it two fixings at least.' } : {}),
      worked,
      ...about(first, piece),
    },
    ...(few
      ? []
      : [
          {
            code: 'top-fixings-far',
            verdict: verdict(far),
            about: 'holds the top with fixings that stand apart by',
            figure: quantity('length', widest),
            limit: quantity('length', most),
            margin: ratio(most, widest),
            ...(far ? { remedy: `Give it ${wanted} fixings.` } : {}),
            worked,
            ...about(first, piece),
          },
        ]),
  ];
}

/** The piece lifted by its top: all that hangs below on the screws, counted in side grain only. */
function lifted(top: Standing, own: readonly Bite[], piece: Piece, weigh: (part: string) => number): Single[] {
  const stock = piece.stocks[top.part.stock];
  const each = (b: Bite): ReturnType<typeof drawnAllowed> =>
    drawnAllowed(stock, b.through, toMm(b.screw.diameter), toMm(b.inside));
  const glued = piece.joints.some(
    (j) =>
      (j.entering === top.part.id || j.receiving === top.part.id) &&
      j.entering !== j.receiving &&
      j.traits.glue !== 'none',
  );
  const one = own[0] && each(own[0]);
  if (!one || glued) return [];
  const below = piece.parts.reduce((sum, p: Part) => sum + (p.id === top.part.id ? 0 : weigh(p.id)), 0);
  const hangs = below * GRAVITY;
  const holds = own.reduce((sum, b) => sum + (b.endGrain ? 0 : (each(b)?.newtons ?? 0)), 0);
  const verdict: Verdict = holds >= hangs ? 'pass' : 'fail';
  const first = own[0] as Bite;
  return [
    {
      code: 'top-lifts-off',
      verdict,
      marks: [top.part.mark],
      about: 'carries, lifted by it, on its fixings',
      figure: quantity('force', hangs),
      limit: quantity('force', holds),
      margin: ratio(holds, hangs),
      ...(verdict === 'pass'
        ? {}
        : { remedy: 'Give it more fixings, or longer ones, and never lift the piece by its top.' }),
      worked: {
        rule: `weight of everything else, against the sum over all screws into it of ${one.rule}`,
        sources: [one.source, 'an estimate, not a test'],
        inputs: [
          { name: 'screws', quantity: quantity('count', own.length) },
          { name: 'thread of the first in it', quantity: quantity('fine', first.inside) },
          {
            name: 'specific gravity',
            quantity: quantity('ratio', one.gravity.value),
            source: one.gravity.source,
            ...(one.gravity.memory ? { memory: true } : {}),
          },
          { name: 'hangs on it', quantity: quantity('mass', below) },
        ],
      },
      touches: [top.part.id, ...new Set(own.map((b) => b.screw.clamps))],
      path: first.joint ? jointPath(piece, first.joint) : partEntry(top.part),
    },
  ];
}
