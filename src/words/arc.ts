import { faceAxis } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import type { ArcCut } from './cut.js';
import { called, datumOf, spanFrom } from './frame.js';
import { b, t } from './say.js';
import type { ShapeWords } from './say.js';
import { fig, readSpan } from './span.js';

export const arcWords: ShapeWords<ArcCut> = {
  key: (c) => ['arc', c.face, c.along, ...c.over, c.rise].join('|'),
  print(group, f) {
    const c = group[0] as ArcCut;
    const d = datumOf(f, c.along);
    const [lo, hi] = spanFrom(f, d, c.over);
    const over = `${fig(f, lo)} to ${fig(f, hi)} from ${called(f, d)}`;
    return {
      name: 'Arc,',
      runs: [
        b('Arc,'),
        t(` ${called(f, c.face)}: ${over}; in the middle ${fig(f, c.rise)} into the wood, square through.`),
      ],
    };
  },
  parse(r) {
    const face = r.take('Arc,') ? r.face() : undefined;
    const over = face !== undefined && r.take(':') ? readSpan(r) : undefined;
    const rise = over && r.take('; in the middle') ? r.figure() : undefined;
    if (!over || rise === undefined || !r.take('into the wood, square through.')) return undefined;
    if (over.axis === faceAxis(face as Face)) return undefined;
    const span = (over.items[0] as { span: Span }).span;
    return [{ shape: 'arc', as: 'arc', face: face as Face, along: over.axis, over: span, rise, mates: [] }];
  },
};
