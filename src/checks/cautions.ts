import { tradeName } from '../data/species.js';
import type { Piece, UseKind } from '../piece/piece.js';
import { woodOf } from '../wood/material.js';
import { partBodies, boundsOf } from './bodies.js';
import type { CheckInput, Judgement } from './check.js';
import type { Judged } from './fold.js';
import { INCH_MM } from '../lengths/units.js';

/** Something that can hurt, in our own words, printed where it applies and only there. */
export interface Caution {
  readonly key: string;
  /** One or two short sentences; they defer to manuals, codes and licensed practice where these have a say. */
  readonly text: string;
  /** The sheets that carry it. */
  readonly on: readonly ('cover' | 'cutting' | 'cards' | 'finish' | 'delivery')[];
  /** Parts whose cards carry it; all of them where it is empty and `on` has cards. */
  readonly touches: readonly string[];
  readonly source: string;
}

/** Furniture that rules of its own stand over: nothing of this program's judges it. 16 CFR 1213, 1219, 1220, 1513. */
const OUTSIDE: ReadonlySet<UseKind> = new Set(['crib', 'bunk', 'high chair', 'changing table', 'toy chest']);
/** Height over which a piece without drawers is told to be fixed: that of 16 CFR 1261. */
const TALL_MM = 27 * INCH_MM;
const OILS = /\b(oil|linseed|tung|danish|varnish)\b/i;
const PAINTS = /\b(paint|enamel|lacquer|varnish)\b/i;
const GLASS = /\bglass\b/i;

type Maker = (input: CheckInput, judged: readonly Judged[]) => Caution | undefined;
const caution = (
  key: string,
  on: Caution['on'],
  text: string,
  source: string,
  touches: readonly string[] = [],
): Caution => ({ key, text, on, touches: [...touches].sort(), source });

const figures: Maker = () =>
  caution('figures', ['cover'], 'Check every figure against your stock and hardware before you cut.', 'our default');
const guards: Maker = () =>
  caution(
    'guards',
    ['cover', 'cutting'],
    'Guards and riving knife stay on. Each machine’s manual and local codes stand over this packet.',
    '29 CFR 1910.213',
  );

/** By the worst class of the woods in the piece. */
const dust: Maker = ({ piece }) => {
  const woods = used(piece).flatMap((s) => woodOf(s) ?? []);
  const named = (sort: string): string[] =>
    [...new Set(woods.filter((w) => w.dust?.sort === sort).map((w) => tradeName(w).toLowerCase()))].sort();
  const [known, suspected, touchy] = [named('A1'), named('A2'), named('sensitizer')];
  const more =
    known.length > 0
      ? ` That of ${list(known)} can cause cancer of the nose.`
      : suspected.length > 0
        ? ` That of ${list(suspected)} is suspected of causing cancer.`
        : touchy.length > 0
          ? ` That of ${list(touchy)} can make you allergic.`
          : '';
  return caution(
    'dust',
    ['cover'],
    `Wood dust harms the lungs.${more} Extraction and a fitted mask.`,
    'NIOSH Pocket Guide, wood dust, with the classes of ACGIH',
  );
};
const used = (piece: Piece): Piece['stocks'][string][] => {
  const ids = new Set(piece.parts.map((p) => p.stock));
  return Object.values(piece.stocks).filter((s) => ids.has(s.id));
};
const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) as string}`;

const panels: Maker = ({ piece }) => {
  const sheets = used(piece).filter((s) => s.kind === 'sheet');
  if (sheets.length === 0) return undefined;
  const ids = new Set(sheets.map((s) => s.id));
  return caution(
    'panels',
    ['cutting'],
    'Buy panels labelled TSCA Title VI and keep the label. Sawing them gives off fine dust and formaldehyde.',
    '40 CFR 770',
    piece.parts.filter((p) => ids.has(p.stock)).map((p) => p.id),
  );
};
const rags: Maker = ({ piece }) =>
  OILS.test(piece.finish ?? '')
    ? caution(
        'oily-rags',
        ['cover', 'finish'],
        'Rags wet with oil can set fire to themselves: lay them out flat outdoors until hard, or drown them in a lidded metal can.',
        '29 CFR 1910.106(e)(9); fire-service practice',
      )
    : undefined;
const coating: Maker = ({ piece }) =>
  PAINTS.test(piece.finish ?? '')
    ? caution(
        'coating',
        ['finish'],
        'Take a coating that its maker states to be under 90 ppm lead, and air the room as its label says.',
        '16 CFR 1303',
      )
    : undefined;

const small: Maker = (_, judged) => {
  const found = judged.filter((j) => j.code === 'small-at-machines');
  if (found.length === 0) return undefined;
  return caution(
    'small-parts',
    ['cards'],
    'Small at a machine: work it on a longer blank, or hold it with a sled, clamp or push block, as the manual says.',
    '29 CFR 1910.213; common practice',
    found.flatMap((j) => j.touches),
  );
};

const tipping: Maker = (input) => {
  const { piece } = input;
  if (piece.use?.fixed) return undefined;
  const bodies = partBodies(input);
  const up = bodies.length > 0 ? boundsOf(bodies)[2] : ([0, 0] as const);
  const tall = up[1] - up[0] >= TALL_MM;
  if (!tall) return undefined;
  return piece.drawers.length > 0
    ? caution(
        'tip-over',
        ['cover', 'delivery'],
        'A child can pull it over by its drawers: fix it to a stud with metal hardware.',
        '16 CFR 1261; ASTM F3096 for the hardware',
      )
    : caution(
        'tip-over',
        ['cover', 'delivery'],
        'Tall furniture can be pulled over: fix it to a stud with metal hardware.',
        'common practice',
      );
};
/** The rule for clothing storage tests without the wall: what fails by these estimates is told where it is read first. */
const clothing: Maker = (_, judged) =>
  judged.some((j) => j.code.startsWith('tip-') && j.verdict === 'fail')
    ? caution(
        'clothing-rule',
        ['cover', 'delivery'],
        'By these estimates it would not stand the tests of 16 CFR 1261 for clothing storage; a strap to the wall does not count there.',
        '16 CFR 1261',
      )
    : undefined;
const lifting: Maker = (_, judged) => {
  const heavy = judged.filter((j) => j.code === 'carry-heavy' && j.verdict !== 'pass');
  return heavy.length === 0
    ? undefined
    : caution(
        'lifting',
        ['delivery'],
        'More than one person should lift: take the drawers and loose parts out first.',
        'NIOSH lifting equation',
      );
};
const loads: Maker = (_, judged) => {
  const spans = judged.filter((j) => j.code.startsWith('sag'));
  return spans.length === 0
    ? undefined
    : caution(
        'loads',
        ['cover'],
        'Spans are figured for the loads of the checks sheet, not to stand on.',
        'our default',
      );
};
const glass: Maker = ({ piece }) => {
  const panes = piece.parts.filter((p) => GLASS.test(p.name) || p.notes.some((n) => GLASS.test(n)));
  return panes.length === 0
    ? undefined
    : caution(
        'glass',
        ['cards'],
        'Glass in furniture is tempered or laminated: buy it cut, with arrises ground.',
        'ANSI Z97.1, from memory',
        panes.map((p) => p.id),
      );
};
const outside: Maker = ({ piece }) =>
  piece.use?.kind !== undefined && OUTSIDE.has(piece.use.kind)
    ? caution(
        'outside',
        ['cover'],
        `A ${piece.use.kind} stands under mandatory rules that these checks do not cover: nothing here certifies it.`,
        '16 CFR 1213, 1219, 1220, 1513',
      )
    : undefined;

const MAKERS: readonly Maker[] = [
  outside,
  figures,
  guards,
  dust,
  tipping,
  clothing,
  rags,
  lifting,
  loads,
  panels,
  coating,
  small,
  glass,
];

/** Every caution that applies to the piece, the gravest first. */
export const cautionsOf = (input: CheckInput, judged: readonly Judged[]): Caution[] =>
  MAKERS.flatMap((make) => make(input, judged) ?? []);

/** Furniture that this program refuses to certify fails as a whole: every sheet is stamped. */
export function refusal(piece: Piece): Judgement[] {
  const kind = piece.use?.kind;
  if (kind === undefined || !OUTSIDE.has(kind)) return [];
  const none = { of: 'count', value: 0 } as const;
  return [
    {
      code: 'outside-checks',
      verdict: 'fail',
      subject: 'The piece',
      about: `is a ${kind}, which mandatory rules of its own stand over; checks here that cover it`,
      figure: none,
      limit: { of: 'count', value: 1 },
      worked: { rule: 'the use of the piece', sources: ['16 CFR 1213, 1219, 1220, 1513'], inputs: [] },
      remedy: 'Have it judged by licensed practice under those rules; this packet does not certify it.',
      touches: [],
      path: ['use', 'kind'],
    },
  ];
}
