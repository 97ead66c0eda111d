import type { Checked } from '../checks/index.js';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Kernel } from '../geom/solid.js';
import type { Layout } from '../layout/layout.js';
import { formatLength } from '../lengths/format.js';
import type { Making } from '../making/making.js';
import type { Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import type { Faces } from '../type/type.js';
import type { Item, Sheet, Table } from './picture.js';
import { LETTER, sheetFrame } from './frame.js';
import type { Paper } from './frame.js';
import type { Model } from './model.js';
import type { Views } from './views.js';

/** Everything the sheets are drawn from. */
export interface DrawInput {
  readonly piece: Piece;
  readonly solids: Solids;
  readonly kernel: Kernel;
  readonly layout: Layout;
  readonly lists: Making;
  readonly faces: Faces;
  /** Short hash of the inputs. */
  readonly hash: string;
  readonly findings: readonly Diagnostic[];
  /** What the checks judged, with their tables. */
  readonly checks?: Checked;
  readonly paper?: Paper;
  /** Over every sheet and card when a check fails that nobody answers for: `NOT FOR WORKSHOP: what fails`. */
  readonly stamp?: string;
}
/** One entry of the sheet index: a kind of sheet and the numbers it takes. */
export interface IndexEntry {
  readonly id: string;
  readonly title: string;
  readonly from: number;
  readonly to: number;
}
export interface SheetPlace {
  readonly n: number;
  readonly of: number;
  readonly hash: string;
  readonly index: readonly IndexEntry[];
}
/** The input with what several sheets share, worked out once. */
export interface Prepared extends DrawInput {
  readonly model: Model;
  readonly views: Views;
}
/** One kind of sheet: one file, one import, one entry in sheets/index.ts. */
export interface SheetKind {
  readonly id: string;
  /** As the index on the cover calls it. */
  readonly title: string;
  /** How many pages it takes; 0 when the piece gives it nothing to show. */
  plan(input: Prepared): number;
  /** What the cover's index says of it, pages from 0; its title over all its pages where it does not say. */
  entries?(input: Prepared): readonly IndexEntry[];
  draw(input: Prepared, page: number, place: SheetPlace): Sheet;
}

/** A length as the piece's sheets print it, never off its shop's step without its decimal. */
export const printed = (input: Pick<DrawInput, 'piece'>, nanometres: number): string =>
  formatLength(nanometres, input.piece.units);
/** What printed sizes are rounded to: the shop's step. */
export const roundTo = (input: DrawInput): string =>
  `${formatLength(input.piece.step, input.piece.units)}${input.piece.units === 'mm' ? ' mm' : ''}`;

export interface SheetBody {
  readonly id: string;
  readonly title: string;
  readonly folder: Sheet['folder'];
  readonly alt: string;
  readonly scale?: string;
  readonly projection?: boolean;
  readonly items: readonly Item[];
  readonly tables?: readonly Table[];
}
/** Puts a body into the frame: title strip, number tab, stamp. */
export function sheetOf(input: DrawInput, place: SheetPlace, body: SheetBody): Sheet {
  const paper = input.paper ?? LETTER;
  const frame = sheetFrame({
    faces: input.faces,
    header: input.piece.header,
    title: body.title,
    scale: body.scale ?? 'none',
    roundTo: roundTo(input),
    n: place.n,
    of: place.of,
    hash: place.hash,
    paper,
    ...(body.projection ? { projection: true } : {}),
    ...(input.stamp === undefined ? {} : { stamp: input.stamp }),
  });
  return {
    id: body.id,
    title: body.title,
    folder: body.folder,
    size: paper.size,
    alt: body.alt,
    picture: [...body.items, ...frame],
    tables: body.tables ?? [],
  };
}
