import type { Axis } from '../../geom/axis.js';

/** A part along one axis of the piece: how large it is there and how much of it it moves by, at the two ends of the season. */
export interface Bar {
  readonly id: string;
  readonly size: number;
  readonly band: number;
}
/** Two parts held together at one place along the axis, nm. */
export interface Tie {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly at: number;
}

/** Where everything goes along one axis when the moisture changes. */
export interface Field {
  readonly axis: Axis;
  /** Shift of a point of a part at `x`, nm, against the body that it is tied to; undefined for a part that is in no tie. */
  shift(part: string, x: number): number;
  /** Are the two held by one another, however far about? */
  tied(a: string, b: string): boolean;
  /** Ties that close a ring, and by how much their two sides want apart: b less a, nm. */
  readonly rings: readonly { readonly tie: Tie; readonly apart: number }[];
}

/**
 * The ties in the order in which they set things in place: what moves least first. So the parts whose grain runs along the
 * axis hold the frame, and what moves across its grain hangs on it by its first tie; any further tie shows what it holds
 * back. Ties broken by id.
 */
export function inOrder(bars: ReadonlyMap<string, Bar>, ties: readonly Tie[]): readonly Tie[] {
  const moves = (id: string): number => {
    const bar = bars.get(id);
    return bar ? Math.abs(bar.band) * bar.size : 0;
  };
  const weighed = ties.map((tie) => ({ tie, weight: Math.round(moves(tie.a) + moves(tie.b)) }));
  weighed.sort((p, q) => p.weight - q.weight || (p.tie.id < q.tie.id ? -1 : p.tie.id > q.tie.id ? 1 : 0));
  return weighed.map((w) => w.tie);
}

/**
 * Shifts of all parts: every part stretches evenly by its own strain, and a tie gives both sides the same shift where it
 * sits. A union of sets that each keep a shift against their root (weighted union-find, Tarjan 1975); a tie within one set
 * closes a ring and tells what is left over.
 */
export function fieldOf(axis: Axis, order: readonly Tie[], strainOf: (part: string) => number): Field {
  const parent = new Map<string, { readonly to: string; readonly by: number }>();
  const root = (id: string): { readonly id: string; readonly by: number } => {
    let [at, by] = [id, 0];
    for (let up = parent.get(at); up; up = parent.get(at)) [at, by] = [up.to, by + up.by];
    return { id: at, by };
  };
  const rings: { tie: Tie; apart: number }[] = [];
  for (const tie of order) {
    const [a, b] = [root(tie.a), root(tie.b)];
    // Shift of b less shift of a at the tie, as things stand.
    const apart = b.by + strainOf(tie.b) * tie.at - (a.by + strainOf(tie.a) * tie.at);
    if (a.id === b.id) rings.push({ tie, apart });
    else parent.set(b.id, { to: a.id, by: 0 - apart });
  }
  return {
    axis,
    shift: (part, x) => root(part).by + strainOf(part) * x,
    tied: (a, b) => root(a).id === root(b).id,
    rings,
  };
}
