import type { Axis } from '../../../src/geom/axis.js';
import type { Box3 } from '../../../src/geom/box.js';
import type { Placement } from '../../../src/geom/placement.js';
import type { Outline, Recipe } from '../../../src/geom/recipe.js';

/** Seeded numbers in [0, 1): the "mulberry32" generator, public domain. */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
const MM = 1_000_000;
const MIRRORS: Placement['rotation'][] = [
  [
    [-1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  [
    [1, 0, 0],
    [0, -1, 0],
    [0, 0, 1],
  ],
  [
    [0, 1, 0],
    [1, 0, 0],
    [0, 0, 1],
  ],
];

export interface Case {
  readonly part: Recipe;
  readonly tools: readonly Recipe[];
}
/** Boards with tools that share planes with them and with one another, touch along lines, lean, or are mirrored. */
export function makeCases(seed: number, count: number): Case[] {
  const next = numbers(seed);
  const whole = (lo: number, hi: number): number => lo + Math.floor(next() * (hi - lo + 1));
  const one = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  /** On a coarse grid, so that planes coincide all the time; now and then on the nanometre. */
  const coordinate = (size: number): number => (next() < 0.85 ? Math.round((whole(0, 8) / 8) * size) : whole(0, size));
  const interval = (size: number): [number, number] => {
    const [a, b] = [coordinate(size), coordinate(size)].sort((x, y) => x - y) as [number, number];
    return a === b ? [Math.max(0, a - size / 8), Math.min(size, a + size / 8)] : [a, b];
  };
  const boxIn = (size: readonly number[]): Box3 => size.map(interval) as unknown as Box3;
  const peg = (size: readonly number[]): Recipe => {
    const axis = one([0, 1, 2] as const) as Axis;
    const r = Math.round((Math.min(...size) / 8) * whole(1, 4));
    const centre = size.map((s, i) => (i === axis ? 0 : next() < 0.5 ? r : coordinate(s))) as [number, number, number]; // often tangent to a face
    const [a, b] = interval(size[axis] as number);
    return {
      op: 'turned',
      axis,
      centre,
      profile: [
        [r, a],
        [next() < 0.3 ? Math.round(r / 2) : r, b],
      ],
    };
  };
  const tail = (size: readonly number[]): Recipe => {
    const axis = one([0, 1, 2] as const) as Axis;
    const [u, v] = [0, 1, 2].filter((a) => a !== axis) as [number, number];
    const [p, q] = [interval(size[u] as number), interval(size[v] as number)];
    const lean = Math.round((p[1] - p[0]) / whole(5, 12));
    const outline = [
      [p[0] + lean, q[0]],
      [p[1] - lean, q[0]],
      [p[1], q[1]],
      [p[0], q[1]],
    ] as const;
    const [from, to] = interval(size[axis] as number);
    return { op: 'prism', axis, from, to, outlines: [outline.map((to) => ({ to: [...to] as [number, number] }))] };
  };
  const round = (size: readonly number[]): Recipe => {
    const [p, q] = [interval(size[0] as number), interval(size[1] as number)];
    const bulge = one([0.1, 0.4142135623730951, 1]);
    const outline: Outline = [{ to: [p[1], q[0]] }, { to: [p[0], q[0]], bulge }];
    return { op: 'prism', axis: 2, from: 0, to: size[2] as number, outlines: [outline] };
  };
  const tool = (size: readonly number[]): Recipe => {
    const plain: Recipe = one([
      () => ({ op: 'box', at: boxIn(size) }) as Recipe,
      () => peg(size),
      () => tail(size),
      () => tail(size),
      () => round(size),
    ])();
    const chance = next();
    if (chance < 0.12) {
      const origin = size.map((s) => (next() < 0.5 ? s : 0)) as [number, number, number];
      return { op: 'placed', by: { rotation: one(MIRRORS), origin }, of: plain };
    }
    if (chance < 0.24) {
      const [c, s] = one([
        [Math.cos(0.01), Math.sin(0.01)],
        [Math.cos(0.2), Math.sin(0.2)],
        [0.8, 0.6],
      ] as const);
      return {
        op: 'placed',
        by: {
          rotation: [
            [c, 0, s],
            [0, 1, 0],
            [-s, 0, c],
          ],
          origin: [coordinate(size[0] as number), 0, 0],
        },
        of: plain,
      };
    }
    return plain;
  };
  return Array.from({ length: count }, () => {
    const size = [whole(40, 900) * MM, whole(12, 40) * MM, whole(40, 500) * MM];
    const part: Recipe = { op: 'box', at: size.map((s) => [0, s]) as unknown as Box3 };
    const tools = Array.from({ length: whole(4, 24) }, () => tool(size));
    // A comb of tools that touch along whole faces: what once hung as a batch.
    if (next() < 0.3) {
      const n = whole(6, 20);
      const pitch = Math.floor((size[0] as number) / n);
      for (let i = 0; i < n; i++)
        tools.push({
          op: 'box',
          at: [
            [i * pitch, (i + 1) * pitch],
            [0, Math.round((size[1] as number) / 2)],
            [0, MM * (5 + (i % 2))],
          ],
        });
    }
    return { part, tools };
  });
}
