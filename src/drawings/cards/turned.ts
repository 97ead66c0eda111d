import { AXES, FACES } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import { byAxis, meet } from '../../geom/box.js';
import { formatLength } from '../../lengths/format.js';
import type { Part, Piece } from '../../piece/piece.js';
import type { Callout } from '../../words/callout.js';
import type { Cut } from '../../words/cut.js';
import { called } from '../../words/frame.js';
import type { Frame } from '../../words/frame.js';
import { handOf, mapCut, mapFace } from '../../words/mapCut.js';
import type { Frame as Turn } from '../../words/mapCut.js';
import { compareMarks } from '../../words/markOrder.js';

const WAYS = [1, -1] as const;
/** The 24 ways in which a part of this size lies in the axes of one of size `to`. */
function turns(to: readonly number[]): Turn[] {
  const orders = AXES.flatMap((a) => AXES.flatMap((b) => (a === b ? [] : [[a, b, (3 - a - b) as Axis] as const])));
  return orders
    .flatMap((order) =>
      WAYS.flatMap((x) => WAYS.flatMap((y) => WAYS.map((z) => ({ to: order, sign: [x, y, z] as const })))),
    )
    .map((t): Turn => ({ ...t, shift: byAxis((k) => (t.sign[t.to.indexOf(k)] === -1 ? (to[k] ?? 0) : 0)) }))
    .filter((t) => handOf(t) === 1);
}
/** The wood that a cut takes, as text. */
function wood(cut: Cut): string {
  const { id: _id, from: _from, mates: _mates, glue: _glue, trial: _trial, notes: _notes, rank: _rank, ...rest } = cut;
  const value = rest.shape === 'arris' ? { ...rest, faces: [...rest.faces].sort() } : rest;
  return JSON.stringify(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
const portrait = (cuts: readonly Cut[]): string => cuts.filter((c) => c.shape !== 'mark').map(wood).sort().join('\n'); // prettier-ignore
const sideOf = (c: Cut): Face | undefined => ('face' in c ? c.face : 'end' in c ? c.end : undefined);

/**
 * What a part that shares this card is where it stands: `L4: RIGHT face stands FRONT, takes E4, E5 and E6; ...`. Nothing where
 * it stands as the first does and takes the same mates, or is a drawer's (its mates have its own drawer's mark).
 */
export function turnedWords(piece: Piece, head: Part, other: Part, f: Frame): string | undefined {
  if (other === head || head.drawer !== undefined) return undefined;
  const want = portrait(head.cuts);
  const turn = turns(head.size.map((s) => s.value)).find((t) => portrait(other.cuts.map((c) => mapCut(c, t))) === want);
  if (!turn) return undefined;
  const marks = (cuts: readonly Cut[]): string[] =>
    [...new Set(cuts.flatMap((c) => c.mates))].flatMap((id) => piece.parts.filter((p) => p.id === id).map((p) => p.mark)).sort(compareMarks); // prettier-ignore
  const said = FACES.flatMap((face) => {
    const own = FACES.find((x) => mapFace(turn, x) === face) as Face;
    const takes = marks(other.cuts.filter((c) => sideOf(c) === own));
    const first = marks(head.cuts.filter((c) => sideOf(c) === face));
    const stands = other.faceWords[own] === f.words[face] ? '' : ` stands ${other.faceWords[own]},`;
    if (takes.length === 0 || (stands === '' && takes.join() === first.join())) return [];
    return [`${called(f, face)}${stands} takes ${takes.join(', ')}`];
  });
  return said.length === 0 ? undefined : `${other.mark}: ${said.join('; ')}.`;
}

const ANOTHER = 'Runs into another mortise';
/** Names the mortise by its cut's number where two run into one another. */
export function meetings(callouts: readonly Callout[], cuts: readonly Cut[]): Callout[] {
  const boxes = (c: Callout): Extract<Cut, { shape: 'box' }>[] =>
    cuts.flatMap((x) => (x.shape === 'box' && x.as === 'mortise' && c.cuts.includes(x.id) ? [x] : []));
  return callouts.map((c) => {
    if (!c.text.includes(ANOTHER)) return c;
    const met = callouts.filter((o) => o !== c && boxes(o).some((p) => boxes(c).some((q) => AXES.every((a) => meet(p.at[a], q.at[a]) !== undefined)))); // prettier-ignore
    if (met.length === 0) return c;
    const words = `Runs into cut ${met.map((o) => String(o.number)).join(' and ')}`;
    const swap = (text: string): string => text.replace(ANOTHER, words);
    return { ...c, text: swap(c.text), runs: c.runs.map((r) => ({ ...r, text: swap(r.text) })) };
  });
}

const BOTH = /^(.*); where slides stand on both faces, (.*), or they meet$/;
const PANEL = /^(takes|to fit) the panel as measured$/i;
/**
 * The notes of a cut as they hold on this part: with slides on both faces the shorter screws, else the usual ones; a panel by
 * its mark and its measured thickness.
 */
export function ownNotes(cut: Cut, part: Part, piece: Piece): readonly string[] | undefined {
  const lines = part.cuts.filter((c) => c.shape === 'mark' && c.as === 'slide-line');
  const both = new Set(lines.map(sideOf)).size > 1;
  const panel = piece.parts.find((p) => cut.mates.length === 1 && p.id === cut.mates[0]);
  const measured = panel && piece.stocks[panel.stock]?.thickness;
  return cut.notes?.map((note) => {
    const [screws, fits] = [BOTH.exec(note), PANEL.exec(note)];
    if (screws) return both ? `screws ${screws[2] as string}, for longer ones meet` : (screws[1] as string);
    if (!fits || !panel || measured === undefined) return note;
    const size = formatLength(measured, piece.units);
    if (cut.trial !== undefined) return `dry fit it (${size}) in an offcut first`;
    return `${fits[1] as string} ${panel.mark}, measured ${size}`;
  });
}
/** A drawer's part that shares its card with another drawer's: the other's mates bear the other drawer's mark. */
export function markWords(piece: Piece, head: Part, other: Part): string | undefined {
  const [own, its] = [head, other].map((p) => piece.drawers.find((d) => d.id === p.drawer)?.mark);
  const named = head.cuts.some((c) => c.mates.some((id) => piece.parts.some((p) => p.id === id && p.drawer === head.drawer))); // prettier-ignore
  return own && its && own !== its && named ? `On ${other.mark} read ${its} where this card says ${own}.` : undefined;
}
