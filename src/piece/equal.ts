import type { Axis } from '../geom/axis.js';
import { AXES } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import { place } from '../geom/placement.js';
import type { Cut } from '../words/cut.js';
import type { Frame } from '../words/mapCut.js';
import { handOf, mapCut, mapFace } from '../words/mapCut.js';
import type { Part } from './piece.js';

const ORDERS: readonly (readonly [Axis, Axis, Axis])[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];
const SIGNS = [1, -1] as const;

/** The 24 turns of a box on to itself (`hand` 1) or its 24 mirror images (`hand` -1), about its middle; `from`, `to`: sizes of the shoulder boxes. */
function framesOf(to: readonly number[], hand: 1 | -1): Frame[] {
  return ORDERS.flatMap((order) =>
    SIGNS.flatMap((x) =>
      SIGNS.flatMap((y) =>
        SIGNS.map((z): Frame => {
          const sign: [1 | -1, 1 | -1, 1 | -1] = [x, y, z];
          const shift: [number, number, number] = [0, 0, 0];
          for (const a of AXES) if (sign[a] < 0) shift[order[a]] = to[order[a]] ?? 0;
          return { to: order, sign, shift };
        }),
      ),
    ),
  ).filter((f) => handOf(f) === hand);
}

const sizes = (p: Part): number[] => p.size.map((s) => s.value);

/** What a cut takes, and nothing of what goes there or who asked for it. */
function bare(cut: Cut): string {
  const { id: _id, from: _from, mates: _mates, glue: _glue, trial: _trial, notes: _notes, rank: _rank, ...shape } = cut;
  if (shape.shape === 'arris') return JSON.stringify(sorted({ ...shape, faces: [...shape.faces].sort() }));
  if (shape.shape === 'tenon')
    return JSON.stringify(sorted({ ...shape, tongues: shape.tongues.map((t) => JSON.stringify(sorted(t))).sort() }));
  return JSON.stringify(sorted(shape));
}
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, v]) => [k, sorted(v)]),
  );
}

/** Everything that must be alike for one card, as text; the part seen through `f`. */
function portrait(p: Part, f: Frame): string {
  const size = byAxis((t) => sizes(p)[f.to.indexOf(t)] ?? 0);
  const growth = byAxis((t): Span => {
    const a = f.to.indexOf(t) as Axis;
    const g = p.growth[a];
    return f.sign[a] > 0 ? g : [g[1], g[0]];
  });
  return JSON.stringify([
    size,
    growth,
    p.grain === undefined ? -1 : f.to[p.grain],
    p.show.map((x) => mapFace(f, x)).sort(),
    p.cuts
      .filter((c) => c.shape !== 'mark')
      .map((c) => bare(mapCut(c, f)))
      .sort(),
    p.cuts
      .filter((c) => c.shape === 'mark')
      .map((c) => bare(mapCut(c, f)))
      .sort(),
  ]);
}
const AS_IT_IS: Frame = { to: [0, 1, 2], sign: [1, 1, 1], shift: [0, 0, 0] };

/** Two parts can be alike only when these are. */
const coarse = (p: Part): string =>
  [
    p.stock,
    p.status,
    [...sizes(p)].sort((a, b) => a - b).join(),
    p.cuts
      .map((c) => c.shape)
      .sort()
      .join(),
    p.show.length,
  ].join('|');

/** Is `b` the same thing as `a`, turned (hand 1) or mirrored (hand -1): shape, cuts, grain and show faces? */
export function alike(a: Part, b: Part, hand: 1 | -1): boolean {
  return alikeTo(portrait(a, AS_IT_IS), a, b, hand);
}
function alikeTo(want: string, a: Part, b: Part, hand: 1 | -1): boolean {
  return framesOf(sizes(a), hand).some((f) => fits(b, a, f) && portrait(b, f) === want);
}
const fits = (b: Part, a: Part, f: Frame): boolean => AXES.every((t) => sizes(b)[f.to.indexOf(t)] === sizes(a)[t]);

/**
 * Marks equal parts: the same by turning names the first (one card); the same only by mirror names the mirror image (its own
 * card) and gives both a hand, by the side of the piece on which they stand. `pairs`: typed as mirror images, ids.
 */
export function markEqual(parts: readonly Part[], pairs: readonly (readonly [string, string])[] = []): Part[] {
  const groups = new Map<string, { readonly part: Part; readonly want: string }[]>();
  const out = new Map<string, Part>();
  for (const p of parts) {
    const key = coarse(p);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    const turned = group.find((f) => sameHand(f.part, p) && alikeTo(f.want, f.part, p, 1))?.part;
    if (turned) {
      out.set(p.id, { ...p, turnOf: turned.id });
      continue;
    }
    const mirror = group.find((f) => alikeTo(f.want, f.part, p, -1))?.part;
    group.push({ part: p, want: portrait(p, AS_IT_IS) });
    if (!mirror) {
      out.set(p.id, p);
      continue;
    }
    const pair = out.get(mirror.id) ?? mirror;
    const side = handsOf(mirror, p);
    out.set(mirror.id, { ...pair, mirrorOf: pair.mirrorOf ?? p.id, ...(side ? { hand: pair.hand ?? side[0] } : {}) });
    out.set(p.id, { ...p, mirrorOf: mirror.id, ...(side ? { hand: p.hand ?? side[1] } : {}) });
  }
  for (const [one, two] of pairs) tellApart(one, two, out);
  return parts.map((p) => handed(out.get(p.id) ?? p, out));
}
/** Parts typed as mirror images that other cuts have made different are still the left one and the right one. */
function tellApart(one: string, two: string, out: Map<string, Part>): void {
  const [a, b] = [out.get(one), out.get(two)];
  if (!a || !b || a.turnOf !== undefined || b.turnOf !== undefined) return;
  const side = handsOf(a, b);
  if (!side) return;
  out.set(one, { ...a, hand: a.hand ?? side[0] });
  out.set(two, { ...b, hand: b.hand ?? side[1] });
}
/** Parts that a component has told apart by hand are never one card, though until the last cut they may be one shape. */
const sameHand = (a: Part, b: Part): boolean => a.hand === undefined || b.hand === undefined || a.hand === b.hand;
/** A turned part has its first's hand. */
function handed(p: Part, all: ReadonlyMap<string, Part>): Part {
  const first = p.turnOf === undefined ? undefined : all.get(p.turnOf);
  return first?.hand && !p.hand ? { ...p, hand: first.hand } : p;
}
function handsOf(a: Part, b: Part): readonly ['left' | 'right', 'left' | 'right'] | undefined {
  const at = (p: Part): number =>
    Math.round(place(p.place, [p.size[0].value / 2, p.size[1].value / 2, p.size[2].value / 2])[0]);
  return at(a) === at(b) ? undefined : at(a) < at(b) ? ['left', 'right'] : ['right', 'left'];
}
