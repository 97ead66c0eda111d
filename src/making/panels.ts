import { faceAxis, faceOf, faceSign, type Face } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { inches, mm, nm, NM_PER_IN, snap, type Length } from '../lengths/length.js';
import type { Part, Piece } from '../piece/piece.js';
import { caulsFor, clampsFor, openingFor, spacedOver, withOpening } from '../shop/clamps.js';
import type { Rough, Sizes } from '../shop/rough.js';
import { rowsOf } from './parts.js';
import { plainName, type Blank } from './rough.js';
import { blankBox, overlap, zonesOf } from './zones.js';

/** A stretch of a joint, nm from the marked end of the glued blank. */
export type Stretch = readonly [from: number, to: number];
/** One glue line, between two staves. */
export interface StaveJoint {
  /** Letters of its staves, the one nearer to the reference edge first. */
  readonly staves: readonly [string, string];
  /** From the edge of the blank at stave a, nm. */
  readonly at: Length;
  /** Middles of the aligners from the marked end, and where none may be. */
  readonly aligners: readonly Length[];
  readonly keepOut: readonly Stretch[];
}
export interface Panel {
  /** Parts that are made alike; the first is drawn. */
  readonly parts: readonly Part[];
  readonly part: Part;
  /** What they are, without left and right. */
  readonly name: string;
  readonly finished: Sizes;
  readonly rough: Rough;
  readonly letters: readonly string[];
  /** The face that is seen and marked; where stave a lies; the end that figures are taken from; where the triangle points. */
  readonly face: Face;
  readonly edge: Face;
  readonly end: Face;
  readonly toward: Face;
  readonly joints: readonly StaveJoint[];
  /** No. 20 biscuits, one row or two; none in wood too thin for them. */
  readonly rows: 0 | 1 | 2;
  readonly clamps: {
    readonly count: number;
    /** From the marked end of the blank. */
    readonly at: readonly Length[];
    readonly cauls: number;
    readonly opening: number;
    /** How many of the shop's open so far, where they are known. */
    readonly has?: number;
  };
  /** Glued in parts that pass the planer, each its letters and width; the joints between them are made last. */
  readonly halves?: { readonly groups: readonly (readonly string[])[]; readonly widths: readonly number[] };
  /** The planer's width, where it is known: it passes whole when it is as wide. */
  readonly planer?: number;
  readonly glue: Glue;
}
export interface Glue {
  /** Millilitres, from a thin film to a thick one with half as much again lost. */
  readonly ml: readonly [number, number];
  /** To spread and clamp, seconds, and how long is allowed; how many glue-ups keep to that. */
  readonly seconds: number;
  readonly limit: number;
  readonly goes: number;
}

/** Every panel that is glued up from staves, alike ones once. */
export function panels(piece: Piece, all: readonly Blank[]): Panel[] {
  const blanks = new Map(all.map((b) => [b.part.id, b]));
  return rowsOf(piece).flatMap((parts): Panel[] => {
    const blank = blanks.get(parts[0]?.id ?? '');
    return blank && blank.rough.staves > 1 ? [panelOf(piece, parts, blank)] : [];
  });
}

function panelOf(piece: Piece, parts: readonly Part[], { part, finished, rough }: Blank): Panel {
  const letters = Array.from({ length: rough.staves }, (_, k) => letterOf(k));
  const face = part.show.find((f) => faceAxis(f) === part.thickness) ?? seen(part);
  const edge = faceAxis(part.reference.edge) === part.width ? part.reference.edge : faceOf(part.width, -1);
  const end = faceAxis(part.reference.end) === part.length ? part.reference.end : faceOf(part.length, -1);
  const rows = rowsFor(finished[0]);
  const at = { piece, part, finished, rough, letters, edge, end, rows };
  const halves = halvesOf(piece, rough, letters);
  return {
    parts,
    part,
    name: plainName(part.name),
    finished,
    rough,
    letters,
    face,
    edge,
    end,
    toward: part.length === 2 ? 'top' : part.width === 2 ? 'top' : edge,
    joints: letters.slice(1).map((_, k) => jointOf(at, k + 1)),
    rows,
    clamps: clampsOf(piece, rough),
    ...(halves ? { halves } : {}),
    ...(piece.profile?.machines.planer ? { planer: piece.profile.machines.planer.width } : {}),
    glue: glueOf(finished[0], rough, clampsFor(rough.length, rough.jointed)),
  };
}
const letterOf = (k: number): string => (k < 26 ? String.fromCharCode(97 + k) : `z${k - 25}`);
/** The reference face where it is a broad one, else the one at the high end. */
const seen = (p: Part): Face =>
  faceAxis(p.reference.face) === p.thickness ? p.reference.face : faceOf(p.thickness, 1);

// ---- aligners -----------------------------------------------------------------------------------------------------------------

/** A No. 20 biscuit, 56 x 23 x 4 mm (a maker's table); wood over its slot at least 3/16 in, two rows above 1 in: common practice. */
const BISCUIT = { long: mm(56), wide: mm(23), thick: mm(4) } as const;
const OVER = inches(3 / 16);
const TWO_ROWS = inches(1);
/** The first so far from the finished end, then so far apart at most: common practice. Clear of later cuts by half a biscuit and this: our default. */
const FIRST = inches(2.5);
const PITCH = inches(8);
const CLEAR = inches(1 / 2);
const rowsFor = (thick: number): 0 | 1 | 2 =>
  thick < BISCUIT.thick + 2 * OVER ? 0 : thick > TWO_ROWS && thick >= 3 * OVER + 2 * BISCUIT.thick ? 2 : 1;

interface At {
  readonly piece: Piece;
  readonly part: Part;
  readonly finished: Sizes;
  readonly rough: Rough;
  readonly letters: readonly string[];
  readonly edge: Face;
  readonly end: Face;
  readonly rows: 0 | 1 | 2;
}
/** The glue line before stave `k`. */
function jointOf(at: At, k: number): StaveJoint {
  const { part, finished, rough, letters, edge, rows } = at;
  const from = nm(k * rough.jointed);
  const trim = (rough.width - finished[1]) / 2;
  const box = blankBox(part);
  const [low, high] = box[part.width];
  const across = faceSign(edge) < 0 ? low - trim + from : high + trim - from;
  const keepOut = rows === 0 ? [] : merged(keepOuts(at, across));
  return {
    staves: [letters[k - 1] ?? '', letters[k] ?? ''],
    at: from,
    keepOut,
    aligners: rows === 0 ? [] : placesOf(at, keepOut),
  };
}
/** What later cuts, and the trimmed ends, forbid along a glue line at `across` (own axis of width). */
function keepOuts({ part, finished, rough, end }: At, across: number): Stretch[] {
  const box = blankBox(part);
  const half = BISCUIT.wide / 2 + OVER;
  const band = { axis: part.width, span: [across - half, across + half] as Span };
  const [t0, t1] = box[part.thickness];
  const thick: Span = [t0 + OVER / 2, t1 - OVER / 2];
  const [l0, l1] = box[part.length];
  const over = (rough.length - finished[2]) / 2;
  const from = (u: number): number => (faceSign(end) < 0 ? u - l0 : l1 - u) + over;
  const zones = part.cuts.flatMap((c) => zonesOf(c, part, band));
  const cuts = zones
    .filter((z) => overlap(z[part.width], band.span) && overlap(z[part.thickness], thick))
    .map((z): Stretch => {
      const [a, b] = [from(z[part.length][0]), from(z[part.length][1])];
      return grown([Math.min(a, b), Math.max(a, b)]);
    });
  return [grown([0, over]), ...cuts, grown([rough.length - over, rough.length])].map(([a, b]): Stretch => [
    Math.max(0, a),
    Math.min(rough.length, b),
  ]);
}
const grown = ([a, b]: Stretch): Stretch => [a - BISCUIT.long / 2 - CLEAR, b + BISCUIT.long / 2 + CLEAR];
function merged(stretches: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const s of [...stretches].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    const last = out.at(-1);
    if (last && s[0] <= last[1]) out[out.length - 1] = [last[0], Math.max(last[1], s[1])];
    else out.push(s);
  }
  return out;
}
/** Evenly from end to end; each moved to the nearest place that is free, left out where that is half a pitch away or near another. */
function placesOf({ piece, finished, rough }: At, keepOut: readonly Stretch[]): Length[] {
  const step = piece.units === 'in' ? inches(1 / 4) : mm(5);
  const over = (rough.length - finished[2]) / 2;
  const [first, last] = [over + FIRST, rough.length - over - FIRST];
  if (last < first) return keepOut.length > 0 ? single(rough.length / 2, keepOut, step) : [];
  const count = Math.max(2, Math.ceil((last - first) / PITCH - 1e-9) + 1);
  const pitch = (last - first) / (count - 1);
  const out: Length[] = [];
  for (let i = 0; i < count; i++) {
    const place = free(first + i * pitch, keepOut, step, rough.length);
    const apart = out.at(-1) ?? -Infinity;
    if (Math.abs(place - first - i * pitch) <= pitch / 2 && place - apart >= BISCUIT.long + CLEAR) out.push(place);
  }
  return out;
}
const single = (middle: number, keepOut: readonly Stretch[], step: number): Length[] => {
  const place = snap(middle, step);
  return keepOut.some(([a, b]) => place > a && place < b) ? [] : [place];
};
/** The nearest multiple of `step` outside all stretches and inside the blank; far off where there is none. */
function free(wanted: number, keepOut: readonly Stretch[], step: number, long: number): Length {
  const good = (v: number): boolean => v > 0 && v < long && !keepOut.some(([a, b]) => v > a && v < b);
  const start = snap(wanted, step);
  for (let k = 0; k * step < long; k++) {
    if (good(start - k * step)) return nm(start - k * step);
    if (good(start + k * step)) return nm(start + k * step);
  }
  return nm(-long);
}

// ---- clamps, planer, glue -----------------------------------------------------------------------------------------------------

function clampsOf(piece: Piece, rough: Rough): Panel['clamps'] {
  const step = piece.units === 'in' ? inches(1 / 2) : mm(10);
  const count = clampsFor(rough.length, rough.jointed);
  const opening = openingFor(rough.width);
  const clamps = piece.profile?.clamps ?? [];
  return {
    count,
    at: spacedOver(rough.length, count, step),
    cauls: caulsFor(rough.length, rough.width),
    opening,
    ...(clamps.length > 0 ? { has: withOpening(clamps, opening) } : {}),
  };
}
/** A panel wider than this that no planer is known for is told in halves too: common practice. */
const WIDE = inches(12);
/** Parts of a panel that pass the planer, as even as staves allow; nothing where it passes whole or one stave does not. */
function halvesOf(piece: Piece, rough: Rough, letters: readonly string[]): Panel['halves'] | undefined {
  const planer = piece.profile?.machines.planer?.width;
  const limit = planer ?? (rough.width > WIDE ? rough.width / 2 + rough.jointed / 2 : Infinity);
  const fit = Math.floor(limit / rough.jointed + 1e-9);
  if (rough.width <= limit || fit < 1) return undefined;
  const parts = Math.ceil(letters.length / fit);
  const groups = Array.from({ length: parts }, (_, g) =>
    letters.slice(Math.round((g * letters.length) / parts), Math.round(((g + 1) * letters.length) / parts)),
  );
  return { groups, widths: groups.map((g) => g.length * rough.jointed) };
}

/** A film of 6 to 8 mil takes 14 to 19 ml a square foot (231 cubic inches to the gallon); half as much again runs out. */
const FILM = [14, 19] as const;
const LOST = 1.5;
/** Spreading 15 s a foot of joint, setting a clamp 20 s; 70 % of the 8 minutes that yellow glue stays open: our default. */
const SPREAD = 15;
const CLAMP = 20;
export const OPEN_LIMIT = 0.7 * 8 * 60;

/** Glue and time for all joints of a panel `thick` when it is jointed (its first thickness is glued), as one go. */
export function glueOf(thick: number, rough: Pick<Rough, 'length' | 'staves' | 'thickness'>, clamps: number): Glue {
  const joints = rough.staves - 1;
  const feet = rough.length / NM_PER_IN / 12;
  const area = joints * feet * (Math.max(thick, rough.thickness) / NM_PER_IN / 12);
  const seconds = joints * feet * SPREAD + clamps * CLAMP;
  // In several goes every one of them sets all the clamps again.
  const spread = Math.max(1, OPEN_LIMIT - clamps * CLAMP);
  const goes = seconds <= OPEN_LIMIT ? 1 : Math.min(joints, Math.ceil((joints * feet * SPREAD) / spread));
  return { ml: [FILM[0] * area, FILM[1] * area * LOST], seconds, limit: OPEN_LIMIT, goes };
}
