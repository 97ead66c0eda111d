import type { DefectKind } from '../../wood/defects.js';

export type { DefectKind };

/**
 * Real boards, and what is to be cut from them. Lengths nm. A board lies with its marked end at the left: x along its length
 * from that end, y across from its lower edge, seen on its better (front) face; both faces share the frame, not mirrored.
 * The lower edge is y = 0 all along, the upper one goes straight from one width to the other.
 */
export interface Board {
  readonly id: string;
  /** Species key of data, and the quarter it was sold as. */
  readonly wood: string;
  readonly quarter: string;
  /** As measured, rough. */
  readonly thickness: number;
  readonly length: number;
  /** Width at the marked end and at the other. */
  readonly width: readonly [number, number];
  readonly cut?: 'flat' | 'rift' | 'quartered';
  /** Per cent, as read. */
  readonly moisture?: number;
  /** Any money. */
  readonly price?: number;
  /** Boards of one log or colour. */
  readonly group?: string;
  /** Out of straight over the whole length: edgewise, and flatwise. */
  readonly crook?: number;
  readonly bow?: number;
  /** Out of flat across its whole width. */
  readonly cup?: number;
  readonly defects: readonly Defect[];
}
/**
 * What may be on a face that does not show: it weakens the part little, and wood is there (our default). Splits, checks,
 * pith, decay, wane and loose knots may be on no face.
 */
export const HIDDEN: readonly DefectKind[] = ['sound knot', 'sapwood', 'stain', 'hole', 'bark'];
export interface Defect {
  readonly kind: DefectKind;
  readonly face: 'front' | 'back' | 'through';
  /** x0, y0, x1, y1. */
  readonly at: readonly [number, number, number, number];
}

/** A blank that the piece wants: a part, or one stave of one. Rough sizes. */
export interface Blank {
  /** `side_left`, or `top.2` for its second stave; unique. */
  readonly id: string;
  readonly part: string;
  /** To be chalked on it: `A1`, `T1 b`. */
  readonly mark: string;
  readonly wood: string;
  readonly quarter: string;
  readonly cut?: 'flat' | 'rift' | 'quartered';
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** Thickness that it must plane to. */
  readonly finished: number;
  /** How many faces show: no defect that does not belong may be on them. */
  readonly shows: 'both' | 'one' | 'none';
  /** Kinds that may be on any face all the same; a void never. */
  readonly allows: readonly DefectKind[];
  /** Blanks of a run come from one board, one after another in this order. */
  readonly run?: { readonly id: string; readonly at: number; readonly most?: number };
  /** Spare, or for trying a setting. */
  readonly spare?: boolean;
  /** Parts (or staves of one part) milled in one length and cut apart afterwards, in their order along it. */
  readonly gang?: readonly string[];
}

/** What is to be cut from what. Same job, same layout. */
export interface BoardJob {
  readonly boards: readonly Board[];
  readonly blanks: readonly Blank[];
  readonly kerf: number;
  /** Off each end of a board: end checks, dirt, a square start; our default 1/2 in. */
  readonly endTrim?: number;
  /** What is laid out is a multiple of it where it is free; our default 1/16 in. */
  readonly step?: number;
  /** Least clear length and width of a remnant worth keeping; our default 16 x 3 in. */
  readonly keep?: readonly [number, number];
  /** Places looked at, in thousands, before the best so far is taken: counted, never timed. */
  readonly budget?: number;
}

export interface BoardLayout {
  readonly boards: readonly CutBoard[];
  readonly missing: readonly { readonly blank: string; readonly why: string; readonly would: string }[];
  /** Value of the boards used (money, or board feet without prices), and a lower bound on it. */
  readonly used: number;
  readonly bound: number;
  readonly unit: 'money' | 'board feet';
  readonly kerf: number;
  readonly endTrim: number;
  /** One row a wood and quarter. */
  readonly counts: readonly BoardCount[];
}
export interface BoardCount {
  readonly wood: string;
  readonly quarter: string;
  readonly boards: number;
  readonly used: number;
  readonly bound: number;
  /** No cheaper choice of boards can do, as far as bounds show. */
  readonly proved: boolean;
}
export interface CutBoard {
  readonly board: string;
  readonly pieces: readonly {
    readonly blank: string;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
    /** The face that shows is the board's back. */
    readonly backUp: boolean;
  }[];
  /** What is left and clear enough to keep. */
  readonly remnants: readonly {
    readonly name: string;
    readonly at: readonly [number, number, number, number];
    /** The longest rectangle in it with nothing on either face. */
    readonly clear: readonly [number, number, number, number];
  }[];
  /** In the order in which they are made; distances from the marked end or the lower edge. */
  readonly cuts: readonly {
    readonly number: number;
    readonly kind: 'crosscut' | 'rip' | 'straighten';
    /** x (crosscut) or y (rip, within `over`) of the line, and over what it runs. */
    readonly at: number;
    readonly over: readonly [number, number];
    /** On which side of the line the saw goes: beyond it (away from the marked end or the lower edge) or before it. */
    readonly saw: 'beyond' | 'before';
    readonly leaves: string;
  }[];
}
/** A layout with what it was made from, for those that draw it. */
export interface LaidBoards extends BoardLayout {
  readonly stock: readonly Board[];
  readonly blanks: readonly Blank[];
}
