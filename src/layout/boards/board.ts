/**
 * Real boards, and what is to be cut from them. Lengths nm. A board lies with its marked end at the left: x along its length
 * from that end, y across from its lower edge, seen on its better (front) face; both faces share the frame, not mirrored.
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
  readonly defects: readonly Defect[];
}
export type DefectKind =
  | 'knot'
  | 'sound knot'
  | 'check'
  | 'split'
  | 'sapwood'
  | 'wane'
  | 'void'
  | 'pith'
  | 'hole'
  | 'bark'
  | 'decay'
  | 'stain';
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
  /** How many faces show: no defect that does not belong may be on them. */
  readonly shows: 'both' | 'one' | 'none';
  /** Kinds that may be in it all the same; a void never. */
  readonly allows: readonly DefectKind[];
  /** Blanks of a run come from one board, one after another in this order. */
  readonly run?: { readonly id: string; readonly at: number; readonly most?: number };
  /** Spare, or for trying a setting. */
  readonly spare?: boolean;
}

export interface BoardLayout {
  readonly boards: readonly CutBoard[];
  readonly missing: readonly { readonly blank: string; readonly why: string; readonly would: string }[];
  /** Value of the boards used (money, or board feet without prices), and a lower bound on it. */
  readonly used: number;
  readonly bound: number;
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
  readonly remnants: readonly { readonly name: string; readonly at: readonly [number, number, number, number] }[];
  /** In the order in which they are made; distances from the marked end or the lower edge. */
  readonly cuts: readonly {
    readonly number: number;
    readonly kind: 'crosscut' | 'rip' | 'straighten';
    /** x (crosscut) or y (rip, within `over`) of the line, and over what it runs. */
    readonly at: number;
    readonly over: readonly [number, number];
    readonly leaves: string;
  }[];
}
