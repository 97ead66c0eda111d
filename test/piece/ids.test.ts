import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { resolvePiece } from '../../src/piece/resolve.js';
import { definition, errorsOf, findingsOf, part, partOf, solved } from './sample.js';

describe('one name space', () => {
  it('refuses words with a meaning of their own', () => {
    expect(
      errorsOf(definition({ parts: { floor: part() }, measures: { max: '1' } })).map((f) => [f.code, f.path.join('.')]),
    ).toEqual([
      ['id-reserved', 'parts.floor'],
      ['id-reserved', 'measures.max'],
    ]);
  });
  it('refuses one id for two kinds of thing', () => {
    expect(
      errorsOf(definition({ parts: { a: part() }, joints: { a: { kind: 'edge', part: 'a' } } })).map((f) => f.code),
    ).toEqual(['id-twice']);
    expect(
      errorsOf(definition({ parts: { row_2: part() }, measures: { row: ['1', '2'] } })).map((f) => f.path),
    ).toEqual([['measures', 'row']]);
  });
  it('refuses a run of parts that are not there', () => {
    const [f] = errorsOf(
      definition({ parts: { front_1: part() }, runs: { fronts: { parts: ['front_*', 'frnt_1'] } } }),
    );
    expect([f?.code, f?.path]).toEqual(['part-unknown', ['runs', 'fronts', 'parts', 1]]);
  });
  it('gives runs of grain in the order of the run, whatever the order of the definition', () => {
    const front = (low: string) => part({ grain: 'across', across: { from: low, size: '4' }, deep: ['0', '3/4'] });
    const parts = { lid: part(), front_1: front('9'), front_2: front('0'), front_3: front('5') };
    const run = (more: object) => ({ fronts: { parts: ['lid', 'front_*'], ...more } });
    expect(solved(definition({ parts, runs: run({}) })).runs).toEqual([
      { id: 'fronts', parts: ['lid', 'front_1', 'front_2', 'front_3'] },
    ]);
    expect(solved(definition({ parts, runs: run({ order: 'left to right', from: 'one board' }) })).runs).toEqual([
      { id: 'fronts', parts: ['lid', 'front_2', 'front_3', 'front_1'], order: 'left to right', from: 'one board' },
    ]);
    expect(solved(definition({ parts, runs: run({ order: 'right to left' }) })).runs?.[0]?.parts).toEqual([
      'lid',
      'front_1',
      'front_3',
      'front_2',
    ]);
  });
  it('refuses runs of mixed stock, of a part twice, of a board without grain', () => {
    const codes = (parts: object, runs: object): string[] =>
      errorsOf(definition({ parts, runs } as never)).map((f) => f.code);
    const mixed = { a: part(), b: part({ stock: 'poplar', across: ['0', '3/4'] }) };
    expect(codes(mixed, { r: { parts: ['a', 'b'] } })).toEqual(['run-mixed-stock']);
    expect(codes({ a: part() }, { r: { parts: ['a', 'a'] } })).toEqual(['run-twice']);
    expect(codes({ a: part() }, { r: { parts: ['a'] }, s: { parts: ['a'] } })).toEqual(['run-twice']);
    const sheet = { a: part({ stock: 'ply', across: { from: '0' }, grain: 'none' }) };
    expect(codes(sheet, { r: { parts: ['a'] } })).toEqual(['run-no-grain']);
  });
  it('counts a joint out by `each`', () => {
    const piece = solved(
      definition({
        parts: {
          'post_{i}': part({ each: 'i = 1..3', across: { from: '{i} * 10', size: '1' }, up: ['0', '9'] }),
          'arm_{i}': part({
            each: 'i = 1..3',
            across: { from: 'post_{i}.right', size: '5' },
            deep: ['1/2', '1 1/2'],
            up: { from: '2 + {i}', size: '1' },
            grain: 'across',
          }),
        },
        joints: {
          arms: { kind: 'mortise-and-tenon', each: 'i = 1..2', part: 'arm_{i}', into: 'post_{i}' },
          last: { kind: 'mortise-and-tenon', part: 'arm_{3..3}', into: 'post_{i}' },
        },
      }),
    );
    expect(piece.joints.map((j) => [j.id, j.entering, j.receiving])).toEqual([
      ['arms.1', 'arm_1', 'post_1'],
      ['arms.2', 'arm_2', 'post_2'],
      ['last.1', 'arm_3', 'post_3'],
    ]);
  });
});

describe('grain', () => {
  it('cannot run through a sheet, and should not through a board', () => {
    const at = (stock: string, deep: readonly [string, string] | { from: string }) =>
      findingsOf(
        definition({ parts: { a: part({ stock, across: ['0', '8'], deep, up: ['0', '9'], grain: 'deep' }) } }),
      );
    expect(at('ply', { from: '0' }).map((f) => [f.code, f.severity])).toEqual([['grain-through', 'error']]);
    expect(at('oak', ['0', '7/8']).map((f) => f.code)).toContain('grain-through');
    expect(at('oak', ['0', '7/8']).find((f) => f.code === 'grain-through')?.severity).toBe('warning');
  });
  it('runs along the longest side where lumber does not say, and not at all in plain board', () => {
    const piece = solved(
      definition({
        stock: {
          oak: { lumber: 'oak-white', quarter: '8/4' },
          mdf: { sheet: 'mdf', thickness: '3/4', size: ['97', '49'] },
        },
        parts: {
          a: part({ across: ['0', '5'], deep: ['0', '1'] }),
          b: part({ stock: 'mdf', across: { from: '0' }, deep: ['0', '10'], up: ['0', '20'] }),
        },
      }),
    );
    expect([partOf(piece, 'a').grain, partOf(piece, 'b').grain, partOf(piece, 'b').length]).toEqual([0, undefined, 2]);
  });
});

it('never throws, whatever the words in a definition are', () => {
  const word = fc.oneof(
    fc.constantFrom(
      '0',
      '1',
      'W',
      'a',
      'b',
      'a.top',
      'b.left',
      'a.nose',
      '3/4',
      '1 1/2',
      '-2',
      'W / 0',
      'W * W',
      '((',
      '8-1/4',
      'min(W, 2)',
      '{i}',
      '',
      '1e9',
      '99999',
      'oak',
      'ply',
    ),
    fc.string({ maxLength: 6 }),
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
  );
  const extent = fc.oneof(
    fc.tuple(word, word),
    fc.record({ from: word, size: word }),
    fc.record({ to: word, size: word }),
    fc.record({ mid: word, size: word }),
    fc.record({ from: word }),
    fc.constant({}),
  );
  const spec = fc.record(
    {
      stock: fc.constantFrom('oak', 'ply', 'none'),
      across: extent,
      deep: extent,
      up: extent,
      grain: fc.constantFrom('across', 'up', 'none'),
      like: fc.constantFrom('a', 'b', 'x'),
      mirror: fc.constantFrom('a', 'b'),
      about: word,
      stand: fc.record({
        at: fc.tuple(word, word, word),
        reach: fc.constantFrom('floor', 'a.top', 'x'),
        front: fc.double({ noNaN: true, min: -100, max: 100 }),
        section: fc.tuple(word, word),
      }),
      span: fc.record({
        from: fc.constantFrom('a.left', 'b.top', 'x', 'c_1.right'),
        to: fc.constantFrom('a.right', 'b.front', 'c_1'),
        at: word,
        section: fc.tuple(word, word),
      }),
      turn: fc.record({ about: fc.constantFrom('up', 'deep'), by: fc.double({ noNaN: true, min: -400, max: 400 }) }),
      each: fc.constantFrom('i = 1..2', 'j', ''),
    },
    { requiredKeys: ['stock', 'across', 'deep', 'up'] },
  );
  const joint = fc.record({
    kind: fc.constantFrom(
      'dado',
      'groove',
      'half-blind-dovetail',
      'mortise-and-tenon',
      'edge',
      'edge-halving',
      'rabbet',
      'screw',
    ),
    part: fc.constantFrom('a', 'b', '*', 'b_{i}'),
    into: fc.constantFrom('a', '*', 'x'),
    depth: word,
    stop: word,
    from: fc.constantFrom('back', 'top', 'x'),
  });
  fc.assert(
    fc.property(fc.record({ a: spec, b: spec, 'c_{i}': spec }), word, joint, (parts, W, j) => {
      const out = resolvePiece(
        definition({ measures: { W: W as string }, parts: parts as never, joints: { j } as never }),
      );
      expect(out.value === undefined).toBe(out.findings.some((f) => f.severity === 'error'));
    }),
    { numRuns: 400, seed: 7 },
  );
});
