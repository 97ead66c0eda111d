import { FACES, faceAxis, faceOf, faceSign, third } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { middle, width } from '../geom/box.js';
import type { Span } from '../geom/box.js';
import { NM_PER_IN } from '../lengths/length.js';
import type { Cut, DovetailCut } from './cut.js';
import { exact, readFigure } from './figure.js';
import { called, clip, isFull, reaches, spanAt, spanFrom } from './frame.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';
import { b, count, heading, readCount, readHeading, t } from './say.js';
import type { Bare, Piece, Said, SayContext, ShapeWords } from './say.js';
import { centresBest, fig, readCentres, readSpan, sayCentres, sayPlaces, saySpan, saySunk } from './span.js';
import type { Clause } from './span.js';
import { intoMates, readEnds, readMates } from './tails.js';

const NAMES: Readonly<Record<DovetailCut['as'], string>> = {
  socket: 'Sliding dovetail socket',
  'end-socket': 'Dovetail socket',
  ease: 'Ease the socket',
};

/** Into an end: the word that a maker at the bench would use. */
const WAY: Readonly<Record<string, string>> = { TOP: 'down', BOTTOM: 'up' };
const even = (f: Frame, c: DovetailCut): boolean =>
  c.as !== 'end-socket' && middle(c.atFace) === middle(c.atFloor) && centresBest(f, c.taper, [c.atFace]);
const run = (f: Frame, c: DovetailCut): Span => clip(f, c.run, c.runSpan);

export const dovetailWords: ShapeWords<DovetailCut> = {
  key(c, f) {
    const shape = even(f, c) ? [width(c.atFace), width(c.atFloor)] : ['by figures'];
    const bit = c.bit ? [c.bit.width, c.bit.angle] : [];
    const end = endOf(f, c);
    const along = end ? [spanFrom(f, end, run(f, c))[1]] : run(f, c);
    return ['dovetail', c.as, c.face, c.run, ...along, c.depth, ...shape, ...bit].join('|');
  },
  split(group, f) {
    const [first, second] = byEnd(group, f);
    if (!first || !second) return [group];
    return alike(first) === alike(second) && oneMate(first) && oneMate(second) ? [group] : [first, second];
  },
  print(group, f, ctx) {
    const c = group[0] as DovetailCut;
    const [first, second] = byEnd(group, f);
    if (first && second) return bothEnds(first, second, f, ctx);
    const name = heading(NAMES[c.as], group.length);
    const centred = even(f, c);
    const pass = centred ? secondPass(group, ctx.cuts ?? [], f) : undefined;
    const again = pass ? sayAgain(group, pass, f, ctx) : undefined;
    if (again) return { name, runs: [b(name), t(` ${again}`)], asAnother: true };
    const places = group.map((g) => ({
      span: pass ? moved(g.atFace, -pass.by) : g.atFace,
      mates: group.length > 1 ? g.mates : [],
    }));
    const body: Piece[] = [
      t(' '),
      ...where(f, c),
      t(pass ? pass.words : ''),
      ...runClause(f, c),
      t(`; into the ${nounOf(f, c)} ${fig(f, c.depth)}; `),
    ];
    if (centred) {
      body.push(...sayCentres(f, c.taper, places, ctx), t(`; ${fig(f, width(c.atFace))} wide at the face, `));
      body.push(t(`${fig(f, width(c.atFloor))} wide at the floor`));
    } else {
      const floor = group.map((g) => ({ span: g.atFloor, mates: [] }));
      body.push(t('at the face '), ...sayPlaces(f, c.taper, places, ctx));
      body.push(t('; at the floor '), ...sayPlaces(f, c.taper, floor, ctx));
    }
    if (c.bit) body.push(t(`; bit ${fig(f, c.bit.width)}, ${c.bit.angle}°`));
    return { name, runs: [b(name), ...body, t('.')] };
  },
  parse: parseDovetail,
};

/** `across INSIDE face: as cut 2, guide moved .010 toward BOTTOM end; from BACK edge ...`: where all else is that cut's. */
function sayAgain(
  group: readonly DovetailCut[],
  pass: { readonly by: number; readonly words: string },
  f: Frame,
  ctx: SayContext,
): string | undefined {
  const c = group[0] as DovetailCut;
  const { numberOf } = ctx;
  const sockets = (ctx.cuts ?? []).filter((s): s is DovetailCut => s.shape === 'dovetail' && s.as === 'socket');
  const same = (s: DovetailCut, g: DovetailCut): boolean =>
    s.face === g.face && s.run === g.run && s.depth === g.depth && s.bit?.width === g.bit?.width && s.bit?.angle === g.bit?.angle &&
    [0, 1].every((i) => s.atFace[i as 0] + pass.by === g.atFace[i as 0] && s.atFloor[i as 0] + pass.by === g.atFloor[i as 0]); // prettier-ignore
  const first = numberOf && sockets.find((s) => same(s, c));
  if (!first) return undefined;
  const n = numberOf(first.id);
  const all = sockets.filter((s) => numberOf(s.id) === n);
  if (all.length !== group.length || !all.every((s) => group.some((g) => same(s, g)))) return undefined;
  const words = pass.words.replace(/^second pass, /, '').replace(/; $/, '');
  const over = runClause(f, c).map((p) => p.text).join(''); // prettier-ignore
  return `across ${called(f, c.face)}: as cut ${n}, ${words}; ${over}.`;
}
/** Reads `sayAgain` after the face: the earlier cut's sockets, moved, over another run. */
function parseAgain(r: Reader, as: DovetailCut['as'], face: Face): readonly Bare<DovetailCut>[] | undefined {
  const n = as === 'ease' && r.take('as cut') ? r.number() : undefined;
  const first = n === undefined ? undefined : r.earlier(n);
  const sockets = (first ?? []).filter((c): c is Bare<DovetailCut> => c.shape === 'dovetail' && c.face === face);
  const found: Found = {};
  if (sockets.length === 0 || !r.take(', guide moved') || !readMove(r, found) || !r.take(';')) return undefined;
  const { toward, by: size } = found.moved as { toward: Face; by: number };
  const run = (sockets[0] as Bare<DovetailCut>).run;
  const along = r.take('right across') ? fullRun(r.frame, run) : readSpan(r);
  if (along?.axis !== run || faceAxis(toward) !== sockets[0]?.taper || !r.take('.')) return undefined;
  const by = faceSign(toward) * size;
  r.asAnother = true;
  return sockets.map((s) => ({ ...s, as, runSpan: spanOf(along), atFace: moved(s.atFace, by), atFloor: moved(s.atFloor, by) })); // prettier-ignore
}

const moved = (s: Span, by: number): Span => [s[0] + by, s[1] + by];
/**
 * An eased socket is its own socket run again with the guide moved: a maker reads the socket's centre and the move, never
 * the sum. Undefined where the sockets are not on the card, do not all move alike, or the move prints with loss.
 */
function secondPass(
  group: readonly DovetailCut[],
  cuts: readonly Cut[],
  f: Frame,
): { readonly by: number; readonly words: string } | undefined {
  const c = group[0] as DovetailCut;
  if (c.as !== 'ease') return undefined;
  const sockets = cuts.filter(
    (s): s is DovetailCut => s.shape === 'dovetail' && s.as === 'socket' && s.face === c.face && s.taper === c.taper,
  );
  const moves = group.map((g) => {
    const off = sockets.map((s) => middle(g.atFace) - middle(s.atFace)).sort((x, y) => Math.abs(x) - Math.abs(y));
    return off[0] ?? 0;
  });
  const by = moves[0] as number;
  if (by === 0 || Math.abs(by) >= width(c.atFace) || moves.some((m) => m !== by)) return undefined;
  const size = moveFigure(f, Math.abs(by));
  if (readFigure(size, f.units) !== Math.abs(by)) return undefined;
  const toward = called(f, faceOf(c.taper, by < 0 ? -1 : 1));
  return { by, words: `second pass, guide moved ${size} toward ${toward}; ` };
}
/** A move of the guide: thousandths of an inch, three places, where it is no 64th. */
const moveFigure = (f: Frame, by: number): string =>
  f.units === 'mm' || exact(by, f.units) ? fig(f, by) : (by / NM_PER_IN).toFixed(3).replace(/^0/, '');

/** The end that an end socket is open to; undefined for any other. */
function endOf(f: Frame, c: DovetailCut): Face | undefined {
  const ends = reaches(f, c.run, run(f, c));
  return c.as === 'end-socket' && ends.length === 1 ? ends[0] : undefined;
}
/** End sockets sorted by their end, low end first; one list when they have one end or none. */
function byEnd(group: readonly DovetailCut[], f: Frame): (readonly DovetailCut[])[] {
  const ends = [...new Set(group.map((c) => endOf(f, c)))].sort(
    (a, z) => FACES.indexOf(a ?? 'left') - FACES.indexOf(z ?? 'left'),
  );
  return ends.map((end) => group.filter((c) => endOf(f, c) === end));
}
const sorted = (group: readonly DovetailCut[]): DovetailCut[] => [...group].sort((a, z) => a.atFace[0] - z.atFace[0]);
const alike = (group: readonly DovetailCut[]): string =>
  JSON.stringify(sorted(group).map((c) => [c.atFace, c.atFloor]));
const oneMate = (group: readonly DovetailCut[]): boolean =>
  group.every((c) => c.mates.join() === group[0]?.mates.join());
/** The same sockets at two ends are one callout. */
function bothEnds(low: readonly DovetailCut[], high: readonly DovetailCut[], f: Frame, ctx: SayContext): Said {
  const c = low[0] as DovetailCut;
  const ends = [low, high].map((g) => ({
    end: endOf(f, g[0] as DovetailCut) as Face,
    mates: (g[0] as DovetailCut).mates,
  }));
  const [a, z] = ends.map((e) => called(f, e.end));
  const name = `Dovetail sockets, ${count(low.length)} at each end,`;
  const far = spanFrom(f, ends[0]?.end as Face, run(f, c))[1];
  const lead = ` open to ${called(f, c.face)}, ${a} and ${z}: in ${fig(f, far)} from each end; into the ${nounOf(f, c)} ${fig(f, c.depth)}`;
  const at = (pick: (d: DovetailCut) => Span): Piece[] =>
    sayPlaces(f, c.taper, low.map((d) => ({ span: pick(d), mates: [] })), ctx); // prettier-ignore
  const bit = c.bit ? `; bit ${fig(f, c.bit.width)}, ${c.bit.angle}°` : '';
  const body = [t(`${lead}; at the face `), ...at((d) => d.atFace), t('; at the floor '), ...at((d) => d.atFloor)];
  return { name, runs: [b(name), ...body, t(`${bit}.`), ...intoMates(ends, f, ctx)] };
}
function parseBothEnds(r: Reader): readonly Bare<DovetailCut>[] | undefined {
  if (!r.take('Dovetail sockets,') || readCount(r) === undefined || !r.take('at each end, open to')) return undefined;
  const face = r.face();
  const ends = face !== undefined && r.take(',') ? readEnds(r) : undefined;
  const far = ends?.length === 2 && r.take(': in') ? r.figure() : undefined;
  if (!ends || far === undefined || !r.take('from each end')) return undefined;
  const found: Found = {};
  while (r.take(';')) if (!readClause(r, found)) return undefined;
  const { face: mouth, floor, depth } = found;
  if (!r.take('.') || !mouth || !floor || depth === undefined || mouth.axis !== floor.axis) return undefined;
  const into = readMates(r);
  return ends.flatMap((end) =>
    mouth.items.map((item, i) => ({
      shape: 'dovetail' as const,
      as: 'end-socket' as const,
      face: face as Face,
      run: faceAxis(end),
      taper: mouth.axis,
      runSpan: spanAt(r.frame, end, [0, far]),
      atFace: item.span,
      atFloor: (floor.items[i] ?? item).span,
      depth,
      ...(found.bit ? { bit: found.bit } : {}),
      mates: into.get(end) ?? [],
    })),
  );
}
const nounOf = (f: Frame, c: DovetailCut): string => called(f, c.face).split(' ').pop() as string;
function where(f: Frame, c: DovetailCut): Piece[] {
  const end = reaches(f, c.run, run(f, c));
  if (c.as !== 'end-socket' || end.length !== 1) return [t(`across ${called(f, c.face)}: `)];
  return [t(`open to ${called(f, c.face)} and ${called(f, end[0] as typeof c.face)}: `)];
}
function runClause(f: Frame, c: DovetailCut): Piece[] {
  const s = run(f, c);
  const end = reaches(f, c.run, s);
  const face = end[0];
  if (isFull(f, c.run, s)) return [t('right across')];
  if (c.as === 'end-socket' && end.length === 1 && face) return [t(saySunk(f, face, s, WAY[f.words[face]] ?? 'in'))];
  return [t(saySpan(f, c.run, s))];
}

interface Found {
  face?: Clause | undefined;
  floor?: Clause | undefined;
  along?: Clause | undefined;
  depth?: number | undefined;
  bit?: { width: number; angle: number };
  moved?: { toward: Face; by: number };
}
function parseDovetail(r: Reader): readonly Bare<DovetailCut>[] | undefined {
  const two = r.attempt(() => parseBothEnds(r));
  if (two) return two;
  const as = readHeading(r, NAMES);
  if (as === undefined || r.oneOf(['across', 'open to']) === undefined) return undefined;
  const face = r.face();
  if (face === undefined) return undefined;
  const open = r.take('and') ? r.face() : undefined;
  if (!r.take(':')) return undefined;
  const again = r.attempt(() => parseAgain(r, as, face));
  if (again) return again;
  const found: Found = {};
  do if (!readClause(r, found)) return undefined;
  while (r.take(';'));
  const { face: atFace, floor, depth } = found;
  if (!r.take('.') || !atFace || !floor || depth === undefined || atFace.axis !== floor.axis) return undefined;
  if (open && !(found.along && reaches(r.frame, found.along.axis, spanOf(found.along)).includes(open)))
    return undefined;
  const along = found.along ?? fullRun(r.frame, third(faceAxis(face), atFace.axis));
  const { toward, by: size } = found.moved ?? {};
  if (toward && (as !== 'ease' || faceAxis(toward) !== atFace.axis)) return undefined;
  const by = toward ? faceSign(toward) * (size as number) : 0;
  return atFace.items.map((item, i) => ({
    shape: 'dovetail',
    as,
    face,
    run: along.axis,
    taper: atFace.axis,
    runSpan: (along.items[0] as { span: Span }).span,
    atFace: moved(item.span, by),
    atFloor: moved((floor.items[i] ?? item).span, by),
    depth,
    ...(found.bit ? { bit: found.bit } : {}),
    mates: item.mates,
  }));
}
const spanOf = (c: Clause): Span => (c.items[0] as { span: Span }).span;
const fullRun = (f: Frame, axis: Axis): Clause => ({ axis, items: [{ span: f.blank[axis], mates: [] }] });

function readClause(r: Reader, found: Found): boolean {
  if (r.take('right across')) return true;
  if (r.match(/into the (?:face|edge|end)/y)) return (found.depth = r.figure()) !== undefined;
  if (r.take('at the face')) return (found.face = readSpan(r)) !== undefined;
  if (r.take('at the floor')) return (found.floor = readSpan(r)) !== undefined;
  if (r.take('bit')) return readBit(r, found);
  if (r.take('second pass, guide moved')) return readMove(r, found);
  const centres = readCentres(r);
  if (!centres) return (found.along = readSpan(r)) !== undefined;
  const wideFace = r.take(';') ? r.figure() : undefined;
  const wideFloor = wideFace !== undefined && r.take('wide at the face,') ? r.figure() : undefined;
  if (wideFloor === undefined || !r.take('wide at the floor')) return false;
  const axis = faceAxis(centres.face);
  const around = (w: number): Clause => ({
    axis,
    items: centres.items.map((i) => ({ span: [i.at - w / 2, i.at + w / 2], mates: i.mates })),
  });
  found.face = around(wideFace as number);
  found.floor = around(wideFloor);
  return true;
}
function readMove(r: Reader, found: Found): boolean {
  const by = r.figure();
  const toward = by !== undefined && r.take('toward') ? r.face() : undefined;
  if (toward === undefined) return false;
  found.moved = { toward, by: by as number };
  return true;
}
function readBit(r: Reader, found: Found): boolean {
  const width_ = r.figure();
  const angle = width_ !== undefined && r.take(',') ? r.number() : undefined;
  if (angle === undefined || !r.take('°')) return false;
  found.bit = { width: width_ as number, angle };
  return true;
}
