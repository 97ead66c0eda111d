import type { Blank } from './board.js';
import { piecesOf, type Node } from './fill.js';
import type { Filled } from './search.js';

export type Piece = Extract<Node, { kind: 'piece' }>;

/**
 * Which blank each piece is. Alike blanks may be changed about, so those of one panel are taken from one board where that
 * can be, or from boards of one group; within a board they follow one another as they lie.
 */
export function assigned(
  filled: readonly Filled[],
  members: readonly (readonly (readonly Blank[])[])[],
  groupOf: (ground: number) => string,
): ReadonlyMap<Piece, Blank> {
  const out = new Map<Piece, Blank>();
  members.forEach((units, kind) => {
    const places = filled.map((f) => ({
      group: groupOf(f.ground),
      pieces: piecesOf(f.node).filter((p) => p.of === kind),
    }));
    const first = units[0] ?? [];
    if (first.length > 1) {
      for (const { pieces } of places) for (const p of pieces) out.set(p, first[p.link] as Blank);
      return;
    }
    for (const { pieces } of places) pieces.sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
    const panels = new Map<string, Blank[]>();
    for (const b of units.flat()) panels.set(b.part, [...(panels.get(b.part) ?? []), b]);
    const waiting = [...panels.values()].sort(
      (a, b) => b.length - a.length || ((a[0]?.id ?? '') < (b[0]?.id ?? '') ? -1 : 1),
    );
    for (const panel of waiting) takeFrom(panel, places, out);
  });
  return out;
}

interface Place {
  readonly group: string;
  readonly pieces: Piece[];
}
/** The snuggest board that holds the whole panel, else the one that holds most of it, and on within its group. */
function takeFrom(panel: readonly Blank[], places: readonly Place[], out: Map<Piece, Blank>): void {
  const rest = [...panel];
  let group: string | undefined;
  while (rest.length > 0) {
    const open = places.filter((p) => p.pieces.length > 0);
    const near = open.filter((p) => p.group === group);
    const from = near.length > 0 ? near : open;
    const whole = from.filter((p) => p.pieces.length >= rest.length);
    const by = whole.length > 0 ? 1 : -1;
    const [chosen] = [...(whole.length > 0 ? whole : from)].sort((a, b) => by * (a.pieces.length - b.pieces.length));
    if (!chosen) return;
    group = chosen.group;
    const many = Math.min(rest.length, chosen.pieces.length);
    chosen.pieces.splice(0, many).forEach((piece) => out.set(piece, rest.shift() as Blank));
  }
}
