import { cell, derived, figure, need, type Figure } from './printed.js';
import { CHANGE_13_5 } from './tables/change-13-5.js';
import { NAMES } from './tables/names.js';
import { SHRINKAGE_4_3 } from './tables/shrinkage-4-3.js';
import { SHRINKAGE_4_4 } from './tables/shrinkage-4-4.js';
import { STRENGTH_5_3A } from './tables/strength-5-3a.js';
import { STRENGTH_5_5B } from './tables/strength-5-5b.js';
import { dustOf, type Dust } from './tables/wood-dust.js';
import { POUND_FORCE_N, PSI_PA } from '../lengths/units.js';

export type { Figure, FigureStatus } from './printed.js';

/** A wood with all that is known of it, each figure with its source. */
export interface Species {
  readonly id: string;
  readonly name: string;
  /** What a shop calls it, printed as it is; else see `tradeName`. */
  readonly called?: string;
  readonly kind: 'hardwood' | 'softwood';
  /** Change per 1 % moisture, as a share of the size at 10 %; valid 6 to 14 %. */
  readonly radial: Figure;
  readonly tangential: Figure;
  /** Moisture at which it begins to shrink, %, as its coefficients take it: 30, of a few woods 22. */
  readonly start: Figure;
  /** Oven-dry mass over volume at 12 %. */
  readonly gravity: Figure;
  /** Per cent, green to oven-dry. */
  readonly shrinkage: { readonly radial: Figure; readonly tangential: Figure; readonly volumetric?: Figure };
  /** Modulus of elasticity in bending at 12 %, Pa: apparent, so that a formula leaves shear out. */
  readonly stiffness: Figure;
  /** Modulus of rupture in bending at 12 %, Pa. */
  readonly rupture: Figure;
  /** Strength in shear along the grain, and in compression across it, at 12 %, Pa. */
  readonly shear?: Figure;
  readonly crushing?: Figure;
  /** Side hardness at 12 %, N. */
  readonly hardness?: Figure;
  readonly dust?: Dust;
}

/** Woods whose coefficients of table 13-5 are computed from a start at 22 %, as equation 13-3 shows. */
const EARLY = new Set(['redwood-old', 'redwood-young', 'cedar-western-red', 'teak', 'mahogany-true']);
const EARLY_START = figure(22, 'D', 'handbook-2010', '13-5');
/** Fibre saturation as the handbook's equations take it, %. */
export const SATURATION = figure(30, 'R', 'handbook-2021', 'equation 4-9');

/** Coefficient from shrinkage S (%): equation 13-3 for 1 % at 10 %, 1 / (3000 / S - 20). */
export const coefficientFrom = (shrinkage: number): number => 1 / (3000 / shrinkage - 20);
const roundTo = (v: number, places: number): number => Number(v.toFixed(places));

/** Coefficients that table 13-5 does not have: from another list, else from shrinkage. */
const LISTED: Readonly<Record<string, number>> = { jatoba: 0.003, purpleheart: 0.00212 };
function changeOf(id: string, way: 'radial' | 'tangential', shrinkage: Figure): Figure {
  const own = cell(CHANGE_13_5, id, way);
  if (own) return own;
  const listed = way === 'tangential' ? LISTED[id] : undefined;
  if (listed !== undefined) return figure(listed, 'R', 'nwfa-a200');
  return derived(roundTo(coefficientFrom(shrinkage.value), 5), 'by equation 13-3', [shrinkage]);
}

/** Specific gravity at 12 % from the basic one: equation 4-11, the volume shrunk by 18 of 30 parts of its shrinkage. */
function gravityFromBasic(basic: Figure, volumetric: Figure): Figure {
  const shrunk = volumetric.value * (1 - 12 / SATURATION.value);
  return derived(roundTo(basic.value / (1 - shrunk / 100), 3), 'by equation 4-11', [basic, volumetric]);
}

type Strength = Pick<Species, 'gravity' | 'stiffness' | 'rupture' | 'shear' | 'crushing' | 'hardness'>;
function strengthOf(id: string, volumetric: Figure): Strength {
  const own = STRENGTH_5_3A.rows.some(([row]) => row === id);
  const at = own
    ? {
        gravity: need(STRENGTH_5_3A, id, 'gravity'),
        stiffness: need(STRENGTH_5_3A, id, 'stiffness', 1e9),
        rupture: need(STRENGTH_5_3A, id, 'rupture', 1e6),
        shear: cell(STRENGTH_5_3A, id, 'shear', 1e6),
        crushing: cell(STRENGTH_5_3A, id, 'crushing', 1e6),
        hardness: cell(STRENGTH_5_3A, id, 'hardness'),
      }
    : {
        gravity: gravityFromBasic(need(STRENGTH_5_5B, id, 'gravityGreen'), volumetric),
        // Sapele: 1.70 million psi was read, 1.82 is remembered.
        stiffness:
          id === 'sapele'
            ? figure(1.7e6 * PSI_PA, 'R', 'fpl-sapele')
            : need(STRENGTH_5_5B, id, 'stiffness', 1e6 * PSI_PA),
        rupture: need(STRENGTH_5_5B, id, 'rupture', PSI_PA),
        shear: cell(STRENGTH_5_5B, id, 'shear', PSI_PA),
        crushing: undefined,
        hardness: cell(STRENGTH_5_5B, id, 'hardness', POUND_FORCE_N),
      };
  return {
    gravity: at.gravity,
    stiffness: at.stiffness,
    rupture: at.rupture,
    ...(at.shear ? { shear: at.shear } : {}),
    ...(at.crushing ? { crushing: at.crushing } : {}),
    ...(at.hardness ? { hardness: at.hardness } : {}),
  };
}
function speciesOf([id, name, kind]: (typeof NAMES)[number]): Species {
  const from = SHRINKAGE_4_3.rows.some(([row]) => row === id) ? SHRINKAGE_4_3 : SHRINKAGE_4_4;
  const radial = need(from, id, 'radial');
  const tangential = need(from, id, 'tangential');
  const volumetric = need(from, id, 'volumetric');
  const dust = dustOf(id);
  return {
    id,
    name,
    kind,
    radial: changeOf(id, 'radial', radial),
    tangential: changeOf(id, 'tangential', tangential),
    start: EARLY.has(id) ? EARLY_START : SATURATION,
    shrinkage: { radial, tangential, volumetric },
    ...strengthOf(id, volumetric),
    ...(dust ? { dust } : {}),
  };
}
export const SPECIES: readonly Species[] = NAMES.map(speciesOf);

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
  if (species.called !== undefined) return species.called;
  const inner = /\((?:.*, )?((?:hard|soft) maple)\)/.exec(species.name)?.[1];
  const plain = inner ?? species.name.replace(/ \(.*\)$/, '');
  const [family, which] = plain.split(', ');
  // `Cedar, western redcedar` says its family twice; Douglas is a name.
  const last = family === 'Douglas-fir' ? family : (family ?? '').toLowerCase();
  const words = which === undefined ? plain : which.endsWith(last) ? which : `${which} ${last}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}
