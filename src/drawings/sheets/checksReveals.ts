import type { RevealRow } from '../../checks/check.js';
import { toMm, nm } from '../../lengths/length.js';
import type { Units } from '../../lengths/length.js';
import type { Faces } from '../../type/type.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { label, line, rect } from '../draw.js';
import type { Item } from '../picture.js';
import { SIZE } from '../pens.js';
import type { Strip } from '../table.js';
import { setText, widthOf } from '../text.js';

/** How many times as large as life gaps are drawn. */
const TIMES = [100, 50, 40, 30, 25, 20, 15, 10, 8, 5, 4, 3, 2, 1] as const;
const ROW = 5.4;
const NAME = 20;
const FIGURES = 27;

/**
 * Each gap as a bar from the edge of the front, all to one scale: white is open all the year, grey comes and goes with the
 * season, the tick is as made, the chain line the least that is wanted.
 */
export function revealStrips(faces: Faces, rows: readonly RevealRow[], units: Units, width: number): Strip[] {
  const most = Math.max(...rows.flatMap((r) => [r.made, r.driest, r.wettest, r.least]).map((v) => toMm(nm(v))));
  const times = TIMES.find((n) => most * n <= width - NAME - FIGURES) ?? 1;
  return [
    { height: 6.6, draw: (x, y) => legend(faces, times, rows, units, x, y) },
    ...rows.map((r): Strip => ({ height: ROW, draw: (x, y) => bar(faces, r, times, units, x, y, width) })),
  ];
}
function legend(faces: Faces, times: number, rows: readonly RevealRow[], units: Units, x: number, y: number): Item[] {
  const base = y + 4;
  const least = [...new Set(rows.map((r) => sayQuantity(quantity('length', r.least), units)))];
  const out: Item[] = [];
  let at = x;
  const put = (mark: readonly Item[], room: number, words: string): void => {
    out.push(...mark, ...setText(faces, words, { x: at + room, y: base, size: SIZE.text }).items);
    at += room + widthOf(faces, words, SIZE.text) + 4;
  };
  put([], 0, `× ${times}`);
  put(rect('N', at, base - 2.7, 4, 3, 'white'), 5.2, 'always');
  put(rect('N', at, base - 2.7, 4, 3, 'grey'), 5.2, 'when dry');
  put(line('W', at + 1, base - 3, at + 1, base + 0.6), 2.6, 'as made');
  if (least.length === 1) put(line('plane', at + 1, base - 3.4, at + 1, base + 1), 2.6, `least ${least[0] as string}`);
  return out;
}
function bar(faces: Faces, r: RevealRow, times: number, units: Units, x: number, y: number, width: number): Item[] {
  const zero = x + NAME;
  const at = (v: number): number => zero + Math.max(0, toMm(nm(v))) * times;
  const [low, high] = [Math.min(r.driest, r.wettest), Math.max(r.driest, r.wettest)];
  const [top, h] = [y + 1.2, ROW - 2.4];
  const said = (v: number): string => sayQuantity(quantity('fine', v), units);
  return [
    ...label(faces, r.subject, x, y + 3.9, { face: 'semibold' }),
    ...label(faces, r.where, x + 9.5, y + 3.9),
    ...(at(low) > zero ? rect('N', zero, top, at(low) - zero, h, 'white') : []),
    ...(at(high) > at(low) ? rect('N', at(low), top, at(high) - at(low), h, 'grey') : []),
    ...line('W', zero, y, zero, y + ROW),
    ...line('W', at(r.made), top - 0.7, at(r.made), top + h + 0.7),
    ...line('plane', at(r.least), y, at(r.least), y + ROW),
    ...setText(faces, `${said(low)} to ${said(high)}`, {
      x: x + width,
      y: y + 3.9,
      size: SIZE.text,
      anchor: 'end',
      ...(low < r.least ? { face: 'semibold' as const } : {}),
    }).items,
  ];
}
