import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/diag/diagnostic.js';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { mm } from '../../src/lengths/length.js';
import type { Hardware, Joint, Part } from '../../src/piece/piece.js';
import { makeSolids } from '../../src/solids/make.js';
import type { Cut } from '../../src/words/cut.js';
import { jointOf, partAt, pieceOf, spanMm } from './piece.js';

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());

/** A post 40 x 40 x 400 with a mortise, and a rail 300 x 20 x 60 whose tenon (10 x 40, 25 long) stands in it. */
const mortise: Cut = {
  id: 'm.0',
  from: 'm',
  mates: ['rail'],
  rank: 2,
  shape: 'box',
  as: 'mortise',
  face: 'right',
  at: [spanMm(14, 40), spanMm(15, 25), spanMm(310, 350)],
};
const tenon: Cut = {
  id: 'm.1',
  from: 'm',
  mates: ['post'],
  rank: 2,
  shape: 'tenon',
  as: 'tenon',
  end: 'left',
  shoulder: 0,
  tongues: [{ a: spanMm(5, 15), b: spanMm(10, 50), length: mm(25) }],
};
const post = (cuts: readonly Cut[] = [mortise]): Part =>
  partAt(
    'post',
    [
      [0, 40],
      [0, 40],
      [0, 400],
    ],
    { cuts },
  );
const rail = (at = 40, cuts: readonly Cut[] = [tenon]): Part =>
  partAt(
    'rail',
    [
      [at, at + 300],
      [10, 30],
      [300, 360],
    ],
    { cuts, growth: [spanMm(25, 0), spanMm(0, 0), spanMm(0, 0)] },
  );
const joint = jointOf('m', 'rail', 'post', ['left']);
const codes = (findings: readonly Diagnostic[]): string[] => findings.map((f) => f.code);
const find = (
  parts: readonly Part[],
  joints: readonly Joint[] = [],
  hardware: readonly Hardware[] = [],
): readonly Diagnostic[] => makeSolids(pieceOf(parts, joints, hardware), kernel).findings;

describe('solids of a piece', () => {
  it('a sound mortise and tenon: volumes by hand, nothing found', () => {
    const { value, findings } = makeSolids(pieceOf([post(), rail()], [joint]), kernel);
    expect(findings).toEqual([]);
    expect(value!.parts[0]!.volume).toBeCloseTo(40 * 40 * 400 - 26 * 10 * 40, 6);
    expect(value!.parts[1]!.volume).toBeCloseTo(300 * 20 * 60 + 25 * 10 * 40, 6);
    expect(value!.parts[1]!.bounds).toEqual([
      [-25, 300],
      [0, 20],
      [0, 60],
    ]);
  });
  it('plain data: survives JSON but for its arrays', () => {
    const { value } = makeSolids(pieceOf([post()]), kernel);
    expect(JSON.parse(JSON.stringify(value!.parts[0]!.recipe))).toEqual(value!.parts[0]!.recipe);
  });
  it('no mortise: both are named, with volume and place', () => {
    const [first, ...more] = find([post([]), rail()], [joint]);
    expect(more).toEqual([]);
    expect(first!.code).toBe('parts-overlap');
    expect(first!.touches).toEqual(['post', 'rail']);
    expect(first!.message).toBe(
      'POST (part post) and RAIL (part rail) fill the same room: 10000 mm³, across 15 to 40 mm, deep 15 to 25 mm, up 310 to 350 mm.',
    );
    expect(first!.path).toEqual(['parts', 'rail']);
  });
  it('a joint whose parts stand apart', () => {
    expect(codes(find([post(), rail(70)], [joint]))).toEqual(['joint-apart']);
    expect(codes(find([post(), rail(60)], [joint]))).toEqual([]); // the tongue still enters the mortise by 5 mm
  });
  it('a butt joint must bear', () => {
    const plain = (at: number): Part =>
      partAt('rail', [
        [at, at + 300],
        [10, 30],
        [300, 360],
      ]);
    expect(find([post([]), plain(40)], [joint])).toEqual([]);
    expect(codes(find([post([]), plain(40.1)], [joint]))).toEqual(['joint-apart']);
    expect(codes(find([post([]), plain(39.9)], [joint]))).toEqual(['parts-overlap']);
  });
  it('a part cut through falls apart; a part cut away is empty', () => {
    const slot = (z0: number, z1: number): Cut =>
      ({ ...mortise, at: [spanMm(0, 40), spanMm(0, 40), spanMm(z0, z1)] }) as Cut;
    expect(codes(find([post([slot(100, 110)])]))).toEqual(['part-falls-apart']);
    expect(codes(find([post([slot(0, 400)])]))).toEqual(['part-empty']);
  });
  it('a cut that shortens the part is found, unless it is shaping', () => {
    const end: Cut = { ...mortise, at: [spanMm(0, 40), spanMm(0, 40), spanMm(0, 10)] };
    const [first] = find([post([end])]);
    expect(first!.code).toBe('part-size-off');
    expect(first!.message).toContain('should measure 400 mm up with its joints, but its cuts leave 390 mm');
    expect(find([post([{ ...end, rank: 4 }])])).toEqual([]);
  });
  it('a fault of the kernel names the part and its cuts', () => {
    const broken = { ...kernel, key: (r: never) => kernel.key(r), bounds: () => { throw new Error('unreachable'); } } as unknown as CountedKernel; // prettier-ignore
    expect(() => makeSolids(pieceOf([post()]), broken)).toThrow('part POST (post) with cuts m.0: unreachable');
  });
  it('hardware in wood that is not made for it, and in other hardware', () => {
    const pull = (id: string, into: string[], x: number): Hardware => ({
      id,
      kind: 'pull',
      name: 'pull',
      into,
      body: { op: 'box', at: [spanMm(x, x + 20), spanMm(15, 25), spanMm(20, 30)] },
    });
    expect(find([post([])], [], [pull('p', ['post'], 30)])).toEqual([]);
    expect(codes(find([post([])], [], [pull('p', [], 30)]))).toEqual(['hardware-overlap']);
    expect(codes(find([post([])], [], [pull('p', ['post'], 30), pull('q', ['post'], 45)]))).toEqual([
      'hardware-overlap',
    ]);
  });
});
