import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { collide, joined, placeDimensions } from '../../src/drawings/dimensions.js';
import type { Chain, DimensionPlan, Link, PlacedLine, Rect, Side } from '../../src/drawings/dimensions.js';
import { spread } from '../../src/drawings/spread.js';

/** Widths of about the drawing type: 2 mm a character, a stacked fraction counts as its wider half. */
const measure = (figure: string): { w: number; h: number } => {
  const w = figure.split(' ').reduce((sum, word) => {
    const halves = word.split('/');
    return sum + (halves.length > 1 ? Math.max(...halves.map((x) => x.length)) * 1.3 + 0.6 : word.length * 1.9);
  }, 0);
  return { w, h: figure.includes('/') ? 4.9 : 2.5 };
};

const bodyOf = (l: PlacedLine): Rect => ({
  x: Math.min(l.a[0], l.b[0]),
  y: Math.min(l.a[1], l.b[1]),
  w: Math.abs(l.a[0] - l.b[0]) + 1e-4,
  h: Math.abs(l.a[1] - l.b[1]) + 1e-4,
});

function assertClear(plan: DimensionPlan, view: Rect): void {
  plan.figures.forEach((f, i) => {
    expect(collide(f.box, view)).toBe(false);
    for (const g of plan.figures.slice(i + 1)) expect(collide(f.box, g.box)).toBe(false);
    for (const line of plan.lines) {
      expect(collide(f.box, bodyOf(line)), `${f.link.figure} on a ${line.role} line`).toBe(false);
    }
  });
  const dims = plan.lines.filter((l) => l.role === 'dimension');
  const extensions = plan.lines.filter((l) => l.role === 'extension');
  for (const d of dims) for (const e of extensions) expect(crosses(d, e)).toBe(false);
}
/** Square lines that cross inside both. */
function crosses(a: PlacedLine, b: PlacedLine): boolean {
  const A = bodyOf(a);
  const B = bodyOf(b);
  const inside = (p: Rect, q: Rect): boolean =>
    p.x + 0.71 < q.x && q.x < p.x + p.w - 0.71 && q.y + 0.01 < p.y && p.y < q.y + q.h - 0.01;
  const turned = (r: Rect): Rect => ({ x: r.y, y: r.x, w: r.h, h: r.w });
  return A.w > A.h ? inside(A, B) : inside(turned(A), turned(B));
}

const side = fc.constantFrom<Side[]>('left', 'right', 'above', 'below');
const figure = fc.constantFrom('3/4', '5 1/4', '7', '34 1/4', '15/16', '42', '1 15/16', '23 61/64');
const chain = (view: Rect, id: string): fc.Arbitrary<Chain> =>
  fc
    .record({
      side,
      cuts: fc.uniqueArray(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 12 }),
      figures: fc.array(figure, { minLength: 12, maxLength: 12 }),
    })
    .map(({ side, cuts, figures }) => {
      const [low, size] = side === 'left' || side === 'right' ? [view.y, view.h] : [view.x, view.w];
      const at = [...cuts].sort((a, b) => a - b).map((c) => low + c * size);
      const links: Link[] = at
        .slice(1)
        .map((to, i) => ({ from: at[i] as number, to, figure: figures[i] as string, nm: 1 }));
      return { id, side, links };
    });

describe('the dimension placer', () => {
  it('keeps every figure clear of figures, lines and the view on random views', () => {
    const view = { x: 60, y: 60, w: 90, h: 110 };
    fc.assert(
      fc.property(fc.tuple(...['a', 'b', 'c', 'd', 'e'].map((id) => chain(view, id))), (chains) => {
        const plan = placeDimensions({
          view,
          chains,
          room: { left: 40, right: 40, above: 35, below: 35 },
          measure: (f) => measure(f),
        });
        assertClear(plan, view);
        const asked = chains.flatMap((c) => joined(c.links)).length;
        expect(plan.figures.length + plan.table.length).toBe(asked);
      }),
      { numRuns: 60, seed: 20270201 },
    );
  });

  /** The height chain of a tall chest, 1:10: 7/8 3/4 5 1/4 3/4 7 3/4 8 3/4 9 3/4 8 1/8 = 42 (sum by hand). */
  it('draws a closing chain with openings in the line, rails outside and the overall farthest out', () => {
    const sizes: [string, number][] = [
      ['7/8', 0.875],
      ['3/4', 0.75],
      ['5 1/4', 5.25],
      ['3/4', 0.75],
      ['7', 7],
      ['3/4', 0.75],
      ['8', 8],
      ['3/4', 0.75],
      ['9', 9],
      ['3/4', 0.75],
      ['8 1/8', 8.125],
    ];
    expect(sizes.reduce((s, [, x]) => s + x, 0)).toBe(42);
    let at = 70;
    const links = sizes.map(([figure, inches]): Link => {
      const from = at;
      at += inches * 2.54;
      return { from, to: at, figure, nm: inches * 25_400_000 };
    });
    const view = { x: 60, y: 70, w: 90, h: 42 * 2.54 };
    const overall: Link = { from: 70, to: at, figure: '42', nm: 42 * 25_400_000 };
    const plan = placeDimensions({
      view,
      chains: [
        { id: 'overall', side: 'left', links: [overall] },
        { id: 'heights', side: 'left', links },
      ],
      room: { left: 40 },
      measure: (f) => measure(f),
    });
    expect(plan.table).toEqual([]);
    assertClear(plan, view);
    const inLine = plan.figures.filter((f) => f.strong).map((f) => f.link.figure);
    expect(inLine).toEqual(['5 1/4', '7', '8', '9', '8 1/8', '42']);
    const of = (figure: string): Rect => (plan.figures.find((f) => f.link.figure === figure) as { box: Rect }).box;
    expect(of('42').x).toBeLessThan(of('3/4').x);
    const rails = plan.figures
      .filter((f) => f.link.figure.length === 3 && f.link.figure.includes('/'))
      .map((f) => f.box.y);
    const gaps = [...rails].sort((a, b) => a - b).map((y, i, all) => (i === 0 ? 99 : y - (all[i - 1] as number)));
    for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(5.2 - 0.01);
  });

  it('joins a link too short to be seen to the shorter neighbour and says both figures', () => {
    const links: Link[] = [
      { from: 0, to: 30, figure: '16', nm: 16 },
      { from: 30, to: 34, figure: '1 15/16', nm: 1.9375 },
      { from: 34, to: 34.5, figure: '1/4', nm: 0.25 },
    ];
    expect(joined(links).map((l) => l.figure)).toEqual(['16', '1 15/16 + 1/4']);
    expect(joined(links)[1]?.nm).toBeCloseTo(2.1875, 10);
  });

  it('sends a size to the table where there is no room', () => {
    const view = { x: 0, y: 0, w: 50, h: 50 };
    const link: Link = { from: 0, to: 50, figure: '12', nm: 1 };
    const plan = placeDimensions({
      view,
      chains: [{ id: 'w', side: 'below', links: [link] }],
      room: { below: 5 },
      measure: (f) => measure(f),
    });
    expect(plan.figures).toEqual([]);
    expect(plan.table.map((t) => t.why)).toEqual(['no room beside the view']);
  });
});

describe('spread', () => {
  it('leaves labels alone that stand apart, and pushes two that meet by equal amounts', () => {
    const options = { gap: 0, pitch: 5, blocked: [], within: [0, 40] as const };
    expect(
      spread(
        [
          { at: 5, half: 2 },
          { at: 20, half: 2 },
        ],
        options,
      ),
    ).toEqual([5, 20]);
    const [a, b] =
      spread(
        [
          { at: 10, half: 2 },
          { at: 12, half: 2 },
        ],
        options,
      ) ?? [];
    expect(a).toBeCloseTo(8.5, 6);
    expect(b).toBeCloseTo(13.5, 6);
  });
  it('keeps clear of blocked spans and says when nothing fits', () => {
    const [at] = spread([{ at: 10, half: 2 }], { gap: 0, pitch: 5, blocked: [[9, 11]], within: [0, 40] }) ?? [];
    expect(Math.abs((at as number) - 10)).toBeCloseTo(3, 1);
    expect(spread([{ at: 1, half: 3 }], { gap: 0, pitch: 5, blocked: [], within: [0, 5] })).toBeUndefined();
  });
});
