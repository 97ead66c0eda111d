import type { SlideFamily } from '../data/slides.js';
import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import type { Axis, Face } from '../geom/axis.js';
import type { Span, Vec3 } from '../geom/box.js';
import type { Recipe } from '../geom/recipe.js';
import type { Resolved } from '../joints/joint.js';
import type { Length, Units } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import type { BoreCut, BoxCut, MarkCut } from '../words/cut.js';

/**
 * A component is expanded once into parts and joints that stand on their own, as if they had been typed: whatever comes
 * after knows parts and joints only. All coordinates are in piece axes, nm.
 */
export interface ComponentKind<Spec> {
  readonly kind: string;
  /** The trade's name as printed. */
  readonly words: string;
  expand(spec: Spec, context: ComponentContext): Expansion;
}

/** Low and high end, each with its history. */
export type SizedSpan = readonly [Sized, Sized];

/** What bounds a component: the parts around it and the air between them. */
export interface Opening {
  readonly left: string;
  readonly right: string;
  readonly bottom: string;
  readonly top: string;
  readonly across: SizedSpan;
  /** From the front edge of the parts around it to the front of what closes the case behind. */
  readonly deep: SizedSpan;
  readonly up: SizedSpan;
  /** By how much it is less deep at the driest, nm: the case shrinks round a drawer that does not. */
  readonly shrinks: Length;
}

export interface ComponentContext {
  /** Expanded id (`short_1`), its number in its grid (from 1) and the mark written on it (`D1`). */
  readonly id: string;
  readonly index: number;
  readonly mark: string;
  readonly path: JsonPath;
  readonly opening: Opening;
  readonly world: ComponentWorld;
}

export interface ComponentWorld {
  readonly units: Units;
  /** Free sizes are whole multiples of it. */
  readonly step: Length;
  /** Pitch of the shop's dovetail jig. */
  readonly pitch: Length;
  /** How much `width` of a stock swells across its grain from making to the wettest, nm. */
  swell(stock: string, width: number): number;
  /** How much `width` of a stock shrinks across its grain from making to the driest, nm. */
  shrink(stock: string, width: number): number;
  /** Measured thickness of a stock that has one (sheet goods), nm; undefined for lumber. */
  thickness(stock: string): Length | undefined;
}

/** A part as a component gives it: shoulder box in piece axes, nothing that leans. */
export interface ComponentPart {
  readonly id: string;
  readonly name: string;
  readonly mark: string;
  readonly stock: string;
  readonly box: readonly [SizedSpan, SizedSpan, SizedSpan];
  readonly grain?: Axis;
  readonly show: readonly Face[];
  readonly status: 'cut now' | 'leave long' | 'fit to the piece' | 'measure first';
  readonly statusWhy: string;
  readonly role: string;
  readonly hand?: 'left' | 'right';
  readonly faceWords: Readonly<Record<Face, string>>;
  readonly reference: { readonly face: Face; readonly edge: Face; readonly end: Face };
}

/** A joint as a component gives it; `fields` are the joint kind's own, lengths already evaluated. */
export interface ComponentJoint {
  readonly id: string;
  readonly kind: string;
  readonly part: string;
  readonly into: readonly string[];
  readonly fields: Resolved;
}

/** A cut in a part (its own or a bounding part), in *piece* axes: `shiftCut` brings it to the part's own origin. */
export interface ComponentCut {
  readonly part: string;
  readonly cut: BoxCut | BoreCut | MarkCut;
}

/** A screw as it holds. Piece axes, nm. */
export interface ScrewFacts {
  readonly gauge?: number;
  /** Of the shank, as the gauge or its name gives it. */
  readonly diameter: number;
  /** From the top of a sunk head, else from under the head, to the point. */
  readonly length: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** What it draws on, and the part that its thread holds in. */
  readonly clamps: string;
  readonly holds: string;
}

/** A bought thing as a body in the piece: slide, screw, pull. */
export interface ComponentBody {
  readonly id: string;
  readonly kind: 'slide' | 'screw' | 'pull';
  readonly name: string;
  /** Piece axes, nm. */
  readonly body: Recipe;
  /** Parts whose wood it may enter (their holes are cut for it). */
  readonly into: readonly string[];
  readonly drawer?: string;
  readonly screw?: ScrewFacts;
  /** Of a slide: what a pair carries, kg, and where the figure is from. */
  readonly carries?: { readonly kg: number; readonly source: string };
}

/** Where one slide stands, for its screws: they are chosen when all the slides of the piece are known. Piece axes, nm. */
export interface SlideSite {
  /** The slide's id and its drawer's. */
  readonly id: string;
  readonly drawer: string;
  readonly family: SlideFamily;
  /** The parts that it is screwed to, and where their faces stand across. */
  readonly case: { readonly part: string; readonly face: number };
  readonly box: { readonly part: string; readonly face: number };
  /** Which way the case lies from the slide. */
  readonly hand: 'left' | 'right';
  /** Front to back. */
  readonly over: Span;
  /** Height of the line of its screws. */
  readonly line: number;
}

/** What is printed of a drawer. Gaps as made, by side. */
export interface DrawerFacts {
  readonly id: string;
  readonly mark: string;
  readonly opening: { readonly across: Sized; readonly up: Sized; readonly deep: Sized };
  readonly gaps: { readonly left: Sized; readonly right: Sized; readonly top: Sized; readonly bottom: Sized };
  readonly parts: readonly string[];
  readonly front: string;
}

export interface Expansion {
  readonly parts: readonly ComponentPart[];
  readonly joints: readonly ComponentJoint[];
  readonly cuts: readonly ComponentCut[];
  readonly hardware: readonly ComponentBody[];
  readonly slides?: readonly SlideSite[];
  readonly drawer?: DrawerFacts;
  readonly findings: readonly Diagnostic[];
}
