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
  readonly room?: { readonly humidity: readonly [number, number]; readonly temperature?: number };
  readonly measures?: Readonly<Record<string, Length_ | readonly Length_[] | Graduation>>;
  readonly stock: Readonly<Record<string, StockSpec>>;
  readonly parts: Readonly<Record<string, PartSpec>>;
  readonly joints?: Readonly<Record<string, JointSpec>>;
  readonly drawers?: Readonly<Record<string, DrawerSpec>>;
  readonly groups?: Readonly<Record<string, GroupSpec>>;
  readonly runs?: Readonly<
    Record<string, { readonly parts: readonly string[]; readonly order?: string; readonly from?: string }>
  >;
  readonly finish?: { readonly kind: string; readonly coats?: number };
  readonly shop?: ShopSpec;
}
export interface Graduation {
  readonly graduate: number;
  readonly in: Length_;
  readonly by: string;
  readonly snap?: Length_;
}
export type StockSpec =
  | { readonly lumber: string; readonly quarter: string; readonly cut?: 'flat' | 'rift' | 'quartered' }
  | {
      readonly sheet: string;
      readonly thickness: Length_;
      readonly nominal?: string;
      readonly size: readonly [Length_, Length_];
      readonly grain?: 'length' | 'width' | 'none';
    };
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
  readonly part: string | readonly string[];
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
export interface ShopSpec {
  readonly moisture?: number; // meter reading when making, %
  readonly read?: string; // the date it was read
  readonly kerf?: Length_;
  readonly trim?: Length_;
  readonly step?: Length_;
  readonly pitch?: Length_;
  readonly dovetailBit?: { readonly width: Length_; readonly angle: number };
}
