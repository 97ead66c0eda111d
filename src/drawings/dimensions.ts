import { spread } from './spread.js';

/**
 * The dimension placer. Stations along an axis become chains beside a view: the chain with the shortest links nearest,
 * the overall size outermost, no extension line across a dimension line (ASME Y14.5 and ISO 129-1, oblique strokes);
 * the figure in a break of its line, outside when the link is too short. A link that cannot be placed goes to `table`.
 * Paper mm, y down. Pure: widths of figures come from the caller.
 */
export type Side = 'left' | 'right' | 'above' | 'below';
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}
export type Point = readonly [number, number];
/** One size: between two stations (paper mm along the side's axis). */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly figure: string;
  readonly nm: number;
  /** Printed SemiBold: what is cut or measured. */
  readonly strong?: boolean;
  /** What the table calls it. */
  readonly name?: string;
  /** How far inside the view's outline the measured corners lie, mm: extension lines begin there. */
  readonly inset?: readonly [from: number, to: number];
}
export interface Chain {
  readonly id: string;
  readonly side: Side;
  readonly links: readonly Link[];
}
export interface DimensionTask {
  /** The view's outline on paper: extension lines start 1.2 off it. */
  readonly view: Rect;
  readonly chains: readonly Chain[];
  /** How far dimensions may reach from the view, by side; a missing side has no room. */
  readonly room: Partial<Record<Side, number>>;
  /** How far something else (a pull) stands out from the view, by side: the first line clears it. */
  readonly clear?: Partial<Record<Side, number>>;
  /** Anything else that stands on the paper and must stay clear. */
  readonly taken?: readonly Rect[];
  /** How far figures may run beyond the view along the axis: default 12. */
  readonly beyond?: number;
  /** Width and height of a printed figure, mm. */
  measure(figure: string, strong: boolean): { readonly w: number; readonly h: number };
}
export interface PlacedFigure {
  readonly link: Link;
  readonly strong: boolean;
  readonly box: Rect;
  /** The measured points on the view's side of the chain. */
  readonly span: readonly [Point, Point];
}
export interface PlacedLine {
  readonly a: Point;
  readonly b: Point;
  /** Dimension and extension lines N, oblique strokes W. */
  readonly pen: 'N' | 'W';
  readonly role: 'dimension' | 'extension' | 'stroke';
}
export interface DimensionPlan {
  readonly lines: readonly PlacedLine[];
  readonly figures: readonly PlacedFigure[];
  readonly table: readonly { readonly chain: string; readonly link: Link; readonly why: string }[];
  /** How far the dimensions reach out from the view, by side. */
  readonly depth: Readonly<Record<Side, number>>;
}

/** Figures of `look`: first line >= 6, further lines +8; extension gap 1.2, overrun 1.8; strokes 2.0 long at 45 degrees. */
const FIRST = 6;
const NEXT = 8;
const GAP = 1.2;
const OVERRUN = 1.8;
const STROKE = 0.707;
const CLEAR = 1.2;
const OUTSIDE = 2.4;
const PITCH = 5.2;
/** A link shorter than this on paper cannot be told from its strokes: it joins its neighbour (`1 15/16 + 1/4`). */
const SHORTEST = 0.7;
/** A figure pushed farther than this from its link no longer reads as belonging to it. */
const FARTHEST = 9;

interface Frame {
  readonly side: Side;
  readonly lying: boolean;
  readonly range: readonly [number, number];
  point(along: number, out: number): Point;
  rect(along: number, halfAlong: number, outLow: number, outHigh: number): Rect;
}

/** All chains of one view. Sides are worked left, right, above, below; what is placed first stays clear of what follows. */
export function placeDimensions(task: DimensionTask): DimensionPlan {
  const lines: PlacedLine[] = [];
  const figures: PlacedFigure[] = [];
  const table: { chain: string; link: Link; why: string }[] = [];
  const depth: Record<Side, number> = { left: 0, right: 0, above: 0, below: 0 };
  const taken: Rect[] = [...(task.taken ?? [])];
  for (const side of ['left', 'right', 'above', 'below'] as const) {
    const frame = frameOf(task.view, side);
    const chains = task.chains.filter((c) => c.side === side).map((c) => ({ ...c, links: joined(c.links) }));
    const kept = withoutCrossings(ordered(chains), table);
    let edge = 0;
    kept.forEach((chain, i) => {
      const outer = kept.slice(i + 1).flatMap((c) => stations(c));
      const tries = [0, 1.5, 3, 5].map(
        (shift) => () => placeLane({ task, frame, chain, edge, first: i === 0, outer, taken, shift }),
      );
      let lane: LaneResult | string = 'no room beside the view';
      for (const attempt of tries) {
        lane = attempt();
        if (typeof lane !== 'string') break;
      }
      if (typeof lane === 'string') {
        for (const link of chain.links) table.push({ chain: chain.id, link, why: lane });
        return;
      }
      lines.push(...lane.lines);
      figures.push(...lane.figures);
      taken.push(...lane.figures.map((f) => f.box), ...lane.lines.filter((l) => l.role !== 'stroke').map(lineBox));
      edge = lane.reach;
      depth[side] = edge;
    });
  }
  return { lines, figures, table, depth };
}

const stations = (chain: Chain): number[] => chain.links.flatMap((l) => [l.from, l.to]);
const longest = (chain: Chain): number => Math.max(...chain.links.map((l) => l.to - l.from));
const ordered = (chains: readonly Chain[]): Chain[] =>
  chains
    .filter((c) => c.links.length > 0)
    .sort((a, b) => longest(a) - longest(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));

/** Links too short to be drawn join the shorter of their neighbours in the chain; the figure says both. */
export function joined(links: readonly Link[]): Link[] {
  const out = [...links].filter((l) => l.to - l.from > 1e-6).sort((a, b) => a.from - b.from);
  for (;;) {
    const i = out.findIndex((l) => l.to - l.from < SHORTEST);
    if (i < 0 || out.length === 1) return out;
    const touches = (j: number, k: number): boolean => {
      const a = out[j];
      const b = out[k];
      return a !== undefined && b !== undefined && Math.abs(a.to - b.from) < 1e-6;
    };
    const before = touches(i - 1, i);
    const after = touches(i, i + 1);
    if (!before && !after) return out;
    const size = (j: number): number => (out[j] as Link).to - (out[j] as Link).from;
    const low = before && (!after || size(i - 1) <= size(i + 1)) ? i - 1 : i;
    const a = out[low] as Link;
    const b = out[low + 1] as Link;
    const name = [a.name, b.name].filter((n) => n !== undefined).join(', ');
    out.splice(low, 2, {
      from: a.from,
      to: b.to,
      figure: `${a.figure} + ${b.figure}`,
      nm: a.nm + b.nm,
      ...(name ? { name } : {}),
    });
  }
}

/** A chain whose extension lines would cut a dimension line nearer the view is not drawn. */
function withoutCrossings(chains: Chain[], table: { chain: string; link: Link; why: string }[]): Chain[] {
  const kept: Chain[] = [];
  for (const chain of chains) {
    const cuts = stations(chain).some((s) =>
      kept.some((k) => k.links.some((l) => s > l.from + SHORTEST && s < l.to - SHORTEST)),
    );
    if (!cuts) kept.push(chain);
    else for (const link of chain.links) table.push({ chain: chain.id, link, why: 'would cross' });
  }
  return kept;
}

function frameOf(view: Rect, side: Side): Frame {
  const lying = side === 'above' || side === 'below';
  const sign = side === 'left' || side === 'above' ? -1 : 1;
  const base =
    side === 'left' ? view.x : side === 'right' ? view.x + view.w : side === 'above' ? view.y : view.y + view.h;
  const range = lying ? ([view.x, view.x + view.w] as const) : ([view.y, view.y + view.h] as const);
  return {
    side,
    lying,
    range,
    point: (along, out) => (lying ? [along, base + sign * out] : [base + sign * out, along]),
    rect: (along, half, low, high) => {
      const near = base + sign * low;
      const far = base + sign * high;
      const out = Math.min(near, far);
      const deep = Math.abs(far - near);
      return lying
        ? { x: along - half, y: out, w: 2 * half, h: deep }
        : { x: out, y: along - half, w: deep, h: 2 * half };
    },
  };
}
const lineBox = (l: PlacedLine): Rect => ({
  x: Math.min(l.a[0], l.b[0]) - 0.15,
  y: Math.min(l.a[1], l.b[1]) - 0.15,
  w: Math.abs(l.a[0] - l.b[0]) + 0.3,
  h: Math.abs(l.a[1] - l.b[1]) + 0.3,
});
/** True when the two boxes overlap by more than a hair. */
export const collide = (a: Rect, b: Rect): boolean =>
  a.x + a.w > b.x + 1e-6 && b.x + b.w > a.x + 1e-6 && a.y + a.h > b.y + 1e-6 && b.y + b.h > a.y + 1e-6;

interface LaneTask {
  readonly task: DimensionTask;
  readonly frame: Frame;
  readonly chain: Chain;
  /** How far out the lane before reaches. */
  readonly edge: number;
  readonly first: boolean;
  /** Stations of chains farther out: their extension lines pass this lane. */
  readonly outer: readonly number[];
  readonly taken: readonly Rect[];
  /** Farther out than need be, where the nearest place is not free. */
  readonly shift: number;
}
interface Sized {
  readonly link: Link;
  readonly strong: boolean;
  /** Half extents along the chain and across it. */
  readonly along: number;
  readonly across: number;
  readonly inside: boolean;
}
interface LaneResult {
  readonly lines: readonly PlacedLine[];
  readonly figures: readonly PlacedFigure[];
  readonly reach: number;
}

function placeLane(lane: LaneTask): LaneResult | string {
  const { frame, chain, task } = lane;
  const sized = chain.links.map((link): Sized => {
    const length = link.to - link.from;
    const fits = (strong: boolean): Sized => {
      const { w, h } = task.measure(link.figure, strong);
      const along = (frame.lying ? w : h) / 2;
      return { link, strong, along, across: (frame.lying ? h : w) / 2, inside: length >= 2 * along + 5 };
    };
    const strong = fits(link.strong !== false);
    return strong.inside ? strong : { ...fits(false), inside: false };
  });
  const inner = Math.max(0, ...sized.filter((s) => s.inside).map((s) => s.across));
  const out = task.clear?.[frame.side] ?? 0;
  const least = lane.first
    ? Math.max(FIRST, inner + GAP + 0.8, out > 0 ? out + inner + 1.2 : 0)
    : Math.max(lane.edge + inner + 1.2, lane.edge + 1.5);
  const at = lane.shift + (lane.first ? least : Math.max(least, lane.edge - OVERRUN + NEXT));
  const blockers = (low: number, high: number): (readonly [number, number])[] => {
    const band = frame.rect((frame.range[0] + frame.range[1]) / 2, 1e4, low, high);
    return [
      ...lane.outer.map((s): readonly [number, number] => [s - 0.6, s + 0.6]),
      ...lane.taken
        .filter((t) => collide(t, band))
        .map((t): readonly [number, number] =>
          frame.lying ? [t.x - 0.5, t.x + t.w + 0.5] : [t.y - 0.5, t.y + t.h + 0.5],
        ),
    ];
  };
  const atEnds = frame.lying
    ? endFigures(sized, at, blockers(at - 2.6, at + 2.6), task.beyond ?? 12, frame.range)
    : new Map<Sized, number>();
  const outside = sized.filter((s) => !s.inside && !atEnds.has(s));
  const offset = Math.max(OUTSIDE, outside.length > 0 && inner > 0 ? inner + 0.7 : 0);
  const wide = Math.max(0, ...outside.map((s) => s.across));
  const centres = spread(
    outside.map((s) => ({ at: (s.link.from + s.link.to) / 2, half: s.along })),
    {
      gap: frame.lying ? 1 : 0.3,
      pitch: frame.lying ? 0 : PITCH,
      blocked: blockers(at + offset, at + offset + 2 * wide),
      within: [frame.range[0] - (task.beyond ?? 12), frame.range[1] + (task.beyond ?? 12)],
    },
  );
  if (centres === undefined) return 'no room beside the view';
  if (outside.some((s, i) => Math.abs((centres[i] as number) - (s.link.from + s.link.to) / 2) > FARTHEST)) {
    return 'figures too crowded';
  }
  const reach = Math.max(
    at + OVERRUN,
    at + inner,
    outside.length > 0 ? at + offset + 2 * wide : 0,
    atEnds.size > 0 ? at + 2.6 : 0,
  );
  if (reach > (task.room[frame.side] ?? 0) + 1e-6) return 'no room beside the view';
  const figures = sized.map((s): PlacedFigure => {
    const i = outside.indexOf(s);
    const end = atEnds.get(s);
    const box =
      i >= 0
        ? frame.rect(centres[i] as number, s.along, at + offset, at + offset + 2 * s.across)
        : frame.rect(end ?? (s.link.from + s.link.to) / 2, s.along, at - s.across, at + s.across);
    return { link: s.link, strong: s.strong, box, span: [frame.point(s.link.from, 0), frame.point(s.link.to, 0)] };
  });
  if (figures.some((f) => lane.taken.some((t) => collide(t, f.box)))) return 'something else stands there';
  return { lines: laneLines(frame, sized, at), figures, reach };
}

/** First and last figures of a lying chain stand at its ends, level with the line, where nothing is in the way. */
function endFigures(
  sized: readonly Sized[],
  at: number,
  blocked: readonly (readonly [number, number])[],
  beyond: number,
  range: readonly [number, number],
): Map<Sized, number> {
  const out = new Map<Sized, number>();
  const free = (low: number, high: number): boolean =>
    low >= range[0] - beyond && high <= range[1] + beyond && at > 0 && !blocked.some(([a, b]) => high > a && low < b);
  const first = sized[0];
  const last = sized.at(-1);
  if (first && !first.inside) {
    const right = first.link.from - OUTSIDE;
    if (free(right - 2 * first.along, right)) out.set(first, right - first.along);
  }
  if (last && !last.inside && last !== first) {
    const left = last.link.to + OUTSIDE;
    if (free(left, left + 2 * last.along)) out.set(last, left + last.along);
  }
  return out;
}

function laneLines(frame: Frame, sized: readonly Sized[], at: number): PlacedLine[] {
  const lines: PlacedLine[] = [];
  const seen = new Set<number>();
  for (const s of sized) {
    const { from, to } = s.link;
    for (const [k, station] of [from, to].entries()) {
      const inset = s.link.inset?.[k] ?? 0;
      const key = Math.round(station * 1000);
      if (seen.has(key)) continue;
      seen.add(key);
      lines.push({
        a: frame.point(station, GAP - inset),
        b: frame.point(station, at + OVERRUN),
        pen: 'N',
        role: 'extension',
      });
      const [x, y] = frame.point(station, at);
      lines.push({ a: [x - STROKE, y + STROKE], b: [x + STROKE, y - STROKE], pen: 'W', role: 'stroke' });
    }
    const line = (a: number, b: number): void => {
      lines.push({ a: frame.point(a, at), b: frame.point(b, at), pen: 'N', role: 'dimension' });
    };
    if (!s.inside) line(from, to);
    else {
      const clear = s.along + (frame.lying ? CLEAR : 0.45);
      line(from, (from + to) / 2 - clear);
      line((from + to) / 2 + clear, to);
    }
  }
  return lines;
}
