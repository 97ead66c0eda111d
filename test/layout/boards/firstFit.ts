import type { Blank, Board } from '../../../src/layout/boards/board.js';
import { inches } from '../../../src/lengths/length.js';

const SOUND = ['sound knot', 'sapwood', 'stain', 'hole', 'bark'];
interface Box {
  readonly x: number;
  readonly y: number;
  readonly l: number;
  readonly w: number;
}
/**
 * What somebody does who takes no thought: the longest blank first, on the first board that takes it, as far down and left
 * as it goes. Runs may be torn apart and cuts need not go from edge to edge, which is more than the program allows itself.
 * The boards used, and how many blanks found none.
 */
export function firstFit(
  blanks: readonly Blank[],
  boards: readonly Board[],
  kerf: number,
): { readonly used: ReadonlySet<string>; readonly missing: number } {
  const on = new Map<string, Box[]>();
  const used = new Set<string>();
  let missing = 0;
  for (const blank of [...blanks].sort((a, b) => b.length - a.length || b.width - a.width || (a.id < b.id ? -1 : 1))) {
    const found = boards.find((board) => {
      const boxes = on.get(board.id) ?? [];
      const at = place(blank, board, boxes, kerf);
      if (at) on.set(board.id, [...boxes, at]);
      return at !== undefined;
    });
    if (found) used.add(found.id);
    else missing++;
  }
  return { used, missing };
}

function place(blank: Blank, board: Board, boxes: readonly Box[], kerf: number): Box | undefined {
  const trim = inches(1 / 2);
  for (const face of ['front', 'back'] as const) {
    const bad = board.defects.filter((d) => {
      if (d.kind === 'void') return true;
      if (blank.allows.includes(d.kind)) return false;
      const seen = blank.shows === 'both' || (blank.shows === 'one' && d.face === face);
      return seen || !SOUND.includes(d.kind);
    });
    const ys = [0, ...boxes.map((b) => b.y + b.w + kerf), ...bad.map((d) => d.at[3])];
    const xs = [trim, ...boxes.map((b) => b.x + b.l + kerf), ...bad.map((d) => d.at[2])];
    for (const y of [...new Set(ys)].sort((a, b) => a - b)) {
      if (y + blank.width > board.width[0]) continue;
      for (const x of [...new Set(xs)].sort((a, b) => a - b)) {
        if (x < trim || x + blank.length > board.length - trim) continue;
        const [x1, y1] = [x + blank.length, y + blank.width];
        if (bad.some((d) => x < d.at[2] && x1 > d.at[0] && y < d.at[3] && y1 > d.at[1])) continue;
        const near = (b: Box): boolean =>
          x < b.x + b.l + kerf && x1 + kerf > b.x && y < b.y + b.w + kerf && y1 + kerf > b.y;
        if (!boxes.some(near)) return { x, y, l: blank.length, w: blank.width };
      }
    }
  }
  return undefined;
}
