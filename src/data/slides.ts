import { inches, mm, type Length, type Units } from '../lengths/length.js';

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
  /** Screws of one slide. */
  readonly screws: readonly { readonly name: string; readonly count: number; readonly into: 'case' | 'drawer' }[];
  readonly source: string;
}

const SOURCE = 'our default, replace by the maker’s sheet';

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
    screws: [
      { name: '#6 × 5/8 pan head', count: 3, into: 'case' },
      { name: '#6 × 3/8 pan head', count: 3, into: 'drawer' },
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
    screws: [
      { name: '3.5 × 16 pan head', count: 3, into: 'case' },
      { name: '3.5 × 9.5 pan head', count: 3, into: 'drawer' },
    ],
    source: SOURCE,
  },
];

/** The slide family of that id; without an id the family that is usual with the units. */
export const slideFamily = (id: string | undefined, units: Units): SlideFamily | undefined =>
  SLIDES.find((s) => s.id === (id ?? (units === 'in' ? 'side' : 'side-metric')));
