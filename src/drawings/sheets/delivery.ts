import type { Checked } from '../../checks/index.js';
import type { Judged } from '../../checks/fold.js';
import { counted } from '../../lengths/counted.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { markRanges } from '../../words/markOrder.js';

import type { Prepared } from '../input.js';
import { SIZE } from '../pens.js';
import type { Table } from '../picture.js';
import type { Strip } from '../table.js';
import { blockDrop, setLines, wrap } from '../text.js';
import { verdictMark } from '../verdicts.js';
import { cautionsOn } from './cautions.js';
import { corridorStrips, inPlan } from './checksCorridor.js';
import { saidUnder, shownAs } from './checksRows.js';
import type { ShownRow } from './checksRows.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

/** Out of the shop and into the room: what is carried, by whom, through where, and what is ticked off on the way. */
export const delivery = listSheet({
  id: 'delivery',
  title: 'Delivery',
  head: (input) => [sentence(input), 'delivery'],
  blocks: (input) => {
    const { checks } = input;
    if (!checks || !wanted(input, checks)) return [];
    return [...units(input, checks), ...ways(input, checks), ...drawn(input, checks), ...ticks(input), ...told(input)];
  },
});

const judgedBy = (checked: Checked | undefined, key: string): readonly Judged[] =>
  checked?.checks.find((c) => c.key === key)?.judged ?? [];
const carried = (checked: Checked | undefined): readonly Judged[] =>
  judgedBy(checked, 'weight').filter((j) => j.code === 'carry-heavy');
/** Where the way is given, or one person cannot carry it. */
const wanted = ({ piece }: Prepared, checked: Checked): boolean =>
  piece.delivery !== undefined ||
  judgedBy(checked, 'delivery').length > 0 ||
  carried(checked).some((j) => j.verdict !== 'pass');

/** `two people`, as the judgement ends. */
const peopleOf = (j: Judged): string => j.about.split(', ').at(-1) ?? '';
function sentence({ checks, piece }: Prepared): string {
  const loads = carried(checks).length;
  const barred = judgedBy(checks, 'delivery').filter((j) => shownAs(j) === 'fail').length;
  const heaviest = [...carried(checks)].sort((p, q) => q.figure.value - p.figure.value)[0];
  const by = heaviest ? `, ${peopleOf(heaviest)}` : '';
  const inAll = loads + piece.drawers.length;
  const out = inAll === 1 ? 'Carry it out whole' : `Carry it out in ${counted(inAll, 'piece')}`;
  return barred > 0 ? `It does not get through: ${counted(barred, 'way')} too small` : `${out}${by}`;
}

/** What is carried in one go with its wrapped size, its weight and by how many; each with a box. */
function units(input: Prepared, checked: Checked): ListBlock[] {
  const { piece } = input;
  const tables = checked.checks.flatMap((c) => c.tables);
  const sizes = tables.find((t) => t.id === 'delivery')?.rows ?? [];
  const sizeOf = (name: string): string => {
    const row = sizes.find((r) => r[0] === name) ?? sizes[0];
    return row ? row.slice(1, 4).join(' × ') : '';
  };
  const said = (v: number): string => sayQuantity(quantity('mass', v), piece.units);
  const loads = carried(checked).map((j) => [j.subject, sizeOf(j.subject), said(j.figure.value), peopleOf(j), '']);
  const drawers = drawerRows(input, checked);
  const table: Table = {
    id: 'carry',
    columns: [
      { id: 'unit', label: 'Unit', align: 'left' },
      { id: 'size', label: piece.delivery?.wrap ? 'Wrapped, wide × deep × high' : 'Wide × deep × high', align: 'left' },
      { id: 'weight', label: 'Weight', align: 'right' },
      { id: 'who', label: 'Carried by', align: 'left' },
      { id: 'note', label: 'Before', align: 'left' },
    ],
    rows: [...drawers, ...loads],
  };
  const look = { strong: ['unit', 'weight'], boxed: true };
  return [{ id: 'carry', title: 'What is carried', remark: 'weights are estimates', table, look }];
}

/** Drawers that more than one must lift, each; the others in one row. */
function drawerRows({ piece }: Prepared, checked: Checked): string[][] {
  const said = (v: number): string => sayQuantity(quantity('mass', v), piece.units);
  const lifted = judgedBy(checked, 'weight').filter((j) => j.code === 'drawer-heavy');
  const heavy = lifted.filter((j) => j.verdict !== 'pass');
  const marks = piece.drawers.map((d) => d.mark).filter((m) => !heavy.some((j) => j.subject === m));
  const heaviest = Math.max(0, ...lifted.filter((j) => j.verdict === 'pass').map((j) => j.figure.value));
  const first = 'out first, marked where it goes';
  return [
    ...heavy.map((j) => [j.subject, '', said(j.figure.value), peopleOf(j), first]),
    ...(marks.length === 0
      ? []
      : [
          [
            markRanges(marks),
            '',
            heaviest > 0 ? `${marks.length > 1 ? 'up to ' : ''}${said(heaviest)}` : '',
            marks.length > 1 ? 'one person each' : 'one person',
            first,
          ],
        ]),
  ];
}

/** Every way through, with how the load is held there. */
function ways({ piece }: Prepared, checked: Checked): ListBlock[] {
  const rows = waysToShow(judgedBy(checked, 'delivery'));
  const judged = rows.map((r) => r.judged);
  const size = (q: Judged['figure'] | undefined): string => (q ? sayQuantity(q, piece.units) : '');
  return [
    {
      id: 'ways',
      title: 'The way',
      remark: 'room for hands is taken off',
      table: {
        id: 'ways',
        columns: [
          { id: 'unit', label: 'Unit', align: 'left' },
          { id: 'way', label: 'Where and how it is held', align: 'left' },
          { id: 'needs', label: 'Needs', align: 'right' },
          { id: 'has', label: 'There is', align: 'right' },
          { id: 'margin', label: 'Margin', align: 'right' },
        ],
        rows: judged.map((j, i) => [
          j.subject,
          (rows[i]?.of ?? 1) > 1 ? `${j.about}; ${counted(rows[i]?.of ?? 1, 'way')}, this the tightest` : j.about,
          size(j.figure),
          size(j.limit),
          j.margin === undefined ? '' : `${j.margin.toFixed(2)}\u00a0×`,
        ]),
      },
      look: {
        strong: ['unit'],
        marks: rows.map((r) => (x: number, y: number) => verdictMark(r.shown, x, y)),
        under: saidUnder(rows),
        least: 4.9,
      },
    },
  ];
}
/** Every way of what is carried as one; of a part that goes by itself what bars it, and of the rest the tightest. */
function waysToShow(judged: readonly Judged[]): ShownRow[] {
  const first = judged[0]?.subject;
  const row = (j: Judged, of = 1): ShownRow => ({ judged: j, shown: shownAs(j), of });
  const parts = [...new Set(judged.map((j) => j.subject))].filter((s) => s !== first);
  return [
    ...judged.filter((j) => j.subject === first).map((j) => row(j)),
    ...parts.flatMap((part) => {
      const mine = judged.filter((j) => j.subject === part);
      const good = mine.filter((j) => j.verdict === 'pass').sort((p, q) => (p.margin ?? 99) - (q.margin ?? 99));
      return [
        ...mine.filter((j) => j.verdict !== 'pass').map((j) => row(j)),
        ...good.slice(0, 1).map((j) => row(j, good.length)),
      ];
    }),
  ];
}
const drawn = ({ faces, piece }: Prepared, checked: Checked): ListBlock[] =>
  checked.checks.flatMap((c) =>
    c.diagrams.flatMap((d): ListBlock[] =>
      d.kind === 'corridor' && inPlan(d.passes).length > 0
        ? [
            {
              id: 'corners-drawn',
              title: 'Round the corners, from above',
              remark: 'at the tightest angle',
              table: { id: 'corners-drawn', columns: [], rows: [] },
              look: {},
              strips: (width) => corridorStrips(faces, d.passes, piece.units, width),
              half: inPlan(d.passes).length === 1,
            },
          ]
        : [],
    ),
  );

/** What is measured where no way is given, and what is done on the day. Common practice. */
function ticks({ piece, checks }: Prepared): ListBlock[] {
  const list = (id: string, title: string, remark: string, rows: readonly string[]): ListBlock => ({
    id,
    title,
    remark,
    table: { id, columns: [{ id: 'what', label: '', align: 'left' }], rows: rows.map((r) => [r]) },
    look: { boxed: true },
    half: true,
  });
  const apart = new Set(piece.delivery?.apart ?? []);
  const off = markRanges(piece.parts.filter((p) => apart.has(p.id)).map((p) => p.mark));
  const fixed = cautionsOn({ checks }, 'delivery').some((c) => c.key === 'tip-over');
  const day = [
    ...(piece.drawers.length > 0 ? ['drawers out, numbered where they go'] : []),
    ...(off === '' ? [] : [`${off} off, its screws in a marked bag`]),
    'edges and corners padded, show faces in blankets',
    'doors off their hinges where that gives room; floors covered',
    ...(fixed ? ['wall fixing, its screws and a stud finder in the box'] : []),
    'strapped upright in the vehicle, nothing on top',
    'stood level; drawers in, run once each',
  ];
  const way = ['narrowest door, clear, wide × high', 'tightest corner, both passages', 'stair, width and headroom', 'ceiling of the room']; // prettier-ignore
  return [
    ...(piece.delivery ? [] : [list('measure', 'Measure on the way', 'then write it under delivery', way)]),
    list('day', 'On the day', '', day),
  ];
}

/** The cautions of the carry, each whole. */
function told({ faces, checks }: Prepared): ListBlock[] {
  const cautions = cautionsOn({ checks }, 'delivery');
  if (cautions.length === 0) return [];
  const strip = (text: string, width: number): Strip => {
    const lines = wrap(faces, text, width, SIZE.text);
    return {
      height: blockDrop(lines) + 5.4,
      draw: (x, y) => setLines(faces, lines, { x, y: y + 4, size: SIZE.text }).items,
    };
  };
  return [
    {
      id: 'delivery-cautions',
      title: 'Caution',
      table: { id: 'delivery-cautions', columns: [], rows: [] },
      look: {},
      strips: (width) => cautions.map((c) => strip(c.text, width)),
      half: true,
    },
  ];
}
