import type { Diagnostic } from '../diag/diagnostic.js';
import { AXES, FACES, faceAxis, faceSign } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import { shifted, turn } from '../geom/placement.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel, Mesh } from '../geom/solid.js';
import type { Part, Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import { parseCallouts } from '../words/callout.js';
import { parseCard } from '../words/card.js';
import type { ParsedCard } from '../words/card.js';
import { normalise } from '../words/reader.js';
import { cardTexts } from './cardRegions.js';
import { finding } from './finding.js';
import { pdfTexts } from './pdfTexts.js';
import { proveTurned } from './proveTurned.js';
import { rebuild, removed } from './rebuild.js';
import { unmatched } from './sameCuts.js';
import { samePart } from './samePart.js';
import { sameSurface } from './sameSurface.js';
import { soundsAs } from './soundings.js';

/** Two solids are the same part when no more than this is in one and not in the other, mm3 (all figures on the step). */
const BAR = 1;
/** The mark of a part by its id; empty for what is no part (a slide, a pull). */
type MarkOf = (id: string) => string;
/** Half of the last printed place: .001 in, or 0.001 mm. In mm. */
const HALF_PLACE = { in: 0.0127, mm: 0.0005 } as const;

/** Reads every card of a packet back, rebuilds each part from its words alone and compares it with the model's solid. */
export function proveCards(pdf: Uint8Array, piece: Piece, solids: Solids, kernel: Kernel): Diagnostic[] {
  return proveTexts(
    cardTexts(pdfTexts(pdf)).map((c) => c.text),
    piece,
    solids,
    kernel,
  );
}
/** The same from the cards' texts. */
export function proveTexts(texts: readonly string[], piece: Piece, solids: Solids, kernel: Kernel): Diagnostic[] {
  const marks = marksOf(piece);
  const marked = new Map(texts.map(normalise).map((text) => [markIn(text) ?? '', text]));
  const carded = piece.parts.filter((p) => p.turnOf === undefined);
  const turned = piece.parts.filter((p) => p.turnOf !== undefined);
  const cards = carded.flatMap((part) => {
    const text = marked.get(part.mark);
    const solid = solids.parts.find((s) => s.id === part.id);
    if (text === undefined) return [finding('proof-card-missing', part, 'no card in the packet gives its size')];
    if (!solid) return [finding('proof-card-missing', part, 'the model has no solid of it')];
    return proveCard(text, part, solid.recipe, kernel, (id) => marks.get(id) ?? '');
  });
  return [...cards, ...turned.flatMap((part) => proveTurned(part, piece, solids, kernel))];
}
/** What a card may name: parts by their marks, a case's slides by the drawer that they carry. */
function marksOf(piece: Piece): ReadonlyMap<string, string> {
  const drawers = new Map(piece.drawers.map((d) => [d.id, d.mark]));
  const slides = piece.hardware.flatMap((h): [string, string][] => {
    const mark = h.kind === 'slide' && h.drawer !== undefined ? drawers.get(h.drawer) : undefined;
    return mark === undefined ? [] : [[h.id, `slide of ${mark}`]];
  });
  return new Map([...slides, ...piece.parts.map((p): [string, string] => [p.id, p.mark])]);
}

const markIn = (text: string): string | undefined =>
  [...text.matchAll(/(?:^|\s)Size (\S+?)(?= (?:LEFT|RIGHT)\b|[:,])/g)].pop()?.[1];

/** Compares one card's words with the model's part: its names, hand and datums, then its solid. */
export function proveCard(text: string, part: Part, solid: Recipe, kernel: Kernel, markOf: MarkOf): Diagnostic[] {
  const card = parseCard(text, part.faceWords);
  if (!card) return [finding('proof-card-unread', part, 'its size or the places to measure from cannot be read back')];
  const unread = card.unread.map((u) => finding('proof-card-unread', part, `callout cannot be read back: ${u}`));
  const names = [...proveNames(card, part), ...proveHand(card, part, text)];
  const found = [...unread, ...names, ...proveMates(card, part, markOf)];
  const low = byAxis((a) => -part.growth[a][0] + 0);
  const own: Recipe = { op: 'placed', by: shifted(low), of: rebuild(card) };
  found.push(...proveCuts(card, part));
  const drawn = kernel.mesh(solid);
  if (samePart(own, solid, kernel) && soundsAs(drawn, own)) return found;
  if (sameSurface(kernel.mesh(own), drawn)) return found;
  const differ = difference(own, solid, kernel);
  if (differ <= BAR) return found;
  const bar = BAR + slack(card, text, kernel);
  if (differ <= bar) return found;
  const figures = `${differ.toFixed(1)} mm3 differ, ${bar.toFixed(1)} allowed`;
  return [...found, finding('proof-card-differs', part, `rebuilt from its card it is another part: ${figures}`)];
}
/** Volume in one and not in the other: from one boolean and the two volumes, mm3. */
function difference(a: Recipe, b: Recipe, kernel: Kernel): number {
  const only = kernel.volume({ op: 'cut', from: a, tools: [b] });
  return only + Math.max(0, kernel.volume(b) - kernel.volume(a) + only);
}
/** What rounding off the step may change: half the last printed place over the walls of the cuts, mm3. */
function slack(card: ParsedCard, text: string, kernel: Kernel): number {
  const { units, blank } = card.frame;
  const sizes = text.replace(/guide\s+moved\s+\S+/g, '');
  const rounded = units === 'in' ? /\(\d*\.\d+\)|(?:^|\s)\d*\.\d+/.test(sizes) : /\d\.\d{3}/.test(sizes);
  const planes = card.cuts.some((c) => c.shape === 'plane' || (c.shape === 'tenon' && c.slope !== undefined));
  if (!rounded && !planes) return 0;
  const walls = card.cuts
    .flatMap((c) => removed(c, blank))
    .map((tool) => surface(kernel.mesh({ op: 'met', of: [{ op: 'box', at: blank }, tool] })))
    .reduce((sum, area) => sum + area, 0);
  return walls * HALF_PLACE[units];
}
function surface(mesh: Mesh): number {
  let sum = 0;
  const at = (i: number, a: Axis): number => mesh.positions[(mesh.triangles[i] as number) * 3 + a] as number;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const u = byAxis((a) => at(i + 1, a) - at(i, a));
    const v = byAxis((a) => at(i + 2, a) - at(i, a));
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
    sum += Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]) / 2;
  }
  return sum;
}

/** The card's six words stand for the model's six faces, and it measures from the faces that the model says. */
function proveNames(card: ParsedCard, part: Part): Diagnostic[] {
  const wrong = FACES.filter((f) => card.frame.words[f] !== part.faceWords[f]);
  const sides = wrong.length > 0 ? [finding('proof-card-names', part, `sides are named ${names(card, wrong)}`)] : [];
  const { face, edge, end } = card.reference;
  const same = face === part.reference.face && edge === part.reference.edge && end === part.reference.end;
  return same ? sides : [...sides, finding('proof-card-names', part, 'it measures from other sides than the model')];
}
const names = (card: ParsedCard, faces: readonly Face[]): string => faces.map((f) => card.frame.words[f]).join(', ');

/** A handed part says its hand, the same everywhere on the card, and its outside is on that hand in the piece. */
function proveHand(card: ParsedCard, part: Part, text: string): Diagnostic[] {
  if (card.hand !== part.hand) return [finding('proof-card-hand', part, `it says ${card.hand ?? 'no hand'}`)];
  if (part.hand === undefined) return [];
  const head = text.slice(0, Math.max(0, text.search(/Measure\s+from/)));
  const said = [...head.matchAll(/\b(LEFT|RIGHT)\b/g)].map((m) => m[1]?.toLowerCase());
  if (said.some((h) => h !== part.hand)) return [finding('proof-card-hand', part, 'its heading says the other hand')];
  const out = FACES.find((f) => part.faceWords[f] === 'OUTSIDE');
  if (!out) return [];
  const way = turn(
    part.place,
    byAxis((a) => (a === faceAxis(out) ? faceSign(out) : 0)),
  );
  const leftward = AXES.every((a) => Math.abs(way[0]) >= Math.abs(way[a])) ? Math.sign(way[0]) : 0;
  const wanted = part.hand === 'left' ? -1 : 1;
  return leftward === 0 || leftward === wanted
    ? []
    : [finding('proof-card-hand', part, 'its OUTSIDE is on the other hand')];
}
/** Every cut of the model stands on the card and no other: catches what another cut swallows, and pencil lines. */
function proveCuts(card: ParsedCard, part: Part): Diagnostic[] {
  const low = byAxis((a) => -part.growth[a][0] + 0);
  const blank = byAxis((a) => [low[a], part.size[a].value + part.growth[a][1]] as const);
  const shift: ParsedCard['frame'] = { ...card.frame, blank };
  const again = parseCallouts(card.texts, shift).flatMap((c) => c?.cuts ?? []);
  const { missing, extra } = unmatched(part.cuts, again, blank);
  if (missing.length === 0 && extra === 0) return [];
  return [
    finding('proof-card-cuts', part, `no callout gives ${missing.join(', ') || 'the model'}; ${extra} in excess`),
  ];
}
/** The mates that the card names are those of the model. */
function proveMates(card: ParsedCard, part: Part, markOf: MarkOf): Diagnostic[] {
  const said = new Set(card.cuts.flatMap((c) => c.mates));
  // A drawer's own slide needs no name on the drawer.
  const named = (id: string): boolean => markOf(id) !== '' && !(part.drawer && markOf(id).startsWith('slide of '));
  const ids = part.cuts.flatMap((c) => c.mates).filter(named);
  const meant = new Set(ids.map(markOf).map((m) => (m.startsWith('slide of ') ? m : m.replace(/\s+/g, '-'))));
  const wrong = [...[...said].filter((m) => !meant.has(m)), ...[...meant].filter((m) => !said.has(m))];
  return wrong.length === 0
    ? []
    : [finding('proof-card-mates', part, `card and model disagree about ${wrong.join(', ')}`)];
}
