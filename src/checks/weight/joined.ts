import type { Piece } from '../../piece/piece.js';
import { compareMarks, markRanges } from '../../words/markOrder.js';
import type { PartBody } from '../bodies.js';

/** What is glued together, and the panels that float in it: it leaves the bench as one. Drawers are told by themselves. */
export interface Joined {
  readonly name: string;
  readonly bodies: readonly PartBody[];
}

/** The sub-assemblies of a piece, the largest first, by what its joints do: glue ties, and so does a groove that holds a panel. */
export function joinedOf(piece: Piece, bodies: readonly PartBody[]): Joined[] {
  const drawn = new Set(piece.drawers.flatMap((d) => d.parts));
  const still = bodies.filter((b) => !drawn.has(b.part.id));
  const lead = new Map(still.map((b) => [b.part.id, b.part.id]));
  const head = (id: string): string => {
    const next = lead.get(id) ?? id;
    return next === id ? id : head(next);
  };
  for (const { entering, receiving, traits } of piece.joints)
    if (lead.has(entering) && lead.has(receiving) && (traits.glue !== 'none' || traits.freedom === 'floats'))
      lead.set(head(entering), head(receiving));
  const groups = new Map<string, PartBody[]>();
  for (const b of still) groups.set(head(b.part.id), [...(groups.get(head(b.part.id)) ?? []), b]);
  const named = [...groups.values()].map((of): Joined => {
    const marks = markRanges(of.map((b) => b.part.mark));
    return { name: of.length > 1 ? `${marks}, glued up` : `${marks}, ${of[0]?.part.name ?? ''}`, bodies: of };
  });
  return named.sort((p, q) => q.bodies.length - p.bodies.length || compareMarks(p.name, q.name));
}
