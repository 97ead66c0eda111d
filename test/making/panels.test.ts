import { describe, expect, it } from 'vitest';
import { AXES, faceAxis, faceSign, inFace } from '../../src/geom/axis.js';
import { reachOf } from '../../src/geom/reach.js';
import { inches, toIn } from '../../src/lengths/length.js';
import { glueOf, panels, type Panel } from '../../src/making/panels.js';
import { blanksOf } from '../../src/making/rough.js';
import { blankBox, zonesOf } from '../../src/making/zones.js';
import type { Piece } from '../../src/piece/piece.js';
import { cutRecipe } from '../../src/solids/cutRecipe.js';
import { byMark, shippedPiece } from '../specimens/pieces.js';

const NAMES = ['tall-chest', 'nightstand', 'letter-cabinet'] as const;
const of = (piece: Piece): Panel[] => panels(piece, blanksOf(piece));
const marked = (piece: Piece, mark: string): Panel => {
  const p = of(piece).find((x) => x.parts.some((part) => part.mark === mark));
  if (!p) throw new Error(`no panel ${mark}`);
  return p;
};

describe('panels', () => {
  const chest = shippedPiece('tall-chest');
  it('of the chest: sides, top and divider, by their joints of staves', () => {
    expect(of(chest).map((p) => p.part.mark)).toEqual(['A1', 'A2', 'A3', 'A5']);
    const side = marked(chest, 'A1');
    expect([side.letters.join(''), side.face, side.edge, side.end, side.toward]).toEqual([
      'abcd',
      'left',
      'front',
      'bottom',
      'top',
    ]);
    // Four staves of 4 7/8: glue lines at 4 7/8, 9 3/4, 14 5/8.
    expect(side.joints.map((j) => [j.staves.join('/'), toIn(j.at)])).toEqual([
      ['a/b', 4.875],
      ['b/c', 9.75],
      ['c/d', 14.625],
    ]);
    expect(marked(chest, 'A3').toward).toBe('front');
  });

  // Rail sockets of the side, by their tops in the piece: 34 3/8, 26 5/8, 17 7/8, 8 1/8 (3/4 thick), and the top rails at 41 1/8.
  it('keep biscuits off the sockets of the side: half a biscuit and 1/2 in beside each', () => {
    const side = marked(chest, 'A1');
    const away = inches(0.5) + 28e6;
    for (const mark of ['R1', 'R2', 'R3', 'R4']) {
      const rail = byMark(chest, mark);
      // Up from the floor, and 1/2 in of trim below it.
      const [low, high] = [rail.place.origin[2], rail.place.origin[2] + inches(0.75)].map((v) => v + inches(0.5)) as [
        number,
        number,
      ];
      for (const j of side.joints)
        for (const at of j.aligners)
          expect(at <= low - away + 1 || at >= high + away - 1, `${mark} and ${toIn(at)}`).toBe(true);
    }
    expect(side.joints.every((j) => j.aligners.length >= 4)).toBe(true);
  });

  it.each(NAMES)('%s: no biscuit in a keep-out or beyond the trim, none nearer than its length to the next', (name) => {
    for (const p of of(shippedPiece(name)))
      for (const j of p.joints) {
        const trim = (p.rough.length - p.finished[2]) / 2;
        for (const [i, at] of j.aligners.entries()) {
          expect(at).toBeGreaterThan(trim + 28e6);
          expect(at).toBeLessThan(p.rough.length - trim - 28e6);
          for (const [from, to] of j.keepOut) expect(at <= from || at >= to).toBe(true);
          expect(at - (j.aligners[i - 1] ?? -Infinity)).toBeGreaterThan(56e6);
        }
      }
  });
  it('takes none in wood of 1/4', () => {
    const panel = marked(shippedPiece('nightstand'), 'E3');
    expect([panel.rows, panel.joints.every((j) => j.aligners.length === 0)]).toEqual([0, true]);
    expect(panel.parts.map((p) => p.mark)).toEqual(['E3', 'E6']);
  });

  it('passes a planer of 15 in two halves, one of 20 whole; says how many clamps the shop has', () => {
    const shop = (width: number): Piece => ({
      ...chest,
      profile: {
        machines: { planer: { width: inches(width) } },
        clamps: [
          { opening: inches(50), count: 2 },
          { opening: inches(12), count: 9 },
        ],
      },
    });
    const narrow = marked(shop(15), 'A1');
    expect(narrow.halves?.groups).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    expect(narrow.halves?.widths.map(toIn)).toEqual([9.75, 9.75]);
    expect(narrow.clamps.has).toBe(2);
    expect(marked(shop(20), 'A1').halves).toBeUndefined();
    // Three of 5 1/8 pass 15 5/8, so that a top of four is planed in two.
    expect(marked(shop(16), 'A3').halves?.groups.map((g) => g.length)).toEqual([2, 2]);
    expect(marked(shop(6), 'A1').halves?.groups.map((g) => g.length)).toEqual([1, 1, 1, 1]);
  });
});

describe('glue', () => {
  // By hand: 9 joints of 60 in by .8 in are 3 square feet; 14 ml each at the least, 19 and half as much again at the most.
  it('for ten staves, 60 in long and .8 thick: 42 to 85 ml', () => {
    const g = glueOf(inches(0.8), { length: inches(60), staves: 10, thickness: inches(0.8) }, 9);
    expect(g.ml[0]).toBeCloseTo(42, 6);
    expect(g.ml[1]).toBeCloseTo(85.5, 6);
    // 45 ft at 15 s and 9 clamps at 20 s: 855 s; 336 are allowed, 156 of them for spreading, so five goes.
    expect([g.seconds, g.limit, g.goes]).toEqual([855, 336, 5]);
  });
});

describe('zones of cuts', () => {
  /** The tool as the solids are made with it, within the blank, lies inside the boxes: worked out by other code. */
  it.each(NAMES)('%s: hold what the tools take', (name) => {
    let seen = 0;
    for (const part of shippedPiece(name).parts) {
      const box = blankBox(part);
      for (const cut of part.cuts) {
        const recipe = cutRecipe(cut, box);
        const reach = recipe && reachOf(recipe);
        // Of a leaning hole the reach runs on in the air, the other way.
        if (!reach || cut.shape === 'outline' || (cut.shape === 'bore' && cut.tilt)) continue;
        const zones = zonesOf(cut, part, { axis: part.width, span: box[part.width] });
        for (const axis of AXES) {
          const low = Math.max(reach[axis][0], box[axis][0]);
          const high = Math.min(reach[axis][1], box[axis][1]);
          // Beyond the blank there is no wood; a tool may clear a face by a little.
          if (high <= low) continue;
          expect(Math.min(...zones.map((z) => z[axis][0])), `${part.mark} ${cut.id}`).toBeLessThanOrEqual(low + 2);
          expect(Math.max(...zones.map((z) => z[axis][1])), `${part.mark} ${cut.id}`).toBeGreaterThanOrEqual(high - 2);
        }
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(20);
  });
  // A pocket of the chest's apron lies at 15 degrees to the face: over by .9659 of its depth, its mouth as long as .2588 makes it.
  it('a pocket goes to the side to which it leans', () => {
    const apron = byMark(shippedPiece('tall-chest'), 'A6');
    const pocket = apron.cuts.find((c) => c.shape === 'bore' && c.tilt);
    if (pocket?.shape !== 'bore' || !pocket.tilt || pocket.depth === 'through') throw new Error('no pocket');
    const axis = faceAxis(pocket.tilt.toward);
    const [zone] = zonesOf(pocket, apron, { axis: apron.width, span: blankBox(apron)[apron.width] });
    const mouth = pocket.at[inFace(pocket.face).indexOf(axis)] ?? 0;
    const sign = faceSign(pocket.tilt.toward);
    const far = sign > 0 ? (zone?.[axis][1] ?? 0) - mouth : mouth - (zone?.[axis][0] ?? 0);
    expect(pocket.tilt.degrees).toBe(75);
    expect(far).toBeCloseTo(
      pocket.depth * 0.9659 + Math.max(pocket.diameter, pocket.seat?.diameter ?? 0) / 2 / 0.2588,
      -5,
    );
  });
});
