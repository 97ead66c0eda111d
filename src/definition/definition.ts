import type { DefectKind } from '../wood/defects.js';

/** A definition as typed: structure checked, meaning not yet. All lengths are expression strings (or bare numbers). */
export type Length_ = string | number;
export type Extent =
  | readonly [Length_, Length_]
  | { readonly from?: Length_; readonly to?: Length_; readonly mid?: Length_; readonly size?: Length_ };
export interface Definition {
  readonly format: 1;
  /** A shipped definition to start from; entries are merged by id before the schema is applied. */
  readonly from?: string;
  readonly piece: {
    readonly title: string;
    readonly number: string;
    readonly revision: string;
    readonly date: string;
    readonly client?: string;
    readonly maker?: string;
  };
  readonly units: 'in' | 'mm';
  /** Its humidity, or the region where it is. */
  readonly room?: {
    readonly humidity?: readonly [number, number];
    readonly temperature?: number;
    readonly region?: 'most of the US' | 'dry southwest' | 'damp coast';
  };
  readonly measures?: Readonly<Record<string, Length_ | readonly Length_[] | Graduation>>;
  readonly stock: Readonly<Record<string, StockSpec>>;
  readonly parts: Readonly<Record<string, PartSpec>>;
  readonly joints?: Readonly<Record<string, JointSpec>>;
  readonly drawers?: Readonly<Record<string, DrawerSpec>>;
  readonly groups?: Readonly<Record<string, GroupSpec>>;
  readonly runs?: Readonly<
    Record<
      string,
      {
        readonly parts: readonly string[];
        readonly order?: 'left to right' | 'right to left' | 'front to back' | 'bottom to top' | 'top to bottom';
        readonly from?: string;
      }
    >
  >;
  readonly finish?: { readonly kind: string; readonly coats?: number };
  readonly shop?: ShopSpec;
  readonly use?: UseSpec;
  readonly delivery?: DeliverySpec;
  readonly accepted?: readonly AcceptedSpec[];
}
export interface Graduation {
  readonly graduate: number;
  readonly in: Length_;
  readonly by: string;
  readonly snap?: Length_;
}
export type StockSpec =
  | {
      readonly lumber: string;
      readonly quarter: string;
      readonly cut?: 'flat' | 'rift' | 'quartered';
      readonly allow?: readonly DefectKind[]; // what may be in a part of it wherever it shows
      readonly spares?: Readonly<Record<string, number>>; // how many more blanks of a part, by its name
      readonly trials?: number; // lengths of each thickness to try settings on
    }
  | {
      readonly sheet: string;
      readonly thickness: Length_;
      readonly nominal?: string;
      readonly size: readonly [Length_, Length_];
      readonly grain?: 'length' | 'width' | 'none';
      readonly price?: number; // of one sheet of that size, any money
      readonly sizes?: readonly SheetSizeSpec[]; // in which it is sold too
      readonly spares?: Readonly<Record<string, number>>; // how many more of a part, by its name
    };
export interface SheetSizeSpec {
  readonly size: readonly [Length_, Length_];
  readonly price?: number;
  readonly count?: number;
}
export type GrainSpec = 'across' | 'deep' | 'up' | 'none';
export interface PartSpec {
  readonly each?: string; // "i = 1..3" or "i = 1..3, j = 1..2"
  readonly like?: string;
  readonly mirror?: string;
  readonly about?: Length_; // the plane across at this coordinate
  readonly mark?: string; // what is written on the wood; {i} allowed
  readonly name?: string; // what the card calls it
  readonly stock?: string;
  readonly across?: Extent;
  readonly deep?: Extent;
  readonly up?: Extent;
  readonly grain?: GrainSpec;
  readonly show?: readonly string[];
  readonly status?: 'cut now' | 'leave long' | 'fit to the piece' | 'measure first';
  readonly shape?: readonly ShapeSpec[];
  readonly holes?: readonly HoleSpec[];
  readonly faces?: Readonly<Record<string, string>>; // own face -> word on the card, when the default policy is not wanted
  readonly reference?: { readonly face?: string; readonly edge?: string; readonly end?: string };
  readonly stand?: {
    readonly at: readonly [Length_, Length_, Length_];
    readonly reach: string;
    readonly front?: number;
    readonly side?: number;
    readonly section?: readonly [Length_, Length_];
  };
  readonly span?: {
    readonly from: string;
    readonly to: string;
    readonly at: Length_;
    readonly section: readonly [Length_, Length_];
  };
  readonly turn?: { readonly about: 'across' | 'deep' | 'up'; readonly by: number };
  readonly notes?: readonly string[];
}
export type ShapeSpec =
  | {
      readonly cut: 'chamfer' | 'round-over' | 'cove';
      readonly edges: readonly string[];
      readonly size: Length_;
      readonly stop?: Length_;
    } // edge "front top" = arris of two faces
  | {
      readonly cut: 'rabbet';
      readonly face: string;
      readonly edge: string;
      readonly on: Length_;
      readonly into: Length_;
      readonly from?: Length_;
      readonly to?: Length_;
    }
  | {
      readonly cut: 'taper';
      readonly faces: readonly string[];
      readonly end: string;
      readonly begin: Length_;
      readonly to: Length_;
    } // begin: distance from the other end
  | {
      readonly cut: 'arc';
      readonly edge: string;
      readonly rise: Length_;
      readonly from?: Length_;
      readonly to?: Length_;
    }
  | {
      readonly cut: 'relief';
      readonly end: string;
      readonly up: Length_;
      readonly from: Length_;
      readonly to: Length_;
      readonly along: 'across' | 'deep' | 'up';
    }
  | {
      readonly cut: 'outline';
      readonly face: string;
      readonly points: readonly (readonly [Length_, Length_] | readonly [Length_, Length_, number])[];
    }
  | { readonly cut: 'flat'; readonly edge: string; readonly size: Length_ };
export interface HoleSpec {
  readonly face: string;
  readonly at: readonly [Length_, Length_]; // from the part's reference edge and end: own low corner, rising axes
  readonly diameter: Length_;
  readonly depth?: Length_;
}
export interface JointSpec {
  readonly kind: string;
  readonly part?: string | readonly string[]; // always, but for a joint that a drawer makes: `short_1.corner_back_left`
  readonly into?: string | readonly string[];
  readonly each?: string;
  readonly [field: string]: unknown;
}
export interface DrawerSpec {
  readonly like?: string;
  readonly mark?: string; // "D{n}": n counts on over the grid
  readonly across?: readonly string[];
  readonly up?: readonly string[];
  readonly front?: {
    readonly fit?: 'inset'; // taken over where `like` gives it
    readonly kind?: 'separate' | 'integral';
    readonly reveal?: Length_;
    readonly stock?: string;
    readonly thickness?: Length_;
    readonly back?: Length_; // how far the front stands behind the rails
    readonly pulls?: number | 'none';
  };
  readonly box?: {
    readonly stock?: string;
    readonly bottom?: string;
    readonly bottomUp?: Length_;
    readonly sides?: Length_;
    readonly height?: Length_;
    readonly depth?: Length_;
    readonly corner?: string;
    readonly runner?: 'side-slide' | 'none';
    readonly slide?: string; // key in data/slides
  };
}
export interface GroupSpec {
  readonly like?: string;
  readonly mirror?: string;
  readonly about?: Length_;
  readonly at?: readonly [Length_, Length_, Length_];
  readonly parts?: Readonly<Record<string, PartSpec>>;
  readonly joints?: Readonly<Record<string, JointSpec>>;
}
/** Loads: lb/ft2 and lb in a file in inches, kg/m2 and kg in millimetres. Keys are parts, rows and stars allowed. */
export interface UseSpec {
  readonly kind?:
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
  readonly fixed?: boolean;
  readonly floor?: 'hard' | 'carpet';
  readonly loads?: Readonly<Record<string, { readonly perArea?: number; readonly middle?: number }>>;
  readonly sag?: Readonly<Record<string, number>>; // 384: at most span / 384
}
export interface DeliverySpec {
  readonly doors?: readonly { readonly name: string; readonly width: Length_; readonly height: Length_ }[];
  readonly corners?: readonly {
    readonly name: string;
    readonly widths: readonly [Length_, Length_];
    readonly height?: Length_;
  }[];
  readonly stairs?: readonly {
    readonly name: string;
    readonly width: Length_;
    readonly headroom: Length_;
    readonly pitch: number;
    readonly landing?: Length_;
  }[];
  readonly ceiling?: Length_;
  readonly vehicle?: { readonly length: Length_; readonly width: Length_; readonly height: Length_ };
  readonly wrap?: Length_;
  readonly apart?: readonly string[];
}
export interface AcceptedSpec {
  readonly finding: string;
  readonly of?: string;
  readonly why: string;
  readonly by: string;
  readonly on: string;
}
export interface ShopSpec {
  readonly moisture?: number; // meter reading when making, %
  readonly read?: string; // the date it was read
  readonly kerf?: Length_;
  readonly trim?: Length_;
  readonly saw?: SawSpec;
  readonly offcuts?: readonly OffcutSpec[];
  readonly step?: Length_;
  readonly pitch?: Length_;
  readonly dovetailBit?: { readonly width: Length_; readonly angle: number };
  readonly machines?: MachineSpecs;
  readonly clamps?: readonly { readonly opening: Length_; readonly count: number }[];
  readonly lift?: number; // lb or kg
  readonly alone?: { readonly length: Length_; readonly width: Length_ };
  readonly door?: { readonly width: Length_; readonly height: Length_ };
  readonly woods?: Readonly<Record<string, WoodSpec>>;
  readonly panels?: Readonly<Record<string, PanelSpec>>;
}
/** How sheet goods are cut up here. */
export interface SawSpec {
  readonly stages?: 2 | 3 | 'any';
  readonly first?: 'rip' | 'cross' | 'either';
  readonly keep?: { readonly length: Length_; readonly width: Length_ };
}
/** A piece of sheet goods on the rack. */
export interface OffcutSpec {
  readonly id: string;
  readonly sheet: string;
  readonly thickness: Length_;
  readonly length: Length_;
  readonly width: Length_;
  readonly grain?: 'length' | 'width' | 'none';
}
/** By machine, its limits as its manual gives them. */
export interface MachineSpecs {
  readonly jointer?: { readonly width: Length_; readonly length?: Length_ };
  readonly planer?: {
    readonly width: Length_;
    readonly shortest?: Length_;
    readonly thinnest?: Length_;
    readonly thickest?: Length_;
  };
  readonly tableSaw?: { readonly rip?: Length_; readonly crosscut?: Length_; readonly height?: Length_ };
  readonly bandsaw?: { readonly height: Length_; readonly throat?: Length_ };
  readonly routerTable?: { readonly tallest: Length_ };
  readonly drillPress?: { readonly stroke: Length_; readonly throat?: Length_ };
  readonly bench?: { readonly length: Length_; readonly width?: Length_ };
}
/** Stiffness in million psi or GPa, strength psi or MPa, hardness lbf or N, as the file's units are. */
export interface WoodSpec {
  readonly like?: string;
  readonly name?: string;
  readonly gravity?: number;
  readonly radial?: number;
  readonly tangential?: number;
  readonly shrinkage?: readonly [number, number];
  readonly stiffness?: number;
  readonly strength?: number;
  readonly hardness?: number;
  readonly source: string;
}
export interface PanelSpec {
  readonly like?: string;
  readonly name?: string;
  readonly gravity?: number;
  readonly stiffness?: readonly [number, number];
  readonly source: string;
}
