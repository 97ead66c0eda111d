import type { JsonPath } from '../diag/diagnostic.js';
import type { Axis, Face } from '../geom/axis.js';
import { AXES } from '../geom/axis.js';
import type { Box3, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import type { Sized } from '../value/sized.js';
import type { Cut } from '../words/cut.js';
import type { Frame } from '../words/mapCut.js';
import type { Evaluator } from './evaluate.js';
import type { Draft } from './expand.js';
import type { Findings } from './fault.js';
import type { Part, Status, Stock } from './piece.js';

/** A part while its joints are being made: it stands in the piece as a box, square to the piece's axes. */
export interface Body {
  readonly id: string;
  readonly path: JsonPath;
  readonly stock: Stock;
  /** Shoulder box, piece axes, nm. */
  readonly box: Box3;
  readonly size: readonly [Sized, Sized, Sized];
  /** How it stands when it leans; then `box` is the box about it. */
  readonly place?: Placement;
  readonly grain?: Axis;
  readonly thickness: Axis;
  readonly width: Axis;
  readonly length: Axis;
  readonly show: readonly Face[];
  readonly own: Own;
  /** How far it runs on beyond its shoulder box, own faces low and high; joints add to it. */
  readonly growth: [[number, number], [number, number], [number, number]];
  readonly cuts: Cut[];
}
/** What the definition (or a component) settles for a part, where it does. */
export interface Own {
  readonly mark?: string;
  readonly name?: string;
  readonly status?: Status;
  readonly statusWhy?: string;
  readonly faceWords?: Part['faceWords'];
  readonly reference?: Part['reference'];
  readonly drawer?: string;
  readonly hand?: 'left' | 'right';
  readonly mirror?: string;
  readonly faces?: Readonly<Record<string, string>>;
  readonly referenceWords?: { readonly face?: string; readonly edge?: string; readonly end?: string };
  readonly notes: readonly string[];
}

export const originOf = (b: Body): Vec3 => [b.box[0][0], b.box[1][0], b.box[2][0]];
/** From the piece's axes to the part's own. */
export const toOwn = (b: Body): Frame => ({
  to: [0, 1, 2],
  sign: [1, 1, 1],
  shift: byAxis((a) => -b.box[a][0] + 0),
});
export const sizesOf = (b: Pick<Body, 'size'>): Vec3 => byAxis((a) => b.size[a].value);

/**
 * Thickness, width and length of a box: length lies along the grain, or else along the longest side; of the other two the
 * thinner is the thickness. Of two equal ones the thickness is the one front to back.
 */
export function axesOf(size: Vec3, grain: Axis | undefined): { thickness: Axis; width: Axis; length: Axis } {
  const bySize = [...AXES].sort((a, b) => size[b] - size[a] || a - b);
  const length = grain ?? (bySize[0] as Axis);
  const [a, b] = AXES.filter((x) => x !== length) as [Axis, Axis];
  const equal = size[a] === size[b];
  const thickness = equal ? (a === 1 || b === 1 ? 1 : a) : size[a] < size[b] ? a : b;
  return { thickness, width: (3 - length - thickness) as Axis, length };
}

/** What parts are worked out with. */
export interface BodyContext {
  readonly drafts: ReadonlyMap<string, Draft>;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly ev: Evaluator;
  readonly findings: Findings;
}
