import type { Materials } from '../data/own.js';
import type { Definition } from '../definition/definition.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Length } from '../lengths/length.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import type { Offcut, ShopFacts } from './piece.js';
import { Sizes } from './profile.js';

/** How the shop cuts up sheet goods and what lies on its rack, as far as it is said. */
export function sheetRules(
  def: Definition,
  ev: Evaluator,
  findings: Findings,
  materials: Materials,
): Pick<ShopFacts, 'saw' | 'offcuts'> {
  const saw = sawOf(def, new Sizes(ev, findings));
  const offcuts = offcutsOf(def, new Sizes(ev, findings), findings, materials);
  return {
    ...(saw && Object.keys(saw).length > 0 ? { saw } : {}),
    ...(offcuts.length > 0 ? { offcuts } : {}),
  };
}

function sawOf(def: Definition, sizes: Sizes): ShopFacts['saw'] {
  const s = def.shop?.saw;
  if (!s) return undefined;
  const keep = sizes.all<{ length: Length; width: Length }>(s.keep, ['shop', 'saw', 'keep'], ['length', 'width']);
  return {
    ...(s.stages === undefined ? {} : { stages: s.stages }),
    ...(s.first === undefined ? {} : { first: s.first }),
    ...(keep ? { keep: longFirst(keep.length, keep.width) } : {}),
  };
}

const longFirst = (a: Length, b: Length): readonly [Length, Length] => (a >= b ? [a, b] : [b, a]);

function offcutsOf(def: Definition, sizes: Sizes, findings: Findings, materials: Materials): Offcut[] {
  const seen = new Set<string>();
  return (def.shop?.offcuts ?? []).flatMap((o, i): Offcut[] => {
    const path = ['shop', 'offcuts', i];
    const panel = materials.panel(o.sheet);
    if (!panel) {
      const message = `There is no sheet "${o.sheet}" in the table.`;
      findings.error('panel-unknown', [...path, 'sheet'], message, nameHint(o.sheet, materials.panels));
      return [];
    }
    if (seen.has(o.id)) {
      const message = `Two offcuts are called "${o.id}".`;
      findings.error('offcut-twice', [...path, 'id'], message, 'Write another name on one of them.');
      return [];
    }
    seen.add(o.id);
    const [thickness, length, width] = (['thickness', 'length', 'width'] as const).map((f) =>
      sizes.one(o[f], [...path, f]),
    );
    if (thickness === undefined || length === undefined || width === undefined) return [];
    const grain = o.grain ?? (panel.grain ? 'length' : 'none');
    return [{ id: o.id, sheet: panel.id, thickness, size: [length, width], grain }];
  });
}
