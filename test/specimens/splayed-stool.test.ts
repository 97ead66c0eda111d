import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tangent } from '../../src/geom/angle.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import { toIn } from '../../src/lengths/length.js';
import { cardSheets } from '../../src/drawings/cards/index.js';
import { loadFaces } from '../../src/io/fonts.js';
import { proveCards } from '../../src/proof/proveCards.js';
import { writePdf } from '../../src/report/pdf.js';
import { makeSolids } from '../../src/solids/make.js';
import { parseCallout, sayCuts } from '../../src/words/callout.js';
import { frameOf } from '../../src/words/frame.js';
import type { BoxCut, Cut, TenonCut } from '../../src/words/cut.js';
import { byMark, pieceOf } from './pieces.js';

/** Legs that splay 8 degrees seen from the front and 6 from the side, tenoned into the seat; stretchers tenoned into the legs. */
const stool = pieceOf(
  readFileSync(new URL('small/splayed-stool.jsonc', import.meta.url), 'utf8'),
  'splayed-stool.jsonc',
);
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());
const tenons = (mark: string): TenonCut[] => byMark(stool, mark).cuts.filter((c) => c.shape === 'tenon');
const mortises = (mark: string): BoxCut[] => byMark(stool, mark).cuts.filter((c) => c.shape === 'box');

describe('splayed stool', () => {
  it('nothing stands in anything else, and every tenon is in its mortise', () => {
    const made = makeSolids(stool, kernel);
    expect(made.findings).toEqual([]);
    expect(stool.joints.map((j) => j.kind)).toEqual(Array.from({ length: 12 }, () => 'mortise-and-tenon'));
  });
  it('a tenon runs along its rail: as long from the shoulder as asked, the blank longer than its over-all by that', () => {
    for (const mark of ['R1', 'R2', 'R3', 'R4']) {
      const ends = tenons(mark);
      expect(ends.map((t) => t.tongues.map((x) => toIn(x.length)))).toEqual([[0.75], [0.75]]);
      expect(byMark(stool, mark).cuts.filter((c) => c.shape === 'plane')).toEqual([]);
    }
  });
  it('shoulders of the front rail slope as the legs do: the face of a leg leans 8 degrees over the width of the rail', () => {
    // The leg's axis goes as (tan 8, tan 6, 1); its right face is square to (1, 0, 0) less its part along that axis:
    // (1 + tan2 6, - tan 8 tan 6, - tan 8). Over the width (up) it slopes tan 8 / (1 + tan2 6), over the thickness
    // (deep) tan 8 tan 6 / (1 + tan2 6): .13901 and .01461.
    const [t8, t6] = [tangent(8), tangent(6)];
    const [up, deep] = [t8 / (1 + t6 ** 2), (t8 * t6) / (1 + t6 ** 2)];
    expect([up, deep].map((x) => x.toFixed(5))).toEqual(['0.13901', '0.01461']);
    for (const t of tenons('R1')) {
      const slope = t.slope as NonNullable<typeof t.slope>;
      expect(Math.abs(slope[2] / slope[0])).toBeCloseTo(up, 7);
      expect(Math.abs(slope[1] / slope[0])).toBeCloseTo(deep, 7);
    }
    expect(tenons('R1')[0]?.notes).toEqual(['Bevel gauge 7.9° over the width, 0.8° over the thickness']);
  });
  it('a mortise in a leg leans by the resultant of its face and the rail', () => {
    // The rail goes straight across; it leaves the face's normal by acos(N . x), N as above made a unit:
    // N . x = sqrt((1 + t6^2) / (1 + t6^2 + t8^2)) = .99056, so 7.879 degrees; the floor, 7/8 in, moves 7/8 tan 7.879 = .1211.
    const m = mortises('L1').find((c) => c.from === 'fronts') as BoxCut;
    expect([m.face, toIn(m.at[0][1] - m.at[0][0])]).toEqual(['right', 0.875]);
    const floor = (m.slants ?? []).filter((s) => s.of === 'left');
    expect(floor.map((s) => s.toward)).toEqual(['bottom']);
    expect(toIn(floor[0]?.by ?? 0)).toBeCloseTo(0.875 * (tangent(8) / Math.sqrt(1 + tangent(6) ** 2)), 4);
  });
  it('each part rebuilt from its card is the part', async () => {
    const faces = loadFaces();
    const solids = makeSolids(stool, kernel).value as NonNullable<ReturnType<typeof makeSolids>['value']>;
    const sheets = cardSheets({ piece: stool, solids, faces });
    const pdf = await writePdf(sheets, { faces, title: 'stool', date: '2027-02-01', hash: 'abc' });
    expect(proveCards(pdf, stool, solids, kernel).map((f) => `${f.code} ${f.message}`)).toEqual([]);
    // The same cards against a stool one of whose mortises leans 1 mm more, and one with a shoulder a degree steeper.
    const wrong = (change: (c: Cut) => Cut) => {
      const parts = stool.parts.map((p) => (p.mark === 'L1' || p.mark === 'R1' ? { ...p, cuts: p.cuts.map(change) } : p));
      const piece = { ...stool, parts };
      const made = makeSolids(piece, kernel).value ?? solids;
      return proveCards(pdf, piece, made, kernel).map((f) => `${f.code} ${f.touches?.[0]}`);
    };
    const more = (c: Cut): Cut =>
      c.shape === 'box' ? { ...c, slants: (c.slants ?? []).map((x) => ({ ...x, by: x.by + 1_000_000 })) } : c;
    expect(wrong(more)).toContain('proof-card-cuts leg_fl');
    const steeper = (c: Cut): Cut =>
      c.shape === 'tenon' && c.slope ? { ...c, slope: [c.slope[0], c.slope[1], c.slope[2] + Math.sign(c.slope[0]) * 0.0175] } : c;
    expect(wrong(steeper)).toContain('proof-card-differs front');
  });
  it('its callouts are read back as the cuts that they were', () => {
    for (const part of stool.parts) {
      const frame = frameOf(part, 'in');
      const said = sayCuts(part, part.cuts, { units: 'in', markOf: (id) => id });
      for (const cut of part.cuts.filter((c) => c.shape === 'box')) {
        const row = said.find((r) => r.cuts.includes(cut.id));
        const back = parseCallout(row?.text ?? '', frame)?.cuts[0] as BoxCut;
        const near = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThanOrEqual(12_701);
        ([0, 1, 2] as const).forEach((a) => cut.at[a].forEach((x, k) => near(x, back.at[a][k as 0 | 1])));
        const sides = (c: BoxCut): string[] => (c.slants ?? []).map((s) => `${s.of} ${s.toward}`);
        expect(sides(back)).toEqual(sides(cut));
        (cut.slants ?? []).forEach((s, k) => near(s.by, back.slants?.[k]?.by ?? NaN));
      }
    }
  });
});
