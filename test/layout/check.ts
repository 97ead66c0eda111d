import type { GuillotineCut, SheetLayout } from '../../src/layout/layout.js';
import type { NestJob } from '../../src/layout/nest.js';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Judges a sheet by itself, with no code of the layout: everything that is wrong with it, in words. */
export function faults(sheet: SheetLayout, job: NestJob): string[] {
  const out: string[] = [];
  const w = sheet.length - sheet.trim;
  const h = sheet.width - sheet.trim;
  const all: (Box & { readonly name: string })[] = [
    ...sheet.pieces.map((p) => ({ ...p, name: p.part })),
    ...sheet.offcuts.map((o) => ({ ...o })),
  ];
  const items = new Map(job.stocks.find((s) => s.id === sheet.stock)?.items.map((i) => [i.part, i]) ?? []);
  for (const p of sheet.pieces) {
    const item = items.get(p.part);
    if (!item) {
      out.push(`${p.part} was not asked for`);
      continue;
    }
    const straight = sheet.grain === 'width' ? [item.width, item.length] : [item.length, item.width];
    const wanted = p.turned ? [straight[1], straight[0]] : straight;
    if (p.w !== wanted[0] || p.h !== wanted[1]) out.push(`${p.part} has another size`);
    if (p.turned && !item.mayTurn && sheet.grain !== 'none') out.push(`${p.part} lies across the grain`);
  }
  for (const b of all) {
    if (b.x < 0 || b.y < 0 || b.x + b.w > w || b.y + b.h > h) out.push(`${b.name} is off the sheet`);
    if (b.w <= 0 || b.h <= 0) out.push(`${b.name} is nothing`);
  }
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [a, b] = [all[i] as Box, all[j] as Box];
      const apart = Math.max(a.x - b.x - b.w, b.x - a.x - a.w, a.y - b.y - b.h, b.y - a.y - a.h);
      if (apart < sheet.kerf) out.push(`${all[i]?.name} and ${all[j]?.name} are closer than a kerf`);
    }
  if (!guillotine(all, { x: 0, y: 0, w, h }, sheet.kerf)) out.push('it cannot be cut edge to edge');
  out.push(...sawn(sheet, all, w, h));
  return out;
}

/** By recursion: some line from edge to edge meets no box, and so on in both halves, until one is left. */
function guillotine(boxes: readonly Box[], area: Box, kerf: number): boolean {
  if (boxes.length <= 1) return true;
  for (const axis of ['x', 'y'] as const) {
    const size = axis === 'x' ? 'w' : 'h';
    const ends = [...new Set(boxes.map((b) => b[axis] + b[size]))].sort((a, b) => a - b);
    for (const end of ends.slice(0, -1)) {
      const low = boxes.filter((b) => b[axis] + b[size] <= end);
      const high = boxes.filter((b) => b[axis] >= end + kerf);
      if (low.length + high.length < boxes.length || high.length === 0) continue;
      return guillotine(low, area, kerf) && guillotine(high, area, kerf);
    }
  }
  return false;
}

/** Saws the raw sheet by the list of cuts: each must go right through one piece of it; what is left must be the boxes. */
function sawn(
  sheet: SheetLayout,
  wanted: readonly (Box & { readonly name: string })[],
  w: number,
  h: number,
): string[] {
  const out: string[] = [];
  const t = sheet.trim;
  let lumps: Box[] = [{ x: 0 - t, y: 0 - t, w: sheet.length, h: sheet.width }];
  sheet.cuts.forEach((cut, i) => {
    if (cut.number !== i + 1) out.push(`cut ${cut.number} is out of order`);
    const hit = lumps.filter((l) => through(cut, l, sheet.kerf));
    const lump = hit[0];
    if (!lump || hit.length !== 1) {
      out.push(`cut ${cut.number} goes through ${hit.length} pieces`);
      return;
    }
    lumps = lumps.filter((l) => l !== lump);
    const halves = split(lump, cut, sheet.kerf);
    if (cut.kind !== 'trim') {
      const first = halves[0];
      const along = cut.from[0] === cut.to[0] ? first?.w : first?.h;
      if (along !== cut.fence) out.push(`cut ${cut.number}: the fence says ${cut.fence}, it is ${along}`);
    }
    lumps.push(...halves.filter((l) => l.w > 0 && l.h > 0));
  });
  // What the trims took off is waste outside the usable sheet.
  const left = lumps.filter((l) => l.x >= 0 && l.y >= 0 && l.x < w && l.y < h);
  const key = (b: Box): string => [b.x, b.y, b.w, b.h].join(' ');
  const [a, b] = [left.map(key).sort(), wanted.map(key).sort()];
  if (a.join('|') !== b.join('|')) out.push(`the cuts leave ${a.join(' | ')}, wanted ${b.join(' | ')}`);
  return out;
}

function through(cut: GuillotineCut, l: Box, kerf: number): boolean {
  const upright = cut.from[0] === cut.to[0];
  const at = upright ? cut.from[0] : cut.from[1];
  const [lo, hi] = upright ? [l.x, l.x + l.w] : [l.y, l.y + l.h];
  const [a, b] = upright ? [cut.from[1], cut.to[1]] : [cut.from[0], cut.to[0]];
  const [c, d] = upright ? [l.y, l.y + l.h] : [l.x, l.x + l.w];
  // The blade may run off the far edge: then only its near side has to be in the wood.
  return at - kerf / 2 > lo && at - kerf / 2 < hi && a === c && b === d;
}

function split(l: Box, cut: GuillotineCut, kerf: number): Box[] {
  const half = kerf / 2;
  if (cut.from[0] === cut.to[0]) {
    const at = cut.from[0];
    return [
      { ...l, w: at - half - l.x },
      { ...l, x: at + half, w: l.x + l.w - at - half },
    ];
  }
  const at = cut.from[1];
  return [
    { ...l, h: at - half - l.y },
    { ...l, y: at + half, h: l.y + l.h - at - half },
  ];
}
