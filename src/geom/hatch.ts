import { cosine, sine } from './angle.js';
import type { Rings } from './solid.js';

export type Segment = readonly [readonly [number, number], readonly [number, number]];

/**
 * Lines at `degrees` and `pitch` (the rings' unit) apart over the inside of the rings, by the even-odd rule. Lines lie at
 * whole multiples of the pitch from the origin (plus `phase`, a part of the pitch), so neighbours of one pattern join up.
 */
export function hatch(rings: Rings, degrees: number, pitch: number, phase = 0): Segment[] {
  if (!(pitch > 0)) throw new RangeError(`hatch pitch must be above 0, not ${pitch}`);
  const [c, s] = [cosine(degrees), sine(degrees)];
  const turned = rings.map((ring) => ring.map(([x, y]) => [x * c + y * s, y * c - x * s] as const));
  const heights = turned.flat().map((p) => p[1]);
  const first = Math.ceil(Math.min(...heights) / pitch - phase);
  const last = Math.floor(Math.max(...heights) / pitch - phase);
  const out: Segment[] = [];
  for (let i = first; i <= last; i++) {
    const v = (i + phase) * pitch;
    const at = crossings(turned, v);
    for (let k = 0; k + 1 < at.length; k += 2) {
      const [p, q] = [at[k] as number, at[k + 1] as number];
      if (q - p > pitch * 1e-6) out.push([[p * c - v * s + 0, p * s + v * c + 0], [q * c - v * s + 0, q * s + v * c + 0]]); // prettier-ignore
    }
  }
  return out;
}
/** Where a level line crosses the sides, in order. A side holds its lower end and not its upper: corners count once. */
function crossings(rings: Rings, v: number): number[] {
  const at: number[] = [];
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] as readonly [number, number];
      if (p[1] <= v === q[1] <= v) return;
      at.push(p[0] + ((q[0] - p[0]) * (v - p[1])) / (q[1] - p[1]));
    });
  }
  return at.sort((a, b) => a - b);
}
