import type { Judged } from '../../checks/fold.js';
import type { Units } from '../../lengths/length.js';
import { sayQuantity } from '../../value/quantity.js';
import { lead } from '../frame.js';
import type { Table } from '../picture.js';
import type { Run } from '../text.js';
import { SHOWN, type Shown } from '../verdicts.js';

/** A judgement that has a row, and how many of its kind it stands for. */
export interface ShownRow {
  readonly judged: Judged;
  readonly shown: Shown;
  readonly of: number;
}
export const shownAs = (j: Judged): Shown => (j.accepted ? 'accepted' : j.verdict);

/** At most so many kinds of what passes have a row. */
const FEW = 3;
/** What is wanting first, then what is to be noted; of what passes, the tightest of each code, the tightest few. */
export function rowsToShow(all: readonly Judged[]): { readonly rows: ShownRow[]; readonly others: ShownRow[] } {
  const tightness = (j: Judged): number => j.margin ?? Infinity;
  const wanting = SHOWN.slice(0, 4).flatMap((shown) =>
    all
      .filter((j) => shownAs(j) === shown)
      .sort((p, q) => tightness(p) - tightness(q))
      .map((judged) => ({ judged, shown, of: 1 })),
  );
  const passes = all.filter((j) => shownAs(j) === 'pass');
  const codes = [...new Set(passes.map((j) => j.code))];
  const tightest = codes.map((code): ShownRow => {
    const mine = passes.filter((j) => j.code === code).sort((p, q) => tightness(p) - tightness(q));
    return { judged: mine[0] as Judged, shown: 'pass', of: mine.length };
  });
  tightest.sort((p, q) => tightness(p.judged) - tightness(q.judged));
  return { rows: [...wanting, ...tightest.slice(0, FEW)], others: tightest.slice(FEW) };
}

/** A phrase that the title of the check, or the sheet, says already. */
const about = (j: Judged): string => j.about.replace(/ \(an estimate, not a test\)$/, '');
const onMemory = (j: Judged): boolean => j.worked.inputs.some((i) => i.memory === true);
const DAGGER = '†';

/** The rows as a table, each source by its number. */
export function checkTable(
  id: string,
  rows: readonly ShownRow[],
  numbers: ReadonlyMap<string, number>,
  units: Units,
): Table {
  return {
    id,
    columns: [
      { id: 'subject', label: 'What', align: 'left' },
      { id: 'about', label: 'Judged', align: 'left' },
      { id: 'figure', label: 'Figure', align: 'right' },
      { id: 'limit', label: 'Limit', align: 'right' },
      { id: 'margin', label: 'Margin', align: 'right' },
      { id: 'of', label: rows.some((r) => r.of > 1) ? 'Of' : '', align: 'right' },
      { id: 'source', label: 'Source', align: 'left' },
      { id: 'verdict', label: 'Verdict', align: 'left' },
      { id: 'remedy', label: 'Remedy', align: 'left' },
    ],
    rows: rows.map(({ judged: j, shown, of }) => [
      j.subject,
      about(j),
      `${sayQuantity(j.figure, units)}${onMemory(j) ? `\u00a0${DAGGER}` : ''}`,
      j.limit ? sayQuantity(j.limit, units) : '',
      j.margin === undefined ? '' : `${j.margin.toFixed(2)}\u00a0×`,
      of > 1 ? String(of) : '',
      j.worked.sources.map((s) => numbers.get(s) ?? '').join(',\u00a0'),
      shown,
      j.remedy ?? '',
    ]),
  };
}
/** Columns that are drawn; the verdict stands before the row and the remedy under it. */
export const DRAWN = ['subject', 'about', 'figure', 'limit', 'margin', 'of', 'source'] as const;

/** Their widths, mm: the same in every table, so that the eye runs down one column; what is judged takes the rest. */
export const WIDTHS: Readonly<Record<string, number>> = {
  subject: 40,
  figure: 23,
  limit: 20,
  margin: 15,
  of: 8,
  source: 20,
};

/** What is said under each row: who answers for it and why, or what is to be done; once for rows that say the same. */
export function saidUnder(rows: readonly ShownRow[]): (readonly Run[] | undefined)[] {
  const said = rows.map(underRow);
  const same = (i: number): boolean => JSON.stringify(said[i]) === JSON.stringify(said[i + 1]);
  return said.map((s, i) => (same(i) ? undefined : s));
}
function underRow({ judged: { accepted, remedy }, shown }: ShownRow): readonly Run[] | undefined {
  if (accepted) return lead(`Accepted by ${accepted.by} on ${accepted.on}:`, accepted.why);
  return remedy !== undefined && shown !== 'pass' ? lead('To do:', remedy) : undefined;
}

/** Every source of some rows by its number, in the order in which they are met. */
export const sourceNumbers = (rows: readonly ShownRow[]): ReadonlyMap<string, number> =>
  new Map([...new Set(rows.flatMap((r) => r.judged.worked.sources))].map((s, i) => [s, i + 1]));

/** What each source is by its number, and what the dagger stands for. */
export function sourcesSaid(rows: readonly ShownRow[]): { readonly sign: string; readonly text: string }[] {
  const recalled = new Map<string, string>();
  for (const i of rows.flatMap((r) => r.judged.worked.inputs))
    if (i.memory === true && ![...recalled.values()].includes(i.source ?? '')) recalled.set(i.name, i.source ?? '');
  const said = [...recalled].map(([name, source]) => (source === '' ? name : `${name} (${source})`)).join('; ');
  return [
    ...[...sourceNumbers(rows)].map(([text, n]) => ({ sign: String(n), text })),
    ...(said === '' ? [] : [{ sign: DAGGER, text: `rests on what was not read in its source: ${said}` }]),
  ];
}
