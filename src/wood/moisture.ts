import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';

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

/** A room as it is typed: humidity in %, temperature in degrees F (inch files) or C (millimetre files). */
export interface Room {
  readonly humidity: readonly [number, number];
  readonly temperature?: number;
}
const roomCelsius = (room: Room, units: 'in' | 'mm'): number =>
  units === 'in' ? celsius(room.temperature ?? 70) : (room.temperature ?? 21);

/** What the equation was fitted to: 0 to 95 % and 30 to 200 degrees F (Wood Handbook, table 4-2). */
const HUMIDITY = [0, 95] as const;
const CELSIUS = [celsius(30), celsius(200)] as const;

/** What is wrong with a room or a meter reading; paths from the root of the definition. */
export function roomFaults(room: Room | undefined, made: number | undefined, units: 'in' | 'mm'): Diagnostic[] {
  const fault = (path: JsonPath, message: string, hint: string): Diagnostic => ({
    code: 'room-out-of-range',
    severity: 'error',
    path,
    message,
    hint,
  });
  const out: Diagnostic[] = [];
  room?.humidity.forEach((h, i) => {
    if (!(h >= HUMIDITY[0] && h <= HUMIDITY[1]))
      out.push(fault(['room', 'humidity', i], `A room of ${h} % humidity is outside the table.`, 'From 0 to 95 %.'));
  });
  if (room && room.humidity[0] > room.humidity[1])
    out.push(
      fault(
        ['room', 'humidity'],
        `The room runs from ${room.humidity[0]} to ${room.humidity[1]} %, backwards.`,
        'Write the driest first.',
      ),
    );
  if (room && (roomCelsius(room, units) < CELSIUS[0] || roomCelsius(room, units) > CELSIUS[1]))
    out.push(
      fault(
        ['room', 'temperature'],
        `A room at ${room.temperature} degrees is outside the table.`,
        units === 'in' ? 'Degrees Fahrenheit, 30 to 200.' : 'Degrees Celsius, 0 to 90.',
      ),
    );
  if (made !== undefined && !(made >= 0 && made < 30))
    out.push(
      fault(['shop', 'moisture'], `Wood at ${made} % moisture is not ready for furniture.`, 'Most is 6 to 12 %.'),
    );
  return out;
}

/** The seasons of a room. What lies outside the table (see `roomFaults`) counts as the table's end. */
export function season(room: Room | undefined, made: number | undefined, units: 'in' | 'mm'): Season {
  const at = made ?? MADE_AT;
  if (!room) return { made: at, driest: DEFAULT_BAND[0], wettest: DEFAULT_BAND[1] };
  const t = within(roomCelsius(room, units), CELSIUS);
  const both = room.humidity.map((h) => equilibrium(within(h, HUMIDITY), t));
  return { made: at, driest: Math.min(...both), wettest: Math.max(...both) };
}
const within = (v: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, v));
