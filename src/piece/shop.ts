import { speciesById } from '../data/species.js';
import type { Definition, Length_ } from '../definition/definition.js';
import type { World } from '../joints/joint.js';
import type { Length } from '../lengths/length.js';
import { inches, mm, nm } from '../lengths/length.js';
import { swell } from '../wood/movement.js';
import { season } from '../wood/moisture.js';
import type { Body } from './body.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import type { ShopFacts, Stock } from './piece.js';

/** Everything a piece takes from the shop, evaluated; our defaults where the file is silent. */
export interface Shop {
  readonly step: Length;
  readonly facts: ShopFacts;
  readonly pitch: Length;
  readonly dovetail: { readonly width: Length; readonly angle: number };
  readonly straight: readonly Length[];
}

/** 1/64 in, or 0.1 mm (our default). */
export const stepOf = (def: Definition, ev: Evaluator): Length =>
  read(def.shop?.step, 'step', ev) ?? (def.units === 'in' ? inches(1 / 64) : mm(0.1));

const read = (t: Length_ | undefined, field: string, ev: Evaluator): Length | undefined =>
  t === undefined ? undefined : ev.length(t, ['shop', field])?.value;

/** Kerf 1/8 in (a full-kerf table-saw blade), trim 1/4 in, cutter 1/2 in at 14 degrees on a 7/8 in pitch: our defaults. Allowances 1/8, 1/4, 1 in: common practice. */
export function readShop(def: Definition, ev: Evaluator, findings: Findings): Shop {
  const inch = def.units === 'in';
  const or = (t: Length_ | undefined, field: string, inchValue: number, mmValue: number): Length =>
    read(t, field, ev) ?? (inch ? inches(inchValue) : mm(mmValue));
  const s = def.shop;
  const bit = s?.dovetailBit;
  const angle = bit?.angle ?? 14;
  if (angle <= 0 || angle >= 45)
    findings.error(
      'cutter-angle',
      ['shop', 'dovetailBit', 'angle'],
      `A dovetail cutter of ${angle} degrees cannot be.`,
      'Most are 7 to 14 degrees.',
    );
  const step = stepOf(def, ev);
  if (step <= 0)
    findings.error('step-not-positive', ['shop', 'step'], 'Sizes cannot be snapped to nothing.', 'Use 1/64 or 0.1mm.');
  return {
    step: step > 0 ? step : inches(1 / 64),
    facts: {
      kerf: or(s?.kerf, 'kerf', 1 / 8, 3.2),
      trim: or(s?.trim, 'trim', 1 / 4, 6),
      allowance: inch ? [inches(1 / 8), inches(1 / 4), inches(1)] : [mm(3), mm(6), mm(25)],
    },
    pitch: or(s?.pitch, 'pitch', 7 / 8, 22),
    dovetail: {
      width: (bit ? ev.length(bit.width, ['shop', 'dovetailBit', 'width'])?.value : undefined) ?? inches(1 / 2),
      angle,
    },
    straight: inch ? [1 / 4, 5 / 16, 3 / 8, 1 / 2].map(inches) : [6, 8, 10, 12].map(mm),
  };
}

/** Swelling (nm) across the grain of `width` nm of a stock, from making to the wettest; sheet goods do not move. */
export function swellOf(stock: Stock | undefined, width: number, def: Definition): number {
  const species = stock?.kind === 'lumber' ? speciesById(stock.material) : undefined;
  return species ? nm(swell(width, species, stock?.cut, season(def.room, def.shop?.moisture, def.units))) : 0;
}

export function worldOf(shop: Shop, def: Definition, bodies: ReadonlyMap<string, Body>): World {
  return {
    units: def.units,
    step: shop.step,
    bits: { dovetail: shop.dovetail, straight: shop.straight },
    pitch: shop.pitch,
    swell: (part, width) => swellOf(bodies.get(part)?.stock, width, def),
  };
}
