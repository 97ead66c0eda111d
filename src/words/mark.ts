import { faceAxis, third } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import type { MarkCut } from './cut.js';
import { called, datumOf, isFull, spanFrom } from './frame.js';
import type { Frame } from './frame.js';
import { b, heading, readHeading, t } from './say.js';
import type { Bare, ShapeWords } from './say.js';
import { fig, readCentres, readSpan, sayCentres } from './span.js';

const NAMES: Readonly<Record<MarkCut['as'], string>> = { 'slide-line': 'Slide line', line: 'Line' };

export const markWords: ShapeWords<MarkCut> = {
  key: (c) => ['mark', c.as, c.face, c.axis, ...c.over].join('|'),
  print(group, f, ctx) {
    const c = group[0] as MarkCut;
    const name = heading(NAMES[c.as], group.length);
    const across = third(faceAxis(c.face), c.axis);
    const places = group.map((g) => ({ span: [g.at, g.at] as const, mates: group.length > 1 ? g.mates : [] }));
    const lead = t(` pencil only, ${called(f, c.face)}: `);
    return { name, runs: [b(name), lead, ...sayCentres(f, across, places, ctx), t(`; ${over(f, c.axis, c.over)}.`)] };
  },
  parse(r) {
    const as = readHeading(r, NAMES);
    const face = as && r.take('pencil only,') ? r.face() : undefined;
    const centres = face !== undefined && r.take(':') ? readCentres(r) : undefined;
    if (as === undefined || !centres || !r.take(';')) return undefined;
    const axis = third(faceAxis(face as Face), faceAxis(centres.face));
    const along = r.take('right along') ? r.frame.blank[axis] : readSpan(r)?.items[0]?.span;
    if (!along || !r.take('.')) return undefined;
    return centres.items.map((i): Bare<MarkCut> => ({
      shape: 'mark',
      as,
      face: face as Face,
      axis,
      over: along,
      at: i.at,
      mates: i.mates,
    }));
  },
};
/** A line may run on beyond the part (a slide that begins in front of it): its ends are both given. */
function over(f: Frame, axis: Axis, s: Span): string {
  if (isFull(f, axis, s) && s[0] === f.blank[axis][0] && s[1] === f.blank[axis][1]) return 'right along';
  const d = datumOf(f, axis);
  const [lo, hi] = spanFrom(f, d, s);
  return `${fig(f, lo)} to ${fig(f, hi)} from ${called(f, d)}`;
}
