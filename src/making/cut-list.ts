import { formatLength } from '../lengths/format.js';
import type { Part, Piece, Stock } from '../piece/piece.js';
import { roughOf } from '../shop/rough.js';
import { markRanges } from '../words/markOrder.js';
import { jointLabel } from './joint-schedule.js';
import { overAll } from '../geom/growth.js';
import { grainWords, grows, rowsOf } from './parts.js';
import { columns, type Table } from './table.js';

/**
 * The finished list: one row a card. Sizes over all, joints in; `shoulder` the length between shoulders where joints add
 * to it (`=` where they add nothing). `rough`: over-all size and the shop's allowances; sheet goods have none.
 */
export function cutList(piece: Piece): Table {
  return {
    id: 'cut-list',
    columns: columns(
      'mark:Part',
      'name:Name',
      'quantity:No.>',
      'thickness:Thick>',
      'width:Wide>',
      'length:Long>',
      'shoulder:Shoulder>',
      'stock:Stock',
      'grain:Grain',
      'rough:Rough',
      'measure:Measure from',
      'hand:Hand',
      'status:Status',
      'joints:Joints',
      'show:Shows',
      'note:Note',
    ),
    rows: rowsOf(piece).map((group) => row(piece, group)),
  };
}

function row(piece: Piece, group: readonly Part[]): string[] {
  const p = group[0] as Part;
  const stock = piece.stocks[p.stock];
  const fig = (v: number): string => formatLength(v, piece.units);
  const axes = [p.thickness, p.width, p.length] as const;
  const shoulder = fig(p.size[p.length].value);
  return [
    markRanges(group.map((g) => g.mark)),
    nameOf(group),
    String(group.length),
    ...axes.map((a) => fig(overAll(p, a))),
    grows(p, p.width) ? `${fig(p.size[p.width].value)} × ${shoulder}` : grows(p, p.length) ? shoulder : '=',
    stockWords(p, stock),
    grainWords(p),
    stock?.kind === 'lumber' ? roughWords(piece, p) : '',
    [p.reference.face, p.reference.edge, p.reference.end].map((f) => p.faceWords[f]).join(', '),
    group.every((g) => g.hand === p.hand) ? (p.hand ?? '') : '',
    p.status,
    jointsOf(piece, group),
    p.show.map((f) => p.faceWords[f]).join(', '),
    p.notes.join('; '),
  ];
}

/** Rough size of the blank; of staves as it is glued up. */
function roughWords(piece: Piece, p: Part): string {
  const sizes = [overAll(p, p.thickness), overAll(p, p.width), overAll(p, p.length)] as const;
  const { thickness, width, length } = roughOf(sizes, piece.shop.allowance, piece.units, p.staves);
  return [thickness, width, length].map((v) => formatLength(v, piece.units)).join(' × ');
}

/** The name of a row; where left and right are one part, without its hand. */
const nameOf = (group: readonly Part[]): string => {
  const name = group[0]?.name ?? '';
  return group.some((p) => p.hand !== group[0]?.hand) ? name.replace(/\b(left|right) /, '') : name;
};
const stockWords = (p: Part, stock: Stock | undefined): string =>
  [stock?.name ?? p.stock, stock?.quarter, stock?.cut, p.staves ? 'staves' : undefined].filter(Boolean).join(', ');

/** The joints that a row takes part in, as the joint schedule calls them. */
function jointsOf(piece: Piece, group: readonly Part[]): string {
  const ids = new Set(group.map((p) => p.id));
  const joints = piece.joints
    .filter((j) => ids.has(j.entering) || ids.has(j.receiving))
    .map((j) => jointLabel(j.joint));
  return [...new Set(joints)].sort().join(', ');
}
