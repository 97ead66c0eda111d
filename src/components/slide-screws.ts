import type { SlideScrew } from '../data/slides.js';
import type { Recipe } from '../geom/recipe.js';
import { snap, type Length } from '../lengths/length.js';
import type { ComponentBody, SlideSite } from './component.js';

/** How deep a slide's screw goes into the wood, nm: the steel takes the rest of its length. */
export const bite = (screw: SlideScrew, site: SlideSite): number => screw.length - site.family.steel;

/** Places of the screws of one half of a slide, front to back: piece axes, nm. */
export function screwPlaces(site: SlideSite, screw: SlideScrew, step: Length): readonly number[] {
  const { family, over } = site;
  const first = over[0] + family.endScrew;
  const apart = (over[1] - family.endScrew - first) / Math.max(1, screw.count - 1);
  return Array.from({ length: screw.count }, (_, i) => over[0] + snap(first - over[0] + i * apart, step));
}

/**
 * Screws of one half of a slide as bodies with their heads and tips, on the slide's line: first and last at the family's
 * distance from its ends, the others evenly between. No bores are cut for them: they are drilled by the slide's own holes.
 */
export function slideScrewBodies(
  site: SlideSite,
  screw: SlideScrew,
  step: Length,
  partAt: (deep: number) => string,
): ComponentBody[] {
  const { family, line } = site;
  const face = (screw.into === 'case' ? site.case : site.box).face;
  // Into the case on the left hand the tip points left, and so on.
  const sign = (site.hand === 'left') === (screw.into === 'case') ? -1 : 1;
  return screwPlaces(site, screw, step).map((deep, i): ComponentBody => ({
    id: `${site.id}.${screw.into}_${i + 1}`,
    kind: 'screw',
    name: `${screw.name}, for slides, into the ${screw.into}`,
    body: turned(screw, face, sign, deep, line, family.steel),
    into: [partAt(deep), site.id],
    drawer: site.drawer,
    screw: {
      ...(screw.gauge === undefined ? {} : { gauge: screw.gauge }),
      diameter: screw.diameter,
      length: screw.length,
      from: [face - sign * family.steel, deep, line],
      to: [face + sign * bite(screw, site), deep, line],
      clamps: site.id,
      holds: partAt(deep),
    },
  }));
}

/** Head, shank and square tip along the axis across, the underside of the head on the steel. */
function turned(screw: SlideScrew, face: number, sign: 1 | -1, deep: number, line: number, steel: number): Recipe {
  const at = (into: number): number => face + sign * into;
  const { diameter, head } = screw;
  const profile: (readonly [number, number])[] = [
    [0, at(0 - steel - head.height)],
    [head.diameter / 2, at(0 - steel - head.height)],
    [head.diameter / 2, at(0 - steel)],
    [diameter / 2, at(0 - steel)],
    [diameter / 2, at(screw.length - steel)],
    [0, at(screw.length - steel)],
  ];
  return { op: 'turned', axis: 0, centre: [0, deep, line], profile: sign < 0 ? profile.reverse() : profile };
}
