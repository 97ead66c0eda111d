import { faceAxis } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import type { Mesh } from '../../geom/solid.js';
import type { Faces } from '../../type/type.js';
import type { Cut } from '../../words/cut.js';
import { called, distance, isFull, noun } from '../../words/frame.js';
import type { Frame } from '../../words/frame.js';
import { formatLength } from '../../lengths/format.js';
import type { Rect } from '../dimensions.js';
import { collide } from '../dimensions.js';
import { crossedBox, edgeMark, faceMark, grainArrow, label, line, MIDDLE } from '../draw.js';
import type { Heading } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText, widthOf } from '../text.js';
import type { Block } from './arrange.js';
import { discs, fromRight, shareX } from './discs.js';
import { figuresAcross, figuresUp, parted, stations } from './figures.js';
import {
  across,
  breakLines,
  greyOf,
  onView,
  overBreak,
  placeView,
  shows,
  sideOf,
  spansOf,
  upward,
  woodOf,
} from './view.js';
import type { Placed, Skip } from './view.js';
import type { Card } from './words.js';
import { isRelief, quietFaces } from './words.js';

/** A place on the card for views; everything of a view stays inside it. */
export interface Zone {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}
/** Room that running figures, a caption and a plain side take round a view, mm. */
const ABOVE = 12.1;
const CAPTION = 7.2;
const MARK = 4.6;
const PLAIN = 4;
const BESIDE = 8;
/** A view lower than this is a strip, mm. */
const THIN = 5;
/** Room beside an end for its name and the names of its two rows of figures. */
const ROWS = 25;

/** One view: a whole side, an end, or the end of a side with the rest broken off. */
export interface Pane {
  readonly face: Face;
  readonly top?: Face;
  readonly kind: 'face' | 'end' | 'detail';
  readonly caption: string;
  readonly turned?: boolean;
  /** The side turned over comes next, and its caption says the scale of both. */
  readonly captionNext?: true;
  /** The figures along it stand at the view before it. */
  readonly acrossSaid?: true;
  /** The end has a view of its own on the card: its tails are figured there. */
  readonly endShown?: boolean;
  /** What is broken out at a scale. */
  readonly skips?: (oneTo: number) => readonly Skip[];
}
export interface Look {
  readonly faces: Faces;
  readonly card: Card;
  readonly mesh: Mesh | undefined;
}

/** Views of a card that were measured before: many sizes and settings are tried, and most want the same views again. */
const measured = new WeakMap<Card, Map<string, Block>>();
/** A view at a scale with all that belongs to it: wood, grey, names on the wood, marks, discs, figures, its caption. */
export function paneAt(look: Look, pane: Pane, oneTo: number): Block {
  const known = measured.get(look.card) ?? new Map<string, Block>();
  measured.set(look.card, known);
  const key = JSON.stringify([look.mesh !== undefined, oneTo, { ...pane, skips: pane.skips?.(oneTo) }]);
  const block = known.get(key) ?? makePane(look, pane, oneTo);
  known.set(key, block);
  return block;
}
function makePane(look: Look, pane: Pane, oneTo: number): Block {
  const { faces, card } = look;
  const side = sideOf(pane.face, pane.top);
  const f = card.frame;
  const skips = pane.skips?.(oneTo) ?? [];
  const at = (x: number, y: number): Placed => placeView(side, f, x, y, oneTo, skips);
  const v = at(0, 0);
  const { cuts } = card.part;
  const ups = figured(cuts, pane, upward(side), f);
  const along = figured(cuts, pane, across(side), f);
  const atLeft = f.datum[across(side)] === side.left;
  const detail = pane.kind === 'detail';
  const rows = pane.kind === 'end' && cuts.some((c) => c.shape === 'dovetail' && c.as === 'end-socket' && shows(c, v));
  const text = `${pane.caption} 1:${oneTo}${pane.turned ? ', turned over' : ''}`;
  const textWide = widthOf(faces, text, SIZE.text);
  const widest = Math.max(
    ...stations(ups, v, upward(side)).map((x) => widthOf(faces, formatLength(distance(f, f.datum[upward(side)], x), f.units), SIZE.figure, 'semibold')), // prettier-ignore
  );
  const aside = !rows && parted(ups, v, upward(side), detail)[1].length > 0;
  const foot = !rows && !detail && parted(along, v, across(side))[1].length > 0;
  const figures = rows ? ROWS : BESIDE + widest;
  const other = rows || aside ? BESIDE + widest : PLAIN;
  // Of a side with all but its end broken off only the way along the joint has figures.
  const lying = detail && skips[0]?.axis === upward(side);
  const bare = (detail && !lying) || (pane.acrossSaid ?? false);
  const above = bare ? 3 : ABOVE;
  const row = bare ? 0 : stations(along, v, across(side)).reduce((n, x) => n + 1.6 + widthOf(faces, formatLength(distance(f, f.datum[across(side)], x), f.units), SIZE.figure, 'semibold'), 2); // prettier-ignore
  const plain = pane.captionNext === true && v.h >= 10 && !foot && !narrow(look, pane, v);
  const under = rows || foot ? ABOVE : plain ? MARK : CAPTION;
  const [w, h] = [v.w + figures + other, v.h + above + under];
  const draw = (zone: Zone): Item[] => {
    const spare = Math.max(0, zone.w - w) / 2;
    const [x, y] = [zone.x + spare + (atLeft ? figures : other), zone.y + above + Math.max(0, zone.h - h) / 2];
    const view = at(x, y);
    const middle = within(x + v.w / 2, textWide / 2, zone);
    const caption = rows
      ? label(faces, text, atLeft ? x - ROWS : x + v.w + ROWS, y - 8.2, { anchor: atLeft ? 'start' : 'end' })
      : foot && !narrow(look, pane, v)
        ? label(faces, `1:${oneTo}`, atLeft ? x + v.w + 2 : x - 2, y + v.h + 10.4, { anchor: atLeft ? 'start' : 'end' })
        : plain
          ? []
          : named(faces, pane, oneTo, middle, y + v.h + under - 1.6, narrow(look, pane, v));
    return [...body(look, view, pane.kind, foot || plain ? 0 : textWide / 2 + 3.6, foot || plain), ...around(look, view, zone, { detail, rows, atLeft, ups, along, bare }), ...caption]; // prettier-ignore
  };
  return { w: Math.max(w, textWide + 2, row), h, draw };
}
/** The cuts that have figures along an axis of a view: not the tails of an end that has its own, nor what runs out there. */
const figured = (cuts: readonly Cut[], pane: Pane, axis: Axis, f: Frame): readonly Cut[] =>
  pane.endShown
    ? cuts.filter((c) => (c.shape === 'tails' ? c.taper !== axis : c.shape !== 'box' || axis === f.length || !isFull(f, f.length, c.at[f.length]))) // prettier-ignore
    : cuts;
/** True when the face has no room for its own name. */
const narrow = ({ faces, card }: Look, pane: Pane, v: Placed): boolean =>
  pane.kind === 'face' && (v.h < 6 || v.w < widthOf(faces, called(card.frame, pane.face), SIZE.name, 'semibold') + 2);
/** The caption below a view; where the name is not written on the wood it is written large here. */
function named(faces: Faces, pane: Pane, oneTo: number, cx: number, y: number, large: boolean): Item[] {
  const rest = ` 1:${oneTo}${pane.turned ? ', turned over' : ''}`;
  if (!large) return label(faces, pane.caption + rest, cx, y, { anchor: 'middle' });
  return [...setText(faces, [{ string: pane.caption, face: 'semibold' }, { string: rest }], { x: cx, y, size: SIZE.text, anchor: 'middle' }).items]; // prettier-ignore
}
/** A centre kept so that the text stays in the zone. */
const within = (cx: number, half: number, zone: Zone): number =>
  Math.min(Math.max(cx, zone.x + half), zone.x + zone.w - half);

/** One way to share out the room on the wood: what was placed, and how badly. */
interface Share {
  readonly cost: number;
  readonly items: readonly Item[];
}
/** In which order the marks of the reference edge, the names and the discs take their places. */
const ORDERS = ['marks names discs', 'marks discs names', 'discs marks names', 'names discs marks', 'discs names marks'] as const; // prettier-ignore
/** What goes missing counts so much beside the faults of discs (our default). */
const MISSING = { faceMark: 18, name: 9, nameUncaptioned: 40, side: 6 };

/** `mustName`: no caption says which face it is. */
function body(look: Look, v: Placed, kind: Pane['kind'], caption: number, mustName: boolean): Item[] {
  const { card } = look;
  const { cuts } = card.part;
  const ways = kind === 'face' ? ORDERS : (['names discs marks', 'discs names marks'] as const);
  let best: Share | undefined;
  for (const order of ways) {
    if (best && best.cost <= 0.5) break;
    const one = shared(look, v, kind, caption, mustName, order);
    if (!best || one.cost < best.cost - 0.01) best = one;
  }
  return [
    ...cuts.flatMap((c) => greyOf(c, v)),
    ...cuts.flatMap((c) => pencil(c, v)),
    ...breakLines(v),
    ...(look.mesh ? woodOf(v, look.mesh) : []),
    ...(best?.items ?? []),
  ];
}
function shared(look: Look, v: Placed, kind: Pane['kind'], caption: number, mustName: boolean, order: string): Share {
  const { faces, card } = look;
  const taken: Rect[] = [];
  const items: Item[] = [];
  let cost = 0;
  for (const what of order.split(' ')) {
    if (what === 'marks' && kind === 'face') {
      const set = edgeMarks(card, v, taken, caption);
      items.push(...set.items);
      cost += set.missed ? MISSING.faceMark : 0;
    } else if (what === 'names' && kind !== 'detail') {
      const set = names(faces, card, v, taken, kind === 'face');
      items.push(...set.items);
      cost += (set.named || kind !== 'face' ? 0 : mustName ? MISSING.nameUncaptioned : MISSING.name) + set.missed * MISSING.side; // prettier-ignore
    } else if (what === 'discs') {
      const set = discs(look, v, taken);
      taken.push(...set.taken.slice(taken.length));
      items.push(...set.items);
      cost += set.cost;
    }
  }
  if (kind === 'face') items.push(...grain(card, v, taken));
  return { cost, items };
}
interface How {
  /** No figures above the view. */
  readonly bare: boolean;
  readonly detail: boolean;
  readonly rows: boolean;
  readonly atLeft: boolean;
  /** The cuts that are figured up and across the view. */
  readonly ups: readonly Cut[];
  readonly along: readonly Cut[];
}
function around(look: Look, v: Placed, zone: Zone, how: How): Item[] {
  const { faces, card } = look;
  const { cuts } = card.part;
  const room: readonly [number, number] = [zone.x, zone.x + zone.w];
  if (how.detail && v.skips[0]?.axis === upward(v.side)) return figuresAcross(faces, v, cuts, room);
  const span: readonly [number, number] = [v.y - 4, v.y + v.h + 2];
  const [first, aside] = how.rows ? [cuts, []] : parted(how.ups, v, upward(v.side), how.detail);
  // A strip has no room for figures at its end: the words have them.
  const thin = !how.rows && !how.detail && v.h < THIN;
  const up = thin
    ? []
    : [
        ...figuresUp(faces, v, first, span, how.rows !== how.atLeft),
        ...(aside.length > 0 ? figuresUp(faces, v, aside, span, !how.atLeft, false) : []),
      ];
  if (how.detail) return up;
  if (!how.rows) {
    const [over, foot] = parted(how.along, v, across(v.side));
    const below = foot.length > 0 ? figuresAcross(faces, v, foot, room, true, false, false) : [];
    return [...(how.bare ? [] : figuresAcross(faces, v, over, room)), ...below, ...up];
  }
  const sockets = cuts.filter((c) => c.shape === 'dovetail' && c.as === 'end-socket');
  const keep: readonly [number, number] = how.atLeft ? [v.x - 3, room[1]] : [room[0], v.x + v.w + 3];
  const name = (text: string, y: number): Item[] =>
    label(faces, text, how.atLeft ? v.x - 2.2 : v.x + v.w + 2.2, y + MIDDLE * SIZE.text, { anchor: how.atLeft ? 'end' : 'start' }); // prettier-ignore
  return [
    ...figuresAcross(faces, v, sockets, keep, false, true),
    ...figuresAcross(faces, v, sockets, keep, true),
    ...name('at the floor', v.y - 4.2),
    ...name('at the face', v.y + v.h + 4.2),
    ...up,
  ];
}
function pencil(c: Cut, v: Placed): Item[] {
  if (c.shape !== 'mark' || c.face !== v.side.face) return [];
  const [x, y, w, h] = onView(v, spansOf(c, v.frame));
  return line('centre', x, y, x + w, y + h);
}
const box = (cx: number, cy: number, w: number, h: number): Rect => ({ x: cx - w / 2, y: cy - h / 2, w, h });
const inside = (r: Rect, v: Placed, air: number): boolean =>
  r.x >= v.x + air && r.y >= v.y + air && r.x + r.w <= v.x + v.w - air && r.y + r.h <= v.y + v.h - air;

/** The name of the face and of its four sides, written on the wood where there is room. */
function names(
  faces: Faces,
  card: Card,
  v: Placed,
  taken: Rect[],
  whole: boolean,
): { readonly items: Item[]; readonly named: boolean; readonly missed: number } {
  const f = card.frame;
  const out: Item[] = [];
  // On an end the joint itself is what is to be seen.
  if (card.part.cuts.some((c) => !whole && c.shape === 'tenon' && shows(c, v)))
    return { items: out, named: true, missed: 0 };
  const room = (text: string, cx: number, cy: number, size: number): Rect | undefined => {
    const r = box(cx, cy, widthOf(faces, text, size, 'semibold') + (size >= SIZE.name ? 2 : 1), size * 1.05);
    if (!inside(r, v, 0.6) || taken.some((t) => collide(t, r)) || overBreak(v, r)) return undefined;
    const keepsOff = size < SIZE.name || faceAxis(v.side.face) === card.part.length;
    return keepsOff && overWork(card, v, r) ? undefined : r;
  };
  const put = (text: string, cx: number, cy: number, size: number): boolean => {
    const r = room(text, cx, cy, size);
    if (!r) return false;
    taken.push(r);
    out.push(...label(faces, text, cx, cy + MIDDLE * size, { size, face: 'semibold', anchor: 'middle' }));
    return true;
  };
  const busy = card.part.cuts.filter((c) => shows(c, v)).map((c) => onView(v, spansOf(c, f)));
  const free = (y: number, h: number): boolean =>
    busy.every((b) => b[3] > v.h * 0.7 || y + h / 2 < b[1] || y - h / 2 > b[1] + b[3]);
  const name = `${f.words[v.side.face]} ${noun(f, v.side.face)}`;
  const places = [...Array(17).keys()].map((i) => 0.5 + (i % 2 === 0 ? -1 : 1) * 0.05 * Math.ceil(i / 2)).map((k) => v.y + v.h * (v.h < 24 ? k * 0.7 + 0.02 : k)); // prettier-ignore
  const half = widthOf(faces, name, SIZE.name, 'semibold') / 2 + 0.8;
  const clear = (x: number, y: number, h: number): boolean => !overWork(card, v, box(x, y, 2 * half, h));
  const spots = [0.5, 0.36, 0.64, 0.25, 0.75].flatMap((k) => places.map((y) => [shareX(v, k), y] as const));
  const within = (x: number): boolean => x - half >= v.x + 1 && x + half <= v.x + v.w - 1;
  const where =
    spots.slice(0, places.length).find(([x, y]) => clear(x, y, 6.4)) ??
    spots.slice(0, places.length).find(([x, y]) => clear(x, y, 4.4)) ??
    spots.find(([x, y]) => within(x) && clear(x, y, 4.4)) ??
    (v.h >= 16 ? spots.find(([, y]) => free(y, 4.4)) : undefined);
  const wanted = where === undefined ? spots : [where, ...spots];
  const named = whole && wanted.some(([x, y]) => clear(x, y, 4.4) && put(name, x, y, SIZE.name));
  const worked = (w: Face): number => {
    const at = w === v.side.left ? v.x : v.x + v.w;
    const there = card.part.cuts
      .filter((c) => shows(c, v) && c.shape !== 'mark')
      .map((c) => onView(v, spansOf(c, f)))
      .filter((r) => r[3] > v.h * 0.5 && r[2] < v.w * 0.3 && (w === v.side.left ? r[0] - at : at - r[0] - r[2]) < 0.1);
    return Math.max(0, ...there.map((r) => r[2] + 0.5));
  };
  const wide = (w: Face): number => widthOf(faces, f.words[w], SIZE.text, 'semibold') / 2 + 1.6 + worked(w);
  const low = v.h < 24 ? 0.72 : 0.42;
  const heights = [low, 0.6, 0.3, 0.5, 0.36, 0.66, 0.72, 0.24, 0.8, 0.85, 0.15].map((k) => v.y + v.h * k);
  const sideY = heights.find((y) => free(y, 5.6)) ?? heights.find((y) => free(y, 3.6)) ?? v.y + v.h * low;
  // Both sides at one height where that can be, else each where it has room.
  const ownHalf = (w: Face): boolean => wide(w) + widthOf(faces, f.words[w], SIZE.text, 'semibold') / 2 <= v.w / 2;
  const ends = [[v.side.left, v.x + wide(v.side.left)], [v.side.right, v.x + v.w - wide(v.side.right)]] as const; // prettier-ignore
  const tries = [sideY, ...heights];
  const both = tries.filter((y) => ends.every(([w, x]) => room(f.words[w], x, y, SIZE.text)));
  const beside = (w: Face, x: number): boolean => ownHalf(w) && [...both.slice(0, 1), ...tries].some((y) => put(f.words[w], x, y, SIZE.text)); // prettier-ignore
  const said = (fromRight(v) ? [...ends].reverse() : ends).filter(([side, x]) => beside(side, x));
  // Above and below the middle, or where there is room beside it.
  const level = (w: Face, y: number): boolean => [0.5, 0.6, 0.4, 0.7, 0.3].some((k) => put(f.words[w], shareX(v, k), y, SIZE.text)); // prettier-ignore
  const [upper, lower] = [level(v.side.top, v.y + 3.2), level(v.side.bottom, v.y + v.h - 3.2)];
  const short = v.h > 14 ? [upper, lower].filter((x) => !x).length : 0;
  return { items: out, named, missed: whole ? 2 - said.length + short * 0.5 : 0 };
}

/** Edge mark outside the reference edge, face mark from it on the reference face. `missed`: the face mark has no room here. */
function edgeMarks(
  card: Card,
  v: Placed,
  taken: Rect[],
  caption: number,
): { readonly items: Item[]; readonly missed: boolean } {
  const { edge, face } = card.part.reference;
  const into = ([[v.side.left, 'right'], [v.side.right, 'left'], [v.side.bottom, 'up'], [v.side.top, 'down']] as const).find(([side]) => side === edge)?.[1]; // prettier-ignore
  if (into === undefined) return { items: [], missed: false };
  const lying = into === 'up' || into === 'down';
  const own = face === v.side.face;
  const loop = own && (lying ? v.h : v.w) >= 9.6;
  const spot = loop ? (free(card, v, taken, lying, into, caption, true) ?? free(card, v, taken, lying, into, caption, false)) : undefined; // prettier-ignore
  if (spot) {
    taken.push(...spot[2]);
    return { items: [...edgeMark(spot[0], spot[1], into), ...faceMark(spot[0], spot[1], into, lying && fromRight(v))], missed: false }; // prettier-ignore
  }
  // Outside the wood the edge mark alone always has room.
  const k = into === 'up' && v.w * 0.2 < caption ? (v.w / 2 - caption - 2) / v.w : 0.3;
  const bare: readonly [number, number] = lying ? [shareX(v, k), into === 'down' ? v.y : v.y + v.h] : [into === 'right' ? v.x : v.x + v.w, v.y + v.h * 0.3]; // prettier-ignore
  return { items: k > 0.05 ? edgeMark(...bare, into) : [], missed: own };
}
/** The grain along the wood, where there is room. */
function grain(card: Card, v: Placed, taken: Rect[]): Item[] {
  const { part } = card;
  if (part.grain === undefined || (part.grain !== across(v.side) && part.grain !== upward(v.side))) return [];
  const along = part.grain === across(v.side);
  const length = Math.min(18, (along ? v.w : v.h) * 0.3);
  for (const [kx, ky] of [
    [0.78, 0.8],
    [0.25, 0.8],
    [0.7, 0.2],
    [0.3, 0.15],
    [0.5, 0.9],
    [0.85, 0.5],
    [0.85, 0.85],
  ] as const) {
    const [cx, cy] = [shareX(v, kx), v.y + v.h * ky];
    const r = box(cx, cy, along ? length + 1 : 3, along ? 3 : length + 1);
    if (length < 6 || !inside(r, v, 0.8) || taken.some((t) => collide(t, r)) || overWork(card, v, r) || overBreak(v, r)) continue; // prettier-ignore
    taken.push(r);
    const [dx, dy] = along ? [length / 2, 0] : [0, length / 2];
    return grainArrow([cx - dx, cy + dy], [cx + dx, cy - dy]);
  }
  return [];
}
const overWork = (card: Card, v: Placed, r: Rect, pencilled = true): boolean =>
  card.part.cuts.some((c) => {
    if (!shows(c, v) || c.shape === 'arris' || c.shape === 'outline' || c.shape === 'plane') return false;
    if (c.shape === 'mark' && !pencilled) return false;
    const [x, y, w, h] = onView(v, spansOf(c, v.frame));
    return h < v.h * 0.9 || w < v.w * 0.9 ? collide({ x: x - 0.5, y: y - 0.5, w: w + 1, h: h + 1 }, r) : false;
  });
/** A point on the reference edge where the mark meets nothing; `clean`: nor crosses narrow work, but for what runs along the edge. */
function free(
  card: Card,
  v: Placed,
  taken: readonly Rect[],
  lying: boolean,
  into: Heading,
  caption: number,
  clean: boolean,
): readonly [number, number, readonly Rect[]] | undefined {
  const turned = lying && fromRight(v);
  for (const k of [lying ? 0.33 : 0.3, 0.36, 0.3, 0.42, 0.64, 0.24, 0.2, 0.5, 0.75, 0.12, 0.85, 0.9, 0.95]) {
    const x = lying ? shareX(v, k) : into === 'right' ? v.x : v.x + v.w;
    const y = lying ? (into === 'down' ? v.y : v.y + v.h) : v.y + v.h * k;
    const reach = turned ? -2 : -9;
    const r: Rect = lying
      ? { x: x + reach, y: into === 'up' ? y - 9.6 : y, w: 11, h: 9.6 }
      : { x: into === 'right' ? x : x - 10, y: y - 9, w: 10, h: 11 };
    const within = lying ? r.x >= v.x && r.x + r.w <= v.x + v.w : r.y >= v.y && r.y + r.h <= v.y + v.h;
    if (!within || overBreak(v, r)) continue;
    // Below the view stands its caption: the edge mark keeps beside it.
    if (into === 'up' && Math.abs(x - v.x - v.w / 2) < caption) continue;
    if (clean && overWork(card, v, lying ? { ...r, y: into === 'up' ? r.y : r.y + 3.6, h: 6 } : r, false)) continue;
    // Its stroke begins narrow at the edge and widens to the loop.
    const [foot, loop] = into === 'up' ? [y - 5.2, y - 9.6] : [y, y + 5.2];
    const own: Rect[] = lying ? [{ ...r, y: loop, h: 4.4 }, { x: turned ? x - 1.5 : x - 3.5, y: foot, w: 5, h: 5.2 }] : [r]; // prettier-ignore
    if (!own.some((o) => taken.some((t) => collide(t, o)))) return [x, y, own];
  }
  return undefined;
}

/** The long sides with nothing to do that the views do not show. */
const quietSides = (card: Card): Face[] =>
  quietFaces({ ...card.part, cuts: card.part.cuts.filter((c) => !isRelief(c)) }, card.frame).filter(
    (x) => faceAxis(x) !== card.part.length && x !== card.part.reference.face,
  );
const quietSize = (card: Card, face: Face, h: number): readonly [number, number] => {
  const side = sideOf(face);
  const [bw, bh] = [across(side), upward(side)].map((a) => (card.frame.blank[a][1] - card.frame.blank[a][0]) / 1e6) as [number, number]; // prettier-ignore
  const scale = Math.min(12 / bw, (h - 5) / bh);
  return [Math.max(1.2, bw * scale), Math.max(1.2, bh * scale)];
};
/** Width of the row of sides with no work, mm. */
export const noWorkWidth = (faces: Faces, card: Card): number =>
  quietSides(card).reduce((w, x) => w + 2.6 + Math.max(quietSize(card, x, 22)[0], widthOf(faces, card.frame.words[x], SIZE.text)), -2.6); // prettier-ignore
/** Height of the highest of them, mm. */
export const noWorkHeight = (card: Card): number =>
  Math.max(0, ...quietSides(card).map((x) => quietSize(card, x, 24)[1]));
/** The sides with nothing to do, small and crossed out, each over its name. */
export function noWork(faces: Faces, card: Card, zone: Zone): Item[] {
  const out: Item[] = [];
  let x = zone.x;
  for (const face of quietSides(card)) {
    const [w, h] = quietSize(card, face, zone.h);
    const text = card.frame.words[face];
    const wide = Math.max(w, widthOf(faces, text, SIZE.text));
    if (x + wide > zone.x + zone.w) break;
    out.push(...crossedBox(x, zone.y + (zone.h - 5 - h), w, h), ...label(faces, text, x, zone.y + zone.h - 1));
    x += wide + 2.6;
  }
  return out;
}
