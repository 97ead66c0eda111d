import { z } from 'zod';
import { PATTERN_KEY, choice, count, length, number, pair, pattern, text, words } from './fields.js';

/** What a piece is for, how it gets to its room, and who answers for what is found: structure only. */

export const USE_KINDS = [
  'clothes',
  'books',
  'table',
  'desk',
  'seat',
  'display',
  'office',
  'other',
  'crib',
  'bunk',
  'high chair',
  'changing table',
  'toy chest',
] as const;

const Load = z.strictObject({
  perArea: number(
    'load on each square foot or square metre of its face',
    40,
    'lb/ft² in a file in inches, kg/m² in millimetres',
  ).optional(),
  middle: number('load at the middle of its length', 50, 'lb in a file in inches, kg in millimetres').optional(),
});
export const Use = z.strictObject({
  kind: choice(USE_KINDS, 'what it is for').optional(),
  fixed: z
    .boolean()
    .meta({ description: 'fixed to the building, so that it cannot tip', examples: [false] })
    .optional(),
  floor: choice(['hard', 'carpet'], 'what it stands on').optional(),
  loads: z
    .record(z.string().regex(PATTERN_KEY), Load.meta({ description: 'a load', examples: [{ perArea: 40 }] }))
    .meta({ description: 'what parts carry, by part', examples: [{ 'shelf_*': { perArea: 40 } }] })
    .optional(),
  sag: z
    .record(
      z.string().regex(PATTERN_KEY),
      count('the n of a sag of at most its span over n', 384).meta({ unit: 'span over sag' }),
    )
    .meta({ description: 'how little parts may sag, by part: 384 is span / 384', examples: [{ 'shelf_*': 384 }] })
    .optional(),
});

const Door = z.strictObject({
  name: text('which door', 'front door'),
  width: length('its clear width', '32'),
  height: length('its clear height', '78'),
});
const Corner = z.strictObject({
  name: text('which corner', 'hall'),
  widths: pair('clear widths before and after the corner', ['36', '36']),
  height: length('clear height there', '90').optional(),
});
const Stair = z.strictObject({
  name: text('which stair', 'to the bedrooms'),
  width: length('its clear width', '34'),
  headroom: length('clear height over the nosings, straight up', '78'),
  pitch: number('how steeply it rises', 38, 'degrees'),
  landing: length('clear depth of its landing, where it turns', '36').optional(),
});
const Vehicle = z.strictObject({
  length: length('inside length', '96'),
  width: length('inside width', '50'),
  height: length('inside height', '52'),
});
const many = <T extends z.ZodType>(of: T, description: string, example: unknown) =>
  z.array(of.meta({ description, examples: [example] })).meta({ description, examples: [[example]] });
export const Delivery = z.strictObject({
  doors: many(Door, 'doors on the way', { name: 'front door', width: '32', height: '78' }).optional(),
  corners: many(Corner, 'corners on the way', { name: 'hall', widths: ['36', '36'] }).optional(),
  stairs: many(Stair, 'stairs on the way', { name: 'stair', width: '34', headroom: '78', pitch: 38 }).optional(),
  ceiling: length('height of the lowest ceiling under which it is stood up', '96').optional(),
  vehicle: Vehicle.meta({
    description: 'inside of the vehicle',
    examples: [{ length: '96', width: '50', height: '52' }],
  }).optional(),
  wrap: length('thickness of the wrapping on every side', '1').optional(),
  apart: words('parts that come off for the carry; * stands for any', ['top']).optional(),
});

const Acceptance = z.strictObject({
  finding: text('the code of the finding', 'front-moves-much'),
  of: pattern('the part or joint that it is about; all of that code without it', 'short_1.front').optional(),
  why: text('why it is right all the same', 'the room is kept at 45 %'),
  by: text('who answers for it', 'sample'),
  on: text('the day when it was decided, year-month-day', '2027-02-01'),
});
export const Accepted = many(Acceptance, 'findings that somebody answers for', {
  finding: 'front-moves-much',
  of: 'short_1.front',
  why: 'the room is kept at 45 %',
  by: 'sample',
  on: '2027-02-01',
});
