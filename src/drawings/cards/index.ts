import type { Faces } from '../../type/type.js';
import { line, group, label } from '../draw.js';
import { stampBar } from '../frame.js';
import type { Item, Sheet } from '../picture.js';
import { continuedCard, continuedRest, fullCard, fullRest, fullViews, nothing } from './full.js';
import type { Rest } from './full.js';
import { fitsHalf, GOOD, halfCard, layoutOf, PLAIN } from './half.js';
import type { CardLook } from './half.js';
import type { CardInput } from './input.js';
import { endFace } from './panes.js';
import { cardsOf } from './words.js';
import type { Card } from './words.js';

export type { CardInput } from './input.js';
export type { Card } from './words.js';

/** Letter, mm. Half cards stand in its two halves. */
const PAPER = [279.4, 215.9] as const;
const LEFT = 12.35;
const TOP = 10.45;

/** One page of cards: a full card, its further sheet, or one or two half cards. */
export interface CardPage {
  readonly cards: readonly { readonly card: Card; readonly n: number }[];
  readonly form: 'half' | 'full';
  /** 0 for the first sheet of a card, 1 for the second ... */
  readonly part: number;
}
export interface CardPlan {
  readonly pages: readonly CardPage[];
  /** Number of cards. */
  readonly of: number;
}

/** Which card takes which form and page: more than four cuts, or cuts that overflow the half card, take the full one. */
export function planCards(input: CardInput): CardPlan {
  const cards = cardsOf(input).map((card, i) => ({ card, n: i + 1 }));
  const small = new Set(cards.filter((one) => takesHalf(input, one.card)));
  const other = (one: Numbered): Numbered | undefined => cards.find((o) => o.card.part.id === one.card.mirror?.id);
  // A left and its right have the same form.
  const halves = new Set([...small].filter((one) => small.has(other(one) ?? one)));
  const mate = (one: Numbered): Numbered | undefined => (halves.has(one) ? other(one) : undefined);
  // A left and its right stand side by side; all other halves two by two; one that is left over takes a whole sheet.
  const single = [...halves].filter((one) => !mate(one));
  const beside = (one: Numbered): Numbered | undefined => {
    const i = single.indexOf(one);
    return mate(one) ?? (i < 0 ? undefined : single[i % 2 === 0 ? i + 1 : i - 1]);
  };
  const pages = cards.flatMap((one): CardPage[] => {
    const next = halves.has(one) ? beside(one) : undefined;
    if (next) return next.n < one.n ? [] : [{ cards: [one, next], form: 'half', part: 0 }];
    const sheets = furtherSheets(input, one.card);
    return Array.from({ length: sheets + 1 }, (_, part) => ({ cards: [one], form: 'full', part }));
  });
  return { pages, of: cards.length };
}
type Numbered = CardPage['cards'][number];
/** A half card does where the words fit and its views are not much smaller than a full card's. */
function takesHalf(input: CardInput, card: Card): boolean {
  if (!fitsHalf(input.faces, card)) return false;
  const look: CardLook = { faces: input.faces, piece: input.piece, mesh: undefined, card, n: 0, of: 0, sheet: 0 };
  const { cost } = layoutOf(look, 0, 0, false);
  return cost <= (endFace(card) ? GOOD : PLAIN) || cost <= fullViews(look).cost + 1.2;
}
const lookOf = (input: CardInput, card: Card, n: number, of: number, sheet: number): CardLook => ({
  faces: input.faces,
  piece: input.piece,
  mesh: input.solids.parts.find((s) => s.id === card.part.id)?.mesh,
  card,
  n,
  of,
  sheet,
});
function furtherSheets(input: CardInput, card: Card): number {
  let rest = fullRest(input.faces, card);
  let sheets = 0;
  while (!nothing(rest)) {
    const next = continuedRest(input.faces, rest);
    if (next.callouts.length === rest.callouts.length && next.rows.length === rest.rows.length) break;
    rest = next;
    sheets += 1;
  }
  return sheets;
}

/** Draws one page of a plan as sheet number `sheet` of the packet. */
export function drawCards(input: CardInput, plan: CardPlan, page: number, sheet: number): Sheet {
  const { cards, form, part } = plan.pages[page] as CardPage;
  const marks = cards.map((c) => c.card.part.mark).join(', ');
  const looks = cards.map((c) => lookOf(input, c.card, c.n, plan.of, sheet));
  const items: Item[] = form === 'full' ? fullPage(looks[0] as CardLook, part) : halfPage(input.faces, looks);
  return {
    id: `card-${cards.map((c) => c.card.part.mark.toLowerCase().replace(/[^a-z0-9]+/g, '-')).join('_')}${part > 0 ? `-${part + 1}` : ''}`,
    title: `Card${cards.length > 1 ? 's' : ''} ${marks}`,
    folder: 'cards',
    size: PAPER,
    alt: `Part card${cards.length > 1 ? 's' : ''} ${cards.map((c) => `${c.card.part.mark} ${c.card.hand}, ${c.card.size}`).join('; ')}`,
    picture: [...items, ...(input.stamp === undefined ? [] : stamped(input.faces, input.stamp, form === 'half'))],
    tables: [],
  };
}
function fullPage(look: CardLook, part: number): Item[] {
  if (part === 0) return [cardGroup(look, part, fullCard(look))];
  let rest: Rest = fullRest(look.faces, look.card);
  for (let i = 1; i < part; i += 1) rest = continuedRest(look.faces, rest);
  return [cardGroup(look, part, continuedCard(look, rest))];
}
function halfPage(faces: Faces, looks: readonly CardLook[]): Item[] {
  const [middle, foot] = [PAPER[0] / 2, PAPER[1] - TOP];
  return [
    ...line('cutline', middle, TOP, middle, 101),
    ...label(faces, 'cut', middle, 105, { anchor: 'middle' }),
    ...line('cutline', middle, 107.5, middle, foot),
    ...looks.map((look, i) => cardGroup(look, 0, halfCard(look, LEFT + (i * PAPER[0]) / 2, TOP))),
  ];
}
const cardGroup = (look: CardLook, part: number, items: readonly Item[]): Item =>
  group(`card-${look.n}${part > 0 ? `-${part + 1}` : ''}`, items, {
    anchor: `card-${look.card.part.mark}`,
    claim: { kind: 'card', part: look.card.part.id },
  });
/** Half cards are cut apart: each has its own stamp. */
const stamped = (faces: Faces, words: string, halves: boolean): Item[] =>
  halves
    ? [0, PAPER[0] / 2].flatMap((x) => stampBar(faces, words, LEFT + x, PAPER[0] / 2 - 2 * LEFT))
    : stampBar(faces, words, LEFT, PAPER[0] - 2 * LEFT);
/** All cards of a piece, in the order of their marks; `first` is the number of their first sheet in the packet. */
export function cardSheets(input: CardInput, first = 1): Sheet[] {
  const plan = planCards(input);
  return plan.pages.map((_, i) => drawCards(input, plan, i, first + i));
}
