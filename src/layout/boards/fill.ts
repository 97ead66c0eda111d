import { straightening, type Ground, type Kind, type Spot } from './ground.js';
import type { Rect } from './clear.js';

export type Way = 'cross' | 'rip';
/** How a board is cut up: parts of a `cut` lie one after another along x (cross) or y (rip), a kerf or more apart. */
export type Node =
  | { readonly kind: 'rest'; readonly at: Rect }
  | { readonly kind: 'piece'; readonly of: number; readonly link: number; readonly at: Rect; readonly back: boolean }
  | { readonly kind: 'cut'; readonly way: Way; readonly at: Rect; readonly parts: readonly Node[] };

/** How the next kind of a region is chosen, and at which side it is put. */
export interface Manner {
  readonly first: Way;
  readonly pick: 'first' | 'snug';
  /** Share of fitting kinds passed over. */
  readonly blink: number;
  readonly fromRight: boolean;
  readonly fromTop: boolean;
  /** A run is ripped as one strip before it is cut to lengths. */
  readonly strip: boolean;
}
/** Changes of direction on a board: sections, strips, lengths, a last rip to width. */
const DEEPEST = 4;

interface Region {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** Not straightened yet. */
  readonly raw: boolean;
}
interface Placed {
  readonly kind: number;
  readonly link: number;
  readonly l: number;
  readonly w: number;
  readonly x: number;
  readonly y: number;
  readonly back: boolean;
}
/** A run as it lies: rows from the lower edge up, each in order along x. */
type Rows = readonly (readonly Placed[])[];

/**
 * Cuts up one board from a pool of kinds, edge to edge: constructive, recursive. A piece goes to the first clear place of a
 * region and opens a slice (crosscut) or a strip (rip) there; what lies beside it, before and beyond, is cut up the same way.
 * One object a search; `steps` counts the kinds and the clear rectangles looked at.
 */
export class BoardFiller {
  readonly left: Int32Array;
  /** Kinds in the order in which they are tried. */
  pool: number[] = [];
  /** What the last board was filled with, a kind a piece. */
  taken: number[] = [];
  steps = 0;
  manner: Manner = { first: 'cross', pick: 'first', blink: 0, fromRight: false, fromTop: false, strip: true };
  private ground!: Ground;
  private sx = 0;
  private sy = 0;
  private sback = false;

  constructor(
    readonly kinds: readonly Kind[],
    readonly kerf: number,
    readonly step: number,
    readonly random: () => number,
  ) {
    this.left = new Int32Array(kinds.length);
  }

  /** The board cut up; what is put on it is taken from `left`. */
  board(ground: Ground): Node {
    this.ground = ground;
    this.taken = [];
    const all: Region = { x0: ground.x0, y0: 0, x1: ground.x1, y1: ground.height, raw: true };
    const at = rectOf(all);
    const { first } = this.manner;
    return { kind: 'cut', way: first, at, parts: first === 'cross' ? this.cross(all, 1) : this.rip(all, 1) };
  }

  private cross(r: Region, depth: number, forced?: Placed): Node[] {
    const chosen = forced ?? (depth > DEEPEST ? undefined : this.choose(r, 'cross', depth));
    if (!chosen) return restOf(r);
    if ('rows' in chosen) return this.run(r, depth, chosen.rows);
    const { x, l } = chosen;
    const node = this.slice({ ...r, x0: x, x1: x + l }, depth, chosen);
    return this.around(r, x, x + l, depth, [node]);
  }
  /** What lies before and beyond a slice, the longer first. */
  private around(r: Region, from: number, to: number, depth: number, middle: readonly Node[]): Node[] {
    const low = { ...r, x1: from - this.kerf };
    const high = { ...r, x0: to + this.kerf };
    const again = (part: Region): Node[] => (part.x1 > part.x0 ? this.cross(part, depth) : []);
    if (high.x1 - high.x0 >= low.x1 - low.x0) {
      const beyond = again(high);
      return [...again(low), ...middle, ...beyond];
    }
    const before = again(low);
    return [...before, ...middle, ...again(high)];
  }
  private slice(r: Region, depth: number, placed: Placed): Node {
    const { x, y, l, w, kind, link, back } = placed;
    if (r.y0 === y && r.y1 === y + w && r.x0 === x && r.x1 === x + l)
      return { kind: 'piece', of: kind, link, at: rectOf(r), back };
    return { kind: 'cut', way: 'rip', at: rectOf(r), parts: this.rip(r, depth + 1, placed) };
  }

  private rip(r0: Region, depth: number, forced?: Placed): Node[] {
    const r = r0.raw ? { ...r0, y0: Math.max(r0.y0, this.straight(r0.x1 - r0.x0)), raw: false } : r0;
    const chosen = forced ?? (depth > DEEPEST ? undefined : this.choose(r, 'rip', depth));
    if (!chosen || 'rows' in chosen) return restOf(r);
    const { y, w } = chosen;
    const node = this.strip({ ...r, y0: y, y1: y + w }, depth, chosen);
    return this.beside(r, y, y + w, depth, [node]);
  }
  /** What lies below and above a strip, the wider first. */
  private beside(r: Region, from: number, to: number, depth: number, middle: readonly Node[]): Node[] {
    const low = { ...r, y1: from - this.kerf };
    const high = { ...r, y0: to + this.kerf };
    const again = (part: Region): Node[] => (part.y1 > part.y0 ? this.rip(part, depth) : []);
    if (high.y1 - high.y0 >= low.y1 - low.y0) {
      const above = again(high);
      return [...again(low), ...middle, ...above];
    }
    const below = again(low);
    return [...below, ...middle, ...again(high)];
  }
  private strip(r: Region, depth: number, placed: Placed): Node {
    const { x, y, l, w, kind, link, back } = placed;
    if (r.y0 === y && r.y1 === y + w && r.x0 === x && r.x1 === x + l)
      return { kind: 'piece', of: kind, link, at: rectOf(r), back };
    return { kind: 'cut', way: 'cross', at: rectOf(r), parts: this.cross(r, depth + 1, placed) };
  }

  /** A run: one strip (or several) ripped out and cut to lengths, or a section for each of its blanks. */
  private run(r: Region, depth: number, rows: Rows): Node[] {
    const all = rows.flat();
    const x0 = Math.min(...all.map((p) => p.x));
    const x1 = Math.max(...all.map((p) => p.x + p.l));
    if (rows.length === 1 && !(this.manner.strip && depth === 1))
      return this.around(r, x0, x1, depth, this.inOrder(r, depth, all));
    const section: Region = { ...r, x0, x1, y0: r.raw ? Math.max(r.y0, this.straight(x1 - x0)) : r.y0, raw: false };
    const strips = rows.map((row): Region => {
      const y0 = row[0]?.y ?? 0;
      return { ...section, y0, y1: y0 + Math.max(...row.map((p) => p.w)) };
    });
    const parts: Node[] = [];
    let y = section.y0;
    strips.forEach((s, i) => {
      if (s.y0 - this.kerf > y) parts.push(...this.rip({ ...section, y0: y, y1: s.y0 - this.kerf }, depth + 1));
      const row = rows[i] as readonly Placed[];
      parts.push({ kind: 'cut', way: 'cross', at: rectOf(s), parts: this.lengths(s, depth + 2, row) });
      y = s.y1 + this.kerf;
    });
    if (y < section.y1) parts.push(...this.rip({ ...section, y0: y }, depth + 1));
    const node: Node = { kind: 'cut', way: 'rip', at: [x0, r.y0, x1, r.y1], parts };
    return this.around(r, x0, x1, depth, [node]);
  }
  private lengths(strip: Region, depth: number, row: readonly Placed[]): Node[] {
    const first = row[0] as Placed;
    const last = row.at(-1) as Placed;
    return this.around(strip, first.x, last.x + last.l, depth, this.inOrder(strip, depth, row));
  }
  private inOrder(r: Region, depth: number, row: readonly Placed[]): Node[] {
    const parts: Node[] = [];
    row.forEach((p, i) => {
      const before = row[i - 1];
      const gap = before && { ...r, x0: before.x + before.l + this.kerf, x1: p.x - this.kerf };
      const slice = this.slice({ ...r, x0: p.x, x1: p.x + p.l }, depth, p);
      if (gap && gap.x1 > gap.x0) parts.push(...this.cross(gap, depth));
      parts.push(slice);
    });
    return parts;
  }

  private straight(length: number): number {
    return Math.ceil(straightening(this.ground.board, length) / this.step) * this.step;
  }

  private choose(r: Region, way: Way, depth: number): Placed | { readonly rows: Rows } | undefined {
    const { manner, ground, random } = this;
    const snug = manner.pick === 'snug' && depth > 1;
    let best: Placed | undefined;
    let least = Infinity;
    this.steps += 1 + this.pool.length;
    for (const k of this.pool) {
      if (this.left[k] === 0) continue;
      const kind = this.kinds[k] as Kind;
      const run = kind.links.length > 1;
      if (kind.run !== undefined && this.taken.some((t) => this.kinds[t]?.run === kind.run)) continue;
      if (kind.l > r.x1 - r.x0 || kind.w > r.y1 - r.y0 || (run && (way === 'rip' || depth > 2))) continue;
      const loose = way === 'rip' ? r.x1 - r.x0 - kind.l : r.y1 - r.y0 - kind.w;
      if (snug && best && loose >= least) continue;
      if (run) {
        const rows = this.rowsOf(k, r, depth);
        if (!rows || (manner.blink > 0 && random() < manner.blink)) continue;
        this.count(k);
        return { rows };
      }
      const low = r.raw ? Math.max(r.y0, this.straight(kind.l)) : r.y0;
      if (!this.spot(ground.spots[k]?.[0] ?? [], kind, r, low, way)) continue;
      if (manner.blink > 0 && random() < manner.blink) continue;
      best = { kind: k, link: 0, l: kind.l, w: kind.w, x: this.sx, y: this.sy, back: this.sback };
      least = loose;
      if (!snug || loose === 0) break;
    }
    if (best) this.count(best.kind);
    return best;
  }
  private count(kind: number): void {
    this.left[kind] = (this.left[kind] as number) - 1;
    this.taken.push(kind);
  }

  /** The clear place of a region that comes first: along the board for a slice, up from the edge for a strip. */
  private spot(spots: readonly Spot[], size: { l: number; w: number }, r: Region, low: number, way: Way): boolean {
    const { l, w } = size;
    const { fromRight, fromTop } = this.manner;
    const [w0, w1] = this.ground.board.width;
    const length = this.ground.board.length;
    let best = Infinity;
    let second = Infinity;
    this.steps += spots.length;
    for (const s of spots) {
      const at = s.at;
      let x0 = at[0] > r.x0 ? at[0] : r.x0;
      let x1 = at[2] < r.x1 ? at[2] : r.x1;
      if (x1 - x0 < l) continue;
      const y0 = at[1] > low ? at[1] : low;
      let y1 = at[3] < r.y1 ? at[3] : r.y1;
      if (y1 - y0 < w) continue;
      if (w0 !== w1) {
        const t = ((y0 + w - w0) * length) / (w1 - w0);
        if (w1 < w0) x1 = Math.min(x1, Math.floor(t));
        else x0 = Math.max(x0, this.up(Math.ceil(t)));
        if (x1 - x0 < l) continue;
      }
      const x = fromRight ? x1 - l : x0;
      if (w0 !== w1) {
        const edge = Math.min(w0 + ((w1 - w0) * x) / length, w0 + ((w1 - w0) * (x + l)) / length);
        y1 = Math.min(y1, Math.floor(edge));
      }
      const y = fromTop ? Math.max(y0, y1 - w) : y0;
      const a = way === 'cross' ? (fromRight ? -x : x) : fromTop ? -y : y;
      const b = way === 'cross' ? (fromTop ? -y : y) : fromRight ? -x : x;
      if (a > best || (a === best && b >= second)) continue;
      best = a;
      second = b;
      this.sx = x;
      this.sy = y;
      this.sback = s.back;
    }
    return best < Infinity;
  }
  private up(v: number): number {
    return Math.ceil(v / this.step) * this.step;
  }

  /** A place for a run in a region: the fold with the fewest rows that finds one. All of it shows the same face. */
  private rowsOf(k: number, r: Region, depth: number): Rows | undefined {
    const kind = this.kinds[k] as Kind;
    const spots = this.ground.spots[k] ?? [];
    if (spots.some((s) => s.length === 0)) return undefined;
    for (const fold of kind.folds) {
      if (fold.length > 1 && depth > 1) break;
      for (const back of [false, true]) {
        const rows = this.foldAt(k, kind, fold, r, back);
        if (rows) return rows;
      }
    }
    return undefined;
  }
  private foldAt(k: number, kind: Kind, fold: readonly number[], r: Region, back: boolean): Rows | undefined {
    const rows: Placed[][] = [];
    const most = Math.min(r.x1 - r.x0, this.ground.x1 - this.ground.x0);
    let low = r.raw ? Math.max(r.y0, this.straight(most)) : r.y0;
    let from = 0;
    for (const many of fold) {
      const row = this.rowAt(k, kind, from, many, { ...r, y0: low, raw: false }, back);
      if (!row) return undefined;
      rows.push(row);
      low = Math.max(...row.map((p) => p.y + p.w)) + this.kerf;
      from += many;
    }
    return rows;
  }
  /** Blanks `from` on of a run, end to end on one line: the line that makes the row shortest. */
  private rowAt(k: number, kind: Kind, from: number, many: number, r: Region, back: boolean): Placed[] | undefined {
    const spots = this.ground.spots[k] as readonly (readonly Spot[])[];
    const wide = Math.max(...kind.links.slice(from, from + many).map((l) => l.w));
    const lines = [r.y0, ...(spots[from] as readonly Spot[]).map((s) => s.at[1])];
    const ys = [...new Set(lines)].filter((y) => y >= r.y0 && y + wide <= r.y1).sort((a, b) => a - b);
    let best: Placed[] | undefined;
    let least = Infinity;
    for (const y of ys.slice(0, LINES)) {
      const row: Placed[] = [];
      let x = r.x0;
      for (let link = from; link < from + many; link++) {
        const { l, w } = kind.links[link] as Kind['links'][number];
        const at = this.along(spots[link] as readonly Spot[], l, w, x, r.x1, y, back);
        if (at === undefined) break;
        row.push({ kind: k, link, l, w, x: at, y, back });
        x = at + l + this.kerf;
      }
      const long = x - (row[0]?.x ?? 0);
      if (row.length < many || long >= least) continue;
      best = row;
      least = long;
    }
    return best;
  }
  /** The first x from `from` on where a blank fits on the line y. */
  private along(
    spots: readonly Spot[],
    l: number,
    w: number,
    from: number,
    to: number,
    y: number,
    back: boolean,
  ): number | undefined {
    const [w0, w1] = this.ground.board.width;
    const length = this.ground.board.length;
    let best: number | undefined;
    this.steps += spots.length;
    for (const { at, back: b } of spots) {
      if (b !== back || at[1] > y || at[3] < y + w) continue;
      let x0 = Math.max(at[0], from);
      let x1 = Math.min(at[2], to);
      if (w0 !== w1) {
        const t = ((y + w - w0) * length) / (w1 - w0);
        if (w1 < w0) x1 = Math.min(x1, Math.floor(t));
        else x0 = Math.max(x0, this.up(Math.ceil(t)));
      }
      if (x1 - x0 >= l && (best === undefined || x0 < best)) best = x0;
    }
    return best;
  }
}
/** Lines tried for a row of a run: our default. */
const LINES = 16;

const rectOf = (r: Region): Rect => [r.x0, r.y0, r.x1, r.y1];
const restOf = (r: Region): Node[] => (r.x1 > r.x0 && r.y1 > r.y0 ? [{ kind: 'rest', at: rectOf(r) }] : []);

/** The pieces of a cut-up board, in the order in which they are sawn. */
export function piecesOf(node: Node): Extract<Node, { kind: 'piece' }>[] {
  if (node.kind === 'piece') return [node];
  return node.kind === 'cut' ? node.parts.flatMap(piecesOf) : [];
}
/** What is left of it. */
export function restsOf(node: Node): Rect[] {
  if (node.kind === 'rest') return [node.at];
  return node.kind === 'cut' ? node.parts.flatMap(restsOf) : [];
}
