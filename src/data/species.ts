import { SPECIES_ROWS } from './species-rows.js';

/**
 * How a figure was had: R read in the source, R2 read in two that agree, RM read and remembered alike, MC remembered and
 * borne out by calculation, M from memory only, D derived by equation 13-3 from shrinkage (or by volume).
 */
export type FigureStatus = 'R' | 'R2' | 'RM' | 'MC' | 'M' | 'D';
export interface Figure {
  readonly value: number;
  readonly source: string;
  readonly status: FigureStatus;
}
export interface Species {
  readonly id: string;
  readonly name: string;
  readonly kind: 'hardwood' | 'softwood';
  /** Change per 1 % moisture, as a share of the size at 10 %; valid 6 to 14 %. */
  readonly radial: Figure;
  readonly tangential: Figure;
  /** Oven-dry mass over volume at 12 %. */
  readonly gravity: Figure;
  /** Per cent, green to oven-dry. */
  readonly shrinkage: { readonly radial: Figure; readonly tangential: Figure };
}

const HANDBOOK = 'Wood Handbook, FPL-GTR-190';
const figure = (value: number, status: FigureStatus, table: string): Figure => ({
  value,
  status,
  source:
    status === 'M'
      ? `from memory (${HANDBOOK}, ${table})`
      : status === 'D'
        ? `derived from ${HANDBOOK}`
        : status === 'MC'
          ? `from memory, borne out by calculation (${HANDBOOK}, ${table})`
          : `${HANDBOOK}, ${table}`,
});

export const SPECIES: readonly Species[] = SPECIES_ROWS.map((r) => ({
  id: r[0],
  name: r[1],
  kind: r[2] === 'hard' ? 'hardwood' : 'softwood',
  radial: figure(r[3], r[4], 'table 13-5'),
  tangential: figure(r[5], r[6], 'table 13-5'),
  gravity: figure(r[7], r[8], 'table 5-3'),
  shrinkage: { radial: figure(r[9], r[10], 'tables 4-3, 4-4'), tangential: figure(r[11], r[12], 'tables 4-3, 4-4') },
}));

/** Other names under which the trade asks for a wood. */
const ALSO: Readonly<Record<string, string>> = {
  'white-oak': 'oak-white',
  'red-oak': 'oak-red-northern',
  'oak-red': 'oak-red-northern',
  'hard-maple': 'maple-sugar',
  'maple-hard': 'maple-sugar',
  'soft-maple': 'maple-red',
  'maple-soft': 'maple-red',
  walnut: 'walnut-black',
  'black-walnut': 'walnut-black',
  cherry: 'cherry-black',
  'black-cherry': 'cherry-black',
  ash: 'ash-white',
  'white-ash': 'ash-white',
  poplar: 'yellow-poplar',
  'tulip-poplar': 'yellow-poplar',
  beech: 'beech-american',
  birch: 'birch-yellow',
  hickory: 'hickory-shagbark',
  alder: 'alder-red',
  mahogany: 'mahogany-true',
};

/** A species by its id or a trade name; undefined when it is not in the table. */
export function speciesById(id: string): Species | undefined {
  const wanted = ALSO[id] ?? id;
  return SPECIES.find((s) => s.id === wanted);
}

/** What the trade calls it on a sheet: `White oak`, `Hard maple`, `Yellow-poplar`. */
export function tradeName(species: Species): string {
  const inner = /\((?:.*, )?((?:hard|soft) maple)\)/.exec(species.name)?.[1];
  const plain = inner ?? species.name.replace(/ \(.*\)$/, '');
  const [family, which] = plain.split(', ');
  const words = which === undefined ? plain : `${which} ${(family ?? '').toLowerCase()}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}
