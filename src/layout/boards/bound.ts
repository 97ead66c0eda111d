import { unionArea, type Rect } from './clear.js';
import type { Ground, Kind } from './ground.js';

/** Steps into which the wood wanted is divided for the choice of boards: our default. */
const STEPS = 2000;
/** Sizes at which the wanted wood is looked at apart: our default. */
const MARKS = 5;

/**
 * A lower bound on the value of the boards that hold all pieces, whatever the cutting. The wood of all blanks at least so
 * long and so wide must lie in clear rectangles that hold at least one of them: each board gives at most the union of those,
 * and the cheapest choice of whole boards that gives enough is found by a table over the area (a knapsack; areas of boards
 * rounded up, so that it stays a bound). Kerf: each blank and each rectangle grow by one kerf, which is exact. The best of
 * several sizes counts. Infinity when the boards do not hold enough.
 */
export function valueBound(
  kinds: readonly Kind[],
  counts: readonly number[],
  grounds: readonly Ground[],
  kerf: number,
): number {
  const links = kinds.flatMap((k, i) => k.links.map(({ l, w }, j): Wanted => ({ l, w, i, j, n: counts[i] ?? 0 })));
  const wanted = links.filter((x) => x.n > 0);
  const sum = wanted.reduce((s, x) => s + x.n * (x.l + kerf) * (x.w + kerf), 0);
  let best = 0;
  for (const l of marks(wanted.map((x) => x.l)))
    for (const w of marks(wanted.map((x) => x.w))) {
      const chosen = wanted.filter((x) => x.l >= l && x.w >= w);
      if (chosen.length === 0) continue;
      const need = chosen.reduce((s, x) => s + x.n * (x.l + kerf) * (x.w + kerf), 0);
      // Of little wood little can be said.
      if (need < sum / 20) continue;
      const rects = grounds.map((g) => grown(g, chosen, kerf));
      const narrow = Math.min(...chosen.map((x) => x.w));
      const long = chosen.reduce((s, x) => s + x.n * (x.l + kerf), 0);
      best = Math.max(
        best,
        cheapest(need, rects.map(unionArea), grounds),
        cheapest(
          long,
          rects.map((r) => stacked(r, narrow, kerf)),
          grounds,
        ),
      );
    }
  return best;
}
interface Wanted {
  readonly l: number;
  readonly w: number;
  /** Kind, link of it, and how many. */
  readonly i: number;
  readonly j: number;
  readonly n: number;
}
const marks = (sizes: readonly number[]): number[] => {
  const all = [...new Set(sizes)].sort((a, b) => a - b);
  const step = Math.max(1, Math.ceil(all.length / MARKS));
  return all.filter((_, i) => i % step === 0 || i === all.length - 1);
};
/** The clear rectangles of a board that hold one of the blanks, each once, between its ends, grown by a kerf. */
function grown(g: Ground, chosen: readonly Wanted[], kerf: number): Rect[] {
  const rects = new Set(chosen.flatMap(({ i, j }) => (g.spots[i]?.[j] ?? []).map((s) => s.at)));
  return [...rects].flatMap((at): Rect[] => {
    const x0 = Math.max(at[0], g.x0);
    const x1 = Math.min(at[2], g.x1);
    return x1 > x0 ? [[x0, at[1], x1 + kerf, at[3] + kerf]] : [];
  });
}

/**
 * Lengths instead of areas: at any x no more blanks stand one above another than the narrowest of them allows, so a board
 * gives its clear length so many times. Kerf is taken along the board with the blanks, and between them across it.
 */
function stacked(rects: readonly Rect[], narrow: number, kerf: number): number {
  const xs = [...new Set(rects.flatMap((r) => [r[0], r[2]]))].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    const [a, b] = [xs[i] as number, xs[i + 1] as number];
    const here = rects.filter((r) => r[0] <= a && r[2] >= b);
    if (here.length === 0) continue;
    const high = Math.max(...here.map((r) => r[3])) - Math.min(...here.map((r) => r[1]));
    // The rectangles were grown by a kerf upwards already.
    sum += Math.floor(high / (narrow + kerf)) * (b - a);
  }
  return sum;
}

/** The least value of whole boards that give `need`. */
function cheapest(need: number, gives: readonly number[], grounds: readonly Ground[]): number {
  if (need <= 0) return 0;
  const unit = need / STEPS;
  const least = new Float64Array(STEPS + 1).fill(Infinity);
  least[0] = 0;
  gives.forEach((area, b) => {
    const take = Math.min(STEPS, Math.ceil((area / unit) * (1 + 1e-12)));
    const value = grounds[b]?.value ?? 0;
    if (take <= 0) return;
    for (let at = STEPS; at > 0; at--) {
      const from = Math.max(0, at - take);
      const sum = (least[from] as number) + value;
      if (sum < (least[at] as number)) least[at] = sum;
    }
  });
  return least[STEPS] as number;
}
