import { counted } from '../../lengths/counted.js';
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
      : [...groups.map((g, i) => thickness(input, g, i === 0)), order(input), widths(input), ...gangs(input)];
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
const LEFT = '( ) is left as it is for now.';
const STAVES = ' Staves are glued at their rough thickness, the panel planed with its thickness.';
/** One setting of the planer: all blanks of a thickness, whatever their wood. */
function thickness(input: Prepared, g: MillingGroup, first: boolean): ListBlock {
  const blanks = g.rows.reduce((n, r) => n + r.blanks.length * r.staves, 0) + g.spares.reduce((n, s) => n + s.count, 0);
  return {
    id: `milling-${g.thickness}`,
    title: `${printed(input, g.thickness)} thick`,
    remark: `${blanks === 1 ? 'one blank' : blanks === 2 ? 'run both together' : `run all ${blanks} together`}, one setting`,
    table: {
      id: 'milling',
      columns: COLUMNS,
      rows: [...g.rows.map((r) => row(input, r)), ...g.spares.map((s) => spareRow(input, s))],
    },
    look: { strong: ['parts', 'final'], boxed: true },
    ...(first ? { note: `${LEFT}${input.lists.panels.length > 0 ? STAVES : ''}` } : {}),
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
    r.staves > 1 ? `staves, ${r.name}` : r.name,
    String(n),
    stockOf(input, r.blanks[0]?.stock.id ?? ''),
    size(input, r.rough),
    final,
    r.staves > 1 ? 'glue, plane, trim' : LATER[r.status],
  ];
}
const spareRow = (input: Prepared, s: Spare): string[] => [
  s.kind,
  s.kind === 'spare' ? s.why.replace(/,.*$/, '') : 'for its joints',
  String(s.count),
  stockOf(input, s.stock),
  size(input, s.rough),
  `${printed(input, s.thickness)} × ${printed(input, s.width)} × (${printed(input, s.rough[2])})`,
  'same setting',
];

function order(input: Prepared): ListBlock {
  const over = printed(input, input.piece.shop.allowance[0]);
  const glued = input.lists.panels.length > 0;
  const steps = [
    'Crosscut to rough lengths, bowed boards first; rip to rough widths.',
    `Flatten a face, joint an edge, plane ${over} over: spares and trials too.`,
    'Rest all on stickers 2 to 7 days.',
    'Flatten and joint again; plane a thickness in one session, worst board first.',
    'Rip to width, one fence setting a width, widest first.',
    ...(glued ? ['Glue the panels, see their sheets; plane them with their thickness.'] : []),
    'Crosscut what says cut now, one stop a length: see Equal lengths.',
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
    note: 'Follow each machine’s manual, which stands over these figures: guards, push blocks, extraction, a mask.',
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
      remark: `nothing under ${least} is fed by itself`,
      table: {
        id: 'gangs',
        columns: [
          { id: 'parts', label: 'Parts', align: 'left' },
          { id: 'section', label: 'Rough section', align: 'left' },
          { id: 'long', label: 'Mill in one length, cut apart after', align: 'left' },
        ],
        rows: all.map((g) => [markRanges(g.marks), size(input, g.section), words(g)]),
      },
      look: { strong: ['parts', 'long'], boxed: true },
      half: true,
    },
  ];
}
