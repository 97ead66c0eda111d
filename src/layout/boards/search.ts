import { inches } from '../../lengths/length.js';
import { sequence } from '../pack/sequence.js';
import { BoardFiller, restsOf, type Manner, type Node } from './fill.js';
import type { Ground, Kind } from './ground.js';
import { longest } from './remnants.js';

/** A board cut up: which ground, how, and the worth of what is on it. */
export interface Filled {
  readonly ground: number;
  readonly node: Node;
  readonly kinds: readonly number[];
  readonly worth: number;
}
export interface Search {
  readonly kinds: readonly Kind[];
  readonly counts: readonly number[];
  readonly grounds: readonly Ground[];
  readonly kerf: number;
  readonly step: number;
  readonly keep: readonly [number, number];
  /** Kinds of which several make one panel. */
  readonly panels: ReadonlySet<number>;
  /** Clear rectangles looked at. */
  readonly limit: number;
  /** Lower bound on the value of boards: where it is reached, no cheaper choice is looked for. */
  readonly bound: number;
}

const ORDERS: readonly ((k: Kind) => readonly [number, number])[] = [
  (k) => [k.l, k.w],
  (k) => [k.l * k.w, k.l],
  (k) => [k.w, k.l],
];
/** How many former values are looked back at: late acceptance (Burke and Bykov 2017). */
const LOOK_BACK = 40;
/** Share of the steps that goes into remnants once the boards are settled: our default. */
const REST_SHARE = 0.2;
const PLAIN: Manner = { first: 'cross', pick: 'first', blink: 0, fromRight: false, fromTop: false, strip: true };

/**
 * Chooses boards and cuts them up: all pieces out, the least value of boards used, the longest clear remnants. First one
 * board after another, each time the one that gives most for its value; then goals (a board fewer, or a cheaper one in its
 * place) approached by ruin and recreate on whole boards, as sheets are (pack/goal.ts). Counted steps, no clock.
 */
export class BoardSearch {
  readonly filler: BoardFiller;
  private readonly random = sequence(1);
  private readonly worths: readonly number[];
  private readonly ranks: readonly Float64Array[];
  private readonly noise: Float64Array;

  constructor(readonly job: Search) {
    const { kinds } = job;
    this.filler = new BoardFiller(kinds, job.kerf, job.step, this.random);
    const areas = kinds.map((k) => k.links.reduce((s, x) => s + x.l * x.w, 0));
    const unit = Math.max(1, ...areas);
    // A long piece, and a run, is harder to place than its area says.
    this.worths = areas.map((a, i) => (a / unit) ** 1.1 * (1 + Math.min(3, (kinds[i]?.links.length ?? 1) - 1) * 0.5));
    this.noise = new Float64Array(kinds.length);
    this.ranks = ORDERS.map((order) => {
      const keys = kinds.map(order);
      const by = kinds
        .map((_, i) => i)
        .sort((a, b) => {
          const [p, q] = [keys[a] as readonly [number, number], keys[b] as readonly [number, number]];
          const runs = Number((kinds[b]?.links.length ?? 1) > 1) - Number((kinds[a]?.links.length ?? 1) > 1);
          return runs || q[0] - p[0] || q[1] - p[1] || a - b;
        });
      const rank = new Float64Array(kinds.length);
      by.forEach((kind, at) => (rank[kind] = at / kinds.length));
      return rank;
    });
  }

  /** The boards used, and how many of each kind found no place. */
  run(): { readonly filled: readonly Filled[]; readonly left: Int32Array } {
    let best = this.start();
    const { limit, bound } = this.job;
    const rest = limit * REST_SHARE;
    if (best.over > 0) {
      const all = this.job.grounds.map((_, i) => i);
      best = this.into(all, best.filled, limit * (1 - REST_SHARE)) ?? best;
    }
    if (best.over === 0) {
      best = this.trade(best, this.filler.steps + (limit - rest - this.filler.steps) * TRADE_SHARE);
      while (valueOf(this.job, best.filled) > bound * (1 + 1e-9) && this.filler.steps < limit - rest) {
        const better = this.cheaper(best.filled, limit - rest);
        if (!better) break;
        best = better;
      }
    }
    return { filled: this.settle(best.filled, best.left, limit), left: best.left };
  }

  /** One board after another, in every order and both ways; the best of them. */
  private start(): State {
    let best: State | undefined;
    for (const weigh of [1, 0.5])
      for (let order = 0; order < ORDERS.length; order++) {
        const now = this.greedy(order, weigh);
        if (!best || this.better(now, best)) best = now;
        if (this.filler.steps > this.job.limit / 3) break;
      }
    return best as State;
  }
  private better(a: State, b: State): boolean {
    return a.over < b.over || (a.over === b.over && valueOf(this.job, a.filled) < valueOf(this.job, b.filled));
  }
  /** What a board gave when it was last asked is about the most that it gives when less is wanted: only the first are asked anew. */
  private greedy(order: number, weigh: number): State {
    const { filler } = this;
    const left = Int32Array.from(this.job.counts);
    const filled: Filled[] = [];
    let free = this.job.grounds.map((_, g) => this.offer(g, order, weigh, left));
    while (this.overOf(left) > 0 && free.length > 0) {
      free.sort((a, b) => b.worth - a.worth || a.made.ground - b.made.ground);
      const stale = free.slice(0, ASKED).some((o) => o.asked !== filled.length);
      free = free.map((o, i) => {
        if (i >= ASKED || o.asked === filled.length) return o;
        return { ...this.offer(o.made.ground, order, weigh, left), asked: filled.length };
      });
      free = free.filter((o) => o.worth > 0);
      if (stale) continue;
      const [first] = free as [Offer];
      for (const k of first.made.kinds) left[k] = (left[k] as number) - 1;
      filled.push(first.made);
      free.shift();
    }
    filler.left.set(left);
    return { filled, left, over: this.overOf(left) };
  }
  /** The better of both ways to cut up a board, and its worth for the board's value. */
  private offer(g: number, order: number, weigh: number, left: Int32Array): Offer {
    let best: Filled | undefined;
    for (const first of ['cross', 'rip'] as const) {
      this.filler.left.set(left);
      this.filler.manner = { ...PLAIN, first };
      this.order(order, 0);
      const made = this.take(g);
      if (!best || made.worth > best.worth) best = made;
    }
    const made = best as Filled;
    return { made, worth: made.worth / ((this.job.grounds[g]?.value ?? 0) + 1e-9) ** weigh, asked: 0 };
  }

  /**
   * One to three boards give back what is on them; they and a few others that are free offer anew, the best for its value
   * first, until all of it is out again. Kept when the boards then cost less (or, looking back, not more than some turns ago).
   */
  private trade(from: State, limit: number): State {
    const { grounds, bound } = this.job;
    const boards = new Map(from.filled.map((f) => [f.ground, f]));
    let value = valueOf(this.job, from.filled);
    let best = from;
    let least = value;
    const past = new Float64Array(LOOK_BACK).fill(value);
    for (let turn = 0; this.filler.steps < limit && least > bound * (1 + 1e-9); turn++) {
      const chosen = this.some([...boards.keys()]);
      const free = grounds.map((_, g) => g).filter((g) => !boards.has(g));
      const open = [...chosen];
      for (let n = 0; n < FREE && free.length > 0; n++)
        open.push(...free.splice(Math.floor(this.random() * free.length), 1));
      const gone = chosen.reduce((s, g) => s + (grounds[g]?.value ?? 0), 0);
      const left = new Int32Array(this.job.counts.length);
      for (const g of chosen) for (const k of boards.get(g)?.kinds ?? []) left[k] = (left[k] as number) + 1;
      const slot = turn % LOOK_BACK;
      const made = this.anew(open, left, Math.max(value, past[slot] as number) - value + gone);
      if (made) {
        for (const g of chosen) boards.delete(g);
        for (const m of made) boards.set(m.ground, m);
        value += made.reduce((s, m) => s + (grounds[m.ground]?.value ?? 0), 0) - gone;
        if (value < least * (1 - 1e-9)) {
          least = value;
          best = { filled: [...boards.values()], left: from.left, over: 0 };
        }
      }
      past[slot] = value;
    }
    return best;
  }
  /** What is left on the open boards, one after another, for no more than `most`; undefined when it does not come out. */
  private anew(open: number[], left: Int32Array, most: number): Filled[] | undefined {
    const { filler, random } = this;
    const out: Filled[] = [];
    let spent = 0;
    const weigh = random() < 0.5 ? 1 : 0.7;
    while (left.some((n) => n > 0)) {
      let chosen: Filled | undefined;
      let best = 0;
      let whole = Infinity;
      for (const g of open) {
        const value = this.job.grounds[g]?.value ?? 0;
        if (spent + value > most * (1 + 1e-9)) continue;
        filler.left.set(left);
        this.byLot();
        const made = this.take(g);
        // Of boards that take all that is left the cheapest; else the one that gives most for its value.
        const all = filler.left.every((n) => n === 0);
        const worth = made.worth / (value + 1e-9) ** weigh;
        if (made.worth === 0 || (all ? value >= whole : whole < Infinity || worth <= best)) continue;
        chosen = made;
        if (all) whole = value;
        else best = worth;
      }
      if (!chosen) return undefined;
      for (const k of chosen.kinds) left[k] = (left[k] as number) - 1;
      spent += this.job.grounds[chosen.ground]?.value ?? 0;
      out.push(chosen);
      open.splice(open.indexOf(chosen.ground), 1);
    }
    return out;
  }

  /** A choice of boards of less value that takes everything too, or none. */
  private cheaper(filled: readonly Filled[], limit: number): State | undefined {
    const goals = this.goals(filled);
    const share = (limit - this.filler.steps) / Math.max(1, Math.min(GOALS, goals.length));
    for (const goal of goals.slice(0, GOALS)) {
      if (this.filler.steps >= limit) break;
      const kept = filled.filter((f) => goal.includes(f.ground));
      const found = this.into(goal, kept, Math.min(limit, this.filler.steps + share));
      if (found && found.over === 0) return { ...found, filled: found.filled.filter((f) => f.kinds.length > 0) };
    }
    return undefined;
  }
  /** Sets of boards cheaper than these and no cheaper than the bound, those with the most wood for it first. */
  private goals(filled: readonly Filled[]): number[][] {
    const { grounds, bound } = this.job;
    const used = filled.map((f) => f.ground);
    const free = grounds.map((_, i) => i).filter((i) => !used.includes(i));
    const now = valueOf(this.job, filled);
    const out: { readonly set: number[]; readonly area: number; readonly value: number }[] = [];
    const offer = (without: readonly number[], plus: readonly number[]): void => {
      const set = [...used.filter((g) => !without.includes(g)), ...plus];
      const value = set.reduce((s, g) => s + (grounds[g]?.value ?? 0), 0);
      if (value >= now * (1 - 1e-9) || value < bound * (1 - 1e-9)) return;
      out.push({ set, area: set.reduce((s, g) => s + areaOf(grounds[g] as Ground), 0), value });
    };
    for (const a of used) {
      offer([a], []);
      for (const f of free) offer([a], [f]);
    }
    for (const [i, a] of used.entries()) for (const b of used.slice(i + 1)) for (const f of free) offer([a, b], [f]);
    return out.sort((p, q) => q.area - p.area || p.value - q.value).map((g) => g.set);
  }

  /** As much as can be on these boards; stops when everything is, or the steps are spent. */
  private into(set: readonly number[], from: readonly Filled[], limit: number): State | undefined {
    const left = Int32Array.from(this.job.counts);
    for (const f of from) for (const k of f.kinds) left[k] = (left[k] as number) - 1;
    const boards = new Map<number, Filled>(set.map((g) => [g, from.find((f) => f.ground === g) ?? EMPTY(g)]));
    let over = this.overOf(left);
    let best: State = { filled: [...boards.values()], left: Int32Array.from(left), over };
    const past = new Float64Array(LOOK_BACK).fill(over);
    for (let turn = 0; over > 0 && this.filler.steps < limit && set.length > 0; turn++) {
      const chosen = this.some(set);
      const made = this.refill(chosen, boards, left);
      const now = this.overOf(this.filler.left);
      const slot = turn % LOOK_BACK;
      if (now <= over || now <= (past[slot] as number)) {
        for (const m of made) boards.set(m.ground, m);
        left.set(this.filler.left);
        over = now;
        if (over < best.over) best = { filled: [...boards.values()], left: Int32Array.from(left), over };
      }
      past[slot] = over;
    }
    return { ...best, filled: best.filled.filter((f) => f.kinds.length > 0) };
  }

  /** The same boards, cut so that what is left of them is longer. */
  private settle(filled: readonly Filled[], left: Int32Array, limit: number): readonly Filled[] {
    const boards = new Map(filled.map((f) => [f.ground, f]));
    const set = filled.map((f) => f.ground);
    const over = this.overOf(left);
    for (let turn = 0; this.filler.steps < limit && turn < TURNS && set.length > 0; turn++) {
      const chosen = this.some(set);
      const made = this.refill(chosen, boards, left);
      if (this.overOf(this.filler.left) > over) continue;
      const before = this.score(chosen.map((g) => boards.get(g) as Filled));
      if (!above(this.score(made), before)) continue;
      for (const m of made) boards.set(m.ground, m);
    }
    return [...boards.values()].filter((f) => f.kinds.length > 0).sort((a, b) => a.ground - b.ground);
  }

  /** Empties the chosen boards and cuts them up anew from what was on them and what is left over, in a manner by lot. */
  private refill(chosen: readonly number[], boards: ReadonlyMap<number, Filled>, left: Int32Array): Filled[] {
    const { filler } = this;
    filler.left.set(left);
    for (const g of chosen) for (const k of boards.get(g)?.kinds ?? []) filler.left[k] = (filler.left[k] as number) + 1;
    return chosen.map((g) => {
      this.byLot();
      return this.take(g);
    });
  }
  /** A manner of cutting and an order of the pool by lot. */
  private byLot(): void {
    const { filler, random } = this;
    filler.manner = {
      first: random() < 0.65 ? 'cross' : 'rip',
      pick: random() < 0.5 ? 'first' : 'snug',
      blink: random() < 0.6 ? 0.08 : 0,
      fromRight: random() < 0.4,
      fromTop: random() < 0.4,
      strip: random() < 0.7,
    };
    this.order(Math.floor(random() * ORDERS.length), random() < 0.2 ? 0 : random() * 0.5);
  }
  /** One to three boards by lot. */
  private some(of: readonly number[]): number[] {
    const r = this.random();
    const want = Math.min(of.length, r < 0.25 ? 1 : r < 0.8 ? 2 : 3);
    const out: number[] = [];
    while (out.length < want) {
      const g = of[Math.floor(this.random() * of.length)] as number;
      if (!out.includes(g)) out.push(g);
    }
    return out;
  }
  private take(g: number): Filled {
    const ground = this.job.grounds[g] as Ground;
    const node = this.filler.board(ground);
    const kinds = this.filler.taken;
    const worth = kinds.reduce((s, k) => s + (this.worths[k] as number), 0);
    return { ground: g, node, kinds, worth };
  }
  /**
   * Long remnants first, by their square in whole feet: one of six is worth more than two of three. Then panels from few
   * boards. Then remnants to the inch.
   */
  private score(filled: readonly Filled[]): readonly number[] {
    const rests = filled.map((f) => {
      const ground = this.job.grounds[f.ground] as Ground;
      return Math.max(0, ...restsOf(f.node).map((r) => longest(r, ground, this.job.keep)?.long ?? 0));
    });
    const apart = filled.reduce((s, f) => s + new Set(f.kinds.filter((k) => this.job.panels.has(k))).size, 0);
    const sum = (unit: number): number => rests.reduce((s, r) => s + Math.floor(r / unit) ** 2, 0);
    return [sum(FOOT), -apart, sum(FOOT / 12)];
  }
  private overOf(left: Int32Array): number {
    let sum = 0;
    for (let k = 0; k < left.length; k++) if (left[k] !== 0) sum += (left[k] as number) * (this.worths[k] as number);
    return sum;
  }
  /** Puts the kinds that are left into the pool, largest first, moved about by `amount` (0 to 1) of the list. */
  private order(order: number, amount: number): void {
    const { filler, noise } = this;
    const rank = this.ranks[order] as Float64Array;
    const pool: number[] = [];
    for (let k = 0; k < rank.length; k++) {
      if (filler.left[k] === 0) continue;
      pool.push(k);
      noise[k] = (rank[k] as number) + (amount > 0 ? (this.random() - 0.5) * amount : 0);
    }
    filler.pool = pool.sort((a, b) => (noise[a] as number) - (noise[b] as number) || a - b);
  }
}

interface State {
  readonly filled: readonly Filled[];
  readonly left: Int32Array;
  readonly over: number;
}
const FOOT = inches(12);
/** Greater at the first figure where they differ. */
function above(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((v, k) => v !== b[k]);
  return i >= 0 && (a[i] as number) > (b[i] as number);
}
interface Offer {
  readonly made: Filled;
  readonly worth: number;
  /** How many boards were full when it was asked. */
  readonly asked: number;
}
/** How many boards are asked anew before one is chosen: our default. */
const ASKED = 6;
/** Share of the steps for trading boards before goals are set, and how many free boards offer each time: our defaults. */
const TRADE_SHARE = 0.9;
const FREE = 4;
/** Goals tried from one choice of boards, and turns spent on remnants: our defaults. */
const GOALS = 16;
const TURNS = 4000;
const EMPTY = (ground: number): Filled => ({ ground, node: { kind: 'rest', at: [0, 0, 0, 0] }, kinds: [], worth: 0 });
export const valueOf = (job: Pick<Search, 'grounds'>, filled: readonly Filled[]): number =>
  filled.reduce((s, f) => s + (job.grounds[f.ground]?.value ?? 0), 0);
const areaOf = (g: Ground): number => (g.x1 - g.x0) * (g.board.width[0] + g.board.width[1]);
