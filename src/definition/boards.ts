import { z } from 'zod';
import { QUARTERS } from '../data/quarters.js';
import { DEFECT_KINDS } from '../wood/defects.js';
import { Length, choice, length, number, pair, text } from './fields.js';

/** The boards that there are, in a file of their own. Structure only. */

/** What a board may be called: as it is chalked on its end. */
export const BOARD_ID = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

const OneDefect = z
  .strictObject({
    kind: choice(DEFECT_KINDS, 'what it is; a void is no wood'),
    face: choice(['front', 'back', 'through'], 'the face where it is seen, or both').optional(),
    from: pair('its near lower corner: from the marked end, from the lower edge', ['12', '2']),
    to: pair('its far upper corner: from the marked end, from the lower edge', ['14', '3 1/2']),
  })
  .meta({ description: 'one defect', examples: [{ kind: 'knot', from: ['12', '2'], to: ['14', '3 1/2'] }] });
const OneBoard = z
  .strictObject({
    species: text('the wood, a key of the table of woods or of the shop’s own', 'oak-white'),
    quarter: choice(
      QUARTERS.map((q) => q.name) as [string, ...string[]],
      'the rough thickness that it was sold as, in quarters of an inch',
    ),
    thickness: length('its thickness as measured, rough', '1 1/4'),
    width: z.union([Length, z.tuple([Length, Length])]).meta({
      description: 'its width; where it tapers, at the marked end and at the other',
      examples: [['8 1/4', '7 3/4']],
    }),
    length: length('its length', '98'),
    cut: choice(['flat', 'rift', 'quartered'], 'how it is sawn').optional(),
    moisture: number('its moisture as read', 7.5, '%').optional(),
    price: number('what it costs', 60, 'any money').optional(),
    group: text('boards of one log or colour have the same word', 'log A').optional(),
    crook: length('how far its edge is out of straight over its length', '1/4').optional(),
    bow: length('how far its face is out of straight over its length', '1/2').optional(),
    cup: length('how far its face is out of flat across its width', '1/16').optional(),
    defects: z
      .array(OneDefect)
      .optional()
      .meta({
        description: 'what is wrong with it; both faces are measured from the same end and edge',
        examples: [[{ kind: 'knot', face: 'front', from: ['12', '2'], to: ['14', '3 1/2'] }]],
      }),
  })
  .meta({
    description: 'one board',
    examples: [{ species: 'oak-white', quarter: '5/4', thickness: '1 1/4', width: '8', length: '98' }],
  });

/** A boards file. */
export const BoardsFile = z
  .strictObject({
    format: z.literal(1).meta({ description: 'the number of this form of file', examples: [1] }),
    units: choice(['in', 'mm'], 'what bare numbers are'),
    boards: z.record(z.string().regex(BOARD_ID), OneBoard).meta({
      description: 'the boards, by what is chalked on them',
      examples: [{ B1: { species: 'oak-white', quarter: '5/4', thickness: '1 1/4', width: '8', length: '98' } }],
    }),
  })
  .meta({
    id: 'Boards',
    description: 'the boards that there are',
    examples: [
      {
        format: 1,
        units: 'in',
        boards: { B1: { species: 'oak-white', quarter: '5/4', thickness: '1 1/4', width: '8', length: '98' } },
      },
    ],
  });
