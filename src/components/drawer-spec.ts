import type { Sized } from '../value/sized.js';

/** A drawer's own fields, lengths evaluated; what is left out is filled by the rules in drawer-sizes.ts. */
export interface DrawerFields {
  readonly front: {
    /** `separate`: screwed on from inside the box. `integral`: the front is the box's front, the sides lapped into it. */
    readonly kind: 'separate' | 'integral';
    readonly stock: string;
    readonly thickness?: Sized;
    /** Gap at the sides and below. */
    readonly reveal?: Sized;
    /** How far the front stands behind the parts around it. */
    readonly back?: Sized;
    readonly pulls?: number | 'none';
  };
  readonly box: {
    readonly stock: string;
    readonly bottom: string;
    /** Lower edge of the bottom's groove over the lower edge of the box. */
    readonly bottomUp?: Sized;
    /** Thickness of sides and back (and of the box front). */
    readonly sides?: Sized;
    readonly height?: Sized;
    /** Outside length of the box, front to back. */
    readonly depth?: Sized;
    readonly corner?: string;
    readonly runner: 'side-slide' | 'none';
    /** Key in data/slides. */
    readonly slide?: string;
  };
}
