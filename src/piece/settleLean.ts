import { AXIS_NAMES } from '../geom/axis.js';
import type { Vec3 } from '../geom/box.js';
import { mapCut } from '../words/mapCut.js';
import type { BodyContext } from './body.js';
import type { Draft } from './expand.js';
import type { Leaning } from './lean.js';
import { leans, mirrorPlace, standing, turned } from './lean.js';
import type { StandOf } from './span.js';
import { spanning, squareStand } from './span.js';

/** A leaning part (or the mirror image of one) settled; undefined when it cannot be (told). `before`: what waits for it, ids. */
export function settleLean(draft: Draft, ctx: BodyContext, before: readonly string[] = []): Leaning | undefined {
  const chain = [...before, draft.id];
  if (before.includes(draft.id)) {
    ctx.findings.error(
      'cycle',
      draft.fieldPath['span'] ?? draft.path,
      `These parts wait for each other: ${chain.join(' -> ')}.`,
      'Let one of them begin at a part that stands by itself.',
    );
    return undefined;
  }
  const base = draft.mirrorOf === undefined ? undefined : ctx.drafts.get(draft.mirrorOf);
  if (base) return mirrored(draft, settleLean(base, ctx, chain), ctx);
  if (draft.spec.stand) return standing(draft, ctx);
  if (draft.spec.turn) return turned(draft, ctx);
  return spanning(draft, ctx, standOf(ctx, chain));
}

function mirrored(draft: Draft, of: Leaning | undefined, ctx: BodyContext): Leaning | undefined {
  const about = ctx.ev.length(draft.about ?? 0, draft.fieldPath['about'] ?? draft.path);
  if (!of || !about) return undefined;
  const across = of.size[0].value;
  const cuts = of.cuts.map((c) => mapCut(c, { to: [0, 1, 2], sign: [-1, 1, 1], shift: [across, 0, 0] }));
  return { size: of.size, place: mirrorPlace(of.place, across, about.value), cuts };
}

/** How any part stands, leaning or square. */
const standOf =
  (ctx: BodyContext, chain: readonly string[]): StandOf =>
  (id) => {
    const draft = ctx.drafts.get(id);
    if (!draft) return undefined;
    if (leans(draft, ctx.drafts)) {
      const lean = settleLean(draft, ctx, chain);
      return lean && { place: lean.place, size: [lean.size[0].value, lean.size[1].value, lean.size[2].value] };
    }
    const size = AXIS_NAMES.map((a) => ctx.ev.graph.get(`${id}.${a}`)?.value);
    const low = (['left', 'front', 'bottom'] as const).map((f) => ctx.ev.graph.get(`${id}.${f}`)?.value);
    if ([...size, ...low].includes(undefined)) return undefined;
    return squareStand(low as unknown as Vec3, size as unknown as Vec3);
  };
