import { TABLES, type Materials } from '../data/own.js';
import type { Definition, Length_ } from '../definition/definition.js';
import type { World } from '../joints/joint.js';
import type { Length } from '../lengths/length.js';
import { inches, nm } from '../lengths/length.js';
import { shopDefaults } from '../shop/defaults.js';
import { woodOf } from '../wood/material.js';
import { shrink, swell } from '../wood/movement.js';
import { season } from '../wood/moisture.js';
import type { Body } from './body.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import type { ShopFacts, Stock } from './piece.js';
import { sheetRules } from './sheetRules.js';

/** Everything a piece takes from the shop, evaluated; our defaults where the file is silent. */
export interface Shop {
  readonly step: Length;
  readonly facts: ShopFacts;
  readonly pitch: Length;
  readonly dovetail: { readonly width: Length; readonly angle: number };
  readonly straight: readonly Length[];
}

/** As the file says, else the default of the shop. */
export const stepOf = (def: Definition, ev: Evaluator): Length =>
  read(def.shop?.step, 'step', ev) ?? shopDefaults(def.units).step;

const read = (t: Length_ | undefined, field: string, ev: Evaluator): Length | undefined =>
  t === undefined ? undefined : ev.length(t, ['shop', field])?.value;

/** Our limit for a slip of the pen: 1/2 in. */
const WIDEST_KERF = inches(1 / 2);

/** What the file says of the shop, else its defaults. */
export function readShop(def: Definition, ev: Evaluator, findings: Findings, materials: Materials = TABLES): Shop {
  const usual = shopDefaults(def.units);
  const s = def.shop;
  const above = (value: Length, least: 0 | 1, usualValue: Length, ...at: string[]): Length => {
    if (value >= least) return value;
    const message = `The ${at.join(' ')} of the shop is ${ev.say(value)}.`;
    findings.error('shop-size', ['shop', ...at], message, `Leave it out for ${ev.say(usualValue)}.`);
    return usualValue;
  };
  const bit = s?.dovetailBit;
  const angle = bit?.angle ?? usual.dovetail.angle;
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
  const width =
    (bit ? ev.length(bit.width, ['shop', 'dovetailBit', 'width'])?.value : undefined) ?? usual.dovetail.width;
  const kerf = read(s?.kerf, 'kerf', ev) ?? usual.kerf;
  if (kerf > WIDEST_KERF) {
    const message = `A saw cut ${ev.say(kerf)} wide cannot be.`;
    findings.error('shop-size', ['shop', 'kerf'], message, `Leave it out for ${ev.say(usual.kerf)}.`);
  }
  return {
    step: step > 0 ? step : usual.step,
    facts: {
      kerf: above(kerf, 0, usual.kerf, 'kerf'),
      trim: above(read(s?.trim, 'trim', ev) ?? usual.trim, 0, usual.trim, 'trim'),
      allowance: usual.allowance,
      ...sheetRules(def, ev, findings, materials),
    },
    pitch: above(read(s?.pitch, 'pitch', ev) ?? usual.pitch, 1, usual.pitch, 'pitch'),
    dovetail: {
      width: above(width, 1, usual.dovetail.width, 'dovetailBit', 'width'),
      angle: angle > 0 && angle < 45 ? angle : usual.dovetail.angle,
    },
    straight: usual.straight,
  };
}

/** Swelling (nm) across the grain of `width` nm of a stock, from making to the wettest; sheet goods do not move. */
export function swellOf(stock: Stock | undefined, width: number, def: Definition): number {
  const species = woodOf(stock);
  return species ? nm(swell(width, species, stock?.cut, season(def.room, def.shop?.moisture, def.units))) : 0;
}

/** Shrinking (nm) across the grain of `width` nm of a stock, from making to the driest; sheet goods do not move. */
export function shrinkOf(stock: Stock | undefined, width: number, def: Definition): number {
  const species = woodOf(stock);
  return species ? nm(shrink(width, species, stock?.cut, season(def.room, def.shop?.moisture, def.units))) : 0;
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
