import type { ComponentBody, DrawerFacts } from '../components/component.js';
import type { Panel } from '../data/panels.js';
import type { Species } from '../data/species.js';
import type { Axis, Face } from '../geom/axis.js';
import type { Box3 } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import type { Traits } from '../joints/joint.js';
import type { Length, Units } from '../lengths/length.js';
import type { ShopProfile } from '../shop/profile.js';
import type { Sized } from '../value/sized.js';
import type { DefectKind } from '../wood/defects.js';
import type { Cut } from '../words/cut.js';

export type Status = 'cut now' | 'leave long' | 'fit to the piece' | 'measure first';

/** The piece, settled: plain data that survives JSON.stringify. Lists sorted by id unless said. */
export interface Piece {
  readonly header: Header;
  readonly units: Units;
  /** Printed sizes are multiples of it wherever they are free. */
  readonly step: Length;
  readonly measures: Readonly<Record<string, Sized>>;
  readonly stocks: Readonly<Record<string, Stock>>;
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly hardware: readonly Hardware[];
  readonly drawers: readonly Drawer[];
  /** Parts whose grain runs on from one to the next; as typed, of each pattern in the run's order. */
  readonly runs?: readonly Run[];
  readonly finish?: string;
  /** How many more of a part are cut than the piece takes, by part id. */
  readonly spares?: Readonly<Record<string, number>>;
  /** Layout rules of the shop for sheet goods. */
  readonly shop: ShopFacts;
  /** The shop's machines, clamps and limits, as far as they are known. */
  readonly profile?: ShopProfile;
  /** What it is for, how it is loaded and how it gets there, as far as the definition says. */
  readonly use?: Use;
  readonly delivery?: Delivery;
  /** Findings that somebody has answered for. */
  readonly accepted?: readonly Accepted[];
  /** Every figure that was worked out, by name (`W`, `rail_1.top`, `rail_1.up.size`), with its history. */
  readonly values?: Readonly<Record<string, Sized>>;
}
/** Parts in the order in which they lie end to end on their board. */
export interface Run {
  readonly id: string;
  readonly parts: readonly string[];
  readonly order?: 'left to right' | 'right to left' | 'front to back' | 'bottom to top' | 'top to bottom';
  /** What they are cut from, in the maker's words: `one board`. */
  readonly from?: string;
}
export interface Header {
  readonly title: string;
  readonly number: string;
  readonly revision: string;
  readonly date: string;
  readonly client: string;
  readonly maker: string;
  /** e.g. `White oak, yellow-poplar inside`; computed from the stocks. */
  readonly woods: string;
}
export interface Stock {
  readonly id: string;
  readonly kind: 'lumber' | 'sheet';
  /** Key in data/species, data/panels or the shop's own, and its printed name. */
  readonly material: string;
  /** All figures of a wood or a panel of the shop's own; of the others they stand in the tables (wood/material.ts). */
  readonly wood?: Species;
  readonly panel?: Panel;
  readonly name: string;
  readonly quarter?: string;
  readonly cut?: 'flat' | 'rift' | 'quartered';
  /** Kinds of defect that may be in it wherever it shows, and lengths of each thickness for trial settings. */
  readonly allow?: readonly DefectKind[];
  readonly trials?: number;
  /** Sheet goods: measured thickness and sheet size (length, width), and where the face grain runs. */
  readonly thickness?: Length;
  readonly nominal?: string;
  readonly size?: readonly [Length, Length];
  readonly grain?: 'length' | 'width' | 'none';
  /** What a sheet costs in any money, and the further sizes in which it can be had. */
  readonly price?: number;
  readonly sizes?: readonly {
    readonly size: readonly [Length, Length];
    readonly price?: number;
    readonly count?: number;
  }[];
}
export interface Part {
  readonly id: string;
  /** What is written on the wood and on its card: `A1`, `D1.2`. */
  readonly mark: string;
  /** `left side`, `front rail`. */
  readonly name: string;
  readonly stock: string;
  /** Own axes to piece axes. */
  readonly place: Placement;
  /** Shoulder size along the part's own axes, with history (keys as in the definition). */
  readonly size: readonly [Sized, Sized, Sized];
  /** How far the blank runs on beyond the shoulder box: [low, high] per own axis, >= 0, nm. */
  readonly growth: Box3;
  /** Own axis of thickness, width and length (length lies along the grain where there is one). */
  readonly thickness: Axis;
  readonly width: Axis;
  readonly length: Axis;
  readonly grain?: Axis;
  readonly show: readonly Face[];
  /** The words for the six own faces on this part's cards: INSIDE, OUTSIDE, FRONT, BACK, TOP, BOTTOM, LEFT, RIGHT. */
  readonly faceWords: Readonly<Record<Face, string>>;
  /** What all figures are measured from. */
  readonly reference: { readonly face: Face; readonly edge: Face; readonly end: Face };
  readonly cuts: readonly Cut[];
  readonly status: Status;
  readonly statusWhy: string;
  /** Number of staves when it is glued up (edge joint). */
  readonly staves?: number;
  /** The drawer it belongs to. */
  readonly drawer?: string;
  /** Parts with the same letter are one card when only turned; `turnOf` names the first, `mirrorOf` the mirror image. */
  readonly turnOf?: string;
  readonly mirrorOf?: string;
  /** `left` / `right` where it is handed. */
  readonly hand?: 'left' | 'right';
  readonly notes: readonly string[];
}
export interface Joint {
  /** Expanded id, and the definition's. */
  readonly id: string;
  readonly joint: string;
  readonly kind: string;
  readonly words: string;
  readonly entering: string;
  readonly receiving: string;
  readonly sizes: Readonly<Record<string, Sized>>;
  /** The way in, as a piece direction. */
  readonly way: readonly Face[];
  readonly traits: Traits;
}
/** A bought thing as a body in the piece, and what is printed of a drawer: as the component gives them. */
export type Hardware = ComponentBody;
export type Drawer = DrawerFacts;
export interface ShopFacts {
  readonly kerf: Length;
  readonly trim: Length;
  /** Allowances over finished size for rough blanks: thickness, width, length. */
  readonly allowance: readonly [Length, Length, Length];
  /** How sheet goods are cut up, as far as it is said. */
  readonly saw?: {
    readonly stages?: 2 | 3 | 'any';
    readonly first?: 'rip' | 'cross' | 'either';
    readonly keep?: readonly [Length, Length];
  };
  /** Sheet goods on the rack. `sheet`: key of the panel. */
  readonly offcuts?: readonly Offcut[];
}
export interface Offcut {
  readonly id: string;
  readonly sheet: string;
  readonly thickness: Length;
  readonly size: readonly [Length, Length];
  readonly grain: 'length' | 'width' | 'none';
}

/** What the piece is for. Loads are in Pa and kg; a missing entry takes the published or usual figure, which is printed. */
export interface Use {
  /** Furniture for clothing is judged by 16 CFR 1261 where its sizes bring it in. */
  readonly kind?: UseKind;
  /** Stands free, or is fixed to the building (and then does not tip). */
  readonly fixed?: boolean;
  readonly floor?: 'hard' | 'carpet';
  /** By part id: what a shelf, top or rail carries, Pa over its face or kg at its middle. */
  readonly loads: Readonly<Record<string, { readonly pascals?: number; readonly kilograms?: number }>>;
  /** One chosen limit for sag by part id, the n of L/n; for the others the limit of its use. */
  readonly sag: Readonly<Record<string, number>>;
}
export type UseKind =
  | 'clothes'
  | 'books'
  | 'table'
  | 'desk'
  | 'seat'
  | 'display'
  | 'office'
  | 'other'
  | 'crib'
  | 'bunk'
  | 'high chair'
  | 'changing table'
  | 'toy chest';
/** The way from the shop to the room, nm. */
export interface Delivery {
  readonly doors: readonly { readonly name: string; readonly width: Length; readonly height: Length }[];
  readonly corners: readonly {
    readonly name: string;
    readonly widths: readonly [Length, Length];
    readonly height?: Length;
  }[];
  readonly stairs: readonly {
    readonly name: string;
    readonly width: Length;
    readonly headroom: Length;
    readonly pitch: number;
    readonly landing?: Length;
  }[];
  readonly ceiling?: Length;
  /** Inside of the vehicle: length, width, height. */
  readonly vehicle?: readonly [Length, Length, Length];
  /** Thickness of the wrapping on every side. */
  readonly wrap: Length;
  /** Parts that come off for the carry, by id. */
  readonly apart: readonly string[];
}
/** A finding that somebody answers for: it is printed with the reason and the name, and stamps nothing. */
export interface Accepted {
  readonly finding: string;
  /** Part or joint id that it touches, or a pattern; all of that code without it. */
  readonly of?: string;
  /** The ids that `of` names. */
  readonly ids?: readonly string[];
  readonly why: string;
  readonly by: string;
  readonly on: string;
}
