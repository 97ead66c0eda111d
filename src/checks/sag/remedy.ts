import { speciesById, tradeName } from '../../data/species.js';
import { width } from '../../geom/box.js';
import { inches, mm, nm, snapDown } from '../../lengths/length.js';
import type { Piece } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { woodOf } from '../../wood/material.js';
import { modulusOf, type Frame } from './frame.js';
import { passes, type Judged } from './limit.js';
import { settle, type Change } from './settle.js';

const NM = 1e9;
/** Thicknesses to try, nm: by sixteenths or millimetres, of sheet goods those that are sold, which measure a little less. */
function thicknesses(piece: Piece, j: Judged): number[] {
  const { member } = j.borne;
  const now = width(member.box[2]);
  const metric = piece.units === 'mm';
  const sold = metric ? [6, 9, 12, 15, 18, 21, 24, 30].map(mm) : [1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1].map(inches);
  if (piece.stocks[member.part.stock]?.kind === 'sheet') return sold.filter((t) => t > now);
  const step = metric ? mm(1) : inches(1 / 16);
  return Array.from({ length: 48 }, (_, i) => snapDown(now, step) + (i + 1) * step);
}
/** Woods that a yard has, to name one that would do. */
const COMMON = [
  'yellow-poplar',
  'cherry-black',
  'walnut-black',
  'oak-red-northern',
  'oak-white',
  'maple-sugar',
  'ash-white',
  'birch-yellow',
  'hickory-shagbark',
];

/** Ways that would pass, in words: thicker, of another wood, borne in the middle. */
export function remedyOf(f: Frame, j: Judged): string {
  const { piece } = f;
  const { settled, borne, limit } = j;
  const { stretch } = settled;
  const does = (change: Change): boolean => {
    const s = settle(f, j.all, borne, stretch, change);
    return s !== undefined && passes(s, limit);
  };
  const said = (v: number): string => sayQuantity(quantity('length', nm(v)), piece.units);
  const scant =
    piece.stocks[borne.member.part.stock]?.kind === 'sheet' ? (piece.units === 'mm' ? mm(0.5) : inches(1 / 32)) : 0;
  const thick = thicknesses(piece, j).find((t) => does({ height: (t - scant) / NM }));
  const stock = piece.stocks[borne.member.part.stock];
  const wood = woodOf(stock);
  const own = modulusOf(piece, borne.member, stretch.a)?.value ?? 0;
  const other =
    wood &&
    COMMON.flatMap((id) => speciesById(id) ?? [])
      .sort((p, q) => p.stiffness.value - q.stiffness.value || (p.id < q.id ? -1 : 1))
      .find(
        (s) =>
          s.id !== wood.id &&
          does({
            modulus: (own * s.stiffness.value) / wood.stiffness.value,
            heavier: s.gravity.value / wood.gravity.value,
          }),
      );
  const ways = [
    ...(thick === undefined ? [] : [`make it ${said(thick)} ${borne.member.lies === 'flat' ? 'thick' : 'high'}`]),
    ...(other ? [`take ${tradeName(other).toLowerCase()}`] : []),
    ...(stretch.supports === 'rests' && does({ halved: true }) ? ['bear it in the middle'] : []),
  ];
  const text = ways.length > 0 ? ways.join(', or ') : 'make it shorter, or bear it in more places';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
