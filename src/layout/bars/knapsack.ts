/** What a pattern is worth at most, how many of each piece are in it, and whether that is certain. */
export interface Best {
  readonly value: number;
  readonly take: readonly number[];
  readonly sure: boolean;
}
/** Cells of a table that is soon filled, and of the largest; branches of a quick look, and of the longest. */
const SMALL = 1e6;
const CELLS = 3e7;
const QUICK = 2e4;
const BRANCHES = 3e6;

/**
 * The most valuable set of pieces in `room`: at most `counts[i]` of length `lengths[i]` (whole numbers), each worth
 * `values[i]` >= 0. By a table over the room where that is small, else by branch and bound on value a length (Dantzig's
 * bound). Sums are exact where the values are whole numbers. `quick`: any good set will do.
 */
export function knapsack(
  lengths: readonly number[],
  counts: readonly number[],
  values: readonly number[],
  room: number,
  quick = false,
): Best {
  const most = lengths.map((l, i) =>
    (values[i] as number) > 0 ? Math.min(counts[i] as number, Math.floor(room / l)) : 0,
  );
  const cells = (room + 1) * most.reduce((a, b) => a + b, 0);
  return cells <= (quick ? SMALL : CELLS)
    ? byTable(lengths, most, values, room)
    : byBranches(lengths, most, values, room, quick ? QUICK : BRANCHES);
}

function byTable(lengths: readonly number[], most: readonly number[], values: readonly number[], room: number): Best {
  let best = new Float64Array(room + 1);
  const taken: (Uint16Array | undefined)[] = [];
  lengths.forEach((l, i) => {
    const n = most[i] as number;
    if (n === 0) return void taken.push(undefined);
    const next = best.slice();
    const take = new Uint16Array(room + 1);
    const value = values[i] as number;
    for (let r = l; r <= room; r++)
      for (let k = 1, at = r - l; k <= n && at >= 0; k++, at -= l) {
        const sum = (best[at] as number) + k * value;
        if (sum > (next[r] as number)) {
          next[r] = sum;
          take[r] = k;
        }
      }
    best = next;
    taken.push(take);
  });
  const take = lengths.map(() => 0);
  for (let i = lengths.length - 1, r = room; i >= 0; i--) {
    const k = taken[i]?.[r] ?? 0;
    take[i] = k;
    r -= k * (lengths[i] as number);
  }
  return { value: best[room] as number, take, sure: true };
}

function byBranches(
  lengths: readonly number[],
  most: readonly number[],
  values: readonly number[],
  room: number,
  limit: number,
): Best {
  const order = lengths.map((_, i) => i).filter((i) => (most[i] as number) > 0);
  const rate = (i: number): number => (values[i] as number) / (lengths[i] as number);
  order.sort((a, b) => rate(b) - rate(a) || a - b);
  const now = lengths.map(() => 0);
  let [take, value, branches] = [[...now], 0, 0];
  const visit = (at: number, left: number, sum: number): void => {
    if (sum > value) [take, value] = [[...now], sum];
    for (let k = at; k < order.length; k++) {
      const i = order[k] as number;
      // What follows fills the rest at this rate at best.
      if (branches > limit || sum + left * rate(i) <= value + 1e-9) return;
      const l = lengths[i] as number;
      for (let n = Math.min(most[i] as number, Math.floor(left / l)); n > 0; n--) {
        branches++;
        now[i] = n;
        visit(k + 1, left - n * l, sum + n * (values[i] as number));
      }
      now[i] = 0;
    }
  };
  visit(0, room, 0);
  return { value, take, sure: branches <= limit };
}
