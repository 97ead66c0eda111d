import { faceAxis, opposite } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import type { Cut } from '../../words/cut.js';
import { called, distance, isFull } from '../../words/frame.js';
import { SCALES } from '../marks.js';
import type { Item } from '../picture.js';
import { arrange, drawTree } from './arrange.js';
import type { Block } from './arrange.js';
import { stations } from './figures.js';
import { paneAt } from './panel.js';
import type { Look, Pane, Zone } from './panel.js';
import { across, onView, placeView, shows, sideOf, spansOf, upward } from './view.js';
import type { Placed, Skip } from './view.js';
import { facesOf } from './words.js';
import type { Card } from './words.js';

const sizeAlong = (card: Card, a: Axis): number => card.frame.blank[a][1] - card.frame.blank[a][0];
/** Wood kept beside the work where a view is broken, mm on paper (our default). */
const BESIDE_WORK = 9;
const GAP = 5;

/** The long sides worth a view: those that cuts are made from, the reference face first; that one alone where there are none. */
export function viewFaces(card: Card, most: number): Face[] {
  const { face, edge } = card.part.reference;
  const third = ([0, 1, 2] as const).find(
    (a) => a !== faceAxis(face) && a !== faceAxis(edge) && a !== card.part.length,
  );
  const sides = [face, opposite(face), edge, opposite(edge)].filter((f) => faceAxis(f) !== card.part.length);
  const count = (f: Face): number =>
    card.part.cuts.filter((c) => c.shape !== 'arris' && c.shape !== 'plane' && c.shape !== 'arc' && c.shape !== 'outline' && !endOnly(c) && 'face' in c && c.face === f).length; // prettier-ignore
  const whole = card.part.cuts.some((c) => c.shape === 'tails' || c.shape === 'tenon' || c.shape === 'outline');
  const busy = sides.filter((f) => count(f) > 0);
  // What is cut through the thickness shows its shape only on a face.
  const { thickness } = card.part;
  const through = card.part.cuts.some((c) => c.shape === 'box' && faceAxis(c.face) !== thickness && isFull(card.frame, thickness, c.at[thickness])); // prettier-ignore
  const unseen = through && faceAxis(face) === thickness && !busy.some((f) => faceAxis(f) === thickness);
  const chosen =
    busy.length === 0 || unseen || (whole && third !== undefined && !busy.includes(face)) ? [face, ...busy] : busy;
  const kept = chosen.length > most ? [...chosen].sort((a, b) => count(b) - count(a)).slice(0, most) : chosen;
  return sides.filter((f) => kept.includes(f));
}
const endOnly = (c: Cut): boolean => c.shape === 'tails' || c.shape === 'tenon';

/** The end that the joints are in, if any is: the one with the most, first the reference end. */
export function endFace(card: Card): Face | undefined {
  const { end } = card.part.reference;
  const worth = (face: Face): number =>
    card.part.cuts.reduce((n, c) => {
      if (c.shape === 'mark' || c.shape === 'arris' || c.shape === 'taper' || !facesOf(c, card.frame).includes(face)) return n; // prettier-ignore
      return n + (endOnly(c) || (c.shape === 'dovetail' && c.as === 'end-socket') ? 10 : 1);
    }, 0);
  const best = worth(opposite(end)) > worth(end) ? opposite(end) : end;
  return worth(best) > 0 ? best : undefined;
}
/** An end lies with its longer side along the sheet, the reference face toward the view below it. */
function endTop(card: Card, end: Face): Face | undefined {
  const plain = sideOf(end);
  const { face } = card.part.reference;
  // Sockets open to the end lie mouth down: the two rows of figures run along the way they narrow.
  const socket = card.part.cuts.find((c) => c.shape === 'dovetail' && c.as === 'end-socket' && facesOf(c, card.frame).includes(end)); // prettier-ignore
  if (socket?.shape === 'dovetail') return opposite(socket.face);
  if (sizeAlong(card, across(plain)) >= sizeAlong(card, upward(plain)))
    return faceAxis(face) === upward(plain) ? opposite(face) : undefined;
  return faceAxis(face) === across(plain) ? opposite(face) : plain.right;
}
/** The end's own view, or, of tails, the face beside it with all but the joint broken off. */
function endPane(card: Card): Pane | undefined {
  const end = endFace(card);
  if (!end) return undefined;
  const f = card.frame;
  const tails = card.part.cuts.find((c) => c.shape === 'tails' && c.end === end);
  if (tails?.shape === 'tails') {
    const normal = (3 - faceAxis(end) - tails.taper) as Axis;
    const { face, edge } = card.part.reference;
    const seen = [face, edge].find((x) => faceAxis(x) === normal);
    if (seen) {
      const side = sideOf(seen);
      const axis = faceAxis(end);
      const deep = Math.abs(tails.base - f.blank[axis][end === 'left' || end === 'front' || end === 'bottom' ? 0 : 1]);
      const whole = sizeAlong(card, axis);
      const low = end === side.left || end === side.top;
      const skips = (oneTo: number): Skip[] => {
        const keep = deep + BESIDE_WORK * oneTo * 1e6;
        if (keep > whole * 0.7) return [];
        return [low ? { axis, from: keep, to: whole, gap: 0 } : { axis, from: 0, to: whole - keep, gap: 0 }];
      };
      return { face: seen, kind: 'detail', caption: `${called(f, seen)} at ${called(f, end)}`, skips };
    }
  }
  const top = endTop(card, end);
  const plain: Pane = { face: end, kind: 'end', caption: called(f, end) };
  return top ? { ...plain, top } : plain;
}
/** The widest stretch of an end without work, to break out; undefined where it is not worth it. */
function idle(card: Card, pane: Pane, oneTo: number): Skip | undefined {
  const side = sideOf(pane.face, pane.top);
  const v = placeView(side, card.frame, 0, 0, 1);
  const busy = card.part.cuts
    .filter((c) => shows(c, v))
    .map((c) => onView(v, spansOf(c, card.frame)))
    .filter((r) => r[2] < v.w * 0.6)
    .map((r) => [r[0], r[0] + r[2]] as const)
    .sort((a, b) => a[0] - b[0]);
  if (busy.length === 0) return undefined;
  let [at, best] = [0, [0, 0] as readonly [number, number]];
  for (const [lo, hi] of [...busy, [v.w, v.w] as const]) {
    if (lo - at > best[1] - best[0]) best = [at, lo];
    at = Math.max(at, hi);
  }
  const from = best[0] + BESIDE_WORK * oneTo;
  const to = best[1] - BESIDE_WORK * oneTo;
  if (to - from < 2 * GAP * oneTo) return undefined;
  return { axis: across(side), from: Math.round(from * 1e6), to: Math.round(to * 1e6), gap: GAP };
}

/** Wood kept beside the work where a long side is broken, mm on paper, and how many stretches are broken out (our default). */
const BESIDE_FACE = 9;
const MOST_BREAKS = 4;
/** Work that may run through a break: it goes straight on. */
const goesOn = (c: Cut): boolean => c.shape === 'box' || c.shape === 'dovetail' || c.shape === 'mark';
/** The idle stretches along a part from its reference end, to break out of all its sides alike; none where that gains little. */
function idleAlong(card: Card, panes: readonly Pane[], oneTo: number): readonly Skip[] {
  const axis = card.part.length;
  const [lo, hi] = card.frame.blank[axis];
  if (card.part.cuts.some((c) => c.shape === 'arc' || c.shape === 'outline')) return [];
  const from = card.frame.datum[axis];
  const seen = card.part.cuts.filter((c) => panes.some((p) => shows(c, placeView(sideOf(p.face, p.top), card.frame, 0, 0, oneTo)))); // prettier-ignore
  const busy = seen.flatMap((c): (readonly [number, number])[] => {
    if (c.shape === 'arris' || c.shape === 'plane') return [];
    const span = spansOf(c, card.frame)[axis];
    const ends = [span[0], span[1]].map((x) => distance(card.frame, from, Math.min(hi, Math.max(lo, x))));
    const [a, b] = [Math.min(...ends), Math.max(...ends)];
    return goesOn(c) && b - a > (hi - lo) * 0.3 ? [[a, a], [b, b]] : [[a, b]]; // prettier-ignore
  });
  const beside = BESIDE_FACE * oneTo * 1e6;
  const found: Skip[] = [];
  let at = 0;
  for (const [a, b] of [...busy, [hi - lo, hi - lo] as const].sort((p, q) => p[0] - q[0])) {
    const [begin, end] = [Math.round(at + beside), Math.round(a - beside)];
    if (end - begin > 2 * GAP * oneTo * 1e6) found.push({ axis, from: begin, to: end, gap: GAP });
    at = Math.max(at, b);
  }
  const widest = [...found].sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, MOST_BREAKS);
  return found.filter((k) => widest.includes(k));
}

/** A side of a long lying part lies along the sheet, its ends where the first view has them. */
function layingTop(card: Card, face: Face, first: Face): { top?: Face } {
  const plain = sideOf(face);
  const { length } = card.part;
  if (length === 2 || across(plain) === length || sizeAlong(card, length) < 1.3 * sizeAlong(card, across(plain))) return {}; // prettier-ignore
  const tops = [plain.left, plain.right];
  return { top: tops.find((t) => sideOf(face, t).right === sideOf(first).right) ?? plain.right };
}

/** Of the side turned over, no figures along it again where the first view has them all. */
function repeats(card: Card, first: Face): { readonly acrossSaid?: true } {
  const [a, b] = [sideOf(first), sideOf(opposite(first))].map((s) => placeView(s, card.frame, 0, 0, 1)) as [
    Placed,
    Placed,
  ];
  if (across(a.side) !== across(b.side)) return {};
  const said = stations(card.part.cuts, a, across(a.side));
  return stations(card.part.cuts, b, across(b.side)).every((x) => said.includes(x)) ? { acrossSaid: true } : {};
}

/** How much a doubling of each view is worth, and what a broken view or a block left out costs (our default). */
const WORTH = { face: 2, end: 1.2, broken: 0.25, side: 0.4, parted: 0.9 };
/** A long side that is broken need not be larger than 1 : this, and is so many times as long as wide (our default). */
const LARGE = 4;
const SLENDER = 5;

/** The views of a card in its field, at the largest scales that fit; `beside`: a block that goes with them if there is room. */
export function views(
  look: Look,
  field: Zone,
  most: number,
  beside: readonly Block[],
  mirrored: boolean,
): { readonly cost: number; items(): Item[] } {
  const { card } = look;
  const faces = viewFaces(card, most);
  const end = endPane(card);
  let best: { cost: number; tree: NonNullable<ReturnType<typeof arrange>> } | undefined;
  for (let n = faces.length; n >= 1 && !best; n -= 1) {
    const turned = faces.slice(0, n).includes(opposite(faces[0] as Face));
    const shown = faces.slice(0, n).map((face, i): Pane => ({
      face,
      ...layingTop(card, face, faces[0] as Face),
      kind: 'face',
      caption: called(card.frame, face),
      ...(i === 0 && turned ? { captionNext: true } : {}),
      ...(n > 1 && face === opposite(faces[0] as Face) ? { turned: true, ...repeats(card, faces[0] as Face) } : {}),
    }));
    for (const withEnd of end ? [true, false] : [false]) {
      const panes = withEnd ? shown.map((p): Pane => ({ ...p, endShown: true })) : shown;
      for (const { cost, blocks } of combinations(look, panes, withEnd ? end : undefined)) {
        for (const side of [...beside, undefined]) {
          const total = cost + (side || beside.length === 0 ? 0 : WORTH.side);
          if (best && best.cost <= total) continue;
          const tree = arrange(side ? [...blocks, side] : blocks, field);
          if (tree) best = { cost: total, tree };
        }
      }
      if (best) break;
    }
  }
  const { cost, tree } = best ?? { cost: Infinity, tree: undefined };
  return { cost, items: () => (tree ? drawTree(tree, field, mirrored) : []) };
}
/** All scales of the faces with all scales of the end, whole or broken; an end is never smaller than the faces. */
function* combinations(
  look: Look,
  faces: readonly Pane[],
  end: Pane | undefined,
): Generator<{ cost: number; blocks: Block[] }> {
  const scales = SCALES.filter((n) => n <= 64);
  for (const { n, cost, blocks } of sidesAt(look, faces, scales)) {
    if (!end) {
      yield { cost, blocks };
      continue;
    }
    for (const m of scales) {
      if (m > n) break;
      const less = cost + WORTH.end * Math.log2(Math.max(2, m)) + 0.1 * Math.log2(m);
      yield { cost: less, blocks: [paneAt(look, end, m), ...blocks] };
      yield { cost: less + 0.05, blocks: [...blocks, paneAt(look, end, m)] };
      const skip = end.kind === 'end' ? idle(look.card, end, m) : undefined;
      if (!skip) continue;
      const broken = paneAt(look, { ...end, skips: () => [skip] }, m);
      yield { cost: less + WORTH.broken, blocks: [broken, ...blocks] };
    }
  }
}
/** The long sides at all scales, whole, and broken where that makes them larger. */
function* sidesAt(
  look: Look,
  faces: readonly Pane[],
  scales: readonly number[],
): Generator<{ n: number; cost: number; blocks: Block[] }> {
  for (const n of scales) {
    yield { n, cost: WORTH.face * Math.log2(n), blocks: faces.map((p) => paneAt(look, p, n)) };
    // A side and the same turned over are broken alike.
    const skips = faces.map((p) => (n < LARGE || !isSlender(look.card, p) ? [] : idleAlong(look.card, faces.filter((o) => faceAxis(o.face) === faceAxis(p.face)), n))); // prettier-ignore
    if (skips.every((k) => k.length === 0)) continue;
    const blocks = faces.map((p, i) => paneAt(look, { ...p, skips: () => skipsOf(look.card, p, skips[i] ?? []) }, n));
    const most = Math.max(...skips.map((k) => k.length));
    yield { n, cost: WORTH.face * Math.log2(n) + WORTH.parted + WORTH.parted * 0.1 * most, blocks };
  }
}
function isSlender(card: Card, pane: Pane): boolean {
  const side = sideOf(pane.face, pane.top);
  const sizes = [across(side), upward(side)].map((a) => sizeAlong(card, a));
  return Math.max(...sizes) >= SLENDER * Math.min(...sizes);
}
/** Breaks as they lie on a side, from its left or upper end. */
function skipsOf(card: Card, pane: Pane, skips: readonly Skip[]): readonly Skip[] {
  const side = sideOf(pane.face, pane.top);
  const { length } = card.part;
  if ((across(side) === length ? side.left : side.top) === card.frame.datum[length]) return skips;
  const whole = sizeAlong(card, length);
  return skips.map((k): Skip => ({ ...k, from: whole - k.to, to: whole - k.from })).reverse();
}
