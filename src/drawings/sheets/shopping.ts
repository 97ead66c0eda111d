import { counted } from '../../lengths/counted.js';
import { formatLength } from '../../lengths/format.js';
import { NM_PER_IN } from '../../lengths/length.js';
import type { Blank } from '../../making/rough.js';
import type { QuarterJudgement, ShoppingGroup, ShoppingRow } from '../../making/shopping.js';
import type { Stock } from '../../piece/piece.js';
import type { Step } from '../../shop/buying.js';
import { markRanges } from '../../words/markOrder.js';
import { fieldOf } from '../frame.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import { SIZE } from '../pens.js';
import type { Table } from '../picture.js';
import { widthOf } from '../text.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

/** What to buy before boards are known: hard parts first, the least board of each, how much and why; then what was bought. */
export const shopping = listSheet({
  id: 'shopping',
  title: 'Shopping',
  head: (input) => [sentence(input), 'take it to the yard'],
  blocks: (input) =>
    input.lists.shopping.length === 0
      ? []
      : [
          ...input.lists.shopping.map((g) => parts(input, g)),
          bought(input),
          ...input.lists.shopping.map((g, i, all) => sums(input, g, i === all.length - 1)),
          ...sheetGoods(input),
          thicknesses(input),
          spareBlanks(input),
          ...resaws(input),
        ],
});

/** `White oak 5/4, quartered`. */
const nameOf = (s: Stock): string => [woodOf(s), s.cut].filter(Boolean).join(', ');
const woodOf = (s: Stock): string => [s.name, s.quarter].filter(Boolean).join(' ');
/** Board feet: whole ones from ten on, rounded up; in a piece in millimetres with its volume. */
function feet(value: number): string {
  return value >= 10 ? String(Math.ceil(value - 1e-9)) : (Math.ceil(value * 10 - 1e-9) / 10).toFixed(1);
}
/** A board foot is 144 cubic inches. */
const CUBIC_METRES = 144 * 0.0254 ** 3;
const volume = (input: Prepared, value: number): string =>
  input.piece.units === 'in' ? '' : ` (${(value * CUBIC_METRES).toFixed(3)} m³)`;

function sentence(input: Prepared): string {
  const woods = new Map<string, number>();
  for (const g of input.lists.shopping)
    woods.set(g.stock.name, (woods.get(g.stock.name) ?? 0) + Number(feet(g.buying.likely)));
  const said = [...woods].map(([name, n], i) => `${feet(n)}${i === 0 ? ' board feet' : ''} of ${lower(name)}`);
  const full = `Buy ${said.join(', ').replace(/, ([^,]*)$/, ' and $1')}`;
  const { left, right } = fieldOf(input.paper);
  return widthOf(input.faces, full, SIZE.headline, 'semibold') > right - left - 50
    ? `Buy lumber: ${counted(woods.size, 'wood')}`
    : full;
}
const lower = (words: string): string => words.slice(0, 1).toLowerCase() + words.slice(1);
const size = (input: Prepared, ...values: readonly number[]): string =>
  values.map((v) => printed(input, v)).join(' × ');

const COLUMNS: Table['columns'] = [
  { id: 'wood', label: 'Wood', align: 'left' },
  { id: 'parts', label: 'Parts', align: 'left' },
  { id: 'what', label: 'What', align: 'left' },
  { id: 'count', label: 'No.', align: 'right' },
  { id: 'finished', label: 'Finished', align: 'left' },
  { id: 'rough', label: 'Rough', align: 'left' },
  { id: 'least', label: 'Board at least', align: 'left' },
  { id: 'tally', label: 'It tallies', align: 'right' },
  { id: 'feet', label: 'Bd ft', align: 'right' },
  { id: 'find', label: 'Look for', align: 'left' },
];
function parts(input: Prepared, g: ShoppingGroup): ListBlock {
  const { low, likely, high } = g.buying;
  const hidden = g.rows.every((r) => !r.shows);
  return {
    id: `shopping-${g.stock.id}`,
    title: nameOf(g.stock),
    remark: `buy ${feet(likely)} board feet${volume(input, likely)}; ${feet(low)} picked by hand, ${feet(high)} at most${hidden ? '; all hidden, sound knots will do' : ''}`,
    table: { id: 'shopping', columns: COLUMNS, rows: g.rows.map((r) => row(input, g, r, hidden)) },
    look: {
      columns: ['parts', 'what', 'count', 'rough', 'least', 'tally', 'feet', 'find'],
      strong: ['parts', 'least'],
      boxed: true,
    },
  };
}
function row(input: Prepared, g: ShoppingGroup, r: ShoppingRow, hidden: boolean): string[] {
  const { finished, rough } = r.blanks[0] as Blank;
  const staves = r.blanks.reduce((n, b) => n + (b.rough.staves > 1 ? b.rough.staves : 0), 0);
  const run = r.run !== undefined;
  return [
    nameOf(g.stock),
    markRanges(r.blanks.map((b) => b.part.mark)),
    staves > 0 ? `staves, ${r.name}` : r.name,
    String(staves > 0 ? staves : r.blanks.length),
    run ? '' : size(input, ...finished),
    run ? 'each its own' : size(input, rough.stave, rough.length),
    size(input, ...r.board),
    r.hard.length > 0 ? r.tally.toFixed(r.tally % 1 === 0 ? 0 : 2).replace(/0$/, '') : '',
    feet(r.feet),
    lookFor(input, r, hidden),
  ];
}
function lookFor(input: Prepared, r: ShoppingRow, hidden: boolean): string {
  const words = r.hard.map((h): string => {
    switch (h) {
      case 'run':
        return `${r.run?.from ?? 'one board'}, end to end${r.run?.order === undefined ? '' : `, ${r.run.order}`}`;
      case 'legs':
        return `all ${r.blanks.length} from one plank`;
      case 'one board':
        return 'staves from one board';
      case 'longest':
        return 'the longest';
      case 'widest':
        return 'the widest';
      case 'long':
        return `over ${input.piece.units === 'in' ? '6 ft' : '1.8 m'} long`;
      case 'wide':
        return `over ${input.piece.units === 'in' ? '8' : '200'} wide`;
    }
  });
  return [...words, ...(hidden || r.shows ? [] : ['hidden, sound knots will do'])].join('; ');
}

/** A ruled table to be filled in at the yard: as many boards as the likely footage takes, and some more. */
function bought(input: Prepared): ListBlock {
  const all = input.lists.shopping.reduce((s, g) => s + g.buying.likely, 0);
  // A board of 10 board feet is an ordinary one: our default.
  const rows = Math.min(14, Math.max(6, Math.ceil(all / 10) + 1));
  const letters = Array.from({ length: rows }, (_, i) => String.fromCharCode(65 + i));
  const heads = [
    'Board',
    'Wood, quarter',
    'T',
    'W here',
    'W there',
    'L',
    'Tally',
    'Defects, sapwood, crook and bow',
    'For',
  ];
  const ids = ['board', 'wood', 't', 'w', 'w2', 'l', 'tally', 'defects', 'for'];
  return {
    id: 'boards-bought',
    title: 'Boards bought',
    remark: 'measure at both ends; letter on the end and here',
    table: {
      id: 'boards-bought',
      columns: ids.map((id, i) => ({ id, label: heads[i] ?? '', align: 'left' as const })),
      rows: letters.map((l) => [l, ...ids.slice(1).map(() => '')]),
    },
    look: {
      strong: ['board'],
      least: 7.2,
      widths: { board: 11, wood: 33, t: 12, w: 14, w2: 14, l: 15, tally: 12, for: 34 },
    },
    note: 'Tally of a board: width in inches × length in feet / 12, to the nearest whole foot (surface measure); times its quarter it is board feet (hardwood rule, from memory). Typed into a boards file, these boards are laid out for the parts: --boards.',
  };
}

const round2 = (v: number): string => v.toFixed(2);
function sums(input: Prepared, g: ShoppingGroup, last: boolean): ListBlock {
  const { rough, low, likely, high, steps, more } = g.buying;
  const allowance = input.piece.shop.allowance.map((a) => printed(input, a)).join(', ');
  const board = more.find((s) => s.what === 'board')?.plus ?? 0;
  const rows = [
    ['Net', feet(g.net), 'parts as finished, by volume'],
    ['Rough', feet(rough), `${allowance} over, at ${g.stock.quarter ?? 'its thickness'}; under 1 in counts as 1`],
    ...steps.map((s) => stepRow(s)),
    ['Likely', feet(likely), `${round2(likely / Math.max(rough, 1e-9))} times the rough blanks`],
    ['Low', feet(low), 'picked board by board: 85 % clear'],
    ['High', feet(high), `one board more, ${feet(board)}`],
  ];
  return {
    id: `buying-${g.stock.id}`,
    title: `How much ${lower(woodOf(g.stock))}`,
    remark: 'board feet',
    table: {
      id: `buying-${g.stock.id}`,
      columns: [
        { id: 'what', label: 'What', align: 'left' },
        { id: 'figure', label: 'Figure', align: 'right' },
        { id: 'why', label: 'Why', align: 'left' },
      ],
      rows,
    },
    look: { strong: ['figure'] },
    ...(last ? { note: 'Factors but the grade’s are our default.' } : {}),
    half: true,
  };
}
function stepRow(s: Step): string[] {
  const figure = s.times === undefined ? `+ ${feet(s.plus ?? 0)}` : `× ${round2(s.times)}`;
  const names: Readonly<Record<Step['what'], readonly [string, string]>> = {
    grade: ['Grade', 'FAS, 83 1/3 % clear; No. 1 Common: a quarter more'],
    size: ['Size', 'short parts .97, others .92, over 6 ft or 8 in .82'],
    look: ['Look', 'hidden 1, shows .92, from one board .80'],
    heart: ['Heartwood', 'sapwood cut away where it shows: .88'],
    trial: ['Trials', 'spare blanks and trial pieces, at least 4 %'],
    board: ['One board', 'more than is likely'],
  };
  const [name, why] = names[s.what];
  return [name, figure, why];
}

/** Sheet goods by kind: whole sheets, and offcuts of the shop's rack. */
function sheetGoods(input: Prepared): ListBlock[] {
  const { stocks } = input.piece;
  const ids = [...new Set(input.layout.sheets.map((s) => s.stock))];
  if (ids.length === 0) return [];
  return [
    {
      id: 'sheet-goods',
      title: 'Sheet goods',
      remark: 'measure the thickness before you cut',
      table: {
        id: 'sheet-goods',
        columns: [
          { id: 'what', label: 'What', align: 'left' },
          { id: 'size', label: 'Sheet', align: 'left' },
          { id: 'thick', label: 'Measured', align: 'right' },
          { id: 'count', label: 'Buy', align: 'right' },
        ],
        rows: ids.map((id) => {
          const [s, mine] = [stocks[id], input.layout.sheets.filter((x) => x.stock === id)];
          const whole = mine.filter((x) => x.rack === undefined);
          const sizes = [...new Set(whole.map((x) => size(input, x.length, x.width)))];
          return [
            [s?.name ?? id, s?.nominal].filter(Boolean).join(' '),
            whole.length === 0 ? 'offcuts of the rack' : sizes.join(', '),
            s?.thickness === undefined ? '' : formatLength(s.thickness, input.piece.units),
            counted(whole.length, 'sheet'),
          ];
        }),
      },
      look: { strong: ['count'], boxed: true },
      half: true,
    },
  ];
}

const VERDICTS: Readonly<Record<QuarterJudgement['verdict'], string>> = {
  agrees: 'agrees',
  'flat boards only': 'from flat, short boards only',
  'too thin': 'too thin: buy thicker',
  'thicker than it needs': 'more than it needs',
  'glue up': 'glue it up from two',
};
/** The quarter that each thickness asks for, and whether the one bought is that. */
function thicknesses(input: Prepared): ListBlock {
  const rows = input.lists.shopping.flatMap((g) =>
    g.quarters.map((q) => [
      printed(input, q.thickness),
      markRanges(q.row.blanks.map((b) => b.part.mark)),
      q.need === undefined ? 'none' : [...new Set([q.need.least, q.need.comfortable])].join(', better '),
      g.stock.quarter ?? '',
      VERDICTS[q.verdict],
    ]),
  );
  return {
    id: 'quarters',
    title: 'Thickness bought',
    remark: 'common practice',
    table: {
      id: 'quarters',
      columns: [
        { id: 'thickness', label: 'Finished', align: 'right' },
        { id: 'parts', label: 'Parts', align: 'left' },
        { id: 'rule', label: 'Wants', align: 'left' },
        { id: 'bought', label: 'Bought', align: 'left' },
        { id: 'verdict', label: 'Verdict', align: 'left' },
      ],
      rows,
    },
    look: { strong: ['thickness'] },
    half: true,
  };
}

function spareBlanks(input: Prepared): ListBlock {
  const rows = input.lists.shopping.flatMap((g) =>
    g.spares.map((s) => [woodOf(g.stock), String(s.count), size(input, ...s.rough), feet(s.feet), s.why]),
  );
  return {
    id: 'spares',
    title: 'Spare blanks',
    remark: 'milled with the others',
    table: {
      id: 'spares',
      columns: [
        { id: 'wood', label: 'Wood', align: 'left' },
        { id: 'count', label: 'No.', align: 'right' },
        { id: 'size', label: 'Rough', align: 'left' },
        { id: 'feet', label: 'Bd ft', align: 'right' },
        { id: 'why', label: 'For', align: 'left' },
      ],
      rows,
    },
    look: { strong: ['size'], boxed: true },
    half: true,
  };
}

/** Where one board gives two leaves: the sum of what is lost, and what is left over. */
function resaws(input: Prepared): ListBlock[] {
  const rows = input.lists.shopping.flatMap((g) => g.resaw);
  if (rows.length === 0) return [];
  const three = (v: number): string =>
    input.piece.units === 'in'
      ? (v / NM_PER_IN).toFixed(3).replace(/^0/, '')
      : printed(input, Math.round(v / 1e4) * 1e4);
  return [
    {
      id: 'resaw',
      title: 'Two leaves from one board',
      remark: 'instead of one by one, where the band saw takes it',
      table: {
        id: 'resaw',
        columns: [
          { id: 'parts', label: 'Parts', align: 'left' },
          { id: 'boards', label: 'Boards', align: 'left' },
          { id: 'saves', label: 'Saves', align: 'right' },
        ],
        rows: rows.map((r) => [
          markRanges(r.row.blanks.map((b) => b.part.mark)),
          `${r.boards} of ${size(input, ...r.size)} for ${r.leaves} leaves`,
          `${feet(r.saves)} bd ft`,
        ]),
      },
      look: {
        strong: ['parts'],
        under: rows.map(
          ({ plan, tooHigh, row: { blanks } }) =>
            `(${three(plan.rough)} − ${three(plan.first)} flattening − ${three(plan.kerf)} kerf) / 2 − ${three(plan.second)} planing = ${three(plan.leaf)} a leaf for ${printed(input, blanks[0]?.finished[0] ?? 0)}: ${three(plan.spare)} to spare.` +
            (plan.tight ? ' Tight: straight, flat boards only.' : '') +
            (tooHigh ? ' Higher than the band saw takes.' : ''),
        ),
      },
      note: 'Leaves cup toward each other: saw a fork in an offcut first, saw them 1/16 in (1.5 mm) full, rest them on stickers 2 to 7 days. Common practice; the saw’s manual stands over it.',
      half: true,
    },
  ];
}
