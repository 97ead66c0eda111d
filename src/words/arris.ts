import { faceAxis, third } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import type { ArrisCut } from './cut.js';
import { called, clip, isFull } from './frame.js';
import type { Frame } from './frame.js';
import { b, t } from './say.js';
import type { Bare, ShapeWords } from './say.js';
import { fig, readSpan, saySpan } from './span.js';

const NAMES: Readonly<Record<ArrisCut['as'], string>> = {
  chamfer: 'Chamfer',
  'round-over': 'Round over',
  cove: 'Cove',
};
const runAxis = (c: ArrisCut): 0 | 1 | 2 => third(faceAxis(c.faces[0]), faceAxis(c.faces[1]));
const full = (f: Frame, c: ArrisCut): boolean => isFull(f, runAxis(c), c.over);

export const arrisWords: ShapeWords<ArrisCut> = {
  key(c, f) {
    const over = full(f, c) ? ['full'] : [runAxis(c), ...clip(f, runAxis(c), c.over)];
    return ['arris', c.as, c.size, ...over].join('|');
  },
  print(group, f) {
    const c = group[0] as ArrisCut;
    const which = group.map((g) => `${called(f, g.faces[0])} with ${called(f, g.faces[1])}`).join(' · ');
    const over = full(f, c) ? 'right along' : saySpan(f, runAxis(c), clip(f, runAxis(c), c.over));
    const word = group.length > 1 ? 'arrises' : 'arris';
    const name = `${NAMES[c.as]},`;
    return { name, runs: [b(name), t(` ${word} ${which}: ${fig(f, c.size)} from each; ${over}.`)] };
  },
  parse(r) {
    const as = (['chamfer', 'round-over', 'cove'] as const).find((k) => r.take(`${NAMES[k]},`));
    if (as === undefined || r.oneOf(['arrises', 'arris']) === undefined) return undefined;
    const pairs: [Face, Face][] = [];
    do {
      const p = r.face();
      const q = p !== undefined && r.take('with') ? r.face() : undefined;
      if (q === undefined || faceAxis(p as Face) === faceAxis(q)) return undefined;
      pairs.push([p as Face, q]);
    } while (r.take('·'));
    const size = r.take(':') ? r.figure() : undefined;
    if (size === undefined || !r.take('from each;')) return undefined;
    const over = r.take('right along') ? 'full' : readSpan(r);
    if (over === undefined || !r.take('.')) return undefined;
    return pairs.map((faces): Bare<ArrisCut> => {
      const axis = third(faceAxis(faces[0]), faceAxis(faces[1]));
      const span = over === 'full' ? r.frame.blank[axis] : (over.items[0] as { span: Span }).span;
      return { shape: 'arris', as, faces, size, over: span, mates: [] };
    });
  },
};
