import { cosine, sine } from '../geom/angle.js';

/**
 * A property across the grain at `degrees` between the rings and the direction looked along: tangential at 0, radial at 90,
 * between them T cos2 + R sin2 (turning of a strain; the shear term left out).
 */
export const alongRings = (tangential: number, radial: number, degrees: number): number =>
  tangential * cosine(degrees) ** 2 + radial * sine(degrees) ** 2;
