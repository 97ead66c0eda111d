import { describe, expect, it } from 'vitest';
import { PANELS, panelById } from '../../src/data/panels.js';
import { QUARTERS, quarterByName } from '../../src/data/quarters.js';
import { need } from '../../src/data/printed.js';
import { BIRCH, EN_315 } from '../../src/data/tables/panel-thickness.js';
import { SCREWS_8_9 } from '../../src/data/tables/screws-8-9.js';
import { SCREWS, screwGauge } from '../../src/data/screws.js';
import { SLIDES, slideFamily } from '../../src/data/slides.js';
import { inches, mm, toIn } from '../../src/lengths/length.js';

const rising = (values: readonly number[]): boolean => values.every((v, i) => i === 0 || v > (values[i - 1] as number));

describe('slides', () => {
  it('take 1/2 and a 64th a side in inches, by 2 in from 10 to 28', () => {
    const side = slideFamily(undefined, 'in');
    expect(side?.clearance).toBe(inches(33 / 64));
    expect(side?.lengths.map(toIn)).toEqual([10, 12, 14, 16, 18, 20, 22, 24, 26, 28]);
  });
  it('are thinner than the room left for them and say whose figures they are', () => {
    for (const s of SLIDES) {
      expect(s.thickness).toBeLessThan(s.clearance);
      expect(rising(s.lengths)).toBe(true);
      // The lower edge of the steel clears the rail: the box stands `above` it, the line lies `line` up the box.
      expect(s.above + s.line - s.height / 2).toBeGreaterThan(0);
      expect(s.source).toContain('our default');
    }
    expect(slideFamily('side', 'mm')?.id).toBe('side');
    expect(slideFamily(undefined, 'mm')?.lengths[0]).toBe(mm(250));
    expect(slideFamily('other', 'in')).toBeUndefined();
  });
});

describe('screws', () => {
  it('have a pilot smaller than the shank, the larger one in hard wood, a head wider than the shank', () => {
    for (const s of SCREWS) {
      expect(s.pilotSoft).toBeLessThan(s.pilotHard);
      expect(s.pilotHard).toBeLessThan(s.shank);
      expect(s.head).toBeGreaterThan(s.shank);
      // Gauge n is 0.060 + 0.013 n in thick (a standard formula); the clearance hole is the next 1/64 or so.
      const nominal = 0.06 + 0.013 * s.gauge;
      expect(Math.abs(toIn(s.shank) - nominal)).toBeLessThan(1 / 64);
    }
    expect(rising(SCREWS.map((s) => s.shank))).toBe(true);
    expect(screwGauge(8)?.shank).toBe(inches(11 / 64));
    expect(screwGauge(7)).toBeUndefined();
  });
});

describe('quarters and panels', () => {
  it('a quarter gives less than it measures rough, short flat boards a little more', () => {
    for (const q of QUARTERS) {
      const [n, d] = q.name.split('/').map(Number) as [number, number];
      expect(toIn(q.atMost)).toBeLessThan(n / d);
      expect(q.gives).toBeLessThanOrEqual(q.atMost);
    }
    expect(rising(QUARTERS.map((q) => q.gives))).toBe(true);
    expect(quarterByName('5/4')?.gives).toBe(inches(1));
    expect(quarterByName('3/4')).toBeUndefined();
  });
  it('panels lie inside the published range of their kind (Wood Handbook, table 12-1)', () => {
    const range: Readonly<Record<string, readonly [number, number]>> = {
      mdf: [0.7, 0.9],
      particleboard: [0.6, 0.8],
      hardboard: [0.9, 1],
      plywood: [0.4, 0.6],
    };
    for (const [id, [low, high]] of Object.entries(range)) {
      const gravity = panelById(id)?.gravity.value ?? 0;
      expect(gravity).toBeGreaterThanOrEqual(low);
      expect(gravity).toBeLessThanOrEqual(high);
    }
    expect(new Set(PANELS.map((p) => p.id)).size).toBe(PANELS.length);
  });
});

describe('thickness of sheet goods', () => {
  const allowed = (t: number): readonly [number, number] => {
    const at = (column: 'over' | 'under' | 'each'): number => need(EN_315, 'sanded', column).value;
    return [at('over') + at('each') * t, at('under') + at('each') * t];
  };
  // EN 315:2000, sanded: 18 mm +0.74 -0.94, 12 mm +0.56 -0.76.
  it('18 mm plywood: +0.74, -0.94; 12 mm: +0.56, -0.76', () => {
    expect(allowed(18).map((v) => v.toFixed(2))).toEqual(['0.74', '0.94']);
    expect(allowed(12).map((v) => v.toFixed(2))).toEqual(['0.56', '0.76']);
  });
  it('a mill’s birch plywood lies inside it, to its rounding', () => {
    for (const [id] of BIRCH.rows) {
      const t = Number(id);
      const [over, under] = allowed(t);
      expect(need(BIRCH, id, 'thickest').value, id).toBeLessThan(t + over + 0.05);
      expect(need(BIRCH, id, 'thinnest').value, id).toBeGreaterThan(t - under - 0.05);
    }
  });
});

describe('wood screws by number', () => {
  // ASME B18.6.1: 0.060 + 0.013 n in.
  it('are as thick as the rule of the gauge', () => {
    for (const [id] of SCREWS_8_9.rows)
      expect(Math.abs(need(SCREWS_8_9, id, 'shank').value - 25.4 * (0.06 + 0.013 * Number(id)))).toBeLessThan(0.03);
  });
});
