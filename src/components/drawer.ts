import { hasErrors } from '../diag/diagnostic.js';
import type { ComponentContext, ComponentKind, Expansion } from './component.js';
import { pullsOf, slidesOf } from './drawer-fittings.js';
import { drawerJoints, drawerParts, drawerPlan, memberIds } from './drawer-parts.js';
import { drawerSizes } from './drawer-sizes.js';
import type { DrawerFields } from './drawer-spec.js';

/**
 * A drawer in its opening: an inset front, separate (screwed to a dovetailed box that hangs on side slides) or integral
 * (the sides lapped into it; the drawer slides on the part below). Gives parts, joints, slides, pulls and the cuts these
 * need in the case. Errors as findings; with errors there are no parts.
 */
export function expandDrawer(spec: DrawerFields, context: ComponentContext): Expansion {
  const sizes = drawerSizes(spec, context);
  if (hasErrors(sizes.findings)) return { parts: [], joints: [], cuts: [], hardware: [], findings: sizes.findings };
  const plan = drawerPlan(spec, sizes, context);
  const parts = drawerParts(spec, sizes, plan, context);
  const slides = slidesOf(sizes, plan, context);
  const pulls = pullsOf(spec, plan, context);
  return {
    parts,
    joints: drawerJoints(spec, sizes, context),
    cuts: [...slides.cuts, ...pulls.cuts],
    hardware: [...slides.hardware, ...pulls.hardware],
    slides: slides.slides ?? [],
    drawer: {
      id: context.id,
      mark: context.mark,
      opening: sizes.opening,
      gaps: sizes.gaps,
      parts: parts.map((p) => p.id),
      front: memberIds(context.id).front,
    },
    findings: sizes.findings,
  };
}

export const drawer: ComponentKind<DrawerFields> = { kind: 'drawer', words: 'drawer', expand: expandDrawer };
