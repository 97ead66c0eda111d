import { cell, type Figure } from './printed.js';
import { SLIDE_DUTY } from './tables/slide-duty.js';
import { inches, mm, type Length, type Units } from '../lengths/length.js';
import { POUND_KG } from '../lengths/units.js';

/** The screws that hold one half of a slide. `length` is under the head. */
export interface SlideScrew {
  readonly name: string;
  readonly count: number;
  readonly into: 'case' | 'drawer';
  readonly length: Length;
  readonly gauge?: number;
  readonly diameter: Length;
  readonly head: { readonly diameter: Length; readonly height: Length };
}
/** A family of drawer slides: generic figures to start from, to be replaced by the maker's sheet. Lengths nm. */
export interface SlideFamily {
  readonly id: string;
  readonly name: string;
  /** What the slide and its play take on each side of the box. */
  readonly clearance: Length;
  /** The steel itself. */
  readonly thickness: Length;
  readonly height: Length;
  /** Least air over the box: opening height less box height. */
  readonly heightNeed: Length;
  /** Where the box stands over the rail below it. */
  readonly above: Length;
  /** Least air between the back end of the slide and the back of the case. */
  readonly behind: Length;
  /** Line of the screws over the lower edge of the box side. */
  readonly line: Length;
  readonly lengths: readonly Length[];
  /** Steel between a screw's head and the wood: our default, as all that `source` covers. */
  readonly steel: Length;
  /** From an end of the slide to its first and last screw; the others stand evenly between: our default; the slide's own holes rule. */
  readonly endScrew: Length;
  /** What a pair carries at rest, kg. */
  readonly load: Figure;
  /** Screws of one slide: those of the case first. */
  readonly screws: readonly [SlideScrew, SlideScrew];
  /** Of every figure above but the screws' own diameters and heads. */
  readonly source: string;
}

/** Number 6: shank by the rule of the gauge, 0.060 + 0.013 in a number; pan head, from memory. */
const six = { gauge: 6, diameter: inches(0.138), head: { diameter: inches(0.262), height: inches(0.08) } };
/** 3.5 mm; pan head, from memory. */
const metric = { diameter: mm(3.5), head: { diameter: mm(7), height: mm(2.6) } };

const SOURCE = 'our default, replace by the maker’s sheet';

/** The middle class of slides stands for all until the maker's sheet is typed: our default. */
const PAIR = cell(SLIDE_DUTY, 'commercial', 'still', POUND_KG) as Figure;

export const SLIDES: readonly SlideFamily[] = [
  {
    id: 'side',
    name: 'side slide, full extension',
    clearance: inches(33 / 64),
    thickness: inches(1 / 2),
    height: inches(1.75),
    heightNeed: inches(3 / 4),
    above: inches(1 / 2),
    behind: inches(1 / 2),
    line: inches(2),
    lengths: [10, 12, 14, 16, 18, 20, 22, 24, 26, 28].map(inches),
    steel: inches(3 / 64),
    endScrew: inches(1.5),
    load: PAIR,
    screws: [
      { name: '#6 × 5/8 pan head', count: 3, into: 'case', length: inches(5 / 8), ...six },
      { name: '#6 × 3/8 pan head', count: 3, into: 'drawer', length: inches(3 / 8), ...six },
    ],
    source: SOURCE,
  },
  {
    id: 'side-metric',
    name: 'side slide, full extension',
    clearance: mm(13),
    thickness: mm(12.7),
    height: mm(45),
    heightNeed: mm(19),
    above: mm(13),
    behind: mm(13),
    line: mm(50),
    lengths: [250, 300, 350, 400, 450, 500, 550, 600].map(mm),
    steel: mm(1.2),
    endScrew: mm(37),
    load: PAIR,
    screws: [
      { name: '3.5 × 16 pan head', count: 3, into: 'case', length: mm(16), ...metric },
      { name: '3.5 × 9.5 pan head', count: 3, into: 'drawer', length: mm(9.5), ...metric },
    ],
    source: SOURCE,
  },
];

/** The slide family of that id; without an id the family that is usual with the units. */
export const slideFamily = (id: string | undefined, units: Units): SlideFamily | undefined =>
  SLIDES.find((s) => s.id === (id ?? (units === 'in' ? 'side' : 'side-metric')));
