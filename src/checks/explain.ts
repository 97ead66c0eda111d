import { CODES } from '../diag/codes.js';
import type { Units } from '../lengths/length.js';
import type { Piece } from '../piece/piece.js';
import { sayQuantity, type Quantity } from '../value/quantity.js';
import type { Input, Verdict } from './check.js';
import { sentenceOf, type Judged } from './fold.js';
import type { Checked } from './index.js';

/** Printed after a figure that was not read in its source. */
const FROM_MEMORY = ' *';
/** `sag-later of rail_1`: what is judged, of what. */
const OF = /^(\S+) of (.+)$/;

/**
 * How a judged figure came about, in lines. `id`: a check (`sag`), a code (`sag-later`), a part, joint or drawer by id or mark,
 * or one of one (`sag-later of rail_1`). A code and one of one are told in full; of the others what does not pass is, and
 * what passes in a line each. None where nothing judged is meant.
 */
export function explainJudged(checked: Checked, piece: Piece, id: string): string[] {
  const { units } = piece;
  const all = checked.checks.flatMap((c) => c.judged.map((j) => ({ check: c.key, j })));
  const both = OF.exec(id);
  const of = (what: string): Judged[] => all.filter((x) => x.check === what || x.j.code === what).map((x) => x.j);
  const touching = (list: readonly Judged[], thing: string): Judged[] => {
    const ids = namesOf(piece, thing);
    return list.filter((j) => j.subject === thing || j.touches.some((t) => ids.has(t)));
  };
  if (both) {
    const [, what = '', thing = ''] = both;
    const found = touching(of(what), thing);
    if (found.length > 0) return found.flatMap((j) => inFull(j, units));
    return known(all, what) ? [`"${what}" judges nothing of "${thing}" here.`] : [];
  }
  if (all.some((x) => x.j.code === id)) return of(id).flatMap((j) => inFull(j, units));
  if (Object.hasOwn(CODES, id))
    return [`${id}: ${CODES[id as keyof typeof CODES]}. Nothing in this piece is judged by it.`];
  const found = all.some((x) => x.check === id)
    ? of(id)
    : touching(
        all.map((x) => x.j),
        id,
      );
  if (found.length === 0)
    return checked.checks.some((c) => c.key === id) ? [`${id}: nothing in this piece is judged by it.`] : [];
  const brief = found.some((j) => j.verdict === 'pass');
  return [
    'judged:',
    ...found.flatMap((j) => (j.verdict === 'pass' ? [`  ${head(j, units)}`] : inFull(j, units).map((l) => `  ${l}`))),
    ...(brief
      ? [`in full: explain it as a code ("${found.find((j) => j.verdict === 'pass')?.code}"), or as "code of part"`]
      : []),
  ];
}

const known = (all: readonly { readonly check: string; readonly j: Judged }[], what: string): boolean =>
  Object.hasOwn(CODES, what) || all.some((x) => x.check === what);

/** Checks and codes that judge something here, for a hint. */
export const judgedNames = (checked: Checked): string[] => [
  ...new Set(checked.checks.flatMap((c) => (c.judged.length > 0 ? [c.key, ...c.judged.map((j) => j.code)] : []))),
];

/** Ids that are meant by an id or a mark: the part, the joint, all joints of an entry, the drawer. */
function namesOf({ parts, joints, drawers }: Piece, name: string): ReadonlySet<string> {
  return new Set([
    ...parts.filter((p) => p.id === name || p.mark === name).map((p) => p.id),
    ...joints.filter((j) => j.id === name || j.joint === name).map((j) => j.id),
    ...drawers.filter((d) => d.id === name || d.mark === name).map((d) => d.id),
  ]);
}

const WORD: Readonly<Record<Verdict, string>> = { pass: 'passes', note: 'is noted', warning: 'warns', fail: 'fails' };
const times = (margin: number): string => (margin >= 99 ? '99 times over and more' : `${margin.toFixed(2)} times over`);
/** `sag-later passes: S1 sags in the middle in years: .041, limit .068; 1.66 times over`. */
const head = (j: Judged, units: Units): string =>
  `${j.code} ${WORD[j.verdict]}: ${sentenceOf(j, units).replace(/\.$/, '')}${j.margin === undefined ? '' : `; ${times(j.margin)}`}`;

const withUnit = (q: Quantity, units: Units): string =>
  `${sayQuantity(q, units)}${q.of === 'length' || q.of === 'fine' ? ` ${units}` : ''}`;
const inputLine = (i: Input, units: Units): string =>
  `  ${i.name} = ${withUnit(i.quantity, units)}${i.source === undefined ? '' : ` (${i.source})`}${i.memory ? FROM_MEMORY : ''}`;

/** The figure and its limit, the rule, what went into it, where rule and limit come from, and what to do. */
function inFull(j: Judged, units: Units): string[] {
  const { worked, accepted } = j;
  const remembered = worked.inputs.some((i) => i.memory);
  return [
    head(j, units),
    `  rule: ${worked.rule}`,
    ...worked.inputs.map((i) => inputLine(i, units)),
    ...worked.sources.filter((s) => s !== '').map((s) => `  source: ${s}`),
    ...(j.remedy === undefined ? [] : [`  remedy: ${j.remedy}`]),
    ...(accepted ? [`  accepted by ${accepted.by} on ${accepted.on}: ${accepted.why}`] : []),
    ...(remembered ? ['  * not read in its source'] : []),
  ];
}
