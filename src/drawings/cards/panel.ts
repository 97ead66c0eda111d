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
import { crossedBox, disc, edgeMark, faceMark, grainArrow, label, line, MIDDLE } from '../draw.js';
import type { Heading } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { setText, widthOf } from '../text.js';
import type { Block } from './arrange.js';
import { figuresAcross, figuresUp, parted, stations } from './figures.js';
import {
  across,
  breakLines,
  centreOf,
  greyOf,
  onView,
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
  readonly skip?: (oneTo: number) => Skip | undefined;
}
export interface Look {
  readonly faces: Faces;
  readonly card: Card;
  readonly mesh: Mesh | undefined;
}

/** A view at a scale with all that belongs to it: wood, grey, names on the wood, marks, discs, figures, its caption. */
export function paneAt(look: Look, pane: Pane, oneTo: number): Block {
  const { faces, card } = look;
  const side = sideOf(pane.face, pane.top);
  const f = card.frame;
  const skip = pane.skip?.(oneTo);
  const at = (x: number, y: number): Placed => placeView(side, f, x, y, oneTo, skip);
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
  const aside = !rows && parted(ups, v, upward(side))[1].length > 0;
  const foot = !rows && !detail && parted(along, v, across(side))[1].length > 0;
  const figures = rows ? ROWS : BESIDE + widest;
  const other = rows || aside ? BESIDE + widest : PLAIN;
  // Of a side with all but its end broken off only the way along the joint has figures.
  const lying = detail && skip?.axis === upward(side);
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
    return [...body(look, view, pane.kind, foot || plain ? 0 : textWide / 2 + 2.2, foot || plain), ...around(look, view, zone, { detail, rows, atLeft, ups, along, bare }), ...caption]; // prettier-ignore
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

/** `mustName`: no caption says which face it is, so its name on the wood comes before discs. */
function body(look: Look, v: Placed, kind: Pane['kind'], caption: number, mustName: boolean): Item[] {
  const { faces, card } = look;
  const { cuts } = card.part;
  let taken: Rect[] = [];
  let written = kind === 'detail' ? [] : names(faces, card, v, taken, kind === 'face');
  let set = discs(look, v, taken);
  if (set.missed && !mustName) {
    // The discs come first where both have no room.
    taken = [];
    set = discs(look, v, taken);
    written = kind === 'detail' ? [] : names(faces, card, v, taken, kind === 'face');
  }
  return [
    ...cuts.flatMap((c) => greyOf(c, v)),
    ...breakLines(v),
    ...(look.mesh ? woodOf(v, look.mesh) : []),
    ...cuts.flatMap((c) => pencil(c, v)),
    ...written,
    ...set.items,
    ...(kind === 'face' ? marks(card, v, taken, caption) : []),
  ];
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
  if (how.detail && v.skip && v.skip.axis === upward(v.side)) return figuresAcross(faces, v, cuts, room);
  const span: readonly [number, number] = [v.y - 4, v.y + v.h + 2];
  const [first, aside] = how.rows ? [cuts, []] : parted(how.ups, v, upward(v.side));
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
function names(faces: Faces, card: Card, v: Placed, taken: Rect[], whole: boolean): Item[] {
  const f = card.frame;
  const out: Item[] = [];
  // On an end the joint itself is what is to be seen.
  if (card.part.cuts.some((c) => !whole && c.shape === 'tenon' && shows(c, v))) return out;
  const put = (text: string, cx: number, cy: number, size: number): boolean => {
    const r = box(cx, cy, widthOf(faces, text, size, 'semibold') + 1, size * 0.95);
    if (!inside(r, v, 0.6) || taken.some((t) => collide(t, r)) || overBreak(v, r)) return false;
    if ((size < SIZE.name || faceAxis(v.side.face) === card.part.length) && overWork(card, v, r)) return false;
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
  const spots = [0.5, 0.36, 0.64, 0.25, 0.75].flatMap((k) => places.map((y) => [v.x + v.w * k, y] as const));
  const within = (x: number): boolean => x - half >= v.x + 1 && x + half <= v.x + v.w - 1;
  const where =
    spots.slice(0, places.length).find(([x, y]) => clear(x, y, 6.4)) ??
    spots.slice(0, places.length).find(([x, y]) => clear(x, y, 4.4)) ??
    spots.find(([x, y]) => within(x) && clear(x, y, 4.4)) ??
    (v.h >= 16 ? spots.find(([, y]) => free(y, 4.4)) : undefined);
  if (where !== undefined && whole) put(name, where[0], where[1], SIZE.name);
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
  const beside = (w: Face, x: number): boolean => ownHalf(w) && [sideY, ...heights].some((y) => put(f.words[w], x, y, SIZE.text)); // prettier-ignore
  beside(v.side.left, v.x + wide(v.side.left));
  beside(v.side.right, v.x + v.w - wide(v.side.right));
  put(f.words[v.side.top], v.x + v.w / 2, v.y + 3.2, SIZE.text);
  put(f.words[v.side.bottom], v.x + v.w / 2, v.y + v.h - 3.2, SIZE.text);
  return out;
}

/** Edge mark outside the reference edge, face mark from it on the reference face, grain along the wood. */
function marks(card: Card, v: Placed, taken: Rect[], caption: number): Item[] {
  const { part } = card;
  const { edge, face } = part.reference;
  const out: Item[] = [];
  const into = ([[v.side.left, 'right'], [v.side.right, 'left'], [v.side.bottom, 'up'], [v.side.top, 'down']] as const).find(([side]) => side === edge)?.[1]; // prettier-ignore
  if (into !== undefined) {
    const lying = into === 'up' || into === 'down';
    const spot = free(v, taken, lying, into, caption);
    // Outside the wood the edge mark alone always has room.
    const k = into === 'up' && v.w * 0.2 < caption ? (v.w / 2 - caption - 2) / v.w : 0.3;
    const bare: readonly [number, number] = lying ? [v.x + v.w * k, into === 'down' ? v.y : v.y + v.h] : [into === 'right' ? v.x : v.x + v.w, v.y + v.h * 0.3]; // prettier-ignore
    if (spot ?? k > 0.05) out.push(...edgeMark(...(spot ? ([spot[0], spot[1]] as const) : bare), into));
    if (spot && face === v.side.face && (lying ? v.h : v.w) >= 11) {
      out.push(...faceMark(spot[0], spot[1], into));
      taken.push(spot[2]);
    }
  }
  if (part.grain !== undefined && (part.grain === across(v.side) || part.grain === upward(v.side))) {
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
      // prettier-ignore
      const [cx, cy] = [v.x + v.w * kx, v.y + v.h * ky];
      const r = box(cx, cy, along ? length + 1 : 3, along ? 3 : length + 1);
      if (length < 6 || !inside(r, v, 0.8) || taken.some((t) => collide(t, r)) || overWork(card, v, r)) continue;
      taken.push(r);
      const [dx, dy] = along ? [length / 2, 0] : [0, length / 2];
      out.push(...grainArrow([cx - dx, cy + dy], [cx + dx, cy - dy]));
      break;
    }
  }
  return out;
}
/** True when a box lies over the wavy lines of a broken view. */
const overBreak = (v: Placed, r: Rect): boolean => {
  if (v.skip?.axis !== across(v.side)) return false;
  const at = v.x + v.skip.from / 1e6 / v.oneTo;
  return collide({ x: at - 1.6, y: v.y, w: v.skip.gap + 3.2, h: v.h }, r);
};
const overWork = (card: Card, v: Placed, r: Rect): boolean =>
  card.part.cuts.some((c) => {
    if (!shows(c, v) || c.shape === 'arris' || c.shape === 'outline' || c.shape === 'plane') return false;
    const [x, y, w, h] = onView(v, spansOf(c, v.frame));
    return h < v.h * 0.9 || w < v.w * 0.9 ? collide({ x: x - 0.5, y: y - 0.5, w: w + 1, h: h + 1 }, r) : false;
  });
/** A point on the reference edge where the mark meets nothing. */
function free(
  v: Placed,
  taken: readonly Rect[],
  lying: boolean,
  into: Heading,
  caption: number,
): readonly [number, number, Rect] | undefined {
  for (const k of [0.3, 0.36, 0.64, 0.2, 0.5, 0.75, 0.12, 0.85, 0.9, 0.95]) {
    const x = lying ? v.x + v.w * k : into === 'right' ? v.x : v.x + v.w;
    const y = lying ? (into === 'down' ? v.y : v.y + v.h) : v.y + v.h * k;
    const r: Rect = lying
      ? { x: x - 9, y: into === 'up' ? y - 10 : y, w: 11, h: 10 }
      : { x: into === 'right' ? x : x - 10, y: y - 9, w: 10, h: 11 };
    const within = lying ? r.x >= v.x && r.x + r.w <= v.x + v.w : r.y >= v.y && r.y + r.h <= v.y + v.h;
    if (!within) continue;
    // Below the view stands its caption: the edge mark keeps beside it.
    if (into === 'up' && Math.abs(x - v.x - v.w / 2) < caption) continue;
    if (!taken.some((t) => collide(t, r))) return [x, y, r];
  }
  return undefined;
}

/** Places of one callout closer than this have one disc, mm on paper. */
const NEIGHBOUR = 6.2;
/** A numbered disc at each place of each cut that shows here; it moves along the cut until it is clear. */
function discs(look: Look, v: Placed, taken: Rect[]): { readonly items: Item[]; readonly missed: boolean } {
  const { faces, card } = look;
  const out: Item[] = [];
  let missed = false;
  const small = card.part.cuts
    .filter((c) => shows(c, v) && c.shape === 'bore')
    .map((c) => onView(v, spansOf(c, v.frame)));
  for (const callout of card.callouts) {
    if (callout.trial) continue;
    const own: (readonly [number, number])[] = [];
    for (const id of callout.cuts) {
      const cut = card.part.cuts.find((c) => c.id === id);
      if (!cut || !shows(cut, v)) continue;
      const r = discPlace(cut, v);
      // What is one act over a stretch of wood has one disc there.
      const at = centreOf(r);
      const near = isPlaced(cut) ? NEIGHBOUR : 14;
      if (own.some((o) => Math.abs(o[0] - at[0]) + Math.abs(o[1] - at[1]) < near)) continue;
      const spot = place(
        r,
        v,
        taken,
        small.filter((s) => s !== r && !sameRect(s, r)),
      );
      if (!spot) {
        missed = true;
        continue;
      }
      const [px, py] = spot;
      own.push(at);
      taken.push(box(px, py, 5.6, 5.6));
      const [cx, cy] = [Math.min(Math.max(px, r[0]), r[0] + r[2]), Math.min(Math.max(py, r[1]), r[1] + r[3])];
      if (Math.abs(cx - px) + Math.abs(cy - py) > 2.5) out.push(...line('N', px, py, cx, cy));
      out.push(...disc(faces, callout.number, px, py));
    }
  }
  return { items: out, missed };
}
type Four = readonly [number, number, number, number];
const sameRect = (a: Four, b: Four): boolean => a.every((x, i) => Math.abs(x - (b[i] as number)) < 1e-6);
const isPlaced = (c: Cut): boolean => c.shape === 'box' || c.shape === 'dovetail' || c.shape === 'bore' || c.shape === 'mark'; // prettier-ignore
/** A clear spot for a disc: on its cut or beside it, else the nearest on the wood; `holes` of other cuts are not covered if that can be. */
function place(
  r: Four,
  v: Placed,
  taken: readonly Rect[],
  holes: readonly Four[],
): readonly [number, number] | undefined {
  const [cx, cy] = centreOf(r);
  const long = r[2] >= r[3];
  const tries: [number, number][] = [];
  // A disc would hide work smaller than itself: it stands beside it.
  const small = (r[2] < 4.6 && r[3] < 4.6) || (Math.min(r[2], r[3]) < 2.6 && Math.max(r[2], r[3]) < 9);
  for (const off of small ? [5, -5, 6.5, -6.5, 0] : [0, 4, -4, 6, -6]) {
    for (const k of [0.5, 0.35, 0.65, 0.22, 0.78, 0.12, 0.88]) {
      tries.push(long ? [r[0] + r[2] * k, cy + off] : [cx + off, r[1] + r[3] * k]);
    }
  }
  const ok = ([x, y]: readonly [number, number]): boolean => {
    const b = box(x, y, 5.4, 5.4);
    return x > v.x - 1 && x < v.x + v.w + 1 && y > v.y - 1 && y < v.y + v.h + 1 && !taken.some((t) => collide(t, b));
  };
  // Wholly on the wood where there is room for it, else over its edge.
  const within = ([x, y]: readonly [number, number]): boolean => inside(box(x, y, 5.2, 5.2), v, 0);
  const clear = ([x, y]: readonly [number, number]): boolean =>
    holes.every(
      ([hx, hy, hw, hh]) => !collide({ x: hx - 0.3, y: hy - 0.3, w: hw + 0.6, h: hh + 0.6 }, box(x, y, 5, 5)),
    );
  // Nor does a leader run under another disc.
  const free = ([x, y]: readonly [number, number]): boolean => {
    const [nx, ny] = [Math.min(Math.max(x, r[0]), r[0] + r[2]), Math.min(Math.max(y, r[1]), r[1] + r[3])];
    return [0.25, 0.5, 0.75, 1].every(
      (k) => !taken.some((t) => collide(t, box(x + (nx - x) * k, y + (ny - y) * k, 0.6, 0.6))),
    );
  };
  const best = (some: readonly [number, number][]): [number, number] | undefined =>
    some.find((t) => within(t) && ok(t) && clear(t) && free(t)) ?? some.find((t) => ok(t) && clear(t) && free(t));
  const near = nearby(v, cx, cy);
  return best(tries) ?? best(near) ?? tries.find(ok) ?? near.find(ok);
}

/** Spots over the wood, the nearest to a point first. */
function nearby(v: Placed, cx: number, cy: number): [number, number][] {
  const out: { at: [number, number]; far: number }[] = [];
  for (let x = v.x + 2.8; x <= v.x + v.w - 2.8; x += 1.4)
    for (let y = v.y + 2.8; y <= v.y + v.h - 2.8; y += 1.4)
      out.push({ at: [x, y], far: Math.abs(x - cx) + Math.abs(y - cy) });
  return out
    .filter((o) => o.far > 4 && o.far < 26)
    .sort((a, b) => a.far - b.far)
    .map((o) => o.at);
}

/** Where the disc of a cut belongs: on the cut; of tails and tenons just inside their base line, so that they stay in sight. */
function discPlace(cut: Cut, v: Placed): readonly [number, number, number, number] {
  const r = onView(v, spansOf(cut, v.frame));
  if ((cut.shape !== 'tails' && cut.shape !== 'tenon') || faceAxis(v.side.face) === faceAxis(cut.end)) return r;
  if (cut.end === v.side.left) return [r[0] + r[2] + 3.2, r[1], 0, r[3]];
  if (cut.end === v.side.right) return [r[0] - 3.2, r[1], 0, r[3]];
  return cut.end === v.side.top ? [r[0], r[1] + r[3] + 3.2, r[2], 0] : [r[0], r[1] - 3.2, r[2], 0];
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
