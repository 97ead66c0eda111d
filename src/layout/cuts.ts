import { itemsOf, type Pattern, type Way } from './guillotine.js';
import type { GuillotineCut, SheetLayout } from './layout.js';

/** A sheet as bought. nm. `trim`: off one long edge and one end, kerf in it; 0 where edges are used as they come. */
export interface SheetSize {
  readonly length: number;
  readonly width: number;
  readonly trim: number;
  readonly kerf: number;
  /** An offcut is kept when its sides are at least these, whichever way it lies. */
  readonly keep: readonly [number, number];
  /** The largest piece that one person steers: long side, short side. */
  readonly alone?: readonly [number, number];
}
export interface Named {
  readonly part: string;
  readonly mark: string;
  readonly w: number;
  readonly h: number;
  readonly spare?: true;
}
type Cutting = Pick<SheetLayout, 'pieces' | 'offcuts' | 'cuts'>;

interface Region {
  readonly pattern: Pattern;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** The cut that left the edge at its low x and low y. */
  readonly endOf: Draft | undefined;
  readonly edgeOf: Draft | undefined;
  readonly stage: number;
}
interface Draft {
  number: number;
  readonly kind: GuillotineCut['kind'];
  readonly stage: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly fence: number;
  readonly against: () => string;
  leaves: string;
  readonly helper: boolean;
}
interface Work {
  readonly size: SheetSize;
  readonly items: readonly Named[];
  readonly pieces: SheetLayout['pieces'][number][];
  readonly offcuts: SheetLayout['offcuts'][number][];
  /** One run of cuts a set of strips. */
  readonly runs: { readonly stage: number; readonly cuts: Draft[] }[];
  offcutNumber: number;
}

/**
 * Lays a pattern on its sheet and tells the cuts in the order in which they are made: edge and end trimmed, then stage by
 * stage; within a stage the widest fence setting first and equal settings in a row. `firstOffcut` numbers the offcuts.
 */
export function cutUp(pattern: Pattern, size: SheetSize, items: readonly Named[], firstOffcut: number): Cutting {
  const work: Work = { size, items, pieces: [], offcuts: [], runs: [], offcutNumber: firstOffcut };
  const trims = trimCuts(size);
  const [edge, end] = trims;
  visit(
    { pattern, x: 0, y: 0, w: size.length - size.trim, h: size.width - size.trim, endOf: end, edgeOf: edge, stage: 1 },
    work,
  );
  const ordered = [...trims, ...inOrder(work.runs)];
  ordered.forEach((c, i) => (c.number = i + 1));
  const cuts = ordered.map((c) => ({
    number: c.number,
    kind: c.kind,
    stage: c.stage,
    from: c.from,
    to: c.to,
    fence: c.fence,
    against: c.against(),
    leaves: c.leaves,
    ...(c.helper ? ({ helper: true } as const) : {}),
  }));
  return { pieces: work.pieces, offcuts: work.offcuts, cuts };
}

function trimCuts(size: SheetSize): Draft[] {
  if (size.trim <= 0) return [];
  const line = 0 - size.kerf / 2;
  const helper = heavy(size.length, size.width, size);
  const common = { number: 0, kind: 'trim', stage: 0, fence: size.trim, helper } as const;
  return [
    {
      ...common,
      from: [0 - size.trim, line],
      to: [size.length - size.trim, line],
      against: () => 'a long edge',
      leaves: 'edge 1',
    },
    {
      ...common,
      from: [line, 0],
      to: [line, size.width - size.trim],
      against: () => 'an end, square to edge 1',
      leaves: 'end 2',
    },
  ];
}

function visit(region: Region, work: Work): void {
  const { pattern } = region;
  if (pattern.kind === 'empty') {
    offcut(region, work);
    return;
  }
  if (pattern.kind === 'piece') {
    const item = work.items[pattern.item] as Named;
    const { x, y, w, h } = region;
    const spare = item.spare ? ({ spare: true } as const) : {};
    work.pieces.push({ part: item.part, x, y, w, h, turned: pattern.turned, ...spare });
    return;
  }
  const { way, strips } = pattern;
  const whole = way === 'cross' ? region.w : region.h;
  const cuts: Draft[] = [];
  work.runs.push({ stage: region.stage, cuts });
  let at = 0;
  let last = way === 'cross' ? region.endOf : region.edgeOf;
  for (const strip of strips) {
    const before = last;
    const cut = at + strip.size < whole ? stripCut(region, way, at, strip.size, before, work) : undefined;
    const said = contents(strip.pattern, work);
    if (cut) {
      cut.leaves = said;
      cuts.push(cut);
    } else if (last && cuts.length > 0) last.leaves += `, leaves ${said}`;
    visit(part(region, way, at, strip.size, strip.pattern, before, region.stage + 1), work);
    last = cut ?? last;
    at += strip.size + work.size.kerf;
  }
  if (at < whole) {
    const name = offcut(part(region, way, at, whole - at, { kind: 'empty' }, last, region.stage), work);
    if (name !== undefined && last && cuts.length > 0) last.leaves += `, leaves ${name}`;
  }
}

/** A region's part from `at`, `size` long, in the direction in which it is cut up. */
function part(
  r: Region,
  way: Way,
  at: number,
  size: number,
  pattern: Pattern,
  by: Draft | undefined,
  stage: number,
): Region {
  return way === 'cross'
    ? { ...r, pattern, stage, x: r.x + at, w: size, endOf: by }
    : { ...r, pattern, stage, y: r.y + at, h: size, edgeOf: by };
}

function stripCut(r: Region, way: Way, at: number, size: number, against: Draft | undefined, work: Work): Draft {
  const line = at + size + work.size.kerf / 2;
  return {
    number: 0,
    kind: way,
    stage: r.stage,
    from: way === 'cross' ? [r.x + line, r.y] : [r.x, r.y + line],
    to: way === 'cross' ? [r.x + line, r.y + r.h] : [r.x + r.w, r.y + line],
    fence: size,
    against: () => (way === 'cross' ? 'end' : 'edge') + (against ? ` ${against.number}` : ' as it came'),
    leaves: '',
    helper: way === 'cross' ? heavy(r.w - at, r.h, work.size) : heavy(r.w, r.h - at, work.size),
  };
}

/** Is a piece larger than one person steers? Not where nothing is known. */
const heavy = (w: number, h: number, { alone }: SheetSize): boolean =>
  alone !== undefined && (Math.max(w, h) > alone[0] || Math.min(w, h) > alone[1]);

function contents(pattern: Pattern, work: Work): string {
  const marks = itemsOf(pattern).map((i) => (work.items[i] as Named).mark);
  return pattern.kind === 'piece' ? marks.join('') : `strip of ${marks.join(' ')}`;
}

/** Puts an offcut down; its name when it is worth keeping. */
function offcut(r: Region, work: Work): string | undefined {
  const [long, short] = work.size.keep;
  const keep = Math.max(r.w, r.h) >= long && Math.min(r.w, r.h) >= short;
  const name = keep ? `O${work.offcutNumber++}` : 'waste';
  work.offcuts.push({ name, x: r.x, y: r.y, w: r.w, h: r.h, keep });
  return keep ? name : undefined;
}

/** Stage by stage; each run keeps its own order (largest strip first), runs are merged by the fence, widest first. */
function inOrder(runs: Work['runs']): Draft[] {
  const out: Draft[] = [];
  const last = Math.max(0, ...runs.map((r) => r.stage));
  for (let stage = 1; stage <= last; stage++) {
    const heads = runs.filter((r) => r.stage === stage).map((r) => [...r.cuts]);
    for (;;) {
      const open = heads.filter((h) => h.length > 0);
      if (open.length === 0) break;
      const widest = Math.max(...open.map((h) => h[0]?.fence ?? 0));
      const next = open.find((h) => h[0]?.fence === widest)?.shift();
      if (next) out.push(next);
    }
  }
  return out;
}

/** How often the fence is set: cuts in a row at one setting count once. */
export const fenceSettings = (cuts: readonly GuillotineCut[]): number =>
  cuts.filter((c, i) => i === 0 || cuts[i - 1]?.fence !== c.fence).length;
