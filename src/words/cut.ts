import type { Axis, Face } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import type { Outline } from '../geom/recipe.js';

/**
 * A cut is data: what is taken from a part's blank, in the part's own axes, nm, origin at the left-front-bottom corner of
 * its *shoulder* box. Joints, shapes and holes make cuts; `solids` turns them into recipes, `words` prints and parses them,
 * `proof` rebuilds the part from the parsed words by code of its own. A blank is the shoulder box plus growth.
 */
export interface CutCommon {
  /** Unique in its part, stable: `rails.1`, `shape.0`. */
  readonly id: string;
  /** The joint, shape or hole that made it (its id in the definition). */
  readonly from: string;
  /** Parts that go in or on, ids. */
  readonly mates: readonly string[];
  readonly glue?: Glue;
  /** Making order within a part: 1 runs along (groove, rabbet, dado), 2 ends and sockets, 3 fasteners, 4 shaping, 5 marks. */
  readonly rank: 1 | 2 | 3 | 4 | 5;
  /** Taken from the mate; printed figures are for checking. */
  readonly scribe?: boolean;
  /** Cut a trial in an offcut first; the words say what proves it. */
  readonly trial?: string;
  /** Further plain words, printed after the figures; must hold no figure that the rebuild needs. */
  readonly notes?: readonly string[];
}
/** Where glue goes. `where` and `not` are plain words, e.g. `first 2 behind the stop`. No glue at all: `where` empty. */
export interface Glue {
  readonly where: string;
  readonly not?: string;
}

/** A box taken out from `face`. `as` chooses the trade's word and so the figures that are printed. */
export interface BoxCut extends CutCommon {
  readonly shape: 'box';
  readonly as: 'mortise' | 'dado' | 'groove' | 'rabbet' | 'slot' | 'notch' | 'relief';
  readonly face: Face;
  readonly at: Box3;
  /** Sides moved along themselves: a mortise for a part that leans. */
  readonly slants?: readonly Slant[];
}
/** The side `of` of a box moved `by` (nm, above nothing) toward a neighbour; the side across from it stays. */
export interface Slant {
  readonly of: Face;
  readonly toward: Face;
  readonly by: number;
}
/** A trapezoid section pushed along `run`, sunk from `face` over `depth`; `taper` is the axis along which it narrows. */
export interface DovetailCut extends CutCommon {
  readonly shape: 'dovetail';
  /** `socket`: across a face. `end-socket`: open to an end. `ease`: a socket passed again, shifted. */
  readonly as: 'socket' | 'end-socket' | 'ease';
  readonly face: Face;
  readonly run: Axis;
  readonly taper: Axis;
  readonly runSpan: Span;
  readonly atFace: Span;
  readonly atFloor: Span;
  readonly depth: number;
  /** Cutter: width across its end, nm, and side angle, degrees. */
  readonly bit?: { readonly width: number; readonly angle: number };
}
/** All beyond the base line at `end` goes, but for the tails. `keep`: their extent along the third axis. */
export interface TailsCut extends CutCommon {
  readonly shape: 'tails';
  readonly as: 'tails' | 'tail';
  readonly end: Face;
  /** Coordinate of the base line along the end's axis. */
  readonly base: number;
  readonly taper: Axis;
  readonly tails: readonly { readonly atBase: Span; readonly atEnd: Span }[];
  readonly keep: Span;
  readonly bit?: { readonly width: number; readonly angle: number };
  /** Distance between neighbours when they stand on a jig's pitch. */
  readonly pitch?: number;
}
/** All beyond the shoulder at `end` goes, but for the tongues (boxes that start at the shoulder). */
export interface TenonCut extends CutCommon {
  readonly shape: 'tenon';
  readonly as: 'tenon' | 'tongue';
  readonly end: Face;
  readonly shoulder: number;
  /** `a`, `b`: spans along the two other axes in rising order. `length` from the shoulder. A haunch is a shorter tongue. */
  readonly tongues: readonly {
    readonly a: Span;
    readonly b: Span;
    readonly length: number;
    readonly haunch?: boolean;
  }[];
  /**
   * The shoulder lies aslant: unit normal of its plane, out of the wood; `shoulder` is then its place along the part's middle
   * line, and the tongues, which run on straight, are as long from there.
   */
  readonly slope?: Vec3;
  /** Tongues' ends are mitred, haunches stay square: full length at `long`'s side, shorter by the tongue's size along that axis at the other. */
  readonly mitre?: { readonly long: Face };
}
/** Straight from nothing at `begin` (coordinate along the end's axis) to `off` taken from `face` at `end`. */
export interface TaperCut extends CutCommon {
  readonly shape: 'taper';
  readonly as: 'taper';
  readonly face: Face;
  readonly end: Face;
  readonly begin: number;
  readonly off: number;
}
/** A circular arc cut into the edge `face` over `over` (along `along`), highest in the middle by `rise`. Square through. */
export interface ArcCut extends CutCommon {
  readonly shape: 'arc';
  readonly as: 'arc';
  readonly face: Face;
  readonly along: Axis;
  readonly over: Span;
  readonly rise: number;
}
/** A round hole square to `face` (or tilted), its mouth centred at `at` (coordinates on the face's two axes, rising order). */
export interface BoreCut extends CutCommon {
  readonly shape: 'bore';
  readonly as: 'hole' | 'pilot' | 'slotted' | 'counterbore' | 'pocket';
  readonly face: Face;
  readonly at: readonly [number, number];
  readonly diameter: number;
  /** From the face; `through` when it comes out at the other side. */
  readonly depth: number | 'through';
  /** Slot: total length of the hole along an axis of the face. */
  readonly slot?: { readonly axis: Axis; readonly length: number };
  /** Counterbore or countersunk seat from the face. */
  readonly seat?: { readonly diameter: number; readonly depth: number };
  /** Leans toward `toward` (a face word) by `degrees` from square. */
  readonly tilt?: { readonly toward: Face; readonly degrees: number };
}
/** Taken off the arris between two faces, `size` from each, over `over` along the arris. */
export interface ArrisCut extends CutCommon {
  readonly shape: 'arris';
  readonly as: 'chamfer' | 'round-over' | 'cove';
  readonly faces: readonly [Face, Face];
  readonly size: number;
  readonly over: Span;
}
/** All outside `keep` (outline in the plane of `face`, its axes in rising order) goes, square through. */
export interface OutlineCut extends CutCommon {
  readonly shape: 'outline';
  readonly as: 'outline';
  readonly face: Face;
  readonly keep: Outline;
}
/** All on the side of the plane that `normal` points to goes (`within` limits it). */
export interface PlaneCut extends CutCommon {
  readonly shape: 'plane';
  readonly as: 'bevel' | 'flat';
  readonly point: Vec3;
  readonly normal: Vec3;
  readonly within?: Box3;
}
/** Pencil only: lines along `axis` over `over` on `face`, at the given coordinates of the face's other axis. */
export interface MarkCut extends CutCommon {
  readonly shape: 'mark';
  readonly as: 'slide-line' | 'line';
  readonly face: Face;
  readonly axis: Axis;
  readonly over: Span;
  readonly at: number;
}
export type Cut =
  BoxCut | DovetailCut | TailsCut | TenonCut | TaperCut | ArcCut | BoreCut | ArrisCut | OutlineCut | PlaneCut | MarkCut;
export type Shape = Cut['shape'];
