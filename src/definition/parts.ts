import { z } from 'zod';
import { AXIS_WORDS, Face, FACE_WORDS, Length, choice, length, pair, text, triple, words } from './fields.js';

/** Which extents go together is checked when the file is read (extents.ts), so that the message can say it. */
const Extent = z
  .union([
    z.tuple([Length, Length]),
    z.strictObject({
      from: length('where it begins', '0').optional(),
      to: length('where it ends', 'H').optional(),
      mid: length('where its middle is', 'W / 2').optional(),
      size: length('how long it is', '3/4').optional(),
    }),
  ])
  .meta({
    id: 'Extent',
    description: 'from where to where along an axis: [from, to], or two of from, to, mid and size',
    examples: [['0', 'side'], { to: 'H', size: '7/8' }],
  });
const extent = (description: string, example: unknown) => Extent.meta({ description, examples: [example] });

const Arris = z.strictObject({
  cut: choice(['chamfer', 'round-over', 'cove'], 'what is taken off an arris'),
  edges: words('arrises, each named by its two faces', ['front top']),
  size: length('how much from each face', '1/8'),
  stop: length('how far it stops short of the ends', '1 1/2').optional(),
});
const Rabbet = z.strictObject({
  cut: z.literal('rabbet').meta({ description: 'a step along an edge', examples: ['rabbet'] }),
  face: Face('the face that it is cut into', 'back'),
  edge: Face('the edge that it runs along, by the face there', 'left'),
  on: length('how wide it is on that face', '3/8'),
  into: length('how deep it goes into that face', '1/4'),
  from: length('where it begins along the edge', '0').optional(),
  to: length('where it ends along the edge', '12').optional(),
});
const Taper = z.strictObject({
  cut: z.literal('taper').meta({ description: 'a leg made thinner to one end', examples: ['taper'] }),
  faces: z.array(z.enum(FACE_WORDS)).meta({ description: 'the faces that are tapered', examples: [['right', 'back']] }),
  end: Face('the end where it is thinnest', 'bottom'),
  begin: length('where it begins, from the other end', '5'),
  to: length('how thick the part is at the thin end', '7/8'),
});
const Arc = z.strictObject({
  cut: z.literal('arc').meta({ description: 'a part of a circle cut into an edge', examples: ['arc'] }),
  edge: Face('the edge that it is cut into', 'bottom'),
  rise: length('how high it is in its middle', '1 3/4'),
  from: length('where it begins along the edge', '2').optional(),
  to: length('where it ends along the edge', '30').optional(),
});
const Relief = z.strictObject({
  cut: z
    .literal('relief')
    .meta({ description: 'a gap cut up from an end, so that feet are left', examples: ['relief'] }),
  end: Face('the end that it is cut into', 'bottom'),
  up: length('how far it goes in from the end', '4'),
  from: length('where it begins', '3'),
  to: length('where it ends', '16'),
  along: choice(AXIS_WORDS, 'the axis that from and to are measured along'),
});
const Outline = z.strictObject({
  cut: z.literal('outline').meta({ description: 'the part sawn to a drawn line', examples: ['outline'] }),
  face: Face('the face that the line is drawn on', 'front'),
  points: z.array(z.union([z.tuple([Length, Length]), z.tuple([Length, Length, z.number()])])).meta({
    description:
      'corners of the line, and, third, the bulge of the stretch that ends there (tan of a quarter of the arc)',
    examples: [
      [
        ['0', '0'],
        ['12', '0'],
        ['12', '5', 0.4],
        ['0', '5'],
      ],
    ],
  }),
});
const Flat = z.strictObject({
  cut: z.literal('flat').meta({ description: 'a flat on an arris, for a face to stand on', examples: ['flat'] }),
  edge: text('the arris, by its two faces', 'front left'),
  size: length('how wide the flat is', '1'),
});
const Shape = z.discriminatedUnion('cut', [Arris, Rabbet, Taper, Arc, Relief, Outline, Flat]).meta({
  description: 'one thing cut to the part that no joint needs',
  examples: [{ cut: 'arc', edge: 'bottom', rise: '1 3/4' }],
});
const Hole = z.strictObject({
  face: Face('the face that it is bored into', 'front'),
  at: pair('its centre, from the low corner of the part on that face', ['2', '1 1/2']),
  diameter: length('how wide it is', '1/4'),
  depth: length('how deep it goes; through when left out', '1/2').optional(),
});

const Stand = z.strictObject({
  at: triple('the point where the leg begins: across, deep, up', ['3', '3', 'H - 1']),
  reach: text('the plane that it reaches', 'floor'),
  front: z
    .number()
    .optional()
    .meta({ description: 'its slope in the front view', unit: 'degrees', examples: [4] }),
  side: z
    .number()
    .optional()
    .meta({ description: 'its slope in the side view', unit: 'degrees', examples: [4] }),
  section: pair('its thickness across and deep', ['1 1/4', '1 1/4']).optional(),
});
const Between = z.strictObject({
  from: text('the face that it begins at', 'leg_1.right'),
  to: text('the face that it ends at', 'leg_2.left'),
  at: length('its height', '6'),
  section: pair('its thickness and height', ['3/4', '1 1/4']),
});

export const Part = z
  .strictObject({
    each: text('how many are made of it: a letter and a range, or several', 'i = 1..3').optional(),
    like: text('the part whose fields are taken over', 'rail_1').optional(),
    mirror: text('the part that this one is the mirror image of', 'side_left').optional(),
    about: length('where the mirror stands, across', 'W / 2').optional(),
    mark: text('what is written on the wood', 'R{i}').optional(),
    name: text('what its card calls it', 'front rail').optional(),
    stock: text('what it is made of, a key under "stock"', 'oak').optional(),
    across: extent('from where to where, left to right', ['0', 'side']).optional(),
    deep: extent('from where to where, front to back', { from: '0', size: '2 1/2' }).optional(),
    up: extent('from where to where, bottom to top', { to: 'H', size: '7/8' }).optional(),
    grain: choice(['across', 'deep', 'up', 'none'], 'which way the grain runs').optional(),
    show: z
      .array(z.enum(FACE_WORDS))
      .optional()
      .meta({ description: 'the faces that are seen', examples: [['left', 'front']] }),
    status: choice(
      ['cut now', 'leave long', 'fit to the piece', 'measure first'],
      'whether it may be cut to size at once',
    ).optional(),
    shape: z
      .array(Shape)
      .optional()
      .meta({ description: 'what is cut to it, in order', examples: [[{ cut: 'arc', edge: 'bottom', rise: '1' }]] }),
    holes: z
      .array(Hole)
      .optional()
      .meta({
        description: 'holes that no joint needs',
        examples: [[{ face: 'front', at: ['2', '1 1/2'], diameter: '1/4' }]],
      }),
    faces: z
      .partialRecord(z.enum(FACE_WORDS), z.string())
      .optional()
      .meta({ description: 'the word for a face on the card', examples: [{ left: 'OUTSIDE' }] }),
    reference: z
      .strictObject({
        face: Face('the reference face', 'front').optional(),
        edge: Face('the reference edge', 'bottom').optional(),
        end: Face('the end that lengths are measured from', 'left').optional(),
      })
      .optional()
      .meta({ description: 'what its figures are measured from', examples: [{ face: 'front', edge: 'bottom' }] }),
    stand: Stand.optional().meta({
      description: 'a part that leans, from a point to a plane',
      examples: [{ at: ['3', '3', 'H - 1'], reach: 'floor', front: 4, side: 4 }],
    }),
    span: Between.optional().meta({
      description: 'a part between two faces that may lean',
      examples: [{ from: 'leg_1.right', to: 'leg_2.left', at: '6', section: ['3/4', '1 1/4'] }],
    }),
    turn: z
      .strictObject({
        about: choice(AXIS_WORDS, 'the axis that it is turned about'),
        by: z.number().meta({ description: 'how far', unit: 'degrees', examples: [45] }),
      })
      .optional()
      .meta({ description: 'a part turned about one axis', examples: [{ about: 'up', by: 45 }] }),
    notes: words('further words for its card', ['choose the quietest board']).optional(),
  })
  .meta({
    id: 'Part',
    description: 'one part, by where it shows: its box from shoulder to shoulder',
    examples: [{ stock: 'oak', across: ['0', 'side'], deep: ['0', 'D'], up: ['0', 'top.bottom'], grain: 'up' }],
  });
