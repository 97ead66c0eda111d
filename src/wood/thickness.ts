import { cell, need } from '../data/printed.js';
import type { Panel } from '../data/panels.js';
import { BIRCH, EN_315, INCH_PLY, MDF_THICKNESS } from '../data/tables/panel-thickness.js';
import { parseFigure } from '../lengths/format.js';
import { inches, mm, toIn, toMm, type Length, type Units } from '../lengths/length.js';

/** How thick sheets that are sold as `nominal` measure, nm, and what says so. */
export interface Thickness {
  readonly nominal: Length;
  readonly from: Length;
  readonly to: Length;
  readonly source: string;
  readonly memory?: true;
}

/** A nominal thickness as it is typed: `1/4`, `18 mm`, `3/4 in`; bare figures are in the file's units. */
export function nominalOf(text: string, units: Units): { readonly value: Length; readonly units: Units } | undefined {
  const own = /mm$/.test(text.trim()) ? 'mm' : /(in|")$/.test(text.trim()) ? 'in' : units;
  const value = parseFigure(text.replace(/\s*(mm|in|")\s*$/, '').trim(), own);
  return value === undefined ? undefined : { value, units: own };
}

/**
 * The published range of a panel's thickness by what it is sold as: birch plywood by a mill's sheet, other plywood in mm by
 * EN 315, plywood in inches by PS 1 above and, from memory, HP-1 below, MDF by ANSI A208.2. Undefined where none was read.
 */
export function thicknessRange(panel: Panel, text: string, units: Units): Thickness | undefined {
  const sold = nominalOf(text, units);
  if (!sold) return undefined;
  const nominal = sold.value;
  if (panel.core === 'mdf' && !panel.grain) {
    const off = need(MDF_THICKNESS, 'panel average', 'off');
    const by = inches(off.value);
    return { nominal, from: (nominal - by) as Length, to: (nominal + by) as Length, source: off.source };
  }
  if (panel.core !== 'plywood') return undefined;
  if (sold.units === 'in') {
    const [over, under] = [need(INCH_PLY, 'over', 'off'), need(INCH_PLY, 'under', 'off')];
    const t = toIn(nominal);
    return {
      nominal,
      from: inches(t - under.value),
      to: inches(t + over.value),
      source: `${over.source} above; below ${under.source}`,
      memory: true,
    };
  }
  const mill = panel.id === 'plywood-birch' ? String(toMm(nominal)) : '';
  const [thin, thick] = [cell(BIRCH, mill, 'thinnest'), cell(BIRCH, mill, 'thickest')];
  if (thin && thick) return { nominal, from: mm(thin.value), to: mm(thick.value), source: thin.source };
  const [over, under, each] = (['over', 'under', 'each'] as const).map((c) => need(EN_315, 'sanded', c));
  const t = toMm(nominal);
  const by = (f: typeof over): number => (f?.value ?? 0) + (each?.value ?? 0) * t;
  return { nominal, from: mm(t - by(under)), to: mm(t + by(over)), source: over?.source ?? '' };
}
