import { speciesById, tradeName } from '../../data/species.js';
import { width } from '../../geom/box.js';
import { inches, mm, nm, snapDown } from '../../lengths/length.js';
import type { Piece } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { woodOf } from '../../wood/material.js';
import { modulusOf, type Frame, type Member } from './frame.js';
import { passes, type Judged } from './limit.js';
import { settle, type Change } from './settle.js';
import { plainStiffness } from './spans.js';

const NM = 1e9;
/** Thicknesses to try, nm: by sixteenths or millimetres, of sheet goods those that are sold, which measure a little less. */
function thicknesses(piece: Piece, member: Member): number[] {
  const now = width(member.box[2]);
  const metric = piece.units === 'mm';
  const sold = metric ? [6, 9, 12, 15, 18, 21, 24, 30].map(mm) : [1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1].map(inches);
  if (piece.stocks[member.part.stock]?.kind === 'sheet')
    return sold.filter((t) => t > now + (metric ? mm(1.5) : inches(1 / 16)));
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

/** The height that would pass of the stiffest of those that bend together, in words. */
function thickerOf(f: Frame, j: Judged, does: (change: Change) => boolean): string | undefined {
  const { piece } = f;
  const { stretch } = j.settled;
  const { member } = j.borne;
  const stiff = (m: Member): number => plainStiffness(f, m, stretch.a);
  const best = stretch.tied.reduce((p, q) => (stiff(q) > stiff(p) * (1 + 1e-9) ? q : p), member);
  const sheet = piece.stocks[best.part.stock]?.kind === 'sheet';
  const scant = sheet ? (piece.units === 'mm' ? mm(0.5) : inches(1 / 32)) : 0;
  const found = thicknesses(piece, best).find((t) => does({ height: (t - scant) / NM, of: best }));
  if (found === undefined) return undefined;
  const name = best === member ? 'it' : best.part.mark;
  return `make ${name} ${sayQuantity(quantity('length', nm(found)), piece.units)} ${best.lies === 'flat' ? 'thick' : 'high'}`;
}

/** Ways that would pass, in words: thicker, of another wood, borne in the middle. */
export function remedyOf(f: Frame, j: Judged): string {
  const { piece } = f;
  const { settled, borne, limit } = j;
  const { stretch } = settled;
  const does = (change: Change): boolean => {
    const s = settle(f, j.all, borne, stretch, change);
    return s !== undefined && passes(s, limit);
  };
  const thicker = thickerOf(f, j, does);
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
    ...(thicker ? [thicker] : []),
    ...(other ? [`take ${tradeName(other).toLowerCase()}`] : []),
    ...(stretch.supports === 'rests' && does({ halved: true }) ? ['bear it in the middle'] : []),
  ];
  const text = ways.length > 0 ? ways.join(', or ') : 'make it shorter, or bear it in more places';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
