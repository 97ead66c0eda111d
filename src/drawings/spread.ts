/**
 * Places labels along one axis as near as may be to where they want to stand, in their order, apart from each other and
 * clear of obstacles. Exact on a grid of 0.1 mm by dynamic programming over positions (Bellman's principle), so the
 * result does not depend on the order in which anything was tried.
 */
export interface Wish {
  /** Wanted centre and half extent, mm. */
  readonly at: number;
  readonly half: number;
}
const GRID = 0.1;

/**
 * Centres for all wishes (given in order of rank along the axis), or undefined when they do not fit into `within`.
 * `gap` is kept between neighbours' extents, `pitch` between their centres; `blocked` spans (mm) are kept free.
 */
export function spread(
  wishes: readonly Wish[],
  options: {
    readonly gap: number;
    readonly pitch: number;
    readonly blocked: readonly (readonly [number, number])[];
    readonly within: readonly [number, number];
  },
): readonly number[] | undefined {
  if (wishes.length === 0) return [];
  const [low, high] = options.within;
  const cells = Math.max(0, Math.floor((high - low) / GRID)) + 1;
  const where = (cell: number): number => low + cell * GRID;
  const best: Float64Array[] = [];
  const from: Int32Array[] = [];
  let previous: Wish | undefined;
  for (const wish of wishes) {
    const row = new Float64Array(cells).fill(Infinity);
    const back = new Int32Array(cells).fill(-1);
    const apart = previous === undefined ? 0 : Math.max(options.pitch, previous.half + wish.half + options.gap);
    const step = Math.ceil(apart / GRID - 1e-9);
    const before = best.at(-1);
    let least = previous === undefined ? 0 : Infinity;
    let leastAt = -1;
    for (let cell = 0; cell < cells; cell++) {
      const reach = cell - step;
      if (before !== undefined && reach >= 0 && (before[reach] as number) < least) {
        least = before[reach] as number;
        leastAt = reach;
      }
      const centre = where(cell);
      if (centre - wish.half < low || centre + wish.half > high || isBlocked(centre, wish.half, options.blocked))
        continue;
      row[cell] = least + (centre - wish.at) ** 2;
      back[cell] = leastAt;
    }
    best.push(row);
    from.push(back);
    previous = wish;
  }
  return trace(best, from, where);
}

const isBlocked = (centre: number, half: number, blocked: readonly (readonly [number, number])[]): boolean =>
  blocked.some(([a, b]) => centre + half > a + 1e-9 && centre - half < b - 1e-9);

function trace(
  best: readonly Float64Array[],
  from: readonly Int32Array[],
  where: (cell: number) => number,
): readonly number[] | undefined {
  const last = best.at(-1) as Float64Array;
  let cell = 0;
  for (let i = 1; i < last.length; i++) if ((last[i] as number) < (last[cell] as number)) cell = i;
  if (!Number.isFinite(last[cell] as number)) return undefined;
  const out: number[] = [];
  for (let row = best.length - 1; row >= 0; row--) {
    out.push(where(cell));
    cell = (from[row] as Int32Array)[cell] as number;
  }
  return out.reverse();
}
