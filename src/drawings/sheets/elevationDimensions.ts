import { airDimension, furtherSizes, measureFigure } from '../chains.js';
import { placeDimensions } from '../dimensions.js';
import type { Chain, DimensionPlan, Link, Rect } from '../dimensions.js';
import { faceAxis, faceSign, others } from '../../geom/axis.js';
import { byAxis } from '../../geom/box.js';
import type { Vec3 } from '../../geom/box.js';
import { dot, place, turn } from '../../geom/placement.js';
import { NM_PER_MM } from '../../lengths/length.js';
import type { Part } from '../../piece/piece.js';
import type { TaperCut } from '../../words/cut.js';
import { ranges } from '../../words/markOrder.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import { bestProbe, DEPTHS, HEIGHTS, middles, probe, trimmed, WIDTHS } from '../model.js';
import type { Standing, Stretch } from '../model.js';
import type { Item } from '../picture.js';
import type { View } from '../views.js';
import { onPaper } from '../views.js';
import type { Arrangement } from './arrangement.js';

const low = (input: Prepared): number => {
  const [a, b] = input.model.overall[2];
  return a + (b - a) * 0.03;
};
/** Widths just above the floor: the case, or the legs and what is between them. */
const feet = (input: Prepared): Stretch[] => trimmed(probe(input.model, WIDTHS, low(input)));
const sideFeet = (input: Prepared): Stretch[] => trimmed(probe(input.model, DEPTHS, low(input)));
/** How far a part reaches along an axis just above the floor; undefined when it does not stand there. mm. */
function footOf(input: Prepared, id: string | undefined, axis: 0 | 1): readonly [number, number] | undefined {
  const solid = input.solids.parts.find((s) => s.id === id);
  const part = input.piece.parts.find((p) => p.id === id);
  if (!solid || !part) return undefined;
  const placed = { op: 'placed', by: part.place, of: solid.recipe } as const;
  const rings = input.kernel.slice(placed, [0, 0, low(input) / NM_PER_MM], [1, 0, 0], [0, 1, 0]);
  const all = rings.flatMap((r) => r.map((p) => p[axis]));
  return all.length === 0 ? undefined : [Math.min(...all), Math.max(...all)];
}
/** True where the wood at the floor really is where the stretches say (no taper has moved it). */
function reaches(input: Prepared, member: Stretch | undefined, axis: 0 | 1, ends: readonly ('from' | 'to')[]): boolean {
  const foot = footOf(input, member?.id, axis);
  if (!foot || !member) return false;
  return ends.every((e) => Math.abs(foot[e === 'from' ? 0 : 1] - member[e] / NM_PER_MM) < 0.05);
}
const outside = (input: Prepared, s: readonly Stretch[], axis: 0 | 1): boolean =>
  reaches(input, s[0], axis, ['from']) && reaches(input, s.at(-1), axis, ['to']);
const between = (input: Prepared, s: readonly Stretch[], axis: 0 | 1): boolean =>
  reaches(input, s[0], axis, ['to']) && reaches(input, s[2], axis, ['from']);

/**
 * Two legs that taper: the widths above the tapers, how far up that is (nm), and the size of the foot in words. Undefined
 * where the wood at the floor is as wide as the parts are.
 */
function taperedFeet(
  input: Prepared,
  under: readonly Stretch[],
): { readonly stretches: Stretch[]; readonly inset: number; readonly words: string[] } | undefined {
  if (!isPair(under) || between(input, under, 0)) return undefined;
  const isFoot = (s: Standing): boolean => s.square && s.shoulder[2][0] <= low(input);
  const tapers = input.model.case
    .filter(isFoot)
    .flatMap(({ part }) =>
      part.cuts.flatMap((c) => (c.shape === 'taper' ? [{ part, c, high: heightOf(part, c) }] : [])),
    );
  if (!tapers.some(({ part }) => part.id === under[0]?.id || part.id === under[2]?.id)) return undefined;
  const [floor] = input.model.overall[2];
  const inset = Math.max(...tapers.map((t) => t.high)) - floor;
  const said = tapers.map(({ part, c, high }) => ({
    mark: part.mark,
    words: `taper below ${printed(input, high - floor)} to ${printed(input, part.size[faceAxis(c.face)].value - c.off)} at the foot`,
  }));
  const words = [...new Set(said.map((t) => t.words))].map((w) => {
    const marks = [...new Set(said.flatMap((t) => (t.words === w ? [t.mark] : [])))];
    return `${ranges(marks).join(' ')} ${w}`;
  });
  return { stretches: [...under], inset, words };
}
/** Where a taper begins, above the origin, nm. */
function heightOf(part: Part, c: TaperCut): number {
  const at = byAxis((a) => (a === faceAxis(c.end) ? c.begin : 0));
  return place(part.place, at)[2];
}

/** Two members with air between: the middle figure stands in that air. */
const isPair = (s: readonly Stretch[]): boolean =>
  s.length === 3 && s[0]?.kind === 'member' && s[1]?.kind === 'air' && s[2]?.kind === 'member';
/** Widths of several compartments beside one another, of which no table tells; no more than prints in one chain. */
function compartments(input: Prepared): Stretch[] {
  const [bottom, top] = input.model.overall[2];
  const heights = [0.3, 0.5, 0.7, 0.85].map((f) => bottom + (top - bottom) * f);
  const rows = [...middles(input.model, 2), ...heights].map((at) => trimmed(probe(input.model, WIDTHS, at)));
  // Air between two members, and a member between two airs.
  const rooms = (s: readonly Stretch[]): number => s.filter((x, i) => x.kind === 'air' && s[i - 1]?.kind === 'member' && s[i + 1]?.kind === 'member').length; // prettier-ignore
  const best = rows.reduce<Stretch[]>((m, s) => (rooms(s) > rooms(m) ? s : m), []);
  return rooms(best) >= 2 && best.length <= 13 ? best : [];
}
/** Lanes of dimensions that will stand under the views. */
export const lanesBelow = (input: Prepared): number =>
  [feet(input), sideFeet(input)].some((s) => s.length > 1 && !isPair(s)) ||
  taperedFeet(input, feet(input)) ||
  compartments(input).length > 0
    ? 2
    : 1;

/** Stretches as links along the paper axis of a view, low paper coordinate first. */
function links(input: Prepared, view: View, axis: 0 | 1 | 2, stretches: readonly Stretch[]): Link[] {
  const paperAxis = Math.abs(view.direction.right[axis]) > 0.5 ? 0 : 1;
  const at = (v: number): number =>
    onPaper(view, [axis === 0 ? v : 0, axis === 1 ? v : 0, axis === 2 ? v : 0])[paperAxis];
  return stretches
    .map((s): Link => {
      const [from, to] = [at(s.from), at(s.to)];
      const mark =
        input.piece.parts.find((p) => p.id === s.id)?.mark ?? input.piece.drawers.find((d) => d.id === s.id)?.mark;
      return {
        from: Math.min(from, to),
        to: Math.max(from, to),
        figure: printed(input, s.to - s.from),
        nm: s.to - s.from,
        ...(mark ? { name: mark } : {}),
      };
    })
    .sort((a, b) => a.from - b.from);
}
const whole = (stretches: readonly Stretch[]): Stretch[] => {
  const [first, last] = [stretches[0], stretches.at(-1)];
  return first && last ? [{ from: first.from, to: last.to, kind: 'member' }] : [];
};

export interface ElevationDimensions {
  readonly views: readonly { readonly id: string; readonly plan: DimensionPlan }[];
  readonly air: readonly Item[];
  /** What found no place, in words. */
  readonly further: readonly string[];
  readonly heights?: { readonly words: string; readonly at: [number, number] };
}
/** All dimensions of the three views. */
export function elevationDimensions(input: Prepared, lay: Arrangement, marks: readonly Rect[]): ElevationDimensions {
  const { model } = input;
  const overall = (axis: 0 | 1 | 2): Stretch[] => [
    { from: model.overall[axis][0], to: model.overall[axis][1], kind: 'member' },
  ];
  const { front, side, plan } = lay;
  const under = feet(input);
  const chains: Chain[] = [];
  const stack = probe(model, HEIGHTS, bestProbe(model, HEIGHTS, middles(model, 0)));
  if (stack.length > 1) chains.push({ id: 'heights', side: 'left', links: links(input, front, 2, stack) });
  chains.push({ id: 'height', side: 'left', links: links(input, front, 2, overall(2)) });
  const caseWidth = whole(under);
  const alike =
    outside(input, under, 0) && caseWidth[0]?.from === model.overall[0][0] && caseWidth[0]?.to === model.overall[0][1];
  const air: Item[] = [];
  if (isPair(under) && under[1]) {
    if (between(input, under, 0)) air.push(...betweenFeet(input, front, under[1]));
  } else if (under.length > 1) chains.push({ id: 'feet', side: 'below', links: links(input, front, 0, under) });
  const row = compartments(input);
  if (row.length > under.length) chains.push({ id: 'widths', side: 'below', links: links(input, front, 0, row) });
  const tapered = taperedFeet(input, under);
  if (tapered) {
    const mine = links(input, front, 0, tapered.stretches);
    const inner = tapered.inset / NM_PER_MM / lay.oneTo;
    const inset = (i: number): [number, number] => [i === 0 ? 0 : inner, i === mine.length - 1 ? 0 : inner];
    chains.push({ id: 'members', side: 'below', links: mine.map((l, i) => ({ ...l, inset: inset(i) })) });
  }
  if (outside(input, under, 0)) chains.push({ id: 'case', side: 'below', links: links(input, front, 0, caseWidth) });
  if (!alike) chains.push({ id: 'width', side: 'above', links: links(input, front, 0, overall(0)) });
  const measure = measureFigure(input.faces);
  // Where `adds up to` will stand.
  const sumsBox = { x: front.box.x - (tapered ? 37 : 32), y: front.box.y + front.box.h + 2.4, w: 27.5, h: 3.8 };
  const below = lanesBelow(input) > 1 ? 20 : 9.4;
  const frontPlan = placeDimensions({
    view: front.box,
    chains,
    room: { left: 34, above: 8.6, below },
    taken: stack.length > 1 ? [...marks, sumsBox] : marks,
    beyond: 10,
    measure,
  });
  const depths = sideFeet(input);
  const sideChains: Chain[] = outside(input, depths, 1)
    ? [{ id: 'depth', side: 'below', links: links(input, side, 1, whole(depths)) }]
    : [];
  if (isPair(depths) && depths[1]) {
    if (between(input, depths, 1)) air.push(...betweenFeet(input, side, depths[1]));
  } else if (depths.length > 1)
    sideChains.push({ id: 'side-feet', side: 'below', links: links(input, side, 1, depths) });
  const sidePlan = placeDimensions({ view: side.box, chains: sideChains, room: { below }, measure });
  const planPlan = placeDimensions({
    view: plan.box,
    chains: planChains(input, plan, depths),
    room: { right: 24 },
    measure,
  });
  const summed = frontPlan.figures.some(
    (f) => f.link.figure === printed(input, model.overall[2][1] - model.overall[2][0]),
  );
  return {
    views: [
      { id: 'front', plan: frontPlan },
      { id: 'side', plan: sidePlan },
      { id: 'plan', plan: planPlan },
    ],
    air,
    further: [
      ...(tapered?.words ?? []),
      ...holesShown(input, [front, side, plan]),
      ...[frontPlan, sidePlan, planPlan].flatMap((p) => furtherSizes(p)),
    ],
    ...(stack.length > 1 && summed
      ? {
          heights: {
            words: `adds up to ${printed(input, model.overall[2][1] - model.overall[2][0])}`,
            at: [front.box.x - (tapered ? 10 : 5), front.box.y + front.box.h + 5.4] as [number, number],
          },
        }
      : {}),
  };
}

/** Holes that show in one of the views, each sort once, in words: those of the parts, not of their joints. */
function holesShown(input: Prepared, views: readonly View[]): string[] {
  const counts = new Map<string, { count: number; marks: Set<string> }>();
  const seen = views.map((v) => ({ view: v, lines: input.views.lines(v.direction).visible }));
  for (const { part } of input.model.case)
    for (const c of part.cuts) {
      if (c.shape !== 'bore' || c.as !== 'hole' || c.slot) continue;
      const axis = faceAxis(c.face);
      const outward = turn(part.place, byAxis((a) => (a === axis ? faceSign(c.face) : 0)) as Vec3); // prettier-ignore
      const [u, v] = others(axis);
      const shows = seen.some(({ view: { direction: d }, lines }) => {
        const toward = dot(outward, d.toward);
        if (toward < 0.99 && !(c.depth === 'through' && toward < -0.99)) return false;
        const at = place(part.place, byAxis((a) => (a === u ? c.at[0] : a === v ? c.at[1] : 0)) as Vec3);
        const [x, y] = [dot(at, d.right) / NM_PER_MM, dot(at, d.up) / NM_PER_MM];
        const rim = (p: readonly [number, number]): boolean =>
          Math.abs(Math.hypot(p[0] - x, p[1] - y) - c.diameter / NM_PER_MM / 2) < 0.05;
        return lines.some((l) => l.ids.includes(part.id) && rim(l.a) && rim(l.b));
      });
      if (!shows) continue;
      const size = `${printed(input, c.diameter)}${c.depth === 'through' ? '' : `, ${printed(input, c.depth)} deep`}`;
      const known = counts.get(size) ?? { count: 0, marks: new Set() };
      known.count++;
      known.marks.add(part.mark);
      counts.set(size, known);
    }
  return [...counts].map(
    ([size, { count, marks }]) =>
      `${count} ${count === 1 ? 'hole' : 'holes'} ${size} in ${ranges([...marks]).join(' ')}`,
  );
}

/** The overhang at the front, the case and the overall depth beside the plan. */
function planChains(input: Prepared, plan: View, depths: readonly Stretch[]): Chain[] {
  const [front, back] = input.model.overall[1];
  const body = whole(depths)[0];
  const all: Stretch[] = [{ from: front, to: back, kind: 'member' }];
  const overall: Chain = { id: 'depth-overall', side: 'right', links: links(input, plan, 1, all) };
  if (!body || (body.from === front && body.to === back)) return [overall];
  const parts: Stretch[] = [
    { from: front, to: body.from, kind: 'air' },
    body,
    { from: body.to, to: back, kind: 'air' },
  ];
  const drawn = links(
    input,
    plan,
    1,
    parts.filter((s) => s.to > s.from),
  ).filter((l) => l.to - l.from >= 0.7);
  return [{ id: 'depths', side: 'right', links: drawn }, overall];
}

/** The width between two feet, in the air above the floor. */
function betweenFeet(input: Prepared, view: View, air: Stretch): Item[] {
  const axis = Math.abs(view.direction.right[0]) > 0.5 ? 0 : 1;
  const at = (v: number): number => onPaper(view, [axis === 0 ? v : 0, axis === 1 ? v : 0, 0])[0];
  const y = view.box.y + view.box.h - 3.6;
  const link: Link = {
    from: at(air.from),
    to: at(air.to),
    figure: printed(input, air.to - air.from),
    nm: air.to - air.from,
  };
  const id = axis === 0 ? 'front-feet' : 'side-feet';
  const drawn = airDimension(input.faces, id, link, [link.from, y], [link.to, y], view.oneTo);
  return drawn.fits ? drawn.items : [];
}
