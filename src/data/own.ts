import { PANELS, panelById, type Panel } from './panels.js';
import type { Figure } from './printed.js';
import { coefficientFrom, SPECIES, speciesById, type Species } from './species.js';

/** Own figures of a wood, in SI: Pa, N, ratios, per cent. `source` says where all of them come from. */
export interface OwnWood {
  readonly name?: string;
  readonly gravity?: number;
  readonly radial?: number;
  readonly tangential?: number;
  readonly shrinkage?: readonly [radial: number, tangential: number];
  readonly stiffness?: number;
  readonly rupture?: number;
  readonly hardness?: number;
  readonly source: string;
}
export interface OwnPanel {
  readonly name?: string;
  readonly gravity?: number;
  readonly stiffness?: readonly [along: number, across: number];
  readonly source: string;
}
/** Woods and panels to choose from: those of the tables with a shop's own laid over them. */
export interface Materials {
  readonly wood: (id: string) => Species | undefined;
  readonly panel: (id: string) => Panel | undefined;
  readonly woods: readonly string[];
  readonly panels: readonly string[];
}
export const TABLES: Materials = {
  wood: speciesById,
  panel: panelById,
  woods: SPECIES.map((s) => s.id),
  panels: PANELS.map((p) => p.id),
};

const own = (value: number, source: string): Figure => ({ value, source, key: 'ours', status: 'R' });

/** A wood with a shop's own figures over those of `base`. Own shrinkage gives its coefficients too (equation 13-3). */
export function ownWood(id: string, base: Species, o: OwnWood): Species {
  const at = (value: number | undefined, usual: Figure): Figure => (value === undefined ? usual : own(value, o.source));
  const [sr, st] = o.shrinkage ?? [];
  const byShrinkage = (s: number | undefined): number | undefined => (s === undefined ? undefined : coefficientFrom(s));
  return {
    ...base,
    id,
    ...(o.name === undefined ? {} : { name: o.name, called: o.name }),
    gravity: at(o.gravity, base.gravity),
    radial: at(o.radial ?? byShrinkage(sr), base.radial),
    tangential: at(o.tangential ?? byShrinkage(st), base.tangential),
    shrinkage: {
      ...base.shrinkage,
      radial: at(sr, base.shrinkage.radial),
      tangential: at(st, base.shrinkage.tangential),
    },
    stiffness: at(o.stiffness, base.stiffness),
    rupture: at(o.rupture, base.rupture),
    ...(o.hardness === undefined ? {} : { hardness: own(o.hardness, o.source) }),
  };
}
export const ownPanel = (id: string, base: Panel, o: OwnPanel): Panel => ({
  ...base,
  id,
  name: o.name ?? base.name,
  gravity: o.gravity === undefined ? base.gravity : own(o.gravity, o.source),
  stiffness: o.stiffness
    ? { along: own(o.stiffness[0], o.source), across: own(o.stiffness[1], o.source) }
    : base.stiffness,
});
