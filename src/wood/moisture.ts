/** Equilibrium moisture content of wood. */

const poly = (c: readonly [number, number, number], t: number): number => c[0] + c[1] * t + c[2] * t * t;
export const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

/**
 * Moisture content (%) that wood comes to in air of `humidity` (%, 0 <= h < 100) and `temperature` (degrees C).
 * Source: Wood Handbook, FPL-GTR-282, equation 4-5 (Hailwood and Horrobin; Simpson 1973). RangeError outside 0..100 %.
 */
export function equilibrium(humidity: number, temperature: number): number {
  if (!(humidity >= 0 && humidity < 100)) throw new RangeError(`humidity out of range: ${humidity}`);
  const w = poly([349, 1.29, 0.0135], temperature);
  const k = poly([0.805, 0.000736, -0.00000273], temperature);
  const k1 = poly([6.27, -0.00938, -0.000303], temperature);
  const k2 = poly([1.91, 0.0407, -0.000293], temperature);
  const x = (k * humidity) / 100;
  return (1800 / w) * (x / (1 - x) + (k1 * x + 2 * k1 * k2 * x * x) / (1 + k1 * x + k1 * k2 * x * x));
}

/** Moisture (%) at the driest and the wettest of a room, and when the piece is made. */
export interface Season {
  readonly made: number;
  readonly driest: number;
  readonly wettest: number;
}
/** Moisture when made unless the meter says otherwise: Wood Handbook, FPL-GTR-190, table 13-2, interior, most of the US. */
export const MADE_AT = 8;
/** Heated and cooled room of a temperate place, % moisture: our default. */
export const DEFAULT_BAND = [6, 11] as const;

/** The seasons of a room: humidity in %, temperature in degrees F (inch files) or C (millimetre files). */
export function season(
  room: { readonly humidity: readonly [number, number]; readonly temperature?: number } | undefined,
  made: number | undefined,
  units: 'in' | 'mm',
): Season {
  const at = made ?? MADE_AT;
  if (!room) return { made: at, driest: DEFAULT_BAND[0], wettest: DEFAULT_BAND[1] };
  const given = room.temperature ?? (units === 'in' ? 70 : 21);
  const t = units === 'in' ? celsius(given) : given;
  const both = room.humidity.map((h) => equilibrium(h, t));
  return { made: at, driest: Math.min(...both), wettest: Math.max(...both) };
}
