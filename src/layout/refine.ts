import { cutUp, fenceSettings, type Named, type SheetSize } from './cuts.js';
import { asPattern, type Pattern, type Tree, type Way } from './guillotine.js';
import { sheetBound } from './bound.js';
import type { Kind, Rules } from './pack/filler.js';
import type { Blank, Filled, Packer } from './pack/goal.js';

/** A sheet of the layout as it stands: its full usable size, what may be used of it, and what is on it. */
interface Stand {
  readonly blank: Blank;
  readonly filled: Filled;
}
export interface Asked {
  readonly packer: Packer;
  readonly rules: Rules;
  readonly sizes: readonly SheetSize[];
  /** What each kind is called, for the cuts. */
  readonly names: readonly Named[];
  /** Steps of the packer that may be spent, and layouts that may be judged. */
  readonly steps: number;
  readonly looks: number;
}

/**
 * The sheets being settled: first the largest offcut that can be kept whole, on the sheet that has most room (its blank is
 * made narrower, then shorter, by halving, as long as everything still finds a place); then fewer cuts and settings of the
 * fence at the same offcut. Gives a pattern a sheet.
 */
export function refine(filled: readonly Filled[], asked: Asked): Pattern[] {
  const blanks = asked.sizes.map(usable);
  const roomy = shrink(filled, blanks, asked);
  const eased = ease(roomy, asked);
  return eased.map((s, i) => patternOf(s, asked.sizes[i] as SheetSize, asked.rules.kerf));
}

export const usable = (s: SheetSize): Blank => ({ w: s.length - s.trim, h: s.width - s.trim });

/** The pattern on the whole sheet: what the blank leaves out is one more strip. */
function patternOf({ blank, filled }: Stand, size: SheetSize, kerf: number): Pattern {
  const whole = usable(size);
  const way: Way = blank.w < whole.w ? 'cross' : 'rip';
  const [at, of] = way === 'cross' ? [blank.w, whole.w] : [blank.h, whole.h];
  const tree: Tree =
    at === of
      ? filled.tree
      : { kind: 'split', way, at, first: filled.tree, rest: of - at - kerf, second: { kind: 'empty' } };
  return asPattern(tree, whole.w, whole.h);
}

function shrink(filled: readonly Filled[], blanks: readonly Blank[], asked: Asked): Stand[] {
  const stands = filled.map((f, i) => ({ blank: blanks[i] as Blank, filled: f }));
  const share = (f: Filled, i: number): number => {
    const b = blanks[i] as Blank;
    return f.worth / (b.w * b.h);
  };
  const order = filled
    .map((_, i) => i)
    .sort((a, b) => share(filled[a] as Filled, a) - share(filled[b] as Filled, b) || b - a);
  const sheet = order[0];
  if (sheet === undefined) return stands;
  const ways: readonly Way[] =
    asked.rules.first === 'either' || asked.rules.stages === Infinity ? ['cross', 'rip'] : [asked.rules.first];
  let best = { stands, area: 0 };
  for (const way of ways) {
    const tried = halve(stands, sheet, way, asked, asked.packer.steps + asked.steps / ways.length);
    const area = freed(tried[sheet] as Stand, blanks[sheet] as Blank, asked.sizes[sheet] as SheetSize);
    if (area > best.area) best = { stands: tried, area };
  }
  return best.stands;
}

/** Area of the strip beyond the blank, 0 when it is not worth keeping. */
function freed({ blank }: Stand, whole: Blank, { keep, kerf }: SheetSize): number {
  const [a, b] = blank.w < whole.w ? [whole.w - blank.w - kerf, whole.h] : [whole.w, whole.h - blank.h - kerf];
  return Math.max(a, b) >= keep[0] && Math.min(a, b) >= keep[1] ? a * b : 0;
}

/** How often the blank is halved: to a sixty-fourth of what is open, at most. */
const HALVINGS = 6;
function halve(stands: readonly Stand[], sheet: number, way: Way, asked: Asked, limit: number): Stand[] {
  const { packer } = asked;
  let best = [...stands];
  const side = way === 'cross' ? 'w' : 'h';
  const whole = (stands[sheet] as Stand).blank;
  const pieces = packer.kinds.flatMap((k, i) => Array<Kind>(packer.counts[i] ?? 0).fill(k));
  let low = 0;
  let high = whole[side];
  for (let n = 0; n < HALVINGS && packer.steps < limit; n++) {
    const mid = Math.floor((low + high) / 2);
    const blanks = best.map((s, i) => (i === sheet ? { ...whole, [side]: mid, first: way } : s.blank));
    const from = best.filter((_, i) => i !== sheet).map((s) => s.filled);
    const share = Math.min(asked.steps / (2 * HALVINGS), PATIENCE * pieces.length ** 2);
    const found = hopeless(blanks, pieces, asked.rules.kerf)
      ? undefined
      : packer.into(blanks, from, Math.min(limit, packer.steps + share));
    if (!found || (found[sheet] as Filled).kinds.length === 0) {
      low = mid;
      continue;
    }
    const used = reach((found[sheet] as Filled).tree, way, asked.rules.kerf, mid);
    best = found.map((filled, i) => ({
      blank: i === sheet ? { ...whole, [side]: used, first: way } : (blanks[i] as Blank),
      filled: i === sheet ? { ...filled, tree: cropped(filled.tree, way, asked.rules.kerf, used) } : filled,
    }));
    high = used;
  }
  return best;
}

/** Steps that one halving may take, a square of the number of pieces: small jobs are soon tried through. */
const PATIENCE = 400;
/** The pieces cannot be in these blanks, by their area; in one blank, by the bound. */
function hopeless(blanks: readonly Blank[], pieces: readonly Kind[], kerf: number): boolean {
  const area = (x: { readonly w: number; readonly h: number }): number => (x.w + kerf) * (x.h + kerf);
  const sum = (all: readonly { readonly w: number; readonly h: number }[]): number =>
    all.reduce((t, x) => t + area(x), 0);
  const only = blanks.length === 1 ? blanks[0] : undefined;
  return sum(pieces) > sum(blanks) || (only !== undefined && sheetBound(only.w, only.h, kerf, pieces) > 1);
}

/** How far strips of a direction reach into a region of `length`. */
function reach(tree: Tree, way: Way, kerf: number, length: number): number {
  if (tree.kind !== 'split' || tree.way !== way) return length;
  if (tree.second.kind === 'empty') return tree.at;
  return tree.at + kerf + reach(tree.second, way, kerf, tree.rest);
}
/** The tree of a region that has become as short as its strips reach. */
function cropped(tree: Tree, way: Way, kerf: number, length: number): Tree {
  if (tree.kind !== 'split' || tree.way !== way) return tree;
  if (tree.second.kind === 'empty') return tree.first;
  const rest = length - tree.at - kerf;
  return { ...tree, rest, second: cropped(tree.second, way, kerf, rest) };
}

/** Refills one or two sheets at a time; keeps what needs no more work at an offcut no smaller. */
function ease(stands: readonly Stand[], asked: Asked): Stand[] {
  const { packer, sizes } = asked;
  const score = (s: Stand, i: number): Score =>
    scoreOf(patternOf(s, sizes[i] as SheetSize, asked.rules.kerf), asked, i);
  let best = [...stands];
  let scores = best.map(score);
  const none = new Int32Array(packer.kinds.length);
  for (let look = 0; look < asked.looks; look++) {
    const chosen =
      best.length === 1
        ? [0]
        : [look % best.length, (look + 1 + (Math.floor(look / best.length) % (best.length - 1))) % best.length];
    const { made, over } = packer.refill(
      chosen.slice(0, 1 + (look % 2)),
      best.map((s) => s.filled),
      best.map((s) => s.blank),
      none,
    );
    if (over > 0) continue;
    const next = [...best];
    for (const m of made) next[m.blank] = { blank: (best[m.blank] as Stand).blank, filled: m };
    const now = next.map((s, i) => (s === best[i] ? (scores[i] as Score) : score(s, i)));
    if (!worse(now, scores)) [best, scores] = [next, now];
  }
  return best;
}

/** How many cuts one is worth that one person cannot make: our default. */
const HELPER = 4;
interface Score {
  /** Largest offcut worth keeping, in fiftieths of the sheet. */
  readonly largest: number;
  readonly work: number;
  /** Sum of area^1.2 of what is kept (Gardeyn and Wauters 2022), as a share of the sheet's. */
  readonly kept: number;
}
function scoreOf(pattern: Pattern, asked: Asked, sheet: number): Score {
  const size = asked.sizes[sheet] as SheetSize;
  const unit = (size.length - size.trim) * (size.width - size.trim);
  const { offcuts, cuts } = cutUp(pattern, size, asked.names, 1);
  const kept = offcuts.filter((o) => o.keep).map((o) => (o.w * o.h) / unit);
  return {
    largest: Math.floor(50 * Math.max(0, ...kept)),
    work:
      cuts.length +
      fenceSettings(cuts) +
      2 * Math.max(0, ...cuts.map((c) => c.stage)) +
      HELPER * cuts.filter((c) => c.helper).length,
    kept: kept.reduce((sum, a) => sum + a ** 1.2, 0),
  };
}
/** The largest offcut of all sheets first, then the work, then what else is kept. */
function worse(a: readonly Score[], b: readonly Score[]): boolean {
  const largest = (s: readonly Score[]): number => Math.max(...s.map((x) => x.largest));
  const sum = (s: readonly Score[], of: 'work' | 'kept'): number => s.reduce((t, x) => t + x[of], 0);
  if (largest(a) !== largest(b)) return largest(a) < largest(b);
  if (sum(a, 'work') !== sum(b, 'work')) return sum(a, 'work') > sum(b, 'work');
  return sum(a, 'kept') < sum(b, 'kept') - 1e-12;
}
