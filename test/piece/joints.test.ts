import { describe, expect, it } from 'vitest';
import { inches, toIn } from '../../src/lengths/length.js';
import { agree, matches } from '../../src/piece/patterns.js';
import type { JointKind } from '../../src/joints/joint.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { definition, errorsOf, part, partOf, solved } from './sample.js';

describe('patterns', () => {
  const ids = ['rail_1', 'rail_2', 'rail_3', 'rail_12', 'side_left', 'short_1.front', 'leg_1_2'];
  it.each([
    ['rail_{2..5}', ['rail_2', 'rail_3']],
    ['rail_*', ['rail_1', 'rail_2', 'rail_3', 'rail_12']],
    ['*', ['rail_1', 'rail_2', 'rail_3', 'rail_12', 'side_left', 'leg_1_2']],
    ['short_*.front', ['short_1.front']],
    ['side_left', ['side_left']],
    ['side', []],
  ])('%s', (pattern, want) => {
    expect(matches(pattern, ids).map((m) => m.id)).toEqual(want);
  });
  it('pairs index with index by the same letter', () => {
    const [a] = matches('rail_{i}', ['rail_3']);
    const [b] = matches('peg_{i-1}', ['peg_2']);
    const [c] = matches('peg_{j}', ['peg_2']);
    expect([a?.letters, b?.letters]).toEqual([{ i: 3 }, { i: 3 }]);
    expect(agree(a?.letters ?? {}, b?.letters ?? {})).toBe(true);
    expect(agree({ i: 3 }, { i: 2 })).toBe(false);
    expect(agree(a?.letters ?? {}, c?.letters ?? {})).toBe(true);
  });
});

const shelf = (more: object = {}, joint: object = {}) =>
  definition({
    parts: {
      side_left: part({ across: ['0', '7/8'], deep: ['0', '10'], up: ['0', '30'], grain: 'up' }),
      side_right: { mirror: 'side_left', about: '15' },
      'shelf_{i}': part({
        each: 'i = 1..2',
        across: ['side_left', 'side_right'],
        deep: ['0', '10'],
        up: { from: '{i} * 9', size: '3/4' },
        grain: 'across',
        ...more,
      }),
    },
    joints: { shelves: { kind: 'dado', part: 'shelf_{1..2}', into: ['side_left', 'side_right'], ...joint } },
  });

describe('meetings', () => {
  it('makes the joint wherever two touch, numbered in order, and mirrors it on the other side', () => {
    const piece = solved(shelf());
    expect(piece.joints.map((j) => [j.id, j.entering, j.receiving])).toEqual([
      ['shelves.1', 'shelf_1', 'side_left'],
      ['shelves.2', 'shelf_1', 'side_right'],
      ['shelves.3', 'shelf_2', 'side_left'],
      ['shelves.4', 'shelf_2', 'side_right'],
    ]);
    const [a] = partOf(piece, 'side_left').cuts;
    const [b] = partOf(piece, 'side_right').cuts;
    if (a?.shape !== 'box' || b?.shape !== 'box') throw new Error('no dado');
    // the same depth into each inside face, at the height of the shelf: 9 in to 9 3/4 in
    expect([a.face, b.face]).toEqual(['right', 'left']);
    expect(a.at[2].map(toIn)).toEqual([9, 9.75]);
    expect(b.at[2]).toEqual(a.at[2]);
    expect(a.at[0][1]).toBe(inches(7 / 8));
    expect(b.at[0]).toEqual([0, inches(7 / 8) - a.at[0][0]]);
    expect(partOf(piece, 'shelf_1').growth[0]).toEqual([b.at[0][1], b.at[0][1]]);
  });
  it('says how wide the gap is when nothing touches', () => {
    const [f] = errorsOf(shelf({ across: ['side_left + 1/4', 'side_right - 1/2'] }));
    expect(f?.code).toBe('joint-does-not-touch');
    expect(f?.path).toEqual(['joints', 'shelves']);
    expect(f?.message).toContain('the gap is 1/4 in across');
    expect(f?.touches).toEqual(['shelf_1', 'shelf_2']);
  });
  it('says how deep parts stand in each other', () => {
    const [f] = errorsOf(shelf({ across: ['side_left - 1/8', 'side_right + 1/8'] }));
    expect(f?.message).toContain('they stand 1/8 in in each other across');
  });
  it('offers the joint and the part that are meant', () => {
    expect(errorsOf(shelf({}, { kind: 'dadoo' }))[0]?.hint).toBe('Did you mean "dado"?');
    const [f] = errorsOf(shelf({}, { into: ['side_lefft', 'side_right'] }));
    expect([f?.code, f?.path, f?.hint]).toEqual([
      'part-unknown',
      ['joints', 'shelves', 'into', 0],
      'Did you mean "side_left"?',
    ]);
  });
  it('needs something to go into, unless it joins staves', () => {
    expect(errorsOf(shelf({}, { into: undefined })).map((f) => f.code)).toEqual(['joint-needs-into']);
    const def = shelf();
    const piece = solved({
      ...def,
      joints: { staves: { kind: 'edge', part: ['side_left', 'side_right'], widest: '5' } },
    });
    // 10 in of width in staves of at most 5 in
    expect(partOf(piece, 'side_left').staves).toBe(2);
    expect(partOf(piece, 'shelf_1').staves).toBeUndefined();
  });
  it('reads the lengths of a joint against the measures', () => {
    const piece = solved({ ...shelf({}, { depth: 'd + 1/16' }), measures: { d: '1/4' } });
    expect(toIn(partOf(piece, 'shelf_1').growth[0][0])).toBe(5 / 16);
    expect(piece.joints[0]?.sizes['depth']).toMatchObject({ how: 'derived', rule: 'd + 1/16' });
  });
});

describe('ranks', () => {
  /** A bare kind that takes a pocket 1 in wide where the parts meet and remembers what it was shown. */
  const pocket = (kind: string, rank: 1 | 2 | 3, seen: string[], gives: boolean): JointKind => ({
    kind,
    words: kind,
    spec: undefined as never,
    lengths: [],
    stance: 'butt',
    rank,
    example: undefined as never,
    resolve: (_spec, site) => {
      seen.push(
        `${kind} sees ${site.claims.map((c) => `${c.joint} ${c.cut.shape === 'box' ? c.cut.at[2].map(toIn).join('-') : ''}`).join()}`,
      );
      return { r: 1, findings: [] };
    },
    ...(gives
      ? {
          yield: (r, clash) => {
            seen.push(`${kind} yields to ${clash.joint}`);
            return (r as number) / 2;
          },
        }
      : {}),
    give: (r, site) => ({
      growth: { entering: {} },
      entering: [],
      receiving: [
        {
          id: `${site.id}.1`,
          from: site.joint,
          mates: [site.entering.part],
          rank,
          shape: 'box',
          as: 'mortise',
          face: 'left',
          at: [
            [0, inches(r as number)],
            [0, inches(1)],
            [0, inches(1)],
          ],
        },
      ],
      bodies: [],
      traits: {
        insertion: ['right'],
        holds: 'no',
        glue: 'none',
        resists: { tension: 0, shear: 0, racking: 0, twist: 0 },
        freedom: 'fixed',
        shows: false,
      },
      findings: [],
      sizes: {},
    }),
  });
  const post = (joints: object) =>
    definition({
      parts: {
        post: part({ stock: 'thick', across: ['0', '1 1/2'], deep: ['0', '1 1/2'], up: ['0', '20'] }),
        a: part({ across: ['post', '12'], deep: ['0', '1'], up: ['5', '7'], grain: 'across' }),
        b: part({ across: ['1/2', '1 1/2'], deep: ['post', '12'], up: ['5', '7'], grain: 'deep' }),
      },
      joints: joints as never,
    });
  const both = { one: { kind: 'one', part: 'a', into: 'post' }, two: { kind: 'two', part: 'b', into: 'post' } };

  it('shows a joint the cuts of lower ranks only, in its own axes', () => {
    const seen: string[] = [];
    const { findings } = resolvePiece(post(both), {
      joints: [pocket('one', 1, seen, false), pocket('two', 2, seen, false)],
    });
    expect(findings).toEqual([]);
    expect(seen).toEqual(['one sees ', 'two sees one 0-1']);
  });
  it('lets equal ranks that overlap give way once each', () => {
    const seen: string[] = [];
    const { value } = resolvePiece(post(both), {
      joints: [pocket('one', 2, seen, true), pocket('two', 2, seen, true)],
    });
    expect(seen).toEqual(['one sees ', 'two sees ', 'one yields to two', 'two yields to one']);
    const depths = value?.parts
      .find((p) => p.id === 'post')
      ?.cuts.map((c) =>
        c.shape === 'box' ? toIn(c.at[c.from === 'one' ? 0 : 1][1] - c.at[c.from === 'one' ? 0 : 1][0]) : 0,
      );
    expect(depths).toEqual([0.5, 0.5]);
  });
  it('names both where neither can', () => {
    const { value, findings } = resolvePiece(post(both), {
      joints: [pocket('one', 2, [], false), pocket('two', 2, [], false)],
    });
    expect(value).toBeUndefined();
    expect(findings.map((f) => [f.code, f.touches])).toEqual([['joints-clash', ['post', 'one.1', 'two.1']]]);
  });
});

it('gives two rails at one height one socket in the side', () => {
  const piece = solved(
    definition({
      parts: {
        side: part({ across: ['0', '7/8'], deep: ['0', '19'], up: ['0', '30'], grain: 'up' }),
        front: part({ across: ['side', '20'], deep: ['0', '2 1/2'], up: { from: '9', size: '3/4' }, grain: 'across' }),
        back: { like: 'front', deep: ['16', '18 1/2'] },
      },
      joints: {
        fronts: { kind: 'sliding-dovetail', part: 'front', into: 'side', from: 'back', stop: '3/8' },
        backs: { kind: 'sliding-dovetail', part: 'back', into: 'side', from: 'back' },
      },
    }),
  );
  const sockets = partOf(piece, 'side').cuts.filter((c) => c.shape === 'dovetail' && c.as === 'socket');
  expect(sockets.map((c) => [c.mates, c.shape === 'dovetail' ? c.runSpan.map(toIn) : []])).toEqual([
    [
      ['front', 'back'],
      [0.375, 19],
    ],
  ]);
});

it('meets the mortises of a nightstand leg as on its card', () => {
  // front left leg 1 1/2 square, 25 1/4 long; end bottom rail 2 1/2 with a groove, front bottom rail 1 3/4, both 8 in up and 1/8 in from the faces:
  // b 15 1/8 to 17 from TOP, c 15 3/4 to 17 from TOP, 3/8 to 5/8 from the outside faces, 1 1/8 deep; their tenons are mitred
  const piece = solved(
    definition({
      parts: {
        leg: part({ stock: 'thick', across: ['0', '1 1/2'], deep: ['0', '1 1/2'], up: ['0', '25 1/4'] }),
        panel: part({ across: { from: '3/8', size: '1/4' }, deep: ['leg', '13'], up: ['end', '22 1/4'], grain: 'up' }),
        end: part({
          across: { from: '1/8', size: '3/4' },
          deep: ['leg', '13'],
          up: { from: '8', size: '2 1/2' },
          grain: 'deep',
        }),
        front: part({
          across: ['leg', '17'],
          deep: { from: '1/8', size: '3/4' },
          up: { from: '8', size: '1 3/4' },
          grain: 'across',
        }),
      },
      joints: {
        panels: { kind: 'groove', part: 'panel', into: ['end', 'leg'] },
        ends: { kind: 'mortise-and-tenon', part: 'end', into: 'leg' },
        fronts: { kind: 'mortise-and-tenon', part: 'front', into: 'leg' },
      },
    }),
  );
  const mortises = partOf(piece, 'leg').cuts.flatMap((c) =>
    c.shape === 'box' && c.as === 'mortise' ? [c.at.map((s) => s.map(toIn))] : [],
  );
  expect(mortises).toEqual([
    [
      [0.375, 0.625],
      [0.375, 1.5],
      [25.25 - 17, 25.25 - 15.125],
    ],
    [
      [0.375, 1.5],
      [0.375, 0.625],
      [25.25 - 17, 25.25 - 15.75],
    ],
  ]);
  const tenons = ['end', 'front'].map((id) => partOf(piece, id).cuts.find((c) => c.shape === 'tenon'));
  expect(tenons.map((t) => (t?.shape === 'tenon' ? t.mitre !== undefined : false))).toEqual([true, true]);
});
