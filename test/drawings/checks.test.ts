import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SagSpan } from '../../src/checks/check.js';
import { drawSheets } from '../../src/drawings/index.js';
import type { DrawInput } from '../../src/drawings/index.js';
import type { FillItem, Item, Sheet, StrokeItem } from '../../src/drawings/picture.js';
import { corridorStrips } from '../../src/drawings/sheets/checksCorridor.js';
import { revealStrips } from '../../src/drawings/sheets/checksReveals.js';
import { rowsToShow } from '../../src/drawings/sheets/checksRows.js';
import { sagStrips, spansToDraw } from '../../src/drawings/sheets/checksSag.js';
import { tipStrips } from '../../src/drawings/sheets/checksTipOver.js';
import type { Strip } from '../../src/drawings/table.js';
import { SHOWN, verdictMark } from '../../src/drawings/verdicts.js';
import { loadFaces } from '../../src/io/fonts.js';
import { inches } from '../../src/lengths/length.js';
import { chestFixture } from './fixture.js';
import { CHECKED, FAILS } from './judged.js';
import { boxOf, clashes, flat, said, texts } from './laid.js';

let input: DrawInput;
let sheets: Sheet[];
const faces = loadFaces();
beforeAll(async () => {
  const finding = { code: FAILS.code, path: [], message: 'S1 sags: .3, limit .12.', touches: FAILS.touches };
  input = {
    ...(await chestFixture()),
    faces,
    hash: '7f3c91',
    findings: [{ ...finding, severity: 'fail' }],
    checks: CHECKED,
    ...(CHECKED.stamp ? { stamp: CHECKED.stamp } : {}),
  };
  sheets = drawSheets(input);
}, 60_000);
afterAll(() => input.kernel.dispose());
const of = (id: string): Sheet[] => sheets.filter((s) => s.id === id || s.id.startsWith(`${id}-`));
const words = (id: string): string => of(id).map(said).join(' ');

describe('sheets of a piece with something of every verdict', () => {
  it('keep their words apart and on the paper, inside the frame but for the stamp over it', () => {
    for (const sheet of [...of('checks'), ...of('delivery'), ...of('cover')]) {
      expect(clashes(faces, sheet), sheet.id).toEqual([]);
      for (const t of texts(sheet)) {
        const b = boxOf(faces, t);
        const stamp = t.tone === 'white' && t.y < 10.45;
        const top = stamp ? 4.2 : 10.45;
        expect(b.x >= 18.4 && b.x + b.w <= 268.4 && b.y >= top && b.y + b.h <= 205.45, `${sheet.id}: ${t.string}`).toBe(true); // prettier-ignore
      }
    }
  });
  it('stamps every sheet and every card with what fails', () => {
    for (const sheet of sheets) expect(said(sheet), sheet.id).toContain('NOT FOR WORKSHOP');
    // Two half cards on a sheet are cut apart: each has its own.
    const halves = sheets.find((s) => s.id.includes('_'));
    expect(said(halves as Sheet).match(/NOT FOR WORKSHOP/g)).toHaveLength(2);
    const plain = drawSheets({ ...input, checks: { ...CHECKED }, findings: [], stamp: undefined as never });
    expect(plain.some((s) => said(s).includes('WORKSHOP'))).toBe(false);
  });
  it('counts them in the headline: 2 fail, 1 warns, 1 is accepted, 2 to note, 6 pass', () => {
    expect(words('checks')).toContain('2 checks fail, 1 warns, 1 accepted, 2 to note, 6 pass');
  });
  it('says what to do, who accepted what and why, and what was not read in its source', () => {
    const all = words('checks');
    expect(all).toContain('To do: Make it 1 3/8 thick.');
    expect(all).toContain('Accepted by A. Sample on 2027-02-01: screwed to the wall of the alcove');
    expect(all).toContain('.06 †');
    expect(all).toContain('† rests on what was not read in its source: change of A8 (a table)');
  });
  it('prints a fail and a caution on the cards that they touch and on no other', () => {
    const cards = sheets.filter((s) => s.folder === 'cards');
    const touched = cards.filter((s) => said(s).includes('S1 sags: .3, limit .12.'));
    expect(touched.map((s) => s.title)).toEqual([expect.stringMatching(/^Cards? A1/)]);
    expect(cards.filter((s) => said(s).includes('Small at a machine.'))).toEqual(touched);
  });
  it('prints every caution of the cover whole, however long, in their order', () => {
    const all = words('cover');
    for (const c of CHECKED.cautions.filter((k) => k.on.includes('cover'))) expect(all).toContain(c.text);
    expect(all.indexOf('Check every figure.')).toBeLessThan(all.indexOf('The last word.'));
  });
  it('delivery: every way with how the load is held, who carries, and boxes', () => {
    const all = words('delivery');
    expect(all).toContain('It does not get through: 1 way too small');
    for (const text of ['through front door, upright, end first', 'two people', 'The last word.', '88.2 lb'])
      expect(all).toContain(text);
  });
  it('without delivery and light enough for one there is no such sheet', () => {
    const light = CHECKED.checks.filter((c) => c.key !== 'delivery' && c.key !== 'weight');
    const plain = drawSheets({ ...input, checks: { ...CHECKED, checks: light } });
    expect(plain.some((s) => s.id.startsWith('delivery'))).toBe(false);
  });
});

describe('rows', () => {
  it('show all that is wanting, the gravest first, and of what passes the tightest of its kind', () => {
    const rows = rowsToShow(CHECKED.checks.flatMap((c) => c.judged)).rows;
    expect(rows.map((r) => r.shown)).toEqual(['fail', 'fail', 'warning', 'accepted', 'note', 'note', 'pass', 'pass']);
    const gap = rows.find((r) => r.judged.code === 'front-binds');
    expect([gap?.judged.subject, gap?.of]).toEqual(['D3', 5]);
  });
  it('have marks of different forms, at most 4 square', () => {
    const forms = SHOWN.map((s) => JSON.stringify(verdictMark(s, 0, 0)));
    expect(new Set(forms).size).toBe(SHOWN.length);
    for (const s of SHOWN)
      for (const [, x, y] of points(verdictMark(s, 0, 0)))
        expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThan(2.05);
  });
});

/** Ends of all lines of a picture, with its pen or tone. */
function points(items: readonly Item[]): [string, number, number][] {
  return flat(items).flatMap(
    (i) =>
    i.kind === 'text' ? [] : i.d.flatMap((s): [string, number, number][] => (s[0] === 'Z' ? [] : [[i.kind === 'stroke' ? i.pen : i.tone, s.at(-2) as number, s.at(-1) as number]])), // prettier-ignore
  );
}
const drawn = (strips: readonly Strip[]): Item[] => strips.flatMap((s) => [...s.draw(0, 0)]);
const strokes = (items: readonly Item[], pen: string): StrokeItem[] =>
  flat(items).filter((i): i is StrokeItem => i.kind === 'stroke' && i.pen === pen);
const fills = (items: readonly Item[], tone: string): FillItem[] =>
  flat(items).filter((i): i is FillItem => i.kind === 'fill' && i.tone === tone && i.figure !== true);
const widths = (f: FillItem | StrokeItem): number => {
  const xs = points([f]).map((p) => p[1]);
  return Math.max(...xs) - Math.min(...xs);
};

describe('drawings of checks', () => {
  it('gaps are to scale: of 1/20 in at the wettest and 1/10 at the driest half is white and half grey', () => {
    const row = { subject: 'D1', where: 'above', made: inches(1 / 16), driest: inches(0.1), wettest: inches(0.05), least: inches(1 / 32) }; // prettier-ignore
    const [legend, bar] = revealStrips(faces, [row], 'in', 112);
    const times = Number(/× (\d+)/.exec(words2(legend as Strip))?.[1]);
    const items = [...(bar as Strip).draw(0, 0)];
    expect(widths(fills(items, 'white')[0] as FillItem)).toBeCloseTo(0.05 * 25.4 * times, 2);
    expect(widths(fills(items, 'grey')[0] as FillItem)).toBeCloseTo(0.05 * 25.4 * times, 2);
  });
  it('a sag of its limit touches the limit line, one of half of it goes half as deep', () => {
    const span = (later: number): SagSpan => ({ subject: 'S1', span: inches(30), sag: 0, later, limit: 1000, supports: 'fixed' }); // prettier-ignore
    const depth = (later: number): number => {
      const items = drawn(sagStrips(faces, [span(later)], 'in', 112));
      const ys = strokes(items, 'W').flatMap((s) =>
        s.d.some((k) => k[0] === 'C') ? points([s]).map((p) => p[2]) : [],
      );
      return Math.max(...ys) - Math.min(...ys);
    };
    const items = drawn(sagStrips(faces, [span(1000)], 'in', 112));
    const [limit, level] = [strokes(items, 'hidden'), strokes(items, 'centre')].map((s) => points(s)[0]?.[2] as number);
    expect(depth(1000)).toBeCloseTo((limit as number) - (level as number), 3);
    expect(depth(500)).toBeCloseTo(depth(1000) / 2, 3);
  });
  it('spans with plenty in hand are not drawn, equal ones once', () => {
    const span = (subject: string, later: number): SagSpan => ({ subject, span: 1, sag: 0, later, limit: 100, supports: 'rests' }); // prettier-ignore
    expect(spansToDraw([span('S1', 90), span('S2', 90), span('S3', 10)]).map((d) => d.subjects)).toEqual([
      ['S1', 'S2'],
    ]);
  });
  it('moments are bars of one scale: 180 tips twice as long as 90 holds', () => {
    const cases = CHECKED.checks.flatMap((c) => c.diagrams.flatMap((d) => (d.kind === 'tip-over' ? d.cases : [])));
    const items = drawn(tipStrips(faces, cases, ['D1'], 'in', 236));
    const bars = [...fills(items, 'white'), ...fills(items, 'black')].filter((f) => points([f]).length === 4);
    const [holds, tips] = bars.filter((f) => Math.min(...points([f]).map((p) => p[1])) === 12).map(widths);
    expect((tips as number) / (holds as number)).toBeCloseTo(2, 2);
  });
  it('the longest thing without width that goes round a corner lies over its inner corner, and on both walls', () => {
    // L = (a^(2/3) + b^(2/3))^(3/2) at an angle whose tangent is (a / b)^(1/3): the ladder problem of the textbooks.
    const [a, b] = [36, 27];
    const long = Math.sqrt((a ** (2 / 3) + b ** (2 / 3)) ** 3);
    const turn = (Math.atan((a / b) ** (1 / 3)) * 180) / Math.PI;
    const pass = { name: 'hall', kind: 'corner', clear: [inches(a), inches(b)], piece: [1, 1, 1], plan: [inches(long), 0], turn, passes: true } as const; // prettier-ignore
    const items = drawn(corridorStrips(faces, [pass], 'in', 236));
    const [outer, inner] = strokes(items, 'W')
      .slice(-2)
      .map((s) => points([s]));
    const ends = points(strokes(items, 'D').slice(-1));
    const [p, q] = [ends[0], ends[1]] as [string, number, number][];
    const corner = inner?.[1] as [string, number, number];
    const far = Math.abs(((q?.[2] ?? 0) - (p?.[2] ?? 0)) * corner[1] - ((q?.[1] ?? 0) - (p?.[1] ?? 0)) * corner[2] + (q?.[1] ?? 0) * (p?.[2] ?? 0) - (q?.[2] ?? 0) * (p?.[1] ?? 0)); // prettier-ignore
    expect(far / Math.hypot((q?.[2] ?? 0) - (p?.[2] ?? 0), (q?.[1] ?? 0) - (p?.[1] ?? 0))).toBeLessThan(0.02);
    expect(p?.[2]).toBeCloseTo(outer?.[1]?.[2] as number, 2);
    expect(q?.[1]).toBeCloseTo(outer?.[1]?.[1] as number, 2);
  });
});
const words2 = (strip: Strip): string =>
  flat(strip.draw(0, 0))
    .flatMap((i) => (i.kind === 'text' ? [i.string.trim()] : []))
    .join(' ');
