import { faceOf } from '../../geom/axis.js';
import type { Axis } from '../../geom/axis.js';
import { formatLength } from '../../lengths/format.js';
import type { Part, Piece, Stock } from '../../piece/piece.js';
import { sayCuts } from '../../words/callout.js';
import type { Callout } from '../../words/callout.js';
import { CUTS_HEADING } from '../../words/card.js';
import type { Cut, Glue } from '../../words/cut.js';
import { frameOf, reaches } from '../../words/frame.js';
import type { Frame } from '../../words/frame.js';
import { compareMarks } from '../../words/markOrder.js';
import { fnv } from './input.js';
import { proveOf, rowsOf } from './rows.js';
import type { Row, WordsInput } from './rows.js';
import { meetings, ownNotes } from './turned.js';

export { facesOf, isRelief, quietFaces } from './rows.js';
export type { Row } from './rows.js';

/** Over the cuts of a card; a part that is only cut to size says so. */
export const cutsHeading = (card: Card): string => (card.callouts.length === 0 ? `${CUTS_HEADING}: none, to size only` : CUTS_HEADING); // prettier-ignore

/** Everything one card says, before it is laid out. */
export interface Card {
  readonly part: Part;
  readonly frame: Frame;
  /** Parts that share the card, this one first. */
  readonly all: readonly Part[];
  readonly mirror?: Part;
  readonly hand: string;
  readonly size: string;
  readonly stock: string;
  /** Of sheet goods: where its pieces lie on the nested sheets, the fuller words first. */
  readonly source?: readonly string[];
  readonly callouts: readonly Callout[];
  readonly rows: readonly Row[];
  readonly prove: { readonly what: string; readonly figure: string };
  readonly revision: string;
}
/** One card for all parts that are only turned copies of one; a mirror image has its own. In the order of their marks. */
export function cardsOf(input: WordsInput): Card[] {
  const { parts } = input.piece;
  const heads = parts.filter((p) => p.turnOf === undefined || !parts.some((o) => o.id === p.turnOf));
  return [...heads].sort((a, b) => compareMarks(a.mark, b.mark)).map((p) => cardOf(input, p, parts));
}
function cardOf(input: WordsInput, part: Part, parts: readonly Part[]): Card {
  const { units } = input.piece;
  const frame = frameOf(part, units);
  const marks = marksOf(input.piece, part);
  const markOf = (id: string): string => marks.get(id) ?? id;
  // Bought things have no mark; the notes of a cut name them.
  const cuts = part.cuts.map((c): Cut => {
    const notes = ownNotes(c, part, input.piece);
    const mates = c.mates.filter((id) => marks.has(id));
    return { ...c, mates, ...glueOf(c, part, frame), ...(notes ? { notes } : {}) };
  });
  const callouts = meetings(sayCuts(part, cuts, { units, markOf }), part.cuts);
  const all = [part, ...parts.filter((p) => p.turnOf === part.id)];
  const mirror = parts.find((p) => p.mirrorOf === part.id || part.mirrorOf === p.id);
  const size = [part.thickness, part.width, part.length]
    .map((a) => formatLength(frame.blank[a][1] - frame.blank[a][0], units))
    .join(' × ');
  const draft = { part, frame, all, ...(mirror ? { mirror } : {}), callouts };
  const rows = rowsOf(input, draft);
  const words = [
    size,
    ...callouts.map((c) => c.text),
    ...rows.map((r) => r.label + r.text.map((t) => t.string).join('')),
  ];
  return {
    ...draft,
    hand: handOf(part),
    size: units === 'mm' ? `${size} mm` : size,
    stock: stockOf(part, input.piece),
    ...sourceOf(input, all),
    rows,
    prove: proveOf({ ...draft, units }),
    revision: (input.revisionOf ?? fnv)(words.join('\n')),
  };
}
/**
 * Glue of a socket that two rails share: the front rail's behind the stop, the back rail's where the run comes out. The
 * joint says the first; that a second rail closes the other end is known only here.
 */
function glueOf(c: Cut, part: Part, f: Frame): { readonly glue?: Glue } {
  const first = c.glue && /^the first (\S+) behind the stop$/.exec(c.glue.where);
  const not = c.glue?.not?.replace(/^the rest/, 'in the rest');
  if (c.shape !== 'dovetail' || !c.glue) return {};
  const [out, second] = reaches(f, c.run, c.runSpan);
  if (!first || c.mates.length !== 2 || !out || second) return { glue: { ...c.glue, ...(not ? { not } : {}) } };
  const rabbet = part.cuts.some(
    (o) => o.shape === 'box' && o.as === 'rabbet' && o.face === c.face && reaches(f, c.run, o.at[c.run]).includes(out),
  );
  const last = `the last ${first[1] as string} before ${rabbet ? 'the rabbet' : `${f.words[out]}`}`;
  return { glue: { where: `${c.glue.where}; ${last}`, not: 'between them' } };
}
/** Marks by id; in the case a slide is named by its drawer (a drawer's own slide needs no name). */
function marksOf(piece: Piece, part: Part): ReadonlyMap<string, string> {
  const drawers = new Map(piece.drawers.map((d) => [d.id, d.mark]));
  const slides = part.drawer === undefined ? piece.hardware.filter((h) => h.kind === 'slide') : [];
  const named = slides.flatMap((h): [string, string][] => {
    const mark = drawers.get(h.drawer ?? '');
    return mark === undefined ? [] : [[h.id, `slide of ${mark}`]];
  });
  return new Map([...named, ...piece.parts.map((p): [string, string] => [p.id, p.mark])]);
}
/** `LEFT side`, `Rail`. */
function handOf(part: Part): string {
  if (!part.hand) return part.name.slice(0, 1).toUpperCase() + part.name.slice(1);
  return `${part.hand.toUpperCase()} ${part.name.replace(/,? ?\b(left|right)\b,? ?/i, ' ').trim()}`;
}
function stockOf(part: Part, piece: Piece): string {
  const stock: Stock | undefined = piece.stocks[part.stock];
  const f = frameOf(part, piece.units);
  const grain = part.grain === undefined ? 'No grain' : `Grain ${grainWords(f, part.grain)}`;
  const quarter = stock?.quarter ? ` ${stock.quarter}` : '';
  const staves = part.staves === undefined ? '' : `, ${part.staves} staves`;
  const name = stock?.name ?? part.stock;
  return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}${quarter}${staves}. ${grain}.`;
}
/** `Sheet 1 of 2, pieces D1.6 D2.6`, then shorter; nothing for lumber. */
function sourceOf({ piece, layout }: WordsInput, all: readonly Part[]): { readonly source?: readonly string[] } {
  const stock = all[0]?.stock ?? '';
  if (piece.stocks[stock]?.kind !== 'sheet') return {};
  const sheets = (layout?.sheets ?? []).filter((s) => s.stock === stock);
  const said = sheets.flatMap((s) => {
    const marks = all.filter((p) => s.pieces.some((x) => x.part === p.id)).map((p) => p.mark).sort(compareMarks); // prettier-ignore
    const many = marks.length > 1 ? 's' : '';
    return marks.length === 0 ? [] : [{ long: `sheet ${s.index} of ${s.of}, piece${many} ${marks.join(' ')}`, mid: `sheet ${s.index}: ${marks.join(' ')}`, short: `sheet ${s.index}` }]; // prettier-ignore
  });
  if (said.length === 0) return { source: ['Sheet ____'] };
  const way = (k: 'long' | 'mid' | 'short'): string => said.map((x) => x[k]).join('; ');
  return { source: [way('long'), way('mid'), way('short')].map((x) => x.slice(0, 1).toUpperCase() + x.slice(1)) };
}
const grainWords = (f: Frame, axis: Axis): string => {
  const [lo, hi] = [f.words[faceOf(axis, -1)], f.words[faceOf(axis, 1)]];
  return hi === 'TOP' ? 'UP' : `${lo} to ${hi}`;
};
