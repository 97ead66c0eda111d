/** A printed source of figures: what it is, which edition, and where it may be read by anybody. */
export interface Source {
  readonly title: string;
  readonly edition: string;
  /** As it is named beside a figure. */
  readonly short: string;
  readonly address?: string;
}
const source = (title: string, edition: string, short: string, address?: string): Source => ({
  title,
  edition,
  short,
  ...(address === undefined ? {} : { address }),
});
const HANDBOOK = 'Wood Handbook: Wood as an Engineering Material. USDA Forest Service, Forest Products Laboratory';

/** Every source that a figure of this room names. A test refuses a figure whose key is not here. */
export const SOURCES = {
  'handbook-2010': source(
    HANDBOOK,
    'General Technical Report FPL-GTR-190, 2010',
    'Wood Handbook, FPL-GTR-190',
    'https://issuhub.com/view/index/5801',
  ),
  'handbook-2021': source(HANDBOOK, 'General Technical Report FPL-GTR-282, 2021', 'Wood Handbook, FPL-GTR-282'),
  'fpl-sapele': source(
    'Tropical Timbers of the World: sapele. USDA Forest Service (Chudnoff)',
    'data sheet',
    'USDA sheet on sapele',
    'https://docslib.org/doc/1928358/',
  ),
  'nwfa-a200': source(
    'Dimensional stability of flooring woods, after Agriculture Handbook 72 (1987)',
    'list A200',
    'flooring list A200 after Agriculture Handbook 72',
    'http://highwayflooring.com/hardwood-floor-relative-stability',
  ),
  'aws-2009': source(
    'Architectural Woodwork Standards',
    'Edition 1, 2009, pp. 253 and 279',
    'Architectural Woodwork Standards, 2009',
    'https://issuhub.com/view/index/4686?pageIndex=255',
  ),
  nds: source(
    'National Design Specification for Wood Construction. American Wood Council',
    'sections 3.5.2 and 12.2',
    'NDS',
    'https://awc.org/faqs/awc-standards/nds/what-is-creep-and-how-can-i-address-it',
  ),
  'en-1995': source('Eurocode 5: Design of timber structures', 'EN 1995-1-1, table 3.2', 'EN 1995-1-1'),
  'en-315': source('Plywood: tolerances for dimensions', 'EN 315:2000', 'EN 315'),
  'birch-sheet': source(
    'Birch plywood, sanded: thickness by number of plies',
    'a mill’s data sheet',
    'data sheet for birch plywood',
  ),
  'ps-1': source(
    'Structural plywood, and Hardwood and decorative plywood',
    'Voluntary Product Standard PS 1-19; ANSI/HPVA HP-1-2020, not read',
    'PS 1-19 and HP-1',
  ),
  'ansi-a208': source('Medium density fiberboard for interior applications', 'ANSI A208.2', 'ANSI A208.2'),
  kcma: source('Performance and construction standard for cabinets', 'ANSI/KCMA A161.1', 'ANSI/KCMA A161.1'),
  'niosh-guide': source(
    'Pocket Guide to Chemical Hazards: wood dust. NIOSH, with the limits of OSHA and ACGIH',
    'entry for wood dust',
    'NIOSH Pocket Guide, wood dust',
  ),
  'cfr-1261': source(
    'Safety standard for clothing storage units',
    '16 CFR part 1261, which makes ASTM F2057-23 mandatory (88 FR 28403)',
    '16 CFR 1261',
  ),
  'panel-notes': source(
    'Sag of shelves: limits of plywood and composite panel associations, second hand',
    'joneakes.com, answer 652',
    'panel associations, second hand',
  ),
  trade: source('Common practice of the trade', 'not printed in one place', 'common practice'),
  ours: source('Our own starting value, to be replaced by one’s own', 'with this program', 'our default'),
} as const satisfies Record<string, Source>;
export type SourceKey = keyof typeof SOURCES;
