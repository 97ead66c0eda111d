import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { Face } from '../../src/geom/axis.js';
import { FACES, faceAxis, faceSign, opposite } from '../../src/geom/axis.js';
import type { Box3, Span } from '../../src/geom/box.js';
import { byAxis, meet, width } from '../../src/geom/box.js';
import type { Recipe } from '../../src/geom/recipe.js';
import type { SiteOptions } from '../../src/joints/example.js';
import { exampleSite, exampleWorld } from '../../src/joints/example.js';
import { isSized } from '../../src/joints/fields.js';
import { JOINTS, jointKind } from '../../src/joints/index.js';
import type { ExampleSite, Given, JointKind, Resolved, Site } from '../../src/joints/joint.js';
import { inches, toMm } from '../../src/lengths/length.js';
import { cutRecipe } from '../../src/solids/cutRecipe.js';
import type { Cut } from '../../src/words/cut.js';
import { mapCut } from '../../src/words/mapCut.js';

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

interface Made {
  readonly site: Site;
  readonly given: Given;
  readonly errors: readonly string[];
}
function make(kind: JointKind, spec: Resolved, boxes: ExampleSite, options: SiteOptions = {}): Made {
  const site = exampleSite(boxes, { material: kind.kind === 'rabbet' ? 'sheet' : 'solid', ...options });
  const { r, findings } = kind.resolve(spec, site);
  const errors = findings.filter((f) => f.severity === 'error').map((f) => f.code);
  return { site, given: kind.give(r, site), errors };
}
const grown = (box: Box3, growth: Partial<Record<Face, number>>): Box3 =>
  byAxis((a): Span => {
    const by = (sign: number): number =>
      FACES.filter((f) => faceAxis(f) === a && faceSign(f) === sign).reduce((s, f) => s + (growth[f] ?? 0), 0);
    return [box[a][0] - by(-1), box[a][1] + by(1)];
  });
const solid = (blank: Box3, cuts: readonly Cut[]): Recipe => {
  const tools = cuts.map((c) => cutRecipe(c, blank)).filter((t) => t !== undefined);
  return tools.length === 0 ? { op: 'box', at: blank } : { op: 'cut', from: { op: 'box', at: blank }, tools };
};
const parts = ({ site, given }: Made) => {
  const e = grown(site.entering.box, given.growth.entering);
  const r = grown(site.receiving.box, given.growth.receiving ?? {});
  return { e, r, entering: solid(e, given.entering), receiving: solid(r, given.receiving) };
};
const cubic = (...sides: number[]): number => sides.reduce((v, s) => v * toMm(s), 1);
const boxVolume = (b: Box3): number => cubic(...b.map(width));

/** Wood of the entering part beyond its shoulder box, from the printed figures alone, mm3. */
function tongue({ site, given }: Made): number {
  const { box } = site.entering;
  const grows = given.growth.entering.right ?? 0;
  const cut = given.entering.find((c) => c.shape === 'tails' || c.shape === 'tenon');
  if (cut?.shape === 'tails')
    return cut.tails.reduce((v, t) => v + cubic((width(t.atBase) + width(t.atEnd)) / 2, grows, width(cut.keep)), 0);
  if (cut?.shape === 'tenon') return cut.tongues.reduce((v, t) => v + cubic(width(t.a), width(t.b), t.length), 0);
  const notched = given.entering.reduce((v, c) => v + (c.shape === 'box' && c.as === 'notch' ? boxVolume(c.at) : 0), 0);
  return cubic(grows, width(box[1]), width(box[2])) - notched;
}
/** What a joint states to leave empty beside the entering part, mm3, in words of its own sizes. */
function clearance(kind: string, { given, site }: Made): number {
  const s = (name: string): number => given.sizes[name]?.value ?? 0;
  const [main] = given.receiving;
  const wide = width(site.contact.wide);
  const thick = width(site.entering.box[1]);
  switch (kind) {
    case 'mortise-and-tenon':
      return main?.shape === 'box'
        ? cubic(s('mortise depth') - s('tenon length'), width(main.at[1]), width(main.at[2]))
        : 0;
    case 'groove':
      return cubic(s('left free'), thick, wide);
    case 'rabbet':
      return cubic(s('left free'), thick, wide);
    case 'dado':
      return s('stop') > 0 ? cubic(s('depth'), thick, inches(1 / 32)) : 0;
    default:
      return 0;
  }
}
const cutting = JOINTS.filter((k) => !['butt', 'edge', 'screw'].includes(k.kind));
const noMinusZero = (v: unknown): boolean =>
  typeof v === 'number'
    ? !Object.is(v, -0)
    : typeof v === 'object' && v !== null
      ? Object.values(v).every(noMinusZero)
      : true;
const typed = (spec: Resolved): unknown =>
  Object.fromEntries(Object.entries(spec).map(([k, v]) => [k, isSized(v) ? (v.rule ?? '') : v]));

describe.each(JOINTS.map((k) => [k.kind, k] as const))('%s', (name, kind) => {
  const example = make(kind, kind.example.spec, kind.example.site);
  it('parses its example, and refuses a field that it does not know', () => {
    expect(kind.spec.safeParse(typed(kind.example.spec)).success).toBe(true);
    expect(kind.spec.safeParse({ ...(typed(kind.example.spec) as object), deph: '1/4' }).success).toBe(false);
    expect(example.errors).toEqual([]);
  });
  it('gives every size with a rule, and every rule with a source', () => {
    for (const size of Object.values(example.given.sizes)) {
      expect(size.rule).toBeTruthy();
      if (size.how === 'by rule') expect(size.source).toBeTruthy();
    }
  });
  it('gives the same twice, ids unique in their part, no minus zero', () => {
    const again = make(kind, kind.example.spec, kind.example.site);
    expect(again.given).toEqual(example.given);
    for (const cuts of [example.given.entering, example.given.receiving])
      expect(new Set(cuts.map((c) => c.id)).size).toBe(cuts.length);
    expect(noMinusZero(example.given)).toBe(true);
    expect(make(kind, kind.example.spec, kind.example.site, { hand: -1 }).given).toEqual(example.given);
  });
  it('cuts inside the stock', () => {
    const { e, r } = parts(example);
    for (const [blank, cuts] of [
      [e, example.given.entering],
      [r, example.given.receiving],
    ] as const)
      for (const cut of cuts) expect(inside(cut, blank), `${name} ${cut.id}`).toBe(true);
  });
  it('mirrored across the width, it gives the mirrored cuts', () => {
    const w = width(kind.example.site.entering.box[2]);
    const flip = (b: Box3): Box3 => [b[0], b[1], [w - b[2][1], w - b[2][0]]];
    const { entering, receiving } = kind.example.site;
    const boxes = {
      entering: { ...entering, box: flip(entering.box) },
      receiving: { ...receiving, box: flip(receiving.box) },
    };
    const turned = make(kind, kind.example.spec, boxes, { direction: (f) => (faceAxis(f) === 2 ? opposite(f) : f) });
    const mirror = { to: [0, 1, 2], sign: [1, 1, -1], shift: [0, 0, w] } as const;
    const key = (cuts: readonly Cut[]): string[] => cuts.map((c) => JSON.stringify(sorted({ ...c, id: '' }))).sort();
    expect(key(turned.given.entering)).toEqual(key(example.given.entering.map((c) => mapCut(c, mirror))));
    expect(key(turned.given.receiving)).toEqual(key(example.given.receiving.map((c) => mapCut(c, mirror))));
  });
});
/** Tails in rising order, keys in order, so that equal cuts print alike. */
function sorted(v: unknown): unknown {
  if (Array.isArray(v)) {
    const items = v.map(sorted);
    return items.every((x) => typeof x === 'object' && x !== null && !Array.isArray(x))
      ? items.sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1))
      : items;
  }
  if (typeof v !== 'object' || v === null) return v;
  return Object.fromEntries(
    Object.entries(v)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, x]) => [k, sorted(x)]),
  );
}
function inside(cut: Cut, blank: Box3): boolean {
  const within = (s: Span, axis: 0 | 1 | 2): boolean => s[0] >= blank[axis][0] && s[1] <= blank[axis][1] && s[1] > s[0];
  if (cut.shape === 'box') return ([0, 1, 2] as const).every((a) => within(cut.at[a], a));
  if (cut.shape === 'dovetail')
    return (
      within(cut.runSpan, cut.run) &&
      within(cut.atFloor, cut.taper) &&
      within(cut.atFace, cut.taper) &&
      cut.depth <= width(blank[faceAxis(cut.face)])
    );
  if (cut.shape === 'tails') return cut.tails.every((t) => within(t.atEnd, cut.taper) && within(t.atBase, cut.taper));
  if (cut.shape === 'tenon') return cut.tongues.every((t) => within(t.a, 1) && within(t.b, 2));
  if (cut.shape === 'bore') {
    const [u, v] = ([0, 1, 2] as const).filter((a) => a !== faceAxis(cut.face)) as [0 | 1 | 2, 0 | 1 | 2];
    const r = cut.diameter / 2;
    return within([cut.at[0] - r, cut.at[0] + r], u) && within([cut.at[1] - r, cut.at[1] + r], v);
  }
  return false;
}

describe.each(cutting.map((k) => [k.kind, k] as const))('%s as solids', (name, kind) => {
  const check = (made: Made): void => {
    const { r, entering, receiving } = parts(made);
    expect(kernel.overlap(entering, receiving).volume).toBeLessThan(0.01);
    expect(kernel.lumps(entering)).toBe(1);
    if (kind.stance === 'cross') return;
    const total = kernel.volume(entering);
    expect(total).toBeCloseTo(boxVolume(made.site.entering.box) + tongue(made), 0);
    // Where the entering part stands, the room made in the receiving part is filled but for what is left on purpose.
    const own = made.site.entering.box;
    const where: Box3 = [[0, r[0][1]], meet(own[1], r[1]) ?? [0, 0], meet(own[2], r[2]) ?? [0, 0]];
    const room = boxVolume(where) - kernel.volume({ op: 'met', of: [receiving, { op: 'box', at: where }] });
    const filled = kernel.volume({ op: 'met', of: [entering, { op: 'box', at: where }] });
    expect(room - filled).toBeCloseTo(clearance(name, made), -0.5);
  };
  it('entering and receiving share no volume, and the one fills the other less its stated clearance', () => {
    check(make(kind, kind.example.spec, kind.example.site));
  });
  it('whatever the sizes, when nothing is refused', () => {
    let tried = 0;
    const sixteenths = (lo: number, hi: number) => fc.integer({ min: lo * 16, max: hi * 16 }).map((n) => n / 16);
    fc.assert(
      fc.property(
        sixteenths(0.5, 1.5),
        sixteenths(1.25, 16),
        sixteenths(0.5, 3),
        fc.constantFrom<1 | -1>(1, -1),
        fc.constantFrom('in', 'mm'),
        (t, w, T, hand, units) => {
          const made = make(kind, {}, boxesFor(kind, t, w, T), { hand, world: exampleWorld(units as 'in' | 'mm') });
          if (made.errors.length > 0) return;
          tried++;
          const { entering, receiving, e, r } = parts(made);
          expect(kernel.overlap(entering, receiving).volume).toBeLessThan(0.01);
          for (const cut of made.given.receiving) expect(inside(cut, r)).toBe(true);
          for (const cut of made.given.entering) expect(inside(cut, e)).toBe(true);
          if (kind.stance !== 'cross')
            expect(kernel.volume(entering)).toBeCloseTo(boxVolume(made.site.entering.box) + tongue(made), 0);
        },
      ),
      { numRuns: 60, seed: 7 },
    );
    expect(tried).toBeGreaterThan(15);
  });
});
/** A part t thick and w wide against wood T thick, standing as the kind wants. */
function boxesFor(kind: JointKind, t: number, w: number, T: number): ExampleSite {
  const at = (...s: [number, number][]): Box3 => byAxis((a): Span => [inches(s[a]?.[0] ?? 0), inches(s[a]?.[1] ?? 0)]);
  if (kind.stance === 'cross')
    return {
      entering: { box: at([0, w], [0, t], [0, 30]), grain: 2 },
      receiving: { box: at([0, w], [-9, 9 + t], [11, 11 + T]), grain: 1 },
    };
  const entering = { box: at([-20, 0], [0, t], [0, w]), grain: 0 as const };
  if (kind.stance === 'corner') return { entering, receiving: { box: at([0, T], [0, 20], [0, w]), grain: 1 } };
  if (kind.kind === 'mortise-and-tenon')
    return { entering, receiving: { box: at([0, T], [-0.5, t + 0.5], [-6, w + 6]), grain: 2 } };
  if (kind.kind === 'rabbet') return { entering, receiving: { box: at([0, T], [-12, t], [0, w]), grain: 2 } };
  return { entering, receiving: { box: at([0, T], [-9, 9 + t], [0, w + 1]), grain: kind.kind === 'groove' ? 2 : 1 } };
}

describe('screws', () => {
  const kind = jointKind('screw') as JointKind;
  const made = make(kind, kind.example.spec, kind.example.site);
  it('stand in wood: point inside the receiving part, every body in its holes', () => {
    expect(made.given.bodies).toHaveLength(3);
    for (const b of made.given.bodies) {
      expect(b.to[0]).toBeGreaterThan(inches(0.25));
      expect(b.to[0]).toBeLessThan(made.site.receiving.box[0][1] - inches(1 / 16));
    }
  });
  it('#8: shank 11/64, pilot 7/64 in hardwood (common practice)', () => {
    expect(made.given.entering[0]).toMatchObject({ diameter: inches(11 / 64), depth: 'through' });
    expect(made.given.receiving[0]).toMatchObject({ as: 'pilot', diameter: inches(7 / 64) });
  });
  it('refuses a screw that comes through: 5/8 in a drawer side of 1/2 (common practice)', () => {
    const boxes: ExampleSite = {
      entering: {
        box: [
          [inches(-0.0625), 0],
          [0, inches(1.75)],
          [0, inches(14)],
        ],
        grain: 2,
      },
      receiving: {
        box: [
          [0, inches(0.5)],
          [0, inches(4)],
          [0, inches(15)],
        ],
        grain: 2,
      },
    };
    expect(make(kind, { screw: '#6 x 5/8' }, boxes).errors).toContain('screw-through');
    expect(make(kind, { screw: '#6 x 3/8' }, boxes).errors).not.toContain('screw-through');
  });
  it('keep clear of what other joints took, with room for a driver', () => {
    const dovetail: Cut = {
      id: 'd',
      from: 'div',
      mates: [],
      rank: 2,
      shape: 'dovetail',
      as: 'socket',
      face: 'left',
      run: 1,
      taper: 2,
      runSpan: [0, inches(2.5)],
      atFace: [inches(17), inches(17.25)],
      atFloor: [inches(16.875), inches(17.375)],
      depth: inches(0.25),
    };
    const clear = make(kind, kind.example.spec, kind.example.site, {
      claims: [{ joint: 'div', part: 'entering', rank: 2, cut: dovetail }],
    });
    for (const b of clear.given.bodies) expect(Math.abs(b.from[2] - inches(17.125))).toBeGreaterThanOrEqual(inches(1));
  });
  it('slotted: the slot lies across the grain of what moves, shank + twice the swell', () => {
    const g = make(kind, { ...kind.example.spec, hole: 'slotted' }, kind.example.site, {
      world: exampleWorld('in', () => inches(0.25)),
    }).given;
    expect(g.entering[0]).toMatchObject({ as: 'slotted', slot: { axis: 1, length: inches(43 / 64) } });
    expect(g.traits.freedom).toBe('slides');
  });
  it('pocket: leaves the part at half its thickness, 15 degrees to the face', () => {
    const boxes: ExampleSite = {
      entering: {
        box: [
          [inches(-3.5), 0],
          [0, inches(0.75)],
          [0, inches(34.25)],
        ],
        grain: 2,
      },
      receiving: {
        box: [
          [0, inches(0.75)],
          [0, inches(2.5)],
          [0, inches(34.25)],
        ],
        grain: 2,
      },
    };
    const g = make(kind, { hole: 'pocket', count: 3 }, boxes);
    expect(g.errors).toEqual([]);
    const [b] = g.given.bodies;
    const [from, to] = [b?.from ?? [0, 0, 0], b?.to ?? [0, 0, 0]];
    const slope = (from[1] - to[1]) / (to[0] - from[0]);
    expect(slope).toBeCloseTo(0.2679, 3); // tan 15
    const atPlane = from[1] + from[0] * slope;
    expect(atPlane / inches(1)).toBeCloseTo(0.375, 2);
  });
});

describe('staves', () => {
  it('a side 19 wide from staves of 5 at most: four (sum)', () => {
    const kind = jointKind('edge') as JointKind;
    expect(make(kind, {}, kind.example.site).given.sizes['staves']?.value).toBe(4);
  });
});

describe('plain contact', () => {
  const kind = jointKind('butt') as JointKind;
  const lying = (e: 0 | 1 | 2, r: 0 | 1 | 2): ExampleSite => ({
    entering: { ...kind.example.site.entering, grain: e },
    receiving: { ...kind.example.site.receiving, grain: r },
  });
  const glued = (e: 0 | 1 | 2, r: 0 | 1 | 2) => make(kind, {}, lying(e, r)).given.traits.glue;
  it('is glued along the grain only, unless told (glue faces: common practice)', () => {
    expect(glued(2, 2)).toBe('long-long');
    expect(glued(1, 2)).toBe('none');
    expect(glued(0, 2)).toBe('none');
  });
  it('warns of glue on end grain, and of glue across more than 4 in of grain', () => {
    const codes = (e: 0 | 1 | 2, r: 0 | 1 | 2): string[] => {
      const site = exampleSite(lying(e, r));
      return kind.resolve({ glue: true }, site).findings.map((f) => f.code);
    };
    expect(codes(0, 2)).toEqual(['glue-end-grain']);
    expect(codes(2, 1)).toEqual(['glue-crossed']); // 11 1/2 across the grain of the receiving part
    expect(codes(1, 2)).toEqual(['glue-crossed']); // and of the entering part
    expect(codes(2, 2)).toEqual([]);
  });
});
