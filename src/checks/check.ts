import type { JsonPath } from '../diag/diagnostic.js';
import type { Making } from '../making/making.js';
import type { Table } from '../making/table.js';
import type { Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import type { Quantity } from '../value/quantity.js';
import type { Season } from '../wood/moisture.js';

/**
 * A check judges the piece before wood is cut. One file a check, one entry in index.ts. It reads what parts are and what
 * joints do (their traits), never a joint's kind by name.
 */
export interface Check {
  /** File name = this = test name. */
  readonly key: string;
  /** Heading on the checks sheet: `Movement across the grain`. */
  readonly title: string;
  run(input: CheckInput): CheckResult;
}

/** All that a check may read: the piece, settled. */
export interface CheckInput {
  readonly piece: Piece;
  readonly solids: Solids;
  readonly making: Making;
  /** Moisture at making, at the driest and at the wettest. */
  readonly season: Season;
}

export interface CheckResult {
  /** Everything judged, passes too, sorted by subject. */
  readonly judgements: readonly Judgement[];
  /** Tables that are more than judgements: three seasons, the gap to leave today. */
  readonly tables?: readonly Table[];
  /** What is better seen than read; drawings/sheets draws each kind. */
  readonly diagrams?: readonly Diagram[];
}

export type Verdict = 'pass' | 'note' | 'warning' | 'fail';

/** One thing judged: a figure against its limit. */
export interface Judgement {
  /** kebab-case, listed in diag/codes.ts: the same whether it passes or fails. */
  readonly code: string;
  readonly verdict: Verdict;
  /** The mark or marks that it is about, as printed: `S1`, `T1 on F1`. */
  readonly subject: string;
  /** What is judged, a short phrase without a full stop: `sags in the middle, 40 lb/ft² of books`. */
  readonly about: string;
  readonly figure: Quantity;
  readonly limit?: Quantity;
  /** How many times over it passes: 1 is just. At least 1 where it passes; absent where there is no limit. */
  readonly margin?: number;
  readonly worked: Worked;
  /** What to do, with the number that would pass; one sentence. Required of a warning and a fail. */
  readonly remedy?: string;
  /** What an acceptance does not change, printed behind it: one sentence. */
  readonly nevertheless?: string;
  /** Parts and joints (ids) whose cards carry it. */
  readonly touches: readonly string[];
  /** Where in the definition the remedy would be typed. */
  readonly path: JsonPath;
}

/** How a figure came about: `explain` prints it. */
export interface Worked {
  /** The rule in words or as a formula: `5/384 W L³ / (E I)`. */
  readonly rule: string;
  /** The limit's source and the rule's: a published table, `common practice`, `our default` or `from memory`. */
  readonly sources: readonly string[];
  readonly inputs: readonly Input[];
}
export interface Input {
  readonly name: string;
  readonly quantity: Quantity;
  readonly source?: string;
  /** It was not read in its source: a mark stands beside it wherever it is printed. */
  readonly memory?: boolean;
}

export type Diagram =
  | { readonly kind: 'reveals'; readonly rows: readonly RevealRow[] }
  | { readonly kind: 'tip-over'; readonly cases: readonly TipCase[] }
  | { readonly kind: 'sag'; readonly spans: readonly SagSpan[] }
  | { readonly kind: 'corridor'; readonly passes: readonly Pass[] };

/** A gap through the year, nm: as made, at the driest, at the wettest, and the least that is wanted. */
export interface RevealRow {
  readonly subject: string;
  readonly where: string;
  readonly made: number;
  readonly driest: number;
  readonly wettest: number;
  readonly least: number;
}
/** Side view of one case of tipping: nm and N, origin at the pivot, x forwards, y up. */
export interface TipCase {
  readonly name: string;
  /** Outline of what stands and what is open, as boxes [x0, y0, x1, y1] in nm. */
  readonly boxes: readonly { readonly box: readonly [number, number, number, number]; readonly open: boolean }[];
  readonly loads: readonly {
    readonly x: number;
    readonly y: number;
    readonly newtons: number;
    readonly name: string;
  }[];
  /** A level pull at the height, N. */
  readonly pull?: { readonly y: number; readonly newtons: number };
  /** Degrees that the floor leans forwards. */
  readonly tilt: number;
  readonly holding: number;
  readonly tipping: number;
}
/** A span with its sag, nm; supports as they are taken. */
export interface SagSpan {
  readonly subject: string;
  readonly span: number;
  readonly sag: number;
  readonly later: number;
  readonly limit: number;
  readonly supports: 'rests' | 'fixed' | 'one end';
}
/** A way through the house. Plan sizes in nm. */
export interface Pass {
  readonly name: string;
  readonly kind: 'door' | 'corner' | 'stair' | 'ceiling' | 'vehicle';
  readonly clear: readonly number[];
  readonly piece: readonly [number, number, number];
  /** Degrees that it is turned or leant to pass, where it must be. */
  readonly turn?: number;
  /** Round a corner: its long and short side in plan, as it is held. */
  readonly plan?: readonly [long: number, short: number];
  readonly passes: boolean;
}
