import type { ZodType } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Axis, Face } from '../geom/axis.js';
import type { Box3, Span } from '../geom/box.js';
import type { Length, Units } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import type { Cut } from '../words/cut.js';

/**
 * Site axes of a joint, nm. 0 `into`: out of the entering part, into the receiving part; 0 is the plane of contact.
 * 1 `thick`: along the entering part's thickness; 2 `wide`: along its width. Axes 1 and 2 point the way the piece's
 * positive axes point (right, back, up), so a joint on the left side is the mirror image of the one on the right and
 * `hand` is -1 where the site's axes are left-handed. 0 on axes 1 and 2 is the low corner of the entering part.
 * A face name in a site cut is an axis and a sign: `right` is +into, `left` is -into (so the face that an entering part
 * meets is `left` of the receiving part), `front`/`back` are -/+thick, `bottom`/`top` are -/+wide.
 */
export interface Site {
  /** Expanded id, `rails.2.right`. */
  readonly id: string;
  readonly joint: string;
  readonly hand: 1 | -1;
  readonly entering: Member;
  readonly receiving: Member;
  /** What both share of the plane of contact. */
  readonly contact: { readonly thick: Span; readonly wide: Span };
  /** Where a piece direction points in site axes: `direction('back')` might be `top` (+wide). */
  direction(piece: Face): Face;
  /** The most by which an axis of the site leans from the receiving part's own, degrees; 0 when square. */
  readonly lean: number;
  /** Into the receiving part square to the face that is met, a unit vector, where the entering part's end is bevelled to it. */
  readonly slope?: readonly [number, number, number];
  readonly world: World;
  /** Cuts of lower rank already in the two parts, in this site's axes. */
  readonly claims: readonly Claim[];
}
export interface Member {
  readonly part: string;
  /** Shoulder box in site axes. */
  readonly box: Box3;
  /** Site axis along which the grain runs; undefined for sheet goods with none. */
  readonly grain?: Axis;
  readonly material: 'solid' | 'sheet';
  /** Measured thickness when it is sheet goods. */
  readonly measured?: Length;
}
export interface Claim {
  readonly joint: string;
  readonly part: string;
  readonly rank: 1 | 2 | 3;
  readonly cut: Cut;
}
/** Shop rules a joint may ask for. All overridable in the shop file. */
export interface World {
  readonly units: Units;
  /** Free sizes are snapped to it: 1/64 in or 0.1 mm. */
  readonly step: Length;
  readonly bits: {
    readonly dovetail: { readonly width: Length; readonly angle: number };
    readonly straight: readonly Length[];
  };
  /** Pitch of the shop's dovetail jig. */
  readonly pitch: Length;
  /** Swell (nm) of `width` nm of a part across its grain from making to the wettest; from `wood/`. */
  swell(part: string, width: number): number;
}

/** What a joint gives, all in site axes. `growth`: how far the entering part runs on beyond its shoulder box, by site face. */
export interface Given {
  readonly growth: {
    readonly entering: Partial<Record<Face, number>>;
    readonly receiving?: Partial<Record<Face, number>>;
  };
  readonly entering: readonly Cut[];
  readonly receiving: readonly Cut[];
  readonly bodies: readonly SiteBody[];
  readonly traits: Traits;
  readonly findings: readonly Diagnostic[];
  /** Chosen figures for the joint schedule, in words and lengths. */
  readonly sizes: Readonly<Record<string, Sized>>;
}
/** A screw, pin or other bought thing that the joint brings, along a line in site axes. */
export interface SiteBody {
  readonly kind: 'screw';
  readonly name: string;
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  readonly diameter: number;
  readonly head: number;
  /** The shank itself, where `diameter` is that of its hole. */
  readonly bought: { readonly diameter: number; readonly gauge?: number };
}
export interface Traits {
  /** The way in, in site axes: the entering part moves this way to get home. */
  readonly insertion: readonly Face[];
  readonly holds: 'no' | 'aligns' | 'holds' | 'pulls';
  readonly glue: 'long-long' | 'long-crossed' | 'end-long' | 'end-end' | 'by shape' | 'none';
  /** 0..3 each. */
  readonly resists: {
    readonly tension: number;
    readonly shear: number;
    readonly racking: number;
    readonly twist: number;
  };
  readonly freedom: 'fixed' | 'slides' | 'floats';
  /** Only so much of the contact is held (nm), from its end towards `from`; all of it without. */
  readonly held?: { readonly from: Face; readonly length: number };
  readonly shows: boolean;
}
export interface JointKind<Spec = unknown, R = unknown> {
  /** File name = this = `kind` in the JSON = test name = golden folder. */
  readonly kind: string;
  /** The trade's name as printed: `sliding dovetail`. */
  readonly words: string;
  /** Structure only: lengths are expression strings here. Fields besides kind, part, into. Each with description and example. */
  readonly spec: ZodType<Spec>;
  /** Which fields of the spec are lengths (resolved to `Length` before `resolve` sees them). */
  readonly lengths: readonly string[];
  /** It can be made where the parts lean against one another. */
  readonly leans?: true;
  readonly stance: 'butt' | 'corner' | 'cross' | 'face' | 'edge';
  readonly rank: 1 | 2 | 3;
  /** A spec with resolved lengths, for the generic tests and the gallery. */
  readonly example: { readonly spec: Resolved; readonly site: ExampleSite };
  /** Every size filled by a trade rule, each Sized and snapped; findings for what cannot be. */
  resolve(spec: Resolved, site: Site): { readonly r: R; readonly findings: readonly Diagnostic[] };
  /** At most once, when an equal rank of another joint overlaps. */
  yield?(r: R, clash: Claim, site: Site): R | Diagnostic;
  give(r: R, site: Site): Given;
}
/** A joint's own fields, lengths already evaluated (nm, as Sized), the rest as typed. */
export type Resolved = Readonly<
  Record<string, Sized | readonly Sized[] | string | number | boolean | undefined | readonly string[]>
>;
/** Two boxes that stand as the joint needs: sizes in site axes. */
export interface ExampleSite {
  readonly entering: { readonly box: Box3; readonly grain: Axis };
  readonly receiving: { readonly box: Box3; readonly grain: Axis };
}
