import { expect, test } from 'vitest';
import { leanOn } from '../../src/checks/tipping.js';
import { FILL } from '../../src/checks/drawerRoom.js';
import { panelById } from '../../src/data/panels.js';
import { speciesById } from '../../src/data/species.js';
import { toMm } from '../../src/lengths/length.js';
import { longestShelf, tableSag } from '../../src/wood/beam.js';
import { strengthAt } from '../../src/wood/elasticity.js';
import { equilibriumFahrenheit } from '../../src/wood/equilibrium.js';
import { recommendedWeight } from '../../src/wood/lifting.js';
import { density } from '../../src/wood/mass.js';
import { change, changeBy, changeByShrinkage } from '../../src/wood/movement.js';
import { withdrawalAllowed } from '../../src/wood/screws.js';
import { thicknessRange } from '../../src/wood/thickness.js';

const LB = 0.45359237;
const LBF = 4.4482216152605;
const PSI = 6894.757293168;
const PSF = LBF / 0.3048 ** 2;
const IN = 25.4;
const wood = (id: string): NonNullable<ReturnType<typeof speciesById>> => {
  const found = speciesById(id);
  if (!found) throw new Error(id);
  return found;
};
/** Longest shelf of 12 in, in: the standard prints whole inches, cut off. */
const shelf = (psi: number, thick: number, psf: number): number =>
  Math.floor(longestShelf(psi * PSI, thick * 0.0254, psf * PSF, 144) / 0.0254 + 0.05);

/**
 * Cases that others have published, each worked by the code that judges: what, where it stands, what is worked out here, what
 * is printed there, and how near the print is.
 */
const CASES: readonly (readonly [name: string, source: string, ours: () => number, printed: number, near: number])[] = [
  [
    'moisture of wood at 70 °F in air of 50 %',
    'Wood Handbook, table 4-2',
    () => equilibriumFahrenheit(50, 70),
    9.2,
    0.06,
  ],
  [
    'moisture of wood at 90 °F in air of 80 %',
    'Wood Handbook, table 4-2',
    () => equilibriumFahrenheit(80, 90),
    15.4,
    0.06,
  ],
  [
    'white fir, 232 mm flat-sawn, 8 to 11 %: mm wider',
    'Wood Handbook, FPL-GTR-190, p. 13-17',
    () => changeBy(0.00245, 232, 8, 11, 30),
    1.7,
    0.05,
  ],
  [
    'red oak flooring, 5 in flat-sawn, 6 to 9 %: in wider',
    'Hardwood Floors Magazine, December 2016',
    () => change(5, wood('oak-red'), 'flat', 6, 9),
    0.055,
    0.0006,
  ],
  [
    'cherry: change per 1 % from a shrinkage of 7.1 %',
    'Wood Handbook, tables 4-3 and 13-5',
    () => changeByShrinkage(7.1, 1, 10, 11),
    0.00248,
    0.000005,
  ],
  [
    'white ash: modulus of rupture at 8 %, kPa, from 103 000 at 12 % and 66 000 green',
    'Wood Handbook, chapter 5, example of equation 5-3',
    () => strengthAt(103_000, 66_000, 8, 24),
    119_500,
    50,
  ],
  [
    'wood of specific gravity 0.60: kg/m³ at 12 %',
    'Wood Handbook, table 4-6a',
    () => density('lumber', 'ash-white') ?? 0,
    672,
    0.1,
  ],
  [
    'shelf of fir plywood 3/4 in, 40 lb/ft²: in',
    'Architectural Woodwork Standards, 2009, p. 279',
    () => shelf(950_000, 0.75, 40),
    40,
    0,
  ],
  ['shelf of fir plywood 3/4 in, 50 lb/ft²: in', 'the same', () => shelf(950_000, 0.75, 50), 37, 0],
  ['shelf of red oak 3/4 in, 40 lb/ft²: in', 'the same', () => shelf(1_820_000, 0.75, 40), 49, 0],
  ['shelf of red oak 1 in, 40 lb/ft²: in', 'the same', () => shelf(1_820_000, 1, 40), 66, 0],
  [
    'wood screw No. 10 in wood of 0.45: lb an inch of thread',
    'NDS, table of withdrawal',
    () => withdrawalAllowed(0.45, 0.19 * IN, IN) / LBF,
    109,
    0.8,
  ],
  [
    'most that one person lifts, at its best: lb',
    'NIOSH, revised lifting equation',
    () => recommendedWeight({ reach: 10 * IN, height: 30 * IN, travel: 10 * IN }) / LB,
    51,
    1e-6,
  ],
  [
    'clothes in a cubic foot of drawer: lb',
    '16 CFR 1261, ASTM F2057-23, 9.2',
    () => (FILL * 0.3048 ** 3) / LB,
    8.5,
    1e-9,
  ],
  [
    'plywood of 18 mm, sanded: thinnest, mm',
    'EN 315:2000',
    () => toMm(thicknessRange(panelById('plywood') as never, '18 mm', 'mm')?.from ?? (0 as never)),
    17.06,
    1e-6,
  ],
];

/** Sums worked by hand, the figures beside them; more stand beside each check in its own test. */
const SUMS: readonly (readonly [name: string, ours: () => number, byHand: number, near: number])[] = [
  // 5 x 100 x 36^3 / (384 x 1.82e6 x .3516).
  [
    'red oak 36 x 10 x 3/4 under 100 lb: in',
    () => tableSag('even, simple', 100 * LBF, 36 * 0.0254, 1.82e6 * PSI, { breadth: 0.254, height: 0.01905 }) / 0.0254,
    0.0949,
    0.0002,
  ],
  // 9 x .00365 x 3.
  ['white oak front, 9 in flat, 8 to 11 %: in', () => change(9, wood('oak-white'), 'flat', 8, 11), 0.0986, 0.0001],
  // atan(.43 / 16).
  ['carpet under a chest 16 in deep: degrees', () => leanOn(0.43 * IN, 16 * IN), 1.539, 0.0005],
  // 51 x 10/20 x (1 - .0075 x 30) x (.82 + 1.8/30).
  [
    'hands 20 in out, floor to 30 in: lb',
    () => recommendedWeight({ reach: 20 * IN, height: 0, travel: 30 * IN }) / LB,
    17.39,
    0.005,
  ],
];

test.each(CASES)('%s (%s)', (_name, _source, ours, printed, near) => {
  expect(Math.abs(ours() - printed)).toBeLessThanOrEqual(near);
});
test.each(SUMS)('by hand: %s', (_name, ours, byHand, near) => {
  expect(Math.abs(ours() - byHand)).toBeLessThanOrEqual(near);
});
test('ten published cases at least', () => expect(CASES.length).toBeGreaterThanOrEqual(10));
