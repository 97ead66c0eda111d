import { describe, expect, it } from 'vitest';
import * as draw from '../../src/drawings/draw.js';
import { fieldOf, LETTER, sheetFrame, type Paper } from '../../src/drawings/frame.js';
import type { Item, Seg, TextItem } from '../../src/drawings/picture.js';
import { loadFaces } from '../../src/io/fonts.js';
import { loadPapers } from '../../src/io/papers.js';
import { boundsOf } from '../../src/report/paint.js';
import { sampleSheet } from '../report/sample.js';

const faces = loadFaces();
const header = {
  title: 'Tall chest',
  number: 'C-021',
  revision: 'A',
  date: '2027-02-01',
  maker: 'sample',
  woods: 'White oak',
};
const frame = {
  faces,
  header,
  title: 'Front, right side and plan',
  scale: '1:10',
  roundTo: '1/32',
  n: 2,
  of: 53,
  hash: '7f3c91',
};
const texts = (items: readonly Item[]): TextItem[] => items.filter((i) => i.kind === 'text');
const papers = ['letter', 'a4'].map((id) => loadPapers()[id] as Paper);

describe('paper', () => {
  it.each(papers.map((p) => [p.id, p] as const))(
    '%s leaves 10 all round and 18 for binding, in steps of 5',
    (_, paper) => {
      const [w, h] = paper.size;
      const [x, y, fw, fh] = paper.frame;
      expect(x).toBeGreaterThanOrEqual(18);
      expect(w - x - fw).toBeGreaterThanOrEqual(10);
      expect(Math.min(y, h - y - fh)).toBeGreaterThanOrEqual(10 - 1e-9);
      expect([fw % 5, fh % 5]).toEqual([0, 0]);
      // One step more would not fit.
      expect(w - fw - 5).toBeLessThan(28);
      expect(h - fh - 5).toBeLessThan(20);
    },
  );
  it('the one in the program is the one in its file', () => {
    expect(LETTER).toEqual(papers[0]);
    // ISO 216 A4 and US Letter (8 1/2 x 11 in), lying.
    expect(papers.map((p) => p.size)).toEqual([[11 * 25.4, expect.closeTo(8.5 * 25.4, 9)], [297, 210]]); // prettier-ignore
  });
  it('has a field of 236 x 177 inside margin and strip', () => {
    const { left, top, right, bottom } = fieldOf();
    expect([right - left, bottom - top]).toEqual([236, 177].map((v) => expect.closeTo(v, 6)));
  });
});

describe('the title strip', () => {
  it('says the fields of ISO 7200 at their places', () => {
    const items = texts(sheetFrame(frame));
    const place = (said: string): readonly number[] => {
      const item = items.find((t) => t.string.trim() === said);
      return item ? [item.x, item.y] : [];
    };
    // Places on the model sheet of elevations, mm.
    expect(place('Piece')).toEqual([20.4, 198.45]);
    expect(place('C-021')).toEqual([20.4, 203.15]);
    expect(place('Maker')).toEqual([94.4, 198.45]);
    expect(place('2027-02-01')).toEqual([113.4, 203.15]);
    expect(place('Approved')).toEqual([136.4, 198.45]);
    expect(place('1:10')).toEqual([167.4, 203.15]);
    expect(place('1/32')).toEqual([200.4, 203.15]);
    expect(place('7f3c91')[0]).toBeCloseTo(224.148, 2);
    expect(items.find((t) => t.string === '2')).toMatchObject({ x: 244.4, y: 203.05, tone: 'white' });
    expect(items.map((t) => t.string).join('')).toContain('Tall chest, white oak');
  });
  it('names the woods that fit, whole', () => {
    const said = (woods: string): string =>
      texts(sheetFrame({ ...frame, header: { ...header, woods } }))
        .filter((t) => t.y === 198.45 && t.x >= 36 && t.x < 92)
        .map((t) => t.string)
        .join('');
    expect(said('White oak, yellow-poplar inside')).toBe('Tall chest, white oak');
    expect(said('White oak, ash')).toBe('Tall chest, white oak, ash');
    expect(said('')).toBe('Tall chest');
  });
  it('cuts a title that is too long, and never runs into the next field', () => {
    const long = sheetFrame({ ...frame, title: 'A very long title of a sheet that goes on and on beyond its field' });
    const title = texts(long).filter((t) => t.y === 203.15 && t.x >= 36 && t.x < 92);
    expect(title.at(-1)?.string.endsWith('…')).toBe(true);
    const bounds = boundsOf(faces, title);
    expect(bounds?.[2]).toBeLessThan(92.4);
  });
  it.each(papers.map((p) => [p.id, p] as const))('lies inside the frame of %s', (_, paper) => {
    const [x, y, w, h] = paper.frame;
    const plain = sheetFrame({ ...frame, paper, projection: true });
    expect(boundsOf(faces, plain)).toEqual([x, y, x + w, y + h].map((v) => expect.closeTo(v, 6)));
    // The stamp stands over the frame, at least 4.2 mm (1/6 in, what common printers leave) from the paper's edge.
    const stamp = sheetFrame({ ...frame, paper, projection: true, stamp: `NOT FOR WORKSHOP: ${'sags '.repeat(80)}` });
    const [left, top, right, foot] = boundsOf(faces, stamp.slice(plain.length)) ?? [0, 0, 0, 0];
    expect(top).toBeGreaterThanOrEqual(4.2);
    expect(foot).toBeLessThan(y);
    expect([left, right]).toEqual([x, x + w].map((v) => expect.closeTo(v, 6)));
  });
});

describe('marks', () => {
  const size = (items: readonly Item[]): readonly number[] => {
    const b = boundsOf(faces, items) ?? [0, 0, 0, 0];
    return [b[2] - b[0], b[3] - b[1]];
  };
  const close = (...v: number[]) => v.map((n) => expect.closeTo(n, 2));
  it('have the sizes of the model sheets', () => {
    expect(size(draw.obliqueTick(5, 5))).toEqual(close(2, 2));
    expect(size(draw.arrowhead([5, 5], [1, 0]))).toEqual(close(2.2, 1));
    expect(size(draw.statusBar('leave long', 0, 0))).toEqual(close(9, 2.6));
    expect(size(draw.edgeMark(10, 10, 'right'))).toEqual(close(3.05, 3.8));
    expect(size(draw.tag(faces, 'A1', 0, 0))).toEqual(close(25, 14));
    expect(size(draw.thirdAngleSymbol(0, 0))).toEqual(close(15, 7.4));
  });
  it('the face mark of the other hand is the mirror image', () => {
    const path = (into: 'left' | 'right'): readonly Seg[] =>
      draw.faceMark(0, 0, into).flatMap((i) => (i.kind === 'stroke' ? i.d : []));
    const mirrored = path('right').map((s) => s.map((v, i) => (typeof v === 'number' && i % 2 === 1 ? -v + 0 : v)));
    expect(path('left')).toEqual(mirrored.map((s) => s.map((v) => (v === 0 ? 0 : v))));
  });
  it('the face mark turned to another edge is a rotation of one of the two', () => {
    const end = (into: draw.Heading): readonly number[] => {
      const d =
        draw
          .faceMark(0, 0, into)
          .flatMap((i) => (i.kind === 'stroke' ? i.d : []))
          .at(-1) ?? [];
      return d.slice(-2) as number[];
    };
    expect(end('right')).toEqual([9.6, 1]);
    expect(end('up')).toEqual([1, -9.6]);
    expect(end('down')).toEqual([1, 9.6]);
  });
  it('grain barbs lie on opposite sides', () => {
    const barbs = draw
      .grainArrow([0, 20], [0, 0])
      .flatMap((i) => (i.kind === 'stroke' && i.pen === 'W' ? [i.d[1]] : []));
    expect(barbs).toEqual([['L', -1.1, 17], ['L', 1.1, 3]]); // prettier-ignore
  });
  it('the more ink, the surer the size', () => {
    const ink = (status: Parameters<typeof draw.statusBar>[0]): number =>
      draw.statusBar(status, 0, 0).filter((i) => i.kind === 'fill' && i.tone === 'black').length;
    expect([ink('cut now'), ink('measure first')]).toEqual([1, 0]);
  });
  it('scale bars have a round figure at each block, at least 6 mm long', () => {
    for (const units of ['in', 'mm'] as const)
      for (const scale of [1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50]) {
        const bar = draw.scaleBarFor(units, scale);
        expect(bar.block).toBeGreaterThanOrEqual(6);
        expect(bar.figures).toHaveLength(5);
      }
    expect(draw.scaleBarFor('in', 1 / 10)).toEqual({
      label: 'Inches',
      block: expect.closeTo(7.62, 9),
      figures: ['0', '3', '6', '9', '12'],
    });
  });
  it('everything of the sample lies on its paper', () => {
    const sheet = sampleSheet(faces);
    const b = boundsOf(faces, sheet.picture) ?? [0, 0, 0, 0];
    expect(b[0]).toBeGreaterThanOrEqual(10);
    expect(b[2]).toBeLessThanOrEqual(279.4 - 10);
  });
});
