import type { Judged } from '../../src/checks/fold.js';
import type { Checked } from '../../src/checks/index.js';
import { inches } from '../../src/lengths/length.js';
import { quantity } from '../../src/value/quantity.js';

/** Judgements typed by hand, one of each verdict, and every kind of drawing. Invented, only to draw from. */
const one = (more: Partial<Judged> & Pick<Judged, 'code' | 'verdict' | 'subject' | 'about'>): Judged => ({
  figure: quantity('fine', inches(0.06)),
  limit: quantity('fine', inches(0.12)),
  margin: 2,
  worked: { rule: 'by hand', sources: ['our default'], inputs: [] },
  touches: [],
  path: ['parts'],
  ...more,
});
export const FAILS = one({
  code: 'sag-later',
  verdict: 'fail',
  subject: 'S1',
  about: 'sags in the middle in years',
  figure: quantity('fine', inches(0.3)),
  margin: 0.4,
  remedy: 'Make it 1 3/8 thick.',
  touches: ['side_left'],
});
export const CHECKED: Checked = {
  checks: [
    {
      key: 'movement',
      title: 'Movement across the grain',
      judged: [
        ...[4, 3, 1.5, 2, 2.5].map((margin, i) =>
          one({ code: 'front-binds', verdict: 'pass', subject: `D${i + 1}`, about: 'keeps a gap above of', margin }),
        ),
        one({
          code: 'slot-short',
          verdict: 'note',
          subject: 'A8 on A3',
          about: 'slides deep in slots of',
          worked: {
            rule: 'by hand',
            sources: ['common practice'],
            inputs: [
              { name: 'change of A8', quantity: quantity('share', 1), source: 'a table', memory: true },
              { name: 'width', quantity: quantity('share', 1) },
            ],
          },
        }),
      ],
      tables: [],
      diagrams: [
        {
          kind: 'reveals',
          rows: [
            { subject: 'D1', where: 'above', made: inches(1 / 16), driest: inches(0.1), wettest: inches(0.05), least: inches(1 / 32) }, // prettier-ignore
            { subject: 'D1', where: 'below', made: inches(1 / 16), driest: inches(0.08), wettest: inches(-0.01), least: inches(1 / 32) }, // prettier-ignore
          ],
        },
      ],
    },
    {
      key: 'sag',
      title: 'Sag',
      judged: [
        FAILS,
        one({
          code: 'sag-now',
          verdict: 'warning',
          subject: 'S2',
          about: 'sags in the middle at first',
          margin: 0.9,
          remedy: 'Move the divider 2 in.',
        }),
      ],
      tables: [],
      diagrams: [
        {
          kind: 'sag',
          spans: (['rests', 'fixed', 'one end'] as const).map((supports, i) => ({
            subject: `S${i + 1}`,
            span: inches(30),
            sag: inches(0.1),
            later: inches(0.15),
            limit: inches(0.12),
            supports,
          })),
        },
      ],
    },
    {
      key: 'stability',
      title: 'Tipping over',
      judged: [
        one({
          code: 'tip-full',
          verdict: 'fail',
          subject: 'The piece',
          about: 'pulled forward by every drawer (an estimate, not a test)',
          accepted: {
            finding: 'tip-full',
            why: 'screwed to the wall of the alcove',
            by: 'A. Sample',
            on: '2027-02-01',
          },
        }),
      ],
      tables: [],
      diagrams: [
        {
          kind: 'tip-over',
          cases: [
            {
              name: 'Child at D1',
              boxes: [
                { box: [inches(-18), 0, 0, inches(42)], open: false },
                { box: [0, inches(30), inches(15), inches(36)], open: true },
              ],
              loads: [
                { name: 'the rest', x: inches(-9), y: inches(21), newtons: 400 },
                { name: 'D1', x: inches(7), y: inches(33), newtons: 50 },
                { name: 'child', x: inches(15), y: inches(36), newtons: 270 },
              ],
              pull: { y: inches(40), newtons: 40 },
              tilt: 1.3,
              holding: 90,
              tipping: 180,
            },
          ],
        },
      ],
    },
    {
      key: 'weight',
      title: 'Weight and lifting',
      judged: [
        one({
          code: 'carry-heavy',
          verdict: 'note',
          subject: 'The piece without its drawers',
          about: 'carried, gripped level with its middle, two people',
          figure: quantity('mass', 40),
          limit: quantity('mass', 46),
        }),
      ],
      tables: [],
      diagrams: [],
    },
    {
      key: 'delivery',
      title: 'Delivery',
      judged: [
        one({
          code: 'delivery-door',
          verdict: 'pass',
          subject: 'The piece',
          about: 'through front door, upright, end first',
        }),
        one({
          code: 'delivery-corner',
          verdict: 'fail',
          subject: 'The piece',
          about: 'round the corner of hall, every way it is held',
          margin: 0.8,
          remedy: 'It is 4 too large there: build it in two, or find another way in.',
        }),
      ],
      tables: [
        {
          id: 'delivery',
          columns: [{ id: 'unit', label: 'Unit', align: 'left' }],
          rows: [['The piece', '36', '20', '42']],
        },
      ],
      diagrams: [
        {
          kind: 'corridor',
          passes: [
            {
              name: 'The piece, hall',
              kind: 'corner',
              clear: [inches(36), inches(30)],
              piece: [inches(36), inches(20), inches(42)],
              plan: [inches(36), inches(20)],
              turn: 40,
              passes: false,
            },
          ],
        },
      ],
    },
  ],
  cautions: [
    { key: 'figures', text: 'Check every figure.', on: ['cover'], touches: [], source: 'our default' },
    { key: 'long', text: `Wood dust harms the lungs. ${'Extraction and a fitted mask. '.repeat(16)}`.trim(), on: ['cover'], touches: [], source: 'our default' }, // prettier-ignore
    { key: 'last', text: 'The last word.', on: ['cover', 'delivery'], touches: [], source: 'our default' },
    { key: 'small', text: 'Small at a machine.', on: ['cards'], touches: ['side_left'], source: 'our default' },
  ],
  season: {
    made: 8,
    driest: 6.2,
    wettest: 11,
    basis: { made: 'read 8 % on 2027-01-15', room: 'a room', source: 'a table' },
  },
  stamp: 'NOT FOR WORKSHOP: S1 sags in the middle in years: .3, limit .12',
};
