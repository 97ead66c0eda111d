import type { SagSpan } from '../../checks/check.js';
import { formatLength } from '../../lengths/format.js';
import { nm } from '../../lengths/length.js';
import type { Units } from '../../lengths/length.js';
import type { Faces } from '../../type/type.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { area, line, stroke } from '../draw.js';
import type { Item, Path, Pen, Seg } from '../picture.js';
import { SIZE } from '../pens.js';
import type { Strip } from '../table.js';
import { round3, setText } from '../text.js';

/** Depth on paper of the limit, mm: every span is drawn to it, so that all are judged by one eye. */
const LIMIT = 6;
/** A sag is drawn to at most so many times its limit. */
const MOST = 1.45;
const HIGH = 25.5;
/** At most so many spans are drawn. */
const FEW = 4;

/** A span with so many times its sag in hand need not be seen. */
const PLAIN = 5;
/** Spans that differ only in their subject as one; the tightest few, tightest first. */
export function spansToDraw(spans: readonly SagSpan[]): { subjects: string[]; span: SagSpan }[] {
  const out = new Map<string, { subjects: string[]; span: SagSpan }>();
  for (const span of spans) {
    const { subject, ...rest } = span;
    const key = JSON.stringify(rest);
    const known = out.get(key);
    if (known) known.subjects.push(subject);
    else out.set(key, { subjects: [subject], span });
  }
  const tight = (s: SagSpan): number => s.limit / Math.max(1, s.later);
  return [...out.values()]
    .filter((d) => tight(d.span) < PLAIN)
    .sort((p, q) => tight(p.span) - tight(q.span))
    .slice(0, FEW);
}

/** Two spans a strip: the beam with its sag at first and in years, its limit line, and how it is held; sag stretched. */
export function sagStrips(faces: Faces, spans: readonly SagSpan[], units: Units, width: number): Strip[] {
  const drawn = spansToDraw(spans);
  const half = (width - 6) / 2;
  return Array.from({ length: Math.ceil(drawn.length / 2) }, (_, i): Strip => ({
    height: HIGH,
    draw: (x, y) => drawn.slice(2 * i, 2 * i + 2).flatMap((d, k) => cell(faces, d, units, x + k * (half + 6), y, half)),
  }));
}
function cell(
  faces: Faces,
  { subjects, span: s }: { subjects: readonly string[]; span: SagSpan },
  units: Units,
  x: number,
  y: number,
  width: number,
): Item[] {
  const fine = (v: number): string => sayQuantity(quantity('fine', v), units);
  const step = (v: number): string => formatLength(nm(v), units);
  const [left, right, base] = [x + 4, x + width - 4, y + 9.5];
  const depth = (v: number): number => base + Math.min(MOST, v / s.limit) * LIMIT;
  const most = s.supports === 'one end' ? 'at its end' : 'in the middle';
  const name = subjects.length > 2 ? `${subjects[0] as string} and ${subjects.length - 1} like it` : subjects.join(' ');
  return [
    ...setText(faces, [{ string: name, face: 'semibold' }, { string: ` spans ${step(s.span)}` }], { x, y: y + 4.6, size: SIZE.text }).items, // prettier-ignore
    ...line('centre', left, base, right, base),
    ...line('hidden', left, base + LIMIT, right, base + LIMIT),
    ...bent(s, 'N', left, right, base, depth(s.sag)),
    ...bent(s, 'W', left, right, base, depth(s.later)),
    ...supports(s, left, right, base),
    ...setText(faces, [{ string: fine(s.later), face: 'semibold' }, { string: ` ${most} in years, limit ${fine(s.limit)}` }], { x, y: y + HIGH - 3.2, size: SIZE.text }).items, // prettier-ignore
  ];
}
/** The line of a beam that goes down to `low`: held level where it is fixed. */
function bent(s: SagSpan, pen: Pen, left: number, right: number, base: number, low: number): Item[] {
  const l = right - left;
  const c = (x1: number, y1: number, x2: number, y2: number, x: number, y: number): Seg => [
    'C',
    ...([x1, y1, x2, y2, x, y].map(round3) as [number, number, number, number, number, number]),
  ];
  const start: Seg = ['M', round3(left), round3(base)];
  const third = base + (4 / 3) * (low - base);
  const mid = (left + right) / 2;
  const d: Path =
    s.supports === 'rests'
      ? [start, c(left + l / 3, third, right - l / 3, third, right, base)]
      : s.supports === 'fixed'
        ? [
            start,
            c(left + l / 4, base, mid - l / 4, low, mid, low),
            c(mid + l / 4, low, right - l / 4, base, right, base),
          ]
        : [start, c(left + l / 3, base, left + (2 * l) / 3, base + 0.55 * (low - base), right, low)];
  return [stroke(pen, d)];
}
/** A wedge under an end that rests, a hatched wall at one that is held. */
function supports(s: SagSpan, left: number, right: number, base: number): Item[] {
  const wedge = (x: number): Item[] => area('white', [[x, base], [x + 1.5, base + 2.6], [x - 1.5, base + 2.6]], 'N'); // prettier-ignore
  const wall = (x: number, out: 1 | -1): Item[] => [
    ...line('W', x, base - 2.5, x, base + 2.5),
    ...[-2, -0.5, 1].flatMap((k) => line('H', x, base + k, x + out * 1.5, base + k + 1.5)),
  ];
  if (s.supports === 'rests') return [...wedge(left), ...wedge(right)];
  return s.supports === 'fixed' ? [...wall(left, -1), ...wall(right, 1)] : wall(left, -1);
}
