import { counted } from '../../lengths/counted.js';
import { ranges } from '../../words/markOrder.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import type { Table } from '../picture.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

/** The lists that the work is done from, short ones together on a sheet. */
export const lists = listSheet({
  id: 'lists',
  title: 'Lists',
  blocks: (input) => [cutList(input), equal(input), diagonals(input), ...gaps(input), hardware(input), joints(input)],
});

/** Every part with its finished size, length between shoulders, stock, grain and status. */
const cutList = (input: Prepared): ListBlock => ({
  id: 'cut-list',
  title: 'Cut list',
  remark: `${counted(input.piece.parts.length, 'part')} in ${counted(input.lists.cutList.rows.length, 'row')}, sizes over all`,
  table: input.lists.cutList,
  look: {
    columns: ['mark', 'name', 'quantity', 'thickness', 'width', 'length', 'shoulder', 'stock', 'grain', 'status'],
    strong: ['mark', 'thickness', 'width', 'length'],
    boxed: true,
  },
});
/** Each joint once, with its sizes, the way in and what holds it. */
const joints = (input: Prepared): ListBlock => ({
  id: 'joints',
  title: 'Joints',
  remark: counted(input.piece.joints.length, 'place'),
  table: input.lists.joints,
  look: {
    columns: ['kind', 'count', 'parts', 'into', 'sizes', 'way', 'holds', 'glue'],
    strong: ['parts', 'into'],
  },
});
/** What is bought, with where it goes. */
const hardware = (input: Prepared): ListBlock => ({
  id: 'hardware',
  title: 'Hardware',
  remark: 'in hand before you cut',
  table: input.lists.hardware,
  look: { columns: ['name', 'count', 'where'], strong: ['count'], boxed: true },
  half: true,
});
/** Parts that are cut at one stop. */
const equal = (input: Prepared): ListBlock => ({
  id: 'equal-lengths',
  title: 'Equal lengths',
  remark: 'cut each at one stop',
  table: {
    id: 'equal-lengths',
    columns: [
      { id: 'length', label: 'Length', align: 'right' },
      { id: 'kind', label: 'Measured', align: 'left' },
      { id: 'count', label: 'No.', align: 'right' },
      { id: 'parts', label: 'Parts', align: 'left' },
    ],
    rows: input.lists.equal.map((e) => [
      printed(input, e.length),
      e.kind,
      String(e.marks.length),
      ranges(e.marks).join(' '),
    ]),
  },
  look: { strong: ['length'], boxed: true },
  half: true,
});
/** What is tested for square with a tape. */
const diagonals = (input: Prepared): ListBlock => ({
  id: 'diagonals',
  title: 'Diagonals',
  remark: 'square when both agree',
  table: diagonalTable(input),
  look: { strong: ['diagonal'], boxed: true },
  note: 'Measure both ways; the figure is a check, equality is the proof.',
  half: true,
});
const diagonalTable = (input: Prepared): Table => ({
  id: 'diagonals',
  columns: [
    { id: 'what', label: 'Square', align: 'left' },
    { id: 'size', label: 'Wide × high or deep', align: 'left' },
    { id: 'diagonal', label: 'Diagonal', align: 'right' },
  ],
  rows: input.lists.diagonals.map((d) => [
    d.what,
    `${printed(input, d.wide)} × ${printed(input, d.high)}`,
    printed(input, d.diagonal),
  ]),
});
/** A table of the checks, where there is one. */
const tableOf = (input: Prepared, id: string): Table | undefined =>
  input.checks?.checks.flatMap((c) => c.tables).find((t) => t.id === id);
/** Gaps over and under inset drawer fronts: through the year, and what to leave as the wood is on the day. */
function gaps(input: Prepared): ListBlock[] {
  const [year, today] = [tableOf(input, 'reveals'), tableOf(input, 'gap-today')];
  return [
    ...(year
      ? [
          {
            id: 'reveals',
            title: 'Reveals',
            remark: 'gaps at each front through the year',
            table: year,
            look: {},
            half: true,
          },
        ]
      : []),
    ...(today
      ? [
          {
            id: 'gap-today',
            title: 'The gap to leave today',
            remark: 'by what the meter reads in the front',
            table: today,
            look: {},
            half: true,
          },
        ]
      : []),
  ];
}
