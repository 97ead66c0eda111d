import { formatLength } from '../lengths/format.js';
import type { Part, Piece } from '../piece/piece.js';
import { compareMarks, markRanges } from '../words/markOrder.js';
import { overAll } from '../geom/growth.js';
import { grows } from './parts.js';

/** Parts that are cut at one stop. */
export interface EqualLength {
  readonly kind: 'between shoulders' | 'over all';
  /** nm. */
  readonly length: number;
  readonly marks: readonly string[];
  readonly parts: readonly string[];
  /** `34 1/4 between shoulders: A4 A6 A8 R1–R4 B1–B4`. */
  readonly text: string;
}

/**
 * Groups of two or more parts of lumber with one length, longest first. A part without tenons or tails counts with its
 * length among the shoulder lengths. A group whose over-all lengths say nothing new is given once.
 */
export function equalLengths(piece: Piece): EqualLength[] {
  const lumber = piece.parts.filter((p) => piece.stocks[p.stock]?.kind === 'lumber');
  const shoulders = grouped(lumber, (p) => p.size[p.length].value);
  const whole = grouped(lumber, (p) => overAll(p, p.length));
  const out: EqualLength[] = [];
  for (const [length, parts] of shoulders)
    out.push(entry(piece, parts.some((p) => grows(p, p.length)) ? 'between shoulders' : 'over all', length, parts));
  for (const [length, parts] of whole) {
    const same = out.some((e) => e.kind === 'over all' && e.length === length && e.parts.length === parts.length);
    if (!same) out.push(entry(piece, 'over all', length, parts));
  }
  return out.sort((a, b) => b.length - a.length || (a.kind < b.kind ? -1 : 1));
}

function grouped(parts: readonly Part[], length: (p: Part) => number): [number, Part[]][] {
  const groups = new Map<number, Part[]>();
  for (const p of parts) groups.set(length(p), [...(groups.get(length(p)) ?? []), p]);
  return [...groups].filter(([, g]) => g.length > 1);
}

function entry(piece: Piece, kind: EqualLength['kind'], length: number, parts: readonly Part[]): EqualLength {
  const sorted = [...parts].sort((a, b) => compareMarks(a.mark, b.mark));
  const marks = sorted.map((p) => p.mark);
  return {
    kind,
    length,
    marks,
    parts: sorted.map((p) => p.id),
    text: `${formatLength(length, piece.units)} ${kind}: ${markRanges(marks)}`,
  };
}
