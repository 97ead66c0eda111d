import { describe, expect, it } from 'vitest';
import { boxOf, definition, errorsOf, findingsOf, part, partOf, solved } from './sample.js';

describe('extents', () => {
  it('reads two ends, an end and a size, a middle and a size, and one end of a sheet', () => {
    const piece = solved(
      definition({
        parts: {
          a: part({ stock: 'thick', across: ['1/2', '2 1/4'] }),
          b: part({ across: { from: '2', size: '3/4' }, deep: { to: '5', size: '2' } }),
          c: part({ across: { mid: '10', size: '7/8' } }),
          d: part({ stock: 'ply', across: ['0', '10'], deep: { from: '7' }, up: ['0', '20'] }),
          e: part({ stock: 'ply', across: ['0', '10'], deep: { to: '7' }, up: ['0', '20'] }),
        },
      }),
    );
    expect(boxOf(piece, 'a')[0]).toEqual([0.5, 2.25]);
    expect(boxOf(piece, 'b').slice(0, 2)).toEqual([
      [2, 2.75],
      [3, 5],
    ]);
    expect(boxOf(piece, 'c')[0]).toEqual([9.5625, 10.4375]);
    expect(boxOf(piece, 'd')[1]).toEqual([7, 7.205]);
    expect(boxOf(piece, 'e')[1]).toEqual([6.795, 7]);
  });

  it('takes a bare part id as its face nearer the other end', () => {
    const piece = solved(
      definition({
        parts: {
          post: part({ across: ['0', '1'] }),
          far: part({ across: ['9', '10'] }),
          rail: part({ across: ['post', 'far'], deep: ['0', '1'], grain: 'across' }),
          inset: part({ across: ['post + 1/4', 'far - 1/4'], deep: ['0', '1'], grain: 'across' }),
        },
      }),
    );
    expect(boxOf(piece, 'rail')[0]).toEqual([1, 9]);
    expect(boxOf(piece, 'inset')[0]).toEqual([1.25, 8.75]);
  });

  it('asks which face is meant where a bare part id has no other end', () => {
    const [f] = errorsOf(definition({ parts: { a: part(), b: part({ across: { mid: 'a', size: '1' } }) } }));
    expect(f?.code).toBe('which-face');
    expect(f?.path).toEqual(['parts', 'b', 'across', 'mid']);
  });

  it.each([
    [{ from: '0', to: '1', size: '1' }, 'extent-form'],
    [{ size: '1' }, 'extent-form'],
    [{}, 'extent-form'],
    [{ from: '0' }, 'extent-short'],
  ] as const)('refuses %j', (across, code) => {
    expect(errorsOf(definition({ parts: { a: part({ across }) } })).map((f) => f.code)).toEqual([code]);
  });
  it('refuses a part without an extent, at the part', () => {
    const { across: _across, ...rest } = part();
    const [f] = errorsOf(definition({ parts: { a: rest } }));
    expect([f?.code, f?.path]).toEqual(['extent-missing', ['parts', 'a']]);
  });
  it('refuses nothing and less than nothing, with the figures', () => {
    const found = errorsOf(
      definition({ measures: { W: '2' }, parts: { a: part({ across: ['W', '1'] }), b: part({ up: ['0', '0'] }) } }),
    );
    expect(found.map((f) => [f.code, f.path.join('.')])).toEqual([
      ['size-not-positive', 'parts.a.across'],
      ['size-not-positive', 'parts.b.up'],
    ]);
    expect(found[0]?.message).toContain('a.left is 2 in');
  });
  it('tells one slip once, though other parts are made from it', () => {
    const found = errorsOf(
      definition({
        measures: { W: '2 +' },
        parts: { a: part({ across: ['0', 'W'] }), b: part({ across: ['a', '9'] }), c: part({ up: ['0', 'b.top'] }) },
      }),
    );
    expect(found.map((f) => f.path.join('.'))).toEqual(['measures.W']);
  });
});

describe('names', () => {
  it('offers the name that is meant', () => {
    const found = errorsOf(
      definition({
        measures: { width: '9' },
        parts: { side_left: part({ across: ['0', 'widht'] }), b: part({ across: ['side_lfet', '9'] }) },
      }),
    );
    expect(found.map((f) => [f.code, f.hint])).toEqual([
      ['name-unknown', 'Did you mean "width"?'],
      ['name-unknown', 'Did you mean "side_left"?'],
    ]);
    expect(found[0]?.span).toEqual([0, 5]);
  });
  it('prints a ring of sizes as a chain, once, at one of its places', () => {
    const found = errorsOf(
      definition({
        parts: { side: part({ up: ['0', 'top.bottom'] }), top: part({ up: { from: 'side.top', size: '1' } }) },
      }),
    );
    expect(found.map((f) => f.code)).toEqual(['cycle']);
    expect(found[0]?.message).toContain('side.top -> side.up.to -> top.bottom -> top.up.from -> side.top');
    expect(found[0]?.path).toEqual(['parts', 'side', 'up']);
  });
  it('finds a ring of measures', () => {
    const found = errorsOf(definition({ measures: { A: 'B', B: 'A + 1' }, parts: { a: part() } }));
    expect(found.map((f) => [f.code, f.message])).toEqual([['cycle', 'These sizes wait for each other: A -> B -> A.']]);
  });
  it('has one name space', () => {
    expect(errorsOf(definition({ measures: { a: '1' }, parts: { a: part() } })).map((f) => f.code)).toEqual([
      'id-twice',
    ]);
  });
});

describe('stock', () => {
  it('warns where a quarter does not yield the thickness, refuses where it is not there', () => {
    // 4/4 planes to 7/8 in at most (short and flat), 5/4 to 1 1/16: common practice
    const at = (stock: string, t: string) =>
      findingsOf(
        definition({ parts: { a: part({ stock, across: ['0', t], deep: ['0', '3'], up: ['0', '20'] }) } }),
      ).map((f) => f.code);
    expect(at('poplar', '13/16')).toEqual([]);
    expect(at('poplar', '7/8')).toEqual(['stock-barely-thick']);
    expect(at('poplar', '15/16')).toEqual(['thicker-than-stock']);
    expect(at('poplar', '1 1/8')).toEqual(['thicker-than-stock']);
    expect(at('oak', '1')).toEqual([]);
    expect(at('oak', '1 1/16')).toEqual(['stock-barely-thick']);
    expect(at('oak', '1 1/8')).toEqual(['thicker-than-stock']);
  });
  it('refuses a sheet that is not as thick as it measures', () => {
    const [f] = errorsOf(
      definition({ parts: { a: part({ stock: 'ply', across: ['0', '1/4'], deep: ['0', '9'], up: ['0', '9'] }) } }),
    );
    expect(f?.code).toBe('thickness-not-stock');
  });
  it('offers the stock and the species that are meant', () => {
    const found = errorsOf(
      definition({ stock: { oak: { lumber: 'oak-whit', quarter: '4/4' } }, parts: { a: part({ stock: 'oka' }) } }),
    );
    expect(found.map((f) => f.hint)).toEqual(['Did you mean "oak-white"?', 'Did you mean "oak"?']);
  });
});

describe('copies', () => {
  it('counts out `each`, in ids, marks and expressions', () => {
    const piece = solved(
      definition({
        measures: { row: ['3', '4'] },
        parts: {
          rail_1: part({ up: { from: '20', size: '3/4' }, mark: 'R1' }),
          'rail_{i}': {
            each: 'i = 2..3',
            like: 'rail_1',
            mark: 'R{i}',
            up: { to: 'rail_{i-1}.bottom - row_{i-1}', size: '3/4' },
          },
        },
      }),
    );
    expect(piece.parts.map((p) => p.mark)).toEqual(['R1', 'R2', 'R3']);
    expect(['rail_1', 'rail_2', 'rail_3'].map((id) => boxOf(piece, id)[2]?.[0])).toEqual([20, 16.25, 11.5]);
  });
  it('makes a grid of two letters, the second running fastest', () => {
    const piece = solved(
      definition({
        parts: {
          'peg_{i}_{j}': part({
            each: 'i = 1..2, j = 1..3',
            across: { from: '{i} * 2', size: '1' },
            up: { from: '{j} * 4', size: '3' },
          }),
        },
      }),
    );
    expect(piece.parts.map((p) => p.id)).toEqual(['peg_1_1', 'peg_1_2', 'peg_1_3', 'peg_2_1', 'peg_2_2', 'peg_2_3']);
    expect(boxOf(piece, 'peg_2_3')[2]).toEqual([12, 15]);
    expect(partOf(piece, 'peg_2_1').mark).toBe('A4');
  });
  it.each([
    ['i = 3..1', 'each-backwards'],
    ['i 1..3', 'each-form'],
    ['i = 1..900', 'each-range'],
  ])('refuses "%s"', (each, code) => {
    expect(errorsOf(definition({ parts: { 'a_{i}': part({ each }) } })).map((f) => f.code)).toEqual([code]);
  });
  it('refuses a ring of likes and a mirror about nothing', () => {
    const ring = errorsOf(definition({ parts: { a: { like: 'b' }, b: { like: 'a' } } }));
    expect(ring[0]?.code).toBe('like-in-a-circle');
    expect(errorsOf(definition({ parts: { a: part(), b: { mirror: 'a' } } })).map((f) => f.code)).toEqual([
      'mirror-needs-about',
    ]);
  });
  it('mirrors shape, holes and show faces, and keeps a mirror of a mirror as it was', () => {
    const piece = solved(
      definition({
        parts: {
          a: part({
            show: ['left'],
            shape: [{ cut: 'rabbet', face: 'right', edge: 'back', on: '1/4', into: '1/8' }],
            holes: [{ face: 'front', at: ['1/4', '1'], diameter: '1/8' }],
          }),
          b: { mirror: 'a', about: '4' },
          c: { mirror: 'b', about: '12' },
        },
      }),
    );
    expect(boxOf(piece, 'b')[0]).toEqual([7, 8]);
    expect(boxOf(piece, 'c')[0]).toEqual([16, 17]);
    const [hole, rabbet] = partOf(piece, 'b').cuts;
    expect(rabbet).toMatchObject({
      face: 'left',
      at: [
        [0, 3175000],
        [44450000, 50800000],
        [0, 76200000],
      ],
    });
    expect(hole).toMatchObject({ face: 'front', at: [19050000, 25400000] });
    expect(partOf(piece, 'b').show).toEqual(['right']);
    expect(partOf(piece, 'c').cuts).toEqual(partOf(piece, 'a').cuts);
    expect(partOf(piece, 'c').show).toEqual(['left']);
    expect([partOf(piece, 'b').mirrorOf, partOf(piece, 'c').turnOf]).toEqual(['a', 'a']);
  });
  it('is like a mirror image, but for what it gives itself', () => {
    const piece = solved(
      definition({
        parts: { a: part({ show: ['left'] }), b: { mirror: 'a', about: '4' }, c: { like: 'b', up: ['10', '14'] } },
      }),
    );
    expect(boxOf(piece, 'c')).toEqual([
      [7, 8],
      [0, 2],
      [10, 14],
    ]);
    expect(partOf(piece, 'c').show).toEqual(['right']);
  });
  it('repeats a group with its parts and joints', () => {
    const piece = solved(
      definition({
        parts: {},
        groups: {
          left: {
            parts: {
              post: part({ across: ['0', '1'], up: ['0', '9'] }),
              arm: part({ across: ['post', '9'], deep: ['1/2', '1 1/2'], up: ['5', '6'], grain: 'across' }),
            },
            joints: { tenon: { kind: 'mortise-and-tenon', part: 'arm', into: 'post' } },
          },
          right: { mirror: 'left', about: '20' },
        },
      }),
    );
    expect(piece.parts.map((p) => p.id)).toEqual(['left_arm', 'left_post', 'right_arm', 'right_post']);
    expect(boxOf(piece, 'right_arm')[0]).toEqual([31, 39]);
    expect(piece.joints.map((j) => [j.id, j.entering, j.receiving])).toEqual([
      ['left_tenon.1', 'left_arm', 'left_post'],
      ['right_tenon.1', 'right_arm', 'right_post'],
    ]);
  });
});
