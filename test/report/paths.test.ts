import fc from 'fast-check';
import pixelmatch from 'pixelmatch';
import { describe, expect, it } from 'vitest';
import * as draw from '../../src/drawings/draw.js';
import type { Item, Path, Sheet, TextItem } from '../../src/drawings/picture.js';
import { setText } from '../../src/drawings/text.js';
import { loadFaces } from '../../src/io/fonts.js';
import { boundsOf, paintsOf } from '../../src/report/paint.js';
import { arcToCubics, pathBounds, say, svgPath, type Cubic } from '../../src/report/paths.js';
import { writePdf } from '../../src/report/pdf.js';
import { writeSvgs } from '../../src/report/svg.js';
import { pdfPixels, svgPixels } from './render.js';

const faces = loadFaces();

describe('numbers', () => {
  it('have at most three decimals and no sign of nothing', () => {
    expect([0.1 + 0.2, -0.0004, 1e-9, 12, 7.1239, -2.5].map(say)).toEqual(['0.3', '0', '0', '12', '7.124', '-2.5']);
  });
});

describe('arcs', () => {
  const point = (p0: readonly [number, number], c: Cubic, t: number): readonly [number, number] => {
    const at = (a: number, b: number, d: number, e: number): number =>
      a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * d * t ** 2 * (1 - t) + e * t ** 3;
    return [at(p0[0], c[0], c[2], c[4]), at(p0[1], c[1], c[3], c[5])];
  };
  it('as cubics stay on their circle and turn the whole way round, the way they should', () => {
    const angle = fc.double({ min: 0, max: 6.28, noNaN: true });
    const turn = fc.double({ min: 0.05, max: 6.2, noNaN: true });
    const radius = fc.double({ min: 0.5, max: 300, noNaN: true });
    fc.assert(
      fc.property(angle, turn, radius, fc.constantFrom(0 as const, 1 as const), (from, by, r, sweep) => {
        // Half turns are told apart by a hair; they have a test of their own.
        fc.pre(Math.abs(by - Math.PI) > 0.01);
        const to = from + (sweep === 1 ? by : -by);
        const on = (a: number): readonly [number, number] => [r * Math.cos(a), r * Math.sin(a)];
        const cubics = arcToCubics(on(from), r, sweep, by > Math.PI ? 1 : 0, on(to));
        let here = on(from);
        let turned = 0;
        for (const c of cubics) {
          for (let k = 1; k <= 8; k++) {
            const [a, b] = [point(here, c, (k - 1) / 8), point(here, c, k / 8)];
            expect(Math.abs(Math.hypot(...b) - r)).toBeLessThan(0.0003 * r + 1e-6);
            turned += Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
          }
          here = [c[4], c[5]];
        }
        expect(turned).toBeCloseTo(sweep === 1 ? by : -by, 4);
        expect(here).toEqual(on(to));
      }),
      { numRuns: 300, seed: 7 },
    );
  });
  it('of half a turn go over the side that the sweep says', () => {
    expect(pathBounds([['M', 0, 0], ['A', 5, 1, 0, 10, 0]])?.map((v) => Math.round(v))).toEqual([0, -5, 10, 0]); // prettier-ignore
    expect(pathBounds([['M', 0, 0], ['A', 5, 0, 0, 10, 0]])?.map((v) => Math.round(v))).toEqual([0, 0, 10, 5]); // prettier-ignore
    // A radius a rounding short of half the chord is a half circle.
    expect(arcToCubics([0, 0], 4.9999, 1, 0, [10, 0])).toHaveLength(2);
  });
  it('are written with large before sweep, as SVG has them', () => {
    expect(svgPath([['M', 0, 0], ['A', 5, 1, 0, 10, 0], ['Z']])).toBe('M0 0A5 5 0 0 1 10 0Z'); // prettier-ignore
  });
});

describe('painting', () => {
  const word = (string: string, x: number, more: Partial<TextItem> = {}): TextItem => ({
    kind: 'text',
    x,
    y: 10,
    size: 4,
    face: 'regular',
    anchor: 'start',
    turn: 0,
    string,
    ...more, // prettier-ignore
  });
  it('joins strokes of one pen that follow each other, and keeps the order of all else', () => {
    const items = [...draw.line('W', 0, 0, 1, 0), ...draw.line('W', 0, 1, 1, 1), ...draw.rect(undefined, 0, 0, 1, 1, 'white'), ...draw.line('W', 0, 2, 1, 2)]; // prettier-ignore
    expect(paintsOf(items).map((p) => (p.kind === 'stroke' ? p.d.length : p.kind))).toEqual([4, 'fill', 2]);
  });
  it('joins the words of a line, not those of two columns', () => {
    const line = [
      word('one ', 0),
      word('two', 8),
      word('three', 40, { face: 'semibold' }),
      word('under', 0, { y: 15 }),
    ];
    expect(paintsOf(line).map((p) => (p.kind === 'line' ? p.words.length : 0))).toEqual([2, 1, 1]);
  });
  it('leaves the picture as it was', () => {
    const items: readonly Item[] = Object.freeze([...draw.line('W', 0, 0, 1, 0), ...draw.line('W', 0, 1, 1, 1)]);
    const before = JSON.stringify(items);
    paintsOf(items);
    expect(JSON.stringify(items)).toBe(before);
  });
  it('knows how far a group reaches', () => {
    const group = draw.group('g', draw.rect('N', 0, 0, 10, 4), { at: [5, 6], clip: draw.rectPath(2, 0, 3, 3) });
    expect(boundsOf(faces, [group])).toEqual([7, 6, 10, 9]);
    expect(boundsOf(faces, [])).toBeUndefined();
  });

  it('draws a figure once and uses it wherever it stands', async () => {
    const figures = (count: number): Item[] =>
      Array.from(
        { length: count },
        (_, i) => setText(faces, '33 31/64', { x: 10 + 20 * (i % 4), y: 5 + 3 * Math.floor(i / 4), size: 3 }).items,
      ).flat();
    expect(paintsOf(figures(2)).map((p) => p.kind)).toEqual(['figure', 'figure']);
    const size = async (count: number): Promise<number> => {
      const sheet: Sheet = {
        id: 's',
        title: 's',
        folder: 'lists',
        size: [100, 100],
        alt: '',
        picture: figures(count),
        tables: [],
      };
      return (await writePdf([sheet], { faces, title: 's', date: '2027-02-01', hash: '0' })).length;
    };
    // Each further figure is a place and a hidden run: a few bytes; its outlines alone would be some 300, deflated.
    expect(((await size(100)) - (await size(20))) / 80).toBeLessThan(40);
  });
  it('both writers set turned, centred and white text, arcs and nested clips alike', async () => {
    const arcs: Path = [['M', 20, 30], ['A', 8, 0, 1, 30, 30], ['A', 5, 1, 0, 40, 30], ['L', 40, 40], ['Z']]; // prettier-ignore
    const inner = draw.group('inner', draw.circle('D', 10, 10, 9, 'grey'), {
      at: [2, 2],
      clip: draw.rectPath(0, 0, 12, 12),
    });
    const picture: Item[] = [
      word('middle', 50, { anchor: 'middle' }),
      word('end of it', 90, { anchor: 'end', face: 'semibold' }),
      word('upright', 10, { y: 60, turn: -90 }),
      word('askew', 70, { y: 50, turn: 30, anchor: 'middle' }),
      ...draw.rect(undefined, 40, 60, 30, 10, 'black'),
      word('white', 55, { y: 66, anchor: 'middle', tone: 'white' }),
      draw.stroke('W', arcs),
      draw.stroke(
        'dots',
        arcs.map((s) => s),
      ),
      draw.group('outer', [inner, ...draw.line('plane', 0, 0, 30, 30)], {
        at: [10, 65],
        clip: draw.rectPath(0, 0, 18, 18),
      }),
      ...draw.line('H', 10, 95, 90, 95),
    ];
    const sheet: Sheet = { id: 's', title: 's', folder: 'lists', size: [100, 100], alt: '', picture, tables: [] };
    const pdf = await writePdf([sheet], { faces, title: 's', date: '2027-02-01', hash: '0' });
    const [svg = ''] = await writeSvgs([sheet], { faces });
    const [a, b] = [svgPixels(svg, 3), await pdfPixels(pdf, 1, 3)];
    // A sheet of 100 mm is 850.4 pixels: one renderer rounds up.
    const [width, height] = [Math.min(a.width, b.width), Math.min(a.height, b.height)];
    expect(Math.max(Math.abs(a.width - b.width), Math.abs(a.height - b.height))).toBeLessThanOrEqual(1);
    const crop = (p: { width: number; data: Uint8Array }): Uint8Array =>
      Uint8Array.from(
        { length: width * height * 4 },
        (_, i) => p.data[4 * (Math.floor(i / 4 / width) * p.width) + (i % (4 * width))] ?? 0,
      );
    expect(pixelmatch(crop(a), crop(b), undefined, width, height, { threshold: 0.3 })).toBeLessThanOrEqual(20);
  }, 20_000);
});
