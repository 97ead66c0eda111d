import { inches, toIn, type Units } from '../../lengths/length.js';
import { formatLength } from '../../lengths/format.js';
import type { Blank, Board, BoardLayout } from './board.js';
import { clearRectangles, edgeAt, obstaclesFor } from './clear.js';
import { flattening } from './ground.js';

export type Missing = BoardLayout['missing'][number];
const fig = (v: number, units: Units = 'in'): string => `${formatLength(v, units)}${units === 'in' ? ' in' : ' mm'}`;
const small = (v: number): number => Math.round(v * 10) / 10;

/** Why a blank (or a run) comes from no board at all, and what would do it. */
export function whyNot(
  unit: readonly Blank[],
  boards: readonly Board[],
  rules: { readonly kerf: number; readonly endTrim: number },
): Missing[] {
  const first = unit[0] as Blank;
  const long = unit.reduce((s, b) => s + b.length + rules.kerf, -rules.kerf);
  const wide = Math.max(...unit.map((b) => b.width));
  const wants = `a board of ${first.quarter} at least ${fig(wide)} wide and ${fig(long + 2 * rules.endTrim)} long, ${clearWords(first)}`;
  const say = (why: string, would: string): Missing[] => unit.map((b) => ({ blank: b.id, why, would }));
  if (unit.length > 1) {
    const split = first.run?.most === undefined ? '; or let the run come from more boards' : '; or from more boards';
    return say(`no board takes the run of ${unit.length} blanks in order`, `${wants}${split}`);
  }
  const ofCut = boards.filter((b) => first.cut === undefined || b.cut === undefined || b.cut === first.cut);
  if (ofCut.length === 0) return say(`no board of ${first.quarter} is ${first.cut} sawn`, wants);
  const thick = ofCut.filter((b) => b.thickness - flattening(b, first.length, first.width) >= first.finished);
  if (thick.length === 0) {
    const most = Math.max(...ofCut.map((b) => b.thickness - flattening(b, first.length, first.width)));
    return say(
      `no board is thick enough: flattened at this length the best leaves ${fig(most)}, it planes to ${fig(first.finished)}`,
      `thicker or flatter stock, or the part in shorter lengths`,
    );
  }
  const widest = widestAt(first, thick, rules.endTrim);
  const longest = longestAt(first, thick, rules.endTrim);
  if (widest < first.width && widest >= inches(2)) {
    const staves = Math.ceil(first.width / Math.max(1, widest - inches(1 / 4)));
    return say(
      `no board gives ${fig(first.width)} of width clear over ${fig(first.length)}; the widest gives ${fig(widest)}`,
      `${staves} staves of ${fig(Math.ceil(first.width / staves / inches(1 / 16)) * inches(1 / 16) + inches(1 / 4))}, or ${wants}`,
    );
  }
  return say(
    `no board gives ${fig(first.length)} of length clear at ${fig(first.width)} of width; the longest gives ${fig(longest)}`,
    wants,
  );
}

/** Why a blank is left over where the wood ran out, or there is none of it. How much more of it is wanted, all told. */
export function whyShort(
  unit: readonly Blank[],
  lacking: readonly (readonly Blank[])[],
  { kerf, why = 'the boards are used up' }: { readonly kerf: number; readonly why?: string },
): Missing[] {
  const first = unit[0] as Blank;
  const all = lacking.flat().filter((b) => b.wood === first.wood && b.quarter === first.quarter);
  const feet = all.reduce((s, b) => s + (toIn(b.length) * toIn(b.width)) / 144, 0);
  const wide = Math.max(...all.map((b) => b.width));
  const long = Math.max(...lacking.map((u) => u.reduce((s, b) => s + b.length + kerf, -kerf)));
  const would = `${small(feet)} sq ft more of ${first.quarter}, ${clearWords(first)}, at least ${fig(wide)} wide and ${fig(long)} long`;
  return unit.map((b) => ({ blank: b.id, why, would }));
}
const clearWords = (b: Blank): string =>
  b.shows === 'both' ? 'clear on both faces' : b.shows === 'one' ? 'clear on one face' : 'sound';

function widestAt(blank: Blank, boards: readonly Board[], endTrim: number): number {
  return extent(blank, boards, endTrim, (l, w) => (l >= blank.length ? w : 0));
}
function longestAt(blank: Blank, boards: readonly Board[], endTrim: number): number {
  return extent(blank, boards, endTrim, (l, w) => (w >= blank.width ? l : 0));
}
function extent(
  blank: Blank,
  boards: readonly Board[],
  endTrim: number,
  of: (long: number, wide: number) => number,
): number {
  let best = 0;
  for (const board of boards)
    for (const face of ['front', 'back'] as const) {
      const height = Math.max(...board.width);
      for (const r of clearRectangles(board.length, height, obstaclesFor(board, blank, face), [1, 1])) {
        const x0 = Math.max(r[0], endTrim);
        const x1 = Math.min(r[2], board.length - endTrim);
        if (x1 <= x0) continue;
        const edge = Math.floor(Math.min(edgeAt(board, x0), edgeAt(board, x1)));
        best = Math.max(best, of(x1 - x0, Math.min(r[3], edge) - r[1]));
      }
    }
  return best;
}
