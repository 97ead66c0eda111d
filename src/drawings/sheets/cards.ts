import { drawCards, planCards } from '../cards/index.js';
import type { CardPlan } from '../cards/index.js';
import type { Prepared, SheetKind } from '../input.js';

const PLANS = new WeakMap<Prepared, CardPlan>();
const planOf = (input: Prepared): CardPlan => {
  const known = PLANS.get(input) ?? planCards(input);
  PLANS.set(input, known);
  return known;
};
/** One card a part (and its turned equals), full or half. */
export const partCards: SheetKind = {
  id: 'cards',
  title: 'Part cards',
  plan: (input) => planOf(input).pages.length,
  draw: (input, page, place) => drawCards(input, planOf(input), page, place.n),
};
export const cardCount = (input: Prepared): number => planOf(input).of;
