import { faceAxis, opposite, third } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { middle, width } from '../geom/box.js';
import type { Span } from '../geom/box.js';
import type { TailsCut } from './cut.js';
import { exact } from './figure.js';
import { called, clip, coordinate, distance, isFull } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { b, count, marks, readCount, t } from './say.js';
import type { Bare, Piece, SayContext, ShapeWords } from './say.js';
import { centresBest, fig, readCentres, readSpan, sayCentres, sayPlaces, saySpan } from './span.js';

const NAMES: Readonly<Record<TailsCut['as'], string>> = { tails: 'Tails', tail: 'Tail' };
type Tail = TailsCut['tails'][number];

/** All tails have one size and lie evenly about their centres: then centres and two widths say it all. */
const even = (f: Frame, c: TailsCut): boolean =>
  evenTails(c.tails) &&
  centresBest(
    f,
    c.taper,
    c.tails.map((x) => x.atBase),
  );
const evenTails = (tails: readonly Tail[]): boolean =>
  tails.every(
    (x) =>
      middle(x.atBase) === middle(x.atEnd) &&
      width(x.atBase) === width((tails[0] as Tail).atBase) &&
      width(x.atEnd) === width((tails[0] as Tail).atEnd),
  );
const keepAxis = (c: { end: Face; taper: Axis }): Axis => third(faceAxis(c.end), c.taper);

export const tailsWords: ShapeWords<TailsCut> = {
  key(c, f) {
    const sizes = c.tails.map((x) => [...x.atBase, ...x.atEnd].join(','));
    const keep = clip(f, keepAxis(c), c.keep);
    const bit = c.bit ? [c.bit.width, c.bit.angle] : [];
    return ['tails', c.as, faceAxis(c.end), distance(f, c.end, c.base), c.taper, ...sizes, ...keep, ...bit].join('|');
  },
  print(group, f, ctx) {
    const c = group[0] as TailsCut;
    const name = `${NAMES[c.as]},`;
    const n = count(c.tails.length);
    const where = isEach(group) ? `${n} at each end` : `${ends(group, f)}, ${n}${group.length > 1 ? ' each' : ''}`;
    const runs = [b(name), t(` ${where}: `)];
    const base = `base line ${fig(f, distance(f, c.end, c.base))} from the end`;
    runs.push(t(base), ...bit(f, c), ...shape(f, c, ctx));
    const k = keepAxis(c);
    if (!isFull(f, k, c.keep)) runs.push(t(`; standing ${saySpan(f, k, c.keep)}`));
    return { name, runs: [...runs, t('.'), ...intoMates(group, f, ctx)] };
  },
  parse: parseTails,
};

/** Both ends, each named again with its mate: `at each end` says them. */
const isEach = (group: readonly TailsCut[]): boolean => group.length === 2 && group.every((g) => g.mates.length > 0);
const ends = (group: readonly { end: Face }[], f: Frame): string => group.map((g) => called(f, g.end)).join(' and ');
/** ` FRONT end into D1.1; BACK end into D1.4.` Empty where nothing is known to go on. */
export function intoMates(
  group: readonly { readonly end: Face; readonly mates: readonly string[] }[],
  f: Frame,
  ctx: SayContext,
): Piece[] {
  const said = group.filter((g) => g.mates.length > 0);
  return said.flatMap((g, i) => [
    t(`${i > 0 ? '; ' : ' '}${called(f, g.end)} into `),
    b(marks(g.mates, ctx)),
    t(i === said.length - 1 ? '.' : ''),
  ]);
}
/** Reads `intoMates`: the marks by end. */
export function readMates(r: Reader): ReadonlyMap<Face, readonly string[]> {
  const out = new Map<Face, readonly string[]>();
  r.attempt(() => {
    do {
      const end = r.face();
      if (end === undefined || !r.take('into')) return undefined;
      out.set(end, r.mates());
    } while (r.take(';'));
    return r.take('.') ? true : undefined;
  });
  return out;
}
/** Reads `FRONT end and BACK end`. */
export function readEnds(r: Reader): readonly Face[] | undefined {
  const first = r.face();
  if (first === undefined) return undefined;
  const second = r.attempt(() => (r.take('and') ? r.face() : undefined));
  return second === undefined ? [first] : [first, second];
}
function bit(f: Frame, c: TailsCut): Piece[] {
  // Tails that stand at their jig's pitch say it with their centres.
  const pitch = c.pitch === undefined || steps(f, c) ? '' : `; pitch ${fig(f, c.pitch)}`;
  return [t(c.bit ? `; bit ${fig(f, c.bit.width)}, ${c.bit.angle}°${pitch}` : pitch)];
}
/** True when the centres of the tails stand a jig's pitch apart, so that the first of them and the pitch say them all. */
const steps = (f: Frame, c: TailsCut): boolean =>
  c.pitch !== undefined &&
  c.tails.length >= 3 &&
  even(f, c) &&
  exact(c.pitch, f.units) &&
  c.tails.every((x, i) => i === 0 || middle(x.atBase) - middle((c.tails[i - 1] as Tail).atBase) === c.pitch);
function shape(f: Frame, c: TailsCut, ctx: SayContext): Piece[] {
  const at = c.tails.map((x) => ({ span: x.atBase, mates: [] }));
  const first = c.tails[0];
  if (first && even(f, c)) {
    const each = c.tails.length > 1 ? 'each ' : '';
    const widths = `; ${each}${fig(f, width(first.atEnd))} wide at the end, ${fig(f, width(first.atBase))} wide at the base line`;
    return [t('; '), ...sayCentres(f, c.taper, at, ctx, steps(f, c) ? 'known' : 'none'), t(widths)];
  }
  const atEnd = c.tails.map((x) => ({ span: x.atEnd, mates: [] }));
  return [
    t('; at the end '),
    ...sayPlaces(f, c.taper, atEnd, ctx),
    t('; at the base line '),
    ...sayPlaces(f, c.taper, at, ctx),
  ];
}

interface Found {
  readonly count: number;
  base?: number;
  bit?: { width: number; angle: number };
  pitch?: number;
  axis?: Axis;
  atEnd?: readonly Span[];
  atBase?: readonly Span[];
  keep?: { axis: Axis; span: Span };
}
function parseTails(r: Reader): readonly Bare<TailsCut>[] | undefined {
  const as = (['tails', 'tail'] as const).find((k) => r.take(`${NAMES[k]},`));
  if (as === undefined) return undefined;
  const each = r.attempt(() => {
    const n = readCount(r);
    return n !== undefined && r.take('at each end') ? n : undefined;
  });
  const named = each === undefined ? readEnds(r) : [];
  const n = each ?? (named && r.take(',') ? readCount(r) : undefined);
  if (!named || n === undefined) return undefined;
  r.take('each');
  if (!r.take(':')) return undefined;
  const found: Found = { count: n };
  do if (!readClause(r, found)) return undefined;
  while (r.take(';'));
  const { base, axis, atEnd, atBase } = found;
  if (!r.take('.') || base === undefined || axis === undefined || !atEnd || !atBase) return undefined;
  const into = readMates(r);
  const both = each === undefined ? named : [...into.keys()];
  const [one, other] = both;
  if (one === undefined || (each !== undefined && other !== opposite(one))) return undefined;
  const k = third(faceAxis(one), axis);
  return both.map((end) => ({
    shape: 'tails',
    as,
    end,
    base: coordinate(r.frame, end, base),
    taper: axis,
    tails: inOrder(atBase.map((s, i) => ({ atBase: s, atEnd: atEnd[i] ?? s }))),
    keep: found.keep?.axis === k ? found.keep.span : r.frame.blank[k],
    ...(found.bit ? { bit: found.bit } : {}),
    ...(found.pitch === undefined ? {} : { pitch: found.pitch }),
    mates: into.get(end) ?? [],
  }));
}
const inOrder = (tails: Tail[]): Tail[] => tails.sort((a, c) => a.atBase[0] - c.atBase[0]);

function readClause(r: Reader, found: Found): boolean {
  if (r.take('base line')) {
    found.base = r.figure() ?? NaN;
    return r.take('from the end');
  }
  if (r.take('bit')) {
    const w = r.figure();
    const angle = w !== undefined && r.take(',') ? r.number() : undefined;
    if (angle === undefined) return false;
    found.bit = { width: w as number, angle };
    return r.take('°');
  }
  if (r.take('pitch')) {
    const pitch = r.figure();
    if (pitch === undefined) return false;
    found.pitch = pitch;
    return true;
  }
  if (r.take('standing')) {
    const keep = readSpan(r);
    if (!keep) return false;
    found.keep = { axis: keep.axis, span: (keep.items[0] as { span: Span }).span };
    return true;
  }
  return readTails(r, found);
}
function readTails(r: Reader, found: Found): boolean {
  const which = r.oneOf(['at the end', 'at the base line']);
  if (which !== undefined) {
    const spans = readSpan(r);
    if (!spans) return false;
    found.axis = spans.axis;
    found[which === 'at the end' ? 'atEnd' : 'atBase'] = spans.items.map((i) => i.span);
    return true;
  }
  const centres = readCentres(r, found.count);
  if (!centres || !r.take(';')) return false;
  if (centres.pitch !== undefined) found.pitch = centres.pitch;
  r.take('each');
  const atEnd = r.figure();
  const atBase = atEnd !== undefined && r.take('wide at the end,') ? r.figure() : undefined;
  if (atBase === undefined || !r.take('wide at the base line')) return false;
  found.axis = faceAxis(centres.face);
  found.atEnd = centres.items.map((i) => [i.at - (atEnd as number) / 2, i.at + (atEnd as number) / 2]);
  found.atBase = centres.items.map((i) => [i.at - atBase / 2, i.at + atBase / 2]);
  return true;
}
