import { faceAxis, others } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Span, Vec3 } from '../geom/box.js';
import type { TenonCut } from './cut.js';
import { called, coordinate, distance } from './frame.js';
import type { Frame } from './frame.js';
import type { Mark } from './plane.js';
import { facing, markAt, readMarks, sayMarks } from './plane.js';
import type { Reader } from './reader.js';
import { b, t } from './say.js';
import type { Bare, ShapeWords } from './say.js';
import { fig, readSpan, sayRange } from './span.js';
import { intoMates, readEnds, readMates } from './tails.js';

const NAMES: Readonly<Record<TenonCut['as'], string>> = { tenon: 'Tenon', tongue: 'Tongue' };
type Tongue = TenonCut['tongues'][number];

export const tenonWords: ShapeWords<TenonCut> = {
  key(c, f) {
    const tongues = c.tongues.map((x) => [...x.a, ...x.b, x.length, x.haunch ?? false].join(','));
    const shoulder = distance(f, c.end, c.shoulder);
    // Ends that mirror one another are marked out alike, each from itself.
    const slope = (c.slope ?? []).map((x, a) => (a === faceAxis(c.end) ? Math.abs(x) : x).toFixed(12));
    return ['tenon', c.as, faceAxis(c.end), shoulder, ...tongues, c.mitre?.long ?? '', ...slope].join('|');
  },
  print(group, f, ctx) {
    const c = group[0] as TenonCut;
    const many = c.tongues.filter((x) => !x.haunch).length > 1;
    const name = `${NAMES[c.as]}${many ? 's' : ''},`;
    const ends = group.map((g) => called(f, g.end)).join(' and ');
    const shoulder = `shoulder ${fig(f, distance(f, c.end, c.shoulder))} from ${group.length > 1 ? 'each' : 'the'} end`;
    const slope = c.slope
      ? `, sloping to marks on three arrises, from ${group.length > 1 ? 'each' : 'the'} end: ${sayMarks(f, { point: onMiddle(f, c), normal: c.slope }, c.end)}`
      : '';
    const clauses = c.tongues.map((x) => `; ${x.haunch ? 'haunch' : c.as} ${sayTongue(f, c, x)}`);
    const square = c.tongues.some((x) => x.haunch) ? ', haunch square' : '';
    const mitre = c.mitre ? `; mitred${square}, long at ${called(f, c.mitre.long)}` : '';
    const body = `${shoulder}${slope}${clauses.join('')}${mitre}.`;
    return { name, runs: [b(name), t(` ${ends}: ${body}`), ...intoMates(group, f, ctx)] };
  },
  parse: parseTenon,
};

function sayTongue(f: Frame, c: TenonCut, x: Tongue): string {
  const [p, q] = others(faceAxis(c.end));
  return `${sayRange(f, p, x.a)}, ${sayRange(f, q, x.b)}, ${fig(f, x.length)} long`;
}

function parseTenon(r: Reader): readonly Bare<TenonCut>[] | undefined {
  const as = (['tenon', 'tongue'] as const).find((k) => r.oneOf([`${NAMES[k]},`, `${NAMES[k]}s,`]));
  const ends = as && readEnds(r);
  if (!ends || !r.take(':') || !r.take('shoulder')) return undefined;
  const shoulder = r.figure();
  if (shoulder === undefined || !(r.take('from each end') || r.take('from the end'))) return undefined;
  const marks = r.oneOf([
    ', sloping to marks on three arrises, from each end:',
    ', sloping to marks on three arrises, from the end:',
  ])
    ? readMarks(r)
    : [];
  if (!marks) return undefined;
  const tongues: Tongue[] = [];
  let mitre: Face | undefined;
  while (r.take(';')) {
    if (r.oneOf(['mitred, haunch square, long at', 'mitred, long at'])) {
      mitre = r.face();
      if (mitre === undefined) return undefined;
      continue;
    }
    const kind = r.oneOf(['haunch', 'tenon', 'tongue']);
    const tongue = kind && readTongue(r, ends[0] as Face, kind === 'haunch');
    if (!tongue) return undefined;
    tongues.push(tongue);
  }
  if (!r.take('.')) return undefined;
  const into = readMates(r);
  return ends.map((end) => ({
    shape: 'tenon',
    as,
    end,
    shoulder: coordinate(r.frame, end, shoulder),
    tongues,
    ...slopeOf(r.frame, marks, end),
    ...(mitre ? { mitre: { long: mitre } } : {}),
    mates: into.get(end) ?? [],
  }));
}
/** Where the shoulder crosses the part's middle line. */
function onMiddle(f: Frame, c: TenonCut): Vec3 {
  const point = byAxis((a) => (f.blank[a][0] + f.blank[a][1]) / 2);
  point[faceAxis(c.end)] = c.shoulder;
  return point;
}
function slopeOf(f: Frame, marks: readonly Mark[], end: Face): { readonly slope?: Vec3 } {
  const slope = facing(
    marks.map((m) => markAt(f, m, end)),
    end,
  );
  return slope ? { slope } : {};
}
function readTongue(r: Reader, end: Face, haunch: boolean): Tongue | undefined {
  const spans = new Map<number, Span>();
  for (let i = 0; i < 2; i += 1) {
    const clause = readSpan(r);
    if (!clause || !r.take(',')) return undefined;
    spans.set(clause.axis, (clause.items[0] as { span: Span }).span);
  }
  const length = r.figure();
  const [p, q] = others(faceAxis(end));
  const a = spans.get(p);
  const bb = spans.get(q);
  if (length === undefined || !r.take('long') || !a || !bb) return undefined;
  return { a, b: bb, length, ...(haunch ? { haunch: true } : {}) };
}
