import { faceAxis, opposite, others } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import { formatLength } from '../../lengths/format.js';
import type { Faces } from '../../type/type.js';
import type { Cut } from '../../words/cut.js';
import { distance } from '../../words/frame.js';
import { arrowhead, line, originCircle, polyline } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Item } from '../picture.js';
import { spread } from '../spread.js';
import { setText, widthOf } from '../text.js';
import { across, isBrokenOut, onView, paperX, paperY, shows, spansOf, upward } from './view.js';
import type { Placed } from './view.js';

/** Distance of the line of running figures from the view, mm (ISO 129-1 running dimensioning; distances our default). */
const OFF = 4.2;

/** Which cuts have their figures along an axis on the second side of a view: pencil lines and what runs along, once joints have the first. */
export function parted(
  cuts: readonly Cut[],
  v: Placed,
  axis: Axis,
  narrowToo = false,
): readonly [readonly Cut[], readonly Cut[]] {
  const seen = cuts.filter((c) => shows(c, v));
  const second = (c: Cut): boolean => (axis === upward(v.side) ? isAside(c) : isAtFoot(c, v));
  const [first, aside] = [seen.filter((c) => !second(c)), seen.filter(second)];
  const has = (some: readonly Cut[]): boolean => stations(some, v, axis, false, false).length > 0;
  if (!has(aside) || !has(first)) return [seen, []];
  // Beside a narrow view there is no room for two columns, and a figure that the first has need not stand in the second.
  const own = new Set(stations(first, v, axis, false, false));
  const other = aside.filter((c) => stations([c], v, axis, false, false).some((x) => !own.has(x)));
  return (v.w < 20 && !narrowToo) || other.length === 0 ? [seen, []] : [first, other];
}
const isAside = (c: Cut): boolean =>
  c.shape === 'mark' || (c.shape === 'box' && (c.as === 'groove' || c.as === 'rabbet' || c.as === 'relief'));
/** Work along the lower side of a view has its figures below it. */
function isAtFoot(c: Cut, v: Placed): boolean {
  const [, y, , h] = onView(v, spansOf(c, v.frame));
  return c.shape === 'box' && c.as === 'relief' && y + h > v.y + v.h - 0.05 && h < v.h * 0.3;
}

/**
 * Coordinates worth a figure along an axis of the view: edges and centres of the cuts that show, and, unless `whole` is false,
 * the far side.
 */
export function stations(cuts: readonly Cut[], v: Placed, axis: Axis, floor = false, whole = true): number[] {
  const [lo, hi] = v.frame.blank[axis];
  const found = new Set<number>();
  for (const cut of cuts) {
    if (!shows(cut, v)) continue;
    // The socket itself has its figure; the words say by how much it is eased.
    if (cut.shape === 'dovetail' && cut.as === 'ease' && cut.taper === axis) continue;
    if (cut.shape === 'dovetail' && cut.taper === axis && cut.as !== 'end-socket') {
      found.add((cut.atFace[0] + cut.atFace[1]) / 2);
      continue;
    }
    if (cut.shape === 'tails' && cut.taper === axis) {
      for (const t of cut.tails) found.add((t.atBase[0] + t.atBase[1]) / 2);
      continue;
    }
    if (cut.shape === 'bore') {
      const s = spansOf(cut, v.frame)[axis];
      if (axis !== faceAxis(cut.face)) found.add((s[0] + s[1]) / 2);
      continue;
    }
    if (cut.shape === 'tenon') {
      if (faceAxis(cut.end) === axis) found.add(cut.shoulder);
      else if (v.side.face === cut.end)
        for (const t of cut.tongues) for (const x of axis === others(faceAxis(cut.end))[0] ? t.a : t.b) found.add(x);
      continue;
    }
    if (cut.shape === 'mark' && axis === cut.axis) continue;
    if (cut.shape === 'dovetail' && cut.as === 'end-socket' && axis === cut.taper && faceAxis(v.side.face) !== cut.run)
      continue;
    if (cut.shape === 'arris' || cut.shape === 'outline' || cut.shape === 'plane') continue;
    const s = cut.shape === 'dovetail' && cut.taper === axis ? (floor ? cut.atFloor : cut.atFace) : spansOf(cut, v.frame)[axis]; // prettier-ignore
    for (const x of s) found.add(x);
  }
  const all = [...found].filter((x) => x > lo && x < hi && !isBrokenOut(v, axis, x));
  const far = opposite(v.frame.datum[axis]);
  return whole ? [...new Set([...all, distance(v.frame, far, lo) === 0 ? lo : hi])] : all;
}

/** Of a row of equal work too close for its figures the first and the last, and the far side: the words give the pitch. */
function sparse(all: readonly number[], v: Placed, datum: Face): readonly number[] {
  if (all.length < 10 || all.length * 5.2 < v.w * 1.3) return all;
  const sorted = [...all].sort((a, b) => distance(v.frame, datum, a) - distance(v.frame, datum, b));
  return [...sorted.slice(0, 2), ...sorted.slice(-3)];
}

/** Running figures above (or below) a view, from the datum of its horizontal axis. Nothing that would not fit is drawn. */
export function figuresAcross(
  faces: Faces,
  v: Placed,
  cuts: readonly Cut[],
  room: readonly [number, number],
  below = false,
  floor = false,
  whole = true,
): Item[] {
  const axis = across(v.side);
  const datum = v.frame.datum[axis];
  const all = sparse(stations(cuts, v, axis, floor, whole), v, datum)
    .map((at) => ({ at, x: paperX(v, at), text: formatLength(distance(v.frame, datum, at), v.frame.units) }))
    .sort((a, b) => a.x - b.x);
  const widths = all.map((s) => widthOf(faces, s.text, SIZE.figure, 'semibold'));
  const options = { gap: 1.6, pitch: 5.2, blocked: [], within: room };
  const wishes = all.map((s, i) => ({ at: s.x, half: (widths[i] as number) / 2 }));
  const kept = fit(all, wishes, options, (s) => distance(v.frame, datum, s.at));
  const y = below ? v.y + v.h + OFF : v.y - OFF;
  const base = below ? y + 6.2 : y - 4.4;
  const edge = below ? v.y + v.h + 1.2 : v.y - 1.2;
  const zero = paperX(v, v.frame.blank[axis][datumLow(v, axis) ? 0 : 1]);
  const far = kept.reduce((x, k) => (Math.abs(k.item.x - zero) > Math.abs(x - zero) ? k.item.x : x), zero);
  const out: Item[] = [...line('N', zero, y, far, y), ...line('N', zero, edge, zero, y)];
  for (const { item, place } of kept) {
    const knee = below ? y + 1 : y - 1;
    out.push(...polyline('N', [[item.x, edge], [item.x, knee], [place, below ? knee + 1 : knee - 1]])); // prettier-ignore
    out.push(...tip([item.x, y], item.x < zero ? [-1, 0] : [1, 0], Math.abs(item.x - zero)));
    out.push(...figure(faces, item.text, place, base, 'middle'));
  }
  return [...out, ...originCircle(zero, y)];
}
const datumLow = (v: Placed, axis: Axis): boolean =>
  v.frame.datum[axis] === (['left', 'front', 'bottom'] as const)[axis];
/** An arrowhead, or a tick where the link is too short for one (our default: 2.6). */
const tip = (at: readonly [number, number], way: readonly [number, number], room: number): Item[] =>
  room >= 2.6 ? arrowhead(at, way) : line('W', at[0] - 0.7, at[1] + 0.7, at[0] + 0.7, at[1] - 0.7);
const figure = (faces: Faces, text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): Item[] => [
  ...setText(faces, text, { x, y, size: SIZE.figure, face: 'semibold', anchor }).items,
];

/** Running figures at the left or right of a view, from the datum of its vertical axis. */
export function figuresUp(
  faces: Faces,
  v: Placed,
  cuts: readonly Cut[],
  room: readonly [number, number],
  atLeft: boolean,
  whole = true,
): Item[] {
  const axis = upward(v.side);
  const datum = v.frame.datum[axis];
  const all = stations(cuts, v, axis, false, whole)
    .map((at) => ({ at, y: paperY(v, at), text: formatLength(distance(v.frame, datum, at), v.frame.units) }))
    .sort((a, b) => a.y - b.y);
  const wishes = all.map((s) => ({ at: s.y, half: s.text.includes('/') ? 2.6 : 1.6 }));
  const kept = fit(all, wishes, { gap: 0.3, pitch: 5.2, blocked: [], within: room }, (s) =>
    distance(v.frame, datum, s.at),
  );
  const side = atLeft ? -1 : 1;
  const edge = atLeft ? v.x - 1.2 : v.x + v.w + 1.2;
  const x = atLeft ? v.x - OFF : v.x + v.w + OFF;
  const zero = paperY(v, v.frame.blank[axis][datumLow(v, axis) ? 0 : 1]);
  const far = kept.reduce((y, k) => (Math.abs(k.item.y - zero) > Math.abs(y - zero) ? k.item.y : y), zero);
  const out: Item[] = [...line('N', x, zero, x, far), ...line('N', edge, zero, x, zero)];
  for (const { item, place } of kept) {
    out.push(...polyline('N', [[edge, item.y], [x + side, item.y], [x + side * 2, place]])); // prettier-ignore
    out.push(...tip([x, item.y], [0, item.y < zero ? -1 : 1], Math.abs(item.y - zero)));
    out.push(...figure(faces, item.text, x + side * 2.5, place + 1.23, atLeft ? 'end' : 'start'));
  }
  return [...out, ...originCircle(x, zero)];
}
/** Spreads figures; where they are too many the ones nearest the last dropped first, the overall size never. */
function fit<T>(
  all: readonly T[],
  wishes: readonly { at: number; half: number }[],
  options: Parameters<typeof spread>[1],
  order: (t: T) => number,
): { item: T; place: number }[] {
  let keep = all.map((item, i) => ({ item, wish: wishes[i] as { at: number; half: number } }));
  while (keep.length > 0) {
    const places = spread(
      keep.map((k) => k.wish),
      options,
    );
    if (places) return keep.map((k, i) => ({ item: k.item, place: places[i] as number }));
    const overall = [...keep].sort((a, b) => order(b.item) - order(a.item))[0];
    const crowded = keep
      .filter((k) => k !== overall || keep.length === 1)
      .map((k) => ({
        k,
        room: Math.min(...keep.filter((o) => o !== k).map((o) => Math.abs(o.wish.at - k.wish.at)), 1e9),
      }))
      .sort((a, b) => a.room - b.room || order(a.k.item) - order(b.k.item))[0];
    keep = keep.filter((k) => k !== crowded?.k);
  }
  return [];
}
