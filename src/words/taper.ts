import { faceAxis } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import type { TaperCut } from './cut.js';
import { called, coordinate, datumOf, distance } from './frame.js';
import { b, t } from './say.js';
import type { Bare, ShapeWords } from './say.js';
import { fig } from './span.js';

export const taperWords: ShapeWords<TaperCut> = {
  key: (c) => ['taper', c.end, c.begin, c.off].join('|'),
  print(group, f) {
    const c = group[0] as TaperCut;
    const from = datumOf(f, faceAxis(c.end));
    const faces = group.map((g) => called(f, g.face)).join(' and ');
    const each = group.length > 1 ? 'off each face' : 'off the face';
    const begin = `begin ${fig(f, distance(f, from, c.begin))} from ${called(f, from)}`;
    const text = ` ${faces}: ${begin}, straight to ${called(f, c.end)}; there ${fig(f, c.off)} ${each}.`;
    const name = group.length > 1 ? 'Tapers,' : 'Taper,';
    return { name, runs: [b(name), t(text)] };
  },
  parse(r) {
    if (r.oneOf(['Tapers,', 'Taper,']) === undefined) return undefined;
    const faces: Face[] = [];
    do {
      const face = r.face();
      if (face === undefined) return undefined;
      faces.push(face);
    } while (r.take('and'));
    const begin = r.take(': begin') ? r.figure() : undefined;
    const from = begin !== undefined && r.take('from') ? r.datum() : undefined;
    const end = from !== undefined && r.take(', straight to') ? r.face() : undefined;
    const off = end !== undefined && r.take('; there') ? r.figure() : undefined;
    if (off === undefined || r.oneOf(['off each face.', 'off the face.']) === undefined) return undefined;
    if (faceAxis(from as Face) !== faceAxis(end as Face)) return undefined;
    const at = coordinate(r.frame, from as Face, begin as number);
    return faces.map((face): Bare<TaperCut> => ({
      shape: 'taper',
      as: 'taper',
      face,
      end: end as Face,
      begin: at,
      off,
      mates: [],
    }));
  },
};
