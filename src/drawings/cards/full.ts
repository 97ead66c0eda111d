import type { Axis } from '../../geom/axis.js';
import { formatLength } from '../../lengths/format.js';
import { roughOf } from '../../shop/rough.js';
import type { Callout } from '../../words/callout.js';
import { MEASURE_FROM, sayBetween, sayReference } from '../../words/card.js';
import { blank, label, line, statusBar, tag, tickBox } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText, widthOf } from '../text.js';
import type { Run } from '../text.js';
import type { CardLook } from './half.js';
import { quietBlock } from './half.js';
import { whereUsed } from './key.js';
import { columnOf, LABEL } from './list.js';
import type { DovetailCut } from '../../words/cut.js';
import { profile, profileHeight, socketOf } from './profile.js';
import type { Block } from './arrange.js';
import { noWork, noWorkHeight } from './panel.js';
import { views } from './panes.js';
import type { Faces } from '../../type/type.js';
import { cutsHeading } from './words.js';
import type { Card, Row } from './words.js';

/** Geometry of a full card (our default): 254.7 x 195 on Letter, from (12.35, 10.45). */
export const FULL = {
  x: 12.35,
  y: 10.45,
  w: 254.7,
  h: 195,
  right: 130,
  column: 124.7,
  cuts: 28.8,
  rows: 177.4,
} as const;

/** The right hand's card is the mirror of the left's: its pictures stand at the right, its words at the left. */
const isRight = (card: Card): boolean => card.part.hand === 'right';
/** Where the words' column begins, and the field of the pictures. */
const wordsAt = (card: Card): number => FULL.x + (isRight(card) ? 0 : FULL.right);
const picturesAt = (card: Card): number => FULL.x + (isRight(card) ? FULL.w - PICTURES : 0);
const PICTURES = 122;

/** What is left over for a second sheet. */
export interface Rest {
  readonly callouts: readonly Callout[];
  readonly rows: readonly Row[];
}
export const nothing = (r: Rest): boolean => r.callouts.length === 0 && r.rows.length === 0;

/** The right-hand column of the first sheet, set closer where it would run over by a little. */
function mainColumn(faces: Faces, card: Card): ReturnType<typeof columnOf> {
  const set = (close: boolean, rows = card.rows, tight = false): ReturnType<typeof columnOf> =>
    columnOf(faces, card.callouts, rows, { x: wordsAt(card), w: FULL.column, close, tight }, FULL.y + FULL.cuts + 2.3, FULL.y + FULL.rows); // prettier-ignore
  const loose = set(false);
  if (nothing(loose)) return loose;
  const needed = card.rows.filter((r) => !r.spare);
  const tries = [() => set(true), () => set(true, needed), () => set(true, needed, true)];
  for (const one of tries) {
    const column = one();
    if (nothing(column)) return column;
  }
  return loose;
}
/** What the first sheet of a full card has no room for. */
export const fullRest = (faces: Faces, card: Card): Rest => mainColumn(faces, card);

export function fullCard(look: CardLook): Item[] {
  const { faces, card } = look;
  const [x, y] = [wordsAt(card), FULL.y];
  return [
    ...head(look),
    ...fullViews(look).items(),
    ...label(faces, cutsHeading(card), x, y + FULL.cuts, { size: SIZE.figure, face: 'semibold' }),
    ...line('W', x, y + FULL.cuts + 2.3, x + FULL.column, y + FULL.cuts + 2.3),
    ...mainColumn(faces, card).items,
    ...proof(look),
    ...foot(look),
    ...(nothing(fullRest(faces, card)) ? [] : continues(look)),
  ];
}
/** Where the rest of a card is, at the foot of its pictures. */
const continues = (look: CardLook): Item[] =>
  label(look.faces, `continues on sheet ${look.sheet + 1}`, picturesAt(look.card), FULL.y + 188.2, {
    face: 'semibold',
  });
/** One column of a further sheet. */
const furtherColumn = (faces: Faces, rest: Rest) =>
  columnOf(faces, rest.callouts, rest.rows, { x: FULL.x, w: FULL.column }, FULL.y + FULL.cuts + 2.3, FULL.y + 186);
export const continuedRest = (faces: Faces, rest: Rest): Rest => furtherColumn(faces, rest);
/** A further sheet of a card that overflows: its tag, and the rest of the cuts and rows. */
export function continuedCard(look: CardLook, rest: Rest): Item[] {
  const { faces, card } = look;
  const { x, y } = FULL;
  return [
    ...tag(faces, card.part.mark, x, y, card.part.mark.length > 3 ? 32 : 25),
    ...label(faces, `${card.hand}, further cuts`, x + 36, y + 8, { size: SIZE.hand, face: 'semibold' }),
    ...label(faces, 'Cuts, continued', x, y + FULL.cuts, { size: SIZE.figure, face: 'semibold' }),
    ...line('W', x, y + FULL.cuts + 2.3, x + FULL.column, y + FULL.cuts + 2.3),
    ...furtherColumn(faces, rest).items,
    ...foot(look, true),
    ...(nothing(continuedRest(faces, rest)) ? [] : continues(look)),
  ];
}

function head(look: CardLook): Item[] {
  const { faces, card, piece } = look;
  const { part, frame } = card;
  const { x, y } = FULL;
  const wide = part.mark.length > 3 ? 32 : 25;
  const handWide = widthOf(faces, card.hand, SIZE.hand, 'semibold');
  const sizeAt = Math.max(66, wide + 3 + handWide + 6);
  const sizeWide = widthOf(faces, card.size, SIZE.finished, 'semibold');
  const size = Math.min(SIZE.finished, (SIZE.finished * (FULL.right - 4 - sizeAt)) / sizeWide);
  const right = isRight(card);
  const set = (
    text: string | readonly Run[],
    u: number,
    v: number,
    em: number = SIZE.text,
    face: 'regular' | 'semibold' = 'regular',
  ): Item[] => {
    const at = right ? { x: x + FULL.w - u, anchor: 'end' as const } : { x: x + u, anchor: 'start' as const };
    return [...setText(faces, text, { ...at, y: y + v, size: em, face }).items];
  };
  const grown = [part.thickness, part.width, part.length].filter(
    (a) => part.growth[a][0] !== 0 || part.growth[a][1] !== 0,
  );
  const shoulder = grown.length === 0 ? 'no tails or tenons' : `${sayBetween(part)} ${grown.map((a) => formatLength(part.size[a].value, piece.units)).join(', ')}`; // prettier-ignore
  const over = (a: Axis): number => frame.blank[a][1] - frame.blank[a][0];
  const sizes = [over(part.thickness), over(part.width), over(part.length)] as const;
  const cut = roughOf(sizes, piece.shop.allowance, piece.units, part.staves);
  const blank = `Blank ${[cut.thickness, cut.width, cut.length].map((n) => formatLength(n, piece.units)).join(' × ')}. Board ________ .`;
  const rough = card.source ? `${card.source[0] as string}.` : blank;
  const status = part.status.slice(0, 1).toUpperCase() + part.status.slice(1);
  const measure: Run[] = [
    { string: `${MEASURE_FROM} `, face: 'semibold' },
    { string: sayReference(part, piece.units) },
  ];
  return [
    ...tag(faces, part.mark, right ? x + FULL.w - wide : x, y, wide),
    ...set(card.hand, wide + 3, 5.8, SIZE.hand, 'semibold'),
    ...set(card.mirror ? `mirror image of ${card.mirror.mark}` : `${card.all.length} off`, wide + 3, 12),
    ...set(card.size, sizeAt, 8.6, size, 'semibold'),
    ...set(shoulder, sizeAt, 15.2),
    ...set(measure, 0, 20.2),
    ...set(`${card.stock}${card.mirror ? ` ${card.all.length} off.` : ''}`, FULL.right, 4.2),
    ...set(rough, FULL.right, 10.2),
    ...statusBar(part.status, x + (right ? FULL.w - FULL.right - 9 : FULL.right), y + 13.8),
    ...set(status, FULL.right + 11, 16.3, SIZE.text, 'semibold'),
    ...line('W', x + (right ? 26 : 0), y + 23, x + FULL.w - (right ? 0 : 26), y + 23),
    ...whereUsed(piece, card.all, right ? x : x + FULL.w - 22, y, 22, 22, !right),
  ];
}

export function fullViews(look: CardLook): ReturnType<typeof views> {
  const { faces, card, mesh } = look;
  const [x, y] = [picturesAt(card), FULL.y];
  const tall = card.mirror ? 58 : 34;
  const bare = !card.mirror && quietBlock(faces, card, 22) === undefined;
  const socket = socketOf(card);
  const more = socket ? profileHeight(socket) : 0;
  const stacked: Block = { w: 27, h: tall + 4, draw: (z) => quiet(look, z.x + 1, z.y + (z.h - tall) / 2 + 2, true) };
  const lying: Block = { w: 100, h: 26, draw: (z) => quiet(look, z.x, z.y + z.h - 20, false) };
  const below = bare ? 0 : tall;
  const column = (s: DovetailCut): Block => ({
    w: 28,
    h: more + below + 4,
    draw: (z) => {
      const top = z.y + (z.h - more - below) / 2 + 2;
      return [...profile(faces, card, s, z.x + 1, top), ...(bare ? [] : quiet(look, z.x + 1, top + more, true))];
    },
  });
  const beside = [...(socket ? [column(socket)] : []), ...(bare ? [] : [stacked, lying])];
  const h = nothing(fullRest(faces, card)) ? 165 : 161;
  return views({ faces, card, mesh }, { x, y: y + 24, w: PICTURES, h }, 3, beside, isRight(card));
}
/** The side column: sides with no work, and the card that this one is not. */
function quiet(look: CardLook, x: number, y: number, stacked: boolean): Item[] {
  const { faces, card } = look;
  const high = Math.min(stacked ? 24 : 16, noWorkHeight(card) + 5);
  const boxes = noWork(faces, card, { x, y: y + 3, w: stacked ? 25 : 60, h: high });
  const out: Item[] =
    boxes.length === 0
      ? []
      : [...label(faces, 'No work here', x, y, { size: SIZE.figure, face: 'semibold' }), ...boxes];
  if (!card.mirror) return out;
  const [nx, ny] = stacked ? [x, y + (boxes.length === 0 ? 0 : high + 12)] : [x + 66, y];
  const lines = [`${(card.mirror.hand ?? 'other').toUpperCase()}:`, `take ${card.mirror.mark}`];
  out.push(...label(faces, 'Not this card', nx, ny, { size: SIZE.figure, face: 'semibold' }));
  lines.forEach((text, i) =>
    out.push(...label(faces, text, nx, ny + 5.5 + i * 4.8, { face: i === 1 ? 'semibold' : 'regular' })),
  );
  return out;
}
function proof(look: CardLook): Item[] {
  const { faces, card } = look;
  const [x, y, w] = [wordsAt(card), FULL.y, FULL.column];
  const what = widthOf(faces, card.prove.what, SIZE.text);
  return [
    ...line('N', x, y + 178, x + w, y + 178),
    ...label(faces, 'Prove', x, y + 185, { face: 'semibold' }),
    ...label(faces, card.prove.what, x + LABEL, y + 185),
    ...setText(faces, card.prove.figure, {
      x: x + LABEL + what + 4,
      y: y + 185.6,
      size: SIZE.headline,
      face: 'semibold',
    }).items,
    ...tickBox(faces, x + w - 4, y + 181.8),
  ];
}
function foot(look: CardLook, further = false): Item[] {
  const { faces, card, piece } = look;
  const { x, y } = FULL;
  const { header } = piece;
  const at = (text: string, u: number, face: 'regular' | 'semibold' = 'regular'): Item[] =>
    label(faces, text, x + u, y + 194, { face });
  const ticks = [['rough', 0], ['thickness', 16.5], ['size', 38.3], ['prepared', 52.3]] as const; // prettier-ignore
  const done = [
    ...ticks.flatMap(([text, u]) => [
      ...tickBox(faces, x + FULL.right + u, y + 190.9),
      ...at(text, FULL.right + u + 5),
    ]),
    ...at('initials', FULL.right + 74.5),
    ...blank(x + FULL.right + 87, y + 194, 12),
  ];
  return [
    ...line('W', x, y + 189.8, x + FULL.w, y + 189.8),
    ...at(`${header.number} ${header.title}`, 0, 'semibold'),
    ...at(`Revision ${header.revision} · ${card.revision}`, 52),
    ...at(`Card ${look.n} of ${look.of}`, 92),
    ...(further ? [] : done),
    ...label(faces, `Sheet ${look.sheet}`, x + FULL.w, y + 194, { anchor: 'end' }),
  ];
}
