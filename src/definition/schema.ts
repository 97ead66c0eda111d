import { z } from 'zod';
import {
  JOINT_KEY,
  KEY,
  Length,
  MEASURE,
  PART_KEY,
  PATTERN_KEY,
  PLAIN_ID,
  choice,
  count,
  ids,
  length,
  number,
  pair,
  pairOf,
  text,
  triple,
  words,
} from './fields.js';
import { DEFECT_KINDS } from '../wood/defects.js';
import { Accepted, Delivery, Use } from './circumstances.js';
import { Part } from './parts.js';
import { Shop } from './shop.js';

/** A joint kind's own fields, as much of it as the definition needs: its name, its fields, which of them are lengths. */
export interface JointFields {
  readonly kind: string;
  readonly words: string;
  readonly spec: z.ZodType;
  readonly lengths: readonly string[];
}

const Piece = z.strictObject({
  title: text('what the piece is called', 'Tall chest'),
  number: text('the number of the job', 'C-021'),
  revision: text('the letter of the issue', 'A'),
  date: text('the date of the issue, year-month-day', '2027-02-01'),
  client: text('who it is for', 'sample').optional(),
  maker: text('who makes it', 'sample').optional(),
});
const Room = z.strictObject({
  humidity: pairOf('relative humidity at its driest and wettest', [30, 60], '%').optional(),
  temperature: number(
    'temperature; degrees Fahrenheit in a file in inches, Celsius in millimetres',
    70,
    'degrees',
  ).optional(),
  region: choice(
    ['most of the US', 'dry southwest', 'damp coast'],
    'where it is, for a room of which no humidity was measured',
  ).optional(),
});
const Measure = z
  .union([
    Length,
    z.array(Length),
    z.strictObject({
      graduate: count('how many', 4),
      in: length('what they fill together', 'H - 12'),
      by: text('how they grow', 'step 3/4'),
      snap: length('what each is rounded to; the remainder goes to the last', '1/16').optional(),
    }),
  ])
  .meta({
    id: 'Measure',
    description: 'a length, a row of lengths (name_1, name_2 ...), or a row that grows',
    examples: ['36', ['5 1/4', '7'], { graduate: 4, in: '30', by: 'step 3/4' }],
  });
const Lumber = z.strictObject({
  lumber: text('the wood, a key of the table of woods', 'oak-white'),
  quarter: text('the rough thickness in quarters of an inch', '5/4'),
  cut: choice(['flat', 'rift', 'quartered'], 'how the board is sawn').optional(),
  allow: z
    .array(choice(DEFECT_KINDS, 'a kind of defect'))
    .optional()
    .meta({ description: 'what may be in parts of it, wherever it shows', examples: [['sound knot', 'sapwood']] }),
  spares: z
    .record(z.string().regex(PATTERN_KEY), count('how many more', 1))
    .optional()
    .meta({ description: 'how many more blanks of a part are cut than the piece takes', examples: [{ leg_1: 1 }] }),
  trials: count('how many lengths of each thickness are cut to try settings on', 1).optional(),
});
const SheetGoods = z.strictObject({
  sheet: text('the panel, a key of the table of panels', 'plywood-birch'),
  thickness: length('its thickness as measured', '0.205'),
  nominal: text('what it is sold as', '1/4').optional(),
  size: pair('length and width of a sheet', ['96', '48']),
  grain: choice(['length', 'width', 'none'], 'which way its face grain runs').optional(),
  price: number('what one sheet costs', 85, 'any money').optional(),
  sizes: z
    .array(
      z
        .strictObject({
          size: pair('length and width of a sheet', ['60', '60']),
          price: number('what one sheet costs', 48, 'any money').optional(),
          count: count('how many there are; as many as wanted when left out', 2).optional(),
        })
        .meta({ description: 'a further size', examples: [{ size: ['60', '60'], price: 48 }] }),
    )
    .optional()
    .meta({
      description: 'further sizes in which it can be had; all have a price, or none',
      examples: [[{ size: ['60', '60'], price: 48 }]],
    }),
  spares: z
    .record(z.string().regex(PATTERN_KEY), count('how many more', 1))
    .optional()
    .meta({ description: 'how many more of a part are cut than the piece takes', examples: [{ 'short_1.bottom': 1 }] }),
});
const Stock = z.union([Lumber, SheetGoods]).meta({
  id: 'Stock',
  description: 'what parts are made of: lumber, or sheet goods',
  examples: [{ lumber: 'oak-white', quarter: '5/4' }],
});

const Front = z.strictObject({
  fit: z
    .literal('inset')
    .meta({ description: 'how the front stands in its opening', examples: ['inset'] })
    .optional(),
  kind: choice(['separate', 'integral'], 'a front of its own, or the front of the box').optional(),
  reveal: length('the gap around it', '1/16').optional(),
  stock: text('what it is made of', 'oak').optional(),
  thickness: length('its thickness', '3/4').optional(),
  back: length('how far it stands behind the rails', '1/16').optional(),
  pulls: z
    .union([z.int().min(0), z.literal('none')])
    .optional()
    .meta({ description: 'how many pulls', examples: [2] }),
});
const Box = z.strictObject({
  stock: text('what its sides are made of', 'poplar').optional(),
  bottom: text('what its bottom is made of', 'ply').optional(),
  bottomUp: length('how high the bottom is set', '1/2').optional(),
  sides: length('how thick its sides are', '1/2').optional(),
  height: length('how high its sides are', '4').optional(),
  depth: length('how long it is, front to back', '18').optional(),
  corner: text('the joint of its corners', 'half-blind-dovetail').optional(),
  runner: choice(['side-slide', 'none'], 'what it runs on').optional(),
  slide: text('the slide, a key of the table of slides', 'side-18').optional(),
});
const Drawer = z
  .strictObject({
    like: text('the drawers whose fields are taken over', 'short').optional(),
    mark: text('what is written on the wood; {n} counts on', 'D{n}').optional(),
    across: words('the parts on both sides and between, left to right', ['side_left', 'side_right']).optional(),
    up: words('the parts above, below and between', ['rail_2', 'rail_1']).optional(),
    front: Front.optional().meta({ description: 'the front', examples: [{ fit: 'inset', reveal: '1/16' }] }),
    box: Box.optional().meta({ description: 'the box', examples: [{ stock: 'poplar', bottom: 'ply' }] }),
  })
  .meta({
    id: 'Drawer',
    description: 'a grid of drawers between parts',
    examples: [{ across: ['side_left', 'side_right'], up: ['rail_2', 'rail_1'] }],
  });
const Run = z
  .strictObject({
    parts: words('the parts, in order; * stands for any', ['long_*.front']),
    order: choice(
      ['left to right', 'right to left', 'front to back', 'bottom to top', 'top to bottom'],
      'the order in which the parts of one * or range lie on the board; as made when left out',
    ).optional(),
    from: text('what they are cut from', 'one board').optional(),
  })
  .meta({ description: 'parts whose grain runs on', examples: [{ parts: ['long_*.front'], order: 'left to right' }] });
const JOINT_SHAPE = {
  part: ids('the part that goes in, or several; a joint that a drawer makes has its own', 'rail_{2..5}').optional(),
  into: ids('the part that it goes into, or several', ['side_left', 'side_right']).optional(),
  each: text('a letter and a range: index goes with index', 'i = 1..3').optional(),
};
const JOINT_META = {
  description: 'how parts are joined',
  examples: [{ kind: 'sliding-dovetail', part: 'rail_2', into: 'side_left' }],
};

/** One kind of joint: what all joints have, and its own fields. `spec` must be an object schema. */
function jointOf(fields: JointFields): z.ZodObject {
  const own = fields.spec instanceof z.ZodObject ? (fields.spec.shape as z.ZodRawShape) : {};
  const kind = z.literal(fields.kind).meta({ description: fields.words, examples: [fields.kind] });
  return z.strictObject({ kind, ...JOINT_SHAPE, ...own });
}
function joints(kinds: readonly JointFields[]): z.ZodType {
  if (kinds.length === 0)
    return z.looseObject({ kind: z.string(), ...JOINT_SHAPE }).meta({ id: 'Joint', ...JOINT_META });
  const [first, ...rest] = kinds.map(jointOf) as [z.ZodObject, ...z.ZodObject[]];
  return z.discriminatedUnion('kind', [first, ...rest] as never).meta({ id: 'Joint', ...JOINT_META });
}

/**
 * The schema of a definition: structure only, nothing refined or transformed, so that the published JSON Schema (written
 * from it) says the same. Joints of the kinds given are held to their own fields; with none given any joint passes.
 */
export function definitionSchema(kinds: readonly JointFields[] = []) {
  const Joint = joints(kinds);
  const Group = z
    .strictObject({
      like: text('the group whose parts and joints are taken over', 'trestle_left').optional(),
      mirror: text('the group that this one is the mirror image of', 'trestle_left').optional(),
      about: length('where the mirror stands, across', 'W / 2').optional(),
      at: triple('where it is placed: across, deep, up', ['0', '0', '0']).optional(),
      parts: byId(Part, 'its parts').optional(),
      joints: byId(Joint, 'its joints').optional(),
    })
    .meta({
      id: 'Group',
      description: 'parts and joints that are placed together',
      examples: [{ mirror: 'trestle_left' }],
    });
  return z
    .strictObject({
      format: z.literal(1).meta({ description: 'the number of this form of file', examples: [1] }),
      from: text('a shipped definition to start from', 'tall-chest').optional(),
      piece: Piece.meta({ description: 'what stands in the title strip', examples: [{ title: 'Tall chest' }] }),
      units: choice(['in', 'mm'], 'what bare numbers are, and what is printed'),
      room: Room.optional().meta({ description: 'the room that it will live in', examples: [{ humidity: [30, 60] }] }),
      measures: z
        .record(z.string().regex(MEASURE), Measure)
        .optional()
        .meta({ description: 'lengths with names', examples: [{ W: '36', row: ['5 1/4', '7'] }] }),
      stock: z
        .record(z.string().regex(PLAIN_ID), Stock)
        .meta({ description: 'what parts are made of', examples: [{ oak: { lumber: 'oak-white', quarter: '5/4' } }] }),
      parts: byId(Part, 'the parts; short_1.front says more about a part that a drawer makes', PART_KEY),
      joints: byId(
        Joint,
        'the joints; short_1.corner_back_left says otherwise about one that a drawer makes',
        JOINT_KEY,
      ).optional(),
      drawers: byId(Drawer, 'grids of drawers').optional(),
      groups: byId(Group, 'groups of parts').optional(),
      runs: byId(Run, 'runs of grain').optional(),
      finish: z
        .strictObject({
          kind: text('what it is finished with', 'penetrating oil'),
          coats: count('how many coats', 3).optional(),
        })
        .optional()
        .meta({ description: 'the finish', examples: [{ kind: 'penetrating oil', coats: 3 }] }),
      shop: Shop.optional().meta({ description: 'the shop', examples: [{ kerf: '1/8' }] }),
      use: Use.optional().meta({ description: 'what it is for', examples: [{ kind: 'clothes', floor: 'carpet' }] }),
      delivery: Delivery.optional().meta({
        description: 'the way from the shop to its room',
        examples: [{ doors: [{ name: 'front door', width: '32', height: '78' }], ceiling: '96' }],
      }),
      accepted: Accepted.optional(),
    })
    .meta({ id: 'Definition', description: 'a piece of furniture', examples: [{ format: 1, units: 'in' }] });
}
const byId = <T extends z.ZodType>(of: T, description: string, key = KEY) =>
  z.record(z.string().regex(key), of).meta({ description, examples: [{}] });

export type DefinitionSchema = ReturnType<typeof definitionSchema>;
