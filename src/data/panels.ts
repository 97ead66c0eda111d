import { derived, figure, need, type Figure } from './printed.js';
import { PANELS_12_1 } from './tables/panels-12-1.js';

/** How a panel is built: what its sag in years and its screws depend on. */
export type Core = 'plywood' | 'mdf' | 'particleboard' | 'osb' | 'hardboard';

/** Sheet goods by kind, each figure with its source. */
export interface Panel {
  readonly id: string;
  readonly name: string;
  readonly core: Core;
  /** Mass over volume as it is used, over that of water. */
  readonly gravity: Figure;
  /** Whether its faces have a grain to be kept. */
  readonly grain: boolean;
  /** Modulus of elasticity in bending, Pa: the span along the face grain, and across it. */
  readonly stiffness: { readonly along: Figure; readonly across: Figure };
}

const low = (core: Core, column: 'gravityLow' | 'gravityHigh' | 'stiffnessLow', scale = 1): Figure =>
  need(PANELS_12_1, core, column, scale);
/** Middle of the range of specific gravity. */
const middle = (core: Core): Figure => {
  const [least, most] = [low(core, 'gravityLow'), low(core, 'gravityHigh')];
  return derived(Number(((least.value + most.value) / 2).toFixed(3)), 'middle of its range', [least, most]);
};
/** The lowest stiffness of the range: on the safe side. Plywood is about half as stiff across its face grain (from memory). */
const stiffnessOf = (core: Core): Panel['stiffness'] => {
  const along = low(core, 'stiffnessLow', 1e9);
  if (core !== 'plywood') return { along, across: along };
  return {
    along,
    across: { ...figure(along.value / 2, 'M', along.key, '12-1'), source: 'half of along, from memory' },
  };
};
const panel = (id: string, name: string, core: Core, grain: boolean, gravity: Figure): Panel => ({
  id,
  name,
  core,
  gravity,
  grain,
  stiffness: stiffnessOf(core),
});
const ply = (id: string, name: string): Panel => panel(id, name, 'plywood', true, low('plywood', 'gravityHigh'));

export const PANELS: readonly Panel[] = [
  panel('plywood-birch', 'Birch plywood', 'plywood', true, figure(0.65, 'M', 'birch-sheet')),
  ply('plywood', 'Plywood'),
  ply('plywood-oak', 'Oak plywood'),
  ply('plywood-maple', 'Maple plywood'),
  ply('plywood-walnut', 'Walnut plywood'),
  ply('plywood-cherry', 'Cherry plywood'),
  {
    ...ply('plywood-fir', 'Douglas-fir plywood'),
    // 950 000 psi along the face grain, as the woodwork standard takes it.
    stiffness: {
      along: figure(0.95e6 * 6894.757293168, 'R', 'aws-2009'),
      across: { ...figure(0.475e6 * 6894.757293168, 'M', 'aws-2009'), source: 'half of along, from memory' },
    },
  },
  panel('mdf', 'MDF', 'mdf', false, middle('mdf')),
  panel('mdf-veneered', 'Veneered MDF', 'mdf', true, middle('mdf')),
  panel('particleboard', 'Particleboard', 'particleboard', false, middle('particleboard')),
  panel('particleboard-veneered', 'Veneered particleboard', 'particleboard', true, middle('particleboard')),
  panel('hardboard', 'Hardboard', 'hardboard', false, middle('hardboard')),
  panel('osb', 'OSB', 'osb', false, middle('osb')),
];
export const panelById = (id: string): Panel | undefined => PANELS.find((p) => p.id === id);
