import { counted, plural } from '../../lengths/counted.js';
import { NM_PER_IN } from '../../lengths/length.js';
import type { Panel } from '../../making/panels.js';

import { markRanges } from '../../words/markOrder.js';
import { label, tickBox } from '../draw.js';
import { blockHeading, fieldOf, headline } from '../frame.js';
import { printed, sheetOf } from '../input.js';
import type { Prepared, SheetKind } from '../input.js';
import { SIZE } from '../pens.js';
import type { Item, Table } from '../picture.js';
import { blockDrop, setLines, setText, widthOf, wrap } from '../text.js';
import type { Line } from '../text.js';
import type { Rect } from '../dimensions.js';
import { panelPicture } from './panelPicture.js';

const PER_PAGE = 2;
const APART = 12;
/** Height of a cell's heading, and at most of its drawing; a box to tick, and how far the words are indented. */
const HEADING = 6;
const PICTURE = 104;
const BOX = 5.6;
const INDENT = 14.5;
const NAMES = ['none', 'one', 'two', 'three', 'four'];

/** Glued-up panels, two a page: as they are marked, glued, clamped, planed and trimmed. */
export const panels: SheetKind = {
  id: 'panels',
  title: 'Panels',
  plan: (input) => Math.ceil(input.lists.panels.length / PER_PAGE),
  draw(input, page, place) {
    const mine = input.lists.panels.slice(page * PER_PAGE, (page + 1) * PER_PAGE);
    const { left, right, top, bottom } = fieldOf(input.paper);
    const width = (right - left - APART) / 2;
    const words = Math.max(...mine.map((p) => toldOf(input, p, width).height));
    const high = Math.min(PICTURE, bottom - 1.2 - words - (top + 12 + HEADING));
    const cells = mine.map((p, i) =>
      cell(input, p, `panel-${page + 1}-${i + 1}`, { x: left + i * (width + APART), y: top + 12, w: width, h: high }),
    );
    const scales = [...new Set(cells.map((c) => c.oneTo))];
    return sheetOf(input, place, {
      id: `panels-${page + 1}`,
      title: `Panels ${mine.map((p) => marksOf(p)).join(' ')}`,
      folder: 'lists',
      alt: mine.map((p) => `${marksOf(p)}: ${counted(p.rough.staves, 'stave')}, glued up and trimmed`).join('; '),
      scale: scales.length === 1 ? `1:${scales[0]}` : 'as noted',
      items: [
        ...headline(input.faces, sentence(input, mine), 'yellow glue: its label stands over these times', input.paper),
        ...cells.flatMap((c) => c.items),
      ],
      tables: page === 0 ? [table(input)] : [],
    });
  },
};
const marksOf = (p: Panel): string => markRanges(p.parts.map((x) => x.mark));
const nameOf = (p: Panel): string => (p.parts.length > 1 ? p.name : p.part.name);
function sentence(input: Prepared, mine: readonly Panel[]): string {
  const said = mine.map((p) => {
    const n = p.parts.length;
    return n > 1 ? `${NAMES[n] ?? n} ${plural(p.name)}` : `the ${p.part.name}`;
  });
  const full = `Glue up ${said.join(' and ')}`;
  return widthOf(input.faces, full, SIZE.headline, 'semibold') > 165 ? 'Glue up panels' : full;
}

interface Told {
  readonly name: string;
  readonly lines: readonly Line[];
  readonly drop: number;
}
/** The words of a panel, wrapped, and their height. */
function toldOf(input: Prepared, p: Panel, width: number): { readonly rows: readonly Told[]; readonly height: number } {
  const told = rows(input, p).map(([name, text]): Told => {
    const lines = wrap(input.faces, text, width - INDENT - BOX, SIZE.text);
    return { name, lines, drop: blockDrop(lines) + (lines.at(-1)?.tall === true ? 5.5 : 5.1) };
  });
  return { rows: told, height: told.reduce((h, t) => h + t.drop, 0) };
}
interface Cell {
  readonly items: Item[];
  readonly oneTo: number;
}
/** A panel: heading, drawing `high` at most, words. */
function cell(input: Prepared, p: Panel, id: string, at: Rect): Cell {
  const { faces } = input;
  const { x, y, w, h } = at;
  const size = p.finished.map((v) => printed(input, v)).join(' × ');
  const picture = panelPicture(input, p, id, { x, y: y + HEADING, w, h });
  const off = p.parts.length > 1 ? `, ${p.parts.length} off` : '';
  const items = [
    ...blockHeading(faces, `${marksOf(p)} ${nameOf(p)}`, x, y + 2, w, `${size}${off}, 1:${picture.oneTo}`),
    ...picture.items,
    ...(picture.further.length > 0
      ? setText(faces, `Further sizes: ${picture.further.join(', ')}.`, {
          x,
          y: y + HEADING + h - 0.6,
          size: SIZE.text,
        }).items
      : []),
  ];
  let line = y + HEADING + h + 4;
  for (const { name, lines, drop } of toldOf(input, p, w).rows) {
    items.push(...label(faces, name, x + BOX, line, { face: 'semibold' }), ...tickBox(faces, x, line - 3.15));
    items.push(...setLines(faces, lines, { x: x + BOX + INDENT, y: line, size: SIZE.text }).items);
    line += drop;
  }
  return { items, oneTo: picture.oneTo };
}

/** What is done, in its order, each with its figures. */
function rows(input: Prepared, p: Panel): (readonly [string, string])[] {
  const word = (f: Panel['face']): string => p.part.faceWords[f];
  const fig = (v: number): string => printed(input, v);
  const { rough, finished } = p;
  const last = p.letters.at(-1) ?? '';
  return [
    [
      'Staves',
      `a–${last}, a at the ${word(p.edge)} edge, one board in sequence; saw each ${[rough.thickness, rough.stave, rough.length].map(fig).join(' × ')}, joint to ${fig(rough.jointed)}, faces in and out by turns.`,
    ],
    ['Mark', `Triangle over all staves on the ${word(p.face)} face, pointing to ${word(p.toward)}.`],
    ['Align', alignWords(input, p)],
    ['Glue', glueWords(p)],
    ['Clamp', clampWords(input, p)],
    ['Plane', planeWords(input, p)],
    ['Trim', `To ${finished.map(fig).join(' × ')}, alike off both edges and both ends.${statusWords(p)}`],
  ];
}
function alignWords(input: Prepared, p: Panel): string {
  const fig = (v: number): string => printed(input, v);
  const end = `from the ${p.part.faceWords[p.end]} end`;
  if (p.rows === 0) return 'No biscuits, too thin: cauls keep it flush.';
  const groups = new Map<string, string[]>();
  for (const j of p.joints) {
    const key = j.aligners.map(fig).join(', ');
    groups.set(key, [...(groups.get(key) ?? []), j.staves.join('/')]);
  }
  const told = [...groups].map(([places, names]) => {
    const all = groups.size === 1 && names.length > 1 ? 'every joint' : names.join(', ');
    return places === '' ? `${all}: none, cuts come there` : `${all} at ${places}`;
  });
  const depth = p.rows === 2 ? 'in two rows' : 'mid-thickness';
  if (p.joints.every((j) => j.aligners.length === 0)) return 'No biscuits: later cuts and trims leave no room.';
  return `No. 20 biscuits ${depth}, ${told.join('; ')} ${end}; none where hatched.`;
}
const minutes = (seconds: number): string => {
  const s = Math.round(seconds / 10) * 10;
  return s % 60 === 0 ? `${s / 60} min` : `${Math.floor(s / 60)} min ${s % 60} s`;
};
function glueWords(p: Panel): string {
  const { ml, seconds, limit, goes } = p.glue;
  const five = (v: number): number => Math.max(5, Math.round(v / 5) * 5);
  const many = goes > 1 ? ` Too slow in one: glue it in ${NAMES[goes] ?? goes} goes.` : '';
  const [least, most] = [five(ml[0]), five(ml[1])];
  const much = least === most ? String(most) : `${least}–${most}`;
  return `${much} ml of glue; ${minutes(seconds)} to spread and clamp, of ${minutes(limit)}.${many}`;
}
function clampWords(input: Prepared, p: Panel): string {
  const { count, at, cauls, opening, has } = p.clamps;
  const whole = input.piece.units === 'in' ? NM_PER_IN : 10_000_000;
  const open = printed(input, Math.ceil(opening / whole) * whole);
  const short = has !== undefined && has < count ? ` The shop has ${has}: borrow, or glue it in parts.` : '';
  const flat = cauls > 0 ? `; ${cauls} pairs of cauls` : '';
  return `${count} that open ${open}, at ${at.map((v) => printed(input, v)).join(', ')}; over and under by turns${flat}.${short}`;
}
function planeWords(input: Prepared, p: Panel): string {
  const fig = (v: number): string => printed(input, v);
  const to = `to ${fig(p.finished[0])}`;
  if (!p.halves) return p.planer === undefined ? `Both faces flat, ${to}.` : `Passes the planer whole: ${to}.`;
  const parts = p.halves.groups.map((g, i) => `${g.join(' ')} (${fig(p.halves?.widths[i] ?? 0)})`).join(' and ');
  const joins = p.halves.groups.slice(1).map((g, i) => `${p.halves?.groups[i]?.at(-1) ?? ''}/${g[0] ?? ''}`);
  const many = joins.length > 1 ? 'joints' : 'joint';
  const narrow = `the planer is narrower than ${fig(p.rough.width)}`;
  const first = p.planer === undefined ? `If ${narrow}: glue` : 'Glue';
  return `${first} ${parts}, plane them ${to}, make the ${many} ${joins.join(', ')} last.`;
}
const statusWords = (p: Panel): string =>
  p.part.status === 'leave long'
    ? ' Leave it long until the piece stands.'
    : p.part.status === 'fit to the piece'
      ? ' Trim it to the piece, not to the figures.'
      : p.part.status === 'measure first'
        ? ' Measure first.'
        : '';

/** All panels as data. */
function table(input: Prepared): Table {
  const ids = [
    'parts',
    'name',
    'staves',
    'jointed',
    'stave',
    'blank',
    'finished',
    'face',
    'clamps',
    'opening',
    'aligners',
  ];
  const fig = (v: number): string => printed(input, v);
  return {
    id: 'panels',
    columns: ids.map((id) => ({ id, label: id.slice(0, 1).toUpperCase() + id.slice(1), align: 'left' })),
    rows: input.lists.panels.map((p) => [
      marksOf(p),
      nameOf(p),
      String(p.rough.staves),
      fig(p.rough.jointed),
      [p.rough.thickness, p.rough.stave, p.rough.length].map(fig).join(' × '),
      [p.rough.thickness, p.rough.width, p.rough.length].map(fig).join(' × '),
      p.finished.map(fig).join(' × '),
      p.part.faceWords[p.face],
      String(p.clamps.count),
      fig(p.clamps.opening),
      p.joints.map((j) => `${j.staves.join('/')}: ${j.aligners.map(fig).join(', ')}`).join('; '),
    ]),
  };
}
