import { TABLES, type Materials } from '../data/own.js';
import { QUARTERS, quarterByName } from '../data/quarters.js';
import { tradeName } from '../data/species.js';
import type { StockSpec } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Length } from '../lengths/length.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import type { Stock } from './piece.js';

export function readStocks(
  specs: Readonly<Record<string, StockSpec>>,
  ev: Evaluator,
  findings: Findings,
  materials: Materials = TABLES,
): Map<string, Stock> {
  const out = new Map<string, Stock>();
  for (const [id, spec] of Object.entries(specs)) {
    const path: JsonPath = ['stock', id];
    const stock =
      'lumber' in spec ? lumber(id, spec, path, findings, materials) : sheet(id, spec, path, ev, findings, materials);
    if (stock) out.set(id, stock);
  }
  return out;
}

function lumber(
  id: string,
  s: Extract<StockSpec, { lumber: string }>,
  path: JsonPath,
  findings: Findings,
  materials: Materials,
): Stock | undefined {
  const species = materials.wood(s.lumber);
  if (!species) {
    findings.error(
      'species-unknown',
      [...path, 'lumber'],
      `There is no species "${s.lumber}" in the table.`,
      nameHint(s.lumber, materials.woods),
    );
    return undefined;
  }
  if (!quarterByName(s.quarter)) {
    findings.error(
      'quarter-unknown',
      [...path, 'quarter'],
      `"${s.quarter}" is not a rough thickness that lumber is sold in.`,
      `Quarters of an inch: ${QUARTERS.map((q) => q.name).join(', ')}.`,
    );
    return undefined;
  }
  return {
    id,
    kind: 'lumber',
    material: species.id,
    ...(species === TABLES.wood(species.id) ? {} : { wood: species }),
    name: tradeName(species),
    quarter: s.quarter,
    ...(s.cut ? { cut: s.cut } : {}),
    ...(s.allow ? { allow: s.allow } : {}),
    ...(s.trials === undefined ? {} : { trials: s.trials }),
  };
}

function sheet(
  id: string,
  s: SheetSpec,
  path: JsonPath,
  ev: Evaluator,
  findings: Findings,
  materials: Materials,
): Stock | undefined {
  const panel = materials.panel(s.sheet);
  if (!panel) {
    findings.error(
      'panel-unknown',
      [...path, 'sheet'],
      `There is no sheet "${s.sheet}" in the table.`,
      nameHint(s.sheet, materials.panels),
    );
    return undefined;
  }
  const thickness = ev.length(s.thickness, [...path, 'thickness'])?.value;
  const size = s.size.map((t, k) => ev.length(t, [...path, 'size', k])?.value);
  const [length, width] = size;
  if (thickness === undefined || length === undefined || width === undefined) return undefined;
  if (thickness <= 0 || length <= 0 || width <= 0) {
    findings.error(
      'stock-size',
      path,
      `The sheet "${id}" has a size that is not above nothing.`,
      'Measure the sheet: thickness, length and width.',
    );
    return undefined;
  }
  const further = furtherSizes(s, path, ev, findings);
  return {
    id,
    kind: 'sheet',
    material: panel.id,
    ...(panel === TABLES.panel(panel.id) ? {} : { panel }),
    name: panel.name,
    thickness,
    size: [length, width],
    grain: s.grain ?? (panel.grain ? 'length' : 'none'),
    ...(s.nominal === undefined ? {} : { nominal: s.nominal }),
    ...(s.price === undefined ? {} : { price: s.price }),
    ...(further.length === 0 ? {} : { sizes: further }),
  };
}

type SheetSpec = Extract<StockSpec, { sheet: string }>;
/** The further sizes of a sheet. Prices are above nothing, and all sizes have one or none: else they cannot be compared. */
function furtherSizes(
  s: SheetSpec,
  path: JsonPath,
  ev: Evaluator,
  findings: Findings,
): readonly NonNullable<Stock['sizes']>[number][] {
  const { sizes = [] } = s;
  const priced = sizes.filter((x) => x.price !== undefined).length + (s.price === undefined ? 0 : 1);
  if (priced > 0 && priced <= sizes.length) {
    const message = `Of the ${sizes.length + 1} sizes only ${priced} ${priced === 1 ? 'has' : 'have'} a price.`;
    findings.error('sheet-price', [...path, 'sizes'], message, 'Give each size its price, "size" too, or none.');
  }
  const prices: readonly (readonly [number | undefined, JsonPath])[] = [
    [s.price, [...path, 'price']],
    ...sizes.map((x, i) => [x.price, [...path, 'sizes', i, 'price']] as const),
  ];
  for (const [price, at] of prices)
    if (price !== undefined && !(price > 0))
      findings.error('sheet-price', at, `A sheet does not cost ${price}.`, 'Leave prices out when they are not known.');
  return sizes.flatMap(({ size, price, count }, i) => {
    const [length, width] = size.map((t, k) => ev.length(t, [...path, 'sizes', i, 'size', k])?.value);
    if (length === undefined || width === undefined) return [];
    if (length <= 0 || width <= 0) {
      const message = 'A further size of the sheet is not above nothing.';
      findings.error('stock-size', [...path, 'sizes', i], message, 'Measure the sheet: length and width.');
      return [];
    }
    return [
      {
        size: [length, width] as const,
        ...(price === undefined ? {} : { price }),
        ...(count === undefined ? {} : { count }),
      },
    ];
  });
}

/** Is a finished thickness to be had from this stock, or only from short flat boards of it? Told where it is not. */
export function checkThickness(
  part: string,
  thickness: Length,
  stock: Stock,
  path: JsonPath,
  ev: Evaluator,
  findings: Findings,
): void {
  if (stock.kind === 'sheet') {
    if (thickness !== stock.thickness)
      findings.error(
        'thickness-not-stock',
        path,
        `"${part}" is ${ev.say(thickness)} thick; its sheet "${stock.id}" measures ${ev.say(stock.thickness ?? 0)}.`,
        'Give one end only, e.g. { "from": "0" }, and the sheet fills in its thickness.',
        [part],
      );
    return;
  }
  const quarter = quarterByName(stock.quarter ?? '');
  if (!quarter || thickness <= quarter.gives) return;
  const thick = `"${part}" is ${ev.say(thickness)} thick; ${quarter.name} planes to`;
  const hint = 'Take the next thicker stock, or make the part thinner.';
  if (thickness > quarter.atMost)
    findings.error('thicker-than-stock', path, `${thick} ${ev.say(quarter.atMost)} at most.`, hint, [part]);
  else
    findings.warn(
      'stock-barely-thick',
      path,
      `${thick} ${ev.say(quarter.gives)}, to this only from short flat boards.`,
      hint,
      [part],
    );
}
