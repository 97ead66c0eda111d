import { bite, screwPlaces, slideScrewBodies, type ComponentCut, type SlideSite } from '../components/index.js';
import type { Diagnostic } from '../diag/diagnostic.js';
import { faceAxis, faceSign, third } from '../geom/axis.js';
import { meet, width } from '../geom/box.js';
import type { Length } from '../lengths/length.js';
import type { Body } from './body.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import type { Hardware } from './piece.js';

/** What the screws of all slides are chosen with. */
export interface SlideScrewContext {
  readonly bodies: ReadonlyMap<string, Body>;
  readonly step: Length;
  readonly ev: Evaluator;
  readonly findings: Findings;
}

/** The part of the case that a slide stands on at a place along it: the one beside the drawer, or one set flush with it. */
function carrierAt(site: SlideSite, deep: number, ctx: SlideScrewContext): Body | undefined {
  const inside = site.case.face + (site.hand === 'left' ? -1 : 1);
  const at = [inside, deep, site.line] as const;
  const holds = (b: Body): boolean => b.box.every(([lo, hi], a) => lo <= (at[a] as number) && (at[a] as number) <= hi);
  const named = ctx.bodies.get(site.case.part);
  if (named && holds(named)) return named;
  return [...ctx.bodies.values()]
    .filter((b) => b.own.drawer === undefined && holds(b))
    .sort((a, b) => (a.id < b.id ? -1 : 1))[0];
}
/** Is there a slide on the other face of the same part, so that their screws come from both sides at one place? */
const opposed = (
  site: SlideSite,
  part: Body,
  deep: number,
  all: readonly SlideSite[],
  ctx: SlideScrewContext,
): boolean =>
  all.some(
    (s) =>
      s.hand !== site.hand &&
      Math.abs(s.line - site.line) < site.family.height &&
      s.over[0] <= deep &&
      deep <= s.over[1] &&
      carrierAt(s, deep, ctx) === part,
  );

/**
 * Screws of every slide as bodies. The case takes the longer ones; the drawer's shorter ones where a part carries slides on
 * both faces and two long tips would meet in it, or where a long one would come through (common practice). A note names
 * each part of the first sort.
 */
export function slideScrews(sites: readonly SlideSite[], ctx: SlideScrewContext): Hardware[] {
  return sites.flatMap((site) => {
    const [long, short] = site.family.screws;
    const deep = bite(long, site);
    const carriers = screwPlaces(site, long, ctx.step).map((at) => ({ at, part: carrierAt(site, at, ctx) }));
    const shared = carriers.filter(
      ({ at, part }) => part && width(part.box[0]) < 2 * deep && opposed(site, part, at, sites, ctx),
    );
    for (const { part } of shared) if (part) ctx.findings.add(meetInside(part, short.name, ctx));
    const thin = carriers.some(({ part }) => part && width(part.box[0]) <= deep);
    const chosen = shared.length > 0 || thin ? { ...short, into: long.into, count: long.count } : long;
    return [
      ...slideScrewBodies(site, chosen, ctx.step, (at) => carrierAt(site, at, ctx)?.id ?? site.case.part),
      ...slideScrewBodies(site, short, ctx.step, () => site.box.part),
    ];
  });
}
const meetInside = (part: Body, short: string, ctx: SlideScrewContext): Diagnostic => ({
  code: 'slide-screws-meet',
  severity: 'note',
  path: part.path,
  message: `${part.own.mark ?? part.id} is ${ctx.ev.say(width(part.box[0]))} thick and carries slides on both faces: longer screws would meet.`,
  hint: `Use ${short} there.`,
  touches: [part.id],
});

/**
 * The pencil line of a slide on every part of the case that it passes over: the part beside the drawer and whatever is set
 * flush with it (a packer between legs), on each as far as its own wood goes.
 */
export function slideLines(made: ComponentCut, bodies: ReadonlyMap<string, Body>): ComponentCut[] {
  const { cut, part } = made;
  const beside = bodies.get(part);
  if (cut.shape !== 'mark' || cut.as !== 'slide-line' || !beside || beside.own.drawer !== undefined) return [made];
  const [axis, side] = [faceAxis(cut.face), faceSign(cut.face) > 0 ? 1 : 0];
  const up = third(axis, cut.axis);
  const carries = (b: Body): boolean =>
    b.own.drawer === undefined &&
    b.box[axis][side] === beside.box[axis][side] &&
    b.box[up][0] < cut.at &&
    cut.at < b.box[up][1];
  const lines = [...bodies.values()].filter(carries).flatMap((b): ComponentCut[] => {
    const over = meet(b.box[cut.axis], cut.over);
    return over && over[0] < over[1] ? [{ part: b.id, cut: { ...cut, over } }] : [];
  });
  return lines.length > 0 ? lines : [made];
}
