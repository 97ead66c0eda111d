import { beforeAll, describe, expect, it } from 'vitest';
import { massOf, partBodies } from '../../src/checks/bodies.js';
import type { CheckInput } from '../../src/checks/check.js';
import { boughtInAll, boughtMass, boughtOn } from '../../src/checks/weight/bought.js';
import { joinedOf } from '../../src/checks/weight/joined.js';
import { weight } from '../../src/checks/weight.js';
import { shippedInput } from './run.js';

const LB = 0.45359237;

describe('sub-assemblies by their joints', () => {
  let chest: CheckInput;
  let stand: CheckInput;
  beforeAll(async () => {
    [chest, stand] = await Promise.all([shippedInput('tall-chest'), shippedInput('nightstand')]);
  });
  it('the chest: what is glued up, the screwed top, the screwed apron', () =>
    expect(joinedOf(chest.piece, partBodies(chest)).map((g) => g.name)).toEqual([
      'A1 A2 A4 A5 A7 A8 B1–B4 R1–R4, glued up',
      'A3, top',
      'A6, apron',
    ]));
  it('the nightstand: panels that float go with their frame, screwed packers and top do not', () => {
    const [frame, ...rest] = joinedOf(stand.piece, partBodies(stand));
    expect(frame?.name).toMatch(/^E1–E6 .*glued up$/);
    expect(rest.map((g) => g.name)).toEqual(['P1, slide packer', 'P2, slide packer', 'P3, top cleat', 'T1, top']);
  });
  it('together with the drawers they are the whole, part by part', () => {
    for (const input of [chest, stand]) {
      const bodies = partBodies(input);
      const drawn = new Set(input.piece.drawers.flatMap((d) => d.parts));
      const drawers = bodies.filter((b) => drawn.has(b.part.id));
      const joined = joinedOf(input.piece, bodies).flatMap((g) => g.bodies);
      expect(new Set(joined.map((b) => b.part.id)).size).toBe(joined.length);
      expect(massOf(joined) + massOf(drawers)).toBeCloseTo(massOf(bodies), 9);
    }
  });
});

describe('bought things', () => {
  it('by hand: a slide of 16 in, a number 8 of 1 1/4', async () => {
    const { piece } = await shippedInput('tall-chest');
    const slide = piece.hardware.find((h) => h.kind === 'slide');
    // 1.65 kg a metre x .4064 m.
    expect(slide && boughtMass(slide)).toBeCloseTo(0.6706, 4);
    const screw = piece.hardware.find((h) => /^#8 . 1 1\/4$/.test(h.name));
    // .75 x pi/4 x (.164 in)^2 x 1.25 in = .0198 cubic inches of steel at .2836 lb: .0056 lb.
    expect((screw ? boughtMass(screw) : 0) / LB).toBeCloseTo(0.0056, 4);
  });
  it('five drawers on slides: ten slides, eight knobs, and its screws, less than a pound', async () => {
    const { piece } = await shippedInput('tall-chest');
    const kg = boughtInAll(piece);
    expect(kg).toBeGreaterThan(10 * 0.6706 + 8 * 0.1);
    expect(kg - 10 * 0.6706 - 8 * 0.1).toBeLessThan(LB);
    // With a long drawer go two knobs, a third of its two slides and the screws in it.
    const d = piece.drawers.find((x) => x.mark === 'D5');
    const on = d ? boughtOn(piece, d.id, d.parts) : 0;
    expect(on - 0.2 - (2 / 3) * 0.6706).toBeGreaterThan(0);
    expect(on - 0.2 - (2 / 3) * 0.6706).toBeLessThan(0.05);
  });
  it('are told as our default wherever they are weighed in', async () => {
    const { judgements, tables } = weight.run(await shippedInput('tall-chest'));
    const carried = judgements.find((j) => j.code === 'carry-heavy');
    expect(carried?.worked.inputs.find((i) => i.name === 'bought things')).toMatchObject({ memory: true });
    expect(tables?.[0]?.rows[1]?.[0]).toBe('Of it slides, pulls and screws *');
  });
});
