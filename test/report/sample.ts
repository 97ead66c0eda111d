/** A sheet that shows every mark once, with invented words. */
import * as draw from '../../src/drawings/draw.js';
import { blockHeading, headline, postureList, sheetFrame } from '../../src/drawings/frame.js';
import { SIZE } from '../../src/drawings/pens.js';
import type { Item, Sheet, Table } from '../../src/drawings/picture.js';
import { drawTable, layTable } from '../../src/drawings/table.js';
import { setBlock, setText } from '../../src/drawings/text.js';
import type { Faces } from '../../src/type/type.js';

export const TABLE: Table = {
  id: 'rails',
  columns: [
    { id: 'mark', label: 'Part', align: 'left' },
    { id: 'size', label: 'Size', align: 'left' },
    { id: 'n', label: 'Off', align: 'right' },
  ],
  rows: [
    ['R1', '3/4 × 2 1/2 × 35', '4'],
    ['A3', '7/8 × 20 × 37 1/2', '1'],
    ['D1.2', '15/32 × 4 3/4 × 15 31/32', '12'],
  ],
};
const HEADER = {
  title: 'Tall chest',
  number: 'C-021',
  revision: 'A',
  date: '2027-02-01',
  maker: 'sample',
  woods: 'White oak',
};

export function sampleSheet(faces: Faces, id = 'sample', n = 2): Sheet {
  const frame = {
    faces,
    header: HEADER,
    title: 'Front, right side and plan',
    scale: '1:10',
    projection: true,
    roundTo: '1/32',
  };
  const picture: Item[] = [
    ...headline(faces, 'Cut 33 1/2 on the long rails', 'Set-up 13: router table'),
    ...words(faces),
    ...marks(faces),
    ...pens(),
    ...drawTable(faces, layTable(faces, TABLE, { width: 90, strong: ['mark'] }), 25.4, 120).items,
    ...drawTable(faces, layTable(faces, TABLE, { width: 60, least: 7.6, boxed: true }), 25.4, 152).items,
    ...sheetFrame({ ...frame, n, of: 53, hash: '7f3c91' }),
  ];
  return {
    id,
    title: `Sample ${id}`,
    folder: 'drawings',
    size: [279.4, 215.9],
    alt: 'Every mark once.',
    picture,
    tables: [TABLE],
  };
}
function words(faces: Faces): Item[] {
  const column = { x: 25.4, size: SIZE.text, width: 86 };
  const cut = [
    { string: 'Sliding dovetail sockets, four,', face: 'semibold' },
    { string: ' across INSIDE face. Centres from BOTTOM: ' },
    { string: '8 1/2', face: 'semibold' },
    { string: ' R4\u00a0B4 · ' },
    { string: '18 1/4', face: 'semibold' },
    {
      string:
        ' R3\u00a0B3 · 27 R2\u00a0B2. 3/8 deep; bit 1/2, 14°. White oak 5/4, stop 3/8 from FRONT edge (see 7/32\u00a0wide). ',
    },
    { string: 'No\u00a0glue;', face: 'semibold' },
    { string: ' none between. It slides by hand, dry; no gap at the shoulder, and the grain runs with the rail.' },
  ] as const;
  return [
    ...blockHeading(faces, 'Cuts, in this order', 25.4, 36.5, 92, 'first pass 1/16'),
    ...setBlock(faces, cut, { ...column, y: 44 }).items,
    ...postureList(faces, [['down', 'END L'], ['fence', 'TOP face'], ['lip', '1/64 over']], 25.4, 76, 12, 5.2).items, // prettier-ignore
    ...setText(faces, '7/8 × 19 × 41 1/8', { x: 25.4, y: 100, size: SIZE.finished, face: 'semibold' }).items,
    ...setText(faces, '37 1/2', { x: 100, y: 100, size: SIZE.figure, face: 'semibold', anchor: 'middle' }).items,
  ];
}
function marks(faces: Faces): Item[] {
  const statuses = ['cut now', 'leave long', 'fit to the piece', 'measure first'] as const;
  return [
    ...draw.scaleBar(faces, draw.scaleBarFor('in', 1 / 10), 130, 36),
    ...draw.disc(faces, 4, 134, 52),
    ...draw.discWithBalloon(faces, 4, 'A8', 144, 52),
    ...draw.balloon(faces, 'A5', 162, 52),
    ...draw.balloon(faces, 'D12.3', 176, 52),
    ...draw.whiteDisc(faces, 12, 190, 52),
    ...draw.leader([200, 52], [212, 56]),
    ...draw.tag(faces, 'A1', 220, 36),
    ...statuses.flatMap((s, i) => draw.statusBar(s, 130, 62 + 5 * i)),
    ...draw.tickBox(faces, 150, 62),
    ...draw.tickBox(faces, 156, 62, '3'),
    ...draw.blank(164, 65, 12),
    ...draw.glueSquare(true, 150, 70),
    ...draw.glueSquare(false, 156, 70),
    ...draw.crossedBox(164, 68, 7, 14),
    ...draw.rect('W', 185, 62, 40, 40),
    ...draw.faceMark(185, 84, 'right'),
    ...draw.edgeMark(185, 84, 'right'),
    ...draw.faceMark(225, 84, 'left'),
    ...draw.edgeMark(225, 84, 'left'),
    ...draw.faceMark(205, 102, 'up'),
    ...draw.edgeMark(205, 102, 'up'),
    ...draw.grainArrow([205, 80], [205, 65]),
    ...draw.movementArrow([235, 70], [255, 62]),
    ...draw.clampArrow([235, 84], [252, 84]),
    ...draw.obliqueTick(240, 94),
    ...draw.originCircle(246, 94),
    ...draw.arrowhead([255, 94], [1, 0]),
    ...draw.planeEnd(faces, 'A', [240, 104], [0, 1], [-1, 0]),
    ...draw.area('grey', [[235, 120], [255, 120], [250, 132], [238, 132]], 'W'), // prettier-ignore
  ];
}
function pens(): Item[] {
  const list = ['W', 'N', 'D', 'H', 'hidden', 'centre', 'plane', 'open', 'dots', 'cutline', 'shaft'] as const;
  const arc = [['M', 130, 176], ['A', 40, 1, 0, 190, 176]] as const; // prettier-ignore
  const big = [['M', 215, 160], ['A', 12, 0, 1, 225, 160]] as const; // prettier-ignore
  const clip = draw.rectPath(0, 0, 20, 10);
  const hatch = [0, 3, 6, 9, 12, 15, 18, 21, 24].flatMap((k) => draw.line('H', k, 12, k + 14, -2));
  return [
    ...list.flatMap((pen, i) => draw.line(pen, 130, 110 + 4 * i, 180, 110 + 4 * i)),
    draw.stroke('W', arc),
    draw.stroke('D', big),
    draw.group('hatched', [...hatch, ...draw.rect('D', 0, 0, 20, 10)], {
      at: [235, 145],
      clip,
      alt: 'End grain',
      link: 'second',
    }),
  ];
}
