import type { LaidBoards } from './boards/board.js';

/** Sheet goods laid out: plain data. Lengths nm, origin at the corner left by the trim cuts. */
export interface Layout {
  readonly sheets: readonly SheetLayout[];
  /** One row a stock: sheets used, a lower bound on them, and whether nothing cheaper can do, as far as bounds show. */
  readonly counts: readonly {
    readonly stock: string;
    readonly used: number;
    readonly bound: number;
    readonly proved: boolean;
    /** What the sheets cost, in the money of the definition, where their prices are known; the rack costs nothing. */
    readonly cost?: number;
    /** There was a choice of sizes or of offcuts: `proved` says then that nothing cheaper does, not that nothing fewer does. */
    readonly choice?: true;
  }[];
  readonly unplaced: readonly { readonly part: string; readonly why: string }[];
  /** Lumber on the boards there are, where they are known. */
  readonly boards?: LaidBoards;
}
export interface SheetLayout {
  readonly stock: string;
  /** The name on the rack, when it is an offcut. */
  readonly rack?: string;
  readonly index: number;
  readonly of: number;
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  readonly trim: number;
  readonly grain: 'length' | 'width' | 'none';
  readonly pieces: readonly {
    readonly part: string;
    readonly x: number;
    readonly y: number;
    readonly w: number;
    readonly h: number;
    readonly turned: boolean;
    /** One more than the piece takes. */
    readonly spare?: true;
  }[];
  readonly offcuts: readonly {
    readonly name: string;
    readonly x: number;
    readonly y: number;
    readonly w: number;
    readonly h: number;
    readonly keep: boolean;
  }[];
  /** In the order in which they are made. */
  readonly cuts: readonly GuillotineCut[];
}
export interface GuillotineCut {
  readonly number: number;
  readonly kind: 'trim' | 'rip' | 'cross';
  readonly stage: number;
  /** The line of the cut on the sheet (centre of the kerf). */
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Distance from the edge against the fence to the blade. */
  readonly fence: number;
  /** What is against the fence: `edge 1`, `end 2`, or `the edge left by cut n`. */
  readonly against: string;
  readonly leaves: string;
  /** What is being cut is larger than one person steers. */
  readonly helper?: true;
}
export interface NestItem {
  readonly part: string;
  /** Along the face grain, and across it. */
  readonly length: number;
  readonly width: number;
  readonly mayTurn: boolean;
  /** One more than the piece takes. */
  readonly spare?: true;
}
