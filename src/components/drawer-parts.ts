import type { Face } from '../geom/axis.js';
import { nm } from '../lengths/length.js';
import { derived, type Sized } from '../value/sized.js';
import type { ComponentContext, ComponentJoint, ComponentPart, SizedSpan } from './component.js';
import type { DrawerSizes } from './drawer-sizes.js';
import type { DrawerFields } from './drawer-spec.js';
import { moved, plain, run, said } from './sums.js';

/** Where a drawer's members stand: spans in piece axes, nm. */
export interface DrawerPlan {
  readonly box: { readonly across: SizedSpan; readonly deep: SizedSpan; readonly up: SizedSpan };
  readonly left: SizedSpan;
  readonly right: SizedSpan;
  /** Between the inside faces. */
  readonly inner: { readonly across: SizedSpan; readonly deep: SizedSpan };
  readonly boxFront: SizedSpan;
  readonly boxBack: SizedSpan;
  readonly bottomUp: SizedSpan;
  readonly front: { readonly across: SizedSpan; readonly deep: SizedSpan; readonly up: SizedSpan };
}

/** Places everything: the front by its gaps, the box behind it (or from it, when the front is the box's own). */
export function drawerPlan(spec: DrawerFields, sizes: DrawerSizes, context: ComponentContext): DrawerPlan {
  const { opening } = context;
  const t = sizes.box.thickness.value;
  const integral = spec.front.kind === 'integral';
  const front = frontPlan(sizes, context);
  const deepFrom = integral ? front.deep[0] : front.deep[1];
  const box = {
    across: run(
      moved(opening.across[0], sizes.box.clearance.value, 'side of the opening + clearance'),
      sizes.box.width,
      'box left + box width',
    ),
    deep: run(deepFrom, sizes.box.depth, 'box front + box length'),
    up: run(
      moved(opening.up[0], sizes.box.above.value, 'bottom of the opening + height of the box over it'),
      sizes.box.height,
      'box bottom + box height',
    ),
  };
  const frontThick = integral ? sizes.front.thickness.value : t;
  const boxFront: SizedSpan = [box.deep[0], moved(box.deep[0], frontThick, 'box front + its thickness')];
  const boxBack: SizedSpan = [moved(box.deep[1], 0 - t, 'box back less its thickness'), box.deep[1]];
  const left: SizedSpan = [box.across[0], moved(box.across[0], t, 'box left + thickness of the side')];
  const right: SizedSpan = [moved(box.across[1], 0 - t, 'box right less thickness of the side'), box.across[1]];
  return {
    box,
    left,
    right,
    inner: { across: [left[1], right[0]], deep: [boxFront[1], boxBack[0]] },
    boxFront,
    boxBack,
    bottomUp: run(
      moved(box.up[0], sizes.bottom.up.value, 'lower edge of the groove'),
      sizes.bottom.thickness,
      'groove + thickness of the bottom',
    ),
    front,
  };
}

function frontPlan(sizes: DrawerSizes, context: ComponentContext): DrawerPlan['front'] {
  const { opening } = context;
  const { gaps } = sizes;
  return {
    across: [
      moved(opening.across[0], gaps.left.value, 'side of the opening + gap'),
      moved(opening.across[1], 0 - gaps.right.value, 'side of the opening less gap'),
    ],
    deep: run(
      moved(opening.deep[0], sizes.front.setBack.value, 'front edge of the case + set-back'),
      sizes.front.thickness,
      'front + its thickness',
    ),
    up: [
      moved(opening.up[0], gaps.bottom.value, 'bottom of the opening + gap'),
      moved(opening.up[1], 0 - gaps.top.value, 'top of the opening less gap'),
    ],
  };
}

type Words = Readonly<Record<Face, string>>;
const STANDING: Words = { left: 'LEFT', right: 'RIGHT', front: 'FRONT', back: 'BACK', bottom: 'BOTTOM', top: 'TOP' };

/** Ids of a drawer's members. */
export const memberIds = (id: string) => ({
  boxFront: `${id}.box_front`,
  left: `${id}.side_left`,
  right: `${id}.side_right`,
  boxBack: `${id}.box_back`,
  front: `${id}.front`,
  bottom: `${id}.bottom`,
});

/** The members of a drawer as parts, in the order of their marks. */
export function drawerParts(
  spec: DrawerFields,
  sizes: DrawerSizes,
  plan: DrawerPlan,
  context: ComponentContext,
): ComponentPart[] {
  const integral = spec.front.kind === 'integral';
  const ids = memberIds(context.id);
  const less = said(sizes.box.clearance.value * 2, context.world.units);
  const sideWhy = sizes.slide
    ? 'length follows the slide, height the dovetail pitch; neither waits for the case'
    : 'sides are planed to the opening, when the case is glued';
  const common = { stock: spec.box.stock, show: [], hand: undefined };
  const boxFit = `smallest of three widths of the opening, less ${less}`;
  const boxFront: Draft = {
    ...common,
    id: ids.boxFront,
    role: 'box front',
    name: 'drawer box front',
    box: [plan.box.across, plan.boxFront, plan.box.up],
    grain: 0,
    status: 'fit to the piece',
    statusWhy: boxFit,
    faceWords: { ...STANDING, front: 'OUTSIDE', back: 'INSIDE' },
    reference: { face: 'back', edge: 'bottom', end: 'left' },
  };
  const side = (hand: 'left' | 'right'): Draft => ({
    ...common,
    id: hand === 'left' ? ids.left : ids.right,
    role: `${hand} side`,
    name: `drawer ${hand} side`,
    hand,
    box: [hand === 'left' ? plan.left : plan.right, plan.inner.deep, plan.box.up],
    grain: 1,
    status: sizes.slide ? 'cut now' : 'fit to the piece',
    statusWhy: sideWhy,
    faceWords:
      hand === 'left'
        ? { ...STANDING, left: 'OUTSIDE', right: 'INSIDE' }
        : { ...STANDING, left: 'INSIDE', right: 'OUTSIDE' },
    reference: { face: hand === 'left' ? 'right' : 'left', edge: 'bottom', end: 'front' },
  });
  const boxBack: Draft = {
    ...boxFront,
    id: ids.boxBack,
    role: 'box back',
    name: 'drawer box back',
    box: [plan.box.across, plan.boxBack, plan.box.up],
    faceWords: { ...STANDING, front: 'INSIDE', back: 'OUTSIDE' },
    reference: { face: 'front', edge: 'bottom', end: 'left' },
  };
  const front: Draft = {
    ...common,
    id: ids.front,
    role: 'front',
    name: 'drawer front',
    stock: spec.front.stock,
    show: ['front'],
    box: [plan.front.across, plan.front.deep, plan.front.up],
    grain: 0,
    status: 'fit to the piece',
    statusWhy: 'from the opening as it is: its smallest width and height less the gaps',
    faceWords: { ...STANDING, front: 'OUTSIDE', back: 'INSIDE' },
    reference: { face: integral ? 'back' : 'front', edge: 'bottom', end: 'left' },
  };
  const bottom: Draft = {
    ...common,
    id: ids.bottom,
    role: 'bottom',
    name: 'drawer bottom',
    stock: spec.box.bottom,
    box: [plan.inner.across, plan.inner.deep, plan.bottomUp],
    grain: 1,
    status: 'fit to the piece',
    statusWhy: 'from the box, put together dry',
    faceWords: { ...STANDING, top: 'INSIDE', bottom: 'OUTSIDE' },
    reference: { face: 'top', edge: 'left', end: 'front' },
  };
  const members = integral
    ? [front, side('left'), side('right'), boxBack, bottom]
    : [boxFront, side('left'), side('right'), boxBack, front, bottom];
  return members.map(({ hand, ...m }, i) => ({ ...m, mark: `${context.mark}.${i + 1}`, ...(hand ? { hand } : {}) }));
}

type Draft = Omit<ComponentPart, 'mark' | 'hand'> & { readonly hand: 'left' | 'right' | undefined };

/** Corners, grooves, and the screws that hold a separate front. */
export function drawerJoints(spec: DrawerFields, sizes: DrawerSizes, context: ComponentContext): ComponentJoint[] {
  const { id, world } = context;
  const ids = memberIds(id);
  const integral = spec.front.kind === 'integral';
  const fore = integral ? ids.front : ids.boxFront;
  const corner = spec.box.corner ?? 'half-blind-dovetail';
  const onPitch = corner === 'half-blind-dovetail' ? { pitch: sizes.pitch } : {};
  const backLap = integral
    ? derived(plain(world.units, nm(3_175_000), nm(3_000_000)), 'lap of the back: at least 1/8 in (3 mm)')
    : sizes.lap;
  const lap = (size: Sized) => (corner === 'half-blind-dovetail' ? { lap: size } : {});
  const corners: ComponentJoint[] = [ids.left, ids.right].flatMap((side, i) => [
    {
      id: `${id}.corner_${i === 0 ? 'front_left' : 'front_right'}`,
      kind: corner,
      part: side,
      into: [fore],
      fields: { ...lap(sizes.lap), ...onPitch },
    },
    {
      id: `${id}.corner_${i === 0 ? 'back_left' : 'back_right'}`,
      kind: corner,
      part: side,
      into: [ids.boxBack],
      fields: { ...lap(backLap), ...onPitch },
    },
  ]);
  const groove: ComponentJoint = {
    id: `${id}.bottom_groove`,
    kind: 'groove',
    part: ids.bottom,
    into: [fore, ids.left, ids.right, ids.boxBack],
    fields: { depth: sizes.bottom.groove, slack: sizes.bottom.slack },
  };
  const hold: ComponentJoint[] = integral
    ? []
    : [
        {
          id: `${id}.front_screws`,
          kind: 'screw',
          part: ids.boxFront,
          into: [ids.front],
          fields: { count: screwCount(sizes.box.width) },
        },
      ];
  return [...corners, groove, ...hold];
}

/** Four screws hold a front; six when it is over 24 in wide (our default). */
const screwCount = (width: Sized): number => (width.value > 24 * 25_400_000 ? 6 : 4);
