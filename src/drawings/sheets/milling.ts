import { counted, plural } from '../../lengths/counted.js';
import type { Gang, MillingGroup, MillingRow } from '../../making/milling.js';
import type { Spare } from '../../making/spares.js';
import { markRanges } from '../../words/markOrder.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import type { Table } from '../picture.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

/** Blanks by finished thickness, from rough to final, and how far each is brought; then order, widths and short blanks. */
export const milling = listSheet({
  id: 'milling',
  title: 'Milling',
  head: (input) => [sentence(input), 'rough, rest, final'],
  blocks: (input) => {
    const { groups } = input.lists.milling;
    return groups.length === 0
      ? []
      : [...groups.map((g) => thickness(input, g)), order(input), widths(input), ...gangs(input)];
  },
});
const sentence = (input: Prepared): string => {
  const { groups } = input.lists.milling;
  return `Mill ${counted(groups.length, 'thickness')}, each in one session`;
};

const size = (input: Prepared, values: readonly number[]): string => values.map((v) => printed(input, v)).join(' × ');
const stockOf = (input: Prepared, id: string): string => {
  const s = input.piece.stocks[id];
  return s ? [s.name, s.quarter].filter(Boolean).join(' ') : id;
};
const COLUMNS: Table['columns'] = [
  { id: 'parts', label: 'Parts', align: 'left' },
  { id: 'what', label: 'What', align: 'left' },
  { id: 'count', label: 'No.', align: 'right' },
  { id: 'stock', label: 'From', align: 'left' },
  { id: 'rough', label: 'Rough', align: 'left' },
  { id: 'final', label: 'Final', align: 'left' },
  { id: 'status', label: 'Status', align: 'left' },
];
/** One setting of the planer: all blanks of a thickness, whatever their wood. */
function thickness(input: Prepared, g: MillingGroup): ListBlock {
  const blanks = g.rows.reduce((n, r) => n + r.blanks.length * r.staves, 0) + g.spares.length;
  const glued = g.rows.some((r) => r.staves > 1);
  const waits = g.rows.some((r) => r.waits.length > 0) || g.spares.length > 0;
  const notes = [
    ...(waits ? ['( ) is left as it is for now.'] : []),
    ...(glued ? ['Staves are glued at their rough thickness; the panel is planed with the others.'] : []),
  ];
  return {
    id: `milling-${g.thickness}`,
    title: `${printed(input, g.thickness)} thick`,
    remark: `run all ${blanks} together, one setting`,
    table: {
      id: 'milling',
      columns: COLUMNS,
      rows: [...g.rows.map((r) => row(input, r)), ...g.spares.map((s) => spareRow(input, s))],
    },
    look: { strong: ['parts', 'final'], boxed: true },
    ...(notes.length > 0 ? { note: notes.join(' ') } : {}),
  };
}
const LATER: Readonly<Record<MillingRow['status'], string>> = {
  'cut now': 'cut now',
  'leave long': 'leave long',
  'fit to the piece': 'leave wide and long, fit later',
  'measure first': 'thickness only, measure first',
};
function row(input: Prepared, r: MillingRow): string[] {
  const [t, w, l] = r.final.map((v) => printed(input, v)) as [string, string, string];
  const left = (what: 'width' | 'length', v: string): string => (r.waits.includes(what) ? `(${v})` : v);
  const panel = r.jointed === undefined ? '' : `${r.staves} jointed ${printed(input, r.jointed)}, panel `;
  const n = r.blanks.length * r.staves;
  const final = r.staves > 1 ? `${panel}${t} × (${w}) × (${l})` : `${t} × ${left('width', w)} × ${left('length', l)}`;
  return [
    markRanges(r.blanks.map((b) => b.part.mark)),
    r.staves > 1 ? `staves, ${r.name}` : r.blanks.length > 1 ? plural(r.name) : r.name,
    String(n),
    stockOf(input, r.blanks[0]?.stock.id ?? ''),
    size(input, r.rough),
    final,
    r.staves > 1 ? 'glue, plane, trim' : LATER[r.status],
  ];
}
const spareRow = (input: Prepared, s: Spare): string[] => [
  s.kind,
  s.kind === 'spare' ? s.why.replace(/,.*$/, '') : 'settings of its joints',
  '1',
  stockOf(input, s.stock),
  size(input, s.rough),
  `${printed(input, s.thickness)} × ${printed(input, s.width)} × (${printed(input, s.rough[2])})`,
  'same setting',
];

function order(input: Prepared): ListBlock {
  const { units, shop } = input.piece;
  const over = printed(input, shop.allowance[0]);
  const glued = input.lists.panels.length > 0;
  const steps = [
    'Crosscut the boards to rough lengths, where they are bowed first; rip to rough widths.',
    `Flatten a face, joint an edge, plane ${over} over${units === 'mm' ? ' (mm)' : ''}: parts, spares and trial pieces.`,
    'Rest all on stickers 2 to 7 days.',
    'Flatten and joint again. Plane a thickness in one session, its worst board first: it says what the group can be.',
    'Rip to width, one fence setting a width, widest first.',
    ...(glued ? ['Glue the panels, panel sheets; plane and trim them.'] : []),
    'Crosscut what says cut now, one stop a length: list of equal lengths. Keep trial pieces till the joints are cut.',
  ];
  return {
    id: 'milling-order',
    title: 'Order',
    remark: 'common practice',
    table: {
      id: 'milling-order',
      columns: [
        { id: 'n', label: 'No.', align: 'right' },
        { id: 'do', label: 'Do', align: 'left' },
      ],
      rows: steps.map((s, i) => [String(i + 1), s]),
    },
    look: { strong: ['n'], boxed: true },
    note: 'Follow each machine’s manual. Guards on, push blocks at the jointer; dust harms: extraction and a mask.',
    half: true,
  };
}
function widths(input: Prepared): ListBlock {
  return {
    id: 'equal-widths',
    title: 'Equal widths',
    remark: 'one fence setting each',
    table: {
      id: 'equal-widths',
      columns: [
        { id: 'width', label: 'Width', align: 'right' },
        { id: 'count', label: 'No.', align: 'right' },
        { id: 'parts', label: 'Parts', align: 'left' },
      ],
      rows: input.lists.milling.widths.map((e) => [
        printed(input, e.width),
        String(e.marks.length),
        markRanges(e.marks),
      ]),
    },
    look: { strong: ['width'], boxed: true },
    half: true,
  };
}
function gangs(input: Prepared): ListBlock[] {
  const all = input.lists.milling.gangs;
  if (all.length === 0) return [];
  const least = input.piece.units === 'in' ? '14 in' : '350 mm';
  const words = (g: Gang): string =>
    g.of > 1
      ? `${g.lengths} of ${printed(input, g.long)}, ${g.of} in each`
      : `${g.lengths} of ${printed(input, g.long)}`;
  return [
    {
      id: 'gangs',
      title: 'Short blanks',
      remark: 'milled in one length, cut apart after',
      table: {
        id: 'gangs',
        columns: [
          { id: 'parts', label: 'Parts', align: 'left' },
          { id: 'section', label: 'Rough section', align: 'left' },
          { id: 'long', label: 'Lengths', align: 'left' },
        ],
        rows: all.map((g) => [markRanges(g.marks), size(input, g.section), words(g)]),
      },
      look: { strong: ['parts', 'long'], boxed: true },
      note: `Nothing under ${least} goes through the planer by itself, from memory; the planer’s manual stands over it.`,
      half: true,
    },
  ];
}
