import { z } from 'zod';
import { DATA_KEY, choice, count, length, number, pairOf, text } from './fields.js';

/** What a shop has settled once: under `shop` in a definition, or in a file of its own. Structure only. */

const machine = <T extends z.ZodRawShape>(fields: T, description: string, example: unknown) =>
  z
    .strictObject(fields)
    .meta({ description, examples: [example] })
    .optional();
const Machines = z.strictObject({
  jointer: machine(
    { width: length('widest board', '8'), length: length('length of both tables together', '72').optional() },
    'the jointer, as its manual says',
    { width: '8', length: '72' },
  ),
  planer: machine(
    {
      width: length('widest board', '15'),
      shortest: length('shortest board', '9').optional(),
      thinnest: length('thinnest board', '1/4').optional(),
      thickest: length('thickest board', '6').optional(),
    },
    'the planer, as its manual says',
    { width: '15', shortest: '9' },
  ),
  tableSaw: machine(
    {
      rip: length('widest rip to the fence', '50').optional(),
      crosscut: length('widest crosscut with the gauge or sled', '24').optional(),
      height: length('deepest cut', '3 1/8').optional(),
    },
    'the table saw, as its manual says',
    { rip: '50', crosscut: '24' },
  ),
  bandsaw: machine(
    { height: length('tallest cut', '12'), throat: length('blade to frame', '13 1/2').optional() },
    'the bandsaw, as its manual says',
    { height: '12' },
  ),
  routerTable: machine(
    { tallest: length('longest part that is steered upright at its fence', '24') },
    'the router table',
    { tallest: '24' },
  ),
  drillPress: machine(
    { stroke: length('deepest hole in one stroke', '4'), throat: length('bit to column', '8').optional() },
    'the drill press, as its manual says',
    { stroke: '4' },
  ),
  bench: machine(
    { length: length('length of its top', '84'), width: length('width of its top', '30').optional() },
    'the bench',
    { length: '84', width: '30' },
  ),
});
const Clamp = z
  .strictObject({ opening: length('longest opening', '50'), count: count('how many', 8) })
  .meta({ description: 'one kind of clamp', examples: [{ opening: '50', count: 8 }] });

const Offcut = z
  .strictObject({
    id: text('what is written on it', 'K3'),
    sheet: text('the panel, a key of the table of panels', 'plywood-birch'),
    thickness: length('its thickness as measured', '0.205'),
    length: length('its length', '47'),
    width: length('its width', '30'),
    grain: choice(
      ['length', 'width', 'none'],
      'which way its face grain runs; as a new sheet of it when left out',
    ).optional(),
  })
  .meta({
    description: 'a piece of sheet goods on the rack',
    examples: [{ id: 'K3', sheet: 'plywood-birch', thickness: '0.205', length: '47', width: '30' }],
  });

const SOURCE = 'where the figures come from: a table, a maker’s sheet, a weighing';
const Wood = z
  .strictObject({
    like: text('the wood whose other figures are taken over', 'oak-white').optional(),
    name: text('what it is called on the sheets', 'White oak, local').optional(),
    gravity: number('oven-dry weight over that of water of the volume at 12 % moisture', 0.7, 'ratio').optional(),
    radial: number('change of a quartered width for 1 % moisture, of the width', 0.0018, 'share').optional(),
    tangential: number('change of a flat-sawn width for 1 % moisture, of the width', 0.00365, 'share').optional(),
    shrinkage: pairOf('shrinkage green to oven-dry: radial, tangential', [5.6, 10.5], '%').optional(),
    stiffness: number(
      'modulus of elasticity in bending at 12 % moisture',
      1.78,
      'million psi in a file in inches, GPa in millimetres',
    ).optional(),
    strength: number(
      'bending strength at 12 % moisture',
      15200,
      'psi in a file in inches, MPa in millimetres',
    ).optional(),
    hardness: number('side hardness at 12 % moisture', 1360, 'lbf in a file in inches, N in millimetres').optional(),
    source: text(SOURCE, 'own weighing, 2027-01-10'),
  })
  .meta({
    description: 'a wood of your own, or own figures of one in the table',
    examples: [{ like: 'oak-white', gravity: 0.7, source: 'own weighing, 2027-01-10' }],
  });
const OwnPanel = z
  .strictObject({
    like: text('the panel whose other figures are taken over', 'plywood-birch').optional(),
    name: text('what it is called on the sheets', 'Baltic birch').optional(),
    gravity: number('weight over that of water of the same volume, as used', 0.68, 'ratio').optional(),
    stiffness: pairOf(
      'modulus of elasticity in bending: along its face grain, across it',
      [1.2, 0.6],
      'million psi in a file in inches, GPa in millimetres',
    ).optional(),
    source: text(SOURCE, 'the maker’s sheet, 2026'),
  })
  .meta({
    description: 'a panel of your own, or own figures of one in the table',
    examples: [{ like: 'plywood-birch', gravity: 0.68, source: 'the maker’s sheet, 2026' }],
  });

const FIELDS = {
  moisture: number('moisture of the wood when it is worked, as read', 7, '%').optional(),
  read: text('the date when it was read', '2027-01-15').optional(),
  kerf: length('width of the saw cut in sheet goods', '1/8').optional(),
  trim: length('taken off the edges of a sheet first', '1/4').optional(),
  saw: z
    .strictObject({
      stages: z
        .literal([2, 3, 'any'])
        .optional()
        .meta({
          description: 'how often the direction of cutting may change on a sheet, a last cut to size not counted',
          examples: [3],
        }),
      first: choice(['rip', 'cross', 'either'], 'which way a whole sheet is cut first').optional(),
      keep: z
        .strictObject({ length: length('its length', '12'), width: length('its width', '4') })
        .optional()
        .meta({ description: 'the least offcut worth keeping', examples: [{ length: '12', width: '4' }] }),
    })
    .optional()
    .meta({ description: 'how sheet goods are cut up here', examples: [{ stages: 3, first: 'cross' }] }),
  offcuts: z
    .array(Offcut)
    .optional()
    .meta({
      description: 'sheet goods on the rack, used first where they save something',
      examples: [[{ id: 'K3', sheet: 'plywood-birch', thickness: '0.205', length: '47', width: '30' }]],
    }),
  step: length('printed sizes are multiples of it', '1/64').optional(),
  pitch: length('pitch of the dovetail jig', '1').optional(),
  dovetailBit: z
    .strictObject({
      width: length('width across its end', '1/2'),
      angle: number('its side angle', 14, 'degrees'),
    })
    .optional()
    .meta({ description: 'the bit for dovetails', examples: [{ width: '1/2', angle: 14 }] }),
  machines: Machines.optional().meta({
    description: 'the limits of the machines; what is left out is not judged',
    examples: [{ jointer: { width: '8' }, planer: { width: '15' } }],
  }),
  clamps: z
    .array(Clamp)
    .optional()
    .meta({ description: 'the clamps there are', examples: [[{ opening: '50', count: 8 }]] }),
  lift: number('what one person lifts here', 50, 'lb in a file in inches, kg in millimetres').optional(),
  alone: z
    .strictObject({ length: length('its length', '60'), width: length('its width', '30') })
    .optional()
    .meta({
      description: 'the largest piece that one person steers at the saw',
      examples: [{ length: '60', width: '30' }],
    }),
  door: z
    .strictObject({ width: length('its clear width', '42'), height: length('its clear height', '80') })
    .optional()
    .meta({ description: 'the door of the shop', examples: [{ width: '42', height: '80' }] }),
  woods: z
    .record(z.string().regex(DATA_KEY), Wood)
    .optional()
    .meta({
      description: 'woods of your own, and own figures of those in the table',
      examples: [{ 'my-oak': { like: 'oak-white', gravity: 0.7, source: 'own weighing' } }],
    }),
  panels: z
    .record(z.string().regex(DATA_KEY), OwnPanel)
    .optional()
    .meta({
      description: 'panels of your own, and own figures of those in the table',
      examples: [{ 'my-ply': { like: 'plywood-birch', gravity: 0.68, source: 'the maker’s sheet' } }],
    }),
};

/** `shop` in a definition. */
export const Shop = z.strictObject(FIELDS);
/** A shop's own file: the same fields, what its bare numbers are, and the number of its form. */
export const ShopFile = z
  .strictObject({
    format: z.literal(1).meta({ description: 'the number of this form of file', examples: [1] }),
    units: choice(['in', 'mm'], 'what bare numbers are'),
    ...FIELDS,
  })
  .meta({ id: 'Shop', description: 'a shop', examples: [{ format: 1, units: 'in', kerf: '1/8' }] });
