import { cell, need } from '../data/printed.js';
import { MOISTURE_13_2 } from '../data/tables/moisture-13-2.js';
import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { CELSIUS, celsius, equilibrium, HUMIDITY, humidityFor } from './equilibrium.js';

export { celsius, equilibrium } from './equilibrium.js';

/** Moisture (%) at the driest and the wettest of a room, and when the piece is made. */
export interface Season {
  readonly made: number;
  readonly driest: number;
  readonly wettest: number;
  /** How they were had, as it is printed. */
  readonly basis?: Basis;
}
export interface Basis {
  /** `read 7 % on 2027-01-15`. */
  readonly made: string;
  /** `30 to 60 % humidity at 70 °F`. */
  readonly room: string;
  readonly source: string;
  /** Not read in its source. */
  readonly memory?: true;
  /** What the shop's meter said and when, as far as it is given. */
  readonly reading?: Reading;
}
/** Moisture when made unless the meter says otherwise: Wood Handbook, FPL-GTR-190, table 13-2, interior, most of the US. */
export const MADE_AT = need(MOISTURE_13_2, 'most of the US', 'average').value;
/** Heated and cooled room of a temperate place, % moisture: our default. */
export const DEFAULT_BAND = [6, 11] as const;

/** Regions of table 13-2, as they are typed. */
export const REGIONS = ['most of the US', 'dry southwest', 'damp coast'] as const;
export type Region = (typeof REGIONS)[number];
/**
 * A room as it is typed: humidity in %, temperature in degrees F (inch files) or C (millimetre files); or the region where it
 * is, for rooms of which nothing was measured.
 */
export interface Room {
  readonly humidity?: readonly [number, number];
  readonly temperature?: number;
  readonly region?: Region;
}
/** What the shop's meter said, %, and the day. */
export interface Reading {
  readonly moisture?: number;
  readonly read?: string;
}
const usual = (units: 'in' | 'mm'): number => (units === 'in' ? 70 : 21);
const roomCelsius = (room: Room, units: 'in' | 'mm'): number => {
  const typed = room.temperature ?? usual(units);
  return units === 'in' ? celsius(typed) : typed;
};

const fault = (path: JsonPath, message: string, hint: string): Diagnostic => ({
  code: 'room-out-of-range',
  severity: 'error',
  path,
  message,
  hint,
});

/** What is wrong with a room or a meter reading; paths from the root of the definition. */
export function roomFaults(room: Room | undefined, made: number | undefined, units: 'in' | 'mm'): Diagnostic[] {
  const out: Diagnostic[] = [];
  const at = (...path: JsonPath): JsonPath => ['room', ...path];
  if (room && room.humidity === undefined && room.region === undefined)
    out.push(
      fault(['room'], 'A room without its humidity.', `Write "humidity": [30, 60], or "region": "${REGIONS[0]}".`),
    );
  if (room?.humidity && room.region !== undefined)
    out.push(fault(at('region'), 'A room by its humidity and by its region.', 'Keep the humidity if it was measured.'));
  room?.humidity?.forEach((h, i) => {
    if (!(h >= HUMIDITY[0] && h <= HUMIDITY[1]))
      out.push(fault(at('humidity', i), `A room of ${h} % humidity is outside the table.`, 'From 0 to 95 %.'));
  });
  if (room?.humidity && room.humidity[0] > room.humidity[1]) {
    const [from, to] = room.humidity;
    out.push(fault(at('humidity'), `The room runs from ${from} to ${to} %, backwards.`, 'Write the driest first.'));
  }
  if (room && (roomCelsius(room, units) < CELSIUS[0] || roomCelsius(room, units) > CELSIUS[1])) {
    const hint = units === 'in' ? 'Degrees Fahrenheit, 30 to 200.' : 'Degrees Celsius, 0 to 90.';
    out.push(fault(at('temperature'), `A room at ${room.temperature} degrees is outside the table.`, hint));
  }
  if (made !== undefined && !(made >= 0 && made < 30)) {
    const message = `Wood at ${made} % moisture is not ready for furniture.`;
    out.push(fault(['shop', 'moisture'], message, 'Most is 6 to 12 %.'));
  }
  return out;
}

/** What is missing of a reading: movement is reckoned from it, so it is asked for. */
export function readingNotes({ moisture, read }: Reading): Diagnostic[] {
  if (moisture !== undefined && read !== undefined) return [];
  return [
    {
      code: 'moisture-not-read',
      severity: 'note',
      path: moisture === undefined ? ['shop'] : ['shop', 'moisture'],
      message:
        moisture === undefined
          ? `The moisture of the wood was not read: it is taken as ${MADE_AT} %.`
          : `The moisture of the wood, ${moisture} %, has no date.`,
      hint: 'Read it with the meter in the shop, and write "moisture" and "read" with the day under "shop".',
    },
  ];
}

const within = (v: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, v));
const regionBand = (region: Region) =>
  [cell(MOISTURE_13_2, region, 'driest'), cell(MOISTURE_13_2, region, 'wettest')] as const;

/** The seasons of a room. What lies outside the table is an error of `roomFaults`; here it counts as the table's end. */
export function season(room: Room | undefined, reading: Reading | number | undefined, units: 'in' | 'mm'): Season {
  const { moisture, read }: Reading = typeof reading === 'number' ? { moisture: reading } : (reading ?? {});
  const made = moisture ?? MADE_AT;
  const { basis, ...band } = bandOf(room, units, madeWords(moisture, read, room, units));
  const own = { ...(moisture === undefined ? {} : { moisture }), ...(read === undefined ? {} : { read }) };
  return {
    made,
    ...band,
    basis: { ...basis, ...(moisture === undefined && read === undefined ? {} : { reading: own }) },
  };
}
function madeWords(
  moisture: number | undefined,
  read: string | undefined,
  room: Room | undefined,
  units: 'in' | 'mm',
): string {
  if (moisture === undefined) return `not read, taken as ${MADE_AT} % (Wood Handbook, table 13-2)`;
  const air = shopHumidity(moisture, room, units);
  const rest = air === undefined ? '' : `, as in air of ${Math.round(air)} %`;
  return `read ${moisture} %${read === undefined ? ', no date' : ` on ${read}`}${rest}`;
}
function bandOf(
  room: Room | undefined,
  units: 'in' | 'mm',
  made: string,
): Omit<Season, 'made' | 'basis'> & { readonly basis: Basis } {
  const [driest, wettest] = room?.region ? regionBand(room.region) : [];
  if (driest && wettest)
    return {
      driest: driest.value,
      wettest: wettest.value,
      basis: {
        made,
        room: `inside, ${room?.region}`,
        source: driest.source,
        ...(driest.memory ? { memory: true as const } : {}),
      },
    };
  if (!room?.humidity) {
    const [low, high] = DEFAULT_BAND;
    const basis = { made, room: 'a heated and cooled room', source: 'our default' };
    return { driest: low, wettest: high, basis };
  }
  const t = within(roomCelsius(room, units), CELSIUS);
  const both = room.humidity.map((h) => equilibrium(within(h, HUMIDITY), t));
  const degrees = `${room.temperature ?? usual(units)} °${units === 'in' ? 'F' : 'C'}`;
  return {
    driest: Math.min(...both),
    wettest: Math.max(...both),
    basis: {
      made,
      room: `${room.humidity[0]} to ${room.humidity[1]} % humidity at ${degrees}`,
      source: 'Wood Handbook, FPL-GTR-282, equation 4-5',
    },
  };
}

/** Humidity of the air (%) that keeps wood at a moisture, at the room's temperature; undefined outside the table. */
export function shopHumidity(moisture: number, room: Room | undefined, units: 'in' | 'mm'): number | undefined {
  try {
    return humidityFor(moisture, roomCelsius(room ?? {}, units));
  } catch (e) {
    if (e instanceof RangeError) return undefined;
    throw e;
  }
}
