import type { Mesh } from '../../geom/solid.js';
import type { Piece } from '../../piece/piece.js';
import type { Faces } from '../../type/type.js';
import { MEASURE_FROM, sayReference } from '../../words/card.js';
import { blank, label, line, statusBar, tag, tickBox } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText, widthOf } from '../text.js';
import type { Run } from '../text.js';
import { whereUsed } from './key.js';
import { columnOf, fitsColumn, LABEL } from './list.js';
import type { Block } from './arrange.js';
import { noWork, noWorkWidth } from './panel.js';
import { views } from './panes.js';
import { cutsHeading } from './words.js';
import type { Card, Row } from './words.js';

/** Geometry of a half card (our default): 115 x 195 in half a Letter page. */
export const HALF = { w: 115, h: 195, cuts: 103.4, rows: 181.5 } as const;

export interface CardLook {
  readonly faces: Faces;
  readonly piece: Piece;
  readonly mesh: Mesh | undefined;
  readonly card: Card;
  readonly n: number;
  readonly of: number;
  /** Number of the sheet in the packet. */
  readonly sheet: number;
}
/** How a card's words may be set: loose, closer, and without what may be left out; what each costs beside its views. */
const SETTINGS = [
  { close: false, spare: true, cost: 0 },
  { close: true, spare: true, cost: 0.15 },
  { close: false, spare: false, cost: 0.5 },
  { close: true, spare: false, cost: 0.65 },
] as const;
type Setting = (typeof SETTINGS)[number];
const lower = (text: string): string => text.replace(/^[A-Z](?=[a-z])/, (x) => x.toLowerCase());
function rowsIn(card: Card, s: Setting): readonly Row[] {
  if (s.spare) return card.rows;
  const rows = card.rows.filter((r) => !r.spare);
  const prepare = rows.find((r) => r.label === 'Prepare');
  // What is eased and what is finished share a row, and a box.
  return rows.flatMap((r): Row[] => {
    if (r.label !== 'Break' || !prepare) return r === prepare && rows.some((o) => o.label === 'Break') ? [] : [r];
    // Of a long order only its first words: where finish must not go is common to all joints.
    const first = prepare.text.map((x) => ({
      ...x,
      string: lower(x.string.replace(/(?: before glue-up)?; .*\.$/, '.')),
    }));
    return [{ ...r, text: [...r.text, { string: ' Prepare ', face: 'semibold' }, ...first] }];
  });
}
/** Where the cuts may begin, v: the usual place; lower where few words leave room for larger views, then higher. */
const BEGIN = [HALF.cuts, 110, 118, 100.5, 98, 96, 93, 90] as const;
const fitsFrom = (faces: Faces, card: Card, v: number): Setting | undefined =>
  SETTINGS.find((s) =>
    fitsColumn(faces, card.callouts, rowsIn(card, s), { x: 0, w: HALF.w, close: s.close }, v + 2.3, HALF.rows),
  );
/** What the views cost on a half card as good as any: faces at 1:8, an end at 1:4, no crossed boxes (our default). */
export const GOOD = 9.25;
/** The same of a part whose ends have no work: faces at 1:10. */
export const PLAIN = 7.1;
/** True when the cuts and rows of a card fit into the half card's column. */
export const fitsHalf = (faces: Faces, card: Card): boolean =>
  card.callouts.length <= 4 && BEGIN.some((v) => fitsFrom(faces, card, v) !== undefined);
/** The views in the room above the cuts, and where the cuts begin: as far down as makes the views larger. */
export function layoutOf(
  look: CardLook,
  x: number,
  y: number,
  right: boolean,
): { cuts: number; cost: number; setting: Setting; items(): Item[] } {
  const { faces, card, mesh } = look;
  const quiet = quietBlock(faces, card, 22);
  const made = (cuts: number): ReturnType<typeof views> =>
    views({ faces, card, mesh }, { x, y: y + 39, w: HALF.w, h: cuts - 41.2 }, 2, quiet ? [quiet] : [], right);
  const places = BEGIN.flatMap((cuts) => {
    const setting = fitsFrom(faces, card, cuts);
    return setting ? [{ cuts, setting }] : [];
  });
  // Higher up views only grow smaller: the first place that does is the best of those.
  const low = places.filter((p) => p.cuts >= HALF.cuts);
  const tried = (low.length > 0 ? low : places.slice(0, 1)).map((p) => {
    const drawn = made(p.cuts);
    return { ...p, drawn, cost: drawn.cost, worth: drawn.cost + p.setting.cost };
  });
  const [first = { cuts: HALF.cuts, setting: SETTINGS[0], ...none(made(HALF.cuts)) }, ...others] = tried;
  const best = others.reduce((a, b) => (b.worth < a.worth - 0.1 ? b : a), first);
  return { cuts: best.cuts, cost: best.cost, setting: best.setting, items: () => best.drawn.items() };
}

const none = (drawn: ReturnType<typeof views>) => ({ drawn, cost: drawn.cost, worth: drawn.cost });

/** A half card with its upper left corner at (x, y). The right hand's layout is the mirror of the left's; words are the same. */
export function halfCard(look: CardLook, x: number, y: number): Item[] {
  const { faces, card } = look;
  const right = card.part.hand === 'right';
  const { cuts, setting, items } = layoutOf(look, x, y, right);
  const col = { x, w: HALF.w, close: setting.close };
  const list = columnOf(faces, card.callouts, rowsIn(card, setting), col, y + cuts + 2.3, y + HALF.rows);
  return [
    ...head(look, x, y, right),
    ...items(),
    ...label(faces, cutsHeading(card), x, y + cuts, { size: SIZE.figure, face: 'semibold' }),
    ...line('W', x, y + cuts + 2.3, x + HALF.w, y + cuts + 2.3),
    ...list.items,
    ...foot(look, x, y),
  ];
}
/** Places text from the tag's side: on a right-hand card everything counts from the right edge. */
const sided = (right: boolean, x: number, u: number): { x: number; anchor: 'start' | 'end' } =>
  right ? { x: x + HALF.w - u, anchor: 'end' } : { x: x + u, anchor: 'start' };

function head(look: CardLook, x: number, y: number, right: boolean): Item[] {
  const { faces, card, piece } = look;
  const wide = card.part.mark.length > 3 ? 32 : 25;
  const put = (
    text: string | readonly Run[],
    u: number,
    v: number,
    size: number,
    face: 'regular' | 'semibold',
  ): Item[] => [...setText(faces, text, { ...sided(right, x, u), y: y + v, size, face }).items];
  const room = HALF.w - wide - 3 - 22;
  const handSize = Math.min(
    SIZE.hand,
    (SIZE.hand * room) / Math.max(1, widthOf(faces, card.hand, SIZE.hand, 'semibold')),
  );
  const off = `${card.all.length} off`;
  const status = card.part.status.slice(0, 1).toUpperCase() + card.part.status.slice(1);
  const statusWide = widthOf(faces, status, SIZE.text, 'semibold');
  const from = card.source?.map((x) => ` ${x}.`) ?? [' Board ______ .', ' Board ___ .', ''];
  const stock =
    from.map((b) => card.stock + b).find((t) => widthOf(faces, t, SIZE.text) + 15 + statusWide <= HALF.w) ?? card.stock;
  const stockWide = widthOf(faces, stock, SIZE.text);
  const bar = right ? x + HALF.w - stockWide - 4 - 9 : x + stockWide + 4;
  const barText = right ? { x: bar - 1.8, anchor: 'end' as const } : { x: bar + 10.8, anchor: 'start' as const };
  const measure: Run[] = [
    { string: `${MEASURE_FROM} `, face: 'semibold' },
    { string: sayReference(card.part, piece.units) },
  ];
  const sizeWide = widthOf(faces, card.size, SIZE.finished, 'semibold');
  return [
    ...tag(faces, card.part.mark, right ? x + HALF.w - wide : x, y, wide),
    ...put(card.hand, wide + 3, 5.8, handSize, 'semibold'),
    ...(card.mirror ? put(`mirror image of ${card.mirror.mark}`, wide + 3, 12, SIZE.text, 'regular') : []),
    ...whereUsed(piece, card.all, right ? x : x + HALF.w - 20, y, 20, 21, !right),
    ...put(card.size, 0, 22.6, SIZE.finished, 'semibold'),
    ...put(off, Math.max(70, sizeWide + 4), 22.6, SIZE.mark, 'semibold'),
    ...put(stock, 0, 29.6, SIZE.text, 'regular'),
    ...statusBar(card.part.status, bar, y + 27.2),
    ...label(faces, status, barText.x, y + 29.6, { face: 'semibold', anchor: barText.anchor }),
    ...line('W', x, y + 32.8, x + HALF.w, y + 32.8),
    ...put(measure, 0, 37.6, SIZE.text, 'regular'),
  ];
}

/** The sides with no work as a block `h` high; undefined where there are none to show. */
export function quietBlock(faces: Faces, card: Card, h: number): Block | undefined {
  const size = noWork(faces, card, { x: 0, y: 0, w: 60, h });
  if (size.length === 0) return undefined;
  const w = Math.max(14, noWorkWidth(faces, card));
  return { w: w + 3, h: h + 2, draw: (z) => noWork(faces, card, { x: z.x + (z.w - w) / 2, y: z.y + (z.h - h) / 2, w: 60, h }) }; // prettier-ignore
}

function foot(look: CardLook, x: number, y: number): Item[] {
  const { faces, card, piece } = look;
  const { prove, mirror } = card;
  const set = (
    text: string | readonly Run[],
    u: number,
    v: number,
    size: number = SIZE.text,
    face: 'regular' | 'semibold' = 'regular',
  ): Item[] => [...setText(faces, text, { x: x + u, y: y + v, size, face }).items];
  const what = widthOf(faces, prove.what, SIZE.text);
  const figure = widthOf(faces, prove.figure, SIZE.headline, 'semibold');
  const other: Run[] = mirror
    ? [
        { string: `${(mirror.hand ?? '').toUpperCase()} is ` },
        { string: 'not', face: 'semibold' },
        { string: ` this card: take ${mirror.mark}` },
      ]
    : [];
  const warnWide = mirror ? widthOf(faces, other, SIZE.text) : 0;
  const at = LABEL + what + 3 + figure + 3;
  const warn = mirror && at + 7 + warnWide < HALF.w ? setText(faces, other, { x: x + HALF.w, y: y + 187.4, size: SIZE.text, anchor: 'end' }).items : []; // prettier-ignore
  const ticks = ['thickness', 'size'];
  const id: Run[] = [
    { string: piece.header.number, face: 'semibold' },
    { string: `  ${piece.header.revision} · ${card.revision} · card ${look.n} of ${look.of} · sheet ${look.sheet}` },
  ];
  return [
    ...set('Prove', 0, 187.4, SIZE.text, 'semibold'),
    ...set(prove.what, LABEL, 187.4),
    ...set(prove.figure, LABEL + what + 3, 187.9, SIZE.headline, 'semibold'),
    ...tickBox(faces, x + at, y + 184.2),
    ...warn,
    ...line('W', x, y + 190.2, x + HALF.w, y + 190.2),
    ...set(id, 0, 194),
    ...ticks.flatMap((t, i) => [...tickBox(faces, x + 68 + i * 20.5, y + 191), ...set(t, 73 + i * 20.5, 194)]),
    ...set('by', 103, 194),
    ...blank(x + 107, y + 194, 8),
  ];
}
