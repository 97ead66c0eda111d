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
interface Place {
  readonly at: readonly [number, number];
  readonly mates: readonly string[];
}
/** Holes on lines across the part: at each of `lines`, one at each of `list`. */
interface Rows {
  readonly list: readonly number[];
  readonly lines: readonly { readonly at: number; readonly mates: readonly string[] }[];
}
/** Shares places out on lines along one of the two axes: those with the same figures and one mate a line stand together. */
function rowsOf(items: readonly Place[], along: 0 | 1): Rows[] {
  const up = (x: number, y: number): number => x - y;
  const lines = new Map<string, { at: number; mates: readonly string[]; list: number[] }>();
  for (const p of items) {
    const at = p.at[(1 - along) as 0 | 1];
    const key = `${at}|${p.mates.join()}`;
    const line = lines.get(key) ?? { at, mates: p.mates, list: [] };
    lines.set(key, line);
    line.list.push(p.at[along]);
  }
  const rows = new Map<string, { list: number[]; lines: { at: number; mates: readonly string[] }[] }>();
  for (const line of [...lines.values()].sort((x, y) => up(x.at, y.at))) {
    const list = [...line.list].sort(up);
    const row = rows.get(list.join()) ?? { list, lines: [] };
    rows.set(list.join(), row);
    row.lines.push({ at: line.at, mates: line.mates });
  }
  return [...rows.values()];
}
const figuresIn = (rows: readonly Rows[]): number => rows.reduce((n, r) => n + r.list.length + r.lines.length, 0);
/** `centre 8 5/16 from LEFT end, 2 9/16 from BOTTOM edge`; `centres 2 · 14 from LEFT end, at each of 3/8 R1 · 1 R2 from TOP face`. */
function places(group: readonly BoreCut[], f: Frame, ctx: SayContext): Piece[] {
  const c = group[0] as BoreCut;
  const order = axes(f, c.face);
  const ofAxis = (cut: BoreCut, a: Axis): number =>
    distance(f, datumOf(f, a), cut.at[a === inFace(cut.face)[0] ? 0 : 1]);
  const items = group.map((g): Place => ({ at: [ofAxis(g, order[0]), ofAxis(g, order[1])], mates: group.length > 1 ? g.mates : [] })); // prettier-ignore
  const [first, second] = [rowsOf(items, 0), rowsOf(items, 1)];
  const along = figuresIn(second) < figuresIn(first) ? 1 : 0;
  const from = (i: number): string => ` from ${called(f, datumOf(f, order[i === 0 ? along : 1 - along] as Axis))}`;
  const some = (pairs: boolean, all: readonly string[]): Piece => (pairs ? b : t)(all.join(' · '));
  const rows = (along === 0 ? first : second).flatMap((row, i): Piece[] => {
    const pairs = row.lines.some((l) => l.mates.length > 0);
    const [one, ...more] = row.lines;
    const lead = [t(i > 0 ? '; and ' : ''), some(pairs, row.list.map((x) => fig(f, x))), t(`${from(0)}, `)]; // prettier-ignore
    if (one && more.length === 0) {
      const mates = pairs ? ` ${marks(one.mates, ctx)}` : '';
      return [...lead, t(row.list.length > 1 ? 'each ' : ''), some(pairs, [fig(f, one.at)]), t(`${from(1)}${mates}`)]; // prettier-ignore
    }
    const lines = row.lines.flatMap((l, k) => [t(k > 0 ? ' · ' : ''), some(pairs, [fig(f, l.at)]), t(l.mates.length > 0 ? ` ${marks(l.mates, ctx)}` : '')]); // prettier-ignore
    return [...lead, t(row.list.length > 1 ? 'at each of ' : 'at '), ...lines, t(from(1))];
  });
  return [t(group.length > 1 ? 'centres ' : 'centre '), ...rows];
}
function extras(f: Frame, c: BoreCut): string {
  const low = c.slot && faceOf(c.slot.axis, -1);
  const slot =
    c.slot && low ? `; slot ${fig(f, c.slot.length)} long, ${f.words[low]} to ${f.words[opposite(low)]}` : '';
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
  if (r.oneOf(['centres', 'centre']) === undefined) return undefined;
  const out: { at: [number, number]; mates: string[] }[] = [];
  do {
    const list = readList(r);
    const p = r.take('from') ? r.datum() : undefined;
    if (list.length === 0 || p === undefined || !r.take(',')) return undefined;
    r.oneOf(['each', 'at each of', 'at']);
    const lines = readList(r);
    const q = r.take('from') ? r.datum() : undefined;
    if (lines.length === 0 || q === undefined || new Set([face, p, q].map(faceAxis)).size < 3) return undefined;
    const last = r.mates();
    for (const y of lines)
      for (const x of list) {
        const [a, c] = [coordinate(r.frame, p, x.at), coordinate(r.frame, q, y.at)];
        out.push({ at: faceAxis(p) < faceAxis(q) ? [a, c] : [c, a], mates: [...y.mates, ...last] });
      }
  } while (r.take('; and'));
  return out;
}
/** `3/8 B4 · 10 1/8 B3`. */
function readList(r: Reader): { at: number; mates: string[] }[] {
  const out: { at: number; mates: string[] }[] = [];
  do {
    const at = r.figure();
    if (at === undefined) return [];
    out.push({ at, mates: r.mates() });
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
  const length = r.take('slot') ? r.figure() : undefined;
  const from = length !== undefined && r.take('long,') ? r.face() : undefined;
  const to = from !== undefined && r.take('to') ? r.face() : undefined;
  if (to === undefined || to !== opposite(from as Face)) return false;
  more.slot = { axis: faceAxis(to), length: length as number };
  return true;
}
