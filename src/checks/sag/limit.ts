import { need } from '../../data/printed.js';
import { SAG_AWS, SAG_FINE, SAG_PANELS } from '../../data/tables/shelves.js';
import { meet } from '../../geom/box.js';
import type { Piece } from '../../piece/piece.js';
import { compareMarks } from '../../words/markOrder.js';
import type { PartBody } from '../bodies.js';
import type { DrawerRoom } from '../drawerRoom.js';
import type { Borne } from './flow.js';
import type { Member } from './frame.js';
import type { Settled } from './settle.js';

/** At first under its load: a 144th of the span. In years a 240th, where the eye begins to see it. Fine work: a 384th. */
const first = need(SAG_AWS, 'shelf', 'limit');
const seen = need(SAG_PANELS, 'seen', 'limit');
export const FINE = need(SAG_FINE, 'fine', 'limit');
export const FIRST = first.value;
export const FIRST_SOURCE = `${first.source}: 1/${FIRST} of the span`;
const IN_YEARS = seen.value;
const YEARS_SOURCE = `${seen.source}: 1/${IN_YEARS} of the span, where sag begins to be seen`;
export const RULE =
  'equation 9-2 of the Wood Handbook, bending only with the modulus of the tables: even load on two rests 5/384 W L³ / (E I), changing sections and points by the work of a unit load';

/** How far a member may sag in years, m, by its span; and who says so. */
export interface Limit {
  readonly over: (span: number) => number;
  readonly source: string;
}
/** What is judged of one member: its stretch that sags most for its length. */
export interface Judged {
  readonly all: readonly Borne[];
  readonly borne: Borne;
  readonly settled: Settled;
  readonly limit: Limit;
}

/** One limit for a member: as said; for a drawer's bottom, out of sight, that of a shelf at first; else where sag is seen. */
export function limitOf(piece: Piece, { member, stretches }: Borne, rooms: readonly DrawerRoom[]): Limit {
  const said = piece.use?.sag[member.part.id];
  if (said !== undefined) return { over: (span) => span / said, source: 'as said under "use"' };
  if (member.part.drawer !== undefined)
    return { over: (span) => span / FIRST, source: `out of sight, in years too: ${FIRST_SOURCE}` };
  const tied = stretches.flatMap((t) => t.tied);
  // A drawer that goes down with the member keeps its gap.
  const goesWith = (r: DrawerRoom): boolean =>
    tied.some((t) => t.box[2][1] * 1e-6 <= r.bounds[2][0] && r.bodies.some((b) => overlaps(t, b)));
  const below = rooms
    .filter((r) => !goesWith(r))
    .map((r) => ({ mark: r.drawer.mark, gap: gapOver(r, member) }))
    .filter(({ gap }) => gap >= 0 && gap <= CLOSE)
    .sort((p, q) => p.gap - q.gap || compareMarks(p.mark, q.mark));
  const least = below[0];
  return {
    over: (span) => Math.min(span / IN_YEARS, least ? least.gap * 1e-3 : Infinity),
    source: least ? `${YEARS_SOURCE}, or the gap over ${least.mark} where that is less` : YEARS_SOURCE,
  };
}
const overlaps = (m: Member, b: PartBody): boolean =>
  ([0, 1] as const).every((a) => meet(m.box[a], [b.bounds[a][0] * 1e6, b.bounds[a][1] * 1e6]) !== undefined);
/** From the highest part of a drawer that stands under a member to the member, mm; where nothing does, infinite. */
const gapOver = (r: DrawerRoom, m: Member): number =>
  m.box[2][0] * 1e-6 - Math.max(-Infinity, ...r.bodies.filter((b) => overlaps(m, b)).map((b) => b.bounds[2][1]));
export const passes = (s: Settled, limit: Limit): boolean => s.now <= s.span / FIRST && s.later <= limit.over(s.span);
/** A drawer this near under a member stands under it, mm. */
const CLOSE = 12;
