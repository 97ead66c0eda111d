import { itemsInTree, type Tree, type Way } from '../guillotine.js';
import type { Kind, Rules } from './filler.js';
import type { Blank, Filled } from './goal.js';

/**
 * Whether counted pieces can be cut from given sheets at all: every guillotine arrangement is looked at. For each set of
 * pieces the least rectangles that hold it are kept (none of them both narrower and lower than another): a cut parts a set
 * in two, and least rectangles of the halves add up to those of the whole. With a limit of stages a set is a row of
 * slices, each with one stage fewer and the other direction first; a last cut to size is free. Exact in both senses:
 * `none` is a proof. (Least-rectangle curves: Wang 1983 and Stockmeyer 1983 combine rectangles so; ours keeps sets apart.)
 */
export type Verdict =
  { readonly kind: 'fits'; readonly filled: readonly Filled[] } | { readonly kind: 'none' } | { readonly kind: 'open' };

/** A least rectangle (kerf added to both sides), and how it comes about. */
interface Least {
  readonly w: number;
  readonly h: number;
  readonly from:
    | { readonly piece: number; readonly turned: boolean }
    | { readonly way: Way; readonly first: Least; readonly second: Least }
    | { readonly only: Least };
}
/** By set (a number in mixed radix): least rectangles, `w` rising and `h` falling. */
type Table = readonly Least[][];
interface Placed {
  readonly least: Least;
  /** Which way its blank is cut first. */
  readonly way: Way;
}
type Fitting = (set: number, blank: Blank) => Placed | undefined;

/** Sets that are told apart, at most: our default. */
const SETS = 60_000;

/**
 * One job searched through: the least rectangles are worked out once, for the largest of the sheets that there are, and
 * serve for every list of sheets that is asked about.
 */
export class Exact {
  private readonly search: Search | undefined;

  /** `limit`: combinations looked at for the rectangles, and as many again for all lists; then answers stay open. */
  constructor(
    kinds: readonly Kind[],
    counts: readonly number[],
    sheets: readonly Blank[],
    rules: Rules,
    limit: number,
  ) {
    const radix = counts.map((c) => c + 1);
    const all = radix.reduce((a, b) => a * b, 1);
    if (all <= SETS && sheets.length > 0) this.search = new Search(kinds, radix, all, sheets, rules, limit);
  }

  /** Everything into these blanks? None of them may be larger than the sheets of the constructor. */
  fit(blanks: readonly Blank[]): Verdict {
    return this.search?.run(blanks) ?? { kind: 'open' };
  }
}

class Search {
  private steps = 0;
  private blanks: readonly Blank[] = [];
  /** Null when they took more steps than there were. */
  private made: readonly { readonly way: Way; readonly table: Table }[] | null | undefined;
  private readonly digit: readonly number[];
  private readonly most: { readonly w: number; readonly h: number };
  private readonly area: Float64Array;
  private readonly room: number;

  constructor(
    private readonly kinds: readonly Kind[],
    private readonly radix: readonly number[],
    private readonly all: number,
    sheets: readonly Blank[],
    private readonly rules: Rules,
    private limit: number,
  ) {
    const { kerf } = rules;
    let unit = 1;
    this.digit = radix.map((r) => {
      const at = unit;
      unit *= r;
      return at;
    });
    this.most = { w: Math.max(...sheets.map((b) => b.w)) + kerf, h: Math.max(...sheets.map((b) => b.h)) + kerf };
    this.room = Math.max(...sheets.map((b) => (b.w + kerf) * (b.h + kerf)));
    this.area = new Float64Array(all);
    for (let set = 1; set < all; set++) {
      const k = this.lowest(set);
      const kind = kinds[k] as Kind;
      this.area[set] = (this.area[set - (this.digit[k] as number)] as number) + (kind.w + kerf) * (kind.h + kerf);
    }
  }

  run(blanks: readonly Blank[]): Verdict {
    this.blanks = blanks;
    if (this.made === undefined) {
      const { limit } = this;
      this.made = this.tables() ?? null;
      this.limit = this.steps + limit;
    }
    const tables = this.made;
    if (!tables || this.steps > this.limit) return { kind: 'open' };
    const { kerf } = this.rules;
    const fitting: Fitting = (set, blank) => {
      for (const { way, table } of tables) {
        const least = (table[set] as Least[]).find((l) => l.w <= blank.w + kerf && l.h <= blank.h + kerf);
        if (least) return { least, way };
      }
      return undefined;
    };
    const shared = this.share(this.all - 1, 0, fitting, new Set());
    if (shared === undefined) return this.steps > this.limit ? { kind: 'open' } : { kind: 'none' };
    const filled = this.blanks.map((b, blank): Filled => {
      const placed = shared[blank];
      const tree: Tree = placed ? treeOf(placed.least, b.w, b.h, placed.way, this.rules) : { kind: 'empty' };
      return { blank, tree, kinds: itemsInTree(tree), worth: this.worth(tree) };
    });
    return { kind: 'fits', filled };
  }
  private worth(tree: Tree): number {
    return itemsInTree(tree).reduce((sum, k) => sum + (this.kinds[k] as Kind).w * (this.kinds[k] as Kind).h, 0);
  }

  /** The tables of rectangles that count at the top; undefined when there are more combinations than the limit. */
  private tables(): readonly { readonly way: Way; readonly table: Table }[] | undefined {
    const { stages, first } = this.rules;
    if (stages === Infinity) {
      const free = this.fill((table, set, add) => this.parted(table, table, set, ['cross', 'rip'], add));
      return free && [{ way: first === 'rip' ? 'rip' : 'cross', table: free }];
    }
    const ways: readonly Way[] = ['cross', 'rip'];
    let deeper: readonly (Table | undefined)[] = ways.map(() => this.pieces());
    for (let stage = 1; stage <= stages; stage++) {
      const before = deeper;
      // A row of slices in one direction; each slice begins with the other direction.
      deeper = ways.map((way, i) => {
        const slices = before[1 - i];
        if (!slices || (stage === stages && first !== 'either' && first !== way)) return undefined;
        return this.fill((table, set, add) => {
          for (const only of slices[set] as Least[]) add({ w: only.w, h: only.h, from: { only } });
          this.parted(slices, table, set, [way], add);
        });
      });
    }
    if (this.steps > this.limit) return undefined;
    return ways.flatMap((way, i) => (deeper[i] ? [{ way, table: deeper[i] }] : []));
  }

  /** Sets of one piece. */
  private pieces(): Table {
    const table: Least[][] = Array.from({ length: this.all }, () => []);
    this.digit.forEach((at, piece) => {
      if ((this.radix[piece] as number) > 1) for (const l of this.lone(piece)) insert(table[at] as Least[], l);
    });
    return table;
  }
  private lone(piece: number): Least[] {
    const { kerf } = this.rules;
    const { w, h, turn } = this.kinds[piece] as Kind;
    const straight: Least = { w: w + kerf, h: h + kerf, from: { piece, turned: false } };
    const turned: Least = { w: h + kerf, h: w + kerf, from: { piece, turned: true } };
    return (turn ? [straight, turned] : [straight]).filter((l) => l.w <= this.most.w && l.h <= this.most.h);
  }

  private fill(make: (table: Table, set: number, add: (l: Least) => void) => void): Table | undefined {
    const table = this.rules.stages === Infinity ? this.pieces() : Array.from({ length: this.all }, (): Least[] => []);
    for (let set = 1; set < this.all; set++) {
      if (this.steps > this.limit) return undefined;
      if ((this.area[set] as number) > this.room) continue;
      const into = table[set] as Least[];
      make(table, set, (l) => {
        if (l.w <= this.most.w && l.h <= this.most.h) insert(into, l);
      });
    }
    return table;
  }

  /** A set in two: the half with a piece of the lowest kind from `firsts`, the other half from `seconds`. */
  private parted(firsts: Table, seconds: Table, set: number, ways: readonly Way[], add: (l: Least) => void): void {
    const k = this.lowest(set);
    this.eachPart(set, (part) => {
      if (part === set || Math.floor(part / (this.digit[k] as number)) % (this.radix[k] as number) === 0) return;
      const a = firsts[part] as Least[];
      const b = seconds[set - part] as Least[];
      this.steps++;
      if (a.length === 0 || b.length === 0) return;
      this.steps += (a.length + b.length) * ways.length;
      for (const way of ways) joined(a, b, way, add);
    });
  }
  /** Every part of a set, the set itself among them, the empty one not. */
  private eachPart(set: number, visit: (part: number) => void): void {
    const { radix, digit } = this;
    const of = digit.map((d, k) => Math.floor(set / d) % (radix[k] as number));
    const now = of.map(() => 0);
    for (let part = 0; ;) {
      let k = 0;
      for (; k < of.length; k++) {
        if ((now[k] as number) < (of[k] as number)) {
          now[k] = (now[k] as number) + 1;
          part += digit[k] as number;
          break;
        }
        part -= (now[k] as number) * (digit[k] as number);
        now[k] = 0;
      }
      if (k === of.length) return;
      visit(part);
    }
  }
  private lowest(set: number): number {
    for (let k = 0; ; k++) if (Math.floor(set / (this.digit[k] as number)) % (this.radix[k] as number) !== 0) return k;
  }

  /** Shares a set among the blanks from `blank` on. Where those are alike, one piece is fixed to the first of them. */
  private share(set: number, blank: number, fitting: Fitting, dead: Set<number>): (Placed | undefined)[] | undefined {
    if (set === 0) return [];
    const b = this.blanks[blank];
    const key = set * (this.blanks.length + 1) + blank;
    if (!b || dead.has(key) || this.steps > this.limit) return undefined;
    const later = this.blanks.slice(blank);
    const { kerf } = this.rules;
    if (later.reduce((sum, x) => sum + (x.w + kerf) * (x.h + kerf), 0) < (this.area[set] as number)) return undefined;
    const alike = later.every((x) => x.w === b.w && x.h === b.h);
    const k = this.lowest(set);
    let found: (Placed | undefined)[] | undefined;
    this.eachPart(set, (part) => {
      this.steps++;
      if (found || this.steps > this.limit || (this.area[part] as number) > this.room) return;
      if (alike && Math.floor(part / (this.digit[k] as number)) % (this.radix[k] as number) === 0) return;
      const placed = fitting(part, b);
      const rest = placed && this.share(set - part, blank + 1, fitting, dead);
      if (rest) found = [placed, ...rest];
    });
    if (!found && alike) dead.add(key);
    else if (!found) {
      const rest = this.share(set, blank + 1, fitting, dead);
      if (rest) found = [undefined, ...rest];
      else dead.add(key);
    }
    return found;
  }
}

/** Puts a rectangle among the least ones of its set, unless one there is no wider and no higher. */
function insert(into: Least[], l: Least): void {
  let at = 0;
  while (at < into.length && (into[at] as Least).w <= l.w) at++;
  if (at > 0 && (into[at - 1] as Least).h <= l.h) return;
  let from = at;
  while (from > 0 && (into[from - 1] as Least).w === l.w) from--;
  let to = at;
  while (to < into.length && (into[to] as Least).h >= l.h) to++;
  into.splice(from, to - from, l);
}

/** Two curves of least rectangles side by side (`cross`) or one over the other (`rip`): at each breadth the shortest of both. */
function joined(a: readonly Least[], b: readonly Least[], way: Way, add: (l: Least) => void): void {
  if (way === 'rip') {
    for (let i = 0, j = 0; i < a.length && j < b.length;) {
      const [first, second] = [a[i] as Least, b[j] as Least];
      add({ w: Math.max(first.w, second.w), h: first.h + second.h, from: { way, first, second } });
      const [na, nb] = [a[i + 1], b[j + 1]];
      if (na && (!nb || na.w <= nb.w)) i++;
      else j++;
    }
    return;
  }
  for (let i = a.length - 1, j = b.length - 1; i >= 0 && j >= 0;) {
    const [first, second] = [a[i] as Least, b[j] as Least];
    add({ w: first.w + second.w, h: Math.max(first.h, second.h), from: { way, first, second } });
    const [na, nb] = [a[i - 1], b[j - 1]];
    if (na && (!nb || na.h <= nb.h)) i--;
    else j--;
  }
}

const other = (way: Way): Way => (way === 'cross' ? 'rip' : 'cross');
/** Which way a rectangle is cut first; a piece alone either way. */
const wayOf = (l: Least, usual: Way): Way =>
  'way' in l.from ? l.from.way : 'only' in l.from ? other(wayOf(l.from.only, other(usual))) : usual;

/** The tree of a rectangle in a region of `w` x `h` (no kerf): what is over is cut off where the stages allow it. */
function treeOf(l: Least, w: number, h: number, way: Way, { kerf, stages }: Rules): Tree {
  const build = (x: Least, width: number, height: number, d: Way): Tree => {
    const [own, whole] = d === 'cross' ? [x.w - kerf, width] : [x.h - kerf, height];
    const [across, high] = d === 'cross' ? [x.h - kerf, height] : [x.w - kerf, width];
    const off = (at: number, of: number, way: Way, first: Tree): Tree => ({
      kind: 'split',
      way,
      at,
      first,
      rest: of - at - kerf,
      second: { kind: 'empty' },
    });
    if (own < whole) return off(own, whole, d, d === 'cross' ? build(x, own, height, d) : build(x, width, own, d));
    const { from } = x;
    // Without a limit of stages what is over is cut off at once, in one piece; else each slice is cut to its length.
    if (across < high && (stages === Infinity || 'piece' in from))
      return off(across, high, other(d), d === 'cross' ? build(x, width, across, d) : build(x, across, height, d));
    if ('piece' in from) return { kind: 'piece', item: from.piece, turned: from.turned };
    if ('only' in from) return build(from.only, width, height, other(d));
    const inner = stages === Infinity ? (y: Least): Way => wayOf(y, d) : (): Way => other(d);
    const rest = stages === Infinity ? wayOf(from.second, d) : d;
    const at = (from.way === 'cross' ? from.first.w : from.first.h) - kerf;
    const [first, second] =
      from.way === 'cross'
        ? [build(from.first, at, height, inner(from.first)), build(from.second, width - at - kerf, height, rest)]
        : [build(from.first, width, at, inner(from.first)), build(from.second, width, height - at - kerf, rest)];
    return {
      kind: 'split',
      way: from.way,
      at,
      first,
      rest: (from.way === 'cross' ? width : height) - at - kerf,
      second,
    };
  };
  return build(l, w, h, way);
}
