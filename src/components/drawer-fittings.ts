import type { Recipe } from '../geom/recipe.js';
import { inches, mm, nm, snap, toIn, toMm } from '../lengths/length.js';
import type { ComponentBody, ComponentContext, ComponentCut, SlideSite } from './component.js';
import { memberIds, type DrawerPlan } from './drawer-parts.js';
import type { DrawerSizes } from './drawer-sizes.js';
import type { DrawerFields } from './drawer-spec.js';
import { plain } from './sums.js';

export interface Fittings {
  readonly hardware: readonly ComponentBody[];
  readonly cuts: readonly ComponentCut[];
  readonly slides?: readonly SlideSite[];
}

/** Slides as bodies, and the pencil lines that they are set to, on the case and on the drawer. */
export function slidesOf(sizes: DrawerSizes, plan: DrawerPlan, context: ComponentContext): Fittings {
  const { slide } = sizes;
  if (!slide) return { hardware: [], cuts: [] };
  const { id, opening, world } = context;
  const ids = memberIds(id);
  const low = plan.box.up[0].value;
  const line = nm(low + Math.min(slide.line, snap(sizes.box.height.value / 2, world.step)));
  const from = plan.box.deep[0].value;
  const over: [number, number] = [from, from + sizes.box.depth.value];
  const metric = world.units === 'mm';
  const size = metric ? `${toMm(sizes.box.depth.value)} mm` : `${toIn(sizes.box.depth.value)} in`;
  const hardware: ComponentBody[] = [];
  const cuts: ComponentCut[] = [];
  const slides: SlideSite[] = [];
  for (const hand of ['left', 'right'] as const) {
    const caseSide = hand === 'left' ? opening.left : opening.right;
    const drawerSide = hand === 'left' ? ids.left : ids.right;
    const x = (hand === 'left' ? opening.across[0] : opening.across[1]).value;
    const steel: [number, number] = hand === 'left' ? [x, x + slide.thickness] : [x - slide.thickness, x];
    hardware.push({
      id: `${id}.slide_${hand}`,
      kind: 'slide',
      name: `${slide.name}, ${size}`,
      body: { op: 'box', at: [steel, over, [line - slide.height / 2, line + slide.height / 2]] },
      into: [],
      drawer: id,
      carries: { kg: slide.load.value, source: `${slide.load.source}, commercial class; ${slide.source}` },
    });
    const flank = plan.box.across[hand === 'left' ? 0 : 1].value;
    slides.push({
      id: `${id}.slide_${hand}`,
      drawer: id,
      family: slide,
      case: { part: caseSide, face: x },
      box: { part: drawerSide, face: flank },
      hand,
      over,
      line,
    });
    const mark = { rank: 5, shape: 'mark', as: 'slide-line', axis: 1, at: line } as const;
    const casing = slide.screws.find((s) => s.into === 'case')?.name ?? '';
    const boxing = slide.screws.find((s) => s.into === 'drawer')?.name ?? '';
    cuts.push({
      part: caseSide,
      cut: {
        ...mark,
        id: `${id}.line_${hand}`,
        from: id,
        mates: [`${id}.slide_${hand}`],
        face: hand === 'left' ? 'right' : 'left',
        over,
        notes: [
          'measure first: have the slides',
          `screws ${casing}; where slides stand on both faces, ${boxing}, or they meet`,
          'front screw in a round hole, the others in mid-slot',
        ],
      },
    });
    // On the drawer the line runs over the wood of the side; the slide itself begins flush with the outside of the box.
    const lap = sizes.lap.value;
    cuts.push({
      part: drawerSide,
      cut: {
        ...mark,
        id: `${id}.box_line_${hand}`,
        from: id,
        mates: [`${id}.slide_${hand}`],
        face: hand,
        over: [over[0] + lap, over[1] - lap],
        notes: [
          'measure first: have the slides',
          'slide flush with the front of the box',
          `screws ${boxing}; a longer one comes through`,
        ],
      },
    });
  }
  return { hardware, cuts, slides };
}

/** Knobs, turned, one screw each; the holes go through the front and, where there is one, the box front behind it. */
export function pullsOf(spec: DrawerFields, plan: DrawerPlan, context: ComponentContext): Fittings {
  const { id, world } = context;
  const ids = memberIds(id);
  const left = plan.front.across[0].value;
  const right = plan.front.across[1].value;
  const wide = right - left;
  const count = spec.front.pulls === 'none' ? 0 : (spec.front.pulls ?? (wide > inches(24) ? 2 : 1));
  const separate = spec.front.kind === 'separate';
  const face = plan.front.deep[0].value;
  const inside = separate ? plan.boxFront[1].value : plan.front.deep[1].value;
  const { low, high } = { low: plan.front.up[0].value, high: plan.front.up[1].value };
  // The hole has to come out in the box front, so it keeps to the middle of what both share.
  const boxLow = plan.box.up[0].value;
  const boxHigh = plan.box.up[1].value;
  const up = snap(Math.min(Math.max((low + high) / 2, boxLow), boxHigh), world.step);
  const hole = plain(world.units, inches(3 / 16), mm(5));
  const hardware: ComponentBody[] = [];
  const cuts: ComponentCut[] = [];
  for (let i = 0; i < count; i++) {
    const x = snap(left + (wide * (2 * i + 1)) / (2 * count), world.step);
    const pull = `${id}.pull_${i + 1}`;
    hardware.push({
      id: pull,
      kind: 'pull',
      name: 'knob, 1 1/4 in (32 mm), one screw',
      body: knob([x, face, up], inside - face),
      into: separate ? [ids.front, ids.boxFront] : [ids.front],
      drawer: id,
    });
    const bore = {
      rank: 3,
      shape: 'bore',
      as: 'hole',
      from: id,
      mates: [pull],
      face: 'front',
      at: [x, up],
      diameter: hole,
      depth: 'through',
    } as const;
    cuts.push({ part: ids.front, cut: { ...bore, id: `${pull}.front`, notes: ['for the pull'] } });
    if (separate)
      cuts.push({
        part: ids.boxFront,
        cut: { ...bore, id: `${pull}.box`, notes: ['for the pull: bored through the front’s hole'] },
      });
  }
  return { hardware, cuts };
}

/** A turned knob of our own: foot 3/4, neck 1/2, head 1 1/4, stands out 1 1/8; its screw ends flush with the inside. */
function knob(at: readonly [number, number, number], through: number): Recipe {
  const r = (inch: number): number => inches(inch);
  return {
    op: 'turned',
    axis: 1,
    centre: at,
    profile: [
      [0, 0 - r(1.125)],
      [r(0.45), 0 - r(1.09375)],
      [r(0.625), 0 - r(0.90625)],
      [r(0.53125), 0 - r(0.625)],
      [r(0.25), 0 - r(0.375)],
      [r(0.375), 0],
      [r(5 / 64), 0],
      [r(5 / 64), through],
      [0, through],
    ],
  };
}
