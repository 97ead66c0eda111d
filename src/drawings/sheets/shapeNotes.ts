import type { Vec3 } from '../../geom/box.js';
import { faceAxis, faceSign } from '../../geom/axis.js';
import { byAxis } from '../../geom/box.js';
import { dot, place, turn } from '../../geom/placement.js';
import type { ArcCut } from '../../words/cut.js';
import { printed } from '../input.js';
import type { Prepared } from '../input.js';
import type { Standing } from '../model.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import { setText, widthOf } from '../text.js';
import type { View } from '../views.js';
import { onPaper } from '../views.js';

/** Radius of an arc by its chord and rise: (c²/4 + r²) / 2r; to the shop's step, since it is drawn, not measured. */
export function radiusOf(chord: number, rise: number, step: number): number {
  const exact = (chord * chord) / (8 * rise) + rise / 2;
  return Math.round(exact / step) * step;
}
/** Rise and radius of the arcs that are seen square on, in the air beside the edge that they are cut into. */
export const shapeNotes = (input: Prepared, view: View): Item[] =>
  input.model.case.flatMap((s) =>
    s.part.cuts.flatMap((c): Item[] => (c.shape === 'arc' ? noteOf(input, view, s, c) : [])),
  );
function noteOf(input: Prepared, view: View, s: Standing, c: ArcCut): Item[] {
  const { part } = s;
  const axis = faceAxis(c.face);
  const unit = (a: number, sign: number): Vec3 => byAxis((i) => (i === a ? sign : 0));
  const out = turn(part.place, unit(axis, faceSign(c.face)));
  const along = turn(part.place, unit(c.along, 1));
  const { right, up } = view.direction;
  // Seen square on: the chord lies across, and the edge is a lower or upper one.
  if (Math.abs(dot(along, right)) < 0.99 || Math.abs(dot(out, up)) < 0.99) return [];
  const face = faceSign(c.face) > 0 ? part.size[axis].value : 0;
  const middle = byAxis((i) =>
    i === c.along ? (c.over[0] + c.over[1]) / 2 : i === axis ? face : part.size[i].value / 2,
  ) as Vec3;
  const [x, y] = onPaper(view, place(part.place, middle));
  const radius = radiusOf(c.over[1] - c.over[0], c.rise, input.piece.step);
  const words = `rise ${printed(input, c.rise)}, radius ${printed(input, radius)}`;
  const chord = (c.over[1] - c.over[0]) / 1e6 / view.oneTo;
  if (widthOf(input.faces, words, SIZE.text) > chord - 6) return [];
  // Under the crown of a lower edge, over that of an upper one.
  const rise = c.rise / 1e6 / view.oneTo;
  const base = dot(out, up) < 0 ? y - rise + 5.4 : y + rise - 2.6;
  return [...setText(input.faces, words, { x, y: base, size: SIZE.text, anchor: 'middle' }).items];
}
