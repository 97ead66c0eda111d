import type { Panel } from '../data/panels.js';
import { figure, type Figure } from '../data/printed.js';
import type { Species } from '../data/species.js';
import { SCREWS_8_4 } from '../data/tables/screws-8-4.js';
import { panelOf, woodOf, type Made } from './material.js';
import { INCH_MM, POUND_FORCE_N } from '../lengths/units.js';

/** What a wood screw holds. Sizes in mm, loads in N. Estimates of single screws, not tests. */

/** Ultimate withdrawal from side grain, p = 108.25 G2 D L: Wood Handbook, FPL-GTR-282, equation 8-10. */
export const WITHDRAWAL = figure(108.25, 'R', 'handbook-2021', 'equation 8-10');
/** Allowable withdrawal, W = 2850 G2 D lbf for each inch of thread, as N and mm: NDS 12.2. */
export const WITHDRAWAL_ALLOWED = figure((2850 * POUND_FORCE_N) / INCH_MM ** 2, 'R2', 'nds', 'section 12.2');
/** End grain holds about three quarters of that, and not surely: it is told, never counted on. */
export const END_GRAIN = figure(0.75, 'M', 'handbook-2021', 'chapter 8');

/** N that pull a screw of shank `diameter` out of side grain, `thread` of it in wood of specific gravity `gravity` at 12 %. */
export const withdrawal = (gravity: number, diameter: number, thread: number): number =>
  WITHDRAWAL.value * gravity ** 2 * diameter * thread;
/** N that it may be asked to hold for good. */
export const withdrawalAllowed = (gravity: number, diameter: number, thread: number): number =>
  WITHDRAWAL_ALLOWED.value * gravity ** 2 * diameter * thread;

/**
 * N across a screw at the proportional limit, K D2 by equation 8-13 and table 8-4; less than 7 diameters of thread holds less
 * in proportion. Undefined for woods lighter or heavier than the table: nothing is made up for them.
 */
export function lateral(species: Species, diameter: number, thread: number): number | undefined {
  const k = lateralFigure(species);
  return k && k.value * diameter ** 2 * Math.min(1, thread / (7 * diameter));
}
/** K of table 8-4 for a wood, N/mm2; a specific gravity between two rows belongs to the lower. */
export function lateralFigure(species: Species): Figure | undefined {
  const g = species.gravity.value;
  const rows = SCREWS_8_4.rows.filter(([id]) => id.startsWith(species.kind));
  const most = Math.max(...rows.map(([, , high]) => high?.[0] ?? 0));
  const row = g > most ? undefined : rows.filter(([, low]) => g >= (low?.[0] ?? 0)).at(-1);
  const k = row?.[3];
  return k ? figure(k[0], k[1], SCREWS_8_4.key, SCREWS_8_4.table) : undefined;
}

/**
 * N that pull a screw out of the face or the edge of MDF or particleboard: 41.1 or 31.8 D^0.5 (L - D/3)^1.25 G2, from memory
 * (Wood Handbook, chapter 8). Undefined for other panels, and for a screw that hardly enters.
 */
export function panelWithdrawal(
  panel: Panel,
  where: 'face' | 'edge',
  diameter: number,
  thread: number,
): number | undefined {
  if (panel.core !== 'mdf' && panel.core !== 'particleboard') return undefined;
  const deep = thread - diameter / 3;
  if (deep <= 0) return undefined;
  const c = where === 'face' ? PANEL_FACE.value : PANEL_EDGE.value;
  return c * Math.sqrt(diameter) * deep * Math.sqrt(Math.sqrt(deep)) * panel.gravity.value ** 2;
}
/** Of what draws a screw out of a panel, how much it may be asked to hold for good: a fifth, as wood is figured (NDS); our default. */
const PANEL_SHARE = 1 / 5;
/**
 * What a screw may be asked to hold, drawn out of a stock, N, with its rule and source: side grain by the NDS, plywood through
 * its face as wood of its gravity (from memory), MDF and particleboard a fifth of what draws it out. Undefined for others.
 */
export function drawnAllowed(
  stock: Made | undefined,
  where: 'face' | 'edge',
  diameter: number,
  thread: number,
): { readonly newtons: number; readonly gravity: Figure; readonly rule: string; readonly source: string } | undefined {
  const wood = woodOf(stock);
  const side = '2850 G² D an inch of thread';
  const { source } = WITHDRAWAL_ALLOWED;
  if (wood)
    return {
      newtons: withdrawalAllowed(wood.gravity.value, diameter, thread),
      gravity: wood.gravity,
      rule: side,
      source,
    };
  const panel = panelOf(stock);
  if (!panel) return undefined;
  const { gravity } = panel;
  if (panel.core === 'plywood' && where === 'face')
    return {
      newtons: withdrawalAllowed(gravity.value, diameter, thread),
      gravity,
      rule: side,
      source: `${source}; plywood as wood of its gravity: from memory`,
    };
  const pulled = panelWithdrawal(panel, where, diameter, thread);
  if (pulled === undefined) return undefined;
  const figure = where === 'face' ? PANEL_FACE : PANEL_EDGE;
  return {
    newtons: pulled * PANEL_SHARE,
    gravity,
    rule: `a fifth of ${figure.value} √D (L − D/3)^1.25 G² (N, mm)`,
    source: `${figure.source}; a fifth: our default`,
  };
}
export const PANEL_FACE = figure(41.1, 'M', 'handbook-2021', 'chapter 8');
export const PANEL_EDGE = figure(31.8, 'M', 'handbook-2021', 'chapter 8');
