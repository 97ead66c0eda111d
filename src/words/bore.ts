import { faceAxis, faceOf, inFace, opposite } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { formatAngle } from '../lengths/format.js';
import type { BoreCut } from './cut.js';
import { called, coordinate, datumOf, distance } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { b, heading, marks, readHeading, t } from './say.js';
import type { Bare, Piece, SayContext, ShapeWords } from './say.js';
import { fig } from './span.js';

const NAMES: Readonly<Record<BoreCut['as'], string>> = {
  hole: 'Hole',
  pilot: 'Pilot hole',
  slotted: 'Slotted hole',
  counterbore: 'Counterbored hole',
  pocket: 'Pocket hole',
};

export const boreWords: ShapeWords<BoreCut> = {
  key(c) {
    const slot = c.slot ? [c.slot.axis, c.slot.length] : [];
    const seat = c.seat ? [c.seat.diameter, c.seat.depth] : [];
    const tilt = c.tilt ? [c.tilt.toward, c.tilt.degrees] : [];
    return ['bore', c.as, c.face, c.diameter, c.depth, slot, seat, tilt].map(String).join('|');
  },
  print(group, f, ctx) {
    const c = group[0] as BoreCut;
    const name = heading(NAMES[c.as], group.length);
    const depth = c.depth === 'through' ? 'through' : `${fig(f, c.depth)} deep`;
    const lead = ` ${called(f, c.face)}: ${fig(f, c.diameter)} across, ${depth}; `;
    return { name, runs: [b(name), t(lead), ...places(group, f, ctx), t(`${extras(f, c)}.`)] };
  },
  parse: parseBore,
};

/** Length first: a maker squares the line across before measuring along it. */
function axes(f: Frame, face: Face): readonly [Axis, Axis] {
  const [p, q] = inFace(face);
  return q === f.length || (p !== f.length && q === f.width) ? [q, p] : [p, q];
}
function places(group: readonly BoreCut[], f: Frame, ctx: SayContext): Piece[] {
  const c = group[0] as BoreCut;
  const [first, second] = axes(f, c.face);
  const ofAxis = (cut: BoreCut, a: Axis): number =>
    distance(f, datumOf(f, a), cut.at[a === inFace(cut.face)[0] ? 0 : 1]);
  const items = group.map((g) => ({ at: [ofAxis(g, first), ofAxis(g, second)] as const, mates: g.mates }));
  items.sort((x, y) => x.at[0] - y.at[0] || x.at[1] - y.at[1]);
  const lead = `centre${group.length > 1 ? 's' : ''} from ${called(f, datumOf(f, first))} and from ${called(f, datumOf(f, second))} `;
  return [
    t(lead),
    ...items.flatMap((p, i) => {
      const at = `${fig(f, p.at[0])} and ${fig(f, p.at[1])}`;
      const mates = group.length > 1 && p.mates.length > 0;
      return [t(i > 0 ? ' · ' : ''), mates ? b(at) : t(at), t(mates ? ` ${marks(p.mates, ctx)}` : '')];
    }),
  ];
}
function extras(f: Frame, c: BoreCut): string {
  const low = c.slot && faceOf(c.slot.axis, -1);
  const slot = c.slot && low ? `; ${fig(f, c.slot.length)} long, ${f.words[low]} to ${f.words[opposite(low)]}` : '';
  const seat = c.seat ? `; seat ${fig(f, c.seat.diameter)} across, ${fig(f, c.seat.depth)} deep` : '';
  const tilt = c.tilt ? `; leaning ${formatAngle(c.tilt.degrees, 4)} toward ${called(f, c.tilt.toward)}` : '';
  return `${slot}${seat}${tilt}`;
}

interface Extras {
  slot?: { axis: Axis; length: number };
  seat?: { diameter: number; depth: number };
  tilt?: { toward: Face; degrees: number };
}
function parseBore(r: Reader): readonly Bare<BoreCut>[] | undefined {
  const as = readHeading(r, NAMES);
  const face = as && r.face();
  const diameter = face !== undefined && r.take(':') ? r.figure() : undefined;
  if (as === undefined || face === undefined || diameter === undefined || !r.take('across,')) return undefined;
  const depth = r.take('through') ? 'through' : r.figure();
  if (depth === undefined || (depth !== 'through' && !r.take('deep')) || !r.take(';')) return undefined;
  const at = readPlaces(r, face);
  if (!at) return undefined;
  const more: Extras = {};
  while (r.take(';')) if (!readExtra(r, more)) return undefined;
  if (!r.take('.')) return undefined;
  return at.map((p) => ({ shape: 'bore', as, face, at: p.at, diameter, depth, ...more, mates: p.mates }));
}
function readPlaces(r: Reader, face: Face): { at: [number, number]; mates: string[] }[] | undefined {
  if (r.oneOf(['centres from', 'centre from']) === undefined) return undefined;
  const p = r.datum();
  const q = p !== undefined && r.take('and from') ? r.datum() : undefined;
  if (p === undefined || q === undefined || faceAxis(p) === faceAxis(q)) return undefined;
  if (faceAxis(p) === faceAxis(face) || faceAxis(q) === faceAxis(face)) return undefined;
  const out: { at: [number, number]; mates: string[] }[] = [];
  do {
    const x = r.figure();
    const y = x !== undefined && r.take('and') ? r.figure() : undefined;
    if (y === undefined) return undefined;
    const a = coordinate(r.frame, p, x as number);
    const c = coordinate(r.frame, q, y);
    out.push({ at: faceAxis(p) < faceAxis(q) ? [a, c] : [c, a], mates: r.mates() });
  } while (r.take('·'));
  return out;
}
function readExtra(r: Reader, more: Extras): boolean {
  if (r.take('seat')) {
    const diameter = r.figure();
    const depth = diameter !== undefined && r.take('across,') ? r.figure() : undefined;
    if (depth === undefined) return false;
    more.seat = { diameter: diameter as number, depth };
    return r.take('deep');
  }
  if (r.take('leaning')) {
    const degrees = r.number();
    const toward = degrees !== undefined && r.take('° toward') ? r.face() : undefined;
    if (toward === undefined) return false;
    more.tilt = { toward, degrees: degrees as number };
    return true;
  }
  const length = r.figure();
  const from = length !== undefined && r.take('long,') ? r.face() : undefined;
  const to = from !== undefined && r.take('to') ? r.face() : undefined;
  if (to === undefined || to !== opposite(from as Face)) return false;
  more.slot = { axis: faceAxis(to), length: length as number };
  return true;
}
