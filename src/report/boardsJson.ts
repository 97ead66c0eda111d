import type { Board } from '../layout/boards/board.js';
import { formatLength } from '../lengths/format.js';
import { NM_PER_IN, type Units } from '../lengths/length.js';

/** A boards file as it is read by `--boards`: lengths exact, as fractions of an inch where they are on the rule. */
export function boardsJson(boards: readonly Board[], units: Units): string {
  const entries = boards.map((b) => [b.id, boardEntry(b, units)] as const);
  return `${JSON.stringify({ format: 1, units, boards: Object.fromEntries(entries) }, null, 1)}\n`;
}

const RULE = NM_PER_IN / 64;
/** On the rule the fraction; else millimetres to the nanometre, which any file can hold. */
const exact = (v: number, units: Units): string =>
  units === 'in' && v % RULE === 0 ? formatLength(v, 'in') : `${(v / 1e6).toFixed(6).replace(/\.?0+$/, '')}mm`;

function boardEntry(b: Board, units: Units): Record<string, unknown> {
  const say = (v: number): string => exact(v, units);
  const some = (key: 'crook' | 'bow' | 'cup'): Record<string, string> => (b[key] ? { [key]: say(b[key]) } : {});
  return {
    species: b.wood,
    quarter: b.quarter,
    thickness: say(b.thickness),
    width: b.width[0] === b.width[1] ? say(b.width[0]) : b.width.map(say),
    length: say(b.length),
    ...(b.cut === undefined ? {} : { cut: b.cut }),
    ...(b.moisture === undefined ? {} : { moisture: b.moisture }),
    ...(b.price === undefined ? {} : { price: b.price }),
    ...(b.group === undefined ? {} : { group: b.group }),
    ...some('crook'),
    ...some('bow'),
    ...some('cup'),
    ...(b.defects.length === 0
      ? {}
      : {
          defects: b.defects.map(({ kind, face, at: [x0, y0, x1, y1] }) => ({
            kind,
            face,
            from: [say(x0), say(y0)],
            to: [say(x1), say(y1)],
          })),
        }),
  };
}
