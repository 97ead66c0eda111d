import { slideFamily, SLIDES, type SlideFamily } from '../data/slides.js';
import type { Diagnostic } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import { inches, mm, nm, snapDown, type Length } from '../lengths/length.js';
import { byRule, derived, type Sized } from '../value/sized.js';
import type { ComponentContext } from './component.js';
import type { DrawerFields } from './drawer-spec.js';
import { across, plain, said, upToStep } from './sums.js';

/** Every size of a drawer, before it is placed. Lengths nm. */
export interface DrawerSizes {
  readonly opening: { readonly across: Sized; readonly up: Sized; readonly deep: Sized };
  readonly gaps: { readonly left: Sized; readonly right: Sized; readonly top: Sized; readonly bottom: Sized };
  readonly front: { readonly thickness: Sized; readonly setBack: Sized };
  readonly box: {
    /** From the side of the opening to the box. */
    readonly clearance: Sized;
    readonly above: Sized;
    readonly width: Sized;
    readonly height: Sized;
    readonly depth: Sized;
    readonly thickness: Sized;
  };
  readonly bottom: {
    readonly up: Sized;
    readonly thickness: Sized;
    readonly groove: Sized;
    readonly slack: Sized;
  };
  readonly lap: Sized;
  readonly pitch: Sized;
  readonly slide?: SlideFamily;
  readonly findings: readonly Diagnostic[];
}

const PRACTICE = 'common practice';
const OURS = 'our default';

/** Fills every size of a drawer by rule. */
export function drawerSizes(spec: DrawerFields, context: ComponentContext): DrawerSizes {
  const { opening, world } = context;
  const sizes = {
    across: across(opening.across, 'width of the opening: right side less left side'),
    up: across(opening.up, 'height of the opening: top less bottom'),
    deep: across(opening.deep, 'depth of the opening: back less front edge'),
  };
  const findings: Diagnostic[] = [];
  const slide = spec.box.runner === 'side-slide' ? slideFamily(spec.box.slide, world.units) : undefined;
  if (spec.box.runner === 'side-slide' && !slide)
    findings.push(
      fault(
        context,
        'unknown-slide',
        `There is no slide called "${spec.box.slide}".`,
        ['box', 'slide'],
        nameHint(
          spec.box.slide ?? '',
          SLIDES.map((s) => s.id),
        ),
      ),
    );
  if (spec.front.kind === 'separate' && spec.box.runner === 'none')
    findings.push(
      fault(
        context,
        'drawer-without-runner',
        'A drawer with a separate front hangs on slides; this one has no runner.',
        ['box', 'runner'],
        'Use "runner": "side-slide", or "kind": "integral" for a drawer that slides on the part below it.',
      ),
    );
  const thickness =
    spec.box.sides ?? byRule(plain(world.units, inches(0.5), mm(12)), 'drawer sides 1/2 in (12 mm)', PRACTICE);
  const gaps = gapsOf(spec, context, sizes.up.value);
  const front = frontOf(spec, context);
  const box = boxOf(spec, context, sizes, { gaps, front, thickness, slide }, findings);
  return {
    opening: sizes,
    gaps,
    front,
    box,
    bottom: bottomOf(spec, context, thickness),
    lap: lapOf(spec, front.thickness, thickness, context),
    pitch: pitchOf(box.height, slide !== undefined, context),
    ...(slide ? { slide } : {}),
    findings,
  };
}

/** An error that names the drawer and where it is typed. */
export const fault = (
  context: ComponentContext,
  code: string,
  message: string,
  at: readonly string[] = [],
  hint?: string,
): Diagnostic => ({
  code,
  severity: 'error',
  path: [...context.path, ...at],
  message,
  touches: [context.id],
  ...(hint === undefined ? {} : { hint }),
});

/** Inset front: the reveal at the sides and below, above it room for the front to swell. */
function gapsOf(spec: DrawerFields, context: ComponentContext, height: number): DrawerSizes['gaps'] {
  const { world } = context;
  const integral = spec.front.kind === 'integral';
  const side =
    spec.front.reveal ??
    (integral
      ? byRule(plain(world.units, inches(1 / 64), mm(0.4)), 'play of a drawer between wooden sides, each side', OURS)
      : byRule(plain(world.units, inches(1 / 16), mm(1.5)), 'reveal of an inset front 1/16 in (1.5 mm)', PRACTICE));
  const bottom = integral ? byRule(nm(0), 'the drawer stands on the part below it', PRACTICE) : side;
  const tall = height - bottom.value;
  const least = plain(world.units, inches(1 / 32), mm(0.8));
  const swell = world.swell(spec.front.stock, tall);
  const top = byRule(
    upToStep(least + swell, world.step),
    `${said(least, world.units)} + swell of the front to the wettest, ${said(swell, world.units)}, up to the next step`,
    'common practice; swell by the published coefficient',
    [
      { name: 'front', value: nm(tall) },
      { name: 'swell', value: nm(swell) },
    ],
  );
  return { left: side, right: side, top, bottom };
}

function frontOf(spec: DrawerFields, context: ComponentContext): DrawerSizes['front'] {
  const { units } = context.world;
  const integral = spec.front.kind === 'integral';
  const thickness =
    spec.front.thickness ?? byRule(plain(units, inches(0.75), mm(19)), 'drawer front 3/4 in (19 mm)', PRACTICE);
  const setBack =
    spec.front.back ??
    (integral
      ? byRule(nm(0), 'front flush with the case', OURS)
      : byRule(plain(units, inches(1 / 16), mm(1.5)), 'fronts stand 1/16 in (1.5 mm) behind the rails', OURS));
  return { thickness, setBack };
}

/** On the jig's pitch; a box whose height is not a multiple of it spreads its tails evenly over the height. */
function pitchOf(height: Sized, onJig: boolean, context: ComponentContext): Sized {
  const { pitch, step } = context.world;
  const over = height.value % pitch;
  if (onJig && over === 0) return byRule(pitch, 'pitch of the shop’s dovetail jig', 'shop file');
  const n = Math.max(1, Math.floor(height.value / pitch));
  return byRule(snapDown(height.value / n, step), `height of the box over ${n} tails`, OURS, [
    { name: 'height', value: height.value },
  ]);
}

/** A socket no deeper than three quarters of the front, and 1/8 left in front of the tails at least. */
function lapOf(spec: DrawerFields, front: Sized, box: Sized, context: ComponentContext): Sized {
  const into = spec.front.kind === 'integral' ? front : box;
  const least = plain(context.world.units, inches(1 / 8), mm(3));
  return byRule(
    nm(Math.max(least, snapDown(into.value / 4, context.world.step))),
    'lap in front of the tails: a quarter of the thickness, at least 1/8 in (3 mm)',
    PRACTICE,
    [{ name: 'thickness', value: into.value }],
  );
}

function bottomOf(spec: DrawerFields, context: ComponentContext, side: Sized): DrawerSizes['bottom'] {
  const { units, step, thickness } = context.world;
  const measured = thickness(spec.box.bottom);
  const thick = measured ?? plain(units, inches(0.25), mm(6));
  // A thin bottom sits 5/16 up, one over 1/4 in sits 1/4 up: either way the groove is inside the lowest tail.
  const thin = thick <= inches(0.25);
  return {
    up:
      spec.box.bottomUp ??
      byRule(
        thin ? plain(units, inches(5 / 16), mm(8)) : plain(units, inches(1 / 4), mm(6.5)),
        'lower edge of the groove, so that it comes out inside the lowest tail',
        PRACTICE,
        [{ name: 'bottom', value: thick }],
      ),
    thickness: measured
      ? derived(measured, 'measured thickness of the bottom')
      : byRule(thick, 'drawer bottom 1/4 in (6 mm)', PRACTICE),
    groove: byRule(
      nm(Math.min(plain(units, inches(1 / 4), mm(6)), snapDown(side.value / 2, step))),
      'groove 1/4 in (6 mm) deep, at most half the side',
      'from memory',
      [{ name: 'side', value: side.value }],
    ),
    slack: byRule(nm(plain(units, inches(1 / 32), snapDown(mm(0.8), step))), 'bottom less 1/16 in all told', PRACTICE),
  };
}

interface Known {
  readonly gaps: DrawerSizes['gaps'];
  readonly front: DrawerSizes['front'];
  readonly thickness: Sized;
  readonly slide: SlideFamily | undefined;
}

function boxOf(
  spec: DrawerFields,
  context: ComponentContext,
  opening: DrawerSizes['opening'],
  known: Known,
  findings: Diagnostic[],
): DrawerSizes['box'] {
  const box = known.slide
    ? onSlides(spec, context, opening, { ...known, slide: known.slide }, findings)
    : onWood(spec, context, opening, known);
  const least = known.thickness.value * 2;
  for (const [name, size] of [
    ['width', box.width],
    ['height', box.height],
    ['depth', box.depth],
  ] as const) {
    const floor = name === 'height' ? plain(context.world.units, inches(1.5), mm(38)) : least;
    if (size.value > floor) continue;
    findings.push(
      fault(
        context,
        'drawer-opening-too-small',
        `The opening leaves a drawer box ${name} of ${said(size.value, context.world.units)}; more than ${said(floor, context.world.units)} is needed.`,
        [],
        'Make the opening larger, or fewer drawers.',
      ),
    );
  }
  return { ...box, thickness: known.thickness };
}

type BoxOnly = Omit<DrawerSizes['box'], 'thickness'>;

function onSlides(
  spec: DrawerFields,
  context: ComponentContext,
  opening: DrawerSizes['opening'],
  known: Known & { readonly slide: SlideFamily },
  findings: Diagnostic[],
): BoxOnly {
  const { world } = context;
  const { slide } = known;
  const clearance = byRule(slide.clearance, 'what the slide and its play take on each side', slide.source);
  const above = byRule(slide.above, 'the box stands over the rail', slide.source);
  const width = derived(nm(opening.across.value - 2 * clearance.value), 'opening less slide and play on each side', [
    { name: 'opening', value: opening.across.value },
    { name: 'each side', value: clearance.value },
  ]);
  const height =
    spec.box.height ??
    byRule(
      snapDown(opening.up.value - slide.heightNeed, world.pitch),
      `opening less ${said(slide.heightNeed, world.units)}, down to a whole number of the jig’s pitch`,
      OURS,
      [
        { name: 'opening', value: opening.up.value },
        { name: 'pitch', value: world.pitch },
      ],
    );
  const air = opening.up.value - above.value - height.value;
  if (air <= 0)
    findings.push(
      fault(
        context,
        'drawer-box-too-high',
        'The drawer box is higher than its opening.',
        ['box', 'height'],
        'Leave "height" out: the opening gives it.',
      ),
    );
  const { shrinks } = context.opening;
  const room = nm(
    opening.deep.value - known.front.setBack.value - known.front.thickness.value - slide.behind - shrinks,
  );
  return { clearance, above, width, height, depth: spec.box.depth ?? slideLength(slide, room, context, findings) };
}

/** The longest slide of the family that leaves its air behind. */
function slideLength(slide: SlideFamily, room: Length, context: ComponentContext, findings: Diagnostic[]): Sized {
  const fits = slide.lengths.filter((l) => l <= room);
  const longest = fits[fits.length - 1];
  const { units } = context.world;
  if (longest === undefined)
    findings.push(
      fault(
        context,
        'no-slide-fits',
        `There is room for ${said(room, units)} of slide; the shortest is ${said(slide.lengths[0] ?? 0, units)}.`,
        [],
        'Make the case deeper, or let an integral drawer slide on the part below it: "runner": "none".',
      ),
    );
  return byRule(
    longest ?? nm(Math.max(0, room)),
    `the longest slide that leaves ${said(slide.behind, units)} behind it with the case at its driest; the box is as long as its slide`,
    slide.source,
    [
      { name: 'room', value: room },
      ...(context.opening.shrinks > 0 ? [{ name: 'shrinking of the case', value: context.opening.shrinks }] : []),
    ],
  );
}

/** On the wood below: as high as its front, as long as the depth less the stop. */
function onWood(spec: DrawerFields, context: ComponentContext, opening: DrawerSizes['opening'], known: Known): BoxOnly {
  const { world } = context;
  const { gaps, front } = known;
  const stop = plain(world.units, inches(3 / 16), mm(5));
  const width = derived(
    nm(opening.across.value - gaps.left.value - gaps.right.value),
    'opening less the play at both sides',
    [{ name: 'opening', value: opening.across.value }],
  );
  const height =
    spec.box.height ??
    derived(nm(opening.up.value - gaps.top.value - gaps.bottom.value), 'opening less the gap above', [
      { name: 'opening', value: opening.up.value },
      { name: 'gap', value: gaps.top.value },
    ]);
  const depth =
    spec.box.depth ??
    byRule(
      snapDown(opening.deep.value - front.setBack.value - stop, world.step),
      'depth of the opening less set-back and a stop allowance of 3/16 in (5 mm)',
      PRACTICE,
      [{ name: 'opening', value: opening.deep.value }],
    );
  return { clearance: gaps.left, above: gaps.bottom, width, height, depth };
}
