import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Axis, Face } from '../../src/geom/axis.js';
import { AXES, faceOf } from '../../src/geom/axis.js';
import type { Box3 } from '../../src/geom/box.js';
import { byAxis, width } from '../../src/geom/box.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { Recipe } from '../../src/geom/recipe.js';
import { exampleSite, exampleWorld } from '../../src/joints/example.js';
import { JOINTS } from '../../src/joints/index.js';
import type { JointKind, Resolved } from '../../src/joints/joint.js';
import { rebuild } from '../../src/proof/rebuild.js';
import { partRecipe } from '../../src/solids/cutRecipe.js';
import { sayCuts } from '../../src/words/callout.js';
import type { CardPart } from '../../src/words/card.js';
import { cardText, parseCard } from '../../src/words/card.js';
import type { Cut } from '../../src/words/cut.js';
import { mapCut } from '../../src/words/mapCut.js';

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

const WORDS: Readonly<Record<Face, string>> = {
  left: 'LEFT',
  right: 'RIGHT',
  front: 'FRONT',
  back: 'BACK',
  bottom: 'BOTTOM',
  top: 'TOP',
};

/** One of the two parts of a site as a part of its own, its shoulder box's low corner at the origin. */
function partOf(
  box: Box3,
  thickness: Axis,
  growth: Partial<Record<Face, number>>,
  cuts: readonly Cut[],
): CardPart & { readonly cuts: readonly Cut[] } {
  const [a, b] = AXES.filter((x) => x !== thickness) as [Axis, Axis];
  const [long, wide] = width(box[a]) >= width(box[b]) ? [a, b] : [b, a];
  const shift = byAxis((x) => 0 - box[x][0]);
  return {
    mark: 'A1',
    size: byAxis((x) => ({ value: width(box[x]) })) as CardPart['size'],
    growth: byAxis((x) => [growth[faceOf(x, -1)] ?? 0, growth[faceOf(x, 1)] ?? 0] as const) as unknown as Box3,
    thickness,
    width: wide,
    length: long,
    faceWords: WORDS,
    reference: { face: faceOf(thickness, -1), edge: faceOf(wide, -1), end: faceOf(long, -1) },
    cuts: cuts.map((c) => mapCut(c, { to: [0, 1, 2], sign: [1, 1, 1], shift })),
  };
}
/** Volume by which two solids differ, mm3, both taken from their blanks' low corners. */
function difference(made: Recipe, read: Recipe): number {
  const a = kernel.bounds(made);
  const b = kernel.bounds(read);
  if (!a || !b) return Infinity;
  const origin = byAxis((x) => (a[x][0] - b[x][0]) * 1e6);
  const placed: Recipe = { op: 'placed', by: { rotation: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], origin }, of: read }; // prettier-ignore
  const both = kernel.overlap(made, placed).volume;
  return kernel.volume(made) + kernel.volume(placed) - 2 * both;
}
function roundTrip(kind: JointKind, spec: Resolved, units: 'in' | 'mm'): void {
  const { entering, receiving } = kind.example.site;
  const site = exampleSite(kind.example.site, {
    world: exampleWorld(units),
    material: kind.kind === 'rabbet' ? 'sheet' : 'solid',
  });
  const { r } = kind.resolve(spec, site);
  const given = kind.give(r, site);
  for (const part of [
    partOf(entering.box, 1, given.growth.entering, given.entering),
    partOf(receiving.box, 0, given.growth.receiving ?? {}, given.receiving),
  ]) {
    const callouts = sayCuts(part, part.cuts, { units, markOf: (id) => id.toUpperCase() });
    const card = parseCard(cardText(part, callouts, units), WORDS);
    expect(card?.unread, callouts.map((c) => c.text).join('\n')).toEqual([]);
    if (!card) continue;
    // 1 mm3 a part where all is on the step; else what the last printed place (.001 in) makes over the walls of a cut.
    expect(difference(partRecipe(part as never), rebuild(card)), callouts.map((c) => c.text).join('\n')).toBeLessThan(
      units === 'in' ? 1 : 5,
    );
  }
}

/** The printed callouts alone, read back and rebuilt by the proof's own code, give the same parts. */
describe.each(JOINTS.map((k) => [k.kind, k] as const))('%s', (_, kind) => {
  it('its callouts rebuild both parts, in inches', () => roundTrip(kind, kind.example.spec, 'in'));
  it('with every size by rule', () => roundTrip(kind, {}, 'in'));
});

it('a card that lacks a callout does not pass: the missing dado shows as its volume', () => {
  const kind = JOINTS.find((k) => k.kind === 'dado') as JointKind;
  const site = exampleSite(kind.example.site);
  const given = kind.give(kind.resolve({}, site).r, site);
  const part = partOf(kind.example.site.receiving.box, 0, {}, given.receiving);
  const card = parseCard(cardText(part, [], 'in'), WORDS);
  if (!card) throw new Error('no card');
  expect(difference(partRecipe(part as never), rebuild(card))).toBeCloseTo(0.25 * 0.75 * 11 * 25.4 ** 3, 0);
});
