import type { Axis, Face } from '../geom/axis.js';
import type { Box3 } from '../geom/box.js';
import { meet, width } from '../geom/box.js';
import type { Units } from '../lengths/length.js';
import { inches, nm } from '../lengths/length.js';
import { shopDefaults } from '../shop/defaults.js';
import type { Sized } from '../value/sized.js';
import { given } from '../value/sized.js';
import type { Claim, ExampleSite, Site, World } from './joint.js';

/** A given length for an example, in inches. */
export const inchSized = (typed: string, value: number): Sized => given(inches(value), typed);
/** A box in inches. */
export const inchBox = (...spans: readonly (readonly [number, number])[]): Box3 => {
  const [a, b, c] = spans.map(([lo, hi]): [number, number] => [inches(lo), inches(hi)]);
  if (!a || !b || !c) throw new RangeError('a box has three spans');
  return [a, b, c];
};
/** A site box in inches: the entering part stands from -length to 0 along `into`. */
export const entering = (length: number, thick: number, wide: number, grain: Axis = 0): ExampleSite['entering'] => ({
  box: inchBox([-length, 0], [0, thick], [0, wide]),
  grain,
});

/** The world of a shop with our default rules: no swell unless told. */
export function exampleWorld(units: Units = 'in', swell: World['swell'] = () => 0): World {
  const { step, dovetail, straight, pitch } = shopDefaults(units);
  return { units, step, bits: { dovetail, straight }, pitch, swell };
}

export interface SiteOptions {
  readonly hand?: 1 | -1;
  readonly world?: World;
  readonly material?: 'solid' | 'sheet';
  readonly claims?: readonly Claim[];
  /** Where piece directions point; without it a piece direction is the site face of the same name. */
  readonly direction?: (piece: Face) => Face;
}

/** Two boxes as a site, for the tests and the gallery. */
export function exampleSite(boxes: ExampleSite, options: SiteOptions = {}): Site {
  const { entering: e, receiving: r } = boxes;
  const shared = (axis: 1 | 2) => meet(e.box[axis], r.box[axis]) ?? ([0, 0] as const);
  const sheet = options.material === 'sheet';
  return {
    id: 'sample.1',
    joint: 'sample',
    hand: options.hand ?? 1,
    entering: {
      part: 'entering',
      box: e.box,
      grain: e.grain,
      material: sheet ? 'sheet' : 'solid',
      ...(sheet ? { measured: nm(width(e.box[1])) } : {}),
    },
    receiving: { part: 'receiving', box: r.box, grain: r.grain, material: 'solid' },
    contact: { thick: shared(1), wide: shared(2) },
    direction: options.direction ?? ((face) => face),
    lean: 0,
    world: options.world ?? exampleWorld(),
    claims: options.claims ?? [],
  };
}
