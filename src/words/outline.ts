import { faceAxis, inFace } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import type { Outline, Stretch } from '../geom/recipe.js';
import type { OutlineCut } from './cut.js';
import { called, coordinate, datumOf, distance } from './frame.js';
import { b, t } from './say.js';
import type { ShapeWords } from './say.js';
import { fig } from './span.js';

/** Bulge (tan of a quarter of the arc) with its sign as the outline is followed; seven digits keep a 2 m arc within 0.001 mm. */
const bulgeText = (bulge: number): string =>
  (Math.round(bulge * 1e7) / 1e7).toFixed(7).replace(/0+$/, '').replace(/\.$/, '');

export const outlineWords: ShapeWords<OutlineCut> = {
  key: (c) => `outline|${c.face}|${JSON.stringify(c.keep)}`,
  print(group, f) {
    const c = group[0] as OutlineCut;
    const [p, q] = inFace(c.face);
    const [dp, dq] = [datumOf(f, p), datumOf(f, q)];
    const points = c.keep.map((s) => {
      const at = `${fig(f, distance(f, dp, s.to[0]))} and ${fig(f, distance(f, dq, s.to[1]))}`;
      return s.bulge ? `arc ${bulgeText(s.bulge)} to ${at}` : at;
    });
    const lead = ` ${called(f, c.face)}, square through; points from ${called(f, dp)} and from ${called(f, dq)}: `;
    return { name: 'Outline,', runs: [b('Outline,'), t(`${lead}${points.join(' · ')}.`)] };
  },
  parse(r) {
    const face = r.take('Outline,') ? r.face() : undefined;
    const p = face !== undefined && r.take(', square through; points from') ? r.datum() : undefined;
    const q = p !== undefined && r.take('and from') ? r.datum() : undefined;
    if (q === undefined || !r.take(':') || faceAxis(p as Face) === faceAxis(q)) return undefined;
    const keep: Stretch[] = [];
    do {
      const bulge = r.take('arc') ? r.number() : 0;
      if (bulge === undefined || (bulge !== 0 && !r.take('to'))) return undefined;
      const x = r.figure();
      const y = x !== undefined && r.take('and') ? r.figure() : undefined;
      if (y === undefined) return undefined;
      const u = coordinate(r.frame, p as Face, x as number);
      const v = coordinate(r.frame, q, y);
      const to = faceAxis(p as Face) < faceAxis(q) ? ([u, v] as const) : ([v, u] as const);
      keep.push(bulge === 0 ? { to } : { to, bulge });
    } while (r.take('·'));
    const outline: Outline = keep;
    return r.take('.')
      ? [{ shape: 'outline', as: 'outline', face: face as Face, keep: outline, mates: [] }]
      : undefined;
  },
};
