import type { Checked } from '../../checks/index.js';
import { counted } from '../../lengths/counted.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import type { Prepared } from '../input.js';
import { SAID, SHOWN, verdictMark } from '../verdicts.js';
import type { Shown } from '../verdicts.js';
import { revealStrips } from './checksReveals.js';
import { checkTable, DRAWN, WIDTHS, rowsToShow, saidUnder, shownAs, sourceNumbers, sourcesSaid } from './checksRows.js';
import { sagStrips, spansToDraw } from './checksSag.js';
import { casesToDraw, tipStrips } from './checksTipOver.js';
import type { ShownRow } from './checksRows.js';
import { label } from '../draw.js';
import { SIZE } from '../pens.js';
import type { Strip } from '../table.js';
import { blockDrop, setLines, widthOf, wrap } from '../text.js';
import { listSheet } from './listSheet.js';
import type { ListBlock } from './listSheet.js';

type OneCheck = Checked['checks'][number];

/** What was judged before wood is cut: figures against limits, with what to do where one is wanting. */
export const checks = listSheet({
  id: 'checks',
  title: 'Checks',
  head: (input) => [verdictsSaid(input), 'checks: estimates, not tests'],
  blocks: (input) => {
    const { checks: checked } = input;
    if (!checked || !checked.checks.some((c) => c.judged.length > 0)) return [];
    return [...summary(input, checked), ...withDrawings(input, checked), ...foot(input, checked)];
  },
});

const countOf = (checked: Checked | undefined, shown: Shown): number =>
  (checked?.checks ?? []).flatMap((c) => c.judged).filter((j) => shownAs(j) === shown).length;
/** `2 checks fail, 1 accepted, 3 to note, 88 pass`: the gravest first. */
function verdictsSaid({ checks: checked }: Prepared): string {
  const said = (shown: Shown, words: (n: number) => string): string[] => {
    const n = countOf(checked, shown);
    return n > 0 ? [words(n)] : [];
  };
  const fails = countOf(checked, 'fail');
  return [
    fails === 0 ? 'No check fails' : fails === 1 ? '1 check fails' : `${fails} checks fail`,
    ...said('warning', (n) => (n === 1 ? '1 warns' : `${n} warn`)),
    ...said('accepted', (n) => `${n} accepted`),
    ...said('note', (n) => `${n} to note`),
    ...said('pass', (n) => (n === 1 ? '1 passes' : `${n} pass`)),
  ].join(', ');
}

/** What came out, with the marks, and the moistures that all is reckoned from. */
function summary({ piece }: Prepared, checked: Checked): ListBlock[] {
  const shown = SHOWN.filter((s) => countOf(checked, s) > 0);
  const { season } = checked;
  const percent = (v: number): string => sayQuantity(quantity('moisture', v), piece.units);
  const { basis } = season;
  return [
    {
      id: 'verdicts',
      title: 'Verdicts',
      remark: 'the mark before each row',
      table: {
        id: 'verdicts',
        columns: [
          { id: 'verdict', label: 'Verdict', align: 'left' },
          { id: 'count', label: 'No.', align: 'right' },
        ],
        rows: shown.map((s) => [SAID[s], String(countOf(checked, s))]),
      },
      look: { marks: shown.map((s) => (x: number, y: number) => verdictMark(s, x, y)), strong: ['count'] },
      half: true,
    },
    {
      id: 'season',
      title: 'Moisture of the wood',
      ...(basis ? { remark: basis.room } : {}),
      table: {
        id: 'season',
        columns: [
          { id: 'when', label: 'When', align: 'left' },
          { id: 'moisture', label: 'Moisture', align: 'right' },
          { id: 'how', label: 'How it was had', align: 'left' },
        ],
        rows: [
          ['at making', percent(season.made), basis?.made ?? ''],
          ['driest', percent(season.driest), basis ? `${basis.source}${basis.memory ? ', from memory' : ''}` : ''],
          ['wettest', percent(season.wettest), basis ? 'the same' : ''],
        ],
      },
      look: { strong: ['moisture'] },
      half: true,
    },
  ];
}

/** Each check's rows, then what is drawn of it; drawings of half the width wait for another to stand beside. */
function withDrawings(input: Prepared, checked: Checked): ListBlock[] {
  const out: ListBlock[] = [];
  let waiting: ListBlock[] = [];
  const numbers = sourceNumbers(allRows(checked));
  for (const check of here(checked)) {
    out.push(...rowsBlock(input, check, numbers));
    for (const block of drawingsOf(input, check)) {
      if (block.half === true) waiting.push(block);
      else out.push(block);
    }
    if (waiting.length > 1) {
      out.push(...waiting);
      waiting = [];
    }
  }
  return [...out, ...waiting];
}

/** The delivery sheet has the rows of its own check. */
const here = (checked: Checked): Checked['checks'] => checked.checks.filter((c) => c.key !== 'delivery');
const allRows = (checked: Checked): readonly ShownRow[] => here(checked).flatMap((c) => rowsToShow(c.judged).rows);
function rowsBlock({ piece }: Prepared, check: OneCheck, numbers: ReadonlyMap<string, number>): ListBlock[] {
  const { rows, others } = rowsToShow(check.judged);
  if (rows.length === 0) return [];
  const condensed = rows.some((r) => r.of > 1);
  const [next] = others;
  const rest = next
    ? `; ${counted(others.length, 'kind')} more by ${(next.judged.margin ?? 99).toFixed(1)} × at least`
    : '';
  return [
    {
      id: `check-${check.key}`,
      title: check.title,
      remark: `${check.judged.length} judged${condensed ? '; of each kind that passes the tightest, Of as many' : ''}${rest}`,
      table: checkTable(`check-${check.key}`, rows, numbers, piece.units),
      look: {
        columns: DRAWN,
        widths: WIDTHS,
        strong: ['subject'],
        marks: rows.map((r) => (x: number, y: number) => verdictMark(r.shown, x, y)),
        under: saidUnder(rows),
        least: 4.9,
      },
    },
  ];
}

function drawingsOf(input: Prepared, check: OneCheck): ListBlock[] {
  const { faces, piece } = input;
  const { units } = piece;
  const block = (id: string, title: string, remark: string, strips: NonNullable<ListBlock['strips']>): ListBlock => ({
    id,
    title,
    remark,
    table: { id, columns: [], rows: [] },
    look: {},
    strips,
  });
  return check.diagrams.flatMap((d): ListBlock[] => {
    switch (d.kind) {
      case 'reveals':
        return [{ ...block('gaps-drawn', 'Gaps through the year', 'above and below each front', (w) => revealStrips(faces, d.rows, units, w)), half: true }]; // prettier-ignore
      case 'sag': {
        const few = spansToDraw(d.spans).length;
        if (few === 0) return [];
        const remark = few < d.spans.length ? 'the tightest, dashed the limit' : 'dashed the limit';
        return [{ ...block('sag-drawn', 'Sag, drawn larger', remark, (w) => sagStrips(faces, d.spans, units, w)), half: true }]; // prettier-ignore
      }
      case 'tip-over': {
        const drawers = piece.drawers.map((x) => x.mark);
        if (casesToDraw(d.cases).length === 0) return [];
        return [block('tip-drawn', 'Tipping over, from the side', 'the worst cases; front to the left', (w) => tipStrips(faces, d.cases, drawers, units, w))]; // prettier-ignore
      }
      case 'corridor':
        // Drawn on the delivery sheet.
        return [];
    }
  });
}

/** The sources by their numbers, in two columns. */
function foot({ faces }: Prepared, checked: Checked): ListBlock[] {
  const said = sourcesSaid(allRows(checked));
  const strip = ({ sign, text }: (typeof said)[number], width: number): Strip => {
    const lines = wrap(faces, text, width - SIGN, SIZE.text);
    return {
      height: blockDrop(lines) + 5.2,
      draw: (x, y) => [
        ...label(faces, sign, x, y + 3.9, { face: 'semibold' }),
        ...setLines(faces, lines, { x: x + SIGN, y: y + 3.9, size: SIZE.text }).items,
      ],
    };
  };
  const heights = said.map((s) => 1 + Math.ceil(widthOf(faces, s.text, SIZE.text) / 100));
  const cut = said.length > ONE_COLUMN ? halfway(heights) : said.length;
  const block = (some: typeof said, more: Partial<ListBlock>): ListBlock => ({
    id: 'sources',
    title: 'Sources',
    table: { id: 'sources', columns: [], rows: [] },
    look: {},
    strips: (w) => some.map((s) => strip(s, w)),
    half: true,
    ...more,
  });
  return [
    block(said.slice(0, cut), { remark: 'by the numbers in the tables' }),
    block(said.slice(cut), { title: 'Sources, continued' }),
  ].filter((_, k) => k === 0 || cut < said.length);
}
/** So many sources stand in one column. */
const ONE_COLUMN = 8;
/** Where the text of a source stands, mm from its number. */
const SIGN = 6;
/** How many of some heights make about the half of all, at least one. */
function halfway(heights: readonly number[]): number {
  const all = heights.reduce((a, b) => a + b, 0);
  let sum = 0;
  return (
    1 +
    Math.max(
      0,
      heights.findIndex((h) => (sum += h) * 2 >= all),
    )
  );
}
